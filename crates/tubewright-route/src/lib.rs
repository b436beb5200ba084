//! The route solver.

pub mod cost;
pub mod form;
pub mod problem;
pub mod route;
mod solve;

pub use cost::CostModel;
pub use problem::RouteProblem;
pub use route::{Budget, Outcome, Piece, Progress, Route};
pub use solve::{ClosingPiece, EndError, RoundError, Rounded, ShopSteps, round_and_close, solve};
