//! How lines and letters look. What a line means is told by its width and its dashes alone, so that
//! a photocopy says the same.

/// Width of a line. The two widths of ISO 128-2:2020 (line group 0.5: wide 0.5 mm, narrow 0.25 mm),
/// a hair line for hatching and rulers, and an extra wide one for cut lines and borders.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Weight {
    /// 0.13 mm: hatching, fine division lines.
    Hair,
    /// 0.25 mm: centre lines, dimensions, what is around the work.
    Narrow,
    /// 0.35 mm: secondary outlines, symbols.
    Medium,
    /// 0.5 mm: outlines of the work itself.
    Wide,
    /// 0.7 mm: borders and cut lines.
    ExtraWide,
}

impl Weight {
    /// Width in mm of paper.
    #[must_use]
    pub const fn mm(self) -> f64 {
        match self {
            Self::Hair => 0.13,
            Self::Narrow => 0.25,
            Self::Medium => 0.35,
            Self::Wide => 0.5,
            Self::ExtraWide => 0.7,
        }
    }
}

/// Dashes of a line, as the trade reads them (ISO 128-2:2020, line types 01, 02, 08, 09 and 07).
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Dash {
    /// Unbroken: what is seen.
    Solid,
    /// Dashed: what is hidden, or moves.
    Dashed,
    /// Long dash, dot: a centre line.
    Centre,
    /// Long dash, two dots: a neighbouring part that is not the work.
    Phantom,
    /// Dotted: a projection or leader.
    Dotted,
}

impl Dash {
    /// Lengths of dashes and gaps in turn, in mm of paper; empty when unbroken.
    #[must_use]
    pub const fn pattern_mm(self) -> &'static [f64] {
        match self {
            Self::Solid => &[],
            Self::Dashed => &[2.4, 1.2],
            Self::Centre => &[5.0, 0.9, 0.4, 0.9],
            Self::Phantom => &[5.0, 0.9, 0.4, 0.9, 0.4, 0.9],
            Self::Dotted => &[0.3, 0.9],
        }
    }

    /// Name for formats that name their line types.
    #[must_use]
    pub const fn name(self) -> &'static str {
        match self {
            Self::Solid => "CONTINUOUS",
            Self::Dashed => "DASHED",
            Self::Centre => "CENTER",
            Self::Phantom => "PHANTOM",
            Self::Dotted => "DOT",
        }
    }
}

/// Tone of ink. Grey only pushes the surroundings back; it never carries a meaning.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Ink {
    /// Full black.
    Black,
    /// Middle grey that survives a photocopier.
    Grey,
}

impl Ink {
    /// As a colour of the web.
    #[must_use]
    pub const fn css(self) -> &'static str {
        match self {
            Self::Black => "#000",
            Self::Grey => "#6b6b6b",
        }
    }
}

/// How a line is drawn.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Line {
    /// Width.
    pub weight: Weight,
    /// Dashes.
    pub dash: Dash,
    /// Tone.
    pub ink: Ink,
}

impl Line {
    /// A black line.
    #[must_use]
    pub const fn new(weight: Weight, dash: Dash) -> Self {
        Self {
            weight,
            dash,
            ink: Ink::Black,
        }
    }

    /// An unbroken black line.
    #[must_use]
    pub const fn solid(weight: Weight) -> Self {
        Self::new(weight, Dash::Solid)
    }

    /// The same in grey.
    #[must_use]
    pub const fn grey(self) -> Self {
        Self {
            ink: Ink::Grey,
            ..self
        }
    }
}

/// What an area is filled with.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Fill {
    /// Nothing: what lies beneath shows through.
    Open,
    /// The paper's white: hides what lies beneath.
    Paper,
    /// A light tone, 8 % black.
    Tint,
    /// Black.
    Solid,
}

impl Fill {
    /// As a colour of the web; `None` when open.
    #[must_use]
    pub const fn css(self) -> Option<&'static str> {
        match self {
            Self::Open => None,
            Self::Paper => Some("#fff"),
            Self::Tint => Some("#ebebeb"),
            Self::Solid => Some("#000"),
        }
    }
}

/// Where a text hangs on its place.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Anchor {
    /// Begins there.
    Start,
    /// Is centred there.
    Middle,
    /// Ends there.
    End,
}

/// How letters look.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Lettering {
    /// Size of the letters (height of a line without leading) in mm of paper.
    pub size_mm: f64,
    /// Where the text hangs on its place.
    pub anchor: Anchor,
    /// Heavy letters.
    pub is_bold: bool,
    /// Slanted letters: names of the surroundings.
    pub is_italic: bool,
    /// Tone.
    pub ink: Ink,
}

impl Lettering {
    /// Plain black letters that begin at their place.
    #[must_use]
    pub const fn plain(size_mm: f64) -> Self {
        Self {
            size_mm,
            anchor: Anchor::Start,
            is_bold: false,
            is_italic: false,
            ink: Ink::Black,
        }
    }

    /// The same, heavy.
    #[must_use]
    pub const fn bold(self) -> Self {
        Self {
            is_bold: true,
            ..self
        }
    }

    /// The same, slanted.
    #[must_use]
    pub const fn italic(self) -> Self {
        Self {
            is_italic: true,
            ..self
        }
    }

    /// The same, centred.
    #[must_use]
    pub const fn centred(self) -> Self {
        Self {
            anchor: Anchor::Middle,
            ..self
        }
    }

    /// The same, ending at its place.
    #[must_use]
    pub const fn ending(self) -> Self {
        Self {
            anchor: Anchor::End,
            ..self
        }
    }

    /// The same in grey.
    #[must_use]
    pub const fn grey(self) -> Self {
        Self {
            ink: Ink::Grey,
            ..self
        }
    }

    /// Width of `text` in mm of paper, rather too wide than too narrow: no font is known here. From
    /// the widths of common upright sans-serif faces (0.5 to 0.6 of the size per letter; common
    /// practice, no source).
    #[must_use]
    pub fn width_mm(&self, text: &str) -> f64 {
        let ems: f64 = text
            .chars()
            .map(|c| match c {
                'i' | 'j' | 'l' | 'I' | '.' | ',' | ':' | ';' | '\'' | '|' | '!' => 0.32,
                ' ' | 'f' | 't' | 'r' | '(' | ')' | '-' | '/' => 0.38,
                'm' | 'w' | 'M' | 'W' | '@' | '%' => 0.9,
                'A'..='Z' => 0.72,
                _ => 0.58,
            })
            .sum();
        ems * self.size_mm * if self.is_bold { 1.1 } else { 1.0 }
    }
}
