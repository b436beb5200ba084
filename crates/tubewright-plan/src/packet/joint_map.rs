//! The map of joints and hangers.

use super::cautions::{UNDER_THE_CAR, caution};
use super::joints::{Joint, JointKind, joints_of};
use super::run_sheets::paint_crossovers;
use super::views::views;
use super::words::{on_paper, side_words};
use super::{PrintJob, found, not_made, scene};
use crate::fit::{joints_by_tape, split_at_welds};
use crate::hangers::{Hanger, HungRuns, LIMITS};
use crate::routes::{PlannedKind, component_item, component_kind};
use tubewright_build::model::ComponentKind;
use tubewright_geometry::Frame;
use tubewright_packet::{Block, Body, Column, PacketPaper, Sheet, SheetKind, Table, Width};
use tubewright_sheets::SceneMark;

/// What holds for every hanger on paper (common practice, no source).
const HOW_TO_HANG: &str = "Measure along the centre line from the joint, on a bend along its side; the clock is \
    round from the highest place of the tube, looking downstream. At 12:00 the rod stands upright; at another hour it \
    leaves the tube that way, toward its bracket, and its end is bent so that the rubber hangs upright. Tack it with the \
    run as it hangs at rest, cold: hot, the run grows rearwards from the flex. \
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
    let [behind, off] = found::heads(job);
    let stance = found::while_tacking(job);
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
            Column::words("down from").mm(11.0),
            Column::words("TOP is 12").mm(15.0).big(),
            Column::figures(&format!("reach, {sign}")).mm(13.0),
            Column::wide("to"),
            Column::figures(&format!("carries {}, about", l.load_sign())).mm(15.0),
            Column::figures(&format!("bracket {behind}")).mm(18.0),
            Column::figures(&off).mm(22.0),
        ],
    );
    for group in hung {
        let Ok(hanging) = &group.found else { continue };
        table.group(format!(
            "{}: {} behind the flex, sinks up to {} on its rubbers",
            group.runs.join(" and "),
            l.mass(hanging.mass_kg),
            l.fine(hanging.sag_mm),
        ));
        for hanger in &hanging.hangers {
            let place = &hanger.place;
            let [behind, off] = found::found(job, stance, place.bracket);
            table.row([
                String::new(),
                hanger.mark.clone(),
                format!("{}{}", place.piece, place.on_words()),
                l.place(place.along_mm),
                place.joint.clone(),
                place.clocking.hour(),
                l.place(place.reach_mm),
                place.body.clone(),
                l.load_figure(hanger.load_n),
                behind,
                off,
            ]);
        }
    }
    if !table.is_empty() {
        blocks.push(Block::Table { table });
        blocks.push(Block::Words {
            text: format!(
                "Reach is from the outside of the tube to what it hangs on, for rod, rubber and bracket \
                 together: cut the rod on the car. What the rubber carries is at rest, an estimate; up to \
                 {} each is common practice, no source: go by the maker of yours. {HOW_TO_HANG}",
                l.load(LIMITS.most_load_n),
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
                    on_paper(&l.sentence(&why.words()))
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
    let l = job.lengths;
    let [behind, off] = found::heads(job);
    let stance = found::while_tacking(job);
    let mut table = Table::new(
        "to-hang",
        vec![
            Column::words("part").big(),
            Column::wide("what"),
            Column::figures(&format!("mass, {}", l.mass_sign())),
            Column::figures(&behind).mm(18.0),
            Column::figures(&off).mm(22.0),
            Column::figures(&format!("underside over the floor, {}", l.sign())).mm(24.0),
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
            .map(|mass| l.mass_figure(mass.value.kg()));
        let middle = piece.frame_in.origin + (piece.frame_out.origin - piece.frame_in.origin) * 0.5;
        let [behind, off] = found::found(job, stance, middle);
        table.row([
            piece.mark.clone(),
            name.clone(),
            mass.unwrap_or_else(|| "weigh it".to_owned()),
            behind,
            off,
            stance.map_or_else(
                || "–".to_owned(),
                |stance| found::over_the_floor(job, stance, &[piece], middle),
            ),
        ]);
    }
    table
}

/// Joints with the tapes that find them however the car stands.
fn joint_table(job: &PrintJob<'_>, joints: &[Joint]) -> Table {
    let l = job.lengths;
    let mut table = Table::new(
        "joints",
        vec![
            Column::words("joint").big(),
            Column::wide("between"),
            Column::words("what").mm(27.0),
            Column {
                width: Width::Share(1.3),
                ..Column::wide(&format!("tapes to its tube, {}", l.sign()))
            },
        ],
    );
    let rims: Vec<(Frame, f64)> = joints
        .iter()
        .map(|joint| (joint.frame, radius_mm(job, joint)))
        .collect();
    let all = joints_by_tape(job.model, job.around, job.runs, &rims);
    let mut run = String::new();
    for (joint, tapes) in joints.iter().zip(all) {
        if joint.run != run {
            run.clone_from(&joint.run);
            table.group(run.clone());
        }
        let upright = Frame::upright(joint.frame.origin, joint.frame.travel());
        let tapes: Vec<String> = tapes
            .iter()
            .map(|tape| {
                let reads = l.place(tape.distance_mm);
                let side = side_words(upright.at_clock(tape.clock_rad).to_array());
                format!("{} to its {side} = {reads}", tape.mark)
            })
            .collect();
        let tapes = match tapes.as_slice() {
            [] => "no mark sees it".to_owned(),
            [only] => format!("{only}; ONE mark alone"),
            some => some.join("; "),
        };
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
            tapes,
        ]);
    }
    table
}

fn radius_mm(job: &PrintJob<'_>, joint: &Joint) -> f64 {
    joint.tube.as_ref().map_or_else(
        || {
            let run = job.runs.iter().find(|run| run.name == joint.run);
            run.map_or(0.0, |run| 0.5 * run.od_mm)
        },
        |tube| 0.5 * tube.od.mm(),
    )
}

/// Joints as a plumb line and a height rule find them, in each set-up whose floor is known.
fn heights_table(job: &PrintJob<'_>, joints: &[Joint]) -> Option<Table> {
    let sign = job.lengths.sign();
    let stances = found::stances(job);
    if stances.is_empty() {
        return None;
    }
    let [behind, off] = found::heads(job);
    let mut columns = vec![Column::words("joint").big()];
    for stance in &stances {
        let name = stance.name;
        columns.extend([
            Column::figures(&format!("{name}: {behind}")),
            Column::figures(&format!("{name}: {off}")),
            Column::figures(&format!("{name}: underside over the floor, {sign}")),
        ]);
    }
    let mut table = Table::new("joint-heights", columns);
    let mut run = String::new();
    for joint in joints {
        if joint.run != run {
            run.clone_from(&joint.run);
            table.group(run.clone());
        }
        let planned = job.runs.iter().find(|run| run.name == joint.run);
        let pieces = planned.map_or_else(Vec::new, |run| found::pieces_at(run, joint.frame.origin));
        let mut cells = vec![joint.mark.clone()];
        for stance in &stances {
            cells.extend(found::found(job, Some(*stance), joint.frame.origin));
            cells.push(found::over_the_floor(
                job,
                *stance,
                &pieces,
                joint.frame.origin,
            ));
        }
        table.cells(cells);
    }
    Some(table)
}

/// How the tapes of the joint table are held.
const HOW_TO_TAPE: &str = "Tapes hold however the car stands: straight from each mark to the side of the tube that is \
    named, at the joint. Left, right, front and rear are the car's; of a tube that slopes its top and its underside \
    are square to it. They are no hours: the fit sheet counts hours from the line of the part. Nothing is in \
    their way when the run is complete. Three tapes from three sides find a joint; with fewer it can still swing.";

/// How the columns of the table by floor are found.
fn how_to_find(job: &PrintJob<'_>) -> String {
    let origin = found::origin(job);
    format!(
        "From the floor, with the car as its marks tell above; minus is ahead of {origin}. Drop plumb lines from {origin} \
         and from the tube (halfway between its two sides): behind is taped on the floor along the car. Off the middle is \
         taped square to the line halfway between the plumbed left and right marks. Underside: straight up from where \
         that plumb line meets the floor to the first metal of the run. Where something is below, neither line \
         nor rule comes through: go by the tapes there."
    )
}

/// Where every joint and every hanger is.
pub(super) fn sheet(job: &PrintJob<'_>, hung: &[HungRuns], paper: PacketPaper) -> Sheet {
    let (kind, title) = (SheetKind::JointMap, "Hanger and joint map");
    let Some(supply) = job.supply else {
        return not_made(kind, title, "there is no buying and cutting plan yet");
    };
    let joints = joints_of(job.model, job.runs, supply);
    // A weld in the middle of a straight is drawn there, and no joint where two pieces are one part.
    let split = split_at_welds(job.model, job.runs, &supply.whole);
    let mut scene = scene(job, &split);
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
    blocks.extend(found::how_it_stands(job).into_iter().flatten());
    blocks.extend(hanging(job, hung));
    blocks.extend([
        Block::Heading {
            text: "What has to be hung, middle of each part".to_owned(),
        },
        Block::Table { table: heavy(job) },
        Block::Heading {
            text: "Joints by tapes from the marks".to_owned(),
        },
        Block::Table {
            table: joint_table(job, &joints),
        },
        Block::Words {
            text: HOW_TO_TAPE.to_owned(),
        },
    ]);
    match heights_table(job, &joints) {
        Some(table) => blocks.extend([
            Block::Heading {
                text: "Joints by plumb line and height".to_owned(),
            },
            Block::Table { table },
            Block::Words {
                text: how_to_find(job),
            },
        ]),
        None => blocks.push(Block::NotMade {
            what: "joints by plumb line and height".to_owned(),
            why: "No heights were measured in any set-up, so no floor is known: go by the tapes."
                .to_owned(),
        }),
    }
    Sheet {
        kind,
        title: title.to_owned(),
        is_lying: false,
        is_below: false,
        body: Body::Made { blocks },
    }
}
