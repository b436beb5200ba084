//! What a steered and sprung tyre sweeps.

use super::{Freedom, Motion, furthest_along};
use crate::solid::Solid;
use crate::vector::{Point, UnitVector};

/// A tyre as a flat-ended cylinder on a kingpin.
///
/// Camber gain and tyre bulge are not modelled: add the dynamic allowance to the gap (25 mm is
/// common practice, no source).
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct SteeredTyre {
    /// Middle of the tyre, straight ahead, at ride height.
    pub centre: Point,
    /// Direction of the wheel's axle, straight ahead.
    pub axle: UnitVector,
    /// Unloaded radius in mm, > 0.
    pub radius_mm: f64,
    /// Width in mm, > 0.
    pub width_mm: f64,
    /// A place on the kingpin axis.
    pub on_kingpin: Point,
    /// Direction of the kingpin axis.
    pub kingpin: UnitVector,
    /// Greatest steering angle either way in radians.
    pub max_steer_rad: f64,
    /// Greatest bump from ride height in mm, straight up.
    pub bump_mm: f64,
    /// Greatest droop from ride height in mm, straight down.
    pub droop_mm: f64,
}

/// The extremes of a swept tyre in car axes (x rearward, y right, z up), in mm.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct TyreEnvelope {
    /// Most forward x.
    pub front_x_mm: f64,
    /// Most rearward x.
    pub rear_x_mm: f64,
    /// Most leftward y: the inboard side of a right wheel.
    pub left_y_mm: f64,
    /// Most rightward y: the inboard side of a left wheel.
    pub right_y_mm: f64,
    /// Highest z.
    pub top_z_mm: f64,
    /// Lowest z.
    pub bottom_z_mm: f64,
}

impl SteeredTyre {
    /// The tyre as a body.
    #[must_use]
    pub fn solid(&self) -> Solid {
        let half = self.axle * (0.5 * self.width_mm);
        Solid::Cylinder {
            a: self.centre - half,
            b: self.centre + half,
            radius: self.radius_mm,
        }
    }

    /// Its carrier: steering first, then bump and droop carry the kingpin along.
    #[must_use]
    pub fn motion(&self) -> Motion {
        Motion {
            freedoms: vec![
                Freedom::Turn {
                    on_axis: self.on_kingpin,
                    axis: self.kingpin,
                    min_rad: -self.max_steer_rad,
                    max_rad: self.max_steer_rad,
                },
                Freedom::Shift {
                    direction: UnitVector::Z,
                    min_mm: -self.droop_mm,
                    max_mm: self.bump_mm,
                },
            ],
        }
    }
}

/// The extremes of the tyre over steering, bump and droop; never inside the true ones, and outside by
/// `tolerance_mm` (> 0) at most.
#[must_use]
pub fn tyre_envelope(tyre: &SteeredTyre, tolerance_mm: f64) -> TyreEnvelope {
    let (solid, motion) = (tyre.solid(), tyre.motion());
    let reach = |direction: UnitVector| {
        furthest_along(&solid, &motion, direction, tolerance_mm)
            .map_or(f64::INFINITY, |e| e.reach_mm)
    };
    TyreEnvelope {
        front_x_mm: -reach(-UnitVector::X),
        rear_x_mm: reach(UnitVector::X),
        left_y_mm: -reach(-UnitVector::Y),
        right_y_mm: reach(UnitVector::Y),
        top_z_mm: reach(UnitVector::Z),
        bottom_z_mm: -reach(-UnitVector::Z),
    }
}
