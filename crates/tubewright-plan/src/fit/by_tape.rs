//! Joints of the finished run by tapes from the marks: for whoever has the map alone and no scribed
//! hours: to sides of the tube that are known without a line on it.

use tubewright_build::model::Model;
use tubewright_fit::check::{InTheWay, Mark, Taping, distances_from, is_open};
use tubewright_geometry::{Frame, Solid, TubeElement, UnitVector};

use super::sheet::{marks_of, solids_of, taping_of};
use crate::routes::PlannedRun;
use crate::stages::Surroundings;

/// Sides of a tube that have a name: its top, its left, what lies between them.
const SIDES: u32 = 8;

/// A tape from a mark to the rim of a joint.
#[derive(Clone, Debug, PartialEq)]
pub struct MapTape {
    /// Name of the mark.
    pub mark: String,
    /// The place on the rim: clockwise from the highest place of the tube, looking downstream.
    pub clock_rad: f64,
    /// What the tape says, mm.
    pub distance_mm: f64,
}

/// For each joint, given by its frame and the radius of its tube in mm, up to three tapes, each from another mark to
/// the place of the rim that it sees nearest past the bodies and all of the runs; of more marks those that lie on the
/// most different sides. Nothing where no mark sees the joint.
#[must_use]
pub fn joints_by_tape(
    model: &Model,
    around: &Surroundings,
    runs: &[PlannedRun],
    joints: &[(Frame, f64)],
) -> Vec<Vec<MapTape>> {
    let marks = marks_of(model, around);
    let solids: Vec<Solid> = solids_of(around);
    let taping = Taping {
        clocks: SIDES,
        ..taping_of(around)
    };
    let tubes: Vec<TubeElement> = runs
        .iter()
        .flat_map(|run| &run.pieces)
        .flat_map(|piece| piece.elements.iter().copied())
        .collect();
    let in_the_way = InTheWay {
        bodies: &solids,
        tubes: &tubes,
    };
    joints
        .iter()
        .map(|(frame, radius_mm)| {
            let upright = Frame::upright(frame.origin, frame.travel());
            let seen: Vec<Seen> = marks
                .iter()
                .filter_map(|mark| nearest(mark, &upright, *radius_mm, &taping, &in_the_way))
                .collect();
            most_spread(&seen)
                .into_iter()
                .map(|(tape, _)| tape.clone())
                .collect()
        })
        .collect()
}

/// A tape and the way that it runs.
type Seen = (MapTape, UnitVector);

/// The tape from a mark to the place of the rim that it sees nearest.
fn nearest(
    mark: &Mark,
    frame: &Frame,
    radius_mm: f64,
    taping: &Taping,
    in_the_way: &InTheWay<'_>,
) -> Option<Seen> {
    let mut taped: Vec<_> = distances_from(mark, frame, radius_mm, taping).collect();
    taped.sort_by(|a, b| a.distance_mm.total_cmp(&b.distance_mm));
    let open = taped
        .into_iter()
        .find(|taped| is_open(mark.place, taped.place, in_the_way))?;
    let along = (open.place - mark.place).direction()?;
    let tape = MapTape {
        mark: open.mark,
        clock_rad: open.clock_rad,
        distance_mm: open.distance_mm,
    };
    Some((tape, along))
}

/// Up to three of these tapes, those that come from the most different sides.
fn most_spread(seen: &[Seen]) -> Vec<&Seen> {
    if seen.len() < 4 {
        return seen.iter().collect();
    }
    let mut best: (f64, Vec<&Seen>) = (-1.0, Vec::new());
    for (i, a) in seen.iter().enumerate() {
        for (j, b) in seen.iter().enumerate().skip(i + 1) {
            let square = a.1.vector().cross(b.1.vector());
            for c in seen.iter().skip(j + 1) {
                let spread = square.dot(c.1.vector()).abs();
                if spread > best.0 {
                    best = (spread, vec![a, b, c]);
                }
            }
        }
    }
    best.1
}
