//! Taking back what the page did to the build, across restarts: kept in the folder, beside the files.

use serde::{Deserialize, Serialize};
use std::fs;
use std::io::Write;
use std::path::{Path, PathBuf};
use tubewright_build::FileKind;
use tubewright_build::folder::{Changes, Folder};

/// Steps that are kept.
const MOST: usize = 50;
/// Largest file that is read, bytes; more is no list of ours.
const LARGEST: u64 = 100_000_000;
/// Name of the file in the folder.
pub(crate) const FILE: &str = ".tubewright-undo.json";

/// The steps that can be taken back and done again.
#[derive(Debug, Default)]
pub(crate) struct Undo {
    path: PathBuf,
    steps: Steps,
}

#[derive(Debug, Default, Serialize, Deserialize)]
struct Steps {
    done: Vec<Step>,
    taken_back: Vec<Step>,
}

#[derive(Clone, Debug, Serialize, Deserialize)]
struct Step {
    /// True for stock.toml, false for build.toml.
    #[serde(default)]
    is_stock: bool,
    words: String,
    before: Option<String>,
    after: String,
}

impl Step {
    const fn file(&self) -> FileKind {
        if self.is_stock {
            FileKind::Stock
        } else {
            FileKind::Build
        }
    }
}

/// Which way.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Way {
    /// Take back.
    Back,
    /// Do again.
    Again,
}

/// Why nothing was taken back.
#[derive(Debug, thiserror::Error)]
pub(crate) enum UndoError {
    /// There is nothing.
    #[error("there is nothing to take back")]
    Nothing,
    /// Somebody changed the file since.
    #[error(
        "the file was changed elsewhere after “{words}”; taking that back would lose the change, so correct it by hand"
    )]
    ChangedSince {
        /// What was to be taken back.
        words: String,
    },
    /// It could not be saved.
    #[error(transparent)]
    Save(#[from] tubewright_build::folder::SaveError),
}

impl Undo {
    /// What the folder remembers. A list that cannot be read is as good as none: it holds nothing
    /// that the files do not.
    pub(crate) fn of(folder: &Path) -> Self {
        let path = folder.join(FILE);
        let is_small = fs::metadata(&path).is_ok_and(|data| data.len() <= LARGEST);
        let steps = is_small
            .then(|| fs::read_to_string(&path).ok())
            .flatten()
            .and_then(|text| serde_json::from_str(&text).ok())
            .unwrap_or_default();
        Self { path, steps }
    }

    /// What would be taken back.
    pub(crate) fn next(&self, way: Way) -> Option<&str> {
        let list = match way {
            Way::Back => &self.steps.done,
            Way::Again => &self.steps.taken_back,
        };
        list.last().map(|step| step.words.as_str())
    }

    /// Remembers a change of a file that was just saved.
    pub(crate) fn remember(
        &mut self,
        file: FileKind,
        words: String,
        before: Option<String>,
        after: String,
    ) {
        self.steps.taken_back.clear();
        self.steps.done.push(Step {
            is_stock: file == FileKind::Stock,
            words,
            before,
            after,
        });
        let surplus = self.steps.done.len().saturating_sub(MOST);
        self.steps.done.drain(..surplus);
        self.keep();
    }

    /// Takes the last step back, or does it again.
    ///
    /// # Errors
    /// [`UndoError`]; the files are then as they were.
    pub(crate) fn go(&mut self, folder: &mut Folder, way: Way) -> Result<(), UndoError> {
        let (from, to) = match way {
            Way::Back => (&mut self.steps.done, &mut self.steps.taken_back),
            Way::Again => (&mut self.steps.taken_back, &mut self.steps.done),
        };
        let step = from.last().cloned().ok_or(UndoError::Nothing)?;
        let file = step.file();
        let now = folder.text(file).map(str::to_owned);
        let (wanted, next) = match way {
            Way::Back => (Some(step.after.clone()), step.before.clone()),
            Way::Again => (step.before.clone(), Some(step.after.clone())),
        };
        if now != wanted {
            return Err(UndoError::ChangedSince { words: step.words });
        }
        let mut changes = Changes::new();
        changes.set(file, next.unwrap_or_default());
        folder.save(&changes)?;
        from.pop();
        to.push(step);
        self.keep();
        Ok(())
    }

    /// Losing this list loses no work, so a disk that says no is no reason to stop.
    fn keep(&self) {
        let Some(folder) = self.path.parent() else {
            return;
        };
        let Ok(text) = serde_json::to_string(&self.steps) else {
            return;
        };
        let written = tempfile::NamedTempFile::new_in(folder).and_then(|mut file| {
            file.write_all(text.as_bytes())?;
            Ok(file)
        });
        if let Ok(file) = written {
            let _kept = file.persist(&self.path);
        }
    }
}
