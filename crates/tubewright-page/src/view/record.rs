//! What happened to the steel, in words.

use crate::api::RecordEntry;
use tubewright_build::model::{Entry, EntryKind, Shop};

pub(super) fn of(shop: &Shop) -> Vec<RecordEntry> {
    shop.entries.iter().map(entry).collect()
}

fn entry(entry: &Entry) -> RecordEntry {
    let (what, about, words) = match &entry.what {
        EntryKind::Chosen { route, .. } => ("chosen", route.clone(), format!("chose {route}")),
        EntryKind::Got { item, count, .. } => {
            ("got", item.to_string(), format!("got {count} × {item}"))
        }
        EntryKind::Out { item, .. } => ("out", item.to_string(), format!("{item} was out")),
        EntryKind::OtherSize { item, taken, .. } => (
            "other size",
            item.to_string(),
            format!("took {taken} in place of {item}"),
        ),
        EntryKind::Spare { item, count } => (
            "spare",
            item.to_string(),
            format!("{count} × {item} kept as spare"),
        ),
        EntryKind::Cut { piece, from, .. } => {
            ("cut", piece.clone(), format!("cut {piece} from {from}"))
        }
        EntryKind::Spoiled { piece } => ("spoiled", piece.clone(), format!("spoiled {piece}")),
        EntryKind::Tacked {
            joint, readings, ..
        } => (
            "tacked",
            joint.clone(),
            if readings.is_empty() {
                format!("tacked {joint}")
            } else {
                format!("tacked {joint}, taped from {} places", readings.len())
            },
        ),
        EntryKind::Welded { joint } => ("welded", joint.clone(), format!("welded {joint}")),
        EntryKind::Checked { joint, .. } => ("checked", joint.clone(), format!("checked {joint}")),
        EntryKind::Accepted { route, .. } => {
            ("accepted", route.clone(), format!("accepted {route}"))
        }
        _ => ("other", String::new(), "something else".to_owned()),
    };
    RecordEntry {
        on: entry.on.clone(),
        words,
        about,
        what: what.to_owned(),
    }
}
