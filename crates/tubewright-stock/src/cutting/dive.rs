//! A good plan quickly: what the relaxation wants most is made whole, and the rest is solved again.

use std::collections::BTreeSet;

use super::columns::{Column, Decision, Row};
use super::lp::{self, Mix};
use super::pattern::Pattern;
use super::problem::{CuttingProblem, Effort};
use super::relaxation::{Least, Relaxation, price_patterns};
use super::solve::SolveError;

/// What is as good as whole.
const WHOLE: f64 = 0.8;

/// A dive begins with the patterns whose cost is so near to their worth, as a share of the whole.
const NEAR: f64 = 0.002;

/// Steps after which a dive ends; each takes one column at least, and a plan has some tens.
const MOST_STEPS: usize = 300;

/// A pattern that is worth less than this more than its bin costs comes to nothing.
const LEAST: Least = Least {
    share: 1e-2,
    more: 1e-2,
};

/// What the programs of a dive are solved to: enough to see what is wanted.
const ROUGH: f64 = 1e-3;

/// So far apart are costs shaken, as a share.
const SHAKE: f64 = 0.05;

/// Less than this of a column is the solver's rounding.
const LEAST_AMOUNT: f64 = 2e-3;

/// Dives from the relaxation; returns the patterns that were taken. In every turn but the first, costs are shaken
/// a little, so that other patterns come up.
///
/// # Errors
///
/// When a pattern search gives up.
pub(crate) fn dive(
    problem: &CuttingProblem,
    relaxation: &Relaxation,
    turn: usize,
    effort: &Effort,
) -> Result<BTreeSet<Pattern>, SolveError> {
    let model = &relaxation.model;
    let near = relaxation.near(NEAR);
    let mut rows = model.rows.clone();
    let mut columns: Vec<Column> = model.fixed.iter().chain(near).cloned().collect();
    for (at, column) in columns.iter_mut().enumerate().filter(|_| turn > 0) {
        column.cost *= 1.0 + SHAKE * (chance(at, turn) - 0.5);
    }
    let mut taken = BTreeSet::new();
    // What costs nothing may be wanted without end.
    for step in 0..MOST_STEPS {
        drop_idle(&rows, &mut columns);
        // More was taken than can be had, or the rest is beyond the solver: what was taken counts.
        let Some(mut mix) = mixed(&rows, &columns) else {
            break;
        };
        // At its own prices the relaxation lacks no pattern.
        let better = if step == 0 {
            Vec::new()
        } else {
            price_patterns(problem, model, &mix.prices, LEAST, effort)?
        };
        let before = columns.len();
        let best_of = better
            .into_iter()
            .filter_map(|mut best| best.patterns.pop());
        columns.extend(best_of.map(|pattern| model.cut(problem, pattern)));
        if columns.len() > before {
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

/// Drops the columns that nothing asks for any more: those of an equality that is met, and those that give
/// nothing to a row that still asks.
fn drop_idle(rows: &[Row], columns: &mut Vec<Column>) {
    loop {
        let is_asking = asking(rows, columns);
        let before = columns.len();
        columns.retain(|column| {
            let mut of_rows = column.entries.iter().map(|(row, value)| (*row, *value));
            let is_shut = of_rows
                .clone()
                .any(|(row, _)| rows[row].is_equal && !is_asking[row]);
            !is_shut
                && of_rows.any(|(row, value)| rows[row].is_equal || (value > 0.0 && is_asking[row]))
        });
        if columns.len() == before {
            return;
        }
    }
}

/// Whether a row asks for anything: an "at least" that some column may take from or that is not met yet, an
/// equality that is not met or has terms of both signs.
fn asking(rows: &[Row], columns: &[Column]) -> Vec<bool> {
    let mut has_taker = vec![false; rows.len()];
    let mut has_giver = vec![false; rows.len()];
    for (row, value) in columns.iter().flat_map(|column| &column.entries) {
        has_taker[*row] |= *value < 0.0;
        has_giver[*row] |= *value > 0.0;
    }
    rows.iter()
        .zip(has_taker.into_iter().zip(has_giver))
        .map(|(row, (has_taker, has_giver))| {
            let is_open = if row.is_equal {
                row.rhs.abs() > 0.5
            } else {
                row.rhs > 0.5
            };
            is_open || (has_taker && (has_giver || !row.is_equal))
        })
        .collect()
}

/// The mix of these columns over the rows that they and what is asked leave of meaning.
fn mixed(rows: &[Row], columns: &[Column]) -> Option<Mix> {
    let is_asking = asking(rows, columns);
    let mut place = vec![usize::MAX; rows.len()];
    let mut left = Vec::new();
    for (at, row) in rows.iter().enumerate().filter(|(at, _)| is_asking[*at]) {
        place[at] = left.len();
        left.push(*row);
    }
    let placed: Vec<Column> = columns
        .iter()
        .map(|column| Column {
            entries: column
                .entries
                .iter()
                .filter(|(row, _)| is_asking[*row])
                .map(|(row, value)| (place[*row], *value))
                .collect(),
            ..column.clone()
        })
        .collect();
    let all: Vec<&Column> = placed.iter().collect();
    let mix = lp::solve(&left, &all, ROUGH).ok().flatten()?;
    let price = |at: &usize| mix.prices.get(*at).copied().unwrap_or(0.0);
    Some(Mix {
        prices: place.iter().map(price).collect(),
        amounts: mix.amounts,
    })
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

/// A number from 0 to 1 that looks like chance and is always the same (mixing by multiplication and shift, after
/// the generator `SplitMix64` of G. L. Steele and others, 2014, from memory).
fn chance(at: usize, turn: usize) -> f64 {
    let mixed = (at as u64 + 1)
        .wrapping_mul(0x9E37_79B9_7F4A_7C15)
        .wrapping_add((turn as u64 + 1).wrapping_mul(0xD1B5_4A32_D192_ED03));
    let mixed = (mixed ^ (mixed >> 31)).wrapping_mul(0x94D0_49BB_1331_11EB);
    f64::from((mixed >> 32) as u32) / f64::from(u32::MAX)
}
