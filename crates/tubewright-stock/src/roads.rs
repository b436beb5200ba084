//! Minutes between every two places from those that somebody typed: the shortest way over typed roads
//! (R. W. Floyd, *Algorithm 97: shortest path*, 1962, from memory).

/// A road that takes so many minutes either way.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Road {
    /// One end.
    pub a: usize,
    /// The other.
    pub b: usize,
    /// Minutes.
    pub minutes: u32,
}

/// The table of minutes for `places` places; `None` where no road leads.
#[must_use]
pub fn minutes_between(places: usize, roads: &[Road]) -> Vec<Vec<Option<u32>>> {
    let mut table: Vec<Vec<Option<u32>>> = (0..places)
        .map(|i| (0..places).map(|j| (i == j).then_some(0)).collect())
        .collect();
    for road in roads {
        for (from, to) in [(road.a, road.b), (road.b, road.a)] {
            if let Some(slot) = table.get_mut(from).and_then(|row| row.get_mut(to)) {
                *slot = Some(slot.map_or(road.minutes, |known| known.min(road.minutes)));
            }
        }
    }
    for through in 0..places {
        let row = table.get(through).cloned().unwrap_or_default();
        for from in &mut table {
            let Some(Some(first)) = from.get(through).copied() else {
                continue;
            };
            for (slot, second) in from.iter_mut().zip(&row) {
                if let Some(second) = second {
                    let way = first.saturating_add(*second);
                    *slot = Some(slot.map_or(way, |known| known.min(way)));
                }
            }
        }
    }
    table
}
