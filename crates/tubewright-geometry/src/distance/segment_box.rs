//! Segment to box, closed form.

use super::hit::Hit;
use crate::solid::OrientedBox;
use crate::vector::{Point, Vector};

/// The place of the box nearest to `p`, which is `p` itself inside.
pub(super) fn nearest_in_box(p: Point, b: &OrientedBox) -> Point {
    let v = p - b.centre;
    let mut nearest = b.centre;
    for (axis, half) in b.axes.iter().zip(b.half) {
        nearest += *axis * axis.dot(v).clamp(-half, half);
    }
    nearest
}

/// Distance from `p` to the box, zero inside.
pub(super) fn point_to_box(p: Point, b: &OrientedBox) -> f64 {
    let v = p - b.centre;
    let out = |i: usize| (b.axes[i].dot(v).abs() - b.half[i]).max(0.0);
    Vector::new(out(0), out(1), out(2)).norm()
}

/// The squared distance along the segment is convex and piecewise quadratic with a joint wherever
/// the segment crosses a face plane: its slope, which is linear between joints, is followed to the
/// sign change.
pub(super) fn segment_to_box(a: Point, b: Point, body: &OrientedBox) -> Hit {
    let (from, along) = (a - body.centre, b - a);
    let p = [0, 1, 2].map(|i: usize| body.axes[i].dot(from));
    let d = [0, 1, 2].map(|i: usize| body.axes[i].dot(along));
    let t = least_excess(p, d, body.half);
    let on_line = a.lerp(b, t);
    Hit {
        distance_mm: point_to_box(on_line, body),
        fraction: t,
        on_body: nearest_in_box(on_line, body),
        part: None,
    }
}

/// The `t` in 0..=1 at which `p + t d` is nearest to the box of half sizes `half` about the origin.
fn least_excess(p: [f64; 3], d: [f64; 3], half: [f64; 3]) -> f64 {
    let slope = |t: f64| {
        let mut sum = 0.0;
        for i in 0..3 {
            let x = p[i] + t * d[i];
            sum += d[i] * (x - x.clamp(-half[i], half[i]));
        }
        sum
    };
    let start_slope = slope(0.0);
    if start_slope >= 0.0 {
        return 0.0;
    }
    let end_slope = slope(1.0);
    if end_slope <= 0.0 {
        return 1.0;
    }
    // The bracket (lo, hi) always holds the sign change; each joint inside it narrows it.
    let (mut lo, mut hi) = ((0.0, start_slope), (1.0, end_slope));
    for i in 0..3 {
        if d[i].abs() <= 1e-300 {
            continue;
        }
        for face in [-half[i], half[i]] {
            let t = (face - p[i]) / d[i];
            if t > lo.0 && t < hi.0 {
                let s = slope(t);
                if s < 0.0 {
                    lo = (t, s);
                } else {
                    hi = (t, s);
                }
            }
        }
    }
    let step = (hi.0 - lo.0) * (-lo.1 / (hi.1 - lo.1));
    (lo.0 + step).clamp(lo.0, hi.0)
}
