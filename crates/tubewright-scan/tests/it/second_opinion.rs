//! On sound files our readers and the published ones read the same.

use std::io::Cursor;

use proptest::prelude::*;
use tubewright_scan::{Limits, read_scan};

use crate::round_trip::soups;
use crate::writers::{PlyForm, Soup, obj, ply, stl_ascii, stl_binary};

fn ours(bytes: &[u8]) -> Vec<[[f64; 3]; 3]> {
    let scan = read_scan(bytes, None, 1.0, &Limits::default()).unwrap();
    scan.triangles()
        .iter()
        .map(|t| t.map(|i| scan.vertices()[i as usize].to_array()))
        .collect()
}

/// `None` where the published reader takes a binary file for text, because of the bytes that it
/// happens to begin with, and refuses it.
fn by_stl_io(bytes: &[u8]) -> Option<Vec<[[f64; 3]; 3]>> {
    let mesh = stl_io::read_stl(&mut Cursor::new(bytes)).ok()?;
    let faces = mesh.faces.iter();
    Some(
        faces
            .map(|face| face.vertices.map(|i| mesh.vertices[i].0.map(f64::from)))
            .collect(),
    )
}

fn by_tobj(bytes: &[u8]) -> Vec<[[f64; 3]; 3]> {
    let options = tobj::LoadOptions {
        triangulate: true,
        ..tobj::LoadOptions::default()
    };
    let (models, _) = tobj::load_obj_buf(&mut Cursor::new(bytes), &options, |_| {
        Err(tobj::LoadError::OpenFileFailed)
    })
    .unwrap();
    models
        .iter()
        .flat_map(|model| {
            let at = |i: u32| {
                [0, 1, 2].map(|axis| f64::from(model.mesh.positions[i as usize * 3 + axis]))
            };
            model
                .mesh
                .indices
                .chunks(3)
                .map(move |t| [at(t[0]), at(t[1]), at(t[2])])
        })
        .collect()
}

fn by_ply_rs(bytes: &[u8]) -> Vec<[[f64; 3]; 3]> {
    use ply_rs_bw::ply::{DefaultElement, Property};
    let file = ply_rs_bw::parser::Parser::<DefaultElement>::new()
        .read_ply(&mut Cursor::new(bytes))
        .unwrap();
    let vertices: Vec<[f64; 3]> = file.payload["vertex"]
        .iter()
        .map(|v| {
            ["x", "y", "z"].map(|axis| match v[axis] {
                Property::Double(value) => value,
                _ => panic!("double was written"),
            })
        })
        .collect();
    file.payload["face"]
        .iter()
        .map(|face| match &face["vertex_indices"] {
            Property::ListInt(list) => [0, 1, 2].map(|i| vertices[list[i] as usize]),
            _ => panic!("a list of int was written"),
        })
        .collect()
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(24))]

    #[test]
    fn published_readers_agree(soup in soups()) {
        let soup: Soup = soup;
        let text = stl_ascii(&soup);
        prop_assert_eq!(Some(ours(&text)), by_stl_io(&text));
        let binary = stl_binary(&soup);
        if let Some(theirs) = by_stl_io(&binary) {
            prop_assert_eq!(ours(&binary), theirs);
        }
        let plain = String::from_utf8(obj(&soup, "\n")).unwrap().replace("/1", "").replace("//2", "");
        let plain = plain.replace("mtllib none.mtl\n", "");
        prop_assert_eq!(ours(plain.as_bytes()), by_tobj(plain.as_bytes()));
        for form in [PlyForm::Ascii, PlyForm::Little, PlyForm::Big] {
            let bytes = ply(&soup, form);
            prop_assert_eq!(ours(&bytes), by_ply_rs(&bytes));
        }
    }
}
