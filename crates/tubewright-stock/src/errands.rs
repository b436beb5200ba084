//! The order of a dozen errands with opening hours: exact, by dynamic programming over subsets
//! (M. Held, R. M. Karp, *A dynamic programming approach to sequencing problems*, 1962, from
//! memory). Arriving earlier is never worse, for one can wait, so the earliest time at each
//! subset and last stop is all that must be kept.

/// A stop. Times are minutes after midnight.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Stop {
    /// Its name.
    pub name: String,
    /// Opens; who comes earlier waits.
    pub opens: u32,
    /// Closes; service must have ended by then.
    pub closes: u32,
    /// Minutes of service.
    pub service: u32,
}

/// A round from the shop through every stop and back.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Round {
    /// Indices of the stops in order.
    pub order: Vec<usize>,
    /// When service ends at each.
    pub leaves: Vec<u32>,
    /// Back at the shop.
    pub returns: u32,
}

/// Why there is no round.
#[derive(Clone, Debug, PartialEq, Eq, thiserror::Error)]
#[non_exhaustive]
pub enum ErrandError {
    /// More stops than are solved exactly.
    #[error("{stops} stops are too many for one round; plan at most {MOST_STOPS}")]
    TooMany {
        /// How many.
        stops: usize,
    },
    /// The table of minutes has the wrong shape.
    #[error("minutes are needed from the shop and each of {stops} stops to each other")]
    Table {
        /// How many stops.
        stops: usize,
    },
    /// No order keeps the opening hours.
    #[error("no order reaches every stop in its opening hours; start earlier or drop one")]
    NoOrder,
}

/// Most stops of one round.
pub const MOST_STOPS: usize = 12;

/// The round that is back first. `minutes[i][j]` leads from `i` to `j`; 0 is the shop, stop `n` of
/// `stops` is `n + 1`. Among equals the order with the lowest last stops is returned.
///
/// # Errors
///
/// More than [`MOST_STOPS`] stops, a table of the wrong shape, or opening hours that no order keeps.
pub fn best_round(
    stops: &[Stop],
    minutes: &[Vec<u32>],
    departs: u32,
) -> Result<Round, ErrandError> {
    let count = stops.len();
    if count > MOST_STOPS {
        return Err(ErrandError::TooMany { stops: count });
    }
    if minutes.len() != count + 1 || minutes.iter().any(|row| row.len() != count + 1) {
        return Err(ErrandError::Table { stops: count });
    }
    if count == 0 {
        return Ok(Round {
            order: Vec::new(),
            leaves: Vec::new(),
            returns: departs,
        });
    }
    let full = (1usize << count) - 1;
    // Earliest end of service with these stops done, the last one given, and the stop before it.
    let mut table: Vec<Vec<Option<(u32, usize)>>> = vec![vec![None; count]; full + 1];
    for done in 1..=full {
        for last in (0..count).filter(|last| done >> last & 1 == 1) {
            let before = done & !(1 << last);
            let leave =
                |from_minutes: u32, at: u32| serve(&stops[last], at.saturating_add(from_minutes));
            table[done][last] = if before == 0 {
                leave(minutes[0][last + 1], departs).map(|end| (end, last))
            } else {
                (0..count)
                    .filter_map(|previous| {
                        let (at, _) = table[before][previous]?;
                        Some((leave(minutes[previous + 1][last + 1], at)?, previous))
                    })
                    .min()
            };
        }
    }
    let (returns, mut last) = (0..count)
        .filter_map(|last| {
            let (end, _) = table[full][last]?;
            Some((end.saturating_add(minutes[last + 1][0]), last))
        })
        .min()
        .ok_or(ErrandError::NoOrder)?;
    let (mut order, mut leaves, mut done) = (Vec::new(), Vec::new(), full);
    while done != 0 {
        let Some((end, previous)) = table[done][last] else {
            break;
        };
        order.push(last);
        leaves.push(end);
        done &= !(1 << last);
        last = previous;
    }
    order.reverse();
    leaves.reverse();
    Ok(Round {
        order,
        leaves,
        returns,
    })
}

/// End of service when arriving then; `None` when it is past closing.
fn serve(stop: &Stop, arrives: u32) -> Option<u32> {
    let end = arrives.max(stop.opens).saturating_add(stop.service);
    (end <= stop.closes).then_some(end)
}
