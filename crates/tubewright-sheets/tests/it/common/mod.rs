//! Hand-made input that tests and the example share.

#![expect(
    clippy::unwrap_used,
    clippy::expect_used,
    reason = "the input is test data; a slip in it shall stop the test"
)]

mod bench;
mod cut;
mod estate;
mod wraps;

pub(crate) use bench::cards;
pub(crate) use cut::cut_pieces;
pub(crate) use estate::{estate, title_block};
pub(crate) use wraps::{A4_UPRIGHT, templates};
