//! Estimates of the flow that is lost where tubes are not smooth bends: at mitres, and where runs meet.
//!
//! All are in dynamic heads (ρ w²/2) of the tube that is named, for steady flow without swirl. They stand in until the
//! gas is computed, and are brought to the price of a degree of bend by what a right-angled bend loses.

use tubewright_geometry::math;

/// What a smooth bend of a right angle loses, of a centre-line radius of one and a half diameters: 0.21 / √1.5
/// (I. E. Idelchik, *Handbook of Hydraulic Resistance*, 3rd edition, 1994, diagram 6-1; from memory).
pub const RIGHT_ANGLED_BEND: f64 = 0.171;

/// What a dynamic head costs where a degree of bend costs so much: a right-angled bend is 90 of them.
#[must_use]
pub fn per_head(per_degree: f64) -> f64 {
    90.0 * per_degree / RIGHT_ANGLED_BEND
}

/// What a sharp elbow of round tube loses that turns the flow by `turn_rad`, 0 to π, heads of the tube:
/// 0.946 sin²(δ/2) + 2.047 sin⁴(δ/2) (J. Weisbach, *Die Experimental-Hydraulik*, 1855; as quoted by Idelchik,
/// section VI; from memory).
#[must_use]
pub fn mitre(turn_rad: f64) -> f64 {
    mitre_of(square(math::sin(0.5 * turn_rad)))
}

/// The same by sin²(δ/2).
pub(crate) fn mitre_of(half_sine_squared: f64) -> f64 {
    half_sine_squared * (MITRE[0] + MITRE[1] * half_sine_squared)
}

/// How [`mitre_of`] changes with sin²(δ/2).
pub(crate) fn mitre_slope(half_sine_squared: f64) -> f64 {
    MITRE[0] + 2.0 * MITRE[1] * half_sine_squared
}

const MITRE: [f64; 2] = [0.946, 2.047];

/// What is lost where two tubes join into one, heads of the outlet: each inlet of `inlet_area` (of the outlet's) has half
/// of the flow and arrives at `aside_rad` to the outlet. From the balance of momentum with even velocities and equal
/// pressures across the joint, as in Idelchik, section VII; no less than nothing.
#[must_use]
pub fn merge(inlet_area: f64, aside_rad: f64) -> f64 {
    let speed = 0.5 / inlet_area;
    // p₁ + ρ w₁²/2 less p₃ + ρ w₃²/2, with p₁ − p₃ = ρ w₃² − 2 ρ w₁² a cos α.
    (1.0 + square(speed) - 4.0 * inlet_area * square(speed) * math::cos(aside_rad)).max(0.0)
}

/// What is lost where one tube parts into two, heads of the inlet: each outlet of `outlet_area` (of the inlet's) takes half
/// of the flow and leaves at `aside_rad`: 1 + v² − 2 v cos α, the impact of the flow that is turned and slowed (Idelchik,
/// section VII; from memory).
#[must_use]
pub fn fork(outlet_area: f64, aside_rad: f64) -> f64 {
    let speed = 0.5 / outlet_area;
    1.0 + square(speed) - 2.0 * speed * math::cos(aside_rad)
}

/// What a cone loses, heads of the smaller tube, its length and the two bores in mm: one that widens
/// 3.2 tan(α/2)^1.25 (1 − A₁/A₂)², at most as much as a step (Idelchik, section V; from memory), one that narrows
/// nothing worth counting.
#[must_use]
pub fn cone(inlet_bore_mm: f64, outlet_bore_mm: f64, length_mm: f64) -> f64 {
    if inlet_bore_mm >= outlet_bore_mm || length_mm <= 0.0 {
        return 0.0;
    }
    let step = square(1.0 - square(inlet_bore_mm / outlet_bore_mm));
    let half_tangent = 0.5 * (outlet_bore_mm - inlet_bore_mm) / length_mm;
    step * (3.2 * math::pow(half_tangent, 1.25)).min(1.0)
}

const fn square(value: f64) -> f64 {
    value * value
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Weisbach's table of sharp elbows, as printed in most books of hydraulics.
    #[test]
    fn mitres_lose_what_weisbach_measured() {
        let table = [
            (40.0, 0.139),
            (60.0, 0.364),
            (80.0, 0.740),
            (90.0, 0.984),
            (100.0, 1.260),
            (120.0, 1.861),
        ];
        for (degrees, printed) in table {
            let found = mitre(f64::to_radians(degrees));
            assert!(
                (found - printed).abs() < 0.002,
                "{degrees} deg: {found} for {printed}"
            );
        }
        assert!(mitre(0.0).abs() < 1e-15);
    }

    #[test]
    fn a_mitre_changes_as_its_slope_says() {
        let step = 1e-6;
        for s in [0.01, 0.1, 0.4] {
            let found = (mitre_of(s + step) - mitre_of(s - step)) / (2.0 * step);
            assert!((found - mitre_slope(s)).abs() < 1e-6);
        }
    }

    #[test]
    fn a_sharp_turn_loses_more_than_a_smooth_one() {
        for degrees in [15.0, 30.0, 45.0, 60.0, 90.0] {
            let as_bend = degrees / 90.0 * RIGHT_ANGLED_BEND;
            let found = mitre(f64::to_radians(degrees));
            assert!(
                found > as_bend || degrees < 20.0,
                "{degrees}: {found} beside {as_bend}"
            );
        }
    }

    /// In line and without a change of speed nothing is lost; with one, the step of speed is, as at a sudden
    /// widening: (1 − 1/2)².
    #[test]
    fn merges_and_forks_at_their_limits() {
        assert!(merge(0.5, 0.0).abs() < 1e-12);
        assert!(fork(0.5, 0.0).abs() < 1e-12);
        assert!((fork(1.0, 0.0) - 0.25).abs() < 1e-12);
        assert!((merge(1.0, 0.0) - 0.25).abs() < 1e-12);
        // A merge of two at right angles gives its whole head to the turn.
        assert!((merge(0.5, math::FRAC_PI_2) - 2.0).abs() < 1e-12);
        let mut last = (0.0, 0.0);
        for degrees in [5.0, 15.0, 30.0, 60.0] {
            let aside = f64::to_radians(degrees);
            let now = (merge(0.6, aside), fork(0.6, aside));
            assert!(now.0 > last.0 && now.1 > last.1, "{degrees}: {now:?}");
            last = now;
        }
    }

    #[test]
    fn a_long_cone_loses_less_than_a_short_one_and_none_more_than_a_step() {
        let step = square(1.0 - square(54.0 / 60.5));
        let (long, short) = (cone(54.0, 60.5, 100.0), cone(54.0, 60.5, 5.0));
        assert!(long < short && short <= step, "{long} {short} {step}");
        assert!(cone(60.5, 54.0, 50.0).abs() < 1e-15);
    }
}
