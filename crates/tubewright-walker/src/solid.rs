//! Distance of a place to each kind of body, zero inside.

use crate::space::{V, add, atan2, cross, dot, norm, scale, sub};

/// A body in millimetres.
#[derive(Clone, Debug)]
#[non_exhaustive]
pub enum Solid {
    /// A box: centre, half sizes, three unit axes.
    Box {
        /// Centre.
        centre: [f64; 3],
        /// Half the size along each axis.
        half: [f64; 3],
        /// Unit axes, square to each other.
        axes: [[f64; 3]; 3],
    },
    /// A tube with round ends.
    Capsule {
        /// One end of the axis.
        a: [f64; 3],
        /// The other.
        b: [f64; 3],
        /// Radius.
        radius: f64,
    },
    /// A tube with flat ends.
    Cylinder {
        /// One end of the axis.
        a: [f64; 3],
        /// The other.
        b: [f64; 3],
        /// Radius.
        radius: f64,
    },
    /// A ball.
    Sphere {
        /// Centre.
        centre: [f64; 3],
        /// Radius.
        radius: f64,
    },
    /// Everything beyond a plane, seen against `outward`.
    HalfSpace {
        /// A place on the plane.
        point: [f64; 3],
        /// Unit normal out of the body.
        outward: [f64; 3],
    },
    /// An outline (corners along `u`, `v` from `origin`), extruded by `depth` along u × v.
    Prism {
        /// Origin of the outline's coordinates.
        origin: [f64; 3],
        /// First axis.
        u: [f64; 3],
        /// Second axis.
        v: [f64; 3],
        /// Corners in order.
        outline: Vec<[f64; 2]>,
        /// Extrusion in mm.
        depth: f64,
    },
    /// A closed triangle mesh with outward winding.
    Mesh {
        /// Corners.
        vertices: Vec<[f64; 3]>,
        /// Corner numbers of each triangle.
        faces: Vec<[usize; 3]>,
    },
    /// Triangles without an inside: what a scan saw.
    Surface(Surface),
    /// Balls of one radius: a scan of points only.
    Points {
        /// Their centres.
        centres: Vec<[f64; 3]>,
        /// Their radius.
        radius: f64,
    },
    /// Several bodies taken together (the space swept by a moving one).
    Envelope(Vec<Solid>),
}

impl Solid {
    /// Distance in mm from a place to the body; zero inside.
    #[must_use]
    pub fn distance(&self, p: [f64; 3]) -> f64 {
        match self {
            Self::Box { centre, half, axes } => {
                let d = sub(p, *centre);
                let mut out = 0.0;
                for (axis, h) in axes.iter().zip(half) {
                    let beyond = (dot(d, *axis).abs() - h).max(0.0);
                    out += beyond * beyond;
                }
                out.sqrt()
            }
            Self::Capsule { a, b, radius } => (to_segment(p, *a, *b) - radius).max(0.0),
            Self::Cylinder { a, b, radius } => {
                let length = norm(sub(*b, *a));
                let axis = scale(sub(*b, *a), 1.0 / length);
                let along = dot(sub(p, *a), axis);
                let across = norm(sub(sub(p, *a), scale(axis, along)));
                let past = (-along).max(along - length).max(0.0);
                let beyond = (across - radius).max(0.0);
                (past * past + beyond * beyond).sqrt()
            }
            Self::Sphere { centre, radius } => (norm(sub(p, *centre)) - radius).max(0.0),
            Self::HalfSpace { point, outward } => dot(sub(p, *point), *outward).max(0.0),
            Self::Prism {
                origin,
                u,
                v,
                outline,
                depth,
            } => {
                let d = sub(p, *origin);
                let (x, y, z) = (dot(d, *u), dot(d, *v), dot(d, cross(*u, *v)));
                let past = (-z).max(z - depth).max(0.0);
                let beyond = to_outline([x, y], outline);
                (past * past + beyond * beyond).sqrt()
            }
            Self::Mesh { vertices, faces } => to_mesh(p, vertices, faces),
            Self::Surface(surface) => surface.distance(p, f64::INFINITY),
            Self::Points { centres, radius } => centres
                .iter()
                .map(|centre| (norm(sub(p, *centre)) - radius).max(0.0))
                .fold(f64::INFINITY, f64::min),
            Self::Envelope(of) => of
                .iter()
                .map(|s| s.distance(p))
                .fold(f64::INFINITY, f64::min),
        }
    }

    /// The distance when it is less than `most`, else anything from `most` up that is not more than
    /// it: saves looking at every triangle.
    pub(crate) fn distance_within(&self, p: V, most: f64) -> f64 {
        match self {
            Self::Surface(surface) => surface.distance(p, most),
            _ => self.distance(p),
        }
    }
}

/// Triangles without an inside, each with the ball round it.
#[derive(Clone, Debug)]
pub struct Surface {
    triangles: Vec<([V; 3], V, f64)>,
}

impl Surface {
    /// Takes corners and the corner numbers of each triangle; a number without a corner is left out.
    #[must_use]
    pub fn new(vertices: &[[f64; 3]], faces: impl IntoIterator<Item = [usize; 3]>) -> Self {
        let triangles = faces
            .into_iter()
            .filter_map(|[a, b, c]| Some([*vertices.get(a)?, *vertices.get(b)?, *vertices.get(c)?]))
            .map(|corners| {
                let middle = scale(add(add(corners[0], corners[1]), corners[2]), 1.0 / 3.0);
                let reach = corners.map(|c| norm(sub(c, middle)));
                (corners, middle, reach[0].max(reach[1]).max(reach[2]))
            })
            .collect();
        Self { triangles }
    }

    fn distance(&self, p: V, most: f64) -> f64 {
        let mut least = most;
        for ([a, b, c], middle, reach) in &self.triangles {
            let to = sub(*middle, p);
            let far = least + reach;
            if dot(to, to) < far * far {
                least = least.min(to_triangle(p, *a, *b, *c));
            }
        }
        least
    }
}

fn to_segment(p: V, a: V, b: V) -> f64 {
    let ab = sub(b, a);
    let t = (dot(sub(p, a), ab) / dot(ab, ab).max(1e-300)).clamp(0.0, 1.0);
    norm(sub(p, add(a, scale(ab, t))))
}

fn to_outline(p: [f64; 2], outline: &[[f64; 2]]) -> f64 {
    let flat = |q: [f64; 2]| [q[0], q[1], 0.0];
    let mut inside = false;
    let mut least = f64::INFINITY;
    for (i, a) in outline.iter().enumerate() {
        let b = &outline[(i + 1) % outline.len()];
        least = least.min(to_segment(flat(p), flat(*a), flat(*b)));
        if (a[1] > p[1]) != (b[1] > p[1])
            && p[0] < a[0] + (p[1] - a[1]) / (b[1] - a[1]) * (b[0] - a[0])
        {
            inside = !inside;
        }
    }
    if inside { 0.0 } else { least }
}

/// Inside by the sum of solid angles of the triangles (van Oosterom and Strackee, "The solid angle
/// of a plane triangle", 1983, eq. 8; from memory), outside by the nearest triangle.
fn to_mesh(p: V, vertices: &[V], faces: &[[usize; 3]]) -> f64 {
    let mut least = f64::INFINITY;
    let mut solid_angle = 0.0;
    for face in faces {
        let [a, b, c] = face.map(|i| vertices[i]);
        least = least.min(to_triangle(p, a, b, c));
        let (u, v, w) = (sub(a, p), sub(b, p), sub(c, p));
        let (lu, lv, lw) = (norm(u), norm(v), norm(w));
        let triple = dot(u, cross(v, w));
        let below = lu * lv * lw + dot(u, v) * lw + dot(v, w) * lu + dot(w, u) * lv;
        solid_angle += 2.0 * atan2(triple, below);
    }
    if solid_angle.abs() > 2.0 * core::f64::consts::PI {
        0.0
    } else {
        least
    }
}

fn to_triangle(p: V, a: V, b: V, c: V) -> f64 {
    let normal = cross(sub(b, a), sub(c, a));
    let beside = |s: V, e: V| dot(cross(sub(e, s), sub(p, s)), normal);
    if beside(a, b) >= 0.0 && beside(b, c) >= 0.0 && beside(c, a) >= 0.0 && norm(normal) > 1e-12 {
        (dot(sub(p, a), normal) / norm(normal)).abs()
    } else {
        to_segment(p, a, b)
            .min(to_segment(p, b, c))
            .min(to_segment(p, c, a))
    }
}
