//! Point and segment to an extruded outline, convex or not, closed form.

use super::hit::Hit;
use super::segment_segment::{nearest_on_segment, segment_to_segment};
use crate::solid::Prism;
use crate::vector::{Point, Vector};

/// The prism in its own axes: x along `u`, y along `v`, z from 0 to the depth.
pub(super) struct LocalPrism<'a> {
    prism: &'a Prism,
    w: Vector,
    lo: [f64; 2],
    hi: [f64; 2],
}

impl<'a> LocalPrism<'a> {
    pub(super) fn new(prism: &'a Prism) -> Self {
        let (mut lo, mut hi) = ([f64::INFINITY; 2], [f64::NEG_INFINITY; 2]);
        for corner in &prism.outline {
            for i in 0..2 {
                lo[i] = lo[i].min(corner[i]);
                hi[i] = hi[i].max(corner[i]);
            }
        }
        Self {
            prism,
            w: prism.u.vector().cross(prism.v.vector()),
            lo,
            hi,
        }
    }

    fn local(&self, p: Point) -> Point {
        let v = p - self.prism.origin;
        Point::new(self.prism.u.dot(v), self.prism.v.dot(v), self.w.dot(v))
    }

    fn outer(&self, p: Point) -> Point {
        self.prism.origin + self.prism.u * p.x + self.prism.v * p.y + self.w * p.z
    }

    fn edges(&self) -> impl Iterator<Item = ([f64; 2], [f64; 2])> + '_ {
        let corners = &self.prism.outline;
        corners
            .iter()
            .zip(corners.iter().cycle().skip(1))
            .map(|(&a, &b)| (a, b))
    }

    /// Crossing-number test (even-odd), which does not mind the sense of the outline.
    fn outline_holds(&self, x: f64, y: f64) -> bool {
        let mut inside = false;
        for (a, b) in self.edges() {
            if (a[1] > y) != (b[1] > y) && x < a[0] + (y - a[1]) / (b[1] - a[1]) * (b[0] - a[0]) {
                inside = !inside;
            }
        }
        inside
    }

    fn nearest_local(&self, p: Point) -> Point {
        let z = p.z.clamp(0.0, self.prism.depth);
        if self.outline_holds(p.x, p.y) {
            return Point::new(p.x, p.y, z);
        }
        let flat = Point::new(p.x, p.y, z);
        let mut best = flat;
        let mut least = f64::INFINITY;
        for (a, b) in self.edges() {
            let (a, b) = (Point::new(a[0], a[1], z), Point::new(b[0], b[1], z));
            let q = a.lerp(b, nearest_on_segment(flat, a, b));
            let d = (flat - q).norm_squared();
            if d < least {
                (best, least) = (q, d);
            }
        }
        best
    }

    /// The place of the prism nearest to `p`, which is `p` itself inside.
    pub(super) fn nearest(&self, p: Point) -> Point {
        let local = self.local(p);
        self.outer(self.nearest_local(local))
    }

    /// Lower bound of the distance from the segment, by the box round the outline.
    pub(super) fn box_bound(&self, a: Point, b: Point) -> f64 {
        let (a, b) = (self.local(a), self.local(b));
        let out = |p: f64, q: f64, lo: f64, hi: f64| (lo - p.max(q)).max(p.min(q) - hi).max(0.0);
        Vector::new(
            out(a.x, b.x, self.lo[0], self.hi[0]),
            out(a.y, b.y, self.lo[1], self.hi[1]),
            out(a.z, b.z, 0.0, self.prism.depth),
        )
        .norm()
    }

    /// Zero when the segment meets the prism; else the best of its two ends against the prism and of
    /// the segment against every edge.
    pub(super) fn segment(&self, a: Point, b: Point) -> Hit {
        let (la, lb) = (self.local(a), self.local(b));
        if let Some(t) = self.entry(la, lb) {
            return Hit {
                distance_mm: 0.0,
                fraction: t,
                on_body: a.lerp(b, t),
                part: None,
            };
        }
        let mut best = Hit::beyond(f64::INFINITY, la);
        for (end, fraction) in [(la, 0.0), (lb, 1.0)] {
            let q = self.nearest_local(end);
            let distance_mm = end.distance(q);
            if distance_mm < best.distance_mm {
                best = Hit {
                    distance_mm,
                    fraction,
                    on_body: q,
                    part: None,
                };
            }
        }
        let depth = self.prism.depth;
        for (p, q) in self.edges() {
            let at = |c: [f64; 2], z: f64| Point::new(c[0], c[1], z);
            for (from, to) in [
                (at(p, 0.0), at(q, 0.0)),
                (at(p, depth), at(q, depth)),
                (at(p, 0.0), at(p, depth)),
            ] {
                let pair = segment_to_segment(la, lb, from, to);
                if pair.distance_mm < best.distance_mm {
                    best = Hit {
                        distance_mm: pair.distance_mm,
                        fraction: pair.on_first,
                        on_body: from.lerp(to, pair.on_second),
                        part: None,
                    };
                }
            }
        }
        Hit {
            on_body: self.outer(best.on_body),
            ..best
        }
    }

    /// A place of the segment that lies in the prism: an end, or where it goes through a wall or an
    /// end face.
    fn entry(&self, a: Point, b: Point) -> Option<f64> {
        let depth = self.prism.depth;
        let within = |z: f64| (0.0..=depth).contains(&z);
        for (end, t) in [(a, 0.0), (b, 1.0)] {
            if within(end.z) && self.outline_holds(end.x, end.y) {
                return Some(t);
            }
        }
        let d = b - a;
        for face in [0.0, depth] {
            let t = (face - a.z) / d.z;
            if (0.0..=1.0).contains(&t) {
                let p = a.lerp(b, t);
                if self.outline_holds(p.x, p.y) {
                    return Some(t);
                }
            }
        }
        self.edges().find_map(|(p, q)| {
            let (ex, ey) = (q[0] - p[0], q[1] - p[1]);
            let across = d.x * ey - d.y * ex;
            let (rx, ry) = (p[0] - a.x, p[1] - a.y);
            let t = (rx * ey - ry * ex) / across;
            let s = (rx * d.y - ry * d.x) / across;
            ((0.0..=1.0).contains(&t) && (0.0..=1.0).contains(&s) && within(a.z + t * d.z))
                .then_some(t)
        })
    }
}
