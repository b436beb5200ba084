//! A good plan quickly: what the relaxation wants most is made whole, and the rest is solved again.

use std::collections::BTreeSet;

use super::columns::{Column, Decision, Model, Row};
use super::lp::{self, Exactness, Mix};
use super::pattern::Pattern;
use super::problem::{CuttingProblem, Effort};
use super::relaxation::{LEAST_PRICE, Relaxation, price_patterns};
use super::solve::SolveError;

/// What is as good as whole.
const WHOLE: f64 = 0.8;

/// A dive begins with the patterns whose cost is so near to their worth, as a share of the whole.
const NEAR: f64 = 0.002;

/// Steps after which a dive ends; each takes one column at least, and a plan has some tens.
const MOST_STEPS: usize = 300;

/// Less than this of a column is the solver's rounding.
const LEAST_AMOUNT: f64 = 1e-3;

/// Dives from the relaxation; returns the patterns that were taken.
///
/// # Errors
///
/// When a pattern search gives up.
pub(crate) fn dive(
    problem: &CuttingProblem,
    model: &Model,
    relaxation: &Relaxation,
    effort: &Effort,
) -> Result<BTreeSet<Pattern>, SolveError> {
    let near = relaxation.near(NEAR);
    let mut columns: Vec<Column> = model.fixed.iter().chain(near).cloned().collect();
    let mut rows: Vec<Row> = model.rows.clone();
    let mut taken = BTreeSet::new();
    // What costs nothing may be wanted without end.
    for _ in 0..MOST_STEPS {
        // More was taken than can be had, or the rest is beyond the solver: what was taken counts.
        let Some(mut mix) = mixed(&rows, &columns) else {
            break;
        };
        let added = price_patterns(problem, model, &mix.prices, LEAST_PRICE, effort)?;
        if !added.is_empty() {
            let cut = |(_, pattern)| model.cut(problem, pattern);
            columns.extend(added.into_iter().map(cut));
            let Some(with_them) = mixed(&rows, &columns) else {
                break;
            };
            mix = with_them;
        }
        let steps = steps(&columns, &mix.amounts);
        if steps.is_empty() {
            break;
        }
        for (column, times) in steps {
            taken.extend(column.pattern().cloned());
            // What it gives is wanted no more.
            for (row, value) in &column.entries {
                rows[*row].rhs -= value * f64::from(times);
            }
        }
    }
    Ok(taken)
}

fn mixed(rows: &[Row], columns: &[Column]) -> Option<Mix> {
    let all: Vec<&Column> = columns.iter().collect();
    lp::solve(rows, &all, Exactness::Rough).ok().flatten()
}

/// What is taken now and how often: all that is as good as whole, else the one that is most so; nothing
/// when nothing is wanted any more.
fn steps<'a>(columns: &'a [Column], amounts: &[f64]) -> Vec<(&'a Column, i32)> {
    let open: Vec<(&Column, f64)> = columns
        .iter()
        .zip(amounts.iter().copied())
        .filter(|(column, amount)| {
            matches!(
                column.decision,
                Decision::Cut(_) | Decision::Choose(_) | Decision::Fill { .. }
            ) && *amount > LEAST_AMOUNT
        })
        .collect();
    let whole: Vec<(&Column, i32)> = open
        .iter()
        .map(|(column, amount)| {
            let times = (amount + 1.0 - WHOLE).floor() as i32;
            (*column, times.min(column.most))
        })
        .filter(|(_, times)| *times > 0)
        .collect();
    if !whole.is_empty() {
        return whole;
    }
    // The first of equals: a later one must be more.
    let most = open
        .into_iter()
        .reduce(|best, next| if next.1 > best.1 { next } else { best });
    most.map(|(column, _)| (column, 1)).into_iter().collect()
}
