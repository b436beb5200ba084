//! Spares on the list: how many the stock file asks for, and which they are.

use tubewright_build::model::Model;
use tubewright_stock::{ExtraBend, Money, Spares, StockPlan, StockRequest, spares};

/// The spares that go with a plan.
#[derive(Clone, Debug, PartialEq)]
pub struct SpareList {
    /// `spares` in `[practice]`; `None` when it is not written.
    pub asked: Option<u32>,
    /// The spares. When no number is asked for, the one that could remake the most: it is then a word of
    /// advice and on no list.
    pub spares: Spares,
    /// Price of the plan without them.
    pub price_without: Money,
    /// Whether any piece of the plan is cut from a bend.
    has_bends: bool,
}

/// Chooses the spares for a plan of this request.
#[must_use]
pub fn spare_list(model: &Model, request: &StockRequest, plan: &StockPlan) -> SpareList {
    let asked = model.stock.practice.spares;
    SpareList {
        asked,
        spares: spares(request, plan, asked.unwrap_or(1)),
        price_without: plan.price,
        has_bends: plan
            .cuts
            .iter()
            .flat_map(|cut| &cut.parts)
            .any(|part| matches!(part.place, tubewright_stock::PartPlace::Arc { .. })),
    }
}

impl SpareList {
    /// The spares that are on the list, the one that could remake the most first.
    #[must_use]
    pub fn listed(&self) -> &[ExtraBend] {
        if self.asked.is_some() {
            &self.spares.bends
        } else {
            &[]
        }
    }

    /// The list in words, a line each; empty when none is asked for on purpose.
    #[must_use]
    pub fn words(&self) -> Vec<String> {
        let bends = &self.spares.bends;
        let Some(asked) = self.asked else {
            return self.advice();
        };
        if asked == 0 || !self.has_bends {
            return Vec::new();
        }
        let mut lines: Vec<String> = bends
            .iter()
            .map(|bend| {
                format!(
                    "Spare, beside the plan: {}; could remake {}.",
                    from_whom(bend),
                    any_of(bend)
                )
            })
            .collect();
        if bends.len() < asked as usize {
            lines.push(format!(
                "{} of {asked} spares: no other bend is to be had that could remake a piece.",
                bends.len()
            ));
        }
        if !bends.is_empty() {
            lines.push(format!(
                "{} with {}, {} without.",
                self.spares.price_with,
                if bends.len() > 1 {
                    "the spares"
                } else {
                    "the spare"
                },
                self.price_without
            ));
        }
        lines
    }

    fn advice(&self) -> Vec<String> {
        let best = self.spares.bends.first();
        best.map(|bend| {
            format!(
                "No spare is on the list: `spares` in [practice] of stock.toml sets how many. The one that \
                 could remake the most is {}: {}.",
                from_whom(bend),
                any_of(bend)
            )
        })
        .into_iter()
        .collect()
    }
}

/// What it is, from whom, and what it adds.
fn from_whom(bend: &ExtraBend) -> String {
    match &bend.supplier {
        Some(supplier) => format!("1 × {} ({supplier}), {}", bend.item, bend.price),
        None => format!("1 × {}, which lies over uncut", bend.item),
    }
}

/// The parts that it could remake, as they are painted.
#[must_use]
pub fn any_of(bend: &ExtraBend) -> String {
    let parts: Vec<String> = bend.remakes.iter().map(|marks| marks.join("+")).collect();
    match parts.as_slice() {
        [only] => only.clone(),
        _ => format!("any one of {}", parts.join(", ")),
    }
}
