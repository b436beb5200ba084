//! The one call that makes a stock plan.

use crate::cutting::{CuttingSolution, SolveError, solve_cutting};
use crate::error::PlanError;
use crate::layout::lay_out;
use crate::model::StockModel;
use crate::money::Money;
use crate::plan::{Buy, Delivery, StockPlan};
use crate::request::StockRequest;
use crate::verify::verify;

/// Makes the cheapest plan that cuts every piece: purchases, deliveries and welds together.
///
/// On hand and offcuts cost nothing and so come first; legs of bends serve as straights where that
/// saves; packs, price breaks, availability and delivery charges are kept. The plan is checked by
/// [`verify()`] before it is returned.
///
/// Where two legs share a straight, [`Proof::Optimal`](crate::Proof::Optimal) holds for plans that use a
/// leg whole or cut one or two other straights from it; in a job larger than a car's usual size, for
/// those that use a leg whole.
///
/// # Errors
///
/// When the request makes no sense, the solver fails, or the plan fails its check. A piece that
/// cannot be made is no error: see [`StockPlan::missing`].
pub fn plan_stock(request: &StockRequest) -> Result<StockPlan, PlanError> {
    let mut model = StockModel::of(request)?;
    let solution = match solve_cutting(&model.problem, &request.effort) {
        Err(SolveError::TooManySteps { .. } | SolveError::NoConvergence { .. }) => {
            model = StockModel::with_few_splits(request)?;
            solve_cutting(&model.problem, &request.effort)?
        }
        outcome => outcome?,
    };
    let plan = assemble(request, &model, &solution);
    let faults = verify(request, &plan);
    if faults.is_empty() {
        Ok(plan)
    } else {
        Err(PlanError::Unverified { faults })
    }
}

fn assemble(request: &StockRequest, model: &StockModel, solution: &CuttingSolution) -> StockPlan {
    let currency = request.rates.weld.currency;
    let money = |minor: i64| Money::new(minor, currency);
    let buys: Vec<Buy> = solution
        .packs
        .iter()
        .filter_map(|(purchase, tier, packs)| {
            let index = *model.offers.get(*purchase)?;
            let offer = request.offers.get(index)?;
            let each = offer.prices.get(*tier)?.each;
            let quantity = packs * offer.pack;
            Some(Buy {
                offer: index,
                item: offer.item.clone(),
                supplier: offer.supplier.clone(),
                quantity,
                each,
                total: money(each.minor * i64::from(quantity)),
            })
        })
        .collect();
    let deliveries: Vec<Delivery> = request
        .suppliers
        .iter()
        .filter(|supplier| {
            supplier.delivery.minor > 0 && buys.iter().any(|buy| buy.supplier == supplier.name)
        })
        .map(|supplier| Delivery {
            supplier: supplier.name.clone(),
            charge: supplier.delivery,
        })
        .collect();
    let own_straights = solution
        .chosen
        .iter()
        .filter(|choice| is_own_straight(model, **choice))
        .count() as u32;
    let welds = model.least_welds + own_straights;
    let price = buys.iter().map(|buy| buy.total.minor).sum::<i64>()
        + deliveries
            .iter()
            .map(|delivery| delivery.charge.minor)
            .sum::<i64>();
    let base = i64::from(model.least_welds) * request.rates.weld.minor;
    let layout = lay_out(model, solution);
    StockPlan {
        buys,
        deliveries,
        cuts: layout.cuts,
        components: layout.components,
        missing: layout.missing,
        missing_spares: solution
            .missing_spares
            .iter()
            .filter_map(|(bin, count)| Some((model.bins.get(*bin)?.item.clone()?, *count)))
            .collect(),
        welds,
        price: money(price),
        cost: money(price + i64::from(welds) * request.rates.weld.minor),
        relaxation: money(base + solution.relaxation.floor() as i64),
        proof: match solution.proof {
            crate::cutting::Proof::NotBelow(minor) => crate::cutting::Proof::NotBelow(base + minor),
            proof => proof,
        },
    }
}

/// Whether a choice makes a straight a part of its own: the only choices that carry a straight.
fn is_own_straight(model: &StockModel, choice: usize) -> bool {
    model
        .choice_wanted
        .get(choice)
        .and_then(Option::as_ref)
        .is_some_and(|wanted| matches!(wanted.serves.as_slice(), [only] if only.length.mm() > 0.0))
}
