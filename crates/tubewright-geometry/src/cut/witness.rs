//! Clock angles as millimetres round the outside of the tube.
//!
//! The witness line is a straight line along the tube at twelve o'clock. Clock angles are from it,
//! clockwise looking downstream, so a positive length is laid off clockwise round the outside as seen
//! looking downstream. Laid on paper it is `D/2` times the angle; add the paper's thickness to `D` for
//! a wrapped strip.

use crate::math;

/// From the witness line clockwise (looking downstream) round the outside, `0` to below the girth, in
/// mm.
#[must_use]
pub fn clockwise_round_outside_mm(clock_rad: f64, od_mm: f64) -> f64 {
    let turn = math::wrap_to_pi(clock_rad);
    let positive = if turn < 0.0 { turn + math::TAU } else { turn };
    // -1e-17 wraps to a whole turn: that is the witness line itself.
    if positive >= math::TAU {
        0.0
    } else {
        0.5 * od_mm * positive
    }
}

/// The shorter way round from the witness line in mm: positive clockwise looking downstream, negative
/// the other way, at most half the girth.
#[must_use]
pub fn nearest_round_outside_mm(clock_rad: f64, od_mm: f64) -> f64 {
    0.5 * od_mm * math::wrap_to_pi(clock_rad)
}

/// The clock angle in radians, `(-π, π]`, of a mark laid off `round_mm` clockwise round the outside.
#[must_use]
pub fn clock_from_round_outside(round_mm: f64, od_mm: f64) -> f64 {
    math::wrap_to_pi(2.0 * round_mm / od_mm)
}
