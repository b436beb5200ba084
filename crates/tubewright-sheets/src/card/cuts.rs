//! The cuts on a card picture: the kerf black beside the mark, the number below; dashed where a face is
//! dressed and not sawn.

use super::path::BenchPath;
use super::{BladeSide, CardItem};
use crate::drawing::{BASE_LINE_DROP, Dash, Fill, Item, Lettering, Line, Spot, Weight};

/// Radius of the ring round a number, in mm of paper.
const RING_MM: f64 = 3.4;
/// From the tube to the first row of numbers.
const FIRST_ROW_MM: f64 = 8.0;
/// How thick the kerf is drawn: it is out of scale so that its side can be seen.
const KERF_MM: f64 = 1.6;
/// How thick it is at least where another ring is near.
const LEAST_KERF_MM: f64 = 0.5;
/// How much further a dressed ring reaches past the tube than a sawn one.
const DRESSED_MM: f64 = 2.0;
/// From one row of numbers to the next.
const ROW_STEP_MM: f64 = 2.0 * RING_MM + 2.4;

/// How thick the kerf of a cut is drawn: it must not hide the ring of another cut that lies where the blade runs.
fn kerf_mm(item: &CardItem, path: &BenchPath<'_>, number: u32, along_mm: f64, sense: f64) -> f64 {
    let others = item.cuts.iter().filter(|other| other.number != number);
    let beside = others.map(|other| path.on_paper_mm(sense * (other.along_mm - along_mm)));
    let gap_mm = beside
        .filter(|gap| *gap > 0.0)
        .fold(f64::INFINITY, f64::min);
    KERF_MM.min((0.5 * gap_mm).max(LEAST_KERF_MM))
}

/// Row of each cut's number: numbers that would touch go one row further out.
fn rows(item: &CardItem, path: &BenchPath<'_>) -> Vec<u32> {
    let mut order: Vec<usize> = (0..item.cuts.len()).collect();
    let along = |i: usize| item.cuts.get(i).map_or(0.0, |cut| cut.along_mm);
    order.sort_by(|&a, &b| along(a).total_cmp(&along(b)));
    let mut rows = vec![0; item.cuts.len()];
    let mut last_in_row: Vec<f64> = Vec::new();
    for i in order {
        let here = path.on_paper_mm(along(i));
        let free = last_in_row
            .iter()
            .position(|last| here - last >= 2.0 * RING_MM + 1.0);
        let row = free.unwrap_or(last_in_row.len());
        if let Some(last) = last_in_row.get_mut(row) {
            *last = here;
        } else {
            last_in_row.push(here);
        }
        if let Some(slot) = rows.get_mut(i) {
            *slot = u32::try_from(row).unwrap_or(0);
        }
    }
    rows
}

fn reach_mm(row: u32) -> f64 {
    FIRST_ROW_MM + f64::from(row) * ROW_STEP_MM
}

/// Room that the numbers need below the tube.
pub(super) fn room_below_mm(item: &CardItem, path: &BenchPath<'_>) -> f64 {
    let deepest = rows(item, path).into_iter().max().unwrap_or(0);
    reach_mm(deepest) + RING_MM + 3.0
}

pub(super) fn cuts(item: &CardItem, path: &BenchPath<'_>) -> Vec<Item> {
    let mut items = Vec::new();
    let half = 0.5 * path.width_mm();
    for (cut, row) in item.cuts.iter().zip(rows(item, path)) {
        let (at, along) = path.at(cut.along_mm);
        // The outside of the bend lies to the right hand of the travel: the bend turns up.
        let out = along.quarter();
        let centre = at + out * (half + reach_mm(row));
        let (foot, head) = (at + out * (half + 2.5), at - out * (half + 2.5));
        let sense = match cut.kerf {
            Some(BladeSide::Near) => Some(-1.0),
            Some(BladeSide::Far) => Some(1.0),
            None => None,
        };
        items.push(match sense {
            Some(sense) => {
                let thick_mm = kerf_mm(item, path, cut.number, cut.along_mm, sense);
                let beside = along * (sense * thick_mm);
                Item::Polygon {
                    spots: vec![foot, head, head + beside, foot + beside],
                    line: None,
                    fill: Fill::Solid,
                }
            }
            None => Item::line(
                foot + out * DRESSED_MM,
                head - out * DRESSED_MM,
                Line::new(Weight::Wide, Dash::Dashed),
            ),
        });
        items.push(Item::line(
            head,
            centre - out * RING_MM,
            Line::solid(Weight::Medium),
        ));
        items.push(Item::Circle {
            centre,
            radius_mm: RING_MM,
            line: Some(Line::solid(Weight::Medium)),
            fill: Fill::Paper,
        });
        items.push(Item::text(
            centre + Spot::new(0.0, BASE_LINE_DROP * 4.2),
            cut.number.to_string(),
            Lettering::plain(4.2).bold().centred(),
        ));
    }
    items
}
