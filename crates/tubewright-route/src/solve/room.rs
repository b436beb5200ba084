//! What is in the way, prepared for the search: margins of pieces of tube with the direction in
//! which they grow.

use tubewright_geometry::distance::{Obstacle, SolidSet, closest_point_on_solid};
use tubewright_geometry::{CentreLine, Point, Solid, TubeElement, UnitVector, Vector, math};

use crate::problem::{Region, RouteProblem};

/// Tolerance of a clearance in mm: how far it may be understated.
const CLEARANCE_TOLERANCE_MM: f64 = 2e-3;

/// A plane that tubes stay above: the ground, a side of the workspace.
#[derive(Clone, Copy, Debug)]
struct Plane {
    outward: Vector,
    offset: f64,
    gap: f64,
    body: usize,
}

/// One place where a piece is near something.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Contact {
    /// Number of the body; bodies of the problem first, then the six sides of the workspace.
    pub(crate) body: usize,
    /// Gap less required gap, mm; falls below zero with the depth.
    pub(crate) margin: f64,
    /// Share of the piece's length from its upstream end.
    pub(crate) share: f64,
    /// Place on the centre line.
    pub(crate) place: Point,
    /// Direction in which the margin grows fastest.
    pub(crate) away: Vector,
}

/// Bodies and workspace of one problem.
#[derive(Clone, Debug)]
pub(crate) struct Room {
    set: SolidSet,
    /// Body number of each obstacle of the set.
    numbers: Vec<usize>,
    solids: Vec<(Solid, f64)>,
    planes: Vec<Plane>,
}

impl Room {
    pub(crate) fn new(problem: &RouteProblem) -> Self {
        let mut planes = Vec::new();
        let mut numbers = Vec::new();
        let mut solids = Vec::new();
        for (number, body) in problem.bodies.iter().enumerate() {
            if let Solid::HalfSpace { point, outward } = &body.solid {
                planes.push(Plane {
                    outward: outward.vector(),
                    offset: outward.dot(point.to_vector()),
                    gap: body.gap_mm,
                    body: number,
                });
            } else {
                numbers.push(number);
                solids.push((body.solid.clone(), body.gap_mm));
            }
        }
        if let Some(region) = problem.workspace {
            let (min, max) = (region.min.to_array(), region.max.to_array());
            let axes = [UnitVector::X, UnitVector::Y, UnitVector::Z];
            for (k, axis) in axes.into_iter().enumerate() {
                let sides = [(1.0, min.get(k)), (-1.0, max.get(k))];
                for (side, (sign, limit)) in sides.into_iter().enumerate() {
                    planes.push(Plane {
                        outward: axis * sign,
                        offset: sign * limit.copied().unwrap_or(0.0),
                        gap: 0.0,
                        body: problem.bodies.len() + 2 * k + side,
                    });
                }
            }
        }
        let set = SolidSet::new(solids.iter().map(|(solid, gap_mm)| Obstacle {
            solid: solid.clone(),
            gap_mm: *gap_mm,
        }));
        Self {
            set,
            numbers,
            solids,
            planes,
        }
    }

    /// Distance less required gap of a bare point, least over everything.
    pub(crate) fn margin_at(&self, place: Point) -> f64 {
        self.planes
            .iter()
            .map(|p| p.outward.dot(place.to_vector()) - p.offset - p.gap)
            .fold(self.set.margin_at(place), f64::min)
    }

    /// As [`Self::margin_at`], with some bodies left out.
    pub(crate) fn margin_without(&self, place: Point, left_out: &[usize]) -> f64 {
        let planes = self
            .planes
            .iter()
            .filter(|p| !left_out.contains(&p.body))
            .map(|p| p.outward.dot(place.to_vector()) - p.offset - p.gap);
        self.numbers
            .iter()
            .zip(&self.solids)
            .filter(|(number, _)| !left_out.contains(number))
            .map(|(_, (solid, gap))| closest_point_on_solid(place, solid).distance_mm - gap)
            .chain(planes)
            .fold(f64::INFINITY, f64::min)
    }

    /// The body with the least margin at a place, and its gap.
    pub(crate) fn nearest(&self, place: Point) -> (usize, f64) {
        let mut best = (usize::MAX, 0.0, f64::INFINITY);
        for p in &self.planes {
            let margin = p.outward.dot(place.to_vector()) - p.offset - p.gap;
            if margin < best.2 {
                best = (p.body, p.gap, margin);
            }
        }
        for (number, (solid, gap)) in self.numbers.iter().zip(&self.solids) {
            let margin = closest_point_on_solid(place, solid).distance_mm - gap;
            if margin < best.2 {
                best = (*number, *gap, margin);
            }
        }
        (best.0, best.1)
    }

    /// The box that planes square to the axes leave for the middle of a ball of `radius`.
    pub(crate) fn planes_within(&self, region: &Region, radius: f64) -> (Point, Point) {
        let (mut lo, mut hi) = (region.min.to_array(), region.max.to_array());
        for p in &self.planes {
            for (k, n) in p.outward.to_array().into_iter().enumerate() {
                let (Some(lo), Some(hi)) = (lo.get_mut(k), hi.get_mut(k)) else {
                    continue;
                };
                let at = p.offset + p.gap + radius;
                if n > 1.0 - 1e-12 {
                    *lo = lo.max(at);
                } else if n < -1.0 + 1e-12 {
                    *hi = hi.min(-at);
                }
            }
        }
        (Point::from_array(lo), Point::from_array(hi))
    }

    /// Everything nearer than `limit` mm (over the gap) to a piece: for each body the tightest place
    /// and, for a long contact, the ends and the middle too.
    pub(crate) fn near(&self, tube: &TubeElement, limit: f64, out: &mut Vec<Contact>) {
        for p in &self.planes {
            let (height, share) = lowest(&tube.line, p.outward);
            let margin = |height: f64| height - p.offset - p.gap - tube.radius;
            if margin(height) >= limit {
                continue;
            }
            let mut add = |share: f64| {
                let place = tube.line.at(share * tube.line.length());
                out.push(Contact {
                    body: p.body,
                    margin: margin(p.outward.dot(place.to_vector())),
                    share,
                    place,
                    away: p.outward,
                });
            };
            add(share);
            for end in [0.0, 1.0] {
                if (end - share).abs() > 1e-9 {
                    add(end);
                }
            }
        }
        let length = tube.line.length();
        for found in self.set.all_below(tube, CLEARANCE_TOLERANCE_MM, limit) {
            let (Some(&body), Some((solid, gap))) =
                (self.numbers.get(found.body), self.solids.get(found.body))
            else {
                continue;
            };
            let tight = &found.clearance;
            let share = if length > 0.0 {
                (tight.along_mm / length).clamp(0.0, 1.0)
            } else {
                0.0
            };
            let off = tight.on_centre_line - tight.on_body;
            let entered = tight.gap_mm <= -tube.radius + CLEARANCE_TOLERANCE_MM;
            if let (Some(away), false) = (off.direction(), entered) {
                out.push(Contact {
                    body,
                    margin: found.margin_mm,
                    share,
                    place: tight.on_centre_line,
                    away: away.vector(),
                });
                for other in [0.0, 0.5, 1.0] {
                    if (other - share).abs() < 0.02 {
                        continue;
                    }
                    let place = tube.line.at(other * length);
                    let near = closest_point_on_solid(place, solid);
                    let margin = near.distance_mm - gap - tube.radius;
                    if let (true, Some(away)) = (margin < limit, (place - near.point).direction()) {
                        out.push(Contact {
                            body,
                            margin,
                            share: other,
                            place,
                            away: away.vector(),
                        });
                    }
                }
            } else {
                // The centre line itself runs through the body: leave by the shortest way out at the
                // deepest of a few places.
                let deepest = (0..=8)
                    .filter_map(|k| {
                        let share = f64::from(k) / 8.0;
                        let place = tube.line.at(share * length);
                        let (depth, away) = escape(place, solid)?;
                        Some(Contact {
                            body,
                            margin: -depth - gap - tube.radius,
                            share,
                            place,
                            away,
                        })
                    })
                    .min_by(|a, b| a.margin.total_cmp(&b.margin));
                out.push(deepest.unwrap_or(Contact {
                    body,
                    margin: found.margin_mm,
                    share,
                    place: tight.on_centre_line,
                    away: Vector::ZERO,
                }));
            }
        }
    }

    /// The least margin of a piece over everything below `limit`, with the body.
    pub(crate) fn tightest(&self, tube: &TubeElement, limit: f64) -> Option<(usize, f64, Point)> {
        let mut best = None;
        let mut least = limit;
        for p in &self.planes {
            let (height, share) = lowest(&tube.line, p.outward);
            let margin = height - p.offset - p.gap - tube.radius;
            if margin < least {
                least = margin;
                best = Some((p.body, margin, tube.line.at(share * tube.line.length())));
            }
        }
        if let Some(found) = self.set.tightest(tube, CLEARANCE_TOLERANCE_MM, least)
            && let Some(&body) = self.numbers.get(found.body)
        {
            best = Some((body, found.margin_mm, found.clearance.on_centre_line));
        }
        best
    }
}

/// Least height of a centre line along `up`, and the share of its length where.
pub(crate) fn lowest(line: &CentreLine, up: Vector) -> (f64, f64) {
    match *line {
        CentreLine::Arc {
            centre,
            u,
            v,
            radius,
            angle,
        } => {
            let (base, a, b) = (up.dot(centre.to_vector()), u.dot(up), v.dot(up));
            let height = |t: f64| {
                let (sin, cos) = math::sin_cos(t);
                base + radius * (cos * a + sin * b)
            };
            let mut best = (height(0.0), 0.0);
            let end = height(angle);
            if end < best.0 {
                best = (end, 1.0);
            }
            // a cos t + b sin t is least where (cos t, sin t) points against (a, b).
            let t = math::atan2(-b, -a);
            if t > 0.0 && t < angle {
                let h = height(t);
                if h < best.0 {
                    best = (h, t / angle);
                }
            }
            best
        }
        _ => {
            let length = line.length();
            let (a, b) = (
                up.dot(line.at(0.0).to_vector()),
                up.dot(line.at(length).to_vector()),
            );
            if b < a { (b, 1.0) } else { (a, 0.0) }
        }
    }
}

/// Depth of a place inside a solid and the way out; `None` when it is outside. Unions: of the member
/// that is left last. Meshes: toward the nearest of their triangles' planes is not sought, but
/// straight out from the middle of their box.
fn escape(p: Point, solid: &Solid) -> Option<(f64, Vector)> {
    match solid {
        Solid::Box(b) => {
            let d = p - b.centre;
            let mut best: Option<(f64, Vector)> = None;
            for (axis, half) in b.axes.iter().zip(b.half) {
                let along = axis.dot(d);
                let depth = half - along.abs();
                if depth <= 0.0 {
                    return None;
                }
                if best.is_none_or(|(least, _)| depth < least) {
                    best = Some((depth, *axis * if along < 0.0 { -1.0 } else { 1.0 }));
                }
            }
            best
        }
        Solid::Capsule { a, b, radius } => from_axis(p, *a, *b, *radius),
        Solid::Cylinder { a, b, radius } => {
            let length = a.distance(*b);
            let axis = (*b - *a).direction()?;
            let along = axis.dot(p - *a);
            let side = from_axis(p, *a, *b, *radius)?;
            if along <= 0.0 || along >= length {
                return None;
            }
            let (out, way) = if along < length - along {
                (along, axis * -1.0)
            } else {
                (length - along, axis * 1.0)
            };
            Some(if out < side.0 { (out, way) } else { side })
        }
        Solid::Sphere { centre, radius } => from_axis(p, *centre, *centre, *radius),
        Solid::Union(members) => members
            .iter()
            .filter_map(|m| escape(p, m))
            .max_by(|a, b| a.0.total_cmp(&b.0)),
        other => {
            if closest_point_on_solid(p, other).distance_mm > 0.0 {
                return None;
            }
            let bounds = other.bounds()?;
            let out = (p - bounds.centre()).direction()?;
            Some((
                bounds.half_diagonal_mm() - p.distance(bounds.centre()),
                out.vector(),
            ))
        }
    }
}

fn from_axis(p: Point, a: Point, b: Point, radius: f64) -> Option<(f64, Vector)> {
    let ab = b - a;
    let squared = ab.norm_squared();
    let t = if squared > 0.0 {
        ((p - a).dot(ab) / squared).clamp(0.0, 1.0)
    } else {
        0.0
    };
    let off = p - (a + ab * t);
    let depth = radius - off.norm();
    if depth <= 0.0 {
        return None;
    }
    let way = off
        .direction()
        .unwrap_or_else(|| ab.direction().unwrap_or(UnitVector::X).any_normal());
    Some((depth, way.vector()))
}
