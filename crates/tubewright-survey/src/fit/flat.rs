//! Planes and lines through points.

use super::{FitError, centroid, needs, rms, signed};
use crate::linear::{V3, point, v3, vector};
use nalgebra::DMatrix;
use tubewright_geometry::{Point, UnitVector};

/// A plane fitted by orthogonal distances.
#[derive(Clone, Debug, PartialEq)]
pub struct FittedPlane {
    /// Middle of the points, in the plane.
    pub centroid: Point,
    /// Normal, its largest component positive.
    pub normal: UnitVector,
    /// Signed distances of the points in mm.
    pub residuals_mm: Vec<f64>,
    /// `sqrt(Σ e² / n)`, mm.
    pub rms_mm: f64,
    /// Largest distance, mm.
    pub largest_mm: f64,
}

/// A line in space fitted by orthogonal distances.
#[derive(Clone, Debug, PartialEq)]
pub struct FittedLine {
    /// Middle of the points, on the line.
    pub centroid: Point,
    /// Direction, its largest component positive.
    pub direction: UnitVector,
    /// Distances of the points in mm.
    pub residuals_mm: Vec<f64>,
    /// `sqrt(Σ e² / n)`, mm.
    pub rms_mm: f64,
}

/// Centroid, and the principal directions, widest first, with their singular values. The singular
/// values of the points themselves and not of their squares keep the digits of a thin spread.
pub(super) fn principal(points: &[Point]) -> Option<(V3, [V3; 3], [f64; 3])> {
    let p: Vec<V3> = points.iter().map(|p| v3(*p)).collect();
    let centre = centroid(&p);
    // At least three rows, so that all three directions exist.
    let rows = p.len().max(3);
    let m = DMatrix::from_fn(rows, 3, |i, k| p.get(i).map_or(0.0, |q| q[k] - centre[k]));
    let svd = m.svd(false, true);
    let v_t = svd.v_t?;
    let row = |k: usize| V3::new(v_t[(k, 0)], v_t[(k, 1)], v_t[(k, 2)]);
    let s = svd.singular_values;
    let found = (centre, [row(0), row(1), row(2)], [s[0], s[1], s[2]]);
    s.iter().all(|x| x.is_finite()).then_some(found)
}

/// Plane of least squared orthogonal distances: direction of the smallest singular value (Pearson
/// 1901, Phil. Mag. 2:559).
///
/// # Errors
/// [`FitError`] for fewer than three points or points in line.
pub fn fit_plane(points: &[Point]) -> Result<FittedPlane, FitError> {
    let what = "a plane";
    needs(what, points.len(), 3)?;
    let (centre, axes, spread) = principal(points).ok_or(FitError::Degenerate { what })?;
    if spread[1] <= 1e-9 * spread[0] || spread[0] <= 0.0 {
        return Err(FitError::Degenerate { what });
    }
    let normal = signed(axes[2]);
    let residuals_mm: Vec<f64> = points
        .iter()
        .map(|p| normal.dot(&(v3(*p) - centre)))
        .collect();
    Ok(FittedPlane {
        centroid: point(centre),
        normal: UnitVector::from_unit(vector(normal.normalize())),
        rms_mm: rms(&residuals_mm),
        largest_mm: residuals_mm.iter().fold(0.0, |m, e| e.abs().max(m)),
        residuals_mm,
    })
}

/// Line of least squared orthogonal distances: direction of the largest singular value (Pearson
/// 1901). In a plane, give the points one equal third coordinate.
///
/// # Errors
/// [`FitError`] for fewer than two points or points in one place.
pub fn fit_line(points: &[Point]) -> Result<FittedLine, FitError> {
    let what = "a line";
    needs(what, points.len(), 2)?;
    let (centre, axes, spread) = principal(points).ok_or(FitError::Degenerate { what })?;
    if spread[0] <= 1e-9 || spread[1] >= spread[0] * (1.0 - 1e-9) {
        return Err(FitError::Degenerate { what });
    }
    let direction = signed(axes[0]);
    let residuals_mm: Vec<f64> = points
        .iter()
        .map(|p| direction.cross(&(v3(*p) - centre)).norm())
        .collect();
    Ok(FittedLine {
        centroid: point(centre),
        direction: UnitVector::from_unit(vector(direction.normalize())),
        rms_mm: rms(&residuals_mm),
        residuals_mm,
    })
}
