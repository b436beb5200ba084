//! A problem with more or less room than was asked for.

use tubewright_geometry::Vector;

use crate::problem::RouteProblem;

/// The problem with every gap changed, and zones and rooms of ends made smaller by as much where gaps grow.
pub(super) fn with_gaps(problem: &RouteProblem, by_mm: f64) -> RouteProblem {
    let mut out = problem.clone();
    for body in &mut out.bodies {
        body.gap_mm = (body.gap_mm + by_mm).max(0.0);
    }
    let zones = out.components.iter_mut().filter_map(|c| c.zone.as_mut());
    let rooms = out
        .runs
        .iter_mut()
        .filter_map(|run| Some(&mut run.end_room.as_mut()?.within));
    for room in zones.chain(rooms) {
        let size = room.max - room.min;
        let shrink = size
            .to_array()
            .map(|s| by_mm.max(0.0).min(0.3 * s.max(0.0)));
        room.min += Vector::from_array(shrink);
        room.max = room.max - Vector::from_array(shrink);
    }
    out
}
