//! Joints and how they are welded.

use super::cautions::{AT_THE_TORCH, FUME, UNDER_THE_CAR, caution, sentence};
use super::joints::{Joint, JointKind, joints_of};
use super::words::fixed;
use super::{PrintJob, not_made};
use crate::fit::{WeldFacts, weld_facts};
use crate::routes::{PlannedKind, component_kind};
use crate::sensors::Sensor;
use tubewright_build::model::{ComponentKind, EndKind};
use tubewright_geometry::Length;
use tubewright_packet::{Block, Body, Column, Figure, Sheet, SheetKind, Table};
use tubewright_stock::weld::{purge_time_min, purge_volume_litres};

/// Tube between two dams, one on each side of the joint, mm (common practice, no source).
const BETWEEN_DAMS_MM: f64 = 300.0;
/// Wire that [`weld_facts`] reckons with, mm.
const WIRE_MM: f64 = 1.6;

/// The weld sheet.
pub(super) fn sheet(job: &PrintJob<'_>, sensors: &[Sensor]) -> Sheet {
    let (kind, title) = (SheetKind::Weld, "Weld");
    let Some(supply) = job.supply else {
        return not_made(kind, title, "there is no buying and cutting plan yet");
    };
    let joints = joints_of(job.model, job.runs, supply);
    let welded = || joints.iter().filter(|joint| joint.is_welded);
    let between = welded()
        .filter(|joint| joint.kind == JointKind::Weld)
        .count();
    let at_ends = welded().count() - between;
    let together_mm: f64 = welded().filter_map(Joint::weld_mm).sum();
    let facts = weld_facts(job.model, job.runs);
    // What is purged is stainless; its fume is the worst of all.
    let is_stainless = facts.iter().any(|facts| facts.filler.purge);
    let mut blocks = vec![
        caution(if is_stainless { AT_THE_TORCH } else { FUME }),
        comes_apart(job),
        Block::Figures {
            figures: vec![
                Figure {
                    value: between.to_string(),
                    what: "butt welds between parts".to_owned(),
                },
                Figure {
                    value: at_ends.to_string(),
                    what: "where a run meets the car".to_owned(),
                },
                Figure {
                    value: job.lengths.long(together_mm),
                    what: "of weld together".to_owned(),
                },
            ],
        },
    ];
    blocks.push(Block::Table {
        table: process(job, &facts),
    });
    for minds in minds(&facts) {
        blocks.push(caution(&job.lengths.sentence(&minds)));
    }
    if facts.iter().any(|facts| facts.filler.purge) {
        blocks.push(Block::Heading {
            text: "Purge: argon inside the tube before and while you weld".to_owned(),
        });
        blocks.push(Block::Table {
            table: purge(job, &facts),
        });
        blocks.push(Block::Words {
            text: format!(
                "Minutes before the arc, then a trickle: five changes of the volume are the rule, ten are \
                 cautious (common practice, no source). Perfectly mixed, five changes still leave {} ppm \
                 of oxygen: a meter decides. Feed low, vent high, joint taped until it is welded. A \
                 crossover opens into the other bank: dam it or purge both.",
                fixed(facts.first().map_or(0.0, |facts| facts.oxygen_after_five_ppm), 0)
            ),
        });
    }
    blocks.push(Block::NewPage);
    blocks.push(Block::Heading {
        text: "Joints in the order of the runs".to_owned(),
    });
    blocks.push(Block::Table {
        table: joint_table(job, &joints),
    });
    blocks.extend(bungs(job, sensors));
    blocks.push(Block::Words {
        text: "Tack everything and prove every check before the first full weld. Weld joints that lie \
               across from each other in turn, let each cool to the touch: heat on one side pulls the \
               run toward it. Each butt weld draws the run together by about the pull that the cut \
               lengths already hold."
            .to_owned(),
    });
    blocks.push(caution(UNDER_THE_CAR));
    Sheet {
        kind,
        title: title.to_owned(),
        is_lying: false,
        is_below: false,
        body: Body::Made { blocks },
    }
}

/// The joints behind the first at which the runs come apart, as painted, with their names.
pub(super) fn joints_apart(job: &PrintJob<'_>) -> Vec<String> {
    let pieces = job.runs.iter().flat_map(|run| run.pieces.iter().skip(1));
    pieces
        .filter_map(|piece| match &piece.kind {
            PlannedKind::Component { name, .. }
                if component_kind(job.model, name) == Some(ComponentKind::Joint) =>
            {
                Some(format!("{} ({name})", piece.mark))
            }
            _ => None,
        })
        .collect()
}

/// Where the run comes apart behind its first joint, or that it does nowhere.
fn comes_apart(job: &PrintJob<'_>) -> Block {
    let joints = joints_apart(job);
    if joints.is_empty() {
        return Block::NotMade {
            what: "where it comes apart again".to_owned(),
            why: "The plan has no flange pair, clamp or slip joint behind the first joint. Whether what hangs \
                  together was found to come out, and what is in the way, stands on the sheet Checks. Decide on the \
                  car where it must come apart, to be welded on the bench and serviced later, BEFORE anything is \
                  cut: what parts there takes length, so have it put into the run as a part and work from a new \
                  print."
                .to_owned(),
        };
    }
    Block::Words {
        text: format!(
            "It comes apart again at {}. Whether each section was found to come out stands on the sheet Checks.",
            joints.join(", ")
        ),
    }
}

/// Where the sensors' bungs go.
fn bungs(job: &PrintJob<'_>, found: &[Sensor]) -> Vec<Block> {
    if found.is_empty() {
        return Vec::new();
    }
    let (l, sign) = (job.lengths, job.lengths.sign());
    let mut table = Table::new(
        "bungs",
        vec![
            Column::boxes("done"),
            Column::words("in").big(),
            Column::figures(&format!("outside, {sign}")).big(),
            Column::words("of"),
            Column::words("TOP is 12").big(),
            Column::wide("how it stands"),
        ],
    );
    let mut troubles = Vec::new();
    for sensor in found {
        let before = format!("{}, {}", sensor.catalyst, sensor.run);
        let Ok(place) = &sensor.found else {
            troubles.push(Block::NotMade {
                what: format!("the place of the sensor before {before}"),
                why: "No place with room for a bung and its sensor was found; the checks say why. Find \
                      one on the car before the run is welded."
                    .to_owned(),
            });
            continue;
        };
        table.group(format!("before {before}"));
        table.row([
            String::new(),
            place.piece.clone(),
            l.place(place.along_mm),
            format!("{} of {}", place.way(), place.joint),
            place.clocking.hour(),
            format!(
                "{}° above level, {}{}",
                fixed(place.clocking.rise_rad.to_degrees(), 0),
                place.clocking.leans(),
                if place.is_on_bend {
                    ", on a bend: shape its foot"
                } else {
                    ""
                }
            ),
        ]);
    }
    let mut blocks = vec![Block::Heading {
        text: "Bungs for the sensors".to_owned(),
    }];
    if found.iter().any(|sensor| sensor.found.is_ok()) {
        blocks.push(Block::Table { table });
        blocks.push(Block::Words {
            text: "Measure along the outside of the tube from the joint; the clock is round from the highest \
                   place of the tube, looking downstream, and NOT from the twelve o'clock that was scribed \
                   for its joints. Mark the middle of the hole on the tacked run, hold the sensor there and \
                   turn its socket before you drill: the angle finder on the sensor's axis reads the degrees. Drill to the \
                   bung's own spigot, deburr the inside, weld with an old sensor or a plug screwed in and \
                   then taken out to clean the thread. Thread, heat range and cable are those of the \
                   engine's own sensor."
                .to_owned(),
        });
    }
    blocks.extend(troubles);
    blocks
}

/// What the welds ask for, pairing by pairing. Every row says where it is from.
fn process(job: &PrintJob<'_>, facts: &[WeldFacts]) -> Table {
    let (l, sign) = (job.lengths, job.lengths.sign());
    let mut table = Table::new(
        "process",
        vec![
            Column::words("what"),
            Column::words("how much").big(),
            Column::wide("note, and where it is from"),
        ],
    );
    for (pair, runs, of) in pairings(facts) {
        table.row([
            format!("filler, {pair}"),
            of.filler.filler.to_owned(),
            format!(
                "{}: {}; ask whoever sells the wire",
                runs.join(", "),
                of.filler.why
            ),
        ]);
    }
    let mut walls: Vec<&WeldFacts> = Vec::new();
    for of in facts {
        if !walls
            .iter()
            .any(|known| known.gap_most_mm.total_cmp(&of.gap_most_mm).is_eq())
        {
            walls.push(of);
        }
    }
    for of in &walls {
        if walls.len() > 1 {
            table.group(format!("Tube of {}", of.run));
        }
        for (what, how_much, note) in [
            (
                "gap between the faces",
                format!("0, at most {} {sign}", l.small(of.gap_most_mm)),
                "more: dress the face or make the part again (half the wall; common practice, no source)"
                    .to_owned(),
            ),
            (
                "step between the tubes",
                format!("at most {} {sign}", l.small(of.step_most_mm)),
                "half the wall (ISO 5817:2014 table 1 no. 3.1, level D; from memory)".to_owned(),
            ),
            (
                "TIG current to start near",
                format!("{} A", fixed(of.amps, 0)),
                "1 A for each 0.001 in of wall, for stainless 10 to 15 % less (common practice, no \
                 source); never a setting: try it on an offcut first"
                    .to_owned(),
            ),
            (
                "wire for one joint",
                format!("{} {sign}", l.place(of.wire_mm)),
                format!("of {} {sign} wire; take 20 % more for stubs", l.size(WIRE_MM)),
            ),
        ] {
            table.row([what.to_owned(), how_much, note]);
        }
    }
    table.row([
        "pull of one weld".to_owned(),
        l.fine(job.around.practice.weld_pull.mm()),
        "already added to the cut lengths; measure across the first full weld, and hand the shop's own \
         figure in for the next job"
            .to_owned(),
    ]);
    table
}

/// The pairings, equal ones of several runs once: in words, with their runs and facts.
fn pairings(facts: &[WeldFacts]) -> Vec<(String, Vec<&str>, &WeldFacts)> {
    let mut found: Vec<(Vec<&str>, &WeldFacts)> = Vec::new();
    for of in facts {
        let known = found.iter_mut().find(|(_, known)| {
            known.materials == of.materials && known.gap_most_mm.total_cmp(&of.gap_most_mm).is_eq()
        });
        match known {
            Some((runs, _)) => runs.push(&of.run),
            None => found.push((vec![&of.run], of)),
        }
    }
    found
        .into_iter()
        .map(|(mut runs, of)| {
            runs.dedup();
            let (a, b) = &of.materials;
            let pair = if a == b {
                format!("{a} to {a}")
            } else {
                format!("{a} tube to {b}")
            };
            (pair, runs, of)
        })
        .collect()
}

/// What must be minded, each once.
fn minds(facts: &[WeldFacts]) -> Vec<String> {
    let mut all: Vec<String> = Vec::new();
    for minds in facts.iter().flat_map(|facts| &facts.filler.minds) {
        let text = sentence(minds);
        if !all.contains(&text) {
            all.push(text);
        }
    }
    all
}

fn purge(job: &PrintJob<'_>, facts: &[WeldFacts]) -> Table {
    let l = job.lengths;
    let flow = facts.first().map_or(0.0, |facts| facts.purge_flow_l_min);
    let mut table = Table::new(
        "purge",
        vec![
            Column::wide("volume"),
            Column::figures(l.gas_sign()).big(),
            Column::figures(&format!("minutes at {}, 5 changes", l.gas_flow(flow))).big(),
            Column::figures("10 changes").big(),
        ],
    );
    let mut add = |what: String, litres: f64| {
        table.row([
            what,
            l.gas_figure(litres),
            fixed(purge_time_min(litres, flow, 5.0), 1),
            fixed(purge_time_min(litres, flow, 10.0), 1),
        ]);
    };
    let mut last = None;
    for run in job.runs {
        let Some(of) = facts
            .iter()
            .find(|facts| facts.run == run.name && facts.filler.purge)
        else {
            continue;
        };
        if let Some(tube) = job.model.stock.tube(&run.tube)
            && last != Some(&run.tube)
        {
            add(
                format!(
                    "between two dams, {} apart, in {}",
                    job.lengths.about(BETWEEN_DAMS_MM),
                    run.tube
                ),
                purge_volume_litres(
                    tube.od.value,
                    tube.wall.value,
                    Length::from_mm(BETWEEN_DAMS_MM),
                ),
            );
            last = Some(&run.tube);
        }
        add(
            format!("the whole run with its cans: {}", run.name),
            of.purge_litres,
        );
    }
    table
}

/// What is done where a run meets the car.
fn at_an_end(joint: &Joint) -> &'static str {
    if let Some(held) = joint.held {
        return if joint.is_welded || !held.needs_weld() {
            held.weld_words()
        } else {
            "fasten with what is new; the flange is a part of the run and is welded behind it"
        };
    }
    match joint.meets {
        Some(EndKind::Flange) => "fasten it",
        Some(EndKind::SawnTube) => "butt weld, or a sleeve over both",
        Some(EndKind::Joint) => "weld to what is tacked there",
        Some(EndKind::Tip) => "open tip, nothing to weld",
        None => "to the port of that part",
    }
}

fn joint_table(job: &PrintJob<'_>, joints: &[Joint]) -> Table {
    let sign = job.lengths.sign();
    let mut table = Table::new(
        "welds",
        vec![
            Column::boxes("tacked"),
            Column::boxes("welded"),
            Column::words("joint").big(),
            Column::wide("between"),
            Column::wide("what"),
            Column::figures(&format!("weld, {sign}")),
        ],
    );
    let mut run = "";
    for joint in joints.iter().filter(|j| j.kind != JointKind::InOnePart) {
        if joint.run != run {
            run = &joint.run;
            table.group(run);
        }
        let what = match (joint.kind, &joint.inside) {
            (JointKind::Weld, Some(inside)) => format!("butt weld, in {inside}"),
            (JointKind::Weld, None) => "butt weld".to_owned(),
            _ => at_an_end(joint).to_owned(),
        };
        let weld = match (joint.is_welded, joint.weld_mm()) {
            (true, Some(mm)) => job.lengths.place(mm),
            (true, None) => "once round".to_owned(),
            (false, _) => "none".to_owned(),
        };
        table.row([
            String::new(),
            String::new(),
            joint.mark.clone(),
            joint.between.join(" and "),
            what,
            weld,
        ]);
    }
    let inside: Vec<&str> = joints
        .iter()
        .filter(|joint| joint.kind == JointKind::InOnePart)
        .map(|joint| joint.mark.as_str())
        .collect();
    if !inside.is_empty() {
        table.group(format!(
            "Nothing to weld at {}: one part, the bend keeps its leg",
            inside.join(", ")
        ));
    }
    table
}
