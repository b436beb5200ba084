//! The order of the errands.

use super::solve::begin;
use super::{Done, Failure, load, print};
use crate::cli::shop::Errands;
use crate::terminal::{WARNS, heading, paragraph, styled};
use serde_json::json;
use tubewright_plan::errands::{NamedRoad, not_visited, round_of, time_of_day, time_words};
use tubewright_stock::Stop;

/// Shows the round that is back first.
///
/// # Errors
/// The folder cannot be read, a stop or road cannot, or no order keeps the opening hours.
pub(crate) fn run(arguments: &Errands) -> Result<Done, Failure> {
    let loaded = load::load(&arguments.at.folder)?;
    let stops = arguments
        .stop
        .iter()
        .map(|text| stop(text))
        .collect::<Result<Vec<_>, _>>()?;
    let departs = time_of_day(&arguments.leave)
        .ok_or_else(|| Failure::Choice(format!("“{}” is no time of day", arguments.leave)))?;
    let roads = arguments
        .road
        .iter()
        .map(|text| road(text))
        .collect::<Result<Vec<_>, _>>()?;
    let round =
        round_of(&stops, &roads, departs).map_err(|error| Failure::Choice(error.to_string()))?;
    // Suppliers of the plan that nobody drives to.
    let solved = begin(&loaded)?;
    let unvisited = solved
        .supply(&loaded, &[])?
        .map_or_else(Vec::new, |supply| not_visited(&supply.plan, &stops));
    if arguments.at.json {
        let list: Vec<_> = round
            .order
            .iter()
            .zip(&round.leaves)
            .filter_map(|(index, leaves)| {
                Some(json!({ "stop": stops.get(*index)?.name, "leaves": words(*leaves) }))
            })
            .collect();
        let text = json!({ "round": list, "back": words(round.returns), "not-visited": unvisited });
        print(&format!("{text:#}\n"))?;
    } else {
        let mut text = heading("Errands");
        text.push_str(&format!("  {} leave the shop\n", words(departs)));
        for (index, leaves) in round.order.iter().zip(&round.leaves) {
            if let Some(stop) = stops.get(*index) {
                text.push_str(&format!("  {} done at {}\n", words(*leaves), stop.name));
            }
        }
        text.push_str(&format!("  {} back\n", words(round.returns)));
        text.push_str(&paragraph(
            "No other order is back sooner. Take along for trial fit: an offcut of the tube, the sheet of saw marks, a tape, `tubewright counter` on the phone or on paper.",
            2,
        ));
        if !unvisited.is_empty() {
            text.push_str(&paragraph(
                &styled(
                    WARNS,
                    format!(
                        "Bought from, but not on the round: {}. Make each a stop with its hours and the minutes there, and give the way to it from one place at least: --stop \"{}, 8:00-17:00, 15\" --road \"shop, {}, 20\".",
                        unvisited.join(", "),
                        unvisited.first().map_or("", |name| name.as_str()),
                        unvisited.first().map_or("", |name| name.as_str()),
                    ),
                ),
                2,
            ));
        }
        print(&text)?;
    }
    Ok(Done::Clean)
}

/// "shop, North Road Tube, 20".
fn road(text: &str) -> Result<NamedRoad, Failure> {
    let parts: Vec<&str> = text.split(',').map(str::trim).collect();
    let road = match parts.as_slice() {
        [a, b, minutes] => minutes
            .trim_end_matches("min")
            .trim()
            .parse()
            .ok()
            .map(|minutes| NamedRoad {
                a: (*a).to_owned(),
                b: (*b).to_owned(),
                minutes,
            }),
        _ => None,
    };
    road.ok_or_else(|| {
        Failure::Choice(format!(
            "the road “{text}” cannot be read; write \"shop, North Road Tube, 20\" with names of stops"
        ))
    })
}

/// "North Road Tube, 8:00-17:00, 15".
fn stop(text: &str) -> Result<Stop, Failure> {
    let parts: Vec<&str> = text.rsplitn(3, ',').map(str::trim).collect();
    let stop = match parts.as_slice() {
        [minutes, hours, name] => hours.split_once('-').and_then(|(opens, closes)| {
            Some(Stop {
                name: (*name).to_owned(),
                opens: time_of_day(opens)?,
                closes: time_of_day(closes)?,
                service: minutes.trim_end_matches("min").trim().parse().ok()?,
            })
        }),
        _ => None,
    };
    stop.ok_or_else(|| {
        Failure::Choice(format!(
            "the stop “{text}” cannot be read; write \"North Road Tube, 8:00-17:00, 15\""
        ))
    })
}

/// A time in a column.
fn words(minutes: u32) -> String {
    format!("{:>5}", time_words(minutes))
}
