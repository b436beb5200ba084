//! The checks on paper: failures first, then what is not checked, as loud.

use super::PrintJob;
use super::cautions::{BEFORE_RUNNING, LICENSED, caution};
use super::words::fixed;
use tubewright_check::{Finding, Limit, State, Unit};
use tubewright_packet::{Block, Body, Column, Figure, Sheet, SheetKind, Table, Width};

/// The sheet.
pub(super) fn sheet(job: &PrintJob<'_>) -> Sheet {
    let count = |state| job.board.count(state).to_string();
    let figure = |state: State| Figure {
        value: count(state),
        what: state.words().to_owned(),
    };
    let mut blocks = vec![
        Block::Figures {
            figures: vec![
                figure(State::Fail),
                figure(State::NotChecked),
                figure(State::Pass),
                figure(State::DoesNotApply),
            ],
        },
        caution(BEFORE_RUNNING),
        caution(LICENSED),
    ];
    for (state, heading) in [
        (State::Fail, "Fails"),
        (State::NotChecked, "Not checked: judge it on the car"),
        (State::Pass, "Passes"),
        (State::DoesNotApply, "Does not apply"),
    ] {
        let of_state: Vec<&Finding> = job
            .board
            .findings()
            .iter()
            .filter(|finding| finding.state == state)
            .collect();
        if of_state.is_empty() {
            continue;
        }
        blocks.push(Block::Heading {
            text: format!("{heading} ({})", of_state.len()),
        });
        blocks.push(Block::Table {
            table: table(&of_state, state),
        });
    }
    Sheet {
        kind: SheetKind::Checks,
        title: "Checks".to_owned(),
        is_lying: false,
        body: Body::Made { blocks },
    }
}

fn table(findings: &[&Finding], state: State) -> Table {
    let has_numbers = findings.iter().any(|finding| finding.measured.is_some());
    let mut columns = vec![Column {
        width: Width::Share(0.7),
        ..Column::words("what")
    }];
    if has_numbers {
        columns.push(Column::figures("is"));
        columns.push(Column::figures("limit"));
    }
    columns.push(Column::wide(if state == State::Pass {
        "where"
    } else {
        "what to do, and where"
    }));
    let mut table = Table::new("checks", columns);
    let mut last = None;
    for finding in findings {
        if last != Some(finding.rule) {
            table.group(format!(
                "{} ({})",
                finding.rule.title(),
                finding.rule.source()
            ));
            last = Some(finding.rule);
        }
        let mut about = Vec::new();
        if let Some(place) = &finding.place {
            let [x, y, z] = place.point_in_car.to_array().map(|mm| fixed(mm, 0));
            about.push(format!("{} (x {x}, y {y}, z {z} mm)", place.words));
        }
        if !finding.advice.is_empty() {
            about.push(finding.advice.clone());
        }
        let about = about.join(". ");
        if has_numbers {
            let (is, limit) = numbers(finding);
            table.row([finding.subject.clone(), is, limit, about]);
        } else {
            table.row([finding.subject.clone(), about]);
        }
    }
    table
}

fn numbers(finding: &Finding) -> (String, String) {
    let Some(measured) = finding.measured else {
        return (String::new(), String::new());
    };
    let unit = measured.unit.symbol();
    let decimals = usize::from(measured.unit != Unit::One);
    let show = |value: f64| fixed(value, decimals);
    let is = match measured.plus_minus {
        Some(pm) => format!("{} ± {}{unit}", show(measured.value), show(pm)),
        None => format!("{}{unit}", show(measured.value)),
    };
    let limit = match finding.limit {
        Some(Limit::AtLeast(limit)) => format!("at least {}{unit}", show(limit)),
        Some(Limit::AtMost(limit)) => format!("at most {}{unit}", show(limit)),
        None => String::new(),
    };
    (is, limit)
}
