//! The ways in the order of what they cost when they are bought, cut and welded as the cutting plan says.
//!
//! The search counts every bend as bought by itself, because what several pieces share of one stock item
//! is known only when all are there. The cutting plan knows. Both costs are shown apart.

use std::cmp::Ordering;
use tubewright_build::model::Model;
use tubewright_build::resolved::ResolvedPractice;
use tubewright_check::{Rule, State};

use crate::bodies::Bodies;
use crate::checks::{clearance_findings, moving_runs, tip_findings};
use crate::figures::{ends_off, hours};
use crate::flow::{heads_lost, price_of_heads};
use crate::routes::{PlannedRun, PosedProblem};
use crate::sensors::sensors;
use crate::stages::{
    Alternative, END_TOLERANCE_DEG, END_TOLERANCE_MM, Supply, Surroundings, WANTED_GROUND_MM,
    supply_from_the_start,
};

/// What a way costs by its cutting plan, in the shop's money-like units: the price of everything that is
/// bought with delivery and tax, the hours of welds and saw cuts at the shop's rate, and the same proxies
/// for loss of flow and of ground clearance as in the search. `ground_mm` is the clearance to the ground;
/// without one its loss is not counted.
#[must_use]
pub fn cost_as_cut(
    model: &Model,
    practice: &ResolvedPractice,
    runs: &[PlannedRun],
    supply: &Supply,
    ground_mm: Option<f64>,
) -> f64 {
    let degrees: f64 = runs
        .iter()
        .map(|run| run.sum_of_bends_rad().to_degrees())
        .sum();
    let metres: f64 = runs
        .iter()
        .map(|run| run.developed_length_mm() / 1000.0)
        .sum();
    let lost_mm = ground_mm.map_or(0.0, |ground_mm| (WANTED_GROUND_MM - ground_mm).max(0.0));
    supply.plan.price.major()
        + hours(practice, supply) * practice.rate.major_per_unit
        + degrees * practice.flow_per_degree.major_per_unit
        + metres * practice.flow_per_metre.major_per_unit
        + price_of_heads(practice, heads_lost(model, runs))
        + lost_mm * practice.ground_loss.major_per_unit
}

/// Puts the ways in order: those that close well first, then those of which every piece can be made, then
/// those that leave each sensor its room and blow nowhere that they must not, then the cheaper by their cutting
/// plans; a way without a plan keeps the search's order behind the others.
pub(crate) fn rank(
    model: &Model,
    around: &Surroundings,
    posed: &PosedProblem,
    found: Vec<Alternative>,
) -> Vec<Alternative> {
    let mut ranked: Vec<(Rank, Alternative)> = found
        .into_iter()
        .map(|way| (Rank::of(model, around, posed, &way), way))
        .collect();
    ranked.sort_by(|a, b| a.0.order(&b.0));
    ranked.into_iter().map(|(_, way)| way).collect()
}

struct Rank {
    is_closed: bool,
    is_made: bool,
    /// Sensors without room, and tips that blow where they must not.
    faults: usize,
    cost: f64,
}

impl Rank {
    fn of(model: &Model, around: &Surroundings, posed: &PosedProblem, way: &Alternative) -> Self {
        let (off_mm, off_rad) = ends_off(posed, &way.runs);
        let supply = supply_from_the_start(model, &around.practice, &way.runs, &[]).ok();
        Self {
            is_closed: off_mm <= END_TOLERANCE_MM && off_rad.to_degrees() <= END_TOLERANCE_DEG,
            is_made: supply.as_ref().is_some_and(|supply| supply.plan.is_full()),
            faults: faults(model, around, &way.runs, supply.as_ref()),
            cost: supply.map_or(f64::INFINITY, |supply| {
                let ground_mm = ground_mm(model, around, &way.runs);
                cost_as_cut(model, &around.practice, &way.runs, &supply, ground_mm)
            }),
        }
    }

    fn order(&self, other: &Self) -> Ordering {
        other
            .is_closed
            .cmp(&self.is_closed)
            .then(other.is_made.cmp(&self.is_made))
            .then(self.faults.cmp(&other.faults))
            .then(self.cost.total_cmp(&other.cost))
    }
}

/// What fails that the search does not see: it is judged on the rounded pieces.
fn faults(
    model: &Model,
    around: &Surroundings,
    runs: &[PlannedRun],
    supply: Option<&Supply>,
) -> usize {
    let plan = supply.map(|supply| &supply.plan);
    let sensors = sensors(model, around, runs, plan);
    crate::sensors::findings(&sensors)
        .iter()
        .chain(&tip_findings(model, around, runs))
        .filter(|finding| finding.state == State::Fail)
        .count()
}

/// The least gap to the ground, in every position.
fn ground_mm(model: &Model, around: &Surroundings, runs: &[PlannedRun]) -> Option<f64> {
    let mut ground = around.bodies.placed.clone();
    ground.retain(|body| body.class == tubewright_build::model::Class::Ground);
    let bodies = Bodies {
        placed: ground,
        missing: Vec::new(),
    };
    let joint = &around.measured.places.joint;
    clearance_findings(&moving_runs(model, around, runs), &bodies, joint)
        .iter()
        .filter(|finding| finding.rule == Rule::ClearanceToGround)
        .filter_map(|finding| Some(finding.measured?.value))
        .min_by(f64::total_cmp)
}
