//! Damaged, cut, absurd and hostile files: a reason and a place, never a panic or a runaway.

use proptest::prelude::*;
use tubewright_scan::{Limits, Place, Scan, ScanError, ScanFormat, ScanWarning, read_scan};

use crate::round_trip::soups;
use crate::writers::{PlyForm, Soup, obj, ply, stl_ascii, stl_binary};

fn read(bytes: &[u8], format: ScanFormat) -> Result<Scan, ScanError> {
    read_scan(bytes, Some(format), 1.0, &Limits::default())
}

fn assert_sound(scan: &Scan) {
    assert!(!scan.vertices().is_empty());
    assert!(scan.vertices().iter().all(|v| v.is_finite()));
    let count = scan.vertices().len() as u32;
    assert!(scan.triangles().iter().flatten().all(|i| *i < count));
}

const ALL: [Option<ScanFormat>; 5] = [
    None,
    Some(ScanFormat::Stl),
    Some(ScanFormat::Obj),
    Some(ScanFormat::Ply),
    Some(ScanFormat::Xyz),
];

proptest! {
    #![proptest_config(ProptestConfig::with_cases(200))]

    #[test]
    fn arbitrary_bytes_never_panic(bytes in prop::collection::vec(any::<u8>(), 0..600)) {
        for format in ALL {
            if let Ok(scan) = read_scan(&bytes, format, 1.0, &Limits::default()) {
                assert_sound(&scan);
            }
        }
    }

    #[test]
    fn text_of_the_formats_words_never_panics(words in prop::collection::vec(prop_oneof![
        Just("solid"), Just("vertex"), Just("outer loop"), Just("endloop"), Just("endsolid"),
        Just("v"), Just("f"), Just("-1"), Just("0"), Just("1/2/3"), Just("1e999"), Just("nan"),
        Just("ply"), Just("format ascii 1.0"), Just("format binary_big_endian 1.0"),
        Just("element vertex 3"), Just("element face 18446744073709551615"),
        Just("property float x"), Just("property list uchar int vertex_indices"),
        Just("end_header"), Just("\n"), Just("\\\n"), Just("\r"), Just("2.5"),
    ], 0..60)) {
        let text = words.join(" ").replace("\n ", "\n").replace(" \n", "\n");
        for format in ALL {
            if let Ok(scan) = read_scan(text.as_bytes(), format, 1.0, &Limits::default()) {
                assert_sound(&scan);
            }
        }
    }

    /// A sound file with bytes changed and its tail cut off.
    #[test]
    fn damaged_files_never_panic(
        soup in soups(),
        form in 0usize..6,
        damage in prop::collection::vec((any::<prop::sample::Index>(), any::<u8>()), 0..6),
        cut in any::<prop::sample::Index>(),
    ) {
        let mut bytes = match form {
            0 => stl_binary(&soup),
            1 => stl_ascii(&soup),
            2 => obj(&soup, "\n"),
            3 => ply(&soup, PlyForm::Ascii),
            4 => ply(&soup, PlyForm::Little),
            _ => ply(&soup, PlyForm::Big),
        };
        for (place, value) in damage {
            let at = place.index(bytes.len());
            bytes[at] = value;
        }
        bytes.truncate(cut.index(bytes.len()) + 1);
        for format in ALL {
            if let Ok(scan) = read_scan(&bytes, format, 1.0, &Limits::default()) {
                assert_sound(&scan);
            }
        }
    }

    /// A cut binary file is refused, never read in part: a missing corner of a scan is room that
    /// looks free.
    #[test]
    fn cut_binary_files_are_refused(soup in soups(), cut in 1usize..50) {
        for (bytes, format) in [
            (stl_binary(&soup), ScanFormat::Stl),
            (ply(&soup, PlyForm::Little), ScanFormat::Ply),
            (ply(&soup, PlyForm::Big), ScanFormat::Ply),
        ] {
            let cut = cut.min(bytes.len() / 2);
            let short = &bytes[..bytes.len() - cut];
            let error = read(short, format).unwrap_err();
            prop_assert!(matches!(error, ScanError::Truncated { .. }), "{}", error);
        }
    }
}

fn one() -> Soup {
    Soup {
        vertices: vec![[0.0, 0.0, 0.0], [1.0, 0.0, 0.0], [0.0, 1.0, 0.0]],
        triangles: vec![[0, 1, 2]],
    }
}

#[test]
fn more_than_fifty_megabytes_are_refused_with_the_reason() {
    let error = read(&vec![b' '; 50_000_001], ScanFormat::Stl).unwrap_err();
    assert_eq!(
        error,
        ScanError::TooManyBytes {
            bytes: 50_000_001,
            limit: 50_000_000
        }
    );
    assert!(error.to_string().contains("crop"), "{error}");
}

#[test]
fn two_million_triangles_are_accepted_and_one_more_is_not() {
    // A grid of 1000 x 1000 squares, 2 000 000 triangles: 12 MB of vertices, 26 MB of faces.
    let side = 1000u32;
    let header = |faces: u32| {
        format!(
            "ply\nformat binary_little_endian 1.0\nelement vertex {}\nproperty float x\n\
             property float y\nproperty float z\nelement face {faces}\n\
             property list uchar uint vertex_indices\nend_header\n",
            (side + 1) * (side + 1)
        )
        .into_bytes()
    };
    let mut body = Vec::new();
    for (row, column) in (0..=side).flat_map(|r| (0..=side).map(move |c| (r, c))) {
        for v in [row as f32, column as f32, ((row * column) % 7) as f32] {
            body.extend(v.to_le_bytes());
        }
    }
    let mut push = |corners: [u32; 3]| {
        body.push(3);
        corners.iter().for_each(|i| body.extend(i.to_le_bytes()));
    };
    for (row, column) in (0..side).flat_map(|r| (0..side).map(move |c| (r, c))) {
        let at = row * (side + 1) + column;
        push([at, at + 1, at + side + 1]);
        push([at + 1, at + side + 2, at + side + 1]);
    }
    push([0, 1, side + 1]);
    let bytes = [header(2_000_000), body.clone()].concat();
    let scan = read(&bytes, ScanFormat::Ply).unwrap();
    assert_eq!(scan.triangles().len(), 2_000_000);
    let bytes = [header(2_000_001), body].concat();
    let error = read(&bytes, ScanFormat::Ply).unwrap_err();
    assert_eq!(error, ScanError::TooManyTriangles { limit: 2_000_000 });
}

#[test]
fn nan_and_infinity_are_refused_with_their_place() {
    let mut stl = stl_binary(&Soup {
        triangles: vec![[0, 1, 2]; 3],
        ..one()
    });
    // Second record, second vertex, y: 84 + 50 + 12 + 12 + 4.
    stl[162..166].copy_from_slice(&f32::NAN.to_le_bytes());
    let cases: [(&[u8], ScanFormat, Place); 6] = [
        (&stl, ScanFormat::Stl, Place::Face(2)),
        (
            b"solid\nfacet\nouter loop\nvertex 0 0 nan",
            ScanFormat::Stl,
            Place::Line(4),
        ),
        (b"v 0 0 0\nv 0 inf 0", ScanFormat::Obj, Place::Line(2)),
        (b"v 0 0 0\nv 0 1e999 0", ScanFormat::Obj, Place::Line(2)),
        (b"1 2 3\n\n-inf 1 1", ScanFormat::Xyz, Place::Line(3)),
        (
            b"ply\nformat ascii 1.0\nelement vertex 1\nproperty float x\nproperty float y\n\
              property float z\nend_header\n1 NaN 3\n",
            ScanFormat::Ply,
            Place::Line(8),
        ),
    ];
    for (bytes, format, expected) in cases {
        match read(bytes, format) {
            Err(ScanError::NotFinite { place, .. }) => assert_eq!(place, expected, "{format:?}"),
            other => panic!("{format:?}: {other:?}"),
        }
    }
}

#[test]
fn counts_of_a_header_are_not_believed() {
    let mut stl = stl_binary(&one());
    stl[80..84].copy_from_slice(&u32::MAX.to_le_bytes());
    stl[0] = 0;
    let ply_of = |element: &str| {
        format!("ply\nformat binary_little_endian 1.0\n{element}\nend_header\n\u{1}\u{2}\u{3}")
            .into_bytes()
    };
    let xyz = "property float x\nproperty float y\nproperty float z";
    for (bytes, format) in [
        (stl, ScanFormat::Stl),
        (
            ply_of(&format!("element vertex 18446744073709551615\n{xyz}")),
            ScanFormat::Ply,
        ),
        (
            ply_of(&format!("element vertex 4000000000\n{xyz}")),
            ScanFormat::Ply,
        ),
        (
            ply_of("element face 999999999999\nproperty list uchar int vertex_index"),
            ScanFormat::Ply,
        ),
        (b"999999999999\n1 2 3\n".to_vec(), ScanFormat::Xyz),
    ] {
        let error = read(&bytes, format).unwrap_err();
        assert!(matches!(error, ScanError::Truncated { .. }), "{error}");
    }
    // An element without properties has no data: its count must not be walked.
    let endless = ply_of(&format!(
        "element nothing 18446744073709551615\nelement vertex 0\n{xyz}"
    ));
    assert!(read(&endless, ScanFormat::Ply).is_err());
}

#[test]
fn faces_that_name_no_vertex_are_refused_with_the_line() {
    for (text, index) in [
        ("v 0 0 0\nv 1 0 0\nv 0 1 0\nf 1 2 4\n", 4),
        ("v 0 0 0\nv 1 0 0\nv 0 1 0\nf 1 2 0\n", 0),
        ("v 0 0 0\nv 1 0 0\nv 0 1 0\nf 1 2 -4\n", -4),
        (
            "v 0 0 0\nv 1 0 0\nv 0 1 0\nf 1 2 -9223372036854775808\n",
            i64::MIN,
        ),
    ] {
        let error = read(text.as_bytes(), ScanFormat::Obj).unwrap_err();
        assert_eq!(
            error,
            ScanError::NoSuchVertex {
                place: Place::Line(4),
                index,
                vertices: 3
            }
        );
    }
}

#[test]
fn a_wrong_unit_shows_as_too_far() {
    let error = read_scan(
        b"v 1e6 0 0",
        Some(ScanFormat::Obj),
        1000.0,
        &Limits::default(),
    );
    assert!(
        matches!(error, Err(ScanError::TooFar { vertex: 1, .. })),
        "{error:?}"
    );
    for unit in [0.0, -1.0, f64::NAN, f64::INFINITY] {
        let error = read_scan(b"v 1 0 0", Some(ScanFormat::Obj), unit, &Limits::default());
        assert!(matches!(error, Err(ScanError::BadUnit { .. })));
    }
}

#[test]
fn a_scan_of_nothing_but_flat_triangles_says_so() {
    let soup = Soup {
        triangles: vec![[0, 0, 1], [1, 1, 1]],
        ..one()
    };
    for bytes in [stl_binary(&soup), obj(&soup, "\n")] {
        let error = read_scan(&bytes, None, 1.0, &Limits::default()).unwrap_err();
        assert_eq!(error, ScanError::NothingLeft { dropped: 2 });
    }
}

#[test]
fn text_cut_between_triangles_is_told() {
    let text = stl_ascii(&one());
    let without_end = &text[..text.len() - "endsolid\n".len()];
    let scan = read(without_end, ScanFormat::Stl).unwrap();
    assert!(scan.warnings().contains(&ScanWarning::NoClosingWord));
    let within = &text[..text.len() - 40];
    assert!(matches!(
        read(within, ScanFormat::Stl),
        Err(ScanError::Truncated { .. })
    ));
}

#[test]
fn a_long_word_is_cut_in_the_message() {
    let text = format!("v 0 0 {}\n", "x".repeat(100_000));
    let error = read(text.as_bytes(), ScanFormat::Obj).unwrap_err();
    assert!(error.to_string().len() < 120);
}
