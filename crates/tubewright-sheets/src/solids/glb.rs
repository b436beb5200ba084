//! glTF 2.0 in its binary form (GLB): one named node for each piece, in metres, y up.
//!
//! After "glTF 2.0 Specification", Khronos Group (chunks, accessors and their required bounds).

use core::fmt::Write as _;

use super::SolidError;
use super::mesh::{Triangles, triangles};
use super::pipe::shapes;
use crate::scene::{PieceKind, Scene};
use tubewright_geometry::Length;

/// How fine the triangles are.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct MeshFineness {
    /// How far a chord may lie inside the true surface.
    pub chord: Length,
}

impl Default for MeshFineness {
    /// 0.1 mm: below what is seen in a picture of a whole car.
    fn default() -> Self {
        Self {
            chord: Length::from_mm(0.1),
        }
    }
}

/// Every piece of the runs as a closed, named mesh. glTF's axes: x to the car's right, y up, z
/// rearwards; metres. Two materials: tube and bought part. The same solids as
/// [`to_step`](super::to_step) writes.
///
/// # Errors
/// [`SolidError`] for the first piece that has no sound shape, or when there is none.
pub fn to_glb(scene: &Scene, fineness: MeshFineness) -> Result<Vec<u8>, SolidError> {
    let chord_mm = fineness.chord.mm().clamp(0.001, 10.0);
    let mut parts: Vec<(String, u8, Triangles)> = Vec::new();
    for piece in scene.runs.iter().flat_map(|run| &run.pieces) {
        let found = shapes(piece)?;
        let many = found.len() > 1;
        for (i, shape) in found.iter().enumerate() {
            let mut name = piece.mark.clone();
            if let Some(own) = &piece.name {
                let _ = write!(name, " {own}");
            }
            if many {
                let _ = write!(name, " {} {}", piece.kind.part_word(), i + 1);
            }
            let material = u8::from(!matches!(piece.kind, PieceKind::Straight | PieceKind::Bend));
            parts.push((name, material, triangles(shape, chord_mm)));
        }
    }
    if parts.is_empty() {
        return Err(SolidError::NothingToWrite);
    }
    Ok(pack(&scene.title, &parts))
}

fn pack(title: &str, parts: &[(String, u8, Triangles)]) -> Vec<u8> {
    let mut binary: Vec<u8> = Vec::new();
    let (mut views, mut accessors, mut meshes, mut nodes) =
        (Vec::new(), Vec::new(), Vec::new(), Vec::new());
    for (i, (name, material, mesh)) in parts.iter().enumerate() {
        let first = accessors.len();
        let places: Vec<[f32; 3]> = mesh
            .places
            .iter()
            .map(|p| metres(p.to_array(), 0.001))
            .collect();
        let bounds = |start: f32, pick: fn(f32, f32) -> f32| {
            let b = places.iter().fold([start; 3], |b, p| {
                [pick(b[0], p[0]), pick(b[1], p[1]), pick(b[2], p[2])]
            });
            format!("[{},{},{}]", b[0], b[1], b[2])
        };
        let (lo, hi) = (
            bounds(f32::INFINITY, f32::min),
            bounds(f32::NEG_INFINITY, f32::max),
        );
        let begin = binary.len();
        for value in places.iter().flatten() {
            binary.extend(value.to_le_bytes());
        }
        let normals_at = binary.len();
        for n in &mesh.normals {
            for value in metres(n.to_array(), 1.0) {
                binary.extend(value.to_le_bytes());
            }
        }
        let corners_at = binary.len();
        for corner in &mesh.corners {
            binary.extend(corner.to_le_bytes());
        }
        let view = views.len();
        for (from, to, target) in [
            (begin, normals_at, 34962),
            (normals_at, corners_at, 34962),
            (corners_at, binary.len(), 34963),
        ] {
            views.push(format!(
                "{{\"buffer\":0,\"byteOffset\":{from},\"byteLength\":{},\"target\":{target}}}",
                to - from
            ));
        }
        let (count, corners) = (mesh.places.len(), mesh.corners.len());
        accessors.push(format!(
            "{{\"bufferView\":{view},\"componentType\":5126,\"count\":{count},\"type\":\"VEC3\",\"min\":{lo},\"max\":{hi}}}"
        ));
        accessors.push(format!(
            "{{\"bufferView\":{},\"componentType\":5126,\"count\":{count},\"type\":\"VEC3\"}}",
            view + 1
        ));
        accessors.push(format!(
            "{{\"bufferView\":{},\"componentType\":5125,\"count\":{corners},\"type\":\"SCALAR\"}}",
            view + 2
        ));
        let name = quoted(name);
        meshes.push(format!(
            "{{\"name\":{name},\"primitives\":[{{\"attributes\":{{\"POSITION\":{first},\"NORMAL\":{}}},\"indices\":{},\"material\":{material}}}]}}",
            first + 1,
            first + 2
        ));
        nodes.push(format!("{{\"name\":{name},\"mesh\":{i}}}"));
    }
    let all: Vec<String> = (0..nodes.len()).map(|i| i.to_string()).collect();
    let material = |name: &str, tone: f64, rough: f64| {
        format!(
            "{{\"name\":\"{name}\",\"pbrMetallicRoughness\":{{\"baseColorFactor\":[{tone},{tone},{tone},1],\"metallicFactor\":0.9,\"roughnessFactor\":{rough}}}}}"
        )
    };
    let json = format!(
        "{{\"asset\":{{\"version\":\"2.0\",\"generator\":\"tubewright\"}},\"scene\":0,\
         \"scenes\":[{{\"name\":{},\"nodes\":[{}]}}],\"nodes\":[{}],\"meshes\":[{}],\
         \"materials\":[{},{}],\"accessors\":[{}],\"bufferViews\":[{}],\"buffers\":[{{\"byteLength\":{}}}]}}",
        quoted(title),
        all.join(","),
        nodes.join(","),
        meshes.join(","),
        material("tube", 0.75, 0.35),
        material("bought part", 0.5, 0.6),
        accessors.join(","),
        views.join(","),
        binary.len()
    );
    let mut json = json.into_bytes();
    json.resize(json.len().next_multiple_of(4), b' ');
    binary.resize(binary.len().next_multiple_of(4), 0);
    let size = |n: usize| u32::try_from(n).unwrap_or(u32::MAX).to_le_bytes();
    let mut out = Vec::with_capacity(28 + json.len() + binary.len());
    out.extend(b"glTF");
    out.extend(2_u32.to_le_bytes());
    out.extend(size(28 + json.len() + binary.len()));
    out.extend(size(json.len()));
    out.extend(b"JSON");
    out.extend(&json);
    out.extend(size(binary.len()));
    out.extend(b"BIN\0");
    out.extend(&binary);
    out
}

/// Car axes (rearwards, right, up) to glTF's (right, up, rearwards): a turn, no mirror.
#[expect(
    clippy::cast_possible_truncation,
    reason = "glTF keeps single precision: 0.3 µm in 3 m"
)]
fn metres([x, y, z]: [f64; 3], factor: f64) -> [f32; 3] {
    [y, z, x].map(|c| (c * factor) as f32)
}

fn quoted(text: &str) -> String {
    let mut out = String::from("\"");
    for c in text.chars() {
        match c {
            '"' => out.push_str("\\\""),
            '\\' => out.push_str("\\\\"),
            c if u32::from(c) < 0x20 => out.push(' '),
            c => out.push(c),
        }
    }
    out.push('"');
    out
}
