//! Parts of centre lines.

use tubewright_geometry::{CentreLine, Point, UnitVector, math};

/// A ball round a centre line.
pub(crate) fn ball(line: &CentreLine) -> (Point, f64) {
    let length = line.length();
    (line.at(length / 2.0), length / 2.0)
}

/// The part of a centre line between two shares of its length.
pub(crate) fn clip(line: &CentreLine, from: f64, to: f64) -> CentreLine {
    match *line {
        CentreLine::Arc {
            centre,
            u,
            v,
            radius,
            angle,
        } => {
            let (sin, cos) = math::sin_cos(angle * from);
            let turned = (u * cos + v * sin, v * cos - u * sin);
            CentreLine::Arc {
                centre,
                u: UnitVector::from_unit(turned.0),
                v: UnitVector::from_unit(turned.1),
                radius,
                angle: angle * (to - from),
            }
        }
        _ => {
            let length = line.length();
            CentreLine::Segment {
                a: line.at(from * length),
                b: line.at(to * length),
            }
        }
    }
}
