//! One point or one segment against any solid.

use super::ClosestPoint;
use super::hit::Hit;
use super::search::nearest_of_two;
use super::segment_cloud::{segment_to_cloud, segment_to_points};
use super::segment_mesh::{is_inside, nearest_on_surface, point_to_mesh, surface_within};
use super::segment_prism::LocalPrism;
use super::segment_segment::{nearest_on_segment, segment_to_segment};
use super::{arc, search, segment_box, segment_cylinder, segment_mesh};
use crate::solid::Solid;
use crate::tube::CentreLine;
use crate::vector::Point;

/// Tolerance in mm of a straight against a bend taken as a body, where no closed form exists: well
/// below what any caller asks for.
const BEND_BODY_MM: f64 = 1e-7;

pub(super) fn point_to_solid(p: Point, solid: &Solid) -> f64 {
    match solid {
        Solid::Box(b) => segment_box::point_to_box(p, b),
        Solid::Capsule { a, b, radius } => {
            (p.distance(a.lerp(*b, nearest_on_segment(p, *a, *b))) - radius).max(0.0)
        }
        Solid::Sphere { centre, radius } => (p.distance(*centre) - radius).max(0.0),
        Solid::HalfSpace { point, outward } => outward.dot(p - *point).max(0.0),
        Solid::Mesh(mesh) => point_to_mesh(p, mesh),
        Solid::Union(members) => members
            .iter()
            .map(|m| point_to_solid(p, m))
            .fold(f64::INFINITY, f64::min),
        _ => nearest_in_solid(p, solid).distance_mm,
    }
}

pub(super) fn nearest_in_solid(p: Point, solid: &Solid) -> ClosestPoint {
    let at = |point: Point| ClosestPoint {
        distance_mm: p.distance(point),
        point,
        part: None,
    };
    match solid {
        Solid::Box(b) => at(segment_box::nearest_in_box(p, b)),
        Solid::Capsule { a, b, radius } => at(toward(
            p,
            a.lerp(*b, nearest_on_segment(p, *a, *b)),
            *radius,
        )),
        Solid::Cylinder { a, b, radius } => {
            at(segment_cylinder::nearest_in_cylinder(p, *a, *b, *radius))
        }
        Solid::Sphere { centre, radius } => at(toward(p, *centre, *radius)),
        Solid::HalfSpace { point, outward } => at(p - *outward * outward.dot(p - *point).max(0.0)),
        Solid::Prism(prism) => at(LocalPrism::new(prism).nearest(p)),
        Solid::Tube(tube) => at(toward(p, nearest_on_line(p, &tube.line), tube.radius)),
        Solid::Mesh(mesh) => match nearest_on_surface(p, mesh, f64::INFINITY) {
            Some((_, _, index)) if is_inside(p, mesh) => ClosestPoint {
                distance_mm: 0.0,
                point: p,
                part: Some(index),
            },
            Some((distance_mm, point, index)) => ClosestPoint {
                distance_mm,
                point,
                part: Some(index),
            },
            None => nowhere(p),
        },
        Solid::Cloud { points, radius } => from_hit(p, &segment_to_points(p, p, points, *radius)),
        Solid::PointCloud(cloud) => from_hit(p, &segment_to_cloud(p, p, cloud, f64::INFINITY)),
        Solid::Union(members) => {
            let mut best = nowhere(p);
            for (index, member) in members.iter().enumerate() {
                let found = nearest_in_solid(p, member);
                if found.distance_mm < best.distance_mm {
                    best = ClosestPoint {
                        part: Some(index),
                        ..found
                    };
                }
            }
            best
        }
    }
}

/// What an empty union or cloud answers: infinitely far.
const fn nowhere(p: Point) -> ClosestPoint {
    ClosestPoint {
        distance_mm: f64::INFINITY,
        point: p,
        part: None,
    }
}

fn from_hit(p: Point, hit: &Hit) -> ClosestPoint {
    ClosestPoint {
        distance_mm: hit.distance_mm,
        point: if hit.distance_mm > 0.0 {
            hit.on_body
        } else {
            p
        },
        part: hit.part,
    }
}

/// The place of the ball of `radius` about `core` nearest to `p`: `p` itself inside.
fn toward(p: Point, core: Point, radius: f64) -> Point {
    let d = p.distance(core);
    if d > radius {
        core.lerp(p, radius / d)
    } else {
        p
    }
}

fn nearest_on_line(p: Point, line: &CentreLine) -> Point {
    match *line {
        CentreLine::Segment { a, b } => a.lerp(b, nearest_on_segment(p, a, b)),
        CentreLine::Arc {
            centre,
            u,
            v,
            radius,
            angle,
        } => line.at(arc::nearest_on_arc(p, centre, u, v, radius, angle).0 * radius),
    }
}

/// Nearest place of the segment `a`–`b` to the solid. Exact below `limit_mm`; a distance at or above
/// the limit only says that the true one is at least the limit.
pub(super) fn segment_to_solid(a: Point, b: Point, solid: &Solid, limit_mm: f64) -> Hit {
    let round = |c: Point, d: Point, radius: f64| {
        let pair = segment_to_segment(a, b, c, d);
        Hit {
            distance_mm: pair.distance_mm,
            fraction: pair.on_first,
            on_body: c.lerp(d, pair.on_second),
            part: None,
        }
        .shrunk(radius, a.lerp(b, pair.on_first))
    };
    match solid {
        Solid::Box(body) => segment_box::segment_to_box(a, b, body),
        Solid::Capsule { a: c, b: d, radius } => round(*c, *d, *radius),
        Solid::Sphere { centre, radius } => round(*centre, *centre, *radius),
        Solid::Cylinder { a: c, b: d, radius } => {
            let bound = segment_cylinder::capsule_bound(a, b, *c, *d, *radius);
            if bound >= limit_mm {
                return Hit::beyond(bound, a);
            }
            segment_cylinder::segment_to_cylinder(a, b, *c, *d, *radius)
        }
        Solid::HalfSpace { point, outward } => {
            let (from, to) = (outward.dot(a - *point), outward.dot(b - *point));
            let (height, fraction) = if from <= to { (from, 0.0) } else { (to, 1.0) };
            let distance_mm = height.max(0.0);
            Hit {
                distance_mm,
                fraction,
                on_body: a.lerp(b, fraction) - *outward * distance_mm,
                part: None,
            }
        }
        Solid::Prism(prism) => {
            let local = LocalPrism::new(prism);
            let bound = local.box_bound(a, b);
            if bound >= limit_mm {
                return Hit::beyond(bound, a);
            }
            local.segment(a, b)
        }
        Solid::Mesh(mesh) => segment_mesh::segment_to_mesh(a, b, mesh, limit_mm),
        Solid::Cloud { points, radius } => segment_to_points(a, b, points, *radius),
        Solid::PointCloud(cloud) => segment_to_cloud(a, b, cloud, limit_mm),
        Solid::Tube(tube) => {
            let line = CentreLine::Segment { a, b };
            match nearest_of_two(&line, &tube.line, BEND_BODY_MM, limit_mm + tube.radius) {
                Some(found) => {
                    let length = a.distance(b);
                    let fraction = if length > 0.0 {
                        found.along_first_mm / length
                    } else {
                        0.0
                    };
                    Hit {
                        distance_mm: found.low_mm,
                        fraction,
                        on_body: tube.line.at(found.along_second_mm),
                        part: None,
                    }
                    .shrunk(tube.radius, a.lerp(b, fraction))
                }
                None => Hit::beyond(limit_mm, a),
            }
        }
        Solid::Union(members) => {
            let mut best = Hit::beyond(limit_mm, a);
            for (index, member) in members.iter().enumerate() {
                let hit = segment_to_solid(a, b, member, best.distance_mm);
                if hit.distance_mm < best.distance_mm {
                    best = Hit {
                        part: Some(index),
                        ..hit
                    };
                }
            }
            best
        }
    }
}

/// True when the solid is nearer than `limit_mm` to the segment. Meshes: their surface only.
pub(super) fn segment_within_solid(a: Point, b: Point, solid: &Solid, limit_mm: f64) -> bool {
    if limit_mm <= 0.0 {
        return false;
    }
    match solid {
        Solid::Mesh(mesh) => surface_within(a, b, mesh, limit_mm),
        Solid::Tube(tube) => !search::keep_apart(
            &CentreLine::Segment { a, b },
            &tube.line,
            limit_mm + tube.radius,
        ),
        Solid::Union(members) => members
            .iter()
            .any(|m| segment_within_solid(a, b, m, limit_mm)),
        _ => segment_to_solid(a, b, solid, limit_mm).distance_mm < limit_mm,
    }
}
