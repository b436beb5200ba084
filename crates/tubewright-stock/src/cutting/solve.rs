//! The whole solution: bound, plan, proof.

use super::columns::{Column, Decision, Model};
use super::integer::{self, Integers};
use super::pattern::{Pattern, leg_count, one_leg, whole_legs};
use super::problem::{CuttingProblem, CuttingProblemError, Effort};
use super::relaxation::{is_pattern, patterns_below, relax};

/// Legs left over, cut into straights.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct FillUse {
    /// Parts from each such leg.
    pub parts: Vec<(usize, u32)>,
    /// How many legs.
    pub count: u32,
    /// Class of leg: legs of one class are those with the same fills.
    pub class: usize,
}

/// Bins cut in one way.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct CutUse {
    /// The way.
    pub pattern: Pattern,
    /// How many bins.
    pub count: u32,
    /// Class of the leg left over at each end; `None` when nothing can be cut from it.
    pub leg_classes: [Option<usize>; 2],
}

/// How sure it is that nothing is cheaper.
#[derive(Clone, Copy, Debug, PartialEq)]
#[non_exhaustive]
pub enum Proof {
    /// No plan costs less.
    Optimal,
    /// The effort ran out: no plan costs less than this, in minor units.
    NotBelow(i64),
}

/// A plan in whole numbers.
#[derive(Clone, Debug, PartialEq)]
pub struct CuttingSolution {
    /// Patterns and how many bins are cut so, in the order of bins and patterns.
    pub cuts: Vec<CutUse>,
    /// Legs left over that are cut into straights.
    pub fills: Vec<FillUse>,
    /// Packs by purchase and tier.
    pub packs: Vec<(usize, usize, u32)>,
    /// Chosen choices.
    pub chosen: Vec<usize>,
    /// Parts that cannot be made: class and number.
    pub missing: Vec<(usize, u32)>,
    /// Spares that cannot be had: bin and number.
    pub missing_spares: Vec<(usize, u32)>,
    /// Price of purchases, deliveries and choices in minor units, without what is missing.
    pub cost: i64,
    /// Value of the linear relaxation over all proper patterns, in minor units, with what is
    /// missing at its penalty.
    pub relaxation: f64,
    /// Proof.
    pub proof: Proof,
}

/// Why no plan came out.
#[derive(Clone, Debug, PartialEq, thiserror::Error)]
#[non_exhaustive]
pub enum SolveError {
    /// The problem makes no sense.
    #[error(transparent)]
    Problem(#[from] CuttingProblemError),
    /// The linear or integer solver gave up.
    #[error("the solver gave up on this plan: {message}")]
    Solver {
        /// Its words.
        message: String,
    },
    /// The solver stopped without a solution.
    #[error("the solver stopped before it had a plan; allow more effort")]
    Interrupted,
    /// Column generation did not settle.
    #[error("the bound did not settle after {rounds} rounds; allow more effort")]
    NoConvergence {
        /// Rounds done.
        rounds: usize,
    },
    /// A pattern search ran out of steps.
    #[error("stock kind {bin} can be cut in too many ways; allow more steps")]
    TooManySteps {
        /// Index of the bin.
        bin: usize,
    },
    /// The solver's answer breaks a row of the program.
    #[error("the solver's answer breaks row {row} of the program; the plan is withheld")]
    WrongAnswer {
        /// Index of the row.
        row: usize,
    },
}

/// Solves the cutting and buying problem.
///
/// Going without a part is possible at a penalty above any price, so that a problem without a
/// full plan still says which parts are missing.
///
/// # Errors
///
/// When the problem makes no sense or the solver fails; never a plan that breaks a rule of the
/// program.
pub fn solve_cutting(
    problem: &CuttingProblem,
    effort: &Effort,
) -> Result<CuttingSolution, SolveError> {
    problem.check()?;
    let model = Model::of(problem);
    let relaxation = relax(problem, &model, start_patterns(problem, &model), effort)?;
    let step = model.money_step;
    // Rounded up to the next sum that prices can make.
    let bound = ((relaxation.value - bound_slack(relaxation.value)) / step).ceil() * step;

    let pool: Vec<&Column> = model.fixed.iter().chain(&relaxation.patterns).collect();
    let first =
        integer::solve(&model.rows, &pool, None, effort.nodes)?.ok_or(SolveError::Interrupted)?;
    if first.cost <= bound + 0.5 * step {
        return Ok(solution(
            problem,
            &model,
            &pool,
            &first,
            relaxation.value,
            Proof::Optimal,
        ));
    }
    // A plan that beats the first is cheaper by a step at least.
    let gap = first.cost - step - relaxation.value;
    let not_below = |proven: f64| Proof::NotBelow(proven.round() as i64);
    let Some(more) = patterns_below(problem, &model, &relaxation.duals, gap, effort) else {
        return Ok(solution(
            problem,
            &model,
            &pool,
            &first,
            relaxation.value,
            not_below(bound),
        ));
    };
    let wide: Vec<&Column> = model
        .fixed
        .iter()
        .chain(&more)
        .chain(relaxation.patterns.iter().filter(|column| {
            is_used(&pool, &first, column)
                && !more.iter().any(|known| known.decision == column.decision)
        }))
        .collect();
    let start = start_values(&wide, &pool, &first);
    let second = integer::solve(&model.rows, &wide, Some(&start), effort.nodes)?;
    let (columns, best) = match &second {
        Some(second) if second.cost < first.cost - 0.5 * step => (&wide, second),
        _ => (&pool, &first),
    };
    let is_proven =
        second.as_ref().is_some_and(|second| second.is_proven) && model.legs.is_complete;
    let proof = if is_proven {
        Proof::Optimal
    } else {
        not_below(bound)
    };
    Ok(solution(
        problem,
        &model,
        columns,
        best,
        relaxation.value,
        proof,
    ))
}

/// The solver's relative tolerance on a sum of prices.
fn bound_slack(value: f64) -> f64 {
    1e-6 * value.abs().max(1.0)
}

/// Every part alone in every bin that can give it: with these each part has a price.
fn start_patterns(problem: &CuttingProblem, model: &Model) -> Vec<Pattern> {
    let mut patterns = Vec::new();
    for (bin, b) in problem.bins.iter().enumerate() {
        for (part, p) in problem.parts.iter().enumerate() {
            if p.family != b.family || p.size > b.size || model.caps[part] == 0 {
                continue;
            }
            let ends = match leg_count(p) {
                0 => [None, None],
                1 if one_leg(p) <= b.legs[0] => [Some(part), None],
                1 if one_leg(p) <= b.legs[1] => [None, Some(part)],
                2 if p.size == b.size && whole_legs(b, p).is_some() => [Some(part), Some(part)],
                _ => continue,
            };
            patterns.push(Pattern {
                bin,
                counts: vec![(part, 1)],
                ends,
            });
        }
    }
    patterns
}

fn is_used(pool: &[&Column], integers: &Integers, column: &Column) -> bool {
    is_pattern(column)
        && pool
            .iter()
            .zip(&integers.counts)
            .any(|(known, count)| *count > 0 && known.decision == column.decision)
}

/// The first plan in terms of the wider set of columns.
fn start_values(wide: &[&Column], pool: &[&Column], first: &Integers) -> Vec<i64> {
    let mut left: Vec<(&Decision, i64)> = pool
        .iter()
        .zip(&first.counts)
        .filter(|(_, count)| **count > 0)
        .map(|(column, count)| (&column.decision, *count))
        .collect();
    // Tiers and deliveries all look alike as decisions, but both lists start with the fixed columns.
    let mut value_of = |decision: &Decision, index: usize| {
        if matches!(decision, Decision::TakeTier | Decision::Deliver) {
            return pool
                .get(index)
                .filter(|column| column.decision == *decision)
                .and_then(|_| first.counts.get(index))
                .copied()
                .unwrap_or(0);
        }
        left.iter_mut()
            .find(|(known, _)| *known == decision)
            .map_or(0, |(_, count)| core::mem::take(count))
    };
    wide.iter()
        .enumerate()
        .map(|(i, column)| value_of(&column.decision, i))
        .collect()
}

fn solution(
    problem: &CuttingProblem,
    model: &Model,
    columns: &[&Column],
    integers: &Integers,
    relaxation: f64,
    proof: Proof,
) -> CuttingSolution {
    let mut out = CuttingSolution {
        cuts: Vec::new(),
        fills: Vec::new(),
        packs: Vec::new(),
        chosen: Vec::new(),
        missing: Vec::new(),
        missing_spares: Vec::new(),
        cost: 0,
        relaxation,
        proof,
    };
    for (column, count) in columns.iter().zip(&integers.counts) {
        let Ok(count @ 1..) = u32::try_from(*count) else {
            continue;
        };
        let mut is_paid = true;
        match &column.decision {
            Decision::Cut(pattern) => out.cuts.push(CutUse {
                pattern: pattern.clone(),
                count,
                leg_classes: model.leg_classes(problem, pattern),
            }),
            Decision::Fill { class, fill } => {
                let parts = model
                    .legs
                    .fills
                    .get(*class)
                    .and_then(|fills| fills.get(*fill));
                out.fills.push(FillUse {
                    parts: parts.cloned().unwrap_or_default(),
                    count,
                    class: *class,
                });
            }
            Decision::Buy { purchase, tier } => out.packs.push((*purchase, *tier, count)),
            Decision::TakeTier | Decision::Deliver => {}
            Decision::Choose(choice) => out.chosen.push(*choice),
            Decision::Miss(part) => {
                out.missing.push((*part, count));
                is_paid = false;
            }
            Decision::MissSpare(bin) => {
                out.missing_spares.push((*bin, count));
                is_paid = false;
            }
        }
        if is_paid {
            out.cost += column.cost.round() as i64 * i64::from(count);
        }
    }
    out.cuts.sort_by(|a, b| a.pattern.cmp(&b.pattern));
    out
}
