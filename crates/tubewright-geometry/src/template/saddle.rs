//! Cylinder and cylinder: saddles, and the hole in the header.

use thiserror::Error;

use super::curve::WrapCurve;
use crate::math;

/// A branch cut to sit on a header. `along` is from the header's axis, along the branch; `q = 0` on
/// the obtuse side, half a turn in the acute crotch, and the axis offset is toward a quarter turn:
/// `s(q) = [√(Rh² - (r sin q + e)²) - r cos α cos q] / sin α`.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Saddle {
    branch_mm: f64,
    header_mm: f64,
    angle_rad: f64,
    offset_mm: f64,
}

/// Why a branch does not sit on a header.
#[derive(Clone, Copy, Debug, Error, PartialEq)]
#[non_exhaustive]
pub enum SaddleError {
    /// The branch reaches past the header's side.
    #[error(
        "a branch of radius {branch_mm} mm set {offset_mm} mm off the axis reaches past a header of \
         radius {header_mm} mm: take a smaller branch, a larger header or less offset"
    )]
    ReachesPast {
        /// Radius of the branch in mm.
        branch_mm: f64,
        /// Outer radius of the header in mm.
        header_mm: f64,
        /// Offset of the axes in mm.
        offset_mm: f64,
    },
    /// The angle between the axes is not between 0 and π.
    #[error("an angle of {angle_rad} rad between branch and header: it must lie between 0 and π")]
    Angle {
        /// The angle in radians.
        angle_rad: f64,
    },
    /// A radius is not above zero, or a number is not finite.
    #[error("branch {branch_mm} mm, header {header_mm} mm, offset {offset_mm} mm: not sound sizes")]
    Size {
        /// Radius of the branch in mm.
        branch_mm: f64,
        /// Radius of the header in mm.
        header_mm: f64,
        /// Offset in mm.
        offset_mm: f64,
    },
}

/// A place of the hole's edge on the unrolled header.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct HolePlace {
    /// Along the header in mm, from where the branch's axis passes nearest to the header's.
    pub along_mm: f64,
    /// Round the header's outside in mm, from its line under the branch's axis plane.
    pub round_mm: f64,
}

/// How far past the header's side a branch may reach by rounding, in mm.
const TOUCH_MM: f64 = 1e-9;

impl Saddle {
    /// `branch_mm` and `header_mm` are radii (the branch's inner one when the bore edge must not foul
    /// the header), `angle_rad` lies between the axes, `offset_mm` is the distance of the axes.
    ///
    /// # Errors
    /// [`SaddleError`] when the branch does not sit wholly on the header.
    pub fn new(
        branch_mm: f64,
        header_mm: f64,
        angle_rad: f64,
        offset_mm: f64,
    ) -> Result<Self, SaddleError> {
        let finite = offset_mm.is_finite() && header_mm.is_finite() && branch_mm.is_finite();
        if !finite || branch_mm <= 0.0 || header_mm <= 0.0 {
            return Err(SaddleError::Size {
                branch_mm,
                header_mm,
                offset_mm,
            });
        }
        if angle_rad.is_nan() || math::sin(angle_rad) <= 1e-9 || angle_rad >= math::PI {
            return Err(SaddleError::Angle { angle_rad });
        }
        if branch_mm + offset_mm.abs() > header_mm + TOUCH_MM {
            return Err(SaddleError::ReachesPast {
                branch_mm,
                header_mm,
                offset_mm,
            });
        }
        Ok(Self {
            branch_mm,
            header_mm,
            angle_rad,
            offset_mm,
        })
    }

    /// Distance along the branch from the header's axis, in mm.
    #[must_use]
    pub fn from_axis_mm(&self, q_rad: f64) -> f64 {
        let (sin_q, cos_q) = math::sin_cos(q_rad);
        let (sin_a, cos_a) = math::sin_cos(self.angle_rad);
        let aside = self.branch_mm * sin_q + self.offset_mm;
        // (Rh - a)(Rh + a), clamped: equal tubes meet at the side exactly.
        let root = ((self.header_mm - aside) * (self.header_mm + aside)).max(0.0);
        (root.sqrt() - self.branch_mm * cos_a * cos_q) / sin_a
    }

    /// The edge of the hole in the header at the branch's line `q`:
    /// `x = s cos α - r cos q sin α`, arc `= Rh asin((r sin q + e)/Rh)`.
    #[must_use]
    pub fn hole(&self, q_rad: f64) -> HolePlace {
        let (sin_q, cos_q) = math::sin_cos(q_rad);
        let (sin_a, cos_a) = math::sin_cos(self.angle_rad);
        let aside = self.branch_mm * sin_q + self.offset_mm;
        HolePlace {
            along_mm: self.from_axis_mm(q_rad) * cos_a - self.branch_mm * cos_q * sin_a,
            round_mm: self.header_mm * math::asin((aside / self.header_mm).clamp(-1.0, 1.0)),
        }
    }
}

impl WrapCurve for Saddle {
    fn tube_radius_mm(&self) -> f64 {
        self.branch_mm
    }

    fn along_mm(&self, q_rad: f64) -> Option<f64> {
        Some(self.from_axis_mm(q_rad))
    }

    /// The curve may have a corner where the branch touches the header's side (equal tubes).
    fn corners_rad(&self) -> Vec<f64> {
        vec![math::FRAC_PI_2, 3.0 * math::FRAC_PI_2]
    }
}
