//! From routes that hold to cheaper ones: steepest descent over layouts, each tried by a local
//! improvement of its sizes from the present ones.

use std::collections::BTreeSet;

use rayon::prelude::*;

use super::descend::{Effort, Landing, descend};
use super::layout::{Joint, Layout, Slot};
use super::moves::{Variant, neighbours};
use super::system::{Anchor, Chain, Context, System, Target, tube_of};

/// Chains that hold, with their sizes.
#[derive(Clone, Debug)]
pub(crate) struct Solution {
    pub(crate) chains: Vec<Chain>,
    pub(crate) x: Vec<f64>,
    pub(crate) cost: f64,
}

/// Layouts tried at once; fixed, so that the number of threads changes nothing.
const CHUNK: usize = 8;
/// Less gain than this is no gain, in money.
pub(crate) const GAIN: f64 = 5e-3;

/// Work that may still be spent, and whether to stop.
pub(crate) struct Meter<'m> {
    pub(crate) spent: u64,
    pub(crate) limit: u64,
    pub(crate) cancel: &'m core::sync::atomic::AtomicBool,
}

impl Meter<'_> {
    pub(crate) fn is_over(&self) -> bool {
        self.spent >= self.limit || self.cancel.load(core::sync::atomic::Ordering::Relaxed)
    }
}

/// A price that no sizes of this layout can undercut, by ranges and by the distance to be covered.
pub(crate) fn layout_floor(ctx: &Context<'_>, chain: &Chain, apart_mm: f64) -> f64 {
    let Some(tube) = tube_of(ctx.problem, chain.run) else {
        return 0.0;
    };
    let ranges = chain.layout.ranges(ctx.problem, tube, ctx.cost);
    let mut floor = chain.layout.fixed_cost(tube, ctx.cost);
    let mut covered = 0.0;
    let mut per_mm = f64::INFINITY;
    for (i, r) in ranges.iter().enumerate() {
        if i % 3 == 2 {
            continue;
        }
        floor += r.lo * r.price;
        match (i % 3, chain.layout.slots.get(i / 3)) {
            (0, Some(slot)) => {
                covered += r.lo;
                if *slot != Slot::Absent {
                    per_mm = per_mm.min(r.price);
                }
            }
            _ => {
                covered += 2.0 * tube.clr_mm * tubewright_geometry::math::sin(r.hi.min(3.0) / 2.0);
            }
        }
    }
    for joint in &chain.layout.joints {
        if let Joint::Component(c) = joint {
            covered += ctx.problem.components.get(*c).map_or(0.0, |c| c.length_mm);
        }
    }
    let missing = (apart_mm - covered).max(0.0);
    if missing > 0.0 && per_mm.is_infinite() {
        return f64::INFINITY;
    }
    if missing > 0.0 {
        floor += missing * per_mm;
    }
    floor
}

/// Descends from a start and keeps it when every rule holds.
pub(crate) fn mend(
    ctx: &Context<'_>,
    chains: Vec<Chain>,
    x: &[f64],
    effort: Effort,
) -> (Option<Solution>, Landing) {
    let system = System::new(ctx, chains);
    let landing = descend(&system, x, effort);
    let solution = landing.holds().then(|| Solution {
        chains: system.chains.clone(),
        x: landing.x.clone(),
        cost: landing.cost,
    });
    (solution, landing)
}

/// Mends chain `c` with everything else held; when that gets it cheaper by itself, all together.
fn mend_alone(
    ctx: &Context<'_>,
    worth: f64,
    chains: Vec<Chain>,
    x: &[f64],
    c: usize,
    effort: Effort,
) -> (Option<Solution>, Landing) {
    let system = System::new(ctx, chains);
    let poses = system.poses(x);
    let own = system.chain_sizes(c, x).to_vec();
    let Some(chain) = system.chains.get(c) else {
        return mend(ctx, system.chains, x, effort);
    };
    let (end, end_direction) = chain.target.at(&ctx.slides, &poses);
    let alone = Chain {
        run: chain.run,
        start: Anchor::Fixed(chain.start.at(&ctx.slides, &poses)),
        target: Target::Fixed(end, end_direction),
        layout: chain.layout.clone(),
    };
    let (solution, mut landing) = mend(ctx, vec![alone], &own, effort);
    let Some(solution) = solution else {
        return (None, landing);
    };
    let mut whole = x.to_vec();
    let first = system.offsets.get(c).copied().unwrap_or(0);
    for (slot, value) in whole
        .iter_mut()
        .skip(first)
        .zip(&solution.x)
        .take(own.len())
    {
        *slot = *value;
    }
    if system.cost(&whole) > worth + 0.5 {
        return (None, landing);
    }
    let all = system.chains.len() as u64;
    let (solution, after) = mend(
        ctx,
        system.chains,
        &whole,
        Effort {
            steps: 8,
            pull: 0.3,
        },
    );
    landing.work += after.work * all;
    (solution, landing)
}

/// The solution with another layout and other sizes of one chain.
pub(crate) fn replaced(solution: &Solution, c: usize, variant: Variant) -> (Vec<Chain>, Vec<f64>) {
    let mut chains = solution.chains.clone();
    let mut x = Vec::new();
    let mut at = 0;
    for (k, chain) in solution.chains.iter().enumerate() {
        let n = chain.layout.sizes();
        if k == c {
            x.extend_from_slice(&variant.x);
        } else {
            x.extend_from_slice(solution.x.get(at..at + n).unwrap_or(&[]));
        }
        at += n;
    }
    x.extend_from_slice(solution.x.get(at..).unwrap_or(&[]));
    if let Some(chain) = chains.get_mut(c) {
        chain.layout = variant.layout;
    }
    (chains, x)
}

pub(super) fn sizes_of(solution: &Solution, c: usize) -> Vec<f64> {
    let before: usize = solution
        .chains
        .iter()
        .take(c)
        .map(|k| k.layout.sizes())
        .sum();
    let n = solution.chains.get(c).map_or(0, |k| k.layout.sizes());
    solution.x.get(before..before + n).unwrap_or(&[]).to_vec()
}

/// Straight distance that a chain must cover, where it is known beforehand.
fn apart(chain: &Chain) -> f64 {
    match (chain.start, chain.target) {
        (Anchor::Fixed(start), Target::Fixed(end, _)) => start.origin.distance(end),
        _ => 0.0,
    }
}

/// Free sizes of the room that a chain's own ends have, where they move with it.
fn loose_of(ctx: &Context<'_>, chain: &Chain, scope: Scope) -> usize {
    if scope != Scope::Together {
        return 0;
    }
    let start = match chain.start {
        Anchor::Fixed(_) => None,
        Anchor::Slides(number, _) => Some(number),
    };
    let end = match chain.target {
        Target::Fixed(..) => None,
        Target::Slides(number, ..) => Some(number),
    };
    [start, end]
        .into_iter()
        .flatten()
        .filter(|number| !ctx.slides.is_crossover(*number))
        .filter_map(|number| ctx.slides.all.get(number))
        .map(|slide| slide.sizes().iter().filter(|size| size.is_free()).count())
        .sum()
}

/// Which sizes move while a change of one chain's layout is tried.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Scope {
    /// Those of this chain only, crossovers held; the rest is brought along only for what helps.
    Alone(usize),
    /// All.
    Together,
}

/// Improves until no neighbour is cheaper or the work is spent. `tried` remembers layouts that were
/// tried from any solution of this family. `seen` is told of everything that holds, with the work
/// spent and whether it is the best of this descent so far.
pub(crate) fn improve(
    ctx: &Context<'_>,
    mut best: Solution,
    scope: Scope,
    tried: &mut BTreeSet<Vec<Layout>>,
    meter: &mut Meter<'_>,
    mut seen: impl FnMut(&Solution, u64, bool),
) -> Solution {
    tried.insert(best.chains.iter().map(|c| c.layout.clone()).collect());
    'again: loop {
        let mut queue: Vec<(f64, Vec<Chain>, Vec<f64>)> = Vec::new();
        for (c, chain) in best.chains.iter().enumerate() {
            let Some(tube) = tube_of(ctx.problem, chain.run) else {
                continue;
            };
            if matches!(scope, Scope::Alone(only) if only != c) {
                continue;
            }
            let own = Variant {
                layout: chain.layout.clone(),
                x: sizes_of(&best, c),
            };
            let before = layout_floor(ctx, chain, apart(chain));
            for variant in neighbours(
                ctx.problem,
                tube,
                ctx.cost,
                &own,
                loose_of(ctx, chain, scope),
            ) {
                let bends: usize = variant.layout.bends()
                    + best
                        .chains
                        .iter()
                        .enumerate()
                        .filter(|(k, other)| *k != c && other.run == chain.run)
                        .map(|(_, other)| other.layout.bends())
                        .sum::<usize>();
                if bends > ctx.problem.most_bends(chain.run) {
                    continue;
                }
                let (chains, x) = replaced(&best, c, variant);
                let Some(changed) = chains.get(c) else {
                    continue;
                };
                let floor = layout_floor(ctx, changed, apart(changed));
                // The rest of the chains may get cheaper too, but seldom by much.
                if floor >= best.cost - GAIN
                    || (best.chains.len() > 1 && floor - before >= 0.5 * best.cost)
                {
                    continue;
                }
                let estimate = changed.layout.fixed_cost(tube, ctx.cost) + floor * 0.2;
                queue.push((estimate, chains, x));
            }
        }
        queue.sort_by(|a, b| a.0.total_cmp(&b.0));
        queue.retain(|(_, chains, _)| {
            tried.insert(chains.iter().map(|c| c.layout.clone()).collect())
        });
        let mut queue = queue.into_iter();
        loop {
            if meter.is_over() {
                return best;
            }
            let chunk: Vec<_> = queue.by_ref().take(CHUNK).collect();
            if chunk.is_empty() {
                return best;
            }
            let effort = Effort {
                steps: 25,
                pull: 0.3,
            };
            let results: Vec<_> = chunk
                .into_par_iter()
                .map(|(_, chains, x)| match scope {
                    Scope::Together => mend(ctx, chains, &x, effort),
                    Scope::Alone(c) => mend_alone(ctx, best.cost, chains, &x, c, effort),
                })
                .collect();
            let mut winner: Option<Solution> = None;
            let parts = match scope {
                Scope::Together => best.chains.len() as u64,
                Scope::Alone(_) => 1,
            };
            for (solution, landing) in results {
                meter.spent += landing.work * parts;
                let Some(s) = solution else { continue };
                if s.cost < winner.as_ref().map_or(best.cost - GAIN, |w| w.cost) {
                    winner = Some(s);
                } else {
                    seen(&s, meter.spent, false);
                }
            }
            if let Some(s) = winner {
                best = s;
                seen(&best, meter.spent, true);
                continue 'again;
            }
        }
    }
}
