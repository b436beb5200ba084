//! Axis-aligned bounding boxes.

use crate::solid::Solid;
use crate::tube::{CentreLine, TubeElement};
use crate::vector::{Point, UnitVector, Vector};

/// An axis-aligned box that holds something, in millimetres.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Bounds {
    /// Least coordinates.
    pub min: Point,
    /// Greatest coordinates.
    pub max: Point,
}

impl Bounds {
    /// The box that holds nothing: joining it to another changes nothing.
    pub const EMPTY: Self = Self {
        min: Point::new(f64::INFINITY, f64::INFINITY, f64::INFINITY),
        max: Point::new(f64::NEG_INFINITY, f64::NEG_INFINITY, f64::NEG_INFINITY),
    };

    /// The smallest box that holds all `points`; [`Bounds::EMPTY`] when there is none.
    #[must_use]
    pub fn of_points(points: impl IntoIterator<Item = Point>) -> Self {
        points.into_iter().fold(Self::EMPTY, Self::with_point)
    }

    /// This box grown to hold `point`.
    #[must_use]
    pub fn with_point(self, point: Point) -> Self {
        Self {
            min: Point::new(
                self.min.x.min(point.x),
                self.min.y.min(point.y),
                self.min.z.min(point.z),
            ),
            max: Point::new(
                self.max.x.max(point.x),
                self.max.y.max(point.y),
                self.max.z.max(point.z),
            ),
        }
    }

    /// The smallest box that holds both.
    #[must_use]
    pub fn joined(self, other: Self) -> Self {
        self.with_point(other.min).with_point(other.max)
    }

    /// This box grown by `margin_mm` on every side.
    #[must_use]
    pub fn grown(self, margin_mm: f64) -> Self {
        let margin = Vector::new(margin_mm, margin_mm, margin_mm);
        Self {
            min: self.min - margin,
            max: self.max + margin,
        }
    }

    /// Middle of the box.
    #[must_use]
    pub fn centre(&self) -> Point {
        self.min.lerp(self.max, 0.5)
    }

    /// Half the length of the box's diagonal in mm.
    #[must_use]
    pub fn half_diagonal_mm(&self) -> f64 {
        self.min.distance(self.max) * 0.5
    }

    /// Distance in mm from `point` to the box, zero inside.
    #[must_use]
    pub fn distance(&self, point: Point) -> f64 {
        let out = |p: f64, lo: f64, hi: f64| (lo - p).max(p - hi).max(0.0);
        Vector::new(
            out(point.x, self.min.x, self.max.x),
            out(point.y, self.min.y, self.max.y),
            out(point.z, self.min.z, self.max.z),
        )
        .norm()
    }

    /// Distance in mm between two boxes, zero when they overlap.
    #[must_use]
    pub fn distance_to(&self, other: &Self) -> f64 {
        let out = |a: f64, b: f64, lo: f64, hi: f64| (lo - b).max(a - hi).max(0.0);
        Vector::new(
            out(self.min.x, self.max.x, other.min.x, other.max.x),
            out(self.min.y, self.max.y, other.min.y, other.max.y),
            out(self.min.z, self.max.z, other.min.z, other.max.z),
        )
        .norm()
    }
}

impl Solid {
    /// An axis-aligned box that holds the solid; `None` when it has no end (a half-space, or a union
    /// with one in it).
    #[must_use]
    pub fn bounds(&self) -> Option<Bounds> {
        match self {
            Self::Box(b) => Some(Bounds::of_points(b.corners())),
            Self::Capsule { a, b, radius } => Some(Bounds::of_points([*a, *b]).grown(*radius)),
            Self::Cylinder { a, b, radius } => Some(disc_bounds(*a, *b, *radius)),
            Self::Sphere { centre, radius } => Some(Bounds::of_points([*centre]).grown(*radius)),
            Self::HalfSpace { .. } => None,
            Self::Prism(p) => {
                let along = p.u.vector().cross(p.v.vector()) * p.depth;
                Some(Bounds::of_points(p.outline.iter().flat_map(|&[x, y]| {
                    let foot = p.origin + p.u * x + p.v * y;
                    [foot, foot + along]
                })))
            }
            Self::Mesh(mesh) => Some(mesh.bounds()),
            Self::Cloud { points, radius } => {
                Some(Bounds::of_points(points.iter().copied()).grown(*radius))
            }
            Self::Tube(tube) => Some(tube.bounds()),
            Self::PointCloud(cloud) => Some(cloud.bounds()),
            Self::Union(members) => members
                .iter()
                .try_fold(Bounds::EMPTY, |all, m| Some(all.joined(m.bounds()?))),
        }
    }
}

/// A flat-ended cylinder reaches `radius * sqrt(1 - d_i²)` past its end centres along axis `i`.
fn disc_bounds(a: Point, b: Point, radius: f64) -> Bounds {
    let along = (b - a).direction().unwrap_or(UnitVector::X).vector();
    let reach = |d: f64| radius * (1.0 - d * d).max(0.0).sqrt();
    let r = Vector::new(reach(along.x), reach(along.y), reach(along.z));
    Bounds::of_points([a - r, a + r, b - r, b + r])
}

impl TubeElement {
    /// An axis-aligned box that holds the swept ball (for a bend it may be a little larger than the
    /// smallest one).
    #[must_use]
    pub fn bounds(&self) -> Bounds {
        self.line.bounds().grown(self.radius)
    }
}

impl CentreLine {
    /// An axis-aligned box that holds the centre line (for a bend it may be a little larger than the
    /// smallest one).
    #[must_use]
    pub fn bounds(&self) -> Bounds {
        match *self {
            Self::Segment { a, b } => Bounds::of_points([a, b]),
            Self::Arc { .. } => {
                crate::distance::arc_pieces(self)
                    .iter()
                    .fold(Bounds::EMPTY, |all, piece| {
                        let chord = piece.chord();
                        all.joined(Bounds::of_points([chord.a, chord.b]).grown(chord.slack_mm))
                    })
            }
        }
    }
}
