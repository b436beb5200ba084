//! Segment to flat-ended cylinder: a convex minimum.

use super::hit::Hit;
use super::segment_segment::segment_to_segment;
use crate::vector::{Point, UnitVector, Vector};

/// The cylinder's axis: middle, direction, half length.
struct Axis {
    middle: Point,
    along: UnitVector,
    half_mm: f64,
}

impl Axis {
    fn new(a: Point, b: Point) -> Self {
        Self {
            middle: a.lerp(b, 0.5),
            along: (b - a).direction().unwrap_or(UnitVector::X),
            half_mm: a.distance(b) * 0.5,
        }
    }

    /// (along the axis, square to it) of a displacement.
    fn split(&self, v: Vector) -> (f64, Vector) {
        let z = self.along.dot(v);
        (z, v - self.along * z)
    }
}

/// The place of the cylinder nearest to `p`, which is `p` itself inside.
pub(super) fn nearest_in_cylinder(p: Point, a: Point, b: Point, radius: f64) -> Point {
    let axis = Axis::new(a, b);
    nearest(p, &axis, radius)
}

fn nearest(p: Point, axis: &Axis, radius: f64) -> Point {
    let (z, across) = axis.split(p - axis.middle);
    let out = across.norm();
    let held = if out > radius {
        across * (radius / out)
    } else {
        across
    };
    axis.middle + axis.along * z.clamp(-axis.half_mm, axis.half_mm) + held
}

/// Distance along the segment to a convex solid is convex: bisection on the sign of its slope, with
/// secant steps, until the bracket is below 1e-10 mm; the distance is then exact to that.
pub(super) fn segment_to_cylinder(p: Point, q: Point, a: Point, b: Point, radius: f64) -> Hit {
    let axis = Axis::new(a, b);
    let (from_z, from_across) = axis.split(p - axis.middle);
    let (d_z, d_across) = axis.split(q - p);
    // Half the slope of the squared distance at fraction t.
    let slope = |t: f64| {
        let z = from_z + t * d_z;
        let across = from_across + d_across * t;
        let out = across.norm();
        let radial = if out > radius {
            (out - radius) / out * across.dot(d_across)
        } else {
            0.0
        };
        d_z * (z - z.clamp(-axis.half_mm, axis.half_mm)) + radial
    };
    let t = root_of_rising(slope, p.distance(q));
    let on_line = p.lerp(q, t);
    let on_body = nearest(on_line, &axis, radius);
    Hit {
        distance_mm: on_line.distance(on_body),
        fraction: t,
        on_body,
        part: None,
    }
}

/// A lower bound by the cylinder with round ends, which holds the flat-ended one: cheap.
pub(super) fn capsule_bound(p: Point, q: Point, a: Point, b: Point, radius: f64) -> f64 {
    (segment_to_segment(p, q, a, b).distance_mm - radius).max(0.0)
}

/// The sign change of a function that never falls on 0..=1; an end when there is none.
fn root_of_rising(slope: impl Fn(f64) -> f64, length_mm: f64) -> f64 {
    let (mut lo, mut hi) = (0.0, 1.0);
    let (mut f_lo, mut f_hi) = (slope(lo), slope(hi));
    if f_lo >= 0.0 {
        return lo;
    }
    if f_hi <= 0.0 {
        return hi;
    }
    let enough = 1e-10 / length_mm.max(1e-10);
    // Illinois variant of the rule of false position; every third step bisects, so that a kinked
    // slope cannot stall it.
    for step in 0..120 {
        if hi - lo <= enough {
            break;
        }
        let t = if step % 3 == 2 {
            0.5 * (lo + hi)
        } else {
            (lo - f_lo * (hi - lo) / (f_hi - f_lo)).clamp(lo, hi)
        };
        let f = slope(t);
        if f == 0.0 {
            return t;
        }
        if f < 0.0 {
            lo = t;
            f_lo = f;
            f_hi *= 0.5;
        } else {
            hi = t;
            f_hi = f;
            f_lo *= 0.5;
        }
    }
    0.5 * (lo + hi)
}
