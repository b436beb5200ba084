//! An end as a pose with its uncertainty: direction decides everything a metre further on.

use crate::adjustment::Measure;
use crate::linear::{M3, V3, v3};
use tubewright_geometry::{Frame, Point, UnitVector};

/// Pose of an end in the chosen frame.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct EndPose {
    /// Centre, travel (out of the face) and twelve o'clock.
    pub frame: Frame,
    /// Covariance of place (mm, along the frame's x, y, z) and of a small rotation (rad, about the
    /// same axes): rows and columns in this order.
    pub covariance: [[f64; 6]; 6],
}

impl EndPose {
    /// Covariance in mm² of a place carried rigidly with the end: the lever arm turns the
    /// uncertainty of the direction into millimetres. `Cpp + Crp…` with `d = δ + θ × arm`.
    #[must_use]
    pub fn covariance_at(&self, place: Point) -> [[f64; 3]; 3] {
        let arm = v3(place) - v3(self.frame.origin);
        let block = |r: usize, c: usize| M3::from_fn(|i, k| self.covariance[r + i][c + k]);
        // theta × arm = −[arm]× theta
        let lever = -crate::linear::skew(arm);
        let cross = block(0, 3) * lever.transpose();
        let total =
            block(0, 0) + cross + cross.transpose() + lever * block(3, 3) * lever.transpose();
        core::array::from_fn(|i| core::array::from_fn(|k| total[(i, k)]))
    }

    /// The place `reach_mm` straight on from the end and its σ across the travel (the larger one), mm.
    #[must_use]
    pub fn reach(&self, reach_mm: f64) -> (Point, Measure) {
        let place = self.frame.advanced(reach_mm).origin;
        let c = self.covariance_at(place);
        let (a, b) = (self.frame.twelve(), self.frame.three());
        let form = |u: UnitVector, v: UnitVector| {
            let (u, v) = (u.to_array(), v.to_array());
            (0..3)
                .flat_map(|i| (0..3).map(move |k| (i, k)))
                .map(|(i, k)| u[i] * c[i][k] * v[k])
                .sum::<f64>()
        };
        let ellipse = super::Ellipse::of([[form(a, a), form(a, b)], [form(b, a), form(b, b)]]);
        (
            place,
            Measure {
                value: reach_mm,
                sigma: ellipse.major_mm,
            },
        )
    }

    /// One σ of the direction of travel in radians, the larger of the two ways it can lean.
    #[must_use]
    pub fn direction_sigma_rad(&self) -> f64 {
        let (a, b) = (v3_of(self.frame.twelve()), v3_of(self.frame.three()));
        let c = M3::from_fn(|i, k| self.covariance[3 + i][3 + k]);
        super::Ellipse::of([
            [a.dot(&(c * a)), a.dot(&(c * b))],
            [b.dot(&(c * a)), b.dot(&(c * b))],
        ])
        .major_mm
    }
}

fn v3_of(u: UnitVector) -> V3 {
    V3::from(u.to_array())
}
