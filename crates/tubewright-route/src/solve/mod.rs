//! The search: random starts round guide paths, mending onto the closure manifold, improvement over
//! layouts.

mod chain;
mod descend;
mod field;
mod improve;
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

use tubewright_geometry::{Point, Vector};

use crate::cost::CostModel;
use crate::problem::{ProblemError, Region, RouteProblem};
use crate::route::{Budget, Outcome, Progress, Route};

use field::Field;
use improve::{Meter, Solution};
use single::Task;
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
    let mut found: Vec<Solution> = Vec::new();
    if let Some(task) = Task::of_run(&ctx, 0) {
        let region = search_region(problem, &task);
        let field = Field::new(&ctx.room, &region);
        found = single::search(&ctx, &task, &field, budget.seed, &mut meter, |s, spent| {
            progress(Progress {
                work_units: spent,
                budget_units: budget.work_units,
                best_cost: Some(s.cost),
                improved: Some(report::route(&ctx, s, 0.0)),
                lower_bound: 0.0,
            });
        });
    }
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

/// Where a guide path may go: round both ends, within the workspace.
fn search_region(problem: &RouteProblem, task: &Task) -> Region {
    let (s, e) = (task.ends.start.origin, task.ends.end);
    let reach = 500.0 + 0.25 * s.distance(e);
    let grow = Vector::new(reach, reach, reach);
    let low = |a: Point, b: Point| Point::new(a.x.min(b.x), a.y.min(b.y), a.z.min(b.z));
    let high = |a: Point, b: Point| Point::new(a.x.max(b.x), a.y.max(b.y), a.z.max(b.z));
    let (min, max) = (low(s, e) - grow, high(s, e) + grow);
    match problem.workspace {
        Some(w) => Region {
            min: high(min, w.min),
            max: low(max, w.max),
        },
        None => Region { min, max },
    }
}
