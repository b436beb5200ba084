//! Plane and bend (torus): a bend's end cut by any plane.
//!
//! Axes of the bend: `z` along the bend's axis, section angle `p` round it, `q` round the tube from
//! the outside of the bend (half a turn: the inside; a quarter: toward `z`). With `ρ = R + r cos q` a
//! place of the tube is `(ρ cos p, ρ sin p, r sin q)`, and the mark on the line `q` is `ρ p` along it.
//! Looking downstream (growing `p`) with twelve o'clock at the outside of the bend, the clock of a
//! line is `-q`.
//!
//! Elementary geometry: `n·P = c` solved for `p`.

use super::curve::WrapCurve;
use super::mitre::PlaneCut;
use crate::math;
use crate::vector::{Point, UnitVector, Vector};

/// Which of the two sections that a plane makes with a bend.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Branch {
    /// `p = atan2(ny, nx) - acos(...)`: for a plane nearly square to the tube at `p = 0`, the section
    /// near `p = 0`.
    Minus,
    /// `p = atan2(ny, nx) + acos(...)`.
    Plus,
}

/// The plane that cuts the bend, in its axes.
#[derive(Clone, Copy, Debug, PartialEq)]
#[non_exhaustive]
pub enum TorusPlane {
    /// Square section at `p = 0` turned about the bend's axis direction through the centre-line
    /// place: a mitre in the plane of the bend. `p = asin(R sin d / ρ) - d`.
    InPlane {
        /// Turn `d` in radians.
        turn_rad: f64,
    },
    /// Square section at `p = 0` tilted about the radial line: `sin p = -tan d · r sin q / ρ`.
    Tilt {
        /// Tilt `d` in radians.
        tilt_rad: f64,
    },
    /// Any plane `normal · P = offset`.
    General {
        /// Direction square to the plane.
        normal: UnitVector,
        /// Distance of the plane from the bend's centre along it, in mm.
        offset_mm: f64,
        /// Which section.
        branch: Branch,
    },
}

/// A bend cut by a plane.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct TorusCut {
    /// Centre-line radius in mm.
    pub clr_mm: f64,
    /// Radius of the tube in mm.
    pub tube_radius_mm: f64,
    /// The plane.
    pub plane: TorusPlane,
}

/// How far an arc sine or cosine may pass 1 by rounding and still count as touching.
const TOUCH: f64 = 1e-12;

fn asin_touching(x: f64) -> Option<f64> {
    (x.abs() <= 1.0 + TOUCH).then(|| math::asin(x.clamp(-1.0, 1.0)))
}

impl TorusCut {
    /// Distance of the line `q` from the bend's axis in mm.
    #[must_use]
    pub fn rho_mm(&self, q_rad: f64) -> f64 {
        self.clr_mm + self.tube_radius_mm * math::cos(q_rad)
    }

    /// Section angle `p` in radians at which the plane cuts the line `q`; `None` when it does not
    /// reach it.
    #[must_use]
    pub fn section_rad(&self, q_rad: f64) -> Option<f64> {
        let rho = self.rho_mm(q_rad);
        let height = self.tube_radius_mm * math::sin(q_rad);
        match self.plane {
            TorusPlane::InPlane { turn_rad } => {
                asin_touching(self.clr_mm * math::sin(turn_rad) / rho).map(|a| a - turn_rad)
            }
            TorusPlane::Tilt { tilt_rad } => asin_touching(-math::tan(tilt_rad) * height / rho),
            TorusPlane::General {
                normal,
                offset_mm,
                branch,
            } => {
                let [nx, ny, nz] = normal.to_array();
                let level = math::hypot(nx, ny);
                let cosine = (offset_mm - nz * height) / (rho * level);
                let from = math::atan2(ny, nx);
                let aside = asin_touching(cosine).map(|a| math::FRAC_PI_2 - a)?;
                Some(match branch {
                    Branch::Minus => from - aside,
                    Branch::Plus => from + aside,
                })
            }
        }
    }
}

impl TorusCut {
    /// The plane as direction and distance from the bend's centre in mm.
    #[must_use]
    pub fn plane(&self) -> (UnitVector, f64) {
        match self.plane {
            // Square section (normal y) through (R, 0, 0), turned about z.
            TorusPlane::InPlane { turn_rad } => {
                let (sin, cos) = math::sin_cos(turn_rad);
                let normal = UnitVector::from_unit(Vector::new(sin, cos, 0.0));
                (normal, self.clr_mm * sin)
            }
            TorusPlane::Tilt { tilt_rad } => {
                let (sin, cos) = math::sin_cos(tilt_rad);
                (UnitVector::from_unit(Vector::new(0.0, cos, sin)), 0.0)
            }
            TorusPlane::General {
                normal, offset_mm, ..
            } => (normal, offset_mm),
        }
    }

    /// The straight leg that goes on from the section at `section_rad` in the direction of growing
    /// `p`, cut by the same plane. Lengths are from that tangent line, negative before it; `q` as in
    /// the bend.
    #[must_use]
    pub fn leg_cut(&self, section_rad: f64) -> PlaneCut {
        let (sin, cos) = math::sin_cos(section_rad);
        let (normal, offset_mm) = self.plane();
        PlaneCut {
            origin: Point::new(self.clr_mm * cos, self.clr_mm * sin, 0.0),
            along: UnitVector::from_unit(Vector::new(-sin, cos, 0.0)),
            zero: UnitVector::from_unit(Vector::new(cos, sin, 0.0)),
            quarter: UnitVector::Z,
            radius_mm: self.tube_radius_mm,
            normal,
            offset_mm,
        }
    }
}

/// A cut through a stock bend whose arc ends: on the lines that the plane meets past a tangent line
/// the leg is cut, as a straight tube by the same plane.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct BendCut {
    /// The plane and the bend's sizes.
    pub cut: TorusCut,
    /// Section angle of the upstream tangent line in radians.
    pub from_rad: f64,
    /// Section angle of the downstream tangent line in radians, above `from_rad`.
    pub to_rad: f64,
}

impl WrapCurve for BendCut {
    fn tube_radius_mm(&self) -> f64 {
        self.cut.tube_radius_mm
    }

    /// Mark on the line `q` in mm from the section `p = 0`, measured along the line: `ρ p` in the
    /// arc, and on from the tangent line along the leg.
    fn along_mm(&self, q_rad: f64) -> Option<f64> {
        let section = self.cut.section_rad(q_rad)?;
        let rho = self.cut.rho_mm(q_rad);
        if section > self.to_rad {
            let leg = self.cut.leg_cut(self.to_rad).along_mm(q_rad)?;
            (leg >= 0.0).then_some(rho * self.to_rad + leg)
        } else if section < self.from_rad {
            let leg = self.cut.leg_cut(self.from_rad).along_mm(q_rad)?;
            (leg <= 0.0).then_some(rho * self.from_rad + leg)
        } else {
            Some(rho * section)
        }
    }

    fn corners_rad(&self) -> Vec<f64> {
        const STEPS: u32 = 720;
        let at = |i: u32| math::TAU * f64::from(i) / f64::from(STEPS);
        let stretch = |q: f64| match self.cut.section_rad(q) {
            None => 0_u8,
            Some(p) if p < self.from_rad => 1,
            Some(p) if p > self.to_rad => 3,
            Some(_) => 2,
        };
        (0..STEPS)
            .filter(|&i| stretch(at(i)) != stretch(at(i + 1)))
            .map(|i| {
                let (mut same, mut other) = (at(i), at(i + 1));
                let here = stretch(same);
                for _ in 0..60 {
                    let middle = 0.5 * (same + other);
                    if stretch(middle) == here {
                        same = middle;
                    } else {
                        other = middle;
                    }
                }
                if here == 0 { other } else { same }
            })
            .collect()
    }
}

impl WrapCurve for TorusCut {
    fn tube_radius_mm(&self) -> f64 {
        self.tube_radius_mm
    }

    fn along_mm(&self, q_rad: f64) -> Option<f64> {
        self.section_rad(q_rad).map(|p| p * self.rho_mm(q_rad))
    }

    /// Where the plane ceases to reach the lines, found by halving between neighbours.
    fn corners_rad(&self) -> Vec<f64> {
        const STEPS: u32 = 720;
        let at = |i: u32| math::TAU * f64::from(i) / f64::from(STEPS);
        let cut = |q: f64| self.section_rad(q).is_some();
        (0..STEPS)
            .filter(|&i| cut(at(i)) != cut(at(i + 1)))
            .map(|i| {
                let (mut inside, mut outside) = if cut(at(i)) {
                    (at(i), at(i + 1))
                } else {
                    (at(i + 1), at(i))
                };
                for _ in 0..60 {
                    let middle = 0.5 * (inside + outside);
                    if cut(middle) {
                        inside = middle;
                    } else {
                        outside = middle;
                    }
                }
                inside
            })
            .collect()
    }
}
