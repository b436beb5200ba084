//! Findings: one value per rule checked, in the four states.
//!
//! A check never passes by omission. What was not or could not be checked is a finding of its own
//! state and is shown as loudly as a failure. The terminal, the page, the sheets and JSON all render
//! the same [`Finding`]; none of them decides anything.
//!
//! ```
//! use tubewright_check::{Board, Finding, Measured, Rule, State, Unit};
//!
//! let finding = Finding::measured_at_least(
//!     Rule::ClearanceToBody,
//!     "left bank to left rail",
//!     Measured { value: 31.0, plus_minus: Some(4.0), unit: Unit::Millimetre },
//!     25.0,
//! );
//! // 31 - 4 = 27 is still at least 25.
//! assert_eq!(finding.state, State::Pass);
//! assert_eq!(Board::new(vec![finding]).count(State::Pass), 1);
//! ```

mod board;
mod finding;
mod rule;

pub use board::{Board, Verdict};
pub use finding::{Finding, Limit, Measured, Place, State, Unit};
pub use rule::{Harm, Job, Rule};
