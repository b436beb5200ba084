//! The linear relaxation over all proper patterns, by column generation.
//!
//! The solver gives no dual prices, so the dual program is the one that is solved: its unknowns
//! are the prices of the rows, each column of the primal is one of its constraints, and a pattern
//! worth more than its bin costs is a constraint that is broken and is added.

use microlp::{ComparisonOp, OptimizationDirection, Problem, SolveOutcome, Variable};

use super::columns::{Column, Model};
use super::pattern::Pattern;
use super::problem::{Bin, CuttingProblem, Effort};
use super::search::{PatternSearch, Values};
use super::solve::SolveError;

/// The relaxation solved.
pub(crate) struct Relaxation {
    /// Price of each row.
    pub(crate) duals: Vec<f64>,
    /// Value: no plan costs less.
    pub(crate) value: f64,
    /// The patterns that were needed.
    pub(crate) patterns: Vec<Column>,
}

/// Each round adds a pattern per bin at most; real problems need some tens of rounds.
const MOST_ROUNDS: usize = 400;

/// A reduced cost below this many minor units is none: the solver's own tolerance on prices of
/// some thousands.
const PRICE_TOLERANCE: f64 = 1e-5;

pub(crate) fn relax(
    problem: &CuttingProblem,
    model: &Model,
    start: Vec<Pattern>,
    effort: &Effort,
) -> Result<Relaxation, SolveError> {
    let mut patterns: Vec<Column> = start
        .into_iter()
        .map(|pattern| model.cut(problem, pattern))
        .collect();
    let mut lp = Problem::new(OptimizationDirection::Maximize);
    let prices: Vec<Variable> = model
        .rows
        .iter()
        .map(|row| {
            let least = if row.is_equal { f64::NEG_INFINITY } else { 0.0 };
            lp.add_var(row.rhs, (least, f64::INFINITY))
        })
        .collect();
    for column in model.fixed.iter().chain(&patterns) {
        lp.add_constraint(terms(column, &prices), ComparisonOp::Le, column.cost);
    }
    let mut solution = solved(lp.solve())?;
    for _ in 0..MOST_ROUNDS {
        let duals: Vec<f64> = prices
            .iter()
            .map(|price| solution.var_value(*price))
            .collect();
        let added = price_patterns(problem, model, &duals, effort)?;
        if added.is_empty() {
            return Ok(Relaxation {
                duals,
                value: solution.objective(),
                patterns,
            });
        }
        for pattern in added {
            let column = model.cut(problem, pattern);
            solution = solved(solution.add_constraint(
                terms(&column, &prices),
                ComparisonOp::Le,
                column.cost,
            ))?;
            patterns.push(column);
        }
    }
    Err(SolveError::NoConvergence {
        rounds: MOST_ROUNDS,
    })
}

fn terms(column: &Column, prices: &[Variable]) -> Vec<(Variable, f64)> {
    column
        .entries
        .iter()
        .map(|(row, value)| (prices[*row], *value))
        .collect()
}

fn solved(outcome: Result<SolveOutcome, microlp::Error>) -> Result<microlp::Solution, SolveError> {
    match outcome {
        Ok(SolveOutcome::Solution(solution)) => Ok(*Box::new(solution)),
        Ok(_) => Err(SolveError::Interrupted),
        Err(error) => Err(SolveError::Solver {
            message: error.to_string(),
        }),
    }
}

/// The best broken pattern of each bin.
fn price_patterns(
    problem: &CuttingProblem,
    model: &Model,
    duals: &[f64],
    effort: &Effort,
) -> Result<Vec<Pattern>, SolveError> {
    let leg = leg_values(model, duals);
    let values = Values {
        parts: duals,
        leg: &leg,
    };
    let mut found = Vec::new();
    for bin in 0..problem.bins.len() {
        let price = model.bin_price(duals, bin);
        let best = PatternSearch::new(problem, &model.caps, bin, &values, effort.steps)
            .best(price + PRICE_TOLERANCE)
            .map_err(|()| SolveError::TooManySteps { bin })?;
        found.extend(best.map(|(_, pattern)| pattern));
    }
    Ok(found)
}

pub(crate) fn leg_values<'a>(
    model: &'a Model,
    duals: &'a [f64],
) -> impl Fn(&Bin, i64) -> Option<f64> + 'a {
    move |bin, left| {
        let class = model.legs.class(bin, left)?;
        Some(model.leg_price(duals, class))
    }
}

/// Every pattern whose reduced cost is below `gap`; `None` when there are more than allowed.
pub(crate) fn patterns_below(
    problem: &CuttingProblem,
    model: &Model,
    duals: &[f64],
    gap: f64,
    effort: &Effort,
) -> Option<Vec<Column>> {
    let leg = leg_values(model, duals);
    let values = Values {
        parts: duals,
        leg: &leg,
    };
    let mut columns = Vec::new();
    for bin in 0..problem.bins.len() {
        let most = effort.patterns.saturating_sub(columns.len());
        let threshold = model.bin_price(duals, bin) - gap - PRICE_TOLERANCE;
        let found = PatternSearch::new(problem, &model.caps, bin, &values, effort.steps)
            .all(threshold, most)
            .ok()?;
        columns.extend(found.into_iter().map(|pattern| model.cut(problem, pattern)));
    }
    Some(columns)
}

/// What a column costs more than it is worth.
pub(crate) fn reduced_cost(column: &Column, duals: &[f64]) -> f64 {
    let worth: f64 = column
        .entries
        .iter()
        .map(|(row, value)| duals[*row] * value)
        .sum();
    column.cost - worth
}
