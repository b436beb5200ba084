//! The error budget against errors put in by hand.

use tubewright_geometry::{Angle, Frame, Length, UnitVector, math};
use tubewright_stock::{ChainPiece, Tolerances, closing_trim, end_covariance};

const NONE: Tolerances = Tolerances {
    cut_length: Length::ZERO,
    cut_angle: Angle::ZERO,
    clock: Angle::ZERO,
    bend_angle: Angle::ZERO,
    weld_pull: Length::ZERO,
};

/// A bend of 40° rolled to `clock_deg`, then 600 mm straight; `more_deg` is an error of the bend and
/// `rolled_deg` one of the clock behind it.
fn end(clock_deg: f64, more_deg: f64, rolled_deg: f64) -> (Frame, Frame) {
    let bent = Frame::IDENTITY
        .advanced(300.0)
        .rolled(clock_deg.to_radians())
        .bent((40.0 + more_deg).to_radians(), 95.0);
    (
        bent,
        bent.rolled(rolled_deg.to_radians())
            .advanced(10.0)
            .bent(0.5, 95.0)
            .advanced(600.0),
    )
}

#[test]
fn a_degree_of_bend_is_its_lever_arm_at_the_end() {
    let (bend_end, planned) = end(70.0, 0.0, 0.0);
    let piece = ChainPiece {
        downstream: bend_end,
        is_bend: true,
        has_joint: true,
    };
    for (tolerances, (_, wrong)) in [
        (
            Tolerances {
                bend_angle: Angle::from_deg(0.01),
                ..NONE
            },
            end(70.0, 0.01, 0.0),
        ),
        (
            Tolerances {
                clock: Angle::from_deg(0.01),
                ..NONE
            },
            end(70.0, 0.0, 0.01),
        ),
    ] {
        let covariance = end_covariance(&[piece], &planned, &tolerances);
        for axis in [UnitVector::X, UnitVector::Y, UnitVector::Z] {
            let moved = axis.dot(wrong.origin - planned.origin).abs();
            // The bend's own centre line moves as well as its end turns: R θ at the end, 95 mm × 0.01°.
            let own = 95.0 * 0.01f64.to_radians() * 1.01;
            let got = covariance.along(axis).mm();
            assert!((got - moved).abs() <= own, "{got} {moved}");
        }
    }
}

#[test]
fn lengths_add_in_squares_along_the_tube() {
    let frame = Frame::IDENTITY;
    let pieces: Vec<ChainPiece> = (1..=9)
        .map(|n| ChainPiece {
            downstream: frame.advanced(100.0 * f64::from(n)),
            is_bend: false,
            has_joint: false,
        })
        .collect();
    let tolerances = Tolerances {
        cut_length: Length::from_mm(0.5),
        ..NONE
    };
    let covariance = end_covariance(&pieces, &frame.advanced(900.0), &tolerances);
    // sqrt(9) x 0.5
    assert!((covariance.along(UnitVector::X).mm() - 1.5).abs() < 1e-12);
    assert!(covariance.along(UnitVector::Y).mm() < 1e-12);
    assert!((closing_trim(&covariance, UnitVector::X).mm() - 1.5 * 1.96).abs() < 1e-12);
}

#[test]
fn a_joint_out_of_square_moves_the_end_by_its_arm() {
    let frame = Frame::IDENTITY;
    let piece = ChainPiece {
        downstream: frame,
        is_bend: false,
        has_joint: true,
    };
    let tolerances = Tolerances {
        cut_angle: Angle::from_deg(0.5),
        ..NONE
    };
    let covariance = end_covariance(&[piece], &frame.advanced(1000.0), &tolerances);
    let expected = 1000.0 * 0.5 * math::PI / 180.0;
    assert!((covariance.along(UnitVector::Y).mm() - expected).abs() < 1e-9);
    assert!((covariance.along(UnitVector::Z).mm() - expected).abs() < 1e-9);
    assert!((covariance.about(UnitVector::Y).deg() - 0.5).abs() < 1e-12);
}
