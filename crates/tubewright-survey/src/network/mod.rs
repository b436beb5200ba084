//! What was measured: marks, ends, set-ups and readings, as numbers and names.

mod check;
mod names;
mod reading;

pub use check::NetworkError;
pub use reading::{CarAxis, Contact, Line, Reading, ReadingKind, TapeScale, Target, Touch};

use tubewright_geometry::{Frame, Point};

/// Number of a point in [`Network::points`].
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct PointId(pub usize);

/// Number of an end in [`Network::ends`].
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct EndId(pub usize);

/// Number of a set-up in [`Network::setups`].
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct SetupId(pub usize);

/// Which side of the car, seen from the driver's seat.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Side {
    /// Left: negative y.
    Left,
    /// On the centre plane.
    Centre,
    /// Right: positive y.
    Right,
}

/// Roughly where along the car.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Along {
    /// Toward the front: small x.
    Front,
    /// In between.
    Middle,
    /// Toward the rear: large x.
    Rear,
}

/// Roughly how high.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Level {
    /// Below most marks.
    Low,
    /// Above most marks.
    High,
}

/// What a person says of a place in words. Distances and heights alone cannot tell a car from its
/// mirror image; these words do, and they carry no weight in the adjustment.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct PlaceHint {
    /// Left or right.
    pub side: Option<Side>,
    /// Front or rear.
    pub along: Option<Along>,
    /// High or low.
    pub level: Option<Level>,
}

/// A mark or any other single place that readings go to.
#[derive(Clone, Debug, PartialEq)]
pub struct PointSpec {
    /// The person's name for it.
    pub name: String,
    /// Words about the place.
    pub hint: PlaceHint,
    /// Coordinates in mm that are known and held. Never needed; a network with held coordinates is
    /// adjusted in their frame.
    pub held: [Option<f64>; 3],
}

/// An end of a tube, a flange or a tacked joint: a rigid thing with a centre, a rim and bolt holes,
/// adjusted as a pose. Its local frame is that of [`tubewright_geometry::Frame`]: along the travel
/// (out of the face, downstream), toward twelve o'clock, toward three o'clock.
#[derive(Clone, Debug, PartialEq)]
pub struct End {
    /// The person's name for it.
    pub name: String,
    /// Radius in mm of the rim that the tape is held to (half the OD for an outer rim), > 0.
    pub rim_radius_mm: f64,
    /// Bolt holes in local coordinates (x along travel, y toward twelve, z toward three), mm.
    pub holes: Vec<Point>,
}

/// How the car stood.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Stance {
    /// On its wheels, at ride height: the only one that tells ground clearance.
    Wheels,
    /// On a lift, axles hanging or on the arms.
    Lift,
    /// On stands.
    Stands,
}

/// One standing of the car: its floor plane and its plumb line are unknown, and its own.
#[derive(Clone, Debug, PartialEq)]
pub struct SetupSpec {
    /// The person's name for it.
    pub name: String,
    /// How the car stood.
    pub stance: Stance,
    /// True when the floor is the plane z = 0 of held coordinates and z is plumb; false for a car,
    /// where the floor is found from the heights.
    pub floor_is_datum: bool,
}

/// A left and a right mark that belong together (same hole of the left and the right rail).
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Pair {
    /// The left one.
    pub left: PointId,
    /// The right one.
    pub right: PointId,
}

/// All that was measured on one car.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Network {
    /// Marks and other points.
    pub points: Vec<PointSpec>,
    /// Ends.
    pub ends: Vec<End>,
    /// Set-ups.
    pub setups: Vec<SetupSpec>,
    /// Paired marks. They give the car's sideways direction and tell left from right.
    pub pairs: Vec<Pair>,
    /// Points that usually lie behind the pairs, such as a tip. Only where no word and no reading tells
    /// the car from its mirror image, the image with these behind is shown.
    pub likely_rear: Vec<PointId>,
    /// Readings, in any order.
    pub readings: Vec<Reading>,
}

/// Rough places to start from: those of an earlier adjustment, for instance. Points without one are
/// found from the readings.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct StartValues {
    /// One place per point of the network, mm, or none.
    pub points: Vec<Option<Point>>,
    /// One pose per end of the network, in the same axes, or none; empty when none is known. Counts only
    /// with a place for every point.
    pub ends: Vec<Option<Frame>>,
}

impl PointSpec {
    /// A point of which nothing is known but its name.
    #[must_use]
    pub fn new(name: impl Into<String>) -> Self {
        Self {
            name: name.into(),
            hint: PlaceHint::default(),
            held: [None; 3],
        }
    }

    /// A point with a hint of its place.
    #[must_use]
    pub fn hinted(name: impl Into<String>, hint: PlaceHint) -> Self {
        Self {
            hint,
            ..Self::new(name)
        }
    }

    /// A datum mark with all three coordinates held.
    #[must_use]
    pub fn held_at(name: impl Into<String>, place: Point) -> Self {
        Self {
            held: place.to_array().map(Some),
            ..Self::new(name)
        }
    }
}

impl SetupSpec {
    /// A set-up whose floor is unknown.
    #[must_use]
    pub fn new(name: impl Into<String>, stance: Stance) -> Self {
        Self {
            name: name.into(),
            stance,
            floor_is_datum: false,
        }
    }
}

impl Network {
    /// Adds a point and gives its number.
    pub fn add_point(&mut self, point: PointSpec) -> PointId {
        self.points.push(point);
        PointId(self.points.len() - 1)
    }

    /// Adds an end and gives its number.
    pub fn add_end(&mut self, end: End) -> EndId {
        self.ends.push(end);
        EndId(self.ends.len() - 1)
    }

    /// Adds a set-up and gives its number.
    pub fn add_setup(&mut self, setup: SetupSpec) -> SetupId {
        self.setups.push(setup);
        SetupId(self.setups.len() - 1)
    }

    /// The point of this name.
    #[must_use]
    pub fn point_named(&self, name: &str) -> Option<PointId> {
        self.points.iter().position(|p| p.name == name).map(PointId)
    }

    /// The end of this name.
    #[must_use]
    pub fn end_named(&self, name: &str) -> Option<EndId> {
        self.ends.iter().position(|e| e.name == name).map(EndId)
    }

    /// The set-up of this name.
    #[must_use]
    pub fn setup_named(&self, name: &str) -> Option<SetupId> {
        self.setups.iter().position(|s| s.name == name).map(SetupId)
    }

    /// The reading of this number.
    #[must_use]
    pub fn reading(&self, number: u32) -> Option<&Reading> {
        self.readings.iter().find(|r| r.number == number)
    }

    /// This network with one reading set aside.
    #[must_use]
    pub fn without(&self, number: u32) -> Self {
        let mut network = self.clone();
        for reading in &mut network.readings {
            reading.set_aside |= reading.number == number;
        }
        network
    }

    /// True when some coordinate is held or some floor is the datum.
    #[must_use]
    pub fn has_datum(&self) -> bool {
        self.points
            .iter()
            .any(|p| p.held.iter().any(Option::is_some))
            || self.setups.iter().any(|s| s.floor_is_datum)
            || self
                .readings
                .iter()
                .any(|r| matches!(r.kind, ReadingKind::AxisSymmetry { .. }))
    }
}
