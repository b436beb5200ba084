//! The drawing model: every picture on paper and page is one of these before it is SVG or DXF.
//!
//! A drawing is in millimetres of paper, true to scale on output. Items are painted in the order
//! in which they stand, layer by layer; a later filled item hides an earlier one.

mod clip;
mod dimension;
mod hatch;
mod moved;
mod spot;
mod style;

pub use clip::{clip_polygon, clip_segment};
pub use dimension::Dimension;
pub(crate) use dimension::arrow;
pub(crate) use hatch::RISING_RAD;
pub use hatch::hatch;
pub use moved::moved;
pub use spot::{Rect, Spot};
pub use style::{Anchor, Dash, Fill, Ink, Lettering, Line, Weight};

/// A picture in millimetres of paper.
#[derive(Clone, Debug, PartialEq)]
pub struct Drawing {
    /// Width of the paper in mm.
    pub width_mm: f64,
    /// Height of the paper in mm.
    pub height_mm: f64,
    /// What the picture shows, for those who cannot see it.
    pub title: String,
    /// Painted in this order.
    pub layers: Vec<Layer>,
}

/// Items that belong together: a layer of the exchange formats.
#[derive(Clone, Debug, PartialEq)]
pub struct Layer {
    /// Short name, lower case, `[a-z0-9-]`.
    pub name: String,
    /// Painted in this order.
    pub items: Vec<Item>,
}

/// One thing that is drawn.
#[derive(Clone, Debug, PartialEq)]
#[non_exhaustive]
pub enum Item {
    /// Lines from spot to spot.
    Polyline {
        /// At least two.
        spots: Vec<Spot>,
        /// Look of the line.
        line: Line,
    },
    /// A closed outline.
    Polygon {
        /// At least three.
        spots: Vec<Spot>,
        /// Look of the outline; none when only filled.
        line: Option<Line>,
        /// What it is filled with.
        fill: Fill,
    },
    /// A circle.
    Circle {
        /// Middle.
        centre: Spot,
        /// Radius in mm of paper.
        radius_mm: f64,
        /// Look of the line; none when only filled.
        line: Option<Line>,
        /// What it is filled with.
        fill: Fill,
    },
    /// Part of a circle.
    Arc {
        /// Middle.
        centre: Spot,
        /// Radius in mm of paper.
        radius_mm: f64,
        /// Where it begins, in radians from rightwards, clockwise as seen on the paper.
        from_rad: f64,
        /// How far it goes, clockwise when positive; less than a full turn.
        sweep_rad: f64,
        /// Look of the line.
        line: Line,
    },
    /// A tube seen from outside: two lines at `width_mm` from each other along a middle line, ends
    /// square to it and open, hiding what lies beneath.
    Band {
        /// The middle line, at least two spots.
        spots: Vec<Spot>,
        /// Width from outer edge line to outer edge line, in mm of paper.
        width_mm: f64,
        /// Look of the two edges (drawn unbroken); none when only filled.
        line: Option<Line>,
        /// What it is filled with.
        fill: Fill,
    },
    /// Letters on one line.
    Text {
        /// On the base line.
        at: Spot,
        /// What is written.
        text: String,
        /// How.
        lettering: Lettering,
        /// Turned about `at` by so many radians, clockwise as seen on the paper.
        turn_rad: f64,
        /// A rim of paper white round the letters, so that they can be read over lines.
        has_halo: bool,
    },
    /// A measured distance with its witness lines.
    Dimension(Dimension),
    /// Items of one thing that the page may point at.
    Group {
        /// What it is: a piece mark (`L3`), the name of a body.
        tag: String,
        /// Painted in this order.
        items: Vec<Item>,
    },
}

impl Drawing {
    /// An empty sheet.
    #[must_use]
    pub fn new(width_mm: f64, height_mm: f64, title: impl Into<String>) -> Self {
        Self {
            width_mm,
            height_mm,
            title: title.into(),
            layers: Vec::new(),
        }
    }

    /// The whole sheet as a rectangle.
    #[must_use]
    pub const fn sheet(&self) -> Rect {
        Rect::new(0.0, 0.0, self.width_mm, self.height_mm)
    }

    /// Adds a layer on top, unless it is empty.
    pub fn push(&mut self, name: impl Into<String>, items: Vec<Item>) {
        if !items.is_empty() {
            self.layers.push(Layer {
                name: name.into(),
                items,
            });
        }
    }
}

impl Item {
    /// A line from spot to spot.
    #[must_use]
    pub fn line(from: Spot, to: Spot, line: Line) -> Self {
        Self::Polyline {
            spots: vec![from, to],
            line,
        }
    }

    /// Text on a base line, upright, without a rim.
    #[must_use]
    pub fn text(at: Spot, text: impl Into<String>, lettering: Lettering) -> Self {
        Self::Text {
            at,
            text: text.into(),
            lettering,
            turn_rad: 0.0,
            has_halo: false,
        }
    }

    /// The room that its letters take, as the smallest upright rectangle round them, rather too large
    /// than too small (see [`Lettering::width_mm`]); none when nothing is written.
    #[must_use]
    pub fn letters(&self) -> Option<Rect> {
        let (at, text, lettering, turn_rad) = match self {
            Self::Text {
                at,
                text,
                lettering,
                turn_rad,
                ..
            } => (at, text, lettering, turn_rad),
            Self::Dimension(size) => return size.items().iter().find_map(Self::letters),
            _ => return None,
        };
        let width = lettering.width_mm(text);
        let left = match lettering.anchor {
            Anchor::Start => 0.0,
            Anchor::Middle => -0.5 * width,
            Anchor::End => -width,
        };
        let (along, down) = (Spot::toward(*turn_rad), Spot::toward(*turn_rad).quarter());
        // From the top of the capitals to the foot of a `g`.
        let (top, foot) = (-0.74 * lettering.size_mm, 0.22 * lettering.size_mm);
        Some(Rect::of(
            [
                (left, top),
                (left + width, top),
                (left + width, foot),
                (left, foot),
            ]
            .map(|(x, y)| *at + along * x + down * y),
        ))
    }

    /// An upright rectangle.
    #[must_use]
    pub fn rect(rect: Rect, line: Option<Line>, fill: Fill) -> Self {
        Self::Polygon {
            spots: rect.corners().to_vec(),
            line,
            fill,
        }
    }
}

/// Drop of the base line below the middle of the letters, as a fraction of their size (capital
/// height about 0.72 of the size in common sans-serif faces; common practice, no source).
pub const BASE_LINE_DROP: f64 = 0.36;
