//! The checked model: typed values, every name it refers to present in it.
//!
//! Elements refer to each other by [`Name`]. In a model that [`crate::read`] returns, every name
//! that an element holds can be looked up in the same model: an element that could not be read, or
//! that refers to one that could not be read, is left out and a problem says so.

mod body;
mod build;
mod carrier;
mod component;
mod end;
mod name;
mod place;
mod reading;
mod run;
mod shop;
mod stock;
pub(crate) mod visit;

pub use body::{Body, BodyKind, Class, Edge, ScanPlace};
pub use build::{Build, CentreLinePair, Engine, FrameChoice, Gaps, LengthUnits, Room, Wishes};
pub use carrier::{Carrier, CarrierKind, Motion};
pub use component::{
    Component, ComponentItem, ComponentKind, HandMade, PartMayTurn, PartTurn, Port, Section,
};
pub use end::{Bolt, End, EndGiven, EndKind, Flows, HeldBy, MayTurn, SawOff};
pub use name::Name;
pub use place::{CarrierRef, Direction, EndPlace, Place, PlaceAt, Side};
pub use reading::{
    Accuracy, Along, Doubt, Face, HoleEdge, HookedHole, Mark, MeasuredPoint, PlusMinus, Reading,
    ReadingKind, Setup, Stance, TapeEnd, TubeSide,
};
pub use run::{PinnedPart, Run, RunEnd, RunPin, Through};
pub use shop::{
    CutGives, CutOf, CutPlace, Entry, EntryKind, FrozenPiece, FrozenShape, FrozenStart, JointFace,
    JointReading, Shop,
};
pub use stock::{
    Item, ItemKind, Material, Offer, OnHand, OnHandWhat, Practice, PriceBreak, Stock, StockShape,
    Supplier, Tube,
};

/// A build folder as one checked value.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Model {
    /// The car.
    pub build: Build,
    /// The shop's stock and practice.
    pub stock: Stock,
    /// What happened to the steel.
    pub shop: Shop,
}
