//! The names of the parts on a card picture: in the tube where they fit, else above with a leader.

use super::path::BenchPath;
use super::{CardItem, CardPart};
use crate::drawing::{BASE_LINE_DROP, Item, Lettering, Line, Spot, Weight};

const LETTERS_MM: f64 = 4.4;
const SMALL_MM: f64 = 2.6;
const ROW_MM: f64 = 6.0;

fn words(part: &CardPart) -> (&str, Lettering) {
    match part.mark.as_deref() {
        Some(mark) => (mark, Lettering::plain(LETTERS_MM).bold().centred()),
        None => ("waste", Lettering::plain(SMALL_MM).italic().centred()),
    }
}

/// Row above the tube of each part's name; none when it fits into the tube, or is waste too short to
/// name.
fn rows(item: &CardItem, path: &BenchPath<'_>) -> Vec<Option<u32>> {
    // Where each row above is taken up to.
    let mut taken: Vec<f64> = Vec::new();
    item.parts
        .iter()
        .map(|part| {
            let (text, lettering) = words(part);
            let width = lettering.width_mm(text);
            let room = path.on_paper_mm(part.to_mm - part.from_mm) - 4.0;
            if part.mark.is_none() || width <= room {
                return None;
            }
            let centre = path.at(0.5 * (part.from_mm + part.to_mm)).0.x;
            let (from, to) = (centre - 0.5 * width - 1.0, centre + 0.5 * width + 1.0);
            let row = taken
                .iter()
                .position(|end| from >= *end)
                .unwrap_or(taken.len());
            if let Some(end) = taken.get_mut(row) {
                *end = to;
            } else {
                taken.push(to);
            }
            u32::try_from(row).ok()
        })
        .collect()
}

/// Room that the names need above the tube.
pub(super) fn room_above_mm(item: &CardItem, path: &BenchPath<'_>) -> f64 {
    let highest = rows(item, path).into_iter().flatten().max();
    12.0 + highest.map_or(0.0, |row| ROW_MM * f64::from(row + 1))
}

pub(super) fn labels(item: &CardItem, path: &BenchPath<'_>) -> Vec<Item> {
    let mut items = Vec::new();
    let half = 0.5 * path.width_mm();
    for (part, row) in item.parts.iter().zip(rows(item, path)) {
        let (text, lettering) = words(part);
        let room = path.on_paper_mm(part.to_mm - part.from_mm) - 1.0;
        if part.mark.is_none() && lettering.width_mm(text) > room {
            continue;
        }
        let (at, along) = path.at(0.5 * (part.from_mm + part.to_mm));
        let at = match row {
            None => at,
            Some(row) => {
                // On the inside of the bend, which is above.
                let up = along.quarter() * -1.0;
                let foot = at + up * (half - 2.0);
                let tip = at + up * (half + 6.0 + ROW_MM * f64::from(row));
                items.push(Item::line(foot, tip, Line::solid(Weight::Hair)));
                tip + Spot::new(0.0, -2.6)
            }
        };
        items.push(Item::Text {
            at: at + Spot::new(0.0, BASE_LINE_DROP * lettering.size_mm),
            text: text.to_owned(),
            lettering,
            turn_rad: 0.0,
            has_halo: true,
        });
    }
    items
}
