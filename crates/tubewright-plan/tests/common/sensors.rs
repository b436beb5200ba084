//! Places of sensors as they are told, held against everything by sampling.

use tubewright_build::model::ComponentKind;
use tubewright_geometry::{Frame, Point, Vector, math};
use tubewright_plan::fit::{joint_of, split_at_welds};
use tubewright_plan::routes::{PlannedKind, PlannedPiece, PlannedRun};
use tubewright_plan::sensors::{
    FROM_WELD_MM, GAP_MM, LEAST_RISE_DEG, ROOM_MM, Sensor, SensorPlace, sensors,
};
use tubewright_plan::stages::Supply;
use tubewright_walker::Ball;

use super::clearance::{RUN_SPACING_MM, riders};
use super::convert;
use super::neighbours::{neighbours, seams_near};
use super::prove::Verdict;
use super::solved::Solved;

/// Every catalyst has its sensor, and each place keeps what it promises.
pub(crate) fn prove(solved: &Solved, runs: &[PlannedRun], supply: &Supply, verdict: &mut Verdict) {
    let found = sensors(&solved.model, &solved.around, runs, Some(&supply.whole));
    let catalysts = runs
        .iter()
        .flat_map(|run| &run.pieces)
        .filter(|piece| match &piece.kind {
            PlannedKind::Component { name, .. } => {
                convert::component_item(&solved.model, name).map(|item| item.kind)
                    == Some(ComponentKind::Catalyst)
            }
            _ => false,
        })
        .count();
    if found.len() != catalysts {
        verdict.fault(format!("{catalysts} catalysts, {} sensors", found.len()));
    }
    for sensor in &found {
        match &sensor.found {
            Ok(place) => one(solved, runs, supply, sensor, place, verdict),
            Err(why) => verdict
                .notes
                .push(format!("sensor before {}: {why:?}", sensor.catalyst)),
        }
    }
}

fn one(
    solved: &Solved,
    runs: &[PlannedRun],
    supply: &Supply,
    sensor: &Sensor,
    place: &SensorPlace,
    verdict: &mut Verdict,
) {
    let of = format!("sensor before {}", sensor.catalyst);
    let run = runs
        .iter()
        .find(|run| run.name == sensor.run)
        .expect("of a run");
    let (number, piece) = run
        .pieces
        .iter()
        .enumerate()
        .find(|(_, piece)| piece.mark == place.piece)
        .expect("in a piece");
    let upstream = run.pieces.iter().take_while(|piece| {
        !matches!(&piece.kind, PlannedKind::Component { name, .. } if *name == sensor.catalyst)
    });
    // A weld inside a straight has the mark of the joint before it.
    let split = split_at_welds(&solved.model, runs, &supply.whole);
    let (_, joint) = joint_of(&split, &place.joint).expect("a joint of the run");
    let along = |frame: &Frame| {
        let off = joint.frame.origin - frame.origin;
        (off.norm(), off.dot(frame.travel().vector()))
    };
    let (ends, inside) = match place.is_upstream {
        true => (along(&piece.frame_out), -1.0),
        false => (along(&piece.frame_in), 1.0),
    };
    let is_in_straight = matches!(piece.kind, PlannedKind::Straight { .. })
        && (ends.0 - inside * ends.1).abs() < 1e-6
        && ends.0 < piece.centre_line_mm();
    if upstream.count() <= number || !(ends.0 < 1e-6 || is_in_straight) {
        verdict.fault(format!("{of}: it is not upstream, or from another joint"));
    }
    let (middle, out) = axis(run, piece, place, joint.frame.origin);
    let rise_deg = math::asin(out.z).to_degrees();
    if rise_deg < LEAST_RISE_DEG - 1e-6 {
        verdict.fault(format!("{of}: it stands {rise_deg:.1}° above level"));
    }
    let foot = middle + out * (0.5 * run.od_mm);
    if (foot - place.foot.to_vector()).norm() > 0.01 {
        verdict.fault(format!("{of}: told at {foot:?}, meant {:?}", place.foot));
    }
    // Along the centre line, which on the inside of a bend is longer than the surface; a chord is shorter than its
    // arc by less than this on the bends that there are.
    for (joint, away) in seams_near(run, supply, number, middle, 0.9 * FROM_WELD_MM) {
        verdict.fault(format!("{of}: {away:.1} mm from {joint}"));
    }
    let balls = room(foot, out);
    let rider = &riders(solved, run, RUN_SPACING_MM)[number];
    let mut least = f64::INFINITY;
    for near in neighbours(solved, runs, (run, number), rider) {
        let Some(gap) = near.gap_mm(&balls, rider) else {
            continue;
        };
        least = least.min(gap);
        if gap < GAP_MM || (near.name == place.room.to && gap < place.room.gap_mm - 1e-6) {
            verdict.fault(format!(
                "{of}: {gap:.2} mm to {}, stated {:.2} to {}",
                near.name, place.room.gap_mm, place.room.to
            ));
        }
    }
    verdict.notes.push(format!(
        "{of}: stated {:.1} mm to {}, sampled {least:.1} mm",
        place.room.gap_mm, place.room.to
    ));
}

/// The middle of the tube under the bung and the direction out of it, found as a hand would: from the
/// joint along the outside, and round from the highest place.
fn axis(
    run: &PlannedRun,
    piece: &PlannedPiece,
    place: &SensorPlace,
    joint: Point,
) -> (Vector, Vector) {
    let up = Vector::new(0.0, 0.0, 1.0);
    let at_clock = |travel: Vector| {
        let level = travel.cross(up);
        let level = level * (1.0 / level.norm());
        let high = level.cross(travel);
        // Clockwise looking downstream: from the highest place toward what is then to the right.
        high * math::cos(place.clocking.clock_rad) + level * math::sin(place.clocking.clock_rad)
    };
    // Measured against the flow, a bend is walked from its other end.
    let (frame, sense) = if place.is_upstream {
        (&piece.frame_out, -1.0)
    } else {
        (&piece.frame_in, 1.0)
    };
    let (from, travel) = (frame.origin.to_vector(), frame.travel().vector());
    let PlannedKind::Bend { clr_mm, .. } = piece.kind else {
        let from = joint.to_vector();
        return (from + travel * (sense * place.along_mm), at_clock(travel));
    };
    let inward = frame.twelve().vector();
    let centre = from + inward * clr_mm;
    let mut deg = 0.0;
    loop {
        let angle = f64::to_radians(deg);
        let (sin, cos) = (sense * math::sin(angle), math::cos(angle));
        let toward = inward * cos - travel * sin;
        let along = travel * cos + inward * sin;
        let out = at_clock(along);
        let fibre = clr_mm - 0.5 * run.od_mm * toward.dot(out);
        if fibre * angle >= place.along_mm - 1e-9 || deg > 180.0 {
            return (centre - toward * clr_mm, out);
        }
        deg += 0.0005;
    }
}

fn room(foot: Vector, out: Vector) -> Vec<Ball> {
    let mut balls = Vec::new();
    for [from, to, radius] in ROOM_MM {
        for step in 0..=30 {
            let along = from + radius + (to - from - 2.0 * radius) * f64::from(step) / 30.0;
            balls.push(Ball {
                centre: (foot + out * along).to_array(),
                radius,
                along,
                piece: 0,
            });
        }
    }
    balls
}
