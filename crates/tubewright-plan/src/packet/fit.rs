//! Order of assembly and check distances.

use super::PrintJob;
use super::cautions::{UNDER_THE_CAR, caution};
use super::joints::painted;
use super::not_made;
use super::words::{signed_degrees, toward_words};
use crate::routes::PlannedKind;
use crate::stages::Supply;
use tubewright_build::model::{ItemKind, Section};
use tubewright_packet::{Block, Body, Column, Sheet, SheetKind, Table};
use tubewright_stock::FitMark;

/// The fit sheet.
pub(super) fn sheet(job: &PrintJob<'_>) -> Sheet {
    let (kind, title) = (SheetKind::Fit, "Fit and tack");
    let Some(supply) = job.supply else {
        return not_made(kind, title, "there is no buying and cutting plan yet");
    };
    let mut blocks = vec![
        caution(UNDER_THE_CAR),
        Block::Words {
            text: "Tack from the engine rearwards, three tacks at each joint, and measure before the \
                   next part goes on. Clock: hold the witness line of the part so many degrees, or so \
                   many mm round the outside, from the witness line of the part before it: plus is \
                   clockwise looking downstream (the way the gas flows). A straight or a component has \
                   no clock of its own: bring its witness line in line with the one before."
                .to_owned(),
        },
    ];
    for run in runs(supply) {
        blocks.push(Block::Heading {
            text: run.to_owned(),
        });
        blocks.push(Block::Table {
            table: parts(job, supply, run),
        });
        if let Some(text) = at_the_crossover(job, run) {
            blocks.push(Block::Words { text });
        }
    }
    blocks.push(Block::NotMade {
        what: "check distances from the datum marks".to_owned(),
        why: "They are not worked out in this packet. Until they are, hold each joint against its \
              place on the joint map, by tape from the marks on the survey sheet."
            .to_owned(),
    });
    Sheet {
        kind,
        title: title.to_owned(),
        is_lying: false,
        body: Body::Made { blocks },
    }
}

/// How a stretch meets the crossover of its run, if it has one.
fn at_the_crossover(job: &PrintJob<'_>, stretch: &str) -> Option<String> {
    let run = job.runs.iter().find(|run| {
        stretch == run.name || stretch.starts_with(&format!("{}, behind ", run.name))
    })?;
    run.pieces.iter().find_map(|piece| match &piece.kind {
        PlannedKind::Crossover { name, side, .. } => {
            let painted = painted(name, &piece.mark, job.runs);
            let side = side.letter();
            Some(if stretch == run.name {
                format!("This stretch ends at side {side} of the crossover {name}, which is painted {painted}.")
            } else {
                format!("This stretch starts at side {side} of the crossover {name}, which is painted {painted}.")
            })
        }
        _ => None,
    })
}

/// Names of the stretches in the order of assembly.
fn runs(supply: &Supply) -> Vec<&str> {
    let mut names: Vec<&str> = Vec::new();
    for fit in &supply.fits {
        if !names.contains(&fit.run.as_str()) {
            names.push(&fit.run);
        }
    }
    names
}

/// Where the flow runs against the letters, the part is turned end for end.
fn parts(job: &PrintJob<'_>, supply: &Supply, run: &str) -> Table {
    let sign = job.lengths.sign();
    let mut table = Table::new(
        "fit",
        vec![
            Column::boxes("tacked"),
            Column::words("part").big(),
            Column::wide("what"),
            Column::figures("clock").big(),
            Column::figures(&format!("round the outside, {sign}")).big(),
            Column::words("turns"),
        ],
    );
    for fit in supply.fits.iter().filter(|fit| fit.run == run) {
        table.row([
            String::new(),
            fit.marks.join("+"),
            what(job, supply, fit),
            format!("{}°", signed_degrees(fit.clock.deg())),
            job.lengths.saw(fit.round_outside.mm()),
            turns(job, fit),
        ]);
    }
    table
}

/// Which way the run goes on after the part's bend.
fn turns(job: &PrintJob<'_>, fit: &FitMark) -> String {
    job.runs
        .iter()
        .flat_map(|run| &run.pieces)
        .filter(|piece| fit.marks.contains(&piece.mark))
        .find(|piece| matches!(piece.kind, PlannedKind::Bend { .. }))
        .map_or_else(String::new, |piece| {
            toward_words(piece.frame_in.twelve().to_array())
        })
}

fn what(job: &PrintJob<'_>, supply: &Supply, fit: &FitMark) -> String {
    let is_it = |part: &&tubewright_stock::CutPart| {
        part.serves
            .iter()
            .map(|s| s.mark.as_str())
            .eq(fit.marks.iter().map(String::as_str))
    };
    if let Some(part) = supply
        .plan
        .cuts
        .iter()
        .flat_map(|cut| &cut.parts)
        .find(is_it)
    {
        let turned = if part.is_reversed {
            ", gas enters at end B"
        } else {
            ""
        };
        return format!("{}{turned}", super::cut_cards::part_words(job, part));
    }
    let mark = fit.marks.first().map_or("", String::as_str);
    supply
        .plan
        .components
        .iter()
        .find(|component| component.mark == mark)
        .map_or_else(String::new, |component| {
            let piece = job
                .runs
                .iter()
                .flat_map(|run| &run.pieces)
                .find(|piece| piece.mark == mark);
            match piece.map(|piece| &piece.kind) {
                Some(PlannedKind::Component { name, roll_rad, .. }) => format!(
                    "{name} ({}){}",
                    component.item,
                    roll_words(job, &component.item, roll_rad.to_degrees())
                ),
                Some(PlannedKind::Crossover { name, .. }) => format!("{name} ({})", component.item),
                _ => component.item.clone(),
            }
        })
}

/// How a can that is not round is turned.
fn roll_words(job: &PrintJob<'_>, item: &str, roll_deg: f64) -> String {
    let is_flat = job.model.stock.item(item).is_some_and(|item| {
        matches!(
            &item.kind,
            ItemKind::Component(component)
                if matches!(component.body, Some(Section::Oval { .. } | Section::Box { .. }))
        )
    });
    match (is_flat, roll_deg.abs() < 0.5) {
        (false, _) => String::new(),
        (true, true) => ", broad side level".to_owned(),
        (true, false) => format!(
            ", broad side turned {}° from level, plus clockwise looking downstream",
            signed_degrees(roll_deg)
        ),
    }
}
