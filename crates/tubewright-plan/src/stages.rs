//! The stages one after the other, each a pure function of the earlier ones.

use std::collections::BTreeMap;
use std::sync::atomic::AtomicBool;
use tubewright_build::model::Model;
use tubewright_build::quantity::Currency;
use tubewright_build::resolved::{ResolvedGaps, ResolvedPractice};
use tubewright_check::Board;
use tubewright_route::cost::{GroundTerm, ShopRates};
use tubewright_route::problem::ProblemError;
use tubewright_route::{
    Budget, CostModel, Outcome, Progress, Route, ShopSteps, round_and_close, solve,
};
use tubewright_stock::{
    CutCard, FitMark, JobProgress, PlanError, Source, SteelRecord, StockPlan, StockRequest,
    cut_cards, fit_marks, plan_stock, welds,
};
use tubewright_survey::AdjustError;

use crate::bodies::{Bodies, place_bodies};
use crate::checks::Judged;
use crate::fit::Steel;
use crate::frozen::{FrozenError, carry_marks, frozen_plan};
use crate::plan_file::{PlanFileError, StoredRouted, StoredRoutes};
use crate::ranking::rank;
use crate::routes::{
    Choice, LaidRun, MarkGiver, PlannedRun, PosedProblem, RunMarks, WalkError, in_turn, laid_runs,
    no_way_words, pose_problem, shared_joint, walk_laid, would_help,
};
use crate::stock::{Followed, Opening, RequestError, on_the_tape, openings, request_of};
use crate::survey::{Measured, measure};

/// Everything that routes are planned among.
#[derive(Clone, Debug)]
pub struct Surroundings {
    /// The adjusted readings.
    pub measured: Measured,
    /// The bodies.
    pub bodies: Bodies,
    /// Gaps with defaults filled in.
    pub gaps: ResolvedGaps,
    /// The shop's figures with defaults filled in.
    pub practice: ResolvedPractice,
}

/// Measures the car and builds its bodies.
///
/// # Errors
/// [`AdjustError`] when the readings cannot be worked with at all.
pub fn survey_and_bodies(
    model: &Model,
    scans: &BTreeMap<String, Vec<u8>>,
) -> Result<Surroundings, AdjustError> {
    let measured = measure(&model.build)?;
    let gaps = model.build.gaps.resolved();
    let practice = model
        .stock
        .practice
        .resolved(model.stock.currency.unwrap_or(Currency::NONE));
    let bodies = place_bodies(model, &measured.places, &gaps, scans);
    Ok(Surroundings {
        measured,
        bodies,
        gaps,
        practice,
    })
}

/// One way to route all runs, rounded to the shop's steps.
#[derive(Clone, Debug, PartialEq)]
pub struct Alternative {
    /// What it does: its identity from solve to solve.
    pub name: String,
    /// Cost in the shop's money-like units.
    pub cost: f64,
    /// No route costs less.
    pub lower_bound: f64,
    /// The rounded runs.
    pub runs: Vec<PlannedRun>,
}

/// What the route stage found.
#[derive(Clone, Debug)]
pub enum Routed {
    /// Ways that hold, cheapest first.
    Found(Vec<Alternative>),
    /// None found in this effort; there may be one.
    NotFound {
        /// Work units spent.
        work_units: u64,
        /// Single changes with which there is a way, each solved, in words; lengths in mm.
        would_help: Vec<String>,
    },
    /// None exists.
    NoneExists {
        /// How it is known, in words; lengths in mm.
        proof: String,
        /// Single changes with which there is a way, each solved, in words; lengths in mm.
        would_help: Vec<String>,
    },
    /// No run could be put to the solver.
    NothingToRoute,
}

/// The cost model of a shop.
#[must_use]
pub fn shop_cost(practice: &ResolvedPractice) -> CostModel {
    CostModel::shop(&ShopRates {
        per_hour: practice.rate.major_per_unit,
        weld_minutes: practice.weld_time.minutes(),
        weld_material: 0.0,
        cut_minutes: practice.cut_time.minutes(),
        flow_per_degree: practice.flow_per_degree.major_per_unit,
        flow_per_metre: practice.flow_per_metre.major_per_unit,
        ground: Some(GroundTerm {
            wanted_mm: WANTED_GROUND_MM,
            per_mm: practice.ground_loss.major_per_unit,
        }),
    })
}

/// Ground clearance above which more is worth nothing, mm (common practice, no source).
pub(crate) const WANTED_GROUND_MM: f64 = 150.0;

/// Work units when nobody says otherwise: a few seconds on a small machine.
pub const USUAL_EFFORT: u64 = 40_000;

/// Puts every run that can be to the solver, without solving.
#[must_use]
pub fn pose(model: &Model, around: &Surroundings) -> PosedProblem {
    pose_problem(
        model,
        &around.measured.places,
        &around.bodies,
        &around.gaps,
        &around.practice,
    )
}

/// Routes every run that can be. The posed problem comes back with the answer, for its reasons why
/// runs were left out. Pieces that are those of the chosen plan keep their marks.
///
/// # Errors
/// [`ProblemError`] when the posed problem does not hold together.
pub fn route(
    model: &Model,
    around: &Surroundings,
    budget: Budget,
    cancel: &AtomicBool,
    progress: &mut dyn FnMut(Progress),
) -> Result<(PosedProblem, Routed), ProblemError> {
    let posed = pose(model, around);
    if posed.runs.is_empty() {
        return Ok((posed, Routed::NothingToRoute));
    }
    let cost = shop_cost(&around.practice);
    let practice = &around.practice;
    let solved = solve_each(model, practice, &posed, &cost, budget, cancel, progress)?;
    let routed = match solved {
        Ok(ways) => {
            let found = rounded(&posed, &cost, practice, &ways);
            if found.is_empty() {
                // What was found could not be brought to the shop's steps: no change is known to help.
                Routed::NotFound {
                    work_units: budget.work_units,
                    would_help: Vec::new(),
                }
            } else {
                Routed::Found(rank(model, around, &posed, marked(model, &posed, found)))
            }
        }
        Err(Outcome::Infeasible { reason, proof }) => Routed::NoneExists {
            proof: no_way_words(reason, &proof),
            would_help: would_help(&posed, &around.bodies, &cost, budget, cancel),
        },
        Err(Outcome::NotFoundInEffort { work_units }) => Routed::NotFound {
            work_units,
            would_help: would_help(&posed, &around.bodies, &cost, budget, cancel),
        },
        Err(_) => Routed::NotFound {
            work_units: budget.work_units,
            would_help: Vec::new(),
        },
    };
    Ok((posed, routed))
}

/// Most ways that are told when outlets may be sawn off, shared out among the choices of them.
const MOST_WAYS: usize = 8;

/// Routes that were found, each with the number of the choice that it was found for.
struct Ways {
    choices: Vec<Choice>,
    /// What the parts where runs meet cost in each choice, in the shop's money-like units: the same for all of its
    /// routes.
    prices: Vec<f64>,
    routes: Vec<(usize, Route)>,
}

/// Solves each choice of outlets and crossovers, the effort shared out; the ways together, cheapest first. Where
/// none is found, why the posed problem has none.
fn solve_each(
    model: &Model,
    practice: &ResolvedPractice,
    posed: &PosedProblem,
    cost: &CostModel,
    budget: Budget,
    cancel: &AtomicBool,
    progress: &mut dyn FnMut(Progress),
) -> Result<Result<Ways, Outcome>, ProblemError> {
    let choices = posed.choices();
    let share = Budget {
        work_units: budget.work_units / choices.len().max(1) as u64,
        ..budget
    };
    let may = choices.iter().map(|choice| choice.sawn.len()).max();
    let several_outlets = may.unwrap_or(0) > 1;
    let is_only_one = choices.len() < 2;
    let each = match choices.len() {
        0 | 1 => usize::MAX,
        many => (MOST_WAYS / many).max(1),
    };
    let mut found = Ways {
        choices: Vec::new(),
        prices: Vec::new(),
        routes: Vec::new(),
    };
    let mut least_bound = f64::INFINITY;
    let mut refused = None;
    for choice in choices {
        let price = choice.price_of_parts(model, practice) + choice.price_of_flow(model, practice);
        let mut told = |mut so_far: Progress| {
            // What is the same for every way of this choice counts in what is compared with the others.
            so_far.best_cost = so_far.best_cost.map(|cost| cost + price);
            so_far.lower_bound += price;
            if let Some(route) = &mut so_far.improved {
                route.cost += price;
            }
            progress(so_far);
        };
        let outcome = solve(&choice.problem, cost, share, cancel, &mut told)?;
        let number = found.choices.len();
        match outcome {
            Outcome::Solved { alternatives, .. } => {
                for mut way in alternatives.into_iter().take(each) {
                    way.cost += price;
                    least_bound = least_bound.min(way.lower_bound + price);
                    if let Some(words) = choice.words(several_outlets) {
                        way.name = format!("{}, {words}", way.name);
                    }
                    found.routes.push((number, way));
                }
            }
            // None exists only where none does any way.
            Outcome::Infeasible { .. } if number == 0 => refused = Some(outcome),
            Outcome::Infeasible { .. } => {}
            other => refused = Some(other),
        }
        found.choices.push(choice);
        found.prices.push(price);
    }
    if found.routes.is_empty() {
        return Ok(Err(refused.unwrap_or(Outcome::NotFoundInEffort {
            work_units: budget.work_units,
        })));
    }
    if !is_only_one {
        // One is only as good as the best of all.
        for (_, way) in &mut found.routes {
            way.lower_bound = least_bound;
        }
        found.routes.sort_by(|a, b| a.1.cost.total_cmp(&b.1.cost));
    }
    Ok(Ok(found))
}

/// An alternative whose pieces have no marks yet.
struct Unmarked {
    name: String,
    cost: f64,
    lower_bound: f64,
    runs: Vec<LaidRun>,
}

/// The routes in the shop's steps: those that close well first, among equals the cheaper.
fn rounded(
    posed: &PosedProblem,
    cost: &CostModel,
    practice: &ResolvedPractice,
    ways: &Ways,
) -> Vec<Unmarked> {
    let steps = ShopSteps {
        length_mm: practice.length_step.mm(),
        angle_rad: practice.bend_step.rad(),
        clock_rad: practice.clock_step.rad(),
    };
    let mut found: Vec<(bool, Unmarked)> = ways
        .routes
        .iter()
        .filter_map(|(number, route)| {
            let problem = &ways.choices.get(*number)?.problem;
            let price = ways.prices.get(*number)?;
            let held = problem.held_at(route);
            let rounded = round_and_close(&held, cost, route, steps, None).ok()?;
            let is_closed = rounded.ends.iter().all(|end| {
                end.distance_mm <= END_TOLERANCE_MM
                    && end.direction_rad.to_degrees() <= END_TOLERANCE_DEG
            });
            let unmarked = Unmarked {
                name: route.name.clone(),
                cost: rounded.route.cost + price,
                lower_bound: route.lower_bound,
                runs: laid_runs(posed, problem, &rounded.route),
            };
            Some((is_closed, unmarked))
        })
        .collect();
    found.sort_by(|a, b| b.0.cmp(&a.0).then(a.1.cost.total_cmp(&b.1.cost)));
    found.into_iter().map(|(_, unmarked)| unmarked).collect()
}

/// Walks the alternatives and gives their pieces marks: steel of the chosen plan keeps its own. One
/// that cannot be walked is left out.
fn marked(model: &Model, posed: &PosedProblem, found: Vec<Unmarked>) -> Vec<Alternative> {
    let run_names: Vec<&str> = model
        .build
        .runs
        .iter()
        .map(|run| run.name.as_str())
        .collect();
    let chosen = frozen_plan(&model.shop).map_or_else(Vec::new, |plan| {
        crate::frozen::planned(model, posed, &plan).0
    });
    found
        .into_iter()
        .filter_map(|unmarked| {
            let mut giver = MarkGiver::after(&model.shop, &run_names);
            let mut runs = unmarked
                .runs
                .iter()
                .map(|laid| {
                    let unpainted = RunMarks {
                        pieces: vec![Default::default(); laid.pieces.len()],
                        last_joint: String::new(),
                    };
                    walk_laid(model, posed, laid, &unpainted)
                })
                .collect::<Result<Vec<_>, WalkError>>()
                .ok()?;
            for number in in_turn(&runs.iter().collect::<Vec<_>>()) {
                let begins_with = runs.get(number).and_then(|run| shared_joint(&runs, run));
                if let Some(run) = runs.get_mut(number) {
                    let before = chosen.iter().find(|old| old.name == run.name);
                    carry_marks(run, before, begins_with.as_deref(), &mut giver);
                }
            }
            Some(Alternative {
                name: unmarked.name,
                cost: unmarked.cost,
                lower_bound: unmarked.lower_bound,
                runs,
            })
        })
        .collect()
}

/// The routes of a plan file again, bit for bit as they were solved; the caller has made sure that
/// they are fresh.
///
/// # Errors
/// [`PlanFileError`] when the file holds what no solution of this problem could.
pub fn routed_again(
    model: &Model,
    posed: &PosedProblem,
    stored: &StoredRoutes,
) -> Result<Routed, PlanFileError> {
    Ok(match &stored.found {
        StoredRouted::Found(alternatives) => {
            let found = alternatives
                .iter()
                .map(|alternative| {
                    Ok(Unmarked {
                        name: alternative.name.clone(),
                        cost: alternative.cost,
                        lower_bound: alternative.lower_bound,
                        runs: alternative.laid(posed)?,
                    })
                })
                .collect::<Result<Vec<_>, PlanFileError>>()?;
            let count = found.len();
            let walked = marked(model, posed, found);
            if walked.len() != count || count == 0 {
                return Err(PlanFileError::NotOfThisBuild(
                    "it names what this build does not hold".to_owned(),
                ));
            }
            Routed::Found(walked)
        }
        StoredRouted::NotFound {
            work_units,
            would_help,
        } => Routed::NotFound {
            work_units: *work_units,
            would_help: would_help.clone(),
        },
        StoredRouted::NoneExists { proof, would_help } => Routed::NoneExists {
            proof: proof.clone(),
            would_help: would_help.clone(),
        },
        StoredRouted::NothingToRoute => Routed::NothingToRoute,
    })
}

/// How far rounded pieces may end from where they should before a rounding counts as poor, mm: what
/// a fitter pulls in while tacking (common practice, no source).
pub const END_TOLERANCE_MM: f64 = 3.0;

/// The same for the direction, degrees (common practice, no source).
pub const END_TOLERANCE_DEG: f64 = 1.0;

/// What is still to be bought and where to cut, with what is made already.
#[derive(Clone, Debug)]
pub struct Supply {
    /// What was asked of the planner: what is still to be made, from what lies there now.
    pub request: StockRequest,
    /// The verified plan for that.
    pub plan: StockPlan,
    /// The same with the parts that are made already before it: every part of the runs.
    pub whole: StockPlan,
    /// How far the job is.
    pub progress: JobProgress,
    /// One card for each stock item that is still to be cut, its marks on divisions of the tape.
    pub cards: Vec<CutCard>,
    /// Where the runs end when every mark is met as it stands on the cards.
    pub followed: Vec<Followed>,
    /// Clock of every part to the one before it, the made ones too.
    pub fits: Vec<FitMark>,
    /// Welds of the whole job, those round openings of crossovers made by hand among them.
    pub welds: u32,
    /// Openings of crossovers that are made by hand.
    pub openings: Vec<Opening>,
}

/// Why there is no supply plan.
#[derive(Debug, thiserror::Error)]
#[non_exhaustive]
pub enum SupplyError {
    /// The stock file lacks something.
    #[error(transparent)]
    Request(#[from] RequestError),
    /// The planner failed.
    #[error(transparent)]
    Plan(#[from] PlanError),
}

/// Plans what is still to be bought and cut for these runs, leaving out the items named. What the
/// record says is got lies on the shelf, what it says is out is not for sale, and what is cut and good
/// is made.
///
/// # Errors
/// [`SupplyError`]; a piece that cannot be made is no error but listed in the plan.
pub fn supply(
    model: &Model,
    practice: &ResolvedPractice,
    runs: &[PlannedRun],
    without: &[String],
) -> Result<Supply, SupplyError> {
    let request = request_of(model, practice, runs, without)?;
    let mut record = Steel::of(&model.shop).record;
    if record.sawn.iter().any(|sawn| sawn.of.is_none()) {
        place_as_planned(&mut record, &plan_stock(&request)?);
    }
    supplied(model, runs, &request, &record)
}

/// The same for the whole job, as if nothing had happened yet.
///
/// # Errors
/// As [`supply`].
pub fn supply_from_the_start(
    model: &Model,
    practice: &ResolvedPractice,
    runs: &[PlannedRun],
    without: &[String],
) -> Result<Supply, SupplyError> {
    let request = request_of(model, practice, runs, without)?;
    supplied(model, runs, &request, &SteelRecord::default())
}

fn supplied(
    model: &Model,
    runs: &[PlannedRun],
    request: &StockRequest,
    record: &SteelRecord,
) -> Result<Supply, SupplyError> {
    let progress = JobProgress::of(request, record);
    let plan = progress.plan()?;
    let whole = progress.whole(&plan);
    let mut cards = cut_cards(&plan, &request.rules);
    let division_mm = crate::lengths::Lengths::of(model).saw_division_mm();
    let openings = openings(model, runs);
    let followed = on_the_tape(&mut cards, &request.rules, runs, division_mm);
    Ok(Supply {
        cards,
        followed,
        fits: fit_marks(request, &whole),
        welds: welds(request, &whole) + u32::try_from(openings.len()).unwrap_or(u32::MAX),
        openings,
        request: progress.rest.clone(),
        plan,
        whole,
        progress,
    })
}

/// A cut of which the record does not say where it lay is taken to lie where the plan for the whole job
/// cuts it, when that is out of the same item.
fn place_as_planned(record: &mut SteelRecord, plan: &StockPlan) {
    for sawn in record.sawn.iter_mut().filter(|sawn| sawn.of.is_none()) {
        sawn.of = plan.cuts.iter().find_map(|cut| {
            let (Source::Bought(name) | Source::OnHand(name)) = &cut.source;
            let part = cut
                .parts
                .iter()
                .find(|part| part.serves.iter().any(|serves| serves.mark == sawn.mark))?;
            (*name == sawn.from).then(|| (cut.number, part.clone()))
        });
    }
}

/// Judges everything that there is so far; of the alternatives the first.
#[must_use]
pub fn check(
    model: &Model,
    around: &Surroundings,
    routed: Option<(&PosedProblem, &Routed)>,
    supply: Option<&Supply>,
) -> Board {
    let judged = routed.map_or(Judged::NotRouted, |(posed, routed)| {
        Judged::Routed(posed, routed)
    });
    Board::new(crate::checks::all_findings(model, around, judged, supply))
}

/// Judges the chosen plan as the car is measured now. `troubles` are chosen runs that cannot be
/// walked.
#[must_use]
pub fn check_chosen(
    model: &Model,
    around: &Surroundings,
    posed: &PosedProblem,
    runs: &[PlannedRun],
    troubles: &[(String, FrozenError)],
    supply: Option<&Supply>,
) -> Board {
    let judged = Judged::Chosen {
        posed,
        runs,
        troubles,
    };
    Board::new(crate::checks::all_findings(model, around, judged, supply))
}
