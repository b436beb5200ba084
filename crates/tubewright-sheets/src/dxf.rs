//! Drawings as DXF, release 12 (`AC1009`): LINE, POLYLINE, ARC, CIRCLE, TEXT and SOLID in
//! millimetres, y up.
//!
//! Group codes and tables after "AutoCAD Release 12 DXF" as common programs read it (from memory).
//! Release 12 knows no unit; the unit is stated in a comment at the head and by `$MEASUREMENT`-free
//! plain millimetres.

use core::fmt::Write as _;

use crate::drawing::{Anchor, Dash, Drawing, Fill, Item, Line, Spot};

/// The drawing as one DXF text. Coordinates are written to 1e-6 mm; y is turned to point up, so
/// that the sheet's lower left corner is the origin. White fills, which only hide what lies beneath
/// on paper, are left out. The same drawing gives the same bytes.
#[must_use]
pub fn to_dxf(drawing: &Drawing) -> String {
    let mut w = Writer {
        out: String::new(),
        height_mm: drawing.height_mm,
    };
    w.code(999, "millimetres, true scale");
    w.code(0, "SECTION");
    w.code(2, "HEADER");
    w.code(9, "$ACADVER");
    w.code(1, "AC1009");
    w.code(9, "$EXTMIN");
    w.number(10, 0.0);
    w.number(20, 0.0);
    w.number(30, 0.0);
    w.code(9, "$EXTMAX");
    w.number(10, drawing.width_mm);
    w.number(20, drawing.height_mm);
    w.number(30, 0.0);
    w.code(0, "ENDSEC");
    w.tables(drawing);
    w.code(0, "SECTION");
    w.code(2, "ENTITIES");
    for layer in &drawing.layers {
        let name = layer_name(&layer.name);
        for item in &layer.items {
            w.item(&name, item);
        }
    }
    w.code(0, "ENDSEC");
    w.code(0, "EOF");
    w.out
}

/// Release 12 layer names: upper case letters, digits, `-` and `_`, at most 31.
fn layer_name(name: &str) -> String {
    name.chars()
        .take(31)
        .map(|c| {
            if c.is_ascii_alphanumeric() || c == '-' {
                c.to_ascii_uppercase()
            } else {
                '_'
            }
        })
        .collect()
}

struct Writer {
    out: String,
    height_mm: f64,
}

impl Writer {
    // Writing to a String cannot fail.
    fn code(&mut self, code: u16, value: &str) {
        let _ = writeln!(self.out, "{code:>3}\n{value}");
    }

    fn number(&mut self, code: u16, value: f64) {
        let value = if value.is_finite() { value } else { 0.0 };
        // Adding zero makes -0 into +0.
        let text = format!("{:.6}", value);
        let text = if text == "-0.000000" {
            "0.000000"
        } else {
            &text
        };
        let _ = writeln!(self.out, "{code:>3}\n{text}");
    }

    fn spot(&mut self, first_code: u16, spot: Spot) {
        self.number(first_code, spot.x);
        self.number(first_code + 10, self.height_mm - spot.y);
        self.number(first_code + 20, 0.0);
    }

    fn tables(&mut self, drawing: &Drawing) {
        self.code(0, "SECTION");
        self.code(2, "TABLES");
        self.code(0, "TABLE");
        self.code(2, "LTYPE");
        self.code(70, "5");
        for dash in [
            Dash::Solid,
            Dash::Dashed,
            Dash::Centre,
            Dash::Phantom,
            Dash::Dotted,
        ] {
            let pattern = dash.pattern_mm();
            self.code(0, "LTYPE");
            self.code(2, dash.name());
            self.code(70, "0");
            self.code(3, "");
            self.code(72, "65");
            self.code(73, &pattern.len().to_string());
            self.number(40, pattern.iter().sum());
            for (i, mm) in pattern.iter().enumerate() {
                self.number(49, if i % 2 == 0 { *mm } else { -mm });
            }
        }
        self.code(0, "ENDTAB");
        let mut names: Vec<String> = drawing.layers.iter().map(|l| layer_name(&l.name)).collect();
        names.push("0".to_owned());
        names.sort();
        names.dedup();
        self.code(0, "TABLE");
        self.code(2, "LAYER");
        self.code(70, &names.len().to_string());
        for name in names {
            self.code(0, "LAYER");
            self.code(2, &name);
            self.code(70, "0");
            self.code(62, "7");
            self.code(6, "CONTINUOUS");
        }
        self.code(0, "ENDTAB");
        self.code(0, "TABLE");
        self.code(2, "STYLE");
        self.code(70, "1");
        self.code(0, "STYLE");
        self.code(2, "STANDARD");
        self.code(70, "0");
        self.number(40, 0.0);
        self.number(41, 1.0);
        self.number(50, 0.0);
        self.code(71, "0");
        self.number(42, 2.5);
        self.code(3, "txt");
        self.code(4, "");
        self.code(0, "ENDTAB");
        self.code(0, "ENDSEC");
    }

    fn entity(&mut self, kind: &str, layer: &str, line: Option<&Line>) {
        self.code(0, kind);
        self.code(8, layer);
        if let Some(line) = line.filter(|l| l.dash != Dash::Solid) {
            self.code(6, line.dash.name());
        }
    }

    fn polyline(&mut self, layer: &str, spots: &[Spot], is_closed: bool, line: &Line) {
        if let ([a, b], false) = (spots, is_closed) {
            self.entity("LINE", layer, Some(line));
            self.spot(10, *a);
            self.spot(11, *b);
            return;
        }
        self.entity("POLYLINE", layer, Some(line));
        self.code(66, "1");
        self.spot(10, Spot::new(0.0, self.height_mm));
        self.code(70, if is_closed { "1" } else { "0" });
        for spot in spots {
            self.code(0, "VERTEX");
            self.code(8, layer);
            self.spot(10, *spot);
        }
        self.code(0, "SEQEND");
        self.code(8, layer);
    }

    fn item(&mut self, layer: &str, item: &Item) {
        match item {
            Item::Polyline { spots, line } => self.polyline(layer, spots, false, line),
            Item::Polygon { spots, line, fill } => {
                if let (Fill::Solid, [a, b, c]) = (fill, spots.as_slice()) {
                    self.entity("SOLID", layer, None);
                    for (code, spot) in [(10, *a), (11, *b), (12, *c), (13, *c)] {
                        self.spot(code, spot);
                    }
                } else if let Some(line) = line {
                    self.polyline(layer, spots, true, line);
                }
            }
            Item::Circle {
                centre,
                radius_mm,
                line: Some(line),
                ..
            } => {
                self.entity("CIRCLE", layer, Some(line));
                self.spot(10, *centre);
                self.number(40, *radius_mm);
            }
            Item::Circle { .. } => {}
            Item::Arc {
                centre,
                radius_mm,
                from_rad,
                sweep_rad,
                line,
            } => {
                // DXF arcs run against the clock with y up; ours run clockwise on the paper.
                let (start, end) = if *sweep_rad > 0.0 {
                    (-(from_rad + sweep_rad), -from_rad)
                } else {
                    (-from_rad, -(from_rad + sweep_rad))
                };
                self.entity("ARC", layer, Some(line));
                self.spot(10, *centre);
                self.number(40, *radius_mm);
                self.number(50, start.to_degrees().rem_euclid(360.0));
                self.number(51, end.to_degrees().rem_euclid(360.0));
            }
            Item::Band {
                spots,
                width_mm,
                line: Some(line),
                ..
            } => {
                for side in [0.5, -0.5] {
                    self.polyline(layer, &beside(spots, side * width_mm), false, line);
                }
            }
            Item::Band { .. } => {}
            Item::Text {
                at,
                text,
                lettering,
                turn_rad,
                ..
            } => {
                self.entity("TEXT", layer, None);
                self.spot(10, *at);
                // Text height of the format is that of capitals.
                self.number(40, 0.72 * lettering.size_mm);
                self.code(1, &ascii(text));
                self.number(50, (-turn_rad).to_degrees());
                let hangs = match lettering.anchor {
                    Anchor::Start => 0,
                    Anchor::Middle => 1,
                    Anchor::End => 2,
                };
                if hangs > 0 {
                    self.code(72, &hangs.to_string());
                    self.spot(11, *at);
                }
            }
            Item::Dimension(dimension) => {
                for part in dimension.items() {
                    self.item(layer, &part);
                }
            }
            Item::Group { items, .. } => {
                for part in items {
                    self.item(layer, part);
                }
            }
        }
    }
}

/// The line beside a polyline, mitred at its corners.
fn beside(spots: &[Spot], off_mm: f64) -> Vec<Spot> {
    let side = |a: Spot, b: Spot| (b - a).direction().map(Spot::quarter);
    let mut out = Vec::with_capacity(spots.len());
    for (i, &spot) in spots.iter().enumerate() {
        let before = i
            .checked_sub(1)
            .and_then(|k| spots.get(k))
            .and_then(|&p| side(p, spot));
        let after = spots.get(i + 1).and_then(|&n| side(spot, n));
        let off = match (before, after) {
            (Some(p), Some(n)) => {
                let sum = p + n;
                // |p + n|² / 2 = 1 + cos of the turn; a hairpin keeps its own side.
                let share = 0.5 * sum.dot(sum);
                if share > 0.1 {
                    sum * (off_mm / share)
                } else {
                    n * off_mm
                }
            }
            (Some(d), None) | (None, Some(d)) => d * off_mm,
            (None, None) => Spot::default(),
        };
        out.push(spot + off);
    }
    out
}

/// Release 12 text: `%%d`, `%%p`, `%%c` for ° ± ⌀, `\U+XXXX` for the rest.
fn ascii(text: &str) -> String {
    let mut out = String::new();
    for c in text.chars() {
        match c {
            '°' => out.push_str("%%d"),
            '±' => out.push_str("%%p"),
            '⌀' => out.push_str("%%c"),
            '–' => out.push('-'),
            ' '..='~' => out.push(c),
            c if c.is_control() => out.push(' '),
            c => {
                let _ = write!(out, "\\U+{:04X}", u32::from(c));
            }
        }
    }
    out
}
