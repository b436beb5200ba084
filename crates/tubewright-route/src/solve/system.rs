//! Chains that are solved together: one for a plain run, two a run where a crossover is passed, with
//! the crossovers' places as further sizes.

use tubewright_geometry::{CentreLine, Point, UnitVector, Vector};

use super::chain::{Element, Laid, Part, Screw, Stance, lay};
use super::layout::{Layout, Size};
use super::parts::{kept_upright, normals, on_part};
use super::room::{Contact, Room};
use super::slides::{Pose, SLIDE_SIZES, Slides};
use crate::cost::CostModel;
use crate::problem::{Passage, Ports, RouteProblem, Tube, Turn};

/// A problem with what is prepared once for it.
pub(crate) struct Context<'p> {
    pub(crate) problem: &'p RouteProblem,
    pub(crate) cost: &'p CostModel,
    pub(crate) room: Room,
    pub(crate) slides: Slides,
}

impl<'p> Context<'p> {
    pub(crate) fn new(problem: &'p RouteProblem, cost: &'p CostModel) -> Self {
        Self {
            problem,
            cost,
            room: Room::new(problem),
            slides: Slides::of(problem),
        }
    }

    /// The ports of a side of a crossover.
    fn ports(&self, passage: Passage) -> Option<&Ports> {
        let crossover = self.problem.crossovers.get(passage.crossover)?;
        Some(crossover.ports(passage.side))
    }

    /// Where a run starts: held, in its room, or at an outlet that slides.
    pub(crate) fn start_anchor(&self, run: usize) -> Anchor {
        let Some(own) = self.problem.runs.get(run) else {
            return Anchor::Fixed(Stance::upright(Point::ORIGIN, UnitVector::X));
        };
        let outlet = own.starts_at.and_then(|p| Some((p, self.ports(p)?)));
        if let Some((passage, ports)) = outlet {
            return Anchor::outlet(passage.crossover, ports);
        }
        let held = Stance::of(&own.start);
        match self.slides.start_of(run) {
            Some(slide) => Anchor::Slides(slide, held),
            None => Anchor::Fixed(held),
        }
    }

    /// Where a run arrives: held, in its room, or at an inlet that slides.
    pub(crate) fn end_target(&self, run: usize) -> Target {
        let Some(own) = self.problem.runs.get(run) else {
            return Target::Fixed(Point::ORIGIN, UnitVector::X);
        };
        let inlet = own.ends_at.and_then(|p| Some((p, self.ports(p)?)));
        if let Some((passage, ports)) = inlet {
            return Target::inlet(passage.crossover, ports);
        }
        match self.slides.end_of(run) {
            Some(slide) => Target::Slides(slide, Vector::ZERO, own.end_direction),
            None => Target::Fixed(own.end, own.end_direction),
        }
    }

    /// Whether a chain arrives where its run does, and not at a crossover that it passes.
    pub(crate) fn is_end(&self, chain: &Chain) -> bool {
        let run = self.problem.runs.get(chain.run);
        match chain.target {
            Target::Fixed(..) => true,
            Target::Slides(number, ..) => {
                !self.slides.is_crossover(number) || run.is_some_and(|run| run.ends_at.is_some())
            }
        }
    }
}

/// Where a chain starts.
#[derive(Clone, Copy, Debug)]
pub(crate) enum Anchor {
    Fixed(Stance),
    /// On a slide: at a port of a crossover, in the crossover's coordinates, or at a start that may be
    /// sawn further back.
    Slides(usize, Stance),
}

/// Where a chain must arrive.
#[derive(Clone, Copy, Debug)]
pub(crate) enum Target {
    Fixed(Point, UnitVector),
    /// On a slide: at a port of a crossover, in the crossover's coordinates, or at an end with room.
    Slides(usize, Vector, UnitVector),
}

impl Anchor {
    /// At an outlet of a crossover.
    pub(crate) fn outlet(crossover: usize, ports: &Ports) -> Self {
        let place = Point::ORIGIN + ports.outlet;
        Self::Slides(crossover, Stance::upright(place, ports.outlet_direction))
    }

    /// The same with slides at the given places.
    pub(crate) fn at(self, slides: &Slides, poses: &[Pose]) -> Stance {
        match self {
            Self::Fixed(stance) => stance,
            Self::Slides(number, local) => {
                let (Some(slide), Some(pose)) = (slides.all.get(number), poses.get(number)) else {
                    return local;
                };
                if slides.is_crossover(number) {
                    return on_part(local, &pose.part());
                }
                let moved = Stance {
                    origin: local.origin + pose.shift,
                    ..local
                };
                slide.turned(moved, pose.turn)
            }
        }
    }
}

impl Target {
    /// At an inlet of a crossover.
    pub(crate) const fn inlet(crossover: usize, ports: &Ports) -> Self {
        Self::Slides(crossover, ports.inlet, ports.inlet_direction)
    }

    /// The same with slides at the given places.
    pub(crate) fn at(self, slides: &Slides, poses: &[Pose]) -> (Point, UnitVector) {
        match self {
            Self::Fixed(point, direction) => (point, direction),
            Self::Slides(number, local, direction) => {
                let (Some(slide), Some(pose)) = (slides.all.get(number), poses.get(number)) else {
                    return (Point::ORIGIN + local, direction);
                };
                if slides.is_crossover(number) {
                    let part = pose.part();
                    let travel = slide.arrival(part.turn.direction(direction), [0.0; 3]);
                    return (part.place(local), travel);
                }
                (
                    Point::ORIGIN + local + pose.shift,
                    slide.arrival(direction, pose.turn),
                )
            }
        }
    }
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
    /// Whether it begins where its run's outlet is sawn off.
    pub(super) const fn is_sawn(&self, ctx: &Context<'_>) -> bool {
        match self.start {
            Anchor::Fixed(_) => false,
            Anchor::Slides(number, _) => !ctx.slides.is_crossover(number),
        }
    }

    /// Whether it is the one that begins where its run does; one that is held at a crossover's outlet
    /// is not.
    pub(super) fn start_is_of(&self, slides: &Slides, run: &crate::problem::Run) -> bool {
        match self.start {
            // Held for a while, it may stand anywhere in the room of its start.
            Anchor::Fixed(stance) => {
                let back = run.start_room.map_or(0.0, |room| room.back_mm);
                let behind = run.start.origin - stance.origin;
                let along = behind.dot(run.start.travel().vector()).clamp(0.0, back);
                (behind - run.start.travel() * along).norm() < 1e-6
            }
            Anchor::Slides(number, _) => !slides.is_crossover(number),
        }
    }
}

/// Chains with their sizes in one row, places of slides behind.
pub(crate) struct System<'c, 'p> {
    pub(crate) ctx: &'c Context<'p>,
    pub(crate) chains: Vec<Chain>,
    /// First size of each chain; the last entry is where places of slides start.
    pub(crate) offsets: Vec<usize>,
    pub(crate) sizes: Vec<Size>,
    pub(crate) fixed_cost: f64,
    /// Whether slides are part of it.
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
        // An outlet that is sawn off takes a cut.
        fixed_cost += ctx.cost.cut * chains.iter().filter(|c| c.is_sawn(ctx)).count() as f64;
        // Chains whose ends are held know nothing of slides.
        let hangs = chains.iter().any(|c| {
            matches!(c.start, Anchor::Slides(..)) || matches!(c.target, Target::Slides(..))
        });
        if hangs {
            sizes.extend(ctx.slides.all.iter().flat_map(|slide| slide.sizes()));
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

    /// The cost with what is not linear in the sizes: ground clearance that is lost, and mitres.
    pub(crate) fn full_cost(&self, x: &[f64]) -> f64 {
        let lost = if self.ctx.cost.ground.is_some() {
            self.lost_ground(&self.lay(x)).0
        } else {
            0.0
        };
        self.cost(x) + lost + self.lost_at_mitres(x)
    }

    /// Places of all slides.
    pub(crate) fn poses(&self, x: &[f64]) -> Vec<Pose> {
        if !self.hangs {
            return Vec::new();
        }
        self.ctx
            .slides
            .all
            .iter()
            .enumerate()
            .map(|(number, slide)| {
                let first = self.pose_index(number);
                slide.pose(core::array::from_fn(|k| {
                    x.get(first + k).copied().unwrap_or(0.0)
                }))
            })
            .collect()
    }

    pub(super) fn pose_index(&self, slide: usize) -> usize {
        self.offsets.last().copied().unwrap_or(0) + SLIDE_SIZES * slide
    }

    pub(crate) fn chain_sizes<'x>(&self, chain: usize, x: &'x [f64]) -> &'x [f64] {
        match (self.offsets.get(chain), self.offsets.get(chain + 1)) {
            (Some(&a), Some(&b)) => x.get(a..b).unwrap_or(&[]),
            _ => &[],
        }
    }

    pub(crate) fn lay(&self, x: &[f64]) -> Vec<Laid> {
        let poses = self.poses(x);
        self.chains
            .iter()
            .enumerate()
            .map(|(c, chain)| {
                let start = chain.start.at(&self.ctx.slides, &poses);
                let (radius, clr) = tube_of(self.ctx.problem, chain.run)
                    .map_or((0.0, 1.0), |t| (t.od_mm / 2.0, t.clr_mm));
                let mut laid = lay(
                    self.ctx.problem,
                    &chain.layout,
                    start,
                    radius,
                    clr,
                    self.chain_sizes(c, x),
                );
                laid.start_screws = self.start_screws(chain, &poses);
                laid
            })
            .collect()
    }

    /// Two directions across that of arrival; of an end that may turn, those that it turns to.
    fn across(&self, target: Target, poses: &[Pose]) -> (UnitVector, [Vector; 2]) {
        match target {
            Target::Slides(number, _, direction) if !self.ctx.slides.is_crossover(number) => {
                let sides = self.ctx.slides.all.get(number).map(|slide| slide.across);
                (direction, sides.unwrap_or([Vector::ZERO; 2]))
            }
            Target::Fixed(_, direction) => (direction, normals(direction)),
            Target::Slides(number, _, direction) => {
                let turn = poses
                    .get(number)
                    .map_or(Turn::NONE, |pose| pose.part().turn);
                let normals = normals(direction).map(|normal| turn.vector(normal));
                (turn.direction(direction), normals)
            }
        }
    }

    /// Closure errors: five a chain (three of place, two of direction times a lever), in mm.
    pub(crate) fn residual(&self, x: &[f64], laid: &[Laid]) -> Vec<f64> {
        let poses = self.poses(x);
        let mut out = Vec::with_capacity(5 * laid.len());
        for (chain, laid) in self.chains.iter().zip(laid) {
            let (point, _) = chain.target.at(&self.ctx.slides, &poses);
            let off = laid.end.origin - point;
            let (direction, [u, v]) = self.across(chain.target, &poses);
            // Past a quarter turn the sine would point the wrong way.
            let travel = laid.end.travel;
            let mut side = [u.dot(travel), v.dot(travel)];
            if direction.dot(travel) < 0.0 {
                let norm = (side[0] * side[0] + side[1] * side[1]).sqrt().max(1e-9);
                let grown = (2.0 - norm) / norm;
                side = side.map(|s| s * grown);
            }
            if let Target::Slides(number, ..) = chain.target
                && !self.ctx.slides.is_crossover(number)
                && let Some(pose) = poses.get(number)
            {
                side = [side[0] - pose.turn[0], side[1] - pose.turn[1]];
            }
            out.extend([off.x, off.y, off.z]);
            out.extend(side.map(|s| s * DIRECTION_LEVER_MM));
        }
        out
    }

    /// Rows of the closure's derivative, over all sizes.
    pub(crate) fn closure_rows(&self, x: &[f64], laid: &[Laid]) -> Vec<Vec<f64>> {
        let n = self.sizes.len();
        let poses = self.poses(x);
        let mut rows = Vec::with_capacity(5 * laid.len());
        for (c, (chain, laid)) in self.chains.iter().zip(laid).enumerate() {
            let mut block = vec![vec![0.0; n]; 5];
            let first = self.offsets.get(c).copied().unwrap_or(0);
            let (_, [u, v]) = self.across(chain.target, &poses);
            let arrives = |screw: &Screw| {
                let moved = screw.at(laid.end.origin).to_array();
                let turned = screw.turns.cross(laid.end.travel);
                let sides = [u.dot(turned), v.dot(turned)].map(|s| s * DIRECTION_LEVER_MM);
                moved.into_iter().chain(sides)
            };
            let mut put = |column: usize, values: &mut dyn Iterator<Item = f64>| {
                for (row, value) in block.iter_mut().zip(values) {
                    if let Some(slot) = row.get_mut(column) {
                        *slot += value;
                    }
                }
            };
            for (j, screw) in laid.screws.iter().enumerate() {
                put(first + j, &mut arrives(screw));
            }
            for (column, screw) in &laid.start_screws {
                put(*column, &mut arrives(screw));
            }
            if let Target::Slides(number, ..) = chain.target
                && let Some(slide) = self.ctx.slides.all.get(number)
            {
                let index = self.pose_index(number);
                for k in 0..3 {
                    let moved = slide.axis(k) * -1.0;
                    put(index + k, &mut moved.to_array().into_iter());
                }
                if self.ctx.slides.is_crossover(number) {
                    let part = poses.get(number).map(Pose::part);
                    let (place, _) = chain.target.at(&self.ctx.slides, &poses);
                    for (k, axis) in self.part_axes(number, &poses).into_iter().enumerate() {
                        let arm = part.map_or(Vector::ZERO, |part| place - part.origin);
                        let moved = axis.cross(arm) * -1.0;
                        let sides = [u, v]
                            .map(|side| axis.cross(side).dot(laid.end.travel) * DIRECTION_LEVER_MM);
                        let mut all = moved.to_array().into_iter().chain(sides);
                        put(index + 3 + k, &mut all);
                    }
                } else {
                    for k in 0..2 {
                        let mut sides = [0.0; 5];
                        sides[3 + k] = -DIRECTION_LEVER_MM;
                        put(index + 3 + k, &mut sides.into_iter());
                    }
                }
            }
            rows.append(&mut block);
        }
        rows
    }

    /// Velocities of a whole chain with the place of the slide that it starts on, with their sizes.
    fn start_screws(&self, chain: &Chain, poses: &[Pose]) -> Vec<(usize, Screw)> {
        let Anchor::Slides(number, _) = chain.start else {
            return Vec::new();
        };
        let (Some(slide), Some(pose)) = (self.ctx.slides.all.get(number), poses.get(number)) else {
            return Vec::new();
        };
        let index = self.pose_index(number);
        let start = chain.start.at(&self.ctx.slides, poses);
        let turns = if self.ctx.slides.is_crossover(number) {
            let origin = pose.part().origin;
            self.part_axes(number, poses)
                .map(|axis| Screw::turn(axis, origin).and(kept_upright(&start, axis)))
        } else {
            slide.turning(start.origin, pose.turn)
        };
        (0..3)
            .map(|k| Screw::slide(slide.axis(k)))
            .chain(turns)
            .enumerate()
            .map(|(k, screw)| (index + k, screw))
            .collect()
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
        for (column, screw) in &laid.start_screws {
            if let Some(slot) = gradient.get_mut(*column) {
                *slot += weight.dot(screw.at(place));
            }
        }
    }

    pub(super) fn add_pose_gradient(&self, gradient: &mut [f64], slide: usize, weight: Vector) {
        let first = self.pose_index(slide);
        for k in 0..3 {
            let axis = self.ctx.slides.all.get(slide).map(|slide| slide.axis(k));
            if let (Some(slot), Some(axis)) = (gradient.get_mut(first + k), axis) {
                *slot += axis.dot(weight);
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
        self.pin_rows(laid, limit, &mut rows);
        if self.hangs {
            self.crossover_rows(x, laid, limit, &mut rows);
            self.column_rows(x, limit, &mut rows);
            self.room_rows(x, limit, &mut rows);
        }
        rows
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
