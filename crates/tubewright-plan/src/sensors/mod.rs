//! Places for the oxygen sensors: a bung before every catalyst, with the room of its sensor.
//!
//! The rules are common practice, no source: on the tube before the catalyst, away from its welds, the
//! sensor's axis at least 10° above level so that no water lies in it, and room to stand, to be got at
//! with its socket and to be drawn out, in every position of what moves. A straight is taken before a
//! bend, for its hole is drilled and the bung's foot is shaped more easily; among places with room
//! enough the one nearest to the engine, where the sensor is warm soonest and its cable shortest.

mod place;
mod search;

pub use place::{Clocking, SensorPlace};

use tubewright_build::model::{ComponentKind, Model};
use tubewright_check::{Finding, Measured, Rule, State, Unit};
use tubewright_stock::StockPlan;

use crate::checks::moving_runs;
use crate::fit::split_run;
use crate::routes::{PlannedKind, PlannedPiece, PlannedRun, component_kind};
use crate::stages::Surroundings;

/// Least slope of a sensor's axis above level, degrees (common practice, no source).
pub const LEAST_RISE_DEG: f64 = 10.0;

/// From the middle of a bung to the next weld, at least, mm: half of a bung of 30 mm and as much between
/// the two seams (common practice, no source).
pub const FROM_WELD_MM: f64 = 30.0;

/// The room of a sensor as parts along its axis, each from so far off the tube to so far, with its radius,
/// mm: above a bung of 10 mm the slotted socket that turns the sensor, then its cable with the turn that it
/// takes (common practice, no source).
pub const ROOM_MM: [[f64; 3]; 2] = [[10.0, 95.0, 16.0], [75.0, 140.0, 10.0]];

/// Gap that this room must keep in every position, mm (common practice, no source).
pub const GAP_MM: f64 = 5.0;

/// What was found before one catalyst.
#[derive(Clone, Debug, PartialEq)]
pub struct Sensor {
    /// The run.
    pub run: String,
    /// The catalyst.
    pub catalyst: String,
    /// The place, or why there is none.
    pub found: Result<SensorPlace, NoPlace>,
}

impl Sensor {
    /// A place with room was found.
    #[must_use]
    pub const fn is_free(&self) -> bool {
        self.found.is_ok()
    }
}

/// Why a sensor has no place.
#[derive(Clone, Debug, PartialEq)]
#[non_exhaustive]
pub enum NoPlace {
    /// Nothing but components between the outlet, or the catalyst before, and this one.
    NoTube,
    /// Every stretch of tube is shorter than two seams and a bung, or rises so steeply that a sensor
    /// on it would lie below 10°.
    NoStretch,
    /// Nowhere is the sensor's room free; the best place is told.
    NoRoom(Box<SensorPlace>),
}

/// A place for the sensor before every catalyst of these runs, in the order of flow. With a cutting plan
/// the seams are known; without one there is one at every joint.
#[must_use]
pub fn sensors(
    model: &Model,
    around: &Surroundings,
    runs: &[PlannedRun],
    plan: Option<&StockPlan>,
) -> Vec<Sensor> {
    let moving = moving_runs(model, around, runs);
    let mut found = Vec::new();
    for run in &moving {
        let seams_mm = seams(run.run, plan);
        let mut from = 0;
        for (number, piece) in run.run.pieces.iter().enumerate() {
            let PlannedKind::Component { name, .. } = &piece.kind else {
                continue;
            };
            if component_kind(model, name) != Some(ComponentKind::Catalyst) {
                continue;
            }
            found.push(Sensor {
                run: run.run.name.clone(),
                catalyst: name.clone(),
                found: search::before(around, &moving, run, from..number, &seams_mm),
            });
            from = number + 1;
        }
    }
    found
}

/// Distances along a run at which something is welded to it, in the order of flow, mm.
pub(crate) fn seams(run: &PlannedRun, plan: Option<&StockPlan>) -> Vec<f64> {
    let parts: Vec<Vec<&str>> = plan
        .into_iter()
        .flat_map(|plan| plan.cuts.iter())
        .flat_map(|cut| &cut.parts)
        .map(|part| {
            part.serves
                .iter()
                .map(|serves| serves.mark.as_str())
                .collect()
        })
        .collect();
    let is_one_part = |pair: &[PlannedPiece]| {
        parts.iter().any(|marks| {
            pair.iter()
                .all(|piece| marks.contains(&piece.mark.as_str()))
        })
    };
    let cut_up = plan.map_or_else(|| vec![run.clone()], |plan| vec![split_run(run, plan)]);
    let pieces = cut_up.first().map_or(&[][..], |run| &run.pieces);
    let mut at = 0.0;
    let mut found = vec![0.0];
    for pair in pieces.windows(2) {
        let [before, after] = pair else { continue };
        at += before.centre_line_mm();
        // The halves of a straight that two parts share have one mark and a seam between them.
        if before.mark == after.mark || !is_one_part(pair) {
            found.push(at);
        }
    }
    found.push(run.developed_length_mm());
    found
}

/// One finding for each sensor.
pub(crate) fn findings(sensors: &[Sensor]) -> Vec<Finding> {
    sensors.iter().map(finding).collect()
}

fn finding(sensor: &Sensor) -> Finding {
    let subject = format!("sensor before {} of {}", sensor.catalyst, sensor.run);
    let stated = |state, advice: &str| Finding::stated(Rule::SensorPlace, state, &subject, advice);
    match &sensor.found {
        Ok(place) => held(&subject, place),
        Err(NoPlace::NoTube) => stated(
            State::NotChecked,
            "there is no tube before it to weld a bung into: look for the sensor's place in the manifold or in the catalyst's own cone",
        ),
        Err(NoPlace::NoStretch) => stated(
            State::Fail,
            "no stretch of tube before it has room for a bung between two welds with its sensor 10° above level: give this run a longer straight there, or a catalyst with a bung in its cone",
        ),
        Err(NoPlace::NoRoom(best)) => held(&subject, best).advising(
            "the sensor, its socket or its cable has no room anywhere before it: move what is near, or put the catalyst further on",
        ),
    }
}

fn held(subject: &str, place: &SensorPlace) -> Finding {
    let room = &place.room;
    let words = format!("{}; nearest is {}{}", place.words(), room.to, room.position);
    let Some(plus_minus) = room.plus_minus_mm else {
        let state = if room.gap_mm < GAP_MM {
            State::Fail
        } else {
            State::NotChecked
        };
        return Finding::stated(
            Rule::SensorPlace,
            state,
            subject,
            format!(
                "{:.0} mm, but how surely cannot be said: no readings tie the two to each other",
                room.gap_mm
            ),
        )
        .at(place.foot, words);
    };
    let measured = Measured {
        value: room.gap_mm,
        plus_minus: Some(plus_minus),
        unit: Unit::Millimetre,
    };
    Finding::measured_at_least(Rule::SensorPlace, subject, measured, GAP_MM).at(place.foot, words)
}
