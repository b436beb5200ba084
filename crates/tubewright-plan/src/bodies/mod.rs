//! Bodies as solids in the car, with the gap that a tube must keep and how surely they lie there.

mod cover;
mod hangs;
mod hold;
mod met;
mod motion;
mod scan;
mod shape;

pub use cover::{Cover, Seen};
pub use hold::{Anchor, AnchorAt};
pub use motion::{CarrierMotion, MotionError, motion_of};
pub use scan::{PlacedScan, ScanLook, ScanProblem, look_at_scan};
pub use shape::{Shape, ShapeError, shape_of};

use std::collections::BTreeMap;
use tubewright_build::model::{Body, BodyKind, Build, Class, Model};
use tubewright_build::resolved::ResolvedGaps;
use tubewright_geometry::{Point, Solid, Vector};

use crate::places::Places;

/// A body in the car.
#[derive(Clone, Debug)]
pub struct PlacedBody {
    /// Its name.
    pub name: String,
    /// Its class, for the gap and for the rule it is checked under.
    pub class: Class,
    /// In the car's axes at rest, mm.
    pub solid_in_car: Solid,
    /// Gap that the outside of a tube must keep to it, mm.
    pub gap_mm: f64,
    /// How it moves against the chassis.
    pub motion: CarrierMotion,
    /// How it is described.
    pub kind: BodyKind,
    /// The places it hangs on, in the order in which its kind names them.
    pub anchors: Vec<Anchor>,
    /// Added to the gap for what the shape does not say: corners off one plane, noise of a scan, mm.
    pub allowance_mm: f64,
    /// Set for a scan.
    pub scan: Option<PlacedScan>,
}

impl PlacedBody {
    /// Standard deviation of its surface along a direction, mm: that of its least sure place.
    #[must_use]
    pub fn sigma_along(&self, direction: Vector) -> f64 {
        self.anchors
            .iter()
            .map(|anchor| anchor.placed.sigma_along(direction))
            .fold(0.0, f64::max)
    }

    /// Whether there is metal of it at a place on its surface, as far as was measured. A plane goes on for ever and the
    /// sheet that it stands for does not: it counts between the places that it was taken through and
    /// [`BEYOND_PLANE_MM`] beyond them. Every other body ends where it was measured to.
    #[must_use]
    pub fn is_measured_at(&self, place: Point) -> bool {
        let Solid::HalfSpace { outward, .. } = &self.solid_in_car else {
            return true;
        };
        let corners: Vec<Point> = self
            .anchors
            .iter()
            .map(|anchor| anchor.placed.point_in_car)
            .collect();
        off_outline_mm(place, &corners, outward.vector()) <= BEYOND_PLANE_MM
    }

    /// Standard deviation of its surface in any direction is at most this, mm.
    #[must_use]
    pub fn sigma_bound(&self) -> f64 {
        self.anchors
            .iter()
            .map(|anchor| anchor.placed.sigma_bound())
            .fold(0.0, f64::max)
    }
}

/// So far beyond the places that a plane was taken through its sheet is taken to go on, mm: a hand (common practice,
/// no source).
pub const BEYOND_PLANE_MM: f64 = 100.0;

/// How far a place lies outside the triangle, or the line or point, that corners make, seen along `normal`, mm.
fn off_outline_mm(place: Point, corners: &[Point], normal: Vector) -> f64 {
    let flat = |v: Vector| v - normal * normal.dot(v);
    let edges = corners
        .iter()
        .zip(corners.iter().cycle().skip(1))
        .map(|(a, b)| (flat(place - *a), flat(*b - *a)));
    let mut sides = [false, false];
    let mut nearest_mm = f64::INFINITY;
    for (from, edge) in edges {
        let along = (from.dot(edge) / edge.norm_squared().max(f64::MIN_POSITIVE)).clamp(0.0, 1.0);
        nearest_mm = nearest_mm.min((from - edge * along).norm());
        let turn = normal.dot(edge.cross(from));
        sides = [sides[0] || turn > 0.0, sides[1] || turn < 0.0];
    }
    // On one side of all edges it lies between them.
    let is_inside = corners.len() == 3 && sides != [true, true];
    if is_inside { 0.0 } else { nearest_mm }
}

/// Why one body is not there.
#[derive(Clone, Debug, PartialEq, thiserror::Error)]
#[non_exhaustive]
pub enum BodyError {
    /// Its shape could not be made.
    #[error(transparent)]
    Shape(#[from] ShapeError),
    /// Its scan could not be read or placed.
    #[error(transparent)]
    Scan(#[from] ScanProblem),
    /// Its carrier's motion could not be made.
    #[error(transparent)]
    Motion(#[from] MotionError),
}

/// All bodies of a build, and those that could not be made.
#[derive(Clone, Debug, Default)]
pub struct Bodies {
    /// In the order of the build.
    pub placed: Vec<PlacedBody>,
    /// Name and reason. The clearance to these is *not checked*.
    pub missing: Vec<(String, BodyError)>,
}

impl Bodies {
    /// The body of this name.
    #[must_use]
    pub fn body(&self, name: &str) -> Option<&PlacedBody> {
        self.placed.iter().find(|body| body.name == name)
    }
}

/// Makes every body of the build. `scans` holds the bytes of the scan files by the name they have
/// in the build.
#[must_use]
pub fn place_bodies(
    model: &Model,
    places: &Places,
    gaps: &ResolvedGaps,
    scans: &BTreeMap<String, Vec<u8>>,
) -> Bodies {
    let mut bodies = Bodies::default();
    for body in &model.build.bodies {
        match place_body(&model.build, body, places, gaps, scans) {
            Ok(placed) => bodies.placed.push(placed),
            Err(error) => bodies.missing.push((body.name.to_string(), error)),
        }
    }
    bodies
}

fn place_body(
    build: &Build,
    body: &Body,
    places: &Places,
    gaps: &ResolvedGaps,
    scans: &BTreeMap<String, Vec<u8>>,
) -> Result<PlacedBody, BodyError> {
    let (shape, scan) = if let BodyKind::Scan {
        file,
        unit,
        noise,
        fit_scale,
        places: seen,
    } = &body.kind
    {
        let bytes = scans
            .get(file)
            .ok_or_else(|| ScanProblem::NoFile(file.clone()))?;
        let (shape, placed) =
            scan::place_scan(file, bytes, unit.mm(), noise.mm(), *fit_scale, seen, places)?;
        (shape, Some(placed))
    } else {
        (shape_of(&body.kind, places)?, None)
    };
    Ok(PlacedBody {
        name: body.name.to_string(),
        class: body.class,
        solid_in_car: shape.solid_in_car,
        gap_mm: body
            .gap
            .as_ref()
            .map_or_else(|| gaps.of(body.class), |gap| gap.value)
            .mm(),
        motion: motion_of(build, &body.carrier, places)?,
        kind: body.kind.clone(),
        anchors: shape.anchors,
        allowance_mm: shape.misfit_mm,
        scan,
    })
}

#[cfg(test)]
mod tests {
    use super::*;

    /// A plane through three places 1200 mm apart along the car and 660 mm across at the front: half way back it is
    /// still 165 mm wide on each side, beside it the nearest metal is at the slanting edge, and behind its rear place
    /// there is none.
    #[test]
    fn a_sheet_ends_where_its_plane_was_measured() {
        let corners = [
            Point::new(1500.0, -330.0, 420.0),
            Point::new(1500.0, 330.0, 420.0),
            Point::new(2700.0, 0.0, 420.0),
        ];
        let off = |x: f64, y: f64| {
            off_outline_mm(
                Point::new(x, y, 300.0),
                &corners,
                Vector::new(0.0, 0.0, 1.0),
            )
        };
        assert!(off(2100.0, 160.0).abs() < 1e-12);
        assert!((off(1500.0 - 250.0, 0.0) - 250.0).abs() < 1e-9);
        assert!((off(3000.0, 0.0) - 300.0).abs() < 1e-9);
        // The edge falls 330 in 1200: 400 mm out at its middle is 235 mm beside it, measured square to it.
        let square = 235.0 * 1200.0 / tubewright_geometry::math::hypot(1200.0, 330.0);
        assert!(
            (off(2100.0, 400.0) - square).abs() < 1e-6,
            "{}",
            off(2100.0, 400.0)
        );
    }
}
