//! Readings, the places they give, bodies.

use serde::Serialize;
use ts_rs::TS;

/// The readings and the places they give.
#[derive(Clone, Debug, Default, Serialize, TS)]
#[serde(rename_all = "camelCase")]
pub struct MeasureView {
    /// Every reading in the order of its number.
    pub readings: Vec<ReadingView>,
    /// Every mark, point and end.
    pub places: Vec<PlaceView>,
    /// Names of the set-ups, with how the car stands.
    pub setups: Vec<SetupView>,
    /// Readings to spare.
    pub spare: usize,
    /// Whether the readings agree as well as their ± says; none without any to spare.
    pub agree: Option<bool>,
    /// Why there are no places at all.
    pub trouble: Option<String>,
    /// The readings to take next, most useful first.
    pub next: Vec<NextReading>,
    /// What the readings do not tell yet, in words.
    pub lacks: Vec<String>,
    /// Lines of the sketch: two places that a reading joins.
    pub lines: Vec<LineView>,
}

/// How the car stands.
#[derive(Clone, Debug, Serialize, TS)]
#[serde(rename_all = "camelCase")]
pub struct SetupView {
    /// Its name.
    pub name: String,
    /// True when ground clearance can be told from it.
    pub is_on_wheels: bool,
}

/// One reading.
#[derive(Clone, Debug, Serialize, TS)]
#[serde(rename_all = "camelCase")]
pub struct ReadingView {
    /// Its number, given once.
    pub number: u32,
    /// What was measured: *A left to B right*.
    pub what: String,
    /// As it was typed; none for a symmetrical pair.
    pub reads: Option<String>,
    /// How far it is off what all others say, mm or degrees; none when it takes no part.
    pub off: Option<f64>,
    /// `mm` or `°`.
    pub unit: String,
    /// What it is corrected with.
    pub pad: PadKind,
    /// True when the person dropped it.
    pub is_dropped: bool,
    /// True when nothing else checks it.
    pub is_unchecked: bool,
    /// Why it is doubtful and what it probably was.
    pub doubt: Option<String>,
    /// What it probably was, as it would be typed.
    pub was_probably: Option<String>,
}

/// A mark, point or end.
#[derive(Clone, Debug, Serialize, TS)]
#[serde(rename_all = "camelCase")]
pub struct PlaceView {
    /// Its name.
    pub name: String,
    /// Mark, point or end.
    pub kind: PlaceKind,
    /// Where it is in words.
    pub place: Option<String>,
    /// x rearwards, y right, z up, mm; none while the readings do not tell.
    pub at: Option<[f64; 3]>,
    /// ± (19 in 20), mm.
    pub plus_minus: Option<f64>,
    /// ± of an end's direction, degrees.
    pub turn_plus_minus: Option<f64>,
}

/// What a place is.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, TS)]
#[serde(rename_all = "camelCase")]
pub enum PlaceKind {
    /// Scribed on the car.
    Mark,
    /// A place on something.
    Point,
    /// Flange, sawn tube, tip or joint.
    End,
}

/// A reading that would help.
#[derive(Clone, Debug, Serialize, TS)]
#[serde(rename_all = "camelCase")]
pub struct NextReading {
    /// What to measure.
    pub what: String,
    /// What it is for: what gets surer by it, or which reading it checks.
    pub why: String,
    /// What the tape will show, about, mm.
    pub shows: Option<f64>,
    /// How to take it, when the page has a form for it.
    pub take: Option<TakeView>,
}

/// A reading that the page can take at once.
#[derive(Clone, Debug, Serialize, TS)]
#[serde(rename_all = "camelCase")]
pub struct TakeView {
    /// Tape, height or plumb.
    pub kind: TakeKind,
    /// From here; for a height, of this.
    pub from: SpotView,
    /// To here; none for a height.
    pub to: Option<SpotView>,
    /// How the car stands; none for a tape.
    pub setup: Option<String>,
}

/// Kind of a reading with a form of its own.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, TS)]
#[serde(rename_all = "camelCase")]
pub enum TakeKind {
    /// A tape from place to place.
    Tape,
    /// A height over the floor.
    Height,
    /// Along the floor between two plumbed places.
    Plumb,
}

/// A place that a tape can touch.
#[derive(Clone, Debug, Serialize, TS)]
#[serde(rename_all = "camelCase")]
pub struct SpotView {
    /// The mark, point or end.
    pub name: String,
    /// Clock mark on the rim of an end, hours; none for its centre, or for a mark or point.
    pub rim: Option<f64>,
}

/// A line of the sketch.
#[derive(Clone, Debug, Serialize, TS)]
#[serde(rename_all = "camelCase")]
pub struct LineView {
    /// One place.
    pub from: String,
    /// The other.
    pub to: String,
    /// True when its reading is doubtful.
    pub is_doubtful: bool,
}

/// A body.
#[derive(Clone, Debug, Serialize, TS)]
#[serde(rename_all = "camelCase")]
pub struct BodyView {
    /// Its name.
    pub name: String,
    /// Its class in words.
    pub class: String,
    /// Gap that runs keep from it, mm.
    pub gap: f64,
    /// True when it moves.
    pub is_moving: bool,
    /// ± (19 in 20) of where it is, mm.
    pub plus_minus: Option<f64>,
    /// Why it is not there.
    pub missing: Option<String>,
}

/// The keypad that a reading is corrected with.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, TS)]
#[serde(rename_all = "camelCase")]
pub enum PadKind {
    /// A length.
    Length,
    /// A length ahead or behind.
    Ahead,
    /// A length higher or lower.
    Higher,
    /// An angle up or down from level.
    Slope,
    /// An angle with the clock or against it.
    Turn,
    /// It has no figure.
    None,
}

/// A scan that was put into the folder.
#[derive(Clone, Debug, Serialize, TS)]
#[serde(rename_all = "camelCase")]
pub struct ScanView {
    /// By what name a body names it.
    pub file: String,
    /// Triangles; none for a scan of points alone.
    pub triangles: u32,
    /// Points.
    pub points: u32,
    /// Length, width and height in the file's own axes and units: what one unit is the file does not say.
    pub size: [f64; 3],
    /// What was dropped on reading.
    pub warnings: Vec<String>,
}
