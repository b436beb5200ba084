//! The stages one after the other, each a pure function of the earlier ones.

use std::collections::BTreeMap;
use std::sync::atomic::AtomicBool;
use tubewright_build::model::Model;
use tubewright_build::quantity::Currency;
use tubewright_build::resolved::{ResolvedGaps, ResolvedPractice};
use tubewright_check::Board;
use tubewright_route::cost::{GroundTerm, ShopRates};
use tubewright_route::problem::ProblemError;
use tubewright_route::{Budget, CostModel, Outcome, Progress, ShopSteps, round_and_close, solve};
use tubewright_stock::{
    CutCard, FitMark, PlanError, StockPlan, StockRequest, cut_cards, fit_marks, plan_stock,
};
use tubewright_survey::AdjustError;

use crate::bodies::{Bodies, place_bodies};
use crate::routes::{MarkGiver, PlannedRun, PosedProblem, planned_runs, pose_problem};
use crate::stock::{RequestError, request_of};
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
    },
    /// None exists, with the kind of proof.
    NoneExists(String),
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
const WANTED_GROUND_MM: f64 = 150.0;

/// Work units when nobody says otherwise: a few seconds on a small machine.
pub const USUAL_EFFORT: u64 = 40_000;

/// Routes every run that can be. The posed problem comes back with the answer, for its reasons why
/// runs were left out.
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
    let posed = pose_problem(
        model,
        &around.measured.places,
        &around.bodies,
        &around.gaps,
        &around.practice,
    );
    if posed.runs.is_empty() {
        return Ok((posed, Routed::NothingToRoute));
    }
    let cost = shop_cost(&around.practice);
    let outcome = solve(&posed.problem, &cost, budget, cancel, progress)?;
    let routed = match outcome {
        Outcome::Solved { alternatives, .. } => {
            let run_names: Vec<&str> = model
                .build
                .runs
                .iter()
                .map(|run| run.name.as_str())
                .collect();
            let steps = ShopSteps {
                length_mm: around.practice.length_step.mm(),
                angle_rad: around.practice.bend_step.rad(),
                clock_rad: around.practice.clock_step.rad(),
            };
            let mut found: Vec<(bool, Alternative)> = alternatives
                .iter()
                .filter_map(|route| {
                    let rounded =
                        round_and_close(&posed.problem, &cost, route, steps, None).ok()?;
                    let is_closed = rounded.ends.iter().all(|end| {
                        end.distance_mm <= END_TOLERANCE_MM
                            && end.direction_rad.to_degrees() <= END_TOLERANCE_DEG
                    });
                    let mut marks = MarkGiver::after(&model.shop, &run_names);
                    Some((
                        is_closed,
                        Alternative {
                            name: route.name.clone(),
                            cost: rounded.route.cost,
                            lower_bound: route.lower_bound,
                            runs: planned_runs(model, &posed, &rounded.route, &mut marks),
                        },
                    ))
                })
                .collect();
            // Those that close well come first; among equals the cheaper.
            found.sort_by(|a, b| b.0.cmp(&a.0).then(a.1.cost.total_cmp(&b.1.cost)));
            if found.is_empty() {
                Routed::NotFound {
                    work_units: budget.work_units,
                }
            } else {
                Routed::Found(
                    found
                        .into_iter()
                        .map(|(_, alternative)| alternative)
                        .collect(),
                )
            }
        }
        Outcome::Infeasible { reason, proof } => {
            Routed::NoneExists(format!("{reason:?}, proved by {proof:?}"))
        }
        Outcome::NotFoundInEffort { work_units } => Routed::NotFound { work_units },
        _ => Routed::NotFound {
            work_units: budget.work_units,
        },
    };
    Ok((posed, routed))
}

/// How far rounded pieces may end from where they should before a rounding counts as poor, mm: what
/// a fitter pulls in while tacking (common practice, no source).
pub const END_TOLERANCE_MM: f64 = 3.0;

/// The same for the direction, degrees (common practice, no source).
pub const END_TOLERANCE_DEG: f64 = 1.0;

/// What to buy and where to cut.
#[derive(Clone, Debug)]
pub struct Supply {
    /// What was asked of the planner.
    pub request: StockRequest,
    /// The verified plan.
    pub plan: StockPlan,
    /// One card for each stock item that is cut.
    pub cards: Vec<CutCard>,
    /// Clock of every part to the one before it.
    pub fits: Vec<FitMark>,
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

/// Plans buying and cutting of an alternative, leaving out the items named.
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
    let plan = plan_stock(&request)?;
    let cards = cut_cards(&plan, &request.rules);
    let fits = fit_marks(&request, &plan);
    Ok(Supply {
        request,
        plan,
        cards,
        fits,
    })
}

/// Judges everything that there is so far.
#[must_use]
pub fn check(
    model: &Model,
    around: &Surroundings,
    routed: Option<(&PosedProblem, &Routed)>,
    supply: Option<&Supply>,
) -> Board {
    Board::new(crate::checks::all_findings(model, around, routed, supply))
}
