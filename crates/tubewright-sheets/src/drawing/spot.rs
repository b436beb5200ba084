//! Places on the paper.

use core::ops::{Add, Mul, Sub};

use tubewright_geometry::math;

/// A place on the paper, or a displacement on it, in millimetres of paper: x to the right, y
/// **down** from the upper left corner.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Spot {
    /// To the right, in mm of paper.
    pub x: f64,
    /// Down, in mm of paper.
    pub y: f64,
}

impl Spot {
    /// From millimetres to the right and down.
    #[must_use]
    pub const fn new(x: f64, y: f64) -> Self {
        Self { x, y }
    }

    /// Distance in mm of paper.
    #[must_use]
    pub fn distance(self, other: Self) -> f64 {
        (other - self).norm()
    }

    /// Length of the displacement in mm of paper.
    #[must_use]
    pub fn norm(self) -> f64 {
        math::hypot(self.x, self.y)
    }

    /// Scalar product of two displacements.
    #[must_use]
    pub fn dot(self, other: Self) -> f64 {
        self.x * other.x + self.y * other.y
    }

    /// Positive when `other` is clockwise of this displacement as seen on the paper.
    #[must_use]
    pub fn cross(self, other: Self) -> f64 {
        self.x * other.y - self.y * other.x
    }

    /// Displacement of length one along this one; `None` when shorter than 1e-9 mm.
    #[must_use]
    pub fn direction(self) -> Option<Self> {
        let norm = self.norm();
        (norm > 1e-9).then(|| self * (1.0 / norm))
    }

    /// Displacement of length one at `angle_rad` from rightwards, clockwise as seen on the paper.
    #[must_use]
    pub fn toward(angle_rad: f64) -> Self {
        let (sin, cos) = math::sin_cos(angle_rad);
        Self { x: cos, y: sin }
    }

    /// Turned a quarter clockwise as seen on the paper.
    #[must_use]
    pub const fn quarter(self) -> Self {
        Self {
            x: -self.y,
            y: self.x,
        }
    }

    /// The place a fraction `t` of the way to `other`.
    #[must_use]
    pub fn lerp(self, other: Self, t: f64) -> Self {
        self + (other - self) * t
    }
}

impl Add for Spot {
    type Output = Self;
    fn add(self, other: Self) -> Self {
        Self::new(self.x + other.x, self.y + other.y)
    }
}

impl Sub for Spot {
    type Output = Self;
    fn sub(self, other: Self) -> Self {
        Self::new(self.x - other.x, self.y - other.y)
    }
}

impl Mul<f64> for Spot {
    type Output = Self;
    fn mul(self, factor: f64) -> Self {
        Self::new(self.x * factor, self.y * factor)
    }
}

/// An upright rectangle on the paper, in mm.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Rect {
    /// Upper left corner.
    pub min: Spot,
    /// Lower right corner.
    pub max: Spot,
}

impl Rect {
    /// Holds nothing; joining it to anything gives that.
    pub const EMPTY: Self = Self {
        min: Spot::new(f64::INFINITY, f64::INFINITY),
        max: Spot::new(f64::NEG_INFINITY, f64::NEG_INFINITY),
    };

    /// From the upper left corner, width and height in mm.
    #[must_use]
    pub const fn new(x: f64, y: f64, width: f64, height: f64) -> Self {
        Self {
            min: Spot::new(x, y),
            max: Spot::new(x + width, y + height),
        }
    }

    /// The smallest that holds all the spots.
    #[must_use]
    pub fn of(spots: impl IntoIterator<Item = Spot>) -> Self {
        spots.into_iter().fold(Self::EMPTY, Self::with)
    }

    /// Grown to hold the spot.
    #[must_use]
    pub fn with(self, spot: Spot) -> Self {
        Self {
            min: Spot::new(self.min.x.min(spot.x), self.min.y.min(spot.y)),
            max: Spot::new(self.max.x.max(spot.x), self.max.y.max(spot.y)),
        }
    }

    /// The smallest that holds both.
    #[must_use]
    pub fn joined(self, other: Self) -> Self {
        self.with(other.min).with(other.max)
    }

    /// Grown by `margin_mm` on every side (shrunk when negative).
    #[must_use]
    pub fn grown(self, margin_mm: f64) -> Self {
        Self {
            min: Spot::new(self.min.x - margin_mm, self.min.y - margin_mm),
            max: Spot::new(self.max.x + margin_mm, self.max.y + margin_mm),
        }
    }

    /// What both hold; may be empty (see [`Rect::is_empty`]).
    #[must_use]
    pub fn common(self, other: Self) -> Self {
        Self {
            min: Spot::new(self.min.x.max(other.min.x), self.min.y.max(other.min.y)),
            max: Spot::new(self.max.x.min(other.max.x), self.max.y.min(other.max.y)),
        }
    }

    /// True when it holds nothing.
    #[must_use]
    pub fn is_empty(self) -> bool {
        self.min.x > self.max.x || self.min.y > self.max.y
    }

    /// Width in mm.
    #[must_use]
    pub fn width(self) -> f64 {
        self.max.x - self.min.x
    }

    /// Height in mm.
    #[must_use]
    pub fn height(self) -> f64 {
        self.max.y - self.min.y
    }

    /// Middle.
    #[must_use]
    pub fn centre(self) -> Spot {
        self.min.lerp(self.max, 0.5)
    }

    /// Area in mm² that both cover.
    #[must_use]
    pub fn overlap_mm2(self, other: Self) -> f64 {
        let both = self.common(other);
        if both.is_empty() {
            0.0
        } else {
            both.width() * both.height()
        }
    }

    /// True when the spot lies in it or on its edge.
    #[must_use]
    pub fn holds(self, spot: Spot) -> bool {
        (self.min.x..=self.max.x).contains(&spot.x) && (self.min.y..=self.max.y).contains(&spot.y)
    }

    /// True when `other` lies wholly inside.
    #[must_use]
    pub fn encloses(self, other: Self) -> bool {
        self.holds(other.min) && self.holds(other.max)
    }

    /// The four corners in order, from the upper left, clockwise.
    #[must_use]
    pub fn corners(self) -> [Spot; 4] {
        [
            self.min,
            Spot::new(self.max.x, self.min.y),
            self.max,
            Spot::new(self.min.x, self.max.y),
        ]
    }
}
