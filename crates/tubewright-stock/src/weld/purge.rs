//! Purge gas.

use tubewright_geometry::{Length, math};

/// Volume inside a tube in litres: `π/4 (OD - 2 wall)² L`.
#[must_use]
pub fn purge_volume_litres(od: Length, wall: Length, length: Length) -> f64 {
    let bore_mm = od.mm() - 2.0 * wall.mm();
    math::PI / 4.0 * bore_mm * bore_mm * length.mm() * 1e-6
}

/// Minutes for a number of volume changes at a flow in litres per minute. Four to five changes are
/// the rule, ten is cautious (common practice). Argon is heavier than air: feed low, vent high.
#[must_use]
pub fn purge_time_min(volume_litres: f64, flow_l_per_min: f64, volume_changes: f64) -> f64 {
    volume_changes * volume_litres / flow_l_per_min
}

/// Oxygen left after a number of volume changes if the gas mixes perfectly: `C₀ exp(-n)`. Real
/// purging lies between this and plug flow; an oxygen meter decides.
#[must_use]
pub fn oxygen_left_ppm(start_ppm: f64, volume_changes: f64) -> f64 {
    start_ppm * math::exp(-volume_changes)
}

/// Oxygen in the backing gas of the ten colour samples of AWS D18.2:2009, in ppm: they name a
/// degree of discolouration and set no limit.
pub const DISCOLOUR_OXYGEN_PPM: [u32; 10] = [10, 25, 50, 100, 200, 500, 1000, 5000, 12_500, 25_000];
