//! The chosen plan as the shop's record keeps it: geometry piece by piece, and never a reference to
//! something that could be solved anew. From the first tube that was got or cut it stands; a later
//! solution is only offered, with what it would cost in steel that is cut already.

mod carry;
mod offer;
mod write;

pub use carry::carry_marks;
pub use offer::{CutSteel, Offer, RunOffer, offer_of};
pub use write::{accepted_beside, accepted_entry, chosen_entry, standing_of};

use tubewright_build::model::{EntryKind, FrozenPiece, FrozenShape, FrozenStart, Model, Shop};
use tubewright_geometry::{Placement, math};
use tubewright_route::problem::{PartPose, Turn};

use crate::routes::{
    LaidRun, PlannedKind, PlannedRun, PosedProblem, RunMarks, WalkError, end_at_ports, side_met,
    walk_laid,
};

/// The plan that was chosen, with the changes that were accepted since.
#[derive(Clone, Debug, PartialEq)]
pub struct FrozenPlan {
    /// The alternative's name, by what it does.
    pub route: String,
    /// Date of the choice.
    pub on: String,
    /// Effort that the solver had.
    pub effort: Option<u64>,
    /// Seed that the solver had.
    pub seed: Option<u64>,
    /// The runs in the order in which they were chosen.
    pub runs: Vec<FrozenRun>,
    /// True once a tube of it was got, cut, tacked or welded: it is only changed by accepting what
    /// the change costs.
    pub is_begun: bool,
}

/// A run of the chosen plan.
#[derive(Clone, Debug, PartialEq)]
pub struct FrozenRun {
    /// Its name.
    pub name: String,
    /// Where it starts, when the record says so.
    pub start: Option<FrozenStart>,
    /// Its pieces.
    pub pieces: Vec<FrozenPiece>,
    /// Where pieces that stand already are, each by the joint upstream of it: what was accepted since
    /// it was tacked moves what comes before it and not it.
    pub standing: Vec<FrozenStart>,
}

/// Why a run of the chosen plan cannot be worked with.
#[derive(Clone, Debug, PartialEq, Eq, thiserror::Error)]
#[non_exhaustive]
pub enum FrozenError {
    /// It is not in the build any more.
    #[error(
        "the record holds the run “{0}”, which build.toml does not; give the run its name back"
    )]
    NoRun(String),
    /// Neither the record nor the survey knows where it starts.
    #[error("it is not known where the chosen run “{0}” starts; measure its end again")]
    NoStart(String),
    /// A component has no length any more.
    #[error(
        "the chosen run “{run}” holds “{component}”, whose length is neither in the record nor in \
         stock.toml"
    )]
    NoLength {
        /// The run.
        run: String,
        /// The component.
        component: String,
    },
    /// The build names no side of a component that runs meet in.
    #[error(
        "the chosen run “{run}” meets “{component}”, but build.toml does not say by which side or port any more"
    )]
    NoSide {
        /// The run.
        run: String,
        /// The component.
        component: String,
    },
    /// The place of a shared component is not in the record.
    #[error("the record does not say where “{component}” of the chosen run “{run}” lies")]
    NoPlace {
        /// The run.
        run: String,
        /// The component.
        component: String,
    },
    /// It cannot be walked.
    #[error(transparent)]
    Walk(#[from] WalkError),
}

/// The chosen plan of a record; `None` when nothing was chosen. A later choice takes the place of an
/// earlier one; an accepted change takes the place of the runs that it names.
#[must_use]
pub fn frozen_plan(shop: &Shop) -> Option<FrozenPlan> {
    let mut plan: Option<FrozenPlan> = None;
    for entry in &shop.entries {
        match &entry.what {
            EntryKind::Chosen {
                route,
                effort,
                seed,
                starts,
                pieces,
            } => {
                plan = Some(FrozenPlan {
                    route: route.clone(),
                    on: entry.on.clone(),
                    effort: *effort,
                    seed: *seed,
                    runs: runs_of(starts, pieces),
                    is_begun: false,
                });
            }
            EntryKind::Accepted {
                route,
                starts,
                pieces,
            } => {
                let Some(plan) = &mut plan else { continue };
                plan.route.clone_from(route);
                for run in runs_of(starts, pieces) {
                    match plan.runs.iter_mut().find(|known| known.name == run.name) {
                        Some(known) => {
                            known.start = run.start.or(known.start.take());
                            known.pieces = run.pieces;
                            known.standing = run.standing;
                        }
                        None => plan.runs.push(run),
                    }
                }
            }
            EntryKind::Got { .. }
            | EntryKind::OtherSize { .. }
            | EntryKind::Cut { .. }
            | EntryKind::Tacked { .. }
            | EntryKind::Welded { .. } => {
                if let Some(plan) = &mut plan {
                    plan.is_begun = true;
                }
            }
            _ => {}
        }
    }
    plan
}

fn runs_of(starts: &[FrozenStart], pieces: &[FrozenPiece]) -> Vec<FrozenRun> {
    let mut runs: Vec<FrozenRun> = Vec::new();
    for piece in pieces {
        match runs.iter_mut().find(|run| piece.run == *run.name.as_str()) {
            Some(run) => run.pieces.push(piece.clone()),
            None => {
                let mut of_run = starts
                    .iter()
                    .filter(|start| start.run == piece.run)
                    .cloned();
                runs.push(FrozenRun {
                    name: piece.run.to_string(),
                    start: of_run.next(),
                    pieces: vec![piece.clone()],
                    standing: of_run.collect(),
                });
            }
        }
    }
    runs
}

/// The runs of the chosen plan, walked as the car is measured now; those that cannot be come back
/// with the reason.
#[must_use]
pub fn planned(
    model: &Model,
    posed: &PosedProblem,
    plan: &FrozenPlan,
) -> (Vec<PlannedRun>, Vec<(String, FrozenError)>) {
    let mut runs = Vec::new();
    let mut troubles = Vec::new();
    let (mut rows, mut painted) = (Vec::new(), Vec::new());
    for run in &plan.runs {
        match laid(model, posed, run) {
            Ok((laid, marks)) => {
                rows.push(laid);
                painted.push((run, marks));
            }
            Err(error) => troubles.push((run.name.clone(), error)),
        }
    }
    end_at_ports(posed, &mut rows);
    for (laid, (run, marks)) in rows.iter().zip(&painted) {
        match walk_laid(model, posed, laid, marks) {
            Ok(mut planned) => {
                for standing in &run.standing {
                    put_where_it_stands(&mut planned, standing);
                }
                runs.push(planned);
            }
            Err(error) => troubles.push((run.name.clone(), error.into())),
        }
    }
    (runs, troubles)
}

/// Moves the pieces behind a joint to where they stand, up to the next crossover, which has a place of
/// its own.
fn put_where_it_stands(run: &mut PlannedRun, standing: &FrozenStart) {
    let Some(first) = run
        .pieces
        .iter()
        .position(|piece| Some(&piece.joint) == standing.joint.as_ref())
    else {
        return;
    };
    let Some(moved) = run
        .pieces
        .get(first)
        .map(|piece| Placement::between(&piece.frame_in, &standing.frame))
    else {
        return;
    };
    for (index, piece) in run.pieces.iter_mut().enumerate().skip(first) {
        if matches!(piece.kind, crate::routes::PlannedKind::Crossover { .. }) {
            if index == first {
                piece.frame_in = standing.frame;
            }
            return;
        }
        piece.frame_in = moved.frame(&piece.frame_in);
        piece.frame_out = moved.frame(&piece.frame_out);
        for element in &mut piece.elements {
            *element = moved.tube(element);
        }
    }
}

/// A frozen run as a row of pieces with its marks.
fn laid(
    model: &Model,
    posed: &PosedProblem,
    run: &FrozenRun,
) -> Result<(LaidRun, RunMarks), FrozenError> {
    let written = model
        .build
        .run(&run.name)
        .ok_or_else(|| FrozenError::NoRun(run.name.clone()))?;
    let start = match &run.start {
        Some(start) => start.frame,
        None => {
            let mut posed_runs = posed.runs.iter();
            posed_runs
                .find(|posed| posed.name == run.name)
                .map(|posed| posed.start.frame_in_car)
                .ok_or_else(|| FrozenError::NoStart(run.name.clone()))?
        }
    };
    let of_start = run.start.as_ref();
    let tube = of_start
        .and_then(|start| start.tube.as_ref())
        .unwrap_or(&written.tube);
    // A record from before joints at starts were kept names none.
    let mut joint = of_start
        .and_then(|start| start.joint.clone())
        .unwrap_or_else(|| "start".to_owned());
    let mut pieces = Vec::with_capacity(run.pieces.len());
    let mut marks = Vec::with_capacity(run.pieces.len());
    for piece in &run.pieces {
        marks.push((piece.mark.clone(), joint));
        joint = piece.joint.clone().unwrap_or_default();
        pieces.push(laid_piece(model, posed, run, piece)?);
    }
    let laid = LaidRun {
        name: run.name.clone(),
        tube: tube.to_string(),
        start,
        pieces,
        port_end: None,
    };
    let marks = RunMarks {
        pieces: marks,
        last_joint: joint,
    };
    Ok((laid, marks))
}

fn laid_piece(
    model: &Model,
    posed: &PosedProblem,
    run: &FrozenRun,
    piece: &FrozenPiece,
) -> Result<PlannedKind, FrozenError> {
    Ok(match &piece.shape {
        FrozenShape::Straight { length } => PlannedKind::Straight {
            length_mm: length.mm(),
        },
        FrozenShape::Bend {
            angle, clock, clr, ..
        } => PlannedKind::Bend {
            angle_rad: angle.rad(),
            clock_rad: half_turn(clock.angle().rad()),
            clr_mm: clr.mm(),
        },
        FrozenShape::Component {
            component,
            roll,
            length,
            at,
            turned,
        } => {
            let name = component.to_string();
            let is_crossover = posed.part(&name).is_some();
            if is_crossover || at.is_some() {
                PlannedKind::Crossover {
                    side: side_met(model, &run.name, &name).ok_or_else(|| FrozenError::NoSide {
                        run: run.name.clone(),
                        component: name.clone(),
                    })?,
                    pose: PartPose {
                        origin: at.ok_or_else(|| FrozenError::NoPlace {
                            run: run.name.clone(),
                            component: name.clone(),
                        })?,
                        turn: turned.as_ref().map_or(Turn::NONE, |turned| {
                            Turn::from_array(turned.each_ref().map(|angle| angle.rad()))
                        }),
                    },
                    name,
                }
            } else {
                PlannedKind::Component {
                    length_mm: length
                        .as_ref()
                        .map(|length| length.mm())
                        .or_else(|| item_length_mm(model, &name))
                        .ok_or_else(|| FrozenError::NoLength {
                            run: run.name.clone(),
                            component: name.clone(),
                        })?,
                    roll_rad: roll
                        .as_ref()
                        .map_or(0.0, |roll| half_turn(roll.angle().rad())),
                    name,
                }
            }
        }
    })
}

/// The same clock between −180° and 180°.
fn half_turn(rad: f64) -> f64 {
    let turns = (rad / math::TAU).round();
    if rad.abs() <= math::PI + 1e-12 {
        rad
    } else {
        rad - turns * math::TAU
    }
}

fn item_length_mm(model: &Model, component: &str) -> Option<f64> {
    Some(crate::routes::component_item(model, component)?.length.mm())
}
