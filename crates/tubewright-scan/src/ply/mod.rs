//! PLY, ASCII and binary of both byte orders.
//!
//! Format from G. Turk, *The PLY Polygon File Format* (1994), from memory: a text header lists
//! elements with their counts and properties, the data follow in that order.

mod header;
mod values;

use crate::assemble::Raw;
use crate::error::{Place, ScanError};
use crate::limits::Limits;
use crate::scan::ScanWarning;
use header::{Element, Encoding, Header, Kind};
use values::{Ascii, Binary, Values};

pub(crate) fn read(bytes: &[u8], limits: &Limits) -> Result<Raw, ScanError> {
    let (header, body, line) = Header::read(bytes)?;
    match header.encoding {
        Encoding::Ascii => read_body(&header, Ascii::new(body, line), limits),
        Encoding::Little => read_body(&header, Binary::new(body, false), limits),
        Encoding::Big => read_body(&header, Binary::new(body, true), limits),
    }
}

fn read_body(header: &Header, mut values: impl Values, limits: &Limits) -> Result<Raw, ScanError> {
    let mut raw = Raw::default();
    for element in &header.elements {
        // An element without properties has no data, whatever its count says.
        if element.properties.is_empty() {
            continue;
        }
        if !values.can_hold(element) {
            return Err(ScanError::Truncated {
                missing: format!(
                    "the header says {} of element {}, the data are too short for that",
                    element.count, element.name
                ),
            });
        }
        match element.name.as_str() {
            "vertex" => read_vertices(element, &mut values, &mut raw, limits)?,
            "face" => read_faces(element, &mut values, &mut raw, limits)?,
            "tristrips" => {
                return Err(ScanError::Unsupported {
                    what: "a PLY of triangle strips".to_owned(),
                });
            }
            _ => skip(element, &mut values)?,
        }
    }
    let vertices = raw.vertices.len();
    let beyond = (1..).zip(&raw.triangles).find_map(|(face, corners)| {
        let index = corners.iter().find(|index| **index as usize >= vertices)?;
        Some((face, i64::from(*index)))
    });
    if let Some((face, index)) = beyond {
        return Err(ScanError::NoSuchVertex {
            place: Place::Face(face),
            index,
            vertices: vertices as u64,
        });
    }
    let trailing = values.trailing();
    if trailing > 0 {
        raw.warnings.push(ScanWarning::TrailingBytes(trailing));
    }
    Ok(raw)
}

fn read_vertices(
    element: &Element,
    values: &mut impl Values,
    raw: &mut Raw,
    limits: &Limits,
) -> Result<(), ScanError> {
    let position = |axis: &str| {
        element
            .properties
            .iter()
            .position(|p| p.name == axis && matches!(p.kind, Kind::Scalar(_)))
            .ok_or_else(|| ScanError::Malformed {
                place: Place::Line(element.line),
                problem: format!("element vertex has no property {axis}"),
            })
    };
    let axes = [position("x")?, position("y")?, position("z")?];
    for number in 1..=element.count {
        values.start_item(Place::Vertex(number));
        let mut xyz = [0.0; 3];
        for (index, property) in element.properties.iter().enumerate() {
            match property.kind {
                Kind::Scalar(scalar) => {
                    let value = values.scalar(scalar)?;
                    for (axis, slot) in axes.iter().zip(&mut xyz) {
                        if *axis == index {
                            if !value.is_finite() {
                                return Err(ScanError::NotFinite {
                                    place: values.place(),
                                    text: value.to_string(),
                                });
                            }
                            *slot = value;
                        }
                    }
                }
                Kind::List { count, item } => values.skip_list(count, item)?,
            }
        }
        raw.push_vertex(xyz, limits)?;
    }
    Ok(())
}

fn read_faces(
    element: &Element,
    values: &mut impl Values,
    raw: &mut Raw,
    limits: &Limits,
) -> Result<(), ScanError> {
    raw.has_faces |= element.count > 0;
    let is_corners = |name: &str| matches!(name, "vertex_indices" | "vertex_index");
    if element.count > 0
        && !element
            .properties
            .iter()
            .any(|p| is_corners(&p.name) && matches!(p.kind, Kind::List { .. }))
    {
        return Err(ScanError::Malformed {
            place: Place::Line(element.line),
            problem: "element face has no list vertex_indices".to_owned(),
        });
    }
    let mut corners = Vec::new();
    for number in 1..=element.count {
        values.start_item(Place::Face(number));
        for property in &element.properties {
            match property.kind {
                Kind::Scalar(scalar) => {
                    values.scalar(scalar)?;
                }
                Kind::List { count, item } if is_corners(&property.name) => {
                    corners.clear();
                    values.indices(count, item, &mut corners)?;
                    raw.push_polygon(&corners, values.place(), limits)?;
                }
                Kind::List { count, item } => values.skip_list(count, item)?,
            }
        }
    }
    Ok(())
}

fn skip(element: &Element, values: &mut impl Values) -> Result<(), ScanError> {
    for number in 1..=element.count {
        values.start_item(Place::Vertex(number));
        for property in &element.properties {
            match property.kind {
                Kind::Scalar(scalar) => {
                    values.scalar(scalar)?;
                }
                Kind::List { count, item } => values.skip_list(count, item)?,
            }
        }
    }
    Ok(())
}
