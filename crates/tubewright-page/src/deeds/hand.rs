//! Pins and closed sides.

use super::{Deeded, of_build, refusal, said, short_text};
use crate::api::Refusal;
use crate::derived::Shown;
use crate::view::side_word;
use tubewright_build::FileKind;
use tubewright_build::document::{Document, ElementRef, Written};
use tubewright_build::folder::Folder;
use tubewright_build::model::{CarrierRef, Class, LengthUnits};
use tubewright_build::quantity::{write_inches, write_mm};
use tubewright_geometry::{Length, Point};
use tubewright_plan::routes::words_of_pin;

/// Sides of a body.
const SIDES: [&str; 6] = ["front", "rear", "left", "right", "above", "below"];
/// Parts of an inch that a place is written in.
const SIXTEENTHS: u32 = 16;
/// The key of a run that holds its pins.
const PINS: &str = "pins";

fn opened(folder: &Folder) -> Result<Document, Refusal> {
    Document::parse(
        FileKind::Build,
        folder.text(FileKind::Build).unwrap_or_default(),
    )
    .map_err(said)
}

/// The build with one pin more, set out from the nearest mark on the chassis.
///
/// # Errors
/// A [`Refusal`] when there is no such run, or no mark is found to set it out from.
pub(crate) fn pinned(
    folder: &Folder,
    shown: &Shown,
    run: &str,
    is_joint: bool,
    at: [f64; 3],
    within: &str,
) -> Result<Deeded, Refusal> {
    let at = Point::from_array(at);
    if !at.is_finite() {
        return Err(refusal("that is no place: take it again"));
    }
    let job = shown.car.job.as_ref().map_err(|why| refusal(why))?;
    let build = &shown.car.model().build;
    let places = &job.around.measured.places.points;
    let on_chassis = build
        .marks
        .iter()
        .filter(|mark| mark.carrier == CarrierRef::Chassis)
        .filter_map(|mark| Some((&mark.name, places.get(mark.name.as_str())?.point_in_car)));
    let (mark, from) = on_chassis
        .min_by(|a, b| a.1.distance(at).total_cmp(&b.1.distance(at)))
        .ok_or_else(|| {
            refusal("a pin is set out from a mark on the chassis, and none is found yet: measure one first")
        })?;
    let write = |mm: f64| {
        let length = Length::from_mm(mm);
        match build.shown_units().units {
            LengthUnits::Millimetres => write_mm(length, 0),
            LengthUnits::Inches => write_inches(length, SIXTEENTHS),
        }
    };
    let offsets = (at - from).to_array().map(write);
    let what = if is_joint { "joint" } else { "line" };
    let pin = Written::Table(vec![
        ("what".to_owned(), Written::text(what)),
        ("near".to_owned(), Written::text(mark.to_string())),
        (
            "at".to_owned(),
            Written::texts(offsets.iter().map(String::as_str)),
        ),
        ("within".to_owned(), Written::text(short_text(within)?)),
    ]);
    let mut document = opened(folder)?;
    let element = ElementRef::Named("run".to_owned(), run.to_owned());
    document.push(&element, PINS, &pin).map_err(said)?;
    let of = if is_joint { "a joint of " } else { "" };
    Ok(of_build(&document, format!("pinned {of}{run}")))
}

/// The build without a pin.
///
/// # Errors
/// A [`Refusal`] when it is not the one that was looked at any more.
pub(super) fn unpinned(
    folder: &Folder,
    run: &str,
    number: usize,
    words: &str,
) -> Result<Deeded, Refusal> {
    let model = folder.read().model;
    let written = model.build.run(run);
    let pin = written.and_then(|written| written.pins.get(number));
    if pin.map(words_of_pin).as_deref() != Some(words) {
        return Err(refusal(
            "the pins of this run were changed elsewhere meanwhile: look at them again",
        ));
    }
    let mut document = opened(folder)?;
    let element = ElementRef::Named("run".to_owned(), run.to_owned());
    document.take_out(&element, PINS, number).map_err(said)?;
    Ok(of_build(&document, format!("took a pin out of {run}")))
}

/// The build with a side of a body closed or open.
///
/// # Errors
/// A [`Refusal`] for an unknown body or side, or one that is already so.
pub(super) fn side_closed(
    folder: &Folder,
    body: &str,
    side: &str,
    is_closed: bool,
) -> Result<Deeded, Refusal> {
    const KEY: &str = "never-pass";
    if !SIDES.contains(&side) {
        return Err(refusal(&format!("a body has no side “{side}”")));
    }
    let model = folder.read().model;
    let mut bodies = model.build.bodies.iter();
    let found = bodies
        .find(|found| *found.name == *body)
        .ok_or_else(|| refusal(&format!("there is no body “{body}” any more")))?;
    let mut closed: Vec<&str> = found
        .closed_sides()
        .iter()
        .copied()
        .map(side_word)
        .collect();
    let at = closed.iter().position(|closed| *closed == side);
    match (at, is_closed) {
        (None, true) => closed.push(side),
        (Some(at), false) => {
            closed.remove(at);
        }
        (Some(_), true) => return Err(refusal("that side is closed already")),
        (None, false) => return Err(refusal("that side is open already")),
    }
    let mut document = opened(folder)?;
    let element = ElementRef::Named("body".to_owned(), body.to_owned());
    let written = document.texts_of(&element, KEY);
    let written_at = written.iter().position(|written| written == side);
    if let (Some(at), false) = (written_at, is_closed) {
        document.take_out(&element, KEY, at).map_err(said)?;
    } else if !written.is_empty() && is_closed {
        document
            .push(&element, KEY, &Written::text(side))
            .map_err(said)?;
    }
    // A floor that says nothing is closed above: what it is now must be said.
    if document.texts_of(&element, KEY).len() != closed.len()
        || (closed.is_empty() && found.class == Class::Floor)
    {
        document
            .set(&element, KEY, &Written::texts(closed.iter().copied()))
            .map_err(said)?;
    }
    let done = if is_closed { "closed" } else { "opened" };
    let word = match side {
        "above" => "the top".to_owned(),
        "below" => "the underside".to_owned(),
        side => format!("the {side}"),
    };
    Ok(of_build(&document, format!("{done} {word} of {body}")))
}
