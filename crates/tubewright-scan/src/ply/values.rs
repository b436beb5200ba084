//! The data of a PLY file, one value after another, as text or as bytes.

use super::header::{Element, Kind, Scalar};
use crate::error::{Place, ScanError};
use crate::text::{number, shown};

/// Most corners of one polygon; a longer list is damage.
const MOST_CORNERS: u64 = 10_000;

/// A source of values in the order of the header.
pub(crate) trait Values {
    /// Whether the data left could hold the element at all: asked before anything is allocated.
    fn can_hold(&self, element: &Element) -> bool;
    /// Says which item is being read, for places in messages.
    fn start_item(&mut self, item: Place);
    /// Where the last value was.
    fn place(&self) -> Place;
    /// The next value; may be NaN or infinite.
    fn scalar(&mut self, scalar: Scalar) -> Result<f64, ScanError>;
    /// Bytes left over that are no blanks.
    fn trailing(&self) -> u64;

    fn list_length(&mut self, count: Scalar) -> Result<u64, ScanError> {
        let length = self.scalar(count)?;
        if length.fract() == 0.0 && (0.0..=MOST_CORNERS as f64).contains(&length) {
            return Ok(length as u64);
        }
        Err(ScanError::Malformed {
            place: self.place(),
            problem: format!("a list of {length} values"),
        })
    }

    fn skip_list(&mut self, count: Scalar, item: Scalar) -> Result<(), ScanError> {
        for _ in 0..self.list_length(count)? {
            self.scalar(item)?;
        }
        Ok(())
    }

    fn indices(
        &mut self,
        count: Scalar,
        item: Scalar,
        corners: &mut Vec<u32>,
    ) -> Result<(), ScanError> {
        for _ in 0..self.list_length(count)? {
            let index = self.scalar(item)?;
            if index.fract() != 0.0 || !(0.0..f64::from(u32::MAX)).contains(&index) {
                return Err(ScanError::Malformed {
                    place: self.place(),
                    problem: format!("{index} is no vertex number"),
                });
            }
            corners.push(index as u32);
        }
        Ok(())
    }
}

fn least_values(element: &Element) -> u64 {
    element.properties.len() as u64
}

pub(crate) struct Ascii<'a> {
    rest: &'a [u8],
    line: u64,
}

impl<'a> Ascii<'a> {
    pub(crate) fn new(rest: &'a [u8], header_lines: u64) -> Self {
        Self {
            rest,
            line: header_lines + 1,
        }
    }

    fn skip_blanks(&mut self) {
        while let [first, rest @ ..] = self.rest {
            match first {
                b'\n' => self.line += 1,
                // A lone carriage return ends a line, one before a newline does not count twice.
                b'\r' if !rest.starts_with(b"\n") => self.line += 1,
                b if b.is_ascii_whitespace() => {}
                _ => break,
            }
            self.rest = rest;
        }
    }
}

impl Values for Ascii<'_> {
    fn can_hold(&self, element: &Element) -> bool {
        // A value takes a digit and a blank at least; the last one needs no blank.
        let room = (self.rest.len() as u64).div_ceil(2);
        element
            .count
            .checked_mul(least_values(element))
            .is_some_and(|values| values <= room)
    }

    fn start_item(&mut self, _: Place) {}

    fn place(&self) -> Place {
        Place::Line(self.line)
    }

    fn scalar(&mut self, _: Scalar) -> Result<f64, ScanError> {
        self.skip_blanks();
        let end = self
            .rest
            .iter()
            .position(u8::is_ascii_whitespace)
            .unwrap_or(self.rest.len());
        let (word, rest) = self.rest.split_at(end);
        if word.is_empty() {
            return Err(ScanError::Truncated {
                missing: format!("no more values after line {}", self.line),
            });
        }
        self.rest = rest;
        match number(word, self.place()) {
            // Colours and normals may be NaN without harm: the caller refuses coordinates.
            Err(ScanError::NotFinite { .. }) => Ok(f64::NAN),
            Err(ScanError::NotANumber { place, .. }) => Err(ScanError::NotANumber {
                place,
                text: shown(word),
            }),
            other => other,
        }
    }

    fn trailing(&self) -> u64 {
        self.rest.trim_ascii().len() as u64
    }
}

pub(crate) struct Binary<'a> {
    rest: &'a [u8],
    is_big_endian: bool,
    item: Place,
}

impl<'a> Binary<'a> {
    pub(crate) fn new(rest: &'a [u8], is_big_endian: bool) -> Self {
        Self {
            rest,
            is_big_endian,
            item: Place::Vertex(0),
        }
    }

    fn take<const N: usize>(&mut self) -> Option<[u8; N]> {
        let (word, rest) = self.rest.split_first_chunk::<N>()?;
        self.rest = rest;
        let mut word = *word;
        if self.is_big_endian {
            word.reverse();
        }
        Some(word)
    }
}

impl Values for Binary<'_> {
    fn can_hold(&self, element: &Element) -> bool {
        let least: usize = element
            .properties
            .iter()
            .map(|property| match property.kind {
                Kind::Scalar(scalar) => scalar.bytes(),
                Kind::List { count, .. } => count.bytes(),
            })
            .sum();
        element
            .count
            .checked_mul(least as u64)
            .is_some_and(|bytes| bytes <= self.rest.len() as u64)
    }

    fn start_item(&mut self, item: Place) {
        self.item = item;
    }

    fn place(&self) -> Place {
        self.item
    }

    fn scalar(&mut self, scalar: Scalar) -> Result<f64, ScanError> {
        let value = match scalar {
            Scalar::I8 => self.take().map(|w| f64::from(i8::from_le_bytes(w))),
            Scalar::U8 => self.take().map(|w| f64::from(u8::from_le_bytes(w))),
            Scalar::I16 => self.take().map(|w| f64::from(i16::from_le_bytes(w))),
            Scalar::U16 => self.take().map(|w| f64::from(u16::from_le_bytes(w))),
            Scalar::I32 => self.take().map(|w| f64::from(i32::from_le_bytes(w))),
            Scalar::U32 => self.take().map(|w| f64::from(u32::from_le_bytes(w))),
            Scalar::F32 => self.take().map(|w| f64::from(f32::from_le_bytes(w))),
            Scalar::F64 => self.take().map(f64::from_le_bytes),
        };
        value.ok_or_else(|| ScanError::Truncated {
            missing: format!("no data for {}", self.item),
        })
    }

    fn trailing(&self) -> u64 {
        self.rest.len() as u64
    }
}
