//! Search for one chain between two fixed ends.

use std::collections::BTreeSet;

use rayon::prelude::*;
use tubewright_geometry::Point;

use super::chain::Stance;
use super::descend::Effort;
use super::field::Field;
use super::improve::{Meter, Solution, improve, mend};
use super::layout::Layout;
use super::polyline::Ends;
use super::random::Random;
use super::shots::{Aim, Shot};
use super::system::{Anchor, Chain, Context, Target, tube_of};

/// A chain to be found.
#[derive(Clone, Debug)]
pub(crate) struct Task {
    pub(crate) run: usize,
    pub(crate) ends: Ends,
    pub(crate) start: Anchor,
    pub(crate) target: Target,
    pub(crate) components: Vec<usize>,
    pub(crate) max_bends: usize,
}

impl Task {
    pub(crate) fn of_run(ctx: &Context<'_>, run: usize) -> Option<Self> {
        let r = ctx.problem.runs.get(run)?;
        let start = Stance::of(&r.start);
        Some(Self {
            run,
            ends: Ends {
                start,
                end: r.end,
                end_direction: r.end_direction,
            },
            start: Anchor::Fixed(start),
            target: Target::Fixed(r.end, r.end_direction),
            components: r.components.clone(),
            max_bends: ctx.problem.rules.max_bends,
        })
    }

    pub(crate) fn chain(&self, layout: Layout) -> Chain {
        Chain {
            run: self.run,
            start: self.start,
            target: self.target,
            layout,
        }
    }
}

/// Throws for each number of bends and guide in one volley.
const THROWS: usize = 400;
/// Shots mended of each number of bends and guide.
const MENDED: usize = 3;

/// One volley: throws, rates, mends the best; returns what holds, cheapest first, and the work spent.
pub(crate) fn volley(
    ctx: &Context<'_>,
    task: &Task,
    field: &Field<'_>,
    guides: &[Vec<Point>],
    bends: core::ops::RangeInclusive<usize>,
    seed: u64,
) -> (Vec<Solution>, u64) {
    let Some(tube) = tube_of(ctx.problem, task.run) else {
        return (Vec::new(), 0);
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
                &shot.x,
                Effort {
                    steps: 40,
                    pull: 0.1,
                },
            )
        })
        .collect();
    let mut found = Vec::new();
    for (solution, landing) in results {
        work += landing.work;
        found.extend(solution);
    }
    found.sort_by(|a, b| a.cost.total_cmp(&b.cost));
    (found, work + (jobs.len() * THROWS / 100) as u64)
}

/// Searches one chain; solutions that hold, cheapest first, different in layout.
pub(crate) fn search(
    ctx: &Context<'_>,
    task: &Task,
    field: &Field<'_>,
    seed: u64,
    meter: &mut Meter<'_>,
    mut better: impl FnMut(&Solution, u64),
) -> Vec<Solution> {
    let clr = tube_of(ctx.problem, task.run).map_or(0.0, |t| t.clr_mm);
    let radius = tube_of(ctx.problem, task.run).map_or(0.0, |t| t.od_mm / 2.0);
    let (s, e) = (task.ends.start.origin, task.ends.end);
    let lead = clr * 0.8;
    let out = s + task.ends.start.travel * lead;
    let back = e - task.ends.end_direction * lead;
    let mut guides: Vec<Vec<Point>> = vec![vec![s, out, back, e]];
    let mut pool: Vec<Solution> = Vec::new();
    let mut best = f64::INFINITY;
    let mut tried = BTreeSet::new();
    let mut round = 0u64;
    let mut worn: Vec<Point> = Vec::new();
    while !meter.is_over() {
        let most = if round == 0 { 4 } else { 6 };
        let (found, work) = volley(
            ctx,
            task,
            field,
            &guides,
            0..=most,
            seed.wrapping_add(round * 0x9E37),
        );
        meter.spent += work;
        if let Some(first) = found.first()
            && first.cost < best
        {
            best = first.cost;
            better(first, meter.spent);
        }
        for solution in found.into_iter().take(3) {
            if meter.is_over() {
                pool.push(solution);
                break;
            }
            let polished = improve(ctx, solution, &mut tried, meter, |s, spent| {
                if s.cost < best {
                    best = s.cost;
                    better(s, spent);
                }
            });
            pool.push(polished);
        }
        round += 1;
        if round > 12 {
            break;
        }
        if round <= 4 {
            if round == 1 {
                guides.clear();
            }
            if let Some(path) = field
                .path(out, back, radius, &worn, 200_000)
                .or_else(|| field.path(s, e, radius, &worn, 200_000))
            {
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
        }
    }
    pool.sort_by(|a, b| a.cost.total_cmp(&b.cost));
    pool
}
