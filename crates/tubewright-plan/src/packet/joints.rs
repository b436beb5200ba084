//! The joints of all runs: which are welded, which lie inside one part and need nothing.

use crate::fit::{Fastening, is_bought_flange};
use crate::routes::{PlannedKind, PlannedRun, component_item, port_of_side};
use crate::stages::Supply;
use tubewright_build::model::{End, EndKind, Flows, Model, RunEnd};
use tubewright_geometry::{Frame, Length};
use tubewright_stock::TubeSpec;

/// What is done at a joint.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum JointKind {
    /// Two parts are welded.
    Weld,
    /// Both pieces are one part: the bend keeps its leg.
    InOnePart,
    /// The run begins here, at the engine or at another part.
    Start,
    /// The run ends here.
    End,
}

/// A joint.
#[derive(Clone, Debug, PartialEq)]
pub struct Joint {
    /// Its mark (`J4`). A weld inside a straight that two legs share has that of the joint before the straight,
    /// at which nothing is joined.
    pub mark: String,
    /// The straight that a weld lies inside of.
    pub inside: Option<String>,
    /// What is done.
    pub kind: JointKind,
    /// The run.
    pub run: String,
    /// What is upstream and downstream of it, as painted on the steel.
    pub between: [String; 2],
    /// Where it is, travelling downstream.
    pub frame: Frame,
    /// The tube there, when the stock file has it.
    pub tube: Option<TubeSpec>,
    /// What the run starts from or ends at there.
    pub meets: Option<EndKind>,
    /// How that is held, when it is not welded to.
    pub held: Option<Fastening>,
    /// Whether there is a seam once round the tube: between two parts, or with the flange, collar or tube of the
    /// car that is met.
    pub is_welded: bool,
}

impl Joint {
    /// Length of its seam once round the outside, when there is one.
    #[must_use]
    pub fn weld_mm(&self) -> Option<f64> {
        let tube = self.tube.as_ref().filter(|_| self.is_welded);
        tube.map(|tube| tubewright_geometry::math::PI * tube.od.mm())
    }
}

/// The joints in the order of the runs, upstream first.
#[must_use]
pub fn joints_of(model: &Model, runs: &[PlannedRun], supply: &Supply) -> Vec<Joint> {
    runs.iter()
        .flat_map(|run| joints_of_run(model, run, supply, runs))
        .collect()
}

/// A crossover is one part: it carries the mark that the first run gave it.
pub(super) fn painted<'a>(crossover: &str, mark: &'a str, runs: &'a [PlannedRun]) -> &'a str {
    runs.iter()
        .flat_map(|run| &run.pieces)
        .find(
            |piece| matches!(&piece.kind, PlannedKind::Crossover { name, .. } if name == crossover),
        )
        .map_or(mark, |piece| &piece.mark)
}

/// The end of the car that a run begins or stops at.
fn met<'a>(model: &'a Model, end: Option<&RunEnd>) -> Option<&'a End> {
    match end {
        Some(RunEnd::End(name)) => model.build.end(name),
        _ => None,
    }
}

/// What a run starts from or ends at, in words.
fn end_words(model: &Model, end: Option<&RunEnd>, else_words: &str) -> String {
    match end {
        Some(RunEnd::End(name)) => {
            let kind = model.build.end(name).map(|end| {
                let held = Fastening::of(end).map(Fastening::end_words);
                held.unwrap_or(match end.kind {
                    EndKind::Flange => "flange",
                    EndKind::SawnTube => "sawn tube",
                    EndKind::Tip => "tip",
                    EndKind::Joint => "tacked joint",
                })
            });
            kind.map_or_else(|| name.to_string(), |kind| format!("{name} ({kind})"))
        }
        Some(RunEnd::Port { component, port }) => port.as_ref().map_or_else(
            || component.to_string(),
            |port| format!("{component}, port {port}"),
        ),
        None => else_words.to_owned(),
    }
}

/// What a run starts from, in words.
fn start_words(model: &Model, run: &PlannedRun, from: Option<&RunEnd>) -> String {
    match (&run.sawn, from) {
        (Some(_), Some(RunEnd::End(name))) => format!("{name} (sawn off)"),
        _ => end_words(model, from, "the start"),
    }
}

fn joints_of_run(
    model: &Model,
    run: &PlannedRun,
    supply: &Supply,
    all: &[PlannedRun],
) -> Vec<Joint> {
    let written = model.build.run(&run.name);
    let tube = tube_of(supply, run);
    // The parts that a piece is in, by the marks they serve.
    let parts_with = |mark: &str| -> Vec<Vec<&str>> {
        supply
            .plan
            .cuts
            .iter()
            .flat_map(|cut| &cut.parts)
            .map(|part| part.serves.iter().map(|s| s.mark.as_str()).collect())
            .filter(|marks: &Vec<&str>| marks.contains(&mark))
            .collect()
    };
    let name = |index: usize| -> String {
        let Some(piece) = run.pieces.get(index) else {
            return String::new();
        };
        match &piece.kind {
            PlannedKind::Component { name, .. } => format!("{} ({name})", piece.mark),
            PlannedKind::Crossover { name, side, .. } => {
                format!(
                    "{} ({name}, side {})",
                    painted(name, &piece.mark, all),
                    side.letter()
                )
            }
            _ => parts_with(&piece.mark)
                .first()
                .map_or(piece.mark.clone(), |marks| marks.join("+")),
        }
    };
    let mut out = Vec::new();
    // The weld behind a part that this run, or another, has as its last piece.
    let is_shared = |mark: &str| {
        let mut bringing = all.iter().filter(|other| other.brings_its_end());
        bringing.any(|other| other.last_joint == mark)
    };
    let joint = |mark: &str, kind, between, frame| {
        let (met, part) = match kind {
            JointKind::Start => (met(model, written.map(|run| &run.from)), run.pieces.first()),
            JointKind::End => (met(model, written.map(|run| &run.to)), run.pieces.last()),
            JointKind::Weld | JointKind::InOnePart => (None, None),
        };
        let is_sawn = kind == JointKind::Start && run.sawn.is_some();
        let held = met.filter(|_| !is_sawn).and_then(Fastening::of);
        // What is sawn off is a sawn tube, whatever it was.
        let meets = met.map(|end| if is_sawn { EndKind::SawnTube } else { end.kind });
        let is_bought = part.is_some_and(|part| is_bought_flange(model, &part.kind));
        Joint {
            mark: mark.to_owned(),
            inside: None,
            kind,
            run: run.name.clone(),
            between,
            frame,
            tube: tube.clone(),
            meets,
            held,
            is_welded: match kind {
                JointKind::Weld => true,
                JointKind::InOnePart => false,
                JointKind::Start | JointKind::End => {
                    meets != Some(EndKind::Tip)
                        && held.is_none_or(|held| held.needs_weld() && !is_bought)
                }
            },
        }
    };
    for (index, piece) in run.pieces.iter().enumerate() {
        let parts = parts_with(&piece.mark);
        if let (PlannedKind::Straight { .. }, [first, second, ..]) = (&piece.kind, &parts[..]) {
            // A straight that two bends share is welded in its middle somewhere.
            let along = part_share(supply, first, &piece.mark);
            out.push(Joint {
                inside: Some(piece.mark.clone()),
                ..joint(
                    &piece.joint,
                    JointKind::Weld,
                    [first.join("+"), second.join("+")],
                    piece.frame_in.advanced(along.mm()),
                )
            });
        } else if index == 0 && is_shared(&piece.joint) {
            // It stands with the run that brings the part.
        } else if index == 0 {
            out.push(joint(
                &piece.joint,
                match run.starts_on {
                    Some(_) => JointKind::Weld,
                    None => JointKind::Start,
                },
                [
                    start_words(model, run, written.map(|run| &run.from)),
                    name(0),
                ],
                piece.frame_in,
            ));
        } else if let Some(before) = run.pieces.get(index - 1) {
            let is_one = parts_with(&before.mark)
                .iter()
                .any(|marks| marks.contains(&piece.mark.as_str()));
            let kind = if is_one {
                JointKind::InOnePart
            } else {
                JointKind::Weld
            };
            out.push(joint(
                &piece.joint,
                kind,
                if is_one {
                    ["inside".to_owned(), name(index)]
                } else {
                    [name(index - 1), name(index)]
                },
                piece.frame_in,
            ));
        }
    }
    if let Some(last) = run.pieces.len().checked_sub(1) {
        let behind = all
            .iter()
            .find(|other| other.starts_on.is_some() && starts_with(other, &run.last_joint));
        let end = match behind {
            Some(behind) => format!("{}, first piece", behind.name),
            None => end_words(model, written.map(|run| &run.to), "the end"),
        };
        let mut at_end = joint(
            &run.last_joint,
            match run.ends_on {
                Some(_) => JointKind::Weld,
                None => JointKind::End,
            },
            [
                outlet_words(model, run, all).unwrap_or_else(|| name(last)),
                end,
            ],
            run.arrival(),
        );
        // Behind a part the tube is that of what goes on there.
        if let Some(behind) = behind {
            at_end.tube = tube_of(supply, behind);
        }
        out.push(at_end);
    }
    out
}

/// The tube of a run, as it was asked for.
fn tube_of(supply: &Supply, run: &PlannedRun) -> Option<TubeSpec> {
    let mut asked = supply.request.runs.iter().flat_map(|demand| &demand.pieces);
    let is_own = |mark: &str| run.pieces.iter().any(|own| own.mark == mark);
    asked
        .find(|piece| is_own(&piece.mark))
        .map(|piece| piece.tube.clone())
}

/// The outlet of the part that a run brings, in words.
fn outlet_words(model: &Model, run: &PlannedRun, all: &[PlannedRun]) -> Option<String> {
    let last = run.pieces.last().filter(|_| run.brings_its_end())?;
    let PlannedKind::Crossover { name, side, .. } = &last.kind else {
        return None;
    };
    let port = port_of_side(component_item(model, name)?, Flows::Out, *side)?;
    Some(format!(
        "{} ({name}, port {})",
        painted(name, &last.mark, all),
        port.name
    ))
}

fn starts_with(run: &PlannedRun, joint: &str) -> bool {
    run.pieces.first().is_some_and(|piece| piece.joint == joint)
}

/// How much of a shared straight the part before the weld gives.
fn part_share(supply: &Supply, part: &[&str], mark: &str) -> Length {
    supply
        .plan
        .cuts
        .iter()
        .flat_map(|cut| &cut.parts)
        .find(|found| {
            found
                .serves
                .iter()
                .map(|s| s.mark.as_str())
                .eq(part.iter().copied())
        })
        .and_then(|found| found.serves.iter().find(|s| s.mark == mark))
        .map_or(Length::ZERO, |serves| serves.length)
}
