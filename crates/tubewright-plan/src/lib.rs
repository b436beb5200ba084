//! The stages from readings to saw marks, each a pure function of the earlier ones.
//!
//! This is the one place where a build document meets geometry: [`survey::measure`] adjusts the
//! readings, [`bodies::place_bodies`] makes solids of what is in the way, [`routes`] puts the runs to
//! the solver and walks the rounded pieces, [`checks`] judges the result. It reads no file and knows
//! no clock; scans come in as bytes, dates as arguments.

pub mod bodies;
pub mod checks;
pub mod errands;
pub mod figures;
pub mod fit;
pub mod flow;
pub mod frozen;
pub mod hangers;
pub mod held;
pub mod lengths;
pub mod packet;
pub mod places;
pub mod plan_file;
pub mod ranking;
pub mod routes;
pub mod scene;
pub mod sensors;
pub mod stages;
pub mod stock;
pub mod survey;
