//! One entry more in shop.toml.

use super::Failure;
use super::load::Loaded;
use tubewright_build::document::append_entry;
use tubewright_build::folder::Changes;
use tubewright_build::model::{Entry, EntryKind};
use tubewright_build::{FileKind, Span};

/// Appends what happened and reads the folder's model again.
///
/// # Errors
/// The date is none, the record cannot be read, or somebody changed it meanwhile.
pub(crate) fn record(loaded: &mut Loaded, on: &str, what: EntryKind) -> Result<(), Failure> {
    let entry = Entry {
        on: on.to_owned(),
        what,
        note: None,
        span: Span::none(),
    };
    record_entry(loaded, &entry)
}

/// The same for an entry that is made already.
///
/// # Errors
/// As [`record`].
pub(crate) fn record_entry(loaded: &mut Loaded, entry: &Entry) -> Result<(), Failure> {
    let text = append_entry(loaded.folder.text(FileKind::Shop), entry)?;
    let mut changes = Changes::new();
    changes.set(FileKind::Shop, text);
    loaded.folder.save(&changes)?;
    loaded.model = loaded.folder.read().model;
    Ok(())
}
