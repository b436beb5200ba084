//! The header of a PLY file.

use crate::error::{Place, ScanError};
use crate::text::{Line, Lines, shown};

/// More elements or properties than any real file has: a bound on what the header may cost.
const MOST_ENTRIES: usize = 1000;

#[derive(Clone, Copy, PartialEq, Eq)]
pub(crate) enum Encoding {
    Ascii,
    Little,
    Big,
}

#[derive(Clone, Copy, PartialEq, Eq)]
pub(crate) enum Scalar {
    I8,
    U8,
    I16,
    U16,
    I32,
    U32,
    F32,
    F64,
}

impl Scalar {
    pub(crate) fn bytes(self) -> usize {
        match self {
            Self::I8 | Self::U8 => 1,
            Self::I16 | Self::U16 => 2,
            Self::I32 | Self::U32 | Self::F32 => 4,
            Self::F64 => 8,
        }
    }

    fn named(word: &[u8]) -> Option<Self> {
        Some(match word {
            b"char" | b"int8" => Self::I8,
            b"uchar" | b"uint8" => Self::U8,
            b"short" | b"int16" => Self::I16,
            b"ushort" | b"uint16" => Self::U16,
            b"int" | b"int32" => Self::I32,
            b"uint" | b"uint32" => Self::U32,
            b"float" | b"float32" => Self::F32,
            b"double" | b"float64" => Self::F64,
            _ => return None,
        })
    }
}

#[derive(Clone, Copy)]
pub(crate) enum Kind {
    Scalar(Scalar),
    List { count: Scalar, item: Scalar },
}

pub(crate) struct Property {
    pub(crate) name: String,
    pub(crate) kind: Kind,
}

pub(crate) struct Element {
    pub(crate) name: String,
    pub(crate) count: u64,
    pub(crate) properties: Vec<Property>,
    pub(crate) line: u64,
}

pub(crate) struct Header {
    pub(crate) encoding: Encoding,
    pub(crate) elements: Vec<Element>,
}

impl Header {
    /// The header, the data after it, and the number of its last line.
    pub(crate) fn read(bytes: &[u8]) -> Result<(Self, &[u8], u64), ScanError> {
        let mut lines = Lines::new(bytes);
        let magic = lines.next_line().ok_or(ScanError::Empty)?;
        if magic.text.trim_ascii() != b"ply" {
            return Err(malformed(&magic, "a PLY file starts with the word ply"));
        }
        let mut encoding = None;
        let mut elements: Vec<Element> = Vec::new();
        let mut entries = 0;
        while let Some(line) = lines.next_line() {
            entries += 1;
            if entries > MOST_ENTRIES {
                return Err(malformed(&line, "the header has too many lines"));
            }
            let words: Vec<&[u8]> = line.words().take(6).collect();
            match words.as_slice() {
                [] | [b"comment" | b"obj_info", ..] => {}
                [b"format", form, ..] => encoding = Some(encoding_named(form, &line)?),
                [b"element", name, count] => elements.push(Element {
                    name: shown(name),
                    count: count_of(count, &line)?,
                    properties: Vec::new(),
                    line: line.number,
                }),
                [b"property", rest @ ..] => {
                    let element = elements
                        .last_mut()
                        .ok_or_else(|| malformed(&line, "a property before any element"))?;
                    element.properties.push(property(rest, &line)?);
                }
                [b"end_header"] => {
                    let encoding = encoding
                        .ok_or_else(|| malformed(&line, "the header has no format line"))?;
                    return Ok((Self { encoding, elements }, lines.rest(), line.number));
                }
                [word, ..] => {
                    let problem = format!("\"{}\" is no line of a PLY header", shown(word));
                    return Err(ScanError::Malformed {
                        place: line.place(),
                        problem,
                    });
                }
            }
        }
        Err(ScanError::Truncated {
            missing: "the header has no end_header".to_owned(),
        })
    }
}

fn malformed(line: &Line<'_>, problem: &str) -> ScanError {
    ScanError::Malformed {
        place: Place::Line(line.number),
        problem: problem.to_owned(),
    }
}

fn encoding_named(word: &[u8], line: &Line<'_>) -> Result<Encoding, ScanError> {
    match word {
        b"ascii" => Ok(Encoding::Ascii),
        b"binary_little_endian" => Ok(Encoding::Little),
        b"binary_big_endian" => Ok(Encoding::Big),
        _ => Err(malformed(
            line,
            "the format is none of ascii, binary_little_endian, binary_big_endian",
        )),
    }
}

fn count_of(word: &[u8], line: &Line<'_>) -> Result<u64, ScanError> {
    core::str::from_utf8(word)
        .ok()
        .and_then(|text| text.parse().ok())
        .ok_or_else(|| ScanError::NotANumber {
            place: line.place(),
            text: shown(word),
        })
}

fn property(words: &[&[u8]], line: &Line<'_>) -> Result<Property, ScanError> {
    let scalar = |word: &[u8]| {
        Scalar::named(word).ok_or_else(|| malformed(line, "a property of an unknown type"))
    };
    match words {
        [b"list", count, item, name] => {
            let count = scalar(count)?;
            if matches!(count, Scalar::F32 | Scalar::F64) {
                return Err(malformed(
                    line,
                    "the length of a list must be a whole number",
                ));
            }
            Ok(Property {
                name: shown(name),
                kind: Kind::List {
                    count,
                    item: scalar(item)?,
                },
            })
        }
        [kind, name] => Ok(Property {
            name: shown(name),
            kind: Kind::Scalar(scalar(kind)?),
        }),
        _ => Err(malformed(line, "a property needs a type and a name")),
    }
}
