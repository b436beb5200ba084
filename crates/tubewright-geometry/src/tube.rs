//! The centre line of a piece of tube: a straight segment or a circular arc, with a radius.

use crate::frame::Frame;
use crate::math;
use crate::vector::{Point, UnitVector};

/// The centre line of one piece.
#[derive(Clone, Copy, Debug, PartialEq)]
#[non_exhaustive]
pub enum CentreLine {
    /// Straight from `a` to `b`.
    Segment {
        /// Upstream end.
        a: Point,
        /// Downstream end.
        b: Point,
    },
    /// `centre + radius (cos t u + sin t v)` for `0 <= t <= angle`.
    Arc {
        /// Centre of the bend.
        centre: Point,
        /// From the centre to the upstream end.
        u: UnitVector,
        /// Direction of travel at the upstream end.
        v: UnitVector,
        /// Centre-line radius in mm.
        radius: f64,
        /// Angle of the bend in radians, > 0.
        angle: f64,
    },
}

/// A piece of tube as a swept ball: the centre line with a ball of `radius` at each of its places,
/// ends included.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct TubeElement {
    /// Centre line.
    pub line: CentreLine,
    /// Outer radius in mm (half the OD).
    pub radius: f64,
}

impl CentreLine {
    /// The straight that leads from `frame` on for `length_mm`.
    #[must_use]
    pub fn straight(frame: &Frame, length_mm: f64) -> Self {
        Self::Segment {
            a: frame.origin,
            b: frame.origin + frame.travel() * length_mm,
        }
    }

    /// The bend that leads from `frame` toward its twelve o'clock.
    #[must_use]
    pub fn bend(frame: &Frame, angle_rad: f64, clr_mm: f64) -> Self {
        Self::Arc {
            centre: frame.origin + frame.twelve() * clr_mm,
            u: -frame.twelve(),
            v: frame.travel(),
            radius: clr_mm,
            angle: angle_rad,
        }
    }

    /// Length along the centre line in mm.
    #[must_use]
    pub fn length(&self) -> f64 {
        match *self {
            Self::Segment { a, b } => a.distance(b),
            Self::Arc { radius, angle, .. } => radius * angle,
        }
    }

    /// The place at distance `s_mm` from the upstream end along the centre line.
    #[must_use]
    pub fn at(&self, s_mm: f64) -> Point {
        match *self {
            Self::Segment { a, b } => {
                let length = a.distance(b);
                if length > 0.0 {
                    a.lerp(b, s_mm / length)
                } else {
                    a
                }
            }
            Self::Arc {
                centre,
                u,
                v,
                radius,
                ..
            } => {
                let (sin, cos) = math::sin_cos(s_mm / radius);
                centre + u * (radius * cos) + v * (radius * sin)
            }
        }
    }

    /// Direction of travel at distance `s_mm` from the upstream end; `None` for a straight without
    /// length.
    #[must_use]
    pub fn direction_at(&self, s_mm: f64) -> Option<UnitVector> {
        match *self {
            Self::Segment { a, b } => (b - a).direction(),
            Self::Arc { u, v, radius, .. } => {
                let (sin, cos) = math::sin_cos(s_mm / radius);
                (v * cos - u * sin).direction()
            }
        }
    }

    /// The same line travelled the other way.
    #[must_use]
    pub fn reversed(&self) -> Self {
        match *self {
            Self::Segment { a, b } => Self::Segment { a: b, b: a },
            Self::Arc {
                centre,
                u,
                v,
                radius,
                angle,
            } => {
                let (sin, cos) = math::sin_cos(angle);
                Self::Arc {
                    centre,
                    u: UnitVector::from_unit(u * cos + v * sin),
                    v: UnitVector::from_unit(u * sin - v * cos),
                    radius,
                    angle,
                }
            }
        }
    }
}
