//! The search for a plan, one set of suppliers after the other.

use std::collections::BTreeSet;
use std::rc::Rc;

use super::answer::{solution, start_values};
use super::columns::{Buying, Column, Model, Scope};
use super::conflicts::Conflicts;
use super::dive::dive;
use super::integer::{self, Integers};
use super::pattern::Pattern;
use super::problem::{CuttingProblem, Effort};
use super::relaxation::{Goal, NEARLY, Relaxation, patterns_below, relax};
use super::solve::{CuttingSolution, SolveError};
use super::start::start_patterns;

/// The relaxation of one set of suppliers begins with the patterns of the others whose cost is so near
/// to their worth, as a share of the whole.
const NEAR: f64 = 0.01;

/// The relaxation that a plan is dived for from need only be known to this share.
const ROUGHLY: f64 = 1e-2;

/// Dives around the best plan end when they come to so many places for numbers, or to so many: a few for large
/// problems and some more for small ones, for which each is quick.
const WORK_OF_TURNS: usize = 400_000;
const MOST_TURNS: usize = 8;

/// So many patterns are few: of the relaxation they are searched for a plan beside those of dives, and all that
/// a better plan can have are searched without another dive.
const FEW: usize = 300;

/// Of the nodes of a search, what the first search for a plan among the patterns of a relaxation has.
const PART_FOR_FIRST: u64 = 10;

/// A plan is better by so much when it costs the same and has fewer second choices.
const LEAST_BETTER: f64 = 1e-3;

/// Where the proof is open, a set of suppliers is searched when its bound leaves so much of the gap.
const WORTH_A_SEARCH: f64 = 0.3;

/// A set is bounded by this share further than the next before that one is bounded.
const FURTHER: f64 = 0.02;

/// So often at most a plan is looked for at the prices of the one before.
const MOST_TRIES: usize = 3;

/// The best plan so far and its cost with deliveries and penalties.
pub(crate) struct Found {
    pub(crate) cost: f64,
    pub(crate) solution: CuttingSolution,
}

/// The problem with one set of suppliers, whose charges are paid whether used or not: a plan that
/// does not use one is found cheaper in the smaller set.
pub(crate) struct Job {
    suppliers: Vec<bool>,
    /// The charges, in minor units.
    paid: i64,
    /// No plan of this set that is better than the best costs less than this, with charges.
    bound: f64,
    /// The same before it is rounded up to a sum that prices can come to.
    value: f64,
    /// Whether more rounds would not lift the bound.
    is_known: bool,
    /// What the bound stands on.
    relaxation: Option<Relaxation>,
}

impl Job {
    pub(crate) fn of(problem: &CuttingProblem, suppliers: Vec<bool>) -> Self {
        let paid = (0..problem.delivery.len())
            .filter(|supplier| suppliers[*supplier] && sells(problem, *supplier))
            .map(|supplier| problem.delivery[supplier])
            .sum();
        Self {
            suppliers,
            paid,
            bound: f64::NEG_INFINITY,
            value: f64::NEG_INFINITY,
            is_known: false,
            relaxation: None,
        }
    }

    fn charges(&self) -> f64 {
        self.paid as f64
    }

    /// Whether all that a plan buys is sold by these suppliers.
    fn sells_all(&self, problem: &CuttingProblem, plan: &CuttingSolution) -> bool {
        let mut packs = plan.packs.iter();
        packs.all(|(purchase, ..)| self.suppliers[problem.purchases[*purchase].supplier])
    }

    fn found(
        &self,
        problem: &CuttingProblem,
        model: &Model,
        columns: &[Column],
        integers: &Integers,
    ) -> Found {
        let (mut solution, saved) = solution(problem, model, columns, integers);
        solution.cost += self.paid;
        // A supplier whose charge is paid for nothing is dropped with its charge.
        let is_used = |supplier: usize| {
            let mut packs = solution.packs.iter();
            packs.any(|(purchase, ..)| problem.purchases[*purchase].supplier == supplier)
        };
        let unused: i64 = (0..problem.delivery.len())
            .filter(|supplier| self.suppliers[*supplier] && sells(problem, *supplier))
            .filter(|supplier| !is_used(*supplier))
            .map(|supplier| problem.delivery[supplier])
            .sum();
        solution.cost -= unused;
        Found {
            cost: integers.cost + self.charges() - (unused + saved) as f64,
            solution,
        }
    }
}

fn sells(problem: &CuttingProblem, supplier: usize) -> bool {
    let mut purchases = problem.purchases.iter();
    purchases.any(|purchase| purchase.supplier == supplier)
}

/// What all sets share.
pub(crate) struct Search<'a> {
    problem: &'a CuttingProblem,
    effort: &'a Effort,
    conflicts: Rc<Conflicts>,
    pub(crate) best: Option<Found>,
    /// Patterns that are near to worth their price.
    pool: BTreeSet<Pattern>,
    /// Patterns that dives took.
    taken: BTreeSet<Pattern>,
}

impl<'a> Search<'a> {
    pub(crate) fn of(problem: &'a CuttingProblem, effort: &'a Effort) -> Self {
        Self {
            problem,
            effort,
            conflicts: Rc::new(Conflicts::of(problem)),
            best: None,
            pool: BTreeSet::new(),
            taken: BTreeSet::new(),
        }
    }

    fn budget(&self) -> f64 {
        self.best.as_ref().map_or(f64::INFINITY, |found| found.cost)
    }

    /// The model of a job, of plans no dearer than the best.
    fn model(&self, job: &Job, buying: Buying) -> Model {
        let scope = Scope {
            suppliers: job.suppliers.clone(),
            budget: self.budget(),
            buying,
        };
        Model::of(self.problem, Rc::clone(&self.conflicts), &scope)
    }

    fn beats(&self, cost: f64) -> bool {
        cost < self.budget() - 0.5
    }

    /// Looks for the best plan of all sets, of which the last is that of all suppliers; returns the least of what
    /// the relaxations say and what no plan costs less than.
    pub(crate) fn all(&mut self, jobs: &mut [Job]) -> Result<(f64, f64), SolveError> {
        if let Some(last) = jobs.last_mut() {
            // What can be had from all suppliers costs no more than from some of them.
            let value = self.first_plans(last)?;
            for job in jobs.iter_mut() {
                job.value = job.value.max(value + job.charges());
                job.bound = job.bound.max(job.value);
            }
        }
        let mut open_bound = f64::INFINITY;
        loop {
            // Once the proof is open, only sets that may still give a much better plan are worth more work.
            let enough = if open_bound < f64::INFINITY {
                open_bound + WORTH_A_SEARCH * (self.budget() - open_bound)
            } else {
                self.budget()
            };
            jobs.sort_by(|a, b| a.bound.total_cmp(&b.bound));
            let second = jobs.get(1).map_or(f64::INFINITY, |job| job.bound);
            let Some(job) = jobs.first_mut() else { break };
            if job.bound > enough || !self.beats(job.bound) {
                break;
            }
            if !job.is_known {
                // Before the proof is open, no further than is needed to see that another set comes first.
                let until = if open_bound < f64::INFINITY {
                    enough
                } else {
                    enough.min(second + FURTHER * second.abs())
                };
                self.bound(job, until + 1.0)?;
                continue;
            }
            open_bound = open_bound.min(self.improve(job)?);
            job.bound = f64::INFINITY;
        }
        let values = jobs.iter().map(|job| job.value);
        Ok((values.fold(f64::INFINITY, f64::min), open_bound))
    }

    /// Plans from all suppliers: first at first prices, which are near to what most plans pay; then at the prices
    /// that the best plan reached, as long as that gives a better one. Returns what no plan costs less than, from
    /// whomever and without charges.
    fn first_plans(&mut self, job: &mut Job) -> Result<f64, SolveError> {
        let mut prices = vec![0; self.problem.purchases.len()];
        for _ in 0..MOST_TRIES {
            let before = self.budget();
            let relaxation =
                self.relax(job, Buying::Single(prices.clone()), Goal::rough(NEARLY))?;
            self.dive_for(job, &relaxation, 0)?;
            let reached = self.prices_reached();
            if self.budget() >= before || reached == prices {
                break;
            }
            prices = reached;
        }
        self.bound(job, f64::INFINITY)?;
        Ok(job.value - job.charges())
    }

    /// By purchase, the price that the best plan pays, the first where it buys none.
    fn prices_reached(&self) -> Vec<usize> {
        let mut prices = vec![0; self.problem.purchases.len()];
        let packs = self.best.iter().flat_map(|found| &found.solution.packs);
        for (purchase, tier, _) in packs {
            prices[*purchase] = *tier;
        }
        prices
    }

    /// Makes known what no plan of a set costs less than, or that it is at least so much.
    fn bound(&mut self, job: &mut Job, enough: f64) -> Result<(), SolveError> {
        let goal = Goal {
            enough: enough - job.charges(),
            share: NEARLY,
        };
        let lowest = Buying::Single(vec![usize::MAX; self.problem.purchases.len()]);
        let relaxation = self.relax(job, lowest, goal)?;
        let step = relaxation.model.money_step;
        let value = relaxation.value;
        let bound = ((value - bound_slack(value)) / step).ceil() * step + job.charges();
        job.bound = job.bound.max(bound);
        job.value = job.value.max(value + job.charges());
        job.is_known = value < goal.enough;
        job.relaxation = Some(relaxation);
        Ok(())
    }

    fn relax(&mut self, job: &Job, buying: Buying, goal: Goal) -> Result<Relaxation, SolveError> {
        let model = self.model(job, buying);
        let start: Vec<Pattern> = start_patterns(self.problem, &model)
            .chain(self.pool.iter().cloned())
            .collect();
        let relaxation = relax(self.problem, model, start, goal, self.effort)?;
        let near = relaxation.near(NEAR).filter_map(Column::pattern);
        self.pool.extend(near.cloned());
        Ok(relaxation)
    }

    /// Looks for a better plan; returns what no plan of this job costs less than, or infinity when
    /// none of this job is better than the best.
    fn improve(&mut self, job: &Job) -> Result<f64, SolveError> {
        let Some(relaxation) = &job.relaxation else {
            return Ok(job.bound);
        };
        self.dive_for(job, relaxation, 0)?;
        if !self.beats(job.bound) {
            return Ok(f64::INFINITY);
        }
        let model = self.model(job, Buying::Whole);
        let step = model.money_step;
        // All patterns that a better plan can have: it is cheaper than the best by a step at least.
        let all_below = |budget: f64| {
            let gap = budget - step - job.charges() - relaxation.value;
            patterns_below(
                self.problem,
                relaxation,
                gap,
                self.effort.patterns,
                self.effort,
            )
        };
        let mut more = all_below(self.budget());
        if more.as_ref().is_none_or(|more| more.len() > FEW) {
            let before = self.budget();
            self.dive_around(job)?;
            if self.budget() < before {
                more = all_below(self.budget());
            }
        }
        let Some(more) = more else {
            return Ok(job.bound);
        };
        let wide = self.columns(&model, &more);
        let Some(second) = self.try_columns(job, &model, &wide, self.effort.nodes)? else {
            return Ok(job.bound);
        };
        if !model.legs.is_complete {
            return Ok(job.bound);
        }
        if second.is_proven {
            return Ok(f64::INFINITY);
        }
        // Every pattern that a better plan can have was there, so what the branching proved of it is
        // proved of every better plan.
        let branched = second.bound.map_or(job.bound, |reached| {
            ((reached - bound_slack(reached)) / step).ceil() * step + job.charges()
        });
        Ok(job.bound.max(branched))
    }

    /// The columns of a model with those of these patterns.
    fn columns<'p>(
        &self,
        model: &Model,
        patterns: impl IntoIterator<Item = &'p Pattern>,
    ) -> Vec<Column> {
        let cut = |pattern: &Pattern| model.cut(self.problem, pattern.clone());
        let patterns = patterns.into_iter().map(cut);
        model.fixed.iter().cloned().chain(patterns).collect()
    }

    /// Searches these columns, from the best plan on where the job allows it.
    fn try_columns(
        &mut self,
        job: &Job,
        model: &Model,
        columns: &[Column],
        nodes: u64,
    ) -> Result<Option<Integers>, SolveError> {
        let all: Vec<&Column> = columns.iter().collect();
        let start = self
            .best
            .as_ref()
            .filter(|found| job.sells_all(self.problem, &found.solution))
            .map(|found| start_values(model, &all, &found.solution));
        let found = integer::solve(&model.rows, &all, start.as_deref(), nodes)?;
        if let Some(integers) = &found
            && integers.cost + job.charges() < self.budget() - LEAST_BETTER
        {
            self.best = Some(job.found(self.problem, model, columns, integers));
        }
        Ok(found)
    }

    /// The best of the patterns that dives took, after one more dive; in the first turn those of the relaxation
    /// count as well where they are few.
    fn dive_for(
        &mut self,
        job: &Job,
        relaxation: &Relaxation,
        turn: usize,
    ) -> Result<(), SolveError> {
        self.taken
            .extend(dive(self.problem, relaxation, turn, self.effort)?);
        let model = self.model(job, Buying::Whole);
        let with_all = turn == 0 && relaxation.patterns.len() <= FEW;
        let columns = if with_all {
            let patterns = relaxation.patterns.iter().filter_map(Column::pattern);
            let patterns: BTreeSet<&Pattern> = patterns.chain(&self.taken).collect();
            self.columns(&model, patterns)
        } else {
            self.columns(&model, &self.taken)
        };
        let nodes = self.effort.nodes / if with_all { PART_FOR_FIRST } else { 1 };
        self.try_columns(job, &model, &columns, nodes.max(1))?;
        Ok(())
    }

    /// Looks for a better plan by dives at the prices that the best plan reached, each with other small changes of
    /// all costs: what is nearly as good then comes up as well, and the best of it all is put together.
    fn dive_around(&mut self, job: &Job) -> Result<(), SolveError> {
        let mut reached = Vec::new();
        let mut relaxation = None;
        let mut turns = 1;
        let mut turn = 0;
        while turn < turns {
            turn += 1;
            let prices = self.prices_reached();
            if prices != reached || relaxation.is_none() {
                let single = Buying::Single(prices.clone());
                let fresh = self.relax(job, single, Goal::rough(ROUGHLY))?;
                turns = (WORK_OF_TURNS / fresh.size().max(1)).clamp(1, MOST_TURNS);
                relaxation = Some(fresh);
                reached = prices;
            }
            if let Some(relaxation) = &relaxation {
                self.dive_for(job, relaxation, turn)?;
            }
        }
        Ok(())
    }
}

/// The solver's relative tolerance on a sum of prices.
fn bound_slack(value: f64) -> f64 {
    1e-6 * value.abs().max(1.0)
}
