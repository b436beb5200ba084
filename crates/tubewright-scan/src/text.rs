//! Lines, words and numbers of a text format, with line numbers, over raw bytes.
//!
//! Bytes and not `str`: a name in a header may be in any encoding and must not spoil the numbers.

use crate::error::{Place, ScanError};

/// One line without its end.
#[derive(Clone, Copy)]
pub(crate) struct Line<'a> {
    pub(crate) text: &'a [u8],
    /// From 1.
    pub(crate) number: u64,
}

impl<'a> Line<'a> {
    pub(crate) fn words(&self) -> impl Iterator<Item = &'a [u8]> + use<'a> {
        self.text
            .split(u8::is_ascii_whitespace)
            .filter(|word| !word.is_empty())
    }

    pub(crate) fn place(&self) -> Place {
        Place::Line(self.number)
    }

    /// A finite number.
    pub(crate) fn number(&self, word: &[u8]) -> Result<f64, ScanError> {
        number(word, self.place())
    }

    /// Three finite numbers from the next words.
    pub(crate) fn three_numbers<'w>(
        &self,
        words: &mut impl Iterator<Item = &'w [u8]>,
    ) -> Result<[f64; 3], ScanError> {
        let mut xyz = [0.0; 3];
        for value in &mut xyz {
            let word = words.next().ok_or_else(|| ScanError::Malformed {
                place: self.place(),
                problem: "three coordinates are needed".to_owned(),
            })?;
            *value = self.number(word)?;
        }
        Ok(xyz)
    }
}

/// A finite number, or where it is none.
pub(crate) fn number(word: &[u8], place: Place) -> Result<f64, ScanError> {
    let value: f64 = core::str::from_utf8(word)
        .ok()
        .and_then(|text| text.parse().ok())
        .ok_or_else(|| ScanError::NotANumber {
            place,
            text: shown(word),
        })?;
    if value.is_finite() {
        Ok(value)
    } else {
        Err(ScanError::NotFinite {
            place,
            text: shown(word),
        })
    }
}

/// A word for a message: 40 bytes at most, control characters replaced.
pub(crate) fn shown(word: &[u8]) -> String {
    let cut = word.get(..40).unwrap_or(word);
    String::from_utf8_lossy(cut)
        .chars()
        .map(|c| if c.is_control() { '?' } else { c })
        .collect()
}

/// Whether a word is `expected`, in any case.
pub(crate) fn is_word(word: &[u8], expected: &str) -> bool {
    word.eq_ignore_ascii_case(expected.as_bytes())
}

/// Walks the lines; `\n`, `\r\n` and lone `\r` all end one.
pub(crate) struct Lines<'a> {
    rest: &'a [u8],
    number: u64,
}

impl<'a> Lines<'a> {
    pub(crate) fn new(bytes: &'a [u8]) -> Self {
        Self {
            rest: bytes,
            number: 0,
        }
    }

    pub(crate) fn next_line(&mut self) -> Option<Line<'a>> {
        if self.rest.is_empty() {
            return None;
        }
        self.number += 1;
        let end = self.rest.iter().position(|b| matches!(b, b'\n' | b'\r'));
        let (text, rest) = match end {
            None => (self.rest, &[][..]),
            Some(end) => {
                let (text, tail) = self.rest.split_at(end);
                let skip = if tail.starts_with(b"\r\n") { 2 } else { 1 };
                (text, tail.get(skip..).unwrap_or(&[]))
            }
        };
        self.rest = rest;
        Some(Line {
            text,
            number: self.number,
        })
    }

    /// Number of the last line that was returned.
    pub(crate) fn line_number(&self) -> u64 {
        self.number
    }

    /// What was not walked yet.
    pub(crate) fn rest(&self) -> &'a [u8] {
        self.rest
    }
}
