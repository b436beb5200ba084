//! Lengths as the shop reads its tape: millimetres, or inches with sixteenths.

use crate::terminal::say;
use tubewright_build::model::{LengthUnits, Model};
use tubewright_build::quantity::write_inches;
use tubewright_geometry::Length;

/// Divisions of an inch on a shop's tape.
const DIVISIONS: u32 = 16;
const MM_PER_INCH: f64 = 25.4;

/// Writes lengths in the units of a build.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) struct Lengths {
    units: LengthUnits,
}

impl Lengths {
    /// The units of the build. Where the person did not say which, the choice is told on stderr.
    pub(crate) fn of(model: &Model) -> Self {
        let shown = model.build.shown_units();
        if !shown.is_wished && !model.build.readings.is_empty() {
            let (words, other) = match shown.units {
                LengthUnits::Millimetres => ("millimetres", "in"),
                LengthUnits::Inches => ("inches", "mm"),
            };
            say(&format!(
                "note: lengths in {words}, as most readings are written; units = \"{other}\" under \
                 [wishes] in build.toml changes that"
            ));
        }
        Self { units: shown.units }
    }

    fn is_inches(self) -> bool {
        self.units == LengthUnits::Inches
    }

    /// `mm` or `in`, for the head of a column.
    pub(crate) fn unit(self) -> &'static str {
        if self.is_inches() { "in" } else { "mm" }
    }

    /// A length to be marked or cut, to what a tape shows: `77.0`, `3-1/16`.
    pub(crate) fn bare(self, mm: f64) -> String {
        if self.is_inches() {
            let text = write_inches(Length::from_mm(mm), DIVISIONS);
            text.strip_suffix(" in").map(str::to_owned).unwrap_or(text)
        } else {
            format!("{mm:.1}")
        }
    }

    /// The same with its unit.
    pub(crate) fn tape(self, mm: f64) -> String {
        format!("{} {}", self.bare(mm), self.unit())
    }

    /// A coordinate to the millimetre or the sixteenth.
    pub(crate) fn place(self, mm: f64) -> String {
        if self.is_inches() {
            self.bare(mm)
        } else {
            // A minus before nothing says nothing.
            format!("{:.0}", if mm.abs() < 0.5 { 0.0 } else { mm })
        }
    }

    /// A size that is only named: `152 mm`, `6 in`.
    pub(crate) fn size(self, mm: f64) -> String {
        if self.is_inches() {
            self.tape(mm)
        } else {
            format!("{mm:.0} mm")
        }
    }

    /// A ± or a small error, in decimals: `6.8 mm`, `0.27 in`.
    pub(crate) fn fine(self, mm: f64) -> String {
        if self.is_inches() {
            format!("{:.2} in", mm / MM_PER_INCH)
        } else {
            format!("{mm:.1} mm")
        }
    }

    /// A length with its ±: `52.2 ± 6.1 mm`, `1-1/2 ± 0.27 in`.
    pub(crate) fn with_plus_minus(self, mm: f64, plus_minus_mm: f64) -> String {
        format!("{} ± {}", self.bare(mm), self.fine(plus_minus_mm))
    }

    /// A long way: `3.85 m`, `12 ft 7-5/8 in`.
    pub(crate) fn long(self, mm: f64) -> String {
        if !self.is_inches() {
            return format!("{:.2} m", mm / 1000.0);
        }
        let sixteenths = (mm / MM_PER_INCH * 16.0).round();
        let feet = (sixteenths / 192.0).floor();
        let rest = write_inches(
            Length::from_mm((sixteenths - feet * 192.0) / 16.0 * MM_PER_INCH),
            DIVISIONS,
        );
        if feet > 0.0 {
            format!("{feet:.0} ft {rest}")
        } else {
            rest
        }
    }

    /// A sentence with its millimetres in the units of the build. Names in quotation marks stay.
    pub(crate) fn sentence(self, text: &str) -> String {
        if !self.is_inches() {
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
            let behind = after.strip_prefix(" mm");
            let ends = behind.is_some_and(|behind| !behind.starts_with(char::is_alphanumeric));
            match (number.parse::<f64>(), behind) {
                (Ok(mm), Some(behind)) if ends && !is_name && !follows_word => {
                    out.push_str(&self.tape(mm));
                    rest = behind;
                }
                _ => {
                    let step = number_end.max(first.len_utf8());
                    let (taken, left) = rest.split_at(step);
                    out.push_str(taken);
                    rest = left;
                }
            }
        }
        out
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    const INCHES: Lengths = Lengths {
        units: LengthUnits::Inches,
    };
    const MILLIMETRES: Lengths = Lengths {
        units: LengthUnits::Millimetres,
    };

    #[test]
    fn a_tape_in_inches_shows_sixteenths_and_one_in_millimetres_tenths() {
        assert_eq!(INCHES.tape(77.0), "3-1/16 in");
        assert_eq!(INCHES.place(-63.4), "-2-1/2");
        assert_eq!(INCHES.fine(6.8), "0.27 in");
        assert_eq!(MILLIMETRES.tape(77.04), "77.0 mm");
        assert_eq!(MILLIMETRES.place(-0.3), "0");
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
    }
}
