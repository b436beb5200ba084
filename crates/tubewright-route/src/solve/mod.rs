//! The search: random starts round guide paths, mending onto the closure manifold, improvement over
//! layouts.

mod alternatives;
mod bound;
mod chain;
mod curved;
mod descend;
mod field;
mod ground;
mod guided;
mod improve;
mod joint;
mod layout;
mod lines;
mod loose;
mod moves;
mod other_ways;
mod pairs;
mod parts;
mod pins;
mod polyline;
mod prove;
mod random;
mod relax;
mod report;
mod room;
mod rounding;
mod rule_rows;
mod shots;
mod single;
mod slides;
mod stub;
mod system;
mod turned;

use core::sync::atomic::AtomicBool;
use std::collections::BTreeSet;

use crate::cost::CostModel;
use crate::problem::{ProblemError, RouteProblem};
use crate::route::{Budget, Outcome, Progress, Route};

pub use rounding::{ClosingPiece, EndError, RoundError, Rounded, ShopSteps, round_and_close};

use improve::{Meter, Solution};
pub(crate) use slides::Slide;
use system::Context;

/// Most alternatives that are given back.
const MOST_ALTERNATIVES: usize = 6;

/// One part in so many of the effort looks for other ways round.
const SHARE_OF_OTHER_WAYS: u64 = 5;
/// Makes another seed for the second attempt.
const SECOND_SEED: u64 = 0x5EED;

/// Boxes of sizes that the bound may look at, by the effort.
fn bound_boxes(budget: Budget) -> usize {
    usize::try_from(budget.work_units.saturating_mul(2)).unwrap_or(usize::MAX)
}

/// Whether anything that holds is found in this effort; stops at the first. Deterministic as [`solve`];
/// `false` is no proof that nothing fits.
///
/// # Errors
/// [`ProblemError`] when the problem does not hold together.
pub fn fits(
    problem: &RouteProblem,
    cost: &CostModel,
    budget: Budget,
    cancel: &AtomicBool,
) -> Result<bool, ProblemError> {
    problem.checked()?;
    Ok(relax::is_found(problem, cost, budget, cancel, &mut 0))
}

/// Solves a route problem.
///
/// Deterministic: equal problem, cost model and budget give equal routes whatever the number of
/// threads. `cancel` is looked at between small pieces of work; a cancelled search returns the best
/// so far. `progress` is called on the calling thread.
///
/// # Errors
/// [`ProblemError`] when the problem does not hold together; that nothing fits is an [`Outcome`].
pub fn solve(
    problem: &RouteProblem,
    cost: &CostModel,
    budget: Budget,
    cancel: &AtomicBool,
    progress: &mut dyn FnMut(Progress),
) -> Result<Outcome, ProblemError> {
    problem.checked()?;
    let ctx = Context::new(problem, cost);
    if let Some(proof) = prove::end_blocked(&ctx) {
        let reason = relax::reason(problem, cost, budget, cancel, &mut 0);
        return Ok(Outcome::Infeasible { reason, proof });
    }
    let quick_bound = bound::quick(&ctx);
    // The last parts of the effort are for the alternatives: a tenth to bring them to the standard of
    // the best, and a share to look for other ways round.
    let total = budget.work_units;
    let mut meter = Meter {
        spent: 0,
        limit: total - total / 10 - total / SHARE_OF_OTHER_WAYS,
        cancel,
    };
    let mut archive = alternatives::Archive::default();
    let mut seen = |s: &Solution, spent: u64, is_best: bool| {
        archive.add(s);
        if is_best {
            progress(Progress {
                work_units: spent,
                budget_units: total,
                best_cost: Some(s.cost),
                improved: Some(report::route(&ctx, s, String::new(), quick_bound)),
                lower_bound: quick_bound,
            });
        }
    };
    let mut found = joint::search(&ctx, budget.seed, &mut meter, &mut seen);
    if found.is_empty() {
        // Nothing to find alternatives to: the whole effort goes into finding one.
        meter.limit = total;
        found = joint::search(&ctx, budget.seed ^ SECOND_SEED, &mut meter, &mut seen);
    }
    if found.is_empty() {
        if let Some(proof) = prove::prove(&ctx) {
            let spent = &mut meter.spent;
            let reason = relax::reason(problem, cost, budget, cancel, spent);
            return Ok(Outcome::Infeasible { reason, proof });
        }
        return Ok(Outcome::NotFoundInEffort {
            work_units: meter.spent,
        });
    }
    found.extend(archive.cheapest());
    meter.limit = total - total / 10;
    let mut looked_round: Vec<Solution> = Vec::new();
    while !meter.is_over() && looked_round.len() < MOST_ALTERNATIVES {
        let ways = alternatives::distinct(&ctx, found.clone(), MOST_ALTERNATIVES);
        let Some((next, _)) = ways
            .into_iter()
            .find(|(way, _)| !looked_round.iter().any(|known| known.x == way.x))
        else {
            break;
        };
        found.extend(other_ways::search(&ctx, &next, budget.seed, &mut meter));
        looked_round.push(next);
    }
    let mut lower_bound = quick_bound;
    if let Some(best) = found
        .iter()
        .min_by(|a, b| a.cost.total_cmp(&b.cost))
        .cloned()
    {
        meter.limit = total;
        let boxes = bound_boxes(budget);
        let mut told = |s: &Solution, spent: u64, _: bool| {
            progress(Progress {
                work_units: spent,
                budget_units: total,
                best_cost: Some(s.cost),
                improved: Some(report::route(&ctx, s, String::new(), quick_bound)),
                lower_bound: quick_bound,
            });
        };
        let (bound, cheaper) = guided::bound_and_follow(&ctx, &best, boxes, &mut meter, &mut told);
        lower_bound = lower_bound.max(bound);
        found.extend(cheaper);
    }
    // Other ways round are brought to the same standard as the best.
    let others = alternatives::distinct(&ctx, found.clone(), 4);
    for (k, (other, _)) in others.into_iter().enumerate().skip(1) {
        let mut own = Meter {
            spent: 0,
            limit: total.saturating_sub(meter.spent) / (4 - k.min(3) as u64),
            cancel,
        };
        let scope = if other.chains.len() > 1 {
            improve::Scope::Alone(0)
        } else {
            improve::Scope::Together
        };
        let polished = improve::improve(
            &ctx,
            other,
            scope,
            &mut BTreeSet::new(),
            &mut own,
            |_, _, _| {},
        );
        meter.spent += own.spent;
        found.push(polished);
    }
    let alternatives: Vec<Route> = alternatives::distinct(&ctx, found, MOST_ALTERNATIVES)
        .into_iter()
        .map(|(s, name)| report::route(&ctx, &s, name, lower_bound))
        .collect();
    Ok(Outcome::Solved {
        alternatives,
        work_units: meter.spent,
    })
}
