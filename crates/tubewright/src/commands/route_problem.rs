//! Solve one route problem given as a file.

use super::{Done, Failure, print, write_whole};
use crate::cli::RouteProblem;
use crate::interrupt;
use std::fs;
use tubewright_plan::routes::no_way_words;
use tubewright_route::form;

/// Work units when nobody says otherwise.
const DEFAULT_EFFORT: u64 = 30_000;

/// Solves the file and writes the answer beside its name through a temporary file, so that an answer
/// is never half written.
///
/// # Errors
/// The file cannot be read or is not sound, or the answer cannot be written.
pub(crate) fn run(arguments: &RouteProblem) -> Result<Done, Failure> {
    let path = &arguments.file;
    let text = fs::read_to_string(path).map_err(Failure::reading(path))?;
    let (problem, cost) = form::read_problem(&text).map_err(|error| Failure::RouteProblem {
        path: path.clone(),
        problem: error.to_string(),
    })?;
    let budget = tubewright_route::Budget {
        work_units: arguments.effort.effort.unwrap_or(DEFAULT_EFFORT),
        seed: arguments.effort.seed.unwrap_or(1),
    };
    let outcome = tubewright_route::solve(&problem, &cost, budget, interrupt::flag(), &mut |_| {})
        .map_err(|error| Failure::RouteProblem {
            path: path.clone(),
            problem: error.to_string(),
        })?;
    let answer = form::write_outcome(&problem, &outcome);
    let out = &arguments.out;
    write_whole(out, &answer)?;
    print(&format!("{}: {}\n", problem.id, summary(&outcome)))?;
    Ok(Done::Clean.or_stopped())
}

fn summary(outcome: &tubewright_route::Outcome) -> String {
    use tubewright_route::Outcome;
    match outcome {
        Outcome::Solved {
            alternatives,
            work_units,
        } => alternatives.first().map_or_else(
            || "solved".to_owned(),
            |best| {
                format!(
                    "solved, cost {:.2}, lower bound {:.2}, {work_units} work units",
                    best.cost, best.lower_bound
                )
            },
        ),
        Outcome::NotFoundInEffort { work_units } => {
            format!("no route found in this effort ({work_units} work units)")
        }
        Outcome::Infeasible { reason, proof } => {
            format!("no route exists: {}", no_way_words(*reason, proof))
        }
        _ => "unknown".to_owned(),
    }
}
