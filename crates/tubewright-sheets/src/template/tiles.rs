//! A strip longer than the paper, on several pages that are joined at crosses.

use super::strip::Strip;
use super::{
    FOOT_MM, HEAD_MM, MARGIN_MM, TemplateError, TemplateSpec, Unrolled, furnish, window_frame,
};
use crate::drawing::{
    Drawing, Item, Layer, Lettering, Line, Rect, Spot, Weight, clip_segment, moved,
};
use crate::shop::Paper;

/// What neighbouring pages show twice, in mm.
const OVERLAP_MM: f64 = 10.0;

pub(crate) fn pages(
    unrolled: &Unrolled,
    spec: &TemplateSpec,
    strip: &Strip,
    paper: Paper,
) -> Result<Vec<Drawing>, TemplateError> {
    // The registration crosses stand 3 mm out of the strip: 4 mm of room round it.
    let room = Rect {
        min: Spot::new(MARGIN_MM, MARGIN_MM + HEAD_MM),
        max: Spot::new(
            paper.width_mm - MARGIN_MM,
            paper.height_mm - MARGIN_MM - FOOT_MM,
        ),
    };
    if room.width() < 110.0 || room.height() < 40.0 {
        return Err(TemplateError::PaperTooSmall {
            mark: spec.mark.clone(),
            width_mm: paper.width_mm,
            height_mm: paper.height_mm,
        });
    }
    let need = strip.size + Spot::new(8.0, 8.0);
    let (columns, rows) = (tiles(need.x, room.width()), tiles(need.y, room.height()));
    let mut pages = Vec::new();
    for row in 0..rows {
        for column in 0..columns {
            let step = Spot::new(room.width() - OVERLAP_MM, room.height() - OVERLAP_MM);
            // What of the strip's own coordinates this page shows.
            let from = Spot::new(
                f64::from(column) * step.x - 4.0,
                f64::from(row) * step.y - 4.0,
            );
            let mut drawing = Drawing::new(
                paper.width_mm,
                paper.height_mm,
                format!("{}: {}", spec.mark, spec.title),
            );
            for layer in &strip.layers {
                let items: Vec<Item> = layer
                    .items
                    .iter()
                    .flat_map(|item| clipped(&moved(item, room.min - from), room))
                    .collect();
                if !items.is_empty() {
                    drawing.layers.push(Layer {
                        name: layer.name.clone(),
                        items,
                    });
                }
            }
            let count = rows * columns;
            let words = (count > 1).then(|| {
                format!(
                    "Page {} of {count}: join at the crosses.",
                    row * columns + column + 1
                )
            });
            if count > 1 {
                drawing.push("join", joins(room, [column, row], [columns, rows]));
            }
            furnish(
                &mut drawing,
                unrolled,
                spec,
                paper.width_mm - 2.0 * MARGIN_MM,
                words.as_deref(),
            );
            pages.push(drawing);
        }
    }
    Ok(pages)
}

fn tiles(need_mm: f64, room_mm: f64) -> u32 {
    let mut count = 1;
    while f64::from(count) * (room_mm - OVERLAP_MM) + OVERLAP_MM < need_mm && count < 100 {
        count += 1;
    }
    count
}

/// Crosses in the middle of each overlap, lettered alike on both pages.
fn joins(room: Rect, [column, row]: [u32; 2], [columns, rows]: [u32; 2]) -> Vec<Item> {
    let hair = Line::solid(Weight::Hair);
    let mut items = vec![window_frame(room)];
    let letter = |i: u32| char::from_u32(u32::from(b'A') + i % 26).unwrap_or('A');
    let mut cross = |c: Spot, name: String| {
        items.push(Item::line(
            c - Spot::new(4.0, 0.0),
            c + Spot::new(4.0, 0.0),
            hair,
        ));
        items.push(Item::line(
            c - Spot::new(0.0, 4.0),
            c + Spot::new(0.0, 4.0),
            hair,
        ));
        items.push(Item::text(
            c + Spot::new(0.8, -0.8),
            name,
            Lettering::plain(2.2),
        ));
    };
    let half = 0.5 * OVERLAP_MM;
    let quarters = [0.25, 0.75];
    for (shown, x, name) in [
        (column > 0, room.min.x + half, column.wrapping_sub(1)),
        (column + 1 < columns, room.max.x - half, column),
    ] {
        for (i, t) in (1..).zip(quarters) {
            if shown {
                let y = room.min.y + t * room.height();
                cross(Spot::new(x, y), format!("{}{}{i}", letter(name), row + 1));
            }
        }
    }
    for (shown, y, name) in [
        (row > 0, room.min.y + half, row.wrapping_sub(1)),
        (row + 1 < rows, room.max.y - half, row),
    ] {
        for (i, t) in (1..).zip(quarters) {
            if shown {
                let x = room.min.x + t * room.width();
                cross(
                    Spot::new(x, y),
                    format!("{}v{}{i}", letter(name), column + 1),
                );
            }
        }
    }
    items
}

/// What a window shows of an item.
fn clipped(item: &Item, window: Rect) -> Vec<Item> {
    match item {
        Item::Polyline { spots, line } => spots
            .windows(2)
            .filter_map(|pair| match pair {
                [a, b] => clip_segment(*a, *b, window).map(|[a, b]| Item::line(a, b, *line)),
                _ => None,
            })
            .collect(),
        Item::Polygon { spots, .. } if spots.iter().all(|s| window.holds(*s)) => vec![item.clone()],
        Item::Text { at, .. } if window.holds(*at) => vec![item.clone()],
        Item::Arc { centre, .. } | Item::Circle { centre, .. } if window.holds(*centre) => {
            vec![item.clone()]
        }
        _ => Vec::new(),
    }
}
