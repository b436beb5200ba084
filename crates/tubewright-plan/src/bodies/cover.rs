//! What a scan covers: seen square to its surface, a place has scanned surface over or under it, lies
//! against a hole, or lies beyond the scan's edge.

use tubewright_geometry::distance::clearance_below;
use tubewright_geometry::{CentreLine, Frame, Point, Solid, TubeElement};
use tubewright_survey::fit;

/// How a place lies to a scan.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Seen {
    /// Scanned surface lies over or under it.
    Scanned,
    /// Within the outline of the scan, but nothing was scanned over or under it.
    Hole,
    /// Beyond the outline: the scan says nothing of it.
    Beyond,
}

/// The outline of a scan as seen square to its surface.
#[derive(Clone, Debug, PartialEq)]
pub struct Cover {
    /// Travel square to the surface, so that twelve and three o'clock lie in it.
    frame: Frame,
    /// Corners of the convex outline, anticlockwise, along twelve and three, mm.
    outline: Vec<[f64; 2]>,
    /// Half the depth of the scan along the frame's travel, from its origin, mm.
    reach_mm: f64,
}

/// Places that the surface's direction is taken from, at most.
const MOST_PLACES: usize = 4000;

/// A hole through which a pencil would hardly go is none, mm: scans are full of pinpricks between
/// triangles (common practice, no source).
const PINPRICK_MM: f64 = 5.0;

impl Cover {
    /// Of an open surface or of points; `None` for a closed surface, which has no holes, and for places
    /// that fix no direction.
    #[must_use]
    pub fn of(solid: &Solid) -> Option<Self> {
        let places: &[Point] = match solid {
            Solid::Mesh(mesh) if !mesh.is_closed() => mesh.vertices(),
            Solid::Cloud { points, .. } => points,
            _ => return None,
        };
        let step = places.len().div_ceil(MOST_PLACES).max(1);
        let few: Vec<Point> = places.iter().copied().step_by(step).collect();
        let plane = fit::fit_plane(&few).ok()?;
        let frame = Frame::upright(plane.centroid, plane.normal);
        let outline = convex_outline(places.iter().map(|place| flat(&frame, *place)));
        let reach_mm = places
            .iter()
            .map(|place| frame.travel().dot(*place - frame.origin).abs())
            .fold(0.0, f64::max);
        Some(Self {
            frame,
            outline,
            reach_mm,
        })
    }

    /// How a place lies to the scan. Points count as surface as far as a tube of this radius can hide
    /// between them.
    #[must_use]
    pub fn at(&self, place: Point, solid: &Solid, tube_radius_mm: f64) -> Seen {
        let radius = match solid {
            Solid::Cloud { .. } => tube_radius_mm.max(PINPRICK_MM),
            _ => PINPRICK_MM,
        };
        let along = self.frame.travel().dot(place - self.frame.origin);
        let foot = place - self.frame.travel() * along;
        let depth = self.frame.travel() * (self.reach_mm + 1.0);
        let through = TubeElement {
            line: CentreLine::Segment {
                a: foot - depth,
                b: foot + depth,
            },
            radius,
        };
        if clearance_below(&through, solid, 0.5, 0.0).is_some() {
            Seen::Scanned
        } else if self.holds(flat(&self.frame, place)) {
            Seen::Hole
        } else {
            Seen::Beyond
        }
    }

    /// True inside the outline.
    fn holds(&self, p: [f64; 2]) -> bool {
        let next = self.outline.iter().cycle().skip(1);
        self.outline.len() >= 3
            && self
                .outline
                .iter()
                .zip(next)
                .all(|(a, b)| turn(*a, *b, p) >= 0.0)
    }

    /// Square to the scan's surface.
    #[must_use]
    pub fn frame(&self) -> &Frame {
        &self.frame
    }
}

fn flat(frame: &Frame, place: Point) -> [f64; 2] {
    let off = place - frame.origin;
    [frame.twelve().dot(off), frame.three().dot(off)]
}

/// Twice the area of the triangle, positive when it turns anticlockwise.
fn turn(a: [f64; 2], b: [f64; 2], c: [f64; 2]) -> f64 {
    (b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0])
}

/// Corners of the convex hull, anticlockwise (A. M. Andrew, *Another efficient algorithm for convex hulls
/// in two dimensions*, 1979).
fn convex_outline(places: impl Iterator<Item = [f64; 2]>) -> Vec<[f64; 2]> {
    let mut sorted: Vec<[f64; 2]> = places.collect();
    sorted.sort_by(|a, b| a[0].total_cmp(&b[0]).then(a[1].total_cmp(&b[1])));
    sorted.dedup();
    let half = |list: &mut dyn Iterator<Item = [f64; 2]>| {
        let mut chain: Vec<[f64; 2]> = Vec::new();
        for p in list {
            while let [.., a, b] = chain.as_slice()
                && turn(*a, *b, p) <= 0.0
            {
                chain.pop();
            }
            chain.push(p);
        }
        chain.pop();
        chain
    };
    let mut outline = half(&mut sorted.iter().copied());
    outline.extend(half(&mut sorted.iter().rev().copied()));
    outline
}
