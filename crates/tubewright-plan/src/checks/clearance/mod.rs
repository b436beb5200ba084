//! Gaps of the rounded runs to every body, to each other and to themselves, in every position.

mod advice;
mod between;
mod body;
mod parts;
mod room;
mod scanned;

pub use room::Room;
pub(crate) use room::{other_pieces, room_to_body, room_to_piece};

use tubewright_build::model::Class;
use tubewright_check::{Finding, Rule, State};
use tubewright_geometry::motion::Motion;

use crate::bodies::Bodies;
use crate::held::RunHold;
use crate::places::Joint;
use crate::routes::PlannedRun;

/// How far a reported gap may lie below the true one, mm: a tenth of what a tape tells apart.
const TOLERANCE_MM: f64 = 0.1;

/// A run with what its clearances need to know.
#[derive(Clone, Debug)]
pub struct MovingRun<'a> {
    /// The rounded run.
    pub run: &'a PlannedRun,
    /// What holds it while it is built; `None` when an end of it is not found.
    pub hold: Option<RunHold>,
    /// Motion of each piece, in the order of the pieces.
    pub piece_motions: Vec<Motion>,
}

/// One finding for each run and body; a second one for a scan, whose holes are not free.
#[must_use]
pub fn clearance_findings(runs: &[MovingRun<'_>], bodies: &Bodies, joint: &Joint) -> Vec<Finding> {
    let mut findings = Vec::new();
    for moving in runs {
        findings.extend(findings_alone(moving, bodies, joint));
    }
    for (i, first) in runs.iter().enumerate() {
        for second in runs.iter().skip(i + 1) {
            findings.push(between::two_runs(first, second, joint));
        }
    }
    findings
}

/// The findings of [`clearance_findings`] that one run takes part in.
#[must_use]
pub fn clearance_findings_of(
    run: &MovingRun<'_>,
    others: &[MovingRun<'_>],
    bodies: &Bodies,
    joint: &Joint,
) -> Vec<Finding> {
    let mut findings = findings_alone(run, bodies, joint);
    findings.extend(
        others
            .iter()
            .map(|other| between::two_runs(run, other, joint)),
    );
    findings
}

fn findings_alone(moving: &MovingRun<'_>, bodies: &Bodies, joint: &Joint) -> Vec<Finding> {
    let mut findings = Vec::new();
    for body in &bodies.placed {
        let finding = body::finding(moving, body, joint);
        match scanned::passed(moving, body) {
            Some(passed) => {
                findings.push(passed.judged(finding, &body.name));
                findings.push(passed.finding(moving, body));
            }
            None => findings.push(finding),
        }
    }
    for (name, reason) in &bodies.missing {
        findings.push(Finding::stated(
            Rule::ClearanceToBody,
            State::NotChecked,
            format!("{} to {name}", moving.run.name),
            format!("the body is not there: {reason}"),
        ));
    }
    findings.push(between::with_itself(moving));
    findings
}

/// The rule under which a body of this class is checked.
#[must_use]
pub const fn rule_of(class: Class) -> Rule {
    match class {
        Class::Ground => Rule::ClearanceToGround,
        Class::FuelBrake => Rule::ClearanceToFuelBrake,
        _ => Rule::ClearanceToBody,
    }
}
