//! Why nothing fits, in the words of the trade.

use tubewright_route::route::{Proof, Reason};

/// What would let something fit, and how it is known that nothing does.
#[must_use]
pub fn no_way_words(reason: Reason, proof: &Proof) -> String {
    let would_help = match reason {
        Reason::ComponentDoesNotFit => {
            "without its components there would be a way: take shorter or slimmer ones, or give them more room"
        }
        Reason::GroundClearance => {
            "with less ground clearance there would be a way: raise the car, or give the ground a smaller gap"
        }
        Reason::TooLittleRoom => "with the end further away there would be a way: move the end",
        Reason::RadiusTooLarge => {
            "with a tighter centre-line radius there would be a way: buy tighter bends or a smaller tube"
        }
        Reason::Blocked => {
            "less ground clearance, tighter bends or fewer components alone do not help"
        }
    };
    format!("{}; {would_help}", proof_words(proof))
}

/// The changes with which there is a way, in one sentence without its full stop; `None` when there is none.
#[must_use]
pub fn would_help_words(would_help: &[String]) -> Option<String> {
    (!would_help.is_empty()).then(|| format!("Each of these was solved: {}", would_help.join("; ")))
}

fn proof_words(proof: &Proof) -> String {
    match proof {
        Proof::NoPassage { run, .. } => {
            format!("{run} has no passage wide enough for its tube and its gaps")
        }
        Proof::EndBlocked {
            run,
            body,
            gap_mm,
            required_mm,
        } => format!(
            "an end of {run} lies {gap_mm:.0} mm from {body}, where {required_mm:.0} mm are wanted"
        ),
        Proof::TooLittleAdvance {
            run,
            advance_mm,
            needed_mm,
        } => format!(
            "{run} has {advance_mm:.0} mm between its ends, and its bends need {needed_mm:.0} mm"
        ),
        Proof::ComponentHasNoPlace { component, detail } => {
            format!("{component} has no place: {detail}")
        }
        Proof::NoWayOut { run, reach_mm } => format!(
            "every way out of an end of {run} meets something within {reach_mm:.0} mm at this radius"
        ),
        _ => "it is proven".to_owned(),
    }
}
