//! Ends that may lie anywhere in a room: runs are searched for with the end held, at its own place first
//! and at others where that gives nothing, and what is found is let slide.

use std::collections::BTreeSet;

use tubewright_geometry::Vector;

use super::descend::Effort;
use super::improve::{Meter, Scope, Solution, improve, mend};
use super::joint;
use super::random::Random;
use super::system::{Anchor, Context, Target};
use crate::problem::RouteProblem;

/// Other places that are tried for the ends, each with an equal part of what effort is left.
const PLACES: u64 = 6;

/// Searches with every loose end at another place of its room than its own.
pub(super) fn elsewhere(
    ctx: &Context<'_>,
    seed: u64,
    meter: &mut Meter<'_>,
    seen: &mut dyn FnMut(&Solution, u64, bool),
) -> Vec<Solution> {
    for number in 0..PLACES {
        if ctx.loose_ends.is_empty() || meter.is_over() {
            break;
        }
        let mut random = Random::new(seed, 0x10_05E + number);
        let mut moved: RouteProblem = ctx.problem.clone();
        for (run, room) in &ctx.loose_ends {
            let size = room.max - room.min;
            let shares = Vector::new(random.unit(), random.unit(), random.unit());
            if let Some(run) = moved.runs.get_mut(*run) {
                run.end =
                    room.min + Vector::new(size.x * shares.x, size.y * shares.y, size.z * shares.z);
            }
        }
        let there = Context::new(&moved, ctx.cost);
        let mut own = Meter {
            spent: 0,
            give_up: u64::MAX,
            limit: meter.limit.saturating_sub(meter.spent) / (PLACES - number),
            cancel: meter.cancel,
        };
        let found = joint::search(&there, seed.wrapping_add(number), &mut own, seen);
        meter.spent += own.spent;
        if !found.is_empty() {
            return found;
        }
    }
    Vec::new()
}

/// A solution whose loose ends are free to slide, improved; `None` where there is none.
pub(super) fn let_slide(
    ctx: &Context<'_>,
    held: &Solution,
    meter: &mut Meter<'_>,
    seen: &mut dyn FnMut(&Solution, u64, bool),
) -> Option<Solution> {
    if ctx.loose_ends.is_empty() {
        return None;
    }
    let mut chains = held.chains.clone();
    let mut x = held.x.clone();
    for (number, (run, _)) in ctx.loose_ends.iter().enumerate() {
        // The last chain of the run is the one that arrives at its end.
        let chain = chains.iter_mut().rev().find(|chain| chain.run == *run)?;
        let Target::Fixed(place, direction) = chain.target else {
            return None;
        };
        x.extend(place.to_vector().to_array());
        let pose = ctx.problem.crossovers.len() + number;
        chain.target = Target::Port(pose, Vector::ZERO, direction);
    }
    let crossovers = ctx.problem.crossovers.len();
    let hangs = |c: &super::system::Chain| matches!(c.start, Anchor::Port(..));
    if crossovers > 0 && !chains.iter().any(hangs) {
        return None;
    }
    let effort = Effort {
        steps: 40,
        pull: 0.3,
    };
    let (slid, landing) = mend(ctx, chains, &x, effort);
    meter.spent += landing.work;
    let loose = slid?;
    seen(&loose, meter.spent, false);
    let mut tried = BTreeSet::new();
    Some(improve(
        ctx,
        loose,
        Scope::Together,
        &mut tried,
        meter,
        seen,
    ))
}
