//! Test-only judge: rebuilds a run from the numbers on the card, sharing no code with the solver.
//!
//! Written from the definition of the route problem alone (frames carried along, balls on the
//! centre line, six rules, cost). It depends on no other crate of the project, so that an error in
//! the project's geometry or solver cannot hide itself here. It is slow and plain on purpose:
//! everything is sampled densely.
//!
//! Two levels: [`judge`] takes a problem and a solution as text and returns everything that is
//! wrong; [`walk`] and [`Solid::distance`] serve tests of whole plans that have other obstacles,
//! moving bodies or rounded pieces.

mod judge;
mod solid;
mod space;
mod walk;

pub use judge::{JudgeError, Verdict, Violation, judge};
pub use solid::Solid;
pub use space::Frame;
pub use walk::{Ball, Body, Piece, Walk, least_clearance, walk};
