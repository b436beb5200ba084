//! Where tips blow.

use tubewright_build::model::{EndKind, Model};
use tubewright_check::{Finding, Measured, Rule, State, Unit};

use crate::routes::{PlannedRun, end_of_run, no_tip_columns};
use crate::stages::Surroundings;

/// Findings about tips, for the runs that are judged.
pub(crate) fn findings(model: &Model, around: &Surroundings, runs: &[PlannedRun]) -> Vec<Finding> {
    let (bodies, without_outline) = no_tip_columns(&model.build, &around.bodies);
    let tips: Vec<_> = runs
        .iter()
        .filter_map(|run| {
            let end = end_of_run(&model.build, &model.build.run(&run.name)?.to)?;
            let placed = around.measured.places.ends.get(end.name.as_str())?;
            (end.kind == EndKind::Tip).then_some((run, placed))
        })
        .collect();
    if tips.is_empty() {
        return Vec::new();
    }
    let mut findings: Vec<Finding> = without_outline
        .into_iter()
        .map(|name| {
            Finding::stated(
                Rule::TipPlace,
                State::NotChecked,
                format!("where no tip may be, by {name}"),
                "it has no outline seen from above, or no place yet: say how far a tip must stay away (`no-tip`) of a body of known size instead",
            )
        })
        .collect();
    if bodies.is_empty() {
        findings.push(Finding::stated(
            Rule::TipPlace,
            State::NotChecked,
            "tips under cabin and doors and by the filler",
            "no body says where a tip must not blow: say of cabin floor, doors and filler how far a tip must stay from each (`no-tip`)",
        ));
    }
    for (run, tip) in tips {
        for body in &bodies {
            let at = run.arrival().origin;
            let measured = Measured {
                value: body.distance_mm(at),
                plus_minus: Some(body.plus_minus_mm(tip)),
                unit: Unit::Millimetre,
            };
            findings.push(
                Finding::measured_at_least(
                    Rule::TipPlace,
                    format!("tip of {} from {}, seen from above", run.name, body.body),
                    measured,
                    body.reach_mm,
                )
                .at(at, "at the tip"),
            );
        }
    }
    findings
}
