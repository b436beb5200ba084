//! Fitting.

mod budget;
mod built;
mod check;
mod order;
mod reclose;
mod runs;
