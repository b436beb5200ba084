//! What every run must have in it: a catalyst, a flex section, and no bend below what the shop makes.

use tubewright_build::model::{ComponentKind, Model};
use tubewright_check::{Finding, Measured, Rule, State, Unit};

use crate::routes::{GasWay, PlannedKind, PlannedRun, component_kind};
use crate::stages::Surroundings;

/// The findings of one of these runs.
pub(super) fn findings(
    model: &Model,
    around: &Surroundings,
    runs: &[PlannedRun],
    run: &PlannedRun,
) -> Vec<Finding> {
    let way = GasWay::of_runs(runs);
    let has = |run: &PlannedRun, kind: ComponentKind| {
        run.pieces.iter().any(|piece| match &piece.kind {
            PlannedKind::Component { name, .. } | PlannedKind::Crossover { name, .. } => {
                component_kind(model, name) == Some(kind)
            }
            _ => false,
        })
    };
    // All gas of a run passes a component: in the run itself, before it or behind it.
    let passes = |kind: ComponentKind| {
        let number = runs.iter().position(|other| other.name == run.name);
        let own = |number: usize| runs.get(number).is_some_and(|run| has(run, kind));
        number.is_some_and(|number| {
            own(number) || way.all_before(number, &own) || way.all_behind(number, &own)
        })
    };
    let stated = |rule, kind, advice: &str| {
        let (state, advice) = if passes(kind) {
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
