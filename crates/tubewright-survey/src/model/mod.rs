//! The model: unknowns, their columns, and each reading as an equation with its derivatives.

mod angles;
mod layout;
mod rows;
mod state;
mod tapes;
mod writer;

pub(crate) use layout::Layout;
pub(crate) use rows::{RowOwner, Rows, linearise, linearise_into, linearise_kind};
pub(crate) use state::{Facing, Floor, Pose, State, local_place};

/// Lever in mm that turns a tilt (rad) of a floor or of the car plane into an unknown of the size of
/// a millimetre: half the length of a car, so that all unknowns are of like size and damping by a
/// multiple of the identity is fair.
pub(crate) const TILT_LEVER_MM: f64 = 1000.0;

/// How far a shop floor leans from level, 1 σ in radians: half a degree (common practice, no source).
/// Only ties the floor to the plumb line in a set-up that has readings of both.
pub(crate) const FLOOR_LEVEL_SIGMA_RAD: f64 = 0.5 * core::f64::consts::PI / 180.0;

#[cfg(test)]
mod tests;
