//! The map of joints and hangers.

use super::cautions::{UNDER_THE_CAR, caution};
use super::joints::{Joint, JointKind, joints_of};
use super::run_sheets::{paint_crossovers, views};
use super::words::fixed;
use super::{PrintJob, not_made};
use crate::fit::split_at_welds;
use crate::hangers::{Hanger, HungRuns, LIMITS};
use crate::routes::{PlannedKind, component_item, component_kind};
use crate::scene::scene_of;
use tubewright_build::model::ComponentKind;
use tubewright_packet::{Block, Body, Column, PacketPaper, Sheet, SheetKind, Table};
use tubewright_sheets::SceneMark;

/// What holds for every hanger on paper (common practice, no source).
const HOW_TO_HANG: &str = "Measure along the centre line from the joint, on a bend along its side; the clock is \
    round from the highest place of the tube, looking downstream. Tack the rod where it stands upright under \
    its rubber, and the rubber as the run hangs at rest, cold: hot, the run grows rearwards from the flex. \
    Bolt each bracket to what it hangs on, over a backing plate where that is sheet, never to a line or its \
    clips. Look behind sheet for lines, wires and trim before you drill. On a can use a strap or its maker's \
    own studs: a weld burns through its skin. Hang nothing from the engine's side of a flex section. Then \
    push the run as far as its rubbers let it, every way: nothing may touch.";

/// The hangers of all runs.
pub(super) fn all_of(hung: &[HungRuns]) -> impl Iterator<Item = &Hanger> {
    hung.iter()
        .filter_map(|group| group.found.as_ref().ok())
        .flat_map(|found| &found.hangers)
}

/// Where each hanger is and what it carries, or why that cannot be said.
fn hanging(job: &PrintJob<'_>, hung: &[HungRuns]) -> Vec<Block> {
    let (l, sign) = (job.lengths, job.lengths.sign());
    let mut blocks = vec![Block::Heading {
        text: "Hangers, upstream first".to_owned(),
    }];
    let mut table = Table::new(
        "hangers",
        vec![
            Column::boxes("done"),
            Column::words("").big(),
            Column::words("on").big(),
            Column::figures(&format!("along, {sign}")).big(),
            Column::words("down from"),
            Column::words("TOP is 12").big(),
            Column::figures(&format!("reach, {sign}")),
            Column::wide("to"),
            Column::figures("N, about"),
            Column::figures(&format!("x {sign}")),
            Column::figures(&format!("y {sign}")),
        ],
    );
    for group in hung {
        let Ok(found) = &group.found else { continue };
        table.group(format!(
            "{}: {} kg behind the flex, sinks up to {} on its rubbers",
            group.runs.join(" and "),
            fixed(found.mass_kg, 1),
            l.fine(found.sag_mm),
        ));
        for hanger in &found.hangers {
            let place = &hanger.place;
            let [x, y, _] = l.xyz(place.bracket);
            table.row([
                String::new(),
                hanger.mark.clone(),
                format!("{}{}", place.piece, place.on_words()),
                l.place(place.along_mm),
                place.joint.clone(),
                place.clocking.hour(),
                l.place(place.reach_mm),
                place.body.clone(),
                fixed(hanger.load_n, 0),
                x,
                y,
            ]);
        }
    }
    if !table.is_empty() {
        blocks.push(Block::Table { table });
        blocks.push(Block::Words {
            text: format!(
                "Reach is from the outside of the tube to what it hangs on, for rod, rubber and bracket \
                 together: cut the rod on the car; x and y are those of the bracket. N is what the rubber carries at rest, an estimate; up to \
                 {} N each is common practice, no source: go by the maker of yours. {HOW_TO_HANG}",
                fixed(LIMITS.most_load_n, 0),
            ),
        });
    }
    for group in hung {
        let names = group.runs.join(" and ");
        match &group.found {
            Err(why) => blocks.push(Block::NotMade {
                what: format!("places of the hangers of {names}"),
                why: format!(
                    "{}. Until then: hang each silencer and resonator on its own, one hanger within a hand of \
                     every heavy part, two for a long one, none between the engine and the flex section \
                     (common practice, no source).",
                    l.sentence(&why.words())
                ),
            }),
            Ok(found) if !found.is_within => blocks.push(Block::NotMade {
                what: format!("hangers of {names} that carry it"),
                why: "On the structure and floor that were measured within reach no set of places carries it; \
                      the checks say how far off the best is. Measure more of them above the run, or plan a \
                      crossmember."
                    .to_owned(),
            }),
            Ok(_) => {}
        }
    }
    blocks
}

/// Components behind the flex, with where they are and what they weigh.
fn heavy(job: &PrintJob<'_>) -> Table {
    let sign = job.lengths.sign();
    let mut table = Table::new(
        "to-hang",
        vec![
            Column::words("part").big(),
            Column::wide("what"),
            Column::figures("mass, kg"),
            Column::figures(&format!("x {sign}")).big(),
            Column::figures(&format!("y {sign}")).big(),
            Column::figures(&format!("z {sign}")).big(),
        ],
    );
    for piece in job.runs.iter().flat_map(|run| &run.pieces) {
        let PlannedKind::Component { name, .. } = &piece.kind else {
            continue;
        };
        if component_kind(job.model, name) == Some(ComponentKind::Flex) {
            continue;
        }
        let mass = component_item(job.model, name)
            .and_then(|item| item.mass.as_ref())
            .map(|mass| fixed(mass.value.kg(), 1));
        let middle = piece.frame_in.origin + (piece.frame_out.origin - piece.frame_in.origin) * 0.5;
        let [x, y, z] = job.lengths.xyz(middle);
        table.row([
            piece.mark.clone(),
            name.clone(),
            mass.unwrap_or_else(|| "weigh it".to_owned()),
            x,
            y,
            z,
        ]);
    }
    table
}

/// Where every joint and every hanger is.
pub(super) fn sheet(job: &PrintJob<'_>, hung: &[HungRuns], paper: PacketPaper) -> Sheet {
    let (kind, title) = (SheetKind::JointMap, "Hanger and joint map");
    let Some(supply) = job.supply else {
        return not_made(kind, title, "there is no buying and cutting plan yet");
    };
    let sign = job.lengths.sign();
    let mut table = Table::new(
        "joints",
        vec![
            Column::words("joint").big(),
            Column::wide("between"),
            Column::words("what"),
            Column::figures(&format!("x {sign}")).big(),
            Column::figures(&format!("y {sign}")).big(),
            Column::figures(&format!("z {sign}")).big(),
        ],
    );
    let mut run = String::new();
    let joints = joints_of(job.model, job.runs, supply);
    for joint in &joints {
        if joint.run != run {
            run.clone_from(&joint.run);
            table.group(run.clone());
        }
        let [x, y, z] = job.lengths.xyz(joint.frame.origin);
        table.row([
            joint.mark.clone(),
            if joint.kind == JointKind::InOnePart {
                joint.between.join(" ")
            } else {
                joint.between.join(" and ")
            },
            match (joint.kind, &joint.inside) {
                (JointKind::Weld, Some(straight)) => format!("weld, in {straight}"),
                (JointKind::Weld, None) => "weld".to_owned(),
                (JointKind::InOnePart, _) => "one part, no weld".to_owned(),
                (JointKind::Start, _) => "start of the run".to_owned(),
                (JointKind::End, _) => "end of the run".to_owned(),
            },
            x,
            y,
            z,
        ]);
    }
    // A weld in the middle of a straight is drawn there, and no joint where two pieces are one part.
    let split = split_at_welds(job.model, job.runs, &supply.whole);
    let mut scene = scene_of(job.model, job.around, &split, job.board);
    for piece in scene.runs.iter_mut().flat_map(|run| &mut run.pieces) {
        let is_none = |joint: &Joint| {
            joint.kind == JointKind::InOnePart && Some(&joint.mark) == piece.joint.as_ref()
        };
        if joints.iter().any(is_none) {
            piece.joint = None;
        }
    }
    paint_crossovers(&mut scene, job.runs);
    scene.tight_places.clear();
    scene.nameless.tubes = true;
    scene.marks = all_of(hung)
        .map(|hanger| SceneMark {
            name: hanger.mark.clone(),
            at: hanger.place.foot,
        })
        .collect();
    let shown = if scene.marks.is_empty() {
        "All runs"
    } else {
        "All runs with their hangers"
    };
    let mut blocks = vec![caution(UNDER_THE_CAR)];
    blocks.extend(views(&scene, paper, shown, 0.0));
    blocks.push(Block::NewPage);
    blocks.extend(hanging(job, hung));
    blocks.extend([
        Block::Heading {
            text: "What has to be hung, middle of each part".to_owned(),
        },
        Block::Table { table: heavy(job) },
        Block::Heading {
            text: "Joints, middle of the tube, in the car's axes".to_owned(),
        },
        Block::Table { table },
    ]);
    Sheet {
        kind,
        title: title.to_owned(),
        is_lying: false,
        body: Body::Made { blocks },
    }
}
