//! Solids: same bytes, names kept, unsound pieces refused. That they are valid is for the outside
//! kernel to say.

use tubewright_geometry::{CentreLine, TubeElement};
use tubewright_sheets::{MeshFineness, Scene, SolidError, StepStamp, to_glb, to_step};

fn stamp() -> StepStamp {
    StepStamp {
        file_name: "cuts.step".to_owned(),
        date_time: "2026-03-14T12:00:00".to_owned(),
        plan_hash: "3f9c".to_owned(),
    }
}

#[test]
fn the_same_pieces_give_the_same_bytes() {
    let scene = crate::common::estate();
    assert!(to_step(&scene, &stamp()).unwrap() == to_step(&scene, &stamp()).unwrap());
    let glb = || to_glb(&scene, MeshFineness::default()).unwrap();
    assert!(glb() == glb());
}

/// The clear text encoding: entities numbered once, every reference to one that is there, reals with a
/// point.
#[test]
fn every_reference_is_to_an_entity() {
    let text = to_step(&crate::common::estate(), &stamp()).unwrap();
    let mut defined = std::collections::BTreeSet::new();
    let mut used = std::collections::BTreeSet::new();
    for line in text.lines().filter(|l| l.starts_with('#')) {
        let (id, body) = line.split_once('=').unwrap();
        assert!(
            defined.insert(id[1..].parse::<u32>().unwrap()),
            "{id} twice"
        );
        for part in body.split('#').skip(1) {
            let digits: String = part.chars().take_while(char::is_ascii_digit).collect();
            used.insert(digits.parse::<u32>().unwrap());
        }
    }
    let missing: Vec<_> = used.difference(&defined).collect();
    assert!(missing.is_empty(), "{missing:?}");
}

#[test]
fn names_survive_quotes_and_letters_of_all_kinds() {
    let mut scene = crate::common::cut_pieces();
    scene.runs[0].pieces[0].name = Some("Topf 'groß'".to_owned());
    let text = to_step(&scene, &stamp()).unwrap();
    assert!(
        text.contains(r"'C1 Topf ''gro\X4\000000DF\X0\'''"),
        "name not written safely"
    );
    let glb = to_glb(&scene, MeshFineness::default()).unwrap();
    let json = "\"C1 Topf 'groß'\"".as_bytes();
    assert!(glb.windows(json.len()).any(|w| w == json));
}

#[test]
fn the_binary_says_its_own_length() {
    let glb = to_glb(&crate::common::cut_pieces(), MeshFineness::default()).unwrap();
    let length = u32::from_le_bytes(glb[8..12].try_into().unwrap());
    assert_eq!(usize::try_from(length).unwrap(), glb.len());
    assert_eq!(&glb[..4], b"glTF");
    assert_eq!(glb.len() % 4, 0);
}

#[test]
fn unsound_pieces_are_refused_by_their_mark() {
    let step = |change: &dyn Fn(&mut Scene)| {
        let mut scene = crate::common::cut_pieces();
        change(&mut scene);
        to_step(&scene, &stamp()).unwrap_err()
    };
    assert_eq!(step(&|s| s.runs.clear()), SolidError::NothingToWrite);
    let error = step(&|s| s.runs[0].pieces[1].wall_mm = 40.0);
    assert!(
        matches!(&error, SolidError::NoBore { mark, .. } if mark == "C2"),
        "{error}"
    );
    let error = step(&|s| s.runs[0].pieces[0].wall_mm = f64::NAN);
    assert!(
        matches!(&error, SolidError::NoBore { mark, .. } if mark == "C1"),
        "{error}"
    );
    // The middle of three elements missing: a gap.
    let error = step(&|s| {
        s.runs[0].pieces[2].elements.remove(1);
    });
    assert_eq!(
        error,
        SolidError::Broken {
            mark: "C3".to_owned(),
            element: 2
        }
    );
    // A cut along the tube.
    let error = step(&|s| {
        let travel = s.runs[0].pieces[0].frame_in.travel();
        s.runs[0].pieces[0].cut_out = Some(travel.any_normal());
    });
    assert_eq!(
        error,
        SolidError::Cut {
            mark: "C1".to_owned()
        }
    );
    let error = step(&|s| s.runs[0].pieces[2].elements.truncate(0));
    assert_eq!(
        error,
        SolidError::Broken {
            mark: "C3".to_owned(),
            element: 1
        }
    );
}

/// A straight whose weld lies inside it, tacked a little off: its halves are two solids until they meet.
#[test]
fn a_straight_in_two_halves_is_two_solids_while_they_do_not_meet() {
    let count = |apart_mm: f64| {
        let mut scene = crate::common::cut_pieces();
        let piece = &mut scene.runs[0].pieces[0];
        piece.kind = tubewright_sheets::PieceKind::Straight;
        (piece.cut_in, piece.cut_out) = (None, None);
        let frame = piece.frame_in;
        let half = |from_mm: f64| TubeElement {
            line: CentreLine::straight(&frame.advanced(from_mm), 120.0),
            radius: 30.0,
        };
        piece.elements = vec![half(0.0), half(120.0 + apart_mm)];
        let text = to_step(&scene, &stamp()).unwrap();
        assert!(to_glb(&scene, MeshFineness::default()).is_ok());
        text.matches("MANIFOLD_SOLID_BREP(").count()
    };
    assert_eq!(count(2.0), count(0.0) + 1);
}
