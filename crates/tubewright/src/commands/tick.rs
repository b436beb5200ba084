//! What happened to the steel: bought, out, cut, welded.

use super::record::record;
use super::solve::{Solved, begin};
use super::{Done, Failure, load, print};
use crate::cli::shop::{Tick, Ticked};
use crate::terminal::paragraph;
use serde_json::{Value, json};
use tubewright_build::model::{EntryKind, Model, Name};
use tubewright_plan::fit::{Steel, cut_entry, joint_of};
use tubewright_plan::stages;
use tubewright_plan::stock::part_of;
use tubewright_stock::{CutStock, Sawn, Source};

/// What is written and shown.
struct Ticking {
    entry: EntryKind,
    words: String,
    shown: Value,
}

/// Writes the entry.
///
/// # Errors
/// The folder cannot be read or saved, or a name is not known.
pub(crate) fn run(arguments: &Tick) -> Result<Done, Failure> {
    let mut loaded = load::load(&arguments.folder)?;
    let Ticking {
        entry,
        words,
        mut shown,
    } = match &arguments.what {
        Ticked::Got { item, count, from } => got(&loaded.model, item, *count, from.as_deref())?,
        Ticked::Out { item, from } => out(&loaded.model, item, from.as_deref())?,
        Ticked::Cut { piece, of } => cut(&loaded, piece, of.as_deref())?,
        Ticked::Welded { joint } => welded(&loaded, joint)?,
    };
    let on = arguments.when.date();
    record(&mut loaded, &on, entry)?;
    if arguments.json {
        shown["on"] = json!(on);
        shown["words"] = json!(words);
        print(&format!("{shown:#}\n"))?;
    } else {
        print(&paragraph(&words, 0))?;
    }
    Ok(Done::Clean)
}

fn got(model: &Model, item: &str, count: u32, from: Option<&str>) -> Result<Ticking, Failure> {
    let entry = EntryKind::Got {
        item: item_named(model, item)?,
        supplier: supplier_named(model, from)?,
        count,
    };
    Ok(Ticking {
        entry,
        words: format!("{count} × {item}: got."),
        shown: json!({ "what": "got", "item": item, "count": count, "supplier": from }),
    })
}

fn out(model: &Model, item: &str, from: Option<&str>) -> Result<Ticking, Failure> {
    let entry = EntryKind::Out {
        item: item_named(model, item)?,
        supplier: supplier_named(model, from)?,
    };
    Ok(Ticking {
        entry,
        words: format!("{item}: out. `tubewright counter` shows what to take in its place."),
        shown: json!({ "what": "out", "item": item, "supplier": from }),
    })
}

fn cut(loaded: &load::Loaded, piece: &str, of: Option<&str>) -> Result<Ticking, Failure> {
    let steel = Steel::of(&loaded.model.shop);
    if let Some(from) = steel.cut.get(piece) {
        return Err(Failure::Choice(format!(
            "{piece} is cut already, from {from}; if that one is spoiled, say so first: `tubewright spoiled FOLDER {piece}`"
        )));
    }
    let stock = &loaded.model.stock;
    if let Some(of) = of
        && stock.item(of).is_none()
        && stock.on_hand.iter().all(|it| it.name != *of)
    {
        return Err(Failure::Choice(format!(
            "“{of}” is neither an item nor on hand in stock.toml; put it under [[on-hand]] first"
        )));
    }
    let solved = begin(loaded)?;
    let chosen = chosen_of(&solved)?;
    let supply = stages::supply(&loaded.model, &solved.around.practice, &chosen.runs, &[])?;
    let (stock, part) = part_of(&supply.plan.cuts, piece).ok_or_else(|| {
        Failure::Choice(format!(
            "no piece {piece} is to be cut in this plan; `tubewright cut` lists the marks"
        ))
    })?;
    let as_planned = supply.progress.sawn(stock, part, piece);
    let sawn = match of {
        Some(of) if of != as_planned.from && !is_source(stock, of) => Sawn {
            from: of.to_owned(),
            of: None,
            ..as_planned
        },
        _ => as_planned,
    };
    let marks: Vec<&str> = match &sawn.of {
        Some(_) => part.serves.iter().map(|serves| &*serves.mark).collect(),
        None => vec![piece],
    };
    let words = match &sawn.of {
        Some((number, _)) => format!(
            "{}: cut from {} no. {number}.",
            marks.join(" + "),
            sawn.from
        ),
        None => format!(
            "{piece}: cut from {}. That is not what the plan cuts it from, so nothing is known of the rest: put what is left of it under [[on-hand]] in stock.toml.",
            sawn.from
        ),
    };
    Ok(Ticking {
        entry: cut_entry(&sawn),
        shown: json!({
            "what": "cut", "piece": piece, "from": sawn.from,
            "number": sawn.of.as_ref().map(|(number, _)| number), "pieces": marks,
        }),
        words,
    })
}

fn welded(loaded: &load::Loaded, joint: &str) -> Result<Ticking, Failure> {
    let solved = begin(loaded)?;
    if joint_of(&chosen_of(&solved)?.planned, joint).is_none() {
        return Err(Failure::Choice(format!(
            "no joint of the chosen plan has the mark {joint}; `tubewright fit` lists them"
        )));
    }
    let steel = Steel::of(&loaded.model.shop);
    let mut words = format!("{joint}: welded.");
    if steel.welded.is_empty() {
        words.push_str(
            " It is the first full weld: measure across it again. What it pulled is the shop's own figure; write it into stock.toml under [practice] as weld-pull, and the pieces that are not cut yet take it up.",
        );
    }
    Ok(Ticking {
        entry: EntryKind::Welded {
            joint: joint.to_owned(),
        },
        shown: json!({
            "what": "welded", "joint": joint, "first": steel.welded.is_empty(),
        }),
        words,
    })
}

fn chosen_of(solved: &Solved) -> Result<&super::solve::Chosen, Failure> {
    solved.chosen.as_ref().ok_or_else(|| {
        Failure::Choice(
            "no way is chosen yet; choose one before the first cut: `tubewright route FOLDER --choose 1`"
                .to_owned(),
        )
    })
}

fn is_source(cut: &CutStock, name: &str) -> bool {
    let (Source::Bought(of) | Source::OnHand(of)) = &cut.source;
    of == name
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
