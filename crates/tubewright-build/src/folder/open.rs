use super::journal;
use crate::read::{LARGEST_TOML, ReadBuild, Texts, read};
use crate::span::FileKind;
use sha2::{Digest, Sha256};
use std::fs::{self, File};
use std::io::{self, Read};
use std::path::{Path, PathBuf};
use thiserror::Error;

/// Largest `plan.json`.
const LARGEST_PLAN: usize = 50_000_000;

/// A build folder as it was when it was opened or last saved.
#[derive(Clone, Debug)]
pub struct Folder {
    pub(super) path: PathBuf,
    pub(super) files: [Option<Kept>; 4],
    pub(super) plan_trouble: Option<String>,
}

/// A file's text with the hash of its bytes.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(super) struct Kept {
    pub(super) text: String,
    pub(super) hash: ContentHash,
}

/// SHA-256 of a file's bytes.
pub(super) type ContentHash = [u8; 32];

/// Why a folder could not be opened.
#[derive(Debug, Error)]
#[non_exhaustive]
pub enum FolderError {
    /// It is not there or is no folder.
    #[error("{} is no folder", .path.display())]
    NoFolder {
        /// The path.
        path: PathBuf,
    },
    /// None of the four files is in it.
    #[error("{} holds none of build.toml, stock.toml, shop.toml, plan.json", .path.display())]
    NoBuild {
        /// The path.
        path: PathBuf,
    },
    /// A file is larger than any such file could be.
    #[error(
        "{file} is {} MB long and was not read: hundreds of readings take a tenth of a megabyte, and \
         more than {} MB are no such file; look whether a scan or another file was saved under this \
         name (nothing in it was changed)",
        megabytes(*.bytes),
        .most / 1_000_000
    )]
    TooLarge {
        /// The file.
        file: FileKind,
        /// Its size.
        bytes: u64,
        /// The limit, bytes.
        most: usize,
    },
    /// A file is not UTF-8 text.
    #[error(
        "{file}:{line}:{column}: the byte 0x{byte:02X} is no UTF-8 text, so that no name and no sign \
         after it is sure; save the file as UTF-8 (an editor calls it its encoding)"
    )]
    NotText {
        /// The file.
        file: FileKind,
        /// The line of the first byte that is wrong, from 1.
        line: usize,
        /// Its column in letters, from 1.
        column: usize,
        /// The byte.
        byte: u8,
    },
    /// A save was interrupted, and somebody changed a file before it was finished.
    #[error(
        "a save was interrupted and {file} was changed since; what was to be saved lies in {}: \
         compare the two, then remove it",
        .kept.display()
    )]
    Conflict {
        /// The file.
        file: FileKind,
        /// Where the text lies that was to be saved.
        kept: PathBuf,
    },
    /// The disk said no.
    #[error("{}: {source}", .path.display())]
    Disk {
        /// The path.
        path: PathBuf,
        /// What it said.
        source: io::Error,
    },
}

impl Folder {
    /// Opens a folder, after finishing a save that was interrupted.
    ///
    /// # Errors
    /// A [`FolderError`]. Files that are not there are no error, as long as one of the four is.
    pub fn open(path: &Path) -> Result<Self, FolderError> {
        if !path.is_dir() {
            return Err(FolderError::NoFolder {
                path: path.to_owned(),
            });
        }
        let lock = lock(path);
        journal::recover(path)?;
        let mut files = [const { None }; 4];
        let mut plan_trouble = None;
        for (slot, file) in files.iter_mut().zip(FileKind::ALL) {
            *slot = match read_file(path, file) {
                // The plan is derived: one that cannot be read is as good as none.
                Err(error) if file == FileKind::Plan => {
                    plan_trouble = Some(error.to_string());
                    None
                }
                read => read?,
            };
        }
        drop(lock);
        if files.iter().all(Option::is_none) && plan_trouble.is_none() {
            return Err(FolderError::NoBuild {
                path: path.to_owned(),
            });
        }
        Ok(Self {
            path: path.to_owned(),
            files,
            plan_trouble,
        })
    }

    /// A folder that holds nothing yet; [`Folder::save`] writes the first files.
    ///
    /// # Errors
    /// [`FolderError::NoFolder`] when the folder itself is not there.
    pub fn empty(path: &Path) -> Result<Self, FolderError> {
        if !path.is_dir() {
            return Err(FolderError::NoFolder {
                path: path.to_owned(),
            });
        }
        Ok(Self {
            path: path.to_owned(),
            files: [const { None }; 4],
            plan_trouble: None,
        })
    }

    /// Where it is.
    #[must_use]
    pub fn path(&self) -> &Path {
        &self.path
    }

    /// The text of a file as read or last saved; `None` when it is not there.
    #[must_use]
    pub fn text(&self, file: FileKind) -> Option<&str> {
        self.kept(file).map(|kept| kept.text.as_str())
    }

    /// Why `plan.json` counts as not there although it is: too large, no text, not readable. The next
    /// save of a plan puts a sound one in its place.
    #[must_use]
    pub fn plan_trouble(&self) -> Option<&str> {
        self.plan_trouble.as_deref()
    }

    pub(super) fn kept(&self, file: FileKind) -> Option<&Kept> {
        FileKind::ALL
            .iter()
            .zip(&self.files)
            .find(|(kind, _)| **kind == file)
            .and_then(|(_, kept)| kept.as_ref())
    }

    /// The texts of the three files that people write.
    #[must_use]
    pub fn texts(&self) -> Texts<'_> {
        Texts {
            build: self.text(FileKind::Build),
            stock: self.text(FileKind::Stock),
            shop: self.text(FileKind::Shop),
        }
    }

    /// The checked model with its problems and what is missing.
    #[must_use]
    pub fn read(&self) -> ReadBuild {
        read(self.texts())
    }

    /// The files that somebody else has changed, added or removed since they were read.
    ///
    /// # Errors
    /// A [`FolderError`] when a file cannot be read any more.
    pub fn changed_on_disk(&self) -> Result<Vec<FileKind>, FolderError> {
        let mut changed = Vec::new();
        for file in FileKind::ALL {
            if file == FileKind::Plan && self.plan_trouble.is_some() {
                continue;
            }
            let now = read_file(&self.path, file)?.map(|kept| kept.hash);
            if now != self.kept(file).map(|kept| kept.hash) {
                changed.push(file);
            }
        }
        Ok(changed)
    }
}

/// Holds the folder against a second saver for as long as it lives; where the system cannot lock a
/// folder, the comparison of contents before each save must do.
pub(super) fn lock(path: &Path) -> Option<File> {
    let folder = File::open(path).ok()?;
    folder.lock().ok()?;
    Some(folder)
}

pub(super) fn hash_of(bytes: &[u8]) -> ContentHash {
    Sha256::digest(bytes).into()
}

pub(super) fn disk(path: &Path) -> impl FnOnce(io::Error) -> FolderError {
    let path = path.to_owned();
    move |source| FolderError::Disk { path, source }
}

pub(super) fn read_file(folder: &Path, file: FileKind) -> Result<Option<Kept>, FolderError> {
    let path = folder.join(file.file_name());
    let most = match file {
        FileKind::Plan => LARGEST_PLAN,
        _ => LARGEST_TOML,
    };
    let opened = match File::open(&path) {
        Ok(opened) => opened,
        Err(error) if error.kind() == io::ErrorKind::NotFound => return Ok(None),
        Err(error) => return Err(disk(&path)(error)),
    };
    let bytes = opened.metadata().map_err(disk(&path))?.len();
    let limit = u64::try_from(most).unwrap_or(u64::MAX);
    if bytes > limit {
        return Err(FolderError::TooLarge { file, bytes, most });
    }
    // The file may grow between the two calls: the limit holds for what is read as well.
    let mut content = Vec::new();
    opened
        .take(limit + 1)
        .read_to_end(&mut content)
        .map_err(disk(&path))?;
    if content.len() > most {
        return Err(FolderError::TooLarge {
            file,
            bytes: limit + 1,
            most,
        });
    }
    let hash = hash_of(&content);
    let text = String::from_utf8(content).map_err(|error| no_text(file, &error))?;
    Ok(Some(Kept { text, hash }))
}

fn no_text(file: FileKind, error: &std::string::FromUtf8Error) -> FolderError {
    let (sound, broken) = error.as_bytes().split_at(error.utf8_error().valid_up_to());
    let sound = String::from_utf8_lossy(sound);
    FolderError::NotText {
        file,
        line: sound.matches('\n').count() + 1,
        column: sound
            .rsplit('\n')
            .next()
            .map_or(0, |line| line.chars().count())
            + 1,
        byte: broken.first().copied().unwrap_or_default(),
    }
}

/// A size in megabytes with one decimal, never rounded to less than it is.
fn megabytes(bytes: u64) -> String {
    let tenths = bytes.div_ceil(100_000);
    format!("{}.{}", tenths / 10, tenths % 10)
}

/// Makes what was renamed in a folder last beyond a loss of power, where the system can.
pub(super) fn sync_folder(path: &Path) -> Result<(), FolderError> {
    let Ok(folder) = File::open(path) else {
        return Ok(());
    };
    match folder.sync_all() {
        Err(error) if error.kind() == io::ErrorKind::Unsupported => Ok(()),
        Err(error) if error.kind() == io::ErrorKind::InvalidInput => Ok(()),
        done => done.map_err(disk(path)),
    }
}

/// Removes a file; one that is not there is no error.
pub(super) fn remove(path: &Path) -> Result<(), FolderError> {
    match fs::remove_file(path) {
        Err(error) if error.kind() != io::ErrorKind::NotFound => Err(disk(path)(error)),
        _ => Ok(()),
    }
}
