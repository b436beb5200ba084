//! Cut cards read back from their print, as a person at the saw reads them. Only the sizes of the stock
//! items are not in print: the item lies there.

use crate::common::convert;
use crate::common::paper::{OnPaper, Paper, Print, Stated, most_rounded_away};
use crate::common::solved::Solved;
use tubewright_build::model::LengthUnits;
use tubewright_plan::lengths::Lengths;
use tubewright_plan::stages::Supply;
use tubewright_plan::stock::source_words;
use tubewright_walker::{Card, End, Fit, SawCut};

const INCH_MM: f64 = 25.4;

/// A length as it is printed: `77.0`, `3-1/32`, `+1-5/16`.
fn length_mm(text: &str, units: LengthUnits) -> f64 {
    if units == LengthUnits::Millimetres {
        return text
            .parse()
            .unwrap_or_else(|_| panic!("{text} is no length"));
    }
    let (sign, rest) = match text.strip_prefix('-') {
        Some(rest) => (-1.0, rest),
        None => (1.0, text.strip_prefix('+').unwrap_or(text)),
    };
    let number = |text: &str| -> f64 {
        match text.split_once('/') {
            Some((over, under)) => {
                over.parse::<f64>().expect(text) / under.parse::<f64>().expect(text)
            }
            None => text.parse().expect(text),
        }
    };
    let inches: f64 = rest.split('-').map(number).sum();
    sign * inches * INCH_MM
}

/// Lines of a table with what wraps below the last column joined again.
fn unwrapped<'t>(
    lines: impl Iterator<Item = &'t str>,
    is_row: impl Fn(&str) -> bool,
) -> Vec<String> {
    let mut rows: Vec<String> = Vec::new();
    for line in lines {
        match rows.last_mut() {
            Some(last) if !is_row(line) => {
                last.push(' ');
                last.push_str(line.trim());
            }
            _ => rows.push(line.to_owned()),
        }
    }
    rows
}

pub(crate) fn paper_of(text: &str, solved: &Solved, supply: &Supply) -> Paper {
    let units = solved.model.build.shown_units().units;
    let division_mm = Lengths::of(&solved.model).saw_division_mm();
    let (cards_text, rest) = text
        .split_once("Clock of each part to the one before it")
        .expect("clocks follow the cards");
    let (clocks_text, followed_text) = rest
        .split_once("they end off by no more than")
        .expect("where the runs end follows the clocks");
    Paper {
        print: Print::Printed,
        cards: cards_text
            .split("\n\n")
            .filter(|block| block.contains("gives, from end A:"))
            .map(|block| card(block, units, supply))
            .collect(),
        fits: clocks(clocks_text, units),
        followed: followed(followed_text, units),
        reading_slack_mm: 2.0 * division_mm + 1e-6,
        division_mm,
        followed_slack_mm: 0.05,
        followed_slack_deg: 0.003,
        most_rounded_away: most_rounded_away(units),
    }
}

fn card(block: &str, units: LengthUnits, supply: &Supply) -> OnPaper {
    let words = block.split_whitespace().collect::<Vec<_>>().join(" ");
    let of_stock = supply
        .cards
        .iter()
        .find(|card| {
            words.starts_with(&format!(
                "{} no. {} (",
                source_words(&card.source),
                card.number
            ))
        })
        .unwrap_or_else(|| panic!("no stock item is that of: {words}"));
    let gives = words
        .split_once("gives, from end A: ")
        .expect("it gives something")
        .1;
    let gives = gives
        .split(" cut from end ")
        .next()
        .and_then(|gives| gives.split(" used whole").next())
        .expect("the parts");
    let lines = block
        .lines()
        .skip_while(|line| !line.contains("from end  "))
        .skip(1);
    let is_cut = |line: &str| {
        let mut cells = line.split_whitespace();
        cells.next().is_some_and(|cell| cell.parse::<u32>().is_ok())
            && matches!(cells.next(), Some("A" | "B"))
    };
    let cuts = unwrapped(
        lines.take_while(|line| {
            !line.trim_start().starts_with("cut ") && !line.contains(": not sawn:")
        }),
        is_cut,
    );
    OnPaper {
        is_refused: block
            .lines()
            .any(|line| line.trim_start().starts_with("cut ") && line.contains(':')),
        card: Card {
            name: words.split(" (").next().expect("a name").to_owned(),
            // The item lies on the bench.
            item: convert::card(of_stock).item,
            od: of_stock.stock.tube.od.mm(),
            parts: gives
                .split(", then ")
                .map(|part| {
                    part.split(" + ")
                        .map(|mark| mark.trim().to_owned())
                        .collect()
                })
                .collect(),
            cuts: cuts.iter().map(|row| cut(row, units)).collect(),
        },
    }
}

fn end(text: &str) -> End {
    match text {
        "A" => End::A,
        "B" => End::B,
        other => panic!("{other} is no end"),
    }
}

fn cut(row: &str, units: LengthUnits) -> SawCut {
    let cells: Vec<&str> = row.split_whitespace().collect();
    SawCut {
        number: cells[0].parse().expect("a number"),
        from: end(cells[1]),
        outside: length_mm(cells[2], units),
        inside: length_mm(cells[3], units),
        side: length_mm(cells[4], units),
        saw_deg: match cells[5] {
            "dress" => 0.0,
            sawn => sawn.trim_end_matches('°').parse().expect("degrees"),
        },
        is_dressed: cells[5] == "dress",
        kerf_toward: end(cells[6]),
        faces: cells[7..]
            .join(" ")
            .split(", ")
            .map(str::to_owned)
            .collect(),
    }
}

fn clocks(text: &str, units: LengthUnits) -> Vec<(String, Fit)> {
    let lines = text
        .lines()
        .skip_while(|line| !line.contains("round the outside"))
        .skip(1)
        // A paragraph is indented less than what wraps in a table.
        .take_while(|line| line.contains('°') || line.starts_with("      "));
    let rows = unwrapped(lines, |line| line.contains('°'));
    rows.iter()
        .map(|row| {
            // Marks joined by a plus come first; the clock is the cell with a degree sign.
            let cells: Vec<&str> = row.split_whitespace().collect();
            let at = cells
                .iter()
                .position(|cell| cell.ends_with('°'))
                .expect("a clock");
            let run = cells[at + 3..].join(" ");
            let is_reversed = run.ends_with(", turned end for end");
            let fit = Fit {
                marks: cells[..at]
                    .join(" ")
                    .split(" + ")
                    .map(str::to_owned)
                    .collect(),
                clock_deg: cells[at].trim_end_matches('°').parse().expect("degrees"),
                round_outside: length_mm(cells[at + 1], units),
                is_reversed,
            };
            let run = run.trim_end_matches(", turned end for end").to_owned();
            (run, fit)
        })
        .collect()
}

fn followed(text: &str, units: LengthUnits) -> Vec<Stated> {
    let lines = text
        .lines()
        .skip_while(|line| !line.contains("direction"))
        .skip(1);
    unwrapped(
        // A paragraph is indented less than what wraps in a table.
        lines.take_while(|line| line.contains('°') || line.starts_with("      ")),
        |line| line.contains('°'),
    )
    .iter()
    .map(|row| {
        let cells: Vec<&str> = row.split_whitespace().collect();
        let mm: f64 = cells[0].parse().expect("a number");
        let run = cells[3..].join(" ");
        let (run, up_to) = match run.split_once(", up to ") {
            Some((run, name)) => (run.to_owned(), Some(name.to_owned())),
            None => (run, None),
        };
        Stated {
            run,
            up_to,
            end_mm: if units == LengthUnits::Inches {
                mm * INCH_MM
            } else {
                mm
            },
            end_deg: cells[2].trim_end_matches('°').parse().expect("degrees"),
        }
    })
    .collect()
}
