//! Bodies as they look from a direction: outlines on the paper.

use super::mesh_edges::mesh_edges;
use super::view::View;
use crate::drawing::Spot;
use tubewright_geometry::{Point, Prism, Solid, TubeElement, UnitVector, math};

/// A body as it looks in one view.
pub(crate) struct Shape {
    /// Closed outlines.
    pub(crate) outlines: Vec<Vec<Spot>>,
    /// Further edges.
    pub(crate) edges: Vec<Vec<Spot>>,
    /// Tubes: middle line and width on the paper.
    pub(crate) bands: Vec<(Vec<Spot>, f64)>,
    /// The trace of a plane seen edge-on: two spots and the side that is solid.
    pub(crate) traces: Vec<([Spot; 2], Spot)>,
}

impl Shape {
    /// All spots that the shape has, for its extent on the paper. Planes have none.
    pub(crate) fn spots(&self) -> impl Iterator<Item = Spot> + '_ {
        self.outlines
            .iter()
            .chain(&self.edges)
            .chain(self.bands.iter().map(|(middle, _)| middle))
            .flatten()
            .copied()
    }
}

pub(crate) fn silhouette(solid: &Solid, view: &View) -> Shape {
    let mut shape = Shape {
        outlines: Vec::new(),
        edges: Vec::new(),
        bands: Vec::new(),
        traces: Vec::new(),
    };
    add(&mut shape, solid, view);
    shape
}

fn add(shape: &mut Shape, solid: &Solid, view: &View) {
    match solid {
        Solid::Box(b) => {
            shape
                .outlines
                .push(hull(b.corners().iter().map(|&p| view.spot(p)).collect()));
            add_box_ridges(shape, b, view);
        }
        Solid::Capsule { a, b, radius } => {
            let rim = |p: &Point| view.rim(*p, view.name.toward_eye(), *radius);
            shape.outlines.push(hull([rim(a), rim(b)].concat()));
        }
        Solid::Cylinder { a, b, radius } => add_cylinder(shape, *a, *b, *radius, view),
        Solid::Sphere { centre, radius } => {
            shape
                .outlines
                .push(view.rim(*centre, view.name.toward_eye(), *radius));
        }
        Solid::HalfSpace { point, outward } => add_plane(shape, *point, *outward, view),
        Solid::Prism(p) => add_prism(shape, p, view),
        Solid::Mesh(mesh) => shape.edges.extend(
            mesh_edges(mesh, view.name.toward_eye())
                .into_iter()
                .map(|edge| edge.map(|p| view.spot(p)).to_vec()),
        ),
        Solid::Cloud { points, .. } => shape
            .outlines
            .push(hull(points.iter().map(|&p| view.spot(p)).collect())),
        Solid::PointCloud(cloud) => shape
            .outlines
            .push(hull(cloud.points().iter().map(|&p| view.spot(p)).collect())),
        Solid::Tube(tube) => shape.bands.push(band(tube, view)),
        Solid::Union(members) => {
            for member in members {
                add(shape, member, view);
            }
        }
        // A shape that this crate does not know yet shows at least where it reaches.
        _ => {
            if let Some(bounds) = solid.bounds() {
                let (lo, hi) = (bounds.min, bounds.max);
                let corner = |i: usize| {
                    let pick = |bit: usize, a, b| if i & bit == 0 { a } else { b };
                    view.spot(Point::new(
                        pick(1, lo.x, hi.x),
                        pick(2, lo.y, hi.y),
                        pick(4, lo.z, hi.z),
                    ))
                };
                shape.outlines.push(hull((0..8).map(corner).collect()));
            }
        }
    }
}

pub(crate) fn band(tube: &TubeElement, view: &View) -> (Vec<Spot>, f64) {
    let middle = view
        .centre_points(&tube.line)
        .into_iter()
        .map(|p| view.spot(p))
        .collect();
    (middle, 2.0 * tube.radius * view.scale)
}

/// Edges between two faces that both look toward the eye.
fn add_box_ridges(shape: &mut Shape, b: &tubewright_geometry::OrientedBox, view: &View) {
    let eye = view.name.toward_eye();
    for (k, axis) in b.axes.iter().enumerate() {
        let [i, j] = [(k + 1) % 3, (k + 2) % 3];
        let (Some(&u), Some(&v)) = (b.axes.get(i), b.axes.get(j)) else {
            continue;
        };
        let (Some(&hi), Some(&hj), Some(&hk)) = (b.half.get(i), b.half.get(j), b.half.get(k))
        else {
            continue;
        };
        let facing = |d: UnitVector| eye.dot(d.vector());
        // A face that is seen at less than 0.6° from edge-on shows no ridge.
        if facing(u).abs() > 0.01 && facing(v).abs() > 0.01 {
            let foot = b.centre + u * (hi * facing(u).signum()) + v * (hj * facing(v).signum());
            shape.edges.push(vec![
                view.spot(foot - *axis * hk),
                view.spot(foot + *axis * hk),
            ]);
        }
    }
}

fn add_cylinder(shape: &mut Shape, a: Point, b: Point, radius: f64, view: &View) {
    let Some(axis) = (b - a).direction() else {
        return;
    };
    let (rim_a, rim_b) = (view.rim(a, axis, radius), view.rim(b, axis, radius));
    let facing = view.name.toward_eye().dot(axis.vector());
    // Neither edge-on nor square-on: the near rim shows as an ellipse.
    if facing.abs() > 0.01 && facing.abs() < 0.9999 {
        let mut near = if facing > 0.0 {
            rim_b.clone()
        } else {
            rim_a.clone()
        };
        near.extend(near.first().copied());
        shape.edges.push(near);
    }
    shape.outlines.push(hull([rim_a, rim_b].concat()));
}

fn add_prism(shape: &mut Shape, p: &Prism, view: &View) {
    let axis = p.u.vector().cross(p.v.vector());
    let foot: Vec<Point> = p
        .outline
        .iter()
        .map(|&[x, y]| p.origin + p.u * x + p.v * y)
        .collect();
    let near_is_far_end = view.name.toward_eye().dot(axis) > 0.0;
    let moved = if near_is_far_end { p.depth } else { 0.0 };
    let near: Vec<Spot> = foot.iter().map(|&q| view.spot(q + axis * moved)).collect();
    if view.name.toward_eye().dot(axis).abs() > 0.9999 {
        shape.outlines.push(near);
        return;
    }
    let both = foot
        .iter()
        .flat_map(|&q| [view.spot(q), view.spot(q + axis * p.depth)])
        .collect();
    shape.outlines.push(hull(both));
    let mut ring = near;
    ring.extend(ring.first().copied());
    shape.edges.push(ring);
}

/// A plane shows when it is seen within 15° of edge-on: its trace through the middle of the window.
fn add_plane(shape: &mut Shape, point: Point, outward: UnitVector, view: &View) {
    let eye = view.name.toward_eye();
    if eye.dot(outward.vector()).abs() > math::sin(15.0_f64.to_radians()) {
        return;
    }
    let Some(out) = view.slant(outward).direction() else {
        return;
    };
    // The point of the plane at the depth of the car's middle plane.
    let lean = outward.vector() - eye * eye.dot(outward.vector());
    let shift = eye.dot(outward.vector()) * -view.nearness(point) / lean.norm_squared();
    let foot = view.spot(point + lean * shift);
    let along = out.quarter();
    let reach = view.window.width() + view.window.height() + foot.distance(view.window.centre());
    shape
        .traces
        .push(([foot - along * reach, foot + along * reach], out * -1.0));
}

/// Convex hull, clockwise as seen on the paper (Andrew, "Another efficient algorithm for convex
/// hulls in two dimensions", Information Processing Letters 9, 1979).
pub(crate) fn hull(mut spots: Vec<Spot>) -> Vec<Spot> {
    spots.sort_by(|p, q| p.x.total_cmp(&q.x).then(p.y.total_cmp(&q.y)));
    spots.dedup();
    if spots.len() < 3 {
        return spots;
    }
    let chain = |spots: &mut dyn Iterator<Item = Spot>| {
        let mut kept: Vec<Spot> = Vec::new();
        for s in spots {
            while let [.., a, b] = kept.as_slice() {
                if (*b - *a).cross(s - *b) > 1e-12 {
                    break;
                }
                kept.pop();
            }
            kept.push(s);
        }
        kept.pop();
        kept
    };
    let mut ring = chain(&mut spots.iter().copied());
    ring.extend(chain(&mut spots.iter().rev().copied()));
    ring
}
