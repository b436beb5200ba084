//! A way is chosen, or a change of the chosen plan accepted: one entry more in shop.toml.

use super::{Shown, shown, text};
use crate::cli::Route;
use crate::commands::load::Loaded;
use crate::commands::plan::{Kept, NAMED};
use crate::commands::solve::{Solved, begin};
use crate::commands::{Done, Failure, print};
use crate::terminal::paragraph;
use serde_json::json;
use tubewright_build::FileKind;
use tubewright_build::document::append_entry;
use tubewright_build::folder::Changes;
use tubewright_build::model::{Entry, LengthUnits};
use tubewright_plan::frozen::{accepted_entry, chosen_entry};
use tubewright_plan::routes::PlannedRun;

/// Writes the chosen way into the record, piece by piece as geometry.
///
/// # Errors
/// There is no such way, steel of the chosen plan is bought or cut, or nothing could be saved.
pub(super) fn choose(loaded: &mut Loaded, which: &str, arguments: &Route) -> Result<Done, Failure> {
    let solved = with_fresh_routes(loaded)?;
    if let Some(plan) = solved.frozen()
        && plan.is_begun
    {
        return Err(Failure::Choice(format!(
            "something of the plan that was chosen on {} is bought or cut, so it stands; see what another way would cost with `tubewright route`, and take it up with --accept",
            plan.on
        )));
    }
    let ways = shown(loaded, &solved);
    let (_, way) = pick(&ways, which)?;
    let entry = chosen_entry(
        &date(arguments),
        &way.alternative.name,
        solved.budget,
        &way.alternative.runs,
        units(loaded),
    );
    let words = format!(
        "Chosen: {}. Its {} pieces stand in shop.toml with their marks; paint them on the steel.",
        way.alternative.name,
        count(&way.alternative.runs)
    );
    let marks = marks_of(&way.alternative.runs);
    append(loaded, &entry)?;
    tell(arguments, "chosen", &way.alternative.name, &marks, &words)
}

/// Writes the runs that a way changes into the record.
///
/// # Errors
/// Nothing was chosen, there is no such way, or nothing could be saved.
pub(super) fn accept(loaded: &mut Loaded, which: &str, arguments: &Route) -> Result<Done, Failure> {
    let solved = with_fresh_routes(loaded)?;
    if solved.chosen.is_none() {
        return Err(Failure::Choice(
            "nothing was chosen yet, so there is nothing to change; take --choose".to_owned(),
        ));
    }
    let ways = shown(loaded, &solved);
    let (number, way) = pick(&ways, which)?;
    let offer = way.offer.as_ref().filter(|offer| !offer.is_nothing());
    let Some(offer) = offer else {
        print(&paragraph(
            "That is the chosen plan: there is nothing to change.",
            0,
        ))?;
        return Ok(Done::Clean);
    };
    let changed: Vec<PlannedRun> = way
        .alternative
        .runs
        .iter()
        .filter(|run| offer.runs.iter().any(|changed| changed.run == run.name))
        .cloned()
        .collect();
    let entry = accepted_entry(
        &date(arguments),
        &way.alternative.name,
        &changed,
        units(loaded),
    );
    if !arguments.at.json {
        print(&text::offer_text(number, offer))?;
    }
    append(loaded, &entry)?;
    let words = format!(
        "Accepted: {}. It stands in shop.toml.",
        way.alternative.name
    );
    tell(
        arguments,
        "accepted",
        &way.alternative.name,
        &marks_of(&changed),
        &words,
    )
}

/// The routes that were shown last. What is chosen must be what was looked at, so that nothing is
/// solved here.
fn with_fresh_routes(loaded: &Loaded) -> Result<Solved, Failure> {
    let mut solved = begin(loaded)?;
    match solved.plan.routes(loaded, &solved.around, &solved.posed) {
        Kept::Fresh(routed, budget) => {
            solved.routed = Some(routed);
            solved.budget = budget;
            Ok(solved)
        }
        Kept::Older(older) => Err(Failure::Choice(format!(
            "the routes that were found are {}; run `tubewright route` again and look at them first",
            older.words(NAMED)
        ))),
        Kept::Absent => Err(Failure::Choice(
            "there are no routes in plan.json; run `tubewright route` and look at them first"
                .to_owned(),
        )),
    }
}

/// The way of this number or name.
fn pick<'s, 'a>(ways: &'s [Shown<'a>], which: &str) -> Result<(usize, &'s Shown<'a>), Failure> {
    let by_number = which
        .parse::<usize>()
        .ok()
        .and_then(|number| number.checked_sub(1));
    let index = by_number.or_else(|| ways.iter().position(|way| way.alternative.name == which));
    index
        .and_then(|index| Some((index + 1, ways.get(index)?)))
        .ok_or_else(|| {
            Failure::Choice(format!(
                "there is no way “{which}”; there are {} (by number or by name)",
                ways.len()
            ))
        })
}

fn units(loaded: &Loaded) -> LengthUnits {
    loaded.model.build.shown_units().units
}

fn date(arguments: &Route) -> String {
    arguments.on.clone().unwrap_or_else(crate::terminal::today)
}

fn append(loaded: &mut Loaded, entry: &Entry) -> Result<(), Failure> {
    let record = append_entry(loaded.folder.text(FileKind::Shop), entry)?;
    let mut changes = Changes::new();
    changes.set(FileKind::Shop, record);
    loaded.folder.save(&changes)?;
    Ok(())
}

fn count(runs: &[PlannedRun]) -> usize {
    runs.iter().map(|run| run.pieces.len()).sum()
}

fn marks_of(runs: &[PlannedRun]) -> Vec<String> {
    let pieces = runs.iter().flat_map(|run| &run.pieces);
    pieces.map(|piece| piece.mark.clone()).collect()
}

fn tell(
    arguments: &Route,
    what: &str,
    way: &str,
    marks: &[String],
    words: &str,
) -> Result<Done, Failure> {
    if arguments.at.json {
        print(&format!(
            "{:#}\n",
            json!({ "what": what, "way": way, "pieces": marks })
        ))?;
    } else {
        print(&paragraph(words, 0))?;
    }
    Ok(Done::Clean)
}
