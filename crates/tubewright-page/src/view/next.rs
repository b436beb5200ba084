//! What to measure next, and what the readings do not tell yet.

use crate::api::{NextReading, SpotView, TakeKind, TakeView};
use tubewright_plan::stages::Surroundings;
use tubewright_plan::survey::{Gain, Guide, SetupTrouble, Suggestion, Surer};
use tubewright_survey::{Network, ReadingKind, Target};

/// Most readings that are named.
const MOST: usize = 8;

/// The doubtful ones again first, then what gains most, then what would check the unchecked.
pub(super) fn of(around: &Surroundings, guide: &Guide) -> Vec<NextReading> {
    let network = around.measured.adjustment.network();
    let again = around.measured.doubtful.iter().map(|doubtful| {
        let reading = network.reading(doubtful.number);
        NextReading {
            what: reading
                .map(|reading| network.reading_name(&reading.kind))
                .unwrap_or_default(),
            why: format!(
                "again: reading {} is doubtful and was set aside",
                doubtful.number
            ),
            shows: None,
            take: None,
        }
    });
    let lacking = guide.missing.iter().filter_map(|lack| {
        Some(NextReading {
            what: lack.first.clone()?,
            why: format!("{} is not found yet", lack.name),
            shows: None,
            take: None,
        })
    });
    let gaining = guide.next.iter().map(|suggestion| NextReading {
        what: suggestion.words.clone(),
        why: suggestion
            .gain
            .as_ref()
            .map_or_else(|| "it makes the car surer".to_owned(), gain),
        shows: suggestion.shows.map(|shows| shows.value),
        take: take(network, suggestion),
    });
    let checking = guide.unchecked.iter().filter_map(|check| {
        Some(NextReading {
            what: check.by.clone()?,
            why: format!(
                "nothing else checks reading {}, {}",
                check.number, check.words
            ),
            shows: None,
            take: None,
        })
    });
    again
        .chain(lacking)
        .chain(gaining)
        .chain(checking)
        .take(MOST)
        .collect()
}

fn gain(gain: &Gain) -> String {
    match &gain.of {
        Surer::Place(name) => format!(
            "{name}: from ± {:.1} mm to ± {:.1} mm",
            gain.before, gain.after
        ),
        Surer::Direction(name) => format!(
            "direction of {name}: from ± {:.1}° to ± {:.1}°",
            gain.before.to_degrees(),
            gain.after.to_degrees()
        ),
    }
}

fn take(network: &Network, suggestion: &Suggestion) -> Option<TakeView> {
    let spot = |target: Target| spot(network, target);
    Some(match &suggestion.reading {
        ReadingKind::Tape { from, to, .. } => TakeView {
            kind: TakeKind::Tape,
            from: spot(from.target)?,
            to: Some(spot(to.target)?),
            setup: None,
        },
        ReadingKind::Height { target, setup } => TakeView {
            kind: TakeKind::Height,
            from: spot(target.target)?,
            to: None,
            setup: Some(network.setups.get(setup.0)?.name.clone()),
        },
        ReadingKind::Plumb { from, to, setup } => TakeView {
            kind: TakeKind::Plumb,
            from: spot(*from)?,
            to: Some(spot(*to)?),
            setup: Some(network.setups.get(setup.0)?.name.clone()),
        },
        _ => return None,
    })
}

fn spot(network: &Network, target: Target) -> Option<SpotView> {
    let end = |end: usize| network.ends.get(end).map(|end| end.name.clone());
    Some(match target {
        Target::Point(point) => SpotView {
            name: network.points.get(point.0)?.name.clone(),
            rim: None,
        },
        Target::Rim { end: id, clock_rad } => SpotView {
            name: end(id.0)?,
            rim: Some({
                let hours = clock_rad.to_degrees() / 30.0;
                if hours < 0.01 { 12.0 } else { hours }
            }),
        },
        Target::Centre(id) => SpotView {
            name: end(id.0)?,
            rim: None,
        },
        Target::Hole { .. } => return None,
    })
}

/// From here on another direction and not another place is what is told, radians.
const SEEN_TURN_RAD: f64 = 0.05;

/// What the readings do not tell yet.
pub(super) fn lacks(guide: &Guide) -> Vec<String> {
    let mut words: Vec<String> = guide
        .missing
        .iter()
        .map(|lack| {
            format!(
                "{} is not found yet: at least {} more reading{}{}",
                lack.name,
                lack.readings,
                if lack.readings == 1 { "" } else { "s" },
                if lack.is_end {
                    ", at three clock marks round its rim, from three marks each"
                } else {
                    ""
                }
            )
        })
        .collect();
    if guide.may_be_mirrored {
        words.push(
            "Nothing tells this car from its mirror image: say the side of some marks.".to_owned(),
        );
    }
    words.extend(guide.twofold.iter().map(|place| {
        if place.turned_rad > SEEN_TURN_RAD {
            format!(
                "{} fits the readings as well facing another way, turned {:.0}°: take one more line to its rim",
                place.name,
                place.turned_rad.to_degrees()
            )
        } else {
            format!(
                "{} fits the readings as well {:.0} mm away: say which side it is on, or take one more line to it",
                place.name, place.apart_mm
            )
        }
    }));
    words.extend(guide.setups.iter().map(|trouble| match trouble {
        SetupTrouble::FloorNotFixed { setup, heights } => format!(
            "{setup}: its floor is not fixed; it has heights of {heights} places and needs those of three marks, not in line, that are found by other readings too"
        ),
        SetupTrouble::FloorSlopes { setup, lean_rad } => format!(
            "{setup}: the floor slopes {:.1}° against the plumb line; is that so?",
            lean_rad.to_degrees()
        ),
        SetupTrouble::NoneOnWheels => "Ground clearance is not checked: take the heights of three marks with the car on its wheels".to_owned(),
        SetupTrouble::NotUsed { setup } => format!("{setup}: no reading names it"),
    }));
    words
}
