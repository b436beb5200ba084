use super::open::{Folder, lock};
use super::scan::LARGEST_SCAN;
use std::fs::{self, File};
use std::io::{self, Write};
use std::path::{Path, PathBuf};
use thiserror::Error;

/// Where scans lie in a build folder.
pub const SCANS: &str = "scans";

/// What a scan's name may end with, in small letters.
const ENDINGS: [&str; 3] = ["stl", "obj", "ply"];
/// Longest name, letters.
const LONGEST: usize = 80;
/// Most names that are listed.
const MOST_LISTED: usize = 500;
/// Names that no file may have on some machines, without what follows the dot.
const DEVICES: [&str; 6] = ["con", "prn", "aux", "nul", "com", "lpt"];

/// Why a scan was not put into the folder; nothing in it was changed.
#[derive(Debug, Error)]
#[non_exhaustive]
pub enum NewScanError {
    /// The name is none for a scan.
    #[error(
        "“{name}” is no name for a scan: letters, digits, blanks, - and _, at most {LONGEST} of them, then .stl, .obj or .ply"
    )]
    BadName {
        /// As it was given, its first letters.
        name: String,
    },
    /// There is a file of this name.
    #[error(
        "there is a scan “{name}” in {SCANS}/ already, and it is never overwritten: give this one another name"
    )]
    Taken {
        /// The name.
        name: String,
    },
    /// More than is read.
    #[error(
        "{name} has {megabytes} MB; at most {} MB are read: thin the mesh out in the scanning program, or cut off what no tube comes near",
        LARGEST_SCAN >> 20
    )]
    TooLarge {
        /// The name.
        name: String,
        /// Its size.
        megabytes: u64,
    },
    /// The place of the scans leads elsewhere.
    #[error(
        "{} is no folder of this build: take away what lies there under that name",
        .0.display()
    )]
    NoFolder(PathBuf),
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
    /// Puts a new scan into the folder's `scans/` and answers by what name a body names it
    /// (`scans/floor.stl`). It is written whole or not at all, and no file is ever overwritten.
    ///
    /// # Errors
    /// A [`NewScanError`]; nothing was changed then.
    pub fn add_scan(&self, name: &str, content: &[u8]) -> Result<String, NewScanError> {
        if !is_sound(name) {
            return Err(NewScanError::BadName {
                name: name.chars().take(LONGEST).collect(),
            });
        }
        let bytes = content.len() as u64;
        if bytes > LARGEST_SCAN {
            return Err(NewScanError::TooLarge {
                name: name.to_owned(),
                megabytes: bytes >> 20,
            });
        }
        let _lock = lock(self.path());
        let folder = self.path().join(SCANS);
        made(&folder)?;
        let path = folder.join(name);
        let taken = || NewScanError::Taken {
            name: name.to_owned(),
        };
        if fs::symlink_metadata(&path).is_ok() {
            return Err(taken());
        }
        let disk = |source| NewScanError::Disk {
            path: path.clone(),
            source,
        };
        let waiting = folder.join(format!(".{name}.part"));
        let put = written(&waiting, content).and_then(|()| put_there(&waiting, &path));
        // Whatever came of it, nothing half done stays; what is not there need not go.
        let _gone = fs::remove_file(&waiting);
        put.map_err(|error| {
            if error.kind() == io::ErrorKind::AlreadyExists {
                taken()
            } else {
                disk(error)
            }
        })?;
        Ok(format!("{SCANS}/{name}"))
    }

    /// The scans in the folder's `scans/` by the names that a body names them by, in their order; a
    /// file of another kind is left out.
    #[must_use]
    pub fn scans(&self) -> Vec<String> {
        let Ok(listed) = fs::read_dir(self.path().join(SCANS)) else {
            return Vec::new();
        };
        let mut names: Vec<String> = listed
            .filter_map(Result::ok)
            .filter(|entry| entry.file_type().is_ok_and(|kind| kind.is_file()))
            .filter_map(|entry| entry.file_name().into_string().ok())
            .filter(|name| is_sound(name))
            .take(MOST_LISTED)
            .map(|name| format!("{SCANS}/{name}"))
            .collect();
        names.sort();
        names
    }
}

/// Writes a file that is not there yet; one that a kill left is taken away first.
fn written(path: &Path, content: &[u8]) -> io::Result<()> {
    let mut file = match File::create_new(path) {
        Err(error) if error.kind() == io::ErrorKind::AlreadyExists => {
            fs::remove_file(path)?;
            File::create_new(path)?
        }
        made => made?,
    };
    file.write_all(content)?;
    file.sync_all()
}

/// Gives the file its name, unless there is one: a second name is refused where the first is taken,
/// while a rename would take its place.
fn put_there(waiting: &Path, path: &Path) -> io::Result<()> {
    match fs::hard_link(waiting, path) {
        Err(error) if error.kind() != io::ErrorKind::AlreadyExists => {
            // A disk that knows no second names, such as a memory stick.
            if fs::symlink_metadata(path).is_ok() {
                return Err(io::ErrorKind::AlreadyExists.into());
            }
            fs::rename(waiting, path)
        }
        done => done,
    }
}

/// Makes the folder, and sees that it is one and leads nowhere else.
fn made(folder: &Path) -> Result<(), NewScanError> {
    let disk = |source| NewScanError::Disk {
        path: folder.to_owned(),
        source,
    };
    match fs::create_dir(folder) {
        Err(error) if error.kind() != io::ErrorKind::AlreadyExists => return Err(disk(error)),
        Ok(()) | Err(_) => {}
    }
    // A link is no folder of this build, wherever it leads.
    let is_ours = fs::symlink_metadata(folder).map_err(disk)?.is_dir();
    if is_ours {
        Ok(())
    } else {
        Err(NewScanError::NoFolder(folder.to_owned()))
    }
}

/// A name that every file system takes and that stays in its folder.
fn is_sound(name: &str) -> bool {
    let Some((stem, ending)) = name.rsplit_once('.') else {
        return false;
    };
    let is_scan = ENDINGS.contains(&ending.to_ascii_lowercase().as_str());
    let is_plain = |c: char| c.is_alphanumeric() || c == ' ' || c == '-' || c == '_';
    let is_edge = |c: char| c.is_alphanumeric();
    let device = stem
        .trim_end_matches(|c: char| c.is_ascii_digit())
        .to_ascii_lowercase();
    is_scan
        && name.chars().count() <= LONGEST
        && stem.chars().all(is_plain)
        && stem.chars().next().is_some_and(is_edge)
        && stem.chars().next_back().is_some_and(is_edge)
        && !DEVICES.contains(&device.as_str())
}

#[cfg(test)]
mod tests {
    use super::*;

    fn folder() -> (tempfile::TempDir, Folder) {
        let above = tempfile::tempdir().unwrap();
        let path = above.path().join("car");
        fs::create_dir(&path).unwrap();
        fs::write(path.join("build.toml"), "format = \"tubewright-build/1\"\n").unwrap();
        let folder = Folder::open(&path).unwrap();
        (above, folder)
    }

    #[test]
    fn a_scan_lies_in_scans_and_is_read_again() {
        let (_above, folder) = folder();
        assert!(folder.scans().is_empty());
        let named = folder.add_scan("front left_2.STL", b"solid").unwrap();
        assert_eq!(named, "scans/front left_2.STL");
        assert_eq!(folder.scan(&named).unwrap(), b"solid");
        assert_eq!(folder.scans(), [named]);
    }

    #[test]
    fn none_is_overwritten() {
        let (_above, folder) = folder();
        folder.add_scan("a.stl", b"first").unwrap();
        let refused = folder.add_scan("a.stl", b"second");
        assert!(matches!(refused, Err(NewScanError::Taken { .. })));
        assert_eq!(folder.scan("scans/a.stl").unwrap(), b"first");
        // Nothing half written is left beside it.
        assert_eq!(fs::read_dir(folder.path().join(SCANS)).unwrap().count(), 1);
    }

    #[test]
    fn no_name_leads_out_of_the_folder() {
        let (above, folder) = folder();
        for name in [
            "../a.stl",
            "..\\a.stl",
            "/a.stl",
            "a/b.stl",
            "C:a.stl",
            "..stl",
            ".stl",
            ".a.stl",
            "a..stl",
            "a b .stl",
            " a.stl",
            "a.stl ",
            "a.stl\0",
            "a\n.stl",
            "a.toml",
            "a",
            "",
            "build.toml",
            "a.stl.exe",
            "con.stl",
            "LPT1.obj",
            "a:b.ply",
            "a*.ply",
            "~a.ply",
            "$HOME.ply",
            "a%2fb.ply",
        ] {
            let refused = folder.add_scan(name, b"solid");
            assert!(
                matches!(refused, Err(NewScanError::BadName { .. })),
                "{name:?}: {refused:?}"
            );
        }
        let long = format!("{}.stl", "a".repeat(LONGEST));
        assert!(folder.add_scan(&long, b"solid").is_err());
        assert!(!folder.path().join(SCANS).exists(), "nothing was made");
        assert_eq!(fs::read_dir(above.path()).unwrap().count(), 1);
    }

    #[test]
    fn too_large_is_not_written() {
        let (_above, folder) = folder();
        let content = vec![b' '; usize::try_from(LARGEST_SCAN).unwrap() + 1];
        let refused = folder.add_scan("a.stl", &content);
        assert!(matches!(refused, Err(NewScanError::TooLarge { .. })));
        assert!(folder.scans().is_empty());
    }

    #[cfg(unix)]
    #[test]
    fn a_link_out_of_the_folder_is_not_followed() {
        let (above, folder) = folder();
        let elsewhere = above.path().join("elsewhere");
        fs::create_dir(&elsewhere).unwrap();
        std::os::unix::fs::symlink(&elsewhere, folder.path().join(SCANS)).unwrap();
        let refused = folder.add_scan("a.stl", b"solid");
        assert!(matches!(refused, Err(NewScanError::NoFolder(_))));
        assert_eq!(fs::read_dir(&elsewhere).unwrap().count(), 0);
        // Nor is a link in the place of the scan itself.
        fs::remove_file(folder.path().join(SCANS)).unwrap();
        fs::create_dir(folder.path().join(SCANS)).unwrap();
        let target = above.path().join("target.stl");
        std::os::unix::fs::symlink(&target, folder.path().join(SCANS).join("b.stl")).unwrap();
        let refused = folder.add_scan("b.stl", b"solid");
        assert!(matches!(refused, Err(NewScanError::Taken { .. })));
        assert!(!target.exists());
        assert!(folder.scans().is_empty());
    }
}
