//! A build folder with its checked model, every problem shown.

use super::Failure;
use crate::terminal;
use std::collections::{BTreeMap, BTreeSet};
use std::path::Path;
use tubewright_build::folder::{Folder, FolderError};
use tubewright_build::model::{BodyKind, Model};
use tubewright_build::{FileKind, Missing, Severity};

/// A build as it lies on disk.
#[derive(Debug)]
pub(crate) struct Loaded {
    /// The folder as it was read; saving through it is refused when somebody changed a file since.
    pub(crate) folder: Folder,
    /// What it says.
    pub(crate) model: Model,
    /// What each job lacks.
    pub(crate) missing: Vec<Missing>,
    /// Scan files by the name they have in the build; a file that cannot be read is left out, and
    /// its body says so.
    pub(crate) scans: BTreeMap<String, Vec<u8>>,
}

/// Reads the folder. Problems go to stderr; the model is what could be read.
///
/// # Errors
/// The folder holds no build, a file is too large or unreadable, or there are problems that make
/// parts unusable.
pub(crate) fn load(path: &Path) -> Result<Loaded, Failure> {
    load_needing(path, &FileKind::ALL)
}

/// Reads the folder for a job that needs the car alone: a slip in another file is shown in full and
/// stops nothing here, because the tape does not wait for the price list.
///
/// # Errors
/// As [`load`], but of the problems only those of `build.toml` stop the job.
pub(crate) fn load_the_car(path: &Path) -> Result<Loaded, Failure> {
    load_needing(path, &[FileKind::Build])
}

fn load_needing(path: &Path, needed: &[FileKind]) -> Result<Loaded, Failure> {
    let folder = Folder::open(path).map_err(|error| match error {
        FolderError::NoBuild { path } => Failure::NoBuild(path),
        other => Failure::Folder(other),
    })?;
    if folder.text(FileKind::Build).is_none() {
        return Err(Failure::NoBuild(path.to_owned()));
    }
    let read = folder.read();
    let mut errors = 0;
    let mut waiting = BTreeSet::new();
    for problem in &read.problems {
        let (word, style) = match problem.severity {
            Severity::Error => {
                if needed.contains(&problem.file) {
                    errors += 1;
                } else {
                    waiting.insert(problem.file);
                }
                ("error", terminal::FAILS)
            }
            Severity::Hint => ("hint", terminal::WARNS),
        };
        terminal::say(&format!(
            "{}: {}{}{problem}\n",
            terminal::styled(style, word),
            path.display(),
            std::path::MAIN_SEPARATOR,
        ));
    }
    if errors > 0 {
        return Err(Failure::Problems {
            folder: path.to_owned(),
            errors,
        });
    }
    for file in waiting {
        terminal::say(&format!(
            "{}: this job needs nothing of {file} and goes on; the jobs that do will stop there until \
             it is put right",
            terminal::styled(terminal::WARNS, "note"),
        ));
    }
    let mut scans = BTreeMap::new();
    for body in &read.model.build.bodies {
        if let BodyKind::Scan { file, .. } = &body.kind {
            match folder.scan(file) {
                Ok(bytes) => {
                    scans.insert(file.clone(), bytes);
                }
                Err(why) => terminal::say(&format!(
                    "{}: the scan of “{}”: {why}",
                    terminal::styled(terminal::WARNS, "not there"),
                    body.name
                )),
            }
        }
    }
    Ok(Loaded {
        folder,
        model: read.model,
        missing: read.missing,
        scans,
    })
}
