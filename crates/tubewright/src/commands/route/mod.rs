//! Find routes and show them side by side; choose one, or accept a change of the chosen plan.

mod choose;
mod json;
mod text;

pub(crate) use text::as_text;

use super::solve::{Solved, solve};
use super::{Done, Failure, load, print};
use crate::cli::Route;
use crate::terminal::lengths::shown_lengths;
use tubewright_plan::figures::{Figures, figures};
use tubewright_plan::frozen::{Offer, offer_of};
use tubewright_plan::stages::{self, Alternative, Routed};

/// An alternative with what it is compared by.
#[derive(Debug)]
pub(crate) struct Shown<'a> {
    /// The alternative.
    pub(crate) alternative: &'a Alternative,
    /// Its figures.
    pub(crate) figures: Figures,
    /// What it changes of the chosen plan.
    pub(crate) offer: Option<Offer>,
}

/// Routes every run, or takes up one of the routes found before.
///
/// # Errors
/// The folder cannot be read, the routes cannot be posed, or there is no such alternative.
pub(crate) fn run(arguments: &Route) -> Result<Done, Failure> {
    let mut loaded = load::load(&arguments.at.folder)?;
    if let Some(which) = &arguments.choose {
        return choose::choose(&mut loaded, which, arguments);
    }
    if let Some(which) = &arguments.accept {
        return choose::accept(&mut loaded, which, arguments);
    }
    let solved = solve(&mut loaded, arguments.effort)?;
    let shown = shown(&loaded, &solved);
    if arguments.at.json {
        print(&format!("{:#}\n", json::as_json(&solved, &shown)))?;
    } else {
        let lengths = shown_lengths(&loaded.model);
        print(&as_text(&solved, &shown, lengths))?;
        if matches!(solved.routed, Some(Routed::Found(_))) {
            print(&text::what_next(&solved, &arguments.at.folder))?;
        }
    }
    let is_found = matches!(solved.routed, Some(Routed::Found(_)));
    let is_clean = is_found && solved.posed.left_out.is_empty();
    solved.plan.save(&mut loaded);
    Ok(if is_clean {
        Done::Clean
    } else {
        Done::Findings
    }
    .or_stopped())
}

/// Every alternative with its figures, and with what it changes when a plan was chosen.
pub(crate) fn shown<'a>(loaded: &load::Loaded, solved: &'a Solved) -> Vec<Shown<'a>> {
    let Some(Routed::Found(alternatives)) = &solved.routed else {
        return Vec::new();
    };
    alternatives
        .iter()
        .map(|alternative| {
            let (model, around) = (&loaded.model, &solved.around);
            // Without a currency there is no price; everything else is shown all the same.
            let supply = stages::supply(model, &around.practice, &alternative.runs, &[]).ok();
            Shown {
                alternative,
                figures: figures(
                    model,
                    around,
                    &solved.posed,
                    &alternative.runs,
                    supply.as_ref(),
                ),
                offer: solved.chosen.as_ref().map(|chosen| {
                    offer_of(&model.shop, &model.stock, &chosen.runs, &alternative.runs)
                }),
            }
        })
        .collect()
}
