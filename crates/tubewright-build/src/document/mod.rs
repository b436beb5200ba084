//! Edits that keep comments, order and spacing of everything they do not touch.

mod append;
mod dress;
mod edit;
mod in_json;
mod rename;
#[cfg(test)]
mod tests;
mod written;

pub use append::{AppendError, append_entry};
pub use edit::{Document, EditError, ElementRef};
pub use rename::{NameKind, RenameError, rename};
pub use written::Written;
