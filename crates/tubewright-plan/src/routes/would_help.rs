//! What would let something fit: changes, each really made and solved again; where no single one does, two or three
//! together.

mod together;

use core::cmp::Ordering;
use core::sync::atomic::AtomicBool;

use rayon::prelude::*;
use tubewright_build::model::Class;
use tubewright_geometry::{Point, Solid};
use tubewright_route::{Budget, CostModel, RouteProblem, fits};

use super::problem::PosedProblem;
use crate::bodies::{Bodies, PlacedBody};
use crate::survey::NINETEEN_IN_TWENTY;

/// One part in so many of the effort goes into each change that is tried.
const SHARE: u64 = 16;
/// Least effort of a change that is tried, work units.
const LEAST_EFFORT: u64 = 500;
/// Halvings of a gap between what does not do and what does.
const HALVINGS: usize = 4;
/// Most changes that are told.
const MOST_TOLD: usize = 5;
/// Centre-line radius that is tried, in diameters: the tightest that is commonly sold.
const TIGHT_IN_DIAMETERS: f64 = 1.0;
/// Where a body is put that is out of the way, mm.
const AWAY: Point = Point::new(1e6, 1e6, 1e6);

/// A change with which there is a way, and how much is given up.
#[derive(Clone, Debug, PartialEq)]
struct Change {
    /// In order of preference: better tape first, then gaps, sizes, and last what must be moved.
    rank: u8,
    /// Share of a gap that is given up, 0 to 1.
    share: f64,
    words: String,
}

/// Changes with which there is a way, in words, least loss first; lengths in millimetres: single ones, or where none
/// of them does, two or three together. Empty when none of those tried does.
pub(crate) fn would_help(
    posed: &PosedProblem,
    bodies: &Bodies,
    cost: &CostModel,
    budget: Budget,
    cancel: &AtomicBool,
) -> Vec<String> {
    let trial = Trial {
        posed,
        bodies,
        cost,
        budget: Budget {
            work_units: (budget.work_units / SHARE).max(LEAST_EFFORT),
            ..budget
        },
        cancel,
    };
    let problem = &posed.problem;
    let mut found: Vec<Change> = (0..problem.bodies.len())
        .into_par_iter()
        .filter_map(|number| trial.with_body_changed(number))
        .collect();
    found.extend(trial.with_places_known());
    let components = (0..problem.components.len()).into_par_iter();
    found.par_extend(components.filter_map(|number| trial.without_component(number)));
    let runs = (0..problem.runs.len()).into_par_iter();
    found.par_extend(runs.filter_map(|number| trial.without_pins(number)));
    found.extend(trial.with_tight_bends());
    found.sort_by(|a, b| {
        a.rank
            .cmp(&b.rank)
            .then(a.share.partial_cmp(&b.share).unwrap_or(Ordering::Equal))
    });
    found.truncate(MOST_TOLD);
    if found.is_empty() {
        found = together::together(&trial);
    }
    found.into_iter().map(|change| change.words).collect()
}

/// The least gap that is ever proposed, mm: what carries fuel or brakes keeps all of its own, the ground
/// half, and nothing else comes nearer than 5 mm (common practice, no source).
fn least_gap_mm(body: &PlacedBody) -> f64 {
    match body.class {
        Class::FuelBrake => body.gap_mm,
        Class::Ground => 0.5 * body.gap_mm,
        _ => 5.0,
    }
}

struct Trial<'a> {
    posed: &'a PosedProblem,
    bodies: &'a Bodies,
    cost: &'a CostModel,
    budget: Budget,
    cancel: &'a AtomicBool,
}

impl Trial<'_> {
    fn fits(&self, change: impl FnOnce(&mut RouteProblem)) -> bool {
        let mut problem = self.posed.problem.clone();
        change(&mut problem);
        fits(&problem, self.cost, self.budget, self.cancel).unwrap_or(false)
    }

    /// The ± that was added to the gap of a body, mm.
    fn allowance_mm(&self, body: &PlacedBody) -> f64 {
        let run = self.posed.runs.first().map_or(0.0, |run| run.allowance_mm);
        let own = NINETEEN_IN_TWENTY * body.sigma_bound();
        (run * run + own * own).sqrt()
    }

    fn with_places_known(&self) -> Option<Change> {
        let most = self
            .bodies
            .placed
            .iter()
            .map(|body| self.allowance_mm(body))
            .fold(0.0, f64::max);
        let does = self.fits(|problem| {
            for (body, placed) in problem.bodies.iter_mut().zip(&self.bodies.placed) {
                body.gap_mm -= self.allowance_mm(placed);
            }
        });
        does.then(|| Change {
            rank: 0,
            share: 0.0,
            words: format!(
                "were every place known exactly there would be a way: up to {most:.0} mm of what is asked to a body are the ± of the places; measure better what `measure` names"
            ),
        })
    }

    fn with_body_changed(&self, number: usize) -> Option<Change> {
        let body = self.posed.problem.bodies.get(number)?;
        let away = self.fits(|problem| {
            if let Some(body) = problem.bodies.get_mut(number) {
                body.solid = Solid::Sphere {
                    centre: AWAY,
                    radius: 1.0,
                };
                body.gap_mm = 0.0;
            }
        });
        if !away {
            return None;
        }
        let Some(placed) = self.bodies.placed.get(number) else {
            return Some(Change {
                rank: 2,
                share: 0.0,
                words: format!("with {} left open there is a way", body.id),
            });
        };
        let most_mm = placed.gap_mm - least_gap_mm(placed);
        let least = self.least_given_up(number, most_mm, &|_| {});
        Some(match least {
            Some(given_up) => Change {
                rank: 1,
                share: given_up / placed.gap_mm,
                words: format!(
                    "with a gap of {:.0} mm to “{}” instead of {:.0} mm there is a way, if it bears that",
                    placed.gap_mm - given_up,
                    placed.name,
                    placed.gap_mm
                ),
            },
            None => Change {
                rank: 3,
                share: 1.0,
                words: format!("with “{}” moved out of the way there is one", placed.name),
            },
        })
    }

    /// The least loss of a gap with which there is a way, whole millimetres, up to `most_mm`, with other changes made.
    fn least_given_up(
        &self,
        number: usize,
        most_mm: f64,
        others: &dyn Fn(&mut RouteProblem),
    ) -> Option<f64> {
        let does = |less: f64| {
            self.fits(|problem| {
                others(problem);
                if let Some(body) = problem.bodies.get_mut(number) {
                    body.gap_mm -= less;
                }
            })
        };
        let most_mm = most_mm.floor();
        if most_mm < 1.0 || !does(most_mm) {
            return None;
        }
        let (mut not, mut enough) = (0.0, most_mm);
        for _ in 0..HALVINGS {
            let middle = (0.5 * (not + enough)).ceil();
            if middle >= enough {
                break;
            }
            if does(middle) {
                enough = middle;
            } else {
                not = middle;
            }
        }
        Some(enough)
    }

    fn without_component(&self, number: usize) -> Option<Change> {
        let name = self.posed.component_names.get(number)?;
        let does = self.fits(|problem| {
            for run in &mut problem.runs {
                run.components.retain(|held| *held != number);
            }
        });
        does.then(|| Change {
            rank: 2,
            share: 0.5,
            words: format!(
                "without “{name}” there is a way: try a shorter or slimmer one, or another place for it"
            ),
        })
    }

    fn without_pins(&self, number: usize) -> Option<Change> {
        let run = self.posed.problem.runs.get(number)?;
        if run.pins.is_empty() {
            return None;
        }
        let does = self.fits(|problem| {
            if let Some(run) = problem.runs.get_mut(number) {
                run.pins.clear();
            }
        });
        does.then(|| Change {
            rank: 0,
            share: 0.0,
            words: format!(
                "without the rooms that “{}” must pass or have a joint in there is a way: give them another \
                 place or more room",
                run.id
            ),
        })
    }

    fn has_wide_bends(&self) -> bool {
        let mut tubes = self.posed.problem.tubes.iter();
        tubes.any(|tube| tube.clr_mm > tube.od_mm * TIGHT_IN_DIAMETERS)
    }

    fn with_tight_bends(&self) -> Option<Change> {
        if !self.has_wide_bends() {
            return None;
        }
        let does = self.fits(|problem| {
            for tube in &mut problem.tubes {
                tube.clr_mm = tube.clr_mm.min(tube.od_mm * TIGHT_IN_DIAMETERS);
            }
        });
        does.then(|| Change {
            rank: 2,
            share: 0.0,
            words: "with bends whose centre-line radius is one diameter there is a way: put them into stock.toml".to_owned(),
        })
    }
}
