//! What to take when something is out, worked out beforehand.

use super::buy::difference;
use crate::api::{Counter, SubstituteView, WantedView};
use crate::derived::Shown;
use tubewright_plan::stock::wanted;
use tubewright_stock::{StockPlan, Substitute};

/// The substitutes of the list as it is now, and the parts to look for.
pub(crate) fn of(shown: &Shown) -> Counter {
    let wanted = wanted(shown.car.model())
        .into_iter()
        .map(|part| WantedView {
            item: part.item,
            count: part.count,
            parts: part.for_components,
            checks: part.checks,
        })
        .collect();
    let plan = shown.now().and_then(Result::ok).map(|supply| &supply.plan);
    let (substitutes, trouble) = match (shown.counter(), plan) {
        (Ok(found), Some(plan)) => (
            found.iter().map(|one| substitute(plan, one)).collect(),
            None,
        ),
        (Err(why), _) => (Vec::new(), Some(why.to_owned())),
        (Ok(_), None) => (Vec::new(), None),
    };
    Counter {
        version: shown.version.clone(),
        substitutes,
        trouble,
        wanted,
    }
}

fn substitute(plan: &StockPlan, substitute: &Substitute) -> SubstituteView {
    let (more, less) = difference(plan, &substitute.plan);
    SubstituteView {
        out: substitute.out.clone(),
        more,
        less,
        difference: substitute.difference_words(),
        is_cheaper: substitute.is_cheaper(),
        price: substitute.plan.price.to_string(),
        missing: substitute
            .plan
            .missing
            .iter()
            .map(|missing| missing.mark.clone())
            .collect(),
    }
}
