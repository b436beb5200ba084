use super::error::QuantityError;
use super::gauge::{self, GaugeSystem};
use super::ratio::Ratio;
use super::scan::Scanner;
use super::unit_table::in_range;
use tubewright_geometry::Length;

const KIND: &str = "a length";
const EXAMPLE: &str = "2-1/2 in";
const UNITS: &str = "mm, cm, m, in, ft";

/// Words of each unit and what it is in millimetres: 1 in = 25.4 mm exactly (international yard and
/// pound agreement, 1959; NIST SP 811, appendix B.8).
const LENGTH_UNITS: [(&[&str], i128, i128); 5] = [
    (&["mm", "millimetres", "millimeters"], 1, 1),
    (&["cm"], 10, 1),
    (&["m", "metres", "meters", "metre", "meter"], 1000, 1),
    (&["inches", "inch", "in", "''", "\"", "″", "”"], 254, 10),
    (&["feet", "foot", "ft", "'", "′", "’"], 3048, 10),
];
const INCH: usize = 3;
const FOOT: usize = 4;

/// No car and no shop is longer than this, in mm.
pub(crate) const LONGEST_MM: f64 = 100_000.0;

/// Reads a length as the tape says it: `812 mm`, `2-1/2 in`, `3 ft 4-1/2 in`, `3'4-1/2"`,
/// `16 ga BWG`. It may be negative; ±100 m is the limit.
///
/// # Errors
/// A [`QuantityError`] that says what was read, why it cannot stand and what to type.
pub fn parse_length(text: &str) -> Result<Length, QuantityError> {
    let mut scanner = Scanner::new(text, KIND, EXAMPLE)?;
    let is_minus = scanner.take_minus();
    let mm = absolute_mm(&mut scanner)?;
    let mm = if is_minus { mm.negated() } else { mm };
    in_range(
        scanner.text(),
        mm.to_f64(),
        (-LONGEST_MM, LONGEST_MM),
        "mm",
        KIND,
    )
    .map(Length::from_mm)
}

/// Reads what one unit of a scan's file is: `mm`, `in`, `m`, or a length such as `10 mm`.
///
/// # Errors
/// A [`QuantityError`] that says what was read, why it cannot stand and what to type.
pub fn parse_file_unit(text: &str) -> Result<Length, QuantityError> {
    let mut scanner = Scanner::new(text, "a unit of length", "mm")?;
    if let Ok((_, factor)) = take_unit(&mut scanner)
        && scanner.is_at_end()
    {
        return Ok(Length::from_mm(factor.to_f64()));
    }
    parse_length(text).map_err(|error| match error {
        QuantityError::NoNumber { text, .. } => not_a_unit(&text),
        other => other,
    })
}

fn absolute_mm(scanner: &mut Scanner<'_>) -> Result<Ratio, QuantityError> {
    let start = scanner.rest();
    let number = scanner.take_number()?;
    let typed = scanner.typed_number(start);
    if scanner.is_at_end() {
        return Err(QuantityError::BareNumber {
            number: typed.to_owned(),
            kind: KIND,
            units: UNITS,
        });
    }
    let too_long = || QuantityError::TooLong {
        number: typed.to_owned(),
    };
    // `16 ga BWG`, and `16 BWG` where the system's name says gauge by itself.
    let system = if scanner.take_word(&["gauge", "ga"]) {
        Some(scanner.rest().trim())
    } else {
        let rest = scanner.rest().trim();
        GaugeSystem::ALL
            .into_iter()
            .map(GaugeSystem::word)
            .find(|word| word.eq_ignore_ascii_case(rest))
    };
    if let Some(system) = system {
        let whole = number.as_whole().unwrap_or(0);
        let (num, den) = gauge::thickness_of(whole, system, typed)?;
        return Ratio::new(num * 254, den * 10).ok_or_else(too_long);
    }
    let (unit, factor) = take_unit(scanner)?;
    let first = number.times(factor).ok_or_else(too_long)?;
    if scanner.is_at_end() {
        return Ok(first);
    }
    if unit != FOOT {
        return Err(not_a_unit(scanner.rest()));
    }
    // Inches after feet; a bare number after the foot mark cannot be anything else, but is asked
    // for its mark all the same, because the hand may have meant to write more.
    let start = scanner.rest();
    scanner.take_word(&["-"]);
    let inches = scanner.take_number()?;
    let typed_inches = scanner.typed_number(start);
    if scanner.is_at_end() {
        return Err(QuantityError::BareNumber {
            number: typed_inches.to_owned(),
            kind: KIND,
            units: "in, or \" after feet",
        });
    }
    let (unit, factor) = take_unit(scanner)?;
    if unit != INCH || !scanner.is_at_end() {
        return Err(not_a_unit(scanner.rest()));
    }
    if inches.to_f64() >= 12.0 {
        return Err(QuantityError::Form {
            text: scanner.text().to_owned(),
            kind: "length in feet and inches",
            why: "twelve inches and more after feet look like a slip".to_owned(),
            example: "3 ft 4-1/2 in",
        });
    }
    inches
        .times(factor)
        .and_then(|inches| first.plus(inches))
        .ok_or_else(too_long)
}

fn take_unit(scanner: &mut Scanner<'_>) -> Result<(usize, Ratio), QuantityError> {
    // `''` is two foot marks in a row and must be seen before the foot mark.
    for (at, (words, num, den)) in LENGTH_UNITS.iter().enumerate() {
        if scanner.take_word(words) {
            let factor = Ratio::new(*num, *den).ok_or_else(|| not_a_unit(scanner.rest()))?;
            return Ok((at, factor));
        }
    }
    Err(not_a_unit(scanner.rest()))
}

fn not_a_unit(rest: &str) -> QuantityError {
    let unit: String = rest.trim().chars().take(24).collect();
    let nearest = match unit.to_lowercase().as_str() {
        "mn" | "nm" | "mmm" | "millimeter" | "millimetre" | "milimeter" => Some("mm"),
        "ins" | "inchs" | "inces" | "zoll" => Some("in"),
        "fts" | "foots" => Some("ft"),
        _ => None,
    };
    QuantityError::Unit {
        unit,
        kind: KIND,
        units: UNITS,
        nearest,
    }
}
