//! The car from the side, from above and from behind, as large as a page takes them.

use super::room_mm;
use tubewright_packet::{Block, PacketPaper, Picture};
use tubewright_sheets::{Scene, ShopError, ViewName, ViewSizes, one_view, to_svg};

/// What margins, foot, heading, figures and captions take of a page's height, mm.
const BESIDE_VIEWS_MM: f64 = 116.0;
/// What a row of views more takes with its words, mm.
const ROW_MM: f64 = 7.0;
/// Width of the view from behind below the others: a car is less than half as wide as long.
const BEHIND_SHARE: f64 = 0.66;
/// No view is narrower on paper, mm: below it neither grid nor names can be read.
const LEAST_VIEW_MM: f64 = 60.0;
/// Widths are halved in on so often: to a tenth of a millimetre on paper.
const HALVINGS: u32 = 12;
/// Between two views side by side, mm.
const GUTTER_MM: f64 = 4.0;

/// Views below each other, each row from left to right, with their widths in mm.
type Rows = Vec<Vec<(ViewName, f64)>>;

/// All below each other.
fn in_a_stack(room_mm: f64, share: f64) -> Rows {
    let at = |name, of: f64| vec![(name, (room_mm * of * share).max(LEAST_VIEW_MM))];
    vec![
        at(ViewName::Side, 1.0),
        at(ViewName::Above, 1.0),
        at(ViewName::Behind, BEHIND_SHARE),
    ]
}

/// From above, and below it from the side and from behind, all to one scale: the view from above is as wide as that
/// from the side, or wider by `above` of what room it has beside.
fn behind_beside_side(sizes: &ViewSizes, room_mm: f64, share: f64, above: f64) -> Rows {
    let both_mm = ((room_mm - GUTTER_MM) * share).max(2.0 * LEAST_VIEW_MM);
    let scale = |name, width_mm: f64| sizes.scale(name, width_mm).unwrap_or(0.0);
    let (mut low, mut high) = (LEAST_VIEW_MM, both_mm - LEAST_VIEW_MM);
    for _ in 0..HALVINGS {
        let side_mm = 0.5 * (low + high);
        if scale(ViewName::Side, side_mm) < scale(ViewName::Behind, both_mm - side_mm) {
            low = side_mm;
        } else {
            high = side_mm;
        }
    }
    vec![
        vec![(ViewName::Above, low + above * (room_mm - low))],
        vec![(ViewName::Side, low), (ViewName::Behind, both_mm - low)],
    ]
}

/// The rows of views of which the smallest is drawn largest, together no higher than `high_mm` when they stand
/// in three rows; what is higher all the same, the page makes smaller.
fn rows_of(sizes: &ViewSizes, room_mm: f64, high_mm: f64) -> Rows {
    let height = |rows: &Rows| -> f64 {
        let of_row = |row: &Vec<(ViewName, f64)>| {
            let heights = row.iter();
            let heights = heights.filter_map(|(name, mm)| sizes.height_mm(*name, *mm).ok());
            ROW_MM + heights.fold(0.0, f64::max)
        };
        rows.iter().map(of_row).sum::<f64>() - 3.0 * ROW_MM
    };
    // The height grows with the share.
    let largest = |laid: &dyn Fn(f64) -> Rows| {
        let (mut fits, mut too_wide) = (0.0, 1.0);
        if height(&laid(1.0)) <= high_mm {
            return (1.0, laid(1.0));
        }
        for _ in 0..HALVINGS {
            let middle = 0.5 * (fits + too_wide);
            if height(&laid(middle)) > high_mm {
                too_wide = middle;
            } else {
                fits = middle;
            }
        }
        (fits, laid(fits))
    };
    let smallest = |rows: &Rows| {
        let scales = rows.iter().flatten();
        let scales = scales.filter_map(|(name, mm)| sizes.scale(*name, *mm).ok());
        scales.fold(f64::INFINITY, f64::min)
    };
    let (_, stack) = largest(&|share| in_a_stack(room_mm, share));
    let (share, _) = largest(&|share| behind_beside_side(sizes, room_mm, share, 0.0));
    let (_, beside) = largest(&|above| behind_beside_side(sizes, room_mm, share, above));
    if smallest(&beside) > smallest(&stack) {
        beside
    } else {
        stack
    }
}

/// What a view is seen from.
const fn seen_from(name: ViewName) -> &'static str {
    match name {
        ViewName::Side => "from the left side: front at the left",
        ViewName::Above => "from above: front at the left, the car's right side up",
        ViewName::Behind => "from behind: the car's right side at the right",
    }
}

/// The car from the side, from above and from behind, as large as one page takes them beside words of
/// `words_mm`; or why not.
pub(super) fn views(scene: &Scene, paper: PacketPaper, words: &str, words_mm: f64) -> Vec<Block> {
    let [_, page_mm] = paper.standing_mm();
    let not_made = |what: &str, why: &ShopError| Block::NotMade {
        what: what.to_owned(),
        why: why.to_string(),
    };
    let sizes = match ViewSizes::of(scene) {
        Ok(sizes) => sizes,
        Err(error) => return vec![not_made("the views", &error)],
    };
    let rows = rows_of(&sizes, room_mm(paper), page_mm - BESIDE_VIEWS_MM - words_mm);
    let mut blocks = Vec::new();
    for row in rows {
        let mut pictures = Vec::new();
        for (name, width_mm) in row {
            let from = seen_from(name);
            match one_view(scene, name, width_mm) {
                Ok(drawing) => pictures.push(Picture {
                    svg: to_svg(&drawing),
                    width_mm: drawing.width_mm,
                    height_mm: drawing.height_mm,
                    words: format!("{words}, {from}"),
                }),
                Err(error) => blocks.push(not_made(&format!("the view {from}"), &error)),
            }
        }
        if !pictures.is_empty() {
            blocks.push(Block::Pictures { pictures });
        }
    }
    blocks
}

#[cfg(test)]
mod tests {
    use super::*;
    use tubewright_geometry::{OrientedBox, Point, Solid};
    use tubewright_sheets::SceneBody;

    fn sizes(size: [f64; 3]) -> ViewSizes {
        let scene = Scene {
            bodies: vec![SceneBody {
                name: "car".to_owned(),
                class_words: "structure".to_owned(),
                solid: Solid::Box(OrientedBox::axis_aligned(
                    Point::ORIGIN,
                    size.map(|s| 0.5 * s),
                )),
                is_moving: false,
            }],
            ..Scene::default()
        };
        ViewSizes::of(&scene).unwrap_or_else(|error| unreachable!("{error}"))
    }

    /// However long a car is beside its width, all three views are drawn, none too small to read, and they fit the
    /// page together. A car as wide as it is long has the view from behind beside that from the side.
    #[test]
    fn every_view_is_drawn_as_large_as_the_page_lets() {
        for (size, is_beside) in [
            ([1700.0, 1700.0, 900.0], true),
            ([4800.0, 1700.0, 700.0], false),
            ([3000.0, 1600.0, 800.0], false),
        ] {
            let sizes = sizes(size);
            let rows = rows_of(&sizes, 184.0, 163.0);
            let mut high_mm = 0.0;
            for row in &rows {
                let wide_mm: f64 = row.iter().map(|(_, mm)| mm).sum();
                assert!(wide_mm <= 184.01, "{size:?} {rows:?}");
                let heights = row
                    .iter()
                    .filter_map(|(name, mm)| sizes.height_mm(*name, *mm).ok());
                high_mm += heights.fold(0.0, f64::max);
            }
            let views = rows.iter().flatten();
            assert!(
                views.clone().all(|(_, mm)| *mm >= LEAST_VIEW_MM),
                "{size:?} {rows:?}"
            );
            assert_eq!(views.count(), 3);
            assert!(high_mm <= 163.0 + ROW_MM, "{size:?} {high_mm}");
            assert!(high_mm > 140.0, "{size:?}: {high_mm} mm of 163 mm are used");
            if is_beside {
                assert_eq!(rows.len(), 2, "{rows:?}");
            }
        }
    }
}
