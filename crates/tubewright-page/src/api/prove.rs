//! Checks and the record.

use serde::Serialize;
use ts_rs::TS;

/// The board.
#[derive(Clone, Debug, Default, Serialize, TS)]
#[serde(rename_all = "camelCase")]
pub struct ProveView {
    /// How many fail.
    pub fail: usize,
    /// How many are not checked.
    pub not_checked: usize,
    /// How many pass.
    pub pass: usize,
    /// The findings, worst first.
    pub findings: Vec<FindingView>,
}

/// State of a finding.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, TS)]
#[serde(rename_all = "camelCase")]
pub enum StateView {
    /// Fails.
    Fail,
    /// Not checked.
    NotChecked,
    /// Passes.
    Pass,
    /// Does not apply.
    DoesNotApply,
}

/// One finding.
#[derive(Clone, Debug, Serialize, TS)]
#[serde(rename_all = "camelCase")]
pub struct FindingView {
    /// Its state.
    pub state: StateView,
    /// The rule in words.
    pub title: String,
    /// Where the limit comes from.
    pub source: String,
    /// What was judged.
    pub subject: String,
    /// The number that was found.
    pub value: Option<f64>,
    /// Its ± (19 in 20).
    pub plus_minus: Option<f64>,
    /// `mm`, `°` or nothing.
    pub unit: String,
    /// True when `limit` is the least that is allowed, false when the most.
    pub is_least: bool,
    /// The limit.
    pub limit: Option<f64>,
    /// Where it is, in words.
    pub place: Option<String>,
    /// Where it is in the car, mm.
    pub at: Option<[f64; 3]>,
    /// What to do.
    pub advice: String,
}

/// An entry of the record.
#[derive(Clone, Debug, Serialize, TS)]
#[serde(rename_all = "camelCase")]
pub struct RecordEntry {
    /// Date.
    pub on: String,
    /// What happened, in words.
    pub words: String,
    /// The mark of the piece or joint it is about, or the name of the item.
    pub about: String,
    /// The kind of entry: got, out, cut, spoiled, tacked, welded, checked, chosen, ….
    pub what: String,
}
