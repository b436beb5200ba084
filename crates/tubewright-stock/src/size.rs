//! Sizes in thousandths, for comparisons that are exact: 0.001 mm and 0.001°.

use tubewright_geometry::{Angle, Length};

/// A length in thousandths of a millimetre, rounded to the nearest.
#[must_use]
pub fn length_thousandths(length: Length) -> i64 {
    (length.mm() * 1000.0).round() as i64
}

/// An angle in thousandths of a degree, rounded to the nearest.
#[must_use]
pub fn angle_thousandths(angle: Angle) -> i64 {
    (angle.deg() * 1000.0).round() as i64
}

/// A length from thousandths of a millimetre.
#[must_use]
pub fn length_of(thousandths: i64) -> Length {
    Length::from_mm(thousandths as f64 / 1000.0)
}

/// An angle from thousandths of a degree.
#[must_use]
pub fn angle_of(thousandths: i64) -> Angle {
    Angle::from_deg(thousandths as f64 / 1000.0)
}

/// A loss in thousandths, rounded up, so that what is planned always fits; a millionth of a
/// thousandth is taken as rounding of the division and not as loss.
pub(crate) fn loss_thousandths(value: f64) -> i64 {
    (value * 1000.0 - 1e-6).ceil() as i64
}
