//! Rooms that runs must pass through or have a joint in, on rounded pieces.

use tubewright_build::model::Place;
use tubewright_geometry::Point;
use tubewright_route::problem::{Pin, Pinned, Region};

use super::planned::PlannedPiece;

/// Places looked at along a piece, mm apart.
const LOOK_MM: f64 = 1.0;

/// A room by its corners, as the build names them.
#[must_use]
pub fn words_of_room([a, b]: &[Place; 2]) -> String {
    format!("the room from {} to {}", a.at.name(), b.at.name())
}

/// How far these pieces stay from the room of a pin, mm: nought when they keep it.
#[must_use]
pub fn away_from_pin_mm(pieces: &[PlannedPiece], pin: &Pin) -> f64 {
    let places = pieces.iter().flat_map(|piece| {
        let length = piece.centre_line_mm();
        let steps = match pin.what {
            Pinned::Joint => 1.0,
            Pinned::CentreLine => (length / LOOK_MM).ceil().max(1.0),
        };
        let mut step = -1.0;
        core::iter::from_fn(move || {
            step += 1.0;
            (step <= steps).then(|| piece.frame_at(length * step / steps).origin)
        })
    });
    places
        .map(|place| away_mm(&pin.room, place))
        .fold(f64::INFINITY, f64::min)
}

fn away_mm(room: &Region, place: Point) -> f64 {
    let (low, high, at) = (room.min.to_array(), room.max.to_array(), place.to_array());
    let mut squared = 0.0;
    for ((low, high), at) in low.iter().zip(&high).zip(&at) {
        let off = (low - at).max(at - high).max(0.0);
        squared += off * off;
    }
    squared.sqrt()
}
