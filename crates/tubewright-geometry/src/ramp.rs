//! Ramp angles of the underside: approach, departure and breakover.
//!
//! Definitions: 49 CFR 523.2, tangents to the static loaded radius arcs of the tyres. The tangent
//! formula is elementary geometry.

use thiserror::Error;

/// Why a ramp angle cannot be given.
#[derive(Clone, Copy, Debug, Error, PartialEq)]
#[non_exhaustive]
pub enum RampError {
    /// A length that must be above zero is not.
    #[error("{what} is {value_mm} mm; a ramp angle needs it above zero")]
    NotPositive {
        /// Which length.
        what: &'static str,
        /// Its value in mm.
        value_mm: f64,
    },
    /// The point is as high as the tyre: no ramp touches it first.
    #[error(
        "the point is {height_mm} mm high, above the tyre ({slr_mm} mm static loaded radius): no ramp \
         touches it before the tyre"
    )]
    AboveTyre {
        /// Height of the point in mm.
        height_mm: f64,
        /// Static loaded radius in mm.
        slr_mm: f64,
    },
    /// The point lies within the tyre's own outline.
    #[error(
        "the point is {distance_mm} mm from the axle and {height_mm} mm high, inside the tyre's \
         outline: measure it from the axle again"
    )]
    InsideTyre {
        /// Distance from the axle in mm.
        distance_mm: f64,
        /// Height of the point in mm.
        height_mm: f64,
    },
}

/// Angle in radians of the ramp that touches both the tyre and a point `distance_mm` ahead of (or
/// behind) its axle and `height_mm` above the ground: `tan(θ/2) = (a - √(a² - h(2r - h))) / (2r - h)`.
///
/// For the approach angle take the front axle and the front's lowest point, for the departure angle
/// the rear.
///
/// # Errors
/// [`RampError`] when a length is not above zero, the point is above the tyre or inside its outline.
pub fn ramp_angle(distance_mm: f64, height_mm: f64, slr_mm: f64) -> Result<f64, RampError> {
    for (what, value_mm) in [
        ("the distance from the axle", distance_mm),
        ("the height of the point", height_mm),
        ("the static loaded radius", slr_mm),
    ] {
        if value_mm.is_nan() || value_mm <= 0.0 {
            return Err(RampError::NotPositive { what, value_mm });
        }
    }
    let over = 2.0 * slr_mm - height_mm;
    if over <= 0.0 {
        return Err(RampError::AboveTyre { height_mm, slr_mm });
    }
    let inside = distance_mm * distance_mm - height_mm * over;
    if inside < 0.0 {
        return Err(RampError::InsideTyre {
            distance_mm,
            height_mm,
        });
    }
    // (a - √(a² - q)) / p with q = h p, without cancellation: h / (a + √(a² - q)).
    Ok(2.0 * crate::math::atan(height_mm / (distance_mm + inside.sqrt())))
}

/// Ramp breakover angle in radians of a belly point: the sum of the tangents to the front and the
/// rear tyre.
///
/// # Errors
/// As [`ramp_angle`].
pub fn breakover_angle(
    behind_front_mm: f64,
    ahead_of_rear_mm: f64,
    height_mm: f64,
    slr_mm: f64,
) -> Result<f64, RampError> {
    Ok(ramp_angle(behind_front_mm, height_mm, slr_mm)?
        + ramp_angle(ahead_of_rear_mm, height_mm, slr_mm)?)
}
