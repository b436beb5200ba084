//! Are the rounded runs good?

use tubewright_build::model::{Model, RunEnd};
use tubewright_check::{Finding, Measured, Rule, State, Unit};
use tubewright_geometry::motion::Motion;
use tubewright_stock::StockPlan;

use super::Judged;
use super::clearance::{MovingRun, clearance_findings};
use crate::hangers::hangers;
use crate::held::RunHold;
use crate::routes::{
    MetPort, PlannedKind, PlannedRun, PosedProblem, end_of_run, riding_motions, would_help_words,
};
use crate::sensors::sensors;
use crate::stages::{END_TOLERANCE_DEG, END_TOLERANCE_MM, Routed, Surroundings};

/// Findings of the routes: the chosen plan is judged, else the first alternative.
pub(crate) fn findings(
    model: &Model,
    around: &Surroundings,
    judged: Judged<'_>,
    plan: Option<&StockPlan>,
) -> Vec<Finding> {
    let stated = |state, subject: &str, advice: String| {
        Finding::stated(Rule::RouteFound, state, subject, advice)
    };
    let mut findings = Vec::new();
    let (posed, runs): (&PosedProblem, &[PlannedRun]) = match judged {
        Judged::NotRouted => {
            return vec![stated(
                State::NotChecked,
                "all runs",
                "not routed yet (`tubewright route`)".to_owned(),
            )];
        }
        Judged::Chosen {
            posed,
            runs,
            troubles,
        } => {
            for (name, trouble) in troubles {
                findings.push(stated(State::Fail, name, trouble.to_string()));
            }
            findings.extend(
                runs.iter()
                    .filter_map(|run| start_finding(posed, runs, run)),
            );
            (posed, runs)
        }
        Judged::Routed(posed, routed) => {
            let runs: &[PlannedRun] = match routed {
                Routed::Found(alternatives) => alternatives.first().map_or(&[], |best| &best.runs),
                Routed::NotFound {
                    work_units,
                    would_help,
                } => {
                    let words = format!(
                        "no route found in this effort ({work_units} work units); there may be one: give more effort, or more room"
                    );
                    findings.push(stated(
                        State::Fail,
                        "all runs",
                        with_help(words, would_help),
                    ));
                    &[]
                }
                Routed::NoneExists { proof, would_help } => {
                    let words = format!("no route exists: {proof}");
                    findings.push(stated(
                        State::Fail,
                        "all runs",
                        with_help(words, would_help),
                    ));
                    &[]
                }
                Routed::NothingToRoute => {
                    findings.push(stated(
                        State::NotChecked,
                        "all runs",
                        "there is no run to route".to_owned(),
                    ));
                    &[]
                }
            };
            (posed, runs)
        }
    };
    for (name, reason) in &posed.left_out {
        findings.push(stated(State::Fail, name, reason.to_string()));
    }
    for run in runs {
        findings.push(Finding::stated(
            Rule::RouteFound,
            State::Pass,
            run.name.clone(),
            "",
        ));
        // One that brings the part that it ends at ends where that does.
        if !run.brings_its_end() {
            findings.extend(end_findings(model, run));
        }
        findings.extend(crossover_findings(posed, run));
        findings.extend(super::kept::findings(model, around, runs, run));
    }
    findings.extend(super::removal::findings(model, around, runs));
    let sensors = sensors(model, around, runs, plan);
    findings.extend(crate::sensors::findings(&sensors));
    findings.extend(crate::hangers::findings(&hangers(
        model, around, runs, plan, &sensors,
    )));
    findings.extend(super::wishes::side_findings(model, around, runs));
    findings.extend(super::wishes::pin_findings(model, around, posed, runs));
    findings.extend(super::tips::findings(model, around, runs));
    findings.extend(clearance_findings(
        &moving_runs(model, around, runs),
        &around.bodies,
        &around.measured.places.joint,
    ));
    findings
}

/// How far the start of a chosen run lies from where the survey has it now.
fn start_finding(posed: &PosedProblem, runs: &[PlannedRun], run: &PlannedRun) -> Option<Finding> {
    let mut posed_runs = posed.runs.iter();
    let posed_run = posed_runs.find(|posed| posed.name == run.name)?;
    if let Some(met) = &posed_run.starts_at {
        return start_at_part(posed, runs, run, met);
    }
    let now = posed_run.start.frame_in_car;
    // A sawn outlet may be anywhere on its own line.
    let off = run.start.origin - now.origin;
    let along = run.sawn.map_or(0.0, |_| off.dot(now.travel().vector()));
    let measured = Measured {
        value: (off - now.travel() * along).norm(),
        plus_minus: None,
        unit: Unit::Millimetre,
    };
    let subject = format!(
        "start of {} from where it was when the plan was chosen",
        run.name
    );
    Some(
        Finding::measured_at_most(Rule::EndPlace, subject, measured, END_TOLERANCE_MM)
            .at(now.origin, "at the start of the run"),
    )
}

/// How far the first piece of a run lies from the outlet that it starts from, where the part lies now.
fn start_at_part(
    posed: &PosedProblem,
    runs: &[PlannedRun],
    run: &PlannedRun,
    met: &MetPort,
) -> Option<Finding> {
    let part = posed.problem.crossovers.get(met.passage.crossover)?;
    let mut pieces = runs.iter().flat_map(|run| &run.pieces);
    let pose = pieces.find_map(|piece| match &piece.kind {
        PlannedKind::Crossover { name, pose, .. } if *name == met.component => Some(*pose),
        _ => None,
    })?;
    let at = run.pieces.first()?.frame_in.origin;
    let measured = Measured {
        value: at.distance(pose.outlet(part.ports(met.passage.side)).0),
        plus_minus: None,
        unit: Unit::Millimetre,
    };
    let subject = format!("start of {} from the outlet of {}", run.name, met.component);
    Some(
        Finding::measured_at_most(Rule::EndPlace, subject, measured, END_TOLERANCE_MM)
            .at(at, "at the start of the run"),
    )
}

/// The runs with their motions and their ±.
#[must_use]
pub fn moving_runs<'a>(
    model: &Model,
    around: &Surroundings,
    runs: &'a [PlannedRun],
) -> Vec<MovingRun<'a>> {
    let places = &around.measured.places;
    runs.iter()
        .filter_map(|run| {
            let written = model.build.run(&run.name)?;
            let piece_motions = riding_motions(model, places, written, run)
                .unwrap_or_else(|_| vec![Motion::FIXED; run.pieces.len()]);
            let end_name = |end: &'_ RunEnd| match end {
                RunEnd::End(name) => Some(name.to_string()),
                RunEnd::Port { .. } => None,
            };
            let [start, end] = [&written.from, &written.to].map(end_name);
            let hold = RunHold::between(
                [start.as_deref(), end.as_deref()],
                &model.build,
                places,
                &around.measured.accuracy,
                &around.practice,
            );
            Some(MovingRun {
                run,
                hold,
                piece_motions,
            })
        })
        .collect()
}

fn end_findings(model: &Model, run: &PlannedRun) -> Vec<Finding> {
    let within = model
        .build
        .run(&run.name)
        .and_then(|written| end_of_run(&model.build, &written.to))
        .and_then(|end| {
            end.given
                .as_ref()?
                .within
                .as_ref()
                .map(|within| within.mm())
        })
        .unwrap_or(END_TOLERANCE_MM);
    vec![
        Finding::measured_at_most(
            Rule::EndPlace,
            format!("end of {} from where it should be", run.name),
            Measured {
                value: run.end_error_mm(),
                plus_minus: None,
                unit: Unit::Millimetre,
            },
            within,
        )
        .at(run.arrival().origin, "at the end of the pieces"),
        Finding::measured_at_most(
            Rule::EndAim,
            format!("aim of {}", run.name),
            Measured {
                value: run.end_error_rad().to_degrees(),
                plus_minus: None,
                unit: Unit::Degree,
            },
            END_TOLERANCE_DEG,
        ),
    ]
}

/// Where the pieces before a crossover end, against its inlet: behind it the run starts anew from the
/// outlet, so that nothing at the tip tells.
fn crossover_findings(posed: &PosedProblem, run: &PlannedRun) -> Vec<Finding> {
    let mut findings = Vec::new();
    for piece in &run.pieces {
        let PlannedKind::Crossover { name, side, pose } = &piece.kind else {
            continue;
        };
        let Some(crossover) = posed.part(name) else {
            continue;
        };
        let ports = crossover.ports(*side);
        let turned = |v| pose.turn.vector(v);
        let inlet = piece.frame_out.origin - turned(ports.outlet) + turned(ports.inlet);
        let arrival = piece.frame_in;
        let measured = |value, unit| Measured {
            value,
            plus_minus: None,
            unit,
        };
        findings.push(
            Finding::measured_at_most(
                Rule::EndPlace,
                format!("{} from the inlet of {name}", run.name),
                measured(arrival.origin.distance(inlet), Unit::Millimetre),
                END_TOLERANCE_MM,
            )
            .at(inlet, format!("at {}", piece.joint)),
        );
        let aim = arrival.travel().angle_to(pose.inlet(ports).1);
        findings.push(Finding::measured_at_most(
            Rule::EndAim,
            format!("aim of {} into {name}", run.name),
            measured(aim.to_degrees(), Unit::Degree),
            END_TOLERANCE_DEG,
        ));
    }
    findings
}

fn with_help(words: String, would_help: &[String]) -> String {
    match would_help_words(would_help) {
        Some(help) => format!("{words}. {help}"),
        None => words,
    }
}
