//! Error ellipses and ellipsoids.

use crate::linear::{M3, vector};
use crate::statistics::K95_SPACE;
use tubewright_geometry::{UnitVector, math};

/// Standard error ellipsoid (one σ).
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Ellipsoid {
    /// Half axes in mm, longest first.
    pub half_axes_mm: [f64; 3],
    /// Their directions.
    pub directions: [UnitVector; 3],
}

/// Standard error ellipse (one σ) in plan.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Ellipse {
    /// Longer half axis in mm.
    pub major_mm: f64,
    /// Shorter half axis in mm.
    pub minor_mm: f64,
    /// Direction of the longer one from +x toward +y, radians in [0, π).
    pub direction_rad: f64,
}

impl Ellipsoid {
    /// From a covariance in mm².
    #[must_use]
    pub fn of(covariance: &[[f64; 3]; 3]) -> Self {
        let eigen = M3::from_fn(|i, k| covariance[i][k]).symmetric_eigen();
        let mut order = [0, 1, 2];
        order.sort_by(|&i, &k| eigen.eigenvalues[k].total_cmp(&eigen.eigenvalues[i]));
        Self {
            half_axes_mm: order.map(|k| eigen.eigenvalues[k].max(0.0).sqrt()),
            directions: order.map(|k| {
                let axis = eigen.eigenvectors.column(k).normalize();
                UnitVector::from_unit(vector(axis))
            }),
        }
    }

    /// Half axes of the ellipsoid that holds the point 19 times in 20: 2.7955 times (χ² of three).
    #[must_use]
    pub fn half_axes_95_mm(&self) -> [f64; 3] {
        self.half_axes_mm.map(|a| K95_SPACE * a)
    }
}

impl Ellipse {
    /// From a covariance in mm².
    #[must_use]
    pub fn of(c: [[f64; 2]; 2]) -> Self {
        let middle = 0.5 * (c[0][0] + c[1][1]);
        let half = 0.5 * (c[0][0] - c[1][1]);
        let spread = math::hypot(half, c[0][1]);
        let direction = 0.5 * math::atan2(c[0][1], half);
        Self {
            major_mm: (middle + spread).max(0.0).sqrt(),
            minor_mm: (middle - spread).max(0.0).sqrt(),
            direction_rad: if direction < 0.0 {
                direction + math::PI
            } else {
                direction
            },
        }
    }
}
