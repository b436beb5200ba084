//! Search for one chain between two fixed ends.

use std::collections::BTreeSet;

use rayon::prelude::*;
use tubewright_geometry::Point;

use super::chain::Part;
use super::descend::Effort;
use super::field::Field;
use super::improve::{Meter, Scope, Solution, improve, mend};
use super::layout::Layout;
use super::polyline::Ends;
use super::random::Random;
use super::shots::{Aim, Shot};
use super::slides::Pose;
use super::system::{Anchor, Chain, Context, System, Target, tube_of};
use crate::problem::Pin;

/// A chain to be found between two places.
#[derive(Clone, Debug)]
pub(crate) struct Task {
    pub(crate) run: usize,
    pub(crate) ends: Ends,
    pub(crate) components: Vec<usize>,
    pub(crate) max_bends: usize,
    /// What its ends slide on while its shots are mended, where they may.
    pub(crate) hung: Option<Hung>,
}

/// Ends that slide, and where everything stands at first.
#[derive(Clone, Debug)]
pub(crate) struct Hung {
    pub(crate) start: Anchor,
    pub(crate) target: Target,
    pub(crate) poses: Vec<Pose>,
}

impl Task {
    fn chain(&self, layout: Layout) -> Chain {
        let (start, target) = match &self.hung {
            Some(hung) => (hung.start, hung.target),
            None => (
                Anchor::Fixed(self.ends.start),
                Target::Fixed(self.ends.end, self.ends.end_direction),
            ),
        };
        Chain {
            run: self.run,
            start,
            target,
            layout,
        }
    }

    /// Sizes of its chain with the places of what slides.
    fn sizes(&self, ctx: &Context<'_>, own: &[f64]) -> Vec<f64> {
        let mut x = own.to_vec();
        if let Some(hung) = &self.hung {
            x.extend(ctx.slides.sizes_at(&hung.poses));
        }
        x
    }
}

/// Throws for each number of bends and guide in one volley.
const THROWS: usize = 400;
/// Shots mended of each number of bends and guide.
const MENDED: usize = 3;

/// What does not hold but comes near: the overrun in mm with the chain and its sizes, closed.
pub(crate) type NearMiss = Option<(f64, Solution)>;

/// One volley: throws, rates, mends the best; returns what holds, cheapest first, what comes nearest
/// when nothing does, and the work spent.
pub(crate) fn volley(
    ctx: &Context<'_>,
    task: &Task,
    field: &Field<'_>,
    guides: &[Vec<Point>],
    bends: core::ops::RangeInclusive<usize>,
    seed: u64,
) -> (Vec<Solution>, NearMiss, u64) {
    let Some(tube) = tube_of(ctx.problem, task.run) else {
        return (Vec::new(), None, 0);
    };
    let mut jobs: Vec<(usize, usize)> = Vec::new();
    for g in 0..guides.len() {
        for n in bends.clone() {
            if n <= task.max_bends {
                jobs.push((g, n));
            }
        }
    }
    let shots: Vec<Vec<Shot>> = jobs
        .par_iter()
        .map(|&(g, n)| {
            let Some(guide) = guides.get(g) else {
                return Vec::new();
            };
            let mut random = Random::new(seed, (g as u64) << 8 | n as u64);
            let mut kept: Vec<(f64, super::polyline::Polyline, super::polyline::Fit)> = Vec::new();
            for k in 0..THROWS {
                let aim = Aim {
                    problem: ctx.problem,
                    cost: ctx.cost,
                    tube,
                    ends: task.ends,
                    guide,
                    components: &task.components,
                    stray: if k % 2 == 0 { 35.0 } else { 90.0 },
                };
                let line = aim.throw(&mut random, n);
                let worst = if kept.len() < MENDED {
                    400.0
                } else {
                    kept.last().map_or(400.0, |k| k.0)
                };
                if let Some((score, fit)) = aim.rate(&line, field, worst) {
                    let at = kept.partition_point(|k| k.0 <= score);
                    kept.insert(at, (score, line, fit));
                    kept.truncate(MENDED);
                }
            }
            let aim = Aim {
                problem: ctx.problem,
                cost: ctx.cost,
                tube,
                ends: task.ends,
                guide,
                components: &task.components,
                stray: 0.0,
            };
            kept.iter()
                .filter_map(|(score, line, fit)| aim.finish(line, fit, *score))
                .collect()
        })
        .collect();
    let mut shots: Vec<Shot> = shots.into_iter().flatten().collect();
    shots.sort_by(|a, b| a.score.total_cmp(&b.score));
    let mut work = 0;
    let results: Vec<_> = shots
        .par_iter()
        .map(|shot| {
            mend(
                ctx,
                vec![task.chain(shot.layout.clone())],
                &task.sizes(ctx, &shot.x),
                Effort {
                    steps: 40,
                    pull: 0.1,
                },
            )
        })
        .collect();
    let mut found = Vec::new();
    let mut near: NearMiss = None;
    for ((solution, landing), shot) in results.into_iter().zip(&shots) {
        work += landing.work;
        if solution.is_none()
            && landing.overrun.is_finite()
            && near.as_ref().is_none_or(|n| landing.overrun < n.0)
        {
            let missed = Solution {
                chains: vec![task.chain(shot.layout.clone())],
                x: landing.x,
                cost: landing.cost,
            };
            near = Some((landing.overrun, missed));
        }
        found.extend(solution);
    }
    found.sort_by(|a, b| a.cost.total_cmp(&b.cost));
    (found, near, work + (jobs.len() * THROWS / 100) as u64)
}

/// The best score of a small volley along a straight guide, nothing mended: a cheap hint of what a
/// chain between these ends would cost.
pub(crate) fn glance(ctx: &Context<'_>, task: &Task, field: &Field<'_>, seed: u64) -> f64 {
    let Some(tube) = tube_of(ctx.problem, task.run) else {
        return f64::INFINITY;
    };
    let guide = straight_guide(ctx, task, tube.clr_mm);
    let aim = Aim {
        problem: ctx.problem,
        cost: ctx.cost,
        tube,
        ends: task.ends,
        guide: &guide,
        components: &task.components,
        stray: 50.0,
    };
    let mut random = Random::new(seed, 77);
    let mut best = 600.0;
    for bends in 2..=4_usize {
        for _ in 0..60 {
            let line = aim.throw(&mut random, bends.min(task.max_bends));
            if let Some((score, _)) = aim.rate(&line, field, best) {
                best = score;
            }
        }
    }
    best
}

fn straight_guide(ctx: &Context<'_>, task: &Task, clr: f64) -> Vec<Point> {
    let (s, e) = (task.ends.start.origin, task.ends.end);
    let lead = clr * 0.8;
    let mut guide = vec![s, s + task.ends.start.travel * lead];
    guide.extend(pinned_places(ctx, task));
    guide.extend([e - task.ends.end_direction * lead, e]);
    guide
}

/// Middles of the rooms that the only chain of a run must visit, in the order in which they lie along the way
/// between its ends.
fn pinned_places(ctx: &Context<'_>, task: &Task) -> Vec<Point> {
    let Some(run) = ctx.problem.runs.get(task.run) else {
        return Vec::new();
    };
    if run.passage.is_some() {
        return Vec::new();
    }
    let middle = |pin: &Pin| pin.room.min.lerp(pin.room.max, 0.5);
    let mut places: Vec<Point> = run.pins.iter().map(middle).collect();
    let way = task.ends.end - task.ends.start.origin;
    places.sort_by(|a, b| {
        let along = |p: &Point| (*p - task.ends.start.origin).dot(way);
        along(a).total_cmp(&along(b))
    });
    places
}

/// A path from place to place.
fn path_by(field: &Field<'_>, places: &[Point], radius: f64, worn: &[Point]) -> Option<Vec<Point>> {
    let mut out: Vec<Point> = Vec::new();
    for pair in places.windows(2) {
        let [from, to] = pair else { continue };
        let stretch = field.path(*from, *to, radius, worn, MOST_CELLS)?;
        let known = usize::from(!out.is_empty());
        out.extend(stretch.into_iter().skip(known));
    }
    (!out.is_empty()).then_some(out)
}

/// Most cells that are looked at for one stretch of a path.
const MOST_CELLS: usize = 200_000;

/// How far a search of one chain goes.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Reach {
    pub(crate) rounds: u64,
    /// Solutions of each round that are improved.
    pub(crate) improved: usize,
    /// Stop as soon as a round has found something.
    pub(crate) first_only: bool,
}

/// What a search of one chain found.
pub(crate) struct Found {
    /// What holds, cheapest first, different in layout.
    pub(crate) held: Vec<Solution>,
    /// What came nearest while nothing held.
    pub(crate) near: NearMiss,
}

/// Guides kept at once: each costs a volley for every number of bends.
const MOST_GUIDES: usize = 5;

/// Searches one chain. `seen` is told of what holds, with the work spent and whether it is the best.
pub(crate) fn search(
    ctx: &Context<'_>,
    task: &Task,
    field: &Field<'_>,
    seed: u64,
    reach: Reach,
    meter: &mut Meter<'_>,
    mut seen: impl FnMut(&Solution, u64, bool),
) -> Found {
    let clr = tube_of(ctx.problem, task.run).map_or(0.0, |t| t.clr_mm);
    let radius = tube_of(ctx.problem, task.run).map_or(0.0, |t| t.od_mm / 2.0);
    let (s, e) = (task.ends.start.origin, task.ends.end);
    let mut guides: Vec<Vec<Point>> = vec![straight_guide(ctx, task, clr)];
    let lead = clr * 0.8;
    let out = s + task.ends.start.travel * lead;
    let back = e - task.ends.end_direction * lead;
    let mut pool: Vec<Solution> = Vec::new();
    let mut nearest: NearMiss = None;
    let mut best = f64::INFINITY;
    let mut tried = BTreeSet::new();
    let mut round = 0u64;
    let mut worn: Vec<Point> = Vec::new();
    while !meter.is_over() {
        // Where a few bends find nothing, more are tried.
        let most = match round {
            0 => 4,
            1..8 => 6,
            _ => 8,
        };
        let (found, near, work) = volley(
            ctx,
            task,
            field,
            &guides,
            0..=most,
            seed.wrapping_add(round * 0x9E37),
        );
        meter.spent += work;
        if let Some(near) = near
            && nearest.as_ref().is_none_or(|n| near.0 < n.0)
        {
            nearest = Some(near);
        }
        if let Some(first) = found.first() {
            let is_best = first.cost < best;
            best = best.min(first.cost);
            seen(first, meter.spent, is_best);
        }
        // The rest may be another way round.
        pool.extend(found.iter().skip(reach.improved).cloned());
        for solution in found.into_iter().take(reach.improved) {
            if meter.is_over() {
                pool.push(solution);
                break;
            }
            let polished = improve(
                ctx,
                solution,
                Scope::Together,
                &mut tried,
                meter,
                |s, spent, _| {
                    let is_best = s.cost < best;
                    best = best.min(s.cost);
                    seen(s, spent, is_best);
                },
            );
            pool.push(polished);
        }
        round += 1;
        // A search of its own that has found nothing goes on while there is effort left; one of many
        // gives way to the next.
        let is_enough = !pool.is_empty() || reach.first_only;
        if is_enough && round >= reach.rounds || (reach.first_only && !pool.is_empty()) {
            break;
        }
        if round <= 4 || (!is_enough && round.is_multiple_of(8)) {
            if round == 1 {
                guides.clear();
            }
            let by = |from: Point, to: Point| {
                let mut places = vec![from];
                places.extend(pinned_places(ctx, task));
                places.push(to);
                path_by(field, &places, radius, &worn)
            };
            if let Some(path) = by(out, back).or_else(|| by(s, e)) {
                let n = path.len();
                worn.extend(path.iter().skip(n / 5).take(n - 2 * (n / 5)).copied());
                let mut guide = vec![s];
                guide.extend(path);
                guide.push(e);
                guides.push(guide);
            }
            if guides.is_empty() {
                guides.push(vec![s, out, back, e]);
            }
        } else if round >= 6 && round.is_multiple_of(2) && !pool.is_empty() {
            // Near what is good there may be better: round the best few, one after the other.
            pool.sort_by(|a, b| a.cost.total_cmp(&b.cost));
            pool.truncate(60);
            let rank = (round as usize / 2) % pool.len().min(4);
            if let Some(guide) = pool.get(rank).map(|p| corners_of(ctx, p)) {
                guides.insert(0, guide);
                guides.truncate(MOST_GUIDES);
            }
        }
    }
    pool.sort_by(|a, b| a.cost.total_cmp(&b.cost));
    Found {
        held: pool,
        near: nearest,
    }
}

/// Ends of all pieces of a chain, as a guide to throw round.
fn corners_of(ctx: &Context<'_>, solution: &Solution) -> Vec<Point> {
    let system = System::new(ctx, solution.chains.clone());
    let laid = system.lay(&solution.x);
    let mut out = Vec::new();
    for laid in &laid {
        for element in laid.elements.iter().filter(|e| e.part == Part::Tube) {
            let line = &element.tube.line;
            if out.is_empty() {
                out.push(line.at(0.0));
            }
            out.push(line.at(line.length()));
        }
    }
    out
}
