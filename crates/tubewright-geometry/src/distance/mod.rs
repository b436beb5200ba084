//! Distances: continuous along the centre line and conservative.
//!
//! A tube is a swept ball, ends included. Every distance reported for a tube is a *lower bound*: the
//! true gap lies between the reported one and the reported one plus the tolerance that the caller
//! gave. Where a closed form exists the two are equal to rounding (about 1e-12 of the coordinates):
//! straight tubes against every kind of solid, bends against half-spaces, balls and points. Bends
//! against the rest are found by halving (`search.rs`), never by sampling.
//!
//! The gap of a centre line that enters a solid is minus the tube's radius: the depth of the overlap
//! is not measured.

mod arc;
mod dispatch;
mod hit;
mod search;
mod segment_box;
mod segment_cloud;
mod segment_cylinder;
mod segment_mesh;
mod segment_prism;
mod segment_segment;
mod segment_triangle;
mod set;
mod stretch;

use dispatch::{nearest_in_solid, segment_to_solid, segment_within_solid};
use search::Nearest;

pub(crate) use arc::arc_pieces;
pub use arc::nearest_on_arc;
pub use segment_segment::{SegmentPair, nearest_on_segment, point_to_segment, segment_to_segment};
pub use set::{Obstacle, SetClearance, SolidSet};

use crate::solid::Solid;
use crate::tube::{CentreLine, TubeElement};
use crate::vector::{Point, UnitVector};

/// The nearest place of a solid to a point.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct ClosestPoint {
    /// Distance in mm; zero inside.
    pub distance_mm: f64,
    /// Nearest place of the solid; the point itself when it is inside.
    pub point: Point,
    /// Which part of the solid: triangle of a mesh, point of a cloud, member of a union.
    pub part: Option<usize>,
}

/// How far a piece of tube keeps from a body, and where.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Clearance {
    /// Gap in mm between the tube's outside and the body; minus the radius when the centre line
    /// enters the body. Never larger than the true gap, and less by the tolerance at most.
    pub gap_mm: f64,
    /// Tightest place on the centre line.
    pub on_centre_line: Point,
    /// Its distance from the upstream end along the centre line in mm.
    pub along_mm: f64,
    /// Nearest place of the body to it.
    pub on_body: Point,
    /// Which part of the body: triangle of a mesh, point of a cloud, member of a union.
    pub part: Option<usize>,
}

/// How far two pieces of tube keep from each other, and where.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct TubeClearance {
    /// Gap in mm between the two outsides: distance of the centre lines less both radii, negative
    /// when they overlap. Never larger than the true one, and less by the tolerance at most.
    pub gap_mm: f64,
    /// Tightest place on the first centre line.
    pub on_first: Point,
    /// Its distance from the first one's upstream end in mm.
    pub along_first_mm: f64,
    /// Tightest place on the second centre line.
    pub on_second: Point,
    /// Its distance from the second one's upstream end in mm.
    pub along_second_mm: f64,
}

/// Distance in mm from a point to a solid; zero inside. Exact to rounding.
///
/// ```
/// use tubewright_geometry::{OrientedBox, Point, Solid, distance};
/// let body = Solid::Box(OrientedBox::axis_aligned(Point::ORIGIN, [10.0, 10.0, 10.0]));
/// // 3 mm past one face and 4 mm past another: 5 mm from the edge.
/// let d = distance::point_to_solid(Point::new(13.0, 14.0, 0.0), &body);
/// assert!((d - 5.0).abs() < 1e-12);
/// ```
#[must_use]
pub fn point_to_solid(point: Point, solid: &Solid) -> f64 {
    dispatch::point_to_solid(point, solid)
}

/// The nearest place of a solid to a point, with the part it belongs to. Exact to rounding.
#[must_use]
pub fn closest_point_on_solid(point: Point, solid: &Solid) -> ClosestPoint {
    nearest_in_solid(point, solid)
}

/// Clearance between a piece of tube and a body.
///
/// `tolerance_mm` (> 0) is how far the reported gap may lie below the true one; it is held to at
/// least 1e-9 mm.
#[must_use]
pub fn clearance(tube: &TubeElement, solid: &Solid, tolerance_mm: f64) -> Clearance {
    clearance_below(tube, solid, tolerance_mm, f64::INFINITY).unwrap_or(Clearance {
        gap_mm: f64::INFINITY,
        on_centre_line: tube.line.at(0.0),
        along_mm: 0.0,
        on_body: tube.line.at(0.0),
        part: None,
    })
}

/// Like [`clearance`], but `None` as soon as the gap is known to be at least `limit_mm`: for the
/// least of many.
#[must_use]
pub fn clearance_below(
    tube: &TubeElement,
    solid: &Solid,
    tolerance_mm: f64,
    limit_mm: f64,
) -> Option<Clearance> {
    let nearest = nearest_to_solid(
        &tube.line,
        solid,
        tolerance_mm.max(1e-9),
        limit_mm + tube.radius,
    )?;
    let on_centre_line = tube.line.at(nearest.along_mm);
    Some(Clearance {
        gap_mm: nearest.low_mm - tube.radius,
        on_centre_line,
        along_mm: nearest.along_mm,
        on_body: nearest.on_body,
        part: nearest.part,
    })
}

fn nearest_to_solid(
    line: &CentreLine,
    solid: &Solid,
    tolerance_mm: f64,
    limit_mm: f64,
) -> Option<Nearest> {
    if let (
        CentreLine::Arc {
            centre,
            u,
            v,
            radius: clr,
            angle,
        },
        Solid::HalfSpace { point, outward },
    ) = (*line, solid)
    {
        let (height, t) = arc::lowest_on_arc(*outward, *point, (centre, u, v, clr, angle));
        let along_mm = clr * t;
        let place = line.at(along_mm);
        let low_mm = height.max(0.0);
        return (low_mm < limit_mm).then_some(Nearest {
            low_mm,
            along_mm,
            on_body: place - *outward * low_mm,
            part: None,
        });
    }
    if let (
        CentreLine::Arc {
            centre,
            u,
            v,
            radius: clr,
            angle,
        },
        Solid::Sphere {
            centre: ball,
            radius,
        },
    ) = (*line, solid)
    {
        let (t, distance) = nearest_on_arc(*ball, centre, u, v, clr, angle);
        let along_mm = clr * t;
        let low_mm = (distance - radius).max(0.0);
        let place = line.at(along_mm);
        let on_body = if distance > *radius {
            ball.lerp(place, radius / distance)
        } else {
            place
        };
        return (low_mm < limit_mm).then_some(Nearest {
            low_mm,
            along_mm,
            on_body,
            part: None,
        });
    }
    if let Solid::Union(members) = solid {
        let mut best: Option<Nearest> = None;
        for (index, member) in members.iter().enumerate() {
            let limit = best.map_or(limit_mm, |b| b.low_mm);
            if let Some(found) = nearest_to_solid(line, member, tolerance_mm, limit)
                && found.low_mm < limit
            {
                best = Some(Nearest {
                    part: Some(index),
                    ..found
                });
            }
        }
        return best;
    }
    search::nearest_along(line, tolerance_mm, limit_mm, |a, b, limit| {
        segment_to_solid(a, b, solid, limit)
    })
}

/// Greatest coordinate of a centre line along a direction, from the origin. Closed form.
pub(crate) fn highest_along(line: &CentreLine, direction: UnitVector) -> f64 {
    match *line {
        CentreLine::Segment { a, b } => direction
            .dot(a.to_vector())
            .max(direction.dot(b.to_vector())),
        CentreLine::Arc {
            centre,
            u,
            v,
            radius,
            angle,
        } => -arc::lowest_on_arc(-direction, Point::ORIGIN, (centre, u, v, radius, angle)).0,
    }
}

/// True when the tube's outside keeps at least `gap_mm` from the solid everywhere. Errs only to the
/// safe side, and by less than 1e-6 mm: a tube that is told clear is clear.
///
/// The hot path of a route search: it stops at the first bound that decides.
#[must_use]
pub fn is_clear(tube: &TubeElement, solid: &Solid, gap_mm: f64) -> bool {
    let need_mm = tube.radius + gap_mm;
    if need_mm <= 0.0 {
        return true;
    }
    match (tube.line, solid) {
        (_, Solid::Union(members)) => members.iter().all(|m| is_clear(tube, m, gap_mm)),
        (
            CentreLine::Arc {
                centre,
                u,
                v,
                radius,
                angle,
            },
            Solid::HalfSpace { point, outward },
        ) => arc::lowest_on_arc(*outward, *point, (centre, u, v, radius, angle)).0 >= need_mm,
        (
            CentreLine::Arc {
                centre,
                u,
                v,
                radius: clr,
                angle,
            },
            Solid::Sphere {
                centre: ball,
                radius,
            },
        ) => nearest_on_arc(*ball, centre, u, v, clr, angle).1 - radius >= need_mm,
        (line, Solid::Tube(other)) => {
            search::keep_apart(&line, &other.line, need_mm + other.radius)
        }
        (line, Solid::Mesh(mesh)) => {
            // The tube keeps off the surface, so it is inside everywhere or nowhere.
            search::keeps_off(&line, need_mm, &|a, b, limit| {
                segment_mesh::surface_within(a, b, mesh, limit)
            }) && !segment_mesh::is_inside(line.at(0.0), mesh)
        }
        (line, _) => search::keeps_off(&line, need_mm, &|a, b, limit| {
            segment_within_solid(a, b, solid, limit)
        }),
    }
}

/// Clearance between two pieces of tube; `tolerance_mm` as in [`clearance`].
#[must_use]
pub fn clearance_between(
    first: &TubeElement,
    second: &TubeElement,
    tolerance_mm: f64,
) -> TubeClearance {
    let found = search::nearest_of_two(
        &first.line,
        &second.line,
        tolerance_mm.max(1e-9),
        f64::INFINITY,
    );
    let (low_mm, along_first_mm, along_second_mm) = found.map_or((f64::INFINITY, 0.0, 0.0), |f| {
        (f.low_mm, f.along_first_mm, f.along_second_mm)
    });
    TubeClearance {
        gap_mm: low_mm - first.radius - second.radius,
        on_first: first.line.at(along_first_mm),
        along_first_mm,
        on_second: second.line.at(along_second_mm),
        along_second_mm,
    }
}

/// True when two pieces of tube keep at least `gap_mm` apart, outside to outside. Errs only to the
/// safe side, and by less than 1e-6 mm.
#[must_use]
pub fn are_clear(first: &TubeElement, second: &TubeElement, gap_mm: f64) -> bool {
    search::keep_apart(
        &first.line,
        &second.line,
        first.radius + second.radius + gap_mm,
    )
}
