//! Errands, and buy or make.

use crate::api::{ErrandsAsked, ErrandsView, MakeAsked, MakeView, Refusal, StopAsked, StopView};
use crate::deeds::{refusal, said, short_text};
use crate::derived::Shown;
use tubewright_plan::errands::{NamedRoad, not_visited, round_of, time_of_day, time_words};
use tubewright_plan::stock::{BuyOrMakeAsked, buy_or_make_at_the_shop};
use tubewright_stock::Stop;

/// Most roads that are taken: each of thirteen places to each other.
const MOST_ROADS: usize = 78;

/// The round that is back first.
///
/// # Errors
/// A [`Refusal`] when a time or a name cannot be read, or no order keeps the opening hours.
pub(crate) fn round(shown: &Shown, asked: &ErrandsAsked) -> Result<ErrandsView, Refusal> {
    let departs = time(&asked.leave, "leaving the shop")?;
    let stops = asked
        .stops
        .iter()
        .map(stop)
        .collect::<Result<Vec<_>, _>>()?;
    if asked.roads.len() > MOST_ROADS {
        return Err(refusal(&format!(
            "{} roads are more than there can be between the shop and twelve stops: leave out what is said twice",
            asked.roads.len()
        )));
    }
    let roads = asked
        .roads
        .iter()
        .map(|road| {
            Ok(NamedRoad {
                a: short_text(&road.a)?,
                b: short_text(&road.b)?,
                minutes: road.minutes,
            })
        })
        .collect::<Result<Vec<_>, Refusal>>()?;
    let round = round_of(&stops, &roads, departs).map_err(said)?;
    let plan = shown.now().and_then(Result::ok).map(|now| &now.plan);
    Ok(ErrandsView {
        leaves: time_words(departs),
        stops: round
            .order
            .iter()
            .zip(&round.leaves)
            .filter_map(|(index, leaves)| {
                Some(StopView {
                    name: stops.get(*index)?.name.clone(),
                    done: time_words(*leaves),
                })
            })
            .collect(),
        back: time_words(round.returns),
        not_visited: plan.map_or_else(Vec::new, |plan| not_visited(plan, &stops)),
    })
}

fn stop(asked: &StopAsked) -> Result<Stop, Refusal> {
    let name = short_text(&asked.name)?;
    Ok(Stop {
        opens: time(&asked.opens, &format!("opening of {name}"))?,
        closes: time(&asked.closes, &format!("closing of {name}"))?,
        service: asked.minutes,
        name,
    })
}

fn time(text: &str, what: &str) -> Result<u32, Refusal> {
    time_of_day(text).ok_or_else(|| {
        refusal(&format!(
            "“{}” is no time of day for {what}: write it like 8:00",
            text.chars().take(20).collect::<String>()
        ))
    })
}

/// What buying and making cost.
///
/// # Errors
/// A [`Refusal`] when a number is none, or the stock file names no currency.
pub(crate) fn make(shown: &Shown, asked: &MakeAsked) -> Result<MakeView, Refusal> {
    let found = buy_or_make_at_the_shop(
        &shown.car.model().stock,
        BuyOrMakeAsked {
            price: asked.price,
            drive_min: asked.drive,
            wait_min: asked.wait,
            make_min: asked.make,
            material: asked.material,
        },
    )
    .map_err(said)?;
    Ok(MakeView {
        cheaper: found.cheaper().to_owned(),
        words: found.words(),
    })
}
