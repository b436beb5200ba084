//! What every run must have in it: a catalyst, a flex section, and no bend below what the shop makes.

use tubewright_build::model::{ComponentKind, Model};
use tubewright_check::{Finding, Measured, Rule, State, Unit};

use crate::routes::{PlannedKind, PlannedRun, component_kind};
use crate::stages::Surroundings;

/// The findings of one of these runs.
pub(super) fn findings(
    model: &Model,
    around: &Surroundings,
    runs: &[PlannedRun],
    run: &PlannedRun,
) -> Vec<Finding> {
    let gas = GasWay { model, runs };
    let stated = |rule, kind, advice: &str| {
        let (state, advice) = if gas.passes(run, kind) {
            (State::Pass, "")
        } else {
            (State::Fail, advice)
        };
        Finding::stated(rule, state, run.name.clone(), advice)
    };
    let mut findings = vec![
        stated(
            Rule::CatalystKept,
            ComponentKind::Catalyst,
            "it has no catalyst: on most road cars that is unlawful; local law decides",
        ),
        stated(
            Rule::FlexFirst,
            ComponentKind::Flex,
            "nothing takes up the engine's rock: put a flex section behind the outlet",
        ),
    ];
    for piece in &run.pieces {
        let PlannedKind::Bend { angle_rad, .. } = piece.kind else {
            continue;
        };
        // Rounded sizes are exact; what is below a step by rounding is the same step.
        if angle_rad < around.practice.least_bend.rad() - 1e-9 {
            findings.push(Finding::measured_at_least(
                Rule::LeastPiece,
                format!("bend of {}", piece.mark),
                Measured {
                    value: angle_rad.to_degrees(),
                    plus_minus: None,
                    unit: Unit::Degree,
                },
                around.practice.least_bend.deg(),
            ));
        }
    }
    findings
}

/// What the gas of a run passes before it and behind it, where runs meet.
struct GasWay<'a> {
    model: &'a Model,
    runs: &'a [PlannedRun],
}

impl GasWay<'_> {
    /// Whether all gas of a run passes a component of this kind: in the run itself, in every run that leads
    /// to it, or in every run that it leads to.
    fn passes(&self, run: &PlannedRun, kind: ComponentKind) -> bool {
        let most = self.runs.len();
        self.has(run, kind) || self.all_before(run, kind, most) || self.all_behind(run, kind, most)
    }

    fn has(&self, run: &PlannedRun, kind: ComponentKind) -> bool {
        run.pieces.iter().any(|piece| match &piece.kind {
            PlannedKind::Component { name, .. } | PlannedKind::Crossover { name, .. } => {
                component_kind(self.model, name) == Some(kind)
            }
            _ => false,
        })
    }

    /// `most` keeps runs that lead back to themselves from being followed for ever.
    fn all_before(&self, run: &PlannedRun, kind: ComponentKind, most: usize) -> bool {
        let met = |other: &&PlannedRun| run.starts_on.is_some() && other.ends_on == run.starts_on;
        let before: Vec<&PlannedRun> = self.runs.iter().filter(met).collect();
        most > 0
            && !before.is_empty()
            && before
                .into_iter()
                .all(|run| self.has(run, kind) || self.all_before(run, kind, most - 1))
    }

    fn all_behind(&self, run: &PlannedRun, kind: ComponentKind, most: usize) -> bool {
        let met = |other: &&PlannedRun| run.ends_on.is_some() && other.starts_on == run.ends_on;
        let behind: Vec<&PlannedRun> = self.runs.iter().filter(met).collect();
        most > 0
            && !behind.is_empty()
            && behind
                .into_iter()
                .all(|run| self.has(run, kind) || self.all_behind(run, kind, most - 1))
    }
}
