//! Segmented (lobster-back) bends: mitres between straight pieces.

use thiserror::Error;

use super::curve::WrapCurve;
use crate::math;

/// A segmented bend of `N` cuts: `N - 1` full segments and two half ends. Elementary geometry; the
/// spacing class and single-cut radius follow the mitre rules of ASME B31.1 and B31.3.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct SegmentedBend {
    /// Outside diameter in mm.
    pub od_mm: f64,
    /// Wall in mm.
    pub wall_mm: f64,
    /// Radius in mm of the circle that the segments' middles touch.
    pub clr_mm: f64,
    /// Number of cuts.
    pub cuts: u32,
    /// Half the turn of one cut in radians: `A / 2N`.
    pub half_rad: f64,
}

/// Why a bend cannot be segmented.
#[derive(Clone, Copy, Debug, Error, PartialEq)]
#[non_exhaustive]
pub enum SegmentedError {
    /// There is no cut, or the turn of one cut is not below a right angle.
    #[error("{cuts} cuts through {total_rad} rad: take enough cuts that each turns less than 90°")]
    Cuts {
        /// Number of cuts.
        cuts: u32,
        /// Whole turn in radians.
        total_rad: f64,
    },
    /// The inside of the segments would have no length.
    #[error(
        "centre-line radius {clr_mm} mm is not above half of {od_mm} mm: the segments would \
             cross on the inside"
    )]
    Radius {
        /// Centre-line radius in mm.
        clr_mm: f64,
        /// Outside diameter in mm.
        od_mm: f64,
    },
}

impl SegmentedBend {
    /// Greatest half angle of a cut, 22.5° (ASME B31.1).
    pub const MOST_HALF_RAD: f64 = math::PI / 8.0;

    /// A bend of `total_rad` in `cuts` cuts.
    ///
    /// # Errors
    /// [`SegmentedError`] when the numbers do not make segments.
    pub fn new(
        od_mm: f64,
        wall_mm: f64,
        clr_mm: f64,
        total_rad: f64,
        cuts: u32,
    ) -> Result<Self, SegmentedError> {
        let half_rad = 0.5 * total_rad / f64::from(cuts);
        if cuts == 0 || half_rad.is_nan() || half_rad <= 0.0 || half_rad >= math::FRAC_PI_4 {
            return Err(SegmentedError::Cuts { cuts, total_rad });
        }
        if clr_mm.is_nan() || clr_mm <= 0.5 * od_mm {
            return Err(SegmentedError::Radius { clr_mm, od_mm });
        }
        Ok(Self {
            od_mm,
            wall_mm,
            clr_mm,
            cuts,
            half_rad,
        })
    }

    /// Length of a full segment on the line `q` (0 at the inside of the bend):
    /// `2 (R - r cos q) tan θ`, in mm.
    #[must_use]
    pub fn full_segment_mm(&self, q_rad: f64) -> f64 {
        2.0 * (self.clr_mm - 0.5 * self.od_mm * math::cos(q_rad)) * math::tan(self.half_rad)
    }

    /// Length of a full segment on the centre line in mm: the spacing of the cuts.
    #[must_use]
    pub fn spacing_mm(&self) -> f64 {
        2.0 * self.clr_mm * math::tan(self.half_rad)
    }

    /// Length of an end piece on the centre line in mm.
    #[must_use]
    pub fn end_segment_mm(&self) -> f64 {
        0.5 * self.spacing_mm()
    }

    /// Length on the centre line in mm: `2 N R tan θ`.
    #[must_use]
    pub fn centre_line_mm(&self) -> f64 {
        f64::from(self.cuts) * self.spacing_mm()
    }

    /// Mean radius of the tube in mm, by which the code classes the spacing.
    fn mean_radius_mm(&self) -> f64 {
        0.5 * (self.od_mm - self.wall_mm)
    }

    /// True when the cuts count as closely spaced: `S < rm (1 + tan θ)` (ASME B31.3).
    #[must_use]
    pub fn is_closely_spaced(&self) -> bool {
        self.spacing_mm() < self.mean_radius_mm() * (1.0 + math::tan(self.half_rad))
    }

    /// Bend radius in mm that a single, widely spaced cut is worth: `rm (1 + cot θ) / 2` (ASME B31.3).
    #[must_use]
    pub fn single_cut_radius_mm(&self) -> f64 {
        0.5 * self.mean_radius_mm() * (1.0 + 1.0 / math::tan(self.half_rad))
    }

    /// Template of a cut end, above its shortest line: a mitre of half the turn of one cut.
    #[must_use]
    pub fn end(&self) -> SegmentEnd {
        SegmentEnd {
            radius_mm: 0.5 * self.od_mm,
            half_rad: self.half_rad,
        }
    }
}

/// One cut end of a segment, above its shortest line; `q = 0` at the inside of the bend.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct SegmentEnd {
    /// Radius of the tube in mm.
    pub radius_mm: f64,
    /// Half the turn of one cut in radians.
    pub half_rad: f64,
}

impl WrapCurve for SegmentEnd {
    fn tube_radius_mm(&self) -> f64 {
        self.radius_mm
    }

    fn along_mm(&self, q_rad: f64) -> Option<f64> {
        super::Mitre {
            radius_mm: self.radius_mm,
            mitre_rad: self.half_rad,
        }
        .along_mm(q_rad)
    }
}

/// Bend radius that cuts of a spacing and half angle lie on: `S / (2 tan θ)`; same unit as the
/// spacing. Elementary geometry (worked example of the ASME B31 mitre rules).
#[must_use]
pub fn radius_from_spacing_mm(spacing_mm: f64, half_rad: f64) -> f64 {
    spacing_mm / (2.0 * math::tan(half_rad))
}
