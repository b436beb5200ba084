//! Every transcendental function the project uses, through `libm`, so that equal input
//! gives equal bytes on any machine. `clippy.toml` refuses the methods of `f64`.

pub use core::f64::consts::{FRAC_PI_2, FRAC_PI_4, PI, TAU};

pub use libm::{acos, asin, atan, atan2, cbrt, cos, exp, log as ln, log10, pow, sin, tan};

/// Sine and cosine of an angle in radians.
#[must_use]
pub fn sin_cos(angle_rad: f64) -> (f64, f64) {
    libm::sincos(angle_rad)
}

/// `sqrt(a² + b²)` without overflow.
#[must_use]
pub fn hypot(a: f64, b: f64) -> f64 {
    libm::hypot(a, b)
}

/// Brings an angle in radians into the half-open interval `(-π, π]`.
#[must_use]
pub fn wrap_to_pi(angle_rad: f64) -> f64 {
    let turns = (angle_rad / TAU).round();
    let wrapped = angle_rad - turns * TAU;
    if wrapped <= -PI {
        wrapped + TAU
    } else {
        wrapped
    }
}
