//! Pressure and temperature: the two whose zero must be said.

use super::error::QuantityError;
use super::scan::Scanner;
use super::unit_table::{Unit, UnitTable, in_range};
use super::{Pressure, Temperature, TemperatureDifference};

/// Base unit kPa. Factors: NIST SP 811 (2008), appendix B.8; psi is lbf/in².
static PRESSURE: UnitTable = UnitTable {
    kind: "a pressure",
    example: "1.1 bar gauge",
    units: "bar, kPa, mbar, psi, each with `gauge` or `absolute`",
    table: &[
        Unit {
            words: &["bar"],
            num: 100,
            den: 1,
        },
        Unit {
            words: &["kPa"],
            num: 1,
            den: 1,
        },
        Unit {
            words: &["MPa"],
            num: 1000,
            den: 1,
        },
        Unit {
            words: &["mbar", "hPa"],
            num: 1,
            den: 10,
        },
        Unit {
            words: &["Pa"],
            num: 1,
            den: 1000,
        },
        Unit {
            words: &["psi", "lbf/in2"],
            num: 45_359_237 * 980_665 * 10_000 * 10_000,
            den: 100_000_000 * 100_000 * 254 * 254 * 1000,
        },
    ],
    doubtful: &[],
    range: (-101.325, 1_000_000.0),
    base: "kPa",
    adds: false,
};

/// Reads a pressure that says what it is measured from: `1.1 bar gauge`, `101 kPa absolute`.
///
/// # Errors
/// A [`QuantityError`]; a pressure that says neither is [`QuantityError::Ambiguous`].
pub fn parse_pressure(text: &str) -> Result<Pressure, QuantityError> {
    let trimmed = text.trim();
    let lower = trimmed.to_ascii_lowercase();
    let datum_words = [
        ("gauge", true),
        ("gage", true),
        ("absolute", false),
        ("abs", false),
    ];
    let mut found = None;
    for (word, is_gauge) in datum_words {
        if lower.ends_with(word) && lower.len() > word.len() {
            found = Some((word.len(), is_gauge));
            break;
        }
    }
    for (word, is_gauge) in [
        ("psig", true),
        ("psia", false),
        ("barg", true),
        ("bara", false),
    ] {
        if found.is_none() && lower.ends_with(word) {
            found = Some((1, is_gauge));
        }
    }
    let Some((cut, is_gauge)) = found else {
        // The number and the unit are looked at first, so that the more basic slip is told first.
        PRESSURE.parse(trimmed)?;
        return Err(QuantityError::Ambiguous {
            unit: trimmed.to_owned(),
            meanings: "a pressure counts from the air around (gauge) or from vacuum (absolute)"
                .to_owned(),
            type_this: format!("write \"{trimmed} gauge\" or \"{trimmed} absolute\""),
        });
    };
    let number_and_unit = trimmed.get(..trimmed.len() - cut).unwrap_or(trimmed);
    let kpa = PRESSURE.parse(number_and_unit)?;
    if is_gauge {
        return Ok(Pressure::Gauge(kpa));
    }
    in_range(trimmed, kpa, (0.0, 1_000_000.0), "kPa", PRESSURE.kind).map(Pressure::Absolute)
}

const TEMPERATURE: &str = "a temperature";
const DIFFERENCE: &str = "a difference of temperature";
/// Words, kelvins per unit, kelvins at its zero (ITS-90; NIST SP 811 appendix B.8).
const TEMPERATURE_UNITS: [(&[&str], (i128, i128), f64); 3] = [
    (&["degC", "deg C", "°C"], (1, 1), 273.15),
    (&["degF", "deg F", "°F"], (5, 9), 459.67 * 5.0 / 9.0),
    (&["K", "kelvin"], (1, 1), 0.0),
];
const FROM_ZERO: [&str; 2] = ["absolute", "abs"];
const BETWEEN: [&str; 2] = ["difference", "diff"];

/// Reads an absolute temperature: `90 degC`, `194 degF`, `363 K absolute`.
///
/// # Errors
/// A [`QuantityError`]; kelvins that do not say `absolute` or `difference` are ambiguous.
pub fn parse_temperature(text: &str) -> Result<Temperature, QuantityError> {
    let parts = temperature_parts(text, TEMPERATURE, "90 degC")?;
    if parts.is_difference {
        return Err(QuantityError::Form {
            text: text.trim().to_owned(),
            kind: "temperature",
            why: "a difference is written where a temperature is asked for".to_owned(),
            example: "90 degC",
        });
    }
    if parts.is_kelvin && !parts.is_absolute {
        return Err(ambiguous_kelvin(text));
    }
    let kelvin = parts.scaled + parts.zero;
    in_range(text.trim(), kelvin, (0.0, 5000.0), "K", TEMPERATURE).map(Temperature::from_kelvin)
}

/// Reads a difference of temperature: `20 K difference`, `36 degF difference`.
///
/// # Errors
/// A [`QuantityError`]; one that does not say `difference` is ambiguous.
pub fn parse_temperature_difference(text: &str) -> Result<TemperatureDifference, QuantityError> {
    let parts = temperature_parts(text, DIFFERENCE, "20 K difference")?;
    if !parts.is_difference {
        return Err(ambiguous_kelvin(text));
    }
    in_range(
        text.trim(),
        parts.scaled,
        (-5000.0, 5000.0),
        "K",
        DIFFERENCE,
    )
    .map(TemperatureDifference::from_kelvin)
}

struct TemperatureParts {
    scaled: f64,
    zero: f64,
    is_kelvin: bool,
    is_absolute: bool,
    is_difference: bool,
}

fn temperature_parts(
    text: &str,
    kind: &'static str,
    example: &'static str,
) -> Result<TemperatureParts, QuantityError> {
    let mut scanner = Scanner::new(text, kind, example)?;
    let is_minus = scanner.take_minus();
    let start = scanner.rest();
    let number = scanner.take_number()?;
    let typed = scanner.typed_number(start);
    let units = "degC, degF, K";
    if scanner.is_at_end() {
        return Err(QuantityError::BareNumber {
            number: typed.to_owned(),
            kind,
            units,
        });
    }
    for (words, (num, den), zero) in TEMPERATURE_UNITS {
        if !scanner.take_word(words) {
            continue;
        }
        let is_absolute = scanner.take_word(&FROM_ZERO);
        let is_difference = !is_absolute && scanner.take_word(&BETWEEN);
        if !scanner.is_at_end() {
            break;
        }
        #[expect(clippy::cast_precision_loss, reason = "5 and 9")]
        let scaled = number.to_f64() * num as f64 / den as f64;
        return Ok(TemperatureParts {
            scaled: if is_minus { -scaled } else { scaled },
            zero,
            is_kelvin: zero == 0.0,
            is_absolute,
            is_difference,
        });
    }
    Err(QuantityError::Unit {
        unit: scanner.rest().chars().take(24).collect(),
        kind,
        units,
        nearest: None,
    })
}

fn ambiguous_kelvin(text: &str) -> QuantityError {
    let text = text.trim();
    QuantityError::Ambiguous {
        unit: text.to_owned(),
        meanings: "a temperature and a difference of two temperatures are not the same".to_owned(),
        type_this: format!("write \"{text} absolute\" or \"{text} difference\""),
    }
}
