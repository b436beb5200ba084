//! What is to be routed: bodies with their gaps, tubes and their stock bends, components,
//! crossovers and runs. Independent of any file form.

use tubewright_geometry::{Frame, Point, Solid, UnitVector, math};

pub use crate::part::{Bar, Crossover, PartPose, Passage, Ports, Side, Turn, TurnRoom};

/// A body that runs must keep clear of. Where it moves, `solid` is already the swept space or
/// `gap_mm` already holds the motion.
#[derive(Clone, Debug)]
pub struct Body {
    /// Name, as shown to the person.
    pub id: String,
    /// The space it takes.
    pub solid: Solid,
    /// Required gap in mm from the outside of a tube to the body, ≥ 0.
    pub gap_mm: f64,
    /// Whether it is the ground (its gap is the ground clearance).
    pub kind: BodyKind,
}

/// What a body is to the search for reasons why nothing fits.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum BodyKind {
    /// Part of the car.
    Car,
    /// The ground.
    Ground,
}

/// The box that runs and bodies of crossovers must stay inside.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Region {
    /// Least coordinates in mm.
    pub min: Point,
    /// Greatest coordinates in mm.
    pub max: Point,
}

impl Region {
    /// The box with these opposite corners.
    #[must_use]
    pub const fn between(a: Point, b: Point) -> Self {
        Self {
            min: Point::new(a.x.min(b.x), a.y.min(b.y), a.z.min(b.z)),
            max: Point::new(a.x.max(b.x), a.y.max(b.y), a.z.max(b.z)),
        }
    }

    /// The box that reaches so far from its middle along each axis, either way.
    #[must_use]
    pub const fn round(middle: Point, reach_mm: f64) -> Self {
        Self::between(
            Point::new(
                middle.x - reach_mm,
                middle.y - reach_mm,
                middle.z - reach_mm,
            ),
            Point::new(
                middle.x + reach_mm,
                middle.y + reach_mm,
                middle.z + reach_mm,
            ),
        )
    }

    /// How far a place lies outside of it, mm; nought inside.
    #[must_use]
    pub fn away_mm(&self, place: Point) -> f64 {
        let (low, high) = (self.min.to_array(), self.max.to_array());
        let mut squared = 0.0;
        for ((low, high), at) in low.iter().zip(&high).zip(place.to_array()) {
            let off = (low - at).max(at - high).max(0.0);
            squared += off * off;
        }
        squared.sqrt()
    }
}

/// A stock bend of a tube.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct StockBend {
    /// Angle in radians, > 0, at most π/2.
    pub angle_rad: f64,
    /// Price of one, in the person's money.
    pub price: f64,
    /// Straight leg before the bend in mm, 0 when there is none.
    pub leg_in_mm: f64,
    /// Straight leg after the bend in mm, 0 when there is none.
    pub leg_out_mm: f64,
}

/// A tube size with what is sold of it.
#[derive(Clone, Debug, PartialEq)]
pub struct Tube {
    /// Name.
    pub id: String,
    /// Outer diameter in mm.
    pub od_mm: f64,
    /// Wall in mm.
    pub wall_mm: f64,
    /// Centre-line radius of every bend in mm.
    pub clr_mm: f64,
    /// Stock bends by rising angle.
    pub stock: Vec<StockBend>,
    /// Price of a metre of straight tube.
    pub straight_price_per_m: f64,
}

/// What can be made, and how near runs may come to themselves and each other.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Rules {
    /// Shortest straight that is bought and welded in, mm.
    pub min_straight_mm: f64,
    /// Smallest bend, radians.
    pub min_bend_rad: f64,
    /// Most bends in one run.
    pub max_bends: usize,
    /// Gap in mm of a run to itself, further apart along it than half a turn.
    pub self_gap_mm: f64,
    /// Gap in mm between runs.
    pub run_gap_mm: f64,
    /// How far a bend may be from its stock angle and still count as uncut, radians.
    pub uncut_tolerance_rad: f64,
    /// Length from a run's start within which the bodies that carry the start are not looked at, mm.
    pub stub_mm: f64,
    /// Part of every body's gap that is there for rounding to the shop's steps and may be used up by
    /// it, mm, ≥ 0.
    pub rounding_room_mm: f64,
    /// How far an answer may be off at its end, mm. The search closes exactly; the lower bound holds
    /// for answers that make use of it too.
    pub end_place_mm: f64,
    /// How far the direction of arrival may be off, radians; as for the place.
    pub end_turn_rad: f64,
}

/// Cross-section of a component's body.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Section {
    /// Round.
    Round {
        /// Diameter in mm.
        diameter_mm: f64,
    },
    /// Oval, lying flat at roll 0.
    Oval {
        /// Longer size in mm.
        width_mm: f64,
        /// Shorter size in mm.
        height_mm: f64,
    },
}

/// Where along its run a component may be.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Placement {
    /// Anywhere in the required order.
    Anywhere,
    /// Welded or bolted straight to the start (a flex section after the outlet).
    AtStart,
}

/// A straight-through component.
#[derive(Clone, Debug, PartialEq)]
pub struct Component {
    /// Name.
    pub id: String,
    /// Length in mm along its axis.
    pub length_mm: f64,
    /// Body.
    pub section: Section,
    /// Box that both ends of its axis must be in.
    pub zone: Option<Region>,
    /// Where along the run.
    pub placement: Placement,
}

/// How far the end of a run may lie from where it is wished.
#[derive(Clone, Debug, PartialEq)]
pub struct EndRoom {
    /// Box that the end may lie in, with the wished place in it.
    pub within: Region,
    /// How far the direction of arrival may be turned to either side, radians, 0 to less than a quarter
    /// turn.
    pub turn_aside_rad: f64,
    /// How far it may be turned up or down, radians, as the other.
    pub turn_up_rad: f64,
    /// Upright columns that the end may not lie in, whatever its height.
    pub columns: Vec<Region>,
}

impl EndRoom {
    /// Place and direction allowed at an end wished at a place with a direction that are nearest to where
    /// something arrives.
    #[must_use]
    pub fn nearest(
        &self,
        wished: (Point, UnitVector),
        arrival: (Point, UnitVector),
    ) -> (Point, UnitVector) {
        let slide = crate::solve::Slide::of_end(wished, self);
        (
            slide.nearest_place(arrival.0),
            slide.nearest_arrival(wished.1, arrival.1.vector()),
        )
    }

    /// Middle of the box and how far its corners are from there, mm.
    pub(crate) fn ball(&self) -> (Point, f64) {
        let reach = 0.5 * self.within.min.distance(self.within.max);
        (self.within.min.lerp(self.within.max, 0.5), reach)
    }

    /// How far the direction of arrival may be off at most, radians.
    pub(crate) fn most_turn_rad(&self) -> f64 {
        let [a, b] = [self.turn_aside_rad, self.turn_up_rad].map(math::sin);
        math::asin((a * a + b * b).sqrt().min(1.0))
    }
}

/// An outlet that is sawn off before its start, and what is welded to it there.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct StartRoom {
    /// It is sawn at least so far back along its own line, mm, ≥ 0: what its flange takes.
    pub least_mm: f64,
    /// It may be sawn up to so far back, mm, at least the least.
    pub back_mm: f64,
    /// What is welded on may lead away at up to this angle in each of two planes, radians: saw cut and
    /// tube share it as a mitre.
    pub turn_rad: f64,
}

/// What of a run must lie in a room.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Pinned {
    /// Some place of its centre line: it passes through.
    CentreLine,
    /// One of its joints: an end of a piece.
    Joint,
}

/// A room that a run must pass through, or have a joint in.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Pin {
    /// The room.
    pub room: Region,
    /// What must lie in it.
    pub what: Pinned,
}

/// One run to be routed.
#[derive(Clone, Debug)]
pub struct Run {
    /// Name.
    pub id: String,
    /// Number of its tube in the problem.
    pub tube: usize,
    /// Start: travel points into the run.
    pub start: Frame,
    /// Place of the end.
    pub end: Point,
    /// Direction of travel on arrival.
    pub end_direction: UnitVector,
    /// Room that the end may lie in; `None` holds it where it is.
    pub end_room: Option<EndRoom>,
    /// Room that the start may lie in; `None` holds it where it is.
    pub start_room: Option<StartRoom>,
    /// Most bends of this run; `None` is [`Rules::max_bends`], which always holds.
    pub most_bends: Option<usize>,
    /// Numbers of its components in the required order.
    pub components: Vec<usize>,
    /// The crossover it passes.
    pub passage: Option<Passage>,
    /// How many of its components lie before the crossover; `None` leaves it to the search.
    pub components_before_passage: Option<usize>,
    /// The outlet that it starts from, of a part that another run leads to; its `start` is then a guess.
    pub starts_at: Option<Passage>,
    /// The inlet that it ends at, of a part that another run leads on from; its `end` is then a guess.
    pub ends_at: Option<Passage>,
    /// Rooms that it must pass through or have a joint in.
    pub pins: Vec<Pin>,
    /// Numbers of the bodies that carry its start: their gap does not bind the first
    /// [`Rules::stub_mm`] of the run, because the flange itself stands on them.
    pub own_bodies: Vec<usize>,
}

/// A whole problem.
#[derive(Clone, Debug)]
pub struct RouteProblem {
    /// Name.
    pub id: String,
    /// Bodies in the way.
    pub bodies: Vec<Body>,
    /// Where everything must stay; `None` without limit.
    pub workspace: Option<Region>,
    /// Tubes.
    pub tubes: Vec<Tube>,
    /// Rules.
    pub rules: Rules,
    /// Components.
    pub components: Vec<Component>,
    /// Crossovers.
    pub crossovers: Vec<Crossover>,
    /// Runs.
    pub runs: Vec<Run>,
}

/// Why a problem cannot be searched.
#[derive(Debug, Clone, PartialEq, thiserror::Error)]
#[non_exhaustive]
pub enum ProblemError {
    /// A number that is named is not in the list.
    #[error("run {run}: {what} number {index} is not in the problem; give one that is listed")]
    Unlisted {
        /// Run.
        run: String,
        /// What is named.
        what: &'static str,
        /// The number.
        index: usize,
    },
    /// A tube without stock bends, or with sizes that are not positive.
    #[error(
        "tube {tube}: {what}; every tube needs a positive diameter, a centre-line radius of at least half of it and stock bends of rising angle up to 90 degrees"
    )]
    UnsoundTube {
        /// Tube.
        tube: String,
        /// What is wrong.
        what: &'static str,
    },
    /// A size that is not a finite number or not positive.
    #[error("{what} of {id} is {value}; it must be a finite number above zero")]
    UnsoundSize {
        /// Of what.
        id: String,
        /// Which size.
        what: &'static str,
        /// The value.
        value: f64,
    },
    /// No run.
    #[error("there is no run to route; name at least one")]
    NoRun,
}

impl Run {
    /// Whether it has a port at a crossover: passes it, starts from it or ends at it.
    #[must_use]
    pub fn meets(&self, crossover: usize) -> bool {
        let met = [self.passage, self.starts_at, self.ends_at];
        met.into_iter()
            .flatten()
            .any(|passage| passage.crossover == crossover)
    }

    /// Whether any of its ends or ports slides with a crossover.
    #[must_use]
    pub const fn meets_any(&self) -> bool {
        self.passage.is_some() || self.starts_at.is_some() || self.ends_at.is_some()
    }
}

impl RouteProblem {
    /// Most bends that a run may have.
    #[must_use]
    pub fn most_bends(&self, run: usize) -> usize {
        let own = self.runs.get(run).and_then(|run| run.most_bends);
        own.unwrap_or(usize::MAX).min(self.rules.max_bends)
    }

    /// Whether no run starts from a crossover or ends at it.
    #[must_use]
    pub fn is_only_passed(&self, crossover: usize) -> bool {
        let mut met = self
            .runs
            .iter()
            .flat_map(|run| [run.starts_at, run.ends_at]);
        !met.any(|passage| passage.is_some_and(|passage| passage.crossover == crossover))
    }

    /// The same problem with every start held, and every end wished, where a route of it has them.
    #[must_use]
    pub fn held_at(&self, route: &crate::route::Route) -> Self {
        let mut held = self.clone();
        for (run, ends) in held.runs.iter_mut().zip(&route.ends) {
            run.start = ends.start;
            run.end = ends.end;
            run.end_direction = ends.end_direction;
            run.start_room = None;
        }
        held
    }

    /// Checks once, at the door, what the search takes for granted.
    ///
    /// # Errors
    /// [`ProblemError`] with the first thing that is wrong.
    pub fn checked(&self) -> Result<(), ProblemError> {
        if self.runs.is_empty() {
            return Err(ProblemError::NoRun);
        }
        for tube in &self.tubes {
            let unsound = |what| {
                Err(ProblemError::UnsoundTube {
                    tube: tube.id.clone(),
                    what,
                })
            };
            let sizes = tube.od_mm > 0.0 && tube.clr_mm >= tube.od_mm / 2.0;
            if !(sizes && tube.clr_mm.is_finite()) {
                return unsound("its diameter or radius is not usable");
            }
            if tube.stock.is_empty() {
                return unsound("no stock bend");
            }
            if !tube
                .stock
                .windows(2)
                .all(|w| matches!(w, [a, b] if a.angle_rad < b.angle_rad))
            {
                return unsound("stock bends are not in rising order");
            }
            let most = core::f64::consts::FRAC_PI_2 + 1e-9;
            if !tube
                .stock
                .iter()
                .all(|s| s.angle_rad > 0.0 && s.angle_rad <= most && s.price.is_finite())
            {
                return unsound("a stock bend's angle or price is not usable");
            }
        }
        for run in &self.runs {
            let unlisted = |what, index| ProblemError::Unlisted {
                run: run.id.clone(),
                what,
                index,
            };
            if run.tube >= self.tubes.len() {
                return Err(unlisted("tube", run.tube));
            }
            if let Some(&c) = run.components.iter().find(|&&c| c >= self.components.len()) {
                return Err(unlisted("component", c));
            }
            let met = [run.passage, run.starts_at, run.ends_at];
            let mut met = met.into_iter().flatten();
            if let Some(p) = met.find(|p| p.crossover >= self.crossovers.len()) {
                return Err(unlisted("crossover", p.crossover));
            }
            let square = core::f64::consts::FRAC_PI_2;
            let is_turn = |turn: f64| (0.0..square).contains(&turn);
            if let Some(room) = run.start_room {
                let is_sound = (0.0..=room.back_mm).contains(&room.least_mm)
                    && room.back_mm.is_finite()
                    && is_turn(room.turn_rad);
                if !is_sound {
                    return Err(ProblemError::UnsoundSize {
                        id: run.id.clone(),
                        what: "the length or turn that its outlet may be sawn off by",
                        value: room.back_mm,
                    });
                }
            }
            if let Some(room) = &run.end_room {
                let size = (room.within.max - room.within.min).to_array();
                let least = size.into_iter().fold(f64::INFINITY, f64::min);
                let turns = [room.turn_aside_rad, room.turn_up_rad];
                if least < 0.0 || least.is_nan() || !turns.into_iter().all(is_turn) {
                    return Err(ProblemError::UnsoundSize {
                        id: run.id.clone(),
                        what: "the least size or the turn of the room of its end",
                        value: least,
                    });
                }
            }
            if !(run.start.origin.is_finite() && run.end.is_finite()) {
                return Err(ProblemError::UnsoundSize {
                    id: run.id.clone(),
                    what: "a coordinate of an end",
                    value: f64::NAN,
                });
            }
        }
        for part in &self.crossovers {
            let (least, most) = (part.turns.least.to_array(), part.turns.most.to_array());
            let square = core::f64::consts::FRAC_PI_2;
            let limits = [square, square, core::f64::consts::PI];
            for ((least, most), limit) in least.into_iter().zip(most).zip(limits) {
                if !(-limit < least && least <= most && most < limit) {
                    return Err(ProblemError::UnsoundSize {
                        id: part.id.clone(),
                        what: "an angle that it may be turned by",
                        value: most,
                    });
                }
            }
        }
        for component in &self.components {
            let sizes = match component.section {
                Section::Round { diameter_mm } => [component.length_mm, diameter_mm, diameter_mm],
                Section::Oval {
                    width_mm,
                    height_mm,
                } => [component.length_mm, width_mm, height_mm],
            };
            for (value, what) in sizes.into_iter().zip(["length", "width", "height"]) {
                if !(value > 0.0 && value.is_finite()) {
                    return Err(ProblemError::UnsoundSize {
                        id: component.id.clone(),
                        what,
                        value,
                    });
                }
            }
        }
        Ok(())
    }
}
