//! Wavefront OBJ: vertices and faces; everything else is skipped.
//!
//! Format from *Object Files (.obj), Appendix B1* of the Advanced Visualizer manual (from memory):
//! `f` corners are `v`, `v/vt`, `v//vn` or `v/vt/vn`, from 1, or negative counting back from the
//! last vertex read.

use std::borrow::Cow;

use crate::assemble::Raw;
use crate::error::{Place, ScanError};
use crate::limits::Limits;
use crate::text::{Line, Lines, shown};

pub(crate) fn read(bytes: &[u8], limits: &Limits) -> Result<Raw, ScanError> {
    let mut raw = Raw::default();
    let mut lines = Lines::new(bytes);
    let mut corners = Vec::new();
    // Faces may stand before their vertices: the highest number named is checked at the end.
    let mut highest: Option<(u32, Place)> = None;
    while let Some(line) = lines.next_line() {
        let text = with_continuations(line, &mut lines);
        let line = Line {
            text: &text,
            number: line.number,
        };
        let mut words = line.words();
        match words.next() {
            Some(b"v") => {
                let xyz = line.three_numbers(&mut words)?;
                raw.push_vertex(xyz, limits)?;
            }
            Some(b"f") => {
                corners.clear();
                for word in words {
                    let corner = corner(word, &line, raw.vertices.len())?;
                    if highest.is_none_or(|(number, _)| corner > number) {
                        highest = Some((corner, line.place()));
                    }
                    corners.push(corner);
                }
                raw.push_polygon(&corners, line.place(), limits)?;
            }
            _ => {}
        }
    }
    if let Some((corner, place)) = highest
        && corner as usize >= raw.vertices.len()
    {
        return Err(ScanError::NoSuchVertex {
            place,
            index: i64::from(corner) + 1,
            vertices: raw.vertices.len() as u64,
        });
    }
    Ok(raw)
}

/// A line that ends in a backslash goes on in the next one.
fn with_continuations<'a>(line: Line<'a>, lines: &mut Lines<'a>) -> Cow<'a, [u8]> {
    let Some(start) = line.text.strip_suffix(b"\\") else {
        return Cow::Borrowed(line.text);
    };
    let mut joined = start.to_vec();
    while let Some(next) = lines.next_line() {
        joined.push(b' ');
        match next.text.strip_suffix(b"\\") {
            Some(part) => joined.extend_from_slice(part),
            None => {
                joined.extend_from_slice(next.text);
                break;
            }
        }
    }
    Cow::Owned(joined)
}

fn corner(word: &[u8], line: &Line<'_>, vertices: usize) -> Result<u32, ScanError> {
    let number = word.split(|b| *b == b'/').next().unwrap_or(word);
    let index: i64 = core::str::from_utf8(number)
        .ok()
        .and_then(|text| text.parse().ok())
        .ok_or_else(|| ScanError::NotANumber {
            place: line.place(),
            text: shown(word),
        })?;
    let from_zero = if index < 0 {
        index.saturating_add(vertices as i64)
    } else {
        index - 1
    };
    u32::try_from(from_zero).map_err(|_| ScanError::NoSuchVertex {
        place: line.place(),
        index,
        vertices: vertices as u64,
    })
}
