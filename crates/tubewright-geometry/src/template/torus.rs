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

/// How far before the tangent line a leg's cut may come out by rounding and still lie at it, in mm.
const AT_THE_TANGENT_MM: f64 = 1e-6;

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
            (leg >= -AT_THE_TANGENT_MM).then_some(rho * self.to_rad + leg.max(0.0))
        } else if section < self.from_rad {
            let leg = self.cut.leg_cut(self.from_rad).along_mm(q_rad)?;
            (leg <= AT_THE_TANGENT_MM).then_some(rho * self.from_rad + leg.min(0.0))
        } else {
            Some(rho * section)
        }
    }

    /// Where the cut passes a tangent line, and where it ceases to reach the lines round the tube.
    fn corners_rad(&self) -> Vec<f64> {
        let mut corners: Vec<f64> = [self.from_rad, self.to_rad]
            .into_iter()
            .flat_map(|tangent| crossings(|q| self.cut.section_rad(q).map(|p| p - tangent)))
            .collect();
        corners.extend(edges(|q| self.along_mm(q).is_some()));
        corners
    }
}

impl WrapCurve for TorusCut {
    fn tube_radius_mm(&self) -> f64 {
        self.tube_radius_mm
    }

    fn along_mm(&self, q_rad: f64) -> Option<f64> {
        self.section_rad(q_rad).map(|p| p * self.rho_mm(q_rad))
    }

    /// Where the plane ceases to reach the lines.
    fn corners_rad(&self) -> Vec<f64> {
        edges(|q| self.section_rad(q).is_some())
    }
}

/// Lines round the tube that are looked at before halving begins.
const STEPS: u32 = 720;
/// Halvings that bring half a degree down to what an `f64` can tell apart.
const HALVINGS: u32 = 60;

fn step_rad(i: u32) -> f64 {
    math::TAU * f64::from(i) / f64::from(STEPS)
}

/// The last angle on the side of `inside`, between one where `holds` and one where it does not.
fn last_inside(mut inside: f64, mut outside: f64, holds: impl Fn(f64) -> bool) -> f64 {
    for _ in 0..HALVINGS {
        let middle = 0.5 * (inside + outside);
        if holds(middle) {
            inside = middle;
        } else {
            outside = middle;
        }
    }
    inside
}

/// Angles in `[0, 2π]`, still cut, beside which the curve is not cut.
fn edges(is_cut: impl Fn(f64) -> bool) -> Vec<f64> {
    (0..STEPS)
        .map(|i| (step_rad(i), step_rad(i + 1)))
        .filter(|&(a, b)| is_cut(a) != is_cut(b))
        .map(|(a, b)| {
            let (inside, outside) = if is_cut(a) { (a, b) } else { (b, a) };
            last_inside(inside, outside, &is_cut)
        })
        .collect()
}

/// Angles in `[0, 2π]` at which `value` passes zero, those too where it comes back within a step: about
/// every line that lies nearer to zero than its neighbours the nearest place is looked for by thirds.
fn crossings(value: impl Fn(f64) -> Option<f64>) -> Vec<f64> {
    let is_above = |q: f64| value(q).map(|v| v > 0.0);
    let passes = |a: f64, b: f64| match (is_above(a), is_above(b)) {
        (Some(here), Some(there)) if here != there => {
            Some(last_inside(a, b, |q| is_above(q) == Some(here)))
        }
        _ => None,
    };
    let mut out = Vec::new();
    for i in 0..STEPS {
        let (before, here, after) = (step_rad(i) - step_rad(1), step_rad(i), step_rad(i + 1));
        if let Some(q) = passes(here, after) {
            out.push(q);
        }
        let Some([u, v, w]) = value(before)
            .zip(value(here))
            .zip(value(after))
            .map(|((u, v), w)| [u, v, w])
        else {
            continue;
        };
        let is_near = (u > 0.0) == (v > 0.0)
            && (v > 0.0) == (w > 0.0)
            && v.abs() <= u.abs()
            && v.abs() <= w.abs();
        if is_near {
            let beyond = nearest(before, after, |q| {
                value(q).map_or(f64::INFINITY, |x| x * v.signum())
            });
            out.extend(passes(before, beyond));
            out.extend(passes(beyond, after));
        }
    }
    out.retain(|q| (0.0..=math::TAU).contains(q));
    out
}

/// Where `height` is least between two angles over which it has one minimum.
fn nearest(mut from: f64, mut to: f64, height: impl Fn(f64) -> f64) -> f64 {
    for _ in 0..HALVINGS {
        let third = (to - from) / 3.0;
        if height(from + third) <= height(to - third) {
            to -= third;
        } else {
            from += third;
        }
    }
    0.5 * (from + to)
}
