//! The route solver: runs of straights, stock bends and components from a start to an end, through
//! crossovers where there are any, clear of every body, at the least price that the effort finds.
//!
//! [`solve`] returns alternatives with a price that no route can undercut, or a proof that nothing
//! fits, or says that nothing was found in this effort. [`round_and_close`] brings a route to the
//! shop's steps. The problem ([`RouteProblem`]) and the objective ([`CostModel`]) are arguments;
//! [`form`] reads and writes the file form of route problems.
//!
//! Method: random tangent polylines round guide paths through a clearance field are brought to exact
//! closure (Newton, least change), improved by sequential quadratic programming over sizes, and then
//! over layouts (which straights are there, which bends are of a stock angle). No file, clock or
//! thread count is looked at: effort is counted in work units.

pub mod cost;
pub mod form;
pub mod loss;
mod part;
pub mod problem;
pub mod route;
mod solve;

pub use cost::CostModel;
pub use problem::RouteProblem;
pub use route::{Budget, Outcome, Piece, Progress, Route};
pub use solve::{
    ClosingPiece, EndError, RoundError, Rounded, ShopSteps, fits, round_and_close, solve,
};
