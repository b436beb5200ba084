use super::open::Folder;
use std::fs::File;
use std::io::{self, Read};
use std::path::{Component, Path, PathBuf};
use thiserror::Error;

/// Largest scan file that is read, bytes.
pub const LARGEST_SCAN: u64 = 50 * 1024 * 1024;

/// Why a scan's file was not read. Its body is then not there, and says so.
#[derive(Debug, Error)]
#[non_exhaustive]
pub enum ScanFileError {
    /// The path leads elsewhere.
    #[error("“{0}” leads out of the build folder; put the file below it")]
    Outside(String),
    /// More than is read.
    #[error(
        "{} has {megabytes} MB; at most {most} MB are read, so that a phone and a small computer can \
         hold it: thin the mesh out in the scanning program, or cut off what no tube comes near",
        .path.display()
    )]
    TooLarge {
        /// The path.
        path: PathBuf,
        /// Its size.
        megabytes: u64,
        /// The limit.
        most: u64,
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
    /// The bytes of a scan file by the name that it has in the build.
    ///
    /// # Errors
    /// A [`ScanFileError`].
    pub fn scan(&self, file: &str) -> Result<Vec<u8>, ScanFileError> {
        let relative = Path::new(file);
        let stays_inside = relative
            .components()
            .all(|part| matches!(part, Component::Normal(_) | Component::CurDir));
        if !stays_inside {
            return Err(ScanFileError::Outside(file.to_owned()));
        }
        let path = self.path().join(relative);
        let disk = |source| ScanFileError::Disk {
            path: path.clone(),
            source,
        };
        let opened = File::open(&path).map_err(disk)?;
        let bytes = opened.metadata().map_err(disk)?.len();
        let mut content = Vec::new();
        // The file may grow between the two calls: the limit holds for what is read as well.
        if bytes <= LARGEST_SCAN {
            opened
                .take(LARGEST_SCAN + 1)
                .read_to_end(&mut content)
                .map_err(disk)?;
        }
        if bytes > LARGEST_SCAN || content.len() as u64 > LARGEST_SCAN {
            return Err(ScanFileError::TooLarge {
                path,
                megabytes: bytes >> 20,
                most: LARGEST_SCAN >> 20,
            });
        }
        Ok(content)
    }
}
