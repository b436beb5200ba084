//! The build folder: parsing with units and spans, the model, comment-keeping edits, atomic saves.

pub mod model;
mod problem;
pub mod quantity;
mod read;
pub mod resolved;
mod span;

pub use problem::{Missing, Problem, Severity};
pub use read::{ReadBuild, Texts, read};
pub use span::{FileKind, Span};
