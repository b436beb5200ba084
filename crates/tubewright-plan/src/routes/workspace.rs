//! The box that no run leaves.

use tubewright_geometry::Bounds;
use tubewright_route::RouteProblem;
use tubewright_route::problem::Region;

use crate::bodies::Bodies;

/// The box round all bodies that have bounds and all ends: no run may leave the car's outline. A tip
/// stands out by its own tube.
pub(super) fn workspace(bodies: &Bodies, problem: &RouteProblem) -> Option<Region> {
    let ends = problem.runs.iter().flat_map(|run| {
        let room = run.end_room.as_ref();
        let corners = room.map_or([run.end; 2], |room| [room.within.min, room.within.max]);
        [run.start.origin, run.end, corners[0], corners[1]]
    });
    let most_od = problem
        .tubes
        .iter()
        .map(|tube| tube.od_mm)
        .fold(0.0, f64::max);
    let bounds = bodies
        .placed
        .iter()
        .filter_map(|body| body.solid_in_car.bounds())
        .fold(Bounds::of_points(ends), Bounds::joined)
        .grown(most_od);
    (!problem.runs.is_empty()).then_some(Region {
        min: bounds.min,
        max: bounds.max,
    })
}
