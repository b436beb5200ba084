//! What is got and made already, for the buying list and the cut cards.

use crate::terminal::paragraph;
use serde_json::{Value, json};
use tubewright_build::model::Model;
use tubewright_plan::fit::Steel;
use tubewright_plan::stages::Supply;
use tubewright_stock::{CutStock, Source};

/// In words; nothing when nothing is got and nothing cut.
pub(crate) fn as_text(model: &Model, supply: &Supply) -> String {
    let steel = Steel::of(&model.shop);
    let mut text = String::new();
    let got: Vec<String> = steel
        .record
        .brought
        .iter()
        .map(|(item, count)| format!("{count} × {item}"))
        .collect();
    if !got.is_empty() {
        text.push_str(&paragraph(&format!("Got already: {}.", got.join(", ")), 2));
    }
    let made: Vec<String> = supply.progress.made.iter().map(cut_words).collect();
    if !made.is_empty() {
        text.push_str(&paragraph(
            &format!("Cut already and good: {}.", made.join("; ")),
            2,
        ));
    }
    let again: Vec<&str> = steel
        .spoiled
        .iter()
        .filter(|mark| !steel.is_cut(mark))
        .map(String::as_str)
        .collect();
    if !again.is_empty() {
        text.push_str(&paragraph(
            &format!("Spoiled and still to be made again: {}.", again.join(", ")),
            2,
        ));
    }
    text
}

fn cut_words(cut: &CutStock) -> String {
    let parts: Vec<String> = cut.parts.iter().map(part_words).collect();
    let (Source::Bought(name) | Source::OnHand(name)) = &cut.source;
    format!("{} from {name} no. {}", parts.join(", "), cut.number)
}

fn part_words(part: &tubewright_stock::CutPart) -> String {
    let marks: Vec<&str> = part.serves.iter().map(|s| s.mark.as_str()).collect();
    marks.join(" + ")
}

/// The same as values.
pub(crate) fn as_json(model: &Model, supply: &Supply) -> Value {
    let steel = Steel::of(&model.shop);
    json!({
        "got": steel.record.brought.iter().map(|(item, count)| json!({
            "item": item, "count": count,
        })).collect::<Vec<_>>(),
        "cut": supply.progress.made.iter().map(|cut| {
            let (Source::Bought(name) | Source::OnHand(name)) = &cut.source;
            json!({
                "from": name,
                "number": cut.number,
                "gives": cut.parts.iter().map(|part| {
                    part.serves.iter().map(|s| s.mark.clone()).collect::<Vec<_>>()
                }).collect::<Vec<_>>(),
            })
        }).collect::<Vec<_>>(),
        "spoiled": steel.spoiled,
    })
}
