//! Runs with room at their ends: first searched with every end where it is wished, the best of that let
//! slide, then searched anew with the ends free. So room makes no run dearer than half of the effort finds
//! without it.

use std::collections::BTreeSet;

use super::descend::Effort;
use super::improve::{GAIN, Meter, Solution, mend, replaced, sizes_of};
use super::joint::{polish, search_free};
use super::moves::{Variant, without_a_bend};
use super::slides::Pose;
use super::system::{Anchor, Chain, Context, System, Target, tube_of};
use crate::problem::RouteProblem;

/// Solutions with held ends that are let slide.
const LET_SLIDE: usize = 3;

/// Searches all runs; solutions that hold, cheapest first.
pub(crate) fn search(
    ctx: &Context<'_>,
    seed: u64,
    meter: &mut Meter<'_>,
    seen: &mut dyn FnMut(&Solution, u64, bool),
) -> Vec<Solution> {
    let problem = as_wished(ctx.problem);
    let held = Context::new(&problem, ctx.cost);
    let whole = meter.limit;
    meter.limit = meter.spent + (whole - meter.spent.min(whole)) / 2;
    let found = search_free(&held, seed, meter, &mut |solution, spent, is_best| {
        let free = hung(ctx, &held, solution);
        if holds(ctx, &free) {
            seen(&free, spent, is_best);
        }
    });
    meter.limit = whole;
    let mut free: Vec<Solution> = found
        .iter()
        .map(|solution| hung(ctx, &held, solution))
        .collect();
    for straighter in free.clone().iter().take(LET_SLIDE) {
        free.extend(without_bends(ctx, straighter, meter));
    }
    free.sort_by(|a, b| a.cost.total_cmp(&b.cost));
    let mut tried = BTreeSet::new();
    let mut pool: Vec<Solution> = Vec::new();
    for solution in free.iter().take(LET_SLIDE) {
        if meter.is_over() {
            break;
        }
        pool.push(polish(ctx, solution.clone(), &mut tried, meter, seen));
    }
    pool.extend(free);
    if !meter.is_over() {
        pool.extend(search_free(ctx, seed, meter, seen));
    }
    pool.retain(|solution| holds(ctx, solution));
    pool.sort_by(|a, b| a.cost.total_cmp(&b.cost));
    pool
}

/// Solutions with one or two bends of a chain left out at once: a step aside, there and back, that only a wished
/// place needed is two bends or none.
pub(crate) fn without_bends(
    ctx: &Context<'_>,
    from: &Solution,
    meter: &mut Meter<'_>,
) -> Vec<Solution> {
    let mut found = Vec::new();
    for (c, chain) in from.chains.iter().enumerate() {
        let Some(tube) = tube_of(ctx.problem, chain.run) else {
            continue;
        };
        let own = Variant {
            layout: chain.layout.clone(),
            x: sizes_of(from, c),
        };
        let one = without_a_bend(ctx.problem, tube, &own);
        let two = one
            .iter()
            .step_by(2)
            .flat_map(|shorter| without_a_bend(ctx.problem, tube, shorter));
        let variants: Vec<Variant> = two.chain(one.iter().cloned()).collect();
        for variant in variants {
            if meter.is_over() {
                return found;
            }
            let (chains, x) = replaced(from, c, variant);
            let effort = Effort {
                steps: 40,
                pull: 0.1,
            };
            let (solution, landing) = mend(ctx, chains, &x, effort);
            meter.spent += landing.work * from.chains.len() as u64;
            found.extend(solution.filter(|solution| solution.cost < from.cost - GAIN));
        }
    }
    found
}

/// The problem with every end where it is wished, and every outlet sawn off as little as may be.
fn as_wished(problem: &RouteProblem) -> RouteProblem {
    let mut held = problem.clone();
    for run in &mut held.runs {
        if let Some(room) = run.start_room.take() {
            run.start = run.start.advanced(-room.least_mm);
        }
        run.end_room = None;
    }
    held
}

/// A solution of the held problem with its ends on their slides.
fn hung(ctx: &Context<'_>, held: &Context<'_>, solution: &Solution) -> Solution {
    let before = System::new(held, solution.chains.clone());
    let mut poses: Vec<Pose> = ctx.slides.as_wished(ctx.problem);
    for (pose, crossover) in poses.iter_mut().zip(before.poses(&solution.x)) {
        *pose = crossover;
    }
    let mut chains = Vec::with_capacity(solution.chains.len());
    let mut x = Vec::with_capacity(solution.x.len());
    for (c, chain) in solution.chains.iter().enumerate() {
        x.extend_from_slice(before.chain_sizes(c, &solution.x));
        chains.push(slid(ctx, chain));
    }
    x.extend(ctx.slides.sizes_at(&poses));
    let system = System::new(ctx, chains);
    Solution {
        cost: system.full_cost(&x),
        chains: system.chains,
        x,
    }
}

fn slid(ctx: &Context<'_>, chain: &Chain) -> Chain {
    let start = match (chain.start, ctx.slides.start_of(chain.run)) {
        (Anchor::Fixed(_), Some(slide)) => {
            let outlet = ctx.problem.runs.get(chain.run).map(|run| &run.start);
            outlet.map_or(chain.start, |outlet| {
                Anchor::Slides(slide, super::chain::Stance::of(outlet))
            })
        }
        (start, _) => start,
    };
    let target = match chain.target {
        Target::Fixed(..) => ctx.end_target(chain.run),
        port @ Target::Slides(..) => port,
    };
    Chain {
        start,
        target,
        ..chain.clone()
    }
}

/// Whether every rule is kept: what was held at a wished place may be where no tip may lie.
fn holds(ctx: &Context<'_>, solution: &Solution) -> bool {
    let system = System::new(ctx, solution.chains.clone());
    let laid = system.lay(&solution.x);
    system
        .rows(&solution.x, &laid, 0.0)
        .iter()
        .all(|row| row.margin >= -super::descend::HOLDS_MM)
}
