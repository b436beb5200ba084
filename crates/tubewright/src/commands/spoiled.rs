//! A spoiled piece: what is left goes back on the shelf, the cheapest remake is shown at once.

use super::solve::begin;
use super::{Done, Failure, load, print};
use crate::cli::shop::Spoiled;
use crate::terminal::{FAILS, heading, paragraph, styled};
use serde_json::json;
use tubewright_build::document::{Document, Written, append_entry};
use tubewright_build::folder::Changes;
use tubewright_build::model::{Entry, EntryKind};
use tubewright_build::quantity::{parse_angle, parse_length, write_mm};
use tubewright_build::{FileKind, Span};
use tubewright_plan::fit::{Steel, cut_entry};
use tubewright_plan::stages;
use tubewright_stock::{CutPart, CutStock, Source, StockPlan, StockShape};

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
    let part = part_of(&supply.whole, piece).ok_or_else(|| {
        Failure::Choice(format!(
            "no piece {piece} is cut in this plan; `tubewright cut` lists the marks"
        ))
    })?;
    let (cut, lies) = part;
    let before = supply.plan.price.minor;
    let entry = |what| Entry {
        on: arguments.when.date(),
        what,
        note: None,
        span: Span::none(),
    };
    let mut record = loaded.folder.text(FileKind::Shop).map(str::to_owned);
    if !steel.is_cut(piece) {
        // Spoiled while it was sawn: where it lay is steel that is gone.
        let sawn = supply.progress.sawn(cut, lies, piece);
        record = Some(append_entry(record.as_deref(), &entry(cut_entry(&sawn)))?);
    }
    let spoiled = EntryKind::Spoiled {
        piece: piece.to_owned(),
    };
    let mut changes = Changes::new();
    changes.set(
        FileKind::Shop,
        append_entry(record.as_deref(), &entry(spoiled))?,
    );
    let shelf_name = match &arguments.left {
        None => None,
        Some(left) => {
            let (name, text) = on_the_shelf(&loaded, cut, piece, left)?;
            changes.set(FileKind::Stock, text);
            Some(name)
        }
    };
    loaded.folder.save(&changes)?;
    loaded.model = loaded.folder.read().model;
    let plan = stages::supply(&loaded.model, practice, &chosen.runs, &[])?.plan;
    show(arguments, &plan, shelf_name.as_deref(), Some(before))
}

/// The part that is this piece, and the item that it comes from.
fn part_of<'a>(plan: &'a StockPlan, mark: &str) -> Option<(&'a CutStock, &'a CutPart)> {
    plan.cuts.iter().find_map(|cut| {
        let part = cut
            .parts
            .iter()
            .find(|part| part.serves.iter().any(|serves| serves.mark == mark))?;
        Some((cut, part))
    })
}

/// The stock file with what is left of the piece on it.
fn on_the_shelf(
    loaded: &load::Loaded,
    cut: &CutStock,
    piece: &str,
    left: &str,
) -> Result<(String, String), Failure> {
    let bad = |why: String| {
        Failure::Choice(format!(
            "“{left}” is not what can be left of {piece}: {why}; give a length for a straight (380 mm) and an angle for a bend (22 deg)"
        ))
    };
    let mut name = format!("rest of {piece}");
    let stock = &loaded.model.stock;
    while stock.on_hand.iter().any(|it| it.name == *name.as_str()) {
        name.push('+');
    }
    let tube = stock
        .tubes
        .iter()
        .find(|tube| {
            (tube.od.mm() - cut.stock.tube.od.mm()).abs() < 1e-6
                && (tube.wall.mm() - cut.stock.tube.wall.mm()).abs() < 1e-6
                && tube.material.word() == cut.stock.tube.material
        })
        .map(|tube| tube.name.to_string())
        .ok_or_else(|| bad("its tube is not in stock.toml any more".to_owned()))?;
    let mut fields = vec![
        ("name", Written::text(name.as_str())),
        ("tube", Written::text(tube)),
    ];
    match cut.stock.shape {
        StockShape::Straight { .. } => {
            parse_length(left).map_err(|error| bad(error.to_string()))?;
            fields.push(("kind", Written::text("straight")));
            fields.push(("length", Written::text(left)));
        }
        StockShape::Bend { clr, .. } => {
            parse_angle(left).map_err(|error| bad(error.to_string()))?;
            fields.push(("kind", Written::text("bend")));
            fields.push(("angle", Written::text(left)));
            fields.push(("clr", Written::text(write_mm(clr, 1))));
            fields.push(("legs", Written::texts(["0 mm", "0 mm"])));
        }
    }
    fields.push(("count", Written::Whole(1)));
    let text = loaded.folder.text(FileKind::Stock).unwrap_or_default();
    let edited = Document::parse(FileKind::Stock, text)
        .and_then(|mut document| {
            document.add("on-hand", &fields)?;
            Ok(document.text())
        })
        .map_err(|error| bad(error.to_string()))?;
    Ok((name, edited))
}

fn source_words(source: &Source) -> String {
    match source {
        Source::OnHand(name) => format!("from the shelf: {name}"),
        Source::Bought(item) => format!("buy: {item}"),
    }
}

fn show(
    arguments: &Spoiled,
    plan: &StockPlan,
    shelf_name: Option<&str>,
    before: Option<i64>,
) -> Result<Done, Failure> {
    let piece = arguments.piece.as_str();
    let from: Vec<String> = plan
        .cuts
        .iter()
        .filter(|cut| {
            cut.parts
                .iter()
                .any(|part| part.serves.iter().any(|serves| serves.mark == piece))
        })
        .map(|cut| source_words(&cut.source))
        .collect();
    let missing: Vec<&str> = plan
        .missing
        .iter()
        .map(|missing| missing.mark.as_str())
        .collect();
    let dearer = before.map(|before| plan.price.minor - before);
    if arguments.at.json {
        print(&format!(
            "{:#}\n",
            json!({
                "spoiled": piece,
                "back-on-hand": shelf_name,
                "remake-from": from,
                "still-to-buy": plan.buys.iter().map(|buy| json!({
                    "item": buy.item, "supplier": buy.supplier, "quantity": buy.quantity,
                    "together": buy.total.to_string(),
                })).collect::<Vec<_>>(),
                "price": plan.price.to_string(),
                "dearer-minor": dearer,
                "missing": missing,
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
        text.push_str(&paragraph(
            &if from.is_empty() {
                styled(FAILS, "Nothing on the shelf or for sale makes it again.")
            } else {
                format!("The cheapest: {}.", from.join("; "))
            },
            2,
        ));
        let list: Vec<String> = plan
            .buys
            .iter()
            .map(|buy| {
                format!(
                    "{} × {} ({}, {})",
                    buy.quantity, buy.item, buy.supplier, buy.total
                )
            })
            .collect();
        text.push_str(&paragraph(
            &if list.is_empty() {
                "Nothing is to be bought for it or for what is still to be cut.".to_owned()
            } else {
                format!(
                    "Still to buy for everything that is not cut yet: {}; {} with delivery{}.",
                    list.join(", "),
                    plan.price,
                    dearer.map_or_else(String::new, |dearer| format!(
                        ", {} {} than before",
                        tubewright_stock::Money::new(dearer.abs(), plan.price.currency),
                        if dearer >= 0 { "more" } else { "less" }
                    ))
                )
            },
            2,
        ));
        if !missing.is_empty() {
            text.push_str(&paragraph(
                &styled(FAILS, format!("Cannot be made: {}.", missing.join(", "))),
                2,
            ));
        }
        text.push_str(&paragraph(
            "Mark it spoiled with paint, so that nobody tacks it; tick the new one when it is cut: `tubewright tick FOLDER cut`.",
            2,
        ));
        print(&text)?;
    }
    Ok(if missing.is_empty() && !from.is_empty() {
        Done::Clean
    } else {
        Done::Findings
    })
}
