//! A strip that is wrapped round any tube of its size: a square edge to scribe along, and degrees of
//! clock with their millimetres round the outside.

use super::strip::{Strip, TAB_MM, outline, registration};
use super::{Template, TemplateError, TemplateSpec, TurnSense, Unrolled, tiles, whole};
use crate::drawing::{Item, Layer, Lettering, Line, Spot, Weight, arrow};
use crate::figure::Figure;
use crate::shop::Paper;
use tubewright_geometry::math;

/// Height of the strip: a hand's breadth lies flat on a tube without rolling.
const HEIGHT_MM: f64 = 52.0;

/// The clock strip for a tube of `od_mm`, on paper of `paper_mm` thickness. `source_line` is printed
/// in its head (build, plan, date).
///
/// Laid round the tube with the arrow downstream and zero on a witness line, plus degrees are
/// clockwise looking downstream. Its upper edge is square to the tube when its ends meet in line.
///
/// # Errors
/// As [`super::wrap_template`].
pub fn clock_strip(
    od_mm: f64,
    paper_mm: f64,
    source_line: &str,
    paper: Paper,
) -> Result<Template, TemplateError> {
    let mark = format!("Ø{}", Figure((od_mm * 10.0).round() / 10.0));
    for (what, value, is_sound) in [
        (
            "the tube's diameter in mm",
            od_mm,
            od_mm > 5.0 && od_mm < 1000.0,
        ),
        (
            "the paper's thickness in mm",
            paper_mm,
            (0.0..=3.0).contains(&paper_mm),
        ),
    ] {
        if !is_sound {
            return Err(TemplateError::BadSize { mark, what, value });
        }
    }
    let unrolled = Unrolled {
        tube_radius_mm: 0.5 * od_mm,
        paper_mm,
        lines: vec![vec![[0.0, 0.0], [math::PI * (od_mm + paper_mm), 0.0]]],
        is_hole: false,
    };
    let spec = TemplateSpec {
        mark,
        title: "clock strip: degrees round the tube, and a square edge".to_owned(),
        source_line: source_line.to_owned(),
        zero_words: "0 on the witness line".to_owned(),
        arrow_words: "downstream".to_owned(),
        keep: super::Keep::Below,
        q_turns: TurnSense::Clockwise,
        clock_at_zero_rad: Some(0.0),
        lead_mm: HEIGHT_MM,
    };
    let strip = strip(&unrolled, od_mm);
    let drawing = whole(&unrolled, &spec, &strip);
    let pages = tiles::pages(&unrolled, &spec, &strip, paper)?;
    Ok(Template {
        whole: drawing,
        pages,
    })
}

fn strip(unrolled: &Unrolled, od_mm: f64) -> Strip {
    let width = unrolled.girth_mm();
    let layer = |name: &str, items: Vec<Item>| Layer {
        name: name.to_owned(),
        items,
    };
    let edge = Item::line(
        Spot::default(),
        Spot::new(width, 0.0),
        Line::solid(Weight::Medium),
    );
    Strip {
        layers: vec![
            layer("strip", outline(unrolled, width, HEIGHT_MM)),
            layer("clock", ticks(width, od_mm)),
            layer("curve", vec![edge]),
            layer("words", words(width)),
            layer("registration", registration(width, HEIGHT_MM)),
        ],
        size: Spot::new(width + TAB_MM, HEIGHT_MM),
    }
}

/// Least distance between two figures, mm of paper.
const FIGURES_MM: f64 = 7.0;

fn ticks(width: f64, od_mm: f64) -> Vec<Item> {
    let mut items = Vec::new();
    let line = |x: f64, from: f64, to: f64, weight: Weight| {
        Item::line(Spot::new(x, from), Spot::new(x, to), Line::solid(weight))
    };
    // On a thin tube only every sixth tick has room for its figure.
    let figured = if width / 24.0 >= FIGURES_MM { 3 } else { 6 };
    for step in 0..=72 {
        let degrees = f64::from(step) * 5.0;
        let x = width * degrees / 360.0;
        if step % 18 == 0 {
            items.push(line(x, 0.0, 7.0, Weight::Medium));
            items.push(line(x, HEIGHT_MM - 7.0, HEIGHT_MM, Weight::Medium));
        } else if step % 3 == 0 {
            items.push(line(x, 0.0, 7.0, Weight::Narrow));
        } else {
            items.push(line(x, 0.0, 4.0, Weight::Hair));
        }
        if step % figured != 0 {
            continue;
        }
        let signed = if degrees > 180.0 && step < 72 {
            degrees - 360.0
        } else if step == 72 {
            0.0
        } else {
            degrees
        };
        let sign = if signed > 0.0 && signed < 180.0 {
            "+"
        } else {
            ""
        };
        // At the ends the figure stands inside the strip.
        let (at, hang): (f64, fn(Lettering) -> Lettering) = match step {
            0 => (x + 0.8, |lettering| lettering),
            72 => (x - 0.8, Lettering::ending),
            _ => (x, Lettering::centred),
        };
        items.push(Item::text(
            Spot::new(at, 10.4),
            format!("{sign}{}", Figure(signed)),
            hang(Lettering::plain(2.7).bold()),
        ));
        let round = math::PI * od_mm * signed / 360.0;
        items.push(Item::text(
            Spot::new(at, 13.8),
            format!("{round:.1}"),
            hang(Lettering::plain(2.0)),
        ));
    }
    items
}

fn words(width: f64) -> Vec<Item> {
    let foot = Spot::new(0.06 * width, 46.0);
    let tip = foot - Spot::new(0.0, 26.0);
    let mut items = vec![
        Item::line(foot, tip, Line::solid(Weight::Medium)),
        arrow(tip, Spot::new(0.0, -1.0)),
    ];
    let lines = [
        "This side out, arrow downstream, 0 on the witness line.",
        "Large: degrees, plus is clockwise looking downstream.",
        "Small: the same in mm round the outside of the tube.",
        "Square cut: bring the ends together in line and",
        "scribe along the edge with the ticks.",
    ];
    for (line, y) in lines.into_iter().zip([21.0, 25.4, 29.8, 34.2, 38.6]) {
        items.push(Item::text(
            Spot::new(0.06 * width + 4.0, y),
            line,
            Lettering::plain(2.8),
        ));
    }
    items
}
