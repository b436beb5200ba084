//! Joints and how they are welded.

use super::cautions::{AT_THE_TORCH, UNDER_THE_CAR, caution};
use super::joints::{Joint, JointKind, joints_of};
use super::words::fixed;
use super::{PrintJob, not_made};
use crate::routes::PlannedRun;
use crate::stages::Supply;
use tubewright_geometry::Length;
use tubewright_packet::{Block, Body, Column, Figure, Sheet, SheetKind, Table};
use tubewright_stock::TubeSpec;
use tubewright_stock::weld::{
    fit_up_limits, purge_time_min, purge_volume_litres, tig_current, wire_need,
};

/// Flow of purge gas that the table is for, litres per minute (common practice, no source).
const PURGE_L_PER_MIN: f64 = 10.0;
/// Tube between two dams, one on each side of the joint, mm (common practice, no source).
const BETWEEN_DAMS_MM: f64 = 300.0;
/// Wire for thin tube, mm (common practice, no source).
const WIRE_MM: f64 = 1.0;

/// The weld sheet.
pub(super) fn sheet(job: &PrintJob<'_>) -> Sheet {
    let (kind, title) = (SheetKind::Weld, "Weld");
    let Some(supply) = job.supply else {
        return not_made(kind, title, "there is no buying and cutting plan yet");
    };
    let joints = joints_of(job.model, job.runs, supply);
    let welds: Vec<&Joint> = joints
        .iter()
        .filter(|joint| joint.kind == JointKind::Weld)
        .collect();
    let together_mm: f64 = welds.iter().filter_map(|joint| joint.weld_mm()).sum();
    let mut blocks = vec![
        caution(AT_THE_TORCH),
        Block::Figures {
            figures: vec![
                Figure {
                    value: welds.len().to_string(),
                    what: "butt welds between parts".to_owned(),
                },
                Figure {
                    value: job.lengths.long(together_mm),
                    what: "of weld together".to_owned(),
                },
            ],
        },
    ];
    let mut tubes: Vec<TubeSpec> = Vec::new();
    for tube in welds.iter().filter_map(|joint| joint.tube.as_ref()) {
        if !tubes.iter().any(|known| known.is_same_as(tube)) {
            tubes.push(tube.clone());
        }
    }
    for tube in &tubes {
        blocks.push(Block::Heading {
            text: format!("Tube {}", job.lengths.tube(tube)),
        });
        blocks.push(Block::Table {
            table: process(job, tube),
        });
    }
    blocks.push(Block::Heading {
        text: "Purge: argon inside the tube before and while you weld".to_owned(),
    });
    blocks.push(Block::Table {
        table: purge(job, supply, &tubes),
    });
    blocks.push(Block::Words {
        text: "Times are for five changes of the volume (the rule) and ten (cautious), common practice, \
               no source. The inside of catalysts, resonators and silencers is not in the volume: close \
               them off with a dam. Feed low, vent high; an oxygen meter decides. Ferritic and mild \
               steel are tacked without purge at the shop's own judgement."
            .to_owned(),
    });
    blocks.push(Block::NewPage);
    blocks.push(Block::Heading {
        text: "Joints in the order of the runs".to_owned(),
    });
    blocks.push(Block::Table {
        table: joint_table(job, &joints),
    });
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
        body: Body::Made { blocks },
    }
}

/// What each tube asks for. Every row says where it is from.
fn process(job: &PrintJob<'_>, tube: &TubeSpec) -> Table {
    let (l, sign) = (job.lengths, job.lengths.sign());
    let mut table = Table::new(
        "process",
        vec![
            Column::words("what"),
            Column::words("how much").big(),
            Column::wide("note, and where it is from"),
        ],
    );
    let limits = fit_up_limits(tube.wall);
    let current = tig_current(tube.wall);
    let is_stainless = tube.material.starts_with(|c: char| c.is_ascii_digit());
    let cap = (Length::from_mm(4.0), Length::from_mm(0.5));
    let need = wire_need(
        tube.od,
        tube.wall,
        Length::ZERO,
        cap,
        Length::from_mm(WIRE_MM),
    );
    let pull = job.around.practice.weld_pull.mm();
    for (what, how_much, note) in [
        (
            "gap between the faces",
            format!("0, at most {} {sign}", l.small(limits.gap_most.mm())),
            "more: dress the face or make the part again (half the wall; common practice, no source)"
                .to_owned(),
        ),
        (
            "step between the tubes",
            format!("at most {} {sign}", l.small(limits.step_most.mm())),
            "half the wall (ISO 5817:2014 table 1 no. 3.1, level D; from memory)".to_owned(),
        ),
        (
            "TIG current to start with",
            if is_stainless {
                format!(
                    "{} to {} A",
                    fixed(current.stainless_low_a, 0),
                    fixed(current.stainless_high_a, 0)
                )
            } else {
                format!("about {} A", fixed(current.rule_a, 0))
            },
            "1 A for each 0.001 in of wall, for stainless 10 to 15 % less (common practice, no source); \
             a range, never a setting: try it on an offcut"
                .to_owned(),
        ),
        (
            "filler",
            filler(&tube.material).to_owned(),
            "the usual match for this steel; ask whoever sells the wire (common practice, no source)"
                .to_owned(),
        ),
        (
            "wire for one joint",
            format!(
                "{} {sign} of {} {sign} wire",
                l.place(need.wire.mm()),
                l.size(WIRE_MM)
            ),
            format!(
                "for a cap {} wide and {} high without gap, once round {} {sign}; allow 20 % for stubs",
                l.size(cap.0.mm()),
                l.size(cap.1.mm()),
                l.place(need.joint.mm())
            ),
        ),
        (
            "pull of one weld",
            format!("{} {sign}", l.small(pull)),
            "already added to the cut lengths (the shop's own practice)".to_owned(),
        ),
    ] {
        table.row([what.to_owned(), how_much, note]);
    }
    table
}

/// Usual filler by the catalogue's word for the steel.
fn filler(material: &str) -> &'static str {
    match material {
        "304" | "304L" => "ER308LSi",
        "316" | "316L" => "ER316LSi",
        "321" => "ER347Si",
        "409" | "439" | "441" => "ER430LNb or ER308LSi",
        "mild" | "aluminised" => "ER70S-6",
        _ => "not known here: ask",
    }
}

fn purge(job: &PrintJob<'_>, supply: &Supply, tubes: &[TubeSpec]) -> Table {
    let mut table = Table::new(
        "purge",
        vec![
            Column::wide("volume"),
            Column::figures("litres").big(),
            Column::figures(&format!("minutes at {PURGE_L_PER_MIN:.0} l/min, 5 changes")).big(),
            Column::figures("10 changes").big(),
        ],
    );
    let mut add = |what: String, litres: f64| {
        table.row([
            what,
            fixed(litres, 2),
            fixed(purge_time_min(litres, PURGE_L_PER_MIN, 5.0), 1),
            fixed(purge_time_min(litres, PURGE_L_PER_MIN, 10.0), 1),
        ]);
    };
    for tube in tubes {
        add(
            format!(
                "between two dams, {} {} apart, {}",
                job.lengths.place(BETWEEN_DAMS_MM),
                job.lengths.sign(),
                job.lengths.tube(tube)
            ),
            purge_volume_litres(tube.od, tube.wall, Length::from_mm(BETWEEN_DAMS_MM)),
        );
    }
    for run in job.runs {
        if let Some(tube) = tube_of(run, supply) {
            add(
                format!("the whole run, as plain tube: {}", run.name),
                purge_volume_litres(
                    tube.od,
                    tube.wall,
                    Length::from_mm(run.developed_length_mm()),
                ),
            );
        }
    }
    table
}

fn tube_of<'a>(run: &PlannedRun, supply: &'a Supply) -> Option<&'a TubeSpec> {
    supply
        .request
        .runs
        .iter()
        .flat_map(|demand| &demand.pieces)
        .find(|piece| run.pieces.iter().any(|own| own.mark == piece.mark))
        .map(|piece| &piece.tube)
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
            Column::words("what"),
            Column::figures(&format!("weld, {sign}")),
        ],
    );
    let mut run = "";
    for joint in joints.iter().filter(|j| j.kind != JointKind::InOnePart) {
        if joint.run != run {
            run = &joint.run;
            table.group(run);
        }
        let (what, weld) = match joint.kind {
            JointKind::Weld => (
                "butt weld",
                joint
                    .weld_mm()
                    .map_or_else(String::new, |mm| job.lengths.place(mm)),
            ),
            JointKind::Start => ("as the outlet asks", String::new()),
            _ => ("as what is there asks", String::new()),
        };
        table.row([
            String::new(),
            String::new(),
            joint.mark.clone(),
            joint.between.join(" and "),
            what.to_owned(),
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
