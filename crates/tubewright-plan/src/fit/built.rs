//! The runs where they really hang: every joint that was measured in its place.

use std::collections::BTreeSet;
use tubewright_build::model::Model;

use super::closing::{Stretch, lean_and_relay};
use super::joints::joints_of;
use super::parts::{joined, split_at_welds};
use super::pose::{JointFound, PoseError, joint_as_built};
use super::steel::Steel;
use super::way::ClosingFace;
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
    /// Faces of the pieces that close a stretch behind a measured joint.
    pub faces: Vec<ClosingFace>,
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
    let mut faces: Vec<ClosingFace> = Vec::new();
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
                        let stretch = Stretch::behind(model, run, from, steel);
                        let (leant, closed) = lean_and_relay(run, known, &joint, &stretch, &cut);
                        *run = leant;
                        // What closes is known only when the last joint before it is.
                        let again = |face: &ClosingFace| {
                            closed.iter().any(|closed| closed.mark == face.mark)
                        };
                        faces.retain(|face| !again(face));
                        faces.extend(closed);
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
        faces,
        found,
        troubles,
    }
}

/// The runs of the chosen plan as they hang, with the faces of their closing pieces: as planned when no
/// joint was measured, or when there is no cutting plan to say where the welds are.
#[must_use]
pub fn runs_as_built(model: &Model, around: &Surroundings, planned: &[PlannedRun]) -> AsBuilt {
    let steel = Steel::of(&model.shop);
    let as_planned = || AsBuilt {
        runs: planned.to_vec(),
        found: Vec::new(),
        faces: Vec::new(),
        troubles: Vec::new(),
    };
    if steel.readings.is_empty() {
        return as_planned();
    }
    match crate::stages::supply(model, &around.practice, planned, &[]) {
        Ok(supply) => as_built(model, around, planned, &supply.whole, &steel),
        Err(_) => as_planned(),
    }
}
