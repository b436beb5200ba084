//! Where each run behind its flex section hangs, on what of the car, and what each rubber carries.
//!
//! A hanger is a rod welded or clamped to the run, a rubber, and a bracket on a body of the class structure or
//! floor. Its places are common practice, no source: none before the flex section, none within 30 mm of a
//! weld, on a straight or a can before a bend, the rod short and as near to upright as there is room.
//! How many and which are then chosen so that each rubber carries no more than its load and nothing sinks far:
//! [`tubewright_chassis::hang`].

mod frame;
mod search;

pub use search::HangerPlace;
pub(crate) use search::outside;

use tubewright_build::model::Model;
use tubewright_chassis::{HangLimits, Rubber};
use tubewright_check::{Finding, Measured, Rule, State, Unit};
use tubewright_stock::StockPlan;

use crate::checks::moving_runs;
use crate::routes::PlannedRun;
use crate::sensors::Sensor;
use crate::stages::Surroundings;

/// The rubber that is reckoned with: 8 N/mm upright, a third of it sideways (common practice, no source).
pub const RUBBER: Rubber = Rubber {
    upright_n_per_mm: 8.0,
    sideways_n_per_mm: 2.7,
};

/// What hangers keep to: at most 60 N on a rubber at rest and at least 3 N, nothing sinks more than 10 mm,
/// no two nearer than 200 mm (common practice, no source).
pub const LIMITS: HangLimits = HangLimits {
    most_load_n: 60.0,
    least_load_n: 3.0,
    most_sag_mm: 10.0,
    apart_mm: 200.0,
    least_rubbers: 2,
    most_rubbers: 4,
};

/// From the tube to what it hangs on, at least, for rod, rubber and bracket, and at most, mm (common practice,
/// no source).
pub const REACH_MM: [f64; 2] = [60.0, 250.0];

/// Half the width of rod, rubber and bracket, mm (common practice, no source).
pub const HALF_WIDTH_MM: f64 = 15.0;

/// Gap that they keep in every position, mm (common practice, no source).
pub const GAP_MM: f64 = 5.0;

/// From the middle of a hanger's foot to the next weld, at least, mm (common practice, no source).
pub const FROM_WELD_MM: f64 = 30.0;

/// From a silencer's end to a hanger on the tube that still holds it there, at most, mm: a hand and a half (common
/// practice, no source).
pub const BESIDE_CAN_MM: f64 = 150.0;

/// Natural frequencies that are told, Hz: engines of three to twelve cylinders beat somewhere there at idle.
/// What swings on soft rubbers lies below.
pub const TOLD_HZ: [f64; 2] = [12.0, 80.0];

/// Runs that hang together: one, or those that share a crossover.
#[derive(Clone, Debug, PartialEq)]
pub struct HungRuns {
    /// Their names.
    pub runs: Vec<String>,
    /// How they hang, or why that cannot be said.
    pub found: Result<Hanging, NoHanging>,
}

/// How runs hang.
#[derive(Clone, Debug, PartialEq)]
pub struct Hanging {
    /// The hangers in the order of the runs, upstream first.
    pub hangers: Vec<Hanger>,
    /// Mass behind the flex sections, kg.
    pub mass_kg: f64,
    /// How far the place that sinks most does, mm.
    pub sag_mm: f64,
    /// Natural frequencies in [`TOLD_HZ`], ascending.
    pub frequencies_hz: Vec<f64>,
    /// Every rubber is within its load and nothing sinks too far.
    pub is_within: bool,
    /// The silencers, each with the sides of its middle on which it is held.
    pub cans: Vec<HeldCan>,
}

/// A silencer, and whether a hanger stands on both sides of its middle.
#[derive(Clone, Debug, PartialEq)]
pub struct HeldCan {
    /// Mark of the piece.
    pub piece: String,
    /// Name of the component.
    pub name: String,
    /// Marks of the hangers on its first third or just ahead of it.
    pub ahead: Vec<String>,
    /// Marks of those on its last third or just behind it.
    pub behind: Vec<String>,
}

impl HeldCan {
    /// Whether it has one on both sides.
    #[must_use]
    pub fn is_held(&self) -> bool {
        !self.ahead.is_empty() && !self.behind.is_empty()
    }
}

/// One hanger.
#[derive(Clone, Debug, PartialEq)]
pub struct Hanger {
    /// Its mark, `H1`: counted along the runs.
    pub mark: String,
    /// The run.
    pub run: String,
    /// Where it is.
    pub place: HangerPlace,
    /// What its rubber carries at rest, N: an estimate.
    pub load_n: f64,
}

impl Hanging {
    /// The most that one rubber carries, N.
    #[must_use]
    pub fn most_load_n(&self) -> f64 {
        self.hangers
            .iter()
            .map(|hanger| hanger.load_n)
            .fold(0.0, f64::max)
    }
}

/// Why hangers cannot be placed.
#[derive(Clone, Debug, PartialEq)]
#[non_exhaustive]
pub enum NoHanging {
    /// This run has no flex section: all of it rides on the engine.
    NoFlex(String),
    /// Nothing lies behind its flex section.
    NothingBehind(String),
    /// The items of these components say no mass.
    NoMass(Vec<String>),
    /// Fewer than two places have structure or floor within reach and room for a rod, or no two of those that have are
    /// far enough apart.
    NothingAbove {
        /// How many places have.
        places: usize,
    },
    /// The frame cannot be worked out.
    Frame(tubewright_chassis::BeamError),
}

impl NoHanging {
    /// In words, with what to do; lengths in mm.
    #[must_use]
    pub fn words(&self) -> String {
        match self {
            Self::NoFlex(run) => format!(
                "{run} has no flex section, so all of it rides on the engine: hang it from engine and gearbox, or put a flex section behind the outlet"
            ),
            Self::NothingBehind(run) => {
                format!("{run} ends at its flex section: there is nothing to hang")
            }
            Self::NoMass(names) => format!(
                "the mass of {} is not known: weigh it and write it down at its item (`mass` in stock.toml)",
                names.join(" and of ")
            ),
            Self::NothingAbove { places } => {
                let [has, but] = match places {
                    0 => ["no place has", ""],
                    1 => ["only one place has", ""],
                    _ => [
                        "places that have",
                        " are all in one spot, nearer to each other than hangers go",
                    ],
                };
                format!(
                    "{has} a body of the class structure or floor within {:.0} mm above the run with room for a rod{but}: measure what the brackets can be bolted to there, or plan a crossmember",
                    REACH_MM[1],
                )
            }
            Self::Frame(error) => format!("its weight cannot be worked out: {error}"),
        }
    }
}

/// How all runs hang, clear of the places of `sensors`. With a cutting plan the seams are known; without one
/// there is one at every joint.
#[must_use]
pub fn hangers(
    model: &Model,
    around: &Surroundings,
    runs: &[PlannedRun],
    plan: Option<&StockPlan>,
    sensors: &[Sensor],
) -> Vec<HungRuns> {
    let moving = moving_runs(model, around, runs);
    let feet: Vec<_> = sensors
        .iter()
        .filter_map(|sensor| Some(sensor.found.as_ref().ok()?.foot))
        .collect();
    let mut count = 0;
    frame::together(&moving)
        .into_iter()
        .map(|group| {
            let names = group
                .iter()
                .filter_map(|number| moving.get(*number))
                .map(|run| run.run.name.clone())
                .collect();
            let mut found = search::hanging(model, around, &moving, &group, plan, &feet);
            if let Ok(found) = &mut found {
                for hanger in &mut found.hangers {
                    count += 1;
                    hanger.mark = format!("H{count}");
                }
                found.cans = search::held_cans(model, &moving, &group, &found.hangers);
            }
            HungRuns { runs: names, found }
        })
        .collect()
}

/// What is found of runs that hang together: that they hang, that each silencer is held on both sides of its middle,
/// and what they might drone at.
pub(crate) fn findings(hung: &[HungRuns]) -> Vec<Finding> {
    hung.iter()
        .flat_map(|group| of_group(group).into_iter().chain(both_sides(group)))
        .collect()
}

/// One finding for each silencer: a can that hangs from one side of its middle tips about it.
fn both_sides(hung: &HungRuns) -> Vec<Finding> {
    let found = match &hung.found {
        Ok(found) => found,
        Err(why) => {
            let names = hung.runs.join(" and ");
            let stated = Finding::stated(Rule::HangerSides, State::NotChecked, names, why.words());
            return vec![stated];
        }
    };
    if found.cans.is_empty() {
        let names = hung.runs.join(" and ");
        let none = "it has no silencer behind its flex section";
        return vec![Finding::stated(
            Rule::HangerSides,
            State::DoesNotApply,
            names,
            none,
        )];
    }
    let of_can = |can: &HeldCan| {
        let subject = format!("{} ({})", can.piece, can.name);
        if can.is_held() {
            let told = format!(
                "{} ahead of its middle, {} behind it",
                can.ahead.join(", "),
                can.behind.join(", ")
            );
            return Finding::stated(Rule::HangerSides, State::Pass, subject, told);
        }
        let else_hangs = if can.ahead.is_empty() && can.behind.is_empty() {
            "its weight would hang on its welds"
        } else {
            "it would tip about the one that it has and work at its welds"
        };
        let open = match (can.ahead.is_empty(), can.behind.is_empty()) {
            (true, true) => "ahead of its middle nor behind it",
            (true, false) => "ahead of its middle",
            _ => "behind its middle",
        };
        // What was not measured may hold a bracket there.
        let told = format!(
            "no structure or floor that was measured holds a hanger {open}, on its outer third or within {:.0} mm of its \
             neck: {else_hangs}. Measure what is above it there, or plan \
             a crossmember",
            BESIDE_CAN_MM
        );
        Finding::stated(Rule::HangerSides, State::NotChecked, subject, told)
    };
    found.cans.iter().map(of_can).collect()
}

fn of_group(hung: &HungRuns) -> [Finding; 2] {
    let names = hung.runs.join(" and ");
    match &hung.found {
        Err(why) => [Rule::Hangers, Rule::Resonance]
            .map(|rule| Finding::stated(rule, State::NotChecked, &names, why.words())),
        Ok(found) => {
            let measured = Measured {
                value: found.sag_mm,
                plus_minus: None,
                unit: Unit::Millimetre,
            };
            let marks: Vec<&str> = found
                .hangers
                .iter()
                .map(|hanger| hanger.mark.as_str())
                .collect();
            let subject = format!("{names} on {}, how far it sinks", marks.join(", "));
            let mut hangs =
                Finding::measured_at_most(Rule::Hangers, subject, measured, LIMITS.most_sag_mm);
            let load = format!(
                "the most on one rubber is {:.0} N of {:.0} N, an estimate for {:.1} kg",
                found.most_load_n(),
                LIMITS.most_load_n,
                found.mass_kg
            );
            if found.is_within {
                hangs = hangs.advising(load);
            } else {
                // What was not measured may hold a bracket too: that none was found proves nothing.
                hangs.state = State::NotChecked;
                hangs = hangs.advising(format!(
                    "{load}: no set of hangers on the structure and floor that were measured within reach carries it; measure more of them above the run, or hang it from a crossmember"
                ));
            }
            [
                hangs,
                Finding::stated(
                    Rule::Resonance,
                    State::NotChecked,
                    names,
                    resonance_words(found),
                ),
            ]
        }
    }
}

/// What hung tube bends at, for an ear and a rev counter.
fn resonance_words(found: &Hanging) -> String {
    let tones: Vec<String> = found
        .frequencies_hz
        .iter()
        .map(|hz| format!("{hz:.0}"))
        .collect();
    let [from, to] = TOLD_HZ;
    let words = if tones.is_empty() {
        format!("hung so, it has no bending between {from:.0} and {to:.0} Hz")
    } else {
        format!("hung so, it bends at about {} Hz", tones.join(", "))
    };
    format!(
        "{words} (an estimate). What the engine idles at is not told: a four-stroke beats at cylinders x rev/min / 120, which should stay a third away from each"
    )
}
