//! Search for all runs of a problem: each chain alone at a place of the crossovers, then all
//! together with the crossovers free to slide.

use std::collections::BTreeSet;

use tubewright_geometry::{Point, Vector};

use super::descend::Effort;
use super::field::Field;
use super::improve::{Meter, Scope, Solution, improve, mend};
use super::polyline::Ends;
use super::random::Random;
use super::single::{self, Hung, Reach, Task, glance};
use super::slides::Pose;
use super::system::{Anchor, Chain, Context, Target};
use crate::problem::{Passage, Region, RouteProblem};

/// A chain to be found whose ends may hang on crossovers.
#[derive(Clone, Debug)]
struct Span {
    run: usize,
    start: Anchor,
    target: Target,
    components: Vec<usize>,
    max_bends: usize,
}

impl Span {
    fn at(&self, ctx: &Context<'_>, poses: &[Pose]) -> Task {
        let (end, end_direction) = self.target.at(&ctx.slides, poses);
        Task {
            run: self.run,
            ends: Ends {
                start: self.start.at(&ctx.slides, poses),
                end,
                end_direction,
            },
            components: self.components.clone(),
            max_bends: self.max_bends,
            hung: None,
        }
    }

    /// The same with ends that slide from there, where there is anything to slide on.
    fn sliding_from(&self, ctx: &Context<'_>, poses: &[Pose]) -> Task {
        let slides =
            matches!(self.start, Anchor::Slides(..)) || matches!(self.target, Target::Slides(..));
        Task {
            hung: slides.then(|| Hung {
                start: self.start,
                target: self.target,
                poses: poses.to_vec(),
            }),
            ..self.at(ctx, poses)
        }
    }

    fn hung(&self, chain: &Chain) -> Chain {
        Chain {
            run: self.run,
            start: self.start,
            target: self.target,
            layout: chain.layout.clone(),
        }
    }
}

/// The chains of all runs; `split` says how many components of each run lie before its crossover.
fn spans(ctx: &Context<'_>, split: &[usize]) -> Vec<Span> {
    let problem = ctx.problem;
    let mut out = Vec::new();
    for (run, r) in problem.runs.iter().enumerate() {
        let most = problem.most_bends(run);
        let start = ctx.start_anchor(run);
        let end = ctx.end_target(run);
        let passed = r.passage.and_then(|Passage { crossover, side }| {
            problem
                .crossovers
                .get(crossover)
                .map(|x| (crossover, *x.ports(side)))
        });
        let Some((crossover, ports)) = passed else {
            out.push(Span {
                run,
                start,
                target: end,
                components: r.components.clone(),
                max_bends: most,
            });
            continue;
        };
        let before = split.get(run).copied().unwrap_or(0).min(r.components.len());
        let (first, second) = r.components.split_at(before);
        out.push(Span {
            run,
            start,
            target: Target::inlet(crossover, &ports),
            components: first.to_vec(),
            max_bends: most,
        });
        out.push(Span {
            run,
            start: Anchor::outlet(crossover, &ports),
            target: end,
            components: second.to_vec(),
            max_bends: most,
        });
    }
    out
}

/// Whether anything is found at all: stops at the first.
pub(crate) fn any(ctx: &Context<'_>, seed: u64, meter: &mut Meter<'_>) -> bool {
    let problem = ctx.problem;
    if problem.crossovers.is_empty() && problem.runs.len() == 1 {
        let region = search_region(problem);
        let field = Field::new(&ctx.room, &region);
        let reach = Reach {
            rounds: 6,
            improved: 0,
            first_only: true,
        };
        return spans(ctx, &[]).first().is_some_and(|span| {
            let task = span.sliding_from(ctx, &ctx.slides.as_wished(problem));
            let found = single::search(ctx, &task, &field, seed, reach, meter, |_, _, _| {});
            !found.held.is_empty()
        });
    }
    let mut own = Meter {
        spent: 0,
        limit: meter.limit,
        cancel: meter.cancel,
    };
    let found = search(ctx, seed, &mut own, &mut |_, _, _| {});
    meter.spent += own.spent;
    !found.is_empty()
}

/// Most places of the ends of one run that are tried while nothing was found.
const MOST_PLACES: u64 = 9;

/// Searches the only run of a problem; with room at its ends from where they are wished, and while that
/// gives nothing from other places.
fn search_one(
    ctx: &Context<'_>,
    span: &Span,
    field: &Field<'_>,
    (seed, reach): (u64, Reach),
    meter: &mut Meter<'_>,
    seen: &mut dyn FnMut(&Solution, u64, bool),
) -> Vec<Solution> {
    let wished = ctx.slides.as_wished(ctx.problem);
    let first = span.sliding_from(ctx, &wished);
    if !ctx.slides.has_loose_ends() {
        return single::search(ctx, &first, field, seed, reach, meter, seen).held;
    }
    let mut random = Random::new(seed, 1717);
    let mut pool = Vec::new();
    for place in 0..MOST_PLACES {
        let poses: Vec<Pose> = ctx
            .slides
            .all
            .iter()
            .zip(&wished)
            .map(|(slide, wished)| match place {
                0 => *wished,
                _ => slide.at(core::array::from_fn(|_| random.unit())),
            })
            .collect();
        let task = span.sliding_from(ctx, &poses);
        // Half of what is left each time: where the first place gives something, others seldom give more.
        let left = meter.limit.saturating_sub(meter.spent);
        let mut own = Meter {
            spent: 0,
            limit: left / 2,
            cancel: meter.cancel,
        };
        let found = single::search(ctx, &task, field, seed, reach, &mut own, &mut *seen);
        meter.spent += own.spent;
        pool.extend(found.held);
        if meter.is_over() || left < LEAST_UNITS {
            break;
        }
    }
    pool.sort_by(|a, b| a.cost.total_cmp(&b.cost));
    pool
}

/// Less effort than this is not divided, work units.
const LEAST_UNITS: u64 = 400;

/// Searches all runs; solutions that hold, cheapest first.
pub(crate) fn search(
    ctx: &Context<'_>,
    seed: u64,
    meter: &mut Meter<'_>,
    seen: &mut dyn FnMut(&Solution, u64, bool),
) -> Vec<Solution> {
    if ctx.slides.has_loose_ends() {
        super::loose::search(ctx, seed, meter, seen)
    } else {
        search_free(ctx, seed, meter, seen)
    }
}

/// The same with every end that has room free in it from the beginning.
pub(crate) fn search_free(
    ctx: &Context<'_>,
    seed: u64,
    meter: &mut Meter<'_>,
    seen: &mut dyn FnMut(&Solution, u64, bool),
) -> Vec<Solution> {
    if ctx
        .problem
        .crossovers
        .iter()
        .all(|part| part.turns.is_held())
    {
        search_at_places(ctx, seed, meter, seen)
    } else {
        super::turned::search(ctx, seed, meter, seen)
    }
}

/// The same with every part that may be turned free from the beginning.
pub(crate) fn search_at_places(
    ctx: &Context<'_>,
    seed: u64,
    meter: &mut Meter<'_>,
    seen: &mut dyn FnMut(&Solution, u64, bool),
) -> Vec<Solution> {
    let problem = ctx.problem;
    let region = search_region(problem);
    let field = Field::new(&ctx.room, &region);
    let splits = component_splits(problem);
    let plain = spans(ctx, splits.first().map_or(&[], Vec::as_slice));
    if let ([span], true) = (plain.as_slice(), problem.crossovers.is_empty()) {
        let reach = Reach {
            rounds: u64::MAX,
            improved: 3,
            first_only: false,
        };
        return search_one(ctx, span, &field, (seed, reach), meter, seen);
    }
    let slides_at_ends = (0..problem.crossovers.len()).any(|k| !problem.is_only_passed(k));
    let mut pool: Vec<Solution> = Vec::new();
    let mut best = f64::INFINITY;
    let mut tried = BTreeSet::new();
    // Spans that failed most often are tried first: a place that they refuse is given up before others are searched.
    let mut failures: Vec<u64> = vec![0; plain.len()];
    // A wide room for the crossover may take many draws before one can be reached at all.
    for attempt in 0..MOST_DRAWS {
        if !pool.is_empty() || meter.is_over() {
            break;
        }
        let mut starts: Vec<(f64, usize, Vec<Pose>)> = Vec::new();
        for poses in pose_candidates(ctx, seed.wrapping_add(attempt * 0x51ED)) {
            for (k, split) in splits.iter().enumerate() {
                let hint: f64 = spans(ctx, split)
                    .iter()
                    .map(|s| glance(ctx, &s.at(ctx, &poses), &field, seed))
                    .sum();
                starts.push((hint, k, poses.clone()));
            }
        }
        starts.sort_by(|a, b| a.0.total_cmp(&b.0));
        for (number, (_, k, poses)) in starts.into_iter().enumerate() {
            if meter.is_over() {
                break;
            }
            let Some(split) = splits.get(k) else { continue };
            let spans = spans(ctx, split);
            let reach = Reach {
                rounds: 4,
                improved: 2,
                first_only: true,
            };
            // Enough for volleys along paths round the bodies too, not along the straight way only.
            let share = (meter.limit - meter.spent) / (4 * spans.len() as u64).max(1);
            let limit = if pool.is_empty() {
                SPAN_UNITS
            } else {
                share.min(SPAN_UNITS)
            };
            let seed = seed.wrapping_add(number as u64);
            let Some(parts) = parts_at(
                ctx,
                &spans,
                &poses,
                &field,
                (seed, reach, limit),
                &mut failures,
                meter,
            ) else {
                continue;
            };
            let Some(joined) = join(ctx, &spans, &parts, &poses, meter) else {
                continue;
            };
            let mut note = |s: &Solution, spent: u64, _: bool| {
                let is_best = s.cost < best;
                best = best.min(s.cost);
                seen(s, spent, is_best);
            };
            note(&joined, meter.spent, true);
            let mut polished = polish(ctx, joined, &mut tried, meter, &mut note);
            // A bend that only a place of the part needed is none where the part lies right.
            while slides_at_ends && !meter.is_over() {
                let fewer = super::loose::without_bends(ctx, &polished, meter);
                let Some(best) = fewer.into_iter().min_by(|a, b| a.cost.total_cmp(&b.cost)) else {
                    break;
                };
                pool.push(polished);
                polished = polish(ctx, best, &mut tried, meter, &mut note);
            }
            pool.push(polished);
        }
    }
    pool.sort_by(|a, b| a.cost.total_cmp(&b.cost));
    pool
}

/// Work units for one span at one place of the crossovers: about four volleys.
const SPAN_UNITS: u64 = 900;
/// Overrun of a span that moving the crossovers may still take away, mm.
const MENDABLE_MM: f64 = 60.0;

/// What each span finds alone at one place of the crossovers; `None` when one finds nothing that is
/// near. What is near counts for at most half of the spans: joined with the crossovers free to slide
/// it may hold.
fn parts_at(
    ctx: &Context<'_>,
    spans: &[Span],
    poses: &[Pose],
    field: &Field<'_>,
    (seed, reach, limit): (u64, Reach, u64),
    failures: &mut Vec<u64>,
    meter: &mut Meter<'_>,
) -> Option<Vec<Vec<Solution>>> {
    failures.resize(spans.len(), 0);
    let mut order: Vec<usize> = (0..spans.len()).collect();
    order.sort_by_key(|&i| core::cmp::Reverse(failures.get(i).copied().unwrap_or(0)));
    let mut parts: Vec<Vec<Solution>> = vec![Vec::new(); spans.len()];
    let mut missed = 0;
    for i in order {
        let span = spans.get(i)?;
        let mut own = Meter {
            spent: 0,
            limit,
            cancel: meter.cancel,
        };
        let found = single::search(
            ctx,
            &span.at(ctx, poses),
            field,
            seed,
            reach,
            &mut own,
            |_, _, _| {},
        );
        meter.spent += own.spent;
        let slot = parts.get_mut(i)?;
        *slot = found.held;
        if slot.is_empty() {
            if let Some(f) = failures.get_mut(i) {
                *f += 1;
            }
            missed += 1;
            let near = found.near.filter(|n| n.0 <= MENDABLE_MM)?;
            if 2 * missed > spans.len() {
                return None;
            }
            slot.push(near.1);
        }
    }
    Some(parts)
}

/// Chains alone at the present place of the crossovers, then together, as long as it helps.
pub(crate) fn polish(
    ctx: &Context<'_>,
    mut now: Solution,
    tried: &mut BTreeSet<Vec<super::layout::Layout>>,
    meter: &mut Meter<'_>,
    note: &mut dyn FnMut(&Solution, u64, bool),
) -> Solution {
    loop {
        let before = now.cost;
        for c in 0..now.chains.len() {
            now = improve(
                ctx,
                now,
                Scope::Alone(c),
                &mut BTreeSet::new(),
                meter,
                &mut *note,
            );
        }
        now = improve(ctx, now, Scope::Together, tried, meter, &mut *note);
        if meter.is_over() || now.cost > before - 0.05 {
            return now;
        }
    }
}

/// The cheapest parts put together and mended with the crossovers free.
fn join(
    ctx: &Context<'_>,
    spans: &[Span],
    parts: &[Vec<Solution>],
    poses: &[Pose],
    meter: &mut Meter<'_>,
) -> Option<Solution> {
    // Choices in order of total price: the cheapest of each, then one of them a rank lower.
    let mut choices: Vec<Vec<usize>> = vec![vec![0; spans.len()]];
    for (i, part) in parts.iter().enumerate() {
        for rank in 1..part.len().min(3) {
            let mut choice = vec![0; spans.len()];
            if let Some(c) = choice.get_mut(i) {
                *c = rank;
            }
            choices.push(choice);
        }
    }
    for choice in choices {
        let mut chains = Vec::new();
        let mut x = Vec::new();
        for ((span, part), rank) in spans.iter().zip(parts).zip(&choice) {
            let solution = part.get(*rank)?;
            let chain = solution.chains.first()?;
            x.extend_from_slice(solution.x.get(..chain.layout.sizes())?);
            chains.push(span.hung(chain));
        }
        x.extend(ctx.slides.sizes_at(poses));
        let (solution, landing) = mend(
            ctx,
            chains,
            &x,
            Effort {
                steps: 30,
                pull: 0.1,
            },
        );
        meter.spent += landing.work * spans.len() as u64;
        if solution.is_some() {
            return solution;
        }
        if meter.is_over() {
            return None;
        }
    }
    None
}

/// Places of what slides worth looking at, ends as they are wished and crossovers in the middle first, then
/// by chance; crossovers where their bodies are clear.
fn pose_candidates(ctx: &Context<'_>, seed: u64) -> Vec<Vec<Pose>> {
    let problem = ctx.problem;
    let wished = ctx.slides.as_wished(problem);
    if wished.is_empty() {
        return vec![Vec::new()];
    }
    let mut random = Random::new(seed, 4242);
    let levels: Vec<Vec<Level>> = (0..problem.crossovers.len())
        .map(|number| levels_of(problem, number))
        .collect();
    let mut out = Vec::new();
    for k in 0..40 {
        let mut poses = wished.clone();
        for (number, (slide, pose)) in ctx.slides.all.iter().zip(&mut poses).enumerate() {
            // Where everything stands as it is wished is looked at with other places of the crossovers too.
            if k > 0 && (k % 2 == 0 || ctx.slides.is_crossover(number)) {
                *pose = slide.at(core::array::from_fn(|_| random.unit()));
                if k % 2 == 0 && ctx.slides.is_crossover(number) && !slide.is_turn_held() {
                    pose.turn = slide.turned_at(core::array::from_fn(|_| random.unit()));
                }
                let levels = levels.get(number).map_or(&[][..], Vec::as_slice);
                if k % 2 == 1 {
                    level(&mut pose.shift, levels, k / 2);
                }
            }
        }
        let clear = problem.crossovers.iter().zip(&poses).all(|(x, pose)| {
            let part = pose.part();
            // A little too near may still be slid clear.
            x.body
                .iter()
                .all(|bar| ctx.room.tightest(&part.bar(bar), -10.0).is_none())
        });
        if clear {
            out.push(poses);
        }
    }
    out
}

/// A coordinate of a crossover's origin at which one of its ports is level with the far end of the run
/// that meets it there: such a run can do with a bend less.
#[derive(Clone, Copy)]
struct Level {
    axis: Vector,
    at: f64,
}

/// Levels across the car and in height, for runs that start from a crossover or end at it.
fn levels_of(problem: &RouteProblem, number: usize) -> Vec<Level> {
    let Some(crossover) = problem.crossovers.get(number) else {
        return Vec::new();
    };
    let turn = crossover.turns.middle();
    let mut out = Vec::new();
    for run in &problem.runs {
        let far = [
            run.ends_at
                .map(|p| (p, run.start.origin, crossover.ports(p.side).inlet)),
            run.starts_at
                .map(|p| (p, run.end, crossover.ports(p.side).outlet)),
        ];
        for (passage, far, port) in far.into_iter().flatten() {
            if passage.crossover != number {
                continue;
            }
            for axis in [Vector::new(0.0, 0.0, 1.0), Vector::new(0.0, 1.0, 0.0)] {
                let at = axis.dot(far.to_vector() - turn.vector(port));
                let [low, high] = [crossover.poses.min, crossover.poses.max]
                    .map(|corner| axis.dot(corner.to_vector()));
                if (low..=high).contains(&at) {
                    out.push(Level { axis, at });
                }
            }
        }
    }
    out
}

/// Shifts a place to one of the levels.
fn level(shift: &mut Vector, levels: &[Level], number: usize) {
    if let Some(level) = levels.get(number.checked_rem(levels.len()).unwrap_or(0)) {
        *shift += level.axis * (level.at - level.axis.dot(*shift));
    }
}

/// Most draws of forty places for the crossovers while nothing was found.
const MOST_DRAWS: u64 = 40;

/// How many components lie before the crossover, for each run: all ways for each run alike.
fn component_splits(problem: &RouteProblem) -> Vec<Vec<usize>> {
    let mut out: Vec<Vec<usize>> = vec![Vec::new()];
    for run in &problem.runs {
        let ways = if run.passage.is_some() {
            run.components.len() + 1
        } else {
            1
        };
        let mut next = Vec::new();
        for before in &out {
            for way in
                (0..ways).filter(|way| run.components_before_passage.is_none_or(|n| n == *way))
            {
                let mut all = before.clone();
                all.push(way);
                next.push(all);
            }
        }
        out = next;
    }
    out.truncate(64);
    out
}

/// Where guide paths may go: round all ends, within the workspace.
pub(crate) fn search_region(problem: &RouteProblem) -> Region {
    let low = |a: Point, b: Point| Point::new(a.x.min(b.x), a.y.min(b.y), a.z.min(b.z));
    let high = |a: Point, b: Point| Point::new(a.x.max(b.x), a.y.max(b.y), a.z.max(b.z));
    let mut places = problem.runs.iter().flat_map(|r| {
        let back = r.start_room.map_or(0.0, |room| room.back_mm);
        let within = r.end_room.as_ref().map(|room| room.within);
        let corners = within.map_or([r.end; 2], |box_| [box_.min, box_.max]);
        let [low, high] = corners;
        [
            r.start.origin,
            r.start.origin - r.start.travel() * back,
            low,
            high,
            r.end,
        ]
    });
    let first = places.next().unwrap_or(Point::ORIGIN);
    let (min, max) = places.fold((first, first), |(a, b), p| (low(a, p), high(b, p)));
    let reach = 500.0 + 0.25 * min.distance(max);
    let grow = Vector::new(reach, reach, reach);
    let (min, max) = (min - grow, max + grow);
    match problem.workspace {
        Some(w) => Region {
            min: high(min, w.min),
            max: low(max, w.max),
        },
        None => Region { min, max },
    }
}
