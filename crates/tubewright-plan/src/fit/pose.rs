//! Where a tacked joint really is.

use tubewright_build::Span;
use tubewright_build::model::{
    End, EndKind, EndPlace, Flows, JointFace, JointReading, Model, Name, Place, PlaceAt, Reading,
    ReadingKind,
};
use tubewright_build::quantity::Quantity;
use tubewright_build::resolved::ResolvedPractice;
use tubewright_fit::budget::{Budget, Tacked, Workmanship};
use tubewright_fit::built::{
    BuiltError, JointSlope, JointTape, LEAST_READINGS, built_joint, rim_place,
};
use tubewright_fit::{NINETEEN_IN_TWENTY, PoseSpread};
use tubewright_geometry::{Length, Vector, math};

use super::joints::{Joint, joint_of};
use super::loose::{LooseWay, Mark, Taped, loose_words};
use super::steel::Steel;
use crate::places::PlacedEnd;
use crate::routes::{PlannedKind, PlannedRun};
use crate::stages::Surroundings;
use crate::survey::measure;

/// How a joint was found.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum FoundBy {
    /// By its readings alone, adjusted together with all others of the car.
    Tape,
    /// By its readings and what the pieces before it can be.
    TapeAndPieces,
}

/// One reading at a joint.
#[derive(Clone, Debug, PartialEq)]
pub struct TapeSeen {
    /// From which mark.
    pub from: String,
    /// Clock on the rim; `None` for the centre.
    pub clock_rad: Option<f64>,
    /// What the tape says, mm.
    pub reads_mm: f64,
    /// What it would say if the joint were where the plan has it, mm.
    pub planned_mm: f64,
    /// What it says less what it should say now, mm.
    pub residual_mm: f64,
    /// Whether it stands out among the others: more than 3.29 standard deviations (1 in 1000).
    pub is_doubtful: bool,
}

/// One slope of a joint's face.
#[derive(Clone, Debug, PartialEq)]
pub struct SlopeSeen {
    /// Toward which clock mark, radians.
    pub clock_rad: f64,
    /// In which set-up.
    pub setup: String,
    /// What the angle finder says, radians above level.
    pub reads_rad: f64,
    /// What it would say if the joint were as planned, radians.
    pub planned_rad: f64,
    /// What it says less what it should say now, radians.
    pub residual_rad: f64,
    /// Whether it stands out among the others: more than 3.29 standard deviations (1 in 1000).
    pub is_doubtful: bool,
}

/// A joint as it was found.
#[derive(Clone, Debug, PartialEq)]
pub struct JointFound {
    /// The joint as planned.
    pub planned: Joint,
    /// Number of its run.
    pub run: usize,
    /// Where it is, with its ±.
    pub found: PlacedEnd,
    /// How that is known.
    pub by: FoundBy,
    /// From the planned place to the one found, mm.
    pub off: Vector,
    /// Angle between the planned direction and the one found, radians.
    pub lean_rad: f64,
    /// Turn about the travel from the planned clock, radians.
    pub roll_rad: f64,
    /// Its readings.
    pub readings: Vec<TapeSeen>,
    /// Slopes of its face.
    pub slopes: Vec<SlopeSeen>,
    /// Which way it could still move by its readings alone, and the one reading to add; `None` when they
    /// fix it.
    pub loose: Option<String>,
    /// In which direction its place is known worse than what is pulled in, when it is.
    pub loosest: Option<LooseWay>,
    /// How far its face leans from the planned one, as a face gauge shows it: to the top (twelve
    /// o'clock forward along the travel is plus) and to the right, radians.
    pub face_rad: [f64; 2],
}

/// Why a joint was not found.
#[derive(Clone, Debug, PartialEq, thiserror::Error)]
#[non_exhaustive]
pub enum PoseError {
    /// No such joint.
    #[error("no joint of the plan has the mark {0}")]
    NoJoint(String),
    /// It was not measured.
    #[error(
        "the record holds no readings at {0}: tape from at least three marks to clock marks on its rim"
    )]
    NoReadings(String),
    /// A mark that the survey does not place.
    #[error("the reading from “{0}” cannot be used: the readings of the car do not fix that place")]
    NotPlaced(String),
    /// A set-up whose plumb line the survey does not give.
    #[error(
        "the slope read in the set-up “{0}” cannot be used: the readings of the car do not tell which way is up in it; take the heights of three marks in it"
    )]
    NoPlumb(String),
    /// The readings do not give a place.
    #[error("joint {joint}: {source}")]
    Readings {
        /// Its mark.
        joint: String,
        /// Why.
        source: BuiltError,
    },
}

/// The shop's ± as standard deviations.
#[must_use]
pub fn workmanship(practice: &ResolvedPractice) -> Workmanship {
    let tolerances = crate::held::tolerances_of(practice);
    Workmanship {
        cut_length_mm: tolerances.cut_length.mm(),
        cut_angle_rad: tolerances.cut_angle.rad(),
        clock_rad: tolerances.clock.rad(),
        bend_angle_rad: tolerances.bend_angle.rad(),
        weld_pull_mm: tolerances.weld_pull.mm(),
    }
}

/// What the pieces from the start of the run, or from the last joint that was measured, leave open at a
/// piece's upstream end.
pub(super) fn budget_to(
    run: &PlannedRun,
    until: usize,
    start: &PlacedEnd,
    work: &Workmanship,
) -> Budget {
    let at = start.frame_in_car.origin;
    let mut budget = Budget::starting(PoseSpread::new(at, &start.covariance));
    for piece in run.pieces.iter().take(until) {
        budget = budget.tacking(
            &Tacked {
                joined: piece.frame_in,
                open: piece.frame_out,
                bends: u32::from(matches!(piece.kind, PlannedKind::Bend { .. })),
                is_welded: true,
            },
            work,
        );
    }
    budget
}

/// Finds a joint from the readings that the record holds of it.
///
/// # Errors
/// [`PoseError`].
pub fn joint_as_built(
    model: &Model,
    around: &Surroundings,
    runs: &[PlannedRun],
    steel: &Steel,
    mark: &str,
) -> Result<JointFound, PoseError> {
    let (number, planned) =
        joint_of(runs, mark).ok_or_else(|| PoseError::NoJoint(mark.to_owned()))?;
    let run = runs
        .get(number)
        .ok_or_else(|| PoseError::NoJoint(mark.to_owned()))?;
    let readings = steel
        .readings
        .get(mark)
        .ok_or_else(|| PoseError::NoReadings(mark.to_owned()))?;
    let tapes = tapes(model, around, readings)?;
    let faces = steel.faces.get(mark).map_or(&[][..], Vec::as_slice);
    let slopes = slopes(model, around, faces)?;
    let radius_mm = 0.5 * run.od_at_joint_mm(planned.piece);
    let start = model
        .build
        .run(&run.name)
        .and_then(|written| match &written.from {
            tubewright_build::model::RunEnd::End(name) => {
                around.measured.places.ends.get(name.as_str()).copied()
            }
            tubewright_build::model::RunEnd::Port { .. } => {
                Some(PlacedEnd::as_built(run.start, &around.measured.accuracy))
            }
        })
        .unwrap_or(PlacedEnd {
            frame_in_car: run.start,
            covariance: [[0.0; 6]; 6],
        });
    let before = budget_to(run, planned.piece, &start, &workmanship(&around.practice)).total();
    let built = built_joint(
        &planned.frame,
        &widened(&before),
        radius_mm,
        &tapes,
        &slopes,
    )
    .map_err(|source| PoseError::Readings {
        joint: mark.to_owned(),
        source,
    })?;
    // Marks that lie nearly in one plane fit a second place as well, mirrored in that plane: the one
    // that the pieces can reach is it.
    let alone = by_tape_alone(model, run, mark, readings, faces).filter(|end| {
        let (is, near) = (&end.frame_in_car, &built.frame);
        is.origin.distance(near.origin) < SAME_PLACE_MM
            && is.travel().angle_to(near.travel()) < SAME_WAY_DEG.to_radians()
    });
    let (found, by) = match alone {
        Some(end) => (end, FoundBy::Tape),
        None => (
            PlacedEnd {
                frame_in_car: built.frame,
                covariance: built.spread.covariance(),
            },
            FoundBy::TapeAndPieces,
        ),
    };
    let frame = found.frame_in_car;
    let taped: Vec<Taped<'_>> = readings
        .iter()
        .zip(&tapes)
        .map(|(reading, tape)| Taped {
            mark: reading.from.at.name().as_str(),
            tape,
        })
        .collect();
    let marks: Vec<Mark<'_>> = model
        .build
        .marks
        .iter()
        .filter_map(|mark| {
            let placed = around.measured.places.points.get(mark.name.as_str())?;
            Some(Mark {
                name: mark.name.as_str(),
                at: placed.point_in_car,
            })
        })
        .collect();
    let loose = loose_words(&frame, radius_mm, &taped, &slopes, &marks);
    let seen = readings
        .iter()
        .zip(&tapes)
        .zip(&built.standardised)
        .map(|((reading, tape), w)| TapeSeen {
            from: reading.from.at.name().to_string(),
            clock_rad: tape.clock_rad,
            reads_mm: tape.reads_mm,
            planned_mm: rim_place(&planned.frame, radius_mm, tape.clock_rad).distance(tape.mark),
            residual_mm: tape.reads_mm - tape.place(&frame, radius_mm).distance(tape.mark),
            is_doubtful: w.abs() > DOUBTFUL,
        })
        .collect();
    let of_slopes = built.standardised.iter().skip(tapes.len());
    let slopes_seen = faces
        .iter()
        .zip(&slopes)
        .zip(of_slopes)
        .map(|((face, slope), w)| SlopeSeen {
            clock_rad: slope.clock_rad,
            setup: face.setup.to_string(),
            reads_rad: slope.reads_rad,
            planned_rad: slope.expected(&planned.frame),
            residual_rad: slope.reads_rad - slope.expected(&frame),
            is_doubtful: w.abs() > DOUBTFUL,
        })
        .collect();
    let planned_travel = planned.frame.travel().vector();
    Ok(JointFound {
        loosest: LooseWay::of(&PoseSpread::new(frame.origin, &found.covariance)),
        face_rad: [planned.frame.twelve(), planned.frame.three()].map(|axis| {
            let travel = frame.travel();
            math::atan2(travel.dot(axis.vector()), travel.dot(planned_travel))
        }),
        off: frame.origin - planned.frame.origin,
        lean_rad: frame.travel().angle_to(planned.frame.travel()),
        roll_rad: planned.frame.clock_of(frame.twelve().vector()),
        planned,
        run: number,
        found,
        by,
        readings: seen,
        slopes: slopes_seen,
        loose,
    })
}

/// The tape alone and the tape with the pieces tell of the same place when they are this near, mm and
/// degrees: a mirrored place is further off by far (common practice, no source).
const SAME_PLACE_MM: f64 = 15.0;
const SAME_WAY_DEG: f64 = 8.0;

/// Baarda's critical value for 1 in 1000.
const DOUBTFUL: f64 = 3.29;

/// A fitter who tacks by eye is off by more than his pieces: what the pieces leave open is widened by
/// 3 mm and 1° (σ; common practice, no source), so that a slip while tacking is seen and not taken for
/// a bad reading.
fn widened(before: &PoseSpread) -> PoseSpread {
    use tubewright_geometry::UnitVector;
    [UnitVector::X, UnitVector::Y, UnitVector::Z]
        .into_iter()
        .fold(*before, |spread, axis| {
            spread
                .with_shift(axis, BY_EYE_MM)
                .with_turn(axis, BY_EYE_DEG.to_radians(), spread.at)
        })
}

const BY_EYE_MM: f64 = 3.0;
const BY_EYE_DEG: f64 = 1.0;

fn tapes(
    model: &Model,
    around: &Surroundings,
    readings: &[JointReading],
) -> Result<Vec<JointTape>, PoseError> {
    let accuracy = model.build.accuracy.resolved();
    // As for every end of the car: a tape held to a rim has the ± of rims.
    let sigma_mm = accuracy.rim.mm() / NINETEEN_IN_TWENTY;
    readings
        .iter()
        .map(|reading| {
            let placed = around
                .measured
                .places
                .place(&reading.from.at)
                .ok_or_else(|| PoseError::NotPlaced(reading.from.at.name().to_string()))?;
            Ok(JointTape {
                mark: placed.point_in_car,
                mark_covariance: placed.covariance,
                clock_rad: reading.rim.map(|clock| clock.angle().rad()),
                reads_mm: reading.reads.value.mm(),
                sigma_mm,
            })
        })
        .collect()
}

fn slopes(
    model: &Model,
    around: &Surroundings,
    faces: &[JointFace],
) -> Result<Vec<JointSlope>, PoseError> {
    let sigma_rad = model.build.accuracy.resolved().angle.rad() / NINETEEN_IN_TWENTY;
    faces
        .iter()
        .map(|face| {
            let floor = around
                .measured
                .places
                .floors
                .get(face.setup.as_str())
                .ok_or_else(|| PoseError::NoPlumb(face.setup.to_string()))?;
            Ok(JointSlope {
                clock_rad: face.clock.value.angle().rad(),
                up: floor.plumb,
                reads_rad: face.reads.value.rad(),
                sigma_rad,
            })
        })
        .collect()
}

/// The joint as an end of the car like any other, adjusted with all readings; `None` when its own
/// readings do not fix it.
fn by_tape_alone(
    model: &Model,
    run: &PlannedRun,
    mark: &str,
    readings: &[JointReading],
    faces: &[JointFace],
) -> Option<PlacedEnd> {
    let on_rim = readings.iter().filter(|reading| reading.rim.is_some());
    if on_rim.count() < LEAST_FOR_A_POSE {
        return None;
    }
    let mut build = model.build.clone();
    // No name of the build holds a line break.
    let name = Name::new(&format!("joint\n{mark}"));
    build.ends.push(End {
        name: name.clone(),
        kind: EndKind::Joint,
        carrier: tubewright_build::model::CarrierRef::Chassis,
        od: Quantity::new(Length::from_mm(run.od_mm), String::new()),
        rim: None,
        material: None,
        held_by: None,
        bolts: Vec::new(),
        flows: Flows::Out,
        place: None,
        saw_off: None,
        given: None,
        span: Span::none(),
    });
    let first = build
        .readings
        .iter()
        .map(|reading| reading.number)
        .max()
        .unwrap_or(0);
    let tapes = readings.iter().map(|reading| ReadingKind::Tape {
        from: reading.from.clone(),
        to: Place {
            at: PlaceAt::End {
                end: name.clone(),
                at: reading.rim.map_or(EndPlace::Centre, EndPlace::Rim),
            },
            span: Span::none(),
        },
        reads: reading.reads.clone(),
        burnt: None,
        holes: Vec::new(),
        sides: Vec::new(),
    });
    let slopes = faces.iter().map(|face| ReadingKind::Face {
        end: name.clone(),
        clock: face.clock.clone(),
        setup: face.setup.clone(),
        reads: face.reads.clone(),
    });
    for (kind, number) in tapes.chain(slopes).zip(first.saturating_add(1)..) {
        build.readings.push(Reading {
            number,
            kind,
            plus_minus: None,
            note: None,
            doubt: None,
            span: Span::none(),
        });
    }
    let measured = measure(&build).ok()?;
    measured.places.ends.get(name.as_str()).copied()
}

/// A pose has six unknowns.
const LEAST_FOR_A_POSE: usize = 2 * LEAST_READINGS;
