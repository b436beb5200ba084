//! Errands, and buy or make.

use serde::{Deserialize, Serialize};
use ts_rs::TS;

/// What is asked of the errands.
#[derive(Clone, Debug, Deserialize, TS)]
#[serde(rename_all = "camelCase", deny_unknown_fields)]
pub struct ErrandsAsked {
    /// When the shop is left: `8:00`.
    pub leave: String,
    /// The stops.
    pub stops: Vec<StopAsked>,
    /// Minutes by road; the workshop is called `shop`.
    pub roads: Vec<RoadAsked>,
}

/// A stop.
#[derive(Clone, Debug, Deserialize, TS)]
#[serde(rename_all = "camelCase", deny_unknown_fields)]
pub struct StopAsked {
    /// Its name.
    pub name: String,
    /// When it opens: `8:00`.
    pub opens: String,
    /// When it closes.
    pub closes: String,
    /// Minutes there.
    pub minutes: u32,
}

/// A road, either way.
#[derive(Clone, Debug, Deserialize, TS)]
#[serde(rename_all = "camelCase", deny_unknown_fields)]
pub struct RoadAsked {
    /// One end.
    pub a: String,
    /// The other.
    pub b: String,
    /// Minutes.
    pub minutes: u32,
}

/// The round that is back first.
#[derive(Clone, Debug, Serialize, TS)]
#[serde(rename_all = "camelCase")]
pub struct ErrandsView {
    /// When the shop is left.
    pub leaves: String,
    /// The stops in order.
    pub stops: Vec<StopView>,
    /// When the shop is reached again.
    pub back: String,
    /// Suppliers that the plan buys from and that are no stop.
    pub not_visited: Vec<String>,
}

/// A stop of the round.
#[derive(Clone, Debug, Serialize, TS)]
#[serde(rename_all = "camelCase")]
pub struct StopView {
    /// Its name.
    pub name: String,
    /// When it is done with.
    pub done: String,
}

/// A part that can be bought or made, in plain numbers of the stock file's currency.
#[derive(Clone, Debug, Deserialize, TS)]
#[serde(rename_all = "camelCase", deny_unknown_fields)]
pub struct MakeAsked {
    /// Price with tax and delivery.
    pub price: f64,
    /// Minutes on the road for it, there and back.
    pub drive: f64,
    /// Minutes of waiting that stop the job.
    pub wait: f64,
    /// Minutes to make it, set-up counted.
    pub make: f64,
    /// Material for making it.
    pub material: f64,
}

/// What buying and making cost.
#[derive(Clone, Debug, Serialize, TS)]
#[serde(rename_all = "camelCase")]
pub struct MakeView {
    /// `buy` or `make`.
    pub cheaper: String,
    /// Both sums, where they meet and the rate, as sentences.
    pub words: String,
}
