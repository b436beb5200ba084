//! Joints of a planned run: where they are and where their twelve o'clock is.

use tubewright_geometry::{Frame, math};

use crate::routes::{PlannedKind, PlannedRun};

/// A joint of a planned run.
#[derive(Clone, Debug, PartialEq)]
pub struct Joint {
    /// Its mark.
    pub mark: String,
    /// Number of the piece downstream of it; one past the last at the end of the run.
    pub piece: usize,
    /// Its place and direction. Twelve o'clock is the witness line of the part whose open end it is before
    /// anything meets it: of what ends here (the outside of the last bend, or the run's own twelve before
    /// any bend), or of what follows where that is tacked first ([`PlannedRun::lined_from_behind`]).
    pub frame: Frame,
}

/// The hour nearest to a clock angle (radians, clockwise looking downstream): *3 o'clock*.
#[must_use]
pub fn hour_words(clock_rad: f64) -> String {
    let hour = (clock_rad.to_degrees() / 30.0).round().rem_euclid(12.0);
    format!("{:.0} o'clock", if hour < 0.5 { 12.0 } else { hour })
}

/// The joints of a run in the order of flow, its start first.
#[must_use]
pub fn joints_of(run: &PlannedRun) -> Vec<Joint> {
    let mut frame = run.start;
    let mut joints = Vec::with_capacity(run.pieces.len() + 1);
    for (index, piece) in run.pieces.iter().enumerate() {
        joints.push(Joint {
            mark: piece.joint.clone(),
            piece: index,
            frame: match run.lined_from_behind.contains(&piece.joint) {
                true => lined_from_behind(run, index, &frame),
                false => frame,
            },
        });
        frame = match piece.kind {
            // The witness line lies on the outside of a bend; its frame's twelve on the inside.
            PlannedKind::Bend { .. } => piece.frame_out.rolled(math::PI),
            PlannedKind::Crossover { .. } => piece.frame_out,
            PlannedKind::Straight { .. } | PlannedKind::Component { .. } => {
                Frame::from_axes(piece.frame_out.origin, frame.travel(), frame.twelve())
            }
        };
    }
    joints.push(Joint {
        mark: run.last_joint.clone(),
        piece: run.pieces.len(),
        frame,
    });
    joints
}

/// The frame with the line of the first bend from this piece on as its twelve o'clock: a line on the outside of
/// a bend runs on along the straight before it.
fn lined_from_behind(run: &PlannedRun, from: usize, frame: &Frame) -> Frame {
    let mut behind = run.pieces.iter().skip(from);
    let bend = behind.find(|piece| matches!(piece.kind, PlannedKind::Bend { .. }));
    let outside = bend.and_then(|bend| {
        frame
            .travel()
            .normal_toward(-bend.frame_in.twelve().vector())
    });
    outside.map_or(*frame, |outside| {
        Frame::from_axes(frame.origin, frame.travel(), outside)
    })
}

/// The joint of this mark with the number of its run. The joint behind a part where runs meet is that of the
/// run that starts there: what is tacked behind it is that run.
#[must_use]
pub fn joint_of(runs: &[PlannedRun], mark: &str) -> Option<(usize, Joint)> {
    let mut found = runs.iter().enumerate().filter_map(|(number, run)| {
        joints_of(run)
            .into_iter()
            .find(|joint| joint.mark == mark)
            .map(|joint| (number, joint))
    });
    let first = found.next()?;
    let is_shared = |joint: &Joint, run: usize| {
        runs.get(run)
            .is_some_and(|run| run.brings_its_end() && joint.piece == run.pieces.len())
    };
    match is_shared(&first.1, first.0) {
        true => found.next().or(Some(first)),
        false => Some(first),
    }
}
