//! Numbers as the shop reads them.

use tubewright_build::model::{LengthUnits, Model};
use tubewright_geometry::{Length, Point};
use tubewright_stock::{StockPiece, StockShape, TubeSpec};

/// How lengths are written.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Lengths {
    /// Millimetres with one decimal at the saw, whole ones elsewhere.
    Millimetres,
    /// Inches and fractions: 1/32 at the saw, 1/16 elsewhere.
    Inches,
}

impl Lengths {
    /// As the build wants them.
    #[must_use]
    pub fn of(model: &Model) -> Self {
        match model.build.shown_units().units {
            LengthUnits::Millimetres => Self::Millimetres,
            LengthUnits::Inches => Self::Inches,
        }
    }

    /// The unit's sign.
    #[must_use]
    pub const fn sign(self) -> &'static str {
        match self {
            Self::Millimetres => "mm",
            Self::Inches => "in",
        }
    }

    /// What stands on every page.
    #[must_use]
    pub const fn units(self) -> &'static str {
        match self {
            Self::Millimetres => "mm and degrees",
            Self::Inches => "inches and degrees",
        }
    }

    /// A length at the saw, without sign.
    #[must_use]
    pub fn saw(self, mm: f64) -> String {
        match self {
            Self::Millimetres => fixed(mm, 1),
            Self::Inches => fraction(mm, 32),
        }
    }

    /// A length or coordinate elsewhere, without sign.
    #[must_use]
    pub fn place(self, mm: f64) -> String {
        match self {
            Self::Millimetres => fixed(mm, 0),
            Self::Inches => fraction(mm, 16),
        }
    }

    /// A small length such as a gap or a ±, without sign.
    #[must_use]
    pub fn small(self, mm: f64) -> String {
        match self {
            Self::Millimetres => fixed(mm, 1),
            Self::Inches => fixed(mm / INCH_MM, 2),
        }
    }

    /// A size that is named and not measured (diameter, wall, radius), without sign.
    #[must_use]
    pub fn size(self, mm: f64) -> String {
        match self {
            Self::Millimetres => trimmed(&fixed(mm, 2)),
            Self::Inches => trimmed(&fixed(mm / INCH_MM, 3)),
        }
    }

    /// A length of run.
    #[must_use]
    pub fn long(self, mm: f64) -> String {
        match self {
            Self::Millimetres => format!("{} m", fixed(mm / 1000.0, 2)),
            Self::Inches => format!("{} ft", fixed(mm / INCH_MM / 12.0, 2)),
        }
    }

    /// The three coordinates.
    #[must_use]
    pub fn xyz(self, point: Point) -> [String; 3] {
        point.to_array().map(|mm| self.place(mm))
    }

    /// A tube: `Ø57 × 1.5, 304`.
    #[must_use]
    pub fn tube(self, tube: &TubeSpec) -> String {
        format!(
            "Ø{} × {} {}, {}",
            self.size(tube.od.mm()),
            self.size(tube.wall.mm()),
            self.sign(),
            tube.material
        )
    }

    /// The shape of a stock item in words.
    #[must_use]
    pub fn stock(self, stock: &StockPiece) -> String {
        let legs = |length: Length| self.saw(length.mm());
        match stock.shape {
            StockShape::Straight { length } => {
                format!("straight, {} {} long", self.saw(length.mm()), self.sign())
            }
            StockShape::Bend {
                angle,
                clr,
                leg_a,
                leg_b,
            } => format!(
                "bend {}°, centre-line radius {}, leg A {}, leg B {} {}",
                degrees(angle.deg()),
                self.size(clr.mm()),
                legs(leg_a),
                legs(leg_b),
                self.sign()
            ),
        }
    }
}

/// Millimetres in an inch (exact, by the international yard of 1959).
const INCH_MM: f64 = 25.4;

/// With so many decimals, never `-0`.
pub(super) fn fixed(value: f64, decimals: usize) -> String {
    let text = format!("{value:.decimals$}");
    let is_nought = text.chars().all(|c| matches!(c, '-' | '0' | '.'));
    if is_nought {
        text.trim_start_matches('-').to_owned()
    } else {
        text
    }
}

fn trimmed(text: &str) -> String {
    if text.contains('.') {
        text.trim_end_matches('0').trim_end_matches('.').to_owned()
    } else {
        text.to_owned()
    }
}

/// Degrees without needless decimals.
pub(super) fn degrees(deg: f64) -> String {
    trimmed(&fixed(deg, 1))
}

/// Degrees with their sign: a rotation.
pub(super) fn signed_degrees(deg: f64) -> String {
    let text = degrees(deg);
    if deg > 0.0 && text != "0" {
        format!("+{text}")
    } else {
        text
    }
}

/// Which way something points in the car, as a fitter would say it: `up and left`. A way counts when
/// it is within about 68° of the direction.
pub(super) fn toward_words([x, y, z]: [f64; 3]) -> String {
    const COUNTS: f64 = 0.38;
    let mut ways: Vec<(f64, &str)> = [
        (z, "up", "down"),
        (y, "right", "left"),
        (x, "rearwards", "forwards"),
    ]
    .into_iter()
    .filter(|(share, ..)| share.abs() > COUNTS)
    .map(|(share, plus, minus)| (share.abs(), if share > 0.0 { plus } else { minus }))
    .collect();
    ways.sort_by(|a, b| b.0.total_cmp(&a.0));
    ways.truncate(2);
    ways.into_iter()
        .map(|(_, way)| way)
        .collect::<Vec<_>>()
        .join(" and ")
}

/// Inches in fractions: `7-3/8`.
fn fraction(mm: f64, parts: u32) -> String {
    let inches = mm / INCH_MM * f64::from(parts);
    let rounded = inches.abs().round();
    let sign = if inches < 0.0 && rounded > 0.0 {
        "−"
    } else {
        ""
    };
    let whole = (rounded / f64::from(parts)).floor();
    let mut over = rounded - whole * f64::from(parts);
    let mut under = f64::from(parts);
    while over > 0.0 && (over / 2.0).fract() == 0.0 {
        over /= 2.0;
        under /= 2.0;
    }
    match (whole > 0.0, over > 0.0) {
        (_, false) => format!("{sign}{whole:.0}"),
        (false, true) => format!("{sign}{over:.0}/{under:.0}"),
        (true, true) => format!("{sign}{whole:.0}-{over:.0}/{under:.0}"),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn inches_are_whole_fractions_in_lowest_terms() {
        let inch = Lengths::Inches;
        // 187.5 mm = 7.3819 in = 7-12.2/32, so 7-3/8.
        assert_eq!(inch.saw(187.5), "7-3/8");
        assert_eq!(inch.saw(25.4), "1");
        assert_eq!(inch.saw(0.0), "0");
        assert_eq!(inch.place(-12.7), "−1/2");
        assert_eq!(inch.place(-0.2), "0");
        // 0.99 of an inch in sixteenths is 15.84: the whole inch.
        assert_eq!(inch.place(25.146), "1");
    }

    #[test]
    fn a_bend_turns_the_way_that_a_fitter_sees() {
        assert_eq!(toward_words([0.0, 0.0, 1.0]), "up");
        assert_eq!(toward_words([0.0, -0.6, 0.8]), "up and left");
        assert_eq!(toward_words([0.1, 0.9, -0.42]), "right and down");
    }

    #[test]
    fn no_figure_reads_minus_nought() {
        assert_eq!(Lengths::Millimetres.saw(-0.04), "0.0");
        assert_eq!(Lengths::Millimetres.place(-0.4), "0");
        assert_eq!(signed_degrees(0.01), "0");
        assert_eq!(signed_degrees(-46.0), "-46");
    }
}
