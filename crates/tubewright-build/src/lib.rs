//! The build folder: parsing with units and spans, the model, comment-keeping edits, atomic saves.
//!
//! [`read`] turns the texts of a folder into a checked [`model::Model`] with every problem in one go;
//! [`resolved`] fills in common practice and says where; [`hash`] tells what a stage read;
//! [`document`] edits the texts and keeps comments; [`folder`] alone touches the disk.
//!
//! ```
//! use tubewright_build::{Texts, read};
//!
//! let build = r#"
//! format = "tubewright-build/1"
//! name = "Estate"
//! [[mark]]
//! name = "A left"
//! [[mark]]
//! name = "B left"
//! [[reading]]
//! number = 1
//! kind = "tape"
//! from = "A left"
//! to = "B lefft"
//! reads = "5 ft 10-15/16 in"
//! "#;
//! let read = read(Texts { build: Some(build), ..Texts::default() });
//! let problem = &read.problems[0];
//! assert_eq!((problem.line, problem.column), (12, 6));
//! assert_eq!(problem.did_you_mean.as_deref(), Some("B left"));
//! assert_eq!(read.model.build.marks.len(), 2, "the rest opens all the same");
//! ```

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
