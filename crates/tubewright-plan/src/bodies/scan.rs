//! A phone scan placed by marks that are seen in it.

use nalgebra::{Matrix3, Vector3};
use std::sync::Arc as Shared;
use tubewright_build::model::ScanPlace;
use tubewright_geometry::{Point, Solid, TriangleMesh};
use tubewright_scan::{Limits, ScanFormat, read_scan};

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
    /// What was dropped on reading.
    pub warnings: Vec<String>,
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
    NotPlaced(String, String),
}

/// Reads and places a scan.
///
/// Pose by least squares on the marks seen in it (Kabsch 1976, Acta Cryst. A 32:922; with scale
/// Umeyama 1991, IEEE PAMI 13:376).
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
    let mut pairs = Vec::new();
    let mut names = Vec::new();
    let mut anchors = Vec::new();
    for place in seen {
        if let Some(found) = places.place(&place.mark.at) {
            let in_scan = Point::from_array(place.at.to_array().map(|value| value * mm_per_unit));
            pairs.push((in_scan, found.point_in_car));
            names.push(place.mark.at.name().to_string());
            anchors.push(found);
        }
    }
    if pairs.len() < 4 {
        return Err(ScanProblem::TooFewMarks(file.to_owned(), pairs.len()));
    }
    let fit = Similarity::of(&pairs, fit_scale).ok_or_else(|| {
        ScanProblem::NotPlaced(file.to_owned(), "its marks lie on one line".to_owned())
    })?;
    let format = file.rsplit('.').next().and_then(ScanFormat::from_extension);
    let scan = read_scan(bytes, format, mm_per_unit, &Limits::default())
        .map_err(|error| ScanProblem::Unreadable(file.to_owned(), error.to_string()))?;
    let vertices: Vec<Point> = scan
        .vertices()
        .iter()
        .map(|&vertex| fit.apply(vertex))
        .collect();
    let elements = if scan.triangles().is_empty() {
        vertices.len()
    } else {
        scan.triangles().len()
    };
    let solid_in_car = if scan.triangles().is_empty() {
        Solid::Cloud {
            points: vertices.into(),
            radius: noise_mm,
        }
    } else {
        let mesh = TriangleMesh::new(vertices, scan.triangles().to_vec()).ok_or_else(|| {
            ScanProblem::Unreadable(
                file.to_owned(),
                "it has no triangle with an area".to_owned(),
            )
        })?;
        Solid::Mesh(Shared::new(mesh))
    };
    let residuals_mm = names
        .into_iter()
        .zip(&pairs)
        .map(|(name, &(in_scan, in_car))| (name, fit.apply(in_scan).distance(in_car)))
        .collect();
    let placed = PlacedScan {
        elements,
        residuals_mm,
        scale: fit.scale,
        warnings: scan.warnings().iter().map(ToString::to_string).collect(),
    };
    Ok((
        Shape {
            solid_in_car,
            anchors,
            misfit_mm: noise_mm,
        },
        placed,
    ))
}

/// `p ↦ scale · R p + t`.
struct Similarity {
    rotation: Matrix3<f64>,
    scale: f64,
    shift: Vector3<f64>,
}

impl Similarity {
    fn of(pairs: &[(Point, Point)], fit_scale: bool) -> Option<Self> {
        let v = |p: Point| Vector3::new(p.x, p.y, p.z);
        #[expect(clippy::cast_precision_loss, reason = "a scan has a handful of marks")]
        let count = pairs.len() as f64;
        let from = pairs.iter().map(|pair| v(pair.0)).sum::<Vector3<f64>>() / count;
        let to = pairs.iter().map(|pair| v(pair.1)).sum::<Vector3<f64>>() / count;
        let mut spread = Matrix3::zeros();
        let mut size = 0.0;
        for pair in pairs {
            spread += (v(pair.1) - to) * (v(pair.0) - from).transpose();
            size += (v(pair.0) - from).norm_squared();
        }
        let svd = spread.svd(true, true);
        let (u, vt) = (svd.u?, svd.v_t?);
        // Two directions are needed; on one line the second singular value vanishes.
        if svd.singular_values[1] < 1e-6 * svd.singular_values[0] {
            return None;
        }
        let sign = if (u * vt).determinant() < 0.0 {
            -1.0
        } else {
            1.0
        };
        let flip = Matrix3::from_diagonal(&Vector3::new(1.0, 1.0, sign));
        let rotation = u * flip * vt;
        let scale = if fit_scale && size > 0.0 {
            (svd.singular_values[0] + svd.singular_values[1] + sign * svd.singular_values[2]) / size
        } else {
            1.0
        };
        Some(Self {
            rotation,
            scale,
            shift: to - rotation * from * scale,
        })
    }

    fn apply(&self, p: Point) -> Point {
        let q = self.rotation * Vector3::new(p.x, p.y, p.z) * self.scale + self.shift;
        Point::new(q.x, q.y, q.z)
    }
}
