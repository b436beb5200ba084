//! Why nothing fits: the first of five relaxations that lets something fit, each really solved.

use core::sync::atomic::AtomicBool;

use super::improve::Meter;
use super::joint;
use super::prove::end_blocked;
use super::system::Context;
use crate::cost::CostModel;
use crate::problem::{BodyKind, RouteProblem};
use crate::route::{Budget, Reason};

/// How far the end is moved away, mm, one after the other.
const MOVED_MM: [f64; 6] = [50.0, 100.0, 200.0, 400.0, 800.0, 1600.0];
/// Centre-line radii tried, in diameters: the form names one diameter or any smaller radius.
const RADII_IN_DIAMETERS: [f64; 2] = [1.0, 0.6];

/// Whether anything that holds is found in this effort.
pub(crate) fn is_found(
    problem: &RouteProblem,
    cost: &CostModel,
    budget: Budget,
    cancel: &AtomicBool,
    spent: &mut u64,
) -> bool {
    let ctx = Context::new(problem, cost);
    if end_blocked(&ctx).is_some() {
        return false;
    }
    let mut meter = Meter {
        spent: 0,
        limit: budget.work_units,
        cancel,
    };
    let is_found = joint::any(&ctx, budget.seed, &mut meter);
    *spent += meter.spent;
    is_found
}

/// The first relaxation that helps.
pub(crate) fn reason(
    problem: &RouteProblem,
    cost: &CostModel,
    budget: Budget,
    cancel: &AtomicBool,
    spent: &mut u64,
) -> Reason {
    let share = Budget {
        work_units: (budget.work_units / 8).max(500),
        ..budget
    };
    let mut fits = |changed: &RouteProblem| is_found(changed, cost, share, cancel, spent);
    if problem.runs.iter().any(|r| !r.components.is_empty()) {
        let mut changed = problem.clone();
        for run in &mut changed.runs {
            run.components.clear();
        }
        if fits(&changed) {
            return Reason::ComponentDoesNotFit;
        }
    }
    if problem.bodies.iter().any(|b| b.kind == BodyKind::Ground) {
        let mut changed = problem.clone();
        for body in &mut changed.bodies {
            if body.kind == BodyKind::Ground {
                body.gap_mm = 0.0;
            }
        }
        if fits(&changed) {
            return Reason::GroundClearance;
        }
    }
    for moved in MOVED_MM {
        let mut changed = problem.clone();
        for run in &mut changed.runs {
            if run.ends_at.is_some() {
                continue;
            }
            run.end += run.end_direction * moved;
            if let Some(room) = &mut run.end_room {
                room.within.min += run.end_direction * moved;
                room.within.max += run.end_direction * moved;
            }
            if let Some(w) = &mut changed.workspace {
                // The box grows with the end that leaves it, as far as the end moves.
                let by = run.end_direction * moved;
                let axes = [
                    (by.x, &mut w.min.x, &mut w.max.x),
                    (by.y, &mut w.min.y, &mut w.max.y),
                    (by.z, &mut w.min.z, &mut w.max.z),
                ];
                for (by, min, max) in axes {
                    if by > 0.0 {
                        *max += by;
                    } else {
                        *min += by;
                    }
                }
            }
        }
        if fits(&changed) {
            return Reason::TooLittleRoom;
        }
    }
    for diameters in RADII_IN_DIAMETERS {
        let mut changed = problem.clone();
        for tube in &mut changed.tubes {
            tube.clr_mm = tube.clr_mm.min(tube.od_mm * diameters);
        }
        if fits(&changed) {
            return Reason::RadiusTooLarge;
        }
    }
    Reason::Blocked
}
