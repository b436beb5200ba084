//! What must hold between the values of one table, beyond single keys.

use super::record::start_frame;
use super::row::Row;
use super::source::{Problems, Said};
use crate::model::{Place, PlaceAt};
use std::collections::BTreeSet;

/// Whether the values of one table go together; says so when they do not.
pub(crate) fn row_is_sound(key: &str, row: &Row<'_>, problems: &mut Problems) -> bool {
    match key {
        "reading" => reading_is_sound(row, problems),
        "entry" => entry_is_sound(row, problems),
        "item" => item_is_sound(row, problems),
        "end" => end_is_sound(row, problems),
        _ => true,
    }
}

fn reading_is_sound(row: &Row<'_>, problems: &mut Problems) -> bool {
    let mut is_sound = true;
    let mut error = |key: &str, said: Said| {
        problems.error(row.source, row.range(key), said);
        is_sound = false;
    };
    let on_rim = [
        ("from", "from-rim", "from-bolt"),
        ("to", "rim", "bolt"),
        ("of", "rim", "bolt"),
    ];
    for (key, rim, bolt) in on_rim {
        let is_end = matches!(
            row.place(key),
            None | Some(Place {
                at: PlaceAt::End { .. },
                ..
            })
        );
        for extra in [rim, bolt] {
            if row.has(extra) && !is_end {
                error(
                    extra,
                    Said::new(
                        format!("`{extra}` is told of `{key}`, which is not an end"),
                        "only an end has a rim and bolt holes",
                        format!("remove `{extra}`, or name an end"),
                    ),
                );
            }
        }
    }
    for (a, b) in [("from", "to"), ("left", "right")] {
        let (Some(one), Some(other)) = (
            row.place_on(a, "from-rim", "from-bolt"),
            row.place_on(b, "rim", "bolt"),
        ) else {
            continue;
        };
        if one.at == other.at {
            error(
                b,
                Said::new(
                    format!("`{a}` and `{b}` are the same place"),
                    "a reading lies between two places",
                    "correct one of the two",
                ),
            );
        }
    }
    if let (Some(reads), Some(burnt)) = (row.length("reads"), row.length("burnt"))
        && reads.mm() < burnt.mm()
    {
        error(
            "burnt",
            Said::new(
                format!(
                    "the tape reads {} but started at {}",
                    reads.text, burnt.text
                ),
                "what was burnt is taken off the reading, which would leave less than nothing",
                "write what the tape reads, before anything is taken off",
            ),
        );
    }
    for key in ["hole", "side"] {
        let rows = row.tables(key);
        let ends: BTreeSet<&str> = rows.iter().filter_map(|row| row.word("at")).collect();
        if ends.len() < rows.len() {
            error(
                key,
                Said::new(
                    format!("`{key}` tells the same end of the tape twice"),
                    "each end of the tape lies on one thing",
                    "remove one, or correct its `at`",
                ),
            );
        }
    }
    is_sound
}

fn entry_is_sound(row: &Row<'_>, problems: &mut Problems) -> bool {
    let mut is_sound = true;
    for start in row.tables("starts") {
        if start_frame(&start).is_none() {
            problems.error(
                start.source,
                start.span().range(),
                Said::new(
                    "the start's `travel` and `twelve` do not stand square to each other",
                    "twelve o'clock is square to the flow",
                    "this is written by the program; take the entry from your last copy",
                ),
            );
            is_sound = false;
        }
    }
    let mut marks = BTreeSet::new();
    for piece in row.tables("pieces") {
        for key in ["mark", "joint"] {
            let Some(mark) = piece.word(key) else {
                continue;
            };
            if !marks.insert(mark) {
                problems.error(
                    piece.source,
                    piece.range(key),
                    Said::new(
                        format!("the mark `{mark}` is given twice"),
                        "marks are painted on steel; two of one mark cannot be told apart",
                        "give one of them a number that was never used",
                    ),
                );
                is_sound = false;
            }
        }
    }
    is_sound
}

/// A flange is not slipped over, a tube has no bolts, and a tip holds nothing.
fn end_is_sound(row: &Row<'_>, problems: &mut Problems) -> bool {
    let (Some(kind), Some(held_by)) = (row.text("kind"), row.text("held-by")) else {
        return true;
    };
    let (fits, can) = match kind.as_str() {
        "flange" => (
            held_by != "slip",
            "a flange is held by bolts, by sprung bolts or by a band clamp",
        ),
        "sawn tube" => (
            held_by == "slip",
            "a sawn tube is slipped into or over another, or welded to it",
        ),
        _ => (false, "only a flange or a sawn tube is held by something"),
    };
    if !fits {
        problems.error(
            row.source,
            row.range("held-by"),
            Said::new(
                format!("a {kind} is not held by “{held_by}”"),
                can,
                "correct `kind` or `held-by`, or remove `held-by` when it is not known",
            ),
        );
    }
    fits
}

fn item_is_sound(row: &Row<'_>, problems: &mut Problems) -> bool {
    let mut is_sound = true;
    for port in row.tables("ports") {
        if !port.has("tube") && !row.has("tube") {
            problems.error(
                port.source,
                port.range("name"),
                Said::new(
                    "neither the port nor the item says its tube size",
                    "only tubes of the same outside diameter meet without a sleeve or cone",
                    "add `tube = …` to the item or to the port",
                ),
            );
            is_sound = false;
        }
    }
    is_sound
}
