//! Sizes to the shop's steps: of all ways to put every size on a whole step near the present one,
//! those that bring the end nearest to where it belongs ([`lattice`]), the first of them that keeps
//! every rule. Where none ends well, more room is given and the route set up anew, or a stock bend is
//! cut to another angle.

mod gaps;
mod lattice;
mod pieces;

use tubewright_geometry::Vector;

use super::descend::{Effort, HOLDS_MM, close, descend};
use super::improve::Solution;
use super::layout::{Joint, Slot};
use super::report;
use super::slides::Pose;
use super::system::{Anchor, Chain, Context, Row, System, Target, tube_of};
use crate::cost::CostModel;
use crate::problem::RouteProblem;
use crate::route::Route;
use gaps::with_gaps;
use lattice::{GOOD_MM, GOOD_RAD, Lattice, Way};
use pieces::fine_joint;
pub(crate) use pieces::solution_of;

/// Steps that the shop works in.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct ShopSteps {
    /// Length in mm (1 mm or 1/16 in).
    pub length_mm: f64,
    /// Angle of a bend cut to angle, radians.
    pub angle_rad: f64,
    /// Clock angle, radians.
    pub clock_rad: f64,
}

impl Default for ShopSteps {
    /// 1 mm, 1° and 1° (common practice, no source).
    fn default() -> Self {
        Self {
            length_mm: 1.0,
            angle_rad: 1.0_f64.to_radians(),
            clock_rad: 1.0_f64.to_radians(),
        }
    }
}

/// A piece that is fitted last and may be cut finer than the others.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct ClosingPiece {
    /// Number of the run.
    pub run: usize,
    /// Number of the piece in its run.
    pub piece: usize,
    /// Its own steps.
    pub steps: ShopSteps,
}

/// How far a chain of rounded pieces ends from where it should.
#[derive(Clone, Debug, PartialEq)]
pub struct EndError {
    /// Number of the run.
    pub run: usize,
    /// True for the end of the run, false for the inlet of the crossover that it passes.
    pub is_end: bool,
    /// Distance in mm.
    pub distance_mm: f64,
    /// Angle between the directions in radians.
    pub direction_rad: f64,
}

/// A route in the shop's steps.
#[derive(Clone, Debug, PartialEq)]
pub struct Rounded {
    /// The route as it stands on the card. Its cost and tightest place are those of the rounded
    /// sizes; its name and lower bound are the unrounded route's.
    pub route: Route,
    /// One a chain: every run's end, and the inlet of every crossover passed.
    pub ends: Vec<EndError>,
    /// Room in mm that was added to every gap before a way of rounding kept all gaps.
    pub added_gap_mm: f64,
}

/// Why a route could not be rounded.
#[derive(Debug, Clone, PartialEq, thiserror::Error)]
#[non_exhaustive]
pub enum RoundError {
    /// The route is not one of this problem.
    #[error("the route does not belong to the problem: {0}")]
    NotOfThisProblem(&'static str),
    /// A step that is not above zero.
    #[error("a step of {0} cannot be worked in; give a length or angle above zero")]
    NoStep(f64),
    /// No way of rounding keeps the gaps, even with room added.
    #[error(
        "no way of rounding keeps every gap: the best is {overrun_mm:.2} mm short; allow finer steps, or move what is near ({tightest})"
    )]
    NothingKeepsTheGaps {
        /// Shortfall of the best way in mm.
        overrun_mm: f64,
        /// What the unrounded route is nearest to.
        tightest: String,
    },
}

/// Room tried on top of every gap, mm, one after the other.
const ADDED_GAPS_MM: [f64; 6] = [0.0, 1.5, 3.0, 5.0, 8.0, 12.0];
/// Ways of a chain that are judged against every rule.
const JUDGED: usize = 60;
/// Overrun by first-order change, mm, past which a way is not judged before the others: the bodies
/// are curved and the step is not small.
const HOPEFUL_MM: f64 = 1.0;

/// Rounds a route to the shop's steps, re-closes it as well as the steps allow and verifies the gaps.
///
/// Of what [`Rules::rounding_room_mm`](crate::problem::Rules::rounding_room_mm) holds back in every
/// gap, rounding may use all. What remains of the end error is reported; whether it is small enough
/// is the caller's to judge.
///
/// # Errors
/// [`RoundError`].
pub fn round_and_close(
    problem: &RouteProblem,
    cost: &CostModel,
    route: &Route,
    steps: ShopSteps,
    closing: Option<ClosingPiece>,
) -> Result<Rounded, RoundError> {
    let all = [steps.length_mm, steps.angle_rad, steps.clock_rad];
    if let Some(bad) = all.into_iter().find(|s| !(s.is_finite() && *s > 0.0)) {
        return Err(RoundError::NoStep(bad));
    }
    let strict = with_gaps(problem, -problem.rules.rounding_room_mm);
    let ctx = Context::new(&strict, cost);
    let start = solution_of(&ctx, route)?;
    let mut attempt = Attempt {
        problem,
        ctx: &ctx,
        steps,
        closing,
        may_cut: false,
        least: f64::INFINITY,
        best: None,
    };
    // A stock bend is cut to another angle only where more room does not help.
    for may_cut in [false, true] {
        attempt.may_cut = may_cut;
        for added_gap_mm in ADDED_GAPS_MM {
            if attempt.worst() <= 1.0 {
                break;
            }
            attempt.with(route, &start.chains, &start.x, added_gap_mm);
        }
    }
    // One more straight is worth its weld only where there is no way without.
    if attempt.worst() > ACCEPTABLE {
        for (chains, x) in with_a_straight_put_in(&ctx, &start) {
            for added_gap_mm in [0.0, 3.0] {
                if attempt.worst() <= 1.0 {
                    break;
                }
                attempt.with(route, &chains, &x, added_gap_mm);
            }
        }
    }
    let least = attempt.least;
    attempt
        .best
        .map(|(_, r)| r)
        .ok_or_else(|| RoundError::NothingKeepsTheGaps {
            overrun_mm: least,
            tightest: route
                .tightest
                .as_ref()
                .map_or_else(|| "nothing".to_owned(), |t| t.body.clone()),
        })
}

/// Poorness of an end that a fitter can still pull in while tacking: 3 mm, 0.9° (common practice, no
/// source).
const ACCEPTABLE: f64 = 3.0;

/// Roundings tried so far and the best of them.
struct Attempt<'a, 'p> {
    problem: &'p RouteProblem,
    ctx: &'a Context<'p>,
    steps: ShopSteps,
    closing: Option<ClosingPiece>,
    /// Whether stock bends may be cut to other angles.
    may_cut: bool,
    least: f64,
    best: Option<(f64, Rounded)>,
}

impl Attempt<'_, '_> {
    fn worst(&self) -> f64 {
        self.best.as_ref().map_or(f64::INFINITY, |b| b.0)
    }

    /// Sets the chains up with more room, rounds them and keeps what is better.
    fn with(&mut self, route: &Route, chains: &[Chain], x: &[f64], added_gap_mm: f64) {
        let ctx = self.ctx;
        let present = System::new(ctx, chains.to_vec());
        let is_closed = present
            .residual(x, &present.lay(x))
            .iter()
            .all(|r| r.abs() < 1e-3);
        let base = if added_gap_mm > 0.0 || !is_closed {
            let roomy = with_gaps(self.problem, added_gap_mm);
            let wide = Context::new(&roomy, ctx.cost);
            let system = System::new(&wide, chains.to_vec());
            let effort = Effort {
                steps: 40,
                pull: 0.2,
            };
            let landing = descend(&system, x, effort);
            if !landing.overrun.is_finite() {
                return;
            }
            landing.x
        } else {
            x.to_vec()
        };
        let Some(all) = round_all(ctx, chains, &base, self.steps, (self.closing, self.may_cut))
        else {
            return;
        };
        self.least = self.least.min(all.overrun);
        if all.overrun > HOLDS_MM {
            return;
        }
        let worst = all.ends.iter().map(poorness).fold(0.0, f64::max);
        if worst >= self.worst() {
            return;
        }
        let system = System::new(ctx, all.chains);
        let rounded = Solution {
            cost: system.full_cost(&all.x),
            chains: system.chains.clone(),
            x: all.x,
        };
        let mut out = report::route(ctx, &rounded, route.name.clone(), route.lower_bound);
        // An end with room is where the rounded pieces lead.
        let system = System::new(ctx, rounded.chains);
        for (chain, laid) in system.chains.iter().zip(system.lay(&rounded.x)) {
            if ctx.slides.end_of(chain.run).is_some()
                && ctx.is_end(chain)
                && let Some(ends) = out.ends.get_mut(chain.run)
            {
                ends.end = laid.end.origin;
                ends.end_direction = laid.end.frame().travel();
            }
        }
        self.best = Some((
            worst,
            Rounded {
                route: out,
                ends: all.ends,
                added_gap_mm,
            },
        ));
    }
}

/// The chains with a bought straight in each slot that has none, one after the other.
fn with_a_straight_put_in(ctx: &Context<'_>, start: &Solution) -> Vec<(Vec<Chain>, Vec<f64>)> {
    let system = System::new(ctx, start.chains.clone());
    let mut out = Vec::new();
    for (c, chain) in start.chains.iter().enumerate() {
        let first = system.offsets.get(c).copied().unwrap_or(0);
        for (i, slot) in chain.layout.slots.iter().enumerate() {
            if *slot == Slot::Bought {
                continue;
            }
            let mut chains = start.chains.clone();
            if let Some(s) = chains
                .get_mut(c)
                .and_then(|chain| chain.layout.slots.get_mut(i))
            {
                *s = Slot::Bought;
            }
            let mut x = start.x.clone();
            let opened = System::new(ctx, chains.clone());
            let least = opened.sizes.get(first + 3 * i).map_or(0.0, |s| s.lo);
            if let Some(value) = x.get_mut(first + 3 * i) {
                *value = value.max(least);
            }
            out.push((chains, x));
        }
    }
    out
}

/// At most 1 when an end is as good as a fitter can set it.
fn poorness(end: &EndError) -> f64 {
    (end.distance_mm / GOOD_MM).max(end.direction_rad / GOOD_RAD)
}

/// All chains in whole steps.
struct All {
    chains: Vec<Chain>,
    x: Vec<f64>,
    ends: Vec<EndError>,
    /// Overrun of the rules, mm.
    overrun: f64,
}

/// Rounds crossover places, then chain after chain, each judged among the others as they stand.
fn round_all(
    ctx: &Context<'_>,
    chains: &[Chain],
    base: &[f64],
    steps: ShopSteps,
    (closing, may_cut): (Option<ClosingPiece>, bool),
) -> Option<All> {
    let system = System::new(ctx, chains.to_vec());
    let whole = |v: f64| (v / steps.length_mm).round() * steps.length_mm;
    let mut poses = system.poses(base);
    // Ends with room are where the rounded pieces lead; a part that a run ends at or starts from stays where
    // it is, for such a run may have too few sizes to come to whole steps elsewhere.
    for (number, pose) in (0..ctx.problem.crossovers.len()).zip(&mut poses) {
        if ctx.problem.is_only_passed(number) {
            pose.shift = Vector::from_array(pose.shift.to_array().map(whole));
            if let Some(slide) = ctx.slides.all.get(number) {
                pose.turn = slide.in_steps(pose.turn, steps.clock_rad);
            }
        }
    }
    let mut all = All {
        chains: chains.to_vec(),
        x: base.to_vec(),
        ends: Vec::new(),
        overrun: 0.0,
    };
    for (slot, pose) in all
        .x
        .iter_mut()
        .skip(system.offsets.last().copied().unwrap_or(0))
        .zip(ctx.slides.sizes_at(&poses))
    {
        *slot = pose;
    }
    // Every chain closed on the rounded places first, so that later ones are judged among good ones.
    for (c, chain) in chains.iter().enumerate() {
        let own = System::new(ctx, vec![alone(ctx, chain, &poses)]);
        let mut from = system.chain_sizes(c, base).to_vec();
        if !close(&own, &mut from, 25) {
            return None;
        }
        put(&system, &mut all.x, c, &from);
    }
    for c in 0..chains.len() {
        let chosen = round_chain(ctx, &all, c, &poses, steps, (closing, may_cut))?;
        put(&system, &mut all.x, c, &chosen.way.x);
        all.ends.push(EndError {
            run: chosen.chain.run,
            is_end: ctx.is_end(&chosen.chain),
            distance_mm: chosen.way.distance_mm,
            direction_rad: chosen.way.direction_rad,
        });
        if let Some(slot) = all.chains.get_mut(c) {
            slot.layout = chosen.chain.layout;
        }
    }
    let system = System::new(ctx, all.chains.clone());
    all.overrun = overrun(&system, &all.x);
    Some(all)
}

fn put(system: &System<'_, '_>, x: &mut [f64], c: usize, own: &[f64]) {
    let first = system.offsets.get(c).copied().unwrap_or(0);
    for (slot, value) in x.iter_mut().skip(first).zip(own) {
        *slot = *value;
    }
}

fn alone(ctx: &Context<'_>, chain: &Chain, poses: &[Pose]) -> Chain {
    let (end, end_direction) = chain.target.at(&ctx.slides, poses);
    Chain {
        start: Anchor::Fixed(chain.start.at(&ctx.slides, poses)),
        target: Target::Fixed(end, end_direction),
        ..chain.clone()
    }
}

fn overrun(system: &System<'_, '_>, x: &[f64]) -> f64 {
    let laid = system.lay(x);
    system
        .rows(x, &laid, 0.0)
        .iter()
        .map(|r| -r.margin)
        .fold(0.0, f64::max)
}

/// A chain rounded.
struct Chosen {
    chain: Chain,
    way: Way,
    overrun: f64,
    cost: f64,
}

impl Chosen {
    fn poorness(&self) -> f64 {
        (self.way.distance_mm / GOOD_MM).max(self.way.direction_rad / GOOD_RAD)
    }

    /// What keeps the rules comes first, then what ends well by its cost, then the nearer end.
    fn is_better_than(&self, other: &Self) -> bool {
        let holds = |c: &Self| c.overrun <= HOLDS_MM;
        if holds(self) != holds(other) {
            return holds(self);
        }
        if !holds(self) {
            return self.overrun < other.overrun;
        }
        match (self.poorness() <= 1.0, other.poorness() <= 1.0) {
            (true, true) => self.cost < other.cost,
            (a, b) if a != b => a,
            _ => self.poorness() < other.poorness(),
        }
    }
}

/// The best way for chain `c`, with its layout as it is or, when that does not end well, with one
/// stock bend cut to another angle.
fn round_chain(
    ctx: &Context<'_>,
    all: &All,
    c: usize,
    poses: &[Pose],
    steps: ShopSteps,
    (closing, may_cut): (Option<ClosingPiece>, bool),
) -> Option<Chosen> {
    let mut best = round_layout(ctx, &all.chains, &all.x, c, poses, steps, closing);
    let is_good = |b: &Option<Chosen>| {
        b.as_ref()
            .is_some_and(|b| b.overrun <= HOLDS_MM && b.poorness() <= 1.0)
    };
    if is_good(&best) || !may_cut {
        return best;
    }
    for layout in with_a_bend_cut(ctx, all, c) {
        let mut chains = all.chains.clone();
        if let Some(chain) = chains.get_mut(c) {
            chain.layout = layout;
        }
        let tried = round_layout(ctx, &chains, &all.x, c, poses, steps, closing);
        if let Some(tried) = tried
            && best.as_ref().is_none_or(|b| tried.is_better_than(b))
        {
            best = Some(tried);
        }
    }
    best
}

/// The layout of chain `c` with each of its whole stock bends cut to angle in turn.
fn with_a_bend_cut(ctx: &Context<'_>, all: &All, c: usize) -> Vec<super::layout::Layout> {
    let Some(chain) = all.chains.get(c) else {
        return Vec::new();
    };
    let Some(tube) = tube_of(ctx.problem, chain.run) else {
        return Vec::new();
    };
    let system = System::new(ctx, all.chains.clone());
    let x = system.chain_sizes(c, &all.x);
    let mut out = Vec::new();
    for (i, joint) in chain.layout.joints.iter().enumerate() {
        let Joint::Bend { stock, exact: true } = *joint else {
            continue;
        };
        let mut layout = chain.layout.clone();
        if let Some(j) = layout.joints.get_mut(i) {
            *j = Joint::Bend {
                stock,
                exact: false,
            };
        }
        // Its leg behind the arc is cut off: what was a leg must be bought.
        for slot in [i, i + 1] {
            let length = x.get(3 * slot).copied().unwrap_or(0.0);
            let kind = if length > 1e-9 {
                layout.slot_for(slot, length, ctx.problem, tube, ctx.cost)
            } else {
                Slot::Absent
            };
            if let Some(s) = layout.slots.get_mut(slot) {
                *s = kind;
            }
        }
        out.push(layout);
    }
    out
}

fn round_layout(
    ctx: &Context<'_>,
    chains: &[Chain],
    x: &[f64],
    c: usize,
    poses: &[Pose],
    steps: ShopSteps,
    closing: Option<ClosingPiece>,
) -> Option<Chosen> {
    let system = System::new(ctx, chains.to_vec());
    let chain = chains.get(c)?;
    let tube = tube_of(ctx.problem, chain.run)?;
    let own = System::new(ctx, vec![alone(ctx, chain, poses)]);
    // A stock bend is bent to its stock angle, not to where the tolerance let it be; the rest closes
    // on it again.
    let mut base = system.chain_sizes(c, x).to_vec();
    for (i, joint) in chain.layout.joints.iter().enumerate() {
        if let Joint::Bend { stock, exact: true } = *joint
            && let Some(s) = tube.stock.get(stock)
            && let Some(slot) = base.get_mut(3 * i + 1)
        {
            *slot = s.angle_rad;
        }
    }
    let fine = closing
        .filter(|f| f.run == chain.run)
        .and_then(|f| Some((fine_joint(chain, chains, c, f.piece, &base)?, f.steps)));
    let (end, direction) = chain.target.at(&ctx.slides, poses);
    let lattice = Lattice {
        layout: &chain.layout,
        components: &ctx.problem.components,
        ranges: &own.sizes,
        clr_mm: tube.clr_mm,
        start: chain.start.at(&ctx.slides, poses),
        end,
        direction,
        room: ctx
            .is_end(chain)
            .then(|| ctx.slides.end_of(chain.run))
            .flatten()
            .and_then(|number| ctx.slides.all.get(number)),
        steps,
        fine,
    };
    let ways = lattice.ways(&base);
    // What the ways would do to the rules by first-order change says which are judged first.
    let laid = own.lay(&base);
    let rows = own.rows(&base, &laid, SIGHT_MM);
    let mut order: Vec<(bool, usize)> = ways
        .iter()
        .enumerate()
        .map(|(k, way)| (foreseen(&rows, &base, &way.x) > HOPEFUL_MM, k))
        .collect();
    order.sort_unstable();
    let mut best: Option<Chosen> = None;
    let mut whole = x.to_vec();
    for (_, k) in order.into_iter().take(JUDGED) {
        let Some(way) = ways.get(k) else { continue };
        put(&system, &mut whole, c, &way.x);
        let tried = Chosen {
            chain: chain.clone(),
            way: way.clone(),
            overrun: overrun(&system, &whole),
            cost: system.full_cost(&whole),
        };
        let is_good = tried.overrun <= HOLDS_MM && tried.poorness() <= 1.0;
        if best.as_ref().is_none_or(|b| tried.is_better_than(b)) {
            best = Some(tried);
        }
        // The ways come best first.
        if is_good {
            break;
        }
    }
    best
}

/// Rules with more than this to spare are not looked at when ways are ordered, mm.
const SIGHT_MM: f64 = 40.0;

/// The largest overrun by first-order change.
fn foreseen(rows: &[Row], from: &[f64], to: &[f64]) -> f64 {
    rows.iter()
        .map(|row| {
            let change: f64 = row
                .gradient
                .iter()
                .zip(from.iter().zip(to))
                .map(|(g, (a, b))| g * (b - a))
                .sum();
            -(row.margin + change)
        })
        .fold(0.0, f64::max)
}
