//! Out of a local best: changes of a layout with every bend of the chain free to take any angle, then
//! each bend bought as what its angle asks for. A run of which several bends would have to go to
//! another stock angle at once is not a neighbour of the present one, but is reached this way.

use std::collections::BTreeSet;

use rayon::prelude::*;

use super::descend::Effort;
use super::improve::{
    CHUNK, GAIN, Meter, Scope, Solution, apart, descend_layouts, has_too_many_bends, held,
    layout_floor, mend, mend_alone, replaced, sizes_of, with_sizes,
};
use super::layout::Layout;
use super::moves::{Variant, loosened};
use super::system::{Chain, Context, System, tube_of};

/// What is at most this share dearer than the best is followed: brought to stock angles it may be
/// cheaper.
const WORTH_FOLLOWING: f64 = 0.12;
/// How many are followed.
const FOLLOWED: usize = 3;

/// A cheaper solution, where one is found.
pub(super) fn search(
    ctx: &Context<'_>,
    best: &Solution,
    scope: Scope,
    tried: &mut BTreeSet<Vec<Layout>>,
    meter: &mut Meter<'_>,
    seen: &mut dyn FnMut(&Solution, u64, bool),
) -> Option<Solution> {
    let mut queue: Vec<(f64, usize, Vec<Chain>, Vec<f64>)> = Vec::new();
    for (c, chain) in best.chains.iter().enumerate() {
        let Some(tube) = tube_of(ctx.problem, chain.run) else {
            continue;
        };
        if scope.leaves_out(c) {
            continue;
        }
        let own = Variant {
            layout: chain.layout.clone(),
            x: sizes_of(best, c),
        };
        let rest = best.cost - layout_floor(ctx, chain, apart(chain));
        for variant in loosened(ctx.problem, tube, ctx.cost, &own) {
            if has_too_many_bends(ctx, best, c, &variant.layout) {
                continue;
            }
            let (chains, x) = replaced(best, c, variant);
            let Some(changed) = chains.get(c) else {
                continue;
            };
            let floor = layout_floor(ctx, changed, apart(changed));
            let is_hopeless = if best.chains.len() > 1 {
                floor - 0.5 * best.cost >= best.cost - rest
            } else {
                floor >= best.cost - GAIN
            };
            let key = chains.iter().map(|c| c.layout.clone()).collect();
            if !is_hopeless && tried.insert(key) {
                queue.push((floor, c, chains, x));
            }
        }
    }
    queue.sort_by(|a, b| a.0.total_cmp(&b.0));
    let mut follow: Vec<Solution> = Vec::new();
    let mut queue = queue.into_iter();
    while !meter.is_over() {
        let chunk: Vec<_> = queue.by_ref().take(CHUNK).collect();
        if chunk.is_empty() {
            break;
        }
        let results: Vec<_> = chunk
            .into_par_iter()
            .map(|(_, c, chains, x)| loosen_and_buy(ctx, scope, c, chains, &x))
            .collect();
        for (solution, work) in results {
            meter.spent += work;
            let Some(s) = solution else { continue };
            if s.cost < best.cost - GAIN {
                return Some(s);
            }
            let key: Vec<_> = s.chains.iter().map(|c| c.layout.clone()).collect();
            if s.cost < best.cost * (1.0 + WORTH_FOLLOWING) && !tried.contains(&key) {
                seen(&s, meter.spent, false);
                follow.push(s);
            }
        }
    }
    follow.sort_by(|a, b| a.cost.total_cmp(&b.cost));
    for start in follow.into_iter().take(FOLLOWED) {
        if meter.is_over() {
            break;
        }
        let end = descend_layouts(ctx, start, scope, tried, meter, &mut |_, _, _| {});
        if end.cost < best.cost - GAIN {
            return Some(end);
        }
    }
    None
}

/// Chain `c` with its bends of any angle, then bought; with the work.
fn loosen_and_buy(
    ctx: &Context<'_>,
    scope: Scope,
    c: usize,
    chains: Vec<Chain>,
    x: &[f64],
) -> (Option<Solution>, u64) {
    let effort = Effort {
        steps: 25,
        pull: 0.3,
    };
    let system = System::new(ctx, chains);
    let (loose, mut work) = match scope {
        Scope::Together => {
            let (solution, landing) = mend(ctx, system.chains.clone(), x, effort);
            (solution.map(|s| s.x), landing.work)
        }
        Scope::Alone(_) => match held(&system, x, c) {
            Some((alone, own)) => {
                let (solution, landing) = mend(ctx, vec![alone], &own, effort);
                (
                    solution.map(|s| with_sizes(&system, x, c, &s.x)),
                    landing.work,
                )
            }
            None => (None, 0),
        },
    };
    let Some(x) = loose else {
        return (None, work);
    };
    let own = system.chain_sizes(c, &x).to_vec();
    let mut chains = system.chains;
    if let Some(chain) = chains.get_mut(c)
        && let Some(tube) = tube_of(ctx.problem, chain.run)
    {
        let uncut = ctx.problem.rules.uncut_tolerance_rad;
        chain.layout = chain.layout.with_stock_for(&own, tube, uncut);
    }
    let (solution, landing) = match scope {
        Scope::Together => mend(ctx, chains, &x, effort),
        Scope::Alone(_) => mend_alone(ctx, f64::INFINITY, chains, &x, c, effort),
    };
    work += landing.work;
    (solution, work)
}
