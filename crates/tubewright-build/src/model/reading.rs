use crate::model::{CarrierRef, Name, Place, Side};
use crate::quantity::{Clock, Quantity};
use crate::span::Span;
use tubewright_geometry::{Angle, Length};

/// A mark scribed or painted on the car to measure from.
#[derive(Clone, Debug, PartialEq)]
pub struct Mark {
    /// Its name.
    pub name: Name,
    /// Words that tell a person where it is.
    pub place: Option<String>,
    /// Side of the car; tells the mirror twin only.
    pub side: Option<Side>,
    /// What it moves with.
    pub carrier: CarrierRef,
    /// Where it was written.
    pub span: Span,
}

/// A place on something, found by the adjustment.
#[derive(Clone, Debug, PartialEq)]
pub struct MeasuredPoint {
    /// Its name; marks, points and ends share one set of names.
    pub name: Name,
    /// Words that tell a person where it is.
    pub place: Option<String>,
    /// Side of the car; tells the mirror twin only.
    pub side: Option<Side>,
    /// What it moves with.
    pub carrier: CarrierRef,
    /// Where it was written.
    pub span: Span,
}

/// How the car stands while it is measured; each has its own floor and plumb line.
#[derive(Clone, Debug, PartialEq)]
pub struct Setup {
    /// Its name.
    pub name: Name,
    /// What the car stands on.
    pub stance: Stance,
    /// Words for the person.
    pub note: Option<String>,
    /// Where it was written.
    pub span: Span,
}

/// What the car stands on.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Stance {
    /// On its wheels: only this one gives ground clearance.
    Wheels,
    /// On a lift, wheels hanging.
    Lift,
    /// On stands.
    Stands,
}

/// The ± (19 in 20) of each kind of reading, as written; what is left out is common practice, see
/// [`Accuracy::resolved`].
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Accuracy {
    /// Tape.
    pub tape: Option<Quantity<Length>>,
    /// Height over the floor.
    pub height: Option<Quantity<Length>>,
    /// Plumb-bob points on the floor.
    pub plumb: Option<Quantity<Length>>,
    /// Offset along a direction.
    pub offset: Option<Quantity<Length>>,
    /// Symmetry of the car.
    pub symmetry: Option<Quantity<Length>>,
    /// Inclination, bearing and face.
    pub angle: Option<Quantity<Angle>>,
    /// Tape to the rim, a bolt hole or the centre of an end, in place of the tape's own: a sharp edge
    /// is held more surely than a painted dot.
    pub rim: Option<Quantity<Length>>,
}

/// One reading.
#[derive(Clone, Debug, PartialEq)]
pub struct Reading {
    /// Given once and never reused.
    pub number: u32,
    /// What was measured.
    pub kind: ReadingKind,
    /// Its own ± (19 in 20), when it differs from the accuracy of its kind.
    pub plus_minus: Option<PlusMinus>,
    /// Words of the person.
    pub note: Option<String>,
    /// Set when the person does not trust it.
    pub doubt: Option<Doubt>,
    /// Where it was written.
    pub span: Span,
}

impl Reading {
    /// Whether the adjustment uses it.
    #[must_use]
    pub fn is_used(&self) -> bool {
        self.doubt.is_none()
    }

    /// What it reads as typed; `None` for symmetry, which reads nothing.
    #[must_use]
    pub fn reads_text(&self) -> Option<&str> {
        match &self.kind {
            ReadingKind::Tape { reads, .. }
            | ReadingKind::Height { reads, .. }
            | ReadingKind::Plumb { reads, .. }
            | ReadingKind::Offset { reads, .. } => Some(&reads.text),
            ReadingKind::Inclination { reads, .. }
            | ReadingKind::Bearing { reads, .. }
            | ReadingKind::Face { reads, .. } => Some(&reads.text),
            ReadingKind::Symmetry { .. } => None,
        }
    }
}

/// What the person thinks of a reading.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Doubt {
    /// Kept, but not used.
    Dropped,
}

/// A ± (19 in 20).
#[derive(Clone, Debug, PartialEq)]
pub enum PlusMinus {
    /// Of a length.
    Length(Quantity<Length>),
    /// Of an angle.
    Angle(Quantity<Angle>),
}

/// What a reading measures.
#[derive(Clone, Debug, PartialEq)]
#[non_exhaustive]
pub enum ReadingKind {
    /// Straight tape from one place to another.
    Tape {
        /// Where the hook is.
        from: Place,
        /// Where it is read.
        to: Place,
        /// As read from the tape, before `burnt` is taken off.
        reads: Quantity<Length>,
        /// The graduation at which the tape was started, to be taken off.
        burnt: Option<Quantity<Length>>,
        /// Holes whose edge (and not centre) was used, at most one per end of the tape.
        holes: Vec<HookedHole>,
        /// Tubes or rails whose face (and not axis) was touched, at most one per end of the tape.
        sides: Vec<TubeSide>,
    },
    /// Height over the floor of the set-up.
    Height {
        /// The place.
        of: Place,
        /// The set-up.
        setup: Name,
        /// The height.
        reads: Quantity<Length>,
    },
    /// Distance between two plumb-bob points on the floor of the set-up.
    Plumb {
        /// One place.
        from: Place,
        /// The other.
        to: Place,
        /// The set-up.
        setup: Name,
        /// The distance.
        reads: Quantity<Length>,
    },
    /// Signed distance from → to along a direction.
    Offset {
        /// One place.
        from: Place,
        /// The other.
        to: Place,
        /// The direction.
        along: Along,
        /// The signed distance.
        reads: Quantity<Length>,
    },
    /// Two places lie mirrored in the car's middle plane.
    Symmetry {
        /// The place on the left.
        left: Place,
        /// The place on the right.
        right: Place,
    },
    /// Angle of the line from → to above level.
    Inclination {
        /// Lower end of the line.
        from: Place,
        /// Other end.
        to: Place,
        /// The set-up whose level counts.
        setup: Name,
        /// The angle, positive when `to` is higher.
        reads: Quantity<Angle>,
    },
    /// Angle in plan by which the line from → to is turned from the base line, clockwise seen from
    /// above, as a surveyor's bearing is turned from north.
    Bearing {
        /// Start of the line.
        from: Place,
        /// End of the line.
        to: Place,
        /// Start and end of the base line.
        base: [Place; 2],
        /// The set-up whose level counts.
        setup: Name,
        /// The angle.
        reads: Quantity<Angle>,
    },
    /// Inclination of an end's face along one of its clock directions.
    Face {
        /// The end.
        end: Name,
        /// From the centre toward this clock mark.
        clock: Quantity<Clock>,
        /// The set-up whose level counts.
        setup: Name,
        /// The angle above level.
        reads: Quantity<Angle>,
    },
}

/// Direction of an offset.
#[derive(Clone, Debug, PartialEq)]
pub enum Along {
    /// From the first place to the second.
    Line([Place; 2]),
    /// Up along the plumb line of a set-up.
    Plumb {
        /// The set-up.
        setup: Name,
    },
}

/// Which end of the tape.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum TapeEnd {
    /// Its `from`.
    From,
    /// Its `to`.
    To,
}

/// A hole whose edge was used in place of its centre.
#[derive(Clone, Debug, PartialEq)]
pub struct HookedHole {
    /// Which end of the tape.
    pub at: TapeEnd,
    /// Diameter of the hole.
    pub diameter: Quantity<Length>,
    /// Which edge.
    pub edge: HoleEdge,
}

/// Edge of a hole as seen from the other end of the tape.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum HoleEdge {
    /// The nearer edge: the tape reads half a diameter short.
    Near,
    /// The farther edge: the tape reads half a diameter long.
    Far,
}

/// A tube or rail whose face was touched in place of its axis.
#[derive(Clone, Debug, PartialEq)]
pub struct TubeSide {
    /// Which end of the tape.
    pub at: TapeEnd,
    /// Width of the tube or rail along the tape.
    pub of: Quantity<Length>,
    /// Which face.
    pub face: Face,
}

/// Face of a tube or rail.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Face {
    /// The nearer face: the tape reads half a width short.
    Near,
    /// The farther face: the tape reads half a width long.
    Far,
    /// The face away from the car's middle.
    Outer,
    /// The face toward the car's middle.
    Inner,
}
