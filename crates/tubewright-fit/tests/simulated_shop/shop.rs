//! The fitter: cuts, tacks, tapes, moves, re-plans.

use rand_pcg::Pcg64Mcg;
use tubewright_fit::PoseSpread;
use tubewright_fit::budget::{Budget, Tacked, Workmanship};
use tubewright_fit::built::{BuiltJoint, JointSlope, JointTape, built_joint, turned};
use tubewright_fit::check::{CheckDistance, InTheWay, Taping, choose, possible_distances};
use tubewright_fit::reclose::{Aim, Loose, May, Steps, WayOn, as_they_are, ways_on};
use tubewright_geometry::{Frame, Piece, UnitVector, Vector};

use crate::builds::{Planned, RADIUS_MM, normal, planned};

/// How the fitter works.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Habit {
    /// Tacks by length and clock mark, never tapes.
    ByTheCard,
    /// Moves every open end until the check distances read true.
    Checked,
    /// That, and what is still off is taken up by what is not tacked yet.
    Taped,
    /// That, with the angle finder laid on every open face as well.
    Sloped,
}

pub(crate) struct Outcome {
    pub(crate) last_piece_fits: bool,
    pub(crate) gaps_hold: bool,
}

/// The stated tolerances (± 1 mm of length, 0.5° of face, 1° of clock, 1° of bend, ± 0.25 mm of pull;
/// 19 in 20) as standard deviations.
const WORK: Workmanship = Workmanship {
    cut_length_mm: 0.51,
    cut_angle_rad: 0.0045,
    clock_rad: 0.0089,
    bend_angle_rad: 0.0089,
    weld_pull_mm: 0.13,
};

/// A tape held to a rim: ± 2 mm.
const TAPE_SIGMA_MM: f64 = 1.02;

/// An angle finder laid on a rim, ± 0.5°.
const SLOPE_SIGMA_RAD: f64 = 0.0045;

/// What the clearances count for a joint that is held by check distances: ± 6 mm.
const ROOM_MM: f64 = 6.0;

/// Largest kink at either joint of the closing piece, 2°: a face that is scribed and sawn that far out
/// of square still closes up (common practice, no source).
const MOST_KINK_RAD: f64 = 0.035;

/// What re-planning aims to arrive within.
const PULLED_IN_MM: f64 = 3.0;
const PULLED_IN_RAD: f64 = 0.0175;

/// How far a tacked joint can be leaned before it opens too far, radians: half a wall of 1.5 mm over
/// the tube's diameter.
const MOST_LEAN_RAD: f64 = 0.75 / 57.0;

const STEPS: Steps = Steps {
    length_mm: 1.0,
    angle_rad: 0.017_453_292_519_943_295,
    clock_rad: 0.017_453_292_519_943_295,
};

pub(crate) fn build(seed: u64, habit: Habit) -> Outcome {
    let (plan, mut rng) = planned(seed);
    let end = plan
        .pieces
        .iter()
        .fold(plan.start, |frame, piece| piece.carry(&frame));
    let aim = Aim {
        point: end.origin,
        direction: end.travel(),
        place_mm: PULLED_IN_MM,
        direction_rad: PULLED_IN_RAD,
    };
    let mut pieces = plan.pieces.clone();
    let mut believed = plan.start;
    let mut real = plan.start;
    let mut budget = Budget::starting(PoseSpread::sure(plan.start.origin));
    let mut gaps_hold = true;
    let closing = pieces.len() - 1;
    for index in 0..closing {
        let piece = pieces[index];
        let open = piece.carry(&believed);
        // Where the plan has the open end: moved only when the rest is planned anew from it.
        let mut stands = open;
        budget = budget.tacking(
            &Tacked {
                joined: believed,
                open,
                bends: u32::from(matches!(piece, Piece::Bend { .. })),
                is_welded: true,
            },
            &WORK,
        );
        let mut tacked = tack(&real, &piece, &mut rng);
        if habit != Habit::ByTheCard {
            let chosen = distances(&plan, &open, &budget.total());
            if chosen.len() >= 3 {
                let taping = Reading {
                    chosen: &chosen,
                    has_slopes: habit == Habit::Sloped,
                };
                let found = taped(&plan, &open, &budget.total(), &taping, &tacked, &mut rng);
                if let Some(found) = found {
                    // Moved by leaning and turning the tacked joint, as far as it goes.
                    tacked = moved(&real, &tacked, &found.frame, &open);
                    if let Some(after) =
                        taped(&plan, &open, &budget.total(), &taping, &tacked, &mut rng)
                    {
                        let tapes = chosen.iter().map(|d| (d.row, d.variance));
                        let slopes = taping
                            .slopes_of(&open)
                            .map(|slope| (slope.row(&open), SLOPE_SIGMA_RAD * SLOPE_SIGMA_RAD));
                        let rows: Vec<_> = tapes.chain(slopes).collect();
                        budget = budget.checked(&rows);
                        let sure = 1.96 * after.spread.shift_sigma_bound();
                        if matches!(habit, Habit::Taped | Habit::Sloped)
                            && after.frame.origin.distance(open.origin) > sure
                            && let Some(way) = replanned(&after, &pieces[index + 1..], &aim)
                        {
                            stands = after.frame;
                            pieces.truncate(index + 1);
                            pieces.extend(way);
                        }
                    }
                }
            }
        }
        believed = stands;
        real = tacked;
        // The joint must keep within what the clearances count, of where the plan of that moment has
        // it: where it was re-planned, it was re-planned clear of everything.
        gaps_hold &= real.origin.distance(believed.origin) <= ROOM_MM;
    }
    // The closing piece is cut to the gap that is there, both faces scribed from the open ends: what is
    // off across it and in direction becomes a kink at either joint.
    let axis = (aim.point - real.origin).direction();
    let kink = axis.map_or(f64::INFINITY, |axis| {
        axis.angle_to(real.travel())
            .max(axis.angle_to(aim.direction))
    });
    Outcome {
        last_piece_fits: kink <= MOST_KINK_RAD,
        gaps_hold,
    }
}

/// The open end of a piece tacked on with the shop's errors.
fn tack(at: &Frame, piece: &Piece, rng: &mut Pcg64Mcg) -> Frame {
    let mut frame = *at;
    for axis in [frame.twelve(), frame.three(), frame.twelve(), frame.three()] {
        frame = turned(&frame, axis * (WORK.cut_angle_rad * normal(rng)));
    }
    frame = frame
        .rolled(WORK.clock_rad * normal(rng))
        .advanced(WORK.cut_length_mm * normal(rng) + WORK.weld_pull_mm * normal(rng));
    match *piece {
        Piece::Bend {
            bend_rad,
            clock_rad,
            clr_mm,
        } => Piece::Bend {
            bend_rad: bend_rad + WORK.bend_angle_rad * normal(rng),
            clock_rad,
            clr_mm,
        },
        other => other,
    }
    .carry(&frame)
}

fn distances(plan: &Planned, open: &Frame, before: &PoseSpread) -> Vec<CheckDistance> {
    let nothing = InTheWay {
        bodies: &[],
        tubes: &[],
    };
    let possible = possible_distances(
        open,
        RADIUS_MM,
        &plan.marks,
        &nothing,
        &Taping::usual(TAPE_SIGMA_MM),
    );
    choose(before, &possible, 6)
}

/// What is read at an open end.
struct Reading<'a> {
    chosen: &'a [CheckDistance],
    has_slopes: bool,
}

impl Reading<'_> {
    /// Slopes of a face toward twelve and three, as they read where it lies.
    fn slopes_of(&self, real: &Frame) -> impl Iterator<Item = JointSlope> {
        let clocks: &[f64] = if self.has_slopes { &[0.0, 0.25] } else { &[] };
        let real = *real;
        clocks.iter().map(move |turns| {
            let mut slope = JointSlope {
                clock_rad: tubewright_geometry::math::TAU * turns,
                up: UnitVector::Z,
                reads_rad: 0.0,
                sigma_rad: SLOPE_SIGMA_RAD,
            };
            slope.reads_rad = slope.expected(&real);
            slope
        })
    }
}

/// Where the tape and the angle finder put the open end.
fn taped(
    plan: &Planned,
    planned: &Frame,
    before: &PoseSpread,
    reading: &Reading<'_>,
    real: &Frame,
    rng: &mut Pcg64Mcg,
) -> Option<BuiltJoint> {
    let tapes: Vec<JointTape> = reading
        .chosen
        .iter()
        .filter_map(|distance| {
            let index = plan
                .marks
                .iter()
                .position(|mark| mark.name == distance.mark)?;
            let place = real.origin + real.at_clock(distance.clock_rad) * RADIUS_MM;
            Some(JointTape {
                mark: plan.marks[index].place,
                mark_covariance: plan.marks[index].covariance,
                clock_rad: Some(distance.clock_rad),
                reads_mm: place.distance(plan.true_marks[index]) + TAPE_SIGMA_MM * normal(rng),
                sigma_mm: TAPE_SIGMA_MM,
            })
        })
        .collect();
    let slopes: Vec<JointSlope> = reading
        .slopes_of(real)
        .map(|slope| JointSlope {
            reads_rad: slope.reads_rad + SLOPE_SIGMA_RAD * normal(rng),
            ..slope
        })
        .collect();
    built_joint(planned, before, RADIUS_MM, &tapes, &slopes).ok()
}

/// The open end after the fitter has turned and leaned the tacked joint so that it would lie as
/// planned, were it where the tape has it.
fn moved(joint: &Frame, real: &Frame, found: &Frame, planned: &Frame) -> Frame {
    let off = planned.origin - found.origin;
    let arm = found.origin - joint.origin;
    let reach = arm.norm().max(1.0);
    // The turn about the joint that carries the end across by `off`, and the roll left over.
    let across = arm.cross(off) / (reach * reach);
    let along = joint.travel().vector();
    let clock = along.dot(across);
    let mut lean = across - along * clock;
    if lean.norm() > MOST_LEAN_RAD {
        lean = lean * (MOST_LEAN_RAD / lean.norm());
    }
    let turn: Vector = lean + along * clock;
    let swung = turned(
        &Frame::from_axes(joint.origin, real.travel(), real.twelve()),
        turn,
    );
    let axis = turn.direction();
    let origin = axis.map_or(real.origin, |axis| {
        joint.origin + rotated(real.origin - joint.origin, axis.vector(), turn.norm())
    });
    Frame::from_axes(origin, swung.travel(), swung.twelve())
}

fn rotated(v: Vector, axis: Vector, angle: f64) -> Vector {
    {
        let (sin, cos) = tubewright_geometry::math::sin_cos(angle);
        v * cos + axis.cross(v) * sin + axis * (axis.dot(v) * (1.0 - cos))
    }
}

/// The rest anew where it would surely not arrive as it is, and would arrive better.
fn replanned(joint: &BuiltJoint, rest: &[Piece], aim: &Aim) -> Option<Vec<Piece>> {
    let from = &joint.frame;
    let off = |way: &WayOn| {
        (way.place_error_mm / aim.place_mm).powi(2)
            + (way.direction_error_rad / aim.direction_rad).powi(2)
    };
    let as_planned = as_they_are(from, rest.to_vec(), aim);
    // What is less than its own ± is no reason to change anything.
    let sigma = joint.spread.carried_to(aim.point).shift_sigma_bound();
    if as_planned.place_error_mm <= aim.place_mm + 1.96 * sigma {
        return None;
    }
    let loose: Vec<Loose> = rest
        .iter()
        .map(|piece| Loose {
            piece: *piece,
            may: match piece {
                Piece::Straight { .. } => May {
                    length_mm: Some((25.0, 700.0)),
                    ..May::default()
                },
                _ => May {
                    clock: true,
                    ..May::default()
                },
            },
        })
        .collect();
    ways_on(from, &loose, aim, &STEPS, 1)
        .into_iter()
        .next()
        .filter(|way| off(way) < off(&as_planned))
        .map(|way| way.pieces)
}
