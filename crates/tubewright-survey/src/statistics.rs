//! The few distributions that the adjustment needs.

use statrs::distribution::{ContinuousCDF, Normal};
use statrs::function::gamma::gamma_lr;

/// Largest |w| that passes for chance in one reading of a thousand: two-sided 0.1 % of the standard
/// normal (Baarda 1968).
pub const CRITICAL_W: f64 = 3.290_526_731_491_926;

/// Baarda's δ₀ for a level of 0.1 % (two-sided) and a power of 80 %: 3.2905 + 0.8416 (Baarda 1968).
pub const NONCENTRALITY: f64 = 4.132_147_965_064_809;

/// Factor from one σ to 19 in 20, one dimension.
pub const K95: f64 = 1.959_963_984_540_054;

/// Factor from the standard ellipse to 19 in 20, two dimensions: `sqrt(-2 ln 0.05)`.
pub const K95_PLANE: f64 = 2.447_746_830_680_816;

/// Factor from the standard ellipsoid to 19 in 20, three dimensions: `sqrt(χ²(0.95, 3))`.
pub const K95_SPACE: f64 = 2.795_483_482_915_108;

/// Quantile of the standard normal distribution; not a number for a probability outside (0, 1).
#[must_use]
pub fn normal_quantile(probability: f64) -> f64 {
    if probability > 0.0 && probability < 1.0 {
        Normal::standard().inverse_cdf(probability)
    } else {
        f64::NAN
    }
}

/// Baarda's non-centrality δ₀: the expected |w| of a slip that a two-sided test of level `level`
/// finds with probability `power` (Baarda 1968). Not a number outside (0, 1).
#[must_use]
pub fn noncentrality(level: f64, power: f64) -> f64 {
    normal_quantile(1.0 - 0.5 * level) + normal_quantile(power)
}

/// Smallest slip that is found with 80 % probability: δ₀ σ / √r, in the unit of `sigma`; infinite for
/// a reading that nothing checks.
#[must_use]
pub fn detectable_slip(sigma: f64, redundancy: f64) -> f64 {
    if redundancy > 0.0 {
        NONCENTRALITY * sigma / redundancy.sqrt()
    } else {
        f64::INFINITY
    }
}

/// Quantile of χ² with `freedom` degrees, by bisection of the regularised incomplete gamma function;
/// zero for no freedom.
#[must_use]
pub fn chi_squared_quantile(probability: f64, freedom: usize) -> f64 {
    if freedom == 0 || probability <= 0.0 {
        return 0.0;
    }
    if probability >= 1.0 {
        return f64::INFINITY;
    }
    #[expect(clippy::cast_precision_loss, reason = "a count of readings is small")]
    let f = freedom as f64;
    let below = |x: f64| gamma_lr(0.5 * f, 0.5 * x);
    let (mut low, mut high) = (0.0, f + 10.0);
    while below(high) < probability {
        high *= 2.0;
    }
    for _ in 0..200 {
        let middle = 0.5 * (low + high);
        if below(middle) < probability {
            low = middle;
        } else {
            high = middle;
        }
    }
    0.5 * (low + high)
}
