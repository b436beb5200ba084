//! What must be minded, on a sheet of its own and beside the work it belongs to.

use super::PrintJob;
use tubewright_build::model::Class;
use tubewright_check::{Rule, State};
use tubewright_packet::{Block, Body, Sheet, SheetKind};
use tubewright_stock::weld::{CR6_ACTION_LEVEL_UG_PER_M3, CR6_LIMIT_UG_PER_M3};

/// Beside every sheet that is worked from under the car.
pub(super) const UNDER_THE_CAR: &str = "Crib, block or secure the raised car before anyone goes \
    under it. Never work under a load that is held only by a jack.";

/// Beside the saw.
pub(super) const AT_THE_SAW: &str = "Sawn tube is sharp and throws chips: wear eye protection, clamp \
    the work, deburr both edges before a hand goes near.";

/// The same in a line, on every card.
pub(super) const AT_EVERY_CUT: &str =
    "Sawn tube is sharp and throws chips: eye protection, work clamped, edges deburred first.";

/// Beside the torch.
pub(super) const AT_THE_TORCH: &str = "Stainless welding fume holds chromium VI: extract at the \
    source. Argon displaces air: ventilate pits and closed spaces. No brake cleaner or other \
    chlorinated solvent near the arc.";

/// Beside the torch where nothing is stainless.
pub(super) const FUME: &str = "Welding fume: extract at the source, most of all from coated tube. Shielding gas displaces \
    air: ventilate pits and closed spaces. No brake cleaner or other chlorinated solvent near the arc.";

/// Beside the first tack.
pub(super) const BEFORE_TACKING: &str = "Before the first tack on the car: battery and control units off, the earth \
    clamp beside the joint, fuel and brake lines shielded, carpet, sealer and wires behind warm sheet out of the way, \
    an extinguisher at hand and somebody who watches inside.";

/// Beside the verdict.
pub(super) const BEFORE_RUNNING: &str = "Do not run the engine while anything fails or while what is \
    not checked has not been judged on the car. Exhaust gas holds carbon monoxide: run the engine \
    outdoors.";

/// Metal that has been welded or run.
pub(super) const HOT: &str = "Weld and exhaust stay hot for long after: let them cool or wear gloves, \
    and write HOT on what you put down. A silencer falls when its last tack breaks: prop every heavy \
    part before you cut or tack it, and lift with two.";

/// Decided before anything is cut.
const COMES_APART: &str = "NOT KNOWN YET WHERE IT COMES APART AGAIN: nothing is cut before it is. What parts there takes \
    length and changes the cards (sheet Weld).";
/// The same in a line.
const COMES_APART_SHORT: &str =
    "NOT KNOWN YET WHERE IT COMES APART AGAIN: cut nothing before it is (sheet Weld).";

/// Whether the runs have no joint behind the first at which they part.
fn parts_nowhere(job: &PrintJob<'_>) -> bool {
    !job.runs.is_empty() && super::weld::joints_apart(job).is_empty()
}

/// That nothing is cut before it is known where it comes apart, where the plan has no such joint.
pub(super) fn comes_apart(job: &PrintJob<'_>) -> Option<Block> {
    parts_nowhere(job).then(|| caution(COMES_APART))
}

/// The same in a line, for a card.
pub(super) fn comes_apart_in_short(job: &PrintJob<'_>) -> Option<Block> {
    parts_nowhere(job).then(|| caution(COMES_APART_SHORT))
}

/// What asks for a shield: a gap that holds only behind one is not kept by the run alone.
pub(super) fn shields(job: &PrintJob<'_>) -> Option<Block> {
    let behind_one: Vec<String> = job
        .model
        .build
        .bodies
        .iter()
        .filter(|body| body.class == Class::SoftShielded)
        .map(|body| match &body.note {
            Some(note) => format!("{} ({note})", body.name),
            None => body.name.to_string(),
        })
        .collect();
    (!behind_one.is_empty()).then(|| {
        caution(&format!(
            "MAKE AND FIT A HEAT SHIELD before the engine runs, between the run and each of: {}. The gap asked of \
             the run there holds only behind one.",
            behind_one.join("; ")
        ))
    })
}

/// Removal of a catalyst.
const CATALYST: &str = "Every catalyst that the car came with stays in: to remove, gut or bypass one is \
    unlawful on the road in most places, and the inspection will find it.";

/// A run without its catalyst, said before all else; else that they stay in.
pub(super) fn catalysts(job: &PrintJob<'_>) -> Option<Block> {
    let lost: Vec<&str> = job
        .board
        .findings()
        .iter()
        .filter(|finding| finding.rule == Rule::CatalystKept && finding.state == State::Fail)
        .map(|finding| finding.subject.as_str())
        .collect();
    if lost.is_empty() {
        return job.supply.map(|_| caution(CATALYST));
    }
    Some(caution(&format!(
        "NO CATALYST in {}. {CATALYST} Do not build this as it is.",
        lost.join(", ")
    )))
}

/// Steering, brakes, fuel.
pub(super) const LICENSED: &str = "Steering, brakes and fuel lines are judged by a licensed \
    practitioner, and local law decides on emissions, catalysts and noise. This packet decides none \
    of that.";

/// The sheet.
pub(super) fn sheet(job: &PrintJob<'_>) -> Sheet {
    let mut blocks: Vec<Block> = catalysts(job).into_iter().collect();
    blocks.extend(
        [
            UNDER_THE_CAR,
            AT_THE_SAW,
            AT_THE_TORCH,
            BEFORE_RUNNING,
            LICENSED,
            HOT,
        ]
        .map(caution),
    );
    blocks.push(Block::Heading {
        text: "More, and where it is written".to_owned(),
    });
    let mut lines = vec![format!(
        "Chromium VI in the air, eight hours: at most {CR6_LIMIT_UG_PER_M3} µg/m³, action from \
         {CR6_ACTION_LEVEL_UG_PER_M3} µg/m³ (29 CFR 1910.1026)."
    )];
    lines.push(
        "Disconnect the battery and the control units before welding on the car; keep the earth \
         clamp beside the weld (common practice, no source)."
            .to_owned(),
    );
    lines.push(
        "Fuel lines, tank and brake lines near the weld: take them away or shield them, an \
         extinguisher at hand, and stay half an hour after the last arc (common practice, no source)."
            .to_owned(),
    );
    blocks.push(Block::Items { lines });
    Sheet {
        kind: SheetKind::Cautions,
        title: "Cautions".to_owned(),
        is_lying: false,
        is_below: true,
        body: Body::Made { blocks },
    }
}

/// With a capital letter and a full stop.
pub(super) fn sentence(words: &str) -> String {
    let mut text = String::with_capacity(words.len() + 1);
    let mut letters = words.chars();
    text.extend(letters.next().map(|c| c.to_ascii_uppercase()));
    text.extend(letters);
    if !text.ends_with('.') {
        text.push('.');
    }
    text
}

/// A caution as a block.
pub(super) fn caution(text: &str) -> Block {
    Block::Caution {
        text: text.to_owned(),
    }
}
