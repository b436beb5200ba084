//! Least squares: the general solver, the gauge of a free network, and the adjustment of one state.

mod core;
pub(crate) mod gauge;
pub mod least_squares;
pub(crate) mod network;
mod polish;
pub(crate) mod sparse;
