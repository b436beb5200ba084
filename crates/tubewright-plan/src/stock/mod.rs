//! The buying and cutting plan of the chosen runs.

mod request;
mod wanted;
mod words;

pub use request::{RequestError, request_of};
pub use wanted::{Wanted, wanted};
pub use words::{missing_words, proof_words, source_words, trouble_words};
