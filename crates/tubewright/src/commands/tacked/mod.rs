//! A tacked joint as it was measured, and how to go on from there.

mod typed;

use super::record::{record, record_entry};
use super::solve::{Chosen, Solved, begin};
use super::{Done, Failure, load, print};
use crate::cli::shop::Tacked;
use crate::interrupt;
use crate::terminal::table::{Side, Table};
use crate::terminal::{FAILS, PASSES, WARNS, heading, paragraph, styled};
use serde_json::{Value, json};
use tubewright_build::model::EntryKind;
use tubewright_plan::fit::{
    Change, FoundBy, JointFound, Offer, OfferSettings, SlopeSeen, Steel, as_built, joint_as_built,
    offers, split_at_welds, why_no_offer,
};
use tubewright_plan::frozen::{accepted_beside, standing_of};
use tubewright_plan::lengths::Lengths;
use tubewright_plan::stages;

/// Records the tapes, shows where the joint is and what can be done, takes an offer.
///
/// # Errors
/// The folder cannot be read or saved, nothing is chosen yet, or the readings give no place.
pub(crate) fn run(arguments: &Tacked) -> Result<Done, Failure> {
    let mut loaded = load::load(&arguments.at.folder)?;
    let date = arguments.when.date();
    let solved = begin(&loaded)?;
    let planned = planned_of(&solved)?;
    let is_joint = |run: &tubewright_plan::routes::PlannedRun| {
        run.last_joint == arguments.joint
            || run
                .pieces
                .iter()
                .any(|piece| piece.joint == arguments.joint)
    };
    if !planned.planned.iter().any(is_joint) {
        return Err(Failure::Choice(format!(
            "no joint of the chosen plan has the mark {}; `tubewright fit` lists them",
            arguments.joint
        )));
    }
    if !arguments.tape.is_empty() {
        let readings = arguments
            .tape
            .iter()
            .map(|tape| typed::reading(&loaded.model, tape))
            .collect::<Result<Vec<_>, _>>()?;
        let faces = arguments
            .face
            .iter()
            .map(|slope| typed::face(&loaded.model, slope))
            .collect::<Result<Vec<_>, _>>()?;
        let entry = EntryKind::Tacked {
            joint: arguments.joint.clone(),
            readings,
            faces,
        };
        record(&mut loaded, &date, entry)?;
    }
    let steel = Steel::of(&loaded.model.shop);
    let supply = stages::supply(
        &loaded.model,
        &solved.around.practice,
        &planned.planned,
        &[],
    )?;
    // The joint is looked for where the joints before it leave it.
    let mut before = steel.clone();
    before.readings.remove(&arguments.joint);
    let built = as_built(
        &loaded.model,
        &solved.around,
        &planned.planned,
        &supply.whole,
        &before,
    );
    let runs = split_at_welds(&loaded.model, &built.runs, &supply.whole);
    let found = joint_as_built(
        &loaded.model,
        &solved.around,
        &runs,
        &steel,
        &arguments.joint,
    )
    .map_err(|error| Failure::Choice(error.to_string()))?;
    let all = offers(
        &loaded.model,
        &solved.around,
        &solved.posed,
        &runs,
        &steel,
        &found,
        OfferSettings {
            route_effort: arguments.effort,
            seed: solved.budget.seed,
            cancel: interrupt::flag(),
        },
    );
    if let Some(number) = arguments.accept {
        return accept(
            &mut loaded,
            &date,
            arguments,
            &planned.planned,
            &found,
            &all,
            number,
        );
    }
    if arguments.at.json {
        print(&format!("{:#}\n", as_json(&found, &all)))?;
    } else {
        print(&as_text(
            &found,
            &all,
            &why_no_offer(&runs, &found),
            &arguments.joint,
            Lengths::of(&loaded.model),
        ))?;
    }
    Ok(if all.iter().any(Offer::holds) || all.is_empty() {
        Done::Clean
    } else {
        Done::Findings
    })
}

fn planned_of(solved: &Solved) -> Result<&Chosen, Failure> {
    solved.chosen.as_ref().ok_or_else(|| {
        Failure::Choice(
            "no way is chosen yet, so there is no joint to tack; choose one: `tubewright route FOLDER --choose 1`"
                .to_owned(),
        )
    })
}

fn accept(
    loaded: &mut load::Loaded,
    date: &str,
    arguments: &Tacked,
    planned: &[tubewright_plan::routes::PlannedRun],
    found: &JointFound,
    all: &[Offer],
    number: usize,
) -> Result<Done, Failure> {
    let offer = number
        .checked_sub(1)
        .and_then(|index| all.get(index))
        .ok_or_else(|| {
            Failure::Choice(format!(
                "there is no offer {number}; there are {}",
                all.len()
            ))
        })?;
    let run = tubewright_plan::fit::joined(&offer.runs)
        .into_iter()
        .nth(found.run)
        .into_iter()
        .collect::<Vec<_>>();
    // What stands keeps its place.
    let standing = run
        .first()
        .zip(offer.stands.as_ref())
        .and_then(|(run, mark)| {
            let until = run.pieces.iter().position(|piece| piece.mark == *mark)?;
            Some(standing_of(run, until))
        })
        .unwrap_or_default();
    // What is written are sizes and clocks; where the run starts is what it was.
    let name = planned
        .get(found.run)
        .map_or_else(String::new, |run| run.name.clone());
    let entry = accepted_beside(
        date,
        &format!("{} from {}: {}", name, arguments.joint, offer.kind.words()),
        &run,
        &standing,
        loaded.model.build.shown_units().units,
    );
    record_entry(loaded, &entry)?;
    if arguments.at.json {
        print(&format!(
            "{:#}\n",
            json!({ "accepted": number, "offer": offer_json(offer) })
        ))?;
    } else {
        print(&paragraph(
            &format!(
                "Accepted offer {number}: {}. It stands in shop.toml.",
                offer.kind.words()
            ),
            0,
        ))?;
    }
    Ok(if offer.holds() {
        Done::Clean
    } else {
        Done::Findings
    })
}

fn as_text(
    found: &JointFound,
    all: &[Offer],
    why_none: &str,
    joint: &str,
    lengths: Lengths,
) -> String {
    let mut text = heading(&format!("Joint {joint} as built"));
    let pm = |direction: [f64; 3]| {
        let sum: f64 = (0..3)
            .flat_map(|i| (0..3).map(move |j| (i, j)))
            .map(|(i, j)| direction[i] * found.found.covariance[i][j] * direction[j])
            .sum();
        1.96 * sum.max(0.0).sqrt()
    };
    let by = match found.by {
        FoundBy::Tape => "by the tape alone",
        FoundBy::TapeAndPieces => "by the tape and what the pieces before it can be",
    };
    text.push_str(&paragraph(
        &format!(
            "It lies {} from the plan, {by}: {} ± {} rearwards, {} ± {} to the right, {} ± {} up; it points {:.1}° off (its face leans {:+.1}° toward twelve o'clock and {:+.1}° toward three) and is turned {:+.1}° (clockwise looking downstream).",
            lengths.fine(found.off.norm()),
            signed(lengths, found.off.x),
            lengths.fine(pm([1.0, 0.0, 0.0])),
            signed(lengths, found.off.y),
            lengths.fine(pm([0.0, 1.0, 0.0])),
            signed(lengths, found.off.z),
            lengths.fine(pm([0.0, 0.0, 1.0])),
            found.lean_rad.to_degrees(),
            found.face_rad[0].to_degrees(),
            found.face_rad[1].to_degrees(),
            found.roll_rad.to_degrees(),
        ),
        2,
    ));
    let mut table = Table::new(&[
        ("from", Side::Left),
        ("clock", Side::Right),
        ("reads", Side::Right),
        ("planned", Side::Right),
        ("left over", Side::Right),
        ("", Side::Left),
    ]);
    for seen in &found.readings {
        table.row([
            seen.from.clone(),
            seen.clock_rad.map_or_else(
                || "centre".to_owned(),
                |clock| format!("{:.0}°", clock.to_degrees()),
            ),
            lengths.about(seen.reads_mm),
            lengths.place(seen.planned_mm),
            signed(lengths, seen.residual_mm),
            if seen.is_doubtful {
                styled(WARNS, "doubtful").clone()
            } else {
                String::new()
            },
        ]);
    }
    text.push_str(&table.render());
    if !found.slopes.is_empty() {
        text.push_str(&slopes_text(&found.slopes));
    }
    if let Some(loose) = &found.loose {
        text.push_str(&paragraph(
            &format!("By these readings alone {loose}. What the pieces can be stands in for it."),
            2,
        ));
    }
    let is_doubtful = found.readings.iter().any(|seen| seen.is_doubtful)
        || found.slopes.iter().any(|seen| seen.is_doubtful);
    if is_doubtful {
        text.push_str(&paragraph(
            &styled(
                WARNS,
                "A reading stands out: tape it again before anything is cut for it.",
            ),
            2,
        ));
    }
    if let Some(loose) = &found.loosest {
        text.push_str(&paragraph(
            &styled(
                WARNS,
                format!(
                    "The tapes leave it loose {}: ± {} that way. What is offered holds only if it lies where it is taken to lie; tape from a mark that sees it from another side.",
                    loose.words,
                    lengths.fine(loose.plus_minus_mm)
                ),
            ),
            2,
        ));
    }
    text.push_str(&heading("How to go on"));
    if all.is_empty() {
        text.push_str(&paragraph(why_none, 2));
    }
    for (number, offer) in (1..).zip(all) {
        text.push_str(&offer_text(number, offer, lengths));
    }
    let take = if all.is_empty() {
        String::new()
    } else {
        format!(
            "Nothing is changed until you take one: `tubewright tacked FOLDER {joint} --accept 1`. "
        )
    };
    text.push_str(&paragraph(
        &format!("{take}Under the car: cribbed or on stands, never on a jack alone; tacks are hot and sharp."),
        2,
    ));
    text
}

fn slopes_text(slopes: &[SlopeSeen]) -> String {
    let mut table = Table::new(&[
        ("face toward", Side::Right),
        ("in", Side::Left),
        ("reads", Side::Right),
        ("planned", Side::Right),
        ("left over", Side::Right),
        ("", Side::Left),
    ]);
    for seen in slopes {
        table.row([
            format!("{:.0}°", seen.clock_rad.to_degrees()),
            seen.setup.clone(),
            format!("{:.1}°", seen.reads_rad.to_degrees()),
            format!("{:.1}°", seen.planned_rad.to_degrees()),
            format!("{:+.1}°", seen.residual_rad.to_degrees()),
            if seen.is_doubtful {
                styled(WARNS, "doubtful")
            } else {
                String::new()
            },
        ]);
    }
    table.render()
}

fn offer_text(number: usize, offer: &Offer, lengths: Lengths) -> String {
    let state = if offer.holds() {
        styled(PASSES, "holds")
    } else {
        styled(FAILS, "does not hold")
    };
    let mut text = String::from("\n");
    text.push_str(&paragraph(
        &format!("{number}. {}: {state}", offer.kind.words()),
        2,
    ));
    let arrives = format!(
        "Arrives {} ± {} and {:.1}° off; tightest gap {}.",
        lengths.small(offer.arrives_off_mm),
        lengths.fine(offer.arrives_plus_minus_mm),
        offer.arrives_off_rad.to_degrees(),
        offer.least_room_mm().map_or_else(
            || "not known".to_owned(),
            |room| if room >= 0.0 {
                format!("has {} to spare", lengths.about(room))
            } else {
                format!("is {} too small", lengths.about(-room))
            }
        ),
    );
    text.push_str(&paragraph(&arrives, 5));
    for finding in offer.failing() {
        text.push_str(&paragraph(
            &styled(
                FAILS,
                format!("{}: {}", finding.subject, lengths.sentence(&finding.advice)),
            ),
            5,
        ));
    }
    let changes: Vec<String> = offer
        .changes
        .iter()
        .map(|change| change_words(change, lengths))
        .collect();
    if !changes.is_empty() {
        text.push_str(&paragraph(&format!("Changes: {}.", changes.join("; ")), 5));
    }
    let steel = if offer.lost.is_empty() {
        "no cut steel lost".to_owned()
    } else {
        format!("cut steel lost: {}", offer.lost.join(", "))
    };
    let again = if offer.recut.is_empty() {
        String::new()
    } else {
        format!("; back to the saw: {}", offer.recut.join(", "))
    };
    let buys = match (&offer.price, offer.dearer_minor) {
        (Some(price), Some(0)) => format!("; still to buy {price}, as before"),
        (Some(price), Some(dearer)) => format!(
            "; still to buy {price}, {}",
            tubewright_stock::Money::new(dearer, price.currency).more_or_less()
        ),
        _ => String::new(),
    };
    text.push_str(&paragraph(&format!("Costs: {steel}{again}{buys}."), 5));
    if !offer.missing.is_empty() {
        text.push_str(&paragraph(
            &styled(
                FAILS,
                format!(
                    "Cannot be made from what is on hand or for sale: {}",
                    offer.missing.join(", ")
                ),
            ),
            5,
        ));
    }
    text
}

/// With its sign, for what is off one way or the other.
fn signed(lengths: Lengths, mm: f64) -> String {
    let size = lengths.small(mm.abs());
    let is_nought = size.chars().all(|c| matches!(c, '0' | '.'));
    format!("{}{size}", if mm < 0.0 && !is_nought { '-' } else { '+' })
}

fn change_words(change: &Change, lengths: Lengths) -> String {
    let saw = |is_cut: bool| if is_cut { " (cut already)" } else { "" };
    match change {
        Change::Clock {
            mark,
            from_rad,
            to_rad,
        } => format!(
            "{mark} clock {:+.0}° instead of {:+.0}°",
            to_rad.to_degrees(),
            from_rad.to_degrees()
        ),
        Change::Length {
            part,
            from_mm,
            to_mm,
            is_cut,
            ..
        } => format!(
            "{part} {} instead of {}{}",
            lengths.tape(*to_mm),
            lengths.saw(*from_mm),
            saw(*is_cut)
        ),
        Change::Face(face) => lengths.sentence(&face.words()),
        Change::Angle {
            mark,
            from_rad,
            to_rad,
            is_cut,
        } => format!(
            "{mark} {:.0}° instead of {:.0}°{}",
            to_rad.to_degrees(),
            from_rad.to_degrees(),
            saw(*is_cut)
        ),
        Change::Dropped { mark, is_cut } => format!("{mark} drops out{}", saw(*is_cut)),
        Change::New { mark } => format!("{mark} is new"),
    }
}

fn as_json(found: &JointFound, all: &[Offer]) -> Value {
    json!({
        "joint": found.planned.mark,
        "unit": "mm, deg",
        "found-by": match found.by { FoundBy::Tape => "tape", FoundBy::TapeAndPieces => "tape and pieces" },
        "planned": found.planned.frame.origin.to_array(),
        "found": found.found.frame_in_car.origin.to_array(),
        "off": found.off.to_array(),
        "plus-minus": (0..3).map(|i| 1.96 * found.found.covariance[i][i].max(0.0).sqrt()).collect::<Vec<_>>(),
        "lean": found.lean_rad.to_degrees(),
        "face": found.face_rad.map(f64::to_degrees),
        "loosest": found.loosest.as_ref().map(|loose| json!({
            "way": loose.words, "plus-minus": loose.plus_minus_mm,
        })),
        "roll": found.roll_rad.to_degrees(),
        "loose": found.loose,
        "readings": found.readings.iter().map(|seen| json!({
            "from": seen.from, "clock": seen.clock_rad.map(f64::to_degrees), "reads": seen.reads_mm,
            "planned": seen.planned_mm, "left-over": seen.residual_mm, "doubtful": seen.is_doubtful,
        })).collect::<Vec<_>>(),
        "slopes": found.slopes.iter().map(|seen| json!({
            "clock": seen.clock_rad.to_degrees(), "setup": seen.setup, "reads": seen.reads_rad.to_degrees(),
            "planned": seen.planned_rad.to_degrees(), "left-over": seen.residual_rad.to_degrees(),
            "doubtful": seen.is_doubtful,
        })).collect::<Vec<_>>(),
        "offers": all.iter().map(offer_json).collect::<Vec<_>>(),
    })
}

fn offer_json(offer: &Offer) -> Value {
    json!({
        "what": offer.kind.words(),
        "holds": offer.holds(),
        "arrives-off": offer.arrives_off_mm,
        "arrives-plus-minus": offer.arrives_plus_minus_mm,
        "arrives-off-deg": offer.arrives_off_rad.to_degrees(),
        "least-room": offer.least_room_mm(),
        "failing": offer.failing().map(|finding| finding.subject.clone()).collect::<Vec<_>>(),
        "changes": offer.changes.iter().map(|change| change_words(change, Lengths::Millimetres)).collect::<Vec<_>>(),
        "lost": offer.lost,
        "recut": offer.recut,
        "still-to-buy": offer.price.map(|price| price.to_string()),
        "dearer-minor": offer.dearer_minor,
        "missing": offer.missing,
    })
}
