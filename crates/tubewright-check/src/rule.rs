//! The rules: what is checked, for which job, how much harm a failure does, and on whose word.

/// One of the twelve jobs that the program does.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
#[non_exhaustive]
pub enum Job {
    /// Measure the car.
    Measure,
    /// Describe what is in the way.
    Describe,
    /// Choose sizes and parts.
    Choose,
    /// Route.
    Route,
    /// Buy.
    Buy,
    /// Cut.
    Cut,
    /// Fit and weld.
    Fit,
    /// Pressure, return and coolant lines.
    Lines,
    /// Steering shaft.
    SteeringShaft,
    /// Header tank and coolant circuit.
    Coolant,
    /// Prove that the engine can be run.
    Prove,
    /// Record.
    Record,
}

impl Job {
    /// The word on the page and the sheets.
    #[must_use]
    pub const fn title(self) -> &'static str {
        match self {
            Self::Measure => "Measure",
            Self::Describe => "What is in the way",
            Self::Choose => "Sizes and parts",
            Self::Route => "Route",
            Self::Buy => "Buy",
            Self::Cut => "Cut",
            Self::Fit => "Fit",
            Self::Lines => "Lines",
            Self::SteeringShaft => "Steering shaft",
            Self::Coolant => "Coolant",
            Self::Prove => "Prove",
            Self::Record => "Record",
        }
    }
}

/// How much harm it does when the rule is broken: the order in which findings are shown.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Harm {
    /// Someone can be hurt: steering, brakes, fuel, fire, fume.
    Injury,
    /// Against the law on most roads.
    Law,
    /// Something on the car is damaged.
    Damage,
    /// The part does not fit or must be made again.
    Rework,
    /// Time or money.
    Cost,
}

macro_rules! rules {
    ($($(#[$doc:meta])* $name:ident = $id:literal, $job:ident, $harm:ident, $title:literal, $source:literal;)*) => {
        /// What is checked. The identifier is stable and is never reused for another meaning.
        #[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
        #[non_exhaustive]
        pub enum Rule {
            $($(#[$doc])* $name,)*
        }

        impl Rule {
            /// Every rule, in the order they are declared.
            pub const ALL: &'static [Self] = &[$(Self::$name,)*];

            /// Stable identifier, `job.rule`.
            #[must_use]
            pub const fn id(self) -> &'static str {
                match self { $(Self::$name => $id,)* }
            }

            /// The job it belongs to.
            #[must_use]
            pub const fn job(self) -> Job {
                match self { $(Self::$name => Job::$job,)* }
            }

            /// How much harm a failure does.
            #[must_use]
            pub const fn harm(self) -> Harm {
                match self { $(Self::$name => Harm::$harm,)* }
            }

            /// One line for the person.
            #[must_use]
            pub const fn title(self) -> &'static str {
                match self { $(Self::$name => $title,)* }
            }

            /// Who says so.
            #[must_use]
            pub const fn source(self) -> &'static str {
                match self { $(Self::$name => $source,)* }
            }
        }
    };
}

rules! {
    /// The readings agree with each other as well as their ± says (global test; Ghilani, *Adjustment Computations*).
    ReadingsAgree = "measure.agree", Measure, Rework, "the readings agree with each other",
        "all of them together";
    /// No single reading stands out (data snooping; Baarda 1968).
    DoubtfulReading = "measure.doubtful", Measure, Rework, "no reading is doubtful",
        "each against all the others";
    /// Every reading is controlled by others (redundancy numbers; Baarda 1968).
    UncheckedReading = "measure.unchecked", Measure, Rework, "every reading is checked by another",
        "less than a tenth of it checked by others";
    /// Every mark, point and end that something needs has been found.
    PlaceFound = "measure.found", Measure, Rework, "every place that is needed is found",
        "your own readings";
    /// The direction of an end is known well enough for a run to start from it.
    EndDirection = "measure.end-direction", Measure, Rework, "the direction of the end is known",
        "common practice, no source";
    /// A body could be built from its points.
    BodyBuilt = "bodies.built", Describe, Damage, "every body is built", "your own readings";
    /// A scan lies on its marks (Umeyama 1991).
    ScanPlaced = "bodies.scan-placed", Describe, Damage, "the scan lies on its marks",
        "the placing that fits all its marks best";
    /// The run was not planned through room that no scan has seen.
    ScanCovers = "bodies.scan-covers", Describe, Damage, "the scan covers the room that is used",
        "common practice, no source";
    /// A route was found for the run.
    RouteFound = "route.found", Route, Rework, "the run has a route", "the plan's own geometry";
    /// The built pieces end where the end is.
    EndPlace = "route.end-place", Route, Rework, "the pieces end at the end", "common practice, no source";
    /// The built pieces arrive in the direction of the end.
    EndAim = "route.end-aim", Route, Rework, "the pieces arrive in line", "common practice, no source";
    /// Gap to a body over every position that both take.
    ClearanceToBody = "clearance.body", Prove, Damage, "gap to a body in every position",
        "gap by class: common practice, no source";
    /// Gap to fuel and brake parts over every position.
    ClearanceToFuelBrake = "clearance.fuel-brake", Prove, Injury,
        "gap to fuel and brake parts in every position", "gap by class: common practice, no source";
    /// Gap to the ground on its wheels.
    ClearanceToGround = "clearance.ground", Prove, Damage, "ground clearance on its wheels",
        "gap by class: common practice, no source";
    /// Gap between two runs.
    ClearanceToRun = "clearance.run", Prove, Damage, "gap between runs", "common practice, no source";
    /// Gap of a run to itself.
    ClearanceToSelf = "clearance.self", Prove, Rework, "gap of a run to itself",
        "common practice, no source";
    /// Straights and bends are not shorter than the shop can make.
    LeastPiece = "cut.least-piece", Cut, Rework, "no piece is shorter than the shop can make",
        "the shop's own practice";
    /// The saw can hold every piece while it is cut.
    SawHolds = "cut.saw-holds", Cut, Injury, "the saw can hold every piece", "the shop's own practice";
    /// Everything can be bought or is on hand.
    StockCovers = "buy.covered", Buy, Cost, "everything is on hand or on offer", "the shop's stock and offers";
    /// Every joint that is tacked was measured, by readings that agree and leave it loose in no direction.
    JointsMeasured = "fit.joints-measured", Fit, Rework, "every tacked joint is measured where it is",
        "each reading against all the others";
    /// While tacking, check distances hold every joint near enough to its place for every gap beside it (errors added up
    /// as JCGM 100:2008, section 5).
    TapesKeepGaps = "fit.tapes-keep-gaps", Fit, Rework, "check distances keep every gap while tacking",
        "what every step may be off, added up";
    /// A torch gets round each weld that is made on the car.
    TorchRoom = "fit.torch-room", Fit, Rework, "a torch gets round each weld that is made on the car",
        "the torch alone, at rest; common practice, no source";
    /// Catalysts that the car has stay in it.
    CatalystKept = "route.catalyst-kept", Route, Law, "every run keeps its catalyst",
        "unlawful to remove on most road cars; local law decides";
    /// What the person wished of the runs is acted on.
    WishKept = "route.wish-kept", Route, Rework, "every wish is kept", "as you wished";
    /// No tip blows at or under what people sit in, breathe at or fill fuel at.
    TipPlace = "route.tip-place", Prove, Injury, "the tip is clear of cabin, doors and filler",
        "common practice, no source; local codes say more";
    /// A sensor before each catalyst has its place and its room.
    SensorPlace = "route.sensor-place", Route, Rework, "the sensor before a catalyst has room",
        "common practice, no source";
    /// A flexible section takes up the engine's rock.
    FlexFirst = "route.flex-first", Route, Damage, "a flex section follows the outlet",
        "common practice, no source";
    /// Thermal growth is taken up.
    ThermalGrowth = "prove.growth", Prove, Damage, "thermal growth is taken up", "EN 10088-1";
    /// Heat on neighbours.
    HeatOnNeighbours = "prove.heat", Prove, Injury, "heat on neighbours", "not computed yet";
    /// Back pressure.
    BackPressure = "choose.back-pressure", Choose, Damage, "back pressure", "not computed yet";
    /// Sound at the standard measuring point.
    SoundLevel = "prove.sound", Prove, Law, "sound level", "not computed yet; local law decides";
    /// The exhaust hangs: each rubber within its load, nothing sinks far (force method; Przemieniecki 1968).
    Hangers = "prove.hangers", Prove, Damage, "the exhaust hangs within its rubbers' load",
        "loads of a springy run on its rubbers; limits are common practice, no source";
    /// A hanger stands on both sides of each silencer's middle.
    HangerSides = "prove.hanger-sides", Prove, Damage, "each silencer hangs from both sides of its middle",
        "common practice, no source";
    /// What the hung exhaust swings and bends at keeps away from what the engine shakes at (Bathe 1996).
    Resonance = "prove.resonance", Prove, Damage, "the hung exhaust does not drone with the engine",
        "an estimate";
    /// Each section of the exhaust can be taken out again.
    Removal = "prove.removal", Prove, Rework, "each section can be taken out",
        "one straight pull or two, at rest";
    /// What must come out past the exhaust can do so.
    Neighbours = "prove.neighbours", Prove, Rework, "neighbours can be taken out past it",
        "not computed yet";
    /// The steering shaft.
    SteeringShaft = "steering.shaft", SteeringShaft, Injury, "steering shaft",
        "not computed yet; have it judged by a licensed practitioner";
    /// Lines.
    Lines = "lines.all", Lines, Injury, "pressure, return and coolant lines", "not computed yet";
    /// Coolant circuit.
    Coolant = "coolant.circuit", Coolant, Damage, "header tank and coolant circuit",
        "not computed yet";
}
