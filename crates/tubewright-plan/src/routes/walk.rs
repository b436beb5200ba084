//! From the solver's pieces to planned pieces with frames, marks and the room they take.

use tubewright_build::model::{CarrierKind, CarrierRef, ComponentKind, ItemKind, Model, Run};
use tubewright_geometry::motion::{Freedom, Motion};
use tubewright_geometry::{CentreLine, Frame, TubeElement};
use tubewright_route::problem::{RouteProblem, Side};
use tubewright_route::route::{Piece, Route};

use super::marks::MarkGiver;
use super::planned::{
    CanBalls, PlannedKind, PlannedPiece, PlannedRun, can_balls, component_elements, half_section,
};
use super::problem::PosedProblem;
use crate::bodies::{MotionError, motion_of};
use crate::places::Places;

/// The planned runs of a route, marks given in order of flow.
#[must_use]
pub fn planned_runs(
    model: &Model,
    posed: &PosedProblem,
    route: &Route,
    marks: &mut MarkGiver,
) -> Vec<PlannedRun> {
    let problem = &posed.problem;
    let mut runs = Vec::new();
    for ((run, pieces), posed_run) in problem.runs.iter().zip(&route.runs).zip(&posed.runs) {
        let Some(tube) = problem.tubes.get(run.tube) else {
            continue;
        };
        let mut frame = posed_run.start.frame_in_car;
        let mut planned = Vec::new();
        if let Some((name, length_mm)) = &posed_run.first_flex {
            let step = Step {
                model,
                problem,
                route,
                frame,
                od_mm: tube.od_mm,
                clr_mm: tube.clr_mm,
            };
            let walked = step.component(name, *length_mm, 0.0);
            frame = walked.frame_out;
            planned.push(walked.planned(marks.piece(&run.id), marks.joint()));
        }
        for piece in pieces {
            let mark = marks.piece(&run.id);
            let joint = marks.joint();
            let step = Step {
                model,
                problem,
                route,
                frame,
                od_mm: tube.od_mm,
                clr_mm: tube.clr_mm,
            };
            let side = run.passage.map(|passage| passage.side);
            let Some(walked) = step.walk(piece, side) else {
                continue;
            };
            frame = walked.frame_out;
            planned.push(walked.planned(mark, joint));
        }
        runs.push(PlannedRun {
            name: run.id.clone(),
            tube: posed_run.tube.clone(),
            od_mm: tube.od_mm,
            start: posed_run.start.frame_in_car,
            end_point: run.end,
            end_direction: run.end_direction,
            pieces: planned,
            last_joint: marks.joint(),
            clr_mm: tube.clr_mm,
            self_gap_mm: problem.rules.self_gap_mm,
            run_gap_mm: problem.rules.run_gap_mm,
        });
    }
    runs
}

struct Step<'a> {
    model: &'a Model,
    problem: &'a RouteProblem,
    route: &'a Route,
    frame: Frame,
    od_mm: f64,
    clr_mm: f64,
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

impl Step<'_> {
    fn walk(&self, piece: &Piece, side: Option<Side>) -> Option<Walked> {
        let radius = 0.5 * self.od_mm;
        let frame = self.frame;
        Some(match *piece {
            Piece::Straight { length_mm } => Walked {
                kind: PlannedKind::Straight { length_mm },
                frame_in: frame,
                frame_out: frame.advanced(length_mm),
                elements: vec![TubeElement {
                    line: CentreLine::straight(&frame, length_mm),
                    radius,
                }],
                uncovered_mm: 0.0,
            },
            Piece::Bend {
                angle_rad,
                clock_rad,
            } => {
                let turned = frame.rolled(clock_rad);
                let clr_mm = self.clr_mm;
                Walked {
                    kind: PlannedKind::Bend {
                        angle_rad,
                        clock_rad,
                        clr_mm,
                    },
                    frame_in: turned,
                    frame_out: turned.bent(angle_rad, clr_mm),
                    elements: vec![TubeElement {
                        line: CentreLine::bend(&turned, angle_rad, clr_mm),
                        radius,
                    }],
                    uncovered_mm: 0.0,
                }
            }
            Piece::Component {
                component,
                roll_rad,
            } => {
                let component = self.problem.components.get(component)?;
                self.component(&component.id, component.length_mm, roll_rad)
            }
            Piece::Crossover { crossover } => {
                let number = crossover;
                let crossover = self.problem.crossovers.get(number)?;
                let origin = *self.route.crossovers.get(number)?;
                let side = side?;
                let ports = crossover.ports(side);
                Walked {
                    kind: PlannedKind::Crossover {
                        name: crossover.id.clone(),
                        side: match side {
                            Side::Left => "L",
                            Side::Right => "R",
                        },
                    },
                    frame_in: frame,
                    frame_out: Frame::upright(origin + ports.outlet, ports.outlet_direction),
                    elements: crossover
                        .body
                        .iter()
                        .map(|bar| TubeElement {
                            line: CentreLine::Segment {
                                a: origin + bar.a,
                                b: origin + bar.b,
                            },
                            radius: bar.radius_mm,
                        })
                        .collect(),
                    uncovered_mm: 0.0,
                }
            }
        })
    }

    fn component(&self, name: &str, length_mm: f64, roll_rad: f64) -> Walked {
        let (balls, spread) = self.can_of(name);
        let frame = self.frame;
        Walked {
            kind: PlannedKind::Component {
                name: name.to_owned(),
                length_mm,
                roll_rad,
            },
            frame_in: frame,
            frame_out: frame.advanced(length_mm),
            elements: component_elements(
                &frame,
                length_mm,
                balls,
                spread,
                roll_rad,
                0.5 * self.od_mm,
            ),
            uncovered_mm: balls.uncovered_mm,
        }
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
/// start, behind it on the chassis, swaying when one of its components is hung.
///
/// # Errors
/// [`MotionError`] when the start's carrier cannot be placed.
pub fn riding_motions(
    model: &Model,
    places: &Places,
    run: &Run,
    planned: &PlannedRun,
) -> Result<Vec<Motion>, MotionError> {
    let start = super::start_carrier(&model.build, run).unwrap_or(&CarrierRef::Chassis);
    let on_start = motion_of(&model.build, start, places)?.0;
    let flex = planned.pieces.iter().position(|piece| match &piece.kind {
        PlannedKind::Component { name, .. } => {
            component_kind(model, name) == Some(ComponentKind::Flex)
        }
        _ => false,
    });
    let sway = run
        .through
        .iter()
        .filter_map(|through| model.build.component(&through.component))
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
    Ok((0..planned.pieces.len())
        .map(|index| match flex {
            Some(flex) if index > flex => behind.clone(),
            _ => on_start.clone(),
        })
        .collect())
}

/// The kind of a component of the build.
#[must_use]
pub fn component_kind(model: &Model, name: &str) -> Option<ComponentKind> {
    let component = model.build.component(name)?;
    match &model.stock.item(&component.item)?.kind {
        ItemKind::Component(item) => Some(item.kind),
        ItemKind::Stock(_) => None,
    }
}
