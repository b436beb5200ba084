//! Rigid and similarity fits of paired points.

use super::{FitError, centroid, needs, rms};
use crate::linear::{M3, V3, point, v3};
use nalgebra::DMatrix;
use tubewright_geometry::{Point, math};

/// `measured ≈ R nominal + t`.
#[derive(Clone, Debug, PartialEq)]
pub struct RigidFit {
    /// Rotation, rows first; its determinant is +1.
    pub rotation: [[f64; 3]; 3],
    /// Shift in mm.
    pub shift_mm: [f64; 3],
    /// Distances in mm that remain, per point.
    pub residuals_mm: Vec<f64>,
    /// `sqrt(Σ e² / n)`, mm.
    pub rms_mm: f64,
    /// The same for the best mirrored fit, mm.
    pub mirrored_rms_mm: f64,
}

impl RigidFit {
    /// Angle of the rotation in radians, 0 to π.
    #[must_use]
    pub fn angle_rad(&self) -> f64 {
        let r = &self.rotation;
        let sine = V3::new(r[2][1] - r[1][2], r[0][2] - r[2][0], r[1][0] - r[0][1]).norm();
        math::atan2(sine, r[0][0] + r[1][1] + r[2][2] - 1.0)
    }

    /// A nominal place where it is measured.
    #[must_use]
    pub fn moved(&self, nominal: Point) -> Point {
        let r = M3::from_fn(|i, k| self.rotation[i][k]);
        point(r * v3(nominal) + V3::from(self.shift_mm))
    }

    /// True when the mirror image fits far better: the wrong-hand part, or marks named the wrong way
    /// round. Three times better and by more than 2 mm (common practice, no source).
    #[must_use]
    pub fn looks_mirrored(&self) -> bool {
        self.rms_mm > 3.0 * self.mirrored_rms_mm && self.rms_mm - self.mirrored_rms_mm > 2.0
    }
}

/// `y ≈ c R x + t`.
#[derive(Clone, Debug, PartialEq)]
pub struct SimilarityFit {
    /// Rotation, rows first.
    pub rotation: Vec<Vec<f64>>,
    /// Shift, in the unit of y.
    pub shift: Vec<f64>,
    /// Scale c, > 0.
    pub scale: f64,
    /// `(1/n) Σ |y − (cRx + t)|²`.
    pub mean_square: f64,
    /// Distances that remain.
    pub residuals: Vec<f64>,
}

fn paired(from: &[Point], to: &[Point], what: &'static str) -> Result<(), FitError> {
    if from.len() != to.len() {
        return Err(FitError::NotPaired {
            from: from.len(),
            to: to.len(),
        });
    }
    needs(what, from.len(), 3)?;
    if !from.iter().chain(to).all(|p| p.is_finite()) {
        return Err(FitError::Degenerate { what });
    }
    Ok(())
}

/// Best proper rotation and shift (Kabsch 1976, Acta Cryst. A32:922; Horn 1987, JOSA A 4:629).
///
/// # Errors
/// [`FitError`] for fewer than three pairs or points in line.
pub fn fit_rigid(nominal: &[Point], measured: &[Point]) -> Result<RigidFit, FitError> {
    let what = "a rigid fit";
    paired(nominal, measured, what)?;
    let p: Vec<V3> = nominal.iter().map(|p| v3(*p)).collect();
    let q: Vec<V3> = measured.iter().map(|p| v3(*p)).collect();
    let (pc, qc) = (centroid(&p), centroid(&q));
    let mut h = M3::zeros();
    for (a, b) in p.iter().zip(&q) {
        h += (a - pc) * (b - qc).transpose();
    }
    let svd = h.svd(true, true);
    let (Some(u), Some(v_t)) = (svd.u, svd.v_t) else {
        return Err(FitError::Degenerate { what });
    };
    if svd.singular_values[1] <= 1e-9 * svd.singular_values[0] {
        return Err(FitError::Degenerate { what });
    }
    let v = v_t.transpose();
    let sign = (v * u.transpose()).determinant().signum();
    let fitted = |sign: f64| {
        let r = v * M3::from_diagonal(&V3::new(1.0, 1.0, sign)) * u.transpose();
        let t = qc - r * pc;
        let left: Vec<f64> = p
            .iter()
            .zip(&q)
            .map(|(a, b)| (r * a + t - b).norm())
            .collect();
        (r, t, left)
    };
    let (r, t, residuals_mm) = fitted(sign);
    let (_, _, mirrored) = fitted(-sign);
    Ok(RigidFit {
        rotation: core::array::from_fn(|i| core::array::from_fn(|k| r[(i, k)])),
        shift_mm: t.into(),
        rms_mm: rms(&residuals_mm),
        residuals_mm,
        mirrored_rms_mm: rms(&mirrored),
    })
}

/// Best rotation, shift and scale in space (Umeyama 1991, IEEE PAMI 13:376).
///
/// # Errors
/// As [`fit_rigid`].
pub fn fit_similarity(x: &[Point], y: &[Point]) -> Result<SimilarityFit, FitError> {
    paired(x, y, "a fit with scale")?;
    let flat = |points: &[Point]| DMatrix::from_fn(3, points.len(), |i, k| points[k].to_array()[i]);
    umeyama(&flat(x), &flat(y))
}

/// The same in a plane: points as `[x, y]`.
///
/// # Errors
/// [`FitError`] for fewer than two pairs, or points in one place.
pub fn fit_similarity_plane(x: &[[f64; 2]], y: &[[f64; 2]]) -> Result<SimilarityFit, FitError> {
    if x.len() != y.len() {
        return Err(FitError::NotPaired {
            from: x.len(),
            to: y.len(),
        });
    }
    needs("a fit with scale", x.len(), 2)?;
    let flat = |points: &[[f64; 2]]| DMatrix::from_fn(2, points.len(), |i, k| points[k][i]);
    umeyama(&flat(x), &flat(y))
}

fn umeyama(x: &DMatrix<f64>, y: &DMatrix<f64>) -> Result<SimilarityFit, FitError> {
    let what = "a fit with scale";
    #[expect(clippy::cast_precision_loss, reason = "a count of points is small")]
    let count = x.ncols() as f64;
    let dims = x.nrows();
    let (xm, ym) = (x.column_mean(), y.column_mean());
    let centred = |m: &DMatrix<f64>, mean: &nalgebra::DVector<f64>| {
        DMatrix::from_fn(dims, m.ncols(), |i, k| m[(i, k)] - mean[i])
    };
    let (xc, yc) = (centred(x, &xm), centred(y, &ym));
    let variance = xc.norm_squared() / count;
    let svd = (&yc * xc.transpose() / count).svd(true, true);
    let (Some(u), Some(v_t)) = (svd.u, svd.v_t) else {
        return Err(FitError::Degenerate { what });
    };
    if !variance.is_finite() || variance <= 0.0 {
        return Err(FitError::Degenerate { what });
    }
    let mut s = DMatrix::identity(dims, dims);
    s[(dims - 1, dims - 1)] = (u.determinant() * v_t.determinant()).signum();
    let r = &u * &s * &v_t;
    let scale = (0..dims)
        .map(|k| svd.singular_values[k] * s[(k, k)])
        .sum::<f64>()
        / variance;
    let t = &ym - &r * &xm * scale;
    let residuals: Vec<f64> = (0..x.ncols())
        .map(|k| (&r * x.column(k) * scale + &t - y.column(k)).norm())
        .collect();
    Ok(SimilarityFit {
        rotation: (0..dims)
            .map(|i| (0..dims).map(|k| r[(i, k)]).collect())
            .collect(),
        shift: t.iter().copied().collect(),
        scale,
        mean_square: residuals.iter().map(|e| e * e).sum::<f64>() / count,
        residuals,
    })
}
