//! A run in short stretches, to be held against another run or against itself.

use tubewright_geometry::motion::Motion;
use tubewright_geometry::{CentreLine, TubeElement, UnitVector, math};

use super::MovingRun;
use crate::routes::{PlannedKind, PlannedRun};

/// A stretch of a run.
pub(super) struct Part<'a> {
    pub(super) element: TubeElement,
    pub(super) motion: &'a Motion,
    /// How far its carrier can take it, mm.
    pub(super) travel_mm: f64,
    /// What its balls leave uncovered of its can, mm.
    pub(super) uncovered_mm: f64,
    pub(super) from_mm: f64,
    pub(super) to_mm: f64,
    pub(super) mark: String,
    /// Piece that it belongs to, counted from 0.
    pub(super) piece: usize,
    /// Far enough from the parts where the run meets the other run to keep a gap from it.
    pub(super) is_free: bool,
}

/// Longest stretch that is judged as one, mm: the rule on distance along the run is applied to whole
/// stretches, so they are short.
const PART_MM: f64 = 60.0;

/// The stretches of a run; `other` is the run that it is held against, if it is one, beside the parts of which
/// both meet no stretch is free.
pub(super) fn parts_of<'a>(moving: &'a MovingRun<'_>, other: Option<&PlannedRun>) -> Vec<Part<'a>> {
    let run = moving.run;
    let theirs = other.map(PlannedRun::met_parts).unwrap_or_default();
    let shared = |part: &str| theirs.contains(part);
    let mut crossovers = Vec::new();
    let mut along = 0.0;
    for piece in &run.pieces {
        let next = along + piece.centre_line_mm();
        if matches!(&piece.kind, PlannedKind::Crossover { name, .. } if shared(name)) {
            crossovers.push((along, next));
        }
        along = next;
    }
    if run.starts_on.as_deref().is_some_and(shared) {
        crossovers.push((0.0, 0.0));
    }
    if run.ends_at_part().is_some_and(shared) {
        crossovers.push((along, along));
    }
    let mut parts = Vec::new();
    let mut along = 0.0;
    let pieces = run.pieces.iter().zip(&moving.piece_motions);
    for (number, (piece, motion)) in pieces.enumerate() {
        let length = piece.centre_line_mm();
        let is_crossover =
            matches!(&piece.kind, PlannedKind::Crossover { name, .. } if shared(name));
        for element in &piece.elements {
            for line in split(&element.line, PART_MM) {
                let (from, to) = match piece.kind {
                    // The can of a component is one body: it counts with its whole length.
                    PlannedKind::Component { .. } | PlannedKind::Crossover { .. } => {
                        (along, along + length)
                    }
                    _ => (along + line.0, along + line.1),
                };
                let is_free = !is_crossover
                    && crossovers.iter().all(|&(start, end)| {
                        from > end + run.half_turn_mm() || to < start - run.half_turn_mm()
                    });
                let element = TubeElement {
                    line: line.2,
                    radius: element.radius,
                };
                parts.push(Part {
                    travel_mm: motion.most_travel_mm(&element.bounds()),
                    element,
                    motion,
                    uncovered_mm: piece.uncovered_mm,
                    from_mm: from,
                    to_mm: to,
                    mark: piece.mark.clone(),
                    piece: number,
                    is_free,
                });
            }
        }
        along += length;
    }
    parts
}

/// Pieces of a centre line no longer than `most_mm`, with where they start and end along it.
fn split(line: &CentreLine, most_mm: f64) -> Vec<(f64, f64, CentreLine)> {
    let length = line.length();
    let count = (length / most_mm).ceil().max(1.0);
    let step = length / count;
    let mut parts = Vec::new();
    let mut index = 0.0;
    while index < count {
        let (from, to) = (index * step, (index + 1.0) * step);
        let part = stretch(line, from, to);
        parts.push((from, to, part));
        index += 1.0;
    }
    parts
}

/// The stretch of a centre line between two distances along it, mm.
pub(super) fn stretch(line: &CentreLine, from: f64, to: f64) -> CentreLine {
    match *line {
        CentreLine::Arc {
            centre,
            u,
            v,
            radius,
            ..
        } => {
            let (sin, cos) = math::sin_cos(from / radius);
            CentreLine::Arc {
                centre,
                u: UnitVector::from_unit(u * cos + v * sin),
                v: UnitVector::from_unit(v * cos - u * sin),
                radius,
                angle: (to - from) / radius,
            }
        }
        _ => CentreLine::Segment {
            a: line.at(from),
            b: line.at(to),
        },
    }
}
