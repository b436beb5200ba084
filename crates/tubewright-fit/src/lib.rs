//! Fitting: what happens between sawn pieces and a welded run.
//!
//! - [`PoseSpread`]: how far a joint may lie and lean from where it should.
//! - [`budget`]: the errors of pieces and welds summed along the order of tacking, by where they come
//!   from, with what the check distances take out of them.
//! - [`check`]: which distances from marks to scribed places fix a joint best, along lines that nothing
//!   crosses, and how far each may be off before a gap is lost.
//! - [`built`]: readings at a tacked joint to its pose.
//! - [`reclose`]: the rest of a run brought to its end again from where a joint really is, with the least
//!   change to what is cut.
//! - [`order`]: in which order the pieces are tacked, and which one closes.
//!
//! It knows no file, no stock and no supplier. Lengths are millimetres, angles radians, a clock is
//! clockwise looking downstream.

pub mod budget;
pub mod built;
pub mod check;
pub mod order;
pub mod reclose;
mod spread;

pub use spread::{PoseSpread, Row};

/// Half-width of the two-sided interval that holds 19 in 20 of a normal distribution, in σ.
pub const NINETEEN_IN_TWENTY: f64 = 1.959_963_984_540_054;
