//! From the pieces of a route back to chains and sizes.

use super::super::chain::Stance;
use super::super::improve::Solution;
use super::super::layout::{Joint, Layout, Slot, stock_for};
use super::super::slides::Pose;
use super::super::system::{Anchor, Chain, Context, System, Target, tube_of};
use super::RoundError;
use crate::problem::Passage;
use crate::route::{Piece, Route};

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
        let mut start = match r.starts_at {
            Some(_) => ctx.start_anchor(run),
            None => Anchor::Fixed(Stance::of(&r.start)),
        };
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
                (
                    Target::inlet(crossover, &ports),
                    Anchor::outlet(crossover, &ports),
                )
            } else {
                (ctx.end_target(run), start)
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
    let mut poses = ctx.slides.as_wished(problem);
    for (pose, part) in poses.iter_mut().zip(&route.crossovers) {
        *pose = Pose::of_part(part);
    }
    for (run, ends) in route.ends.iter().enumerate() {
        if let Some(number) = ctx.slides.end_of(run)
            && let (Some(slide), Some(pose)) = (ctx.slides.all.get(number), poses.get_mut(number))
        {
            *pose = slide.end_at(ends.end, ends.end_direction.vector());
        }
    }
    x.extend(ctx.slides.sizes_at(&poses));
    let system = System::new(ctx, chains);
    Ok(Solution {
        cost: system.full_cost(&x),
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

/// Sizes of the closing piece in its chain: `(first, last)` index into the sizes.
pub(super) fn fine_joint(
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
