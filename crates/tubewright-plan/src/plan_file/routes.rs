//! The routes as the file keeps them: sizes alone, from which the runs are walked again.

use serde::{Deserialize, Serialize};
use std::collections::BTreeMap;
use tubewright_geometry::{Frame, Point, UnitVector, Vector, math};
use tubewright_route::Budget;
use tubewright_route::problem::{PartPose, Side, Turn};

use super::{Inputs, PlanFileError, StoredStage, indented};
use crate::routes::{LaidRun, PlannedKind, PosedProblem, end_at_ports, start_at_ports};
use crate::stages::{Alternative, Routed};

/// Most alternatives, runs and pieces of a run that are read; far more than the solver gives.
const MOST: usize = 2000;
/// Nothing on a car is longer than this, mm.
const LONGEST_MM: f64 = 100_000.0;

/// What the route stage found, before it is walked.
#[derive(Clone, Debug, PartialEq)]
pub struct StoredRoutes {
    /// Effort and seed that it was found with.
    pub budget: Budget,
    /// What was found.
    pub found: StoredRouted,
}

/// The kinds of answer.
#[derive(Clone, Debug, PartialEq)]
pub enum StoredRouted {
    /// Ways that hold, cheapest first.
    Found(Vec<StoredAlternative>),
    /// None found in this effort.
    NotFound {
        /// Work units spent.
        work_units: u64,
        /// Changes with which there is a way, in words.
        would_help: Vec<String>,
    },
    /// None exists.
    NoneExists {
        /// How it is known, in words.
        proof: String,
        /// Changes with which there is a way, in words.
        would_help: Vec<String>,
    },
    /// No run could be put to the solver.
    NothingToRoute,
}

/// One way to route all runs.
#[derive(Clone, Debug, PartialEq)]
pub struct StoredAlternative {
    /// What it does.
    pub name: String,
    /// Cost in the shop's money-like units.
    pub cost: f64,
    /// No route costs less.
    pub lower_bound: f64,
    /// The runs as rows of pieces.
    pub runs: Vec<StoredRun>,
}

/// A run as a row of pieces.
#[derive(Clone, Debug, PartialEq)]
pub struct StoredRun {
    /// Its name.
    pub name: String,
    /// Where it starts, where that is not where its end is measured.
    pub start: Option<Frame>,
    /// Its pieces in the order of the flow.
    pub pieces: Vec<PlannedKind>,
}

#[derive(Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
struct RoutesForm {
    status: StatusForm,
    effort: u64,
    seed: u64,
    #[serde(default, skip_serializing_if = "Option::is_none")]
    work_units: Option<u64>,
    #[serde(default, skip_serializing_if = "Option::is_none")]
    proof: Option<String>,
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    would_help: Vec<String>,
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    left_out: Vec<LeftOutForm>,
    unit: String,
    #[serde(default)]
    alternatives: Vec<AlternativeForm>,
    #[serde(default)]
    inputs: BTreeMap<String, BTreeMap<String, String>>,
}

#[derive(Clone, Copy, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
enum StatusForm {
    Found,
    NotFound,
    NoneExists,
    NothingToRoute,
}

#[derive(Serialize, Deserialize)]
struct LeftOutForm {
    run: String,
    why: String,
}

#[derive(Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
struct AlternativeForm {
    way: String,
    cost: f64,
    lower_bound: f64,
    runs: Vec<RunForm>,
}

#[derive(Serialize, Deserialize)]
struct RunForm {
    run: String,
    #[serde(default, skip_serializing_if = "Option::is_none")]
    start: Option<StartForm>,
    pieces: Vec<PieceForm>,
}

/// Where a run starts that does not start where its end is measured.
#[derive(Serialize, Deserialize)]
struct StartForm {
    at: [f64; 3],
    travel: [f64; 3],
    twelve: [f64; 3],
}

#[derive(Serialize, Deserialize)]
#[serde(
    tag = "kind",
    rename_all = "kebab-case",
    rename_all_fields = "kebab-case"
)]
enum PieceForm {
    Straight {
        length: f64,
    },
    Bend {
        angle: f64,
        clock: f64,
        clr: f64,
    },
    Component {
        component: String,
        length: f64,
        roll: f64,
    },
    Crossover {
        component: String,
        side: SideForm,
        at: [f64; 3],
        #[serde(default, skip_serializing_if = "Option::is_none")]
        turned: Option<[f64; 3]>,
    },
}

#[derive(Serialize, Deserialize)]
enum SideForm {
    L,
    R,
}

/// The routes as JSON text. Angles are in radians: only so does every bit come back.
#[must_use]
pub fn routes_result(
    inputs: &Inputs,
    posed: &PosedProblem,
    routed: &Routed,
    budget: Budget,
) -> String {
    let mut form = RoutesForm {
        status: StatusForm::NothingToRoute,
        effort: budget.work_units,
        seed: budget.seed,
        work_units: None,
        proof: None,
        would_help: Vec::new(),
        left_out: posed
            .left_out
            .iter()
            .map(|(run, why)| LeftOutForm {
                run: run.clone(),
                why: why.to_string(),
            })
            .collect(),
        unit: "mm, rad".to_owned(),
        alternatives: Vec::new(),
        inputs: inputs.short(),
    };
    match routed {
        Routed::Found(alternatives) => {
            form.status = StatusForm::Found;
            form.alternatives = alternatives.iter().map(alternative_form).collect();
        }
        Routed::NotFound {
            work_units,
            would_help,
        } => {
            form.status = StatusForm::NotFound;
            form.work_units = Some(*work_units);
            form.would_help.clone_from(would_help);
        }
        Routed::NoneExists { proof, would_help } => {
            form.status = StatusForm::NoneExists;
            form.proof = Some(proof.clone());
            form.would_help.clone_from(would_help);
        }
        Routed::NothingToRoute => {}
    }
    indented(&form)
}

fn alternative_form(alternative: &Alternative) -> AlternativeForm {
    AlternativeForm {
        way: alternative.name.clone(),
        cost: alternative.cost,
        lower_bound: alternative.lower_bound,
        runs: alternative
            .runs
            .iter()
            .map(|run| RunForm {
                run: run.name.clone(),
                start: run.sawn.is_some().then(|| StartForm {
                    at: run.start.origin.to_array(),
                    travel: run.start.travel().to_array(),
                    twelve: run.start.twelve().to_array(),
                }),
                pieces: run.laid().0.pieces.into_iter().map(piece_form).collect(),
            })
            .collect(),
    }
}

fn piece_form(piece: PlannedKind) -> PieceForm {
    match piece {
        PlannedKind::Straight { length_mm } => PieceForm::Straight { length: length_mm },
        PlannedKind::Bend {
            angle_rad,
            clock_rad,
            clr_mm,
        } => PieceForm::Bend {
            angle: angle_rad,
            clock: clock_rad,
            clr: clr_mm,
        },
        PlannedKind::Component {
            name,
            length_mm,
            roll_rad,
        } => PieceForm::Component {
            component: name,
            length: length_mm,
            roll: roll_rad,
        },
        PlannedKind::Crossover { name, side, pose } => PieceForm::Crossover {
            component: name,
            side: match side {
                Side::Left => SideForm::L,
                Side::Right => SideForm::R,
            },
            at: pose.origin.to_array(),
            turned: (!pose.turn.is_none()).then(|| pose.turn.to_array()),
        },
    }
}

impl StoredRoutes {
    /// Reads what a route stage found, every number held to what it can be.
    ///
    /// # Errors
    /// [`PlanFileError`].
    pub fn of(stage: &StoredStage) -> Result<Self, PlanFileError> {
        let form: RoutesForm = serde_json::from_str(stage.result())
            .map_err(|error| PlanFileError::Damaged(error.to_string()))?;
        let budget = Budget {
            work_units: form.effort,
            seed: form.seed,
        };
        if form.alternatives.len() > MOST {
            return Err(PlanFileError::Damaged("too many alternatives".to_owned()));
        }
        let found = match form.status {
            StatusForm::Found => StoredRouted::Found(
                form.alternatives
                    .into_iter()
                    .map(alternative)
                    .collect::<Result<_, _>>()?,
            ),
            StatusForm::NotFound => StoredRouted::NotFound {
                work_units: form.work_units.unwrap_or(form.effort),
                would_help: form.would_help,
            },
            StatusForm::NoneExists => StoredRouted::NoneExists {
                proof: form.proof.unwrap_or_default(),
                would_help: form.would_help,
            },
            StatusForm::NothingToRoute => StoredRouted::NothingToRoute,
        };
        Ok(Self { budget, found })
    }
}

fn alternative(form: AlternativeForm) -> Result<StoredAlternative, PlanFileError> {
    let too_many = form.runs.len() > MOST || form.runs.iter().any(|run| run.pieces.len() > MOST);
    if too_many {
        return Err(PlanFileError::Damaged("too many runs or pieces".to_owned()));
    }
    Ok(StoredAlternative {
        name: form.way,
        cost: within("a cost", form.cost, 0.0, 1e12)?,
        lower_bound: within("a lower bound", form.lower_bound, -1e12, 1e12)?,
        runs: form
            .runs
            .into_iter()
            .map(|run| {
                let pieces = run.pieces.into_iter().map(laid_piece);
                Ok(StoredRun {
                    name: run.run,
                    start: run.start.as_ref().map(start_frame).transpose()?,
                    pieces: pieces.collect::<Result<_, _>>()?,
                })
            })
            .collect::<Result<_, PlanFileError>>()?,
    })
}

fn start_frame(form: &StartForm) -> Result<Frame, PlanFileError> {
    for coordinate in form.at {
        within("a place", coordinate, -LONGEST_MM, LONGEST_MM)?;
    }
    let unit = |vector: [f64; 3]| {
        let vector = Vector::from_array(vector);
        let is_unit = (vector.norm() - 1.0).abs() < 1e-9;
        is_unit.then(|| UnitVector::from_unit(vector))
    };
    let (travel, twelve) = (unit(form.travel), unit(form.twelve));
    match (travel, twelve) {
        (Some(travel), Some(twelve)) if travel.dot(twelve.vector()).abs() < 1e-9 => {
            Ok(Frame::from_axes(Point::from_array(form.at), travel, twelve))
        }
        _ => Err(PlanFileError::Damaged(
            "a start whose axes are not square to each other".to_owned(),
        )),
    }
}

fn laid_piece(form: PieceForm) -> Result<PlannedKind, PlanFileError> {
    let turn = math::TAU;
    Ok(match form {
        PieceForm::Straight { length } => PlannedKind::Straight {
            length_mm: within("a length", length, 0.0, LONGEST_MM)?,
        },
        PieceForm::Bend { angle, clock, clr } => PlannedKind::Bend {
            angle_rad: within("a bend", angle, 0.0, math::PI)?,
            clock_rad: within("a clock", clock, -turn, turn)?,
            clr_mm: within("a radius", clr, 1.0, LONGEST_MM)?,
        },
        PieceForm::Component {
            component,
            length,
            roll,
        } => PlannedKind::Component {
            name: component,
            length_mm: within("a length", length, 0.0, LONGEST_MM)?,
            roll_rad: within("a roll", roll, -turn, turn)?,
        },
        PieceForm::Crossover {
            component,
            side,
            at,
            turned,
        } => {
            for coordinate in at {
                within("a place", coordinate, -LONGEST_MM, LONGEST_MM)?;
            }
            let turned = turned.unwrap_or_default();
            for angle in turned {
                within("a turn", angle, -turn, turn)?;
            }
            PlannedKind::Crossover {
                name: component,
                side: match side {
                    SideForm::L => Side::Left,
                    SideForm::R => Side::Right,
                },
                pose: PartPose {
                    origin: Point::from_array(at),
                    turn: Turn::from_array(turned),
                },
            }
        }
    })
}

fn within(what: &'static str, value: f64, least: f64, most: f64) -> Result<f64, PlanFileError> {
    // A number that is none is in no range.
    if (least..=most).contains(&value) {
        Ok(value)
    } else {
        Err(PlanFileError::OutOfRange { what, value })
    }
}

impl StoredAlternative {
    /// The runs where the problem starts them.
    ///
    /// # Errors
    /// [`PlanFileError::NotOfThisBuild`] when a run is not in the problem.
    pub fn laid(&self, posed: &PosedProblem) -> Result<Vec<LaidRun>, PlanFileError> {
        let mut laid = self
            .runs
            .iter()
            .map(|stored| {
                let name = &stored.name;
                let mut runs = posed.runs.iter();
                let run = runs.find(|run| run.name == *name).ok_or_else(|| {
                    PlanFileError::NotOfThisBuild(format!("there is no run “{name}” to route"))
                })?;
                Ok(LaidRun {
                    name: name.clone(),
                    tube: run.tube.clone(),
                    start: stored.start.unwrap_or(run.start.frame_in_car),
                    pieces: stored.pieces.clone(),
                    port_end: None,
                })
            })
            .collect::<Result<Vec<_>, _>>()?;
        start_at_ports(posed, &mut laid);
        end_at_ports(posed, &mut laid);
        Ok(laid)
    }
}
