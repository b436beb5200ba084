//! Every check of the car.

use super::plan::NAMED;
use super::solve::{Solved, runs_of};
use super::{Done, Failure, load, print};
use crate::cli::Folder;
use crate::terminal::lengths::shown_lengths;
use crate::terminal::{FAILS, PASSES, WARNS, heading, paragraph, styled};
use serde_json::{Value, json};
use tubewright_check::{Board, Finding, Limit, Measured, State, Unit, Verdict};
use tubewright_plan::lengths::Lengths;
use tubewright_plan::plan_file::Freshness;

/// Shows the board.
///
/// # Errors
/// The folder cannot be read, or there is nothing to plan from.
pub(crate) fn run(arguments: &Folder) -> Result<Done, Failure> {
    let mut loaded = load::load(&arguments.folder)?;
    let mut solved = runs_of(&mut loaded)?;
    let supply = solved.supply(&loaded, &[])?;
    let board = solved.board(&loaded, supply.as_ref());
    if arguments.json {
        print(&format!("{:#}\n", as_json(&solved, &board)))?;
    } else {
        print(&plan_text(&solved))?;
        print(&as_text(&board, shown_lengths(&loaded.model)))?;
    }
    let chosen = solved.chosen.as_ref().map(|chosen| &chosen.plan);
    let (around, budget) = (&solved.around, solved.budget);
    if let Some(supply) = &supply {
        solved
            .plan
            .keep_supply(&loaded, around, budget, chosen, supply);
    }
    solved
        .plan
        .keep_checks(&loaded, around, budget, chosen, &board);
    solved.plan.save(&mut loaded);
    Ok(done(&board).or_stopped())
}

/// Which plan is judged, and what of it is older than what it was made from.
fn plan_text(solved: &Solved) -> String {
    let mut text = heading("Plan");
    match &solved.chosen {
        Some(chosen) => text.push_str(&paragraph(
            &format!(
                "Chosen on {}: {}{}.",
                chosen.plan.on,
                chosen.plan.route,
                if chosen.plan.is_begun {
                    "; steel is bought or cut, so it stands"
                } else {
                    ""
                }
            ),
            2,
        )),
        None => text.push_str("  No way is chosen yet: the first one is judged.\n"),
    }
    if let Some(older @ Freshness::Older(_)) = &solved.older {
        text.push_str(&paragraph(
            &format!(
                "{}: {}. The chosen plan is judged as the car is measured now; `tubewright route` solves again and offers changes.",
                styled(WARNS, "routes"),
                older.words(NAMED)
            ),
            2,
        ));
    }
    text
}

/// Findings that fail end with 1.
pub(crate) fn done(board: &Board) -> Done {
    if board.verdict() == Verdict::Fails {
        Done::Findings
    } else {
        Done::Clean
    }
}

/// The board as text.
pub(crate) fn as_text(board: &Board, lengths: Lengths) -> String {
    let mut text = heading("Checks");
    let count = |state| board.count(state);
    text.push_str(&format!(
        "  {} fail, {} not checked, {} pass, {} do not apply\n",
        count(State::Fail),
        count(State::NotChecked),
        count(State::Pass),
        count(State::DoesNotApply)
    ));
    for state in [State::Fail, State::NotChecked, State::Pass] {
        if count(state) == 0 {
            continue;
        }
        let style = match state {
            State::Fail => FAILS,
            State::NotChecked => WARNS,
            _ => PASSES,
        };
        text.push_str(&format!("\n  {}\n", styled(style, state.words())));
        let mut last = None;
        for finding in board
            .findings()
            .iter()
            .filter(|finding| finding.state == state)
        {
            if last != Some(finding.rule) {
                let title = format!("{} ({})", finding.rule.title(), finding.rule.source());
                text.push_str(&paragraph(&title, 2));
                last = Some(finding.rule);
            }
            text.push_str(&paragraph(&sentence(finding, lengths), 6));
        }
    }
    text.push_str(&paragraph(
        "Do not run the engine while anything fails. Steering, brakes and fuel lines are judged by a licensed practitioner; local law decides on emissions and noise. Never work under a car that is held only by a jack. Exhaust gas holds carbon monoxide: run the engine outdoors.",
        2,
    ));
    text
}

fn sentence(finding: &Finding, lengths: Lengths) -> String {
    let mut text = finding.subject.clone();
    if let (Some(measured), Some(limit)) = (finding.measured, finding.limit) {
        let limit = match limit {
            Limit::AtLeast(limit) => format!("at least {}", value(limit, measured.unit, lengths)),
            Limit::AtMost(limit) => format!("at most {}", value(limit, measured.unit, lengths)),
        };
        text.push_str(&format!(
            ": {}, {limit}",
            with_plus_minus(measured, lengths)
        ));
    }
    if let Some(place) = &finding.place {
        let [x, y, z] = place.point_in_car.to_array().map(|p| lengths.place(p));
        text.push_str(&format!(
            ", {} (x {x}, y {y}, z {z})",
            lengths.sentence(&place.words)
        ));
    }
    if !finding.advice.is_empty() {
        text.push_str(&format!(". {}", lengths.sentence(&finding.advice)));
    }
    text
}

fn value(value: f64, unit: Unit, lengths: Lengths) -> String {
    match unit {
        Unit::Millimetre => lengths.tape(value),
        _ => format!("{value:.1}{}", unit.symbol()),
    }
}

fn with_plus_minus(measured: Measured, lengths: Lengths) -> String {
    let text = value(measured.value, measured.unit, lengths);
    match (measured.plus_minus, measured.unit) {
        (None, _) => text,
        (Some(plus_minus), Unit::Millimetre) => lengths.with_plus_minus(measured.value, plus_minus),
        (Some(plus_minus), unit) => format!("{text} ± {plus_minus:.1}{}", unit.symbol()),
    }
}

fn as_json(solved: &Solved, board: &Board) -> Value {
    json!({
        "chosen": solved.chosen.as_ref().map(|chosen| json!({
            "way": chosen.plan.route, "on": chosen.plan.on, "begun": chosen.plan.is_begun,
        })),
        "routes-older-than": match &solved.older {
            Some(Freshness::Older(causes)) => {
                Some(causes.iter().map(ToString::to_string).collect::<Vec<_>>())
            }
            _ => None,
        },
        "fail": board.count(State::Fail),
        "not-checked": board.count(State::NotChecked),
        "pass": board.count(State::Pass),
        "does-not-apply": board.count(State::DoesNotApply),
        "findings": board.findings().iter().map(|finding| json!({
            "rule": finding.rule.id(),
            "title": finding.rule.title(),
            "job": finding.rule.job().title(),
            "state": finding.state.words(),
            "subject": finding.subject,
            "value": finding.measured.map(|m| m.value),
            "plus-minus": finding.measured.and_then(|m| m.plus_minus),
            "unit": finding.measured.map(|m| m.unit.symbol().trim()),
            "limit": finding.limit.map(|limit| match limit {
                Limit::AtLeast(v) => json!({"at-least": v}),
                Limit::AtMost(v) => json!({"at-most": v}),
            }),
            "place": finding.place.as_ref().map(|place| json!({
                "at": place.point_in_car.to_array(), "words": place.words,
            })),
            "source": finding.rule.source(),
            "advice": finding.advice,
        })).collect::<Vec<_>>(),
    })
}
