//! Ends that are wished for: where they lie, and how far they may lie from there.

use tubewright_build::model::{Build, EndGiven, RunEnd};
use tubewright_geometry::{Frame, Point, UnitVector, Vector};
use tubewright_route::problem::Region;

/// What rounding to the shop's steps may leave open at an end, mm (common practice, no source).
pub(super) const END_ROUNDING_MM: f64 = 1.5;

/// What rounding, saw, clocks and welds together may use up of the room at an end, mm (common practice,
/// no source). The search leaves it to the bench: a way that spends all of the room on paper has none
/// left on the car.
const KEPT_FOR_THE_BENCH_MM: f64 = 10.0;

/// Room for an end that the person lets lie away from where it is wished: the box in the ball of that
/// radius, less what is kept for the bench.
pub(super) fn end_within(build: &Build, end: &RunEnd, place: Point) -> Option<Region> {
    let RunEnd::End(name) = end else { return None };
    let given = build.end(name)?.given.as_ref()?;
    let reach = given.within.as_ref()?.mm() - KEPT_FOR_THE_BENCH_MM;
    let half = reach / 3.0_f64.sqrt();
    let by = Vector::new(half, half, half);
    (half > 0.0).then(|| Region {
        min: place - by,
        max: place + by,
    })
}

/// The frame of a given tip: at a point, in a direction of words, turned a little.
#[must_use]
pub fn given_frame(given: &EndGiven, at: Point) -> Frame {
    let travel = given.points.unit();
    let right = UnitVector::Y;
    let up = UnitVector::Z;
    // Up first, about the axis to the right of the travel; then right, about the car's up.
    let lifted = travel
        .vector()
        .cross(up.vector())
        .direction()
        .map_or(travel, |side| {
            travel.rotated_about(side, given.turn_up.rad())
        });
    // Seen from above, from rearwards to the right is a turn about +z; from forwards it is about −z.
    let sense = travel.vector().cross(right.vector()).z.signum();
    let turned = lifted.rotated_about(up, sense * given.turn_right.rad());
    Frame::upright(at, turned)
}
