use super::Clock;
use super::error::QuantityError;
use super::ratio::Ratio;
use super::scan::Scanner;
use super::unit_table::in_range;
use tubewright_geometry::Angle;

const KIND: &str = "an angle";
const EXAMPLE: &str = "22.5 deg";
const UNITS: &str = "deg, ° ' \", rad";
const DEGREE: [&str; 4] = ["degrees", "degree", "deg", "°"];
const MINUTE: [&str; 4] = ["min", "'", "′", "’"];
const SECOND: [&str; 6] = ["sec", "''", "\"", "″", "”", "s"];

/// Reads an angle: `22.5 deg`, `22°30'`, `22° 30' 15"`, `0.4 rad`. It may be negative; two turns are
/// the limit.
///
/// # Errors
/// A [`QuantityError`] that says what was read, why it cannot stand and what to type.
pub fn parse_angle(text: &str) -> Result<Angle, QuantityError> {
    let mut scanner = Scanner::new(text, KIND, EXAMPLE)?;
    let is_minus = scanner.take_minus();
    let start = scanner.rest();
    let number = scanner.take_number()?;
    let typed = scanner.typed_number(start).to_owned();
    if scanner.is_at_end() {
        return Err(QuantityError::BareNumber {
            number: typed,
            kind: KIND,
            units: "deg, rad",
        });
    }
    let sign = if is_minus { -1.0 } else { 1.0 };
    if scanner.take_word(&["rad"]) && scanner.is_at_end() {
        let rad = sign * number.to_f64();
        return in_range(scanner.text(), rad, (-12.6, 12.6), "rad", KIND).map(Angle::from_rad);
    }
    if !scanner.take_word(&DEGREE) {
        return Err(not_a_unit(scanner.rest()));
    }
    let mut degrees = number;
    for (words, parts) in [(&MINUTE[..], 60), (&SECOND[..], 3600)] {
        if scanner.is_at_end() {
            break;
        }
        let part = scanner.take_number()?;
        if part.to_f64() >= 60.0 {
            return Err(QuantityError::Form {
                text: scanner.text().to_owned(),
                kind: "angle",
                why: "minutes and seconds of an angle stay below 60".to_owned(),
                example: "22°30'",
            });
        }
        if !scanner.take_word(words) {
            return Err(not_a_unit(scanner.rest()));
        }
        degrees = Ratio::new(1, parts)
            .and_then(|unit| part.times(unit))
            .and_then(|part| degrees.plus(part))
            .ok_or_else(|| QuantityError::TooLong {
                number: typed.clone(),
            })?;
    }
    if !scanner.is_at_end() {
        return Err(not_a_unit(scanner.rest()));
    }
    let deg = sign * degrees.to_f64();
    in_range(scanner.text(), deg, (-720.0, 720.0), "deg", KIND).map(Angle::from_deg)
}

/// Reads a place round a tube: a clock mark `12:00`, `4:30`, or an angle clockwise from twelve
/// looking downstream, `90 deg`.
///
/// # Errors
/// A [`QuantityError`] that says what was read, why it cannot stand and what to type.
pub fn parse_clock(text: &str) -> Result<Clock, QuantityError> {
    let trimmed = text.trim();
    let Some((hours, minutes)) = trimmed.split_once(':') else {
        return parse_angle(trimmed)
            .map(Clock::from_angle)
            .map_err(|error| match error {
                QuantityError::BareNumber { number, .. } => QuantityError::BareNumber {
                    number,
                    kind: "a clock mark",
                    units: ":00 o'clock, or deg",
                },
                QuantityError::NoNumber { text, .. } => QuantityError::NoNumber {
                    text,
                    kind: "a clock mark",
                    example: "4:30",
                },
                other => other,
            });
    };
    let form = |why: &str| QuantityError::Form {
        text: trimmed.to_owned(),
        kind: "clock mark",
        why: why.to_owned(),
        example: "4:30",
    };
    let all_digits = |part: &str, most: usize| {
        (1..=most).contains(&part.len()) && part.bytes().all(|b| b.is_ascii_digit())
    };
    if !all_digits(hours, 2) || !all_digits(minutes, 2) || minutes.len() != 2 {
        return Err(form("a clock mark is hours, a colon and two digits"));
    }
    let hours: u8 = hours.parse().map_err(|_| form("the hour is no number"))?;
    let minutes: u8 = minutes
        .parse()
        .map_err(|_| form("the minutes are no number"))?;
    if !(1..=12).contains(&hours) {
        return Err(form("the hour goes from 1 to 12"));
    }
    if minutes > 59 {
        return Err(form("the minutes go from 00 to 59"));
    }
    let deg = f64::from(hours % 12) * 30.0 + f64::from(minutes) * 0.5;
    Ok(Clock::from_angle(Angle::from_deg(deg)))
}

fn not_a_unit(rest: &str) -> QuantityError {
    let unit: String = rest.trim().chars().take(24).collect();
    let nearest = match unit.to_lowercase().as_str() {
        "dge" | "dg" | "de" | "degs" | "grad" => Some("deg"),
        _ => None,
    };
    QuantityError::Unit {
        unit,
        kind: KIND,
        units: UNITS,
        nearest,
    }
}
