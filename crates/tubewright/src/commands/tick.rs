//! What happened to the steel: bought, out, cut, welded.

use super::record::record;
use super::solve::begin;
use super::{Done, Failure, load, print};
use crate::cli::shop::{Tick, Ticked};
use crate::terminal::paragraph;
use tubewright_build::model::{EntryKind, Model, Name};
use tubewright_plan::stages;
use tubewright_stock::Source;

/// Writes the entry.
///
/// # Errors
/// The folder cannot be read or saved, or a name is not known.
pub(crate) fn run(arguments: &Tick) -> Result<Done, Failure> {
    let mut loaded = load::load(&arguments.folder)?;
    let (entry, words) = match &arguments.what {
        Ticked::Got { item, count, from } => (
            EntryKind::Got {
                item: item_named(&loaded.model, item)?,
                supplier: supplier_named(&loaded.model, from.as_deref())?,
                count: *count,
            },
            format!("{count} × {item}: got."),
        ),
        Ticked::Out { item, from } => (
            EntryKind::Out {
                item: item_named(&loaded.model, item)?,
                supplier: supplier_named(&loaded.model, from.as_deref())?,
            },
            format!("{item}: out. `tubewright counter` shows what to take in its place."),
        ),
        Ticked::Cut { piece, of } => {
            let from = match of {
                Some(of) => Name::new(of),
                None => planned_source(&loaded, piece)?,
            };
            (
                EntryKind::Cut {
                    piece: piece.clone(),
                    from: from.clone(),
                },
                format!("{piece}: cut from {from}."),
            )
        }
        Ticked::Welded { joint } => (
            EntryKind::Welded {
                joint: joint.clone(),
            },
            format!("{joint}: welded."),
        ),
    };
    record(&mut loaded, &arguments.when.date(), entry)?;
    print(&paragraph(&words, 0))?;
    Ok(Done::Clean)
}

fn item_named(model: &Model, item: &str) -> Result<Name, Failure> {
    model
        .stock
        .item(item)
        .map(|item| item.name.clone())
        .ok_or_else(|| Failure::NoItem(item.to_owned()))
}

fn supplier_named(model: &Model, supplier: Option<&str>) -> Result<Option<Name>, Failure> {
    let Some(name) = supplier else {
        return Ok(None);
    };
    model
        .stock
        .suppliers
        .iter()
        .find(|supplier| supplier.name == *name)
        .map(|supplier| Some(supplier.name.clone()))
        .ok_or_else(|| Failure::Choice(format!("there is no supplier “{name}” in stock.toml")))
}

/// What the plan cuts a piece from.
fn planned_source(loaded: &load::Loaded, piece: &str) -> Result<Name, Failure> {
    let solved = begin(loaded)?;
    let chosen = solved.chosen.as_ref().ok_or_else(|| {
        Failure::Choice(
            "no way is chosen yet; choose one before the first cut: `tubewright route FOLDER --choose 1`"
                .to_owned(),
        )
    })?;
    let supply = stages::supply(&loaded.model, &solved.around.practice, &chosen.runs, &[])?;
    supply
        .plan
        .cuts
        .iter()
        .find(|cut| {
            cut.parts
                .iter()
                .any(|part| part.serves.iter().any(|serves| serves.mark == piece))
        })
        .map(|cut| match &cut.source {
            Source::Bought(name) | Source::OnHand(name) => Name::new(name),
        })
        .ok_or_else(|| {
            Failure::Choice(format!(
                "no piece {piece} is cut in this plan; `tubewright cut` lists the marks"
            ))
        })
}
