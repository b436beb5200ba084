//! Points, vectors and directions in millimetres. A point is a place, a vector a displacement,
//! a [`UnitVector`] a direction that was normalised once and is never re-normalised silently.

use core::ops::{Add, AddAssign, Div, Mul, Neg, Sub};

use crate::math;

/// A place, in millimetres along the axes of the frame its variable names.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Point {
    /// Rearwards in the car's own frame.
    pub x: f64,
    /// To the car's right in the car's own frame.
    pub y: f64,
    /// Up in the car's own frame.
    pub z: f64,
}

/// A displacement in millimetres.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Vector {
    /// Rearwards in the car's own frame.
    pub x: f64,
    /// To the car's right in the car's own frame.
    pub y: f64,
    /// Up in the car's own frame.
    pub z: f64,
}

/// A direction: a vector of length one to within rounding.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct UnitVector(Vector);

impl Point {
    /// The origin of the frame.
    pub const ORIGIN: Self = Self {
        x: 0.0,
        y: 0.0,
        z: 0.0,
    };

    /// From three coordinates in millimetres.
    #[must_use]
    pub const fn new(x: f64, y: f64, z: f64) -> Self {
        Self { x, y, z }
    }

    /// From an array `[x, y, z]` in millimetres.
    #[must_use]
    pub const fn from_array([x, y, z]: [f64; 3]) -> Self {
        Self { x, y, z }
    }

    /// As an array `[x, y, z]` in millimetres.
    #[must_use]
    pub const fn to_array(self) -> [f64; 3] {
        [self.x, self.y, self.z]
    }

    /// The vector from the origin to this point.
    #[must_use]
    pub const fn to_vector(self) -> Vector {
        Vector {
            x: self.x,
            y: self.y,
            z: self.z,
        }
    }

    /// Distance to another point in millimetres.
    #[must_use]
    pub fn distance(self, other: Self) -> f64 {
        (self - other).norm()
    }

    /// The point a fraction `t` of the way to `other` (`t` = 0 here, 1 there).
    #[must_use]
    pub fn lerp(self, other: Self, t: f64) -> Self {
        self + (other - self) * t
    }

    /// True when no coordinate is NaN or infinite.
    #[must_use]
    pub fn is_finite(self) -> bool {
        self.x.is_finite() && self.y.is_finite() && self.z.is_finite()
    }
}

impl Vector {
    /// No displacement.
    pub const ZERO: Self = Self {
        x: 0.0,
        y: 0.0,
        z: 0.0,
    };

    /// From three components in millimetres.
    #[must_use]
    pub const fn new(x: f64, y: f64, z: f64) -> Self {
        Self { x, y, z }
    }

    /// From an array `[x, y, z]`.
    #[must_use]
    pub const fn from_array([x, y, z]: [f64; 3]) -> Self {
        Self { x, y, z }
    }

    /// As an array `[x, y, z]`.
    #[must_use]
    pub const fn to_array(self) -> [f64; 3] {
        [self.x, self.y, self.z]
    }

    /// Scalar product.
    #[must_use]
    pub fn dot(self, other: Self) -> f64 {
        self.x * other.x + self.y * other.y + self.z * other.z
    }

    /// Vector product, right-handed.
    #[must_use]
    pub fn cross(self, other: Self) -> Self {
        Self {
            x: self.y * other.z - self.z * other.y,
            y: self.z * other.x - self.x * other.z,
            z: self.x * other.y - self.y * other.x,
        }
    }

    /// Squared length.
    #[must_use]
    pub fn norm_squared(self) -> f64 {
        self.dot(self)
    }

    /// Length.
    #[must_use]
    pub fn norm(self) -> f64 {
        self.norm_squared().sqrt()
    }

    /// The direction of this vector; `None` when it is too short to have one (below 1e-12 mm)
    /// or not finite.
    #[must_use]
    pub fn direction(self) -> Option<UnitVector> {
        let norm = self.norm();
        (norm.is_finite() && norm > 1e-12).then(|| UnitVector(self / norm))
    }
}

impl UnitVector {
    /// Rearwards in the car's own frame.
    pub const X: Self = Self(Vector {
        x: 1.0,
        y: 0.0,
        z: 0.0,
    });
    /// To the car's right in the car's own frame.
    pub const Y: Self = Self(Vector {
        x: 0.0,
        y: 1.0,
        z: 0.0,
    });
    /// Up in the car's own frame.
    pub const Z: Self = Self(Vector {
        x: 0.0,
        y: 0.0,
        z: 1.0,
    });

    /// The vector of length one.
    #[must_use]
    pub const fn vector(self) -> Vector {
        self.0
    }

    /// As an array `[x, y, z]`.
    #[must_use]
    pub const fn to_array(self) -> [f64; 3] {
        self.0.to_array()
    }

    /// Scalar product with any vector.
    #[must_use]
    pub fn dot(self, other: Vector) -> f64 {
        self.0.dot(other)
    }

    /// Angle to another direction in radians, `[0, π]`, from atan2 so that it keeps its digits
    /// near 0 and π (method note K1 of the trade's bend geometry: never acos).
    #[must_use]
    pub fn angle_to(self, other: Self) -> f64 {
        math::atan2(self.0.cross(other.0).norm(), self.0.dot(other.0))
    }

    /// This direction turned by `angle_rad` about `axis`, right-handed (Rodrigues' formula).
    #[must_use]
    pub fn rotated_about(self, axis: Self, angle_rad: f64) -> Self {
        Self(self.0.rotated_about(axis, angle_rad))
    }

    /// Some direction square to this one.
    #[must_use]
    pub fn any_normal(self) -> Self {
        let v = self.0;
        let helper = if v.x.abs() <= v.y.abs() && v.x.abs() <= v.z.abs() {
            Self::X
        } else if v.y.abs() <= v.z.abs() {
            Self::Y
        } else {
            Self::Z
        };
        let across = v.cross(helper.0);
        Self(across / across.norm())
    }

    /// The part of `toward` square to this direction, normalised; `None` when `toward` is parallel
    /// to it (to 1e-9).
    #[must_use]
    pub fn normal_toward(self, toward: Vector) -> Option<Self> {
        let across = toward - self.0 * self.0.dot(toward);
        (across.norm() > 1e-9 * toward.norm())
            .then(|| across.direction())
            .flatten()
    }

    /// Takes a vector that the caller built to have length one (cross product of two square
    /// directions, a rotated direction). Checked in debug builds.
    #[must_use]
    pub fn from_unit(vector: Vector) -> Self {
        debug_assert!(
            (vector.norm_squared() - 1.0).abs() < 1e-9,
            "not a unit vector: {vector:?}"
        );
        Self(vector)
    }
}

impl Vector {
    /// This vector turned by `angle_rad` about `axis`, right-handed (Rodrigues' formula).
    #[must_use]
    pub fn rotated_about(self, axis: UnitVector, angle_rad: f64) -> Self {
        let (sin, cos) = math::sin_cos(angle_rad);
        let k = axis.0;
        self * cos + k.cross(self) * sin + k * (k.dot(self) * (1.0 - cos))
    }
}

impl Sub for Point {
    type Output = Vector;
    fn sub(self, other: Self) -> Vector {
        Vector {
            x: self.x - other.x,
            y: self.y - other.y,
            z: self.z - other.z,
        }
    }
}

impl Add<Vector> for Point {
    type Output = Self;
    fn add(self, v: Vector) -> Self {
        Self {
            x: self.x + v.x,
            y: self.y + v.y,
            z: self.z + v.z,
        }
    }
}

impl Sub<Vector> for Point {
    type Output = Self;
    fn sub(self, v: Vector) -> Self {
        Self {
            x: self.x - v.x,
            y: self.y - v.y,
            z: self.z - v.z,
        }
    }
}

impl AddAssign<Vector> for Point {
    fn add_assign(&mut self, v: Vector) {
        *self = *self + v;
    }
}

impl Add for Vector {
    type Output = Self;
    fn add(self, v: Self) -> Self {
        Self {
            x: self.x + v.x,
            y: self.y + v.y,
            z: self.z + v.z,
        }
    }
}

impl AddAssign for Vector {
    fn add_assign(&mut self, v: Self) {
        *self = *self + v;
    }
}

impl Sub for Vector {
    type Output = Self;
    fn sub(self, v: Self) -> Self {
        Self {
            x: self.x - v.x,
            y: self.y - v.y,
            z: self.z - v.z,
        }
    }
}

impl Neg for Vector {
    type Output = Self;
    fn neg(self) -> Self {
        Self {
            x: -self.x,
            y: -self.y,
            z: -self.z,
        }
    }
}

impl Neg for UnitVector {
    type Output = Self;
    fn neg(self) -> Self {
        Self(-self.0)
    }
}

impl Mul<f64> for Vector {
    type Output = Self;
    fn mul(self, factor: f64) -> Self {
        Self {
            x: self.x * factor,
            y: self.y * factor,
            z: self.z * factor,
        }
    }
}

impl Mul<f64> for UnitVector {
    type Output = Vector;
    fn mul(self, length: f64) -> Vector {
        self.0 * length
    }
}

impl Div<f64> for Vector {
    type Output = Self;
    fn div(self, divisor: f64) -> Self {
        Self {
            x: self.x / divisor,
            y: self.y / divisor,
            z: self.z / divisor,
        }
    }
}
