//! Order of assembly and check distances.

use super::PrintJob;
use super::cautions::{BEFORE_TACKING, UNDER_THE_CAR, caution, shields};
use super::cut_cards::plus;
use super::gaps;
use super::not_made;
use super::parts::{has_like_sides, turn_of, turned_words};
use super::words::{degrees, on_paper, signed_degrees};
use crate::fit::{
    Act, FitSheet, FitStep, Gap, Joint, JointCheck, LEAST_CHECKS, Trim, Way, hour_words, is_of,
    joint_of, split_at_welds,
};
use crate::routes::{PlannedKind, PlannedRun, component_item, component_kind};
use crate::stages::Supply;
use tubewright_build::model::{ComponentKind, ItemKind, Section};
use tubewright_geometry::{Frame, math};
use tubewright_packet::{Block, Body, Column, Sheet, SheetKind, Step, Table};
use tubewright_stock::FitMark;

/// The fit sheet: the steps in order, each with its clock and its tapes.
pub(super) fn sheet(job: &PrintJob<'_>, fit: Option<&FitSheet>) -> Sheet {
    let (kind, title) = (SheetKind::Fit, "Fit and tack");
    let (Some(supply), Some(fit)) = (job.supply, fit) else {
        return not_made(kind, title, "there is no buying and cutting plan yet");
    };
    let mut blocks = vec![
        caution(UNDER_THE_CAR),
        caution(BEFORE_TACKING),
        Block::Steps { steps: how_to() },
    ];
    blocks.extend(
        job.runs
            .iter()
            .filter_map(|run| crate::routes::outlet_words(run, job.lengths))
            .map(|words| caution(&words)),
    );
    blocks.extend([
        Block::NewPage,
        Block::Heading {
            text: "In this order".to_owned(),
        },
        Block::Table {
            table: steps(job, supply, fit),
        },
    ]);
    blocks.extend(
        fit.unclosed
            .iter()
            .map(|words| caution(&format!("{words}."))),
    );
    blocks.extend(shields(job));
    Sheet {
        kind,
        title: title.to_owned(),
        is_lying: false,
        is_below: false,
        body: Body::Made { blocks },
    }
}

fn how_to() -> Vec<Step> {
    [
        (
            "Carry the witness line on",
            "Every sawn part has its line. Where a run starts, twelve o'clock of its rim is the line to start from: \
             the place that was scribed when the rim was measured, the highest where nothing was. Behind a crossover it is the highest place of the \
             outlet that the run leaves by. A part that says “in line” gets its line in line with that of \
             the part before it; scribe it on over a component.",
        ),
        (
            "Set the clock",
            "Stand upstream of the joint and look the way the gas flows. Turn the part until its line \
             stands so many degrees round from the line named: plus is clockwise, minus the other way. \
             The same is given in length round the outside of the tube: lay the clock strip or a soft \
             tape round the joint, nought on the line named. Arrow of flow downstream.",
        ),
        (
            "Scribe the hours round its open end",
            "Twelve o'clock in line with its own witness line, then clockwise, still looking the way the \
             gas flows: three o'clock a quarter round, six o'clock opposite. Only the hours that the \
             tapes name are needed.",
        ),
        (
            "Tape it, then tack",
            "Tape straight from the datum mark to the scribed hour on the edge of the open end. Move the \
             open end until every tape reads as it should, within what it may be off, and set three short \
             tacks. When the joint gapes then by more than the weld sheet allows, the shut joint goes first as long \
             as every tape stays within what it may be off. Where both cannot be had dress the face, a thin \
             wedge off its closed side, and tape again. A tape that stays out however the joint is dressed says that a \
             part before it is off: look for it there, and go on from the joint as it is only when its tapes \
             were handed in and the rest was planned again.",
        ),
        (
            "Close each stretch last",
            "The part that closes is cut last, to the gap as it is: hold it beside the gap, scribe both \
             faces, cut to the scribes.",
        ),
    ]
    .into_iter()
    .map(|(what, how)| Step {
        what: what.to_owned(),
        how: how.to_owned(),
    })
    .collect()
}

fn steps(job: &PrintJob<'_>, supply: &Supply, fit: &FitSheet) -> Table {
    let sign = job.lengths.sign();
    let mut table = Table::new(
        "fit",
        vec![
            Column::boxes("done"),
            Column::words("what").big(),
            Column::wide("where"),
            Column::figures(&format!("reads, {sign}")).big(),
            Column::figures(&format!("may be off, {sign}")),
        ],
    );
    let split = split_at_welds(job.model, job.runs, &supply.whole);
    for step in &fit.steps {
        table.group(heading(step));
        add_part(job, (supply, fit), step, &mut table);
        if let Some(trim) = &step.trim {
            for (end, by) in trim_rows(job, trim) {
                let cells = ["", "trim", end, by.as_str(), ""];
                table.row(cells.map(str::to_owned));
            }
            table.note(
                "Hold it beside the gap, scribe both faces, cut to the scribes, tack at both joints.",
            );
        }
        if let Some(lack) = step.trim.and_then(|trim| trim.lack_words(job.lengths)) {
            table.note(lack);
        }
        if let Some(gap) = Gap::of(&split, fit, step) {
            table.note(gaps::words(job, &gap));
        }
        if let Some(held) = step.held {
            table.note(held.how());
        }
        if is_flex(job, step) {
            table.note(
                "A flex is held straight and at its length while the run is tacked, by a bar tacked over it or a \
                 dummy tube; carry the line over that bar.",
            );
        }
        if step.step.act == Act::Hang && !step.is_there && step.checks.iter().any(is_not_held) {
            table.note(NOT_HELD);
        }
        for check in &step.checks {
            add_tapes(job, step, check, &mut table);
        }
    }
    table
}

/// Of a part that hangs and whose tapes do not hold it.
const NOT_HELD: &str = "ITS TAPES DO NOT HOLD IT: prop it so that it still can be moved, and what is tacked to it with it. \
    When its stretch is closed bring it in line with what comes from the engine, mind its gaps, and fix it only then.";

fn is_not_held(check: &JointCheck) -> bool {
    check.too_few.is_some() || check.only_mark().is_some()
}

/// Where a part that closes is left longer, and by how much.
fn trim_rows(job: &PrintJob<'_>, trim: &Trim) -> Vec<(&'static str, String)> {
    let l = job.lengths;
    let ends = match trim.has_two_legs() {
        true => [
            "left longer at its upstream end",
            "left longer at its downstream end",
        ],
        false => ["left longer"; 2],
    };
    ends.into_iter()
        .zip(trim.left_mm())
        .filter_map(|(end, mm)| Some((end, format!("+{}", l.place(l.up_to_tape_mm(mm?))))))
        .collect()
}

fn is_flex(job: &PrintJob<'_>, step: &FitStep) -> bool {
    let pieces = job.runs.iter().flat_map(|run| &run.pieces);
    let mut own = pieces.filter(|piece| step.marks.contains(&piece.mark));
    own.any(|piece| {
        matches!(&piece.kind, PlannedKind::Component { name, .. }
            if component_kind(job.model, name) == Some(ComponentKind::Flex))
    })
}

fn heading(step: &FitStep) -> String {
    let part = step.marks.join("+");
    let makes = &step.step.makes;
    let act = match step.step.act {
        Act::Hang if step.is_there => {
            format!("LOOK whether {part} stands where its tapes say: it stays as it is")
        }
        Act::Hang => format!("HANG {part}, or prop it on stands, where its tapes say"),
        Act::Bolt | Act::Tack(Way::Downstream) => {
            format!("{} {part} on at {makes}", step.puts_on().to_uppercase())
        }
        Act::Tack(Way::Upstream) => {
            format!("TACK {part} on at {makes}, against the flow, to what stands behind it")
        }
        Act::Close => format!("CLOSE with {part}, from {makes} on: the last of this stretch"),
    };
    format!("{}. {}: {act}", step.step.number, step.run)
}

/// What the part is and how it is turned.
fn add_part(
    job: &PrintJob<'_>,
    (supply, fit_sheet): (&Supply, &FitSheet),
    step: &FitStep,
    table: &mut Table,
) {
    let at = supply.fits.iter().position(|fit| fit.marks == step.marks);
    let Some((at, fit)) = at.and_then(|at| Some((at, supply.fits.get(at)?))) else {
        return;
    };
    let part = fit.marks.join("+");
    table.note(format!("{part} is {}.", what(job, supply, fit_sheet, fit)));
    if let Some((name, true)) = component(job, fit) {
        let roll = job
            .model
            .build
            .component(name)
            .and_then(|c| c.roll.as_ref());
        let turn = turn_of(job, name);
        let lies = match roll.map_or(0.0, |roll| roll.deg()) {
            deg if !turn.is_none() => turned_words(turn, deg.to_radians()),
            0.0 if is_alike(job, name) => {
                "level and square to the car: its ports at one height, left and right alike"
                    .to_owned()
            }
            0.0 => "along the car, its own top up".to_owned(),
            deg => format!(
                "along the car, rolled {}° clockwise looking downstream from lying level",
                degrees(deg)
            ),
        };
        table.row([
            String::new(),
            "level".to_owned(),
            format!(
                "{name} lies {lies}. A lift leans: set the finder to nought on a sill or rail that is level \
                 on its wheels, not on the floor"
            ),
            "level".to_owned(),
            String::new(),
        ]);
        return;
    }
    if step.step.act == Act::Hang {
        if let Some((joint, rad)) = own_line(job, &step.step.makes) {
            table.row([
                String::new(),
                "line".to_owned(),
                format!(
                    "scribe its own line from neck to neck, so far round from the highest place of the neck \
                     at {}, looking the way the gas flows",
                    joint.mark
                ),
                turn_words(job, rad.to_degrees(), rad * 0.5 * od_mm(job, &fit.run)),
                String::new(),
            ]);
        }
        return;
    }
    let (from, clock, round) = if step.step.act == Act::Tack(Way::Upstream) {
        // What stands is downstream: from its line to this one is the other way round.
        let Some(next) = supply.fits.get(at + 1).filter(|next| next.run == fit.run) else {
            return;
        };
        (
            format!("the line of {}, which stands", next.marks.join("+")),
            -next.clock.deg(),
            -next.round_outside.mm(),
        )
    } else {
        let before = at
            .checked_sub(1)
            .and_then(|before| supply.fits.get(before))
            .filter(|before| before.run == fit.run);
        let from = match before {
            Some(before) => format!("the line of {}", before.marks.join("+")),
            None if fit.run.contains(", behind ") => {
                "twelve o'clock, the highest place of the crossover's outlet".to_owned()
            }
            None => job
                .runs
                .iter()
                .find(|run| run.name == fit.run)
                .map_or_else(String::new, PlannedRun::twelve_words),
        };
        (from, fit.clock.deg(), fit.round_outside.mm())
    };
    let turns = turns(job, fit);
    let (reads, how) = if clock.abs() < 0.05 {
        ("in line".to_owned(), format!("with {from}"))
    } else {
        (
            turn_words(job, clock, round),
            format!("from {from} to that of {part}"),
        )
    };
    let how = if turns.is_empty() {
        how
    } else {
        format!("{how}. Inside of the curve, and where the run goes: {turns}")
    };
    table.row([String::new(), "clock".to_owned(), how, reads, String::new()]);
}

/// Whether a part's ports lie at one height and its sides are mirror images.
fn is_alike(job: &PrintJob<'_>, name: &str) -> bool {
    component_item(job.model, name).is_some_and(has_like_sides)
}

/// A turn in degrees and round the outside.
fn turn_words(job: &PrintJob<'_>, deg: f64, round_mm: f64) -> String {
    format!(
        "{}° = {}",
        signed_degrees(deg),
        plus(job.lengths.saw(round_mm))
    )
}

fn od_mm(job: &PrintJob<'_>, stretch: &str) -> f64 {
    job.runs
        .iter()
        .find(|run| stretch.starts_with(&run.name))
        .map_or(0.0, |run| run.od_mm)
}

/// Where the witness line lies at a joint, clockwise from its highest place looking downstream.
fn own_line(job: &PrintJob<'_>, mark: &str) -> Option<(Joint, f64)> {
    let (_, joint) = joint_of(job.runs, mark)?;
    let level = Frame::upright(joint.frame.origin, joint.frame.travel());
    let line = joint.frame.twelve();
    let rad = math::atan2(
        line.dot(level.three().vector()),
        line.dot(level.twelve().vector()),
    );
    Some((joint, rad))
}

/// The component that a part is, and whether it is a crossover, which lies level.
fn component<'a>(job: &PrintJob<'a>, fit: &FitMark) -> Option<(&'a str, bool)> {
    job.runs
        .iter()
        .flat_map(|run| &run.pieces)
        .filter(|piece| fit.marks.contains(&piece.mark))
        .find_map(|piece| match &piece.kind {
            PlannedKind::Component { name, .. } => Some((name.as_str(), false)),
            PlannedKind::Crossover { name, .. } => Some((name.as_str(), true)),
            _ => None,
        })
}

fn add_tapes(job: &PrintJob<'_>, step: &FitStep, check: &JointCheck, table: &mut Table) {
    let (l, joint) = (job.lengths, &check.joint);
    let most_mm = check.tolerance.most_mm;
    // Tapes from one mark to places a hand apart say one thing once.
    let told = match check.only_mark() {
        Some(_) => check.distances.get(..1).unwrap_or(&[]),
        None => check.distances.as_slice(),
    };
    for distance in told {
        table.row([
            String::new(),
            distance.mark.clone(),
            format!("to {} of {joint}", hour_words(distance.clock_rad)),
            l.place(distance.distance_mm),
            if most_mm >= 0.0 {
                format!("± {}", l.small(most_mm))
            } else {
                "as near as it goes".to_owned()
            },
        ]);
    }
    if most_mm < 0.0 {
        table.note(format!(
            "TOO LITTLE ROOM at {joint}: even when the tapes read true the gap to {} may be {} short{}. \
             Look at it there before the next part goes on{}.",
            check.tolerance_by.as_deref().unwrap_or("a body"),
            l.fine(-most_mm),
            wanted(job, check),
            how_to_see(job, step, check),
        ));
    } else if let (Some(near), false) = (&check.tolerance_by, check.distances.is_empty()) {
        table.note(format!(
            "What {joint} may be off is set by the gap to {near}."
        ));
    }
    if let (Some(why), None) = (&check.too_few, check.only_mark()) {
        table.note(format!(
            "NOT CHECKED: {joint} has {} of {LEAST_CHECKS} tapes: {why}.",
            check.distances.len()
        ));
    }
    let by_pieces_alone = check.distances.is_empty();
    if let Some(loose) = check.loose.as_ref().filter(|_| !by_pieces_alone) {
        table.note(format!(
            "NOT CHECKED {}: these tapes leave {joint} ± {} that way.",
            loose.words,
            l.fine(loose.plus_minus_mm)
        ));
    }
    if let Some(advice) = check.advice(l).map(|advice| on_paper(&advice)) {
        table.note(format!(
            "{advice}. Until then hold it by its place on the hanger and joint map."
        ));
    }
}

/// The gap that is asked of what sets a tolerance.
fn wanted(job: &PrintJob<'_>, check: &JointCheck) -> String {
    let name = check.tolerance_by.as_deref();
    let body = name.and_then(|name| job.around.bodies.body(name));
    body.map_or_else(String::new, |body| {
        format!(" of the {} asked for", job.lengths.about(body.gap_mm))
    })
}

/// How what sets a tolerance is held to be seen at the top of its travel, where it hangs lower with the car raised.
fn how_to_see(job: &PrintJob<'_>, step: &FitStep, check: &JointCheck) -> String {
    let name = check.tolerance_by.as_deref();
    let body = name.and_then(|name| job.around.bodies.body(name));
    let Some((body, [_, most_mm])) = body.and_then(|body| Some((body, body.travel_mm()?))) else {
        return String::new();
    };
    let pieces = job.runs.iter().flat_map(|run| &run.pieces);
    let own = pieces.filter(|piece| step.marks.contains(&piece.mark));
    let elements = own.flat_map(|piece| &piece.elements);
    body.held_to_see(elements, most_mm)
        .map_or_else(String::new, |words| {
            format!("; {}", job.lengths.sentence(&words))
        })
}

/// Which way the run goes on after the part's bend.
fn turns(job: &PrintJob<'_>, fit: &FitMark) -> String {
    job.runs
        .iter()
        .flat_map(|run| &run.pieces)
        .filter(|piece| fit.marks.contains(&piece.mark))
        .find(|piece| matches!(piece.kind, PlannedKind::Bend { .. }))
        .map_or_else(String::new, super::run_sheets::bend_goes)
}

fn what(job: &PrintJob<'_>, supply: &Supply, fit_sheet: &FitSheet, fit: &FitMark) -> String {
    if let Some(part) = supply
        .plan
        .cuts
        .iter()
        .flat_map(|cut| &cut.parts)
        .find(|part| is_of(part, &fit.marks))
    {
        let mut cards = supply.cards.iter();
        let card = cards.find(|card| {
            card.parts
                .iter()
                .any(|of_card| of_card.serves == part.serves)
        });
        return match card {
            Some(card) => super::cut_cards::part_on_card(job, Some(fit_sheet), card, part),
            None => super::cut_cards::part_words(job, part),
        };
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
