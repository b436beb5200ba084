//! Answers in the form that goes with `route-problem/1`.

use serde_json::{Map, Value, json};

use crate::problem::RouteProblem;
use crate::route::{Outcome, Piece, Reason, Route};

/// The outcome as JSON text, the cheapest alternative as the solution.
#[must_use]
pub fn write_outcome(problem: &RouteProblem, outcome: &Outcome) -> String {
    let value = match outcome {
        Outcome::Solved { alternatives, .. } => match alternatives.first() {
            Some(route) => solved(problem, route),
            None => json!({"problem": problem.id, "status": "unknown"}),
        },
        Outcome::Infeasible { reason, proof } => json!({
            "problem": problem.id,
            "status": "infeasible",
            "reason": reason_code(*reason),
            "detail": format!("{proof:?}"),
        }),
        Outcome::NotFoundInEffort { .. } => {
            json!({"problem": problem.id, "status": "unknown"})
        }
    };
    let mut text = serde_json::to_string_pretty(&value).unwrap_or_default();
    text.push('\n');
    text
}

const fn reason_code(reason: Reason) -> &'static str {
    match reason {
        Reason::ComponentDoesNotFit => "component_does_not_fit",
        Reason::GroundClearance => "ground_clearance",
        Reason::TooLittleRoom => "too_little_room",
        Reason::RadiusTooLarge => "radius_too_large",
        Reason::Blocked => "blocked",
    }
}

fn solved(problem: &RouteProblem, route: &Route) -> Value {
    let mut runs = Map::new();
    for (run, pieces) in problem.runs.iter().zip(&route.runs) {
        let list = pieces.iter().map(|p| piece(problem, p)).collect();
        runs.insert(run.id.clone(), Value::Array(list));
    }
    let mut crossovers = Map::new();
    for (crossover, pose) in problem.crossovers.iter().zip(&route.crossovers) {
        crossovers.insert(
            crossover.id.clone(),
            json!({"point": pose.origin.to_array()}),
        );
    }
    json!({
        "problem": problem.id,
        "status": "solved",
        "runs": runs,
        "crossovers": crossovers,
        "cost": route.cost,
        "lower_bound": route.lower_bound,
    })
}

fn piece(problem: &RouteProblem, piece: &Piece) -> Value {
    match *piece {
        Piece::Straight { length_mm } => json!({"type": "straight", "length": length_mm}),
        Piece::Bend {
            angle_rad,
            clock_rad,
        } => json!({
            "type": "bend",
            "angle": angle_rad.to_degrees(),
            "clocking": clock_rad.to_degrees(),
        }),
        Piece::Component {
            component,
            roll_rad,
        } => json!({
            "type": "component",
            "id": problem.components.get(component).map(|c| &c.id),
            "roll": roll_rad.to_degrees(),
        }),
        Piece::Crossover { crossover } => json!({
            "type": "crossover",
            "id": problem.crossovers.get(crossover).map(|c| &c.id),
        }),
    }
}
