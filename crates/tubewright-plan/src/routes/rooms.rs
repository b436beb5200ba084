//! Rooms of the build by two opposite corners: where they lie, what they are called, and how near pieces come to
//! one that they must pass through or have a joint in.

use tubewright_build::model::Place;
use tubewright_route::problem::{Pin, Pinned, Region};

use super::planned::PlannedPiece;
use crate::places::Places;

/// Places looked at along a piece, mm apart.
const LOOK_MM: f64 = 1.0;

/// The box between two corners; `None` when one of them is not found.
pub(super) fn room_between(places: &Places, corners: &[Place; 2]) -> Option<Region> {
    let [a, b] = corners.each_ref().map(|corner| {
        let placed = places.place(&corner.at);
        placed.map(|placed| placed.point_in_car)
    });
    Some(Region::between(a?, b?))
}

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
        .map(|place| pin.room.away_mm(place))
        .fold(f64::INFINITY, f64::min)
}
