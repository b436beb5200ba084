//! Are the readings good enough?

use tubewright_build::model::Model;
use tubewright_check::{Finding, Measured, Rule, State, Unit};
use tubewright_survey::GlobalTest;

use crate::stages::Surroundings;
use crate::survey::NINETEEN_IN_TWENTY;

/// ± of an end's direction beyond which a run should not start from it, degrees: 2° is 35 mm on the
/// first metre (common practice, no source).
const DIRECTION_LIMIT_DEG: f64 = 2.0;

/// Findings of the survey and the bodies.
pub(crate) fn findings(model: &Model, around: &Surroundings) -> Vec<Finding> {
    let measured = &around.measured;
    let mut findings = Vec::new();
    let test = measured.adjustment.global_test();
    findings.push(agreement(&test));
    for doubtful in &measured.doubtful {
        findings.push(Finding::stated(
            Rule::DoubtfulReading,
            State::Fail,
            doubtful.sentence(measured.adjustment.network()),
            "Set aside: measure it again, then correct it or leave it out for good (`doubt = \"dropped\"`)",
        ));
    }
    if measured.doubtful.is_empty() {
        findings.push(Finding::stated(
            Rule::DoubtfulReading,
            State::Pass,
            "all readings",
            "",
        ));
    }
    let unchecked: Vec<String> = measured
        .adjustment
        .readings()
        .iter()
        .filter(|reading| !reading.set_aside && reading.is_unchecked())
        .map(|reading| reading.number.to_string())
        .collect();
    findings.push(if unchecked.is_empty() {
        Finding::stated(Rule::UncheckedReading, State::Pass, "all readings", "")
    } else {
        Finding::stated(
            Rule::UncheckedReading,
            State::NotChecked,
            format!("readings {}", unchecked.join(", ")),
            "nothing else checks these: take one more line to each of their places",
        )
    });
    if let Some(problem) = &measured.frame_problem {
        findings.push(Finding::stated(
            Rule::PlaceFound,
            State::Fail,
            "the car's axes",
            problem.to_string(),
        ));
    }
    for end in &model.build.ends {
        let Some(placed) = measured.places.ends.get(end.name.as_str()) else {
            findings.push(Finding::stated(
                Rule::PlaceFound,
                State::Fail,
                end.name.to_string(),
                "its place and direction are not found: read its rim at three clock marks from three marks each",
            ));
            continue;
        };
        if end.given.is_none() {
            findings.push(
                Finding::measured_at_most(
                    Rule::EndDirection,
                    format!("± of the direction of {}", end.name),
                    Measured {
                        value: NINETEEN_IN_TWENTY * placed.direction_sigma_rad().to_degrees(),
                        plus_minus: None,
                        unit: Unit::Degree,
                    },
                    DIRECTION_LIMIT_DEG,
                )
                .at(placed.frame_in_car.origin, "at its centre"),
            );
        }
    }
    for (name, reason) in &around.bodies.missing {
        findings.push(Finding::stated(
            Rule::BodyBuilt,
            State::Fail,
            name.clone(),
            reason.to_string(),
        ));
    }
    if around.bodies.missing.is_empty() {
        findings.push(Finding::stated(
            Rule::BodyBuilt,
            State::Pass,
            "all bodies",
            "",
        ));
    }
    for body in &around.bodies.placed {
        if let Some(scan) = &body.scan {
            let worst = scan
                .residuals_mm
                .iter()
                .map(|(_, r)| *r)
                .fold(0.0, f64::max);
            findings.push(Finding::measured_at_most(
                Rule::ScanPlaced,
                format!("largest distance of a mark from its place in {}", body.name),
                Measured {
                    value: worst,
                    plus_minus: None,
                    unit: Unit::Millimetre,
                },
                SCAN_LIMIT_MM,
            ));
        }
    }
    findings
}

/// What is said of a scan's holes as long as no run passes them.
pub(crate) fn holes_of_scans(around: &Surroundings) -> Vec<Finding> {
    around
        .bodies
        .placed
        .iter()
        .filter(|body| body.scan.is_some())
        .map(|body| {
            Finding::stated(
                Rule::ScanCovers,
                State::NotChecked,
                body.name.clone(),
                "what the scan does not cover is not scanned, not free: look at its holes on the car",
            )
        })
        .collect()
}

/// Whether the readings agree; where none is to spare, nobody can tell.
fn agreement(test: &GlobalTest) -> Finding {
    if test.freedom == 0 {
        Finding::stated(
            Rule::ReadingsAgree,
            State::NotChecked,
            "all readings",
            "none of them is to spare, so none checks another: take more lines than it needs",
        )
    } else if test.is_too_high() {
        Finding::stated(
            Rule::ReadingsAgree,
            State::Fail,
            "all readings",
            format!(
                "their sum of squares is {:.0}, at most {:.0} would be usual: there are more slips, or the ± in [accuracy] is too small",
                test.vtpv, test.high
            ),
        )
    } else {
        Finding::stated(Rule::ReadingsAgree, State::Pass, "all readings in use", "")
    }
}

/// A mark further than this from its place in the scan was mistaken for another, mm (common practice,
/// no source).
const SCAN_LIMIT_MM: f64 = 10.0;
