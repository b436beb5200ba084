//! Tacked joints: whether each was measured, and how sure that is.

use tubewright_build::model::Model;
use tubewright_check::{Finding, Rule, State};

use super::Judged;
use crate::fit::{JointFound, PoseError, Steel, joint_as_built, split_at_welds};
use crate::stages::{Supply, Surroundings};

pub(super) fn findings(
    model: &Model,
    around: &Surroundings,
    judged: Judged<'_>,
    supply: Option<&Supply>,
) -> Vec<Finding> {
    let (Judged::Chosen { runs, .. }, Some(supply)) = (judged, supply) else {
        return Vec::new();
    };
    let steel = Steel::of(&model.shop);
    if steel.standing.is_empty() {
        return vec![Finding::stated(
            Rule::JointsMeasured,
            State::DoesNotApply,
            "all joints",
            "nothing is tacked yet",
        )];
    }
    let split = split_at_welds(model, runs, &supply.whole);
    steel
        .standing
        .iter()
        .map(|mark| finding(mark, &joint_as_built(model, around, &split, &steel, mark)))
        .collect()
}

fn finding(mark: &str, found: &Result<JointFound, PoseError>) -> Finding {
    let stated = |state, advice: String| Finding::stated(Rule::JointsMeasured, state, mark, advice);
    match found {
        Err(PoseError::NoReadings(_)) => stated(
            State::NotChecked,
            format!(
                "it is tacked and not measured: tape to it and hand the tapes in (`tubewright tacked FOLDER {mark} --tape ...`)"
            ),
        ),
        Err(PoseError::NoJoint(_)) => stated(
            State::DoesNotApply,
            "the plan as it stands has no such joint any more".to_owned(),
        ),
        Err(error) => stated(State::Fail, error.to_string()),
        Ok(found) => {
            let doubtful: Vec<&str> = found
                .readings
                .iter()
                .filter(|seen| seen.is_doubtful)
                .map(|seen| seen.from.as_str())
                .collect();
            if !doubtful.is_empty() {
                return stated(
                    State::Fail,
                    format!(
                        "doubtful reading from {}: tape it again",
                        doubtful.join(", ")
                    ),
                );
            }
            match &found.loosest {
                Some(loose) => stated(
                    State::NotChecked,
                    format!(
                        "its tapes leave it loose {}: ± {:.0} mm that way; tape from a mark that sees it from another side",
                        loose.words, loose.plus_minus_mm
                    ),
                ),
                None => stated(
                    State::Pass,
                    format!("{} readings agree", found.readings.len()),
                ),
            }
        }
    }
}
