//! Cut cards and clocks.

use serde::Serialize;
use ts_rs::TS;

/// A cut card.
#[derive(Clone, Debug, Serialize, TS)]
#[serde(rename_all = "camelCase")]
pub struct CardView {
    /// The item it is cut from.
    pub item: String,
    /// True when it lies on the shelf.
    pub is_on_hand: bool,
    /// Number among those of the same name.
    pub number: u32,
    /// Its shape in words, with lengths in millimetres.
    pub stock: String,
    /// The same with lengths in inches.
    pub stock_in_inches: String,
    /// The parts from end A on, each by the marks of the pieces it serves.
    pub parts: Vec<Vec<String>>,
    /// The cuts in the order of sawing.
    pub cuts: Vec<CutView>,
    /// The same where parts that close a stretch are left longer, marks as a metric tape shows them; none
    /// where the card has no such part.
    pub closing: Option<ClosingView>,
    /// The same with marks as a tape in inches shows them.
    pub closing_in_inches: Option<ClosingView>,
    /// Number of its picture.
    pub picture: u32,
    /// What this saw should not do.
    pub warnings: Vec<String>,
}

/// Parts of a card that are left longer until the gap that they close is measured.
#[derive(Clone, Debug, Serialize, TS)]
#[serde(rename_all = "camelCase")]
pub struct ClosingView {
    /// What that means at the saw.
    pub words: String,
    /// The cuts with their marks so that the parts come out longer; none where the marks stay and the
    /// words say what to do.
    pub cuts: Option<Vec<CutView>>,
}

/// One cut.
#[derive(Clone, Debug, Serialize, TS)]
#[serde(rename_all = "camelCase")]
pub struct CutView {
    /// In the order of sawing.
    pub number: u32,
    /// The end that the tape starts from: A or B.
    pub from: String,
    /// Along the outside, mm.
    pub outside: f64,
    /// Along the inside, mm.
    pub inside: f64,
    /// Along the side, mm.
    pub side: f64,
    /// Not sawn but dressed down to the ring: up to this comes off, mm; none where the saw cuts.
    pub dress: Option<f64>,
    /// Saw angle from square, degrees.
    pub saw: f64,
    /// The end toward which the kerf goes.
    pub kerf_toward: String,
    /// The pieces whose face it makes.
    pub faces: Vec<String>,
}

/// Clock of a part to the one before it.
#[derive(Clone, Debug, Serialize, TS)]
#[serde(rename_all = "camelCase")]
pub struct ClockView {
    /// The run.
    pub run: String,
    /// Marks of the pieces that the part serves.
    pub part: Vec<String>,
    /// Clockwise looking downstream, degrees.
    pub clock: f64,
    /// The same round the outside, mm.
    pub round: f64,
    /// True when the part is turned end for end.
    pub is_reversed: bool,
}

/// Roll of an oval or box part.
#[derive(Clone, Debug, Serialize, TS)]
#[serde(rename_all = "camelCase")]
pub struct RollView {
    /// The run.
    pub run: String,
    /// Mark of the part.
    pub mark: String,
    /// The component.
    pub component: String,
    /// From the witness line of the part before it, clockwise looking downstream, degrees.
    pub clock: f64,
    /// The same round the outside of its neck, mm.
    pub round: f64,
    /// From lying flat in the car, degrees.
    pub from_flat: f64,
}

/// An item that was opened, with the good parts that came out of it.
#[derive(Clone, Debug, Serialize, TS)]
#[serde(rename_all = "camelCase")]
pub struct MadeView {
    /// The item.
    pub item: String,
    /// Number among those of the same name.
    pub number: u32,
    /// Its parts, each by the marks of the pieces it serves.
    pub parts: Vec<Vec<String>>,
}

/// How a spoiled piece is made again.
#[derive(Clone, Debug, Serialize, TS)]
#[serde(rename_all = "camelCase")]
pub struct RemakeView {
    /// Its mark.
    pub piece: String,
    /// What it is cut from, cheapest, as a sentence; none when nothing on the shelf or for sale makes it.
    pub from: Option<String>,
    /// What is still to be bought and by how much that is more than before, as a sentence.
    pub buying: String,
    /// Pieces that cannot be made.
    pub missing: Vec<String>,
    /// Why nothing was worked out.
    pub trouble: Option<String>,
    /// How what is left of it is told.
    pub left_as: LeftAs,
    /// The name on the shelf of what is left of it, once that was said.
    pub on_shelf: Option<String>,
}

/// How what is left of a part is told.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, TS)]
#[serde(rename_all = "camelCase")]
pub enum LeftAs {
    /// The length of a straight or a leg.
    Length,
    /// The angle of the arc of a bend.
    Angle,
    /// The record does not say what it came from.
    Unknown,
}
