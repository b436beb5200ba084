//! The stated gap of a run to itself against sampled places of it.

use tubewright_build::model::CarrierRef;
use tubewright_check::{Board, State};
use tubewright_plan::routes::PlannedRun;
use tubewright_walker::{Ball, Freedom, least_gap_moving};

use super::clearance::{RUN_SPACING_MM, Rider, balls_as_solid, riders, sways};
use super::prove::Verdict;
use super::solved::Solved;

/// Longest stretch of tube that is taken as one, mm; a component is one whatever its length. Two
/// stretches count when more than half a turn lies between them.
const STRETCH_MM: f64 = 60.0;

/// A stretch of a run.
struct Stretch<'r> {
    rider: &'r Rider,
    from: f64,
    to: f64,
    balls: Vec<Ball>,
}

pub(crate) fn prove(solved: &Solved, board: &Board, run: &PlannedRun, verdict: &mut Verdict) {
    let subject = format!("{} to itself", run.name);
    let Some(finding) = board
        .findings()
        .iter()
        .find(|finding| finding.subject == subject)
    else {
        verdict.fault(format!("{subject}: no finding"));
        return;
    };
    let riders = riders(solved, run, RUN_SPACING_MM);
    let half_turn_mm = core::f64::consts::PI * run.clr_mm + 1.0;
    let sampled = least(&stretches(&riders), half_turn_mm);
    match (finding.measured, sampled) {
        (None, None) => {}
        (None, Some((gap, marks))) => verdict.fault(format!(
            "{subject}: {:?} without a number, but {marks} come to {gap:.1} mm",
            finding.state
        )),
        (Some(_), None) => verdict.fault(format!(
            "{subject}: has a number, but nothing of it can come back"
        )),
        (Some(measured), Some((gap, marks))) => {
            let stated = measured.value;
            verdict.notes.push(format!(
                "{subject}: stated {stated:.2} mm, sampled {gap:.2} mm between {marks}"
            ));
            if gap < stated - 1e-6 {
                verdict.fault(format!(
                    "{subject}: stated {stated:.2} mm, but {marks} come to {gap:.2} mm"
                ));
            }
            let limit = run.self_gap_mm;
            if finding.state == State::Pass && gap < limit {
                verdict.fault(format!(
                    "{subject}: passes at {limit} mm, but {marks} come to {gap:.2} mm"
                ));
            }
            // Balls at this spacing on both sides leave less than this between them; cans are held by
            // balls that may be a quarter larger.
            if gap > 1.25 * stated.abs() + RUN_SPACING_MM {
                verdict.fault(format!(
                    "{subject}: stated {stated:.1} mm, but nothing comes nearer than {gap:.1} mm"
                ));
            }
        }
    }
}

fn stretches(riders: &[Rider]) -> Vec<Stretch<'_>> {
    let mut out = Vec::new();
    for rider in riders {
        let [from, to] = rider.along;
        let count = if rider.is_bare_tube {
            ((to - from) / STRETCH_MM).ceil().max(1.0)
        } else {
            1.0
        };
        let step = (to - from) / count;
        let mut number = 0.0;
        while number < count {
            let (low, high) = (number * step, (number + 1.0) * step);
            let balls = rider
                .balls
                .iter()
                .filter(|ball| {
                    !rider.is_bare_tube || (low - 1e-6..=high + 1e-6).contains(&ball.along)
                })
                .copied()
                .collect();
            out.push(Stretch {
                rider,
                from: from + low,
                to: if rider.is_bare_tube { from + high } else { to },
                balls,
            });
            number += 1.0;
        }
    }
    out
}

/// The least gap between stretches with more than this between them, in every position.
fn least(stretches: &[Stretch<'_>], apart_mm: f64) -> Option<(f64, String)> {
    let mut best: Option<(f64, String)> = None;
    for later in stretches {
        // What lies far enough before it, by what it rides on.
        let mut before: Vec<(&Rider, Vec<Ball>)> = Vec::new();
        for stretch in stretches
            .iter()
            .filter(|stretch| later.from - stretch.to > apart_mm)
        {
            match before.iter_mut().find(|(rider, _)| {
                is_one_chain(rider, stretch.rider) && rider.mark == stretch.rider.mark
            }) {
                Some((_, balls)) => balls.extend(&stretch.balls),
                None => before.push((stretch.rider, stretch.balls.clone())),
            }
        }
        let solid = balls_as_solid(&later.balls);
        for (rider, balls) in before {
            let (fx, fy): (&[Freedom], &[Freedom]) = if is_one_chain(rider, later.rider) {
                (&[], &[])
            } else {
                (&rider.freedoms, &later.rider.freedoms)
            };
            let Some(found) = least_gap_moving(&balls, fx, &solid, fy, 3) else {
                continue;
            };
            if best.as_ref().is_none_or(|(gap, _)| found.gap < *gap) {
                best = Some((
                    found.gap,
                    format!("{} and {}", rider.mark, later.rider.mark),
                ));
            }
        }
    }
    best
}

/// Pieces on one carrier are one rigid chain and sway together.
fn is_one_chain(a: &Rider, b: &Rider) -> bool {
    let on = |rider: &Rider| -> CarrierRef { rider.carrier.clone() };
    on(a) == on(b) && sways(a) == sways(b)
}
