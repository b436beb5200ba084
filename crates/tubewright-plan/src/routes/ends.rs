//! Ends of runs: where a wished one lies, in what room, and where an outlet may be sawn off.

use tubewright_build::model::{Build, End, EndGiven, EndKind, Flows, Material, RunEnd, SawOff};
use tubewright_geometry::{Frame, Point, UnitVector, math};
use tubewright_route::problem::{EndRoom, Region, StartRoom};

use super::planned::PlannedRun;
use super::problem::{PosedProblem, PosedRun, RunError};
use super::rooms::room_between;
use crate::bodies::Bodies;
use crate::lengths::Lengths;
use crate::places::{PlacedEnd, Places, sigma_bound};
use crate::survey::NINETEEN_IN_TWENTY;

/// What of an outlet goes at least when it is sawn off, mm: the flange with its weld (common practice,
/// no source).
pub const FLANGE_MM: f64 = 12.0;

/// An outlet that is sawn off.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Sawn {
    /// How far back from its flange, along its line, mm.
    pub back_mm: f64,
    /// Angle between the outlet's line and that of what is welded to it, radians; both are sawn at half of
    /// it.
    pub turn_rad: f64,
    /// Where on the outlet what is welded on leans to, clock looking downstream, radians.
    pub clock_rad: f64,
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

/// The end of the build that a run stops at.
pub(crate) fn end_of_run<'a>(build: &'a Build, to: &RunEnd) -> Option<&'a End> {
    match to {
        RunEnd::End(name) => build.end(name),
        RunEnd::Port { .. } => None,
    }
}

/// The room of an end that is wished for, and the place in it nearest to the wish.
///
/// # Errors
/// [`RunError`] where a corner of the room is not found, or it may turn by a quarter or more.
pub(super) fn room_of(
    build: &Build,
    places: &Places,
    to: &RunEnd,
    wished: &PlacedEnd,
    no_tip: &[NoTip],
) -> Result<Option<(Point, EndRoom)>, RunError> {
    let Some((end, given)) = end_of_run(build, to).and_then(|end| Some((end, end.given.as_ref()?)))
    else {
        return Ok(None);
    };
    if given.room.is_none() && given.may_turn.is_none() {
        return Ok(None);
    }
    let at = wished.frame_in_car.origin;
    let within = match &given.room {
        None => Region { min: at, max: at },
        Some(corners) => room_between(places, corners)
            .ok_or_else(|| RunError::RoomNotFound(end.name.to_string()))?,
    };
    let turns = given
        .may_turn
        .as_ref()
        .map_or([0.0; 2], |turn| [turn.right.rad(), turn.up.rad()]);
    if turns.into_iter().any(|turn| turn >= math::FRAC_PI_2) {
        return Err(RunError::TurnsTooFar(end.name.to_string()));
    }
    let room = EndRoom {
        within,
        turn_aside_rad: turns[0],
        turn_up_rad: turns[1],
        columns: no_tip.iter().map(|body| body.column(wished)).collect(),
    };
    let (nearest, _) = room.nearest(
        (at, wished.frame_in_car.travel()),
        (at, wished.frame_in_car.travel()),
    );
    Ok(Some((nearest, room)))
}

/// The upright columns that no tip may lie in; the second list names bodies without an outline.
#[must_use]
pub fn no_tip_columns(build: &Build, bodies: &Bodies) -> (Vec<NoTip>, Vec<String>) {
    let (mut columns, mut without) = (Vec::new(), Vec::new());
    for (body, reach) in build
        .bodies
        .iter()
        .filter_map(|b| Some((b, b.no_tip.as_ref()?)))
    {
        let mut placed = bodies.placed.iter();
        let found = placed
            .find(|placed| *placed.name == *body.name)
            .and_then(|placed| Some((placed, placed.solid_in_car.bounds()?)));
        match found {
            Some((placed, bounds)) => columns.push(NoTip {
                body: body.name.to_string(),
                outline: Region {
                    min: bounds.min,
                    max: bounds.max,
                },
                sigma_mm: placed.sigma_bound(),
                reach_mm: reach.mm(),
            }),
            None => without.push(body.name.to_string()),
        }
    }
    (columns, without)
}

/// A body that no tip may lie under or near.
#[derive(Clone, Debug, PartialEq)]
pub struct NoTip {
    /// Its name.
    pub body: String,
    /// Its outline from above, as a box along the car.
    pub outline: Region,
    /// Standard deviation of that outline, at most, mm.
    pub sigma_mm: f64,
    /// How far from that outline a tip must stay, mm.
    pub reach_mm: f64,
}

impl NoTip {
    /// ± (19 in 20) of the distance of a tip from it, mm.
    #[must_use]
    pub fn plus_minus_mm(&self, tip: &PlacedEnd) -> f64 {
        let tip_sigma_mm = sigma_bound(&tip.covariance_at(tip.frame_in_car.origin));
        NINETEEN_IN_TWENTY * (self.sigma_mm.powi(2) + tip_sigma_mm.powi(2)).sqrt()
    }

    /// The outline grown by what must be kept, and by the ± of a tip's distance from it.
    #[must_use]
    pub fn column(&self, tip: &PlacedEnd) -> Region {
        let reach_mm = self.reach_mm + self.plus_minus_mm(tip);
        let by = tubewright_geometry::Vector::new(reach_mm, reach_mm, 0.0);
        Region {
            min: self.outline.min - by,
            max: self.outline.max + by,
        }
    }

    /// How far a place is from the outline seen from above, mm; below zero under or over it.
    #[must_use]
    pub fn distance_mm(&self, place: Point) -> f64 {
        let (low, high) = (self.outline.min, self.outline.max);
        let x = (low.x - place.x).max(place.x - high.x);
        let y = (low.y - place.y).max(place.y - high.y);
        if x > 0.0 && y > 0.0 {
            (x * x + y * y).sqrt()
        } else {
            x.max(y)
        }
    }
}

/// Why an outlet that may be sawn off by the build must not be.
#[must_use]
pub fn why_not_sawn(end: &End) -> Option<&'static str> {
    match (end.flows, end.kind, end.material) {
        (Flows::In, ..) => Some("a run arrives there, and only an outlet is sawn off"),
        (_, EndKind::Tip | EndKind::Joint, _) => Some("it is no flange and no sawn tube"),
        (.., None) => Some(
            "its material is not given, and only steel and stainless can be welded to: say what it is made of",
        ),
        (.., Some(Material::CastIron)) => Some(
            "it is cast iron, which no shop weld holds: bolt a flange to it, or clamp a tube in or over it",
        ),
        _ => None,
    }
}

/// How far an outlet may be sawn off, where it may be; with a flex section before the first bend it is
/// sawn square.
pub(super) fn saw_room(build: &Build, from: &RunEnd, has_flex: bool) -> Option<StartRoom> {
    let end = end_of_run(build, from)?;
    let SawOff { back, mitre } = end.saw_off.as_ref()?;
    let least_mm = match end.kind {
        EndKind::Flange => FLANGE_MM,
        _ => 0.0,
    };
    let may = why_not_sawn(end).is_none() && back.mm() > least_mm;
    may.then(|| StartRoom {
        least_mm,
        back_mm: back.mm(),
        turn_rad: match mitre {
            Some(mitre) if !has_flex => mitre.rad(),
            _ => 0.0,
        },
    })
}

/// How the outlet was sawn off for a run that starts at `start`, where it may be.
#[must_use]
pub fn sawn_for(run: &PosedRun, start: &Frame) -> Option<Sawn> {
    let room = run.saw_room?;
    let outlet = &run.start.frame_in_car;
    let back_mm = (outlet.origin - start.origin).dot(outlet.travel().vector());
    // A survey that is adjusted anew moves the outlet by a little: that is no saw cut.
    let least = 0.5 * room.least_mm.min(FLANGE_MM);
    let turn_rad = outlet.travel().angle_to(start.travel());
    let is_sawn = back_mm > least.max(1.0);
    is_sawn.then(|| Sawn {
        back_mm,
        turn_rad,
        clock_rad: outlet.clock_of(start.travel().vector()),
    })
}

impl PosedProblem {
    /// Where a run should arrive whose pieces lead to `arrival`: the nearest to that in the room of its end.
    #[must_use]
    pub fn end_for(&self, run: &str, arrival: &Frame) -> Option<(Point, UnitVector)> {
        let mut both = self.runs.iter().zip(&self.problem.runs);
        let (posed, route) = both.find(|(posed, _)| posed.name == run)?;
        let wished = &posed.end.frame_in_car;
        let room = route.end_room.as_ref();
        Some(match room {
            Some(room) => room.nearest(
                (wished.origin, wished.travel()),
                (arrival.origin, arrival.travel()),
            ),
            None => (wished.origin, wished.travel()),
        })
    }

    /// The same problem with outlets sawn off that may be, each way with the names of the runs that start at
    /// one: one at a time, and all of them. Nothing where none may.
    #[must_use]
    pub fn with_outlets_sawn(&self) -> Vec<(tubewright_route::RouteProblem, Vec<String>)> {
        let may: Vec<usize> = (0..self.runs.len())
            .filter(|number| {
                self.runs
                    .get(*number)
                    .is_some_and(|run| run.saw_room.is_some())
            })
            .collect();
        let mut sets: Vec<Vec<usize>> = may.iter().map(|number| vec![*number]).collect();
        if may.len() > 1 {
            sets.push(may);
        }
        let sawn = |set: Vec<usize>| {
            let mut problem = self.problem.clone();
            let mut names = Vec::new();
            for number in set {
                let both = (problem.runs.get_mut(number), self.runs.get(number));
                if let (Some(run), Some(posed)) = both {
                    run.start_room = posed.saw_room;
                    names.push(posed.name.clone());
                }
            }
            (problem, names)
        };
        sets.into_iter().map(sawn).collect()
    }
}

/// What is special at the ends of a run, each a sentence: where a tip with room was put, and how the outlet
/// is sawn off.
#[must_use]
pub fn words_of_ends(posed: &PosedProblem, run: &PlannedRun, lengths: Lengths) -> Vec<String> {
    let mut words: Vec<String> = outlet_words(run, lengths).into_iter().collect();
    let mut both = posed.runs.iter().zip(&posed.problem.runs);
    if let Some((wished, _)) =
        both.find(|(posed, route)| posed.name == run.name && route.end_room.is_some())
    {
        words.push(tip_words(&wished.end.frame_in_car, run, lengths));
    }
    words
}

/// A clock position looking downstream.
fn clock_words(clock_rad: f64) -> String {
    let degrees = clock_rad.to_degrees().rem_euclid(360.0);
    if !(0.5..359.5).contains(&degrees) {
        "twelve o'clock".to_owned()
    } else {
        format!("{degrees:.0}° clockwise from twelve o'clock looking downstream")
    }
}

/// What leans less off an outlet than this is sawn square, degrees (common practice, no source).
pub const LEAST_LEAN_DEG: f64 = 0.5;

/// How the outlet of a run is sawn off, where it is, as a sentence.
#[must_use]
pub fn outlet_words(run: &PlannedRun, lengths: Lengths) -> Option<String> {
    let sawn = run.sawn.as_ref()?;
    let where_ = format!(
        "The outlet is sawn off {} back from its face along its own line",
        lengths.about(sawn.back_mm)
    );
    let degrees = sawn.turn_rad.to_degrees();
    if degrees < LEAST_LEAN_DEG {
        return Some(format!(
            "{where_}, square, and the run is welded to it: see first that its wall is sound."
        ));
    }
    let clock = clock_words(sawn.clock_rad);
    Some(format!(
        "{where_}, {:.1}° off square with its short side at {clock}, the first piece by as much, and the run is \
         welded to it leaning {degrees:.1}° that way: see first that its wall is sound.",
        0.5 * degrees,
    ))
}

/// Shifts and turns below these are not told, mm and degrees.
const LEAST_TOLD: [f64; 2] = [0.5, 0.5];

fn tip_words(wished: &Frame, run: &PlannedRun, lengths: Lengths) -> String {
    let off = run.end_point - wished.origin;
    let [least_mm, least_deg] = LEAST_TOLD;
    let mut parts = Vec::new();
    for (by, forth, back) in [
        (off.x, "further back", "further forward"),
        (off.y, "to the right", "to the left"),
        (off.z, "higher", "lower"),
    ] {
        if by.abs() >= least_mm {
            let way = if by > 0.0 { forth } else { back };
            parts.push(format!("{} {way}", lengths.about(by.abs())));
        }
    }
    let place = if parts.is_empty() {
        "where it is wished".to_owned()
    } else {
        format!("{} than wished", parts.join(", "))
    };
    let turn = wished.travel().angle_to(run.end_direction).to_degrees();
    let aim = if turn < least_deg {
        String::new()
    } else {
        let toward = clock_words(wished.clock_of(run.end_direction.vector()));
        format!(", leaning {turn:.0}° toward {toward}")
    };
    format!("The tip lies in the room that it was given: {place}{aim}.")
}
