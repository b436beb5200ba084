//! A run that is moved by hand on the drawing, pins, closed sides, and other parts in place of a part.

use super::GapView;
use serde::{Deserialize, Serialize};
use ts_rs::TS;

/// A joint or a bend that can be taken on the drawing.
#[derive(Clone, Debug, Serialize, TS)]
#[serde(rename_all = "camelCase")]
pub struct GripView {
    /// Mark of the joint, or of the bend.
    pub mark: String,
    /// True for a joint, false for the middle of a bend.
    pub is_joint: bool,
    /// Where it is, mm.
    pub at: [f64; 3],
    /// Whether it can be moved: it is no end, no part where runs meet and not tacked.
    pub is_free: bool,
}

/// What is taken by hand, and where it is to go.
#[derive(Clone, Debug, Deserialize, TS)]
#[serde(rename_all = "camelCase", deny_unknown_fields)]
pub struct DragAsked {
    /// The run.
    pub run: String,
    /// Mark of the joint or the bend.
    pub mark: String,
    /// True for a joint.
    pub is_joint: bool,
    /// Where to, mm.
    pub to: [f64; 3],
}

/// A run as drawn by hand.
#[derive(Clone, Debug, Serialize, TS)]
#[serde(rename_all = "camelCase")]
pub struct DragView {
    /// Where what was taken came, mm: as near as the run gives.
    pub at: [f64; 3],
    /// Its pieces.
    pub line: Vec<StretchView>,
    /// Its tightest gaps, the tightest first.
    pub gaps: Vec<GapView>,
    /// How many of all its gaps are too small with their ± taken off.
    pub failing: u32,
    /// How many gaps could not be checked.
    pub unchecked: u32,
}

/// A piece of a line.
#[derive(Clone, Debug, Serialize, TS)]
#[serde(rename_all = "camelCase")]
pub struct StretchView {
    /// Places along its centre line, mm.
    pub points: Vec<[f64; 3]>,
    /// Half its width, mm.
    pub radius: f64,
}

/// A view of the shop drawing: where it draws the car.
#[derive(Clone, Debug, Serialize, TS)]
#[serde(rename_all = "camelCase")]
pub struct LaidViewView {
    /// side, above or behind.
    pub view: String,
    /// Width and height of the paper, mm.
    pub paper: [f64; 2],
    /// Where the car's origin lies on the paper: from the left, from above, mm.
    pub origin: [f64; 2],
    /// Paper mm per mm of the car.
    pub scale: f64,
    /// The car's direction that points to the right.
    pub right: [f64; 3],
    /// The car's direction that points up.
    pub up: [f64; 3],
}

/// A pin.
#[derive(Clone, Debug, Serialize, TS)]
#[serde(rename_all = "camelCase")]
pub struct PinView {
    /// The run.
    pub run: String,
    /// Its place in the run's list, from 0.
    pub number: usize,
    /// True when it holds a joint.
    pub is_joint: bool,
    /// Where it is, in words; lengths in mm.
    pub words: String,
    /// The middle of its room, mm; none while its mark is not found.
    pub at: Option<[f64; 3]>,
    /// How far its room reaches each way, mm.
    pub within: f64,
    /// How far the run that is shown stays away from it, mm; none when there is no run.
    pub away: Option<f64>,
}

/// A body with the sides that no run may pass.
#[derive(Clone, Debug, Serialize, TS)]
#[serde(rename_all = "camelCase")]
pub struct SidesView {
    /// The body.
    pub body: String,
    /// Closed sides: front, rear, left, right, above, below.
    pub closed: Vec<String>,
    /// True when they are closed without a word in the file: a floor, above which the cabin is.
    pub is_by_itself: bool,
}

/// A part of a run with what could take its place.
#[derive(Clone, Debug, Serialize, TS)]
#[serde(rename_all = "camelCase")]
pub struct PartView {
    /// Name of the component.
    pub component: String,
    /// What it is: catalyst, resonator, ….
    pub kind: String,
    /// Runs that go through it.
    pub runs: Vec<String>,
    /// All items of that kind, the one that it is now first.
    pub choices: Vec<PartChoice>,
    /// Whether it stands in the plan that was chosen, so that a change is another plan.
    pub is_chosen: bool,
}

/// An item that a part may be.
#[derive(Clone, Debug, Serialize, TS)]
#[serde(rename_all = "camelCase")]
pub struct PartChoice {
    /// The item.
    pub item: String,
    /// Whether the part is this item now.
    pub is_now: bool,
    /// Whole length, mm.
    pub length: f64,
    /// Necks at inlet and outlet, mm.
    pub necks: [f64; 2],
    /// Width and height of its body, mm; none for a part no thicker than its tube.
    pub body: Option<[f64; 2]>,
    /// round, oval or box.
    pub section: String,
    /// Outside diameter of its tube, mm; none when it is not known.
    pub tube: Option<f64>,
    /// Mass, kg.
    pub mass: Option<f64>,
    /// Cheapest price of one, with tax; none when nobody offers it.
    pub price: Option<String>,
    /// How many lie on hand.
    pub on_hand: u32,
    /// Why it does not fit in the place of the part; none when it does.
    pub unfit: Option<String>,
}
