//! Test-only judge: rebuilds a run from the numbers on the card, sharing no code with the solver.
//!
//! Written from the definition of the route problem alone (frames carried along, balls on the
//! centre line, six rules, cost). It depends on no other crate of the project, so that an error in
//! the project's geometry or solver cannot hide itself here. It is slow and plain on purpose:
//! everything is sampled densely.
//!
//! [`judge`] takes a route problem and a solution as text and returns everything that is wrong. For
//! whole plans [`saw`] follows the cut cards, [`assemble`] puts the parts one after the other by their
//! fit marks, and [`least_gap_moving`] looks for the tightest place over everything that moves.

mod assemble;
mod can;
mod card;
mod judge;
mod moving;
mod solid;
mod space;
mod text;
mod walk;

pub use assemble::{Assembled, Fit, Next, Roll, apart, assemble};
pub use can::{Can, Section, can_balls};
pub use card::{Card, End, MadePart, Saw, SawCut, Sawn, StockItem, saw};
pub use judge::{Verdict, Violation, judge};
pub use moving::{Carrier, Freedom, Tightest, least_gap_moving};
pub use solid::{Solid, Surface};
pub use space::Frame;
pub use text::JudgeError;
pub use walk::{Ball, Body, Piece, Walk, least_clearance, walk};
