//! Everything that is printed or read by other programs, into one folder.

mod files;

use super::load::{Loaded, load};
use super::plan::{Kept, NAMED};
use super::solve::{Solved, begin, go_on};
use super::{Done, Failure, print};
use crate::cli::{PaperSize, Sheets};
use crate::terminal::{WARNS, say, styled, today};
use std::path::Path;
use tubewright_check::Board;
use tubewright_packet::{PacketPaper, Stamp};
use tubewright_plan::lengths::Lengths;
use tubewright_plan::packet::{PrintJob, Way, packet_of};
use tubewright_plan::plan_file::{routes_inputs, stock_inputs};
use tubewright_plan::stages::{Routed, Supply};
use tubewright_stock::{PlanError, Substitute, substitutes};

/// Writes the sheets.
///
/// # Errors
/// The folder cannot be read, its plan is older than its files, a stage cannot be done, or a file
/// cannot be written.
pub(crate) fn run(arguments: &Sheets) -> Result<Done, Failure> {
    let mut loaded = load(&arguments.folder)?;
    let begun = begin(&loaded)?;
    refuse_older(&loaded, &begun)?;
    let solved = go_on(&loaded, begun)?;
    let supply = solved.supply(&loaded, &[])?;
    let (board, found) = judged(&loaded, &solved, supply.as_ref());
    let date = arguments.date.clone().unwrap_or_else(today);
    let is_clean = write_all(
        &loaded,
        &solved,
        (supply.as_ref(), &board, &found),
        &arguments.out,
        (arguments.paper, date),
    )?;
    solved.plan.save(&mut loaded);
    Ok(if is_clean {
        Done::Clean
    } else {
        Done::Findings
    })
}

/// What is printed must be what was looked at: a plan that is older than the files is not printed
/// and not silently solved anew.
fn refuse_older(loaded: &Loaded, solved: &Solved) -> Result<(), Failure> {
    if solved.chosen.is_some() {
        return Ok(());
    }
    match solved.plan.routes(loaded, &solved.around, &solved.posed) {
        Kept::Older(older) => Err(Failure::OlderPlan {
            words: older.words(NAMED),
        }),
        Kept::Fresh(..) | Kept::Absent => Ok(()),
    }
}

/// Pairs of items that are worked out on the counter sheet beside each single one.
const PAIRS: usize = 3;

/// What to take when something is out; `None` without a buying plan.
pub(crate) type Substituted = Option<Result<Vec<Substitute>, PlanError>>;

/// What to take when something is out.
pub(crate) fn substituted(supply: Option<&Supply>) -> Substituted {
    supply.map(|supply| substitutes(&supply.request, &supply.plan, PAIRS))
}

/// The checks and what to take when something is out, beside each other.
pub(crate) fn judged(
    loaded: &Loaded,
    solved: &Solved,
    supply: Option<&Supply>,
) -> (Board, Substituted) {
    std::thread::scope(|scope| {
        let found = scope.spawn(|| substituted(supply));
        let board = solved.board(loaded, supply);
        let found = found.join();
        (
            board,
            found.unwrap_or_else(|panic| std::panic::resume_unwind(panic)),
        )
    })
}

/// Digits of the plan's hash that are printed: enough to tell two plans of a shop apart.
const HASH_DIGITS: usize = 10;

/// Writes every file into `out`. False when a sheet could not be made.
///
/// # Errors
/// A file cannot be written.
pub(crate) fn write_all(
    loaded: &Loaded,
    solved: &Solved,
    (supply, board, found): (Option<&Supply>, &Board, &Substituted),
    out: &Path,
    (paper, date): (PaperSize, String),
) -> Result<bool, Failure> {
    let model = &loaded.model;
    let substitutes: Result<&[Substitute], String> = match found {
        Some(Ok(found)) => Ok(found),
        Some(Err(error)) => Err(error.to_string()),
        None => Err("there is no buying plan".to_owned()),
    };
    let lengths = Lengths::of(model);
    let alternatives = match &solved.routed {
        Some(Routed::Found(alternatives)) => alternatives.as_slice(),
        _ => &[],
    };
    let way = match (&solved.chosen, alternatives.first()) {
        (Some(chosen), _) => Some(Way::Chosen {
            name: &chosen.plan.route,
            on: &chosen.plan.on,
        }),
        (None, Some(best)) => Some(Way::Cheapest {
            name: &best.name,
            cost: best.cost,
            lower_bound: best.lower_bound,
            among: alternatives.len(),
        }),
        (None, None) => None,
    };
    let job = PrintJob {
        model,
        around: &solved.around,
        way,
        runs: solved.runs(),
        supply,
        substitutes: substitutes.as_deref().map_err(String::as_str),
        board,
        lengths,
    };
    let routes = routes_inputs(model, &loaded.scans, &solved.around.practice, solved.budget);
    let hash = stock_inputs(model, &solved.around.practice, &routes, solved.frozen()).hash();
    let stamp = Stamp {
        build: model.build.name.clone().unwrap_or_default(),
        plan_hash: hash.to_string().chars().take(HASH_DIGITS).collect(),
        date,
        units: lengths.units().to_owned(),
        note: model
            .build
            .note
            .as_ref()
            .and_then(|note| note.split_inclusive('.').next())
            .map(|first| first.trim().to_owned()),
    };
    std::fs::create_dir_all(out).map_err(Failure::writing(out))?;
    let paper = match paper {
        PaperSize::A4 => PacketPaper::A4,
        PaperSize::Letter => PacketPaper::UsLetter,
    };
    let packet = packet_of(&job, stamp.clone(), paper);
    // The typesetter has one core, the other files the other.
    let (is_whole, troubles) = std::thread::scope(|scope| {
        let others = scope.spawn(|| {
            files::lists(&packet, out)?;
            let mut troubles = files::drawings(&job, &stamp, out)?;
            troubles.extend(files::solids(&job, &stamp, out)?);
            files::bend_tables(&job, &stamp, out)?;
            Ok::<_, Failure>(troubles)
        });
        let is_whole = files::packet(&packet, out);
        let others = others
            .join()
            .unwrap_or_else(|panic| std::panic::resume_unwind(panic));
        (is_whole, others)
    });
    let (is_whole, troubles) = (is_whole?, troubles?);
    for trouble in &troubles {
        say(&format!("{}: {trouble}", styled(WARNS, "not written")));
    }
    if is_whole {
        print(&format!(
            "The shop packet to print: {}\n",
            out.join("packet.pdf").display()
        ))?;
    }
    print(&format!(
        "Templates, lists and files for other programs: {}\n",
        out.display()
    ))?;
    Ok(is_whole && troubles.is_empty())
}
