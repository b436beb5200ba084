//! The tape itself: what it may be off by, and how it errs when it hangs or bows.

/// Accuracy class of a tape (Directive 2014/32/EU, Annex X, chapter I).
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum TapeClass {
    /// Class I.
    One,
    /// Class II: the usual shop tape.
    Two,
    /// Class III.
    Three,
}

/// Maximum permissible error in mm, ±: a + b L, with L in metres rounded up to a whole metre, and c
/// more when the length is taken from the hook (Directive 2014/32/EU, Annex X (MI-008), chapter I,
/// table 1). The instrument only; reading and hook play dominate.
#[must_use]
pub fn permissible_error_mm(class: TapeClass, length_mm: f64, from_hook: bool) -> f64 {
    let (a, b, c) = match class {
        TapeClass::One => (0.1, 0.1, 0.1),
        TapeClass::Two => (0.3, 0.2, 0.2),
        TapeClass::Three => (0.6, 0.4, 0.3),
    };
    a + b * (length_mm / 1000.0).ceil() + if from_hook { c } else { 0.0 }
}

/// By how much in mm a tape that hangs free between its ends reads too long: `w² L³ / (24 P²)` (Wolf &
/// Ghilani, *Elementary Surveying*, taping corrections, from memory). `weight_n_per_m` in N/m,
/// `length_m` in m, `pull_n` in N, > 0.
#[must_use]
pub fn sag_correction_mm(weight_n_per_m: f64, length_m: f64, pull_n: f64) -> f64 {
    let w = weight_n_per_m;
    1000.0 * w * w * length_m * length_m * length_m / (24.0 * pull_n * pull_n)
}

/// By how much in mm a tape reads too long that bows sideways by `offset_mm` at the middle of
/// `length_mm`: two straight halves (plane geometry).
#[must_use]
pub fn misalignment_mm(length_mm: f64, offset_mm: f64) -> f64 {
    let half = 0.5 * length_mm;
    // 2 (sqrt(half² + h²) − half), written so that a small bow keeps its digits.
    2.0 * offset_mm * offset_mm / ((half * half + offset_mm * offset_mm).sqrt() + half)
}

/// Allowance in mm, `k` times the root of the sum of squares of independent 1-σ contributions.
#[must_use]
pub fn chain_allowance_mm(sigmas_mm: &[f64], k: f64) -> f64 {
    k * sigmas_mm.iter().map(|s| s * s).sum::<f64>().sqrt()
}
