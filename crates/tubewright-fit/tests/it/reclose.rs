use crate::runs;
use proptest::prelude::*;
use tubewright_fit::built::turned;
use tubewright_fit::reclose::{Aim, Loose, May, Steps, as_they_are, ways_on};
use tubewright_geometry::{Frame, Piece, Vector};

const STEPS: Steps = Steps {
    length_mm: 1.0,
    angle_rad: 0.017_453_292_519_943_295,
    clock_rad: 0.017_453_292_519_943_295,
};

fn aim(end: &Frame) -> Aim {
    Aim {
        point: end.origin,
        direction: end.travel(),
        place_mm: 3.0,
        direction_rad: 1.0f64.to_radians(),
    }
}

fn same(a: f64, b: f64) -> bool {
    (a - b).abs() < 1e-12
}

fn everything(piece: Piece) -> Loose {
    Loose {
        piece,
        may: May {
            clock: true,
            length_mm: Some((20.0, 600.0)),
            angle_rad: None,
        },
    }
}

fn off(frame: &Frame, shift: [f64; 3], turn: [f64; 3]) -> Frame {
    let moved = Frame::from_axes(
        frame.origin + Vector::from_array(shift),
        frame.travel(),
        frame.twelve(),
    );
    turned(&moved, Vector::from_array(turn))
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(24))]

    #[test]
    fn a_joint_a_few_millimetres_off_is_taken_up_by_clocks_and_lengths(
        start in runs::start(), pieces in runs::run(),
        shift in prop::array::uniform3(-5.0..5.0f64), turn in prop::array::uniform3(-0.008..0.008f64),
    ) {
        let aim = aim(&runs::end(&start, &pieces));
        let loose: Vec<Loose> = pieces.iter().copied().map(everything).collect();
        let found = off(&start, shift, turn);
        let ways = ways_on(&found, &loose, &aim, &STEPS, 5);
        prop_assume!(!ways.is_empty());
        let best = &ways[0];
        let before = as_they_are(&found, pieces.clone(), &aim);
        // Whole degrees of clock leave a few millimetres a metre further on.
        let off = (best.place_error_mm / 3.0).powi(2) + best.direction_error_rad.to_degrees().powi(2);
        prop_assert!(off <= 5.0, "{} mm, {}° (as they are {} mm)", best.place_error_mm,
            best.direction_error_rad.to_degrees(), before.place_error_mm);
        // It says where it ends, and stays in the shop's steps.
        let end = runs::end(&found, &best.pieces);
        prop_assert!((end.origin.distance(aim.point) - best.place_error_mm).abs() < 1e-9);
        for piece in &best.pieces {
            match piece {
                Piece::Straight { length_mm } => prop_assert!((length_mm - length_mm.round()).abs() < 1e-9),
                Piece::Bend { clock_rad, .. } => {
                    let deg = clock_rad.to_degrees();
                    prop_assert!((deg - deg.round()).abs() < 1e-6);
                }
                _ => {}
            }
        }
    }

    #[test]
    fn what_may_not_change_does_not(
        start in runs::start(), pieces in runs::run(), shift in prop::array::uniform3(-5.0..5.0f64),
    ) {
        let aim = aim(&runs::end(&start, &pieces));
        let loose: Vec<Loose> = pieces.iter().enumerate().map(|(index, piece)| Loose {
            piece: *piece,
            may: May { clock: index % 4 != 1, length_mm: (index % 4 == 0).then_some((20.0, 600.0)), angle_rad: None },
        }).collect();
        let found = off(&start, shift, [0.0; 3]);
        for way in ways_on(&found, &loose, &aim, &STEPS, 3) {
            for (was, is) in loose.iter().zip(&way.pieces) {
                match (was.piece, is) {
                    (Piece::Straight { length_mm: a }, Piece::Straight { length_mm: b }) =>
                        prop_assert!(was.may.length_mm.is_some() || same(a, *b)),
                    (Piece::Bend { clock_rad: a, bend_rad: x, .. }, Piece::Bend { clock_rad: b, bend_rad: y, .. }) =>
                        prop_assert!((was.may.clock || same(a, *b)) && same(x, *y)),
                    _ => prop_assert!(false, "a piece became another"),
                }
            }
        }
    }

    #[test]
    fn a_cut_straight_is_never_made_longer(
        start in runs::start(), pieces in runs::run(), shift in prop::array::uniform3(-6.0..6.0f64),
    ) {
        let aim = aim(&runs::end(&start, &pieces));
        let loose: Vec<Loose> = pieces.iter().map(|piece| Loose {
            piece: *piece,
            may: match piece {
                Piece::Straight { length_mm } => May { length_mm: Some((20.0, *length_mm)), ..May::default() },
                _ => May { clock: true, ..May::default() },
            },
        }).collect();
        for way in ways_on(&off(&start, shift, [0.0; 3]), &loose, &aim, &STEPS, 3) {
            for (was, is) in pieces.iter().zip(&way.pieces) {
                if let (Piece::Straight { length_mm: a }, Piece::Straight { length_mm: b }) = (was, is) {
                    prop_assert!(*b <= a + 1e-9);
                }
            }
        }
    }
}

#[test]
fn a_joint_where_the_plan_has_it_changes_nothing() {
    let start = Frame::IDENTITY;
    let bend = |clock: f64| Piece::Bend {
        bend_rad: 45f64.to_radians(),
        clock_rad: clock.to_radians(),
        clr_mm: 85.5,
    };
    let pieces = vec![
        bend(10.0),
        Piece::Straight { length_mm: 200.0 },
        bend(95.0),
        bend(-30.0),
        Piece::Straight { length_mm: 90.0 },
        bend(120.0),
    ];
    let loose: Vec<Loose> = pieces.iter().copied().map(everything).collect();
    let aim = aim(&runs::end(&start, &pieces));
    let ways = ways_on(&start, &loose, &aim, &STEPS, 1);
    for (was, is) in pieces.iter().zip(&ways[0].pieces) {
        let size = |piece: &Piece| match *piece {
            Piece::Bend { clock_rad, .. } => clock_rad.to_degrees(),
            _ => piece.length_mm(),
        };
        assert!((size(was) - size(is)).abs() < 1e-9, "{was:?} became {is:?}");
    }
    assert!(ways[0].place_error_mm < 1e-9);
}
