//! Saw marks and clocks.

use proptest::prelude::*;
use tubewright_geometry::{Angle, Length};
use tubewright_stock::{
    CutCard, FaceBy, KerfSide, PartPlace, SawTrouble, StockEnd, StockShape, cut_cards, fit_marks,
    plan_stock,
};

use crate::plans::runs;
use crate::shop::{mm, shop, straight, turn};

#[test]
fn marks_of_a_bend_cut_in_two_with_a_leg() {
    let request = shop(vec![
        turn("B1", 40.0, 0.0),
        straight("S2", 80.0),
        turn("B3", 30.0, 0.0),
    ]);
    let plan = plan_stock(&request).unwrap();
    let cards = cut_cards(&plan, &request.rules);
    assert_eq!(cards.len(), 1);
    let cuts = &cards[0].cuts;
    // Legs of 100: one is trimmed to 80; then the arc is cut after each part, and the second part's
    // face is dressed to a ring of its own.
    let sawn = cuts.iter().filter(|cut| cut.by == FaceBy::Saw).count();
    assert_eq!((cuts.len(), sawn), (4, 3));
    let arc_cuts: Vec<_> = cuts
        .iter()
        .filter(|cut| (cut.reach.outside - cut.reach.inside).mm() > 0.01)
        .collect();
    let mut turns: Vec<f64> = arc_cuts
        .iter()
        .map(|cut| {
            // The tape on the back reads leg + (95.25 + 31.75) A; on the inside leg + (95.25 - 31.75) A.
            let out = (cut.reach.outside.mm() - 100.0) / (95.25 + 31.75);
            let side = (cut.reach.side.mm() - 100.0) / 95.25;
            assert!((out - side).abs() < 1e-9);
            out.to_degrees()
        })
        .collect();
    turns.sort_by(f64::total_cmp);
    // 2 mm at the inside radius of 63.5 mm: asin(2/63.5) = 1.805 degrees between the parts. The ring of
    // the second one is read from the other end: 90 - 40 - 1.805 or 90 - 30 - 1.805.
    let first = turns
        .iter()
        .find(|turn| (**turn - 40.0).abs() < 1e-9 || (**turn - 30.0).abs() < 1e-9)
        .unwrap();
    for expected in [90.0 - first - 1.805, 71.805] {
        assert!(
            turns.iter().any(|turn| (turn - expected).abs() < 1e-3),
            "{turns:?}"
        );
    }
    // On the back 1.805 degrees are (95.25 + 31.75) 0.0315 = 4.00 mm, of which the blade takes 2.
    let dressed: Vec<f64> = cuts
        .iter()
        .filter_map(|cut| match cut.by {
            FaceBy::Saw => None,
            FaceBy::Dress { most } => Some(most.mm()),
        })
        .collect();
    assert_eq!(dressed.len(), 1);
    assert!((dressed[0] - 2.0).abs() < 0.01, "{dressed:?}");
    assert!(cards[0].findings.is_empty());
}

/// A slot has parallel faces: what is square on one side of it in an arc is 1.8° off on the other. A
/// blade needs metal on both sides: what is thinner is ground off.
#[test]
fn no_ring_asks_the_saw_for_what_it_cannot_do() {
    for angles in [[20.0, 13.0, 15.0], [44.0, 42.5, 0.0], [60.0, 29.7, 0.0]] {
        let pieces = [("B1", angles[0]), ("B2", angles[1]), ("B3", angles[2])]
            .into_iter()
            .filter(|(_, angle)| *angle > 0.0)
            .map(|(mark, angle)| turn(mark, angle, 0.0))
            .collect();
        let request = shop(pieces);
        let plan = plan_stock(&request).unwrap();
        for card in cut_cards(&plan, &request.rules) {
            let names: Vec<Vec<String>> = card
                .parts
                .iter()
                .map(|part| part.serves.iter().map(|s| s.mark.clone()).collect())
                .collect();
            let faces = faces(&card);
            for cut in &card.cuts {
                let in_arc = (cut.reach.outside - cut.reach.inside).mm() > 0.01;
                assert!(!in_arc || names.contains(&cut.faces), "{cut:?}");
            }
            for pair in faces.windows(2) {
                let sawn = |at: f64| {
                    card.cuts.iter().any(|cut| {
                        let whole = faces.last().unwrap().0;
                        let along = match cut.from {
                            StockEnd::A => cut.reach.centre_line.mm(),
                            StockEnd::B => whole - cut.reach.centre_line.mm(),
                        };
                        (along - at).abs() < 1e-9 && cut.by == FaceBy::Saw
                    })
                };
                let [(low, low_side), (high, high_side)] = pair else {
                    unreachable!()
                };
                let is_waste = *low_side == KerfSide::TowardB
                    && *high_side == KerfSide::TowardA
                    && (low - high).abs() > 1e-9;
                assert!(
                    !is_waste
                        || high - low >= 2.0 * request.rules.kerf.mm()
                        || !(sawn(*low) && sawn(*high)),
                    "{card:?}"
                );
            }
        }
    }
}

#[test]
fn a_piece_too_short_to_hold_comes_off_while_the_rest_is_held() {
    let request = shop(vec![
        turn("B1", 8.0, 0.0),
        straight("S2", 300.0),
        turn("B3", 80.0, 0.0),
    ]);
    let plan = plan_stock(&request).unwrap();
    for card in cut_cards(&plan, &request.rules) {
        assert!(card.findings.is_empty(), "{:?}", card.findings);
    }
}

#[test]
fn nothing_left_to_hold_is_said() {
    let mut request = shop(vec![turn("B1", 44.0, 0.0)]);
    request.rules.least_grip = mm(400.0);
    let plan = plan_stock(&request).unwrap();
    let card = &cut_cards(&plan, &request.rules)[0];
    assert!(matches!(
        card.findings[0].trouble,
        SawTrouble::CannotHold { .. }
    ));
    request.rules.least_grip = mm(0.0);
    request.rules.saw_capacity = mm(50.0);
    let card = &cut_cards(&plan, &request.rules)[0];
    assert!(matches!(
        card.findings[0].trouble,
        SawTrouble::TooLarge { .. }
    ));
}

#[test]
fn clocks_go_from_witness_line_to_witness_line() {
    let request = shop(vec![
        straight("S1", 400.0),
        turn("B2", 45.0, 30.0),
        straight("S3", 500.0),
        turn("B4", 45.0, -100.0),
        turn("B5", 45.0, 180.0),
    ]);
    let plan = plan_stock(&request).unwrap();
    let marks = fit_marks(&request, &plan);
    let clocks: Vec<(String, f64)> = marks
        .iter()
        .map(|m| (m.marks.join("+"), m.clock.deg().round()))
        .collect();
    let expected = [
        ("S1", 0.0),
        // The outside lies opposite the turn: 30 + 180 from twelve is -150.
        ("B2", -150.0),
        ("S3", 0.0),
        ("B4", -100.0),
        ("B5", 180.0),
    ];
    for ((name, clock), (expected_name, expected_clock)) in clocks.iter().zip(expected) {
        assert_eq!(name, expected_name);
        assert!((clock - expected_clock).abs() < 1e-9, "{name}: {clock}");
    }
    // A quarter of the way round is a quarter of the girth: 100/360 of pi 63.5.
    let b4 = &marks[3];
    assert!((b4.round_outside.mm() + 63.5 * std::f64::consts::PI * 100.0 / 360.0).abs() < 1e-9);
}

/// Faces along the centre line from end A, with the kerf side, from what the tape reads alone.
fn faces(card: &CutCard) -> Vec<(f64, KerfSide)> {
    let whole = match card.stock.shape {
        StockShape::Straight { length } => length,
        StockShape::Bend {
            angle,
            clr,
            leg_a,
            leg_b,
        } => leg_a + clr * angle.rad() + leg_b,
    };
    let mut faces: Vec<(f64, KerfSide)> = card
        .cuts
        .iter()
        .map(|cut| {
            let at = match cut.from {
                StockEnd::A => cut.reach.centre_line,
                StockEnd::B => whole - cut.reach.centre_line,
            };
            (at.mm(), cut.kerf)
        })
        .collect();
    faces.push((0.0, KerfSide::TowardA));
    faces.push((whole.mm(), KerfSide::TowardB));
    faces.sort_by(|x, y| x.0.total_cmp(&y.0));
    faces
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(48))]

    /// Whoever saws at the marks gets the parts: each part lies between two faces, or between a face
    /// and the kerf of the one before it, and cut + kerf + rest is the whole.
    #[test]
    fn sawing_at_the_marks_gives_the_parts(request in runs()) {
        let plan = plan_stock(&request).unwrap();
        for card in cut_cards(&plan, &request.rules) {
            let faces = faces(&card);
            let (clr, leg_a, turn) = match card.stock.shape {
                StockShape::Straight { .. } => (mm(0.0), mm(0.0), Angle::ZERO),
                StockShape::Bend { clr, leg_a, angle, .. } => (clr, leg_a, angle),
            };
            for part in &card.parts {
                let (from, to) = match part.place {
                    PartPlace::Bar { start, length }
                    | PartPlace::Leg { end: StockEnd::A, start, length } => (start, start + length),
                    PartPlace::Leg { end: StockEnd::B, start, length } => {
                        let whole = mm(faces.last().unwrap().0);
                        (whole - start - length, whole - start)
                    }
                    PartPlace::Arc { start, sweep, keeps_a, keeps_b } => (
                        leg_a - keeps_a + clr * start.rad(),
                        leg_a + clr * (start + sweep).rad() + keeps_b,
                    ),
                };
                prop_assert!(to > from);
                let kerf = |at: Length| {
                    if at > leg_a && at < leg_a + clr * turn.rad() {
                        clr.mm() * request.rules.arc_kerf(&card.stock).unwrap().rad()
                    } else {
                        request.rules.kerf.mm()
                    }
                };
                let starts = faces.iter().any(|(at, side)| match side {
                    KerfSide::TowardA => (at - from.mm()).abs() < 0.01,
                    KerfSide::TowardB => {
                        let gap = from.mm() - at;
                        gap > 0.0 && gap <= kerf(from) + 0.02
                    }
                });
                let ends = faces.iter().any(|(at, side)| {
                    *side == KerfSide::TowardB && (at - to.mm()).abs() < 0.01
                });
                let ends_before_kerf = faces.iter().any(|(at, side)| {
                    *side == KerfSide::TowardA && at - to.mm() > -0.01 && at - to.mm() <= kerf(to) + 0.02
                });
                prop_assert!(starts, "part {:?} of {:?}", part, card);
                prop_assert!(ends || ends_before_kerf, "part {:?} of {:?}", part, card);
            }
        }
    }
}
