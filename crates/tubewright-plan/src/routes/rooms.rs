//! Rooms of the build that runs must visit, by two opposite corners or round a pin: where they lie, what they are called, and how near pieces come to
//! one that they must pass through or have a joint in.

use tubewright_build::model::{PinnedPart, Place, Run, RunPin};
use tubewright_geometry::{Point, Vector};
use tubewright_route::problem::{Pin, Pinned, Region};

use super::planned::PlannedPiece;
use crate::places::Places;

/// Places looked at along a piece, mm apart.
const LOOK_MM: f64 = 1.0;

/// A room that the build wants a run to visit.
#[derive(Clone, Debug, PartialEq)]
pub struct WantedRoom {
    /// What it is called: `the room from gap a to gap b`. Lengths in mm.
    pub words: String,
    /// What of the run must lie in it.
    pub what: Pinned,
    /// Where it is; `None` while a place that it is set out from is not found.
    pub room: Option<Region>,
}

/// All rooms that a run must visit: those by two corners, then the pins, each in the order of the build.
#[must_use]
pub fn wanted_rooms(run: &Run, places: &Places) -> Vec<WantedRoom> {
    let between = |what: Pinned| {
        move |corners: &[Place; 2]| WantedRoom {
            words: words_of_room(corners),
            what,
            room: room_between(places, corners),
        }
    };
    let mut all: Vec<WantedRoom> = run.passes.iter().map(between(Pinned::CentreLine)).collect();
    all.extend(run.joints_in.iter().map(between(Pinned::Joint)));
    all.extend(run.pins.iter().map(|pin| WantedRoom {
        words: words_of_pin(pin),
        what: match pin.what {
            PinnedPart::Joint => Pinned::Joint,
            PinnedPart::Line => Pinned::CentreLine,
        },
        room: middle_of_pin(pin, places).map(|middle| Region::round(middle, pin.within.mm())),
    }));
    all
}

/// Where the middle of a pin's room lies; `None` while the place that it is set out from is not found.
#[must_use]
pub fn middle_of_pin(pin: &RunPin, places: &Places) -> Option<Point> {
    let near = places.place(&pin.near.at)?.point_in_car;
    let [x, y, z] = pin.at.each_ref().map(|length| length.mm());
    Some(near + Vector::new(x, y, z))
}

/// A pin in words: where it is from its mark, lengths in mm.
#[must_use]
pub fn words_of_pin(pin: &RunPin) -> String {
    let [x, y, z] = pin.at.each_ref().map(|length| length.mm());
    let along = |value: f64, ahead: &str, back: &str| {
        let word = if value < 0.0 { back } else { ahead };
        format!("{:.0} mm {word}", value.abs())
    };
    format!(
        "the pin {}, {} and {} of {}",
        along(x, "rearwards", "forwards"),
        along(y, "right", "left"),
        along(z, "above", "below"),
        pin.near.at.name()
    )
}

/// The box between two corners; `None` when one of them is not found.
pub(super) fn room_between(places: &Places, corners: &[Place; 2]) -> Option<Region> {
    let [a, b] = corners.each_ref().map(|corner| {
        let placed = places.place(&corner.at);
        placed.map(|placed| placed.point_in_car)
    });
    Some(Region::between(a?, b?))
}

/// A room by its corners, as the build names them.
fn words_of_room([a, b]: &[Place; 2]) -> String {
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
