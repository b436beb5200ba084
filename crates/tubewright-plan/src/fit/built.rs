//! The runs where they really hang: every joint that was measured in its place.

use std::collections::BTreeSet;
use tubewright_build::model::Model;

use super::closing::{Stretch, closed_to_its_end, lean_and_relay};
use super::joints::{joint_of, joints_of};
use super::offers::turn_between;
use super::parts::{joined, split_at_welds};
use super::pose::{JointFound, PoseError, joint_as_built};
use super::steel::Steel;
use super::way::{ClosingFace, leaned};
use crate::routes::{PlannedKind, PlannedRun, in_turn};
use crate::stages::Surroundings;
use tubewright_geometry::{Frame, Placement};
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
    let mut split = split_at_welds(model, runs, plan);
    let cut: BTreeSet<String> = steel.cut.keys().cloned().collect();
    let mut faces: Vec<ClosingFace> = Vec::new();
    let mut found = Vec::new();
    let mut troubles = Vec::new();
    let mut turn = in_turn(&split.iter().collect::<Vec<_>>());
    // Where a part lies is known from the run that starts there: those that only end at it come after that.
    turn.sort_by_key(|number| {
        split
            .get(*number)
            .is_some_and(|run| run.ends_at_part().is_some())
    });
    let mut known_of = vec![0; split.len()];
    // A joint that is measured further on is put where it was found: it does not hold what lies before it.
    let mut unmeasured = steel.clone();
    unmeasured
        .standing
        .retain(|mark| !steel.readings.contains_key(mark));
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
                        let stretch = Stretch::behind(model, run, from, &unmeasured);
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
                        for closed in part_where_it_is(&mut split, &known_of, &joint) {
                            faces.extend(comes_to_its_end(model, &mut split, &closed, steel, &cut));
                        }
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

/// A run whose end has moved, and how.
struct MovedEnd {
    run: usize,
    by: Placement,
}

/// Moves a part where runs meet to where the joint behind it was found: the run that brings it leans to there
/// from the last of its joints that was measured, and the other runs that end at it have their ends at its
/// inlets where they lie now. Nothing where the joint's run starts from no part.
fn part_where_it_is(
    split: &mut [PlannedRun],
    known_of: &[usize],
    joint: &JointFound,
) -> Vec<MovedEnd> {
    let mut ends = Vec::new();
    let Some(part) = split.get(joint.run).and_then(|run| run.starts_on.clone()) else {
        return ends;
    };
    let is_its_outlet = |run: &PlannedRun| {
        run.brings_its_end()
            && run.ends_on.as_ref() == Some(&part)
            && run.last_joint == joint.planned.mark
    };
    let Some(number) = split.iter().position(is_its_outlet) else {
        return ends;
    };
    let Some(run) = split.get_mut(number) else {
        return ends;
    };
    let at = run.arrival();
    let by = Placement::between(&at, &joint.found.frame_in_car);
    let known = known_of.get(number).copied().unwrap_or(0);
    let last = run.pieces.len().saturating_sub(1);
    let mut leant = leaned_with(run, known, last, &at, &by);
    if let Some(piece) = leant.pieces.last_mut() {
        piece.frame_in = by.frame(&piece.frame_in);
        piece.frame_out = by.frame(&piece.frame_out);
        for element in &mut piece.elements {
            *element = by.tube(element);
        }
        if let PlannedKind::Crossover { pose, .. } = &mut piece.kind {
            *pose = pose.moved(&by);
        }
    }
    leant.end_point = by.point(leant.end_point);
    *run = leant;
    for (other, run) in split.iter_mut().enumerate() {
        if other != number && run.ends_on.as_ref() == Some(&part) {
            run.end_point = by.point(run.end_point);
            run.end_direction = by.direction(run.end_direction);
            ends.push(MovedEnd { run: other, by });
        }
    }
    ends
}

/// The pieces before `until` leaning from piece `from` on, as a frame at their end is moved.
fn leaned_with(
    run: &PlannedRun,
    from: usize,
    until: usize,
    at: &Frame,
    by: &Placement,
) -> PlannedRun {
    let moved = by.frame(at);
    leaned(
        run,
        from,
        until,
        moved.origin - at.origin,
        turn_between(at, &moved),
    )
}

/// A run that ends at a part which has moved: it leans to there when its last joint stands, else the piece that
/// closes it is cut to the gap.
fn comes_to_its_end(
    model: &Model,
    split: &mut [PlannedRun],
    moved: &MovedEnd,
    steel: &Steel,
    cut: &BTreeSet<String>,
) -> Vec<ClosingFace> {
    let Some(run) = split.get_mut(moved.run) else {
        return Vec::new();
    };
    if steel.standing.contains(&run.last_joint) {
        *run = leaned_with(run, 0, run.pieces.len(), &run.arrival(), &moved.by);
        return Vec::new();
    }
    match closed_to_its_end(model, run, steel, cut) {
        Some((closed, faces)) => {
            *run = closed;
            faces
        }
        None => Vec::new(),
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
