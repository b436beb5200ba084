//! Routes with progress on stderr and Ctrl-C.

use super::Failure;
use super::load::Loaded;
use crate::cli::Effort;
use crate::interrupt;
use indicatif::{ProgressBar, ProgressDrawTarget, ProgressStyle};
use tubewright_plan::routes::PosedProblem;
use tubewright_plan::stages::{Routed, Surroundings, USUAL_EFFORT, route, survey_and_bodies};
use tubewright_route::Budget;

/// A build with its surroundings and routes.
#[derive(Debug)]
pub(crate) struct Solved {
    /// The surroundings.
    pub(crate) around: Surroundings,
    /// The posed problem.
    pub(crate) posed: PosedProblem,
    /// What was found.
    pub(crate) routed: Routed,
    /// Effort and seed that were used.
    pub(crate) budget: Budget,
}

/// Measures and routes.
///
/// # Errors
/// The readings cannot be adjusted, or the routes cannot be posed.
pub(crate) fn solve(loaded: &Loaded, effort: Effort) -> Result<Solved, Failure> {
    let around = survey_and_bodies(&loaded.model, &loaded.scans)?;
    let wishes = &loaded.model.build.wishes;
    let budget = Budget {
        work_units: effort.effort.or(wishes.effort).unwrap_or(USUAL_EFFORT),
        seed: effort.seed.or(wishes.seed).unwrap_or(1),
    };
    let bar = ProgressBar::with_draw_target(Some(budget.work_units), ProgressDrawTarget::stderr());
    if let Ok(style) = ProgressStyle::with_template("routing {bar:30} {percent:>3} %  {msg}") {
        bar.set_style(style);
    }
    let outcome = route(
        &loaded.model,
        &around,
        budget,
        interrupt::flag(),
        &mut |progress| {
            bar.set_position(progress.work_units.min(progress.budget_units));
            if let Some(cost) = progress.best_cost {
                bar.set_message(format!("best so far {cost:.0}"));
            }
        },
    );
    bar.finish_and_clear();
    let (posed, routed) = outcome?;
    Ok(Solved {
        around,
        posed,
        routed,
        budget,
    })
}
