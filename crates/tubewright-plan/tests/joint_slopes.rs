//! The angle finder on the face of a tacked joint.

#![allow(
    clippy::expect_used,
    clippy::indexing_slicing,
    reason = "helpers of tests are tests, whatever the lint takes them for"
)]

mod common;

use common::bench::{Bench, a_joint, after, tapes};
use tubewright_build::model::{EntryKind, JointFace, Name};
use tubewright_build::quantity::{Clock, Quantity, write_deg};
use tubewright_geometry::{Angle, Frame, math};
use tubewright_plan::fit::{JointFound, split_at_welds};

const OFF_DEG: f64 = 1.0;

/// What the angle finder says across the face of a joint that lies here, toward two clocks.
fn faces(bench: &Bench, frame: &Frame) -> Vec<JointFace> {
    let floors = &bench.solved.around.measured.places.floors;
    let (setup, floor) = floors.iter().next().expect("a set-up");
    [0.0, 90.0]
        .map(|clock_deg: f64| {
            let along = frame.at_clock(clock_deg.to_radians());
            let rise = along.dot(floor.plumb.vector());
            let level = (along.vector() - floor.plumb * rise).norm();
            let reads = Angle::from_rad(math::atan2(rise, level));
            let clock = Clock::from_angle(Angle::from_deg(clock_deg));
            JointFace {
                clock: Quantity::new(clock, write_deg(clock.angle(), 1)),
                setup: Name::new(setup),
                reads: Quantity::new(reads, write_deg(reads, 1)),
            }
        })
        .to_vec()
}

#[test]
fn slopes_of_the_face_make_the_direction_of_a_joint_surer() {
    let mut cases = 0;
    for seed in 0..4 {
        let Some(bench) = Bench::of(seed) else {
            continue;
        };
        let model = bench.model(&bench.record);
        let runs = bench.planned(&model);
        let supply = bench.supply(&model, &runs);
        let split = split_at_welds(&model, &runs, &supply.whole);
        let Some(joint) = a_joint(&model, &split[0], &supply) else {
            continue;
        };
        let turn = joint.frame.three().vector() * OFF_DEG.to_radians();
        let frame = tubewright_fit::built::turned(&joint.frame, turn);
        let mut few = tapes(&bench, split[0].od_mm, &frame);
        few.truncate(4);
        let found = |faces: Vec<JointFace>| {
            let tacked = EntryKind::Tacked {
                joint: joint.mark.clone(),
                readings: few.clone(),
                faces,
            };
            bench.offered(&after(&bench.record, tacked), &joint.mark).1
        };
        let (without, with) = (found(Vec::new()), found(faces(&bench, &frame)));
        assert!(without.slopes.is_empty() && with.slopes.len() == 2);
        // Turns about three o'clock are what the slope toward twelve reads.
        let sigma = |found: &JointFound| {
            let axis = joint.frame.three().vector().to_array();
            let turns = (0..3).flat_map(|i| (0..3).map(move |j| (i, j)));
            turns
                .map(|(i, j)| axis[i] * found.found.covariance[3 + i][3 + j] * axis[j])
                .sum::<f64>()
                .sqrt()
        };
        assert!(sigma(&with) < sigma(&without), "car {seed}");
        let off = with.found.frame_in_car.travel().angle_to(frame.travel());
        let by_tape = without.found.frame_in_car.travel().angle_to(frame.travel());
        assert!(
            off < by_tape.max(0.4_f64.to_radians()),
            "car {seed}: {off} {by_tape}"
        );
        assert!(
            with.slopes.iter().all(|slope| !slope.is_doubtful),
            "car {seed}: {:?}",
            with.slopes
        );
        cases += 1;
    }
    assert!(cases >= 2, "{cases} cars");
}
