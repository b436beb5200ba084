//! Point and segment to a triangle mesh through its tree of boxes.

use super::hit::Hit;
use super::segment_triangle::Triangle;
use crate::box_tree::{RayBound, SegmentBound};
use crate::mesh::TriangleMesh;
use crate::vector::{Point, Vector};

/// Directions for the inside test, none along an axis or a diagonal of a likely body. Any would do;
/// a second one is only taken when the first passes too near an edge.
const RAYS: [Vector; 5] = [
    Vector::new(0.482_301, 0.759_017, 0.437_613),
    Vector::new(-0.713_409, 0.301_127, 0.632_711),
    Vector::new(0.229_877, -0.583_301, 0.779_043),
    Vector::new(-0.391_733, -0.671_299, -0.629_201),
    Vector::new(0.867_133, -0.107_371, -0.486_407),
];

/// The nearest triangle: its place, number and distance; `None` when nothing is nearer than
/// `limit_mm`. Distance is to the surface, also from inside.
pub(super) fn nearest_on_surface(
    p: Point,
    mesh: &TriangleMesh,
    limit_mm: f64,
) -> Option<(f64, Point, usize)> {
    let mut best = None;
    mesh.tree().visit(
        limit_mm * limit_mm,
        |node| node.point_bound(p),
        |index, limit| {
            let q = Triangle::new(mesh.corners(index)).nearest(p);
            let d = (p - q).norm_squared();
            if d < limit {
                best = Some((d.sqrt(), q, index));
                d
            } else {
                limit
            }
        },
    );
    best
}

/// True when the mesh is closed and `p` is inside it: the signed crossings of a half-line (its
/// winding number) do not add up to zero. Five directions are tried until one passes no edge.
pub(super) fn is_inside(p: Point, mesh: &TriangleMesh) -> bool {
    if !mesh.is_closed() || mesh.bounds().distance(p) > 0.0 {
        return false;
    }
    let mut last = 0;
    for direction in RAYS {
        let ray = RayBound::new(p, direction);
        let (mut sum, mut doubtful) = (0, false);
        mesh.tree().visit(
            1.0,
            |node| if ray.meets(node) { 0.0 } else { f64::INFINITY },
            |index, limit| {
                match Triangle::new(mesh.corners(index)).crossing(p, direction) {
                    Some(sign) => sum += sign,
                    None => doubtful = true,
                }
                limit
            },
        );
        last = sum;
        if !doubtful {
            break;
        }
    }
    last != 0
}

pub(super) fn point_to_mesh(p: Point, mesh: &TriangleMesh) -> f64 {
    if is_inside(p, mesh) {
        return 0.0;
    }
    nearest_on_surface(p, mesh, f64::INFINITY).map_or(f64::INFINITY, |(d, ..)| d)
}

/// The nearest triangle to the segment when it is nearer than `limit_mm`, else a hit at the limit. A
/// segment wholly inside a closed mesh meets no triangle near it: its start is then inside and the
/// distance zero.
pub(super) fn segment_to_mesh(a: Point, b: Point, mesh: &TriangleMesh, limit_mm: f64) -> Hit {
    if is_inside(a, mesh) {
        return Hit {
            distance_mm: 0.0,
            fraction: 0.0,
            on_body: a,
            part: nearest_on_surface(a, mesh, f64::INFINITY).map(|(.., index)| index),
        };
    }
    segment_to_surface(a, b, mesh, limit_mm)
}

fn segment_to_surface(a: Point, b: Point, mesh: &TriangleMesh, limit_mm: f64) -> Hit {
    let mut best = Hit::beyond(limit_mm, a);
    if limit_mm <= 0.0 {
        return best;
    }
    let segment = SegmentBound::new(a, b);
    mesh.tree().visit(
        limit_mm * limit_mm,
        |node| segment.squared(node),
        |index, limit| {
            let hit = Triangle::new(mesh.corners(index)).segment(a, b);
            if hit.distance_mm < best.distance_mm {
                best = Hit {
                    part: Some(index),
                    ..hit
                };
                if hit.distance_mm <= 0.0 {
                    return f64::NEG_INFINITY;
                }
                return hit.distance_mm * hit.distance_mm;
            }
            limit
        },
    );
    best
}

/// True when some triangle is nearer than `limit_mm`: stops at the first one found.
pub(super) fn surface_within(a: Point, b: Point, mesh: &TriangleMesh, limit_mm: f64) -> bool {
    if limit_mm <= 0.0 {
        return false;
    }
    let segment = SegmentBound::new(a, b);
    let mut found = false;
    mesh.tree().visit(
        limit_mm * limit_mm,
        |node| segment.squared(node),
        |index, limit| {
            if Triangle::new(mesh.corners(index)).segment(a, b).distance_mm < limit_mm {
                found = true;
                f64::NEG_INFINITY
            } else {
                limit
            }
        },
    );
    found
}
