//! The build's runs among its bodies as a route problem.

use std::collections::BTreeMap;
use tubewright_build::model::{
    self, Build, CarrierRef, Component, ComponentKind, Flows, ItemKind, Model, Run, RunEnd,
};
use tubewright_build::resolved::{ResolvedGaps, ResolvedPractice};
use tubewright_route::problem::{
    Body, BodyKind, Component as RouteComponent, Passage, Pin, Placement, RouteProblem, Rules,
    Run as RouteRun, Section as RouteSection, Side, StartRoom,
};

use super::crossings::StandIn;
use super::ends::{NoTip, no_tip_columns, room_of, saw_room};
use super::meeting::{MetPort, led_to_by_none, meeting_trouble};
use super::never::closed_sides;
use super::planned::{can_balls, half_section};
use super::rooms::wanted_rooms;
use super::stub::{STUB_MM, own_bodies};
use super::tubes::{TubeError, route_tube};
use super::workspace::workspace;
use crate::bodies::Bodies;
use crate::places::{PlacedEnd, Places, covariance_between, joint_sigma_mm, sigma_bound};
use crate::survey::NINETEEN_IN_TWENTY;

/// Why a run cannot be put to the solver.
#[derive(Clone, Debug, PartialEq, thiserror::Error)]
#[non_exhaustive]
pub enum RunError {
    /// An end was not found by the survey.
    #[error(
        "the end “{0}” is not found; take rim readings to at least three of its clock marks from three marks each, or give it a point and a direction"
    )]
    EndNotFound(String),
    /// A component is not in the build, or its item not in the stock file.
    #[error("its component “{0}” has no item in stock.toml to take sizes from")]
    NoItem(String),
    /// A component without a body or without a usable pair of ports.
    #[error("its component “{0}” needs {1} in stock.toml")]
    UnsoundItem(String, &'static str),
    /// The side of a crossover that the run enters.
    #[error("it enters the crossover “{0}” by no side; write “{0}.L” or “{0}.R”")]
    NoSide(String),
    /// A port of a part where runs meet that no run, or more than one, has.
    #[error(
        "the port {port} of “{part}” is left open: gas would leave the exhaust there; let a run end at it or start from it (“{part}.{port}”), or take an item without it"
    )]
    OpenPort {
        /// The part.
        part: String,
        /// Its port.
        port: String,
    },
    /// A part that no run leads to.
    #[error(
        "it starts from “{0}”, which no run that is routed leads to; let a run end at one of its inlets"
    )]
    NothingLeadsTo(String),
    /// Runs that lead back to where they come from.
    #[error("it leads back to “{0}”, from which its gas comes; let it go on to a tip")]
    LeadsBack(String),
    /// Its tube is not that of the port.
    #[error(
        "its tube is {run_mm:.1} mm outside and the port {port} of “{part}” is for {port_mm:.1} mm; take a cone, a part with another port, or another tube"
    )]
    OtherSize {
        /// The part.
        part: String,
        /// Its port.
        port: String,
        /// The run's outside diameter, mm.
        run_mm: f64,
        /// The port's, mm.
        port_mm: f64,
    },
    /// A part without a zone where no ends of runs are measured that it could lie between.
    #[error(
        "where “{0}” may lie is not known: give it a `zone`, or measure where the runs start and end"
    )]
    NoRoom(String),
    /// More than one crossover in a run.
    #[error("it goes through more than one crossover; one is routed so far")]
    TwoCrossovers,
    /// A corner of the room of its end.
    #[error(
        "a corner of the room of “{0}” is not found; measure it from three marks, or leave `room` out"
    )]
    RoomNotFound(String),
    /// A corner of a room that it must pass through or have a joint in.
    #[error(
        "a corner of {0} that it must pass or have a joint in is not found; measure it from three marks"
    )]
    PinNotFound(String),
    /// A place along a stretch that stands.
    #[error(
        "the place “{place}” along “{part}” is not found; measure it from three marks, or leave it out"
    )]
    AlongNotFound {
        /// The stretch.
        part: String,
        /// The place.
        place: String,
    },
    /// An end that may turn too far.
    #[error("“{0}” may turn by 90° or more; give `may-turn` less, or the other direction")]
    TurnsTooFar(String),
    /// Its tube.
    #[error(transparent)]
    Tube(#[from] TubeError),
    /// Its tube is not in the stock file.
    #[error("its tube “{0}” is not in stock.toml")]
    NoTube(String),
}

/// A run that is part of the problem.
#[derive(Clone, Debug)]
pub struct PosedRun {
    /// Its name.
    pub name: String,
    /// Where it starts, with its ±.
    pub start: PlacedEnd,
    /// Where it arrives, with its ±.
    pub end: PlacedEnd,
    /// The tube's name.
    pub tube: String,
    /// Flex section bolted to the start, with its length in mm: part of the run, not of the search.
    pub first_flex: Option<(String, f64)>,
    /// How its outlet may be sawn off, where it may be.
    pub saw_room: Option<StartRoom>,
    /// Names of its components in the problem, by number.
    pub components: Vec<String>,
    /// Allowance for the ± of its own place that was added to every gap, mm.
    pub allowance_mm: f64,
    /// The port that it starts from, of a part that another run leads to; its `start` is then a guess.
    pub starts_at: Option<MetPort>,
    /// The port that it ends at, of a part where it meets others; its `end` is then a guess.
    pub ends_at: Option<MetPort>,
}

/// The problem and what it was made of.
#[derive(Clone, Debug)]
pub struct PosedProblem {
    /// For the solver.
    pub problem: RouteProblem,
    /// The runs in the problem's order.
    pub runs: Vec<PosedRun>,
    /// Names of the components by their number in the problem.
    pub component_names: Vec<String>,
    /// Names of the crossovers by their number in the problem.
    pub crossover_names: Vec<String>,
    /// Other crossovers that may stand in the place of one of the problem.
    pub stand_ins: Vec<StandIn>,
    /// Runs that are not in it, with the reason.
    pub left_out: Vec<(String, RunError)>,
}

/// Most bends of a run that says nothing.
const USUAL_MOST_BENDS: u32 = 12;

pub(super) struct Poser<'a> {
    pub(super) model: &'a Model,
    pub(super) places: &'a Places,
    /// Where no tip may lie.
    no_tip: Vec<NoTip>,
    pub(super) problem: RouteProblem,
    component_names: Vec<String>,
    pub(super) crossover_names: Vec<String>,
    tube_numbers: BTreeMap<String, usize>,
}

/// Puts every run that can be to the solver.
#[must_use]
pub fn pose_problem(
    model: &Model,
    places: &Places,
    bodies: &Bodies,
    gaps: &ResolvedGaps,
    practice: &ResolvedPractice,
) -> PosedProblem {
    let max_bends = model
        .build
        .runs
        .iter()
        .map(|run| run.max_bends.unwrap_or(USUAL_MOST_BENDS))
        .max()
        .unwrap_or(USUAL_MOST_BENDS);
    let mut poser = Poser {
        model,
        places,
        no_tip: no_tip_columns(&model.build, bodies).0,
        problem: RouteProblem {
            id: model.build.name.clone().unwrap_or_default(),
            bodies: Vec::new(),
            workspace: None,
            tubes: Vec::new(),
            rules: Rules {
                min_straight_mm: practice.least_straight.mm(),
                min_bend_rad: practice.least_bend.rad(),
                max_bends: usize::try_from(max_bends).unwrap_or(12),
                self_gap_mm: gaps.itself.mm(),
                run_gap_mm: gaps.run.mm(),
                // Half the shop's bend step: nearer than that the rounded bend is the stock bend.
                uncut_tolerance_rad: 0.5 * practice.bend_step.rad(),
                stub_mm: STUB_MM,
                rounding_room_mm: rounding_allowance(practice),
                // What rounding to the shop's steps may leave open at an end (common practice, no
                // source): the bound holds for the rounded route too.
                end_place_mm: 1.5,
                end_turn_rad: 0.5_f64.to_radians(),
            },
            components: Vec::new(),
            crossovers: Vec::new(),
            runs: Vec::new(),
        },
        component_names: Vec::new(),
        crossover_names: Vec::new(),
        tube_numbers: BTreeMap::new(),
    };
    let mut runs = Vec::new();
    let mut left_out = Vec::new();
    for run in &model.build.runs {
        match meeting_trouble(model, run).map_or_else(|| poser.pose_run(run), Err) {
            Ok(posed) => runs.push(posed),
            Err(error) => left_out.push((run.name.to_string(), error)),
        }
    }
    // What no run that is routed leads to has no place.
    while let Some(number) = led_to_by_none(&runs) {
        let posed = runs.remove(number);
        poser.problem.runs.remove(number);
        let part = posed.starts_at.map(|met| met.component).unwrap_or_default();
        left_out.push((posed.name, RunError::NothingLeadsTo(part)));
    }
    let joint_sigma = joint_sigma_mm(&model.build.accuracy.resolved());
    let run_sigma = runs
        .iter()
        .map(|run| run_sigma_bound(run, joint_sigma))
        .fold(0.0, f64::max);
    for posed in &mut runs {
        posed.allowance_mm = NINETEEN_IN_TWENTY * run_sigma;
    }
    poser.problem.workspace = workspace(bodies, &poser.problem);
    for (posed, route) in runs.iter().zip(&mut poser.problem.runs) {
        route.own_bodies = own_bodies(model, posed, bodies);
    }
    let sway = sway_of(&model.build);
    poser.problem.bodies = bodies
        .placed
        .iter()
        .map(|body| {
            let swept = body.motion.swept(&body.solid_in_car);
            let survey =
                NINETEEN_IN_TWENTY * (run_sigma * run_sigma + body.sigma_bound().powi(2)).sqrt();
            Body {
                id: body.name.clone(),
                solid: swept.solid,
                gap_mm: body.gap_mm
                    + survey
                    + swept.margin_mm
                    + body.allowance_mm
                    + sway
                    + rounding_allowance(practice),
                kind: if body.class == model::Class::Ground {
                    BodyKind::Ground
                } else {
                    BodyKind::Car
                },
            }
        })
        .collect();
    let stand_ins = poser.stand_ins();
    let closed = closed_sides(&model.build, bodies).0;
    let closed = closed.into_iter().map(|side| Body {
        id: side.name,
        solid: side.solid,
        gap_mm: rounding_allowance(practice),
        kind: BodyKind::Car,
    });
    poser.problem.bodies.extend(closed);
    PosedProblem {
        problem: poser.problem,
        runs,
        component_names: poser.component_names,
        crossover_names: poser.crossover_names,
        stand_ins,
        left_out,
    }
}

/// Room that rounding to the shop's steps may use up, mm: half a length step at each end of a piece
/// and half an angle step over a metre would be 9 mm, but the rounding re-closes the run, so that
/// only a few steps of length remain (common practice, no source). What the rounded run really
/// leaves is checked afterwards.
fn rounding_allowance(practice: &ResolvedPractice) -> f64 {
    3.0 * practice.length_step.mm()
}

/// The largest sway of anything that the runs hang on, mm.
fn sway_of(build: &Build) -> f64 {
    build
        .carriers
        .iter()
        .filter_map(|carrier| match &carrier.kind {
            model::CarrierKind::Hung { sway } => Some(sway.mm()),
            _ => None,
        })
        .fold(0.0, f64::max)
}

/// Largest standard deviation of the centre line of a run in any direction, mm: what the ends'
/// lever arms leave along the straight line between them, or what the check distances at each joint
/// keep while tacking, whichever is less.
fn run_sigma_bound(run: &PosedRun, joint_sigma_mm: f64) -> f64 {
    let (a, b) = (run.start.frame_in_car.origin, run.end.frame_in_car.origin);
    (0..=20)
        .map(|step| {
            let share = f64::from(step) / 20.0;
            sigma_bound(&covariance_between(
                &run.start,
                &run.end,
                a.lerp(b, share),
                share,
            ))
        })
        .fold(0.0, f64::max)
        .min(joint_sigma_mm)
}

impl Poser<'_> {
    fn pose_run(&mut self, run: &Run) -> Result<PosedRun, RunError> {
        let (start, starts_at) = self.end_of(&run.from, Flows::Out)?;
        let (end, ends_at) = self.end_of(&run.to, Flows::In)?;
        let tube = self.tube_number(run)?;
        let od_mm = self.problem.tubes.get(tube).map_or(0.0, |tube| tube.od_mm);
        let mut numbers = Vec::new();
        let mut names = Vec::new();
        let mut passage = None;
        let mut before_passage = None;
        let mut first_flex = None;
        for (order, through) in run.through.iter().enumerate() {
            let name = through.component.as_str();
            let component = self
                .model
                .build
                .component(name)
                .ok_or_else(|| RunError::NoItem(name.to_owned()))?;
            let item = self.item_of(component)?;
            if item.kind == ComponentKind::Crossover {
                if passage.is_some() {
                    return Err(RunError::TwoCrossovers);
                }
                let side = match through.side.as_deref() {
                    Some("L") => Side::Left,
                    Some("R") => Side::Right,
                    _ => return Err(RunError::NoSide(name.to_owned())),
                };
                let crossover = self.part_number(component)?;
                passage = Some(Passage { crossover, side });
                before_passage = Some(numbers.len());
                continue;
            }
            if order == 0 && item.kind == ComponentKind::Flex && starts_at.is_none() {
                // It is bolted straight to the outlet, so that its place is not a choice: the search
                // starts behind it.
                first_flex = Some((name.to_owned(), item.length.mm()));
                continue;
            }
            numbers.push(self.component_number(component, od_mm)?);
            names.push(name.to_owned());
        }
        let room = room_of(&self.model.build, self.places, &run.to, &end, &self.no_tip)?;
        let (end_point, end_room) = room.map_or((end.frame_in_car.origin, None), |(at, room)| {
            (at, Some(room))
        });
        let saw_room = saw_room(&self.model.build, &run.from, first_flex.is_some());
        self.problem.runs.push(RouteRun {
            id: run.name.to_string(),
            tube,
            start: start
                .frame_in_car
                .advanced(first_flex.as_ref().map_or(0.0, |flex| flex.1)),
            end: end_point,
            end_direction: end.frame_in_car.travel(),
            components: numbers,
            passage,
            components_before_passage: before_passage,
            pins: self.pins_of(run)?,
            starts_at: starts_at.as_ref().map(|met| met.passage),
            ends_at: ends_at.as_ref().map(|met| met.passage),
            own_bodies: Vec::new(),
            end_room,
            // As the flange is; sawn off is a problem of its own.
            start_room: None,
            most_bends: usize::try_from(run.max_bends.unwrap_or(USUAL_MOST_BENDS)).ok(),
        });
        Ok(PosedRun {
            name: run.name.to_string(),
            start,
            end,
            tube: run.tube.to_string(),
            first_flex,
            saw_room,
            components: names,
            allowance_mm: 0.0,
            starts_at,
            ends_at,
        })
    }

    /// The rooms that a run must pass through or have a joint in.
    fn pins_of(&self, run: &Run) -> Result<Vec<Pin>, RunError> {
        wanted_rooms(run, self.places)
            .into_iter()
            .map(|wanted| match wanted.room {
                Some(room) => Ok(Pin {
                    room,
                    what: wanted.what,
                }),
                None => Err(RunError::PinNotFound(wanted.words)),
            })
            .collect()
    }

    fn tube_number(&mut self, run: &Run) -> Result<usize, RunError> {
        if let Some(&number) = self.tube_numbers.get(run.tube.as_str()) {
            return Ok(number);
        }
        let tube = self
            .model
            .stock
            .tube(&run.tube)
            .ok_or_else(|| RunError::NoTube(run.tube.to_string()))?;
        self.problem
            .tubes
            .push(route_tube(&self.model.stock, tube)?);
        let number = self.problem.tubes.len() - 1;
        self.tube_numbers.insert(run.tube.to_string(), number);
        Ok(number)
    }

    pub(super) fn item_of(&self, component: &Component) -> Result<&model::ComponentItem, RunError> {
        match self
            .model
            .stock
            .item(&component.item)
            .map(|item| &item.kind)
        {
            Some(ItemKind::Component(item)) => Ok(item),
            _ => Err(RunError::NoItem(component.name.to_string())),
        }
    }

    fn component_number(&mut self, component: &Component, od_mm: f64) -> Result<usize, RunError> {
        let item = self.item_of(component)?;
        // The balls that hold the can, grown by what of its corners they do not hold.
        let (radius_mm, half_spread_mm) = half_section(item.body.as_ref(), od_mm);
        // A slip joint or a clamp is no thicker than its tube; of a can that is not known.
        if item.body.is_none() && item.kind != ComponentKind::Joint {
            return Err(RunError::UnsoundItem(
                component.name.to_string(),
                "a body (round, oval or box)",
            ));
        }
        let balls = match item.body {
            Some(_) => can_balls(radius_mm, item.necks[0].mm().min(item.necks[1].mm())),
            None => can_balls(radius_mm, radius_mm),
        };
        let height_mm = 2.0 * (balls.radius_mm + balls.uncovered_mm);
        let section = if half_spread_mm > 0.0 {
            RouteSection::Oval {
                width_mm: height_mm + 2.0 * half_spread_mm,
                height_mm,
            }
        } else {
            RouteSection::Round {
                diameter_mm: height_mm,
            }
        };
        let length_mm = item.length.mm();
        let zone = self.zone_of(component);
        self.problem.components.push(RouteComponent {
            id: component.name.to_string(),
            length_mm,
            section,
            zone,
            placement: Placement::Anywhere,
        });
        self.component_names.push(component.name.to_string());
        Ok(self.problem.components.len() - 1)
    }
}

/// Carrier that a run's first pieces ride on, up to its flex section.
#[must_use]
pub fn start_carrier<'a>(build: &'a Build, run: &Run) -> Option<&'a CarrierRef> {
    match &run.from {
        RunEnd::End(name) => build.end(name).map(|end| &end.carrier),
        RunEnd::Port { .. } => None,
    }
}
