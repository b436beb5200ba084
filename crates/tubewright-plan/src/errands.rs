//! Errands by the names of their stops: what a person types of roads and opening hours, checked and put
//! to the exact search.

use tubewright_stock::{ErrandError, Road, Round, StockPlan, Stop, best_round, minutes_between};

/// What the workshop is called among the places of a road.
pub const SHOP: &str = "shop";

/// Minutes of a day.
const DAY_MIN: u32 = 24 * 60;

/// A road between two places by their names; it takes so many minutes either way.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct NamedRoad {
    /// One end: the name of a stop, or [`SHOP`].
    pub a: String,
    /// The other.
    pub b: String,
    /// Minutes.
    pub minutes: u32,
}

/// Why there is no round.
#[derive(Clone, Debug, PartialEq, Eq, thiserror::Error)]
#[non_exhaustive]
pub enum RoundError {
    /// A stop has no name, or that of the workshop.
    #[error("a stop has the name “{0}”, which is no stop's: give it the name of the place")]
    BadName(String),
    /// Two stops have one name.
    #[error("there are two stops “{0}”: give each a name of its own")]
    Twice(String),
    /// It closes before it opens.
    #[error("{0} closes before it opens: look at its hours again")]
    Shut(String),
    /// More minutes than a day has.
    #[error("{minutes} minutes {what} are more than a day: look at the figure again")]
    TooLong {
        /// What takes them.
        what: String,
        /// The minutes.
        minutes: u32,
    },
    /// A road leads to no stop.
    #[error("a road leads to “{0}”, which is neither a stop nor \"shop\"")]
    NoSuchPlace(String),
    /// No road leads there.
    #[error("no road leads to {0}; give the minutes of at least one road to it")]
    NoRoad(String),
    /// The search found none.
    #[error(transparent)]
    Round(#[from] ErrandError),
}

/// The round that is back at the workshop first.
///
/// # Errors
/// [`RoundError`].
pub fn round_of(stops: &[Stop], roads: &[NamedRoad], departs: u32) -> Result<Round, RoundError> {
    for (at, stop) in stops.iter().enumerate() {
        let name = &stop.name;
        if name.trim().is_empty() || name == SHOP {
            return Err(RoundError::BadName(name.clone()));
        }
        if stops.iter().take(at).any(|other| other.name == *name) {
            return Err(RoundError::Twice(name.clone()));
        }
        if stop.closes < stop.opens {
            return Err(RoundError::Shut(name.clone()));
        }
        no_longer_than_a_day(stop.service, || format!("at {name}"))?;
    }
    let place = |name: &str| {
        if name == SHOP {
            return Ok(0);
        }
        let at = stops.iter().position(|stop| stop.name == name);
        at.map(|at| at + 1)
            .ok_or_else(|| RoundError::NoSuchPlace(name.to_owned()))
    };
    let mut known = Vec::with_capacity(roads.len());
    for NamedRoad { a, b, minutes } in roads {
        no_longer_than_a_day(*minutes, || format!("from {a} to {b}"))?;
        known.push(Road {
            a: place(a)?,
            b: place(b)?,
            minutes: *minutes,
        });
    }
    let table = minutes_between(stops.len() + 1, &known);
    // Roads go either way: what can be reached from the workshop can be reached from everywhere.
    let from_the_shop = table.first().into_iter().flatten().skip(1);
    if let Some((lost, _)) = stops
        .iter()
        .zip(from_the_shop)
        .find(|(_, minutes)| minutes.is_none())
    {
        return Err(RoundError::NoRoad(lost.name.clone()));
    }
    let table: Vec<Vec<u32>> = table
        .into_iter()
        .map(|row| row.into_iter().flatten().collect())
        .collect();
    Ok(best_round(stops, &table, departs)?)
}

fn no_longer_than_a_day(minutes: u32, what: impl FnOnce() -> String) -> Result<(), RoundError> {
    if minutes > DAY_MIN {
        return Err(RoundError::TooLong {
            what: what(),
            minutes,
        });
    }
    Ok(())
}

/// Suppliers that the plan buys from and that are no stop, in the order of their names.
#[must_use]
pub fn not_visited(plan: &StockPlan, stops: &[Stop]) -> Vec<String> {
    let mut names: Vec<String> = plan
        .buys
        .iter()
        .map(|buy| buy.supplier.clone())
        .filter(|name| stops.iter().all(|stop| stop.name != *name))
        .collect();
    names.sort();
    names.dedup();
    names
}

/// Minutes after midnight of `8:00`.
#[must_use]
pub fn time_of_day(text: &str) -> Option<u32> {
    let (hours, minutes) = text.trim().split_once(':')?;
    let (hours, minutes): (u32, u32) = (hours.parse().ok()?, minutes.parse().ok()?);
    let time = hours.checked_mul(60)?.checked_add(minutes)?;
    (minutes < 60 && time <= DAY_MIN).then_some(time)
}

/// A time of day as a clock shows it: `8:05`. One after midnight counts on: `24:30`.
#[must_use]
pub fn time_words(minutes: u32) -> String {
    format!("{}:{:02}", minutes / 60, minutes % 60)
}

#[cfg(test)]
mod tests {
    use super::*;

    fn stop(name: &str, opens: u32, closes: u32) -> Stop {
        Stop {
            name: name.to_owned(),
            opens,
            closes,
            service: 10,
        }
    }

    fn road(a: &str, b: &str, minutes: u32) -> NamedRoad {
        NamedRoad {
            a: a.to_owned(),
            b: b.to_owned(),
            minutes,
        }
    }

    #[test]
    fn the_round_keeps_the_hours_of_named_stops() {
        // North shuts early, so it is first although South is nearer.
        let stops = [stop("South", 480, 1020), stop("North", 480, 540)];
        let roads = [road("shop", "South", 5), road("South", "North", 40)];
        let round = round_of(&stops, &roads, 480).unwrap();
        assert_eq!(round.order, vec![1, 0]);
        // 480 + 45 there + 10 + 40 back past South + 10 + 5.
        assert_eq!(round.leaves, vec![535, 585]);
        assert_eq!(round.returns, 590);
    }

    #[test]
    fn what_is_typed_wrong_is_named() {
        let stops = [stop("North", 480, 1020)];
        let good = road("shop", "North", 20);
        assert_eq!(
            round_of(&stops, &[road("shop", "Nord", 20)], 480),
            Err(RoundError::NoSuchPlace("Nord".to_owned()))
        );
        assert_eq!(
            round_of(&stops, &[], 480),
            Err(RoundError::NoRoad("North".to_owned()))
        );
        let two = [stop("North", 480, 1020), stop("North", 480, 1020)];
        assert_eq!(
            round_of(&two, core::slice::from_ref(&good), 480),
            Err(RoundError::Twice("North".to_owned()))
        );
        assert_eq!(
            round_of(&[stop("North", 1020, 480)], &[good], 480),
            Err(RoundError::Shut("North".to_owned()))
        );
        let long = [road("shop", "North", u32::MAX)];
        assert!(matches!(
            round_of(&stops, &long, 480),
            Err(RoundError::TooLong { .. })
        ));
        assert!(matches!(
            round_of(&[stop("shop", 480, 1020)], &[], 480),
            Err(RoundError::BadName(_))
        ));
    }

    #[test]
    fn a_time_of_day_is_one() {
        assert_eq!(time_of_day(" 8:05"), Some(485));
        assert_eq!(time_of_day("08:05"), Some(485));
        assert_eq!(time_of_day("24:00"), Some(1440));
        for no in ["24:01", "8", "8:60", "-1:00", "8:5x", "99999999:00", ""] {
            assert_eq!(time_of_day(no), None, "{no}");
        }
        assert_eq!(time_words(485), "8:05");
    }
}
