//! Runs through, from and to crossovers whose places are known up to a box, and their turns up to ranges.
//!
//! For a box of places and turns each run that passes is two stretches, to the inlet and from the outlet, and
//! each that ends or starts there is one, with ends that are known up to a ball; their bounds are summed over
//! all runs. The box with the least sum is halved
//! until the effort is spent.

use tubewright_geometry::{Point, Vector, math};

use super::link::Link;
use super::queue::LeastFirst;
use super::{ARITHMETIC, Stretch, components_mm};
use crate::problem::{Crossover, PartPose, Passage, Ports, Region, Run, Turn, TurnRoom};
use crate::solve::system::Context;

/// Boxes of sizes for each stretch and box of places.
const EACH: usize = 1500;
/// What the direction of a radian leaves open, mm: about what a run needs to turn by it.
const TURN_LEVER_MM: f64 = 300.0;
/// Boxes of places are not halved below this, mm.
const FINEST_MM: f64 = 2.0;

/// By counting alone, over all places of the crossover.
pub(super) fn quick(ctx: &Context<'_>, run: &Run, search: &Stretch<'_>) -> f64 {
    let poses: Vec<Poses> = ctx.problem.crossovers.iter().map(Poses::of).collect();
    over_splits(ctx, run, &poses, |link| search.counted(link, 0, false))
}

/// The least over all ways of sharing out the run's components before and behind its crossover.
fn over_splits(
    ctx: &Context<'_>,
    run: &Run,
    poses: &[Poses],
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

/// What is known of how a crossover lies.
#[derive(Clone, Copy)]
struct Poses {
    places: Region,
    turns: TurnRoom,
    /// How far its furthest port is from its origin, mm.
    reach_mm: f64,
}

/// A port up to a ball and a cone.
struct Port {
    place: Point,
    way: Vector,
    ball_mm: f64,
    turn_rad: f64,
}

impl Poses {
    fn of(part: &Crossover) -> Self {
        let sides = [&part.left, &part.right];
        let ports = sides.into_iter().flat_map(|side| [side.inlet, side.outlet]);
        Self {
            places: part.poses,
            turns: part.turns,
            reach_mm: ports.map(Vector::norm).fold(0.0, f64::max),
        }
    }

    /// A radian of turn leaves as much open as so many mm: its ports move, and directions turn, which is priced as a
    /// bend.
    fn lever_mm(&self) -> f64 {
        self.reach_mm + TURN_LEVER_MM
    }

    /// Half of how far each angle may differ, radians.
    fn half_turns(&self) -> [f64; 3] {
        let (least, most) = (self.turns.least.to_array(), self.turns.most.to_array());
        [0, 1, 2].map(|k| 0.5 * (most[k] - least[k]))
    }

    /// How far a port may be off from where it is in the middle of all places and turns. Two turns differ by one about the
    /// upright, one about the part's own length and one about the level axis across; the first and the last are about
    /// axes square to each other and make one turn `θ` with `cos(θ/2) = cos(a/2) cos(b/2)`, and what several turns move
    /// adds up to no more than their sum.
    fn port(&self, local: Vector, way: Vector) -> Port {
        let middle = PartPose {
            origin: self.places.min.lerp(self.places.max, 0.5),
            turn: self.turns.middle(),
        };
        let [right, up, roll] = self.half_turns();
        // A roll turns what is nearly along the part by little.
        let aside = |v: Vector| (v.y * v.y + v.z * v.z).sqrt();
        let rolled = 2.0 * math::asin(aside(way).min(1.0) * math::sin(0.5 * roll.min(math::PI)));
        let swung = 2.0 * math::acos(math::cos(0.5 * right) * math::cos(0.5 * up));
        Port {
            place: middle.place(local),
            way: middle.turn.vector(way),
            ball_mm: self.places.min.distance(self.places.max) / 2.0
                + local.norm() * swung
                + aside(local) * roll
                + ARITHMETIC,
            turn_rad: swung + rolled,
        }
    }
}

/// The inlet and the outlet of a passage.
fn ports_at(ctx: &Context<'_>, poses: &[Poses], passage: Passage) -> Option<[Port; 2]> {
    let crossover = ctx.problem.crossovers.get(passage.crossover)?;
    let poses = poses.get(passage.crossover)?;
    let ports: &Ports = crossover.ports(passage.side);
    Some([
        poses.port(ports.inlet, ports.inlet_direction.vector()),
        poses.port(ports.outlet, ports.outlet_direction.vector()),
    ])
}

/// A run that passes no crossover, either end of which may be at a port of one.
fn whole(ctx: &Context<'_>, run: &Run, poses: &[Poses]) -> Option<Link> {
    let mut link = super::plain(ctx, run);
    if let Some(passage) = run.starts_at {
        let [_, outlet] = ports_at(ctx, poses, passage)?;
        link.start = outlet.place;
        link.start_way = outlet.way;
        link.start_ball = outlet.ball_mm;
        link.start_turn = outlet.turn_rad;
    }
    if let Some(passage) = run.ends_at {
        let rules = &ctx.problem.rules;
        let [inlet, _] = ports_at(ctx, poses, passage)?;
        link.end = inlet.place;
        link.end_way = inlet.way;
        link.end_ball = inlet.ball_mm + rules.end_place_mm;
        link.end_turn = inlet.turn_rad + rules.end_turn_rad + ARITHMETIC;
    }
    Some(link)
}

/// Before and behind the crossover.
fn links(
    ctx: &Context<'_>,
    run: &Run,
    passage: Passage,
    poses: &[Poses],
    before: usize,
) -> Option<[Link; 2]> {
    let rules = &ctx.problem.rules;
    let [inlet, outlet] = ports_at(ctx, poses, passage)?;
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
            end: inlet.place,
            end_way: inlet.way,
            end_ball: inlet.ball_mm + rules.end_place_mm,
            end_turn: inlet.turn_rad + rules.end_turn_rad + ARITHMETIC,
            components: first.to_vec(),
            components_mm: components_mm(ctx, first),
        },
        Link {
            start: outlet.place,
            start_way: outlet.way,
            start_ball: outlet.ball_mm,
            start_turn: outlet.turn_rad,
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
    let sum = |poses: &[Poses]| -> f64 {
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
    let whole: Vec<Poses> = ctx.problem.crossovers.iter().map(Poses::of).collect();
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
            if let Some(poses) = poses.get_mut(crossover) {
                halve(poses, axis, upper);
            }
            let bound = sum(&poses).max(least);
            open.push(bound, poses);
        }
    }
    best
}

/// The crossover and the axis, of a shift or behind those of a turn, that leave most open, and how much, mm.
fn widest(poses: &[Poses]) -> Option<(usize, usize, f64)> {
    poses
        .iter()
        .enumerate()
        .flat_map(|(k, poses)| {
            let turns = poses.half_turns().map(|half| 2.0 * half * poses.lever_mm());
            (poses.places.max - poses.places.min)
                .to_array()
                .into_iter()
                .chain(turns)
                .enumerate()
                .map(move |(axis, width)| (k, axis, width))
        })
        .max_by(|a, b| a.2.total_cmp(&b.2))
}

fn halve(poses: &mut Poses, axis: usize, upper: bool) {
    if let Some(turn) = axis.checked_sub(3) {
        let middle = poses.turns.middle().to_array();
        let turns = &mut poses.turns;
        let side = if upper {
            &mut turns.least
        } else {
            &mut turns.most
        };
        let mut angles = side.to_array();
        if let (Some(angle), Some(middle)) = (angles.get_mut(turn), middle.get(turn)) {
            *angle = *middle;
        }
        *side = Turn::from_array(angles);
        return;
    }
    let region = &mut poses.places;
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
