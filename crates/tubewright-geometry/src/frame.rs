//! A frame carried along a tube: where the centre line is, which way it travels and where
//! twelve o'clock is.

use crate::math;
use crate::vector::{Point, UnitVector, Vector};

/// A right-handed frame: travel direction, twelve o'clock, and three o'clock = travel × twelve.
///
/// Clock angles are seen looking downstream (along the travel), clockwise positive, which is the
/// right-hand rotation about the travel direction.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Frame {
    /// Place of the frame, on the centre line.
    pub origin: Point,
    travel: UnitVector,
    twelve: UnitVector,
    three: UnitVector,
}

impl Frame {
    /// The identity: at the origin, travelling along x, twelve o'clock along y, three along z.
    pub const IDENTITY: Self = Self {
        origin: Point::ORIGIN,
        travel: UnitVector::X,
        twelve: UnitVector::Y,
        three: UnitVector::Z,
    };

    /// A frame at `origin` travelling along `travel`, twelve o'clock as near to `up` as a direction
    /// square to the travel can be; `None` when `up` is parallel to the travel.
    #[must_use]
    pub fn new(origin: Point, travel: UnitVector, up: Vector) -> Option<Self> {
        let twelve = travel.normal_toward(up)?;
        Some(Self::from_axes(origin, travel, twelve))
    }

    /// A frame at `origin` travelling along `travel` with twelve o'clock toward the car's up (z),
    /// or toward its rear (x) when the travel is vertical.
    #[must_use]
    pub fn upright(origin: Point, travel: UnitVector) -> Self {
        let twelve = travel
            .normal_toward(UnitVector::Z.vector())
            .or_else(|| travel.normal_toward(UnitVector::X.vector()))
            .unwrap_or_else(|| travel.any_normal());
        Self::from_axes(origin, travel, twelve)
    }

    /// From two directions that are square to each other (checked in debug builds to 1e-7).
    #[must_use]
    pub fn from_axes(origin: Point, travel: UnitVector, twelve: UnitVector) -> Self {
        debug_assert!(
            travel.dot(twelve.vector()).abs() < 1e-7,
            "axes are not square"
        );
        let three = travel.vector().cross(twelve.vector());
        Self {
            origin,
            travel,
            twelve,
            three: UnitVector::from_unit(three / three.norm()),
        }
    }

    /// Direction of travel, downstream.
    #[must_use]
    pub const fn travel(&self) -> UnitVector {
        self.travel
    }

    /// Twelve o'clock.
    #[must_use]
    pub const fn twelve(&self) -> UnitVector {
        self.twelve
    }

    /// Three o'clock looking downstream: travel × twelve.
    #[must_use]
    pub const fn three(&self) -> UnitVector {
        self.three
    }

    /// The direction square to the travel at clock angle `clock_rad` from twelve, clockwise looking
    /// downstream.
    #[must_use]
    pub fn at_clock(&self, clock_rad: f64) -> UnitVector {
        let (sin, cos) = math::sin_cos(clock_rad);
        UnitVector::from_unit(self.twelve * cos + self.three * sin)
    }

    /// The clock angle in radians, `(-π, π]`, of a direction as seen along the travel.
    #[must_use]
    pub fn clock_of(&self, direction: Vector) -> f64 {
        math::atan2(self.three.dot(direction), self.twelve.dot(direction))
    }

    /// This frame rolled about its travel by `clock_rad`, clockwise looking downstream.
    #[must_use]
    pub fn rolled(&self, clock_rad: f64) -> Self {
        Self::from_axes(self.origin, self.travel, self.at_clock(clock_rad))
    }

    /// This frame moved straight on by `length_mm`.
    #[must_use]
    pub fn advanced(&self, length_mm: f64) -> Self {
        Self {
            origin: self.origin + self.travel * length_mm,
            ..*self
        }
    }

    /// This frame carried round a bend of `angle_rad` and centre-line radius `clr_mm` toward its
    /// twelve o'clock: the new twelve o'clock points to the bend's centre again.
    ///
    /// `P += R sin A T + R (1 - cos A) N`, `(T, N) := (T cos A + N sin A, N cos A - T sin A)`.
    #[must_use]
    pub fn bent(&self, angle_rad: f64, clr_mm: f64) -> Self {
        let (sin, cos) = math::sin_cos(angle_rad);
        let origin =
            self.origin + self.travel * (clr_mm * sin) + self.twelve * (clr_mm * (1.0 - cos));
        let travel = self.travel * cos + self.twelve * sin;
        let twelve = self.twelve * cos - self.travel * sin;
        Self {
            origin,
            travel: UnitVector::from_unit(travel / travel.norm()),
            twelve: UnitVector::from_unit(twelve / twelve.norm()),
            three: self.three,
        }
    }

    /// The same place and twelve o'clock, travelling the other way (three o'clock changes sides).
    #[must_use]
    pub fn reversed(&self) -> Self {
        Self::from_axes(self.origin, -self.travel, self.twelve)
    }

    /// A point given in this frame (along travel, toward twelve, toward three), in the frame that
    /// this one is given in.
    #[must_use]
    pub fn point_from_local(&self, local: Point) -> Point {
        self.origin + self.vector_from_local(local.to_vector())
    }

    /// A point of the outer frame in coordinates of this frame.
    #[must_use]
    pub fn local_from_point(&self, point: Point) -> Point {
        let v = self.local_from_vector(point - self.origin);
        Point::new(v.x, v.y, v.z)
    }

    /// A displacement given in this frame, in the outer frame.
    #[must_use]
    pub fn vector_from_local(&self, local: Vector) -> Vector {
        self.travel * local.x + self.twelve * local.y + self.three * local.z
    }

    /// A displacement of the outer frame in coordinates of this frame.
    #[must_use]
    pub fn local_from_vector(&self, v: Vector) -> Vector {
        Vector::new(self.travel.dot(v), self.twelve.dot(v), self.three.dot(v))
    }
}
