//! Parts where runs meet: crossovers that two runs pass, and merges, splits, cones and shared silencers
//! that runs end in and start from.

use tubewright_build::model::{
    Component, ComponentItem, ComponentKind, Flows, Model, Port, Run, RunEnd, Section,
};
use tubewright_geometry::{Bounds, Frame, Point, UnitVector, Vector, math};
use tubewright_route::problem::{Bar, Crossover, PartPose, Passage, Ports, Region, Side};

use super::crossings::bent_halves;
use super::gas_way::GasWay;
use super::laid::LaidRun;
use super::planned::{
    CanBalls, PlannedKind, PlannedRun, can_balls, component_elements, half_section,
};
use super::poses::{poses_within, room_that_holds, turns_of};
use super::problem::{PosedProblem, PosedRun, Poser, RunError};
use super::rooms::room_between;
use crate::places::PlacedEnd;

/// A port that a run starts from or ends at.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct MetPort {
    /// The component.
    pub component: String,
    /// Its number in the problem, and the side of it that the port is on.
    pub passage: Passage,
}

impl PosedProblem {
    /// The port of the part that a run has as its last piece, where it has one.
    pub(super) fn carried_by<'a>(&'a self, run: &'a PosedRun) -> Option<&'a MetPort> {
        let met = run.ends_at.as_ref()?;
        let mut runs = self.runs.iter();
        let first = runs.find(|run| {
            let own = run.ends_at.as_ref();
            own.is_some_and(|own| own.component == met.component)
        })?;
        (first.name == run.name).then_some(met)
    }
}

/// The side of a component that a run passes it by, or ends at; `None` where the build has no such side.
#[must_use]
pub fn side_met(model: &Model, run: &str, component: &str) -> Option<Side> {
    let written = model.build.run(run)?;
    let mut through = written.through.iter();
    // What stands in for a crossover is passed by the same side.
    let is_passed = |name: &str| {
        let passed = model.build.component(name);
        name == component
            || passed.is_some_and(|part| part.or.iter().any(|other| *other == *component))
    };
    if let Some(passed) = through.find(|through| is_passed(&through.component)) {
        return match passed.side.as_deref() {
            Some("L") => Some(Side::Left),
            Some("R") => Some(Side::Right),
            _ => None,
        };
    }
    match &written.to {
        RunEnd::Port {
            component: met,
            port,
        } if met == component => {
            let item = super::walk::component_item(model, component)?;
            side_of_port(item, Flows::In, port.as_deref())
        }
        _ => None,
    }
}

/// The inlets or the outlets of an item: as they are written, the one on side R behind.
fn ports_that(item: &ComponentItem, flows: Flows) -> Vec<&Port> {
    let mut ports: Vec<&Port> = item.ports.iter().filter(|p| p.flows == flows).collect();
    ports.sort_by_key(|port| port.name == "R");
    ports
}

/// The port of a side: the only one there is, or of two the one on that side.
pub(crate) fn port_of_side(item: &ComponentItem, flows: Flows, side: Side) -> Option<&Port> {
    match (ports_that(item, flows).as_slice(), side) {
        ([only], _) => Some(only),
        ([left, _], Side::Left) => Some(left),
        ([_, right], Side::Right) => Some(right),
        _ => None,
    }
}

/// The side that a port is on: of two the first is the left one.
fn side_of_port(item: &ComponentItem, flows: Flows, name: Option<&str>) -> Option<Side> {
    let ports = ports_that(item, flows);
    let number = match name {
        Some(name) => ports.iter().position(|port| port.name == name)?,
        None => 0,
    };
    match number {
        0 => Some(Side::Left),
        1 => Some(Side::Right),
        _ => None,
    }
}

/// Puts the ends of runs at the ports of the parts that they end at, where those lie in these rows of
/// pieces; the run that has the part as its last piece ends at its outlet.
pub(crate) fn end_at_ports(posed: &PosedProblem, runs: &mut [LaidRun]) {
    let placed = placed_parts(runs);
    for run in runs {
        let ports = ports_at(posed, &placed, &run.name, |run| run.ends_at.as_ref());
        let has_it = matches!(run.pieces.last(), Some(PlannedKind::Crossover { .. }));
        run.port_end = ports.map(|(pose, ports)| {
            let (place, travel) = if has_it {
                pose.outlet(&ports)
            } else {
                pose.inlet(&ports)
            };
            Frame::upright(place, travel)
        });
    }
}

/// Puts the starts of runs at the ports of the parts that they start from.
pub(crate) fn start_at_ports(posed: &PosedProblem, runs: &mut [LaidRun]) {
    let placed = placed_parts(runs);
    for run in runs {
        let ports = ports_at(posed, &placed, &run.name, |run| run.starts_at.as_ref());
        if let Some((pose, ports)) = ports {
            let (place, travel) = pose.outlet(&ports);
            run.start = Frame::upright(place, travel);
        }
    }
}

/// Where the parts lie that are pieces of these runs.
fn placed_parts(runs: &[LaidRun]) -> Vec<(String, PartPose)> {
    runs.iter()
        .flat_map(|run| &run.pieces)
        .filter_map(|piece| match piece {
            PlannedKind::Crossover { name, pose, .. } => Some((name.clone(), *pose)),
            _ => None,
        })
        .collect()
}

/// Where the part lies that a run meets, and its ports on the run's side.
fn ports_at(
    posed: &PosedProblem,
    placed: &[(String, PartPose)],
    run: &str,
    met: impl Fn(&PosedRun) -> Option<&MetPort>,
) -> Option<(PartPose, Ports)> {
    let mut runs = posed.runs.iter();
    let met = met(runs.find(|posed| posed.name == run)?)?;
    let (_, pose) = placed.iter().find(|(name, _)| *name == met.component)?;
    let part = posed.problem.crossovers.get(met.passage.crossover)?;
    Some((*pose, *part.ports(met.passage.side)))
}

/// The mark of the joint that a run begins with, where one of these runs has the part as its last piece and
/// ends at the same outlet: it is one weld. Behind a second outlet the joint has a mark of its own.
pub(crate) fn shared_joint(runs: &[PlannedRun], run: &PlannedRun) -> Option<String> {
    let part = run.starts_on.as_ref()?;
    let mut bringing = runs.iter().filter(|other| other.brings_its_end());
    let before = bringing.find(|other| {
        other.ends_on.as_ref() == Some(part)
            && other.arrival().origin.distance(run.start.origin) < SAME_PLACE_MM
    })?;
    Some(before.last_joint.clone())
}

/// Numbers of the runs, each behind those that bring the parts that it starts from and ends at; runs that
/// wait for each other go as they are written.
pub(crate) fn in_turn(runs: &[&PlannedRun]) -> Vec<usize> {
    let brings = |run: &PlannedRun, part: &str| {
        let mut pieces = run.pieces.iter();
        pieces
            .any(|piece| matches!(&piece.kind, PlannedKind::Crossover { name, .. } if name == part))
    };
    let mut waiting: Vec<usize> = (0..runs.len()).collect();
    let mut out = Vec::with_capacity(runs.len());
    while !waiting.is_empty() {
        let is_ready = |number: usize| {
            let Some(run) = runs.get(number) else {
                return true;
            };
            let mut needed = run
                .starts_on
                .as_deref()
                .into_iter()
                .chain(run.ends_at_part());
            needed.all(|part| {
                let others = waiting.iter().filter(|other| **other != number);
                let mut others = others.filter_map(|other| runs.get(*other));
                !others.any(|other| brings(other, part))
            })
        };
        let next = waiting.iter().position(|number| is_ready(*number));
        out.push(waiting.remove(next.unwrap_or(0)));
    }
    out
}

/// Places nearer than this are one, mm.
const SAME_PLACE_MM: f64 = 0.01;

/// How much the outside diameters of a run and a port may differ, mm: what a fitter still closes up.
const SAME_SIZE_MM: f64 = 1.0;

/// What is wrong with the parts that a run starts from and ends at.
pub(super) fn meeting_trouble(model: &Model, run: &Run) -> Option<RunError> {
    let build = &model.build;
    for (end, flows) in [(&run.from, Flows::Out), (&run.to, Flows::In)] {
        let RunEnd::Port { component, port } = end else {
            continue;
        };
        let Some(item) = super::walk::component_item(model, component) else {
            continue;
        };
        // Every port has one run: those to its inlets, those from its outlets.
        let ends = |flows: Flows| {
            build.runs.iter().filter_map(move |run| {
                let end = match flows {
                    Flows::In => &run.to,
                    Flows::Out => &run.from,
                };
                match end {
                    RunEnd::Port { component, port } => Some((component, port)),
                    RunEnd::End(_) => None,
                }
            })
        };
        for own in &item.ports {
            let is_only = ports_that(item, own.flows).len() == 1;
            let has_run = ends(own.flows).any(|(met, port)| {
                met == component
                    && match port {
                        Some(port) => *port == own.name,
                        None => is_only,
                    }
            });
            if !has_run {
                return Some(RunError::OpenPort {
                    part: component.to_string(),
                    port: own.name.clone(),
                });
            }
        }
        let side = side_of_port(item, flows, port.as_deref())?;
        let port = port_of_side(item, flows, side)?;
        let size = |tube: &str| model.stock.tube(tube).map(|tube| tube.od.mm());
        if let (Some(run_mm), Some(port_mm)) = (size(&run.tube), size(&port.tube))
            && (run_mm - port_mm).abs() > SAME_SIZE_MM
        {
            return Some(RunError::OtherSize {
                part: component.to_string(),
                port: port.name.clone(),
                run_mm,
                port_mm,
            });
        }
    }
    let number = build.runs.iter().position(|other| other.name == run.name)?;
    match &run.from {
        RunEnd::Port { component, .. } if GasWay::of_build(build).leads_back(number) => {
            Some(RunError::LeadsBack(component.to_string()))
        }
        _ => None,
    }
}

/// Number of a run whose part no other of these runs leads to.
pub(super) fn led_to_by_none(runs: &[PosedRun]) -> Option<usize> {
    runs.iter().position(|run| {
        run.starts_at.as_ref().is_some_and(|met| {
            let mut others = runs.iter().filter_map(|other| other.ends_at.as_ref());
            !others.any(|other| other.component == met.component)
        })
    })
}

/// How far below and above all ends, and to either side of the middle between them, a part without a zone
/// may lie, mm (common practice, no source).
const ROOM_MM: f64 = 250.0;

/// How far a part without a zone keeps from the ends along the car, mm: a flex section, a sensor and a
/// catalyst come first (common practice, no source).
const LEAD_MM: f64 = 400.0;

impl Poser<'_> {
    /// Where a run starts or ends, and the port that it has there, if it is one of a part.
    pub(super) fn end_of(
        &mut self,
        end: &RunEnd,
        leaves: Flows,
    ) -> Result<(PlacedEnd, Option<MetPort>), RunError> {
        match end {
            RunEnd::End(name) => {
                let found = self.places.ends.get(name.as_str());
                let found = found.ok_or_else(|| RunError::EndNotFound(name.to_string()))?;
                Ok((*found, None))
            }
            RunEnd::Port { component, port } => {
                let unsound = |what| RunError::UnsoundItem(component.to_string(), what);
                let part = self.model.build.component(component);
                let part = part.ok_or_else(|| RunError::NoItem(component.to_string()))?;
                let side = side_of_port(self.item_of(part)?, leaves, port.as_deref())
                    .ok_or_else(|| unsound("one or two inlets and one or two outlets"))?;
                let crossover = self.part_number(part)?;
                let passage = Passage { crossover, side };
                let placed = self.guessed(passage, leaves);
                let met = MetPort {
                    component: component.to_string(),
                    passage,
                };
                Ok((placed, Some(met)))
            }
        }
    }

    /// A port with its part in the middle of its room; its ± is what check distances hold a joint to.
    fn guessed(&self, passage: Passage, leaves: Flows) -> PlacedEnd {
        let part = self.problem.crossovers.get(passage.crossover);
        let frame_in_car = part.map_or(Frame::upright(Point::ORIGIN, UnitVector::X), |part| {
            let ports = part.ports(passage.side);
            let pose = PartPose {
                origin: part.poses.min.lerp(part.poses.max, 0.5),
                turn: part.turns.middle(),
            };
            let (place, travel) = match leaves {
                Flows::Out => pose.outlet(ports),
                Flows::In => pose.inlet(ports),
            };
            Frame::upright(place, travel)
        });
        PlacedEnd::as_built(frame_in_car, &self.model.build.accuracy.resolved())
    }

    pub(super) fn zone_of(&self, component: &Component) -> Option<Region> {
        room_between(self.places, component.zone.as_ref()?)
    }

    /// Where a part without a zone may lie: between the starts and the ends of all runs, round the middle
    /// between them.
    fn room_between_all_ends(&self) -> Option<Region> {
        let runs = &self.model.build.runs;
        let origin = |end: &RunEnd| match end {
            RunEnd::End(name) => {
                let found = self.places.ends.get(name.as_str());
                found.map(|end| end.frame_in_car.origin)
            }
            RunEnd::Port { .. } => None,
        };
        let starts: Vec<Point> = runs.iter().filter_map(|run| origin(&run.from)).collect();
        let ends: Vec<Point> = runs.iter().filter_map(|run| origin(&run.to)).collect();
        if starts.is_empty() || ends.is_empty() {
            return None;
        }
        let bounds = Bounds::of_points(starts.iter().chain(&ends).copied());
        let behind = starts.iter().map(|p| p.x).fold(bounds.min.x, f64::max) + LEAD_MM;
        let ahead = ends.iter().map(|p| p.x).fold(bounds.max.x, f64::min) - LEAD_MM;
        let middle = 0.5 * (bounds.min.y + bounds.max.y);
        let (front, rear) = if behind < ahead {
            (behind, ahead)
        } else {
            (bounds.min.x, bounds.max.x)
        };
        Some(Region {
            min: Point::new(front, middle - ROOM_MM, bounds.min.z - ROOM_MM),
            max: Point::new(rear, middle + ROOM_MM, bounds.max.z + ROOM_MM),
        })
    }

    /// The number of a part in the problem, which it is put into when it is asked for first.
    pub(super) fn part_number(&mut self, component: &Component) -> Result<usize, RunError> {
        let mut names = self.crossover_names.iter();
        if let Some(number) = names.position(|name| component.name == **name) {
            return Ok(number);
        }
        let room = self.zone_of(component);
        let part = self.part(component, room)?;
        self.problem.crossovers.push(part);
        self.crossover_names.push(component.name.to_string());
        Ok(self.problem.crossovers.len() - 1)
    }

    /// A part where runs meet, in a room; without one between all ends.
    pub(super) fn part(
        &self,
        component: &Component,
        room: Option<Region>,
    ) -> Result<Crossover, RunError> {
        let item = self.item_of(component)?;
        if item.kind == ComponentKind::Stretch {
            return self.standing(component, item);
        }
        let unsound = |what| RunError::UnsoundItem(component.name.to_string(), what);
        let roll_rad = component.roll.as_ref().map_or(0.0, |roll| roll.rad());
        let (left, right) = ports_of(item, roll_rad).map_err(unsound)?;
        let body = body_of(self.model, item, [&left, &right], roll_rad).map_err(unsound)?;
        let room = room
            .or_else(|| self.room_between_all_ends())
            .ok_or_else(|| RunError::NoRoom(component.name.to_string()))?;
        let turns = turns_of(component, [&left, &right])?;
        let turn = turns.middle();
        let local = [left.inlet, left.outlet, right.inlet, right.outlet].map(|v| turn.vector(v));
        let poses = poses_within(room, &local);
        Ok(Crossover {
            id: component.name.to_string(),
            stands: false,
            poses,
            turns,
            ports_within: (!turns.is_held()).then(|| room_that_holds(room, poses, &local)),
            body,
            left,
            right,
        })
    }
}

/// The ports of both sides, the part lying along the car; what there is one of both sides share.
fn ports_of(item: &ComponentItem, roll_rad: f64) -> Result<(Ports, Ports), &'static str> {
    const WANTED: &str = "one or two inlets and one or two outlets";
    let both = |flows: Flows| -> Result<[&Port; 2], &'static str> {
        match ports_that(item, flows).as_slice() {
            [only] => Ok([only, only]),
            [left, right] => Ok([left, right]),
            _ => Err(WANTED),
        }
    };
    let (inlets, outlets) = (both(Flows::In)?, both(Flows::Out)?);
    let [left, right] = [0, 1].map(|side| Ports {
        inlet: in_car(inlets[side].at.to_vector(), roll_rad),
        inlet_direction: direction_in_car(inlets[side].travel, roll_rad),
        outlet: in_car(outlets[side].at.to_vector(), roll_rad),
        outlet_direction: direction_in_car(outlets[side].travel, roll_rad),
    });
    Ok((left, right))
}

/// The body: a can along the flow, or legs between the ports.
fn body_of(
    model: &Model,
    item: &ComponentItem,
    [left, right]: [&Ports; 2],
    roll_rad: f64,
) -> Result<Vec<Bar>, &'static str> {
    let is_legs = matches!(
        item.kind,
        ComponentKind::Crossover | ComponentKind::Merge | ComponentKind::Cone
    );
    if let Some(made) = &item.hand_made {
        let od_mm = widest_port_mm(model, item).ok_or("a tube size for its ports")?;
        return Ok(bent_halves(made, [left, right], 0.5 * od_mm));
    }
    if is_legs {
        let radius_mm = match &item.body {
            Some(Section::Round { diameter }) => 0.5 * diameter.mm(),
            Some(_) => return Err("a round body, or none: its legs are tube"),
            // Its legs are tube of the widest of its own sizes.
            None => widest_port_mm(model, item).ok_or("a tube size for its ports")? * 0.5,
        };
        let mut bars = vec![
            Bar {
                a: left.inlet,
                b: right.outlet,
                radius_mm,
            },
            Bar {
                a: right.inlet,
                b: left.outlet,
                radius_mm,
            },
        ];
        bars.dedup();
        return Ok(bars);
    }
    if item.body.is_none() {
        return Err("a body (round, oval or box)");
    }
    let (radius_mm, spread_mm) = half_section(item.body.as_ref(), 0.0);
    let balls = can_balls(radius_mm, item.necks[0].mm().min(item.necks[1].mm()));
    // What of its corners the balls do not hold is taken into them.
    let holding = CanBalls {
        radius_mm: balls.radius_mm + balls.uncovered_mm,
        uncovered_mm: 0.0,
    };
    let frame = Frame::upright(Point::ORIGIN, UnitVector::X);
    let elements = component_elements(&frame, item.length.mm(), holding, spread_mm, roll_rad, 0.0);
    // The first is the tube through it.
    let can = elements.iter().skip(1);
    Ok(can
        .map(|element| Bar {
            a: element.line.at(0.0).to_vector(),
            b: element.line.at(element.line.length()).to_vector(),
            radius_mm: element.radius,
        })
        .collect())
}

/// From an item's own axes (along the flow, up, to the left: three o'clock looking downstream) to the car's,
/// for an item that lies along the car, rolled about the flow clockwise looking downstream.
pub(crate) fn in_car(local: Vector, roll_rad: f64) -> Vector {
    let flat = Vector::new(local.x, -local.z, local.y);
    if roll_rad == 0.0 {
        return flat;
    }
    let (sin, cos) = math::sin_cos(roll_rad);
    // Twelve o'clock goes toward three, which is the car's left.
    Vector::new(
        flat.x,
        flat.y * cos - flat.z * sin,
        flat.y * sin + flat.z * cos,
    )
}

fn direction_in_car(travel: UnitVector, roll_rad: f64) -> UnitVector {
    UnitVector::from_unit(in_car(travel.vector(), roll_rad))
}

pub(super) fn widest_port_mm(model: &Model, item: &ComponentItem) -> Option<f64> {
    item.ports
        .iter()
        .map(|port| Some(model.stock.tube(&port.tube)?.od.mm()))
        .try_fold(0.0, |widest: f64, od| Some(widest.max(od?)))
        .filter(|widest| *widest > 0.0)
}
