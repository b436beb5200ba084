//! The linear relaxation over all proper patterns, by column generation (Gilmore & Gomory, "A linear
//! programming approach to the cutting-stock problem", Operations Research 9, 1961, from memory).

use std::collections::BTreeSet;

use super::columns::{Column, Model};
use super::lp::{self, Exactness};
use super::pattern::Pattern;
use super::problem::{Bin, CuttingProblem, Effort};
use super::search::{PatternSearch, Values};
use super::solve::SolveError;

/// The relaxation solved.
pub(crate) struct Relaxation {
    /// Price of each row.
    pub(crate) duals: Vec<f64>,
    /// No plan costs less.
    pub(crate) value: f64,
    /// The patterns that were needed.
    pub(crate) patterns: Vec<Column>,
}

/// Each round adds a pattern per bin at most; real problems need some tens of rounds.
const MOST_ROUNDS: usize = 400;

/// Prices below this, in minor units, are the solver's rounding.
pub(crate) const LEAST_PRICE: f64 = 1e-5;

/// What may be taken off the bound because a round would gain so little, in minor units: a pattern that
/// is worth this, shared among all parts, more than its bin costs is worth no round.
const WORTH_NO_ROUND: f64 = 5e-3;

/// Solves the relaxation, beginning with these patterns.
pub(crate) fn relax(
    problem: &CuttingProblem,
    model: &Model,
    start: impl IntoIterator<Item = Pattern>,
    effort: &Effort,
) -> Result<Relaxation, SolveError> {
    let start: BTreeSet<Pattern> = start.into_iter().collect();
    let parts: u32 = model.caps.iter().sum();
    let least = WORTH_NO_ROUND / f64::from(parts.max(1));
    let mut known = start;
    let mut patterns: Vec<Column> = known
        .iter()
        .map(|pattern| model.cut(problem, pattern.clone()))
        .collect();
    let mut exactness = Exactness::Rough;
    for _ in 0..MOST_ROUNDS {
        let all: Vec<&Column> = model.fixed.iter().chain(&patterns).collect();
        let mix = lp::solve(&model.rows, &all, exactness)?.ok_or(SolveError::Interrupted)?;
        let broken = price_patterns(problem, model, &mix.prices, least, effort)?;
        let off = broken.iter().map(|(more, _)| *more).fold(least, f64::max);
        let before = patterns.len();
        for (_, pattern) in broken {
            if known.insert(pattern.clone()) {
                patterns.push(model.cut(problem, pattern));
            }
        }
        if patterns.len() > before {
            continue;
        }
        if exactness == Exactness::Rough {
            exactness = Exactness::Fine;
        } else {
            // Those that are there already are worth more by what the solver is off.
            return Ok(Relaxation {
                value: bound(model, &mix.prices)
                    - off * f64::from(parts)
                    - model.most_for_seconds(problem),
                duals: mix.prices,
                patterns,
            });
        }
    }
    Err(SolveError::NoConvergence {
        rounds: MOST_ROUNDS,
    })
}

/// What no plan costs less than at these prices, whatever is a little off in them: the value of the
/// rows, less what the columns that are always there are worth more than they cost.
fn bound(model: &Model, duals: &[f64]) -> f64 {
    let rows: f64 = model
        .rows
        .iter()
        .zip(duals)
        .map(|(row, price)| row.rhs * price)
        .sum();
    let off: f64 = model
        .fixed
        .iter()
        .map(|column| reduced_cost(column, duals).min(0.0) * f64::from(column.most))
        .sum();
    rows + off
}

impl Relaxation {
    /// The patterns that cost at most this share of the whole more than they are worth.
    pub(crate) fn near(&self, share: f64) -> impl Iterator<Item = &Column> {
        self.patterns
            .iter()
            .filter(move |column| reduced_cost(column, &self.duals) <= share * self.value)
    }

    /// So many patterns that cost least more than they are worth.
    pub(crate) fn nearest(&self, most: usize) -> Vec<&Pattern> {
        let mut by_cost: Vec<(f64, &Column)> = self
            .patterns
            .iter()
            .map(|column| (reduced_cost(column, &self.duals), column))
            .collect();
        by_cost.sort_by(|a, b| a.0.total_cmp(&b.0));
        by_cost
            .into_iter()
            .take(most)
            .filter_map(|(_, column)| column.pattern())
            .collect()
    }
}

/// The best pattern of each bin that is worth at least so much more than the bin costs, with how much
/// more.
pub(crate) fn price_patterns(
    problem: &CuttingProblem,
    model: &Model,
    duals: &[f64],
    least: f64,
    effort: &Effort,
) -> Result<Vec<(f64, Pattern)>, SolveError> {
    let leg = leg_values(model, duals);
    let values = Values {
        parts: duals,
        leg: &leg,
    };
    let mut found = Vec::new();
    for bin in 0..problem.bins.len() {
        let price = model.bin_price(duals, bin);
        let best = PatternSearch::new(problem, &model.caps, bin, &values, effort.steps)
            .best(price + least)
            .map_err(|()| SolveError::TooManySteps { bin })?;
        found.extend(best.map(|(worth, pattern)| (worth - price, pattern)));
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

/// Every pattern whose reduced cost is below `gap`; `None` when there are more than `most`.
pub(crate) fn patterns_below(
    problem: &CuttingProblem,
    model: &Model,
    duals: &[f64],
    gap: f64,
    most: usize,
    effort: &Effort,
) -> Option<Vec<Column>> {
    let leg = leg_values(model, duals);
    let values = Values {
        parts: duals,
        leg: &leg,
    };
    let mut columns = Vec::new();
    for bin in 0..problem.bins.len() {
        let most = most.saturating_sub(columns.len());
        let threshold = model.bin_price(duals, bin) - gap - LEAST_PRICE;
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
