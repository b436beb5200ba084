//! Whether each gap is kept at the joints that are still to be tacked, as surely as the check distances of the fit
//! sheet can hold them. The gaps of the plan take a joint to be held the same every way; what the marks of this
//! car really leave is known here. Nothing that is short here is known to be short: it is for the eye at the car,
//! and once the joint is tacked and taped its gaps are judged from where it is.

use tubewright_build::model::Model;
use tubewright_check::{Finding, Rule, State};

use super::Judged;
use crate::fit::{JointCheck, Steel, fit_sheet};
use crate::stages::{Supply, Surroundings};

pub(super) fn findings(
    model: &Model,
    around: &Surroundings,
    judged: Judged<'_>,
    supply: Option<&Supply>,
) -> Vec<Finding> {
    let runs = judged.runs();
    let Some(supply) = supply.filter(|_| !runs.is_empty()) else {
        return Vec::new();
    };
    let steel = Steel::of(&model.shop);
    let sheet = fit_sheet(model, around, runs, &supply.whole);
    let open: Vec<&JointCheck> = sheet
        .steps
        .iter()
        .flat_map(|step| &step.checks)
        .filter(|check| !steel.standing.contains(&check.joint))
        .collect();
    let stated = |state, subject: &str, advice: String| {
        Finding::stated(Rule::TapesKeepGaps, state, subject, advice)
    };
    if open.is_empty() {
        return vec![stated(
            State::DoesNotApply,
            "all joints",
            "nothing is left to be tacked".to_owned(),
        )];
    }
    let mut findings: Vec<Finding> = open
        .iter()
        .filter(|check| check.tolerance.most_mm < 0.0)
        .map(|check| stated(State::NotChecked, &check.joint, short_words(check)))
        .collect();
    let unsure = |check: &&&JointCheck| {
        let is_loose = check.too_few.is_some() || check.loose.is_some();
        check.tolerance.most_mm >= 0.0 && (is_loose || check.only_mark().is_some())
    };
    let unsure: Vec<&str> = open
        .iter()
        .filter(unsure)
        .map(|check| check.joint.as_str())
        .collect();
    if !unsure.is_empty() {
        findings.push(stated(
            State::NotChecked,
            &unsure.join(", "),
            "marks that can be seen from there leave the joint loose in some direction, which the fit sheet \
             names: punch one more mark that sees it from another side"
                .to_owned(),
        ));
    }
    if findings.is_empty() {
        findings.push(stated(State::Pass, "all joints", String::new()));
    }
    findings
}

fn short_words(check: &JointCheck) -> String {
    let better = check.better_words();
    let what = if better.is_empty() {
        "a mark that sees it from another side, or more room".to_owned()
    } else {
        format!(
            "{}, or a mark that sees it from another side",
            better.join(", or ")
        )
    };
    format!(
        "even when its tapes read true the gap to {} may be {:.1} mm short (19 in 20): look at it there before the \
         next part goes on. What would do: {what}",
        check.tolerance_by.as_deref().unwrap_or("a body"),
        -check.tolerance.most_mm
    )
}
