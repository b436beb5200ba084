//! STL, binary and ASCII.
//!
//! Layout from 3D Systems, *StereoLithography Interface Specification* (1989), as commonly
//! reprinted (from memory): binary = 80 bytes of header, a 32-bit count, 50 bytes per triangle
//! (normal, three vertices, two attribute bytes), all little-endian.

use crate::assemble::Raw;
use crate::error::{Place, ScanError};
use crate::limits::Limits;
use crate::scan::ScanWarning;
use crate::text::{Lines, is_word, shown};

const HEADER: usize = 84;
const RECORD: usize = 50;

fn claimed_triangles(bytes: &[u8]) -> Option<u64> {
    let count = bytes.get(80..HEADER)?;
    Some(u64::from(u32::from_le_bytes(count.try_into().ok()?)))
}

/// Whether the length fits the count in a binary header exactly. Some programs start a binary
/// header with "solid", so the length is asked before the first word.
pub(crate) fn looks_binary(bytes: &[u8]) -> bool {
    claimed_triangles(bytes).is_some_and(|count| {
        count > 0 && bytes.len() as u64 == HEADER as u64 + count * RECORD as u64
    })
}

pub(crate) fn read(bytes: &[u8], limits: &Limits) -> Result<Raw, ScanError> {
    let starts_solid = bytes
        .trim_ascii_start()
        .get(..5)
        .is_some_and(|word| is_word(word, "solid"));
    if starts_solid && !looks_binary(bytes) {
        // A binary file that says "solid" and was cut short or padded has NULs; text has none.
        let head = bytes.get(..512).unwrap_or(bytes);
        if !head.contains(&0) {
            return read_ascii(bytes, limits);
        }
    }
    read_binary(bytes, limits)
}

fn read_binary(bytes: &[u8], limits: &Limits) -> Result<Raw, ScanError> {
    let count = claimed_triangles(bytes).ok_or_else(|| ScanError::Truncated {
        missing: format!(
            "a binary STL starts with {HEADER} bytes, there are {}",
            bytes.len()
        ),
    })?;
    let body = bytes.get(HEADER..).unwrap_or(&[]);
    let whole = (body.len() / RECORD) as u64;
    if whole < count {
        return Err(ScanError::Truncated {
            missing: format!("the header says {count} triangles, {whole} are there whole"),
        });
    }
    if count > limits.max_triangles as u64 {
        return Err(ScanError::TooManyTriangles {
            limit: limits.max_triangles,
        });
    }
    let mut raw = Raw {
        merge: true,
        ..Raw::default()
    };
    let mut records = body.chunks_exact(RECORD);
    for face in 1..=count {
        let Some(record) = records.next() else { break };
        // The normal (12 bytes) is skipped: the order of the corners says the same.
        let corners = record.get(12..48).unwrap_or(&[]);
        for vertex in corners.chunks_exact(12) {
            let xyz = floats(vertex);
            if let Some(bad) = xyz.iter().find(|v| !v.is_finite()) {
                return Err(ScanError::NotFinite {
                    place: Place::Face(face),
                    text: bad.to_string(),
                });
            }
            raw.push_vertex(xyz, limits)?;
        }
        push_last_three(&mut raw, limits)?;
    }
    let trailing = body.len() as u64 - count * RECORD as u64;
    if trailing > 0 {
        raw.warnings.push(ScanWarning::TrailingBytes(trailing));
    }
    Ok(raw)
}

fn floats(vertex: &[u8]) -> [f64; 3] {
    let mut xyz = [0.0; 3];
    for (value, word) in xyz.iter_mut().zip(vertex.chunks_exact(4)) {
        *value = word
            .try_into()
            .map_or(f64::NAN, |word| f64::from(f32::from_le_bytes(word)));
    }
    xyz
}

fn push_last_three(raw: &mut Raw, limits: &Limits) -> Result<(), ScanError> {
    let end = u32::try_from(raw.vertices.len()).map_err(|_| ScanError::TooManyVertices {
        limit: limits.max_vertices,
    })?;
    raw.push_triangle([end - 3, end - 2, end - 1], limits)
}

fn read_ascii(bytes: &[u8], limits: &Limits) -> Result<Raw, ScanError> {
    let mut raw = Raw {
        merge: true,
        ..Raw::default()
    };
    let mut lines = Lines::new(bytes);
    let mut corners_in_loop = None;
    let mut is_closed = false;
    while let Some(line) = lines.next_line() {
        let mut words = line.words();
        let Some(first) = words.next() else { continue };
        let malformed = |problem: String| ScanError::Malformed {
            place: line.place(),
            problem,
        };
        if is_word(first, "vertex") {
            let Some(corners) = corners_in_loop.as_mut().filter(|corners| **corners < 3) else {
                return Err(malformed("a vertex outside a loop of three".to_owned()));
            };
            let xyz = line.three_numbers(&mut words)?;
            raw.push_vertex(xyz, limits)?;
            *corners += 1;
        } else if is_word(first, "outer") {
            if corners_in_loop.is_some() {
                return Err(malformed("a loop inside a loop".to_owned()));
            }
            corners_in_loop = Some(0);
        } else if is_word(first, "endloop") {
            match corners_in_loop.take() {
                Some(3) => push_last_three(&mut raw, limits)?,
                Some(corners) => {
                    return Err(malformed(format!(
                        "a loop of {corners} vertices, not three"
                    )));
                }
                None => return Err(malformed("the end of a loop that has no start".to_owned())),
            }
        } else if is_word(first, "endsolid") {
            is_closed = true;
        } else if is_word(first, "solid") {
            is_closed = false;
        } else if !(is_word(first, "facet") || is_word(first, "endfacet")) {
            // Half a word at the very end is a cut file, not a strange one.
            if lines.rest().is_empty() {
                return Err(ScanError::Truncated {
                    missing: format!("it breaks off in line {}", line.number),
                });
            }
            return Err(malformed(format!(
                "\"{}\" is no word of an STL file",
                shown(first)
            )));
        }
    }
    if corners_in_loop.is_some() {
        return Err(ScanError::Truncated {
            missing: format!("the triangle in line {} has no end", lines.line_number()),
        });
    }
    if !is_closed {
        raw.warnings.push(ScanWarning::NoClosingWord);
    }
    raw.has_faces = true;
    Ok(raw)
}
