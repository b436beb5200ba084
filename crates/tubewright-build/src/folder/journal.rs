//! Several files change together or not at all.
//!
//! New texts are written beside the files first. The journal, which names them with the hashes of
//! old and new, is renamed into place as the one step that decides: before it the save never
//! happened, after it the save is finished by whoever opens the folder next.

use super::open::{ContentHash, FolderError, disk, hash_of, remove, sync_folder};
use crate::span::FileKind;
use std::fs::{self, File};
use std::io::{self, Write};
use std::path::{Path, PathBuf};

const JOURNAL: &str = ".tubewright-save";
const JOURNAL_NEW: &str = ".tubewright-save.new";
const HEAD: &str = "tubewright-save/1";

/// One file of a save.
pub(super) struct Step {
    pub(super) file: FileKind,
    pub(super) old: Option<ContentHash>,
    pub(super) new: ContentHash,
}

/// Where the new text of a file waits.
pub(super) fn waiting(folder: &Path, file: FileKind) -> PathBuf {
    folder.join(format!(".{}.tubewright-new", file.file_name()))
}

/// Writes bytes and makes them last.
pub(super) fn write_lasting(path: &Path, bytes: &[u8]) -> Result<(), FolderError> {
    let mut file = File::create(path).map_err(disk(path))?;
    file.write_all(bytes).map_err(disk(path))?;
    file.sync_all().map_err(disk(path))
}

pub(super) fn write(folder: &Path, steps: &[Step]) -> Result<(), FolderError> {
    let mut text = format!("{HEAD}\n");
    for step in steps {
        let old = step
            .old
            .map_or_else(|| "none".to_owned(), |hash| hex(&hash));
        text.push_str(&format!("{} {old} {}\n", step.file, hex(&step.new)));
    }
    // A hash over the whole tells a torn journal from a whole one.
    let seal = hex(&hash_of(text.as_bytes()));
    text.push_str(&format!("seal {seal}\n"));
    let new = folder.join(JOURNAL_NEW);
    write_lasting(&new, text.as_bytes())?;
    let journal = folder.join(JOURNAL);
    fs::rename(&new, &journal).map_err(disk(&journal))?;
    sync_folder(folder)
}

/// Puts the waiting texts in place and removes the journal. Done twice it does nothing more.
pub(super) fn finish(folder: &Path, steps: &[Step]) -> Result<(), FolderError> {
    for step in steps {
        let target = folder.join(step.file.file_name());
        let new = waiting(folder, step.file);
        let here = hash_at(&target)?;
        if here == Some(step.new) {
            remove(&new)?;
            continue;
        }
        let is_whole = hash_at(&new)? == Some(step.new);
        if !is_whole {
            // The text went in already and somebody has changed it since: theirs is the later.
            continue;
        }
        if here != step.old {
            return Err(FolderError::Conflict {
                file: step.file,
                kept: new,
            });
        }
        fs::rename(&new, &target).map_err(disk(&target))?;
    }
    sync_folder(folder)?;
    remove(&folder.join(JOURNAL))?;
    sync_folder(folder)
}

/// Finishes an interrupted save, or removes what one left that never came to be.
pub(super) fn recover(folder: &Path) -> Result<(), FolderError> {
    let journal = folder.join(JOURNAL);
    let text = match fs::read_to_string(&journal) {
        Ok(text) => Some(text),
        Err(error) if error.kind() == io::ErrorKind::NotFound => None,
        Err(error) => return Err(disk(&journal)(error)),
    };
    let steps = text.as_deref().and_then(parse);
    if let Some(steps) = steps {
        finish(folder, &steps)?;
    } else if text.is_some() {
        remove(&journal)?;
    }
    // Without a journal these belong to a save that never came to be.
    let strays = FileKind::ALL.map(|file| waiting(folder, file));
    for stray in strays.iter().chain([&folder.join(JOURNAL_NEW)]) {
        if stray.exists() {
            remove(stray)?;
        }
    }
    Ok(())
}

fn parse(text: &str) -> Option<Vec<Step>> {
    let (body, seal) = text.trim_end().rsplit_once('\n')?;
    let sealed = format!("{body}\n");
    if seal.strip_prefix("seal ")? != hex(&hash_of(sealed.as_bytes())) {
        return None;
    }
    let mut lines = body.lines();
    if lines.next()? != HEAD {
        return None;
    }
    lines
        .map(|line| {
            let mut words = line.split(' ');
            let name = words.next()?;
            let file = FileKind::ALL.into_iter().find(|f| f.file_name() == name)?;
            let old = match words.next()? {
                "none" => None,
                old => Some(unhex(old)?),
            };
            let new = unhex(words.next()?)?;
            Some(Step { file, old, new })
        })
        .collect()
}

pub(super) fn hash_at(path: &Path) -> Result<Option<ContentHash>, FolderError> {
    match fs::read(path) {
        Ok(bytes) => Ok(Some(hash_of(&bytes))),
        Err(error) if error.kind() == io::ErrorKind::NotFound => Ok(None),
        Err(error) => Err(disk(path)(error)),
    }
}

fn hex(hash: &ContentHash) -> String {
    hash.iter().map(|byte| format!("{byte:02x}")).collect()
}

fn unhex(text: &str) -> Option<ContentHash> {
    let bytes: Option<Vec<u8>> = (0..32)
        .map(|at| {
            let pair = text.get(2 * at..2 * at + 2)?;
            u8::from_str_radix(pair, 16).ok()
        })
        .collect();
    (text.len() == 64)
        .then_some(bytes?.try_into().ok())
        .flatten()
}
