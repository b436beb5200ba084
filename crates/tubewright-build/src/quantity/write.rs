//! Values back to the words of the shop.

use tubewright_geometry::{Angle, Length};

/// Millimetres to at most `decimals` places, without trailing zeros: `812 mm`, `60.3 mm`.
#[must_use]
pub fn write_mm(length: Length, decimals: usize) -> String {
    format!("{} mm", trimmed(length.mm(), decimals))
}

/// Degrees to at most `decimals` places, without trailing zeros: `22.5 deg`.
#[must_use]
pub fn write_deg(angle: Angle, decimals: usize) -> String {
    format!("{} deg", trimmed(angle.deg(), decimals))
}

/// Inches to the nearest `1/divisions` (a power of two up to 64, else 64), as a fraction in lowest
/// terms: `2-1/2 in`.
#[must_use]
pub fn write_inches(length: Length, divisions: u32) -> String {
    let divisions = if divisions.is_power_of_two() && divisions <= 64 {
        divisions
    } else {
        64
    };
    let parts = (length.inches().abs() * f64::from(divisions)).round();
    #[expect(
        clippy::cast_possible_truncation,
        clippy::cast_sign_loss,
        reason = "a float to integer cast saturates, and lengths are bounded to 100 m"
    )]
    let parts = parts as u64;
    let sign = if length.mm() < 0.0 && parts > 0 {
        "-"
    } else {
        ""
    };
    let (whole, mut num, mut den) = (
        parts / u64::from(divisions),
        parts % u64::from(divisions),
        u64::from(divisions),
    );
    while num > 0 && num % 2 == 0 {
        num /= 2;
        den /= 2;
    }
    match (whole, num) {
        (whole, 0) => format!("{sign}{whole} in"),
        (0, num) => format!("{sign}{num}/{den} in"),
        (whole, num) => format!("{sign}{whole}-{num}/{den} in"),
    }
}

fn trimmed(value: f64, decimals: usize) -> String {
    let text = format!("{value:.decimals$}");
    let text = if text.contains('.') {
        text.trim_end_matches('0').trim_end_matches('.')
    } else {
        &text
    };
    if text == "-0" {
        "0".to_owned()
    } else {
        text.to_owned()
    }
}
