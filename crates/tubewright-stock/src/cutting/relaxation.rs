//! The linear relaxation over all proper patterns, by column generation (Gilmore & Gomory, "A linear
//! programming approach to the cutting-stock problem", Operations Research 9, 1961, from memory).
//!
//! The programs of the first rounds are solved no finer than the patterns that are still missing are worth:
//! the prices of such a solution lie amid many that are nearly as good, which asks for fewer rounds (J. Gondzio,
//! P. González-Brevis, P. Munari, "New developments in the primal-dual column generation technique", European
//! Journal of Operational Research 224, 2013, from memory).

use std::collections::BTreeSet;

use super::columns::{Column, Model};
use super::lp;
use super::pattern::Pattern;
use super::problem::{Bin, CuttingProblem, Effort};
use super::search::{PatternSearch, Values};
use super::solve::SolveError;

/// The relaxation solved.
pub(crate) struct Relaxation {
    /// Its rows and columns, with every purchase at its lowest price.
    pub(crate) model: Model,
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

/// The bound of a small problem is known to this, in minor units.
const EXACT: f64 = 5e-3;

/// The bound of any other is known to this share: such a plan is rarely proven, and then by a part of the gap
/// that is many times greater.
pub(crate) const NEARLY: f64 = 1e-3;

/// A problem is small until its programs have had so many places for numbers, which is some tens of
/// milliseconds of work.
const SMALL: usize = 1_000_000;

/// What the first program is solved to, and how much finer than what is still missing the later ones are.
const FIRST: f64 = 1e-2;
const FINER: f64 = 0.1;

/// Of what the bound may be off, so much may be patterns that were worth no round.
const HALF: f64 = 0.5;

/// When a relaxation is known well enough.
#[derive(Clone, Copy)]
pub(crate) struct Goal {
    /// It is at least so much.
    pub(crate) enough: f64,
    /// It is known to this share, where the problem is not so small that it is known exactly.
    pub(crate) share: f64,
}

impl Goal {
    pub(crate) fn rough(share: f64) -> Self {
        Self {
            enough: f64::INFINITY,
            share,
        }
    }
}

/// Solves the relaxation, beginning with these patterns.
pub(crate) fn relax(
    problem: &CuttingProblem,
    model: Model,
    start: impl IntoIterator<Item = Pattern>,
    goal: Goal,
    effort: &Effort,
) -> Result<Relaxation, SolveError> {
    let mut known: BTreeSet<Pattern> = start.into_iter().collect();
    let mut patterns: Vec<Column> = known
        .iter()
        .map(|pattern| model.cut(problem, pattern.clone()))
        .collect();
    let parts = f64::from(model.conflicts.caps.iter().sum::<u32>().max(1));
    let (mut best, mut duals) = (f64::NEG_INFINITY, Vec::new());
    let (mut tolerance, mut work) = (FIRST, 0);
    for _ in 0..MOST_ROUNDS {
        let all: Vec<&Column> = model.fixed.iter().chain(&patterns).collect();
        work += all.len() * model.rows.len();
        let mix = lp::solve(&model.rows, &all, tolerance)?.ok_or(SolveError::Interrupted)?;
        let mixed: f64 = all
            .iter()
            .zip(&mix.amounts)
            .map(|(column, amount)| column.cost * amount)
            .sum();
        let prices = model.settled(mix.prices);
        let enough = if work < SMALL {
            EXACT
        } else {
            goal.share * mixed.abs()
        };
        let least = Least {
            share: HALF * enough / mixed.abs().max(1.0),
            more: FINER * EXACT / parts,
        };
        let priced = price_patterns(problem, &model, &prices, least, effort)?;
        let (bound, prices) = bound(problem, &model, &prices, &priced);
        if bound > best {
            (best, duals) = (bound, prices);
        }
        let before = patterns.len();
        for pattern in priced.into_iter().flat_map(|best| best.patterns) {
            if known.insert(pattern.clone()) {
                patterns.push(model.cut(problem, pattern));
            }
        }
        let open = mixed - best;
        let is_stuck = patterns.len() == before;
        // What the program is off in its own value must not pass for a bound that is known.
        let is_sure = tolerance * mixed.abs() <= enough;
        if (open <= enough && is_sure) || best >= goal.enough || (is_stuck && tolerance <= lp::FINE)
        {
            return Ok(Relaxation {
                value: best - model.most_for_seconds(problem),
                duals,
                patterns,
                model,
            });
        }
        let finer = FINER * open / mixed.abs().max(1.0);
        tolerance = if is_stuck {
            tolerance * FINER
        } else {
            tolerance
        }
        .min(finer)
        .clamp(lp::FINE, FIRST);
    }
    Err(SolveError::NoConvergence {
        rounds: MOST_ROUNDS,
    })
}

/// What no mix of all patterns costs less than, whatever is off in these prices, and the prices that say so.
///
/// A pattern that is worth `r` times what its bin costs at most is worth no more than the bin costs when parts,
/// legs and equalities are worth the `r`-th part (A. A. Farley, "A note on bounding a class of linear programming
/// problems, including cutting stock problems", Operations Research 38, 1990, from memory). What is on hand
/// costs little or nothing, so for its bins what the best pattern is worth more is taken off as often as
/// there are such bins instead; so is what a column that is always there is worth more than it costs, as often
/// as it can be taken (the Lagrangian bound, with prices of rows that are never negative).
fn bound(
    problem: &CuttingProblem,
    model: &Model,
    prices: &[f64],
    priced: &[Priced],
) -> (f64, Vec<f64>) {
    let is_bought = |bin: &usize| problem.bins[*bin].on_hand == 0;
    let ratio = priced
        .iter()
        .filter(|best| is_bought(&best.bin) && best.price >= LEAST_PRICE)
        .map(|best| best.worth / best.price)
        .fold(1.0, f64::max);
    let scaled: Vec<f64> = prices
        .iter()
        .enumerate()
        .map(|(row, price)| {
            if model.is_of_buying(row) {
                *price
            } else {
                price / ratio
            }
        })
        .collect();
    let rows: f64 = model
        .rows
        .iter()
        .zip(&scaled)
        .map(|(row, price)| row.rhs * price)
        .sum();
    let off: f64 = model
        .fixed
        .iter()
        .map(|column| reduced_cost(column, &scaled).min(0.0) * f64::from(column.most))
        .sum();
    let patterns: f64 = priced
        .iter()
        .map(|best| {
            let more = (best.worth / ratio - best.price).max(0.0);
            more * model.most_cut(problem, best.bin)
        })
        .sum();
    (rows + off - patterns, scaled)
}

impl Relaxation {
    /// The patterns that cost at most this share of the whole more than they are worth.
    pub(crate) fn near(&self, share: f64) -> impl Iterator<Item = &Column> {
        self.patterns
            .iter()
            .filter(move |column| reduced_cost(column, &self.duals) <= share * self.value)
    }

    /// Places for numbers in its last program.
    pub(crate) fn size(&self) -> usize {
        self.model.rows.len() * (self.model.fixed.len() + self.patterns.len())
    }
}

/// The best pattern of a bin at some prices.
pub(crate) struct Priced {
    bin: usize,
    /// What the bin costs.
    price: f64,
    /// No pattern is worth more.
    worth: f64,
    /// The best and some others, as far as they are worth so much more than the bin costs as was asked.
    pub(crate) patterns: Vec<Pattern>,
}

/// What a pattern must at least be worth more than its bin costs: a share of it, and so much in any case.
#[derive(Clone, Copy)]
pub(crate) struct Least {
    pub(crate) share: f64,
    pub(crate) more: f64,
}

/// The best pattern of each bin that is worth at least so much more than the bin costs.
pub(crate) fn price_patterns(
    problem: &CuttingProblem,
    model: &Model,
    duals: &[f64],
    least: Least,
    effort: &Effort,
) -> Result<Vec<Priced>, SolveError> {
    let leg = leg_values(model, duals);
    let values = Values {
        parts: duals,
        leg: &leg,
    };
    (0..problem.bins.len())
        .map(|bin| {
            let price = model.bin_price(duals, bin);
            let limit = price + (price * least.share).max(least.more);
            let best = PatternSearch::new(problem, &model.conflicts, bin, &values, effort.steps)
                .best(limit)
                .map_err(|()| SolveError::TooManySteps { bin })?;
            Ok(Priced {
                bin,
                price,
                worth: best.last().map_or(limit, |(worth, _)| *worth),
                patterns: best.into_iter().map(|(_, pattern)| pattern).collect(),
            })
        })
        .collect()
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
    relaxation: &Relaxation,
    gap: f64,
    most: usize,
    effort: &Effort,
) -> Option<Vec<Pattern>> {
    let (model, duals) = (&relaxation.model, &relaxation.duals);
    let leg = leg_values(model, duals);
    let values = Values {
        parts: duals,
        leg: &leg,
    };
    let mut patterns = Vec::new();
    for bin in 0..problem.bins.len() {
        let most = most.saturating_sub(patterns.len());
        let threshold = model.bin_price(duals, bin) - gap - LEAST_PRICE;
        let found = PatternSearch::new(problem, &model.conflicts, bin, &values, effort.steps)
            .all(threshold, most)
            .ok()?;
        patterns.extend(found);
    }
    Some(patterns)
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
