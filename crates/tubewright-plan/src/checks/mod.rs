//! What the plan is judged by.

mod clearance;
mod joints;
mod kept;
mod measure;
mod removal;
mod runs;
mod short;
mod tacking;
mod tips;
mod torch;
mod wishes;

pub use clearance::{MovingRun, Room, clearance_findings, clearance_findings_of, rule_of};
pub(crate) use clearance::{other_pieces, room_to_body, room_to_piece};
pub use runs::moving_runs;
pub(crate) use short::slices;
pub(crate) use tips::findings as tip_findings;

use tubewright_build::model::Model;
use tubewright_check::{Finding, Rule, State};

use crate::frozen::FrozenError;
use crate::routes::{PlannedRun, PosedProblem};
use crate::stages::{Routed, Supply, Surroundings};

/// The runs that are judged.
#[derive(Clone, Copy, Debug)]
pub enum Judged<'a> {
    /// There are none yet.
    NotRouted,
    /// The first of the solver's alternatives.
    Routed(&'a PosedProblem, &'a Routed),
    /// The chosen plan.
    Chosen {
        /// The runs' ends as they are measured now.
        posed: &'a PosedProblem,
        /// The chosen runs.
        runs: &'a [PlannedRun],
        /// Chosen runs that cannot be walked, with the reason.
        troubles: &'a [(String, FrozenError)],
    },
}

impl<'a> Judged<'a> {
    /// The chosen runs, or those of the first way; none before there is a way.
    pub(crate) fn runs(self) -> &'a [PlannedRun] {
        match self {
            Self::Chosen { runs, .. } => runs,
            Self::Routed(_, Routed::Found(ways)) => ways.first().map_or(&[], |way| &way.runs),
            Self::Routed(..) | Self::NotRouted => &[],
        }
    }
}

/// Every finding of a car.
#[must_use]
pub fn all_findings(
    model: &Model,
    around: &Surroundings,
    judged: Judged<'_>,
    supply: Option<&Supply>,
) -> Vec<Finding> {
    let mut findings = measure::findings(model, around);
    if matches!(judged, Judged::NotRouted) {
        findings.extend(measure::holes_of_scans(around));
    }
    findings.extend(runs::findings(
        model,
        around,
        judged,
        supply.map(|supply| &supply.whole),
    ));
    findings.extend(supply_findings(around, supply));
    findings.extend(tacking::findings(model, around, judged, supply));
    findings.extend(joints::findings(model, around, judged, supply));
    findings.extend(torch::findings(model, around, judged, supply));
    findings.extend(wishes::unheard(model));
    findings.extend(not_computed(model));
    findings
}

fn supply_findings(around: &Surroundings, supply: Option<&Supply>) -> Vec<Finding> {
    let Some(supply) = supply else {
        return vec![Finding::stated(
            Rule::StockCovers,
            State::NotChecked,
            "all pieces",
            "there is no cutting plan yet",
        )];
    };
    let mut findings = Vec::new();
    for missing in &supply.plan.missing {
        findings.push(Finding::stated(
            Rule::StockCovers,
            State::Fail,
            missing.mark.clone(),
            crate::stock::missing_words(missing.why),
        ));
    }
    if supply.plan.is_full() {
        findings.push(Finding::stated(
            Rule::StockCovers,
            State::Pass,
            "all pieces",
            "",
        ));
    }
    findings.extend(short::findings(around, supply));
    let troubled: Vec<_> = supply
        .cards
        .iter()
        .filter(|card| !card.findings.is_empty())
        .collect();
    for card in &troubled {
        findings.push(Finding::stated(
            Rule::SawHolds,
            State::Fail,
            format!(
                "{} no. {}",
                crate::stock::source_words(&card.source),
                card.number
            ),
            "the saw cannot hold a part of it: use another tool or a longer item",
        ));
    }
    if troubled.is_empty() {
        findings.push(Finding::stated(Rule::SawHolds, State::Pass, "all cuts", ""));
    }
    findings
}

/// Checks that the program cannot make yet: they never pass. Only what this car has is listed.
fn not_computed(model: &Model) -> Vec<Finding> {
    let has_runs = !model.build.runs.is_empty();
    let rules = [
        Rule::HeatOnNeighbours,
        Rule::SoundLevel,
        Rule::ThermalGrowth,
        Rule::BackPressure,
        Rule::Neighbours,
    ];
    rules
        .into_iter()
        .filter(|_| has_runs)
        .map(|rule| {
            Finding::stated(
                rule,
                State::NotChecked,
                "exhaust",
                "nothing here works it out yet; have it judged on the car",
            )
        })
        .collect()
}
