//! Spares: the extra bends that could remake the most pieces, and what they add to the price.
//!
//! They are chosen beside the plan and never change it: the plan stays the cheapest for its pieces,
//! with its proof, and a spare says what it costs on top.

use std::collections::{BTreeMap, BTreeSet};

use crate::demand::{PieceDemand, PieceShape};
use crate::item::{ItemKind, Offer, OnHand, OnHandKind, StockPiece};
use crate::plan::{CutPart, PartPlace, Source, StockPlan};
use crate::request::StockRequest;
use crate::size::{angle_thousandths, length_thousandths};
use crate::{Money, StockShape};

/// One spare beside the plan.
#[derive(Clone, Debug, PartialEq)]
pub struct ExtraBend {
    /// The item.
    pub item: String,
    /// From whom; `None` when the shelf or a pack of the plan leaves one over uncut.
    pub supplier: Option<String>,
    /// Parts that it could remake, any one of them: the marks of each from upstream to downstream, as they are
    /// painted on it; in the order in which the plan cuts them.
    pub remakes: Vec<Vec<String>>,
    /// What it adds to the price: its pack, the price that the larger number has, and a delivery that
    /// nothing else asks for.
    pub price: Money,
}

/// Spares beside a plan.
#[derive(Clone, Debug, PartialEq)]
pub struct Spares {
    /// The spares, the one that could remake the most first.
    pub bends: Vec<ExtraBend>,
    /// Price of the plan with all of them; without them it is [`StockPlan::price`].
    pub price_with: Money,
}

/// Chooses `count` spares: first the bend that could remake the most parts of the plan, then again
/// and again the one that could remake the most of those that no spare so far could; when every part
/// has one, the next ones start anew. Among equals the one that adds least to the price is taken, then
/// the one that stands first in the catalogue. What lies over uncut counts as a spare that adds nothing.
/// Fewer come out when no more are to be had.
#[must_use]
pub fn spares(request: &StockRequest, plan: &StockPlan, count: u32) -> Spares {
    let parts = bent_parts(request, plan);
    let bends = bends_for(request, &parts);
    let mut shop = Shop::after(request, plan);
    let mut open: BTreeSet<usize> = BTreeSet::new();
    let mut chosen = Vec::new();
    let mut minor = plan.price.minor;
    for _ in 0..count {
        let to_be_had: Vec<(usize, Way)> = bends
            .iter()
            .enumerate()
            .filter_map(|(at, (item, _))| Some((at, shop.cheapest(item)?)))
            .collect();
        let new = |at: &usize, open: &BTreeSet<usize>| {
            bends.get(*at).map_or(0, |(_, remakes)| {
                remakes.iter().filter(|part| open.contains(part)).count()
            })
        };
        if to_be_had.iter().all(|(at, _)| new(at, &open) == 0) {
            open = (0..parts.len()).collect();
        }
        let best = to_be_had
            .into_iter()
            .min_by_key(|(at, way)| (core::cmp::Reverse(new(at, &open)), way.minor, *at));
        let Some((at, way)) = best else { break };
        let Some((item, remakes)) = bends.get(at) else {
            break;
        };
        open.retain(|part| !remakes.contains(part));
        minor += way.minor;
        chosen.push(ExtraBend {
            item: (*item).to_owned(),
            supplier: way
                .offer
                .and_then(|(offer, _)| Some(request.offers.get(offer)?.supplier.clone())),
            remakes: marks_of(&parts, remakes),
            price: Money::new(way.minor, plan.price.currency),
        });
        shop.take(item, &way);
    }
    Spares {
        bends: chosen,
        price_with: Money::new(minor, plan.price.currency),
    }
}

/// A part that is cut from the arc of a bend, with the bend of the run that it is.
struct BentPart<'a> {
    part: &'a CutPart,
    bend: &'a PieceDemand,
}

fn bent_parts<'a>(request: &'a StockRequest, plan: &'a StockPlan) -> Vec<BentPart<'a>> {
    let bend_of = |part: &CutPart| {
        request
            .runs
            .iter()
            .flat_map(|run| &run.pieces)
            .filter(|piece| matches!(piece.shape, PieceShape::Bend { .. }))
            .find(|piece| part.serves.iter().any(|serves| serves.mark == piece.mark))
    };
    plan.cuts
        .iter()
        .flat_map(|cut| &cut.parts)
        .filter(|part| matches!(part.place, PartPlace::Arc { .. }))
        .filter_map(|part| {
            Some(BentPart {
                part,
                bend: bend_of(part)?,
            })
        })
        .collect()
}

/// Bends of the catalogue with the parts that one of them could remake, as indices; those that could
/// remake none are left out.
fn bends_for<'a>(
    request: &'a StockRequest,
    parts: &[BentPart<'_>],
) -> Vec<(&'a str, BTreeSet<usize>)> {
    request
        .items
        .iter()
        .filter_map(|item| {
            let ItemKind::Stock(stock) = &item.kind else {
                return None;
            };
            let remakes: BTreeSet<usize> = (0..)
                .zip(parts)
                .filter(|(_, part)| can_remake(stock, part, request))
                .map(|(at, _)| at)
                .collect();
            (!remakes.is_empty()).then_some((item.name.as_str(), remakes))
        })
        .collect()
}

fn marks_of(parts: &[BentPart<'_>], which: &BTreeSet<usize>) -> Vec<Vec<String>> {
    which
        .iter()
        .filter_map(|at| parts.get(*at))
        .map(|it| {
            let marks = it.part.serves.iter().map(|serves| serves.mark.clone());
            marks.collect()
        })
        .collect()
}

fn can_remake(spare: &StockPiece, wanted: &BentPart<'_>, request: &StockRequest) -> bool {
    let (
        StockShape::Bend {
            angle,
            clr,
            leg_a,
            leg_b,
        },
        PieceShape::Bend {
            clr: wanted_clr, ..
        },
        PartPlace::Arc {
            sweep,
            keeps_a,
            keeps_b,
            ..
        },
    ) = (spare.shape, &wanted.bend.shape, wanted.part.place)
    else {
        return false;
    };
    let off = (length_thousandths(clr) - length_thousandths(*wanted_clr)).abs();
    if !spare.tube.is_same_as(&wanted.bend.tube)
        || off > length_thousandths(request.rules.clr_tolerance)
    {
        return false;
    }
    let [legs, kept] = [[leg_a, leg_b], [keeps_a, keeps_b]].map(|pair| {
        let pair = pair.map(length_thousandths);
        [pair[0].max(pair[1]), pair[0].min(pair[1])]
    });
    let room = angle_thousandths(angle) - angle_thousandths(sweep);
    // Both legs can be kept only when the whole arc is.
    room >= 0 && kept[0] <= legs[0] && kept[1] <= legs[1] && (room == 0 || kept[1] == 0)
}

/// How one more of an item is got.
struct Way {
    /// Offer and the number of it that is then bought; `None` when one lies over.
    offer: Option<(usize, u32)>,
    /// What it adds to the price, minor units.
    minor: i64,
}

/// What is bought and what lies over while spares are added.
struct Shop<'a> {
    request: &'a StockRequest,
    bought: Vec<u32>,
    /// Uncut and not asked for, by item.
    over: BTreeMap<&'a str, i64>,
}

impl<'a> Shop<'a> {
    fn after(request: &'a StockRequest, plan: &'a StockPlan) -> Self {
        let mut bought = vec![0; request.offers.len()];
        let mut over: BTreeMap<&str, i64> = BTreeMap::new();
        let item_of = |on_hand: &'a OnHand| match &on_hand.kind {
            OnHandKind::Item(item) => Some(item.as_str()),
            OnHandKind::Measured(_) => None,
        };
        for it in &request.on_hand {
            if let Some(item) = item_of(it) {
                *over.entry(item).or_default() += i64::from(it.count);
            }
        }
        for buy in &plan.buys {
            if let Some(sum) = bought.get_mut(buy.offer) {
                *sum += buy.quantity;
            }
            *over.entry(&buy.item).or_default() += i64::from(buy.quantity);
        }
        for cut in &plan.cuts {
            let item = match &cut.source {
                Source::Bought(item) => Some(item.as_str()),
                Source::OnHand(name) => request
                    .on_hand
                    .iter()
                    .find(|it| it.name == *name)
                    .and_then(item_of),
            };
            if let Some(count) = item.and_then(|item| over.get_mut(item)) {
                *count -= 1;
            }
        }
        // Those that the plan was asked to leave over are spares of somebody else.
        for spare in &request.spares {
            if let Some(count) = over.get_mut(spare.item.as_str()) {
                *count -= i64::from(spare.count);
            }
        }
        Self {
            request,
            bought,
            over,
        }
    }

    /// The cheapest way to one more of an item; `None` when there is none.
    fn cheapest(&self, item: &str) -> Option<Way> {
        if self.over.get(item).is_some_and(|over| *over > 0) {
            return Some(Way {
                offer: None,
                minor: 0,
            });
        }
        let offers = self.request.offers.iter().enumerate();
        offers
            .filter(|(_, offer)| offer.item == item)
            .flat_map(|(at, offer)| self.ways(at, offer))
            .min_by_key(|way| way.minor)
    }

    /// Larger orders of one offer: the next that is sold, and those with which a price begins.
    fn ways(&self, at: usize, offer: &'a Offer) -> impl Iterator<Item = Way> + use<'a, '_> {
        let now = self.bought.get(at).copied().unwrap_or(0);
        let is_new = now == 0
            && !(self.request.offers.iter().zip(&self.bought))
                .any(|(known, count)| *count > 0 && known.supplier == offer.supplier);
        let charge = self
            .request
            .suppliers
            .iter()
            .find(|supplier| is_new && supplier.name == offer.supplier)
            .map_or(0, |supplier| supplier.delivery.minor);
        let first = offer.prices.first().map_or(1, |price| price.from);
        let steps = offer.prices.iter().map(|price| price.from);
        let pack = offer.pack.max(1);
        core::iter::once(first.max(now + 1))
            .chain(steps.filter(move |from| *from > now))
            .filter_map(move |least| {
                let count = least.div_ceil(pack).checked_mul(pack)?;
                if offer.available.is_some_and(|available| count > available) {
                    return None;
                }
                let more = cost(offer, count)? - cost(offer, now).unwrap_or(0);
                Some(Way {
                    offer: Some((at, count)),
                    minor: more + charge,
                })
            })
    }

    fn take(&mut self, item: &'a str, way: &Way) {
        let over = self.over.entry(item).or_default();
        *over -= 1;
        if let Some((offer, count)) = way.offer
            && let Some(bought) = self.bought.get_mut(offer)
        {
            *over += i64::from(count - *bought);
            *bought = count;
        }
    }
}

/// Price of so many of an offer, minor units; `None` when so few are not sold.
fn cost(offer: &Offer, count: u32) -> Option<i64> {
    let price = offer.prices.iter().rev().find(|it| it.from <= count)?;
    price.each.minor.checked_mul(i64::from(count))
}

/// A remnant as something on hand.
#[must_use]
pub fn remnant(name: &str, stock: StockPiece) -> OnHand {
    OnHand {
        name: name.to_owned(),
        kind: OnHandKind::Measured(stock),
        count: 1,
    }
}
