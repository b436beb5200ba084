//! Tables of tube and fittings, with their sources: sizes, gauges, tolerances, mass.
//!
//! All of it is data that a shop's own catalogue overrides. Outside diameter, bore and nominal size are
//! different things and never mixed here.

mod fittings;
mod gauge;
mod mass;
mod tolerance;

pub use fittings::{
    DIN_2605_TYPE_3, Din2605Elbow, LONG_RADIUS_ELBOWS, LongRadiusElbow, MANDREL_ANGLES_DEG,
    MANDREL_RATIOS, mandrel_clr_mm,
};
pub use gauge::{GaugeMeaning, GaugeSystem, gauge_wall, meanings_of_gauge};
pub use mass::{
    DENSITY_304_321_KG_M3, DENSITY_409_KG_M3, mass_per_metre_kg, pounds_per_foot_by_trade_rule,
};
pub use tolerance::{
    WallTolerance, a249_od_tolerance_mm, a269_tolerance, a554_od_range_in, a554_od_tolerance_in,
};

/// Sizes printed in a table are met to this part, so that a size that came through another unit still
/// finds its band.
const BAND_ROUNDING: f64 = 1e-9;

/// `value <= end` of a band, rounding allowed.
fn up_to(value: f64, end: f64) -> bool {
    value <= end * (1.0 + BAND_ROUNDING)
}

/// `value < end` of a band, rounding allowed.
fn below(value: f64, end: f64) -> bool {
    value < end * (1.0 - BAND_ROUNDING)
}
