//! A crossover of two split bends: marks and the length of the weld.

use std::f64::consts::{FRAC_PI_2, PI};
use tubewright_geometry::math;
use tubewright_sheets::{SplitCross, SplitCrossError, StepStamp, split_cross_step};

const LONG: SplitCross = SplitCross {
    od_mm: 57.0,
    wall_mm: 1.5,
    clr_mm: 85.5,
    bend_rad: FRAC_PI_2,
    legs_mm: [100.0, 60.0],
    plane_mm: 100.0,
};

#[test]
fn the_weld_is_as_long_as_the_oval_that_the_plane_cuts() {
    // In the plane: y = √(ρ² - d²) with ρ = R + √(r² - z²), walked in z, which no code of ours does.
    // ρ ≥ d up to z = √(r² - (d - R)²) = √(28.5² - 14.5²) = 24.53 mm.
    let top = (28.5_f64.powi(2) - 14.5_f64.powi(2)).sqrt();
    let y = |z: f64| {
        let rho = 85.5 + (28.5_f64.powi(2) - z * z).sqrt();
        (rho * rho - 1e4).max(0.0).sqrt()
    };
    // Steps grow finer toward the top, where the curve is steep.
    let steps = 200_000;
    let place = |i: i32| top * math::sin(FRAC_PI_2 * f64::from(i) / f64::from(steps));
    let quarter: f64 = (0..steps)
        .map(|i| {
            let (a, b) = (place(i), place(i + 1));
            math::hypot(y(b) - y(a), b - a)
        })
        .sum();
    let weld = LONG.weld_mm().unwrap();
    assert!(
        (weld - 4.0 * quarter).abs() < 0.01,
        "{weld} and {}",
        4.0 * quarter
    );
}

#[test]
fn the_marks_run_from_the_back_to_the_last_line_that_is_cut() {
    let marks = LONG.marks(PI / 12.0).unwrap();
    // On the back: (R + r) acos(d / (R + r)) = 114 acos(100/114) = 114 * 0.50081 = 57.09.
    assert!((marks[0].along_mm - 57.09).abs() < 0.01, "{:?}", marks[0]);
    assert!((marks[1].round_mm - 28.5 * PI / 12.0).abs() < 1e-9);
    let last = marks.last().unwrap();
    assert!(last.along_mm.abs() < 1e-3, "{last:?}");
    // acos((d - R) / r) = acos(14.5 / 28.5) = 59.42°.
    assert!((last.from_back_rad.to_degrees() - 59.42).abs() < 0.01);
    assert!(
        marks
            .windows(2)
            .all(|pair| pair[0].along_mm > pair[1].along_mm)
    );
}

#[test]
fn a_plane_that_opens_nothing_and_legs_that_are_too_short_are_refused() {
    // 113 mm takes the wall of 1.5 mm only in part: 114 - 113 = 1 mm.
    let shallow = SplitCross {
        plane_mm: 113.0,
        ..LONG
    };
    assert!(matches!(
        shallow.half(),
        Err(SplitCrossError::NoOpening { .. })
    ));
    let miss = SplitCross {
        plane_mm: 120.0,
        ..LONG
    };
    assert!(matches!(miss.half(), Err(SplitCrossError::Split(_))));
    let short = SplitCross {
        bend_rad: PI / 6.0,
        legs_mm: [100.0, 5.0],
        ..LONG
    };
    assert!(matches!(
        short.half(),
        Err(SplitCrossError::LegTooShort { .. })
    ));
}

#[test]
fn both_halves_are_in_the_file_and_the_same_input_gives_the_same_bytes() {
    let stamp = StepStamp::default();
    for cross in [
        LONG,
        SplitCross {
            bend_rad: PI / 6.0,
            legs_mm: [100.0; 2],
            ..LONG
        },
    ] {
        let text = split_cross_step(&cross, &stamp).unwrap();
        assert_eq!(text.matches("MANIFOLD_SOLID_BREP").count(), 2);
        assert!(text.contains("'split bend one'") && text.contains("'split bend two'"));
        assert!(!text.contains("NaN") && !text.contains("inf"));
        assert_eq!(text, split_cross_step(&cross, &stamp).unwrap());
    }
}
