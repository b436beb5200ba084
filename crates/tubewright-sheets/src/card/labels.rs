//! The names of the parts on a card picture: in the tube where they fit, else above with a leader.

use super::path::BenchPath;
use super::{CardItem, CardPart};
use crate::drawing::{BASE_LINE_DROP, Item, Lettering, Line, Rect, Spot, Weight};

const LETTERS_MM: f64 = 4.4;
const SMALL_MM: f64 = 3.8;
const ROW_MM: f64 = 6.0;

fn words(part: &CardPart) -> (&str, Lettering) {
    match part.mark.as_deref() {
        Some(mark) => (mark, Lettering::plain(LETTERS_MM).bold().centred()),
        None => ("waste", Lettering::plain(SMALL_MM).italic().centred()),
    }
}

/// A name with its place.
struct Named<'a> {
    text: &'a str,
    lettering: Lettering,
    /// Middle of the letters.
    at: Spot,
    /// Its row above the tube and the line down to its part; none when it stands in the tube.
    above: Option<(u32, [Spot; 2])>,
}

impl Named<'_> {
    fn words(&self) -> Item {
        Item::Text {
            at: self.at + Spot::new(0.0, BASE_LINE_DROP * self.lettering.size_mm),
            text: self.text.to_owned(),
            lettering: self.lettering,
            turn_rad: 0.0,
            has_halo: true,
        }
    }
}

/// Most rows above the tube; beyond them names may touch.
const MOST_ROWS: u32 = 24;

/// Every name in its place: in the tube where it fits, else in the lowest row above where it lies on
/// no other and on no figure of `sizes`. Waste too short to name has none.
fn named<'a>(item: &'a CardItem, path: &BenchPath<'_>, sizes: &[Item]) -> Vec<Named<'a>> {
    let half = 0.5 * path.width_mm();
    let mut taken: Vec<Rect> = sizes.iter().filter_map(Item::letters).collect();
    let mut out = Vec::new();
    for part in &item.parts {
        let (text, lettering) = words(part);
        let width = lettering.width_mm(text);
        let room = path.on_paper_mm(part.to_mm - part.from_mm);
        let (at, along) = path.at(0.5 * (part.from_mm + part.to_mm));
        let in_tube = Named {
            text,
            lettering,
            at,
            above: None,
        };
        if part.mark.is_none() {
            if width <= room - 1.0 {
                out.push(in_tube);
            }
            continue;
        }
        let is_free = |name: &Named<'_>| {
            name.words().letters().is_none_or(|letters| {
                let roomy = letters.grown(0.5);
                taken.iter().all(|other| roomy.overlap_mm2(*other) <= 0.0)
            })
        };
        if width <= room - 4.0 && is_free(&in_tube) {
            taken.extend(in_tube.words().letters());
            out.push(in_tube);
            continue;
        }
        // On the inside of the bend, which is above.
        let up = along.quarter() * -1.0;
        let in_row = |row: u32| {
            let tip = at + up * (half + 6.0 + ROW_MM * f64::from(row));
            Named {
                text,
                lettering,
                at: tip + Spot::new(0.0, -2.6),
                above: Some((row, [at + up * (half - 2.0), tip])),
            }
        };
        let found = (0..MOST_ROWS)
            .map(in_row)
            .find(is_free)
            .unwrap_or_else(|| in_row(MOST_ROWS));
        taken.extend(found.words().letters());
        out.push(found);
    }
    out
}

/// Room that the names need above the tube.
pub(super) fn room_above_mm(item: &CardItem, path: &BenchPath<'_>, sizes: &[Item]) -> f64 {
    let names = named(item, path, sizes);
    let highest = names.iter().filter_map(|name| Some(name.above?.0)).max();
    12.0 + highest.map_or(0.0, |row| ROW_MM * f64::from(row + 1))
}

pub(super) fn labels(item: &CardItem, path: &BenchPath<'_>, sizes: &[Item]) -> Vec<Item> {
    let mut items = Vec::new();
    for name in named(item, path, sizes) {
        if let Some((_, [foot, tip])) = name.above {
            items.push(Item::line(foot, tip, Line::solid(Weight::Hair)));
        }
        items.push(name.words());
    }
    items
}
