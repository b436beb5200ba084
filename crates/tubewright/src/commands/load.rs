//! A build folder from disk to its checked model, with every problem shown.

use super::Failure;
use crate::terminal;
use std::collections::BTreeMap;
use std::fs;
use std::path::Path;
use tubewright_build::model::{BodyKind, Model};
use tubewright_build::{Missing, Severity, Texts};

/// A build as it lies on disk.
#[derive(Debug)]
pub(crate) struct Loaded {
    /// What it says.
    pub(crate) model: Model,
    /// What each job lacks.
    pub(crate) missing: Vec<Missing>,
    /// Scan files by the name they have in the build; a file that cannot be read is left out, and
    /// its body says so.
    pub(crate) scans: BTreeMap<String, Vec<u8>>,
}

/// Largest scan file that is read, bytes.
const LARGEST_SCAN: u64 = 50 * 1024 * 1024;
/// Largest text file that is read, bytes.
const LARGEST_TEXT: u64 = 4 * 1024 * 1024;

/// Reads the folder. Problems go to stderr; the model is what could be read.
///
/// # Errors
/// The folder holds no build, a file is too large or unreadable, or there are problems that make
/// parts unusable.
pub(crate) fn load(folder: &Path) -> Result<Loaded, Failure> {
    let build = text(folder, "build.toml")?;
    let Some(build) = build else {
        return Err(Failure::NoBuild(folder.to_owned()));
    };
    let stock = text(folder, "stock.toml")?;
    let shop = text(folder, "shop.toml")?;
    let read = tubewright_build::read(Texts {
        build: Some(&build),
        stock: stock.as_deref(),
        shop: shop.as_deref(),
    });
    let mut errors = 0;
    for problem in &read.problems {
        let style = match problem.severity {
            Severity::Error => {
                errors += 1;
                terminal::FAILS
            }
            Severity::Hint => terminal::WARNS,
        };
        let word = match problem.severity {
            Severity::Error => "error",
            Severity::Hint => "hint",
        };
        terminal::say(&format!(
            "{}: {}{}{problem}\n",
            terminal::styled(style, word),
            folder.display(),
            std::path::MAIN_SEPARATOR,
        ));
    }
    if errors > 0 {
        return Err(Failure::Problems {
            folder: folder.to_owned(),
            errors,
        });
    }
    let mut scans = BTreeMap::new();
    for body in &read.model.build.bodies {
        if let BodyKind::Scan { file, .. } = &body.kind {
            match scan(folder, file) {
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
        model: read.model,
        missing: read.missing,
        scans,
    })
}

fn text(folder: &Path, name: &str) -> Result<Option<String>, Failure> {
    let path = folder.join(name);
    let length = match fs::metadata(&path) {
        Ok(metadata) => metadata.len(),
        Err(error) if error.kind() == std::io::ErrorKind::NotFound => return Ok(None),
        Err(error) => return Err(Failure::reading(&path)(error)),
    };
    if length > LARGEST_TEXT {
        return Err(Failure::TooLarge {
            path,
            megabytes: length >> 20,
            limit: LARGEST_TEXT >> 20,
        });
    }
    fs::read_to_string(&path)
        .map(Some)
        .map_err(Failure::reading(&path))
}

/// The bytes of a scan inside the folder.
///
/// # Errors
/// Words for the person: a path that leads out of the folder, a file that is too large or unreadable.
fn scan(folder: &Path, file: &str) -> Result<Vec<u8>, String> {
    let relative = Path::new(file);
    let stays_inside = relative.components().all(|part| {
        matches!(
            part,
            std::path::Component::Normal(_) | std::path::Component::CurDir
        )
    });
    if !stays_inside {
        return Err(format!(
            "“{file}” leads out of the build folder; put the file below it"
        ));
    }
    let path = folder.join(relative);
    let length = fs::metadata(&path)
        .map_err(|error| format!("{}: {error}", path.display()))?
        .len();
    if length > LARGEST_SCAN {
        return Err(format!(
            "{} has {} MB; at most {} MB are read: thin the mesh out in the scanning program",
            path.display(),
            length >> 20,
            LARGEST_SCAN >> 20
        ));
    }
    fs::read(&path).map_err(|error| format!("{}: {error}", path.display()))
}
