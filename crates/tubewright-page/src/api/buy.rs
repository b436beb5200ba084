//! The list, and what to take when something is out.

use super::{CardView, ClockView, MadeView, ProveView, RemakeView, RollView};
use serde::Serialize;
use ts_rs::TS;

/// What to buy.
#[derive(Clone, Debug, Serialize, TS)]
#[serde(rename_all = "camelCase")]
pub struct BuyView {
    /// For which plan: chosen with its date, or the way that is shown.
    pub what_for: String,
    /// True when that plan is chosen.
    pub is_chosen: bool,
    /// The lines.
    pub lines: Vec<BuyLine>,
    /// What changed since something was out; none when nothing was.
    pub planned_anew: Option<Vec<String>>,
    /// Delivery by supplier.
    pub deliveries: Vec<DeliveryLine>,
    /// All together.
    pub price: String,
    /// How sure that is the cheapest.
    pub proof: String,
    /// Welds.
    pub welds: u32,
    /// What was bought so far that the list does not ask for.
    pub surplus: Vec<String>,
    /// Taken from the shelf.
    pub on_hand: Vec<String>,
    /// Pieces that cannot be made, with the reason.
    pub missing: Vec<String>,
}

/// A line of the list.
#[derive(Clone, Debug, Serialize, TS)]
#[serde(rename_all = "camelCase")]
pub struct BuyLine {
    /// The item.
    pub item: String,
    /// From whom.
    pub supplier: String,
    /// How many.
    pub quantity: u32,
    /// How many of them were got.
    pub got: u32,
    /// Price of one.
    pub each: String,
    /// Price of all.
    pub together: String,
    /// True when the supplier was out of it.
    pub is_out: bool,
}

/// What a supplier takes for bringing it.
#[derive(Clone, Debug, Serialize, TS)]
#[serde(rename_all = "camelCase")]
pub struct DeliveryLine {
    /// The supplier.
    pub supplier: String,
    /// The charge.
    pub charge: String,
}

/// What the shop does with the plan: the list, the cards, the clocks and the checks.
#[derive(Clone, Debug, Serialize, TS)]
#[serde(rename_all = "camelCase")]
pub struct Plan {
    /// Which version of the view it belongs to.
    pub version: String,
    /// The list to buy; none before there is a route.
    pub buy: Option<BuyView>,
    /// Why there is no list, when there is a route.
    pub buy_problem: Option<String>,
    /// One card for each stock item that is cut.
    pub cards: Vec<CardView>,
    /// How each spoiled piece is made again.
    pub remakes: Vec<RemakeView>,
    /// What is cut already, when the cards hold only what is still to be cut.
    pub made: Vec<MadeView>,
    /// Clock of each part to the one before it, in the order of flow.
    pub clocks: Vec<ClockView>,
    /// Roll of ovals and boxes.
    pub rolls: Vec<RollView>,
    /// Every check.
    pub prove: ProveView,
}

/// What to take when something is out, worked out beforehand.
#[derive(Clone, Debug, Serialize, TS)]
#[serde(rename_all = "camelCase")]
pub struct Counter {
    /// Which version of the view it belongs to.
    pub version: String,
    /// Single lines first, then the dearest pairs.
    pub substitutes: Vec<SubstituteView>,
    /// Why there are none.
    pub trouble: Option<String>,
    /// Parts to look for second-hand, with what to check before paying.
    pub wanted: Vec<WantedView>,
}

/// What to take when these are out.
#[derive(Clone, Debug, Serialize, TS)]
#[serde(rename_all = "camelCase")]
pub struct SubstituteView {
    /// What is out.
    pub out: Vec<String>,
    /// What to buy in its place.
    pub more: Vec<String>,
    /// What is then not needed.
    pub less: Vec<String>,
    /// What it costs more or less, welds counted.
    pub difference: String,
    /// Whether it is the better list though nothing is out.
    pub is_cheaper: bool,
    /// All together then.
    pub price: String,
    /// Pieces that cannot be made then.
    pub missing: Vec<String>,
}

/// A part to look for.
#[derive(Clone, Debug, Serialize, TS)]
#[serde(rename_all = "camelCase")]
pub struct WantedView {
    /// The item.
    pub item: String,
    /// How many.
    pub count: u32,
    /// What for.
    pub parts: Vec<String>,
    /// What to check before paying.
    pub checks: Vec<String>,
}
