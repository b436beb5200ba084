//! Plain point lists: `x y z` per line, by blanks, commas or semicolons, then anything (colour,
//! normal). A first line with one whole number is the count of points that some programs write.

use crate::assemble::Raw;
use crate::error::ScanError;
use crate::limits::Limits;
use crate::text::{Line, Lines};

pub(crate) fn read(bytes: &[u8], limits: &Limits) -> Result<Raw, ScanError> {
    let mut raw = Raw::default();
    let mut lines = Lines::new(bytes);
    let mut promised = None;
    let mut is_first = true;
    while let Some(line) = lines.next_line() {
        let mut words = fields(&line).peekable();
        let Some(first) = words.peek() else { continue };
        if first.starts_with(b"#") || first.starts_with(b"//") {
            continue;
        }
        if core::mem::take(&mut is_first)
            && let Some(count) = lone_count(&line)
        {
            promised = Some(count);
            continue;
        }
        let xyz = line.three_numbers(&mut words)?;
        raw.push_vertex(xyz, limits)?;
    }
    if let Some(count) = promised
        && count > raw.vertices.len() as u64
    {
        return Err(ScanError::Truncated {
            missing: format!(
                "the first line says {count} points, {} are there",
                raw.vertices.len()
            ),
        });
    }
    Ok(raw)
}

fn fields<'a>(line: &Line<'a>) -> impl Iterator<Item = &'a [u8]> + use<'a> {
    line.text
        .split(|b| b.is_ascii_whitespace() || matches!(b, b',' | b';'))
        .filter(|word| !word.is_empty())
}

fn lone_count(line: &Line<'_>) -> Option<u64> {
    let mut words = fields(line);
    let count = core::str::from_utf8(words.next()?).ok()?.parse().ok()?;
    words.next().is_none().then_some(count)
}
