//! Runs that meet in parts that may be turned: first searched with every part as it lies, the best of that let turn,
//! then searched anew with the turns free. So what may turn makes no run dearer than half of the effort finds without.

use std::collections::BTreeSet;

use super::improve::{Meter, Solution};
use super::joint::{polish, search_at_places};
use super::system::Context;
use crate::problem::TurnRoom;

/// Solutions with parts as they lie that are let turn.
const LET_TURN: usize = 3;

/// Searches all runs; solutions that hold, cheapest first.
pub(crate) fn search(
    ctx: &Context<'_>,
    seed: u64,
    meter: &mut Meter<'_>,
    seen: &mut dyn FnMut(&Solution, u64, bool),
) -> Vec<Solution> {
    let mut problem = ctx.problem.clone();
    for part in &mut problem.crossovers {
        part.turns = TurnRoom::held(part.turns.middle());
    }
    let held = Context::new(&problem, ctx.cost);
    let whole = meter.limit;
    meter.limit = meter.spent + (whole - meter.spent.min(whole)) / 2;
    // Its sizes are those of the same places with the parts free.
    let mut pool = search_at_places(&held, seed, meter, seen);
    meter.limit = whole;
    let mut tried = BTreeSet::new();
    for solution in pool.clone().into_iter().take(LET_TURN) {
        if meter.is_over() {
            break;
        }
        let mut turned = polish(ctx, solution, &mut tried, meter, &mut *seen);
        // A bend that only the part as it lay needed is none where it is turned right.
        while !meter.is_over() {
            let fewer = super::loose::without_bends(ctx, &turned, meter);
            let best = fewer.into_iter().min_by(|a, b| a.cost.total_cmp(&b.cost));
            let Some(best) = best.filter(|best| best.cost < turned.cost) else {
                break;
            };
            pool.push(turned);
            turned = polish(ctx, best, &mut tried, meter, &mut *seen);
        }
        pool.push(turned);
    }
    if !meter.is_over() {
        pool.extend(search_at_places(ctx, seed, meter, seen));
    }
    pool.sort_by(|a, b| a.cost.total_cmp(&b.cost));
    pool
}
