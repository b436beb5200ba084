use crate::model::{Name, Place};
use crate::quantity::{Clock, Quantity};
use crate::span::Span;
use tubewright_geometry::{Angle, Frame, Length, Point};

/// What happened to the steel, in order: `shop.toml`.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Shop {
    /// The entries in the order of the file.
    pub entries: Vec<Entry>,
}

/// One thing that happened.
#[derive(Clone, Debug, PartialEq)]
pub struct Entry {
    /// Date, year-month-day.
    pub on: String,
    /// What happened.
    pub what: EntryKind,
    /// Words of the person.
    pub note: Option<String>,
    /// Where it was written.
    pub span: Span,
}

/// What happened.
#[derive(Clone, Debug, PartialEq)]
#[non_exhaustive]
pub enum EntryKind {
    /// An alternative was chosen; its pieces are frozen as geometry.
    Chosen {
        /// The alternative's name, by what it does.
        route: String,
        /// Effort the solver had.
        effort: Option<u64>,
        /// Seed the solver had.
        seed: Option<u64>,
        /// Where each run starts.
        starts: Vec<FrozenStart>,
        /// The pieces in the order of flow, run by run.
        pieces: Vec<FrozenPiece>,
    },
    /// Bought.
    Got {
        /// The item.
        item: Name,
        /// From whom.
        supplier: Option<Name>,
        /// How many.
        count: u32,
    },
    /// The supplier has none.
    Out {
        /// The item.
        item: Name,
        /// Who has none.
        supplier: Option<Name>,
    },
    /// Another size was taken in its place.
    OtherSize {
        /// The item that was wanted.
        item: Name,
        /// The item that was taken.
        taken: Name,
        /// From whom.
        supplier: Option<Name>,
        /// How many.
        count: u32,
    },
    /// Kept as a spare.
    Spare {
        /// The item.
        item: Name,
        /// How many.
        count: u32,
    },
    /// A piece was cut.
    Cut {
        /// Its mark.
        piece: String,
        /// The item or the thing on hand it was cut from.
        from: Name,
        /// Where in it the part lay, so that what is left of it is known; nothing when the cut was not
        /// as planned.
        of: Option<CutOf>,
    },
    /// A piece was spoiled.
    Spoiled {
        /// Its mark.
        piece: String,
    },
    /// A joint was tacked, with what the tape says.
    Tacked {
        /// Its mark.
        joint: String,
        /// Readings to its rim.
        readings: Vec<JointReading>,
        /// Slopes of its face.
        faces: Vec<JointFace>,
    },
    /// A joint was welded.
    Welded {
        /// Its mark.
        joint: String,
    },
    /// A joint was checked, with what the tape says.
    Checked {
        /// Its mark.
        joint: String,
        /// Readings to its rim.
        readings: Vec<JointReading>,
        /// Slopes of its face.
        faces: Vec<JointFace>,
    },
    /// An offered change was accepted; the runs it changes, as geometry.
    Accepted {
        /// The alternative's name, by what it does.
        route: String,
        /// Where each run that changes starts.
        starts: Vec<FrozenStart>,
        /// All pieces of every run that changes, in the order of flow; those that stay keep their
        /// marks. A run of which no piece is named stays as it was.
        pieces: Vec<FrozenPiece>,
    },
}

/// Where in a stock item a part lay, and what the part is in the run.
#[derive(Clone, Debug, PartialEq)]
pub struct CutOf {
    /// Which of several of its kind, counted from 1 in the order in which they were begun.
    pub number: u32,
    /// The pieces that the part is, upstream first: a bend with the straights that its legs serve.
    pub gives: Vec<CutGives>,
    /// Its place.
    pub place: CutPlace,
}

/// A piece that a part is, or a share of it.
#[derive(Clone, Debug, PartialEq)]
pub struct CutGives {
    /// Its mark.
    pub piece: String,
    /// How much of a straight; nothing for the bend itself.
    pub length: Option<Quantity<Length>>,
}

/// Where a part lay in its item, counted from the item's end A.
#[derive(Clone, Debug, PartialEq)]
pub enum CutPlace {
    /// In a straight tube.
    Straight {
        /// From end A.
        at: Quantity<Length>,
        /// Length.
        length: Quantity<Length>,
    },
    /// In the leg at end A of a bend, counted from the leg's open end.
    LegA {
        /// From the open end.
        at: Quantity<Length>,
        /// Length.
        length: Quantity<Length>,
    },
    /// In the leg at end B of a bend, counted from the leg's open end.
    LegB {
        /// From the open end.
        at: Quantity<Length>,
        /// Length.
        length: Quantity<Length>,
    },
    /// In the arc of a bend.
    Bend {
        /// From the tangent line of leg A.
        at: Quantity<Angle>,
        /// Angle.
        angle: Quantity<Angle>,
        /// Kept of the legs at ends A and B.
        legs: [Quantity<Length>; 2],
    },
}

/// Where a run started when it was chosen, in the car's axes.
#[derive(Clone, Debug, PartialEq)]
pub struct FrozenStart {
    /// The run.
    pub run: Name,
    /// The frame at its first piece.
    pub frame: Frame,
    /// Its tube size when it was chosen; the run's own when left out.
    pub tube: Option<Name>,
    /// Mark of the joint at its start.
    pub joint: Option<String>,
}

/// A piece of a chosen plan.
#[derive(Clone, Debug, PartialEq)]
pub struct FrozenPiece {
    /// The run it belongs to.
    pub run: Name,
    /// Its mark (L3), given once and never reused.
    pub mark: String,
    /// Mark of the joint at its downstream end (J4).
    pub joint: Option<String>,
    /// Its shape.
    pub shape: FrozenShape,
}

/// Shape of a frozen piece.
#[derive(Clone, Debug, PartialEq)]
pub enum FrozenShape {
    /// A straight.
    Straight {
        /// Length between the cuts.
        length: Quantity<Length>,
    },
    /// A bend, its legs before and after.
    Bend {
        /// Angle.
        angle: Quantity<Angle>,
        /// Clock of the bend from the twelve o'clock carried along the run.
        clock: Quantity<Clock>,
        /// Centre-line radius.
        clr: Quantity<Length>,
        /// Straight legs kept at the upstream and downstream end.
        legs: [Quantity<Length>; 2],
    },
    /// A component.
    Component {
        /// Its name.
        component: Name,
        /// Clock of its own twelve o'clock.
        roll: Option<Quantity<Clock>>,
        /// Its length when it was chosen; that of its item when left out.
        length: Option<Quantity<Length>>,
        /// Where the origin of a component that several runs share lies, in the car's axes, mm.
        at: Option<Point>,
        /// How such a one is turned from how it lies by `build.toml`: its outlets to the right, up, rolled clockwise
        /// looking downstream; not at all when left out.
        turned: Option<Box<[Quantity<Angle>; 3]>>,
    },
}

/// Slope of the face of a joint, by the angle finder on a straight edge laid across it.
#[derive(Clone, Debug, PartialEq)]
pub struct JointFace {
    /// From the centre toward this clock mark.
    pub clock: Quantity<Clock>,
    /// Set-up in which it was read.
    pub setup: Name,
    /// Above level.
    pub reads: Quantity<Angle>,
}

/// A reading to the rim of a joint.
#[derive(Clone, Debug, PartialEq)]
pub struct JointReading {
    /// The mark or point.
    pub from: Place,
    /// Clock mark on the joint's rim; its centre when left out.
    pub rim: Option<Clock>,
    /// What the tape says.
    pub reads: Quantity<Length>,
}
