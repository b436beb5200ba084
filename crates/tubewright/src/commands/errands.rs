//! The order of the errands.

use super::solve::begin;
use super::{Done, Failure, load, print};
use crate::cli::shop::Errands;
use crate::terminal::{WARNS, heading, paragraph, styled};
use serde_json::json;
use std::collections::BTreeSet;
use tubewright_stock::{Road, Stop, best_round, minutes_between};

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
    let departs = clock(&arguments.leave)
        .ok_or_else(|| Failure::Choice(format!("“{}” is no time of day", arguments.leave)))?;
    let number = |name: &str| {
        if name == "shop" {
            return Some(0);
        }
        stops
            .iter()
            .position(|stop| stop.name == name)
            .map(|n| n + 1)
    };
    let mut roads = Vec::new();
    for text in &arguments.road {
        let parts: Vec<&str> = text.split(',').map(str::trim).collect();
        let road = match parts.as_slice() {
            [a, b, minutes] => number(a)
                .zip(number(b))
                .zip(minutes.trim_end_matches("min").trim().parse().ok())
                .map(|((a, b), minutes)| Road { a, b, minutes }),
            _ => None,
        };
        roads.push(road.ok_or_else(|| {
            Failure::Choice(format!(
                "the road “{text}” cannot be read; write \"shop, North Road Tube, 20\" with names of stops"
            ))
        })?);
    }
    let table = minutes_between(stops.len() + 1, &roads)
        .into_iter()
        .map(|row| row.into_iter().collect::<Option<Vec<u32>>>())
        .collect::<Option<Vec<_>>>()
        .ok_or_else(|| {
            Failure::Choice(
                "no road leads to one of the stops; give the minutes of at least one road to each"
                    .to_owned(),
            )
        })?;
    let round =
        best_round(&stops, &table, departs).map_err(|error| Failure::Choice(error.to_string()))?;
    // Suppliers of the plan that nobody drives to.
    let unvisited = suppliers_of_the_plan(&loaded)?
        .into_iter()
        .filter(|name| stops.iter().all(|stop| stop.name != *name))
        .collect::<Vec<_>>();
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

fn suppliers_of_the_plan(loaded: &load::Loaded) -> Result<BTreeSet<String>, Failure> {
    let solved = begin(loaded)?;
    let supply = solved.supply(loaded, &[])?;
    Ok(supply
        .iter()
        .flat_map(|supply| &supply.plan.buys)
        .map(|buy| buy.supplier.clone())
        .collect())
}

/// "North Road Tube, 8:00-17:00, 15".
fn stop(text: &str) -> Result<Stop, Failure> {
    let parts: Vec<&str> = text.rsplitn(3, ',').map(str::trim).collect();
    let stop = match parts.as_slice() {
        [minutes, hours, name] => hours.split_once('-').and_then(|(opens, closes)| {
            Some(Stop {
                name: (*name).to_owned(),
                opens: clock(opens)?,
                closes: clock(closes)?,
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

/// Minutes after midnight of "8:00".
fn clock(text: &str) -> Option<u32> {
    let (hours, minutes) = text.trim().split_once(':')?;
    let (hours, minutes): (u32, u32) = (hours.parse().ok()?, minutes.parse().ok()?);
    (hours <= 24 && minutes < 60).then_some(hours * 60 + minutes)
}

fn words(minutes: u32) -> String {
    format!("{:2}:{:02}", minutes / 60, minutes % 60)
}
