//! Writers for each format, made for the tests.

/// A soup in file units: vertices and polygons.
#[derive(Clone, Debug)]
pub(crate) struct Soup {
    pub(crate) vertices: Vec<[f64; 3]>,
    pub(crate) triangles: Vec<[u32; 3]>,
}

impl Soup {
    pub(crate) fn corners(&self) -> Vec<[[f64; 3]; 3]> {
        self.triangles
            .iter()
            .map(|t| t.map(|i| self.vertices[i as usize]))
            .collect()
    }
}

pub(crate) fn stl_binary(soup: &Soup) -> Vec<u8> {
    let mut out = vec![b' '; 80];
    out[..5].copy_from_slice(b"solid");
    out.extend((soup.triangles.len() as u32).to_le_bytes());
    for corners in soup.corners() {
        out.extend([0; 12]);
        for value in corners.iter().flatten() {
            out.extend((*value as f32).to_le_bytes());
        }
        out.extend([0; 2]);
    }
    out
}

pub(crate) fn stl_ascii(soup: &Soup) -> Vec<u8> {
    let mut out = "solid wörk\n".to_owned();
    for corners in soup.corners() {
        out += " facet normal 0 0 1\n  outer loop\n";
        for [x, y, z] in corners {
            out += &format!("   vertex {x:e} {y} {z}\n");
        }
        out += "  endloop\n endfacet\n";
    }
    (out + "endsolid\n").into_bytes()
}

pub(crate) fn obj(soup: &Soup, end: &str) -> Vec<u8> {
    let mut out = format!("# scan{end}mtllib none.mtl{end}");
    for [x, y, z] in &soup.vertices {
        out += &format!("v {x} {y} {z}{end}");
    }
    for [a, b, c] in &soup.triangles {
        out += &format!(
            "f {}/1 {}//2 {}{end}",
            a + 1,
            b + 1,
            i64::from(*c) - soup.vertices.len() as i64
        );
    }
    out.into_bytes()
}

#[derive(Clone, Copy, Debug)]
pub(crate) enum PlyForm {
    Ascii,
    Little,
    Big,
}

pub(crate) fn ply(soup: &Soup, form: PlyForm) -> Vec<u8> {
    let name = match form {
        PlyForm::Ascii => "ascii",
        PlyForm::Little => "binary_little_endian",
        PlyForm::Big => "binary_big_endian",
    };
    let mut out = format!(
        "ply\nformat {name} 1.0\ncomment made for a test\nelement vertex {}\nproperty uchar red\n\
         property double x\nproperty double y\nproperty double z\nelement face {}\n\
         property list uchar int vertex_indices\nend_header\n",
        soup.vertices.len(),
        soup.triangles.len()
    )
    .into_bytes();
    for v in &soup.vertices {
        match form {
            PlyForm::Ascii => {
                out.extend(format!("7 {} {} {}\n", v[0], v[1], v[2]).into_bytes());
            }
            PlyForm::Little => {
                out.push(7);
                v.iter().for_each(|c| out.extend(c.to_le_bytes()));
            }
            PlyForm::Big => {
                out.push(7);
                v.iter().for_each(|c| out.extend(c.to_be_bytes()));
            }
        }
    }
    for t in &soup.triangles {
        match form {
            PlyForm::Ascii => {
                out.extend(format!("3 {} {} {}\n", t[0], t[1], t[2]).into_bytes());
            }
            PlyForm::Little => {
                out.push(3);
                t.iter().for_each(|i| out.extend(i.to_le_bytes()));
            }
            PlyForm::Big => {
                out.push(3);
                t.iter().for_each(|i| out.extend(i.to_be_bytes()));
            }
        }
    }
    out
}
