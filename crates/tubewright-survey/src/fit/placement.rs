//! A scan placed in the car by marks that are seen in it.

use super::{FitError, centroid, fit_rigid, fit_similarity, needs};
use crate::linear::{M3, V3, point, skew, v3, vector};
use nalgebra::DMatrix;
use tubewright_geometry::{Point, Vector};

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

/// Marks spread less than this about some axis do not fix a turn, mm; the pivot of a shift is the root
/// of their number.
const LEAST_SPREAD_MM: f64 = 0.5;

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
        let a = fit_motion(p - middle, unknowns);
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

/// How a place moves along a direction that is carried by a rigid fit (with `fits_scale` a similar one)
/// to `marks`: one factor for each mark's own move, so that the place moves by the sum of factor · move.
/// `None` when the marks do not fix the fit: fewer than three, or in line.
///
/// Derivative of the least-squares fit at the marks' places (normal equations of the fit, residuals
/// small against the distances).
#[must_use]
pub fn carried_by_marks(
    marks: &[Point],
    fits_scale: bool,
    place: Point,
    along: Vector,
) -> Option<Vec<Vector>> {
    let unknowns = if fits_scale { 7 } else { 6 };
    let places: Vec<V3> = marks.iter().map(|p| v3(*p)).collect();
    let middle = centroid(&places);
    let motion = |p: V3| fit_motion(p - middle, unknowns);
    let mut n = DMatrix::zeros(unknowns, unknowns);
    for p in &places {
        let a = motion(*p);
        n += a.transpose() * a;
    }
    // A pivot of a turn is the marks' spread about an axis in mm; a shift's is at least one.
    let factor = n.cholesky()?;
    if factor.l().diagonal().min() < LEAST_SPREAD_MM {
        return None;
    }
    let d = V3::new(along.x, along.y, along.z);
    let y = factor.solve(&(motion(v3(place)).transpose() * d));
    Some(
        places
            .iter()
            .map(|p| vector((motion(*p) * &y).fixed_rows::<3>(0).into_owned()))
            .collect(),
    )
}

/// Motion of a place by shift, small turn about the middle and, of seven, growth.
fn fit_motion(arm: V3, unknowns: usize) -> DMatrix<f64> {
    let mut a = DMatrix::zeros(3, unknowns);
    a.view_mut((0, 0), (3, 3)).copy_from(&M3::identity());
    a.view_mut((0, 3), (3, 3)).copy_from(&-skew(arm));
    if unknowns == 7 {
        a.view_mut((0, 6), (3, 1)).copy_from(&arm);
    }
    a
}

impl Placement {
    /// Standard deviation in mm along a direction of a place of the scan in the car, from how well the
    /// marks fitted.
    #[must_use]
    pub fn sigma_at(&self, in_car: Point, along: Vector) -> f64 {
        let c = DMatrix::from_fn(7, 7, |i, k| self.covariance[i][k]);
        let row = fit_motion(v3(in_car) - v3(self.middle), 7).transpose()
            * V3::new(along.x, along.y, along.z);
        row.dot(&(c * &row)).max(0.0).sqrt()
    }
}
