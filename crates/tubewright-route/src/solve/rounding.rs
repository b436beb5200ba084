//! Sizes to the shop's steps. Each size may go to the step below, the nearest or the one above; of
//! all these ways the one is taken that brings the end nearest to where it belongs (a closest vector
//! problem in five dimensions, solved by meeting in the middle), and every rule is verified anew.

use tubewright_geometry::{Vector, math};

use super::descend::{Effort, HOLDS_MM, descend};
use super::improve::Solution;
use super::layout::{Joint, Layout, Slot, stock_for};
use super::report;
use super::system::{Anchor, Chain, Context, System, Target, tube_of};
use crate::cost::CostModel;
use crate::problem::{Passage, RouteProblem};
use crate::route::{Piece, Route};

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
    /// True for the end of the run, false for the inlet of its crossover.
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
/// Ways of rounding held for each half of a chain.
const HALF_WAYS: usize = 6000;
/// Ways looked at exactly, nearest first.
const EXACT_WAYS: usize = 500;

/// Rounds a route to the shop's steps, re-closes it as well as the steps allow and verifies the gaps.
///
/// What remains of the end error is reported; whether it is small enough is the caller's to judge.
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
    let ctx = Context::new(problem, cost);
    let start = solution_of(&ctx, route)?;
    let mut least = f64::INFINITY;
    let mut best: Option<(f64, Rounded)> = None;
    for added_gap_mm in ADDED_GAPS_MM {
        let mut roomy = problem.clone();
        for body in &mut roomy.bodies {
            body.gap_mm += added_gap_mm;
        }
        for zone in roomy.components.iter_mut().filter_map(|c| c.zone.as_mut()) {
            let size = zone.max - zone.min;
            let shrink = size.to_array().map(|s| added_gap_mm.min(0.3 * s.max(0.0)));
            zone.min += Vector::from_array(shrink);
            zone.max = zone.max - Vector::from_array(shrink);
        }
        let wide = Context::new(&roomy, cost);
        let base = if added_gap_mm > 0.0 {
            let system = System::new(&wide, start.chains.clone());
            let landing = descend(
                &system,
                &start.x,
                Effort {
                    steps: 40,
                    pull: 0.2,
                },
            );
            if !landing.overrun.is_finite() {
                continue;
            }
            landing.x
        } else {
            start.x.clone()
        };
        let Some((x, ends, overrun)) = round_all(&ctx, &start.chains, &base, steps, closing) else {
            continue;
        };
        least = least.min(overrun);
        if overrun > HOLDS_MM {
            continue;
        }
        let system = System::new(&ctx, start.chains.clone());
        let rounded = Solution {
            cost: system.cost(&x),
            chains: system.chains.clone(),
            x,
        };
        let out = report::route(&ctx, &rounded, route.name.clone(), route.lower_bound);
        let worst = ends
            .iter()
            .map(|e| e.distance_mm + e.direction_rad * 300.0)
            .fold(0.0, f64::max);
        // A little more room often leaves more ways and a smaller error at the end.
        if best.as_ref().is_none_or(|(w, _)| worst < 0.7 * *w) {
            best = Some((
                worst,
                Rounded {
                    route: out,
                    ends,
                    added_gap_mm,
                },
            ));
        }
        if worst < 1.5 {
            break;
        }
    }
    best.map(|(_, r)| r)
        .ok_or_else(|| RoundError::NothingKeepsTheGaps {
            overrun_mm: least,
            tightest: route
                .tightest
                .as_ref()
                .map_or_else(|| "nothing".to_owned(), |t| t.body.clone()),
        })
}

/// Chains and sizes of a route of this problem.
pub(crate) fn solution_of(ctx: &Context<'_>, route: &Route) -> Result<Solution, RoundError> {
    let problem = ctx.problem;
    if route.runs.len() != problem.runs.len() || route.crossovers.len() != problem.crossovers.len()
    {
        return Err(RoundError::NotOfThisProblem(
            "other numbers of runs or crossovers",
        ));
    }
    let mut chains = Vec::new();
    let mut x = Vec::new();
    for (run, (r, pieces)) in problem.runs.iter().zip(&route.runs).enumerate() {
        let mut start = Anchor::Fixed(super::chain::Stance::of(&r.start));
        let mut parts = pieces
            .split(|p| matches!(p, Piece::Crossover { .. }))
            .peekable();
        while let Some(part) = parts.next() {
            let ports = r.passage.and_then(|Passage { crossover, side }| {
                problem
                    .crossovers
                    .get(crossover)
                    .map(|c| (crossover, *c.ports(side)))
            });
            let (target, next) = if parts.peek().is_some() {
                let Some((crossover, ports)) = ports else {
                    return Err(RoundError::NotOfThisProblem(
                        "a crossover in a run without one",
                    ));
                };
                let outlet = super::chain::Stance::upright(
                    tubewright_geometry::Point::ORIGIN + ports.outlet,
                    ports.outlet_direction,
                );
                (
                    Target::Port(crossover, ports.inlet, ports.inlet_direction),
                    Anchor::Port(crossover, outlet),
                )
            } else {
                (Target::Fixed(r.end, r.end_direction), start)
            };
            let (layout, sizes) = read_pieces(ctx, run, part)?;
            chains.push(Chain {
                run,
                start,
                target,
                layout,
            });
            x.extend(sizes);
            start = next;
        }
    }
    for place in &route.crossovers {
        x.extend(place.to_array());
    }
    let system = System::new(ctx, chains);
    Ok(Solution {
        cost: system.cost(&x),
        chains: system.chains,
        x,
    })
}

fn read_pieces(
    ctx: &Context<'_>,
    run: usize,
    pieces: &[Piece],
) -> Result<(Layout, Vec<f64>), RoundError> {
    let tube = tube_of(ctx.problem, run).ok_or(RoundError::NotOfThisProblem("no tube"))?;
    let uncut = ctx.problem.rules.uncut_tolerance_rad.max(1e-9);
    let mut joints = Vec::new();
    let mut lengths = vec![0.0];
    let mut angles = Vec::new();
    for piece in pieces {
        match *piece {
            Piece::Straight { length_mm } => {
                if let Some(last) = lengths.last_mut() {
                    *last += length_mm;
                }
            }
            Piece::Bend {
                angle_rad,
                clock_rad,
            } => {
                let (stock, exact) = stock_for(tube, angle_rad, uncut);
                joints.push(Joint::Bend { stock, exact });
                angles.push((angle_rad, clock_rad));
                lengths.push(0.0);
            }
            Piece::Component {
                component,
                roll_rad,
            } => {
                joints.push(Joint::Component(component));
                angles.push((0.0, roll_rad));
                lengths.push(0.0);
            }
            Piece::Crossover { .. } => {}
        }
    }
    let mut layout = Layout {
        slots: vec![Slot::Absent; joints.len() + 1],
        joints,
    };
    let mut x = Vec::new();
    for (i, length) in lengths.iter().enumerate() {
        let slot = if *length > 1e-9 {
            match layout.slot_for(i, *length, ctx.problem, tube, ctx.cost) {
                Slot::Absent => Slot::Bought,
                slot => slot,
            }
        } else {
            Slot::Absent
        };
        if let Some(s) = layout.slots.get_mut(i) {
            *s = slot;
        }
        x.push(*length);
        if let Some((angle, clock)) = angles.get(i) {
            x.extend([*angle, *clock]);
        }
    }
    Ok((layout, x))
}

/// Rounds crossover places, then each chain; sizes, end errors and the overrun of the rules.
fn round_all(
    ctx: &Context<'_>,
    chains: &[Chain],
    base: &[f64],
    steps: ShopSteps,
    closing: Option<ClosingPiece>,
) -> Option<(Vec<f64>, Vec<EndError>, f64)> {
    let system = System::new(ctx, chains.to_vec());
    let poses: Vec<Vector> = (0..ctx.problem.crossovers.len())
        .map(|k| {
            let p = system.pose(k, base).to_array();
            Vector::from_array(p.map(|v| (v / steps.length_mm).round() * steps.length_mm))
        })
        .collect();
    let mut x = Vec::new();
    let mut ends = Vec::new();
    for (c, chain) in chains.iter().enumerate() {
        let (end, end_direction) = chain.target.at(&poses);
        let alone = Chain {
            start: Anchor::Fixed(chain.start.at(&poses)),
            target: Target::Fixed(end, end_direction),
            ..chain.clone()
        };
        let own = System::new(ctx, vec![alone]);
        let mut from = system.chain_sizes(c, base).to_vec();
        if !super::descend::close(&own, &mut from, 25) {
            return None;
        }
        let fine = closing
            .filter(|f| f.run == chain.run)
            .and_then(|f| Some((fine_joint(chain, chains, c, f.piece, &from)?, f.steps)));
        let (sizes, error) = round_chain(&own, chain, &from, steps, fine)?;
        x.extend(sizes);
        ends.push(EndError {
            run: chain.run,
            is_end: matches!(chain.target, Target::Fixed(..)),
            distance_mm: error.0,
            direction_rad: error.1,
        });
    }
    for pose in &poses {
        x.extend(pose.to_array());
    }
    let laid = system.lay(&x);
    let overrun = system
        .rows(&x, &laid, 0.0)
        .iter()
        .map(|r| -r.margin)
        .fold(0.0, f64::max);
    Some((x, ends, overrun))
}

/// Sizes of the closing piece in its chain: `(first, last)` index into the sizes.
fn fine_joint(
    chain: &Chain,
    chains: &[Chain],
    c: usize,
    piece: usize,
    x: &[f64],
) -> Option<(usize, usize)> {
    // Pieces of an earlier chain of the same run, and its crossover, come first.
    let mut number = 0;
    for other in chains.iter().take(c).filter(|o| o.run == chain.run) {
        number += other.layout.joints.len()
            + other
                .layout
                .slots
                .iter()
                .filter(|s| **s != Slot::Absent)
                .count()
            + 1;
    }
    for (i, slot) in chain.layout.slots.iter().enumerate() {
        let length = x.get(3 * i).copied().unwrap_or(0.0);
        if *slot != Slot::Absent && length > 1e-9 {
            if number == piece {
                return Some((3 * i, 3 * i));
            }
            number += 1;
        }
        if i < chain.layout.joints.len() {
            if number == piece {
                return Some((3 * i + 1, 3 * i + 2));
            }
            number += 1;
        }
    }
    None
}

/// A way of rounding that was looked at exactly.
struct Way {
    keeps: bool,
    measure: f64,
    x: Vec<f64>,
    error: (f64, f64),
}

/// One chain: candidates for each size, the two halves' ways, the nearest sums, exact check.
fn round_chain(
    system: &System<'_, '_>,
    chain: &Chain,
    x: &[f64],
    steps: ShopSteps,
    fine: Option<((usize, usize), ShopSteps)>,
) -> Option<(Vec<f64>, (f64, f64))> {
    let laid = system.lay(x);
    let rows = system.closure_rows(&laid);
    let column = |j: usize| -> [f64; 5] {
        core::array::from_fn(|k| rows.get(k).and_then(|r| r.get(j)).copied().unwrap_or(0.0))
    };
    // Sizes that may be rounded more than one way, with their choices.
    let mut choices: Vec<(usize, Vec<f64>)> = Vec::new();
    for (j, (value, size)) in x.iter().zip(&system.sizes).enumerate() {
        let is_bend = matches!(chain.layout.joints.get(j / 3), Some(Joint::Bend { .. }));
        let exact = matches!(
            chain.layout.joints.get(j / 3),
            Some(Joint::Bend { exact: true, .. })
        );
        let own = match fine {
            Some(((a, b), s)) if (a..=b).contains(&j) => s,
            _ => steps,
        };
        let step = match j % 3 {
            0 if size.is_free() => own.length_mm,
            1 if is_bend && !exact => own.angle_rad,
            2 if is_bend => own.clock_rad,
            _ => continue,
        };
        let nearest = (value / step).round();
        let mut list: Vec<f64> = [0.0, -1.0, 1.0, -2.0, 2.0]
            .into_iter()
            .map(|k| (nearest + k) * step)
            .filter(|v| *v >= size.lo - 1e-9 && *v <= size.hi + 1e-9)
            .collect();
        if list.is_empty() {
            list.push(*value);
        }
        list.sort_by(|a, b| (a - value).abs().total_cmp(&(b - value).abs()));
        choices.push((j, list));
    }
    // A stock bend is bent to its stock angle, not to where the tolerance let it be.
    let mut base = x.to_vec();
    for (i, joint) in chain.layout.joints.iter().enumerate() {
        if let Joint::Bend { stock, exact: true } = *joint
            && let Some(s) = tube_of(system.ctx.problem, chain.run).and_then(|t| t.stock.get(stock))
            && let Some(slot) = base.get_mut(3 * i + 1)
        {
            *slot = s.angle_rad;
        }
    }
    let mut offset = [0.0; 5];
    for (j, (b, v)) in base.iter().zip(x).enumerate() {
        let col = column(j);
        for (o, c) in offset.iter_mut().zip(col) {
            *o += c * (b - v);
        }
    }
    let middle = choices.len() / 2;
    let (left, right) = choices.split_at(middle);
    let left = ways(left, x, &column);
    let mut right = ways(right, x, &column);
    right.sort_by(|a, b| a.0[0].total_cmp(&b.0[0]));
    let mut kept: Vec<(f64, usize, usize)> = Vec::new();
    for (l, (sum, _)) in left.iter().enumerate() {
        let want: [f64; 5] = core::array::from_fn(|k| -offset[k] - sum[k]);
        let worst = if kept.len() < EXACT_WAYS {
            1e6
        } else {
            kept.last().map_or(1e6, |k| k.0)
        };
        let window = worst.sqrt();
        let from = right.partition_point(|r| r.0[0] < want[0] - window);
        for (r, (other, _)) in right.iter().enumerate().skip(from) {
            if other[0] > want[0] + window {
                break;
            }
            let error: f64 = other.iter().zip(want).map(|(o, w)| (o - w) * (o - w)).sum();
            let worst = if kept.len() < EXACT_WAYS {
                f64::INFINITY
            } else {
                kept.last().map_or(f64::INFINITY, |k| k.0)
            };
            if error < worst {
                let at = kept.partition_point(|k| k.0 <= error);
                kept.insert(at, (error, l, r));
                kept.truncate(EXACT_WAYS);
            }
        }
    }
    let mut best: Option<Way> = None;
    for (_, l, r) in kept {
        let mut tried = base.clone();
        let picks = [left.get(l), right.get(r)];
        for (j, value) in picks.into_iter().flatten().flat_map(|(_, p)| p.iter()) {
            if let Some(slot) = tried.get_mut(*j) {
                *slot = *value;
            }
        }
        let laid = system.lay(&tried);
        let residual = system.residual(&tried, &laid);
        let distance = math::hypot(
            math::hypot(
                residual.first().copied().unwrap_or(0.0),
                residual.get(1).copied().unwrap_or(0.0),
            ),
            residual.get(2).copied().unwrap_or(0.0),
        );
        let (_, direction) = match chain.target {
            Target::Fixed(p, d) => (p, d),
            Target::Port(_, _, d) => (tubewright_geometry::Point::ORIGIN, d),
        };
        let travel = laid.first().map_or(direction.vector(), |l| l.end.travel);
        let turned = math::atan2(
            travel.cross(direction.vector()).norm(),
            direction.dot(travel),
        );
        let overrun = system
            .rows(&tried, &laid, 0.0)
            .iter()
            .map(|r| -r.margin)
            .fold(0.0, f64::max);
        let keeps = overrun <= HOLDS_MM;
        let measure = if keeps {
            distance + 300.0 * turned
        } else {
            overrun
        };
        let is_better = best
            .as_ref()
            .is_none_or(|b| (keeps && !b.keeps) || (keeps == b.keeps && measure < b.measure));
        if is_better {
            best = Some(Way {
                keeps,
                measure,
                x: tried,
                error: (distance, turned),
            });
        }
    }
    best.map(|b| (b.x, b.error))
}

/// Sums and picks of the ways to round some sizes, at most [`HALF_WAYS`]: sizes get fewer choices
/// when there are many.
#[expect(clippy::type_complexity, reason = "sum and picks, private")]
fn ways(
    choices: &[(usize, Vec<f64>)],
    x: &[f64],
    column: &impl Fn(usize) -> [f64; 5],
) -> Vec<([f64; 5], Vec<(usize, f64)>)> {
    let mut counts: Vec<usize> = choices.iter().map(|_| 1).collect();
    // Give every size one more choice in turn as long as the ways are few enough.
    'grow: for more in 2..=5 {
        for (i, (_, list)) in choices.iter().enumerate() {
            if list.len() < more {
                continue;
            }
            let total: usize = counts
                .iter()
                .enumerate()
                .map(|(k, c)| if k == i { more } else { *c })
                .product();
            if total > HALF_WAYS {
                break 'grow;
            }
            if let Some(c) = counts.get_mut(i) {
                *c = more;
            }
        }
    }
    let mut out = vec![([0.0; 5], Vec::new())];
    for ((j, list), count) in choices.iter().zip(counts) {
        let col = column(*j);
        let was = x.get(*j).copied().unwrap_or(0.0);
        let mut next = Vec::with_capacity(out.len() * count);
        for (sum, picks) in &out {
            for value in list.iter().take(count) {
                let sum: [f64; 5] = core::array::from_fn(|k| sum[k] + col[k] * (value - was));
                let mut picks: Vec<(usize, f64)> = picks.clone();
                picks.push((*j, *value));
                next.push((sum, picks));
            }
        }
        out = next;
    }
    out
}
