//! The file form `route-problem/1`: reading problems, writing solutions. Lengths in mm, angles in
//! degrees there; mm and radians in the model.

mod mirror;
mod read;
mod write;

pub use read::{FormError, read_problem};
pub use write::write_outcome;
