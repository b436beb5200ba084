//! Gaps of runs to each other and of a run to itself, in every position of what carries them.

use tubewright_check::{Finding, Measured, Rule, State, Unit};
use tubewright_geometry::distance::clearance_between;
use tubewright_geometry::motion::{Freedom, Motion, MotionSearch, clearance_in_motion};
use tubewright_geometry::{Point, Solid, UnitVector};

use super::advice::advice;
use super::body::{MOST_POSITIONS, position_of};
use super::parts::{Part, parts_of};
use super::{MovingRun, TOLERANCE_MM};
use crate::held::{GapDoubt, PlaceOnRun};
use crate::places::Joint;

/// A run nearer to itself than its gap, where it is further apart along itself than half a turn.
/// Pieces on one carrier are one rigid chain and do not move against each other.
pub(super) fn with_itself(moving: &MovingRun<'_>) -> Finding {
    let run = moving.run;
    let subject = format!("{} to itself", run.name);
    let parts = parts_of(moving, None);
    let pairs = parts.iter().enumerate().flat_map(|(i, a)| {
        parts
            .iter()
            .skip(i + 1)
            .filter(move |b| b.from_mm - a.to_mm > run.half_turn_mm())
            .map(move |b| [a, b])
    });
    let tightest = near_places(pairs, true, 0.0)
        .into_iter()
        .min_by(|a, b| a.gap_mm.total_cmp(&b.gap_mm));
    let Some(near) = tightest else {
        return Finding::stated(
            Rule::ClearanceToSelf,
            State::DoesNotApply,
            subject,
            "it is too short to come back to itself",
        );
    };
    let measured = Measured {
        value: near.gap_mm,
        plus_minus: None,
        unit: Unit::Millimetre,
    };
    Finding::measured_at_least(Rule::ClearanceToSelf, subject, measured, run.self_gap_mm)
        .at(near.places[0], near.words)
}

/// A place where two stretches are near each other, in the position in which they are nearest.
struct Near<'a> {
    gap_mm: f64,
    places: [Point; 2],
    words: String,
    parts: [&'a Part<'a>; 2],
    doubt: Option<GapDoubt>,
}

impl Near<'_> {
    fn sure_mm(&self) -> f64 {
        self.gap_mm - self.doubt.map_or(0.0, |doubt| doubt.plus_minus_mm())
    }
}

/// The doubt differs by less than this along a run, mm: only places this near to the least gap can be
/// tighter with their ±.
const DOUBT_RANGE_MM: f64 = 30.0;

/// All pairs whose gap may lie within `range_mm` of the least one. They are taken in the order of what
/// they could at least have, so that most need no search.
fn near_places<'a>(
    pairs: impl Iterator<Item = [&'a Part<'a>; 2]>,
    is_one_chain: bool,
    range_mm: f64,
) -> Vec<Near<'a>> {
    let mut bounded: Vec<(f64, Near<'a>)> = pairs
        .map(|[a, b]| {
            let rest = clearance_between(&a.element, &b.element, TOLERANCE_MM);
            let gap_mm = rest.gap_mm - a.uncovered_mm - b.uncovered_mm;
            let travel_mm = if is_one_chain && a.motion == b.motion {
                0.0
            } else {
                a.travel_mm + b.travel_mm
            };
            let near = Near {
                gap_mm,
                places: [rest.on_first, rest.on_second],
                words: format!("between {} and {}", a.mark, b.mark),
                parts: [a, b],
                doubt: None,
            };
            (gap_mm - travel_mm, near)
        })
        .collect();
    bounded.sort_by(|x, y| x.0.total_cmp(&y.0));
    let mut least = f64::INFINITY;
    let mut found = Vec::new();
    for (bound_mm, near) in bounded {
        if bound_mm > least + range_mm {
            break;
        }
        let near = moved(near, is_one_chain);
        least = least.min(near.gap_mm);
        found.push(near);
    }
    found.retain(|near| near.gap_mm <= least + range_mm);
    found
}

/// The same pair in the position in which it is nearest.
fn moved(near: Near<'_>, is_one_chain: bool) -> Near<'_> {
    let [a, b] = near.parts;
    if is_one_chain && a.motion == b.motion {
        return near;
    }
    let only_sways = |motion: &Motion| {
        let mut freedoms = motion.freedoms.iter();
        freedoms.all(|freedom| matches!(freedom, Freedom::Sway { .. }))
    };
    if only_sways(a.motion) && only_sways(b.motion) {
        return Near {
            gap_mm: near.gap_mm - a.motion.sway_mm() - b.motion.sway_mm(),
            ..near
        };
    }
    let found = clearance_in_motion(
        &a.element,
        a.motion,
        &Solid::Tube(b.element),
        b.motion,
        MotionSearch {
            tolerance_mm: TOLERANCE_MM,
            most_positions: MOST_POSITIONS,
        },
    );
    Near {
        gap_mm: found.gap_mm - a.uncovered_mm - b.uncovered_mm,
        places: [found.on_centre_line, found.on_body],
        words: format!("{}{}", near.words, position_of(a.motion, b.motion, &found)),
        ..near
    }
}

/// Two runs against each other, away from the crossover that they share. They hang on hangers of their
/// own, so that each sways by itself.
pub(super) fn two_runs(first: &MovingRun<'_>, second: &MovingRun<'_>, joint: &Joint) -> Finding {
    let subject = format!("{} to {}", first.run.name, second.run.name);
    let (firsts, seconds) = (
        parts_of(first, Some(second.run)),
        parts_of(second, Some(first.run)),
    );
    let pairs = firsts
        .iter()
        .filter(|part| part.is_free)
        .flat_map(|a| seconds.iter().filter(|b| b.is_free).map(move |b| [a, b]));
    let tightest = near_places(pairs, false, DOUBT_RANGE_MM)
        .into_iter()
        .map(|mut near| {
            near.doubt = doubt_between([first, second], near.parts, near.places, joint);
            near
        })
        .min_by(|a, b| a.sure_mm().total_cmp(&b.sure_mm()));
    let Some(tightest) = tightest else {
        return Finding::stated(
            Rule::ClearanceToRun,
            State::NotChecked,
            subject,
            if first.run.pieces.is_empty() || second.run.pieces.is_empty() {
                "a run has no pieces"
            } else {
                "one of them has no piece that is further than half a turn from where they meet: look there while tacking"
            },
        );
    };
    let finding = Finding::measured_at_least(
        Rule::ClearanceToRun,
        subject,
        Measured {
            value: tightest.gap_mm,
            plus_minus: tightest.doubt.map(|doubt| doubt.plus_minus_mm()),
            unit: Unit::Millimetre,
        },
        first.run.run_gap_mm,
    )
    .at(tightest.places[0], tightest.words.clone());
    match tightest.doubt {
        Some(doubt) if finding.state == State::Fail => {
            let spare_mm = tightest.gap_mm - first.run.run_gap_mm;
            finding.advising(advice(spare_mm, &doubt, "the ends of both runs"))
        }
        _ => finding,
    }
}

fn doubt_between(
    runs: [&MovingRun<'_>; 2],
    parts: [&Part<'_>; 2],
    places: [Point; 2],
    joint: &Joint,
) -> Option<GapDoubt> {
    let toward: UnitVector = (places[1] - places[0]).direction()?;
    let at = |index: usize| -> Option<PlaceOnRun> {
        let (run, part) = (runs.get(index)?.run, parts.get(index)?);
        Some(PlaceOnRun {
            place: *places.get(index)?,
            piece: part.piece,
            share: (0.5 * (part.from_mm + part.to_mm) / run.developed_length_mm().max(1.0))
                .clamp(0.0, 1.0),
        })
    };
    let (first, second) = (runs[0].hold.as_ref()?, runs[1].hold.as_ref()?);
    first.doubt_to_run(
        (runs[0].run, &at(0)?),
        (second, runs[1].run, &at(1)?),
        toward,
        joint,
    )
}

#[cfg(test)]
mod tests;
