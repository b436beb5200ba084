//! From the solver's pieces to planned pieces with frames, marks and the room they take.

use std::collections::BTreeSet;
use tubewright_build::model::{
    CarrierKind, CarrierRef, ComponentItem, ComponentKind, Flows, ItemKind, Model, Run, RunEnd,
};
use tubewright_geometry::motion::{Freedom, Motion};
use tubewright_geometry::{CentreLine, Frame, TubeElement};

use super::ends::sawn_for;
use super::gas_way::GasWay;
use super::laid::{LaidRun, RunMarks};
use super::meeting::port_of_side;
use super::planned::{
    CanBalls, PlannedKind, PlannedPiece, PlannedRun, can_balls, component_elements, half_section,
};
use super::problem::PosedProblem;
use crate::bodies::{MotionError, motion_of};
use crate::places::Places;

/// Why a row of pieces cannot be walked.
#[derive(Clone, Debug, PartialEq, Eq, thiserror::Error)]
#[non_exhaustive]
pub enum WalkError {
    /// Its tube is not in the stock file.
    #[error("the tube “{tube}” of “{run}” is not in stock.toml")]
    NoTube {
        /// The run.
        run: String,
        /// The tube.
        tube: String,
    },
    /// A crossover that no run of the build goes through any more.
    #[error("“{run}” goes through “{name}”, which no run of build.toml goes through")]
    NoCrossover {
        /// The run.
        run: String,
        /// The crossover.
        name: String,
    },
}

/// Walks a row of pieces: frames, swept tubes, and where it should arrive.
///
/// # Errors
/// [`WalkError`] when the build or the stock file does not hold what the row names any more.
pub fn walk_laid(
    model: &Model,
    posed: &PosedProblem,
    laid: &LaidRun,
    marks: &RunMarks,
) -> Result<PlannedRun, WalkError> {
    let tube = model
        .stock
        .tube(&laid.tube)
        .ok_or_else(|| WalkError::NoTube {
            run: laid.name.clone(),
            tube: laid.tube.clone(),
        })?;
    let walker = Walker {
        model,
        posed,
        run: &laid.name,
        od_mm: tube.od.mm(),
    };
    let mut frame = laid.start;
    let mut pieces = Vec::with_capacity(laid.pieces.len());
    for (piece, (mark, joint)) in laid.pieces.iter().zip(&marks.pieces) {
        let walked = walker.step(piece, frame)?;
        frame = walked.frame_out;
        pieces.push(walked.planned(mark.clone(), joint.clone()));
    }
    let posed_run = posed.runs.iter().find(|run| run.name == laid.name);
    let (end_point, end_direction) = laid
        .port_end
        .map(|port| (port.origin, port.travel()))
        .or_else(|| posed.end_for(&laid.name, &frame))
        .unwrap_or((frame.origin, frame.travel()));
    let of_bends = laid.pieces.iter().find_map(|piece| match piece {
        PlannedKind::Bend { clr_mm, .. } => Some(*clr_mm),
        _ => None,
    });
    let of_tube = || {
        let mut tubes = posed.problem.tubes.iter();
        tubes
            .find(|tube| tube.id == laid.tube)
            .map(|tube| tube.clr_mm)
    };
    Ok(PlannedRun {
        name: laid.name.clone(),
        tube: laid.tube.clone(),
        od_mm: walker.od_mm,
        end_od_mm: walker.outlet_od_mm(laid).unwrap_or(walker.od_mm),
        start: laid.start,
        sawn: posed_run.and_then(|run| sawn_for(run, &laid.start)),
        end_point,
        end_direction,
        pieces,
        last_joint: marks.last_joint.clone(),
        clr_mm: of_bends.or_else(of_tube).unwrap_or(0.0),
        self_gap_mm: posed.problem.rules.self_gap_mm,
        run_gap_mm: posed.problem.rules.run_gap_mm,
        starts_on: posed_run
            .and_then(|run| run.starts_at.as_ref())
            .map(|met| met.component.clone()),
        ends_on: posed_run
            .and_then(|run| run.ends_at.as_ref())
            .map(|met| met.component.clone()),
        lined_from_behind: BTreeSet::new(),
    })
}

struct Walker<'a> {
    model: &'a Model,
    posed: &'a PosedProblem,
    run: &'a str,
    od_mm: f64,
}

struct Walked {
    kind: PlannedKind,
    frame_in: Frame,
    frame_out: Frame,
    elements: Vec<TubeElement>,
    uncovered_mm: f64,
}

impl Walked {
    fn planned(self, mark: String, joint: String) -> PlannedPiece {
        PlannedPiece {
            mark,
            joint,
            kind: self.kind,
            frame_in: self.frame_in,
            frame_out: self.frame_out,
            elements: self.elements,
            uncovered_mm: self.uncovered_mm,
        }
    }
}

impl Walker<'_> {
    fn step(&self, piece: &PlannedKind, frame: Frame) -> Result<Walked, WalkError> {
        let radius = 0.5 * self.od_mm;
        let (frame_in, frame_out, elements, uncovered_mm) = match *piece {
            PlannedKind::Straight { length_mm } => (
                frame,
                frame.advanced(length_mm),
                vec![TubeElement {
                    line: CentreLine::straight(&frame, length_mm),
                    radius,
                }],
                0.0,
            ),
            PlannedKind::Bend {
                angle_rad,
                clock_rad,
                clr_mm,
            } => {
                let turned = frame.rolled(clock_rad);
                let bend = TubeElement {
                    line: CentreLine::bend(&turned, angle_rad, clr_mm),
                    radius,
                };
                (turned, turned.bent(angle_rad, clr_mm), vec![bend], 0.0)
            }
            PlannedKind::Component {
                ref name,
                length_mm,
                roll_rad,
            } => {
                let (balls, spread) = self.can_of(name);
                let elements =
                    component_elements(&frame, length_mm, balls, spread, roll_rad, radius);
                (
                    frame,
                    frame.advanced(length_mm),
                    elements,
                    balls.uncovered_mm,
                )
            }
            PlannedKind::Crossover {
                ref name,
                side,
                pose,
            } => {
                let crossover = self
                    .posed
                    .part(name)
                    .ok_or_else(|| WalkError::NoCrossover {
                        run: self.run.to_owned(),
                        name: name.clone(),
                    })?;
                let ports = crossover.ports(side);
                let bars = crossover.body.iter().map(|bar| pose.bar(bar));
                let (place, travel) = pose.outlet(ports);
                (frame, Frame::upright(place, travel), bars.collect(), 0.0)
            }
        };
        Ok(Walked {
            kind: piece.clone(),
            frame_in,
            frame_out,
            elements,
            uncovered_mm,
        })
    }

    /// Outside diameter of the outlet that a run ends with, where its last piece is a part where runs meet.
    fn outlet_od_mm(&self, laid: &LaidRun) -> Option<f64> {
        let Some(PlannedKind::Crossover { name, side, .. }) = laid.pieces.last() else {
            return None;
        };
        let port = port_of_side(component_item(self.model, name)?, Flows::Out, *side)?;
        Some(self.model.stock.tube(&port.tube)?.od.mm())
    }

    /// Balls of a component's can and half of how far an oval spreads beyond them.
    fn can_of(&self, name: &str) -> (CanBalls, f64) {
        let item = self
            .model
            .build
            .component(name)
            .and_then(|component| self.model.stock.item(&component.item));
        let Some(ItemKind::Component(item)) = item.map(|item| &item.kind) else {
            return (
                CanBalls {
                    radius_mm: 0.5 * self.od_mm,
                    uncovered_mm: 0.0,
                },
                0.0,
            );
        };
        let (radius_mm, spread) = half_section(item.body.as_ref(), self.od_mm);
        let neck_mm = item.necks[0].mm().min(item.necks[1].mm());
        (can_balls(radius_mm, neck_mm), spread)
    }
}

/// What each piece of a run rides on: up to and with the flex section on the carrier of the run's
/// start, behind it on the chassis, swaying when one of the components that hang together with it is hung.
/// A run that starts from a part rides on what the run that leads to the part rides on there.
///
/// # Errors
/// [`MotionError`] when the start's carrier cannot be placed.
pub fn riding_motions(
    model: &Model,
    places: &Places,
    run: &Run,
    planned: &PlannedRun,
) -> Result<Vec<Motion>, MotionError> {
    let runs = &model.build.runs;
    let way = GasWay::of_build(&model.build);
    let number = runs.iter().position(|other| other.name == run.name);
    let together = number.map(|number| way.joined(number)).unwrap_or_default();
    let sway = together
        .iter()
        .filter_map(|number| runs.get(*number))
        .flat_map(components_of)
        .filter_map(|name| model.build.component(name))
        .filter_map(|component| match &component.carrier {
            Some(CarrierRef::Carrier(name)) => model.build.carrier(name),
            _ => None,
        })
        .filter_map(|carrier| match &carrier.kind {
            CarrierKind::Hung { sway } => Some(sway.mm()),
            _ => None,
        })
        .fold(0.0, f64::max);
    let behind = if sway > 0.0 {
        Motion {
            freedoms: vec![Freedom::Sway { radius_mm: sway }],
        }
    } else {
        Motion::FIXED
    };
    let on_start = match number.and_then(|number| carrier_at_start(model, &way, number)) {
        Some(carrier) => motion_of(&model.build, carrier, places)?.0,
        None => behind.clone(),
    };
    let flex = planned.pieces.iter().position(|piece| match &piece.kind {
        PlannedKind::Component { name, .. } => {
            component_kind(model, name) == Some(ComponentKind::Flex)
        }
        _ => false,
    });
    Ok((0..planned.pieces.len())
        .map(|index| match flex {
            Some(flex) if index > flex => behind.clone(),
            _ => on_start.clone(),
        })
        .collect())
}

/// Whether a run goes through a component of this kind.
pub(crate) fn goes_through(model: &Model, run: &Run, kind: ComponentKind) -> bool {
    run.through
        .iter()
        .any(|through| component_kind(model, &through.component) == Some(kind))
}

/// The components that a run passes, starts from and ends at.
fn components_of(run: &Run) -> impl Iterator<Item = &str> {
    let ends = [&run.from, &run.to]
        .into_iter()
        .filter_map(|end| match end {
            RunEnd::Port { component, .. } => Some(component.as_str()),
            RunEnd::End(_) => None,
        });
    let passed = run.through.iter().map(|through| through.component.as_str());
    passed.chain(ends)
}

/// What a run rides on where it starts; `None` where all gas that comes there has passed a flex section.
fn carrier_at_start<'a>(model: &'a Model, way: &GasWay, run: usize) -> Option<&'a CarrierRef> {
    let runs = &model.build.runs;
    let has_flex = |run: usize| {
        let run = runs.get(run);
        run.is_some_and(|run| goes_through(model, run, ComponentKind::Flex))
    };
    let mut seen = BTreeSet::new();
    let mut open = vec![run];
    while let Some(at) = open.pop() {
        let written = runs.get(at)?;
        if !matches!(written.from, RunEnd::Port { .. }) {
            let own = super::start_carrier(&model.build, written);
            return Some(own.unwrap_or(&CarrierRef::Chassis));
        }
        // Upstream by ways without a flex section.
        let rigid = way.before(at).into_iter().filter(|run| !has_flex(*run));
        open.extend(rigid.filter(|run| seen.insert(*run)));
    }
    None
}

/// The item of the stock file that a component of the build is.
#[must_use]
pub fn component_item<'a>(model: &'a Model, name: &str) -> Option<&'a ComponentItem> {
    let component = model.build.component(name)?;
    match &model.stock.item(&component.item)?.kind {
        ItemKind::Component(item) => Some(item),
        ItemKind::Stock(_) => None,
    }
}

/// The kind of a component of the build.
#[must_use]
pub fn component_kind(model: &Model, name: &str) -> Option<ComponentKind> {
    Some(component_item(model, name)?.kind)
}
