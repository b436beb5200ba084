//! Chains that are solved together: one for a plain run, two a run where a crossover is passed, with
//! the crossovers' places as further sizes.

use tubewright_geometry::distance::clearance_between;
use tubewright_geometry::{CentreLine, Point, TubeElement, UnitVector, Vector, math};

use super::chain::{Element, Laid, Part, Stance, lay};
use super::descend::HOLDS_MM;
use super::layout::{Layout, Size};
use super::room::{Contact, Room};
use crate::cost::CostModel;
use crate::problem::{RouteProblem, Tube};

/// A problem with what is prepared once for it.
pub(crate) struct Context<'p> {
    pub(crate) problem: &'p RouteProblem,
    pub(crate) cost: &'p CostModel,
    pub(crate) room: Room,
}

impl<'p> Context<'p> {
    pub(crate) fn new(problem: &'p RouteProblem, cost: &'p CostModel) -> Self {
        Self {
            problem,
            cost,
            room: Room::new(problem),
        }
    }
}

/// Where a chain starts.
#[derive(Clone, Copy, Debug)]
pub(crate) enum Anchor {
    Fixed(Stance),
    /// At a port of a crossover; the stance is in the crossover's coordinates.
    Port(usize, Stance),
}

impl Anchor {
    /// The same with crossovers at the given places.
    pub(crate) fn at(self, poses: &[Vector]) -> Stance {
        match self {
            Self::Fixed(stance) => stance,
            Self::Port(crossover, local) => Stance {
                origin: local.origin + poses.get(crossover).copied().unwrap_or(Vector::ZERO),
                ..local
            },
        }
    }
}

impl Target {
    /// The same with crossovers at the given places.
    pub(crate) fn at(self, poses: &[Vector]) -> (Point, UnitVector) {
        match self {
            Self::Fixed(point, direction) => (point, direction),
            Self::Port(crossover, local, direction) => (
                Point::ORIGIN + local + poses.get(crossover).copied().unwrap_or(Vector::ZERO),
                direction,
            ),
        }
    }
}

/// Where a chain must arrive.
#[derive(Clone, Copy, Debug)]
pub(crate) enum Target {
    Fixed(Point, UnitVector),
    /// At a port of a crossover, in the crossover's coordinates.
    Port(usize, Vector, UnitVector),
}

/// One chain.
#[derive(Clone, Debug)]
pub(crate) struct Chain {
    pub(crate) run: usize,
    pub(crate) start: Anchor,
    pub(crate) target: Target,
    pub(crate) layout: Layout,
}

impl Chain {
    /// Whether it is the one that begins where its run does; one that is held at a crossover's outlet
    /// is not.
    pub(super) fn start_is_of(&self, run: &crate::problem::Run) -> bool {
        match self.start {
            Anchor::Fixed(stance) => stance.origin.distance(run.start.origin) < 1e-6,
            Anchor::Port(..) => false,
        }
    }
}

/// Chains with their sizes in one row, crossover places behind.
pub(crate) struct System<'c, 'p> {
    pub(crate) ctx: &'c Context<'p>,
    pub(crate) chains: Vec<Chain>,
    /// First size of each chain; the last entry is where crossover places start.
    pub(crate) offsets: Vec<usize>,
    pub(crate) sizes: Vec<Size>,
    pub(crate) fixed_cost: f64,
    /// Whether crossovers are part of it.
    hangs: bool,
}

/// A linearised hard rule: `margin + gradient · change >= 0`.
#[derive(Clone, Debug)]
pub(crate) struct Row {
    pub(crate) margin: f64,
    pub(crate) gradient: Vec<f64>,
    /// Groups rows of one violation: only the worst of a group counts in the merit.
    pub(crate) group: u64,
}

/// Direction errors are weighed like mm at this lever.
const DIRECTION_LEVER_MM: f64 = 300.0;

impl<'c, 'p> System<'c, 'p> {
    pub(crate) fn new(ctx: &'c Context<'p>, chains: Vec<Chain>) -> Self {
        let mut offsets = Vec::with_capacity(chains.len() + 1);
        let mut sizes = Vec::new();
        let mut fixed_cost = 0.0;
        for chain in &chains {
            offsets.push(sizes.len());
            if let Some(tube) = tube_of(ctx.problem, chain.run) {
                sizes.extend(chain.layout.ranges(ctx.problem, tube, ctx.cost));
                fixed_cost += chain.layout.fixed_cost(tube, ctx.cost);
            }
        }
        offsets.push(sizes.len());
        // One weld more than pieces in every run; a crossover is a piece too.
        let mut runs: Vec<usize> = chains.iter().map(|c| c.run).collect();
        runs.sort_unstable();
        runs.dedup();
        for run in runs {
            let passes = ctx
                .problem
                .runs
                .get(run)
                .is_some_and(|r| r.passage.is_some());
            fixed_cost += ctx.cost.weld * if passes { 2.0 } else { 1.0 };
        }
        // Chains whose ends are held know nothing of crossovers.
        let hangs = chains
            .iter()
            .any(|c| matches!(c.start, Anchor::Port(..)) || matches!(c.target, Target::Port(..)));
        for crossover in ctx.problem.crossovers.iter().filter(|_| hangs) {
            let (lo, hi) = (
                crossover.poses.min.to_array(),
                crossover.poses.max.to_array(),
            );
            sizes.extend(lo.into_iter().zip(hi).map(|(lo, hi)| Size {
                lo,
                hi,
                price: 0.0,
                lever: 1.0,
            }));
        }
        Self {
            ctx,
            chains,
            offsets,
            sizes,
            fixed_cost,
            hangs,
        }
    }

    pub(crate) fn cost(&self, x: &[f64]) -> f64 {
        self.fixed_cost
            + x.iter()
                .zip(&self.sizes)
                .map(|(x, s)| x * s.price)
                .sum::<f64>()
    }

    /// The cost with what is lost of the ground clearance.
    pub(crate) fn full_cost(&self, x: &[f64]) -> f64 {
        let lost = if self.ctx.cost.ground.is_some() {
            self.lost_ground(&self.lay(x)).0
        } else {
            0.0
        };
        self.cost(x) + lost
    }

    pub(crate) fn pose(&self, crossover: usize, x: &[f64]) -> Vector {
        let first = self.pose_index(crossover);
        let at = |k: usize| x.get(first + k).copied().unwrap_or(0.0);
        Vector::new(at(0), at(1), at(2))
    }

    fn pose_index(&self, crossover: usize) -> usize {
        self.offsets.last().copied().unwrap_or(0) + 3 * crossover
    }

    pub(crate) fn chain_sizes<'x>(&self, chain: usize, x: &'x [f64]) -> &'x [f64] {
        match (self.offsets.get(chain), self.offsets.get(chain + 1)) {
            (Some(&a), Some(&b)) => x.get(a..b).unwrap_or(&[]),
            _ => &[],
        }
    }

    pub(crate) fn lay(&self, x: &[f64]) -> Vec<Laid> {
        self.chains
            .iter()
            .enumerate()
            .map(|(c, chain)| {
                let start = match chain.start {
                    Anchor::Fixed(stance) => stance,
                    Anchor::Port(crossover, local) => Stance {
                        origin: local.origin + self.pose(crossover, x),
                        ..local
                    },
                };
                let (radius, clr) = tube_of(self.ctx.problem, chain.run)
                    .map_or((0.0, 1.0), |t| (t.od_mm / 2.0, t.clr_mm));
                lay(
                    self.ctx.problem,
                    &chain.layout,
                    start,
                    radius,
                    clr,
                    self.chain_sizes(c, x),
                )
            })
            .collect()
    }

    fn target(&self, chain: &Chain, x: &[f64]) -> (Point, UnitVector) {
        match chain.target {
            Target::Fixed(point, direction) => (point, direction),
            Target::Port(crossover, local, direction) => {
                (Point::ORIGIN + local + self.pose(crossover, x), direction)
            }
        }
    }

    /// Closure errors: five a chain (three of place, two of direction times a lever), in mm.
    pub(crate) fn residual(&self, x: &[f64], laid: &[Laid]) -> Vec<f64> {
        let mut out = Vec::with_capacity(5 * laid.len());
        for (chain, laid) in self.chains.iter().zip(laid) {
            let (point, direction) = self.target(chain, x);
            let off = laid.end.origin - point;
            let u = direction.any_normal();
            let v = direction.vector().cross(u.vector());
            // Past a quarter turn the sine would point the wrong way.
            let travel = laid.end.travel;
            let mut side = [u.dot(travel), v.dot(travel)];
            if direction.dot(travel) < 0.0 {
                let norm = (side[0] * side[0] + side[1] * side[1]).sqrt().max(1e-9);
                let grown = (2.0 - norm) / norm;
                side = side.map(|s| s * grown);
            }
            out.extend([off.x, off.y, off.z]);
            out.extend(side.map(|s| s * DIRECTION_LEVER_MM));
        }
        out
    }

    /// Rows of the closure's derivative, over all sizes.
    pub(crate) fn closure_rows(&self, laid: &[Laid]) -> Vec<Vec<f64>> {
        let n = self.sizes.len();
        let mut rows = Vec::with_capacity(5 * laid.len());
        for (c, (chain, laid)) in self.chains.iter().zip(laid).enumerate() {
            let mut block = vec![vec![0.0; n]; 5];
            let first = self.offsets.get(c).copied().unwrap_or(0);
            let direction = match chain.target {
                Target::Fixed(_, d) | Target::Port(_, _, d) => d,
            };
            let u = direction.any_normal();
            let v = direction.vector().cross(u.vector());
            for (j, screw) in laid.screws.iter().enumerate() {
                let moved = screw.at(laid.end.origin).to_array();
                let turned = screw.turns.cross(laid.end.travel);
                let sides = [u.dot(turned), v.dot(turned)].map(|s| s * DIRECTION_LEVER_MM);
                for (row, value) in block.iter_mut().zip(moved.into_iter().chain(sides)) {
                    if let Some(slot) = row.get_mut(first + j) {
                        *slot = value;
                    }
                }
            }
            if let Anchor::Port(crossover, _) = chain.start {
                self.add_pose(&mut block, crossover, 1.0);
            }
            if let Target::Port(crossover, _, _) = chain.target {
                self.add_pose(&mut block, crossover, -1.0);
            }
            rows.append(&mut block);
        }
        rows
    }

    fn add_pose(&self, block: &mut [Vec<f64>], crossover: usize, sign: f64) {
        let first = self.pose_index(crossover);
        for (k, row) in block.iter_mut().take(3).enumerate() {
            if let Some(slot) = row.get_mut(first + k) {
                *slot += sign;
            }
        }
    }

    /// Adds `weight · (velocity of the place with each size)` to `gradient`.
    pub(super) fn add_gradient(
        &self,
        gradient: &mut [f64],
        (c, laid): (usize, &Laid),
        element: &Element,
        share: f64,
        place: Point,
        weight: Vector,
    ) {
        let first = self.offsets.get(c).copied().unwrap_or(0);
        let own = 3 * element.index + usize::from(!element.is_slot);
        for (j, screw) in laid.screws.iter().enumerate() {
            let factor = if j < own {
                1.0
            } else if element.is_slot {
                // The far end of a straight moves with its own length.
                if j == own { share } else { break }
            } else if j == own {
                match element.tube.line {
                    CentreLine::Arc { .. } => share,
                    _ => 0.0,
                }
            } else if j == own + 1 && element.part == Part::Tube {
                1.0
            } else {
                break;
            };
            if let Some(slot) = gradient.get_mut(first + j) {
                *slot += factor * weight.dot(screw.at(place));
            }
        }
        if let Some(Chain {
            start: Anchor::Port(crossover, _),
            ..
        }) = self.chains.get(c)
        {
            self.add_pose_gradient(gradient, *crossover, weight);
        }
    }

    fn add_pose_gradient(&self, gradient: &mut [f64], crossover: usize, weight: Vector) {
        let first = self.pose_index(crossover);
        for (k, w) in weight.to_array().into_iter().enumerate() {
            if let Some(slot) = gradient.get_mut(first + k) {
                *slot += w;
            }
        }
    }

    /// All hard rules but closure and ranges that have less than `limit` mm to spare.
    pub(crate) fn rows(&self, x: &[f64], laid: &[Laid], limit: f64) -> Vec<Row> {
        let n = self.sizes.len();
        let mut rows = Vec::new();
        let mut contacts: Vec<Contact> = Vec::new();
        for (c, chain) in laid.iter().enumerate() {
            for (e, element) in chain.elements.iter().enumerate() {
                contacts.clear();
                self.contacts(c, element, limit, &mut contacts);
                for contact in &contacts {
                    let mut gradient = vec![0.0; n];
                    self.add_gradient(
                        &mut gradient,
                        (c, chain),
                        element,
                        contact.share,
                        contact.place,
                        contact.away,
                    );
                    rows.push(Row {
                        margin: contact.margin,
                        gradient,
                        group: group(1 + c, e, contact.body),
                    });
                }
            }
            self.zone_rows(c, chain, &mut rows);
        }
        self.pair_rows(laid, limit, &mut rows);
        if self.hangs {
            self.crossover_rows(x, laid, limit, &mut rows);
        }
        rows
    }

    fn zone_rows(&self, c: usize, laid: &Laid, rows: &mut Vec<Row>) {
        for &(joint, component, from, to) in &laid.components {
            let Some(zone) = self
                .ctx
                .problem
                .components
                .get(component)
                .and_then(|k| k.zone)
            else {
                continue;
            };
            let Some(element) = laid
                .elements
                .iter()
                .find(|e| !e.is_slot && e.index == joint && e.part == Part::Tube)
            else {
                continue;
            };
            for place in [from, to] {
                for axis in [UnitVector::X, UnitVector::Y, UnitVector::Z] {
                    let at = axis.dot(place.to_vector());
                    let (lo, hi) = (
                        axis.dot(zone.min.to_vector()),
                        axis.dot(zone.max.to_vector()),
                    );
                    // Inside by more than an overrun that still counts as kept.
                    let within = (2.0 * HOLDS_MM).min(0.25 * (hi - lo));
                    for (sign, limit) in [(1.0, lo + within), (-1.0, hi - within)] {
                        let mut gradient = vec![0.0; self.sizes.len()];
                        self.add_gradient(
                            &mut gradient,
                            (c, laid),
                            element,
                            0.0,
                            place,
                            axis * sign,
                        );
                        rows.push(Row {
                            margin: sign * (at - limit),
                            gradient,
                            group: group(100 + c, joint, 0),
                        });
                    }
                }
            }
        }
    }

    /// Bodies of crossovers against bodies of the car, and runs against bodies of crossovers.
    fn crossover_rows(&self, x: &[f64], laid: &[Laid], limit: f64, rows: &mut Vec<Row>) {
        let problem = self.ctx.problem;
        let mut contacts = Vec::new();
        for (k, crossover) in problem.crossovers.iter().enumerate() {
            let shift = self.pose(k, x);
            for (b, bar) in crossover.body.iter().enumerate() {
                let tube = TubeElement {
                    line: CentreLine::Segment {
                        a: Point::ORIGIN + bar.a + shift,
                        b: Point::ORIGIN + bar.b + shift,
                    },
                    radius: bar.radius_mm,
                };
                contacts.clear();
                self.ctx.room.near(&tube, limit, &mut contacts);
                for contact in &contacts {
                    let mut gradient = vec![0.0; self.sizes.len()];
                    self.add_pose_gradient(&mut gradient, k, contact.away);
                    rows.push(Row {
                        margin: contact.margin,
                        gradient,
                        group: group(1000 + k, b, contact.body),
                    });
                }
                for (c, chain) in laid.iter().enumerate() {
                    let Some(plan) = self.chains.get(c) else {
                        continue;
                    };
                    let own = problem
                        .runs
                        .get(plan.run)
                        .and_then(|r| r.passage)
                        .is_some_and(|p| p.crossover == k);
                    let reach =
                        tube_of(problem, plan.run).map_or(0.0, |t| math::PI * t.clr_mm + 1.0);
                    let (from, to) = match (own, plan.start) {
                        (false, _) => (0.0, chain.length),
                        (true, Anchor::Port(..)) => (reach, chain.length),
                        (true, Anchor::Fixed(_)) => (0.0, chain.length - reach),
                    };
                    for (e, element) in chain.elements.iter().enumerate() {
                        let length = element.tube.line.length();
                        let a = ((from - element.along) / length).max(0.0);
                        let z = ((to - element.along) / length).min(1.0);
                        if z <= a {
                            continue;
                        }
                        let clipped = TubeElement {
                            line: clip(&element.tube.line, a, z),
                            ..element.tube
                        };
                        let (m, h) = ball(&clipped.line);
                        let (m2, h2) = ball(&tube.line);
                        let need = clipped.radius + tube.radius + problem.rules.self_gap_mm;
                        if m.distance(m2) - h - h2 - need >= limit {
                            continue;
                        }
                        let found = clearance_between(&clipped, &tube, 0.01);
                        let margin = found.gap_mm - problem.rules.self_gap_mm;
                        let Some(away) = (found.on_first - found.on_second).direction() else {
                            continue;
                        };
                        if margin >= limit {
                            continue;
                        }
                        let share = a + found.along_first_mm / length;
                        let mut gradient = vec![0.0; self.sizes.len()];
                        self.add_gradient(
                            &mut gradient,
                            (c, chain),
                            element,
                            share,
                            found.on_first,
                            away.vector(),
                        );
                        self.add_pose_gradient(&mut gradient, k, away * -1.0);
                        rows.push(Row {
                            margin,
                            gradient,
                            group: group(2000 + 16 * c + k, e, b),
                        });
                    }
                }
            }
        }
    }
}

pub(super) fn group(kind: usize, a: usize, b: usize) -> u64 {
    ((kind as u64) << 40) | ((a as u64) << 20) | b as u64
}

pub(crate) fn tube_of(problem: &RouteProblem, run: usize) -> Option<&Tube> {
    problem
        .runs
        .get(run)
        .and_then(|r| problem.tubes.get(r.tube))
}

/// A ball round a centre line.
pub(super) fn ball(line: &CentreLine) -> (Point, f64) {
    let length = line.length();
    (line.at(length / 2.0), length / 2.0)
}

/// The part of a centre line between two shares of its length.
pub(crate) fn clip(line: &CentreLine, from: f64, to: f64) -> CentreLine {
    match *line {
        CentreLine::Arc {
            centre,
            u,
            v,
            radius,
            angle,
        } => {
            let (sin, cos) = math::sin_cos(angle * from);
            let turned = (u * cos + v * sin, v * cos - u * sin);
            CentreLine::Arc {
                centre,
                u: UnitVector::from_unit(turned.0),
                v: UnitVector::from_unit(turned.1),
                radius,
                angle: angle * (to - from),
            }
        }
        _ => {
            let length = line.length();
            CentreLine::Segment {
                a: line.at(from * length),
                b: line.at(to * length),
            }
        }
    }
}
