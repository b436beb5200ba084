//! What every sheet carries round its pictures: border, title strip, scale bar, legend, axes.

use super::view::View;
use super::{Paper, TitleBlock};
use crate::drawing::{BASE_LINE_DROP, Fill, Item, Lettering, Line, Rect, Spot, Weight, arrow};
use crate::figure::Figure;
use crate::scene::DrawnUnit;

/// Margins of the border in mm (ISO 5457: 20 mm at the filing edge, 10 mm elsewhere).
pub(crate) const FILING_MM: f64 = 20.0;
pub(crate) const MARGIN_MM: f64 = 10.0;
/// Height of the title strip in mm.
pub(crate) const STRIP_MM: f64 = 22.0;

pub(crate) fn frame(paper: Paper) -> Rect {
    Rect {
        min: Spot::new(FILING_MM, MARGIN_MM),
        max: Spot::new(paper.width_mm - MARGIN_MM, paper.height_mm - MARGIN_MM),
    }
}

/// Border and title strip.
pub(crate) fn border(paper: Paper, block: &TitleBlock, scale_words: &str, unit: &str) -> Vec<Item> {
    let frame = frame(paper);
    let top = frame.max.y - STRIP_MM;
    let mut items = vec![
        Item::rect(frame, Some(Line::solid(Weight::ExtraWide)), Fill::Open),
        Item::line(
            Spot::new(frame.min.x, top),
            Spot::new(frame.max.x, top),
            Line::solid(Weight::Wide),
        ),
    ];
    // Centring marks in the middle of each side.
    let c = frame.centre();
    for (edge, out) in [
        (Spot::new(c.x, frame.min.y), Spot::new(0.0, -5.0)),
        (Spot::new(c.x, frame.max.y), Spot::new(0.0, 5.0)),
        (Spot::new(frame.min.x, c.y), Spot::new(-5.0, 0.0)),
        (Spot::new(frame.max.x, c.y), Spot::new(5.0, 0.0)),
    ] {
        items.push(Item::line(edge, edge + out, Line::solid(Weight::Wide)));
    }
    let sheet = block.sheet.as_deref().unwrap_or("1 of 1");
    // (share of the width, heading, words, letter size)
    let cells: [(f64, &str, &str, f64); 7] = [
        (0.30, "Build", &block.build, 5.0),
        (0.20, "Sheet", &block.sheet_name, 3.6),
        (0.09, "Scale", scale_words, 3.6),
        (0.09, "Units", unit, 3.6),
        (0.11, "Date", &block.date, 3.2),
        (0.13, "Plan", &block.plan_hash, 3.0),
        (0.08, "Page", sheet, 3.2),
    ];
    let mut x = frame.min.x;
    let note_height = if block.note.is_some() { 7.0 } else { 0.0 };
    for (i, (share, heading, words, size)) in cells.into_iter().enumerate() {
        let width = share * frame.width();
        if i > 0 {
            items.push(Item::line(
                Spot::new(x, top),
                Spot::new(x, frame.max.y - note_height),
                Line::solid(Weight::Narrow),
            ));
        }
        items.push(Item::text(
            Spot::new(x + 1.5, top + 3.2),
            heading,
            Lettering::plain(1.9).grey(),
        ));
        let lettering = fitted(words, Lettering::plain(size).bold(), width - 3.0);
        items.push(Item::text(
            Spot::new(
                x + 1.5,
                top + 3.2
                    + 0.5 * (STRIP_MM - note_height - 3.2)
                    + BASE_LINE_DROP * lettering.size_mm,
            ),
            words,
            lettering,
        ));
        x += width;
    }
    if let Some(note) = &block.note {
        let y = frame.max.y - note_height;
        items.push(Item::line(
            Spot::new(frame.min.x, y),
            Spot::new(frame.max.x, y),
            Line::solid(Weight::Narrow),
        ));
        let lettering = fitted(note, Lettering::plain(2.8).italic(), frame.width() - 4.0);
        items.push(Item::text(
            Spot::new(
                frame.min.x + 1.5,
                y + 0.5 * note_height + BASE_LINE_DROP * lettering.size_mm,
            ),
            note.as_str(),
            lettering,
        ));
    }
    items
}

/// The same letters, smaller where the words would not fit.
fn fitted(words: &str, lettering: Lettering, room_mm: f64) -> Lettering {
    let width = lettering.width_mm(words);
    let size_mm = if width > room_mm {
        lettering.size_mm * room_mm / width
    } else {
        lettering.size_mm
    };
    Lettering {
        size_mm,
        ..lettering
    }
}

/// Heading of a view with its scale, underlined, and the two axes beside it.
pub(crate) fn heading(view: &View, scale_words: &str) -> Vec<Item> {
    let words = view.name.heading().to_uppercase();
    let lettering = Lettering::plain(3.6).bold();
    let at = Spot::new(view.window.min.x, view.window.min.y - 7.5);
    let width = lettering.width_mm(&words);
    let mut items = vec![
        Item::text(at, words, lettering),
        Item::text(
            at + Spot::new(width + 3.0, 0.0),
            scale_words,
            Lettering::plain(3.0),
        ),
        Item::line(
            at + Spot::new(0.0, 1.2),
            at + Spot::new(width, 1.2),
            Line::solid(Weight::Medium),
        ),
    ];
    items.extend(axes(
        view,
        Spot::new(view.window.max.x - 24.0, view.window.min.y - 5.2),
    ));
    items
}

fn axes(view: &View, at: Spot) -> Vec<Item> {
    let line = Line::solid(Weight::Medium);
    let [(right, right_words), (up, up_words)] = view.name.axis_words();
    let (tip_right, tip_up) = (at + Spot::new(8.0, 0.0), at + Spot::new(0.0, -8.0));
    let lettering = Lettering::plain(2.1);
    vec![
        Item::line(at, tip_right, line),
        arrow(tip_right, Spot::new(1.0, 0.0)),
        Item::line(at, tip_up, line),
        arrow(tip_up, Spot::new(0.0, -1.0)),
        Item::text(
            tip_right + Spot::new(0.8, 0.7),
            format!("{right} {right_words}"),
            lettering,
        ),
        Item::text(
            tip_up + Spot::new(1.0, 1.6),
            format!("{up} {up_words}"),
            lettering,
        ),
    ]
}

/// A bar of alternating fields with lengths of the car, at the given place.
pub(crate) fn scale_bar(at: Spot, scale: f64, step_mm: f64, unit: DrawnUnit) -> Vec<Item> {
    let field = step_mm * scale;
    let mut items = Vec::new();
    let line = Line::solid(Weight::Narrow);
    for i in 0..4 {
        let rect = Rect::new(at.x + field * f64::from(i), at.y, field, 1.6);
        items.push(Item::rect(
            rect,
            Some(line),
            if i % 2 == 0 { Fill::Solid } else { Fill::Paper },
        ));
    }
    for i in 0..=4 {
        let sign = if i == 4 {
            format!(" {}", unit.sign())
        } else {
            String::new()
        };
        items.push(Item::text(
            at + Spot::new(field * f64::from(i), 4.4),
            format!("{}{sign}", Figure(step_mm * f64::from(i) / unit.mm())),
            Lettering::plain(2.1).centred(),
        ));
    }
    items
}
