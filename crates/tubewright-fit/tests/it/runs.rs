//! Random runs that could hang under a car.

use proptest::prelude::*;
use tubewright_geometry::{Frame, Piece, Point, UnitVector, Vector};

pub(crate) fn start() -> impl Strategy<Value = Frame> {
    (
        (-500.0..500.0),
        (-500.0..500.0),
        (-0.6..0.6f64),
        (-0.6..0.6f64),
    )
        .prop_map(|(x, y, a, b)| {
            let travel = Vector::new(1.0, a, b).direction().unwrap_or(UnitVector::X);
            Frame::upright(Point::new(x, y, 200.0), travel)
        })
}

/// Straights and bends in turn, four bends or more: enough clocks to close with.
pub(crate) fn run() -> impl Strategy<Value = Vec<Piece>> {
    prop::collection::vec(((30..400i32), (15..90i32), (-180..180i32)), 4..8).prop_map(|rows| {
        rows.into_iter()
            .flat_map(|(mm, bend, clock)| {
                [
                    Piece::Straight {
                        length_mm: f64::from(mm),
                    },
                    Piece::Bend {
                        bend_rad: f64::from(bend).to_radians(),
                        clock_rad: f64::from(clock).to_radians(),
                        clr_mm: 85.5,
                    },
                ]
            })
            .chain([Piece::Straight { length_mm: 120.0 }])
            .collect()
    })
}

pub(crate) fn end(start: &Frame, pieces: &[Piece]) -> Frame {
    pieces
        .iter()
        .fold(*start, |frame, piece| piece.carry(&frame))
}
