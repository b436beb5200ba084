use crate::model::{Name, Place};
use crate::quantity::Quantity;
use crate::span::Span;
use tubewright_geometry::{Angle, Length};

/// Something that moves and carries bodies, ends and components with it.
#[derive(Clone, Debug, PartialEq)]
pub struct Carrier {
    /// Its name; `chassis` is taken.
    pub name: Name,
    /// What it is.
    pub kind: CarrierKind,
    /// Where it was written.
    pub span: Span,
}

/// What a carrier is and how far it moves. A motion that is left out is unknown, not zero.
#[derive(Clone, Debug, PartialEq)]
#[non_exhaustive]
pub enum CarrierKind {
    /// The engine on its mounts.
    Engine(Motion),
    /// A wheel on its own suspension.
    Wheel(Motion),
    /// A live axle.
    Axle(Motion),
    /// Hung on rubber: sways this far any way.
    Hung {
        /// How far.
        sway: Quantity<Length>,
    },
}

/// How far something moves; each from where it stands when measured.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Motion {
    /// Two places on the axis about which it rocks, front then rear.
    pub axis: Option<[Place; 2]>,
    /// Least and most rock, right-handed about front → rear.
    pub rock: Option<[Quantity<Angle>; 2]>,
    /// Upwards travel.
    pub bump: Option<Quantity<Length>>,
    /// Downwards travel.
    pub droop: Option<Quantity<Length>>,
    /// Least and most steer angle, right-handed about the kingpin from low to high.
    pub steer: Option<[Quantity<Angle>; 2]>,
    /// Two places on the kingpin axis, low then high.
    pub kingpin: Option<[Place; 2]>,
}
