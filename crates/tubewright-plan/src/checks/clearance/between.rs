//! Gaps of runs to each other and of a run to itself.

use tubewright_check::{Finding, Measured, Rule, State, Unit};
use tubewright_geometry::distance::clearance_between;
use tubewright_geometry::{Point, UnitVector};

use super::advice::advice;
use super::parts::{Part, parts_of};
use super::{MovingRun, TOLERANCE_MM};
use crate::held::{GapDoubt, PlaceOnRun};
use crate::places::Joint;
use crate::routes::PlannedRun;

/// A run nearer to itself than its gap, where it is further apart along itself than half a turn.
pub(super) fn with_itself(run: &PlannedRun) -> Finding {
    let subject = format!("{} to itself", run.name);
    let parts = parts_of(run);
    let mut least: Option<(f64, Point, String)> = None;
    for (i, a) in parts.iter().enumerate() {
        for b in parts.iter().skip(i + 1) {
            if b.from_mm - a.to_mm <= run.half_turn_mm() {
                continue;
            }
            let gap = clearance_between(&a.element, &b.element, TOLERANCE_MM);
            if least.as_ref().is_none_or(|(best, ..)| gap.gap_mm < *best) {
                least = Some((
                    gap.gap_mm,
                    gap.on_first,
                    format!("{} and {}", a.mark, b.mark),
                ));
            }
        }
    }
    least.map_or_else(
        || {
            Finding::stated(
                Rule::ClearanceToSelf,
                State::DoesNotApply,
                subject.clone(),
                "it is too short to come back to itself",
            )
        },
        |(gap, place, marks)| {
            Finding::measured_at_least(
                Rule::ClearanceToSelf,
                subject.clone(),
                Measured {
                    value: gap,
                    plus_minus: None,
                    unit: Unit::Millimetre,
                },
                run.self_gap_mm,
            )
            .at(place, format!("between {marks}"))
        },
    )
}

/// A place where two runs are near each other.
struct Near {
    gap_mm: f64,
    places: [Point; 2],
    marks: String,
    doubt: Option<GapDoubt>,
}

impl Near {
    fn sure_mm(&self) -> f64 {
        self.gap_mm - self.doubt.map_or(0.0, |doubt| doubt.plus_minus_mm())
    }
}

/// The doubt differs by less than this along a run, mm: only places this near to the least gap can be
/// tighter with their ±.
const DOUBT_RANGE_MM: f64 = 30.0;

/// Two runs against each other, away from the crossover that they share.
pub(super) fn two_runs(first: &MovingRun<'_>, second: &MovingRun<'_>, joint: &Joint) -> Finding {
    let subject = format!("{} to {}", first.run.name, second.run.name);
    let (a, b) = (parts_of(first.run), parts_of(second.run));
    let mut found: Vec<(Near, [&Part; 2])> = Vec::new();
    for a in a.iter().filter(|part| part.is_free) {
        for b in b.iter().filter(|part| part.is_free) {
            let gap = clearance_between(&a.element, &b.element, TOLERANCE_MM);
            let near = Near {
                gap_mm: gap.gap_mm,
                places: [gap.on_first, gap.on_second],
                marks: format!("{} and {}", a.mark, b.mark),
                doubt: None,
            };
            found.push((near, [a, b]));
        }
    }
    let least = found
        .iter()
        .map(|(near, _)| near.gap_mm)
        .fold(f64::INFINITY, f64::min);
    let tightest = found
        .into_iter()
        .filter(|(near, _)| near.gap_mm <= least + DOUBT_RANGE_MM)
        .map(|(mut near, parts)| {
            near.doubt = doubt_between([first, second], parts, near.places, joint);
            near
        })
        .min_by(|a, b| a.sure_mm().total_cmp(&b.sure_mm()));
    let Some(tightest) = tightest else {
        return Finding::stated(
            Rule::ClearanceToRun,
            State::NotChecked,
            subject,
            "a run has no pieces",
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
    .at(tightest.places[0], format!("between {}", tightest.marks));
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
    parts: [&Part; 2],
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
