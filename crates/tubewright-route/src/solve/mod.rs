//! The search: random starts round guide paths, mending onto the closure manifold, improvement over
//! layouts.

mod chain;
mod descend;
mod field;
mod improve;
mod joint;
mod layout;
mod moves;
mod polyline;
mod random;
mod report;
mod room;
mod shots;
mod single;
mod system;

use core::sync::atomic::AtomicBool;

use crate::cost::CostModel;
use crate::problem::{ProblemError, RouteProblem};
use crate::route::{Budget, Outcome, Progress, Route};

use improve::Meter;
use system::Context;

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
    let mut meter = Meter {
        spent: 0,
        limit: budget.work_units,
        cancel,
    };
    let found = joint::search(&ctx, budget.seed, &mut meter, |s, spent| {
        progress(Progress {
            work_units: spent,
            budget_units: budget.work_units,
            best_cost: Some(s.cost),
            improved: Some(report::route(&ctx, s, 0.0)),
            lower_bound: 0.0,
        });
    });
    if found.is_empty() {
        return Ok(Outcome::NotFoundInEffort {
            work_units: meter.spent,
        });
    }
    let alternatives: Vec<Route> = found
        .iter()
        .take(5)
        .map(|s| report::route(&ctx, s, 0.0))
        .collect();
    Ok(Outcome::Solved {
        alternatives,
        work_units: meter.spent,
    })
}
