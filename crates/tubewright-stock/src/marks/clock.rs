//! How the parts of a run clock together by their witness lines.

use std::collections::BTreeMap;

use tubewright_geometry::{Angle, Length, math};

use crate::demand::{PieceShape, RunDemand};
use crate::plan::{PartPlace, StockPlan};
use crate::request::StockRequest;

/// One part in the order of the run, with the clock of its joint to the part before it.
///
/// The witness line of a bend is scribed along its outside, of a straight anywhere along it. It is
/// set in line with that of the part before it (or at the run's twelve o'clock) when the part is a
/// straight or a component, which have no clock of their own.
#[derive(Clone, Debug, PartialEq)]
pub struct FitMark {
    /// The run.
    pub run: String,
    /// Marks of the pieces that the part is, upstream first.
    pub marks: Vec<String>,
    /// From the witness line of the part before it to its own, clockwise looking downstream, in
    /// (-180°, 180°]. For the first part of a run: from the run's twelve o'clock.
    pub clock: Angle,
    /// The same round the outside of the tube; positive clockwise looking downstream.
    pub round_outside: Length,
    /// Whether the flow runs against the order in which the stock item was marked (from B to A):
    /// the arrow on the part.
    pub is_reversed: bool,
}

/// The parts of all runs in order with their clocks.
#[must_use]
pub fn fit_marks(request: &StockRequest, plan: &StockPlan) -> Vec<FitMark> {
    let by_first_mark: BTreeMap<&str, Vec<&crate::plan::CutPart>> = plan
        .cuts
        .iter()
        .flat_map(|cut| &cut.parts)
        .filter_map(|part| Some((part.serves.first()?.mark.as_str(), part)))
        .fold(BTreeMap::new(), |mut map, (mark, part)| {
            map.entry(mark).or_insert_with(Vec::new).push(part);
            map
        });
    request
        .runs
        .iter()
        .flat_map(|run| run_marks(run, plan, &by_first_mark))
        .collect()
}

fn run_marks(
    run: &RunDemand,
    plan: &StockPlan,
    by_first_mark: &BTreeMap<&str, Vec<&crate::plan::CutPart>>,
) -> Vec<FitMark> {
    // Clock of the last witness line, in the plane of the last bend: from the direction toward its
    // centre, or from the run's twelve o'clock before any bend.
    let mut witness = Angle::ZERO;
    let mut out = Vec::new();
    for piece in &run.pieces {
        let half_turn = Angle::from_rad(math::PI);
        if let PieceShape::Component { .. } = piece.shape {
            if plan
                .components
                .iter()
                .any(|component| component.mark == piece.mark)
            {
                out.push(mark(
                    run,
                    vec![piece.mark.clone()],
                    Angle::ZERO,
                    piece.tube.od,
                    false,
                ));
            }
            continue;
        }
        // Parts that start with this piece: a straight alone, or a bend with the straights that its
        // legs serve. A bend whose upstream leg is a straight starts with that straight's mark.
        for part in by_first_mark.get(piece.mark.as_str()).into_iter().flatten() {
            let marks = part
                .serves
                .iter()
                .map(|serves| serves.mark.clone())
                .collect();
            let bend = part
                .serves
                .iter()
                .find_map(|serves| clock_of_bend(run, &serves.mark));
            let clock = match (bend, part.place) {
                (Some(roll), PartPlace::Arc { .. }) => {
                    let clock = roll + half_turn - witness;
                    witness = half_turn;
                    Angle::from_rad(math::wrap_to_pi(clock.rad()))
                }
                _ => Angle::ZERO,
            };
            out.push(mark(run, marks, clock, piece.tube.od, part.is_reversed));
        }
    }
    out
}

fn clock_of_bend(run: &RunDemand, mark: &str) -> Option<Angle> {
    run.pieces
        .iter()
        .find(|piece| piece.mark == mark)
        .and_then(|piece| match piece.shape {
            PieceShape::Bend { clock, .. } => Some(clock),
            PieceShape::Straight { .. } | PieceShape::Component { .. } => None,
        })
}

fn mark(
    run: &RunDemand,
    marks: Vec<String>,
    clock: Angle,
    od: Length,
    is_reversed: bool,
) -> FitMark {
    FitMark {
        run: run.name.clone(),
        marks,
        clock,
        round_outside: od * (clock.rad() / 2.0),
        is_reversed,
    }
}
