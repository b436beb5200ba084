//! The one extra bend that remakes the most pieces.

use std::collections::BTreeSet;

use crate::item::{ItemKind, OnHand, OnHandKind, StockPiece};
use crate::plan::{PartPlace, StockPlan};
use crate::request::StockRequest;
use crate::size::{angle_thousandths, length_thousandths};
use crate::{Money, StockShape};

/// An item that could remake pieces of a plan.
#[derive(Clone, Debug, PartialEq)]
pub struct SpareAdvice {
    /// The item.
    pub item: String,
    /// Marks of the first piece of each part that one of it could remake, any one of them.
    pub remakes: Vec<String>,
    /// Lowest price of one, without delivery.
    pub each: Money,
}

/// Bends for sale that could remake parts of the plan, the one that remakes the most first, among
/// equals the cheapest. A part keeps the legs that the plan gave it.
#[must_use]
pub fn spare_advice(request: &StockRequest, plan: &StockPlan) -> Vec<SpareAdvice> {
    let mut advice: Vec<SpareAdvice> = request
        .items
        .iter()
        .filter_map(|item| {
            let ItemKind::Stock(stock) = &item.kind else {
                return None;
            };
            if !matches!(stock.shape, StockShape::Bend { .. }) {
                return None;
            }
            let each = request
                .offers
                .iter()
                .filter(|offer| offer.item == item.name && offer.available != Some(0))
                .filter_map(|offer| offer.prices.first().map(|price| price.each))
                .min_by_key(|each| each.minor)?;
            let remakes: BTreeSet<&str> = plan
                .cuts
                .iter()
                .flat_map(|cut| cut.parts.iter().map(move |part| (cut, part)))
                .filter(|(cut, part)| can_remake(stock, &cut.stock, part.place, request))
                .filter_map(|(_, part)| Some(part.serves.first()?.mark.as_str()))
                .collect();
            Some(SpareAdvice {
                item: item.name.clone(),
                remakes: remakes.into_iter().map(str::to_owned).collect(),
                each,
            })
        })
        .filter(|advice| !advice.remakes.is_empty())
        .collect();
    advice.sort_by_key(|advice| (core::cmp::Reverse(advice.remakes.len()), advice.each.minor));
    advice
}

fn can_remake(
    spare: &StockPiece,
    was: &StockPiece,
    place: PartPlace,
    request: &StockRequest,
) -> bool {
    let (
        StockShape::Bend {
            angle,
            clr,
            leg_a,
            leg_b,
        },
        StockShape::Bend { clr: was_clr, .. },
        PartPlace::Arc {
            sweep,
            keeps_a,
            keeps_b,
            ..
        },
    ) = (spare.shape, was.shape, place)
    else {
        return false;
    };
    if !spare.tube.is_same_as(&was.tube) || (clr - was_clr).abs() > request.rules.clr_tolerance {
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

/// A remnant as something on hand.
#[must_use]
pub fn remnant(name: &str, stock: StockPiece) -> OnHand {
    OnHand {
        name: name.to_owned(),
        kind: OnHandKind::Measured(stock),
        count: 1,
    }
}
