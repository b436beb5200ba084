//! The checks on paper: failures first, then what is not checked, as loud.

use super::PrintJob;
use super::cautions::{BEFORE_RUNNING, LICENSED, caution};
use super::run_sheets::as_painted;
use super::words::{fixed, on_paper};
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
            table: table(job, &of_state, state),
        });
    }
    Sheet {
        kind: SheetKind::Checks,
        title: "Checks".to_owned(),
        is_lying: false,
        is_below: false,
        body: Body::Made { blocks },
    }
}

fn table(job: &PrintJob<'_>, findings: &[&Finding], state: State) -> Table {
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
                "{}{} ({})",
                if state == State::Pass { "" } else { "check: " },
                finding.rule.title(),
                finding.rule.source()
            ));
            last = Some(finding.rule);
        }
        let mut about = Vec::new();
        if let Some(place) = &finding.place {
            let [x, y, z] = job.lengths.xyz(place.point_in_car);
            about.push(format!(
                "{} (x {x}, y {y}, z {z} {})",
                as_painted(job, &job.lengths.sentence(&place.words)),
                job.lengths.sign()
            ));
        }
        if !finding.advice.is_empty() {
            about.push(on_paper(&as_painted(
                job,
                &job.lengths.sentence(&finding.advice),
            )));
        }
        let about = about.join(". ");
        if has_numbers {
            let (is, limit) = numbers(job, finding);
            table.row([on_paper(&finding.subject), is, limit, about]);
        } else {
            table.row([on_paper(&finding.subject), about]);
        }
    }
    table
}

fn numbers(job: &PrintJob<'_>, finding: &Finding) -> (String, String) {
    let Some(measured) = finding.measured else {
        return (String::new(), String::new());
    };
    let is_length = measured.unit == Unit::Millimetre;
    let decimals = usize::from(measured.unit != Unit::One);
    let show = |value: f64| {
        if is_length {
            job.lengths.tape(value)
        } else {
            format!("{}{}", fixed(value, decimals), measured.unit.symbol())
        }
    };
    let is = match measured.plus_minus {
        Some(pm) if is_length => job.lengths.with_plus_minus(measured.value, pm),
        Some(pm) => format!("{} ± {}", fixed(measured.value, decimals), show(pm)),
        None => show(measured.value),
    };
    let limit = match finding.limit {
        Some(Limit::AtLeast(limit)) => format!("at least {}", show(limit)),
        Some(Limit::AtMost(limit)) => format!("at most {}", show(limit)),
        None => String::new(),
    };
    (is, limit)
}
