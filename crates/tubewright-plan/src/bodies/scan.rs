//! A phone scan placed by marks that are seen in it.

use std::sync::Arc as Shared;
use tubewright_build::model::ScanPlace;
use tubewright_geometry::{Point, Solid, TriangleMesh};
use tubewright_scan::{Limits, ScanFormat, read_scan};
use tubewright_survey::fit::{self, FitError, Placement};

use super::cover::Cover;
use super::hold::Anchor;
use super::shape::Shape;
use crate::places::Places;

/// How a scan lies on its marks.
#[derive(Clone, Debug, PartialEq)]
pub struct PlacedScan {
    /// Triangles or points.
    pub elements: usize,
    /// Distance in mm of each mark from its place in the scan, in the order of the build.
    pub residuals_mm: Vec<(String, f64)>,
    /// Scale that was fitted; 1 when it was not.
    pub scale: f64,
    /// How it was fitted to its marks, the unit taken into account before.
    pub placement: Placement,
    /// What was dropped on reading.
    pub warnings: Vec<String>,
    /// What it covers; `None` for a closed surface.
    pub cover: Option<Cover>,
}

/// Why a scan is not there.
#[derive(Clone, Debug, PartialEq, thiserror::Error)]
#[non_exhaustive]
pub enum ScanProblem {
    /// The file was not handed in.
    #[error("the scan file “{0}” is not in the build folder")]
    NoFile(String),
    /// The file could not be read.
    #[error("the scan file “{0}” cannot be read: {1}")]
    Unreadable(String, String),
    /// Too few marks.
    #[error("the scan “{0}” needs at least four places on found marks; it has {1}")]
    TooFewMarks(String, usize),
    /// The marks do not fix it.
    #[error("the scan “{0}” cannot be placed: {1}")]
    NotPlaced(String, FitError),
    /// Its marks fit far better in a mirror.
    #[error(
        "the scan “{file}” fits its marks within {mirrored_mm:.0} mm only in a mirror, and {rms_mm:.0} mm as it is: a left and a right mark are exchanged, or the scanning program wrote it left-handed"
    )]
    Mirrored {
        /// The scan.
        file: String,
        /// What remains at the marks, root mean square.
        rms_mm: f64,
        /// What would remain in a mirror.
        mirrored_mm: f64,
    },
}

/// What a scan file holds, before anybody says what one unit of it is.
#[derive(Clone, Debug, PartialEq)]
pub struct ScanLook {
    /// Triangles; none for a scan of points alone.
    pub triangles: usize,
    /// Points.
    pub points: usize,
    /// Length, width and height in the file's own axes and units.
    pub size: [f64; 3],
    /// What was dropped on reading.
    pub warnings: Vec<String>,
}

/// Looks at a scan file as it comes from a phone: its name says the format.
///
/// # Errors
/// [`ScanProblem::Unreadable`].
pub fn look_at_scan(file: &str, bytes: &[u8]) -> Result<ScanLook, ScanProblem> {
    let scan = read_scan(bytes, format_of(file), 1.0, &Limits::default())
        .map_err(|error| ScanProblem::Unreadable(file.to_owned(), error.to_string()))?;
    let (low, high) = scan.bounds();
    Ok(ScanLook {
        triangles: scan.triangles().len(),
        points: scan.vertices().len(),
        size: (high - low).to_array(),
        warnings: scan.warnings().iter().map(ToString::to_string).collect(),
    })
}

fn format_of(file: &str) -> Option<ScanFormat> {
    let (_, ending) = file.rsplit_once('.')?;
    ScanFormat::from_extension(ending)
}

/// Three marks fix a scan and check nothing; the fourth checks them.
const LEAST_MARKS: usize = 4;

/// Reads and places a scan: pose by least squares on the marks seen in it, with scale when the person
/// asks for that.
///
/// # Errors
/// [`ScanProblem`].
pub(crate) fn place_scan(
    file: &str,
    bytes: &[u8],
    mm_per_unit: f64,
    noise_mm: f64,
    fit_scale: bool,
    seen: &[ScanPlace],
    places: &Places,
) -> Result<(Shape, PlacedScan), ScanProblem> {
    let mut in_scan = Vec::new();
    let mut in_car = Vec::new();
    let mut names = Vec::new();
    let mut anchors = Vec::new();
    for place in seen {
        if let Some(found) = places.place(&place.mark.at) {
            in_scan.push(Point::from_array(
                place.at.to_array().map(|value| value * mm_per_unit),
            ));
            in_car.push(found.point_in_car);
            names.push(place.mark.at.name().to_string());
            anchors.push(Anchor::at(&place.mark.at, found));
        }
    }
    if in_car.len() < LEAST_MARKS {
        return Err(ScanProblem::TooFewMarks(file.to_owned(), in_car.len()));
    }
    let not_placed = |error| ScanProblem::NotPlaced(file.to_owned(), error);
    let rigid = fit::fit_rigid(&in_scan, &in_car).map_err(not_placed)?;
    if rigid.looks_mirrored() {
        return Err(ScanProblem::Mirrored {
            file: file.to_owned(),
            rms_mm: rigid.rms_mm,
            mirrored_mm: rigid.mirrored_rms_mm,
        });
    }
    let placement =
        fit::place_scan(&in_scan, &in_car, (!fit_scale).then_some(1.0)).map_err(not_placed)?;
    let scan = read_scan(bytes, format_of(file), mm_per_unit, &Limits::default())
        .map_err(|error| ScanProblem::Unreadable(file.to_owned(), error.to_string()))?;
    let vertices: Vec<Point> = scan
        .vertices()
        .iter()
        .map(|&vertex| placement.placed(vertex))
        .collect();
    // The noise is taken off once: points are balls of that size, a surface keeps it as an allowance.
    let (solid_in_car, misfit_mm) = if scan.triangles().is_empty() {
        let cloud = Solid::Cloud {
            points: vertices.into(),
            radius: noise_mm,
        };
        (cloud, 0.0)
    } else {
        let mesh = TriangleMesh::new(vertices, scan.triangles().to_vec()).ok_or_else(|| {
            ScanProblem::Unreadable(
                file.to_owned(),
                "it has no triangle with an area".to_owned(),
            )
        })?;
        (Solid::Mesh(Shared::new(mesh)), noise_mm)
    };
    let placed = PlacedScan {
        elements: if scan.triangles().is_empty() {
            scan.vertices().len()
        } else {
            scan.triangles().len()
        },
        residuals_mm: names
            .into_iter()
            .zip(placement.residuals_mm.iter().copied())
            .collect(),
        scale: placement.scale,
        placement,
        cover: Cover::of(&solid_in_car),
        warnings: scan.warnings().iter().map(ToString::to_string).collect(),
    };
    Ok((
        Shape {
            solid_in_car,
            anchors,
            misfit_mm,
        },
        placed,
    ))
}
