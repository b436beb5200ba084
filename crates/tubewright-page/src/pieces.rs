//! What happens to single pieces at the saw: cut with the place where they lay, spoiled, what is left of
//! them on the shelf.

use crate::api::{Happening, Refusal};
use crate::deeds::{Deeded, happened, recorded_all, refusal, refuse_new_errors, said};
use crate::derived::Shown;
use tubewright_build::document::Document;
use tubewright_build::folder::{Changes, Folder};
use tubewright_build::model::{Entry, EntryKind};
use tubewright_build::{FileKind, Span};
use tubewright_plan::fit::{Steel, cut_entry};
use tubewright_plan::stages::supply;
use tubewright_plan::stock::{before_spoiled, leftover, part_of, spoiled_entries};
use tubewright_stock::{CutPart, Sawn, Source};

/// Whether it is about a piece that is cut or spoiled.
pub(crate) fn is_at_the_saw(what: &Happening) -> bool {
    matches!(what, Happening::Cut { .. } | Happening::Spoiled { .. })
}

/// The record with a piece cut or spoiled.
///
/// # Errors
/// A [`Refusal`] when it is cut already, or a name is not known.
pub(crate) fn at_the_saw(
    folder: &Folder,
    shown: &Shown,
    on: &str,
    what: &Happening,
) -> Result<Deeded, Refusal> {
    let steel = Steel::of(&shown.car.model().shop);
    let (entries, words) = match what {
        Happening::Cut { piece, from } => {
            if let Some(of) = cut_from(shown, &steel, piece) {
                return Err(refusal(&format!(
                    "{piece} is cut already, from {of}; if that one is spoiled, tick it spoiled first"
                )));
            }
            (cut(shown, piece, from), format!("cut {piece}"))
        }
        Happening::Spoiled { piece } => (spoiled(shown, &steel, piece), format!("spoiled {piece}")),
        _ => (None, String::new()),
    };
    let Some(entries) = entries else {
        // No plan has such a piece: the record takes what was typed, if it is sound.
        return happened(folder, on, what);
    };
    let entries: Vec<Entry> = entries
        .into_iter()
        .map(|what| Entry {
            on: on.to_owned(),
            what,
            note: None,
            span: Span::none(),
        })
        .collect();
    let deeded = recorded_all(folder, &entries, words)?;
    refuse_new_errors(folder, &deeded.changes)?;
    Ok(deeded)
}

/// What the part is cut from already that is this piece: one that the record names by this mark, or that
/// is the same pieces.
fn cut_from(shown: &Shown, steel: &Steel, piece: &str) -> Option<String> {
    let marks = |part: &CutPart| -> Vec<String> {
        let serves = part.serves.iter();
        serves.map(|serves| serves.mark.clone()).collect()
    };
    let cuts = shown.now().and_then(Result::ok).map(|now| &now.plan.cuts);
    let planned = cuts
        .and_then(|cuts| part_of(cuts, piece))
        .map(|(_, part)| marks(part));
    let good = steel.record.sawn.iter().filter(|sawn| sawn.is_good);
    good.rev()
        .find(|sawn| {
            let of = sawn.of.as_ref().map(|(_, part)| marks(part));
            sawn.mark == piece || (of.is_some() && of == planned)
        })
        .map(|sawn| sawn.from.clone())
}

/// A cut as it was planned. One out of something else is kept without its place, since nothing is known of
/// the rest then.
fn cut(shown: &Shown, piece: &str, from: &str) -> Option<Vec<EntryKind>> {
    let now = shown.now()?.ok()?;
    let (stock, part) = part_of(&now.plan.cuts, piece)?;
    let as_planned = now.progress.sawn(stock, part, piece);
    let (Source::Bought(name) | Source::OnHand(name)) = &stock.source;
    let sawn = if name == from || as_planned.from == from {
        as_planned
    } else {
        Sawn {
            from: from.to_owned(),
            of: None,
            ..as_planned
        }
    };
    Some(vec![cut_entry(&sawn)])
}

/// A spoiled piece; where the record does not say yet that it was cut, that too.
fn spoiled(shown: &Shown, steel: &Steel, piece: &str) -> Option<Vec<EntryKind>> {
    let now = shown.now()?.ok()?;
    spoiled_entries(now, steel, piece)
}

/// The stock file with what is left of a spoiled piece on the shelf.
///
/// # Errors
/// A [`Refusal`] when the piece is not spoiled, or that cannot be left of it.
pub(crate) fn shelving(
    folder: &Folder,
    shown: &Shown,
    piece: &str,
    left: &str,
) -> Result<Deeded, Refusal> {
    let model = shown.car.model();
    let unknown = || {
        refusal(&format!(
            "the record does not say what {piece} came from: put what is left of it on hand by Your stock, on Buy"
        ))
    };
    let job = shown.car.job.as_ref().map_err(|why| refusal(why))?;
    // While it was good, the plan had it where it lay.
    let before = before_spoiled(model, piece)
        .ok_or_else(|| refusal(&format!("{piece} is not ticked spoiled")))?;
    let runs = shown.car.runs(shown.way);
    let plan = supply(&before, &job.around.practice, runs, &[]).map_err(said)?;
    let lay = part_of(&plan.whole.cuts, piece).ok_or_else(unknown)?;
    let rest = leftover(&model.stock, lay, piece, left).map_err(said)?;
    let text = folder.text(FileKind::Stock).unwrap_or_default();
    let mut document = Document::parse(FileKind::Stock, text).map_err(said)?;
    document.add("on-hand", &rest.fields).map_err(said)?;
    let mut changes = Changes::new();
    changes.set(FileKind::Stock, document.text());
    refuse_new_errors(folder, &changes)?;
    Ok(Deeded {
        changes,
        words: format!("put {} on the shelf", rest.name),
        file: Some(FileKind::Stock),
    })
}
