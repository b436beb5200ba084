//! What is still to be made beside the parts that are.

use std::collections::{BTreeMap, BTreeSet};

use tubewright_geometry::Length;

use crate::demand::{PieceDemand, PieceShape, RunDemand};
use crate::plan::{CutPart, PartPlace};
use crate::request::StockRequest;

/// A share of a straight that is still wanted and shorter than this is taken up by the trim of the
/// closing piece, mm (common practice, no source).
const LEAST_SHARE_MM: f64 = 2.0;

/// What the parts that are made are of each piece.
#[derive(Default)]
struct Done {
    bends: BTreeSet<String>,
    /// Straights that are made as parts of their own.
    own: BTreeSet<String>,
    /// What legs of bends give of a straight, mm.
    shares: BTreeMap<String, f64>,
}

impl Done {
    fn of<'a>(parts: impl Iterator<Item = &'a CutPart>) -> Self {
        let mut done = Self::default();
        for part in parts {
            let is_arc = matches!(part.place, PartPlace::Arc { .. });
            for serves in &part.serves {
                if serves.length.mm() <= 0.0 {
                    done.bends.insert(serves.mark.clone());
                } else if is_arc {
                    *done.shares.entry(serves.mark.clone()).or_insert(0.0) += serves.length.mm();
                } else {
                    done.own.insert(serves.mark.clone());
                }
            }
        }
        done
    }

    /// The piece as it is still to be made.
    fn left_of(&self, piece: &PieceDemand) -> Option<PieceDemand> {
        let mark = piece.mark.as_str();
        if self.bends.contains(mark) || self.own.contains(mark) {
            return None;
        }
        let (PieceShape::Straight { length }, Some(share)) = (&piece.shape, self.shares.get(mark))
        else {
            return Some(piece.clone());
        };
        let left = length.mm() - share;
        (left > LEAST_SHARE_MM).then(|| PieceDemand {
            shape: PieceShape::Straight {
                length: Length::from_mm(left),
            },
            ..piece.clone()
        })
    }
}

/// The request for what these parts leave open. What stood on either side of a made piece are no
/// neighbours: the run falls into stretches. Of a straight that a leg of a made bend gives in part, the
/// rest is asked for, beside the bend on its other side.
pub(super) fn still_to_make<'a>(
    request: &StockRequest,
    made: impl Iterator<Item = &'a CutPart>,
) -> StockRequest {
    let done = Done::of(made);
    let mut rest = request.clone();
    rest.runs.clear();
    for run in &request.runs {
        let mut stretch: Vec<PieceDemand> = Vec::new();
        let mut is_whole = true;
        let mut push = |pieces: &mut Vec<PieceDemand>, is_whole: bool| {
            if !pieces.is_empty() {
                rest.runs.push(RunDemand {
                    name: run.name.clone(),
                    pieces: core::mem::take(pieces),
                    welds_at_ends: if is_whole { run.welds_at_ends } else { 0 },
                });
            }
        };
        for piece in &run.pieces {
            match done.left_of(piece) {
                Some(left) => stretch.push(left),
                None => {
                    is_whole = false;
                    push(&mut stretch, false);
                }
            }
        }
        push(&mut stretch, is_whole);
    }
    rest
}
