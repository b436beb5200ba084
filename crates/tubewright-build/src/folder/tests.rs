//! Every state in which a kill can leave a save of two files.

use super::journal::{self, Step, waiting, write_lasting};
use super::open::{Folder, FolderError, hash_of};
use crate::span::FileKind;
use std::fs;
use std::path::Path;

const OLD: [&str; 2] = ["# old build\n", "# old stock\n"];
const NEW: [&str; 2] = ["# new build\n", "# new stock\n"];
const FILES: [FileKind; 2] = [FileKind::Build, FileKind::Stock];

fn folder() -> tempfile::TempDir {
    let dir = tempfile::tempdir().unwrap();
    for (file, text) in FILES.iter().zip(OLD) {
        fs::write(dir.path().join(file.file_name()), text).unwrap();
    }
    dir
}

fn steps() -> Vec<Step> {
    FILES
        .iter()
        .zip(OLD.iter().zip(NEW))
        .map(|(&file, (old, new))| Step {
            file,
            old: Some(hash_of(old.as_bytes())),
            new: hash_of(new.as_bytes()),
        })
        .collect()
}

fn write_waiting(dir: &Path, at: usize, text: &str) {
    write_lasting(&waiting(dir, FILES[at]), text.as_bytes()).unwrap();
}

fn put_in_place(dir: &Path, at: usize) {
    fs::rename(waiting(dir, FILES[at]), dir.join(FILES[at].file_name())).unwrap();
}

fn texts_after_opening(dir: &Path) -> [String; 2] {
    let folder = Folder::open(dir).unwrap();
    let hidden = fs::read_dir(dir)
        .unwrap()
        .filter(|entry| {
            let name = entry.as_ref().unwrap().file_name();
            name.to_string_lossy().starts_with('.')
        })
        .count();
    assert_eq!(hidden, 0, "nothing is left lying about");
    FILES.map(|file| folder.text(file).unwrap().to_owned())
}

#[test]
fn killed_before_the_journal_the_save_never_happened() {
    let torn = folder();
    write_waiting(torn.path(), 0, "# new b");
    assert_eq!(texts_after_opening(torn.path()), OLD);
    let both = folder();
    write_waiting(both.path(), 0, NEW[0]);
    write_waiting(both.path(), 1, NEW[1]);
    assert_eq!(texts_after_opening(both.path()), OLD);
    let journal_begun = folder();
    write_waiting(journal_begun.path(), 0, NEW[0]);
    write_waiting(journal_begun.path(), 1, NEW[1]);
    fs::write(journal_begun.path().join(".tubewright-save.new"), "tubewr").unwrap();
    assert_eq!(texts_after_opening(journal_begun.path()), OLD);
}

#[test]
fn killed_after_the_journal_the_save_is_finished_by_the_next_who_opens() {
    for in_place in 0..=2 {
        let dir = folder();
        write_waiting(dir.path(), 0, NEW[0]);
        write_waiting(dir.path(), 1, NEW[1]);
        journal::write(dir.path(), &steps()).unwrap();
        for at in 0..in_place {
            put_in_place(dir.path(), at);
        }
        assert_eq!(texts_after_opening(dir.path()), NEW, "{in_place} in place");
        assert_eq!(texts_after_opening(dir.path()), NEW, "opened twice");
    }
}

#[test]
fn a_torn_journal_counts_as_none() {
    let whole = folder();
    journal::write(whole.path(), &steps()).unwrap();
    let text = fs::read(whole.path().join(".tubewright-save")).unwrap();
    for length in (0..text.len() - 1).step_by(11) {
        let dir = folder();
        write_waiting(dir.path(), 0, NEW[0]);
        write_waiting(dir.path(), 1, NEW[1]);
        fs::write(dir.path().join(".tubewright-save"), &text[..length]).unwrap();
        assert_eq!(
            texts_after_opening(dir.path()),
            OLD,
            "cut after {length} bytes"
        );
    }
}

#[test]
fn what_somebody_wrote_after_the_kill_is_not_written_over() {
    let dir = folder();
    write_waiting(dir.path(), 0, NEW[0]);
    write_waiting(dir.path(), 1, NEW[1]);
    journal::write(dir.path(), &steps()).unwrap();
    let theirs = dir.path().join("stock.toml");
    fs::write(&theirs, "# theirs\n").unwrap();
    let Err(FolderError::Conflict { file, kept }) = Folder::open(dir.path()) else {
        panic!("a conflict is told");
    };
    assert_eq!(file, FileKind::Stock);
    assert_eq!(fs::read_to_string(&theirs).unwrap(), "# theirs\n");
    assert_eq!(fs::read_to_string(&kept).unwrap(), NEW[1]);
    // As the message says: compare, then remove.
    fs::remove_file(kept).unwrap();
    assert_eq!(texts_after_opening(dir.path()), [NEW[0], "# theirs\n"]);
}
