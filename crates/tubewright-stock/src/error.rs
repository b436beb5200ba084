//! Why no stock plan came out.

use crate::cutting::SolveError;
use crate::verify::Fault;

/// Why no stock plan came out. A job that cannot be made is no error: its plan says what is
/// missing.
#[derive(Clone, Debug, PartialEq, thiserror::Error)]
#[non_exhaustive]
pub enum PlanError {
    /// A name that stands for nothing.
    #[error("{what} \"{name}\" is not in the stock; add it or correct the name")]
    Unknown {
        /// Item or supplier.
        what: &'static str,
        /// The name.
        name: String,
    },
    /// A name used twice.
    #[error("{what} \"{name}\" is there twice; give each its own name")]
    Twice {
        /// Item, supplier, on hand or mark.
        what: &'static str,
        /// The name.
        name: String,
    },
    /// A piece or stock item without a size.
    #[error("{what} \"{name}\" has no usable size: {detail}")]
    NoSize {
        /// Piece, item or on hand.
        what: &'static str,
        /// The name.
        name: String,
        /// Which size, with its value.
        detail: String,
    },
    /// Prices in two currencies.
    #[error("prices are in {first} and {second}; give all in one currency")]
    Currencies {
        /// One.
        first: String,
        /// Another.
        second: String,
    },
    /// The solver failed.
    #[error(transparent)]
    Solve(#[from] SolveError),
    /// The plan failed its own proof and is withheld.
    #[error("the plan failed its check and is withheld: {}", .faults.first().map_or_else(String::new, ToString::to_string))]
    Unverified {
        /// What is wrong with it.
        faults: Vec<Fault>,
    },
}
