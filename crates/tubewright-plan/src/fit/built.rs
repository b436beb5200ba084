//! The runs where they really hang: every joint that was measured in its place.

use std::collections::BTreeSet;
use tubewright_build::model::Model;

use super::joints::joints_of;
use super::offers::{first_standing, lean_and_relay};
use super::parts::{joined, split_at_welds};
use super::pose::{JointFound, PoseError, joint_as_built};
use super::steel::Steel;
use crate::routes::PlannedRun;
use crate::stages::Surroundings;
use tubewright_stock::StockPlan;

/// The runs as built and what was found of each measured joint, in the order of flow.
#[derive(Clone, Debug)]
pub struct AsBuilt {
    /// The runs: up to a measured joint leaning to where it was found, behind it laid from there.
    pub runs: Vec<PlannedRun>,
    /// What was found.
    pub found: Vec<JointFound>,
    /// Joints with readings that give no place.
    pub troubles: Vec<(String, PoseError)>,
}

/// Puts every joint that is tacked and measured where its readings say. A joint behind another is
/// looked for where the first one leaves it.
#[must_use]
pub fn as_built(
    model: &Model,
    around: &Surroundings,
    runs: &[PlannedRun],
    plan: &StockPlan,
    steel: &Steel,
) -> AsBuilt {
    let mut split = split_at_welds(runs, plan);
    let cut: BTreeSet<String> = steel.cut.keys().cloned().collect();
    let mut found = Vec::new();
    let mut troubles = Vec::new();
    for number in 0..split.len() {
        let marks: Vec<String> = split
            .get(number)
            .map(joints_of)
            .unwrap_or_default()
            .into_iter()
            .map(|joint| joint.mark)
            .filter(|mark| steel.standing.contains(mark) && steel.readings.contains_key(mark))
            .collect();
        let mut known = 0;
        for mark in marks {
            match joint_as_built(model, around, &split, steel, &mark) {
                Ok(joint) => {
                    let from = joint.planned.piece;
                    if let Some(run) = split.get_mut(joint.run) {
                        let until = first_standing(run, from, steel);
                        *run = lean_and_relay(run, known, &joint, until, &cut);
                        known = from;
                    }
                    found.push(joint);
                }
                Err(trouble) => troubles.push((mark, trouble)),
            }
        }
    }
    AsBuilt {
        runs: joined(&split),
        found,
        troubles,
    }
}

/// The runs of the chosen plan as they hang: the same when no joint was measured, or when there is no
/// cutting plan to say where the welds are.
#[must_use]
pub fn runs_as_built(
    model: &Model,
    around: &Surroundings,
    planned: &[PlannedRun],
) -> Vec<PlannedRun> {
    let steel = Steel::of(&model.shop);
    if steel.readings.is_empty() {
        return planned.to_vec();
    }
    match crate::stages::supply(model, &around.practice, planned, &[]) {
        Ok(supply) => as_built(model, around, planned, &supply.plan, &steel).runs,
        Err(_) => planned.to_vec(),
    }
}
