//! What the person does.

use serde::{Deserialize, Serialize};
use std::collections::BTreeMap;
use ts_rs::TS;

/// Something that the person does on the page.
#[derive(Clone, Debug, Deserialize, TS)]
#[serde(rename_all = "camelCase", tag = "do", deny_unknown_fields)]
pub enum Deed {
    /// Types a tape reading.
    #[serde(rename_all = "camelCase")]
    AddTape {
        /// From this place.
        from: Spot,
        /// To this place.
        to: Spot,
        /// As the tape reads.
        reads: String,
    },
    /// Types a height above the floor.
    #[serde(rename_all = "camelCase")]
    AddHeight {
        /// Of this place.
        of: Spot,
        /// How the car stands.
        setup: String,
        /// As the tape reads.
        reads: String,
    },
    /// Types a distance along the floor between two plumb points.
    #[serde(rename_all = "camelCase")]
    AddPlumb {
        /// From below this place.
        from: Spot,
        /// To below this place.
        to: Spot,
        /// How the car stands.
        setup: String,
        /// As the tape reads.
        reads: String,
    },
    /// Types how far one place lies from another along a direction.
    #[serde(rename_all = "camelCase")]
    AddOffset {
        /// From this place.
        from: Spot,
        /// To this place.
        to: Spot,
        /// Along the line from the first of these places to the second; none for straight up.
        along: Option<[String; 2]>,
        /// How the car stands, for straight up.
        setup: Option<String>,
        /// As the tape reads; below zero when it lies the other way.
        reads: String,
    },
    /// Types the slope of a line, above level.
    #[serde(rename_all = "camelCase")]
    AddSlope {
        /// From this place.
        from: Spot,
        /// To this place.
        to: Spot,
        /// How the car stands.
        setup: String,
        /// As the angle finder reads; below zero when it falls.
        reads: String,
    },
    /// Types by how much a line is turned from another, seen from above.
    #[serde(rename_all = "camelCase")]
    AddBearing {
        /// From this place.
        from: Spot,
        /// To this place.
        to: Spot,
        /// Start and end of the line that it is turned from.
        base: [String; 2],
        /// How the car stands.
        setup: String,
        /// The angle, clockwise; below zero against the clock.
        reads: String,
    },
    /// Types the slope of an end's face, from its centre toward a clock mark.
    #[serde(rename_all = "camelCase")]
    AddFace {
        /// The end.
        end: String,
        /// Clock mark, hours.
        toward: f64,
        /// How the car stands.
        setup: String,
        /// As the angle finder reads; below zero when it falls.
        reads: String,
    },
    /// Corrects a reading.
    #[serde(rename_all = "camelCase")]
    ChangeReading {
        /// Its number.
        number: u32,
        /// What it said when the person began.
        was: String,
        /// What it says now.
        reads: String,
    },
    /// Drops a reading, or takes it back in.
    #[serde(rename_all = "camelCase")]
    DropReading {
        /// Its number.
        number: u32,
        /// Whether it is dropped.
        dropped: bool,
    },
    /// Makes a mark on the car.
    #[serde(rename_all = "camelCase")]
    AddMark {
        /// Its name.
        name: String,
        /// Where it is in words.
        place: Option<String>,
        /// left, right or centre.
        side: Option<String>,
    },
    /// Names a place on something.
    #[serde(rename_all = "camelCase")]
    AddPoint {
        /// Its name.
        name: String,
        /// Where it is in words.
        place: Option<String>,
        /// left, right or centre.
        side: Option<String>,
    },
    /// Says how the car stands.
    #[serde(rename_all = "camelCase")]
    AddSetup {
        /// Its name.
        name: String,
        /// wheels, lift or stands.
        stance: String,
    },
    /// Chooses the car's axes.
    #[serde(rename_all = "camelCase")]
    ChooseFrame {
        /// Where x and z are zero.
        origin: String,
        /// Pairs of a left and a right place, front to rear.
        centre_line: Vec<[String; 2]>,
        /// The set-up whose plumb line is z.
        level: String,
    },
    /// Adds an element to one of the lists of the files: an end, a body, a run, a tube, an offer.
    #[serde(rename_all = "camelCase")]
    Add {
        /// The list.
        list: String,
        /// Its keys.
        fields: Vec<Field>,
    },
    /// Changes one key of an element or of a table.
    #[serde(rename_all = "camelCase")]
    Set {
        /// The list or table.
        list: String,
        /// Name of the element; none for a table.
        name: Option<String>,
        /// The key.
        key: String,
        /// The value; none clears it.
        value: Option<Value>,
    },
    /// Removes an element.
    #[serde(rename_all = "camelCase")]
    Remove {
        /// The list.
        list: String,
        /// Its name; the number of a reading.
        name: String,
    },
    /// Gives something another name wherever it stands.
    #[serde(rename_all = "camelCase")]
    Rename {
        /// mark, point, body, end, run, ….
        kind: String,
        /// Old name.
        from: String,
        /// New name.
        to: String,
    },
    /// Takes over the catalogue and the shop's figures of a demonstration, into an empty stock file.
    #[serde(rename_all = "camelCase")]
    StartStock {
        /// Which demonstration.
        like: String,
    },
    /// Takes up the runs of a way that differ from the chosen plan.
    #[serde(rename_all = "camelCase")]
    AcceptWay {
        /// Date, year-month-day.
        on: String,
        /// Its number on the page, from 0.
        way: usize,
        /// Its name, as it was looked at.
        name: String,
    },
    /// Takes up an offer for the rest of a run behind a tacked joint.
    #[serde(rename_all = "camelCase")]
    AcceptOffer {
        /// Date, year-month-day.
        on: String,
        /// The joint.
        joint: String,
        /// Number of the offer, from 1.
        number: usize,
        /// What it was, as it was looked at.
        what: String,
    },
    /// Freezes a way piece by piece into the record.
    #[serde(rename_all = "camelCase")]
    Choose {
        /// Date, year-month-day.
        on: String,
        /// Its number on the page, from 0.
        way: usize,
        /// Its name, as it was looked at.
        name: String,
    },
    /// Pins a joint of a run, or its line, to a place.
    #[serde(rename_all = "camelCase")]
    Pin {
        /// The run.
        run: String,
        /// True when one of its joints is to lie there.
        is_joint: bool,
        /// Where, mm.
        at: [f64; 3],
        /// How far from there its room reaches each way, as the shop writes it.
        within: String,
    },
    /// Takes a pin out.
    #[serde(rename_all = "camelCase")]
    Unpin {
        /// The run.
        run: String,
        /// Its place in the list, from 0.
        number: usize,
        /// Its words, as it was looked at.
        words: String,
    },
    /// Lets no run pass a side of a body, or lets them again.
    #[serde(rename_all = "camelCase")]
    CloseSide {
        /// The body.
        body: String,
        /// front, rear, left, right, above or below.
        side: String,
        /// Whether it is closed.
        is_closed: bool,
    },
    /// Puts what is left of a spoiled piece on the shelf.
    #[serde(rename_all = "camelCase")]
    ShelveRest {
        /// Its mark.
        piece: String,
        /// A length of a straight, an angle of a bend.
        left: String,
    },
    /// Records that something happened to the steel. Never taken back.
    #[serde(rename_all = "camelCase")]
    Happened {
        /// Date, year-month-day.
        on: String,
        /// What.
        what: Happening,
    },
}

/// A place that a tape can touch.
#[derive(Clone, Debug, Deserialize, TS)]
#[serde(rename_all = "camelCase", deny_unknown_fields)]
pub struct Spot {
    /// The mark, point or end.
    pub name: String,
    /// On an end: the clock mark of its rim, hours; none for its centre, or for a mark or point.
    pub rim: Option<f64>,
}

/// What happened to the steel.
#[derive(Clone, Debug, Deserialize, TS)]
#[serde(rename_all = "camelCase", tag = "kind", deny_unknown_fields)]
pub enum Happening {
    /// Bought.
    Got {
        /// The item.
        item: String,
        /// From whom.
        supplier: String,
        /// How many.
        count: u32,
    },
    /// The supplier has none.
    Out {
        /// The item.
        item: String,
        /// Who has none.
        supplier: String,
    },
    /// A piece was cut.
    Cut {
        /// Its mark.
        piece: String,
        /// What it was cut from.
        from: String,
    },
    /// A piece was spoiled.
    Spoiled {
        /// Its mark.
        piece: String,
    },
    /// Another size was taken in its place.
    OtherSize {
        /// The item that was wanted.
        item: String,
        /// The item that was taken.
        taken: String,
        /// How many.
        count: u32,
    },
    /// A joint was tacked.
    Tacked {
        /// Its mark.
        joint: String,
        /// Distances as measured; none when nothing was taped.
        readings: Vec<JointTape>,
        /// Slopes of its face as the angle finder reads.
        #[serde(default)]
        slopes: Vec<JointSlope>,
    },
    /// A joint was welded.
    Welded {
        /// Its mark.
        joint: String,
    },
    /// A joint was checked.
    Checked {
        /// Its mark.
        joint: String,
    },
}

/// A tape from a mark to the rim of a tacked joint.
#[derive(Clone, Debug, Deserialize, TS)]
#[serde(rename_all = "camelCase", deny_unknown_fields)]
pub struct JointTape {
    /// The mark.
    pub from: String,
    /// Clock of the scribed place, hours.
    pub rim: f64,
    /// As the tape reads.
    pub reads: String,
}

/// The slope of a tacked joint's face, by the angle finder on a straight edge across it.
#[derive(Clone, Debug, Deserialize, TS)]
#[serde(rename_all = "camelCase", deny_unknown_fields)]
pub struct JointSlope {
    /// From the centre toward this clock mark, hours.
    pub toward: f64,
    /// How the car stands.
    pub setup: String,
    /// As the angle finder reads, up from level.
    pub reads: String,
}

/// A key with its value.
#[derive(Clone, Debug, Deserialize, TS)]
#[serde(rename_all = "camelCase", deny_unknown_fields)]
pub struct Field {
    /// The key.
    pub key: String,
    /// The value.
    pub value: Value,
}

/// A value as it is to stand in a file.
#[derive(Clone, Debug, Deserialize, TS)]
#[serde(untagged)]
pub enum Value {
    /// True or false.
    Yes(bool),
    /// A whole number.
    Whole(#[ts(type = "number")] i64),
    /// A plain number.
    Number(f64),
    /// Text, quantities among it.
    Text(String),
    /// A list.
    List(Vec<Value>),
    /// A table.
    Table(BTreeMap<String, Value>),
}

/// Why something was not done.
#[derive(Clone, Debug, Serialize, TS)]
#[serde(rename_all = "camelCase")]
pub struct Refusal {
    /// What is wrong and what to do, for the person.
    pub words: String,
    /// What the value is now, when somebody else changed it meanwhile.
    pub now: Option<String>,
}
