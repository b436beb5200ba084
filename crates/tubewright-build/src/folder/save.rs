use super::Changes;
use super::journal::{self, Step, waiting, write_lasting};
use super::open::{Folder, FolderError, Kept, disk, hash_of, lock, sync_folder};
use crate::span::FileKind;
use std::fs;
use thiserror::Error;

/// Why nothing was saved; the files on disk are as they were.
#[derive(Debug, Error)]
#[non_exhaustive]
pub enum SaveError {
    /// Somebody changed a file since it was read; saving would lose that.
    #[error(
        "{file} was changed on disk since it was read; open the folder again and repeat the edit"
    )]
    ChangedOnDisk {
        /// The file.
        file: FileKind,
    },
    /// The record would lose something that it says.
    #[error("shop.toml is only ever added to; the edit would change what it says already")]
    RecordRewritten,
    /// A text is larger than would be read again.
    #[error("{file} would become {bytes} bytes long, more than is read again")]
    TooLarge {
        /// The file.
        file: FileKind,
        /// Its size.
        bytes: usize,
    },
    /// The disk said no.
    #[error(transparent)]
    Folder(#[from] FolderError),
}

impl Folder {
    /// Saves the changes, all of them or none: each new text is written beside its file, made to
    /// last, and renamed over it. A kill at any moment leaves every file either as it was or as it
    /// was to be, and all of them alike once the folder is opened again.
    ///
    /// # Errors
    /// A [`SaveError`]; the folder in memory is then unchanged.
    pub fn save(&mut self, changes: &Changes) -> Result<(), SaveError> {
        let lock = lock(&self.path);
        journal::recover(&self.path)?;
        self.check(changes)?;
        let steps: Vec<Step> = changes
            .files()
            .filter_map(|file| {
                let new = hash_of(changes.text(file)?.as_bytes());
                let old = self.kept(file).map(|kept| kept.hash);
                (old != Some(new)).then_some(Step { file, old, new })
            })
            .collect();
        for step in &steps {
            let text = changes.text(step.file).unwrap_or_default();
            write_lasting(&waiting(&self.path, step.file), text.as_bytes())?;
        }
        match steps.as_slice() {
            [] => {}
            // One rename is all or nothing by itself.
            [only] => {
                let target = self.path.join(only.file.file_name());
                fs::rename(waiting(&self.path, only.file), &target).map_err(disk(&target))?;
                sync_folder(&self.path)?;
            }
            several => {
                journal::write(&self.path, several)?;
                journal::finish(&self.path, several)?;
            }
        }
        drop(lock);
        if changes.text(FileKind::Plan).is_some() {
            self.plan_trouble = None;
        }
        for step in steps {
            let kept = changes.text(step.file).map(|text| Kept {
                text: text.to_owned(),
                hash: step.new,
            });
            let slots = FileKind::ALL.iter().zip(&mut self.files);
            for (_, slot) in slots.filter(|(file, _)| **file == step.file) {
                slot.clone_from(&kept);
            }
        }
        Ok(())
    }

    fn check(&self, changes: &Changes) -> Result<(), SaveError> {
        for file in changes.files() {
            // A plan that could not be read holds nothing that could be lost.
            if file == FileKind::Plan && self.plan_trouble.is_some() {
                continue;
            }
            let on_disk = journal::hash_at(&self.path.join(file.file_name()))?;
            if on_disk != self.kept(file).map(|kept| kept.hash) {
                return Err(SaveError::ChangedOnDisk { file });
            }
            let text = changes.text(file).unwrap_or_default();
            if file != FileKind::Plan && text.len() > crate::read::LARGEST_TOML {
                return Err(SaveError::TooLarge {
                    file,
                    bytes: text.len(),
                });
            }
        }
        let (old, new) = (self.text(FileKind::Shop), changes.text(FileKind::Shop));
        if let (Some(old), Some(new), false) = (old, new, changes.is_renaming)
            && !new.starts_with(old)
        {
            return Err(SaveError::RecordRewritten);
        }
        Ok(())
    }
}
