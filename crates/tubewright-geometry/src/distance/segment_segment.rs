//! Point to segment and segment to segment, closed form.

use crate::vector::Point;

/// Nearest places of two segments.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct SegmentPair {
    /// Distance in mm.
    pub distance_mm: f64,
    /// Fraction along the first segment, 0..=1.
    pub on_first: f64,
    /// Fraction along the second segment, 0..=1.
    pub on_second: f64,
}

/// Fraction (0..=1) along `a`–`b` of the place nearest to `p`; 0 for a segment without length.
#[must_use]
pub fn nearest_on_segment(p: Point, a: Point, b: Point) -> f64 {
    let d = b - a;
    let length_squared = d.norm_squared();
    if length_squared > 0.0 {
        ((p - a).dot(d) / length_squared).clamp(0.0, 1.0)
    } else {
        0.0
    }
}

/// Distance in mm from `p` to the segment `a`–`b`.
#[must_use]
pub fn point_to_segment(p: Point, a: Point, b: Point) -> f64 {
    p.distance(a.lerp(b, nearest_on_segment(p, a, b)))
}

/// Nearest places of the segments `a`–`b` and `c`–`d`, either of which may be a point.
///
/// The lines' common perpendicular when its feet lie on both segments, else the best of the four
/// ends (the distance between two convex sets is reached inside both or at an end of one). The
/// perpendicular is taken from the cross product, not from `ae - b²`, so that nearly parallel
/// segments keep their digits; below an angle of 1e-6 rad the ends are looked at as well.
#[must_use]
pub fn segment_to_segment(a: Point, b: Point, c: Point, d: Point) -> SegmentPair {
    let (first, second) = (b - a, d - c);
    let normal = first.cross(second);
    let across = normal.norm_squared();
    let sizes = first.norm_squared() * second.norm_squared();
    let mut best = SegmentPair {
        distance_mm: f64::INFINITY,
        on_first: 0.0,
        on_second: 0.0,
    };
    if across > 1e-30 * sizes {
        let between = c - a;
        let s = between.cross(second).dot(normal) / across;
        let t = between.cross(first).dot(normal) / across;
        if (0.0..=1.0).contains(&s) && (0.0..=1.0).contains(&t) {
            // The second foot from the first: rounding in `s` then cancels.
            let foot = a + first * s;
            let on_second = nearest_on_segment(foot, c, d);
            best.improve(foot.distance(c + second * on_second), s, on_second);
            if across > 1e-12 * sizes {
                return best;
            }
        }
    }
    for (end, on_first) in [(a, 0.0), (b, 1.0)] {
        let on_second = nearest_on_segment(end, c, d);
        best.improve(end.distance(c.lerp(d, on_second)), on_first, on_second);
    }
    for (end, on_second) in [(c, 0.0), (d, 1.0)] {
        let on_first = nearest_on_segment(end, a, b);
        best.improve(end.distance(a.lerp(b, on_first)), on_first, on_second);
    }
    best
}

impl SegmentPair {
    fn improve(&mut self, distance_mm: f64, on_first: f64, on_second: f64) {
        if distance_mm < self.distance_mm {
            *self = Self {
                distance_mm,
                on_first,
                on_second,
            };
        }
    }
}
