//! What a scan may cost, and which formats there are.

use crate::text::{Lines, is_word};

/// Bounds on one scan. The defaults suit a laptop that must stay under 500 MB.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Limits {
    /// Longest file, in bytes; longer ones are refused. Default 50 million.
    pub max_bytes: usize,
    /// Most triangles after polygons are split. Default 2 million.
    pub max_triangles: usize,
    /// Most points of a points-only scan, and most vertices of a mesh. Default 4 million.
    pub max_vertices: usize,
    /// Farthest a coordinate may lie from the scan's origin, in mm. Default 1e7 mm (10 km): beyond
    /// it a wrong unit or a survey grid is certain and double precision starts to cost microns.
    pub max_coordinate_mm: f64,
}

impl Default for Limits {
    fn default() -> Self {
        Self {
            max_bytes: 50_000_000,
            max_triangles: 2_000_000,
            max_vertices: 4_000_000,
            max_coordinate_mm: 1e7,
        }
    }
}

/// The file formats that are read.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[non_exhaustive]
pub enum ScanFormat {
    /// Stereolithography, ASCII or binary: triangles only.
    Stl,
    /// Wavefront OBJ: polygons, or points only.
    Obj,
    /// Polygon file format, ASCII or binary of either byte order: polygons, or points only.
    Ply,
    /// One point per line: x, y, z, then anything.
    Xyz,
}

impl ScanFormat {
    /// The format that a file name's extension stands for (without the dot, any case); `None` when
    /// it is not one that is read.
    #[must_use]
    pub fn from_extension(extension: &str) -> Option<Self> {
        let known = [
            ("stl", Self::Stl),
            ("obj", Self::Obj),
            ("ply", Self::Ply),
            ("xyz", Self::Xyz),
            ("pts", Self::Xyz),
        ];
        known
            .into_iter()
            .find(|(name, _)| name.eq_ignore_ascii_case(extension))
            .map(|(_, format)| format)
    }

    /// The format that the content looks like; `None` when it looks like none.
    #[must_use]
    pub fn of_content(bytes: &[u8]) -> Option<Self> {
        if bytes.starts_with(b"ply\n") || bytes.starts_with(b"ply\r") {
            return Some(Self::Ply);
        }
        if crate::stl::looks_binary(bytes) {
            return Some(Self::Stl);
        }
        // A text format shows itself in its first lines; a thousand of comments are enough.
        let mut lines = Lines::new(bytes);
        for _ in 0..1000 {
            let Some(line) = lines.next_line() else { break };
            let mut words = line.words();
            let Some(first) = words.next() else { continue };
            if is_word(first, "solid") {
                return Some(Self::Stl);
            }
            if matches!(
                first,
                b"v" | b"vn" | b"vt" | b"o" | b"g" | b"mtllib" | b"usemtl"
            ) {
                return Some(Self::Obj);
            }
            if first.starts_with(b"#") || first.starts_with(b"//") {
                continue;
            }
            return line.number(first).ok().map(|_| Self::Xyz);
        }
        None
    }
}
