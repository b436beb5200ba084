//! What a saw cut takes from a bend.

use crate::math;

/// Angle lost to one saw cut through a bend, in radians.
///
/// The slot has parallel faces. If one face is radial (square to the tube) the other lies the kerf
/// beside the bend's axis: at distance `ρ` from the axis it is at `asin(k/ρ)`. Elementary geometry.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct KerfLoss {
    /// The shop's usual figure: `k / R`.
    pub nominal_rad: f64,
    /// On the centre line: `asin(k / R)`.
    pub centre_line_rad: f64,
    /// On the outside of the bend: `asin(k / (R + D/2))`.
    pub extrados_rad: f64,
    /// On the inside of the bend: `asin(k / (R - D/2))`. Plan on this to have both faces square.
    pub intrados_rad: f64,
    /// How far the face that was not squared is out of square: `asin(k / R)`.
    pub out_of_square_rad: f64,
}

/// The loss of one cut of `kerf_mm` through a bend of centre-line radius `clr_mm` in tube of `od_mm`;
/// `None` when the kerf is negative or does not fit the inside of the bend (`k > R - D/2`).
#[must_use]
pub fn kerf_loss(clr_mm: f64, od_mm: f64, kerf_mm: f64) -> Option<KerfLoss> {
    let inside = clr_mm - 0.5 * od_mm;
    let sound = kerf_mm >= 0.0 && inside > 0.0 && kerf_mm <= inside && od_mm >= 0.0;
    sound.then(|| {
        let at = |rho: f64| math::asin(kerf_mm / rho);
        KerfLoss {
            nominal_rad: kerf_mm / clr_mm,
            centre_line_rad: at(clr_mm),
            extrados_rad: at(clr_mm + 0.5 * od_mm),
            intrados_rad: at(inside),
            out_of_square_rad: at(clr_mm),
        }
    })
}
