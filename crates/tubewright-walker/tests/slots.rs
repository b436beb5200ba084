//! What a saw slot can and cannot do: its faces are parallel, and it has a width.

use tubewright_walker::{Card, End, Saw, SawCut, StockItem, saw};

const SAW: Saw = Saw {
    kerf: 1.6,
    least_grip: 40.0,
    capacity: 150.0,
    reading_slack: 0.01,
};

/// A ring in the arc of the bend below, `at_deg` from the tangent line of leg A.
fn ring(number: u32, at_deg: f64, kerf_toward: End, faces: &[&str], is_dressed: bool) -> SawCut {
    let turn = at_deg.to_radians();
    SawCut {
        number,
        from: End::A,
        outside: 100.0 + (85.5 + 28.5) * turn,
        inside: 100.0 + (85.5 - 28.5) * turn,
        side: 100.0 + 85.5 * turn,
        saw_deg: 0.0,
        is_dressed,
        kerf_toward,
        faces: faces.iter().map(|name| (*name).to_owned()).collect(),
    }
}

/// A bend of 60° on 85.5 mm in a tube of 57 mm, of which 30° with leg A and the rest with leg B are
/// parts.
fn card(cuts: Vec<SawCut>) -> Card {
    Card {
        name: "bend".to_owned(),
        item: StockItem::Bend {
            angle_deg: 60.0,
            clr: 85.5,
            leg_a: 100.0,
            leg_b: 100.0,
        },
        od: 57.0,
        parts: vec![vec!["L1".to_owned()], vec!["L2".to_owned()]],
        cuts,
    }
}

#[test]
fn a_slot_in_an_arc_gives_one_square_face() {
    let made = saw(
        &card(vec![ring(1, 30.0, End::B, &["L1", "L2"], false)]),
        &SAW,
    );
    assert!(
        made.faults.iter().any(|fault| fault.contains("parallel")),
        "{:?}",
        made.faults
    );
}

#[test]
fn a_face_dressed_to_its_own_ring_is_square() {
    // asin(1.6 / 57) = 1.6085°: the slot takes that much at the inside.
    let made = saw(
        &card(vec![
            ring(1, 30.0, End::B, &["L1"], false),
            ring(2, 31.609, End::A, &["L2"], true),
        ]),
        &SAW,
    );
    assert!(made.faults.is_empty(), "{:?}", made.faults);
    let angles: Vec<f64> = made.parts.iter().map(|part| part.angle_deg).collect();
    assert!((angles[0] - 30.0).abs() < 1e-9 && (angles[1] - 28.391).abs() < 1e-9);
}

#[test]
fn rings_closer_than_the_slot_and_two_cuts_side_by_side_are_faults() {
    for (at_deg, is_dressed, word) in [(31.0, true, "slot takes"), (31.9, false, "both sawn")] {
        let made = saw(
            &card(vec![
                ring(1, 30.0, End::B, &["L1"], false),
                ring(2, at_deg, End::A, &["L2"], is_dressed),
            ]),
            &SAW,
        );
        assert!(
            made.faults.iter().any(|fault| fault.contains(word)),
            "{:?}",
            made.faults
        );
    }
}
