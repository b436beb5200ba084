//! What lies in the shop now: the shelf of the stock file, what was brought home, what the pieces that
//! are cut have left over.

use std::collections::{BTreeMap, BTreeSet};
use tubewright_geometry::{Angle, Length};
use tubewright_stock::{
    CutStock, OnHand, OnHandKind, PartPlace, ShopRules, Source, StockPiece, StockPlan,
    StockRequest, StockShape,
};

use super::steel::Steel;

/// A stretch left over is worth keeping from here on, mm (common practice, no source).
const LEAST_REMNANT_MM: f64 = 20.0;

/// An arc left over is worth keeping from here on, degrees (common practice, no source).
const LEAST_REMNANT_DEG: f64 = 5.0;

/// Marks of every piece that is cut, the others of the same part with it.
#[must_use]
pub fn cut_marks(plan: &StockPlan, steel: &Steel) -> BTreeSet<String> {
    let parts = plan.cuts.iter().flat_map(|cut| &cut.parts);
    let of_parts = parts
        .filter(|part| part.serves.iter().any(|serves| steel.is_cut(&serves.mark)))
        .flat_map(|part| part.serves.iter().map(|serves| serves.mark.clone()));
    of_parts.chain(steel.cut.keys().cloned()).collect()
}

/// The request with the shelf as it is now. `plan` says which pieces came out of which item.
#[must_use]
pub fn with_shelf(request: &StockRequest, plan: &StockPlan, steel: &Steel) -> StockRequest {
    let mut now = request.clone();
    now.offers.retain(|offer| {
        !steel.out.iter().any(|(item, supplier)| {
            *item == offer.item && supplier.as_ref().is_none_or(|s| *s == offer.supplier)
        })
    });
    let mut got: BTreeMap<&str, u32> = steel
        .got
        .iter()
        .map(|(item, count)| (item.as_str(), *count))
        .collect();
    let mut remnants = Vec::new();
    // What came out of another item than the plan says: that item is opened, what is left of it is not
    // known.
    let planned = |mark: &str| {
        plan.cuts
            .iter()
            .find(|cut| {
                cut.parts
                    .iter()
                    .any(|part| part.serves.iter().any(|serves| serves.mark == mark))
            })
            .map(|cut| source_name(&cut.source))
    };
    for (mark, from) in &steel.cut {
        if planned(mark) != Some(from.as_str()) {
            take_one(&mut now, &mut got, from);
        }
    }
    for cut in &plan.cuts {
        let name = source_name(&cut.source);
        let is_done = |part: &tubewright_stock::CutPart| {
            part.serves.iter().any(|serves| {
                steel.cut.get(&serves.mark).is_some_and(|from| from == name)
                    || steel.spoiled.iter().any(|(mark, from)| {
                        *mark == serves.mark && from.as_ref().is_none_or(|from| from == name)
                    })
            })
        };
        if !cut.parts.iter().any(is_done) {
            continue;
        }
        take_one(&mut now, &mut got, name);
        for (number, stock) in (1..).zip(left_over(cut, &is_done, &request.rules)) {
            remnants.push(OnHand {
                name: format!("rest {number} of {name} no. {}", cut.number),
                kind: OnHandKind::Measured(stock),
                count: 1,
            });
        }
    }
    now.on_hand.retain(|it| it.count > 0);
    for (item, count) in got {
        if count > 0 {
            now.on_hand.push(OnHand {
                name: format!("brought home: {item}"),
                kind: OnHandKind::Item(item.to_owned()),
                count,
            });
        }
    }
    now.on_hand.extend(remnants);
    now
}

fn source_name(source: &Source) -> &str {
    match source {
        Source::Bought(name) | Source::OnHand(name) => name,
    }
}

/// One of this name is opened: of what was brought home, else of the shelf.
fn take_one(now: &mut StockRequest, got: &mut BTreeMap<&str, u32>, name: &str) {
    if let Some(count) = got.get_mut(name).filter(|count| **count > 0) {
        *count -= 1;
    } else if let Some(it) = now
        .on_hand
        .iter_mut()
        .find(|it| it.name == *name && it.count > 0)
    {
        it.count -= 1;
    }
}

/// The stretches of an opened item that no finished part takes, with the kerf off at every cut side.
fn left_over(
    cut: &CutStock,
    is_done: &dyn Fn(&tubewright_stock::CutPart) -> bool,
    rules: &ShopRules,
) -> Vec<StockPiece> {
    let piece = |shape: StockShape| StockPiece {
        tube: cut.stock.tube.clone(),
        shape,
    };
    match cut.stock.shape {
        StockShape::Straight { length } => {
            let mut taken: Vec<(f64, f64)> = cut
                .parts
                .iter()
                .filter(|part| is_done(part))
                .filter_map(|part| match part.place {
                    PartPlace::Bar { start, length } => Some((start.mm(), (start + length).mm())),
                    _ => None,
                })
                .collect();
            taken.sort_by(|a, b| a.0.total_cmp(&b.0));
            stretches(&taken, length.mm(), rules.kerf.mm())
                .into_iter()
                .filter(|(from, to)| to - from >= LEAST_REMNANT_MM)
                .map(|(from, to)| {
                    piece(StockShape::Straight {
                        length: Length::from_mm(to - from),
                    })
                })
                .collect()
        }
        StockShape::Bend {
            angle,
            clr,
            leg_a,
            leg_b,
        } => {
            let kerf = rules.arc_kerf(&cut.stock).map_or(0.0, Angle::deg);
            let mut taken: Vec<(f64, f64)> = cut
                .parts
                .iter()
                .filter(|part| is_done(part))
                .filter_map(|part| match part.place {
                    PartPlace::Arc { start, sweep, .. } => {
                        Some((start.deg(), (start + sweep).deg()))
                    }
                    _ => None,
                })
                .collect();
            taken.sort_by(|a, b| a.0.total_cmp(&b.0));
            // A leg that a finished part took is gone; what is left of a leg stays with the arc.
            stretches(&taken, angle.deg(), kerf)
                .into_iter()
                .filter(|(from, to)| to - from >= LEAST_REMNANT_DEG)
                .map(|(from, to)| {
                    let leg = |is_end: bool, leg: Length| if is_end { leg } else { Length::ZERO };
                    piece(StockShape::Bend {
                        angle: Angle::from_deg(to - from),
                        clr,
                        leg_a: leg(from <= 0.0 && !leg_taken(cut, true, is_done), leg_a),
                        leg_b: leg(to >= angle.deg() && !leg_taken(cut, false, is_done), leg_b),
                    })
                })
                .collect()
        }
    }
}

fn leg_taken(
    cut: &CutStock,
    at_a: bool,
    is_done: &dyn Fn(&tubewright_stock::CutPart) -> bool,
) -> bool {
    cut.parts.iter().filter(|part| is_done(part)).any(|part| {
        matches!(part.place, PartPlace::Leg { end, .. }
            if (end == tubewright_stock::StockEnd::A) == at_a)
    })
}

/// What is between the taken stretches, a kerf away from each.
fn stretches(taken: &[(f64, f64)], whole: f64, kerf: f64) -> Vec<(f64, f64)> {
    let mut free = Vec::new();
    let mut from = 0.0;
    for (start, end) in taken {
        if start - kerf > from {
            free.push((from, start - kerf));
        }
        from = f64::max(from, end + kerf);
    }
    if whole > from {
        free.push((from, whole));
    }
    free
}

#[cfg(test)]
mod tests {
    use super::stretches;

    #[test]
    fn a_kerf_is_lost_at_every_cut_side_and_none_at_the_ends() {
        assert_eq!(
            stretches(&[(100.0, 300.0), (500.0, 1000.0)], 1000.0, 2.0),
            [(0.0, 98.0), (302.0, 498.0)]
        );
        assert_eq!(stretches(&[], 400.0, 2.0), [(0.0, 400.0)]);
        assert!(stretches(&[(0.0, 400.0)], 400.0, 2.0).is_empty());
    }
}
