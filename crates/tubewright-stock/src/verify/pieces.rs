//! Each piece is made once, to size, from the right tube, beside its neighbours.

use std::collections::BTreeMap;

use super::{Fault, SIZE_TOLERANCE};
use crate::demand::{PieceDemand, PieceShape};
use crate::item::{StockPiece, StockShape};
use crate::plan::{CutPart, PartPlace, StockPlan};
use crate::request::StockRequest;

/// What a mark got.
#[derive(Default)]
struct Made {
    times: u32,
    /// Straights: length from all parts; bends: angle in degrees.
    size: f64,
}

pub(super) fn faults(request: &StockRequest, plan: &StockPlan) -> Vec<Fault> {
    let mut faults = Vec::new();
    let order: BTreeMap<&str, (usize, usize, &PieceDemand)> = request
        .runs
        .iter()
        .enumerate()
        .flat_map(|(run, demand)| {
            demand
                .pieces
                .iter()
                .enumerate()
                .map(move |(at, piece)| (piece.mark.as_str(), (run, at, piece)))
        })
        .collect();
    let mut made: BTreeMap<&str, Made> = BTreeMap::new();
    for cut in &plan.cuts {
        for part in &cut.parts {
            faults.extend(part_faults(request, &order, &cut.stock, part));
            for serves in &part.serves {
                let entry = made.entry(&serves.mark).or_default();
                let piece = order
                    .get(serves.mark.as_str())
                    .map(|(_, _, piece)| &piece.shape);
                match (piece, part.place) {
                    (Some(PieceShape::Bend { .. }), PartPlace::Arc { sweep, .. }) => {
                        entry.times += 1;
                        entry.size += sweep.deg();
                    }
                    (Some(PieceShape::Straight { .. }), _) => entry.size += serves.length.mm(),
                    _ => {}
                }
            }
        }
    }
    for component in &plan.components {
        let is_it = order.get(component.mark.as_str()).is_some_and(|(_, _, piece)| {
            matches!(&piece.shape, PieceShape::Component { item } if *item == component.item)
        });
        if !is_it {
            faults.push(Fault::WrongStock {
                mark: component.mark.clone(),
                why: "component",
            });
        }
        made.entry(&component.mark).or_default().times += 1;
    }
    for (mark, (run, at, piece)) in &order {
        let is_missing = plan.missing.iter().any(|missing| missing.mark == *mark);
        if !is_missing {
            let made = made.remove(mark).unwrap_or_default();
            let is_inside = |neighbour: Option<usize>| {
                let pieces = request.runs.get(*run).map(|run| &run.pieces);
                neighbour
                    .and_then(|at| pieces?.get(at))
                    .is_some_and(|other| is_one_part(plan, mark, &other.mark))
            };
            let welded = [!is_inside(at.checked_sub(1)), !is_inside(Some(at + 1))];
            faults.extend(piece_fault(piece, &made, welded));
        }
    }
    faults
}

/// Whether one part is both pieces, so that there is no weld between them.
fn is_one_part(plan: &StockPlan, a: &str, b: &str) -> bool {
    plan.cuts.iter().flat_map(|cut| &cut.parts).any(|part| {
        [a, b]
            .iter()
            .all(|mark| part.serves.iter().any(|serves| serves.mark == *mark))
    })
}

/// `welded`: whether there is a weld at its upstream and downstream end.
fn piece_fault(piece: &PieceDemand, made: &Made, welded: [bool; 2]) -> Option<Fault> {
    let mark = piece.mark.clone();
    let wanted = match piece.shape {
        PieceShape::Component { .. } if made.times != 1 => {
            return Some(Fault::MadeTimes {
                mark,
                times: made.times,
            });
        }
        PieceShape::Component { .. } => return None,
        PieceShape::Bend { .. } if made.times != 1 => {
            return Some(Fault::MadeTimes {
                mark,
                times: made.times,
            });
        }
        PieceShape::Bend { angle, .. } => angle.deg(),
        PieceShape::Straight { length } => {
            let [upstream, downstream] = piece.pulls.map(tubewright_geometry::Length::mm);
            length.mm()
                + match welded {
                    [true, true] => upstream + downstream,
                    [false, true] => downstream,
                    [true, false] => upstream,
                    // In two halves on the legs beside it, welded in the middle.
                    [false, false] => 0.5 * (upstream + downstream),
                }
        }
    };
    let is_off = (made.size - wanted).abs() > SIZE_TOLERANCE;
    is_off.then_some(Fault::WrongSize {
        mark,
        got: made.size,
        wanted,
    })
}

fn part_faults(
    request: &StockRequest,
    order: &BTreeMap<&str, (usize, usize, &PieceDemand)>,
    stock: &StockPiece,
    part: &CutPart,
) -> Vec<Fault> {
    let mut faults = Vec::new();
    let mark = part
        .serves
        .first()
        .map(|serves| serves.mark.clone())
        .unwrap_or_default();
    let served: Option<Vec<_>> = part
        .serves
        .iter()
        .map(|serves| order.get(serves.mark.as_str()))
        .collect();
    let Some(served) = served else {
        return vec![Fault::MadeTimes { mark, times: 1 }];
    };
    let are_neighbours = served
        .windows(2)
        .all(|pair| pair[0].0 == pair[1].0 && pair[0].1 + 1 == pair[1].1);
    if !are_neighbours || served.is_empty() {
        faults.push(Fault::NoNeighbours { mark: mark.clone() });
    }
    for (_, _, piece) in &served {
        let mark = piece.mark.clone();
        if !piece.tube.is_same_as(&stock.tube) {
            faults.push(Fault::WrongStock {
                mark: mark.clone(),
                why: "tube",
            });
        }
        if let (PieceShape::Bend { clr, .. }, StockShape::Bend { clr: got, .. }) =
            (&piece.shape, stock.shape)
            && (*clr - got).abs().mm() > request.rules.clr_tolerance.mm() + SIZE_TOLERANCE
        {
            faults.push(Fault::WrongStock {
                mark,
                why: "centre-line radius",
            });
        }
    }
    faults.extend(leg_fault(part, &served, mark));
    faults
}

/// The straights that a part serves are exactly the tube it keeps, on the sides where the flow puts
/// them.
fn leg_fault(
    part: &CutPart,
    served: &[&(usize, usize, &PieceDemand)],
    mark: String,
) -> Option<Fault> {
    let total: f64 = part.serves.iter().map(|serves| serves.length.mm()).sum();
    let kept = match part.place {
        PartPlace::Bar { length, .. } | PartPlace::Leg { length, .. } => length.mm(),
        PartPlace::Arc {
            keeps_a, keeps_b, ..
        } => {
            let bend = served
                .iter()
                .position(|(_, _, piece)| matches!(piece.shape, PieceShape::Bend { .. }))?;
            let upstream: f64 = part
                .serves
                .iter()
                .take(bend)
                .map(|serves| serves.length.mm())
                .sum();
            let wanted = if part.is_reversed { keeps_b } else { keeps_a };
            if (upstream - wanted.mm()).abs() > SIZE_TOLERANCE {
                return Some(Fault::WrongSize {
                    mark,
                    got: wanted.mm(),
                    wanted: upstream,
                });
            }
            (keeps_a + keeps_b).mm()
        }
    };
    let is_off = (kept - total).abs() > SIZE_TOLERANCE;
    is_off.then_some(Fault::WrongSize {
        mark,
        got: kept,
        wanted: total,
    })
}
