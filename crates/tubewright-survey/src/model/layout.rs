//! Which column of the normal matrix belongs to which unknown.

use crate::network::{Network, ReadingKind};

#[derive(Clone, Copy, Debug, Default)]
pub(crate) struct FloorColumns {
    /// First of two columns: tilt of the floor.
    pub(crate) tilt: Option<usize>,
    /// Height of the floor.
    pub(crate) offset: Option<usize>,
    /// First of two columns: lean of the plumb line against the floor.
    pub(crate) plumb: Option<usize>,
}

#[derive(Clone, Debug)]
pub(crate) struct Layout {
    pub(crate) points: Vec<[Option<usize>; 3]>,
    /// First of six columns: place, then rotation.
    pub(crate) ends: Vec<usize>,
    /// Lever in mm of each end's rotation unknowns.
    pub(crate) levers: Vec<f64>,
    pub(crate) floors: Vec<FloorColumns>,
    /// First of three columns: tilt (2), offset.
    pub(crate) plane: Option<usize>,
    pub(crate) width: usize,
}

impl Layout {
    pub(crate) fn of(network: &Network) -> Self {
        let mut next = 0;
        let mut take = |count: usize| {
            let first = next;
            next += count;
            first
        };
        let points = network
            .points
            .iter()
            .map(|p| p.held.map(|held| held.is_none().then(|| take(1))))
            .collect();
        let ends = network.ends.iter().map(|_| take(6)).collect();
        let levers = network.ends.iter().map(|e| e.rim_radius_mm).collect();
        let used = || network.readings.iter().filter(|r| !r.set_aside);
        let floors = network
            .setups
            .iter()
            .enumerate()
            .map(|(index, setup)| {
                let of_this =
                    || used().filter(move |r| r.kind.setup().is_some_and(|s| s.0 == index));
                let has_heights = of_this().any(|r| matches!(r.kind, ReadingKind::Height { .. }));
                let has_plumb = of_this().any(|r| r.kind.needs_plumb());
                if setup.floor_is_datum {
                    return FloorColumns::default();
                }
                FloorColumns {
                    tilt: (has_heights || has_plumb).then(|| take(2)),
                    offset: has_heights.then(|| take(1)),
                    plumb: (has_heights && has_plumb).then(|| take(2)),
                }
            })
            .collect();
        let plane = used()
            .any(|r| matches!(r.kind, ReadingKind::Symmetry { .. }))
            .then(|| take(3));
        Self {
            points,
            ends,
            levers,
            floors,
            plane,
            width: next,
        }
    }
}
