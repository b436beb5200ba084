//! What was written is what is read, in millimetres.

use proptest::prelude::*;
use tubewright_geometry::Point;
use tubewright_scan::{Limits, Scan, ScanFormat, ScanWarning, read_scan};

use crate::writers::{PlyForm, Soup, obj, ply, stl_ascii, stl_binary};

/// Triangles on a grid of single-precision coordinates, each with an area by construction.
pub(crate) fn soups() -> impl Strategy<Value = Soup> {
    prop::collection::vec(
        (prop::array::uniform3(-500i16..500), 1u8..50, 1u8..50),
        1..40,
    )
    .prop_map(|seeds| {
        let mut soup = Soup {
            vertices: Vec::new(),
            triangles: Vec::new(),
        };
        for (at, a, b) in seeds {
            let [x, y, z] = at.map(|v| f64::from(v) / 8.0);
            let first = soup.vertices.len() as u32;
            soup.vertices.push([x, y, z]);
            soup.vertices.push([x + f64::from(a), y, z]);
            soup.vertices.push([x, y + f64::from(b), z + 0.25]);
            soup.triangles.push([first, first + 1, first + 2]);
        }
        soup
    })
}

fn read(bytes: &[u8], format: Option<ScanFormat>, mm_per_unit: f64) -> Scan {
    read_scan(bytes, format, mm_per_unit, &Limits::default()).unwrap()
}

fn corners(scan: &Scan) -> Vec<[[f64; 3]; 3]> {
    scan.triangles()
        .iter()
        .map(|t| t.map(|i| scan.vertices()[i as usize].to_array()))
        .collect()
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(64))]

    /// The default four-format promise: equal triangles in equal order whatever the file, with the
    /// format told by the content alone, and scaled by the caller's unit.
    #[test]
    fn every_format_gives_the_triangles_that_were_written(soup in soups(), scale in 1u8..5) {
        let scale = f64::from(scale) * 0.5;
        let expected: Vec<_> =
            soup.corners().iter().map(|t| t.map(|v| v.map(|c| c * scale))).collect();
        let files = [
            stl_binary(&soup),
            stl_ascii(&soup),
            obj(&soup, "\n"),
            obj(&soup, "\r\n"),
            obj(&soup, "\r"),
            ply(&soup, PlyForm::Ascii),
            ply(&soup, PlyForm::Little),
            ply(&soup, PlyForm::Big),
        ];
        for (number, bytes) in files.iter().enumerate() {
            let scan = read(bytes, None, scale);
            prop_assert_eq!(corners(&scan), expected.clone(), "file {}", number);
            prop_assert!(scan.mesh().is_some());
        }
    }
}

fn square() -> Soup {
    Soup {
        vertices: vec![
            [0.0, 0.0, 0.0],
            [2.0, 0.0, 0.0],
            [2.0, 1.0, 0.0],
            [0.0, 1.0, -0.0],
        ],
        triangles: vec![[0, 1, 2], [0, 2, 3]],
    }
}

#[test]
fn stl_vertices_at_one_place_are_merged() {
    let scan = read(&stl_binary(&square()), Some(ScanFormat::Stl), 1.0);
    assert_eq!(scan.vertices().len(), 4);
    assert_eq!(scan.warnings(), [ScanWarning::MergedVertices(2)]);
    let mesh = scan.into_mesh().unwrap();
    assert_eq!(mesh.triangles(), [[0, 1, 2], [0, 2, 3]]);
}

#[test]
fn triangles_without_area_are_dropped_and_counted() {
    let mut soup = square();
    soup.vertices.push([1.0, 0.0, 0.0]);
    soup.triangles.push([0, 4, 1]); // on one line
    soup.triangles.push([2, 2, 3]); // two corners the same
    for bytes in [stl_ascii(&soup), obj(&soup, "\n"), ply(&soup, PlyForm::Big)] {
        let scan = read(&bytes, None, 1.0);
        assert_eq!(scan.triangles().len(), 2);
        assert_eq!(
            scan.vertices().len(),
            4,
            "the vertex of the dropped triangle is left out"
        );
        assert!(scan.warnings().contains(&ScanWarning::DroppedTriangles(2)));
    }
}

#[test]
fn a_sliver_of_single_precision_is_kept() {
    // Height 1e-6 of the side: thin, but it closes a surface.
    let soup = Soup {
        vertices: vec![[0.0, 0.0, 0.0], [1.0, 0.0, 0.0], [0.5, 1e-6, 0.0]],
        triangles: vec![[0, 1, 2]],
    };
    assert_eq!(read(&obj(&soup, "\n"), None, 1000.0).triangles().len(), 1);
}

#[test]
fn points_only_files_are_points() {
    let files: [(&[u8], ScanFormat); 5] = [
        (b"v 1 2 3\nv 4 5 6\n", ScanFormat::Obj),
        (b"1 2 3 255 0 0\n4 5 6\n", ScanFormat::Xyz),
        (b"// x,y,z\n1,2,3\n4;5;6", ScanFormat::Xyz),
        (b"2\n1 2 3\n4 5 6\n", ScanFormat::Xyz),
        (
            b"ply\nformat ascii 1.0\nelement vertex 2\nproperty float x\nproperty float y\n\
              property float z\nelement face 0\nproperty list uchar int vertex_indices\n\
              end_header\n1 2 3 4 5 6",
            ScanFormat::Ply,
        ),
    ];
    for (bytes, format) in files {
        let scan = read(bytes, Some(format), 10.0);
        assert!(scan.is_points_only(), "{format:?}");
        let points: Vec<_> = scan.vertices().iter().map(|p| p.to_array()).collect();
        assert_eq!(
            points,
            [[10.0, 20.0, 30.0], [40.0, 50.0, 60.0]],
            "{format:?}"
        );
        assert_eq!(scan.bounds().1, Point::new(40.0, 50.0, 60.0));
        assert_eq!(scan.mesh().map(|_| ()), None);
    }
}

#[test]
fn polygons_are_split_into_fans_and_lines_may_go_on() {
    let text = b"f 1 2 \\\n 3 4\nv 0 0 0\nv 1 0 0\nv 1 1 0\nv 0 1 0\n";
    let scan = read(text, Some(ScanFormat::Obj), 1.0);
    assert_eq!(scan.triangles(), [[0, 1, 2], [0, 2, 3]]);
    assert_eq!(scan.warnings(), [ScanWarning::SplitPolygons(1)]);
}

#[test]
fn extensions_in_any_case() {
    assert_eq!(ScanFormat::from_extension("STL"), Some(ScanFormat::Stl));
    assert_eq!(ScanFormat::from_extension("Ply"), Some(ScanFormat::Ply));
    assert_eq!(ScanFormat::from_extension("step"), None);
}
