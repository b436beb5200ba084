//! Elements of the lists and keys of the tables, for the forms of the page.

use super::{Deeded, refusal, said, short_text};
use crate::api::{Field, Refusal, Value};
use crate::samples::Sample;
use tubewright_build::FileKind;
use tubewright_build::document::{Document, ElementRef, NameKind, Written, rename};
use tubewright_build::folder::{Changes, Folder};

/// Lists of build.toml that the forms reach.
const OF_BUILD: [&str; 9] = [
    "mark",
    "point",
    "setup",
    "end",
    "carrier",
    "body",
    "component",
    "run",
    "reading",
];
/// Tables of build.toml.
const TABLES_OF_BUILD: [&str; 6] = ["frame", "accuracy", "gaps", "engine", "wishes", "head"];
/// Lists of stock.toml.
const OF_STOCK: [&str; 5] = ["tube", "item", "supplier", "offer", "on-hand"];
/// Tables of stock.toml.
const TABLES_OF_STOCK: [&str; 2] = ["practice", "stock"];
/// Deepest nesting of a value.
const DEEPEST: usize = 4;
/// Most parts of a list or table.
const MOST_PARTS: usize = 64;

fn file_of(list: &str) -> Result<FileKind, Refusal> {
    if OF_BUILD.contains(&list) || TABLES_OF_BUILD.contains(&list) {
        Ok(FileKind::Build)
    } else if OF_STOCK.contains(&list) || TABLES_OF_STOCK.contains(&list) {
        Ok(FileKind::Stock)
    } else {
        Err(refusal(&format!("there is no list “{list}”")))
    }
}

fn open(folder: &Folder, file: FileKind) -> Result<Document, Refusal> {
    let empty = match file {
        FileKind::Stock => "format = \"tubewright-stock/1\"\n",
        _ => "format = \"tubewright-build/1\"\n",
    };
    Document::parse(file, folder.text(file).unwrap_or(empty)).map_err(said)
}

fn done(document: &Document, words: String) -> Deeded {
    let file = document.file();
    let mut changes = Changes::new();
    changes.set(file, document.text());
    Deeded {
        changes,
        words,
        file: Some(file),
    }
}

fn element(list: &str, name: Option<&str>) -> Result<ElementRef, Refusal> {
    Ok(match name {
        None if list == "head" || list == "stock" => ElementRef::Head,
        None => ElementRef::Table(list.to_owned()),
        Some(number) if list == "reading" => ElementRef::Reading(number.parse().map_err(said)?),
        Some(number) if list == "offer" => {
            ElementRef::Nth(list.to_owned(), number.parse().map_err(said)?)
        }
        Some(name) => ElementRef::Named(list.to_owned(), name.to_owned()),
    })
}

/// Adds an element.
///
/// # Errors
/// A [`Refusal`] for a list, key or value that the files do not know.
pub(super) fn added(folder: &Folder, list: &str, fields: &[Field]) -> Result<Deeded, Refusal> {
    let mut document = open(folder, file_of(list)?)?;
    let fields = fields
        .iter()
        .map(|field| Ok((field.key.as_str(), written(&field.value, 0)?)))
        .collect::<Result<Vec<_>, Refusal>>()?;
    if list == "reading" {
        let number = document.add_reading(0, &fields).map_err(said)?;
        return Ok(done(&document, format!("added reading {number}")));
    }
    let name = fields.iter().find_map(|(key, value)| match value {
        Written::Text(text) if *key == "name" || *key == "item" => Some(text.clone()),
        _ => None,
    });
    document.add(list, &fields).map_err(said)?;
    Ok(done(
        &document,
        format!("added the {list} {}", name.unwrap_or_default()),
    ))
}

/// Sets or clears a key.
///
/// # Errors
/// A [`Refusal`] for an element, key or value that the files do not know.
pub(super) fn set(
    folder: &Folder,
    list: &str,
    name: Option<&str>,
    key: &str,
    value: Option<&Value>,
) -> Result<Deeded, Refusal> {
    let mut document = open(folder, file_of(list)?)?;
    let element = element(list, name)?;
    match value {
        Some(value) => document
            .set(&element, key, &written(value, 0)?)
            .map_err(said)?,
        None => {
            document.clear(&element, key).map_err(said)?;
        }
    }
    Ok(done(
        &document,
        format!("changed {key} of {}", name.unwrap_or(list)),
    ))
}

/// Removes an element.
///
/// # Errors
/// A [`Refusal`] when there is none, or others refer to it.
pub(super) fn removed(folder: &Folder, list: &str, name: &str) -> Result<Deeded, Refusal> {
    let mut document = open(folder, file_of(list)?)?;
    document.remove(&element(list, Some(name))?).map_err(said)?;
    Ok(done(&document, format!("removed the {list} {name}")))
}

/// Renames wherever it stands. It is no step of *take back*: rename it back.
///
/// # Errors
/// A [`Refusal`] for a name that is unknown, taken or unfit.
pub(super) fn renamed(
    folder: &Folder,
    kind: &str,
    from: &str,
    to: &str,
) -> Result<Deeded, Refusal> {
    let kind = match kind {
        "mark" => NameKind::Mark,
        "point" => NameKind::Point,
        "end" => NameKind::End,
        "setup" => NameKind::Setup,
        "carrier" => NameKind::Carrier,
        "body" => NameKind::Body,
        "component" => NameKind::Component,
        "run" => NameKind::Run,
        "tube" => NameKind::Tube,
        "item" => NameKind::Item,
        "supplier" => NameKind::Supplier,
        "on-hand" => NameKind::OnHand,
        other => return Err(refusal(&format!("a {other} has no name"))),
    };
    let to = short_text(to)?;
    let changes =
        rename(folder.texts(), folder.text(FileKind::Plan), kind, from, &to).map_err(said)?;
    Ok(Deeded {
        changes,
        words: format!("renamed {from} to {to}"),
        file: None,
    })
}

/// The stock file of a demonstration, where nothing is in stock yet.
///
/// # Errors
/// A [`Refusal`] when there is stock already, or no such demonstration.
pub(super) fn stock_like(
    folder: &Folder,
    like: &str,
    samples: &[Sample],
) -> Result<Deeded, Refusal> {
    let stock = &folder.read().model.stock;
    if !(stock.tubes.is_empty() && stock.items.is_empty() && stock.offers.is_empty()) {
        return Err(refusal(
            "stock.toml holds tubes or items already; add to it instead",
        ));
    }
    let text = samples
        .iter()
        .find(|sample| sample.name == like)
        .and_then(|sample| sample.text("stock.toml"))
        .ok_or_else(|| refusal(&format!("there is no demonstration “{like}”")))?;
    let mut changes = Changes::new();
    changes.set(FileKind::Stock, text.to_owned());
    Ok(Deeded {
        changes,
        words: "took over the catalogue of a demonstration".to_owned(),
        file: Some(FileKind::Stock),
    })
}

fn written(value: &Value, depth: usize) -> Result<Written, Refusal> {
    let bounded = |count: usize| {
        if depth >= DEEPEST || count > MOST_PARTS {
            Err(refusal("this value has too many parts"))
        } else {
            Ok(())
        }
    };
    Ok(match value {
        Value::Text(text) => Written::Text(short_text(text)?),
        Value::Whole(number) => Written::Whole(*number),
        Value::Number(number) => Written::Number(*number),
        Value::Yes(yes) => Written::Yes(*yes),
        Value::List(parts) => {
            bounded(parts.len())?;
            let parts = parts.iter().map(|part| written(part, depth + 1));
            Written::List(parts.collect::<Result<_, _>>()?)
        }
        Value::Table(parts) => {
            bounded(parts.len())?;
            let parts = parts
                .iter()
                .map(|(key, part)| Ok((key.clone(), written(part, depth + 1)?)));
            Written::Table(parts.collect::<Result<_, Refusal>>()?)
        }
    })
}
