//! Whole plans put before the independent walker.

#![allow(
    dead_code,
    clippy::expect_used,
    clippy::panic,
    clippy::indexing_slicing,
    clippy::print_stdout,
    reason = "test support: each binary uses a part of it, and what cannot be read may stop the test"
)]

pub(crate) mod bench;
pub(crate) mod clearance;
pub(crate) mod convert;
pub(crate) mod crossings;
pub(crate) mod hangers;
pub(crate) mod hours;
pub(crate) mod itself;
pub(crate) mod merged;
pub(crate) mod neighbours;
pub(crate) mod paper;
pub(crate) mod pieces;
pub(crate) mod prove;
pub(crate) mod random;
pub(crate) mod sensors;
pub(crate) mod solved;
