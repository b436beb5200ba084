//! What stands at keys of several files: quantities, places, and lists of them.

use super::{Key, Shape, Target, may};
use crate::quantity::Kind;

pub(super) const LENGTH: Shape = Shape::Quantity(Kind::Length);
pub(super) const SIZE: Shape = Shape::Quantity(Kind::Size);
pub(super) const EXTENT: Shape = Shape::Quantity(Kind::Extent);
pub(super) const ANGLE: Shape = Shape::Quantity(Kind::Angle);
pub(super) const CLOCK: Shape = Shape::Quantity(Kind::Clock);
pub(super) const PLACE: Shape = Shape::Refer(Target::Place);
pub(super) const SETUP: Shape = Shape::Refer(Target::Setup);
pub(super) const CARRIER: Shape = Shape::Refer(Target::Carrier);
pub(super) const SIDES: Shape = Shape::Choice(&["left", "right", "centre"]);
pub(super) const BOLT: Shape = Shape::Whole { least: 1, most: 64 };
pub(super) const PAIR_OF_PLACES: Shape = Shape::List {
    of: &PLACE,
    least: 2,
    most: 2,
};
pub(super) const PAIR_OF_ANGLES: Shape = Shape::List {
    of: &ANGLE,
    least: 2,
    most: 2,
};
pub(super) const THREE_NUMBERS: Shape = Shape::List {
    of: &Shape::Number,
    least: 3,
    most: 3,
};
pub(super) const THREE_LENGTHS: Shape = Shape::List {
    of: &LENGTH,
    least: 3,
    most: 3,
};
pub(super) const MATERIAL: Shape =
    Shape::Choice(&["304", "321", "409", "mild", "cast iron", "aluminised"]);
pub(super) const DIRECTION: Shape =
    Shape::Choice(&["up", "down", "left", "right", "front", "rear"]);
pub(super) const CORNERS: Shape = Shape::List {
    of: &PLACE,
    least: 3,
    most: 100,
};
pub(super) const TURN_ANGLE: Shape = Shape::Quantity(Kind::Turn);
pub(super) const LEGS: Shape = Shape::List {
    of: &EXTENT,
    least: 2,
    most: 2,
};
/// How many of something.
pub(super) const COUNT: Shape = Shape::Whole {
    least: 1,
    most: 1_000_000,
};
/// Effort, seeds: as large as a file can say.
pub(super) const WHOLE: Shape = Shape::Whole {
    least: 0,
    most: i64::MAX,
};
/// Words that take no part in any computation.
pub(super) const NOTE: Key = may("note", Shape::Text, "Words for yourself");
pub(super) const IN_WORDS: Key = may("place", Shape::Text, "Where it is, in words");
pub(super) const CARRIED_BY: Key = may(
    "carrier",
    CARRIER,
    "What it moves with; chassis when left out",
);
