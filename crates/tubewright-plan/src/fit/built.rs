//! The runs where they really hang: every joint that was measured in its place.

use std::collections::BTreeSet;
use tubewright_build::model::Model;

use super::closing::{Stretch, lean_and_relay};
use super::joints::{joint_of, joints_of};
use super::offers::turn_between;
use super::parts::{joined, split_at_welds};
use super::pose::{JointFound, PoseError, joint_as_built};
use super::steel::Steel;
use super::way::{ClosingFace, leaned};
use crate::routes::{PlannedKind, PlannedRun, in_turn};
use crate::stages::Surroundings;
use tubewright_geometry::Placement;
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
    let turn = in_turn(&split.iter().collect::<Vec<_>>());
    let mut known_of = vec![0; split.len()];
    for number in turn {
        let marks: Vec<String> = split
            .get(number)
            .map(joints_of)
            .unwrap_or_default()
            .into_iter()
            .map(|joint| joint.mark)
            .filter(|mark| steel.standing.contains(mark) && steel.readings.contains_key(mark))
            // One behind a part where runs meet comes with the run that starts there.
            .filter(|mark| joint_of(&split, mark).is_some_and(|(of, _)| of == number))
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
                    if from == 0 {
                        part_where_it_is(&mut split, &known_of, &joint);
                    }
                    found.push(joint);
                }
                Err(trouble) => troubles.push((mark, trouble)),
            }
        }
        if let Some(slot) = known_of.get_mut(number) {
            *slot = known;
        }
    }
    AsBuilt {
        runs: joined(&split),
        faces,
        found,
        troubles,
    }
}

/// Moves a part where runs meet to where the joint behind it was found: the run that brings it leans to there
/// from the last of its joints that was measured, and the runs that end at it end at its inlets where they
/// lie now. Nothing where the joint's run starts from no part.
fn part_where_it_is(split: &mut [PlannedRun], known_of: &[usize], joint: &JointFound) {
    let Some(part) = split.get(joint.run).and_then(|run| run.starts_on.clone()) else {
        return;
    };
    let brings = |run: &PlannedRun| run.brings_its_end() && run.ends_on.as_ref() == Some(&part);
    let Some(number) = split.iter().position(brings) else {
        return;
    };
    let is_its_outlet = |run: &PlannedRun| run.last_joint == joint.planned.mark;
    let Some(run) = split.get_mut(number).filter(|run| is_its_outlet(run)) else {
        return;
    };
    let moved = Placement::between(&run.arrival(), &joint.found.frame_in_car);
    let at = run.arrival();
    let shift = moved.frame(&at).origin - at.origin;
    let turn = turn_between(&at, &moved.frame(&at));
    let known = known_of.get(number).copied().unwrap_or(0);
    let last = run.pieces.len().saturating_sub(1);
    let mut leant = leaned(run, known, last, shift, turn);
    if let Some(piece) = leant.pieces.last_mut() {
        piece.frame_in = moved.frame(&piece.frame_in);
        piece.frame_out = moved.frame(&piece.frame_out);
        for element in &mut piece.elements {
            *element = moved.tube(element);
        }
        if let PlannedKind::Crossover { origin, .. } = &mut piece.kind {
            *origin = moved.point(*origin);
        }
    }
    leant.end_point = moved.point(leant.end_point);
    *run = leant;
    for (other, run) in split.iter_mut().enumerate() {
        if other != number && run.ends_on.as_ref() == Some(&part) {
            run.end_point = moved.point(run.end_point);
            run.end_direction = moved.direction(run.end_direction);
        }
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
