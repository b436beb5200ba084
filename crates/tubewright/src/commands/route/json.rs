//! Routes as JSON: every number that is printed, in millimetres and degrees.

use super::Shown;
use super::text::gap_share;
use crate::commands::solve::Solved;
use serde_json::{Value, json};
use tubewright_plan::figures::{Figures, Gap};
use tubewright_plan::frozen::Offer;
use tubewright_plan::routes::{PlannedKind, PlannedPiece, PlannedRun};
use tubewright_plan::stages::Routed;
use tubewright_route::problem::Turn;

pub(super) fn as_json(solved: &Solved, shown: &[Shown<'_>]) -> Value {
    json!({
        "unit": "mm, deg, kg",
        "status": match &solved.routed {
            Some(Routed::Found(_)) => "found",
            Some(Routed::NotFound { .. }) => "not-found",
            Some(Routed::NoneExists { .. }) => "none-exists",
            Some(Routed::NothingToRoute) | None => "nothing-to-route",
        },
        "why": match &solved.routed {
            Some(Routed::NoneExists { proof, .. }) => Some(proof),
            _ => None,
        },
        "would-help": match &solved.routed {
            Some(Routed::NoneExists { would_help, .. } | Routed::NotFound { would_help, .. }) => would_help.as_slice(),
            _ => &[],
        },
        "effort": solved.budget.work_units,
        "seed": solved.budget.seed,
        "left-out": solved.posed.left_out.iter().map(|(name, why)| json!({"run": name, "why": why.to_string()})).collect::<Vec<_>>(),
        "chosen": solved.chosen.as_ref().map(|chosen| json!({
            "way": chosen.plan.route,
            "on": chosen.plan.on,
            "begun": chosen.plan.is_begun,
            "runs": chosen.runs.iter().map(run_json).collect::<Vec<_>>(),
        })),
        "alternatives": shown.iter().map(alternative_json).collect::<Vec<_>>(),
    })
}

fn alternative_json(shown: &Shown<'_>) -> Value {
    let alternative = shown.alternative;
    json!({
        "way": alternative.name,
        "cost": alternative.cost,
        "lower-bound": alternative.lower_bound,
        "gap": gap_share(shown),
        "figures": figures_json(&shown.figures),
        "offer": shown.offer.as_ref().map(offer_json),
        "runs": alternative.runs.iter().map(run_json).collect::<Vec<_>>(),
    })
}

fn figures_json(figures: &Figures) -> Value {
    json!({
        "price": figures.price.map(|price| price.to_string()),
        "hours": figures.hours,
        "cost-as-cut": figures.cost_as_cut,
        "flow-lost-as-bends": figures.heads_as_bend_deg(),
        "welds": figures.welds,
        "cuts": figures.cuts,
        "mass": figures.mass_kg,
        "without-mass": figures.without_mass,
        "length": figures.length_mm,
        "bends": figures.bends_rad.to_degrees(),
        "end-error": figures.end_off_mm,
        "end-error-direction": figures.end_off_rad.to_degrees(),
        "missing": figures.missing,
        "tightest": figures.tightest.as_ref().map(gap_json),
        "ground": figures.ground.as_ref().map(gap_json),
    })
}

fn gap_json(gap: &Gap) -> Value {
    json!({
        "subject": gap.subject,
        "gap": gap.gap_mm,
        "plus-minus": gap.plus_minus_mm,
        "at-least": gap.wanted_mm,
        "at": gap.place.to_array(),
        "words": gap.place_words,
    })
}

fn offer_json(offer: &Offer) -> Value {
    json!({
        "runs": offer.runs.iter().map(|run| json!({
            "run": run.run, "stay": run.stay, "go": run.go, "new": run.come,
            "turned": run.turned, "undone": run.undone,
        })).collect::<Vec<_>>(),
        "cut-steel": offer.cut_steel.iter().map(|cut| json!({
            "piece": cut.mark, "from": cut.from, "price": cut.price,
        })).collect::<Vec<_>>(),
        "steel-price": offer.steel_price(),
    })
}

fn run_json(run: &PlannedRun) -> Value {
    json!({
        "run": run.name,
        "tube": run.tube,
        "od": run.od_mm,
        "start": {
            "point": run.start.origin.to_array(),
            "dir": run.start.travel().to_array(),
            "up": run.start.twelve().to_array(),
        },
        "end": { "point": run.end_point.to_array(), "dir": run.end_direction.to_array() },
        "end-error": run.end_error_mm(),
        "end-error-direction": run.end_error_rad().to_degrees(),
        "last-joint": run.last_joint,
        "pieces": run.pieces.iter().map(piece_json).collect::<Vec<_>>(),
    })
}

fn piece_json(piece: &PlannedPiece) -> Value {
    let mut value = match &piece.kind {
        PlannedKind::Straight { length_mm } => json!({"type": "straight", "length": length_mm}),
        PlannedKind::Bend {
            angle_rad,
            clock_rad,
            clr_mm,
        } => json!({
            "type": "bend",
            "angle": angle_rad.to_degrees(),
            "clocking": clock_rad.to_degrees(),
            "clr": clr_mm,
        }),
        PlannedKind::Component {
            name,
            length_mm,
            roll_rad,
        } => json!({
            "type": "component", "name": name, "length": length_mm, "roll": roll_rad.to_degrees(),
        }),
        PlannedKind::Crossover { name, side, pose } => json!({
            "type": "crossover", "name": name, "side": side.letter(), "at": pose.origin.to_array(),
            "turned": turned_deg(pose.turn),
            "length": piece.centre_line_mm(),
        }),
    };
    if let Some(object) = value.as_object_mut() {
        object.insert("mark".to_owned(), json!(piece.mark));
        object.insert("joint".to_owned(), json!(piece.joint));
        object.insert("out".to_owned(), json!(piece.frame_out.origin.to_array()));
    }
    value
}

/// How a part where runs meet is turned, degrees.
fn turned_deg(turn: Turn) -> Value {
    let [right, up, roll] = turn.to_array().map(f64::to_degrees);
    json!({"right": right, "up": up, "roll": roll})
}
