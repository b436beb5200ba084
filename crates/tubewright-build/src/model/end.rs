use crate::model::{CarrierRef, Direction, Material, Name, Place};
use crate::quantity::{Clock, Quantity};
use crate::span::Span;
use tubewright_geometry::{Angle, Length};

/// Where a run starts or stops.
#[derive(Clone, Debug, PartialEq)]
pub struct End {
    /// Its name; marks, points and ends share one set of names.
    pub name: Name,
    /// What it is.
    pub kind: EndKind,
    /// What it moves with.
    pub carrier: CarrierRef,
    /// Outside diameter of the tube that meets it.
    pub od: Quantity<Length>,
    /// Diameter of the rim that is measured, when it differs from the OD.
    pub rim: Option<Quantity<Length>>,
    /// Its material, when known.
    pub material: Option<Material>,
    /// What holds there what meets it, when that is known: of a flange or a sawn tube.
    pub held_by: Option<HeldBy>,
    /// Bolt holes, numbered from 1 in this order.
    pub bolts: Vec<Bolt>,
    /// Whether a run leaves or arrives here.
    pub flows: Flows,
    /// Words that tell a person where it is.
    pub place: Option<String>,
    /// Place and direction, for an end that is wished for and not measured.
    pub given: Option<EndGiven>,
    /// How an outlet may be sawn off.
    pub saw_off: Option<SawOff>,
    /// Where it was written.
    pub span: Span,
}

impl End {
    /// Diameter of the rim that is measured.
    #[must_use]
    pub fn rim_diameter(&self) -> Length {
        self.rim.as_ref().map_or(self.od.value, |rim| rim.value)
    }
}

/// What an end is.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum EndKind {
    /// A flange.
    Flange,
    /// A tube sawn square.
    SawnTube,
    /// A tip.
    Tip,
    /// A joint that is tacked already.
    Joint,
}

/// What holds a joint that is not welded.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum HeldBy {
    /// Bolts through a flat flange.
    Bolts,
    /// Bolts with springs over a ball and its ring.
    SprungBolts,
    /// A band clamp round two collars.
    BandClamp,
    /// One tube slipped over the other, and a clamp round them.
    Slip,
}

/// Whether a run leaves or arrives.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Flows {
    /// A run leaves here.
    Out,
    /// A run arrives here.
    In,
}

/// A bolt hole of a flange.
#[derive(Clone, Debug, PartialEq)]
pub struct Bolt {
    /// Its place round the centre, looking downstream.
    pub clock: Quantity<Clock>,
    /// Diameter of the bolt circle.
    pub circle: Quantity<Length>,
}

/// Place and direction of an end that is wished for.
#[derive(Clone, Debug, PartialEq)]
pub struct EndGiven {
    /// Its centre.
    pub at: Place,
    /// The direction of flow there.
    pub points: Direction,
    /// Turned up from that direction (toward the car's front for a vertical one).
    pub turn_up: Quantity<Angle>,
    /// Then turned toward the car's right.
    pub turn_right: Quantity<Angle>,
    /// How far from where it should be the pieces may end; the usual when left out.
    pub within: Option<Quantity<Length>>,
    /// Opposite corners of the room that it may lie in; only at `at` when left out.
    pub room: Option<[Place; 2]>,
    /// How far it may be turned from its direction, either way.
    pub may_turn: Option<MayTurn>,
}

/// How far the direction of an end may be turned, either way.
#[derive(Clone, Debug, PartialEq)]
pub struct MayTurn {
    /// Up or down (for a vertical one forwards or rearwards).
    pub up: Quantity<Angle>,
    /// To the right or the left.
    pub right: Quantity<Angle>,
}

/// How an outlet may be sawn off.
#[derive(Clone, Debug, PartialEq)]
pub struct SawOff {
    /// Up to so far back from its face along its own line.
    pub back: Quantity<Length>,
    /// What is welded on may lean away by so much, in a plane through the line and in the one square to it.
    pub mitre: Option<Quantity<Angle>>,
}
