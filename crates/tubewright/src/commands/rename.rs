//! `tubewright rename`: another name for something, in all files at once.

use super::{Done, Failure, print};
use crate::cli::{NameKindWord, Rename};
use tubewright_build::FileKind;
use tubewright_build::document::rename;
use tubewright_build::folder::Folder;

/// Renames and saves; all files or none.
pub(crate) fn run(arguments: &Rename) -> Result<Done, Failure> {
    let mut folder = Folder::open(&arguments.folder)?;
    let NameKindWord(kind) = arguments.kind;
    let changes = rename(
        folder.texts(),
        folder.text(FileKind::Plan),
        kind,
        &arguments.old,
        &arguments.new,
    )?;
    let files: Vec<_> = changes.files().map(FileKind::file_name).collect();
    folder.save(&changes)?;
    print(&format!(
        "“{}” is “{}” now, in {}\n",
        arguments.old,
        arguments.new,
        files.join(", ")
    ))?;
    Ok(Done::Clean)
}
