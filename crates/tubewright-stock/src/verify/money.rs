//! Nothing is used that is not there, purchases keep their offers, sums add up.

use std::collections::BTreeMap;

use super::Fault;
use crate::demand::{PieceShape, RunDemand};
use crate::item::OnHandKind;
use crate::plan::{PartPlace, Source, StockPlan};
use crate::request::StockRequest;

pub(super) fn faults(request: &StockRequest, plan: &StockPlan) -> Vec<Fault> {
    let mut faults = used_faults(request, plan);
    faults.extend(buy_faults(request, plan));
    faults.extend(sum_faults(request, plan));
    faults
}

fn used_faults(request: &StockRequest, plan: &StockPlan) -> Vec<Fault> {
    let mut used: BTreeMap<&Source, u32> = BTreeMap::new();
    let sources = plan
        .cuts
        .iter()
        .map(|cut| &cut.source)
        .chain(plan.components.iter().map(|c| &c.source));
    for source in sources {
        *used.entry(source).or_default() += 1;
    }
    let bought = |item: &str| -> u32 {
        plan.buys
            .iter()
            .filter(|buy| buy.item == item)
            .map(|buy| buy.quantity)
            .sum()
    };
    let mut faults = Vec::new();
    for (source, used) in &used {
        let (name, there) = match source {
            Source::OnHand(name) => {
                let known = request.on_hand.iter().find(|it| it.name == *name);
                (name, known.map_or(0, |it| it.count))
            }
            Source::Bought(item) => (item, bought(item)),
        };
        if *used > there {
            faults.push(Fault::TooMany {
                name: name.clone(),
                used: *used,
                there,
            });
        }
    }
    for spare in &request.spares {
        let missing: u32 = plan
            .missing_spares
            .iter()
            .filter(|(item, _)| *item == spare.item)
            .map(|(_, count)| count)
            .sum();
        let of_item = |source: &Source| match source {
            Source::Bought(item) => *item == spare.item,
            Source::OnHand(name) => request.on_hand.iter().any(|it| {
                it.name == *name
                    && matches!(&it.kind, OnHandKind::Item(item) if *item == spare.item)
            }),
        };
        let cut: u32 = used
            .iter()
            .filter(|(source, _)| of_item(source))
            .map(|(_, n)| n)
            .sum();
        let on_hand: u32 = request
            .on_hand
            .iter()
            .filter(|it| matches!(&it.kind, OnHandKind::Item(item) if *item == spare.item))
            .map(|it| it.count)
            .sum();
        let (used, there) = (cut + spare.count, on_hand + bought(&spare.item) + missing);
        if used > there {
            faults.push(Fault::TooMany {
                name: spare.item.clone(),
                used,
                there,
            });
        }
    }
    faults
}

fn buy_faults(request: &StockRequest, plan: &StockPlan) -> Vec<Fault> {
    plan.buys
        .iter()
        .filter_map(|buy| {
            let why = match request.offers.get(buy.offer) {
                None => "there is no such offer",
                Some(offer) if offer.item != buy.item || offer.supplier != buy.supplier => {
                    "the offer is of something else"
                }
                Some(offer) if buy.quantity % offer.pack.max(1) != 0 => "broken pack",
                Some(offer) if offer.available.is_some_and(|there| buy.quantity > there) => {
                    "more than they have"
                }
                Some(offer) => {
                    let price = offer
                        .prices
                        .iter()
                        .filter(|price| price.from <= buy.quantity)
                        .max_by_key(|price| price.from);
                    match price {
                        None => "less than they sell",
                        // A dearer tier is a poor plan, not a wrong one; a cheaper one is wrong.
                        Some(_)
                            if !offer
                                .prices
                                .iter()
                                .any(|p| p.from <= buy.quantity && p.each == buy.each) =>
                        {
                            "not their price at this quantity"
                        }
                        Some(_) if buy.total.minor != buy.each.minor * i64::from(buy.quantity) => {
                            "the total does not add up"
                        }
                        Some(_) => return None,
                    }
                }
            };
            Some(Fault::BadBuy {
                item: buy.item.clone(),
                supplier: buy.supplier.clone(),
                why,
            })
        })
        .collect()
}

fn sum_faults(request: &StockRequest, plan: &StockPlan) -> Vec<Fault> {
    let charges: i64 = request
        .suppliers
        .iter()
        .filter(|supplier| plan.buys.iter().any(|buy| buy.supplier == supplier.name))
        .map(|supplier| supplier.delivery.minor)
        .sum();
    let bought: i64 = plan.buys.iter().map(|buy| buy.total.minor).sum();
    let mut faults = Vec::new();
    let mut expect = |what, said, added| {
        if said != added {
            faults.push(Fault::BadSum { what, said, added });
        }
    };
    expect("price", plan.price.minor, bought + charges);
    let weld = request.rates.weld.minor;
    let cost = plan.price.minor + i64::from(plan.welds) * weld;
    expect("cost", plan.cost.minor, cost);
    if plan.missing.is_empty() {
        let welds: i64 = request.runs.iter().map(|run| welds_of(run, plan)).sum();
        expect("welds", i64::from(plan.welds), welds);
    }
    faults
}

/// Joints of a run: its physical parts in a row less one. A straight shared by two legs is two
/// halves that belong to their bends.
fn welds_of(run: &RunDemand, plan: &StockPlan) -> i64 {
    let is_own_part = |mark: &str| {
        plan.cuts.iter().flat_map(|cut| &cut.parts).any(|part| {
            matches!(part.place, PartPlace::Bar { .. } | PartPlace::Leg { .. })
                && part.serves.iter().any(|serves| serves.mark == mark)
        })
    };
    let parts = run
        .pieces
        .iter()
        .filter(|piece| match piece.shape {
            PieceShape::Straight { .. } => is_own_part(&piece.mark),
            PieceShape::Bend { .. } | PieceShape::Component { .. } => true,
        })
        .count();
    (parts as i64 - 1).max(0) + i64::from(run.welds_at_ends)
}
