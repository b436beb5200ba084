use super::error::QuantityError;
use super::ratio::Ratio;
use super::scan::Scanner;
use super::{Currency, Money, Per, Rate};

const KIND: &str = "an amount of money";
const EXAMPLE: &str = "14.80 EUR";
/// Currencies with three digits after the point (ISO 4217), which this format does not keep.
const THREE_DIGITS: [&str; 7] = ["BHD", "IQD", "JOD", "KWD", "LYD", "OMR", "TND"];
const MOST_MINOR: i128 = 1_000_000_000_000;

/// Reads an amount of money: `14.80 EUR`, kept in whole cents.
///
/// # Errors
/// A [`QuantityError`]; fractions of a cent, signs shared by several currencies and currencies with
/// three digits are refused.
pub fn parse_money(text: &str) -> Result<Money, QuantityError> {
    let (major, currency) = amount(text.trim())?;
    let per_major = if currency.minor_digits() == 0 { 1 } else { 100 };
    let minor = major
        .times(Ratio::whole(per_major))
        .and_then(Ratio::as_whole)
        .ok_or_else(|| QuantityError::Form {
            text: text.trim().to_owned(),
            kind: "amount of money",
            why: "a price stops at the smallest coin".to_owned(),
            example: EXAMPLE,
        })?;
    if minor.abs() > MOST_MINOR {
        return Err(QuantityError::Range {
            text: text.trim().to_owned(),
            side: "more",
            limit: format!("10000000000 {}", currency.code()),
            kind: KIND,
        });
    }
    let minor = i64::try_from(minor).unwrap_or(i64::MAX);
    Ok(Money { minor, currency })
}

/// Reads money per something: `65 EUR/h`, `0.20 EUR/mm`. Where the key already names the unit
/// (`flow-per-metre`), plain money does as well when `per_in_key` is set.
///
/// # Errors
/// A [`QuantityError`] that says what was read, why it cannot stand and what to type.
pub fn parse_rate(text: &str, per: Per, per_in_key: bool) -> Result<Rate, QuantityError> {
    let trimmed = text.trim();
    let example: &'static str = match per {
        Per::Hour => "65 EUR/h",
        Per::Millimetre => "0.20 EUR/mm",
        Per::Metre => "4 EUR/m",
        Per::Degree => "0.05 EUR/deg",
        Per::Kilogram => "5 EUR/kg",
        Per::Piece => "2 EUR/piece",
    };
    let form = |why: String| QuantityError::Form {
        text: trimmed.to_owned(),
        kind: "rate",
        why,
        example,
    };
    let (money, divisor) = match trimmed.split_once('/') {
        Some((money, divisor)) => (money, divisor.trim()),
        None if per_in_key => (trimmed, per.word()),
        None => {
            amount(trimmed)?;
            return Err(form(format!(
                "it does not say per what; {} is meant",
                per.word()
            )));
        }
    };
    let (major, currency) = amount(money)?;
    if !divisor.eq_ignore_ascii_case(per.word()) {
        return Err(form(format!(
            "it is paid per {} here, not per `{divisor}`",
            per.word()
        )));
    }
    let major_per_unit = major.to_f64();
    if major_per_unit.abs() > 1e9 {
        return Err(QuantityError::Range {
            text: trimmed.to_owned(),
            side: "more",
            limit: format!("1000000000 {}", currency.code()),
            kind: KIND,
        });
    }
    Ok(Rate {
        major_per_unit,
        currency,
        per,
    })
}

fn amount(text: &str) -> Result<(Ratio, Currency), QuantityError> {
    let trimmed = text.trim();
    let (sign_code, rest) = match trimmed.chars().next() {
        Some('€') => (Some("EUR"), trimmed.trim_start_matches('€')),
        Some('£') => (Some("GBP"), trimmed.trim_start_matches('£')),
        _ => (None, trimmed),
    };
    if trimmed.contains(['$', '¥']) {
        return Err(QuantityError::Ambiguous {
            unit: trimmed.to_owned(),
            meanings: "several currencies share this sign".to_owned(),
            type_this: "write the three letters, such as \"14.80 USD\"".to_owned(),
        });
    }
    let mut scanner = Scanner::new(rest, KIND, EXAMPLE)?;
    let is_minus = scanner.take_minus();
    let start = scanner.rest();
    let number = scanner.take_number()?;
    let typed = scanner.typed_number(start);
    let code = match (sign_code, scanner.rest()) {
        (Some(code), "") => code,
        (None, "") => {
            return Err(QuantityError::BareNumber {
                number: typed.to_owned(),
                kind: KIND,
                units: "EUR, USD, GBP or any other three letters",
            });
        }
        (None, "€") => "EUR",
        (None, "£") => "GBP",
        (_, code) => code,
    };
    let form = |why: String| QuantityError::Form {
        text: trimmed.to_owned(),
        kind: "amount of money",
        why,
        example: EXAMPLE,
    };
    let currency = Currency::from_code(code)
        .ok_or_else(|| form(format!("`{code}` is no currency of three capital letters")))?;
    if THREE_DIGITS.contains(&code) {
        return Err(form(format!(
            "{code} has three digits after the point, which are not kept here"
        )));
    }
    let value = if is_minus { number.negated() } else { number };
    Ok((value, currency))
}
