//! From readings at a tacked joint to where it really is.
//!
//! Where the readings alone do not fix the pose, what the pieces before it can be stands in: the
//! budget of the run up to here is taken as an observation of its own (weighted least squares with
//! prior information; C. D. Ghilani, *Adjustment Computations*, from memory).

use nalgebra::{DMatrix, DVector, SMatrix, SVector};
use tubewright_geometry::{Frame, Point, UnitVector, Vector, math};

use crate::spread::{PoseSpread, Row};

/// A tape from a mark to a joint.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct JointTape {
    /// Place of the mark.
    pub mark: Point,
    /// Its covariance, mm².
    pub mark_covariance: [[f64; 3]; 3],
    /// Clock of the scribed place on the rim; `None` for the centre.
    pub clock_rad: Option<f64>,
    /// What the tape says, mm.
    pub reads_mm: f64,
    /// Standard deviation of the tape, mm.
    pub sigma_mm: f64,
}

impl JointTape {
    /// The place that it is held to.
    #[must_use]
    pub fn place(&self, frame: &Frame, radius_mm: f64) -> Point {
        rim_place(frame, radius_mm, self.clock_rad)
    }

    /// What it should say, and the row and variance with which it reads a small displacement.
    fn seen(&self, frame: &Frame, radius_mm: f64) -> Option<(f64, Row, f64)> {
        let place = self.place(frame, radius_mm);
        let line = place - self.mark;
        let direction = line.direction()?;
        let row = PoseSpread::sure(frame.origin).row_along(place, direction);
        let d = direction.to_array();
        let of_mark: f64 = self
            .mark_covariance
            .iter()
            .zip(d)
            .map(|(row, a)| row.iter().zip(d).map(|(c, b)| a * c * b).sum::<f64>())
            .sum();
        Some((
            line.norm(),
            row,
            self.sigma_mm * self.sigma_mm + of_mark.max(0.0),
        ))
    }
}

/// The slope of a joint's face from its centre toward a clock mark, by an angle finder.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct JointSlope {
    /// Toward which clock, radians.
    pub clock_rad: f64,
    /// Up along the plumb line of the set-up.
    pub up: UnitVector,
    /// What the angle finder says, above level, radians.
    pub reads_rad: f64,
    /// Its standard deviation, radians.
    pub sigma_rad: f64,
}

/// Least cosine of a slope that still tells something of the lean, about 1°: straight up or down a
/// small lean sideways changes nothing.
const LEAST_COSINE: f64 = 0.02;

impl JointSlope {
    /// What it should say at a frame, radians.
    #[must_use]
    pub fn expected(&self, frame: &Frame) -> f64 {
        let (along, up) = (frame.at_clock(self.clock_rad).vector(), self.up.vector());
        math::atan2(along.dot(up), along.cross(up).norm())
    }

    /// How it changes with a small displacement, rad/mm and rad/rad: with `sin θ = d · up` and
    /// `δd = ω × d` it is `δθ = ω · (d × up) / cos θ`.
    #[must_use]
    pub fn row(&self, frame: &Frame) -> Row {
        let along = frame.at_clock(self.clock_rad).vector();
        let cross = along.cross(self.up.vector());
        let cosine = cross.norm();
        let by_turn = if cosine < LEAST_COSINE {
            Vector::ZERO
        } else {
            cross * (1.0 / cosine)
        };
        [0.0, 0.0, 0.0, by_turn.x, by_turn.y, by_turn.z]
    }
}

/// What is read at a joint.
#[derive(Clone, Copy, Debug)]
struct Readings<'a> {
    tapes: &'a [JointTape],
    slopes: &'a [JointSlope],
    radius_mm: f64,
}

impl Readings<'_> {
    /// For each reading at a frame, tapes first: what it says less what it should say, and the row and
    /// variance with which it reads a small displacement; `None` for a tape from the place itself.
    fn seen(self, frame: &Frame) -> Vec<Option<(f64, Row, f64)>> {
        let tapes = self.tapes.iter().map(|tape| {
            let (should, row, variance) = tape.seen(frame, self.radius_mm)?;
            Some((tape.reads_mm - should, row, variance))
        });
        let slopes = self.slopes.iter().map(|slope| {
            let variance = slope.sigma_rad * slope.sigma_rad;
            Some((
                slope.reads_rad - slope.expected(frame),
                slope.row(frame),
                variance,
            ))
        });
        tapes.chain(slopes).collect()
    }
}

/// A place on the rim at a clock, or the centre.
#[must_use]
pub fn rim_place(frame: &Frame, radius_mm: f64, clock_rad: Option<f64>) -> Point {
    clock_rad.map_or(frame.origin, |clock| {
        frame.origin + frame.at_clock(clock) * radius_mm
    })
}

/// A joint where it was found.
#[derive(Clone, Debug, PartialEq)]
pub struct BuiltJoint {
    /// Its frame; clock marks are counted from its twelve.
    pub frame: Frame,
    /// How sure that is.
    pub spread: PoseSpread,
    /// For each tape: what it says less what it should say now, mm.
    pub residuals_mm: Vec<f64>,
    /// For each reading, tapes first and then slopes: how many standard deviations it lies from what the
    /// others and the pieces before it leave to expect. Beyond 3.29 (1 in 1000, Baarda 1968) it is
    /// doubtful.
    pub standardised: Vec<f64>,
}

/// A clock in hours, 12 for twelve.
fn hour(clock_deg: f64) -> f64 {
    let hours = (clock_deg / 3.0).round().rem_euclid(120.0) / 10.0;
    if hours < 0.05 { 12.0 } else { hours }
}

/// Why a joint was not found.
#[derive(Clone, Debug, PartialEq, thiserror::Error)]
#[non_exhaustive]
pub enum BuiltError {
    /// Too few readings.
    #[error(
        "{readings} readings do not fix where a joint is: take at least three, to different clock marks and from different marks"
    )]
    TooFew {
        /// How many there are.
        readings: usize,
    },
    /// A slope is nowhere near that of the planned face.
    #[error(
        "the slope toward {} o'clock reads {reads_deg:.1}°, and the planned face slopes {planned_deg:.1}° that way: rising toward the clock mark is plus, falling minus; is it from level and not from plumb?",
        hour(*clock_deg)
    )]
    SlopeFitsNowhere {
        /// Toward which clock mark, degrees from twelve.
        clock_deg: f64,
        /// What was read, degrees above level.
        reads_deg: f64,
        /// What the planned face would read, degrees above level.
        planned_deg: f64,
    },
    /// It did not settle.
    #[error(
        "the readings fit no place near the planned one: the best is {worst_mm:.0} mm off in one of them; measure again"
    )]
    FitsNowhere {
        /// Largest residual, mm.
        worst_mm: f64,
    },
}

/// Fewest readings that are taken as a measurement of a joint.
pub const LEAST_READINGS: usize = 3;

const STEPS: usize = 40;
const STILL_MM: f64 = 1e-7;

/// Finds a joint from readings, near where the plan has it. `before` is what the pieces before it leave
/// open; it is counted at the planned frame's origin.
///
/// # Errors
/// [`BuiltError`].
pub fn built_joint(
    planned: &Frame,
    before: &PoseSpread,
    radius_mm: f64,
    tapes: &[JointTape],
    slopes: &[JointSlope],
) -> Result<BuiltJoint, BuiltError> {
    let readings = Readings {
        tapes,
        slopes,
        radius_mm,
    };
    if tapes.len() < LEAST_READINGS {
        return Err(BuiltError::TooFew {
            readings: tapes.len(),
        });
    }
    for slope in slopes {
        let should = slope.expected(planned);
        if (slope.reads_rad - should).abs() > FITS_NOWHERE_DEG.to_radians() {
            return Err(BuiltError::SlopeFitsNowhere {
                clock_deg: slope.clock_rad.to_degrees(),
                reads_deg: slope.reads_rad.to_degrees(),
                planned_deg: should.to_degrees(),
            });
        }
    }
    // A prior of exactly nothing in some direction would make the normal equations singular.
    let prior =
        before.carried_to(planned.origin).matrix() + SMatrix::<f64, 6, 6>::identity() * 1e-12;
    let weight = prior.try_inverse().unwrap_or_else(SMatrix::zeros);
    let mut total = SVector::<f64, 6>::zeros();
    let mut frame = *planned;
    let mut left = weight;
    for _ in 0..STEPS {
        let mut normal = weight;
        let mut right = -(weight * total);
        for (difference, row, variance) in readings.seen(&frame).into_iter().flatten() {
            let h = SVector::<f64, 6>::from(row);
            normal += h * h.transpose() / variance;
            right += h * (difference / variance);
        }
        left = normal;
        let Some(step) = normal.try_inverse().map(|inverse| inverse * right) else {
            break;
        };
        total += step;
        frame = displaced(planned, &total);
        if step.norm() < STILL_MM {
            break;
        }
    }
    let spread = PoseSpread::of_matrix(
        frame.origin,
        left.try_inverse().unwrap_or_else(SMatrix::zeros),
    );
    let residuals_mm: Vec<f64> = tapes
        .iter()
        .map(|tape| tape.reads_mm - tape.place(&frame, radius_mm).distance(tape.mark))
        .collect();
    let worst_mm = residuals_mm.iter().fold(0.0, |a: f64, b| a.max(b.abs()));
    if !worst_mm.is_finite() || worst_mm > FITS_NOWHERE_MM {
        return Err(BuiltError::FitsNowhere { worst_mm });
    }
    let standardised = standardised(planned, before, readings);
    Ok(BuiltJoint {
        frame,
        spread,
        residuals_mm,
        standardised,
    })
}

/// A residual beyond this is no reading of this joint, mm (common practice, no source).
const FITS_NOWHERE_MM: f64 = 60.0;

/// A slope further than this from the planned one is no reading of this face, degrees (common practice,
/// no source).
const FITS_NOWHERE_DEG: f64 = 20.0;

/// Each reading against the others and the prior: with M = H P Hᵀ + R and r the differences from the
/// plan, `(M⁻¹ r)ᵢ / √(M⁻¹)ᵢᵢ` (Baarda's w of the augmented problem).
fn standardised(planned: &Frame, before: &PoseSpread, readings: Readings<'_>) -> Vec<f64> {
    let all = readings.seen(planned);
    let count = all.len();
    let Some(seen) = all.into_iter().collect::<Option<Vec<(f64, Row, f64)>>>() else {
        return vec![0.0; count];
    };
    let h = DMatrix::from_fn(count, 6, |i, j| seen.get(i).map_or(0.0, |s| s.1[j]));
    let p = DMatrix::from_fn(6, 6, |i, j| {
        before.carried_to(planned.origin).matrix()[(i, j)]
    });
    let r = DVector::from_fn(count, |i, _| seen.get(i).map_or(0.0, |s| s.0));
    let noise = DMatrix::from_fn(count, count, |i, j| {
        if i == j {
            seen.get(i).map_or(1.0, |s| s.2)
        } else {
            0.0
        }
    });
    let Some(inverse) = (&h * p * h.transpose() + noise).try_inverse() else {
        return vec![0.0; count];
    };
    let weighted = &inverse * r;
    (0..count)
        .map(|i| weighted[i] / inverse[(i, i)].max(1e-30).sqrt())
        .collect()
}

/// A frame displaced by a shift in mm and a turn in radians about its origin.
#[must_use]
pub(crate) fn displaced(frame: &Frame, by: &SVector<f64, 6>) -> Frame {
    let shift = Vector::new(by[0], by[1], by[2]);
    let turn = Vector::new(by[3], by[4], by[5]);
    turned(
        &Frame::from_axes(frame.origin + shift, frame.travel(), frame.twelve()),
        turn,
    )
}

/// A frame turned about its origin by a rotation vector in radians.
#[must_use]
pub fn turned(frame: &Frame, turn: Vector) -> Frame {
    let Some(axis) = turn.direction() else {
        return *frame;
    };
    let angle = turn.norm();
    Frame::from_axes(
        frame.origin,
        frame.travel().rotated_about(axis, angle),
        frame.twelve().rotated_about(axis, angle),
    )
}
