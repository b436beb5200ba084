//! What a person does on the page, as changes to the files. Each is made on the texts as they are
//! now and touches only its own lines, so that two pages and an editor never undo each other.

mod hand;
mod happened;
mod lists;
mod readings;

use crate::api::{Deed, Refusal};
use crate::samples::Sample;
use tubewright_build::document::{Document, ElementRef, Written, append_entry};
use tubewright_build::folder::{Changes, Folder};
use tubewright_build::model::Entry;
use tubewright_build::{FileKind, Severity, Texts, read};

pub(crate) use hand::pinned;
pub(crate) use happened::happened;

/// Largest length of a name or a few words, letters.
const LONGEST: usize = 400;

/// New texts with what was done, in words for *undo*.
#[derive(Debug)]
pub(crate) struct Deeded {
    /// The new texts.
    pub(crate) changes: Changes,
    /// What was done: *added reading 15*.
    pub(crate) words: String,
    /// The file that it can be taken back in; none when it is never taken back.
    pub(crate) file: Option<FileKind>,
}

/// Makes the changes of a deed, without saving them.
///
/// # Errors
/// A [`Refusal`] when a quantity cannot be read, a name is unknown or taken, or somebody changed the
/// same thing meanwhile. Nothing that the reader of the files would refuse is ever written.
pub(crate) fn changes_of(
    folder: &Folder,
    deed: &Deed,
    samples: &[Sample],
) -> Result<Deeded, Refusal> {
    let deeded = match deed {
        Deed::Happened { on, what } => happened(folder, on, what)?,
        Deed::Add { list, fields } => lists::added(folder, list, fields)?,
        Deed::Set {
            list,
            name,
            key,
            value,
        } => lists::set(folder, list, name.as_deref(), key, value.as_ref())?,
        Deed::Remove { list, name } => lists::removed(folder, list, name)?,
        Deed::Rename { kind, from, to } => lists::renamed(folder, kind, from, to)?,
        Deed::StartStock { like } => lists::stock_like(folder, like, samples)?,
        Deed::Unpin { run, number, words } => hand::unpinned(folder, run, *number, words)?,
        Deed::CloseSide {
            body,
            side,
            is_closed,
        } => hand::side_closed(folder, body, side, *is_closed)?,
        other => edited(folder, other)?,
    };
    refuse_new_errors(folder, &deeded.changes)?;
    Ok(deeded)
}

fn edited(folder: &Folder, deed: &Deed) -> Result<Deeded, Refusal> {
    let text = folder
        .text(FileKind::Build)
        .unwrap_or("format = \"tubewright-build/1\"\n");
    let mut document = Document::parse(FileKind::Build, text).map_err(said)?;
    if let Some(fields) = readings::fields(deed)? {
        let number = document.add_reading(0, &fields).map_err(said)?;
        return Ok(of_build(&document, format!("added reading {number}")));
    }
    let words = match deed {
        Deed::ChangeReading { number, was, reads } => {
            let now = folder
                .read()
                .model
                .build
                .reading(*number)
                .and_then(|reading| reading.reads_text().map(str::to_owned));
            if now.as_deref() != Some(was.as_str()) {
                return Err(Refusal {
                    words: format!(
                        "reading {number} was changed elsewhere meanwhile: look at it again, then correct it"
                    ),
                    now,
                });
            }
            let element = ElementRef::Reading(*number);
            document
                .set(&element, "reads", &Written::text(reads.trim()))
                .map_err(said)?;
            // A reading that was measured again takes part again.
            document.clear(&element, "doubt").map_err(said)?;
            format!("reading {number}: {was} became {}", reads.trim())
        }
        Deed::DropReading { number, dropped } => {
            let element = ElementRef::Reading(*number);
            if *dropped {
                document
                    .set(&element, "doubt", &Written::text("dropped"))
                    .map_err(said)?;
                format!("dropped reading {number}")
            } else {
                document.clear(&element, "doubt").map_err(said)?;
                format!("took reading {number} back in")
            }
        }
        Deed::AddMark { name, place, side } => add_place(
            &mut document,
            "mark",
            name,
            place.as_deref(),
            side.as_deref(),
        )?,
        Deed::AddPoint { name, place, side } => add_place(
            &mut document,
            "point",
            name,
            place.as_deref(),
            side.as_deref(),
        )?,
        Deed::AddSetup { name, stance } => {
            document
                .add(
                    "setup",
                    &[("name", short(name)?), ("stance", short(stance)?)],
                )
                .map_err(said)?;
            format!("added the set-up {name}")
        }
        Deed::ChooseFrame {
            origin,
            centre_line,
            level,
        } => {
            let element = ElementRef::Table("frame".to_owned());
            let pairs = centre_line
                .iter()
                .map(|pair| Written::texts(pair.iter().map(String::as_str)))
                .collect();
            for (key, value) in [
                ("origin", short(origin)?),
                ("centre-line", Written::List(pairs)),
                ("level", short(level)?),
            ] {
                document.set(&element, key, &value).map_err(said)?;
            }
            "chose the car's axes".to_owned()
        }
        _ => return Err(refusal("this is no change of a reading or a place")),
    };
    Ok(of_build(&document, words))
}

fn of_build(document: &Document, words: String) -> Deeded {
    let mut changes = Changes::new();
    changes.set(FileKind::Build, document.text());
    Deeded {
        changes,
        words,
        file: Some(FileKind::Build),
    }
}

fn add_place(
    document: &mut Document,
    list: &str,
    name: &str,
    place: Option<&str>,
    side: Option<&str>,
) -> Result<String, Refusal> {
    let mut fields = vec![("name", short(name)?)];
    if let Some(place) = place.map(str::trim).filter(|place| !place.is_empty()) {
        fields.push(("place", short(place)?));
    }
    if let Some(side) = side {
        fields.push(("side", short(side)?));
    }
    document.add(list, &fields).map_err(said)?;
    Ok(format!("added the {list} {}", name.trim()))
}

/// The record with one entry more.
///
/// # Errors
/// A [`Refusal`] when the date is none or the record cannot be read.
pub(crate) fn recorded(folder: &Folder, entry: &Entry, words: String) -> Result<Deeded, Refusal> {
    recorded_all(folder, core::slice::from_ref(entry), words)
}

/// The record with some entries more.
///
/// # Errors
/// As [`recorded`].
pub(crate) fn recorded_all(
    folder: &Folder,
    entries: &[Entry],
    words: String,
) -> Result<Deeded, Refusal> {
    let mut text = folder.text(FileKind::Shop).map(str::to_owned);
    for entry in entries {
        text = Some(append_entry(text.as_deref(), entry).map_err(said)?);
    }
    let mut changes = Changes::new();
    changes.set(FileKind::Shop, text.unwrap_or_default());
    Ok(Deeded {
        changes,
        words,
        file: None,
    })
}

/// A deed must not make a file worse: what the reader refuses in the new texts and not in the old
/// ones is refused here, in the reader's own words.
pub(crate) fn refuse_new_errors(folder: &Folder, changes: &Changes) -> Result<(), Refusal> {
    let old = folder.texts();
    let text = |file: FileKind, old: Option<&str>| changes.text(file).or(old).map(str::to_owned);
    let (build, stock, shop) = (
        text(FileKind::Build, old.build),
        text(FileKind::Stock, old.stock),
        text(FileKind::Shop, old.shop),
    );
    let after = read(Texts {
        build: build.as_deref(),
        stock: stock.as_deref(),
        shop: shop.as_deref(),
    });
    let errors = |problems: &[tubewright_build::Problem]| {
        problems
            .iter()
            .filter(|problem| problem.severity == Severity::Error)
            .count()
    };
    if errors(&after.problems) <= errors(&read(old).problems) {
        return Ok(());
    }
    let worst = after
        .problems
        .iter()
        .rev()
        .find(|problem| problem.severity == Severity::Error);
    Err(refusal(&worst.map_or_else(
        || "the file would not be readable any more".to_owned(),
        |problem| format!("{}: {}. {}", problem.words, problem.what, problem.do_this),
    )))
}

/// Hours on a clock face as the files write them: 1:30.
pub(super) fn clock_face(hours: f64) -> String {
    let minutes = (hours * 60.0).round().rem_euclid(720.0);
    let hour = (minutes / 60.0).floor();
    let shown = if hour < 1.0 { 12.0 } else { hour };
    format!("{shown:.0}:{:02.0}", minutes - 60.0 * hour)
}

pub(crate) fn short_text(text: &str) -> Result<String, Refusal> {
    match short(text)? {
        Written::Text(text) => Ok(text),
        _ => Err(refusal("a name or a value is missing")),
    }
}

fn short(text: &str) -> Result<Written, Refusal> {
    let text = text.trim();
    if text.is_empty() {
        return Err(refusal("a name or a value is missing"));
    }
    if text.chars().count() > LONGEST {
        return Err(refusal(&format!(
            "“{}…” is too long: at most {LONGEST} letters",
            text.chars().take(20).collect::<String>()
        )));
    }
    Ok(Written::text(text))
}

pub(crate) fn refusal(words: &str) -> Refusal {
    Refusal {
        words: words.to_owned(),
        now: None,
    }
}

pub(crate) fn said(error: impl core::fmt::Display) -> Refusal {
    refusal(&error.to_string())
}
