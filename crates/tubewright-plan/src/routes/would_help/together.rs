//! Changes that let something fit only together: found by leaving out of all changes at once, part by part, what is not
//! needed, so that every answer was solved with just the changes that it names.

use tubewright_geometry::Solid;
use tubewright_route::RouteProblem;

use super::{AWAY, Change, TIGHT_IN_DIAMETERS, Trial, least_gap_mm};

/// Most trials for each set of changes that is looked for.
const MOST_TRIALS: usize = 40;
/// Most changes that are told as one.
const MOST_TOGETHER: usize = 3;
/// Sets that are looked for, each without a change of the one before.
const SETS: usize = 2;

/// One change, in the order in which one would rather not be asked for it: bodies moved, then what is made otherwise.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum Part {
    Body(usize),
    Component(usize),
    TightBends,
    Pins(usize),
}

/// Sets of two or three changes with which there is a way, where none does alone.
pub(super) fn together(trial: &Trial<'_>) -> Vec<Change> {
    let problem = &trial.posed.problem;
    let mut all: Vec<Part> = (0..problem.bodies.len()).map(Part::Body).collect();
    all.extend((0..problem.components.len()).map(Part::Component));
    if trial.has_wide_bends() {
        all.push(Part::TightBends);
    }
    let has_pins = |run: &usize| {
        problem
            .runs
            .get(*run)
            .is_some_and(|run| !run.pins.is_empty())
    };
    all.extend((0..problem.runs.len()).filter(has_pins).map(Part::Pins));
    let mut found = Vec::new();
    for _ in 0..SETS {
        let Some(needed) = needed_of(trial, &all) else {
            break;
        };
        if (2..=MOST_TOGETHER).contains(&needed.len()) {
            found.push(told(trial, &needed));
        }
        // The next set has to do without one of these.
        let Some(first) = needed.first() else {
            break;
        };
        all.retain(|part| part != first);
    }
    found
}

/// A part of these changes that does and of which none can be left out; `None` where all together do not, or where
/// it is not known after so many trials.
fn needed_of(trial: &Trial<'_>, all: &[Part]) -> Option<Vec<Part>> {
    let mut trials = 0;
    let mut does = |parts: &[Part]| {
        trials += 1;
        trials <= MOST_TRIALS && trial.fits(|problem| apply_all(parts, problem))
    };
    if !does(all) {
        return None;
    }
    let mut needed = all.to_vec();
    let mut chunk = needed.len().div_ceil(2);
    loop {
        let mut at = 0;
        while at < needed.len() {
            let until = (at + chunk).min(needed.len());
            let mut rest = needed.clone();
            rest.drain(at..until);
            if does(&rest) {
                needed = rest;
            } else {
                at = until;
            }
        }
        if chunk <= 1 {
            break;
        }
        chunk = chunk.div_ceil(2);
    }
    (trials <= MOST_TRIALS).then_some(needed)
}

fn apply_all(parts: &[Part], problem: &mut RouteProblem) {
    for part in parts {
        apply(*part, problem);
    }
}

fn apply(part: Part, problem: &mut RouteProblem) {
    match part {
        Part::Body(number) => {
            if let Some(body) = problem.bodies.get_mut(number) {
                body.solid = Solid::Sphere {
                    centre: AWAY,
                    radius: 1.0,
                };
                body.gap_mm = 0.0;
            }
        }
        Part::Component(number) => {
            for run in &mut problem.runs {
                run.components.retain(|held| *held != number);
            }
        }
        Part::TightBends => {
            for tube in &mut problem.tubes {
                tube.clr_mm = tube.clr_mm.min(tube.od_mm * TIGHT_IN_DIAMETERS);
            }
        }
        Part::Pins(number) => {
            if let Some(run) = problem.runs.get_mut(number) {
                run.pins.clear();
            }
        }
    }
}

/// The set in words: of each body in it the least loss of its gap that does, where one does, with the others made.
fn told(trial: &Trial<'_>, needed: &[Part]) -> Change {
    let mut given_up: Vec<Option<f64>> = vec![None; needed.len()];
    for (own, part) in needed.iter().enumerate() {
        let Part::Body(number) = *part else {
            continue;
        };
        let Some(placed) = trial.bodies.placed.get(number) else {
            continue;
        };
        let others = |problem: &mut RouteProblem| {
            for (other, part) in needed.iter().enumerate() {
                match (part, given_up.get(other).copied().flatten()) {
                    _ if other == own => {}
                    (Part::Body(number), Some(less)) => {
                        if let Some(body) = problem.bodies.get_mut(*number) {
                            body.gap_mm -= less;
                        }
                    }
                    _ => apply(*part, problem),
                }
            }
        };
        let least = trial.least_given_up(number, placed.gap_mm - least_gap_mm(placed), &others);
        if let Some(slot) = given_up.get_mut(own) {
            *slot = least;
        }
    }
    let words: Vec<String> = needed
        .iter()
        .zip(&given_up)
        .map(|(part, given_up)| words_of(trial, *part, *given_up))
        .collect();
    Change {
        rank: 4,
        share: f64::from(u8::try_from(needed.len()).unwrap_or(u8::MAX)),
        words: format!(
            "there is a way only with these together: {}",
            words.join("; and ")
        ),
    }
}

fn words_of(trial: &Trial<'_>, part: Part, given_up: Option<f64>) -> String {
    let problem = &trial.posed.problem;
    match part {
        Part::Body(number) => match (trial.bodies.placed.get(number), given_up) {
            (Some(placed), Some(less)) => format!(
                "a gap of {:.0} mm to “{}” instead of {:.0} mm, if it bears that",
                placed.gap_mm - less,
                placed.name,
                placed.gap_mm
            ),
            (Some(placed), None) => format!("“{}” moved out of the way", placed.name),
            (None, _) => {
                let body = problem.bodies.get(number);
                format!(
                    "{} left open",
                    body.map_or("a side", |body| body.id.as_str())
                )
            }
        },
        Part::Component(number) => {
            let name = trial.posed.component_names.get(number);
            format!(
                "“{}” left out, or a shorter or slimmer one",
                name.map_or("a part", String::as_str)
            )
        }
        Part::TightBends => "bends whose centre-line radius is one diameter".to_owned(),
        Part::Pins(number) => format!(
            "the rooms that “{}” must pass or have a joint in given up",
            problem
                .runs
                .get(number)
                .map_or("a run", |run| run.id.as_str())
        ),
    }
}
