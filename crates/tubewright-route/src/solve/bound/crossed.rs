//! Runs through, from and to crossovers whose places are known up to a box.
//!
//! For a box of places each run that passes is two stretches, to the inlet and from the outlet, and
//! each that ends or starts there is one, with ends that are known up to a ball; their bounds are summed over
//! all runs. The box with the least sum is halved
//! until the effort is spent.

use tubewright_geometry::{Point, Vector};

use super::link::Link;
use super::queue::LeastFirst;
use super::{ARITHMETIC, Stretch, components_mm};
use crate::problem::{Passage, Ports, Region, Run};
use crate::solve::system::Context;

/// Boxes of sizes for each stretch and box of places.
const EACH: usize = 1500;
/// Boxes of places are not halved below this, mm.
const FINEST_MM: f64 = 2.0;

/// By counting alone, over all places of the crossover.
pub(super) fn quick(ctx: &Context<'_>, run: &Run, search: &Stretch<'_>) -> f64 {
    let poses: Vec<Region> = ctx.problem.crossovers.iter().map(|x| x.poses).collect();
    over_splits(ctx, run, &poses, |link| search.counted(link, 0, false))
}

/// The least over all ways of sharing out the run's components before and behind its crossover.
fn over_splits(
    ctx: &Context<'_>,
    run: &Run,
    poses: &[Region],
    mut price: impl FnMut(&Link) -> f64,
) -> f64 {
    let Some(passage) = run.passage else {
        return whole(ctx, run, poses).map_or(0.0, |link| price(&link));
    };
    let mut best = f64::INFINITY;
    for before in 0..=run.components.len() {
        if run.components_before_passage.is_some_and(|n| n != before) {
            continue;
        }
        if let Some([to, from]) = links(ctx, run, passage, poses, before) {
            best = best.min(price(&to) + price(&from));
        }
    }
    if best.is_finite() { best } else { 0.0 }
}

/// The ports of a passage, and where the crossover's origin is within a ball.
fn port_at<'a>(
    ctx: &Context<'a>,
    poses: &[Region],
    passage: Passage,
) -> Option<(&'a Ports, Point, f64)> {
    let crossover = ctx.problem.crossovers.get(passage.crossover)?;
    let place = poses.get(passage.crossover)?;
    let middle = place.min.lerp(place.max, 0.5);
    let ball = place.min.distance(place.max) / 2.0 + ARITHMETIC;
    Some((crossover.ports(passage.side), middle, ball))
}

/// A run that passes no crossover, either end of which may be at a port of one.
fn whole(ctx: &Context<'_>, run: &Run, poses: &[Region]) -> Option<Link> {
    let mut link = super::plain(ctx, run);
    if let Some(passage) = run.starts_at {
        let (ports, middle, ball) = port_at(ctx, poses, passage)?;
        link.start = middle + ports.outlet;
        link.start_way = ports.outlet_direction.vector();
        link.start_ball = ball;
        link.start_turn = 0.0;
    }
    if let Some(passage) = run.ends_at {
        let rules = &ctx.problem.rules;
        let (ports, middle, ball) = port_at(ctx, poses, passage)?;
        link.end = middle + ports.inlet;
        link.end_way = ports.inlet_direction.vector();
        link.end_ball = ball + rules.end_place_mm;
        link.end_turn = rules.end_turn_rad + ARITHMETIC;
    }
    Some(link)
}

/// Before and behind the crossover.
fn links(
    ctx: &Context<'_>,
    run: &Run,
    passage: Passage,
    poses: &[Region],
    before: usize,
) -> Option<[Link; 2]> {
    let rules = &ctx.problem.rules;
    let (ports, middle, ball) = port_at(ctx, poses, passage)?;
    let (outset, last) = (
        super::Outermost::start(run),
        super::Outermost::end(ctx, run),
    );
    let (first, second) = run.components.split_at_checked(before)?;
    Some([
        Link {
            start: outset.middle,
            start_way: run.start.travel().vector(),
            start_ball: outset.ball_mm,
            start_turn: outset.turn_rad,
            end: middle + ports.inlet,
            end_way: ports.inlet_direction.vector(),
            end_ball: ball + rules.end_place_mm,
            end_turn: rules.end_turn_rad + ARITHMETIC,
            components: first.to_vec(),
            components_mm: components_mm(ctx, first),
        },
        Link {
            start: middle + ports.outlet,
            start_way: ports.outlet_direction.vector(),
            start_ball: ball,
            start_turn: 0.0,
            end: last.middle,
            end_way: run.end_direction.vector(),
            end_ball: last.ball_mm,
            end_turn: last.turn_rad,
            components: second.to_vec(),
            components_mm: components_mm(ctx, second),
        },
    ])
}

/// The bound over all runs; `best` when it is at least that.
pub(super) fn bound(ctx: &Context<'_>, best: f64, boxes: usize) -> f64 {
    let searches: Vec<Option<Stretch<'_>>> = ctx
        .problem
        .runs
        .iter()
        .map(|run| Stretch::of(ctx, run))
        .collect();
    let stretches = 2 * ctx.problem.runs.len().max(1);
    let each = EACH.min(boxes / stretches);
    let sum = |poses: &[Region]| -> f64 {
        let mut total = 0.0;
        for (run, search) in ctx.problem.runs.iter().zip(&searches) {
            let Some(search) = search else { continue };
            total += if run.meets_any() {
                over_splits(ctx, run, poses, |link| search.bound(link, best, each, None))
            } else {
                search.bound(&super::plain(ctx, run), best, each, None)
            };
        }
        total
    };
    let mut left = boxes;
    let mut open = LeastFirst::new();
    let whole: Vec<Region> = ctx.problem.crossovers.iter().map(|x| x.poses).collect();
    open.push(sum(&whole), whole);
    while let Some((least, places)) = open.pop() {
        let spent = each * stretches * 2;
        let Some((crossover, axis, width)) = widest(&places) else {
            return least;
        };
        if least >= best || width < FINEST_MM || left < spent {
            return least;
        }
        left -= spent;
        for upper in [false, true] {
            let mut poses = places.clone();
            if let Some(region) = poses.get_mut(crossover) {
                halve(region, axis, upper);
            }
            let bound = sum(&poses).max(least);
            open.push(bound, poses);
        }
    }
    best
}

fn widest(poses: &[Region]) -> Option<(usize, usize, f64)> {
    poses
        .iter()
        .enumerate()
        .flat_map(|(k, region)| {
            (region.max - region.min)
                .to_array()
                .into_iter()
                .enumerate()
                .map(move |(axis, width)| (k, axis, width))
        })
        .max_by(|a, b| a.2.total_cmp(&b.2))
}

fn halve(region: &mut Region, axis: usize, upper: bool) {
    let (mut low, mut high) = (region.min.to_array(), region.max.to_array());
    if let (Some(low), Some(high)) = (low.get_mut(axis), high.get_mut(axis)) {
        let middle = f64::midpoint(*low, *high);
        if upper {
            *low = middle;
        } else {
            *high = middle;
        }
    }
    region.min = Point::ORIGIN + Vector::from_array(low);
    region.max = Point::ORIGIN + Vector::from_array(high);
}
