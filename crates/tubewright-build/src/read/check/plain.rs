//! Plain numbers and dates, and how a shape is called in a message.

use crate::keys::Shape;
use core::ops::Range;
use toml::Spanned;
use toml::de::DeValue;

/// A finite plain number, at most a million either way.
pub(crate) fn number(value: &Spanned<DeValue<'_>>) -> Option<f64> {
    let number: f64 = match value.get_ref() {
        DeValue::Integer(whole) if whole.radix() == 10 => whole.as_str().parse().ok()?,
        DeValue::Float(float) => float.as_str().parse().ok()?,
        _ => return None,
    };
    (number.is_finite() && number.abs() <= 1e6).then_some(number)
}

/// Whether a text is a date of the calendar, year-month-day.
pub(crate) fn is_date(text: &str) -> bool {
    let bytes = text.as_bytes();
    let shaped = bytes.len() == 10
        && bytes.iter().enumerate().all(|(at, byte)| match at {
            4 | 7 => *byte == b'-',
            _ => byte.is_ascii_digit(),
        });
    if !shaped {
        return false;
    }
    let part = |range: Range<usize>| text.get(range).and_then(|part| part.parse::<u32>().ok());
    let (Some(year), Some(month), Some(day)) = (part(0..4), part(5..7), part(8..10)) else {
        return false;
    };
    let is_leap = year % 4 == 0 && (year % 100 != 0 || year % 400 == 0);
    let days = match month {
        2 if is_leap => 29,
        2 => 28,
        4 | 6 | 9 | 11 => 30,
        1..=12 => 31,
        _ => 0,
    };
    (1..=days).contains(&day)
}
pub(super) fn wanted(shape: Shape) -> (String, String) {
    let said = |wanted: &str, example: &str| (wanted.to_owned(), example.to_owned());
    match shape {
        Shape::Whole { least, .. } => said("a whole number without quotes", &least.to_string()),
        Shape::Number => said("a number without quotes", "12.5"),
        Shape::Yes => said("true or false without quotes", "true"),
        Shape::Quantity(kind) => (
            "text with a unit".to_owned(),
            format!("\"{}\"", kind.example()),
        ),
        Shape::Date => said("a date in quotes", "\"2026-03-02\""),
        Shape::List { .. } => said("a list in brackets", "[ …, … ]"),
        Shape::Table(_) | Shape::OneOrMore(..) => said("a table in braces", "{ … }"),
        Shape::TextOrList(..) => said("text or a list", "[ …, … ]"),
        _ => said("text in quotes", "\"…\""),
    }
}

pub(super) fn count_wanted(least: usize, most: usize) -> String {
    if least == most {
        format!("exactly {least} are wanted")
    } else if least == 0 {
        format!("at most {most} are taken")
    } else {
        format!("from {least} to {most} are wanted")
    }
}
