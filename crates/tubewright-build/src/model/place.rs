use crate::model::Name;
use crate::quantity::Clock;
use crate::span::Span;

/// A place that a tape, a plumb line or an inclinometer can touch.
#[derive(Clone, Debug, PartialEq)]
pub struct Place {
    /// What it is.
    pub at: PlaceAt,
    /// Where it was written.
    pub span: Span,
}

/// What a [`Place`] is.
#[derive(Clone, Debug, PartialEq)]
pub enum PlaceAt {
    /// A mark on the car.
    Mark(Name),
    /// A point on something.
    Point(Name),
    /// A place on an end.
    End {
        /// The end.
        end: Name,
        /// Where on it.
        at: EndPlace,
    },
}

impl PlaceAt {
    /// The name of the mark, point or end.
    #[must_use]
    pub const fn name(&self) -> &Name {
        match self {
            Self::Mark(name) | Self::Point(name) | Self::End { end: name, .. } => name,
        }
    }
}

/// Where on an end.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum EndPlace {
    /// The centre of its face.
    Centre,
    /// Its outer rim at a clock mark.
    Rim(Clock),
    /// The centre of bolt hole 1, 2, … in the order in which they are listed.
    Bolt(u32),
}

/// What carries a body, an end, a component: what it moves with.
#[derive(Clone, Debug, Default, PartialEq, Eq, PartialOrd, Ord)]
pub enum CarrierRef {
    /// The chassis, which does not move.
    #[default]
    Chassis,
    /// A carrier of the build.
    Carrier(Name),
}

/// Side of the car.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Side {
    /// The car's left, −y.
    Left,
    /// The car's right, +y.
    Right,
    /// On the middle plane.
    Centre,
}

/// A direction along one of the car's axes.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Direction {
    /// −x.
    Front,
    /// +x.
    Rear,
    /// −y.
    Left,
    /// +y.
    Right,
    /// +z.
    Up,
    /// −z.
    Down,
}

impl Direction {
    /// As a unit vector in the car's axes.
    #[must_use]
    pub fn unit(self) -> tubewright_geometry::UnitVector {
        use tubewright_geometry::UnitVector;
        match self {
            Self::Front => -UnitVector::X,
            Self::Rear => UnitVector::X,
            Self::Left => -UnitVector::Y,
            Self::Right => UnitVector::Y,
            Self::Up => UnitVector::Z,
            Self::Down => -UnitVector::Z,
        }
    }
}
