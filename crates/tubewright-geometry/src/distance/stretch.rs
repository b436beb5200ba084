//! A centre line as a few stretches, each near a chord, that can be halved.

use super::arc::{ArcPiece, Chord, arc_pieces};
use crate::tube::CentreLine;
use crate::vector::Point;

/// Part of a centre line: a whole straight, or at most 45° of a bend.
#[derive(Clone, Copy, Debug)]
pub(super) enum Stretch {
    Straight { a: Point, b: Point },
    Bend(ArcPiece),
}

impl Stretch {
    pub(super) fn chord(&self) -> Chord {
        match self {
            Self::Straight { a, b } => Chord {
                a: *a,
                b: *b,
                slack_mm: 0.0,
            },
            Self::Bend(piece) => piece.chord(),
        }
    }

    /// The two halves of a bend; none of a straight, which is its own chord.
    pub(super) fn halves(&self) -> Option<[Self; 2]> {
        match self {
            Self::Straight { .. } => None,
            Self::Bend(piece) => Some(piece.halves().map(Self::Bend)),
        }
    }

    /// Distance along the whole centre line in mm of the place abreast of fraction `t` of the chord.
    pub(super) fn along_mm(&self, t: f64) -> f64 {
        match self {
            Self::Straight { a, b } => a.distance(*b) * t,
            Self::Bend(piece) => piece.along_mm(t),
        }
    }
}

/// Calls `each` for the starting stretches until it returns false; true when it never did.
pub(super) fn all_stretches(line: &CentreLine, mut each: impl FnMut(&Stretch) -> bool) -> bool {
    match *line {
        CentreLine::Segment { a, b } => each(&Stretch::Straight { a, b }),
        CentreLine::Arc { .. } => arc_pieces(line)
            .iter()
            .all(|piece| each(&Stretch::Bend(*piece))),
    }
}
