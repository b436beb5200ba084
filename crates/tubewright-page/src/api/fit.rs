//! Tacking, check distances, joints as built, welds.

use serde::Serialize;
use ts_rs::TS;

/// The fit sheet.
#[derive(Clone, Debug, Serialize, TS)]
#[serde(rename_all = "camelCase")]
pub struct FitView {
    /// Which version of the view it belongs to.
    pub version: String,
    /// What is done before the first step. Lengths in mm.
    pub before: Vec<String>,
    /// The steps in the order of tacking.
    pub steps: Vec<FitStepView>,
    /// Stretches that nothing can close.
    pub unclosed: Vec<String>,
    /// Where the sensors' bungs go, in words. Lengths in mm.
    pub bungs: Vec<String>,
    /// How the runs hang.
    pub hung: Vec<HungView>,
    /// What the welds ask for, by run.
    pub welds: Vec<WeldView>,
    /// Hazards.
    pub cautions: Vec<String>,
    /// Why there is no sheet.
    pub trouble: Option<String>,
    /// True when the plan is chosen, so that joints have marks that stay.
    pub is_chosen: bool,
}

/// How runs that hang together do.
#[derive(Clone, Debug, Serialize, TS)]
#[serde(rename_all = "camelCase")]
pub struct HungView {
    /// Their names.
    pub runs: String,
    /// Why no places are told.
    pub trouble: Option<String>,
    /// True when every rubber is within its load and nothing sinks too far.
    pub is_within: bool,
    /// Mass behind the flex, kg.
    pub kg: Option<f64>,
    /// How far the place that sinks most does, mm.
    pub sag: Option<f64>,
    /// The hangers, upstream first.
    pub hangers: Vec<HangerView>,
}

/// One hanger.
#[derive(Clone, Debug, Serialize, TS)]
#[serde(rename_all = "camelCase")]
pub struct HangerView {
    /// Its mark.
    pub mark: String,
    /// Where it is, in words. Lengths in mm.
    pub place: String,
    /// What its rubber carries, N: an estimate.
    pub newton: f64,
}

/// How much longer a part that closes is left until the gap is measured.
#[derive(Clone, Debug, Serialize, TS)]
pub struct TrimView {
    /// What is left longer and where: *left 6 mm longer at its upstream end*. Lengths in mm.
    pub words: String,
    /// What its item has no steel for and what to do then. Lengths in mm.
    pub lack: Option<String>,
}

/// One step.
#[derive(Clone, Debug, Serialize, TS)]
#[serde(rename_all = "camelCase")]
pub struct FitStepView {
    /// From 1.
    pub number: u32,
    /// The run.
    pub run: String,
    /// The pieces.
    pub marks: Vec<String>,
    /// What is done, in words.
    pub act: String,
    /// The joint that it makes.
    pub makes: String,
    /// How much longer a closing piece is left until the gap is measured.
    pub trim: Option<TrimView>,
    /// How the joint is held, where the run meets the car there and is not welded to it.
    pub held: Option<String>,
    /// The distances that prove it.
    pub checks: Vec<JointCheckView>,
}

/// The check distances of a joint.
#[derive(Clone, Debug, Serialize, TS)]
#[serde(rename_all = "camelCase")]
pub struct JointCheckView {
    /// The joint.
    pub joint: String,
    /// The distances.
    pub distances: Vec<CheckDistanceView>,
    /// How the plan has its face slope toward twelve and toward three o'clock, degrees up from level with the
    /// car level.
    pub slopes: Option<[f64; 2]>,
    /// In which direction they leave the joint loose, and by how much (19 in 20, mm), when they do.
    pub loose: Option<(String, f64)>,
    /// What to do where the distances do not hold the joint, lengths in mm.
    pub advice: Option<String>,
    /// Each may be off by this, mm; negative when a gap is lost even with tapes that read true.
    pub tolerance: f64,
    /// What sets it.
    pub tolerance_by: Option<String>,
    /// ± of the joint by the pieces alone, mm.
    pub plus_minus_before: f64,
    /// ± when the distances are kept to, mm.
    pub plus_minus_after: f64,
    /// What would do when the tolerance is negative.
    pub better: Vec<String>,
    /// Why there are fewer distances than are wanted: then it is not checked.
    pub too_few: Option<String>,
}

/// One distance.
#[derive(Clone, Debug, Serialize, TS)]
#[serde(rename_all = "camelCase")]
pub struct CheckDistanceView {
    /// From this mark.
    pub mark: String,
    /// To this hour on the rim.
    pub hour: f64,
    /// What the tape should say, mm.
    pub reads: f64,
}

/// What the welds of a run ask for.
#[derive(Clone, Debug, Serialize, TS)]
#[serde(rename_all = "camelCase")]
pub struct WeldView {
    /// The run.
    pub run: String,
    /// Both materials.
    pub materials: String,
    /// The filler and why.
    pub filler: String,
    /// Where to start with the current, gap, step and wire, in words.
    pub settings: String,
    /// What to mind.
    pub minds: Vec<String>,
    /// How to purge; none where nothing is purged.
    pub purge: Option<String>,
}

/// A joint as built.
#[derive(Clone, Debug, Serialize, TS)]
#[serde(rename_all = "camelCase")]
pub struct JointView {
    /// Its mark.
    pub joint: String,
    /// From the plan to where it is: rearwards, right, up, mm.
    pub off: [f64; 3],
    /// ± of each, mm.
    pub plus_minus: [f64; 3],
    /// How far it points off, degrees.
    pub lean: f64,
    /// How far it is turned about its own line, degrees.
    pub roll: f64,
    /// How that is known.
    pub by: String,
    /// Which way its tapes leave it loose, and the one line to add; none when they hold it.
    pub loose: Option<String>,
    /// Its readings.
    pub readings: Vec<TapeSeenView>,
    /// How to go on.
    pub offers: Vec<OfferView>,
    /// Why there is nothing to choose from, where there is not.
    pub why_none: String,
}

/// A reading at a joint.
#[derive(Clone, Debug, Serialize, TS)]
#[serde(rename_all = "camelCase")]
pub struct TapeSeenView {
    /// From which mark.
    pub from: String,
    /// Hour on the rim; none for the centre.
    pub hour: Option<f64>,
    /// What the tape says, mm.
    pub reads: f64,
    /// What it would say as planned, mm.
    pub planned: f64,
    /// What is left over against where the joint was found, mm.
    pub left_over: f64,
    /// Whether it stands out.
    pub is_doubtful: bool,
}

/// One way to go on.
#[derive(Clone, Debug, Serialize, TS)]
#[serde(rename_all = "camelCase")]
pub struct OfferView {
    /// From 1.
    pub number: usize,
    /// What it changes, in words.
    pub what: String,
    /// Whether it arrives, keeps every gap and can be made.
    pub is_good: bool,
    /// How far off it arrives, mm.
    pub arrives_off: f64,
    /// ± of that, mm.
    pub arrives_plus_minus: f64,
    /// How far off in direction, degrees.
    pub arrives_turn: f64,
    /// The least room of any gap over what it must have, ± counted, mm.
    pub least_room: Option<f64>,
    /// Gaps that fail.
    pub failing: Vec<String>,
    /// The changes.
    pub changes: Vec<String>,
    /// Cut steel that is lost.
    pub lost: Vec<String>,
    /// Pieces that go to the saw again.
    pub recut: Vec<String>,
    /// What is still to be bought, and how much dearer that is.
    pub price: Option<String>,
    /// Pieces that cannot be made.
    pub missing: Vec<String>,
}
