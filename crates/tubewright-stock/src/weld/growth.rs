//! Growth with heat.

use tubewright_geometry::Length;

/// Steels that grow alike.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum AlloyGroup {
    /// 304 (EN 10088-1, 1.4301).
    Austenitic304,
    /// 321 (1.4541; grade sheet, to 500 °C equal to EN 10088-1).
    Austenitic321,
    /// 409 (1.4512, titanium ferritic; grade sheet).
    Ferritic409,
}

impl AlloyGroup {
    /// Mean coefficients from 20 °C to 100, 200, … °C in 1e-6 per kelvin.
    const fn table(self) -> &'static [f64] {
        match self {
            Self::Austenitic304 => &[16.0, 16.5, 17.0, 17.5, 18.0],
            Self::Austenitic321 => &[16.0, 16.5, 17.0, 17.5, 18.0, 18.5, 18.5, 19.0],
            Self::Ferritic409 => &[10.5, 11.0, 11.5, 12.0, 12.0],
        }
    }
}

/// Mean coefficient of expansion from 20 °C to this temperature, in 1e-6 per kelvin, between the
/// values of the tables; below 100 °C that of 100 °C. `None` above the last value, which is not
/// stretched.
#[must_use]
pub fn mean_expansion(group: AlloyGroup, celsius: f64) -> Option<f64> {
    let table = group.table();
    if celsius.is_nan() || celsius > 100.0 * table.len() as f64 {
        return None;
    }
    let place = (celsius / 100.0 - 1.0).max(0.0);
    let low = place.floor() as usize;
    let at_low = *table.get(low)?;
    let at_high = table.get(low + 1).copied().unwrap_or(at_low);
    Some(at_low + (at_high - at_low) * (place - low as f64))
}

/// Growth of a length from ambient to hot: `α L (T - T₀)` with the mean coefficient, which must not
/// be integrated again. Wall temperature, not gas temperature.
#[must_use]
pub fn growth(length: Length, mean_1e_6_per_k: f64, hot_c: f64, ambient_c: f64) -> Length {
    length * (mean_1e_6_per_k * 1e-6 * (hot_c - ambient_c))
}
