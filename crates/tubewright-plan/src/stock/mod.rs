//! The buying and cutting plan of the chosen runs.

mod request;

pub use request::{RequestError, request_of};
