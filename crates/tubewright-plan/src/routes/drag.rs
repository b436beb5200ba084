//! A joint or a bend that is taken by hand and moved: the run gives as a whole, and its ends stay.
//!
//! What comes out is a line as drawn by hand. Its bends have any angle and its straights any length, so
//! it is looked at and not built: the search finds the pieces that come there.

use nalgebra::{DMatrix, DVector};
use tubewright_build::model::Model;
use tubewright_geometry::{Frame, Point, math};

use super::planned::{PlannedKind, PlannedRun};
use super::problem::PosedProblem;
use super::walk::{WalkError, walk_laid};

/// What is taken by hand.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Grip {
    /// The joint upstream of a piece, counted from 0.
    Joint(usize),
    /// The middle of a bend, by the number of its piece.
    Bend(usize),
}

/// Something that can be taken by hand.
#[derive(Clone, Debug, PartialEq)]
pub struct GripPlace {
    /// What it is.
    pub grip: Grip,
    /// Mark of the joint or the bend.
    pub mark: String,
    /// Where it is.
    pub at: Point,
    /// Whether it can be moved: not at an end, a part where runs meet, or a joint that stands.
    pub is_free: bool,
}

/// A run as drawn by hand.
#[derive(Clone, Debug, PartialEq)]
pub struct Dragged {
    /// Its pieces, which end where they ended before.
    pub run: PlannedRun,
    /// Where what was taken came: as near to where it was wanted as the run gives.
    pub at: Point,
}

/// Why a run cannot be moved by hand.
#[derive(Clone, Debug, PartialEq, Eq, thiserror::Error)]
#[non_exhaustive]
pub enum DragError {
    /// There is no such joint or bend.
    #[error("the run has no such joint or bend any more; look at it again")]
    NoSuch,
    /// It cannot be moved.
    #[error(
        "{0} is held: an end, a part where runs meet or a tacked joint stays where it is; take one between"
    )]
    Held(String),
    /// The run cannot be walked.
    #[error(transparent)]
    Walk(#[from] WalkError),
}

/// Everything on a run that can be taken by hand. `is_standing` tells of a joint's mark whether it is
/// tacked already.
#[must_use]
pub fn grips(run: &PlannedRun, is_standing: &dyn Fn(&str) -> bool) -> Vec<GripPlace> {
    let held = held_joints(run, is_standing);
    let mut all = Vec::new();
    for (number, piece) in run.pieces.iter().enumerate() {
        let mut put = |grip: Grip, mark: &str, at: Point| {
            all.push(GripPlace {
                grip,
                mark: mark.to_owned(),
                at,
                is_free: stretch_of(&held, grip).is_some(),
            });
        };
        put(Grip::Joint(number), &piece.joint, piece.frame_in.origin);
        if let PlannedKind::Bend { .. } = piece.kind {
            let middle = piece.frame_at(0.5 * piece.centre_line_mm());
            put(Grip::Bend(number), &piece.mark, middle.origin);
        }
    }
    all
}

/// Moves what is taken to `to`, or as near as the run gives: lengths, bend angles and clocks change
/// as little as they can, the parts and radii do not. Both ends of the stretch between what is held stay
/// to 0.05 mm.
///
/// # Errors
/// [`DragError`].
pub fn dragged(
    model: &Model,
    posed: &PosedProblem,
    run: &PlannedRun,
    grip: Grip,
    to: Point,
    is_standing: &dyn Fn(&str) -> bool,
) -> Result<Dragged, DragError> {
    let place = grips(run, is_standing)
        .into_iter()
        .find(|place| place.grip == grip)
        .ok_or(DragError::NoSuch)?;
    let held = held_joints(run, is_standing);
    let (from, until) =
        stretch_of(&held, grip).ok_or_else(|| DragError::Held(place.mark.clone()))?;
    let stretch = Stretch::of(run, from, until, grip).ok_or(DragError::NoSuch)?;
    let (kinds, at) = stretch.moved(place.at, to);
    let (mut laid, marks) = run.laid();
    let end = stretch.walk(&kinds).0;
    for (old, new) in laid.pieces.iter_mut().skip(from).zip(kinds) {
        *old = new;
    }
    // What lies behind the stretch stays as it is clocked in the car.
    let behind = run.pieces.iter().zip(&mut laid.pieces).skip(until);
    for (piece, kind) in behind {
        match kind {
            PlannedKind::Bend { clock_rad, .. } => {
                *clock_rad = end.clock_of(piece.frame_in.twelve().vector());
                break;
            }
            PlannedKind::Crossover { .. } => break,
            PlannedKind::Straight { .. } | PlannedKind::Component { .. } => {}
        }
    }
    let run = walk_laid(model, posed, &laid, &marks)?;
    Ok(Dragged { run, at })
}

/// Joints that stay where they are, by the number of the piece behind them, rising.
fn held_joints(run: &PlannedRun, is_standing: &dyn Fn(&str) -> bool) -> Vec<usize> {
    let mut held = vec![0];
    for (number, piece) in run.pieces.iter().enumerate() {
        let is_part = matches!(piece.kind, PlannedKind::Crossover { .. });
        if is_part || is_standing(&piece.joint) {
            held.push(number);
        }
        if is_part {
            held.push(number + 1);
        }
    }
    held.push(run.pieces.len());
    held.sort_unstable();
    held.dedup();
    held
}

/// The pieces between the held joints round what is taken; `None` when it is held itself.
fn stretch_of(held: &[usize], grip: Grip) -> Option<(usize, usize)> {
    held.windows(2).find_map(|pair| {
        let (&from, &until) = (pair.first()?, pair.last()?);
        let is_between = match grip {
            Grip::Joint(number) => from < number && number < until,
            Grip::Bend(number) => from <= number && number < until && until - from > 1,
        };
        is_between.then_some((from, until))
    })
}

/// A radian weighs as much as so many mm when the change is shared out: about what a radian does a hand
/// further on.
const MM_PER_RAD: f64 = 150.0;
/// A direction that is off by a radian counts as so many mm.
const ARRIVAL_MM: f64 = 300.0;
/// How much the wish of the hand counts beside the ends, while both are worked on.
const HAND_SHARE: f64 = 0.3;
/// Steps toward the hand. Few and damped: what a run gives only by much in other places it does not give.
const HAND_STEPS: usize = 8;
/// Steps that then bring the ends back exactly.
const CLOSING_STEPS: usize = 20;
/// Longest single step, mm or its like in angle.
const LONGEST_STEP_MM: f64 = 60.0;
/// Added to the squares while the hand is followed: what a change of a mm moves by less than about a fifth of
/// one is hardly used.
const HAND_DAMPING: f64 = 0.05;
/// The same while the ends are brought back, so that a run that cannot give in some way is no trouble.
const CLOSING_DAMPING: f64 = 1e-3;
/// No joint may move further than so many times what the hand moves, and these mm.
const MOST_SPREAD: (f64, f64) = (2.5, 5.0);
/// Step for derivatives, mm or its like in angle.
const DERIVATIVE_MM: f64 = 1e-3;
/// The ends must come back to this, mm.
const CLOSED_MM: f64 = 0.05;
/// Shares of the wish that are tried, one after another.
const SHARES: [f64; 6] = [1.0, 0.7, 0.4, 0.2, 0.1, 0.05];
/// Rows of the misfit: place and direction of the end, then the place of what is taken.
const CLOSURE_ROWS: usize = 6;
const ALL_ROWS: usize = 9;

struct Stretch {
    kinds: Vec<PlannedKind>,
    start: Frame,
    end: Frame,
    /// Piece, counted from the stretch's first, and the share of it where it is taken.
    taken: (usize, f64),
}

impl Stretch {
    fn of(run: &PlannedRun, from: usize, until: usize, grip: Grip) -> Option<Self> {
        let (number, share) = match grip {
            Grip::Joint(number) => (number, 0.0),
            Grip::Bend(number) => (number, 0.5),
        };
        let before = from.checked_sub(1);
        let start = match before {
            Some(before) => run.pieces.get(before)?.frame_out,
            None => run.start,
        };
        let pieces = run.pieces.get(from..until)?;
        Some(Self {
            kinds: pieces.iter().map(|piece| piece.kind.clone()).collect(),
            start,
            end: pieces.last()?.frame_out,
            taken: (number.checked_sub(from)?, share),
        })
    }

    /// Where the pieces end, and where what is taken lies.
    fn walk(&self, kinds: &[PlannedKind]) -> (Frame, Point) {
        let (number, share) = self.taken;
        let mut frame = self.start;
        let mut taken = frame.origin;
        for (at, kind) in kinds.iter().enumerate() {
            let (start, length, clr) = match *kind {
                PlannedKind::Straight { length_mm } | PlannedKind::Component { length_mm, .. } => {
                    (frame, length_mm, None)
                }
                PlannedKind::Bend {
                    angle_rad,
                    clock_rad,
                    clr_mm,
                } => (frame.rolled(clock_rad), angle_rad, Some(clr_mm)),
                PlannedKind::Crossover { .. } => (frame, 0.0, None),
            };
            let along = |share: f64| match clr {
                Some(clr_mm) => start.bent(share * length, clr_mm),
                None => start.advanced(share * length),
            };
            if at == number {
                taken = along(share).origin;
            }
            frame = along(1.0);
        }
        (frame, taken)
    }

    /// The pieces with what is taken moved from `was` toward `to`, and where it came. As they are when they
    /// cannot give at all.
    fn moved(&self, was: Point, to: Point) -> (Vec<PlannedKind>, Point) {
        for share in SHARES {
            let kinds = self.toward(was.lerp(to, share));
            let (end, taken) = self.walk(&kinds);
            let most_mm = MOST_SPREAD.0 * share * was.distance(to) + MOST_SPREAD.1;
            if self.end_off(&end).norm() < CLOSED_MM && self.spread_mm(&kinds) <= most_mm {
                return (kinds, taken);
            }
        }
        (self.kinds.clone(), was)
    }

    /// The furthest that an end of a piece lies from where it was, mm.
    fn spread_mm(&self, kinds: &[PlannedKind]) -> f64 {
        (1..kinds.len())
            .filter_map(|count| {
                let was = self.walk(self.kinds.get(..count)?).0;
                let now = self.walk(kinds.get(..count)?).0;
                Some(was.origin.distance(now.origin))
            })
            .fold(0.0, f64::max)
    }

    fn toward(&self, to: Point) -> Vec<PlannedKind> {
        let mut unknowns = Unknowns::of(&self.kinds);
        // First both the hand and the ends, then what is left at the ends.
        for (rows, steps, damping) in [
            (ALL_ROWS, HAND_STEPS, HAND_DAMPING),
            (CLOSURE_ROWS, CLOSING_STEPS, CLOSING_DAMPING),
        ] {
            for _ in 0..steps {
                let off = self.off(&unknowns, to).rows(0, rows).into_owned();
                let step = self.step(&unknowns, to, &off, damping);
                if step.amax() < 1e-4 {
                    break;
                }
                unknowns.take(&step);
            }
        }
        unknowns.kinds(&self.kinds)
    }

    fn end_off(&self, end: &Frame) -> DVector<f64> {
        let place = end.origin - self.end.origin;
        let way = (end.travel().vector() - self.end.travel().vector()) * ARRIVAL_MM;
        DVector::from_iterator(
            CLOSURE_ROWS,
            place.to_array().into_iter().chain(way.to_array()),
        )
    }

    fn off(&self, unknowns: &Unknowns, to: Point) -> DVector<f64> {
        let (end, taken) = self.walk(&unknowns.kinds(&self.kinds));
        let hand = (taken - to) * HAND_SHARE;
        let ends = self.end_off(&end);
        DVector::from_iterator(ALL_ROWS, ends.iter().copied().chain(hand.to_array()))
    }

    /// The smallest change that takes the misfit away, with what would leave its bounds held.
    fn step(
        &self,
        unknowns: &Unknowns,
        to: Point,
        off: &DVector<f64>,
        damping: f64,
    ) -> DVector<f64> {
        let (rows, count) = (off.len(), unknowns.values.len());
        let base = self.off(unknowns, to);
        let mut slopes = DMatrix::zeros(rows, count);
        for column in 0..count {
            let mut beside = unknowns.clone();
            if let Some(value) = beside.values.get_mut(column) {
                *value += DERIVATIVE_MM;
            }
            let change = (self.off(&beside, to) - &base) / DERIVATIVE_MM;
            slopes.set_column(column, &change.rows(0, rows));
        }
        let mut step = DVector::zeros(count);
        for _ in 0..=count {
            let mut squares = &slopes * slopes.transpose();
            for row in 0..rows {
                squares[(row, row)] += damping;
            }
            let Some(solved) = squares.cholesky().map(|squares| squares.solve(off)) else {
                return DVector::zeros(count);
            };
            step = -(slopes.transpose() * solved);
            let leaving: Vec<usize> = (0..count)
                .filter(|at| unknowns.leaves(*at, step.get(*at).copied().unwrap_or(0.0)))
                .collect();
            if leaving.is_empty() {
                break;
            }
            for at in leaving {
                slopes.set_column(at, &DVector::zeros(rows));
            }
        }
        let longest = step.amax();
        if longest > LONGEST_STEP_MM {
            step *= LONGEST_STEP_MM / longest;
        }
        step
    }
}

/// What may change of a row of pieces: lengths in mm, angles in mm by [`MM_PER_RAD`].
#[derive(Clone, Debug)]
struct Unknowns {
    values: Vec<f64>,
    /// Least and most of each.
    bounds: Vec<(f64, f64)>,
}

impl Unknowns {
    fn of(kinds: &[PlannedKind]) -> Self {
        let (mut values, mut bounds) = (Vec::new(), Vec::new());
        let mut put = |value: f64, bound: (f64, f64)| {
            values.push(value);
            bounds.push(bound);
        };
        for kind in kinds {
            match *kind {
                PlannedKind::Straight { length_mm } => put(length_mm, (0.0, f64::INFINITY)),
                PlannedKind::Bend {
                    angle_rad,
                    clock_rad,
                    ..
                } => {
                    put(angle_rad * MM_PER_RAD, (0.0, math::PI * MM_PER_RAD));
                    put(clock_rad * MM_PER_RAD, (f64::NEG_INFINITY, f64::INFINITY));
                }
                PlannedKind::Component { .. } | PlannedKind::Crossover { .. } => {}
            }
        }
        Self { values, bounds }
    }

    fn leaves(&self, at: usize, step: f64) -> bool {
        match (self.values.get(at), self.bounds.get(at)) {
            (Some(&value), Some(&(least, most))) => {
                (value <= least && step < 0.0) || (value >= most && step > 0.0)
            }
            _ => false,
        }
    }

    fn take(&mut self, step: &DVector<f64>) {
        let values = self.values.iter_mut().zip(&self.bounds);
        for ((value, (least, most)), step) in values.zip(step.iter()) {
            *value = (*value + step).clamp(*least, *most);
        }
    }

    fn kinds(&self, like: &[PlannedKind]) -> Vec<PlannedKind> {
        let mut values = self.values.iter().copied();
        let mut next = |was: f64| values.next().unwrap_or(was);
        like.iter()
            .map(|kind| match *kind {
                PlannedKind::Straight { length_mm } => PlannedKind::Straight {
                    length_mm: next(length_mm),
                },
                PlannedKind::Bend {
                    angle_rad,
                    clock_rad,
                    clr_mm,
                } => PlannedKind::Bend {
                    angle_rad: next(angle_rad * MM_PER_RAD) / MM_PER_RAD,
                    clock_rad: next(clock_rad * MM_PER_RAD) / MM_PER_RAD,
                    clr_mm,
                },
                ref other => other.clone(),
            })
            .collect()
    }
}
