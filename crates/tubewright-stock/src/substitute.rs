//! What to do when a line is out, worked out beforehand.

use rayon::prelude::*;

use crate::error::PlanError;
use crate::money::Money;
use crate::plan::StockPlan;
use crate::plan_stock::plan_stock;
use crate::request::StockRequest;

/// The plan when some items cannot be bought.
#[derive(Clone, Debug, PartialEq)]
pub struct Substitute {
    /// Items that are out, as names.
    pub out: Vec<String>,
    /// The plan without them; its `missing` says what cannot be made then.
    pub plan: StockPlan,
    /// What it costs more than the plan with them, in minor units. Below nothing where that plan is not the
    /// cheapest, which can be where its proof is open: this one then makes every piece for less.
    pub dearer_minor: i64,
}

impl Substitute {
    /// Whether it is the better plan though nothing is out.
    #[must_use]
    pub fn is_cheaper(&self) -> bool {
        self.plan.is_full() && self.dearer_minor < 0
    }

    /// What it costs more or less: *12.40 EUR more*.
    #[must_use]
    pub fn difference_words(&self) -> String {
        Money::new(self.dearer_minor, self.plan.price.currency).more_or_less()
    }
}

/// What is said where one of these is cheaper than the plan with everything.
pub const CHEAPER_THOUGH_OUT: &str = "Where it costs less though something is out, the list of what to buy is not the \
     cheapest that there is, nor proven to be: take the cheaper one, it makes every piece too.";

/// The request with these items not for sale; what is on hand of them stays.
#[must_use]
pub fn without(request: &StockRequest, items: &[&str]) -> StockRequest {
    let mut left = request.clone();
    left.offers
        .retain(|offer| !items.contains(&offer.item.as_str()));
    left
}

/// The request with at most so many of an item to be had from anybody; what is on hand of it stays.
#[must_use]
pub fn at_most(request: &StockRequest, item: &str, most: u32) -> StockRequest {
    let mut left = request.clone();
    for offer in left.offers.iter_mut().filter(|offer| offer.item == item) {
        offer.available = Some(
            offer
                .available
                .map_or(most, |available| available.min(most)),
        );
    }
    left
}

/// For each bought item of a plan what happens when it is out, and for the dearest pairs: the
/// `pairs` pairs with the largest sums, for a pair that costs much hurts most when it is out.
/// Solved in parallel, each with a [quick](crate::Effort::quick) search, so that what it costs more is at most so much;
/// the order is that of the plan's lines and then of the pairs.
///
/// # Errors
///
/// The first error in that order.
pub fn substitutes(
    request: &StockRequest,
    plan: &StockPlan,
    pairs: usize,
) -> Result<Vec<Substitute>, PlanError> {
    let mut lines: Vec<(&str, i64)> = Vec::new();
    for buy in &plan.buys {
        match lines.iter_mut().find(|(item, _)| *item == buy.item) {
            Some((_, sum)) => *sum += buy.total.minor,
            None => lines.push((&buy.item, buy.total.minor)),
        }
    }
    let mut cases: Vec<Vec<&str>> = lines.iter().map(|(item, _)| vec![*item]).collect();
    let mut both: Vec<(i64, [&str; 2])> = lines
        .iter()
        .enumerate()
        .flat_map(|(at, (a, x))| {
            lines
                .iter()
                .skip(at + 1)
                .map(move |(b, y)| (x + y, [*a, *b]))
        })
        .collect();
    // Stable, so that equal sums keep the order of the lines.
    both.sort_by_key(|(sum, _)| -sum);
    cases.extend(both.into_iter().take(pairs).map(|(_, pair)| pair.to_vec()));
    let solved: Vec<Result<Substitute, PlanError>> = cases
        .into_par_iter()
        .map(|out| {
            let mut left = without(request, &out);
            left.effort = request.effort.quick();
            let without_them = plan_stock(&left)?;
            Ok(Substitute {
                dearer_minor: without_them.cost.minor - plan.cost.minor,
                out: out.into_iter().map(str::to_owned).collect(),
                plan: without_them,
            })
        })
        .collect();
    solved.into_iter().collect()
}
