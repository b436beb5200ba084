//! The map of joints and hangers.

use super::cautions::{UNDER_THE_CAR, caution};
use super::joints::{Joint, JointKind, joints_of};
use super::run_sheets::paint_crossovers;
use super::views::views;
use super::words::on_paper;
use super::{PrintJob, not_made, scene};
use crate::fit::{joints_by_tape, split_at_welds};
use crate::hangers::{Hanger, HungRuns, LIMITS};
use crate::routes::{PlannedKind, component_item, component_kind};
use tubewright_build::model::ComponentKind;
use tubewright_geometry::{Frame, Point};
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
    let [behind, off, _] = found_heads(job);
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
        let Ok(found) = &group.found else { continue };
        table.group(format!(
            "{}: {} behind the flex, sinks up to {} on its rubbers",
            group.runs.join(" and "),
            l.mass(found.mass_kg),
            l.fine(found.sag_mm),
        ));
        for hanger in &found.hangers {
            let place = &hanger.place;
            let [behind, off, _] = self::found(job, place.bracket);
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
    let [behind, off, over] = found_heads(job);
    let mut table = Table::new(
        "to-hang",
        vec![
            Column::words("part").big(),
            Column::wide("what"),
            Column::figures(&format!("mass, {}", l.mass_sign())),
            Column::figures(&behind),
            Column::figures(&off),
            Column::figures(&over),
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
        let [behind, off, over] = found(job, middle);
        table.row([
            piece.mark.clone(),
            name.clone(),
            mass.unwrap_or_else(|| "weigh it".to_owned()),
            behind,
            off,
            over,
        ]);
    }
    table
}

/// Joints with what finds them on the car.
fn joint_table(job: &PrintJob<'_>, joints: &[Joint]) -> Table {
    let l = job.lengths;
    let [behind, off, over] = found_heads(job);
    let mut table = Table::new(
        "joints",
        vec![
            Column::words("joint").big(),
            Column::wide("between"),
            Column::words("what").mm(21.0),
            Column::wide(&format!("tapes, TOP is 12:00, {}", l.sign())),
            Column::figures(&behind).mm(18.0),
            Column::figures(&off).mm(22.0),
            Column::figures(&format!("underside {over}")).mm(18.0),
        ],
    );
    let radius_mm = |joint: &Joint| {
        joint.tube.as_ref().map_or_else(
            || {
                let run = job.runs.iter().find(|run| run.name == joint.run);
                run.map_or(0.0, |run| 0.5 * run.od_mm)
            },
            |tube| 0.5 * tube.od.mm(),
        )
    };
    let rims: Vec<(Frame, f64)> = joints
        .iter()
        .map(|joint| (joint.frame, radius_mm(joint)))
        .collect();
    let all = joints_by_tape(job.model, job.around, job.runs, &rims);
    let mut run = String::new();
    for (joint, tapes) in joints.iter().zip(all) {
        if joint.run != run {
            run.clone_from(&joint.run);
            table.group(run.clone());
        }
        let tapes: Vec<String> = tapes
            .iter()
            .map(|tape| {
                let reads = l.place(tape.distance_mm);
                format!("{} to {} = {reads}", tape.mark, hour(tape.clock_rad))
            })
            .collect();
        let tapes = match tapes.as_slice() {
            [] => "no mark sees it".to_owned(),
            [only] => format!("{only}; ONE mark alone"),
            some => some.join("; "),
        };
        let frame = Frame::upright(joint.frame.origin, joint.frame.travel());
        let underside = frame.origin + frame.twelve() * -radius_mm(joint);
        let [behind, off, _] = found(job, frame.origin);
        let [.., over] = found(job, underside);
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
            behind,
            off,
            over,
        ]);
    }
    table
}

/// Heads of the columns of [`found`], with their unit.
fn found_heads(job: &PrintJob<'_>) -> [String; 3] {
    let sign = job.lengths.sign();
    [
        format!("behind {}, {sign}", origin(job)),
        format!("off the middle, {sign}"),
        format!("over the floor, {sign}"),
    ]
}

fn origin(job: &PrintJob<'_>) -> String {
    let frame = job.model.build.frame.as_ref();
    frame.map_or_else(
        || "the origin mark".to_owned(),
        |frame| frame.origin.at.name().to_string(),
    )
}

/// What a plumb line, a tape and a height rule find of a place with the car on its wheels: how far behind the
/// origin mark, off the car's middle, over the floor.
fn found(job: &PrintJob<'_>, place: Point) -> [String; 3] {
    let l = job.lengths;
    let off = l.place(place.y.abs());
    let side = match (place.y > 0.0, off == "0") {
        (_, true) => "",
        (true, _) => " right",
        (false, _) => " left",
    };
    let floors = &job.around.measured.places.floors;
    let floor = floors.values().find(|floor| floor.is_on_wheels);
    [
        l.place(place.x),
        format!("{off}{side}"),
        floor.map_or_else(
            || "–".to_owned(),
            |floor| l.place((place - floor.point_in_car).dot(floor.up.vector())),
        ),
    ]
}

/// How the columns of the joint table are taped.
fn how_to_find(job: &PrintJob<'_>) -> String {
    let origin = origin(job);
    let floors = &job.around.measured.places.floors;
    let over = if floors.values().any(|floor| floor.is_on_wheels) {
        "Over the floor: straight up from the floor to the underside of the tube."
    } else {
        "No height over the floor is known: none was measured with the car on its wheels."
    };
    format!(
        "Tapes: straight from each mark to the place round the tube that is named, counted from its highest place as \
         12:00, looking the way the gas flows; nothing is in their way when the run is complete. Three tapes from \
         three sides find a joint; with fewer it can still swing. The other figures are found with the car on its \
         wheels on a level floor; minus is ahead of {origin}. Drop plumb lines from {origin} and from the tube \
         (halfway between its two sides): behind is taped on the floor along the car. Off the middle is taped square \
         to the line halfway between the plumbed left and right marks. {over}"
    )
}

/// An hour round the tube.
fn hour(clock_rad: f64) -> String {
    let hour = (clock_rad.to_degrees() / 30.0).round();
    format!("{:.0}:00", if hour < 0.5 { 12.0 } else { hour })
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
    blocks.extend(hanging(job, hung));
    blocks.extend([
        Block::Heading {
            text: "What has to be hung, middle of each part".to_owned(),
        },
        Block::Table { table: heavy(job) },
        Block::Heading {
            text: "Joints, as a tape and a plumb line find them".to_owned(),
        },
        Block::Table {
            table: joint_table(job, &joints),
        },
        Block::Words {
            text: how_to_find(job),
        },
    ]);
    Sheet {
        kind,
        title: title.to_owned(),
        is_lying: false,
        is_below: false,
        body: Body::Made { blocks },
    }
}
