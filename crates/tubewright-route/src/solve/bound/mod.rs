//! A price that no route can undercut.
//!
//! The cost of a route is the sum of what is counted (bends, straights, components, welds) and what is
//! measured (lengths, angles). A bound is taken apart by the number of bends: no route costs less
//! than the least of what one without bends, with one, two, three and with more can cost. For few
//! bends every tangent polygon is looked at ([`polygon`]); for more, only what any list of bends and
//! straights must do to turn and to cover the distance ([`need`]). Bends, straights and tolerances
//! are priced over intervals ([`prices`]), bodies drop what all runs of a box of sizes meet
//! ([`bodies`]), and where a crossover may lie in a box, the box is halved as well ([`crossed`]).
//! Bodies that are left out, and runs that are taken one by one, only make the bound smaller.

mod bodies;
mod crossed;
mod link;
mod need;
mod polygon;
mod prices;
mod queue;

use bodies::Bodies;
use link::Link;
use need::{Need, angle};
use polygon::Limit;
pub(crate) use polygon::{Follow, Guide};
use prices::Prices;

use super::system::Context;
use crate::problem::{Run, Tube};

/// Room for what arithmetic leaves, mm and radians.
const ARITHMETIC: f64 = 1e-6;
/// Money is counted to the hundredth: a bound that is as near to the best cost is as good as it.
const MONEY: f64 = 0.01;
/// Most bends that polygons are looked at for.
const POLYGON_BENDS: usize = 3;

/// No route of the problem costs less than this: what is quickly known, before anything is searched.
pub(crate) fn quick(ctx: &Context<'_>) -> f64 {
    refined(ctx, f64::INFINITY, 0, &mut |_, _| None)
}

/// No route of the problem costs less than this, where one of cost `best` is known; `boxes` is how
/// many boxes of sizes may be looked at. `follow` is shown, for each run, the polygons that the least
/// bounds point to; it gives back the cost of the whole when that is now less than `best`.
pub(crate) fn refined(
    ctx: &Context<'_>,
    best: f64,
    boxes: usize,
    follow: &mut dyn FnMut(usize, &Guide) -> Option<f64>,
) -> f64 {
    let problem = ctx.problem;
    let best = best - MONEY;
    let quick: Vec<f64> = problem.runs.iter().map(|r| run_quick(ctx, r)).collect();
    let mut total: f64 = quick.iter().sum();
    if boxes == 0 {
        return total;
    }
    if problem.runs.iter().any(Run::meets_any) {
        return crossed::bound(ctx, best, boxes).max(total).min(best);
    }
    let each = boxes / problem.runs.len().max(1);
    let mut best = best;
    for (number, (run, quick)) in problem.runs.iter().zip(quick).enumerate() {
        let others = total - quick;
        if let Some(search) = Stretch::of(ctx, run) {
            let enough = best - others;
            let mut own = |guide: &Guide| {
                let cost = follow(number, guide)?;
                best = best.min(cost - MONEY);
                Some(best - others)
            };
            let link = plain(ctx, run);
            let better = search.bound(&link, enough, each, Some(&mut own));
            total += better.max(quick) - quick;
        }
    }
    total.min(best)
}

/// An end of a run, with how far from there and from its direction it may be.
struct Outermost {
    middle: tubewright_geometry::Point,
    ball_mm: f64,
    turn_rad: f64,
}

impl Outermost {
    fn start(run: &Run) -> Self {
        let room = run.start_room;
        let (least, most) = room.map_or((0.0, 0.0), |room| (room.least_mm, room.back_mm));
        Self {
            middle: run.start.origin - run.start.travel() * (0.5 * (least + most)),
            ball_mm: 0.5 * (most - least) + ARITHMETIC,
            // Two turns in planes square to each other are less than both together.
            turn_rad: room.map_or(0.0, |room| 2.0 * room.turn_rad),
        }
    }

    fn end(ctx: &Context<'_>, run: &Run) -> Self {
        let rules = &ctx.problem.rules;
        let (middle, reach) = run
            .end_room
            .as_ref()
            .map_or((run.end, 0.0), crate::problem::EndRoom::ball);
        let turn = run
            .end_room
            .as_ref()
            .map_or(0.0, crate::problem::EndRoom::most_turn_rad);
        Self {
            middle,
            ball_mm: reach + rules.end_place_mm + ARITHMETIC,
            turn_rad: turn + rules.end_turn_rad + ARITHMETIC,
        }
    }
}

/// A run without a crossover.
fn plain(ctx: &Context<'_>, run: &Run) -> Link {
    let (first, last) = (Outermost::start(run), Outermost::end(ctx, run));
    Link {
        start: first.middle,
        start_way: run.start.travel().vector(),
        start_ball: first.ball_mm,
        start_turn: first.turn_rad,
        end: last.middle,
        end_way: run.end_direction.vector(),
        end_ball: last.ball_mm,
        end_turn: last.turn_rad,
        components: run.components.clone(),
        components_mm: components_mm(ctx, &run.components),
    }
}

fn components_mm(ctx: &Context<'_>, components: &[usize]) -> f64 {
    components
        .iter()
        .filter_map(|c| ctx.problem.components.get(*c))
        .map(|c| c.length_mm)
        .sum()
}

fn run_quick(ctx: &Context<'_>, run: &Run) -> f64 {
    let Some(search) = Stretch::of(ctx, run) else {
        return 0.0;
    };
    if run.meets_any() {
        crossed::quick(ctx, run, &search)
    } else {
        search.counted(&plain(ctx, run), 0, false)
    }
}

/// What is needed to bound the stretches of one run.
struct Stretch<'a> {
    prices: Prices,
    bodies: Bodies<'a>,
}

impl<'a> Stretch<'a> {
    fn of(ctx: &'a Context<'_>, run: &Run) -> Option<Self> {
        let tube: &Tube = ctx.problem.tubes.get(run.tube)?;
        Some(Self {
            prices: Prices::of(ctx.problem, tube, ctx.cost),
            bodies: Bodies::new(ctx.problem, &ctx.room, &run.own_bodies, tube.od_mm / 2.0),
        })
    }

    /// By counting alone: `least` or more bends, or exactly so many.
    fn counted(&self, link: &Link, least: usize, exactly: bool) -> f64 {
        self.prices.weld * (1.0 + link.components.len() as f64)
            + Need::of(link).price(&self.prices, least, exactly)
    }

    /// A run that is one straight; infinite where the ends are not on one line.
    fn without_bends(&self, link: &Link) -> f64 {
        let way = link.end - link.start;
        let is_turned = link.start_turn > 0.0;
        let along = if is_turned {
            way.norm()
        } else {
            way.dot(link.start_way)
        };
        let doubt = link.start_ball + link.end_ball;
        let aside = (way - link.start_way * along).norm();
        let turn = angle(link.start_way, link.end_way);
        if turn > link.start_turn + link.end_turn || (aside > doubt && !is_turned) {
            return f64::INFINITY;
        }
        let left = along - link.components_mm;
        self.prices.weld * (1.0 + link.components.len() as f64)
            + self.prices.straight(left - doubt, left + doubt)
    }

    /// The least of all numbers of bends; `enough` is good enough.
    /// With `follow`, few bends are looked at up to `enough`, for the sake of what they point to.
    fn bound(
        &self,
        link: &Link,
        mut enough: f64,
        boxes: usize,
        mut follow: Option<&mut Follow<'_>>,
    ) -> f64 {
        // Lists of more bends cost more, so what is counted for more is a lid on what fewer are worth
        // looking at.
        let mut by_count: Vec<f64> = (1..=POLYGON_BENDS)
            .map(|n| self.counted(link, n, true))
            .collect();
        let more = self.counted(link, POLYGON_BENDS + 1, false).min(enough);
        let none = self.without_bends(link);
        let mut lid = more.min(none);
        let mut left = boxes;
        // Few bends first: their polygons have few sizes.
        for n in 1..=POLYGON_BENDS {
            let Some(counted) = by_count.get_mut(n - 1) else {
                continue;
            };
            let is_few = n < POLYGON_BENDS;
            let goal = if is_few && follow.is_some() {
                enough
            } else {
                lid
            };
            if *counted >= goal || left == 0 {
                continue;
            }
            let limit = Limit {
                enough: goal,
                boxes: if is_few { left / 2 } else { left },
            };
            let mut shown = |guide: &Guide| follow.as_mut().and_then(|f| f(guide));
            let found = polygon::least(link, n, &self.prices, &self.bodies, limit, &mut shown);
            *counted = counted.max(found.bound);
            if found.enough < goal {
                enough = enough.min(found.enough);
                lid = lid.min(enough);
            }
            left = left.saturating_sub(found.boxes);
        }
        by_count.into_iter().fold(lid, f64::min)
    }
}
