//! Every check of the car.

use super::buy::supply_of;
use super::solve::solve;
use super::{Done, Failure, load, print};
use crate::cli::{Effort, Folder};
use crate::terminal::{FAILS, PASSES, WARNS, heading, paragraph, styled};
use serde_json::{Value, json};
use tubewright_check::{Board, Finding, Limit, State, Verdict};
use tubewright_plan::stages;

/// Shows the board.
///
/// # Errors
/// The folder cannot be read, or there is nothing to plan from.
pub(crate) fn run(arguments: &Folder) -> Result<Done, Failure> {
    let loaded = load::load(&arguments.folder)?;
    let solved = solve(
        &loaded,
        Effort {
            effort: None,
            seed: None,
        },
    )?;
    let supply = supply_of(&loaded.model, &solved, &[])?;
    let board = stages::check(
        &loaded.model,
        &solved.around,
        Some((&solved.posed, &solved.routed)),
        supply.as_ref(),
    );
    if arguments.json {
        print(&format!("{:#}\n", as_json(&board)))?;
    } else {
        print(&as_text(&board))?;
    }
    Ok(done(&board))
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
pub(crate) fn as_text(board: &Board) -> String {
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
                text.push_str(&format!(
                    "  {} ({})\n",
                    finding.rule.title(),
                    finding.rule.source()
                ));
                last = Some(finding.rule);
            }
            text.push_str(&paragraph(&sentence(finding), 6));
        }
    }
    text.push_str(&paragraph(
        "Do not run the engine while anything fails. Steering, brakes and fuel lines are judged by a licensed practitioner; local law decides on emissions and noise. Never work under a car that is held only by a jack. Exhaust gas holds carbon monoxide: run the engine outdoors.",
        2,
    ));
    text
}

fn sentence(finding: &Finding) -> String {
    let mut text = finding.subject.clone();
    if let (Some(measured), Some(limit)) = (finding.measured, finding.limit) {
        let unit = measured.unit.symbol();
        let plus_minus = measured
            .plus_minus
            .map_or_else(String::new, |pm| format!(" ± {pm:.1}"));
        let limit = match limit {
            Limit::AtLeast(limit) => format!("at least {limit:.1}{unit}"),
            Limit::AtMost(limit) => format!("at most {limit:.1}{unit}"),
        };
        text.push_str(&format!(
            ": {:.1}{plus_minus}{unit}, {limit}",
            measured.value
        ));
    }
    if let Some(place) = &finding.place {
        let p = place.point_in_car;
        text.push_str(&format!(
            ", {} (x {:.0}, y {:.0}, z {:.0})",
            place.words, p.x, p.y, p.z
        ));
    }
    if !finding.advice.is_empty() {
        text.push_str(&format!(". {}", finding.advice));
    }
    text
}

fn as_json(board: &Board) -> Value {
    json!({
        "fail": board.count(State::Fail),
        "not-checked": board.count(State::NotChecked),
        "pass": board.count(State::Pass),
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
