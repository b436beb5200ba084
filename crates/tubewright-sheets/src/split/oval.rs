//! The closed curve in which the plane cuts the outside or the bore: a spiric section on the bend, an
//! arc of an ellipse on each leg that it runs into.

use super::SplitCross;
use tubewright_geometry::math;
use tubewright_geometry::template::SplitBend;

/// The curve for one radius of tube.
pub(super) struct Oval {
    pub(super) radius_mm: f64,
    clr_mm: f64,
    plane_mm: f64,
    limit_rad: f64,
    half_sin: f64,
    half_cos: f64,
    /// Angle from the back where the cut passes from the leg into the bend; none when it stays in
    /// the bend.
    pub(super) leaves_rad: Option<f64>,
}

impl Oval {
    pub(super) fn new(half: SplitBend, cross: &SplitCross, radius_mm: f64) -> Self {
        let (half_sin, half_cos) = math::sin_cos(0.5 * cross.bend_rad);
        let leaves = (cross.plane_mm / half_cos - cross.clr_mm) / radius_mm;
        Self {
            radius_mm,
            clr_mm: cross.clr_mm,
            plane_mm: cross.plane_mm,
            limit_rad: half.limit_rad(),
            half_sin,
            half_cos,
            leaves_rad: half
                .runs_into_legs()
                .then(|| math::acos(leaves.clamp(-1.0, 1.0))),
        }
    }

    /// A place on the part that lies on the bend, `[y, z]`, by a parameter that runs smoothly round:
    /// the angle from the back is `limit sin(t)`, and y has the sign of `cos(t)`.
    pub(super) fn on_bend(&self, t: f64) -> [f64; 2] {
        let (sin, cos) = math::sin_cos(t);
        let q = self.limit_rad * sin;
        let (q_sin, q_cos) = math::sin_cos(q);
        let rho = self.clr_mm + self.radius_mm * q_cos;
        let across = ((rho - self.plane_mm) * (rho + self.plane_mm)).max(0.0);
        [across.sqrt().copysign(cos), self.radius_mm * q_sin]
    }

    /// Its derivative by `t`: central difference, good to 1e-9 of the size.
    pub(super) fn along_bend(&self, t: f64) -> [f64; 2] {
        const STEP: f64 = 1e-4;
        let ([y0, z0], [y1, z1]) = (self.smooth(t - STEP), self.smooth(t + STEP));
        [(y1 - y0) / (2.0 * STEP), (z1 - z0) / (2.0 * STEP)]
    }

    /// As [`Self::on_bend`], with the square root's end divided out so that it can be differenced
    /// across it: `y = cos(t) g`, `g² = (ρ² - d²) / cos²(t)`.
    fn smooth(&self, t: f64) -> [f64; 2] {
        let cos = math::cos(t);
        let at = self.on_bend(t);
        if cos.abs() > 1e-3 {
            return at;
        }
        // Near the apex g changes in second order only: its value a little aside serves.
        let aside = math::acos(2e-3_f64.copysign(cos));
        let [y, _] = self.on_bend(aside);
        [y / 2e-3_f64.copysign(cos) * cos, at[1]]
    }

    /// First and last parameter of the upper part on the bend, from the downstream side (y > 0) over
    /// the top (z > 0) to the upstream side.
    pub(super) fn upper_range(&self) -> [f64; 2] {
        let from = self
            .leaves_rad
            .map_or(0.0, |q| math::asin((q / self.limit_rad).clamp(0.0, 1.0)));
        [from, math::PI - from]
    }

    /// A place on the part that lies in the downstream leg, by the angle `q` from the back:
    /// `[y, z]`.
    pub(super) fn in_leg(&self, q: f64) -> [f64; 2] {
        let (sin, cos) = math::sin_cos(q);
        let rho = self.clr_mm + self.radius_mm * cos;
        let beyond = (rho * self.half_cos - self.plane_mm) / self.half_sin;
        [
            rho * self.half_sin + beyond * self.half_cos,
            self.radius_mm * sin,
        ]
    }

    /// Length of a quarter of the oval, as a polygon.
    pub(super) fn length_mm(&self, sides: u32) -> f64 {
        let share =
            |from: f64, to: f64, i: u32| from + (to - from) * f64::from(i) / f64::from(sides);
        let mut spots: Vec<[f64; 2]> = Vec::new();
        if let Some(leaves) = self.leaves_rad {
            spots.extend((0..sides).map(|i| self.in_leg(share(0.0, leaves, i))));
        }
        let [from, _] = self.upper_range();
        spots.extend((0..=sides).map(|i| self.on_bend(share(from, math::FRAC_PI_2, i))));
        spots
            .windows(2)
            .map(|pair| match pair {
                [[y0, z0], [y1, z1]] => math::hypot(y1 - y0, z1 - z0),
                _ => 0.0,
            })
            .sum()
    }
}
