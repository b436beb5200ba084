//! Point and segment to triangle, closed form; triangles without area are handled as their edges.

use super::hit::Hit;
use super::segment_segment::{nearest_on_segment, segment_to_segment};
use crate::vector::{Point, Vector};

/// A triangle with its normal (not of length one); none when it has no area.
#[derive(Clone, Copy, Debug)]
pub(super) struct Triangle {
    corners: [Point; 3],
    normal: Option<Vector>,
}

impl Triangle {
    pub(super) fn new(corners: [Point; 3]) -> Self {
        let [a, b, c] = corners;
        let (ab, ac) = (b - a, c - a);
        let normal = ab.cross(ac);
        let solid = normal.norm_squared() > 1e-24 * ab.norm_squared() * ac.norm_squared();
        Self {
            corners,
            normal: solid.then_some(normal),
        }
    }

    /// True when the foot of `p` on the plane lies in the triangle.
    fn holds_foot(&self, p: Point, normal: Vector) -> bool {
        let [a, b, c] = self.corners;
        let side = |from: Point, to: Point| (to - from).cross(p - from).dot(normal) >= 0.0;
        side(a, b) && side(b, c) && side(c, a)
    }

    /// The place of the triangle nearest to `p`.
    pub(super) fn nearest(&self, p: Point) -> Point {
        let [a, b, c] = self.corners;
        if let Some(n) = self.normal
            && self.holds_foot(p, n)
        {
            return p - n * ((p - a).dot(n) / n.norm_squared());
        }
        let mut best = a;
        let mut least = f64::INFINITY;
        for (from, to) in [(a, b), (b, c), (c, a)] {
            let q = from.lerp(to, nearest_on_segment(p, from, to));
            let d = (p - q).norm_squared();
            if d < least {
                (best, least) = (q, d);
            }
        }
        best
    }

    /// Where the segment pierces the triangle, as a fraction along it.
    fn pierced_at(&self, p: Point, q: Point) -> Option<f64> {
        let n = self.normal?;
        let [a, ..] = self.corners;
        let (from, to) = ((p - a).dot(n), (q - a).dot(n));
        if (from > 0.0) == (to > 0.0) && from != 0.0 && to != 0.0 {
            return None;
        }
        let fall = from - to;
        if fall == 0.0 {
            return None;
        }
        let t = (from / fall).clamp(0.0, 1.0);
        self.holds_foot(p.lerp(q, t), n).then_some(t)
    }

    /// Nearest places: a piercing, else the better of the two ends against the face and of the
    /// segment against the three edges (two convex sets meet nearest at a face and an end or at two
    /// edges).
    pub(super) fn segment(&self, p: Point, q: Point) -> Hit {
        if let Some(t) = self.pierced_at(p, q) {
            return Hit {
                distance_mm: 0.0,
                fraction: t,
                on_body: p.lerp(q, t),
                part: None,
            };
        }
        let [a, b, c] = self.corners;
        let mut best = Hit::beyond(f64::INFINITY, a);
        if let Some(n) = self.normal {
            let n_squared = n.norm_squared();
            for (end, fraction) in [(p, 0.0), (q, 1.0)] {
                if self.holds_foot(end, n) {
                    let height = (end - a).dot(n);
                    let distance_mm = height.abs() / n_squared.sqrt();
                    if distance_mm < best.distance_mm {
                        best = Hit {
                            distance_mm,
                            fraction,
                            on_body: end - n * (height / n_squared),
                            part: None,
                        };
                    }
                }
            }
        }
        for (from, to) in [(a, b), (b, c), (c, a)] {
            let pair = segment_to_segment(p, q, from, to);
            if pair.distance_mm < best.distance_mm {
                best = Hit {
                    distance_mm: pair.distance_mm,
                    fraction: pair.on_first,
                    on_body: from.lerp(to, pair.on_second),
                    part: None,
                };
            }
        }
        best
    }

    /// +1 or -1 when the half-line from `p` crosses the triangle (with or against its normal), 0 when
    /// it does not; `None` when it passes too near an edge or lies in the plane to say.
    pub(super) fn crossing(&self, p: Point, direction: Vector) -> Option<i32> {
        let Some(n) = self.normal else {
            return Some(0);
        };
        let [a, b, c] = self.corners;
        let fall = n.dot(direction);
        let scale = n.norm() * direction.norm();
        if fall.abs() <= 1e-9 * scale {
            // Nearly in the plane: harmless when the triangle is clear of the ray's line.
            let foot = self.nearest(p);
            let off = (foot - p).cross(direction).norm();
            let size = (b - a).norm_squared().max((c - a).norm_squared());
            return (off * off > 4.0 * size * direction.norm_squared()).then_some(0);
        }
        let t = (a - p).dot(n) / fall;
        if t < 0.0 {
            return Some(0);
        }
        let hit = p + direction * t;
        let n_squared = n.norm_squared();
        let weight = |from: Point, to: Point| (to - from).cross(hit - from).dot(n) / n_squared;
        let weights = [weight(a, b), weight(b, c), weight(c, a)];
        if weights.iter().any(|&w| w < -1e-9) {
            Some(0)
        } else if weights.iter().any(|&w| w < 1e-9) {
            None
        } else {
            Some(if fall > 0.0 { 1 } else { -1 })
        }
    }
}
