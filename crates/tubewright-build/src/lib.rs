//! The build folder: parsing with units and spans, the model, comment-keeping edits, atomic saves.

pub mod document;
pub mod folder;
pub mod hash;
mod keys;
pub mod model;
mod problem;
pub mod quantity;
mod read;
pub mod resolved;
mod schema;
mod span;

pub use problem::{Missing, Problem, Severity};
pub use read::{ReadBuild, Texts, read};
pub use schema::json_schema;
pub use span::{FileKind, Span};
