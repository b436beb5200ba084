//! Bodies as solids in the car, with the gap that a tube must keep and how surely they lie there.

mod cover;
mod hold;
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
use tubewright_geometry::{Solid, Vector};

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

    /// Standard deviation of its surface in any direction is at most this, mm.
    #[must_use]
    pub fn sigma_bound(&self) -> f64 {
        self.anchors
            .iter()
            .map(|anchor| anchor.placed.sigma_bound())
            .fold(0.0, f64::max)
    }
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
