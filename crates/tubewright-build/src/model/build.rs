use crate::model::{
    Accuracy, Body, Carrier, Component, End, Mark, MeasuredPoint, Name, Place, Reading, Run, Setup,
};
use crate::quantity::{Power, Quantity, RotationSpeed, Volume};
use crate::span::Span;
use tubewright_geometry::Length;

/// The car: `build.toml`.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Build {
    /// Name of the job.
    pub name: Option<String>,
    /// Words of the person.
    pub note: Option<String>,
    /// Choice of the car's axes.
    pub frame: Option<FrameChoice>,
    /// Marks.
    pub marks: Vec<Mark>,
    /// Points.
    pub points: Vec<MeasuredPoint>,
    /// Set-ups.
    pub setups: Vec<Setup>,
    /// ± of the kinds of reading.
    pub accuracy: Accuracy,
    /// Readings.
    pub readings: Vec<Reading>,
    /// Ends.
    pub ends: Vec<End>,
    /// Carriers.
    pub carriers: Vec<Carrier>,
    /// Gaps by class.
    pub gaps: Gaps,
    /// Bodies.
    pub bodies: Vec<Body>,
    /// The engine.
    pub engine: Option<Engine>,
    /// Components.
    pub components: Vec<Component>,
    /// Runs.
    pub runs: Vec<Run>,
    /// Wishes.
    pub wishes: Wishes,
}

macro_rules! find {
    ($(#[$doc:meta])* $find:ident, $list:ident, $type:ty) => {
        $(#[$doc])*
        #[must_use]
        pub fn $find(&self, name: &str) -> Option<&$type> {
            self.$list.iter().find(|element| element.name == *name)
        }
    };
}

impl Build {
    find!(/// The mark of this name.
        mark, marks, Mark);
    find!(/// The point of this name.
        point, points, MeasuredPoint);
    find!(/// The set-up of this name.
        setup, setups, Setup);
    find!(/// The end of this name.
        end, ends, End);
    find!(/// The carrier of this name.
        carrier, carriers, Carrier);
    find!(/// The body of this name.
        body, bodies, Body);
    find!(/// The component of this name.
        component, components, Component);
    find!(/// The run of this name.
        run, runs, Run);

    /// The reading of this number.
    #[must_use]
    pub fn reading(&self, number: u32) -> Option<&Reading> {
        self.readings
            .iter()
            .find(|reading| reading.number == number)
    }
}

/// Choice of the car's axes: x rearwards, y to the car's right, z up (ISO 4130).
#[derive(Clone, Debug, PartialEq)]
pub struct FrameChoice {
    /// The mark at which x = 0 and z = 0.
    pub origin: Place,
    /// Pairs of places mirrored in the middle plane y = 0, from front to rear: the middle of the first
    /// lies at y = 0, and the line from there to the middle of the last is the x axis.
    pub centre_line: Vec<CentreLinePair>,
    /// The set-up whose floor is level: z is square to it.
    pub level: Name,
    /// Where it was written.
    pub span: Span,
}

/// A left and a right place on the two sides of the middle plane.
#[derive(Clone, Debug, PartialEq)]
pub struct CentreLinePair {
    /// The left one.
    pub left: Place,
    /// The right one.
    pub right: Place,
}

/// Gaps by class, as written; what is left out is common practice, see [`Gaps::resolved`].
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Gaps {
    /// To structure.
    pub structure: Option<Quantity<Length>>,
    /// To the floor pan.
    pub floor: Option<Quantity<Length>>,
    /// To the driveline.
    pub driveline: Option<Quantity<Length>>,
    /// To moving parts.
    pub moving: Option<Quantity<Length>>,
    /// To tyres.
    pub tyre: Option<Quantity<Length>>,
    /// To hose, wiring, plastic without a shield.
    pub soft: Option<Quantity<Length>>,
    /// To hose, wiring, plastic behind a shield.
    pub soft_shielded: Option<Quantity<Length>>,
    /// To fuel and brake parts.
    pub fuel_brake: Option<Quantity<Length>>,
    /// To hot metal.
    pub heat: Option<Quantity<Length>>,
    /// To the ground.
    pub ground: Option<Quantity<Length>>,
    /// To the bonnet.
    pub bonnet: Option<Quantity<Length>>,
    /// To room kept free by hand.
    pub service: Option<Quantity<Length>>,
    /// Run against run.
    pub run: Option<Quantity<Length>>,
    /// A run against itself.
    pub itself: Option<Quantity<Length>>,
}

/// The engine.
#[derive(Clone, Debug, PartialEq)]
pub struct Engine {
    /// Layout: `inline 4`, `V6`, ….
    pub layout: Option<String>,
    /// Swept volume.
    pub displacement: Option<Quantity<Volume>>,
    /// Greatest power.
    pub power: Option<Quantity<Power>>,
    /// Greatest speed.
    pub max_speed: Option<Quantity<RotationSpeed>>,
    /// Where it was written.
    pub span: Span,
}

/// What the person wishes.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Wishes {
    /// Catalysts stay.
    pub keep_catalysts: Option<bool>,
    /// Who claims room first.
    pub order_of_room: Vec<Room>,
    /// Work units for the route solver.
    pub effort: Option<u64>,
    /// Seed of the route solver.
    pub seed: Option<u64>,
    /// In what lengths are shown; what most of the readings are written in when left out, see
    /// [`Build::shown_units`](crate::model::Build::shown_units).
    pub units: Option<LengthUnits>,
}

/// In what lengths are shown to the person. Files and results hold millimetres all the same.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum LengthUnits {
    /// Millimetres.
    Millimetres,
    /// Inches, with sixteenths.
    Inches,
}

/// What claims room.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Room {
    /// The steering shaft.
    SteeringShaft,
    /// The exhaust.
    Exhaust,
    /// Coolant hoses and header tank.
    Coolant,
    /// Lines.
    Lines,
}
