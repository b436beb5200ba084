//! The folder on disk. The only place of this crate that reads or writes files.

mod journal;
mod new_scan;
mod open;
mod save;
mod scan;
#[cfg(test)]
mod tests;

pub use new_scan::{NewScanError, SCANS};
pub use open::{Folder, FolderError};
pub use save::SaveError;
pub use scan::{LARGEST_SCAN, ScanFileError};

use crate::span::FileKind;
use std::collections::BTreeMap;

/// New texts for some of the files, to be saved together: all of them or none.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Changes {
    texts: BTreeMap<FileKind, String>,
    is_renaming: bool,
}

impl Changes {
    /// No changes yet.
    #[must_use]
    pub fn new() -> Self {
        Self::default()
    }

    /// Changes that carry a name through the files: the only ones that may touch what the record
    /// says already.
    pub(crate) fn renaming() -> Self {
        Self {
            texts: BTreeMap::new(),
            is_renaming: true,
        }
    }

    /// Gives a file a new text.
    pub fn set(&mut self, file: FileKind, text: String) {
        self.texts.insert(file, text);
    }

    /// The new text of a file, when it changes.
    #[must_use]
    pub fn text(&self, file: FileKind) -> Option<&str> {
        self.texts.get(&file).map(String::as_str)
    }

    /// The files that change, in order.
    pub fn files(&self) -> impl Iterator<Item = FileKind> + '_ {
        self.texts.keys().copied()
    }

    /// Whether nothing changes.
    #[must_use]
    pub fn is_empty(&self) -> bool {
        self.texts.is_empty()
    }
}
