//! The survey as data.

use serde_json::{Value, json};
use tubewright_plan::stages::Surroundings;
use tubewright_plan::survey::{Guide, NINETEEN_IN_TWENTY, SetupTrouble, Suggestion, Surer};

pub(super) fn as_json(around: &Surroundings, guide: &Guide) -> Value {
    let measured = &around.measured;
    let test = measured.adjustment.global_test();
    json!({
        "unit": "mm, deg, ± 19 in 20",
        "readings": measured.adjustment.network().readings.len(),
        "spare-readings": test.freedom,
        "agree": !test.is_too_high(),
        "doubtful": measured.doubtful.iter().map(|doubtful| json!({
            "reading": doubtful.number,
            "words": doubtful.sentence(measured.adjustment.network()),
            "was-probably": doubtful.was_probably(),
            "or-else": doubtful.or_else,
        })).collect::<Vec<_>>(),
        "measure-next": guide.next.iter().map(suggestion).collect::<Vec<_>>(),
        "nothing-else-checks": guide.unchecked.iter().map(|check| json!({
            "reading": check.number,
            "words": check.words,
            "best-checked-by": check.by,
        })).collect::<Vec<_>>(),
        "not-found": guide.missing.iter().map(|lack| json!({
            "name": lack.name,
            "readings-lacking": lack.readings,
            "first": lack.first,
        })).collect::<Vec<_>>(),
        "fits-elsewhere": guide.twofold.iter().map(|place| json!({
            "name": place.name,
            "apart": place.apart_mm,
            "turned": place.turned_rad.to_degrees(),
        })).collect::<Vec<_>>(),
        "may-be-mirrored": guide.may_be_mirrored,
        "setups": guide.setups.iter().map(setup).collect::<Vec<_>>(),
        "axes": measured.frame_problem.as_ref().map(ToString::to_string),
        "places": measured.places.points.iter().map(|(name, place)| json!({
            "name": name,
            "at": place.point_in_car.to_array(),
            "plus-minus": NINETEEN_IN_TWENTY * place.sigma_bound(),
        })).collect::<Vec<_>>(),
        "ends": measured.places.ends.iter().map(|(name, end)| json!({
            "name": name,
            "at": end.frame_in_car.origin.to_array(),
            "travel": end.frame_in_car.travel().to_array(),
            "direction-plus-minus": NINETEEN_IN_TWENTY * end.direction_sigma_rad().to_degrees(),
        })).collect::<Vec<_>>(),
        "bodies-missing": around.bodies.missing.iter().map(|(name, reason)| json!({
            "name": name, "why": reason.to_string(),
        })).collect::<Vec<_>>(),
    })
}

fn suggestion(suggestion: &Suggestion) -> Value {
    json!({
        "words": suggestion.words,
        "shows": suggestion.shows.map(|shows| shows.value),
        "shows-plus-minus": suggestion.shows.map(|shows| shows.plus_minus()),
        "gain": suggestion.gain.as_ref().map(|gain| {
            let (name, what, factor) = match &gain.of {
                Surer::Place(name) => (name, "place", 1.0),
                Surer::Direction(name) => (name, "direction", 180.0 / core::f64::consts::PI),
            };
            json!({
                "of": name,
                "what": what,
                "plus-minus-before": factor * gain.before,
                "plus-minus-after": factor * gain.after,
            })
        }),
    })
}

fn setup(trouble: &SetupTrouble) -> Value {
    match trouble {
        SetupTrouble::FloorNotFixed { setup, heights } => json!({
            "setup": setup, "trouble": "floor-not-fixed", "heights": heights,
        }),
        SetupTrouble::FloorSlopes { setup, lean_rad } => json!({
            "setup": setup, "trouble": "floor-slopes", "degrees": lean_rad.to_degrees(),
        }),
        SetupTrouble::NoneOnWheels => json!({ "trouble": "none-on-wheels" }),
        SetupTrouble::NotUsed { setup } => json!({ "setup": setup, "trouble": "not-used" }),
    }
}
