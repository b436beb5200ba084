//! What the search gives back: pieces, cost by term, the tightest place, and the outcome.

use tubewright_geometry::{Frame, Point, UnitVector};

use crate::problem::PartPose;

/// One piece of a run, in order of travel.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Piece {
    /// Straight tube.
    Straight {
        /// Length in mm.
        length_mm: f64,
    },
    /// A bend of the tube's centre-line radius.
    Bend {
        /// Angle in radians.
        angle_rad: f64,
        /// Clock angle in radians relative to the plane of the bend before (for the first: to the
        /// start's twelve o'clock), clockwise looking downstream.
        clock_rad: f64,
    },
    /// A component.
    Component {
        /// Number in the problem.
        component: usize,
        /// Roll in radians from lying flat, clockwise looking downstream.
        roll_rad: f64,
    },
    /// The run's crossover, from its inlet to its outlet.
    Crossover {
        /// Number in the problem.
        crossover: usize,
    },
}

/// A term of the cost.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Term {
    /// Stock bends bought.
    Bends,
    /// Bends cut to angle.
    Cuts,
    /// Straight tube bought.
    Straights,
    /// Welds.
    Welds,
    /// Loss of flow by turning (proxy).
    FlowTurn,
    /// Loss of flow by length (proxy).
    FlowLength,
    /// Ground clearance given away.
    Ground,
    /// Loss of flow at outlets that are sawn off as mitres (proxy).
    FlowMitre,
}

/// Where a route is nearest to something.
#[derive(Clone, Debug, PartialEq)]
pub struct Tightest {
    /// The body (or `"workspace"`, or another run).
    pub body: String,
    /// The run.
    pub run: String,
    /// Gap in mm from the tube's outside to it.
    pub gap_mm: f64,
    /// Gap that is required, mm.
    pub required_mm: f64,
    /// Place on the centre line.
    pub place: Point,
}

/// Where a run starts and arrives, chosen in the room that there was.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct RunEnds {
    /// Its start, with twelve o'clock that the first bend's clock counts from.
    pub start: Frame,
    /// Where it arrives.
    pub end: Point,
    /// In which direction.
    pub end_direction: UnitVector,
}

/// A route that holds: every hard rule is kept.
#[derive(Clone, Debug, PartialEq)]
pub struct Route {
    /// What it does, its identity from solve to solve ("left of the gearbox, over the axle").
    pub name: String,
    /// Pieces of each run, in the order of the problem's runs.
    pub runs: Vec<Vec<Piece>>,
    /// Where each crossover lies, and how.
    pub crossovers: Vec<PartPose>,
    /// Where each run starts and arrives.
    pub ends: Vec<RunEnds>,
    /// Cost under the model that it was searched with.
    pub cost: f64,
    /// The same, term by term; terms that are zero are left out.
    pub terms: Vec<(Term, f64)>,
    /// No route of this problem costs less than this under that model.
    pub lower_bound: f64,
    /// The place with the least room over what is required.
    pub tightest: Option<Tightest>,
}

impl Route {
    /// `(cost - lower bound) / cost`: how much of the cost might be saved at the very most.
    #[must_use]
    pub fn gap(&self) -> f64 {
        if self.cost > 0.0 {
            ((self.cost - self.lower_bound) / self.cost).max(0.0)
        } else {
            0.0
        }
    }
}

/// Why nothing can fit: the first of these whose removal alone would let something fit.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Reason {
    /// Without the components there is a route.
    ComponentDoesNotFit,
    /// With no ground clearance asked there is a route.
    GroundClearance,
    /// With the end moved away along its own direction there is a route.
    TooLittleRoom,
    /// With a tighter centre-line radius there is a route.
    RadiusTooLarge,
    /// None of these helps.
    Blocked,
}

/// How it was proven that nothing fits.
#[derive(Clone, Debug, PartialEq)]
#[non_exhaustive]
pub enum Proof {
    /// No passage for a ball of the tube's radius between the two places.
    NoPassage {
        /// Run.
        run: String,
        /// Cell size in mm of the finest cells that the flood needed.
        cell_mm: f64,
    },
    /// A start or end (with the tube's ball on it) is itself too near to a body.
    EndBlocked {
        /// Run.
        run: String,
        /// Body.
        body: String,
        /// Gap there, mm.
        gap_mm: f64,
        /// Gap required, mm.
        required_mm: f64,
    },
    /// Between start and end there is too little advance for the offset at this radius, in a channel
    /// too narrow to turn round in.
    TooLittleAdvance {
        /// Run.
        run: String,
        /// Advance there is, mm.
        advance_mm: f64,
        /// Least advance needed, mm.
        needed_mm: f64,
    },
    /// A component has no place in its zone or in the room that a passage leaves.
    ComponentHasNoPlace {
        /// Component.
        component: String,
        /// What was compared.
        detail: String,
    },
    /// Every direction of leaving an end at this radius meets a body.
    NoWayOut {
        /// Run.
        run: String,
        /// How much of the way could be covered, mm.
        reach_mm: f64,
    },
}

/// What the search found.
#[derive(Clone, Debug, PartialEq)]
#[non_exhaustive]
pub enum Outcome {
    /// Routes that hold, cheapest first, each different in what matters.
    Solved {
        /// At least one.
        alternatives: Vec<Route>,
        /// Effort spent.
        work_units: u64,
    },
    /// None found in this effort; there may be one.
    NotFoundInEffort {
        /// Effort spent.
        work_units: u64,
    },
    /// None exists.
    Infeasible {
        /// First relaxation that helps.
        reason: Reason,
        /// How it is known.
        proof: Proof,
    },
}

/// Progress of a search, given to the caller's callback.
#[derive(Clone, Debug)]
pub struct Progress {
    /// Effort spent so far, in work units.
    pub work_units: u64,
    /// Effort allowed.
    pub budget_units: u64,
    /// Cost of the best route so far.
    pub best_cost: Option<f64>,
    /// Best route so far when it is new since the last report.
    pub improved: Option<Route>,
    /// Lower bound known so far.
    pub lower_bound: f64,
}

/// How much effort to spend, in work units (one unit is one step of local improvement or one closed
/// trial; about 0.1 ms on a present machine), and the seed of the random starts.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Budget {
    /// Work units.
    pub work_units: u64,
    /// Seed.
    pub seed: u64,
}
