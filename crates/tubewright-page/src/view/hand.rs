//! What is moved by hand on the drawing, and what is pinned and closed.

use super::route::gap;
use super::solids::centre_line;
use crate::api::{
    DragAsked, DragView, GripView, LaidViewView, PinView, Refusal, SidesView, StretchView,
};
use crate::deeds::{refusal, said};
use crate::derived::Shown;
use tubewright_build::model::{BodyKind, Direction, PinnedPart, Run};
use tubewright_geometry::Point;
use tubewright_plan::figures::gaps_of;
use tubewright_plan::fit::Steel;
use tubewright_plan::routes::{
    Grip, PlannedRun, away_from_pin_mm, dragged, grips, middle_of_pin, words_of_pin,
};
use tubewright_route::problem::{Pin, Pinned, Region};
use tubewright_sheets::{ViewName, laid_view};

/// Gaps of a dragged line that are told.
const TOLD: usize = 4;

/// Where the shop drawing's views draw the car; none while there is nothing to draw.
pub(crate) fn laid(shown: &Shown, width_mm: f64) -> Vec<LaidViewView> {
    let Some(scene) = shown.scene() else {
        return Vec::new();
    };
    [
        ("side", ViewName::Side),
        ("above", ViewName::Above),
        ("behind", ViewName::Behind),
    ]
    .into_iter()
    .filter_map(|(word, name)| {
        let laid = laid_view(&scene, name, width_mm).ok()?;
        Some(LaidViewView {
            view: word.to_owned(),
            paper: laid.paper,
            origin: laid.origin,
            scale: laid.scale,
            right: name.right().to_array(),
            up: name.up().to_array(),
        })
    })
    .collect()
}

/// What of a run can be taken by hand.
pub(super) fn grips_of(shown: &Shown, run: &PlannedRun) -> Vec<GripView> {
    let steel = Steel::of(&shown.car.model().shop);
    grips(run, &|joint| steel.standing.contains(joint))
        .into_iter()
        .map(|place| GripView {
            mark: place.mark,
            is_joint: matches!(place.grip, Grip::Joint(_)),
            at: place.at.to_array(),
            is_free: place.is_free,
        })
        .collect()
}

/// A run with a joint or a bend moved, and what that leaves free.
///
/// # Errors
/// A [`Refusal`] when there is no such joint or bend, or it is held.
pub(crate) fn drag(shown: &Shown, asked: &DragAsked) -> Result<DragView, Refusal> {
    let to = Point::from_array(asked.to);
    if !to.is_finite() {
        return Err(refusal("that is no place"));
    }
    let car = &shown.car;
    let job = car.job.as_ref().map_err(|why| refusal(why))?;
    let runs = car.runs(shown.way);
    let gone = || refusal("the ways were found anew meanwhile: take it again");
    let number = runs
        .iter()
        .position(|run| run.name == asked.run)
        .ok_or_else(gone)?;
    let run = runs.get(number).ok_or_else(gone)?;
    let steel = Steel::of(&car.model().shop);
    let is_standing = |joint: &str| steel.standing.contains(joint);
    let grip = grips(run, &is_standing)
        .into_iter()
        .find(|place| {
            place.mark == asked.mark && matches!(place.grip, Grip::Joint(_)) == asked.is_joint
        })
        .ok_or_else(gone)?
        .grip;
    let moved = dragged(car.model(), &job.posed, run, grip, to, &is_standing).map_err(said)?;
    let others: Vec<PlannedRun> = runs
        .iter()
        .enumerate()
        .filter(|(other, _)| *other != number)
        .map(|(_, run)| run.clone())
        .collect();
    let (gaps, unchecked) = gaps_of(car.model(), &job.around, &moved.run, &others);
    let failing = gaps.iter().filter(|gap| gap.spare_mm() < 0.0).count();
    Ok(DragView {
        at: moved.at.to_array(),
        line: moved
            .run
            .pieces
            .iter()
            .flat_map(|piece| &piece.elements)
            .map(|element| StretchView {
                points: centre_line(element)
                    .iter()
                    .map(|at| at.to_array())
                    .collect(),
                radius: element.radius,
            })
            .collect(),
        gaps: gaps.iter().take(TOLD).map(gap).collect(),
        failing: u32::try_from(failing).unwrap_or(u32::MAX),
        unchecked: u32::try_from(unchecked).unwrap_or(u32::MAX),
    })
}

/// All pins of the build.
pub(super) fn pins(shown: &Shown) -> Vec<PinView> {
    let runs = &shown.car.model().build.runs;
    runs.iter().flat_map(|run| pins_of(shown, run)).collect()
}

fn pins_of(shown: &Shown, run: &Run) -> Vec<PinView> {
    let job = shown.car.good_job();
    let planned = shown.car.runs(shown.way);
    let planned = planned.iter().find(|planned| *planned.name == *run.name);
    let pin = |(number, pin): (usize, &tubewright_build::model::RunPin)| {
        let is_joint = pin.what == PinnedPart::Joint;
        let middle = job.and_then(|job| middle_of_pin(pin, &job.around.measured.places));
        let room = middle.map(|middle| Region::round(middle, pin.within.mm()));
        let what = if is_joint {
            Pinned::Joint
        } else {
            Pinned::CentreLine
        };
        PinView {
            run: run.name.to_string(),
            number,
            is_joint,
            words: words_of_pin(pin),
            at: middle.map(Point::to_array),
            within: pin.within.mm(),
            away: room
                .zip(planned)
                .map(|(room, run)| away_from_pin_mm(&run.pieces, &Pin { room, what })),
        }
    };
    run.pins.iter().enumerate().map(pin).collect()
}

/// The bodies that have sides.
pub(super) fn sides(shown: &Shown) -> Vec<SidesView> {
    let Some(job) = shown.car.good_job() else {
        return Vec::new();
    };
    let bodies = &shown.car.model().build.bodies;
    bodies
        .iter()
        .filter(|body| {
            let mut placed = job.around.bodies.placed.iter();
            !matches!(body.kind, BodyKind::Ground { .. })
                && placed
                    .find(|placed| *placed.name == *body.name)
                    .is_some_and(|placed| placed.solid_in_car.bounds().is_some())
        })
        .map(|body| SidesView {
            body: body.name.to_string(),
            closed: body
                .closed_sides()
                .iter()
                .map(|side| side_word(*side).to_owned())
                .collect(),
            is_by_itself: body.never_pass.is_none() && !body.closed_sides().is_empty(),
        })
        .collect()
}

/// A side as the files write it.
pub(crate) const fn side_word(side: Direction) -> &'static str {
    match side {
        Direction::Front => "front",
        Direction::Rear => "rear",
        Direction::Left => "left",
        Direction::Right => "right",
        Direction::Up => "above",
        Direction::Down => "below",
    }
}
