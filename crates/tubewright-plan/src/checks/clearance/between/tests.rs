//! Gaps between runs against positions that are sampled one by one.

use super::*;
use crate::routes::{PlannedKind, PlannedPiece, PlannedRun};
use proptest::prelude::*;
use tubewright_geometry::{CentreLine, Frame, TubeElement, Vector};

fn straight(at: Point, travel: UnitVector, length_mm: f64, od_mm: f64) -> PlannedRun {
    let start = Frame::upright(at, travel);
    let out = Frame::upright(at + travel.vector() * length_mm, travel);
    PlannedRun {
        name: "left".to_owned(),
        tube: "57".to_owned(),
        od_mm,
        end_od_mm: od_mm,
        start,
        sawn: None,
        end_point: out.origin,
        end_direction: travel,
        pieces: vec![PlannedPiece {
            mark: "L1".to_owned(),
            joint: "J1".to_owned(),
            kind: PlannedKind::Straight { length_mm },
            frame_in: start,
            frame_out: out,
            elements: vec![TubeElement {
                line: CentreLine::Segment {
                    a: at,
                    b: out.origin,
                },
                radius: 0.5 * od_mm,
            }],
            uncovered_mm: 0.0,
        }],
        last_joint: "J2".to_owned(),
        clr_mm: 85.5,
        self_gap_mm: 10.0,
        run_gap_mm: 15.0,
        starts_on: None,
        ends_on: None,
        lined_from_behind: std::collections::BTreeSet::new(),
    }
}

fn moving(run: &PlannedRun, motion: Motion) -> MovingRun<'_> {
    MovingRun {
        run,
        hold: None,
        piece_motions: vec![motion],
    }
}

fn rock(min_deg: f64, max_deg: f64) -> Motion {
    Motion {
        freedoms: vec![Freedom::Turn {
            on_axis: Point::new(0.0, 0.0, 200.0),
            axis: UnitVector::X,
            min_rad: min_deg.to_radians(),
            max_rad: max_deg.to_radians(),
        }],
    }
}

fn value(finding: &Finding) -> f64 {
    finding.measured.expect("it was measured").value
}

#[test]
fn two_runs_that_sway_lose_both_sways() {
    let first = straight(Point::new(0.0, -60.0, 0.0), UnitVector::X, 500.0, 50.0);
    let second = straight(Point::new(0.0, 60.0, 0.0), UnitVector::X, 500.0, 50.0);
    let sway = Motion {
        freedoms: vec![Freedom::Sway { radius_mm: 8.0 }],
    };
    let gap = value(&two_runs(
        &moving(&first, sway.clone()),
        &moving(&second, sway),
        &Joint::default(),
    ));
    assert!((gap - (120.0 - 50.0 - 16.0)).abs() < 0.11, "{gap}");
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(24))]

    /// The reported gap is never above what any sampled position has, and not far below the least.
    #[test]
    fn rocking_past_another_run_is_found(
        y in 60.0..160.0_f64,
        z in -120.0..60.0_f64,
        low in -8.0..0.0_f64,
        high in 0.0..8.0_f64,
        slant in -0.3..0.3_f64,
    ) {
        let travel = Vector::new(1.0, slant, 0.0).direction().expect("not zero");
        let first = straight(Point::new(0.0, 0.0, 0.0), UnitVector::X, 400.0, 50.0);
        let second = straight(Point::new(0.0, y, z), travel, 400.0, 50.0);
        let reported = value(&two_runs(
            &moving(&first, rock(low, high)),
            &moving(&second, Motion::FIXED),
            &Joint::default(),
        ));
        let mut sampled = f64::INFINITY;
        for step in 0..=200 {
            let angle = (low + (high - low) * f64::from(step) / 200.0).to_radians();
            let turned = rock(low, high).at(&[angle]);
            for at in 0..=80 {
                let a = turned.point(Point::new(5.0 * f64::from(at), 0.0, 0.0));
                for along in 0..=80 {
                    let b = Point::new(0.0, y, z) + travel.vector() * (5.0 * f64::from(along));
                    sampled = sampled.min((a - b).norm() - 50.0);
                }
            }
        }
        if sampled < 0.0 {
            // How deep two tubes run into each other is not told, only that they do.
            prop_assert!(reported < 0.0, "{reported} though they overlap by {sampled}");
        } else {
            prop_assert!(reported <= sampled + 1e-6, "{reported} above {sampled}");
            prop_assert!(reported >= sampled - 1.0, "{reported} far below {sampled}");
        }
    }
}
