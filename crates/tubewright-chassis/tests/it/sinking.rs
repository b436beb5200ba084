//! How far a frame sinks, against closed forms and against the same frame turned.
#![allow(
    clippy::unwrap_used,
    reason = "a test that cannot build its frame fails"
)]

use super::tube;
use proptest::prelude::*;
use tubewright_chassis::{BeamError, Beams, FREE_FALL_M_PER_S2};
use tubewright_geometry::{Point, Vector};

const STIFF: f64 = 1e9;

/// A clamped tube of 800 mm, bare, sinks `w L⁴ / (8 E I)` at its free end, level or pointing anywhere level
/// (S. Timoshenko, Strength of Materials part I, 1940, cantilever under a uniform load; from memory).
#[test]
fn a_cantilever_sinks_by_the_handbook() {
    let beam = tube(57.0, 1.5);
    for heading in [0.0_f64, 0.7, 2.1] {
        let mut beams = Beams::new();
        let along = Vector::new(1.0, 0.0, 0.0)
            .rotated_about(Vector::new(0.0, 0.0, 1.0).direction().unwrap(), heading);
        for k in 0..=16 {
            let at = beams.place(Point::new(10.0, 20.0, 30.0) + along * (50.0 * f64::from(k)));
            if at > 0 {
                beams.member(at - 1, at, beam);
            }
        }
        beams.spring(0, Vector::ZERO, [STIFF; 3], [STIFF * 1e4; 3]);
        let moved = beams.factored().unwrap().under_weight();
        let per_mm = beam.kg_per_mm * FREE_FALL_M_PER_S2;
        let expected =
            per_mm * 800.0_f64.powi(4) / (8.0 * beam.young_mpa * beam.second_moment_mm4());
        let found = -moved.shift(16, Vector::ZERO).z;
        assert!(
            (found - expected).abs() < 1e-4 * expected,
            "{found} for {expected}"
        );
    }
}

/// A bend of a quarter turn, clamped, with a load at its free end square to its plane: it bends and twists,
/// `P R³ (π/4 / EI + (3π/4 − 2) / GJ)` (S. Timoshenko, Strength of Materials part II, 1941, curved bars loaded
/// out of plane, by Castigliano; derived again here by hand).
#[test]
fn a_quarter_bend_sinks_by_castigliano() {
    let beam = tube(57.0, 1.5);
    let (clr, parts) = (300.0, 90);
    let mut beams = Beams::new();
    for k in 0..=parts {
        let angle = core::f64::consts::FRAC_PI_2 * f64::from(k) / f64::from(parts);
        let (sin, cos) = tubewright_geometry::math::sin_cos(angle);
        let at = beams.place(Point::new(clr * sin, clr * (1.0 - cos), 0.0));
        if at > 0 {
            beams.member(at - 1, at, beam);
        }
    }
    beams.spring(0, Vector::ZERO, [STIFF; 3], [STIFF * 1e4; 3]);
    let end = usize::try_from(parts).unwrap();
    let found = beams
        .factored()
        .unwrap()
        .under_a_newton(end, Vector::ZERO)
        .shift(end, Vector::ZERO)
        .z;
    let bending = beam.young_mpa * beam.second_moment_mm4();
    let twist = beam.young_mpa / (2.0 * 1.3) * 2.0 * beam.second_moment_mm4();
    let pi = core::f64::consts::PI;
    let expected = clr.powi(3) * (0.25 * pi / bending + (0.75 * pi - 2.0) / twist);
    assert!(
        (found - expected).abs() < 1e-3 * expected,
        "{found} for {expected}"
    );
}

#[test]
fn what_nothing_holds_is_loose() {
    let mut beams = Beams::new();
    let (a, b) = (
        beams.place(Point::ORIGIN),
        beams.place(Point::new(100.0, 0.0, 0.0)),
    );
    beams.member(a, b, tube(57.0, 1.5));
    assert_eq!(beams.factored().err(), Some(BeamError::Loose));
    beams.member(b, b, tube(57.0, 1.5));
    assert_eq!(beams.factored().err(), Some(BeamError::Member(1)));
}

proptest! {
    /// The rise of one place by a newton at another is that of the other by a newton at the first (Maxwell
    /// 1864, Betti 1872), whatever the frame.
    #[test]
    fn places_answer_each_other(
        steps in prop::collection::vec((20.0_f64..200.0, -0.8_f64..0.8, -0.8_f64..0.8), 2..12),
        arms in prop::array::uniform2(prop::array::uniform3(-80.0_f64..80.0)),
        picks in prop::array::uniform2(0_usize..12),
    ) {
        let beam = tube(57.0, 1.5);
        let mut beams = Beams::new();
        let mut at = Point::ORIGIN;
        beams.place(at);
        for (length, side, up) in &steps {
            at += Vector::new(1.0, *side, *up) * *length;
            let place = beams.place(at);
            beams.member(place - 1, place, beam);
        }
        beams.spring(0, Vector::ZERO, [50.0; 3], [1e6; 3]);
        let mut factored = beams.factored().unwrap();
        let place = picks.map(|pick| pick % beams.len());
        let arm = arms.map(Vector::from_array);
        let one = factored.under_a_newton(place[0], arm[0]).shift(place[1], arm[1]).z;
        let other = factored.under_a_newton(place[1], arm[1]).shift(place[0], arm[0]).z;
        prop_assert!((one - other).abs() <= 1e-6 * (1.0 + one.abs()), "{} and {}", one, other);
    }
}
