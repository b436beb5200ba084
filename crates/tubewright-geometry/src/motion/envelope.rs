//! Swept envelopes: how far a moving point or body reaches.

use super::{Freedom, Link, Motion, Values, relative_links, spread_along};
use crate::bounds::Bounds;
use crate::distance::highest_along;
use crate::math;
use crate::placement::Placement;
use crate::solid::Solid;
use crate::vector::{Point, UnitVector, Vector};

/// How far something reaches along a direction over every position.
#[derive(Clone, Debug, PartialEq)]
pub struct Extreme {
    /// Greatest coordinate along the direction in mm, measured from the origin: never below the true
    /// one, and above it by the tolerance at most.
    pub reach_mm: f64,
    /// Values of the freedoms in the position that reaches there.
    pub values: Vec<f64>,
}

/// The box that a point stays in over every position of its carrier.
///
/// Exact (interior extremes included) for one freedom; otherwise never too small and, per side, too
/// large by `tolerance_mm` (> 0) at most. Sways grow it on all sides.
///
/// ```
/// use tubewright_geometry::motion::{Freedom, Motion, point_envelope};
/// use tubewright_geometry::{Point, UnitVector};
/// let rock = Motion { freedoms: vec![Freedom::Turn {
///     on_axis: Point::ORIGIN, axis: UnitVector::X, min_rad: -0.1, max_rad: 0.1,
/// }] };
/// // 100 mm out to the side: y is greatest at rest, in the middle of the range.
/// let b = point_envelope(Point::new(0.0, 100.0, 0.0), &rock, 1e-3);
/// assert!((b.max.y - 100.0).abs() < 1e-9);
/// ```
#[must_use]
pub fn point_envelope(point: Point, motion: &Motion, tolerance_mm: f64) -> Bounds {
    let solid = Solid::Sphere {
        centre: point,
        radius: 0.0,
    };
    let along = |direction: UnitVector| {
        furthest_along(&solid, motion, direction, tolerance_mm)
            .map_or(f64::INFINITY, |e| e.reach_mm)
    };
    Bounds {
        min: Point::new(
            -along(-UnitVector::X),
            -along(-UnitVector::Y),
            -along(-UnitVector::Z),
        ),
        max: Point::new(
            along(UnitVector::X),
            along(UnitVector::Y),
            along(UnitVector::Z),
        ),
    }
}

/// How far a solid reaches along `direction` over every position of its carrier; `None` for a solid
/// without end. One freedom and a ball: exact; otherwise by bounds, within `tolerance_mm` (> 0).
#[must_use]
pub fn furthest_along(
    solid: &Solid,
    motion: &Motion,
    direction: UnitVector,
    tolerance_mm: f64,
) -> Option<Extreme> {
    let bounds = solid.bounds()?;
    let sway = motion.sway_mm();
    if let (Solid::Sphere { centre, radius }, [freedom]) = (solid, motion.freedoms.as_slice()) {
        let (value, reach_mm) = one_freedom(*centre, freedom, direction);
        return Some(Extreme {
            reach_mm: reach_mm + radius + sway,
            values: vec![value],
        });
    }
    let links = relative_links(motion, &Motion::FIXED);
    let mut search = Furthest {
        links: &links,
        solid,
        direction,
        centre: bounds.centre(),
        ball_mm: bounds.half_diagonal_mm(),
        tolerance_mm: tolerance_mm.max(1e-9),
        found_mm: f64::NEG_INFINITY,
        upper_mm: f64::NEG_INFINITY,
        best: Vec::new(),
    };
    search.explore(&Values::whole(&links));
    let mut values = vec![0.0; motion.freedoms.len()];
    for (link, value) in links.iter().zip(&search.best) {
        if let Some(slot) = values.get_mut(link.place) {
            *slot = *value;
        }
    }
    Some(Extreme {
        reach_mm: search.upper_mm.max(search.found_mm) + sway,
        values,
    })
}

struct Furthest<'a> {
    links: &'a [Link],
    solid: &'a Solid,
    direction: UnitVector,
    centre: Point,
    ball_mm: f64,
    tolerance_mm: f64,
    found_mm: f64,
    upper_mm: f64,
    best: Vec<f64>,
}

impl Furthest<'_> {
    fn explore(&mut self, values: &Values) {
        let s = spread_along(
            self.links,
            values,
            (self.centre, self.ball_mm),
            self.direction,
        );
        let here = support(self.solid, &s.at_middle, self.direction);
        if here > self.found_mm {
            self.found_mm = here;
            self.best.clone_from(&values.middle);
        }
        let upper = here + s.reach_mm;
        match s.widest {
            Some(link) if upper > self.found_mm + self.tolerance_mm => {
                for part in &values.cut(link) {
                    self.explore(part);
                }
            }
            _ => self.upper_mm = self.upper_mm.max(upper),
        }
    }
}

/// Greatest coordinate along `direction` of a moved solid.
pub(super) fn support(solid: &Solid, at: &Placement, direction: UnitVector) -> f64 {
    let along = |p: Point| direction.dot(at.point(p).to_vector());
    let most = |points: &mut dyn Iterator<Item = Point>| {
        points.map(along).fold(f64::NEG_INFINITY, f64::max)
    };
    match solid {
        Solid::Box(b) => most(&mut b.corners().into_iter()),
        Solid::Capsule { a, b, radius } => along(*a).max(along(*b)) + radius,
        Solid::Cylinder { a, b, radius } => {
            let axis = (*b - *a).direction().unwrap_or(UnitVector::X);
            let c = direction.dot(at.vector(axis.vector()));
            along(*a).max(along(*b)) + radius * (1.0 - c * c).max(0.0).sqrt()
        }
        Solid::Sphere { centre, radius } => along(*centre) + radius,
        Solid::Prism(p) => {
            let w: Vector = p.u.vector().cross(p.v.vector()) * p.depth;
            most(&mut p.outline.iter().flat_map(|&[x, y]| {
                let foot = p.origin + p.u * x + p.v * y;
                [foot, foot + w]
            }))
        }
        Solid::Mesh(mesh) => most(&mut mesh.vertices().iter().copied()),
        Solid::Cloud { points, radius } => most(&mut points.iter().copied()) + radius,
        Solid::PointCloud(cloud) => most(&mut cloud.points().iter().copied()) + cloud.radius_mm(),
        Solid::Tube(tube) => highest_along(&at.centre_line(&tube.line), direction) + tube.radius,
        Solid::Union(members) => members
            .iter()
            .map(|m| support(m, at, direction))
            .fold(f64::NEG_INFINITY, f64::max),
        Solid::HalfSpace { .. } => f64::INFINITY,
    }
}

/// Closed form for a point with one freedom: along a shift an end of the range; round a turn
/// `m + A cos t + B sin t`, greatest at `atan2(B, A)` when the range reaches it, else at an end.
fn one_freedom(p: Point, freedom: &Freedom, direction: UnitVector) -> (f64, f64) {
    let reach = |value: f64| direction.dot(freedom.at(value).point(p).to_vector());
    let (min, max) = freedom.range();
    let mut candidates = vec![min, max];
    if let Freedom::Turn { on_axis, axis, .. } = *freedom {
        let arm = p - on_axis;
        let across = arm - axis * axis.dot(arm);
        let top = math::atan2(
            direction.dot(axis.vector().cross(across)),
            direction.dot(across),
        );
        let first = ((min - top) / math::TAU).ceil() * math::TAU + top;
        if first <= max {
            candidates.push(first);
        }
    }
    candidates
        .into_iter()
        .map(|value| (value, reach(value)))
        .fold((min, f64::NEG_INFINITY), |best, c| {
            if c.1 > best.1 { c } else { best }
        })
}
