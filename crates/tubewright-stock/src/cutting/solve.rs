//! The whole solution: bound, plan, proof.

use std::collections::BTreeSet;

use super::columns::{Column, Decision, Model, Scope};
use super::dive::dive;
use super::integer::{self, Integers};
use super::pattern::{Pattern, leg_count, one_leg, whole_legs};
use super::problem::{CuttingProblem, CuttingProblemError, Effort};
use super::relaxation::{Relaxation, patterns_below, relax};

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
    let charged: Vec<usize> = (0..problem.delivery.len())
        .filter(|supplier| {
            problem.delivery[*supplier] > 0
                && problem
                    .purchases
                    .iter()
                    .any(|purchase| purchase.supplier == *supplier)
        })
        .collect();
    let mut best: Option<Found> = None;
    let mut open_bound = f64::INFINITY;
    let mut relaxation = f64::INFINITY;
    let sets = supplier_sets(problem, &charged);
    // Patterns that are near to worth their price, and those that dives took.
    let (mut pool, mut taken) = (BTreeSet::new(), BTreeSet::new());
    let has_more_prices = problem
        .purchases
        .iter()
        .any(|purchase| purchase.tiers.len() > 1);
    if has_more_prices {
        // A plan without higher quantities, from no supplier with a charge and from all: what it
        // costs rules out most higher quantities.
        let (none, all) = (sets.first(), sets.last().filter(|_| sets.len() > 1));
        for set in none.into_iter().chain(all) {
            Job::of(problem, set.clone(), f64::INFINITY, true, &mut pool, effort)?
                .improve(problem, &mut best, &mut taken, effort, true)?;
        }
    }
    let budget = best.as_ref().map_or(f64::INFINITY, |found| found.cost);
    let mut jobs = Vec::with_capacity(sets.len());
    for set in sets {
        let job = Job::of(problem, set, budget, false, &mut pool, effort)?;
        relaxation = relaxation.min(job.value());
        jobs.push(job);
    }
    jobs.sort_by(|a, b| a.value().total_cmp(&b.value()));
    for job in &jobs {
        open_bound = open_bound.min(job.improve(problem, &mut best, &mut taken, effort, false)?);
    }
    let found = best.ok_or(SolveError::Interrupted)?;
    if let Some(always @ [_, ..]) = charged.get(MOST_CHARGED..) {
        let charges: i64 = always
            .iter()
            .map(|supplier| problem.delivery[*supplier])
            .sum();
        relaxation -= charges as f64;
        open_bound = open_bound.min(relaxation);
    }
    let mut solution = found.solution;
    solution.relaxation = relaxation;
    solution.proof = if open_bound >= found.cost - 0.5 {
        Proof::Optimal
    } else {
        Proof::NotBelow(open_bound.round() as i64)
    };
    Ok(solution)
}

/// Most suppliers with a charge whose every subset is tried; beyond it the first
/// six are chosen freely and the others are always paid, so that the plan may be dearer than need
/// be by those charges.
const MOST_CHARGED: usize = 6;

/// The relaxation of one set of suppliers begins with the patterns of the others whose cost is so near
/// to their worth, as a share of the whole.
const NEAR: f64 = 0.01;

/// Most patterns beside those of dives among which a plan is looked for.
const MOST_NEAR: usize = 60;

/// Up to so many patterns the search for whole numbers needs no dive before it.
const FEW_PATTERNS: usize = 200;

/// Shares of the gap in which patterns are looked for when all of it holds too many.
const SHARES: [f64; 4] = [0.5, 0.25, 0.1, 0.04];

/// Every set of suppliers that may be bought from.
fn supplier_sets(problem: &CuttingProblem, charged: &[usize]) -> Vec<Vec<bool>> {
    let free = charged
        .get(..MOST_CHARGED.min(charged.len()))
        .unwrap_or(charged);
    (0..1usize << free.len())
        .map(|set| {
            let mut allowed = vec![true; problem.delivery.len()];
            for (bit, supplier) in free.iter().enumerate() {
                allowed[*supplier] = set >> bit & 1 == 1;
            }
            allowed
        })
        .collect()
}

/// The best plan so far and its cost with deliveries and penalties.
struct Found {
    cost: f64,
    solution: CuttingSolution,
}

/// The problem with one set of suppliers, whose charges are paid whether used or not: a plan that
/// does not use one is found cheaper in the smaller set.
struct Job {
    model: Model,
    relaxation: Relaxation,
    charges: f64,
    /// The same in minor units.
    paid: i64,
    suppliers: Vec<bool>,
}

impl Job {
    fn of(
        problem: &CuttingProblem,
        suppliers: Vec<bool>,
        budget: f64,
        is_first_price_only: bool,
        pool: &mut BTreeSet<Pattern>,
        effort: &Effort,
    ) -> Result<Self, SolveError> {
        let paid: i64 = problem
            .delivery
            .iter()
            .enumerate()
            .filter(|(supplier, _)| suppliers[*supplier])
            .filter(|(supplier, _)| problem.purchases.iter().any(|p| p.supplier == *supplier))
            .map(|(_, charge)| *charge)
            .sum();
        let scope = Scope {
            suppliers: suppliers.clone(),
            budget,
            is_first_price_only,
        };
        let model = Model::of(problem, &scope);
        let start = start_patterns(problem, &model);
        let relaxation = relax(problem, &model, start.chain(pool.iter().cloned()), effort)?;
        pool.extend(relaxation.near(NEAR).filter_map(Column::pattern).cloned());
        Ok(Self {
            model,
            relaxation,
            charges: paid as f64,
            paid,
            suppliers,
        })
    }

    /// No plan with these suppliers costs less.
    fn value(&self) -> f64 {
        self.relaxation.value + self.charges
    }

    /// Looks for a better plan; returns what no plan of this job costs less than, or infinity when
    /// none of this job is better than the best.
    fn improve(
        &self,
        problem: &CuttingProblem,
        best: &mut Option<Found>,
        taken: &mut BTreeSet<Pattern>,
        effort: &Effort,
        is_quick: bool,
    ) -> Result<f64, SolveError> {
        let (model, step) = (&self.model, self.model.money_step);
        let slack = bound_slack(self.relaxation.value);
        let bound = ((self.relaxation.value - slack) / step).ceil() * step + self.charges;
        let beats = |cost: f64, best: &Option<Found>| {
            best.as_ref().is_none_or(|found| cost < found.cost - 0.5)
        };
        if !beats(bound, best) {
            return Ok(f64::INFINITY);
        }
        let first = self.first_plan(problem, taken, effort)?;
        let first = first
            .as_ref()
            .map(|(columns, first)| (columns.iter().collect::<Vec<&Column>>(), first));
        if let Some((columns, first)) = &first
            && beats(first.cost + self.charges, best)
        {
            *best = Some(self.found(problem, columns, first));
        }
        if !beats(bound, best) {
            return Ok(f64::INFINITY);
        }
        if is_quick {
            return Ok(bound);
        }
        // All patterns that a better plan can have; when they are too many, a few of the best of them, as
        // long as those give a better plan, and else the proof stays open.
        let more = loop {
            // A plan that beats the best is cheaper by a step at least.
            let gap = best.as_ref().map_or(f64::INFINITY, |found| {
                found.cost - step - self.charges - self.relaxation.value
            });
            let below = |gap: f64, most: usize| {
                patterns_below(problem, model, &self.relaxation.duals, gap, most, effort)
            };
            if let Some(more) = below(gap, effort.patterns) {
                break more;
            }
            let Some(some) = SHARES
                .into_iter()
                .find_map(|share| below(gap * share, effort.patterns / 8))
            else {
                return Ok(bound);
            };
            let columns: Vec<&Column> = model.fixed.iter().chain(&some).collect();
            let found = integer::solve(&model.rows, &columns, None, effort.nodes / 4)?
                .filter(|found| beats(found.cost + self.charges, best));
            let Some(found) = found else {
                return Ok(bound);
            };
            *best = Some(self.found(problem, &columns, &found));
        };
        let wide: Vec<&Column> = model.fixed.iter().chain(&more).collect();
        let start = first
            .as_ref()
            .map(|(columns, first)| start_values(&wide, columns, first));
        let Some(second) = integer::solve(&model.rows, &wide, start.as_deref(), effort.nodes)?
        else {
            return Ok(bound);
        };
        if beats(second.cost + self.charges, best) {
            *best = Some(self.found(problem, &wide, &second));
        }
        if !model.legs.is_complete {
            return Ok(bound);
        }
        if second.is_proven {
            return Ok(f64::INFINITY);
        }
        // Every pattern that a better plan can have was there, so what the branching proved of it is
        // proved of every better plan.
        let branched = second.bound.map_or(bound, |reached| {
            ((reached - bound_slack(reached)) / step).ceil() * step + self.charges
        });
        Ok(bound.max(branched))
    }

    /// The best of the patterns that are worth their price or nearly, with what of each.
    fn first_plan(
        &self,
        problem: &CuttingProblem,
        taken: &mut BTreeSet<Pattern>,
        effort: &Effort,
    ) -> Result<Option<(Vec<Column>, Integers)>, SolveError> {
        let model = &self.model;
        // A dive costs some tens of relaxations: few patterns are searched for whole numbers at once.
        let dives = self.relaxation.patterns.len() > FEW_PATTERNS;
        if dives {
            taken.extend(dive(problem, model, &self.relaxation, effort)?);
        }
        let mut columns = model.fixed.clone();
        columns.extend(
            taken
                .iter()
                .map(|pattern| model.cut(problem, pattern.clone())),
        );
        let dived = columns.len();
        let most = if dives { MOST_NEAR } else { FEW_PATTERNS };
        let near = self.relaxation.nearest(most);
        columns.extend(
            near.into_iter()
                .filter(|pattern| !taken.contains(*pattern))
                .map(|pattern| model.cut(problem, pattern.clone())),
        );
        let all: Vec<&Column> = columns.iter().collect();
        // Those of the dives alone are quick, and what they give is where the others begin.
        let start = if dives {
            integer::solve(&model.rows, &all[..dived], None, effort.nodes)?
        } else {
            None
        };
        let values = start
            .as_ref()
            .map(|found| start_values(&all, &all[..dived], found));
        if let Some(found) = integer::solve(&model.rows, &all, values.as_deref(), effort.nodes / 4)?
        {
            return Ok(Some((columns, found)));
        }
        columns.truncate(dived);
        Ok(start.map(|found| (columns, found)))
    }

    fn found(&self, problem: &CuttingProblem, columns: &[&Column], integers: &Integers) -> Found {
        let mut solution = solution(problem, &self.model, columns, integers, 0.0, Proof::Optimal);
        solution.cost += self.paid;
        // A supplier whose charge is paid for nothing is dropped with its charge.
        let unused: i64 = problem
            .delivery
            .iter()
            .enumerate()
            .filter(|(supplier, _)| {
                self.pays(problem, *supplier)
                    && !solution
                        .packs
                        .iter()
                        .any(|(purchase, ..)| problem.purchases[*purchase].supplier == *supplier)
            })
            .map(|(_, charge)| *charge)
            .sum();
        solution.cost -= unused;
        Found {
            cost: integers.cost + self.charges - unused as f64,
            solution,
        }
    }

    fn pays(&self, problem: &CuttingProblem, supplier: usize) -> bool {
        self.suppliers.get(supplier) == Some(&true)
            && problem
                .purchases
                .iter()
                .any(|purchase| purchase.supplier == supplier)
    }
}

/// The solver's relative tolerance on a sum of prices.
fn bound_slack(value: f64) -> f64 {
    1e-6 * value.abs().max(1.0)
}

/// Every part alone in the cheapest bin that can give it: enough for a price of each.
fn start_patterns<'a>(
    problem: &'a CuttingProblem,
    model: &'a Model,
) -> impl Iterator<Item = Pattern> + 'a {
    (0..problem.parts.len())
        .filter(|part| model.caps[*part] > 0)
        .filter_map(|part| {
            (0..problem.bins.len())
                .filter_map(|bin| alone(problem, bin, part))
                .min_by_key(|pattern| {
                    let plain = model.plain(pattern.bin);
                    (plain.map_or(i64::MAX, |plain| plain.each), pattern.bin)
                })
        })
}

/// One part alone out of a bin.
fn alone(problem: &CuttingProblem, bin: usize, part: usize) -> Option<Pattern> {
    let (b, p) = (&problem.bins[bin], &problem.parts[part]);
    if p.family != b.family || p.size > b.size {
        return None;
    }
    let is_turned = leg_count(p) == 2 && whole_legs(b, p, false).is_none();
    let ends = match leg_count(p) {
        0 => [None, None],
        1 if one_leg(p) <= b.legs[0] => [Some(part), None],
        1 if one_leg(p) <= b.legs[1] => [None, Some(part)],
        2 if p.size == b.size && whole_legs(b, p, is_turned).is_some() => [Some(part), Some(part)],
        _ => return None,
    };
    Some(Pattern {
        bin,
        counts: vec![(part, 1)],
        ends,
        is_turned,
    })
}

/// The first plan in terms of the wider set of columns.
fn start_values(wide: &[&Column], pool: &[&Column], first: &Integers) -> Vec<i64> {
    let mut left: Vec<(&Decision, i64)> = pool
        .iter()
        .zip(&first.counts)
        .filter(|(_, count)| **count > 0)
        .map(|(column, count)| (&column.decision, *count))
        .collect();
    // Tiers all look alike as decisions, but both lists start with the fixed columns.
    let mut value_of = |decision: &Decision, index: usize| {
        if matches!(decision, Decision::TakeTier) {
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
            Decision::TakeTier => {}
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
    add_plain_purchases(model, &mut out);
    out.cuts.sort_by(|a, b| a.pattern.cmp(&b.pattern));
    out
}

/// Bins with one price are bought as they are cut.
fn add_plain_purchases(model: &Model, out: &mut CuttingSolution) {
    for cut in &out.cuts {
        let Some(plain) = model.plain(cut.pattern.bin) else {
            continue;
        };
        match out
            .packs
            .iter_mut()
            .find(|(purchase, ..)| *purchase == plain.purchase)
        {
            Some((_, _, count)) => *count += cut.count,
            None => out.packs.push((plain.purchase, plain.tier, cut.count)),
        }
    }
    out.packs.sort_unstable();
}
