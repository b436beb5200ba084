//! Saving: all or nothing, and never over somebody else's change.

#![allow(
    clippy::unwrap_used,
    reason = "helpers of tests are tests, whatever the lint takes them for"
)]

mod common;

use common::{ESTATE_BUILD, ESTATE_SHOP, ESTATE_STOCK};
use std::fs;
use std::path::Path;
use std::process::{Command, Stdio};
use std::time::Duration;
use tubewright_build::document::{NameKind, append_entry, rename};
use tubewright_build::folder::{Changes, Folder, FolderError, SaveError};
use tubewright_build::model::{Entry, EntryKind};
use tubewright_build::{FileKind, Span};

fn estate_folder() -> tempfile::TempDir {
    let folder = tempfile::tempdir().unwrap();
    fs::write(folder.path().join("build.toml"), ESTATE_BUILD).unwrap();
    fs::write(folder.path().join("stock.toml"), ESTATE_STOCK).unwrap();
    fs::write(folder.path().join("shop.toml"), ESTATE_SHOP).unwrap();
    folder
}

fn one(file: FileKind, text: &str) -> Changes {
    let mut changes = Changes::new();
    changes.set(file, text.to_owned());
    changes
}

/// Nothing of the machinery of saving lies about.
fn assert_tidy(folder: &Path) {
    for entry in fs::read_dir(folder).unwrap() {
        let name = entry.unwrap().file_name();
        let name = name.to_string_lossy();
        assert!(!name.starts_with('.'), "left behind: {name}");
    }
}

#[test]
fn what_is_saved_is_read_again() {
    let dir = estate_folder();
    let mut folder = Folder::open(dir.path()).unwrap();
    assert!(folder.read().problems.is_empty());
    let text = format!("{ESTATE_BUILD}# more\n");
    folder.save(&one(FileKind::Build, &text)).unwrap();
    assert_eq!(folder.text(FileKind::Build), Some(text.as_str()));
    let again = Folder::open(dir.path()).unwrap();
    assert_eq!(again.text(FileKind::Build), Some(text.as_str()));
    assert!(again.changed_on_disk().unwrap().is_empty());
    assert_tidy(dir.path());
}

#[test]
fn a_file_that_somebody_changed_is_not_written_over() {
    let dir = estate_folder();
    let mut folder = Folder::open(dir.path()).unwrap();
    let theirs = ESTATE_BUILD.replace("812 mm", "811 mm");
    fs::write(dir.path().join("build.toml"), &theirs).unwrap();
    assert_eq!(folder.changed_on_disk().unwrap(), [FileKind::Build]);
    let mut changes = one(FileKind::Build, "mine");
    changes.set(FileKind::Stock, "mine".to_owned());
    let refused = folder.save(&changes);
    assert!(matches!(
        refused,
        Err(SaveError::ChangedOnDisk {
            file: FileKind::Build
        })
    ));
    let on_disk = |name: &str| fs::read_to_string(dir.path().join(name)).unwrap();
    assert_eq!(on_disk("build.toml"), theirs);
    assert_eq!(on_disk("stock.toml"), ESTATE_STOCK, "none or all");
    // A file that appeared where none was is somebody's as well.
    fs::remove_file(dir.path().join("shop.toml")).unwrap();
    let mut folder = Folder::open(dir.path()).unwrap();
    fs::write(dir.path().join("shop.toml"), ESTATE_SHOP).unwrap();
    assert!(folder.save(&one(FileKind::Shop, "mine")).is_err());
}

#[test]
fn the_record_is_only_added_to() {
    let dir = estate_folder();
    let mut folder = Folder::open(dir.path()).unwrap();
    let shorter = ESTATE_SHOP.replace("2026-03-04", "2026-03-05");
    assert!(matches!(
        folder.save(&one(FileKind::Shop, &shorter)),
        Err(SaveError::RecordRewritten)
    ));
    let entry = Entry {
        on: "2026-03-09".to_owned(),
        what: EntryKind::Welded {
            joint: "J2".to_owned(),
        },
        note: None,
        span: Span::none(),
    };
    let longer = append_entry(folder.text(FileKind::Shop), &entry).unwrap();
    folder.save(&one(FileKind::Shop, &longer)).unwrap();
    assert!(folder.read().problems.is_empty());
}

#[test]
fn a_renaming_goes_through_all_files_and_may_touch_the_record() {
    let dir = estate_folder();
    let mut folder = Folder::open(dir.path()).unwrap();
    let changes = rename(
        folder.texts(),
        None,
        NameKind::Item,
        "bend 63.5 90",
        "elbow",
    )
    .unwrap();
    assert_eq!(
        changes.files().collect::<Vec<_>>(),
        [FileKind::Stock, FileKind::Shop]
    );
    folder.save(&changes).unwrap();
    let again = Folder::open(dir.path()).unwrap();
    assert!(again.read().problems.is_empty());
    assert!(again.read().model.stock.item("elbow").is_some());
    assert_tidy(dir.path());
}

#[test]
fn odd_folders_are_refused_with_a_reason() {
    let dir = tempfile::tempdir().unwrap();
    assert!(matches!(
        Folder::open(&dir.path().join("nowhere")),
        Err(FolderError::NoFolder { .. })
    ));
    assert!(matches!(
        Folder::open(dir.path()),
        Err(FolderError::NoBuild { .. })
    ));
    fs::write(
        dir.path().join("build.toml"),
        b"# M\xc3\xa9gane\nname = \"\xe9\"",
    )
    .unwrap();
    let refused = Folder::open(dir.path()).unwrap_err();
    assert!(matches!(
        refused,
        FolderError::NotText {
            file: FileKind::Build,
            line: 2,
            column: 9,
            byte: 0xE9
        }
    ));
    assert!(
        refused
            .to_string()
            .starts_with("build.toml:2:9: the byte 0xE9")
    );
    for file in [FileKind::Build, FileKind::Stock, FileKind::Shop] {
        let path = dir.path().join(file.file_name());
        fs::write(dir.path().join("build.toml"), b"").unwrap();
        fs::write(&path, vec![b' '; 4_000_001]).unwrap();
        let refused = Folder::open(dir.path()).unwrap_err();
        assert!(matches!(refused, FolderError::TooLarge { .. }));
        assert!(
            refused
                .to_string()
                .starts_with(&format!("{} is 4.1 MB long", file.file_name())),
            "{refused}"
        );
        fs::remove_file(&path).unwrap();
    }
    fs::write(dir.path().join("build.toml"), b"").unwrap();
    let mut new = Folder::empty(dir.path()).unwrap();
    fs::remove_file(dir.path().join("build.toml")).unwrap();
    new.save(&one(FileKind::Build, ESTATE_BUILD)).unwrap();
    assert!(Folder::open(dir.path()).is_ok());
}

const CHILD_FOLDER: &str = "TUBEWRIGHT_TEST_SAVE_IN";

/// Not a test of its own: what the next test starts and kills. It renames to and fro for ever.
#[test]
fn child_that_saves_until_it_is_killed() {
    let Ok(path) = std::env::var(CHILD_FOLDER) else {
        return;
    };
    let mut folder = Folder::open(Path::new(&path)).unwrap();
    loop {
        for (old, new) in [("bend 63.5 90", "elbow"), ("elbow", "bend 63.5 90")] {
            let is_there = folder.read().model.stock.item(old).is_some();
            if is_there {
                let changes = rename(folder.texts(), None, NameKind::Item, old, new).unwrap();
                folder.save(&changes).unwrap();
            }
        }
    }
}

#[test]
fn a_kill_at_any_moment_loses_nothing() {
    let kills: u32 = std::env::var("TUBEWRIGHT_KILLS")
        .ok()
        .and_then(|kills| kills.parse().ok())
        .unwrap_or(6);
    let dir = estate_folder();
    let mut ends = [0_u32; 2];
    for kill in 0..kills {
        let mut child = Command::new(std::env::current_exe().unwrap())
            .args(["--exact", "child_that_saves_until_it_is_killed"])
            .env(CHILD_FOLDER, dir.path())
            .stdout(Stdio::null())
            .stderr(Stdio::null())
            .spawn()
            .unwrap();
        // Spread over several saves; which step is hit is left to chance.
        std::thread::sleep(Duration::from_micros(
            40_000 + u64::from(kill) * 7_919 % 60_000,
        ));
        child.kill().unwrap();
        child.wait().unwrap();
        let folder = Folder::open(dir.path()).unwrap();
        let read = folder.read();
        assert!(
            read.problems.is_empty(),
            "kill {kill}: {:#?}",
            read.problems
        );
        let texts = [FileKind::Stock, FileKind::Shop].map(|file| folder.text(file).unwrap());
        let renamed =
            [ESTATE_STOCK, ESTATE_SHOP].map(|t| t.replace("\"bend 63.5 90\"", "\"elbow\""));
        let is_renamed = texts == [renamed[0].as_str(), renamed[1].as_str()];
        assert!(
            is_renamed || texts == [ESTATE_STOCK, ESTATE_SHOP],
            "kill {kill}: the two files differ or were damaged"
        );
        ends[usize::from(is_renamed)] += 1;
        assert_tidy(dir.path());
    }
    println!(
        "{kills} kills: {} found as before, {} renamed",
        ends[0], ends[1]
    );
}
