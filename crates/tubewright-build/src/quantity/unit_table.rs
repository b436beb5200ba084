//! One number and one unit out of a table: how most kinds of quantity are read.

use super::error::QuantityError;
use super::ratio::Ratio;
use super::scan::Scanner;

/// A unit by all the words it goes by, and what it is in the base unit: `num/den`.
pub(crate) struct Unit {
    /// Longest first where one starts another.
    pub(crate) words: &'static [&'static str],
    pub(crate) num: i128,
    pub(crate) den: i128,
}

/// Words that could mean several units.
pub(crate) struct Doubtful {
    pub(crate) words: &'static [&'static str],
    pub(crate) meanings: &'static str,
    pub(crate) type_this: &'static str,
}

/// A kind of quantity that is one number and one unit.
pub(crate) struct UnitTable {
    /// With its article: `a mass`.
    pub(crate) kind: &'static str,
    pub(crate) example: &'static str,
    /// For messages.
    pub(crate) units: &'static str,
    pub(crate) table: &'static [Unit],
    pub(crate) doubtful: &'static [Doubtful],
    /// Least and most in the base unit.
    pub(crate) range: (f64, f64),
    pub(crate) base: &'static str,
    /// Whether several descending terms may be added: `1 h 20 min`.
    pub(crate) adds: bool,
}

impl UnitTable {
    /// Reads the text and gives its value in the base unit.
    pub(crate) fn parse(&self, text: &str) -> Result<f64, QuantityError> {
        let mut scanner = Scanner::new(text, self.kind, self.example)?;
        let is_minus = scanner.take_minus();
        let mut sum = Ratio::ZERO;
        loop {
            let start = scanner.rest();
            let number = scanner.take_number()?;
            let typed = scanner.typed_number(start);
            let unit = self.take_unit(&mut scanner, typed)?;
            sum = number
                .times(unit)
                .and_then(|term| sum.plus(term))
                .ok_or_else(|| QuantityError::TooLong {
                    number: typed.to_owned(),
                })?;
            if scanner.is_at_end() {
                break;
            }
            if !self.adds {
                return Err(self.not_a_unit(start.get(typed.len()..).unwrap_or(start)));
            }
        }
        let sum = if is_minus { sum.negated() } else { sum };
        in_range(
            scanner.text(),
            sum.to_f64(),
            self.range,
            self.base,
            self.kind,
        )
    }

    fn take_unit(&self, scanner: &mut Scanner<'_>, typed: &str) -> Result<Ratio, QuantityError> {
        if scanner.is_at_end() {
            return Err(QuantityError::BareNumber {
                number: typed.to_owned(),
                kind: self.kind,
                units: self.units,
            });
        }
        // The longest word wins, so that `lbf ft` is not taken for `lb`.
        let rest = scanner.rest();
        let best = self
            .table
            .iter()
            .flat_map(|unit| unit.words.iter().map(move |word| (*word, unit)))
            .filter(|(word, _)| Scanner::new(rest, "", "").is_ok_and(|mut s| s.take_word(&[word])))
            .max_by_key(|(word, _)| word.len());
        let doubtful = self
            .doubtful
            .iter()
            .flat_map(|unit| unit.words.iter().map(move |word| (*word, unit)))
            .filter(|(word, _)| Scanner::new(rest, "", "").is_ok_and(|mut s| s.take_word(&[word])))
            .max_by_key(|(word, _)| word.len());
        match (best, doubtful) {
            (Some((word, unit)), other) if other.is_none_or(|(w, _)| w.len() < word.len()) => {
                scanner.take_word(&[word]);
                Ratio::new(unit.num, unit.den).ok_or_else(|| self.not_a_unit(rest))
            }
            (_, Some((word, unit))) => Err(QuantityError::Ambiguous {
                unit: word.to_owned(),
                meanings: unit.meanings.to_owned(),
                type_this: unit.type_this.replace('#', typed),
            }),
            _ => Err(self.not_a_unit(rest)),
        }
    }

    pub(crate) fn not_a_unit(&self, rest: &str) -> QuantityError {
        let unit: String = rest.trim().chars().take(24).collect();
        let nearest = self
            .table
            .iter()
            .filter_map(|known| known.words.first().copied())
            .map(|word| {
                (
                    strsim::damerau_levenshtein(word, &unit.to_lowercase()),
                    word,
                )
            })
            .min()
            .filter(|(distance, word)| *distance <= 1 && word.len() > 2)
            .map(|(_, word)| word);
        QuantityError::Unit {
            unit,
            kind: self.kind,
            units: self.units,
            nearest,
        }
    }
}

pub(crate) fn in_range(
    text: &str,
    value: f64,
    (least, most): (f64, f64),
    base: &str,
    kind: &'static str,
) -> Result<f64, QuantityError> {
    let out = |side, limit: f64| QuantityError::Range {
        text: text.to_owned(),
        side,
        limit: format!("{limit} {base}"),
        kind,
    };
    if value < least {
        Err(out("less", least))
    } else if value > most {
        Err(out("more", most))
    } else if value.is_finite() {
        Ok(value)
    } else {
        Err(out("more", most))
    }
}
