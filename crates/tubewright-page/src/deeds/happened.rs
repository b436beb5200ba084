//! What happened to the steel, as entries of the record.

use super::{Deeded, LONGEST, clock_face, recorded, refusal, said};
use crate::api::{Happening, JointSlope, JointTape, Refusal};
use tubewright_build::Span;
use tubewright_build::folder::Folder;
use tubewright_build::model::{
    Entry, EntryKind, JointFace, JointReading, Model, Name, Place, PlaceAt,
};
use tubewright_build::quantity::{Quantity, parse_angle, parse_clock, parse_length};

/// The record with what happened.
///
/// # Errors
/// A [`Refusal`] when an item, a supplier, a mark or a length is not known.
pub(crate) fn happened(folder: &Folder, on: &str, what: &Happening) -> Result<Deeded, Refusal> {
    let model = folder.read().model;
    let known = |item: &str| {
        let is_known = model.stock.item(item).is_some();
        is_known
            .then(|| Name::new(item))
            .ok_or_else(|| refusal(&format!("there is no item “{item}” in stock.toml")))
    };
    let words = |text: &str| {
        if text.is_empty() || text.chars().count() > LONGEST {
            Err(refusal("a mark or a name is missing or too long"))
        } else {
            Ok(text.to_owned())
        }
    };
    let from_whom = |name: &str| {
        let is_known = model.stock.supplier(name).is_some();
        is_known
            .then(|| Some(Name::new(name)))
            .ok_or_else(|| refusal(&format!("there is no supplier “{name}” in stock.toml")))
    };
    let (kind, said_as) = match what {
        Happening::Got {
            item,
            supplier,
            count,
        } => (
            EntryKind::Got {
                item: known(item)?,
                supplier: from_whom(supplier)?,
                count: *count,
            },
            format!("got {count} × {item}"),
        ),
        Happening::Out { item, supplier } => (
            EntryKind::Out {
                item: known(item)?,
                supplier: from_whom(supplier)?,
            },
            format!("{supplier} has no {item}"),
        ),
        Happening::OtherSize { item, taken, count } => (
            EntryKind::OtherSize {
                item: known(item)?,
                taken: known(taken)?,
                supplier: None,
                count: *count,
            },
            format!("took {count} × {taken} in place of {item}"),
        ),
        Happening::Cut { piece, from } => (
            EntryKind::Cut {
                piece: words(piece)?,
                from: Name::new(&words(from)?),
                of: None,
            },
            format!("cut {piece}"),
        ),
        Happening::Spoiled { piece } => (
            EntryKind::Spoiled {
                piece: words(piece)?,
            },
            format!("spoiled {piece}"),
        ),
        Happening::Tacked {
            joint,
            readings,
            slopes,
        } => (
            EntryKind::Tacked {
                joint: words(joint)?,
                readings: readings
                    .iter()
                    .map(|tape| reading(&model, tape))
                    .collect::<Result<_, _>>()?,
                faces: slopes
                    .iter()
                    .map(|slope| face(&model, slope))
                    .collect::<Result<_, _>>()?,
            },
            format!("tacked {joint}"),
        ),
        Happening::Welded { joint } => (
            EntryKind::Welded {
                joint: words(joint)?,
            },
            format!("welded {joint}"),
        ),
        Happening::Checked { joint } => (
            EntryKind::Checked {
                joint: words(joint)?,
                readings: Vec::new(),
                faces: Vec::new(),
            },
            format!("checked {joint}"),
        ),
    };
    let entry = Entry {
        on: on.to_owned(),
        what: kind,
        note: None,
        span: Span::none(),
    };
    recorded(folder, &entry, said_as)
}

fn reading(model: &Model, tape: &JointTape) -> Result<JointReading, Refusal> {
    let name = Name::new(&tape.from);
    let at = if model.build.mark(&tape.from).is_some() {
        PlaceAt::Mark(name)
    } else if model.build.point(&tape.from).is_some() {
        PlaceAt::Point(name)
    } else {
        return Err(refusal(&format!(
            "there is no mark or point “{}”",
            tape.from
        )));
    };
    let reads = parse_length(&tape.reads).map_err(said)?;
    Ok(JointReading {
        from: Place {
            at,
            span: Span::none(),
        },
        rim: Some(parse_clock(&clock_face(tape.rim)).map_err(said)?),
        reads: Quantity::new(reads, tape.reads.trim()),
    })
}

fn face(model: &Model, slope: &JointSlope) -> Result<JointFace, Refusal> {
    if model.build.setup(&slope.setup).is_none() {
        return Err(refusal(&format!(
            "the car was never said to stand “{}”",
            slope.setup
        )));
    }
    let toward = clock_face(slope.toward);
    let reads = parse_angle(&slope.reads).map_err(said)?;
    Ok(JointFace {
        clock: Quantity::new(parse_clock(&toward).map_err(said)?, toward),
        setup: Name::new(&slope.setup),
        reads: Quantity::new(reads, slope.reads.trim()),
    })
}
