//! A good plan quickly: what the relaxation wants most is made whole, and the rest is solved again.

use super::columns::{Column, Decision, Model, Row};
use super::lp::{self, Exactness};
use super::pattern::Pattern;
use super::problem::{CuttingProblem, Effort};
use super::relaxation::{LEAST_PRICE, Relaxation, price_patterns, reduced_cost};
use super::solve::SolveError;

/// What is as good as whole.
const WHOLE: f64 = 0.8;

/// A dive begins with the patterns whose cost is so near to their worth, as a share of the whole.
const NEAR: f64 = 0.002;

/// Steps after which a dive ends; each takes one column at least, and a plan has some tens.
const MOST_STEPS: usize = 300;

/// Rounds in which patterns for the rest are looked for, at each step.
const ROUNDS: usize = 1;

/// Dives from the relaxation; returns the patterns that were taken.
///
/// # Errors
///
/// When the linear solver or a pattern search gives up.
pub(crate) fn dive(
    problem: &CuttingProblem,
    model: &Model,
    relaxation: &Relaxation,
    effort: &Effort,
) -> Result<Vec<Pattern>, SolveError> {
    let near = relaxation
        .patterns
        .iter()
        .filter(|column| reduced_cost(column, &relaxation.duals) <= NEAR * relaxation.value);
    let mut columns: Vec<Column> = model.fixed.iter().chain(near).cloned().collect();
    let mut rows: Vec<Row> = model.rows.clone();
    let mut taken: Vec<usize> = vec![0; columns.len()];
    // What costs nothing may be wanted without end.
    for _ in 0..MOST_STEPS {
        let mut amounts = Vec::new();
        for round in 0..=ROUNDS {
            let all: Vec<&Column> = columns.iter().collect();
            // More was taken than can be had, or the rest is beyond the solver: what was taken counts.
            let Ok(Some(mix)) = lp::solve(&rows, &all, Exactness::Rough) else {
                amounts.clear();
                break;
            };
            amounts = mix.amounts;
            if round == ROUNDS {
                break;
            }
            let added = price_patterns(problem, model, &mix.prices, LEAST_PRICE, effort)?;
            if added.is_empty() {
                break;
            }
            columns.extend(
                added
                    .into_iter()
                    .map(|(_, pattern)| model.cut(problem, pattern)),
            );
            taken.resize(columns.len(), 0);
        }
        amounts.resize(columns.len(), 0.0);
        let open = |index: &usize| {
            matches!(
                columns[*index].decision,
                Decision::Cut(_) | Decision::Choose(_) | Decision::Fill { .. }
            ) && amounts[*index] > 1e-3
        };
        let steps: Vec<(usize, usize)> = (0..columns.len())
            .filter(open)
            .filter_map(|index| {
                let most = usize::try_from(columns[index].most).unwrap_or(0);
                let times = ((amounts[index] + 1.0 - WHOLE).floor() as usize).min(most);
                (times > 0).then_some((index, times))
            })
            .collect();
        let steps = if steps.is_empty() {
            let fraction = |index: &usize| amounts[*index];
            match (0..columns.len())
                .filter(open)
                .max_by(|a, b| fraction(a).total_cmp(&fraction(b)).then(b.cmp(a)))
            {
                Some(most) => vec![(most, 1)],
                None => break,
            }
        } else {
            steps
        };
        for (index, times) in steps {
            taken[index] += times;
            // What it gives is wanted no more.
            for (row, value) in &columns[index].entries {
                rows[*row].rhs -= value * times as f64;
            }
        }
    }
    Ok(columns
        .into_iter()
        .zip(taken)
        .filter(|(_, times)| *times > 0)
        .filter_map(|(column, _)| match column.decision {
            Decision::Cut(pattern) => Some(pattern),
            _ => None,
        })
        .collect())
}
