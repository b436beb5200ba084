//! Are the person's wishes kept, and which are not taken into account?

use tubewright_build::model::{Model, Room};
use tubewright_check::{Finding, Measured, Rule, State, Unit};
use tubewright_geometry::distance::clearance;
use tubewright_route::problem::Pinned;

use crate::routes::{
    PlannedRun, PosedProblem, away_from_pin_mm, closed_sides, wanted_rooms, why_not_sawn,
};
use crate::stages::Surroundings;

/// How finely the way of a run past a closed side is measured, mm.
const TOLERANCE_MM: f64 = 0.05;

/// Findings about sides that no run may pass, for the runs that are judged.
pub(super) fn side_findings(
    model: &Model,
    around: &Surroundings,
    runs: &[PlannedRun],
) -> Vec<Finding> {
    let (closed, without_bounds) = closed_sides(&model.build, &around.bodies);
    let mut findings: Vec<Finding> = without_bounds
        .into_iter()
        .map(|name| {
            Finding::stated(
                Rule::WishKept,
                State::NotChecked,
                format!("never-pass of {name}"),
                "it has no sides that can be closed, or no place yet: close a side of a body of known size instead",
            )
        })
        .collect();
    for run in runs {
        for side in &closed {
            let enters = run
                .pieces
                .iter()
                .flat_map(|piece| &piece.elements)
                .any(|element| {
                    clearance(element, &side.solid, TOLERANCE_MM).gap_mm < -TOLERANCE_MM
                });
            let (state, advice) = if enters {
                (
                    State::Fail,
                    "it passes where no run may: route it again, or take that side off never-pass",
                )
            } else {
                (State::Pass, "")
            };
            findings.push(Finding::stated(
                Rule::WishKept,
                state,
                format!("{} keeps off {}", run.name, side.name),
                advice,
            ));
        }
    }
    findings
}

/// Findings about the rooms that runs must pass through or have a joint in.
pub(super) fn pin_findings(
    model: &Model,
    around: &Surroundings,
    posed: &PosedProblem,
    runs: &[PlannedRun],
) -> Vec<Finding> {
    let mut findings = Vec::new();
    for run in runs {
        let written = model.build.run(&run.name);
        let mut routed = posed.problem.runs.iter();
        let (Some(written), Some(routed)) = (written, routed.find(|routed| routed.id == run.name))
        else {
            continue;
        };
        let rooms = wanted_rooms(written, &around.measured.places);
        for (room, pin) in rooms.iter().zip(&routed.pins) {
            let does = match pin.what {
                Pinned::CentreLine => "passes",
                Pinned::Joint => "has a joint in",
            };
            findings.push(Finding::measured_at_most(
                Rule::WishKept,
                format!("{} {does} {}", run.name, room.words),
                Measured {
                    value: away_from_pin_mm(&run.pieces, pin),
                    plus_minus: None,
                    unit: Unit::Millimetre,
                },
                BESIDE_MM,
            ));
        }
    }
    findings
}

/// So far beside a room counts as in it, mm: what the survey moves by when a reading is added.
const BESIDE_MM: f64 = 3.0;

/// Wishes that nothing acts on yet.
pub(super) fn unheard(model: &Model) -> Vec<Finding> {
    let wishes = &model.build.wishes;
    let mut findings: Vec<Finding> = model
        .build
        .ends
        .iter()
        .filter(|end| end.saw_off.is_some())
        .filter_map(|end| Some((end, why_not_sawn(end)?)))
        .map(|(end, why)| {
            Finding::stated(
                Rule::WishKept,
                State::NotChecked,
                format!("saw-off of {}", end.name),
                format!("not taken into account: {why}"),
            )
        })
        .collect();
    let first = wishes.order_of_room.first();
    if first.is_some_and(|room| *room != Room::Exhaust) {
        findings.push(Finding::stated(
            Rule::WishKept,
            State::NotChecked,
            "which claims room first (`order-of-room`)",
            "not taken into account: only exhaust runs are routed so far; keep room for what comes first by bodies that are kept free (`class = service`)",
        ));
    }
    if wishes.keep_catalysts == Some(false) {
        findings.push(Finding::stated(
            Rule::WishKept,
            State::NotChecked,
            "a run without its catalyst (`keep-catalysts = false`)",
            "not taken into account: every component that a run goes through is kept; take it out of the run (`through`) to route without it",
        ));
    }
    findings
}
