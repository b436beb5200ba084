//! Lengths as the shop reads its tape: millimetres, or inches and fractions. One type for everything
//! that is printed, on the terminal and on paper, so that the same mark never reads two ways.

use tubewright_build::model::{LengthUnits, Model};
use tubewright_build::quantity::write_inches;
use tubewright_geometry::{Length, Point};
use tubewright_sheets::DrawnUnit;

/// Divisions of an inch at the saw: a steel rule (common practice, no source).
const RULE: u32 = 32;
/// Divisions of an inch on a tape (common practice, no source).
const TAPE: u32 = 16;
/// Millimetres in an inch (exact, by the international yard of 1959).
const INCH_MM: f64 = 25.4;

/// Kilograms in a pound (exact, by the international pound of 1959).
const POUND_KG: f64 = 0.453_592_37;
/// Newtons of a pound's weight (exact, with standard gravity, 9.80665 m/s²).
const POUND_N: f64 = 9.806_65 * POUND_KG;
/// Litres in a cubic foot (exact, by the inch).
const CUBIC_FOOT_L: f64 = 28.316_846_592;

/// How lengths are written.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Lengths {
    /// Millimetres: tenths where something is marked, whole ones for places.
    Millimetres,
    /// Inches and fractions: 1/32 where something is marked, 1/16 elsewhere.
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

    /// Those whose unit has this sign (`mm`, `in`).
    #[must_use]
    pub fn of_sign(sign: &str) -> Option<Self> {
        [Self::Millimetres, Self::Inches]
            .into_iter()
            .find(|lengths| lengths.sign() == sign)
    }

    /// The unit's sign, for the head of a column.
    #[must_use]
    pub const fn sign(self) -> &'static str {
        match self {
            Self::Millimetres => "mm",
            Self::Inches => "in",
        }
    }

    /// The unit in a sentence.
    #[must_use]
    pub const fn sign_in_words(self) -> &'static str {
        match self {
            Self::Millimetres => "mm",
            Self::Inches => "inches",
        }
    }

    /// What pictures are lettered in.
    #[must_use]
    pub const fn drawn(self) -> DrawnUnit {
        match self {
            Self::Millimetres => DrawnUnit::Millimetres,
            Self::Inches => DrawnUnit::Inches,
        }
    }

    /// The division that saw marks are on, mm.
    #[must_use]
    pub const fn saw_division_mm(self) -> f64 {
        match self {
            Self::Millimetres => 0.1,
            Self::Inches => INCH_MM / RULE as f64,
        }
    }

    /// The division to which a place is found by eye, mm.
    #[must_use]
    pub const fn by_eye_mm(self) -> f64 {
        match self {
            Self::Millimetres => 10.0,
            Self::Inches => 0.5 * INCH_MM,
        }
    }

    /// A length to what a tape shows, never less than it is, mm.
    #[must_use]
    pub fn up_to_tape_mm(self, mm: f64) -> f64 {
        let division_mm = match self {
            Self::Millimetres => 1.0,
            Self::Inches => INCH_MM / TAPE as f64,
        };
        (mm / division_mm - 1e-9).ceil() * division_mm
    }

    /// What stands on every page.
    #[must_use]
    pub const fn units(self) -> &'static str {
        match self {
            Self::Millimetres => "mm and degrees",
            Self::Inches => "inches and degrees",
        }
    }

    /// A length that is marked or sawn, without sign: `77.0`, `3-1/32`.
    #[must_use]
    pub fn saw(self, mm: f64) -> String {
        match self {
            Self::Millimetres => fixed(mm, 1),
            Self::Inches => fraction(mm, RULE),
        }
    }

    /// A length that is read off a tape, with its unit: `77.0 mm`, `3-1/16 in`.
    #[must_use]
    pub fn tape(self, mm: f64) -> String {
        let text = match self {
            Self::Millimetres => fixed(mm, 1),
            Self::Inches => fraction(mm, TAPE),
        };
        format!("{text} {}", self.sign())
    }

    /// A place or a length to the millimetre or the sixteenth, without sign.
    #[must_use]
    pub fn place(self, mm: f64) -> String {
        match self {
            Self::Millimetres => fixed(mm, 0),
            Self::Inches => fraction(mm, TAPE),
        }
    }

    /// The same with its unit: `152 mm`, `6 in`.
    #[must_use]
    pub fn about(self, mm: f64) -> String {
        format!("{} {}", self.place(mm), self.sign())
    }

    /// A ± or a small error in decimals, without sign: `6.8`, `0.27`.
    #[must_use]
    pub fn small(self, mm: f64) -> String {
        match self {
            Self::Millimetres => fixed(mm, 1),
            Self::Inches => fixed(mm / INCH_MM, 2),
        }
    }

    /// The same with its unit: `6.8 mm`, `0.27 in`.
    #[must_use]
    pub fn fine(self, mm: f64) -> String {
        format!("{} {}", self.small(mm), self.sign())
    }

    /// The same, never less than it is.
    #[must_use]
    pub fn fine_at_most(self, mm: f64) -> String {
        let digit_mm = match self {
            Self::Millimetres => 0.1,
            Self::Inches => INCH_MM / 100.0,
        };
        self.fine((mm / digit_mm - 1e-9).ceil().max(0.0) * digit_mm)
    }

    /// A length with its ±: `52.2 ± 6.1 mm`, `1-1/2 ± 0.27 in`.
    #[must_use]
    pub fn with_plus_minus(self, mm: f64, plus_minus_mm: f64) -> String {
        let value = match self {
            Self::Millimetres => fixed(mm, 1),
            Self::Inches => fraction(mm, TAPE),
        };
        format!("{value} ± {}", self.fine(plus_minus_mm))
    }

    /// A size that is named and not measured (diameter, wall, radius), without sign: `57`, `2.25`.
    #[must_use]
    pub fn size(self, mm: f64) -> String {
        match self {
            Self::Millimetres => trimmed(&fixed(mm, 2)),
            Self::Inches => trimmed(&fixed(mm / INCH_MM, 3)),
        }
    }

    /// A long way: `3.85 m`, `12 ft 7-5/8 in`.
    #[must_use]
    pub fn long(self, mm: f64) -> String {
        if self == Self::Millimetres {
            return format!("{} m", fixed(mm / 1000.0, 2));
        }
        let sixteenths = (mm / INCH_MM * 16.0).round();
        let feet = (sixteenths / 192.0).floor();
        let rest = write_inches(
            Length::from_mm((sixteenths - feet * 192.0) / 16.0 * INCH_MM),
            TAPE,
        );
        if feet > 0.0 {
            format!("{feet:.0} ft {rest}")
        } else {
            rest
        }
    }

    /// The unit of mass that goes with these lengths, for the head of a column.
    #[must_use]
    pub const fn mass_sign(self) -> &'static str {
        match self {
            Self::Millimetres => "kg",
            Self::Inches => "lb",
        }
    }

    /// A mass without its unit: `6.1`, `13.4`.
    #[must_use]
    pub fn mass_figure(self, kg: f64) -> String {
        match self {
            Self::Millimetres => fixed(kg, 1),
            Self::Inches => fixed(kg / POUND_KG, 1),
        }
    }

    /// The same with its unit: `6.1 kg`, `13.4 lb`.
    #[must_use]
    pub fn mass(self, kg: f64) -> String {
        format!("{} {}", self.mass_figure(kg), self.mass_sign())
    }

    /// The unit in which the load on a rubber is told, for the head of a column.
    #[must_use]
    pub const fn load_sign(self) -> &'static str {
        match self {
            Self::Millimetres => "N",
            Self::Inches => "lb",
        }
    }

    /// A load without its unit: `43`, `10`.
    #[must_use]
    pub fn load_figure(self, newton: f64) -> String {
        match self {
            Self::Millimetres => fixed(newton, 0),
            Self::Inches => fixed(newton / POUND_N, 0),
        }
    }

    /// The same with its unit: `43 N`, `10 lb`.
    #[must_use]
    pub fn load(self, newton: f64) -> String {
        format!("{} {}", self.load_figure(newton), self.load_sign())
    }

    /// The unit in which purge gas is told, for the head of a column: `litres`, `cu ft`.
    #[must_use]
    pub const fn gas_sign(self) -> &'static str {
        match self {
            Self::Millimetres => "litres",
            Self::Inches => "cu ft",
        }
    }

    /// A volume of gas without its unit: `0.75`, `0.026`.
    #[must_use]
    pub fn gas_figure(self, litres: f64) -> String {
        match self {
            Self::Millimetres => fixed(litres, 2),
            Self::Inches => fixed(litres / CUBIC_FOOT_L, 3),
        }
    }

    /// A flow of gas: `8 l/min`, `17 cu ft/h`.
    #[must_use]
    pub fn gas_flow(self, litres_a_minute: f64) -> String {
        match self {
            Self::Millimetres => format!("{} l/min", fixed(litres_a_minute, 0)),
            Self::Inches => {
                format!(
                    "{} cu ft/h",
                    fixed(litres_a_minute * 60.0 / CUBIC_FOOT_L, 0)
                )
            }
        }
    }

    /// The three coordinates.
    #[must_use]
    pub fn xyz(self, point: Point) -> [String; 3] {
        point.to_array().map(|mm| self.place(mm))
    }

    /// A sentence with its millimetres, kilograms and newtons in these units. Names in quotation marks stay.
    #[must_use]
    pub fn sentence(self, text: &str) -> String {
        if self == Self::Millimetres {
            return text.to_owned();
        }
        let mut out = String::with_capacity(text.len());
        let mut is_name = false;
        let mut rest = text;
        while let Some(first) = rest.chars().next() {
            match first {
                '“' => is_name = true,
                '”' => is_name = false,
                _ => {}
            }
            let follows_word = out
                .chars()
                .next_back()
                .is_some_and(|c| c.is_alphanumeric() || c == '.' || c == '-');
            let number_end = rest
                .find(|c: char| !(c.is_ascii_digit() || c == '.'))
                .unwrap_or(rest.len());
            let (number, after) = rest.split_at(number_end);
            let in_these = number.parse::<f64>().ok().and_then(|value| {
                let told: [(&str, String); 3] = [
                    (" mm", self.tape(value)),
                    (" kg", self.mass(value)),
                    (" N", self.load(value)),
                ];
                told.into_iter().find_map(|(unit, told)| {
                    let behind = after.strip_prefix(unit)?;
                    let goes_on = |c: char| c.is_alphanumeric() || c == '/';
                    (!behind.starts_with(goes_on)).then_some((told, behind))
                })
            });
            if let Some((told, behind)) = in_these.filter(|_| !is_name && !follows_word) {
                out.push_str(&told);
                rest = behind;
            } else {
                let step = number_end.max(first.len_utf8());
                let (taken, left) = rest.split_at(step);
                out.push_str(taken);
                rest = left;
            }
        }
        out
    }
}

/// With so many decimals, never `-0`.
#[must_use]
pub fn fixed(value: f64, decimals: usize) -> String {
    let text = format!("{value:.decimals$}");
    let is_nought = text.chars().all(|c| matches!(c, '-' | '0' | '.'));
    if is_nought {
        text.trim_start_matches('-').to_owned()
    } else {
        text
    }
}

/// Without noughts behind the point.
pub(crate) fn trimmed(text: &str) -> String {
    if text.contains('.') {
        text.trim_end_matches('0').trim_end_matches('.').to_owned()
    } else {
        text.to_owned()
    }
}

/// Inches in fractions, without sign: `7-3/8`.
fn fraction(mm: f64, divisions: u32) -> String {
    let text = write_inches(Length::from_mm(mm), divisions);
    text.strip_suffix(" in").map(str::to_owned).unwrap_or(text)
}

#[cfg(test)]
mod tests {
    use super::*;

    const MILLIMETRES: Lengths = Lengths::Millimetres;
    const INCHES: Lengths = Lengths::Inches;

    #[test]
    fn inches_are_whole_fractions_in_lowest_terms() {
        // 187.5 mm = 7.3819 in = 7-12.2/32, so 7-3/8.
        assert_eq!(INCHES.saw(187.5), "7-3/8");
        // 77.0 mm = 3.0315 in: 3-1/32 on the rule, 3-1/16 would be half a millimetre more.
        assert_eq!(INCHES.saw(77.0), "3-1/32");
        assert_eq!(INCHES.tape(77.0), "3-1/16 in");
        assert_eq!(INCHES.saw(25.4), "1");
        assert_eq!(INCHES.saw(0.0), "0");
        assert_eq!(INCHES.place(-63.4), "-2-1/2");
        assert_eq!(INCHES.place(-0.2), "0");
        // 0.99 of an inch in sixteenths is 15.84: the whole inch.
        assert_eq!(INCHES.place(25.146), "1");
        assert_eq!(INCHES.fine(6.8), "0.27 in");
        assert_eq!(INCHES.fine_at_most(2.6), "0.11 in");
        assert_eq!(MILLIMETRES.fine_at_most(0.41), "0.5 mm");
        assert_eq!(MILLIMETRES.fine_at_most(0.5), "0.5 mm");
    }

    #[test]
    fn millimetres_have_tenths_where_something_is_marked() {
        assert_eq!(MILLIMETRES.saw(77.04), "77.0");
        assert_eq!(MILLIMETRES.tape(77.04), "77.0 mm");
        assert_eq!(MILLIMETRES.about(151.7), "152 mm");
        assert_eq!(MILLIMETRES.size(57.0), "57");
        assert_eq!(MILLIMETRES.with_plus_minus(52.2, 6.1), "52.2 ± 6.1 mm");
    }

    #[test]
    fn mass_load_and_gas_go_with_the_lengths() {
        assert_eq!(
            (MILLIMETRES.mass(4.1), INCHES.mass(4.1)),
            ("4.1 kg".to_owned(), "9.0 lb".to_owned())
        );
        assert_eq!(
            (MILLIMETRES.load(60.0), INCHES.load(60.0)),
            ("60 N".to_owned(), "13 lb".to_owned())
        );
        assert_eq!(MILLIMETRES.gas_flow(8.0), "8 l/min");
        // 8 l/min = 480 l/h = 16.95 cubic feet an hour.
        assert_eq!(INCHES.gas_flow(8.0), "17 cu ft/h");
        assert_eq!(INCHES.gas_figure(28.316_846_592), "1.000");
    }

    #[test]
    fn no_figure_reads_minus_nought() {
        assert_eq!(MILLIMETRES.saw(-0.04), "0.0");
        assert_eq!(MILLIMETRES.place(-0.4), "0");
    }

    #[test]
    fn a_foot_is_never_twelve_inches_over() {
        assert_eq!(INCHES.long(3850.0), "12 ft 7-9/16 in");
        assert_eq!(INCHES.long(12.0 * 25.4 - 0.2), "1 ft 0 in");
        assert_eq!(INCHES.long(100.0), "3-15/16 in");
        assert_eq!(MILLIMETRES.long(3850.0), "3.85 m");
    }

    #[test]
    fn sentences_change_their_millimetres_and_leave_names_alone() {
        assert_eq!(
            INCHES.sentence("102 mm too near “pipe 60 mm”, bump 102 mm; M10 mmm 5 mm."),
            "4 in too near “pipe 60 mm”, bump 4 in; M10 mmm 3/16 in."
        );
        assert_eq!(MILLIMETRES.sentence("102 mm"), "102 mm");
        // 6.1 kg = 13.45 lb; 43 N = 9.67 lb; 8 N/mm is no load.
        assert_eq!(
            INCHES.sentence("43 N of 60 N, an estimate for 6.1 kg; 8 N/mm; 3 Nm; “can 4 kg”"),
            "10 lb of 13 lb, an estimate for 13.4 lb; 8 N/mm; 3 Nm; “can 4 kg”"
        );
    }
}
