//! Wrap-round templates at true scale, with check rulers.

mod clock_strip;
mod ruler;
mod strip;
mod tiles;
mod unrolled;

pub use clock_strip::clock_strip;
pub use unrolled::{CURVE_TOLERANCE_MM, Unrolled};

use crate::drawing::{Drawing, Item, Layer, Lettering, Line, Rect, Spot, Weight, moved};
use crate::figure::Figure;
use crate::shop::Paper;
use ruler::{RULER_MM, ruler_4_in, ruler_100_mm};
use strip::Strip;

/// Which side of the curve is the piece and which the waste.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Keep {
    /// The tube lies at smaller lengths along it than the curve (a mitre at the downstream end).
    Below,
    /// The tube lies at larger lengths (a branch over its saddle).
    Above,
}

/// Which way the curve's angle grows round the tube, looking along the growing length.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum TurnSense {
    /// Clockwise, as clock angles do.
    Clockwise,
    /// Against the clock (a bend's sections, whose angle grows toward the bend's axis direction).
    Anticlockwise,
}

/// What a template says and how it is laid.
#[derive(Clone, Debug, PartialEq)]
pub struct TemplateSpec {
    /// Mark of the piece (`L3`).
    pub mark: String,
    /// What is cut ("mitre at J4, 57 mm tube").
    pub title: String,
    /// Build name, plan hash and date in one line, as they shall be printed.
    pub source_line: String,
    /// Which line of the tube the strip starts at ("short side").
    pub zero_words: String,
    /// What the arrow says ("downstream").
    pub arrow_words: String,
    /// Which side is the piece.
    pub keep: Keep,
    /// Which way the angle grows.
    pub q_turns: TurnSense,
    /// Clock angle in radians of the line where the strip starts; hours are written when known,
    /// else degrees.
    pub clock_at_zero_rad: Option<f64>,
    /// From the curve's nearest place to the square edge of the strip, in mm: what is laid round the
    /// tube on a line scribed square.
    pub lead_mm: f64,
}

/// A template: in one piece, and tiled over pages.
#[derive(Clone, Debug, PartialEq)]
pub struct Template {
    /// Strip and rulers on one drawing, as large as it needs.
    pub whole: Drawing,
    /// The same on pages of the paper asked for, each with its rulers; neighbours overlap by 10 mm.
    pub pages: Vec<Drawing>,
}

/// Why there is no template.
#[derive(Clone, Debug, PartialEq, thiserror::Error)]
#[non_exhaustive]
pub enum TemplateError {
    /// The cut reaches no line of the tube, or a number is not finite.
    #[error(
        "template for {mark}: the cut meets no line of the tube, so there is nothing to draw; check the plane and the sizes"
    )]
    NothingCut {
        /// Mark of the piece.
        mark: String,
    },
    /// A size is not sound.
    #[error("template for {mark}: {what} is {value}, which is not a sound size")]
    BadSize {
        /// Mark of the piece.
        mark: String,
        /// Which size.
        what: &'static str,
        /// What it is.
        value: f64,
    },
    /// The page has no room for a tile and the rulers.
    #[error(
        "template for {mark}: a page of {width_mm} by {height_mm} mm has no room for the 4 in ruler and the strip; take A4 or US Letter at least"
    )]
    PaperTooSmall {
        /// Mark of the piece.
        mark: String,
        /// Width of the page in mm.
        width_mm: f64,
        /// Height of the page in mm.
        height_mm: f64,
    },
}

/// Edge of the paper that a printer may not reach, in mm (common practice, no source).
const MARGIN_MM: f64 = 12.0;
const HEAD_MM: f64 = 21.0;
const FOOT_MM: f64 = 2.0 * RULER_MM + 4.0;

/// Draws the template at true scale.
///
/// Layers of the drawing: `waste`, `strip`, `clock`, `curve`, `words`, `registration`,
/// `ruler-100-mm`, `ruler-4-in`, `head`. The curve lies within [`CURVE_TOLERANCE_MM`] of the exact
/// one.
///
/// # Errors
/// [`TemplateError`] when nothing is cut, a size is not sound, or the page is too small.
pub fn wrap_template(
    unrolled: &Unrolled,
    spec: &TemplateSpec,
    paper: Paper,
) -> Result<Template, TemplateError> {
    let sound = |what: &'static str, value: f64, is_sound: bool| {
        if is_sound {
            Ok(())
        } else {
            Err(TemplateError::BadSize {
                mark: spec.mark.clone(),
                what,
                value,
            })
        }
    };
    let r = unrolled.tube_radius_mm;
    sound("the tube's radius in mm", r, r > 0.0 && r < 1000.0)?;
    let t = unrolled.paper_mm;
    sound("the paper's thickness in mm", t, (0.0..=3.0).contains(&t))?;
    let lead = spec.lead_mm;
    sound("the lead in mm", lead, (12.0..=2000.0).contains(&lead))?;
    let extent = unrolled
        .extent()
        .filter(|[lo, hi]| hi[1] - lo[1] < 5000.0)
        .ok_or_else(|| TemplateError::NothingCut {
            mark: spec.mark.clone(),
        })?;
    let strip = strip::strip(unrolled, spec, extent);
    let whole = whole(unrolled, spec, &strip);
    let pages = tiles::pages(unrolled, spec, &strip, paper)?;
    Ok(Template { whole, pages })
}

fn whole(unrolled: &Unrolled, spec: &TemplateSpec, strip: &Strip) -> Drawing {
    let width = (strip.size.x + 8.0).max(112.0) + 2.0 * MARGIN_MM;
    let height = HEAD_MM + strip.size.y + 8.0 + FOOT_MM + 2.0 * MARGIN_MM;
    let mut drawing = Drawing::new(width, height, format!("{}: {}", spec.mark, spec.title));
    let origin = Spot::new(MARGIN_MM + 4.0, MARGIN_MM + HEAD_MM);
    for layer in &strip.layers {
        drawing.layers.push(Layer {
            name: layer.name.clone(),
            items: layer.items.iter().map(|i| moved(i, origin)).collect(),
        });
    }
    furnish(&mut drawing, unrolled, spec, width - 2.0 * MARGIN_MM, None);
    drawing
}

/// Head line above, rulers at the foot.
fn furnish(
    drawing: &mut Drawing,
    unrolled: &Unrolled,
    spec: &TemplateSpec,
    room_mm: f64,
    tile_words: Option<&str>,
) {
    let at = Spot::new(MARGIN_MM, MARGIN_MM);
    let foot = drawing.height_mm - MARGIN_MM - RULER_MM + 5.0;
    let (d, girth) = (2.0 * unrolled.tube_radius_mm, unrolled.girth_mm());
    let fit = |words: &str, lettering: Lettering| {
        let width = lettering.width_mm(words);
        Lettering {
            size_mm: lettering.size_mm * (room_mm / width).min(1.0),
            ..lettering
        }
    };
    let head = format!("{}  {}", spec.mark, spec.title);
    let sizes = format!(
        "Tube {} mm OD. Once round the paper: {} mm, paper of {} mm reckoned in. {}",
        Figure(d),
        Figure((girth * 10.0).round() / 10.0),
        Figure(unrolled.paper_mm),
        tile_words.unwrap_or("")
    );
    let order = "Print at 100 %, no scaling. Lay a steel rule on both rulers before you cut.";
    let lines: [(&str, Lettering, f64); 4] = [
        (&head, Lettering::plain(4.2).bold(), 3.4),
        (&sizes, Lettering::plain(2.6), 7.4),
        (order, Lettering::plain(2.6).bold(), 11.0),
        (&spec.source_line, Lettering::plain(2.2).grey(), 14.4),
    ];
    let items = lines
        .into_iter()
        .map(|(words, lettering, dy)| {
            Item::text(at + Spot::new(0.0, dy), words, fit(words, lettering))
        })
        .collect();
    drawing.push("head", items);
    drawing.push("ruler-4-in", ruler_4_in(Spot::new(MARGIN_MM + 2.0, foot)));
    drawing.push(
        "ruler-100-mm",
        ruler_100_mm(Spot::new(MARGIN_MM + 2.0, foot - RULER_MM - 1.0)),
    );
}

/// A thin frame that shows what a page holds of the strip.
fn window_frame(window: Rect) -> Item {
    Item::rect(
        window,
        Some(Line::solid(Weight::Hair).grey()),
        crate::drawing::Fill::Open,
    )
}
