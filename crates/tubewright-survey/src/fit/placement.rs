//! A scan placed in the car by marks that are seen in it.

use super::{FitError, centroid, fit_rigid, fit_similarity, needs};
use crate::linear::{M3, V3, point, skew, v3};
use nalgebra::DMatrix;
use tubewright_geometry::Point;

/// `in_car ≈ scale R in_scan + t`.
#[derive(Clone, Debug, PartialEq)]
pub struct Placement {
    /// Rotation, rows first.
    pub rotation: [[f64; 3]; 3],
    /// Shift in mm.
    pub shift_mm: [f64; 3],
    /// Millimetres in the car per unit of the scan; exactly what was given unless it was fitted.
    pub scale: f64,
    /// Distance in mm that remains at each mark.
    pub residuals_mm: Vec<f64>,
    /// A-posteriori standard deviation of one coordinate of a mark, mm.
    pub sigma_mm: f64,
    /// Covariance of shift at the marks' middle (mm), rotation about it (rad) and, where it was
    /// fitted, the logarithm of the scale (else zero), from `sigma_mm`.
    pub covariance: [[f64; 7]; 7],
    /// Middle of the marks in the car, which the covariance refers to.
    pub middle: Point,
}

/// Places a scan by at least four marks. `scale` in mm per unit of the scan, or `None` to fit it
/// (Umeyama 1991); the unit of a scan is asked for and never guessed.
///
/// # Errors
/// [`FitError`] for fewer than four marks or marks in line.
pub fn place_scan(
    in_scan: &[Point],
    in_car: &[Point],
    scale: Option<f64>,
) -> Result<Placement, FitError> {
    let what = "the placing of a scan";
    needs(what, in_scan.len(), 4)?;
    let (rotation, shift_mm, factor, residuals_mm) = if let Some(scale) = scale {
        if !scale.is_finite() || scale <= 0.0 {
            return Err(FitError::Degenerate { what });
        }
        let scaled: Vec<Point> = in_scan.iter().map(|p| point(v3(*p) * scale)).collect();
        let fit = fit_rigid(&scaled, in_car)?;
        (fit.rotation, fit.shift_mm, scale, fit.residuals_mm)
    } else {
        // In line or not paired is found by the rigid fit.
        fit_rigid(in_scan, in_car)?;
        let fit = fit_similarity(in_scan, in_car)?;
        let rotation = core::array::from_fn(|i| core::array::from_fn(|k| fit.rotation[i][k]));
        let shift = core::array::from_fn(|k| fit.shift[k]);
        (rotation, shift, fit.scale, fit.residuals)
    };
    let unknowns = if scale.is_some() { 6 } else { 7 };
    let r = M3::from_fn(|i, k| rotation[i][k]);
    let placed: Vec<V3> = in_scan
        .iter()
        .map(|p| r * v3(*p) * factor + V3::from(shift_mm))
        .collect();
    let middle = centroid(&placed);
    let mut n = DMatrix::zeros(unknowns, unknowns);
    for p in &placed {
        let arm = p - middle;
        let mut a = DMatrix::zeros(3, unknowns);
        a.view_mut((0, 0), (3, 3)).copy_from(&M3::identity());
        a.view_mut((0, 3), (3, 3)).copy_from(&-skew(arm));
        if unknowns == 7 {
            a.view_mut((0, 6), (3, 1)).copy_from(&arm);
        }
        n += a.transpose() * a;
    }
    #[expect(clippy::cast_precision_loss, reason = "a count of marks is small")]
    let freedom = (3 * placed.len() - unknowns) as f64;
    let variance = residuals_mm.iter().map(|e| e * e).sum::<f64>() / freedom;
    let inverse = n.cholesky().ok_or(FitError::Degenerate { what })?.inverse();
    let mut covariance = [[0.0; 7]; 7];
    for i in 0..unknowns {
        for k in 0..unknowns {
            covariance[i][k] = inverse[(i, k)] * variance;
        }
    }
    Ok(Placement {
        rotation,
        shift_mm,
        scale: factor,
        residuals_mm,
        sigma_mm: variance.sqrt(),
        covariance,
        middle: point(middle),
    })
}

impl Placement {
    /// A place of the scan in the car.
    #[must_use]
    pub fn placed(&self, in_scan: Point) -> Point {
        let r = M3::from_fn(|i, k| self.rotation[i][k]);
        point(r * v3(in_scan) * self.scale + V3::from(self.shift_mm))
    }
}
