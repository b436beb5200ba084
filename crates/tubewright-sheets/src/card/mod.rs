//! The picture on a cut card: one stock item from the side, its cuts, and where to mark them along
//! outside, inside, side and centre line.

mod cuts;
mod labels;
mod path;

use crate::drawing::{
    BASE_LINE_DROP, Dash, Dimension, Drawing, Fill, Item, Lettering, Line, RISING_RAD, Rect, Spot,
    Weight, hatch, moved,
};
use crate::figure::Figure;
use path::BenchPath;
use tubewright_geometry::cut::{MarkError, Marks, StockBend};

/// A stock item with what is cut from it. A straight has a bend of no angle and no far leg.
#[derive(Clone, Debug)]
pub struct CardItem {
    /// Name of the item ("bend 57 45").
    pub name: String,
    /// Its sizes; marks are measured from the near physical end.
    pub stock: StockBend,
    /// Cuts in the order of sawing.
    pub cuts: Vec<CardCut>,
    /// What the cuts leave, from the near end on.
    pub parts: Vec<CardPart>,
    /// How its lengths are written.
    pub lengths: CardLengths,
}

/// How lengths are written on a card: by whoever writes the words beside the picture, so that the two
/// never read differently. No unit is chosen here.
#[derive(Clone, Copy, Debug)]
pub struct CardLengths {
    /// The unit's sign ("mm").
    pub sign: &'static str,
    /// Writes millimetres that are marked or sawn, without the sign ("77.0").
    pub saw: fn(f64) -> String,
    /// Writes millimetres of a size that is named and not measured (diameter, radius), without the
    /// sign ("57").
    pub size: fn(f64) -> String,
}

/// One cut.
#[derive(Clone, Debug, PartialEq)]
pub struct CardCut {
    /// Number in the order of sawing, from 1.
    pub number: u32,
    /// Where its mark is along the centre line, in mm from the near physical end.
    pub along_mm: f64,
    /// On which side of the mark the blade takes its kerf; none where the face is not sawn but dressed down
    /// to its mark.
    pub kerf: Option<BladeSide>,
    /// What is said of it in the table ("blade beyond the mark").
    pub words: String,
}

/// On which side of a mark the blade runs.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum BladeSide {
    /// Toward the near end, on the left of the picture.
    Near,
    /// Toward the far end.
    Far,
}

/// A stretch between cuts.
#[derive(Clone, Debug, PartialEq)]
pub struct CardPart {
    /// Mark of the piece; none for an offcut or waste.
    pub mark: Option<String>,
    /// From here along the centre line, in mm from the near end.
    pub from_mm: f64,
    /// To here.
    pub to_mm: f64,
}

/// Why there is no card picture.
#[derive(Clone, Debug, PartialEq, thiserror::Error)]
#[non_exhaustive]
pub enum CardError {
    /// A cut lies past the item.
    #[error("{item}, cut {number}: {source}")]
    Cut {
        /// Name of the item.
        item: String,
        /// Number of the cut.
        number: u32,
        /// Why.
        source: MarkError,
    },
    /// The sizes are not those of a tube.
    #[error(
        "{item}: OD {od_mm} mm, radius {clr_mm} mm, length {length_mm} mm are not the sizes of a stock item"
    )]
    BadSize {
        /// Name of the item.
        item: String,
        /// Outer diameter in mm.
        od_mm: f64,
        /// Centre-line radius in mm.
        clr_mm: f64,
        /// Length along the centre line in mm.
        length_mm: f64,
    },
    /// The picture would be too narrow to read.
    #[error("{item}: {width_mm} mm of paper are too narrow for a cut card; give 90 mm at least")]
    TooNarrow {
        /// Name of the item.
        item: String,
        /// Width in mm.
        width_mm: f64,
    },
}

/// Greatest height of the picture itself, in mm of paper.
const TALLEST_MM: f64 = 110.0;
const EDGE_MM: f64 = 16.0;
/// A straight is drawn this thick at least, whatever its scale.
const BAR_MM: f64 = 14.0;

/// Draws the item from the side with a heading and a table of marks from the near end. `width_mm` is
/// the width of paper to fill.
///
/// # Errors
/// [`CardError`] for sizes that are not sound and cuts that are not on the item.
pub fn cut_card(item: &CardItem, width_mm: f64) -> Result<Drawing, CardError> {
    let mut drawing = Drawing::new(width_mm, 0.0, format!("Cut card: {}", item.name));
    let marks = checked_marks(item, width_mm)?;
    let foot = picture(item, width_mm, 12.0, &mut drawing) + 4.0;
    let rows = f64::from(u32::try_from(marks.len()).unwrap_or(u32::MAX));
    drawing.height_mm = foot + 12.0 + 5.2 * rows;
    let length_mm = item.stock.whole_length().centre_line_mm;
    drawing.push("head", head(item, length_mm));
    drawing.push("marks", table(&marks, item, foot, width_mm));
    Ok(drawing)
}

/// The picture alone: the item from the side, near end (A) at the left, the bend turning up, its
/// parts named, its cuts numbered, the kerf hatched on the side of the mark where the blade runs.
/// A straight is drawn thicker than to scale.
///
/// # Errors
/// As [`cut_card`].
pub fn cut_picture(item: &CardItem, width_mm: f64) -> Result<Drawing, CardError> {
    checked_marks(item, width_mm)?;
    let mut drawing = Drawing::new(width_mm, 0.0, format!("Cuts of {}", item.name));
    drawing.height_mm = picture(item, width_mm, 2.0, &mut drawing);
    Ok(drawing)
}

fn checked_marks(item: &CardItem, width_mm: f64) -> Result<Vec<(&CardCut, Marks)>, CardError> {
    let stock = &item.stock;
    let length_mm = stock.whole_length().centre_line_mm;
    let is_bend = stock.bend_rad > 1e-9;
    let sound = stock.od_mm > 0.0
        && length_mm > 0.0
        && length_mm < 20_000.0
        && stock.near_leg_mm >= 0.0
        && stock.far_leg_mm >= 0.0
        && (!is_bend || stock.clr_mm > 0.5 * stock.od_mm)
        && [stock.od_mm, stock.clr_mm, stock.bend_rad]
            .iter()
            .all(|x| x.is_finite());
    if !sound {
        return Err(CardError::BadSize {
            item: item.name.clone(),
            od_mm: stock.od_mm,
            clr_mm: stock.clr_mm,
            length_mm,
        });
    }
    if width_mm.is_nan() || width_mm < 90.0 {
        return Err(CardError::TooNarrow {
            item: item.name.clone(),
            width_mm,
        });
    }
    item.cuts
        .iter()
        .map(|cut| {
            stock
                .place_along(cut.along_mm)
                .and_then(|place| stock.marks_from_end(place))
                .map(|found| (cut, found))
                .map_err(|source| CardError::Cut {
                    item: item.name.clone(),
                    number: cut.number,
                    source,
                })
        })
        .collect()
}

/// Draws below `top_mm` and returns where it ends.
fn picture(item: &CardItem, width_mm: f64, top_mm: f64, drawing: &mut Drawing) -> f64 {
    let stock = &item.stock;
    let full = BenchPath::new(stock, 1.0, 0.0);
    let extent = full.extent();
    let scale = ((width_mm - 2.0 * EDGE_MM) / extent.width())
        .min(TALLEST_MM / extent.height())
        .min(1.0);
    let path = BenchPath::new(stock, scale, BAR_MM);
    let extent = path.extent();
    let sizes = sizes(item, &path);
    let names = labels::labels(item, &path, &sizes);
    let above = labels::room_above_mm(item, &path, &sizes);
    let below = cuts::room_below_mm(item, &path);
    let top = top_mm + above;
    let shift = Spot::new(
        EDGE_MM + 0.5 * (width_mm - 2.0 * EDGE_MM - extent.width()) - extent.min.x,
        top - extent.min.y,
    );
    let mut put = |name: &str, items: Vec<Item>| {
        drawing.push(name, items.iter().map(|i| moved(i, shift)).collect());
    };
    put("tube", tube(item, &path));
    put("cuts", cuts::cuts(item, &path));
    put("sizes", sizes);
    put("parts", names);
    put("ends", ends(&path));
    top + extent.height() + below
}

fn tube(item: &CardItem, path: &BenchPath<'_>) -> Vec<Item> {
    let whole = [0.0, path.length_mm()];
    let mut items = vec![Item::Polygon {
        spots: path.outline(whole),
        line: Some(Line::solid(Weight::Wide)),
        fill: Fill::Paper,
    }];
    for part in item.parts.iter().filter(|p| p.mark.is_none()) {
        items.extend(
            hatch(&path.outline([part.from_mm, part.to_mm]), RISING_RAD, 2.0)
                .into_iter()
                .map(|[a, b]| Item::line(a, b, Line::solid(Weight::Hair))),
        );
    }
    items.push(Item::Polyline {
        spots: path.line(whole, 0.0),
        line: Line::new(Weight::Hair, Dash::Centre),
    });
    items
}

/// The letters A and B before and after the item.
fn ends(path: &BenchPath<'_>) -> Vec<Item> {
    let mut items = Vec::new();
    for (along_mm, sense, letter) in [(0.0, -1.0, "A"), (path.length_mm(), 1.0, "B")] {
        let (at, along) = path.at(along_mm);
        let centre = at + along * (sense * 8.0);
        items.push(Item::rect(
            Rect::new(centre.x - 4.0, centre.y - 4.0, 8.0, 8.0),
            Some(Line::solid(Weight::Medium)),
            Fill::Paper,
        ));
        items.push(Item::text(
            centre + Spot::new(0.0, BASE_LINE_DROP * 6.0),
            letter,
            Lettering::plain(6.0).bold().centred(),
        ));
    }
    items
}

/// How far a dimension line stands off the tube, mm of paper.
const SIZE_OFF_MM: f64 = 7.0;
/// How much further when its figure would lie on another.
const SIZE_STEP_MM: f64 = 5.0;

/// The legs with their lengths, on the inside of the bend, and the tangent lines.
fn sizes(item: &CardItem, path: &BenchPath<'_>) -> Vec<Item> {
    let stock = &item.stock;
    let arc_mm = stock.clr_mm * stock.bend_rad;
    let stretch = |from: f64, to: f64, off_mm: f64| {
        let ((a, along), (b, _)) = (path.at(from), path.at(to));
        let side = along.quarter() * (-0.5 * path.width_mm());
        Item::Dimension(Dimension {
            from: a + side,
            to: b + side,
            off_mm: -off_mm,
            text: (item.lengths.saw)(to - from),
            size_mm: 3.4,
        })
    };
    let mut items = Vec::new();
    if stock.near_leg_mm > 1e-6 {
        items.push(stretch(0.0, stock.near_leg_mm, SIZE_OFF_MM));
    }
    if stock.far_leg_mm > 1e-6 {
        let from = stock.near_leg_mm + arc_mm;
        let far = |off_mm: f64| stretch(from, from + stock.far_leg_mm, off_mm);
        let near = items.first().and_then(Item::letters);
        let is_free = |size: &Item| match (size.letters(), near) {
            (Some(a), Some(b)) => a.overlap_mm2(b) <= 0.0,
            _ => true,
        };
        let close = far(SIZE_OFF_MM);
        items.push(if is_free(&close) {
            close
        } else {
            far(SIZE_OFF_MM + SIZE_STEP_MM)
        });
    }
    // Tangent lines: where the legs end and the bend begins.
    if stock.bend_rad > 1e-9 {
        for s in [stock.near_leg_mm, stock.near_leg_mm + arc_mm] {
            let (at, along) = path.at(s);
            let half = along.quarter() * (0.5 * path.width_mm());
            items.push(Item::line(
                at - half,
                at + half,
                Line::new(Weight::Narrow, Dash::Dashed),
            ));
        }
    }
    items
}

fn head(item: &CardItem, length_mm: f64) -> Vec<Item> {
    let (stock, l) = (&item.stock, &item.lengths);
    let from = format!("{} from the near end (left)", l.sign);
    let sizes = if stock.bend_rad > 1e-9 {
        let bend_deg = (stock.bend_rad.to_degrees() * 10.0).round() / 10.0;
        format!(
            "OD {} · bend {}° · CLR {} · {} along the centre line · {from}",
            (l.size)(stock.od_mm),
            Figure(bend_deg),
            (l.size)(stock.clr_mm),
            (l.saw)(length_mm)
        )
    } else {
        format!(
            "OD {} · straight {} long · {from}",
            (l.size)(stock.od_mm),
            (l.saw)(length_mm)
        )
    };
    vec![
        Item::text(
            Spot::new(4.0, 6.0),
            item.name.as_str(),
            Lettering::plain(4.4).bold(),
        ),
        Item::text(Spot::new(4.0, 10.4), sizes, Lettering::plain(2.6)),
    ]
}

fn table(marks: &[(&CardCut, Marks)], item: &CardItem, top: f64, width_mm: f64) -> Vec<Item> {
    let is_bend = item.stock.bend_rad > 1e-9;
    if marks.is_empty() {
        return Vec::new();
    }
    let share = |t: f64| 4.0 + t * (width_mm - 8.0);
    let heads: &[(f64, &str)] = if is_bend {
        &[
            (0.0, "cut"),
            (0.10, "outside"),
            (0.26, "inside"),
            (0.42, "side"),
            (0.58, "centre line"),
        ]
    } else {
        &[(0.0, "cut"), (0.10, "length")]
    };
    let small = Lettering::plain(2.4).grey();
    let mut items: Vec<Item> = heads
        .iter()
        .map(|(t, words)| Item::text(Spot::new(share(*t), top + 4.0), *words, small))
        .collect();
    let rule = |y: f64, weight| {
        Item::line(
            Spot::new(4.0, y),
            Spot::new(width_mm - 4.0, y),
            Line::solid(weight),
        )
    };
    items.push(rule(top + 5.4, Weight::Medium));
    let mut y = top + 5.4;
    for (cut, m) in marks {
        y += 5.2;
        let base = y - 1.3;
        let figures = [m.outside_mm, m.inside_mm, m.side_mm, m.centre_line_mm];
        items.push(Item::text(
            Spot::new(share(0.0), base),
            cut.number.to_string(),
            Lettering::plain(3.4).bold(),
        ));
        for ((t, _), mm) in heads.iter().skip(1).zip(figures) {
            items.push(Item::text(
                Spot::new(share(*t), base),
                (item.lengths.saw)(mm),
                Lettering::plain(3.4).bold(),
            ));
        }
        items.push(Item::text(
            Spot::new(share(if is_bend { 0.74 } else { 0.30 }), base),
            cut.words.as_str(),
            Lettering::plain(2.4),
        ));
        items.push(rule(y, Weight::Hair));
    }
    items
}
