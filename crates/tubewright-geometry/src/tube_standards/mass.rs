//! Mass of round tube.

use crate::math;

/// Density of 304 and 321 stainless in kg/m³ (EN 10088-1; 321 = 1.4541 is listed with the 304 group).
pub const DENSITY_304_321_KG_M3: f64 = 7900.0;
/// Density of 409 stainless in kg/m³ (EN 10088-1, 1.4512).
pub const DENSITY_409_KG_M3: f64 = 7700.0;

/// Mass in kg of one metre of round tube: `π (D - t) t ρ`.
#[must_use]
pub fn mass_per_metre_kg(od_mm: f64, wall_mm: f64, density_kg_m3: f64) -> f64 {
    math::PI * (od_mm - wall_mm) * wall_mm * 1e-6 * density_kg_m3
}

/// Weight in pounds of one foot of 304 tube, sizes in inches, by the trade's constant
/// `W = 10.79 (D - t) t` (a tube formula sheet; the constant means 7922 kg/m³).
#[must_use]
pub fn pounds_per_foot_by_trade_rule(od_in: f64, wall_in: f64) -> f64 {
    10.79 * (od_in - wall_in) * wall_in
}
