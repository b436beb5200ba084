//! Ways and their runs.

use super::{GripView, PinView, SidesView};
use serde::Serialize;
use ts_rs::TS;

/// The routes.
#[derive(Clone, Debug, Default, Serialize, TS)]
#[serde(rename_all = "camelCase")]
pub struct RouteView {
    /// While solving: work done, work to do and the best cost so far.
    pub solving: Option<Solving>,
    /// The ways that were found: those without a fault first, then the cheaper.
    pub ways: Vec<WayView>,
    /// Which of them is shown, bought and cut.
    pub shown: usize,
    /// Why there are none, or what to know about them.
    pub words: Option<String>,
    /// What they are older than.
    pub stale: Option<String>,
    /// The way that was chosen and is bought, cut and fitted, with the date.
    pub chosen: Option<String>,
    /// Its runs, else those of the way that is shown.
    pub runs: Vec<RunView>,
    /// Where runs are pinned by hand.
    pub pins: Vec<PinView>,
    /// Bodies that have sides, with those that no run may pass.
    pub sides: Vec<SidesView>,
    /// Runs that could not be put to the solver, each with its reason.
    pub left_out: Vec<String>,
}

/// How far the solver is.
#[derive(Clone, Copy, Debug, Serialize, TS)]
#[serde(rename_all = "camelCase")]
pub struct Solving {
    /// Work units done.
    #[ts(type = "number")]
    pub done: u64,
    /// Work units to do.
    #[ts(type = "number")]
    pub of: u64,
    /// Best cost so far.
    pub best: Option<f64>,
}

/// One way.
#[derive(Clone, Debug, Serialize, TS)]
#[serde(rename_all = "camelCase")]
pub struct WayView {
    /// What it does.
    pub name: String,
    /// Cost in the shop's units of money.
    pub cost: f64,
    /// No way costs less.
    pub lower_bound: f64,
    /// Tube along its centre line, mm.
    pub length: f64,
    /// Sum of bend angles, degrees.
    pub bends: f64,
    /// How far its ends are off, mm.
    pub ends_off: f64,
    /// How many bends it has.
    pub bend_count: u32,
}

/// What the ways are compared by; dearer to compute than the ways themselves.
#[derive(Clone, Debug, Serialize, TS)]
#[serde(rename_all = "camelCase")]
pub struct WayFigures {
    /// Price of what is bought, with tax and delivery.
    pub price: Option<String>,
    /// Pieces that nothing makes.
    pub missing: u32,
    /// Welds.
    pub welds: Option<u32>,
    /// Time for welds and cuts, hours.
    pub hours: Option<f64>,
    /// What it costs by its cutting plan, all counted, in the shop's money-like units.
    pub cost_as_cut: Option<f64>,
    /// Mass of tube and components, kg.
    pub mass: f64,
    /// Components whose mass nobody wrote down: not in it.
    pub without_mass: Vec<String>,
    /// The tightest gap but that to the ground.
    pub tightest: Option<GapView>,
    /// The gap to the ground.
    pub ground: Option<GapView>,
    /// What it would change of the chosen plan; none when nothing was chosen.
    pub offer: Option<Vec<String>>,
}

/// A gap.
#[derive(Clone, Debug, Serialize, TS)]
#[serde(rename_all = "camelCase")]
pub struct GapView {
    /// Between what and what.
    pub subject: String,
    /// The gap, mm.
    pub gap: f64,
    /// ± (19 in 20), mm.
    pub plus_minus: Option<f64>,
    /// What it must be, mm.
    pub wanted: f64,
    /// Where, in words.
    pub place: String,
    /// Where, mm.
    pub at: [f64; 3],
}

/// A run of pieces.
#[derive(Clone, Debug, Serialize, TS)]
#[serde(rename_all = "camelCase")]
pub struct RunView {
    /// Its name.
    pub name: String,
    /// Name of its tube.
    pub tube: String,
    /// The pieces in the order of flow.
    pub pieces: Vec<PieceView>,
    /// What of it can be taken on the drawing.
    pub grips: Vec<GripView>,
    /// The last joint.
    pub last_joint: String,
    /// What is special at its ends: where a tip with room lies, how an outlet is sawn off. Lengths in mm.
    pub at_ends: Vec<String>,
    /// How far the pieces end from where they should, mm.
    pub end_error: f64,
    /// The same for the direction, degrees.
    pub end_error_turn: f64,
}

/// A piece.
#[derive(Clone, Debug, Serialize, TS)]
#[serde(rename_all = "camelCase")]
pub struct PieceView {
    /// Its mark.
    pub mark: String,
    /// Mark of the joint before it.
    pub joint: String,
    /// What it is.
    pub what: String,
    /// Length, mm, of a straight or component.
    pub length: Option<f64>,
    /// Bend angle, degrees.
    pub angle: Option<f64>,
    /// Clock of the bend looking downstream, degrees.
    pub clock: Option<f64>,
    /// Where it ends, mm.
    pub end: [f64; 3],
}
