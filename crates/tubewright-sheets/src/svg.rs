//! Drawings as SVG at true scale: the file's own millimetres are the paper's.

use core::fmt::Write as _;

use crate::drawing::{Anchor, Drawing, Fill, Item, Lettering, Line, Spot};
use crate::figure::Figure;
use tubewright_geometry::math;

/// Faces asked for, in order: upright sans-serif letters that are everywhere.
const FACES: &str = "'Liberation Sans', Arial, Helvetica, 'DejaVu Sans', sans-serif";

/// The drawing as one SVG document with `width` and `height` in millimetres and a view box in
/// millimetres. Coordinates are written to 0.001 mm. The same drawing gives the same bytes.
#[must_use]
pub fn to_svg(drawing: &Drawing) -> String {
    let (w, h) = (Figure(drawing.width_mm), Figure(drawing.height_mm));
    let mut out = String::new();
    // Writing to a String cannot fail.
    let _ = writeln!(
        out,
        "<svg xmlns=\"http://www.w3.org/2000/svg\" width=\"{w}mm\" height=\"{h}mm\" \
         viewBox=\"0 0 {w} {h}\" font-family=\"{FACES}\" fill=\"none\" stroke-linejoin=\"round\">"
    );
    let _ = writeln!(out, "<title>{}</title>", escaped(&drawing.title));
    let _ = writeln!(out, "<rect width=\"{w}\" height=\"{h}\" fill=\"#fff\"/>");
    for layer in &drawing.layers {
        let _ = writeln!(out, "<g data-layer=\"{}\">", escaped(&layer.name));
        for item in &layer.items {
            write_item(&mut out, item);
        }
        out.push_str("</g>\n");
    }
    out.push_str("</svg>\n");
    out
}

fn write_item(out: &mut String, item: &Item) {
    match item {
        Item::Polyline { spots, line } => {
            let _ = writeln!(out, "<path d=\"{}\"{}/>", path(spots, false), stroke(line));
        }
        Item::Polygon { spots, line, fill } => {
            let _ = writeln!(
                out,
                "<path d=\"{}\"{}{}/>",
                path(spots, true),
                line.as_ref().map(stroke).unwrap_or_default(),
                filled(*fill)
            );
        }
        Item::Circle {
            centre,
            radius_mm,
            line,
            fill,
        } => {
            let _ = writeln!(
                out,
                "<circle cx=\"{}\" cy=\"{}\" r=\"{}\"{}{}/>",
                Figure(centre.x),
                Figure(centre.y),
                Figure(*radius_mm),
                line.as_ref().map(stroke).unwrap_or_default(),
                filled(*fill)
            );
        }
        Item::Arc {
            centre,
            radius_mm,
            from_rad,
            sweep_rad,
            line,
        } => {
            let from = *centre + Spot::toward(*from_rad) * *radius_mm;
            let to = *centre + Spot::toward(from_rad + sweep_rad) * *radius_mm;
            let _ = writeln!(
                out,
                "<path d=\"M{} {}A{r} {r} 0 {} {} {} {}\"{}/>",
                Figure(from.x),
                Figure(from.y),
                u8::from(sweep_rad.abs() > math::PI),
                u8::from(*sweep_rad > 0.0),
                Figure(to.x),
                Figure(to.y),
                stroke(line),
                r = Figure(*radius_mm),
            );
        }
        Item::Band {
            spots,
            width_mm,
            line,
            fill,
        } => write_band(out, spots, *width_mm, line.as_ref(), *fill),
        Item::Text {
            at,
            text,
            lettering,
            turn_rad,
            has_halo,
        } => write_text(out, *at, text, lettering, *turn_rad, *has_halo),
        Item::Dimension(dimension) => {
            for part in dimension.items() {
                write_item(out, &part);
            }
        }
        Item::Group { tag, items } => {
            let _ = writeln!(out, "<g data-tag=\"{}\">", escaped(tag));
            for part in items {
                write_item(out, part);
            }
            out.push_str("</g>\n");
        }
    }
}

/// Two strokes over each other: the outer one leaves its rim as the two edges.
fn write_band(out: &mut String, spots: &[Spot], width_mm: f64, line: Option<&Line>, fill: Fill) {
    let d = path(spots, false);
    let mut stroke = |colour: &str, width_mm: f64| {
        let _ = writeln!(
            out,
            "<path d=\"{d}\" stroke=\"{colour}\" stroke-width=\"{}\"/>",
            Figure(width_mm.max(0.0))
        );
    };
    let mut inner_mm = width_mm;
    if let Some(line) = line {
        stroke(line.ink.css(), width_mm);
        inner_mm -= 2.0 * line.weight.mm();
    }
    stroke(fill.css().unwrap_or("#fff"), inner_mm);
}

fn write_text(
    out: &mut String,
    at: Spot,
    text: &str,
    lettering: &Lettering,
    turn_rad: f64,
    has_halo: bool,
) {
    let (x, y) = (Figure(at.x), Figure(at.y));
    let _ = write!(
        out,
        "<text x=\"{x}\" y=\"{y}\" font-size=\"{}\"",
        Figure(lettering.size_mm)
    );
    match lettering.anchor {
        Anchor::Start => {}
        Anchor::Middle => out.push_str(" text-anchor=\"middle\""),
        Anchor::End => out.push_str(" text-anchor=\"end\""),
    }
    if lettering.is_bold {
        out.push_str(" font-weight=\"bold\"");
    }
    if lettering.is_italic {
        out.push_str(" font-style=\"italic\"");
    }
    if turn_rad.abs() > 1e-9 {
        let _ = write!(
            out,
            " transform=\"rotate({} {x} {y})\"",
            Figure(turn_rad.to_degrees())
        );
    }
    let ink = lettering.ink.css();
    // The rim is a copy beneath: `paint-order` is not known to every reader.
    if has_halo {
        let rest = format!(
            " stroke=\"#fff\" stroke-width=\"{}\" fill=\"#fff\">{}</text>\n",
            Figure((lettering.size_mm * 0.3).min(0.9)),
            escaped(text)
        );
        let start = out.rfind("<text").unwrap_or(0);
        let head = out.get(start..).unwrap_or_default().to_owned();
        out.push_str(&rest);
        out.push_str(&head);
    }
    let _ = writeln!(out, " fill=\"{ink}\">{}</text>", escaped(text));
}

fn path(spots: &[Spot], closed: bool) -> String {
    let mut d = String::new();
    for (i, spot) in spots.iter().enumerate() {
        let _ = write!(
            d,
            "{}{} {}",
            if i == 0 { 'M' } else { 'L' },
            Figure(spot.x),
            Figure(spot.y)
        );
    }
    if closed {
        d.push('Z');
    }
    d
}

fn stroke(line: &Line) -> String {
    let mut s = format!(
        " stroke=\"{}\" stroke-width=\"{}\"",
        line.ink.css(),
        Figure(line.weight.mm())
    );
    let pattern = line.dash.pattern_mm();
    if !pattern.is_empty() {
        let lengths: Vec<String> = pattern.iter().map(|&mm| Figure(mm).to_string()).collect();
        let _ = write!(s, " stroke-dasharray=\"{}\"", lengths.join(" "));
    }
    s
}

fn filled(fill: Fill) -> String {
    fill.css()
        .map(|colour| format!(" fill=\"{colour}\""))
        .unwrap_or_default()
}

/// Text made safe between tags and inside quotes; characters that XML cannot hold become `?`.
fn escaped(text: &str) -> String {
    let mut out = String::with_capacity(text.len());
    for c in text.chars() {
        match c {
            '&' => out.push_str("&amp;"),
            '<' => out.push_str("&lt;"),
            '>' => out.push_str("&gt;"),
            '"' => out.push_str("&quot;"),
            '\t' | '\n' | '\r' => out.push(' '),
            c if (c as u32) < 0x20 || c == '\u{fffe}' || c == '\u{ffff}' => out.push('?'),
            c => out.push(c),
        }
    }
    out
}
