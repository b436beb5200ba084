//! Plane and cylinder: mitres.

use super::curve::WrapCurve;
use crate::math;
use crate::vector::{Point, UnitVector};

/// A mitre: a tube cut by a plane, `y(q) = r tan f (1 - cos q)` above the shortest line, `q = 0` at
/// the short side. For a joint of two equal tubes that turns by `A` take `f = A/2`; the second tube
/// has the same template, turned by half a turn.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Mitre {
    /// Radius of the tube in mm.
    pub radius_mm: f64,
    /// Mitre angle in radians, from square (0) to below π/2.
    pub mitre_rad: f64,
}

impl Mitre {
    /// The mitre of a joint that turns by `turn_rad`.
    #[must_use]
    pub fn for_turn(radius_mm: f64, turn_rad: f64) -> Self {
        Self {
            radius_mm,
            mitre_rad: 0.5 * turn_rad,
        }
    }
}

impl WrapCurve for Mitre {
    fn tube_radius_mm(&self) -> f64 {
        self.radius_mm
    }

    fn along_mm(&self, q_rad: f64) -> Option<f64> {
        // 1 - cos q without cancellation.
        let s = math::sin(0.5 * q_rad);
        Some(self.radius_mm * math::tan(self.mitre_rad) * 2.0 * s * s)
    }
}

/// Any plane through a straight tube, in the axes that tube and plane are given in: the mitre of a
/// leg that a bend's cut runs out into.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct PlaneCut {
    /// Where lengths along the tube start: a place on its axis.
    pub origin: Point,
    /// Direction of the tube.
    pub along: UnitVector,
    /// Direction of the line `q = 0`, square to the tube.
    pub zero: UnitVector,
    /// Direction of the line `q` = a quarter turn, square to both.
    pub quarter: UnitVector,
    /// Radius of the tube in mm.
    pub radius_mm: f64,
    /// Direction square to the plane.
    pub normal: UnitVector,
    /// The plane is `normal · p = offset`, in mm.
    pub offset_mm: f64,
}

impl WrapCurve for PlaneCut {
    fn tube_radius_mm(&self) -> f64 {
        self.radius_mm
    }

    fn along_mm(&self, q_rad: f64) -> Option<f64> {
        let (sin, cos) = math::sin_cos(q_rad);
        let foot = self.origin
            + self.zero * (self.radius_mm * cos)
            + self.quarter * (self.radius_mm * sin);
        let climb = self.normal.dot(self.along.vector());
        let short = self.offset_mm - self.normal.dot(foot.to_vector());
        // A plane along the tube cuts no line, or all of it.
        (climb.abs() > 1e-12).then(|| short / climb)
    }
}
