//! A spoiled piece: what is left goes back on the shelf, the cheapest remake is shown at once.

use super::solve::begin;
use super::{Done, Failure, load, print};
use crate::cli::shop::Spoiled;
use crate::terminal::{FAILS, heading, paragraph, styled};
use serde_json::json;
use tubewright_build::document::{Document, append_entry};
use tubewright_build::folder::Changes;
use tubewright_build::model::Entry;
use tubewright_build::{FileKind, Span};
use tubewright_plan::fit::Steel;
use tubewright_plan::stages;
use tubewright_plan::stock::{Leftover, Remake, leftover, part_of, spoiled_entries};

/// Records it and shows the remake.
///
/// # Errors
/// The folder cannot be read or saved, nothing is chosen, or no such piece is cut.
pub(crate) fn run(arguments: &Spoiled) -> Result<Done, Failure> {
    let mut loaded = load::load(&arguments.at.folder)?;
    let solved = begin(&loaded)?;
    let chosen = solved.chosen.as_ref().ok_or_else(|| {
        Failure::Choice("no way is chosen yet, so no piece has a mark to be spoiled".to_owned())
    })?;
    let practice = &solved.around.practice;
    let supply = stages::supply(&loaded.model, practice, &chosen.runs, &[])?;
    let piece = arguments.piece.as_str();
    let steel = Steel::of(&loaded.model.shop);
    let nowhere = || {
        Failure::Choice(format!(
            "no piece {piece} is cut in this plan; `tubewright cut` lists the marks"
        ))
    };
    let entries = spoiled_entries(&supply, &steel, piece).ok_or_else(nowhere)?;
    let mut record = loaded.folder.text(FileKind::Shop).map(str::to_owned);
    for what in entries {
        let entry = Entry {
            on: arguments.when.date(),
            what,
            note: None,
            span: Span::none(),
        };
        record = Some(append_entry(record.as_deref(), &entry)?);
    }
    let mut changes = Changes::new();
    changes.set(FileKind::Shop, record.unwrap_or_default());
    let shelf_name = match &arguments.left {
        None => None,
        Some(left) => {
            let lies = part_of(&supply.whole.cuts, piece).ok_or_else(nowhere)?;
            let rest = leftover(&loaded.model.stock, lies, piece, left)
                .map_err(|error| Failure::Choice(error.to_string()))?;
            let (name, text) = on_the_shelf(&loaded, rest)?;
            changes.set(FileKind::Stock, text);
            Some(name)
        }
    };
    loaded.folder.save(&changes)?;
    loaded.model = loaded.folder.read().model;
    let plan = stages::supply(&loaded.model, practice, &chosen.runs, &[])?.plan;
    let remake = Remake::of(&plan, supply.plan.price, piece);
    show(arguments, &remake, shelf_name.as_deref())
}

/// The stock file with what is left of the piece on it.
fn on_the_shelf(loaded: &load::Loaded, rest: Leftover) -> Result<(String, String), Failure> {
    let text = loaded.folder.text(FileKind::Stock).unwrap_or_default();
    let edited = Document::parse(FileKind::Stock, text)
        .and_then(|mut document| {
            document.add("on-hand", &rest.fields)?;
            Ok(document.text())
        })
        .map_err(|error| Failure::Choice(error.to_string()))?;
    Ok((rest.name, edited))
}

fn show(arguments: &Spoiled, remake: &Remake, shelf_name: Option<&str>) -> Result<Done, Failure> {
    let piece = remake.piece.as_str();
    if arguments.at.json {
        print(&format!(
            "{:#}\n",
            json!({
                "spoiled": piece,
                "back-on-hand": shelf_name,
                "remake-from": remake.sources(),
                "still-to-buy": remake.buys.iter().map(|buy| json!({
                    "item": buy.item, "supplier": buy.supplier, "quantity": buy.quantity,
                    "together": buy.total.to_string(),
                })).collect::<Vec<_>>(),
                "price": remake.price.to_string(),
                "dearer-minor": remake.dearer.minor,
                "missing": remake.missing,
            })
        ))?;
    } else {
        let mut text = heading(&format!("Remake of {piece}"));
        if let Some(name) = shelf_name {
            text.push_str(&paragraph(
                &format!("What is left lies on the shelf as “{name}” (stock.toml)."),
                2,
            ));
        }
        let cheapest = remake
            .cheapest_words()
            .unwrap_or_else(|| styled(FAILS, "Nothing on the shelf or for sale makes it again."));
        text.push_str(&paragraph(&cheapest, 2));
        text.push_str(&paragraph(&remake.buying_words(), 2));
        if !remake.missing.is_empty() {
            text.push_str(&paragraph(
                &styled(
                    FAILS,
                    format!("Cannot be made: {}.", remake.missing.join(", ")),
                ),
                2,
            ));
        }
        text.push_str(&paragraph(
            "Mark it spoiled with paint, so that nobody tacks it; tick the new one when it is cut: `tubewright tick FOLDER cut`.",
            2,
        ));
        print(&text)?;
    }
    Ok(if remake.missing.is_empty() && !remake.from.is_empty() {
        Done::Clean
    } else {
        Done::Findings
    })
}
