//! Saw marks, one card for each stock item.

use super::buy::chosen_text;
use super::solve::{Solved, runs_of};
use super::{Done, Failure, load, made, print};
use crate::cli::Folder;
use crate::terminal::lengths::shown_lengths;
use crate::terminal::table::{Side, Table};
use crate::terminal::{FAILS, heading, paragraph, styled};
use serde_json::{Value, json};
use tubewright_build::model::Model;
use tubewright_build::quantity::write_deg;
use tubewright_plan::fit::ClosingFace;
use tubewright_plan::lengths::Lengths;
use tubewright_plan::routes::{PlannedRun, RollMark, roll_marks};
use tubewright_plan::stages::Supply;
use tubewright_plan::stock::{Followed, source_words, trouble_words};
use tubewright_stock::{CutCard, FaceBy, KerfSide, StockEnd, StockShape};

/// Shows the cut cards.
///
/// # Errors
/// The folder cannot be read, or there is nothing to plan from.
pub(crate) fn run(arguments: &Folder) -> Result<Done, Failure> {
    let mut loaded = load::load(&arguments.folder)?;
    let mut solved = runs_of(&mut loaded)?;
    let Some(supply) = solved.supply(&loaded, &[])? else {
        if arguments.json {
            print("null\n")?;
        } else {
            print(
                "  There is no route yet, so there is nothing to cut: see `tubewright route`.\n",
            )?;
        }
        solved.plan.save(&mut loaded);
        return Ok(Done::Findings);
    };
    let rolls = rolls_of(&loaded.model, solved.runs());
    if arguments.json {
        let mut cards = as_json(&supply, &rolls);
        cards["done"] = made::as_json(&loaded.model, &supply);
        print(&format!("{cards:#}\n"))?;
    } else {
        print(&as_text(&supply, &rolls, shown_lengths(&loaded.model)))?;
        print(&faces_text(&solved, &supply))?;
        print(&made::as_text(&loaded.model, &supply))?;
        print(&chosen_text(solved.frozen()))?;
    }
    let chosen = solved.chosen.as_ref().map(|chosen| &chosen.plan);
    solved
        .plan
        .keep_supply(&loaded, &solved.around, solved.budget, chosen, &supply);
    solved.plan.save(&mut loaded);
    let can_saw = supply.cards.iter().all(|card| card.findings.is_empty());
    Ok(if can_saw && supply.plan.is_full() {
        Done::Clean
    } else {
        Done::Findings
    }
    .or_stopped())
}

/// The roll of every oval and box of all runs.
pub(crate) fn rolls_of(model: &Model, runs: &[PlannedRun]) -> Vec<RollMark> {
    runs.iter().flat_map(|run| roll_marks(model, run)).collect()
}

/// The cards as text.
pub(crate) fn as_text(supply: &Supply, rolls: &[RollMark], lengths: Lengths) -> String {
    let mut text = heading(&format!("Cut, marks in {}", lengths.sign_in_words()));
    text.push_str(&paragraph(
        "Before the first cut scribe a witness line along the whole item: on a bend along its outside, from end to end. Measure every mark from the end named, with the tape along the side named. The mark is a face of a piece; the kerf goes where the card says.",
        2,
    ));
    for card in &supply.cards {
        text.push_str(&card_text(card, lengths));
    }
    if supply.cards.is_empty() {
        text.push_str("\n  Nothing is left to cut.\n");
    }
    text.push_str(&heading("Clock of each part to the one before it"));
    let mut table = Table::new(&[
        ("part", Side::Left),
        ("clock", Side::Right),
        ("round the outside", Side::Right),
        ("run", Side::Left),
    ]);
    for fit in &supply.fits {
        table.row([
            fit.marks.join(" + "),
            format!("{:+.1}°", fit.clock.deg()),
            signed(fit.round_outside.mm(), lengths),
            format!(
                "{}{}",
                fit.run,
                if fit.is_reversed {
                    ", turned end for end"
                } else {
                    ""
                }
            ),
        ]);
    }
    text.push_str(&table.render());
    let behind = if supply.fits.iter().any(|fit| fit.run.contains(", behind ")) {
        " Behind a crossover or a merge the clock starts anew, from twelve o'clock of its outlet; that part itself has no clock."
    } else {
        ""
    };
    text.push_str(&paragraph(
        &format!(
            "The first part of a run counts from twelve o'clock of the rim that it starts from, as it was scribed when that was measured (the highest place, where nothing was); carry it along an outlet that is sawn off before it is sawn.{behind}"
        ),
        2,
    ));
    text.push_str(&rolls_text(rolls, lengths));
    text.push_str(&paragraph(
        "Clockwise looking downstream is plus, witness line to witness line. Sawn tube is sharp and hot work makes fume: deburr, wear eye protection, extract at the source.",
        2,
    ));
    text.push_str(&followed_text(&supply.followed, lengths));
    text
}

/// How ovals and boxes are turned about their own axis.
fn rolls_text(rolls: &[RollMark], lengths: Lengths) -> String {
    if rolls.is_empty() {
        return String::new();
    }
    let mut text = heading("Roll of oval and box parts to the part before");
    text.push_str(&paragraph(
        "Scribe their own witness line along the neck, in the middle of the broad side that lies up when they lie flat.",
        2,
    ));
    let mut table = Table::new(&[
        ("part", Side::Left),
        ("roll", Side::Right),
        ("round the neck", Side::Right),
        ("in the car", Side::Left),
        ("component", Side::Left),
    ]);
    for roll in rolls {
        let lean = roll.from_flat.deg();
        table.row([
            roll.mark.clone(),
            format!("{:+.1}°", roll.clock.deg()),
            signed(roll.round_neck.mm(), lengths),
            if lean.abs() < 0.05 {
                "lies flat".to_owned()
            } else {
                format!("{lean:+.0}° from flat")
            },
            roll.component.clone(),
        ]);
    }
    text.push_str(&table.render());
    text
}

/// Faces of closing pieces that are still to be cut.
fn faces_text(solved: &Solved, supply: &Supply) -> String {
    let to_cut = |mark: &str| {
        supply
            .plan
            .cuts
            .iter()
            .flat_map(|cut| &cut.parts)
            .any(|part| part.serves.iter().any(|serves| serves.mark == mark))
    };
    let faces = solved
        .chosen
        .as_ref()
        .map_or(&[][..], |chosen| &chosen.built.faces);
    let list: Vec<String> = faces
        .iter()
        .filter(|face| to_cut(&face.mark) && face.out_of_square_rad.to_degrees() >= FELT_DEG)
        .map(ClosingFace::words)
        .collect();
    if list.is_empty() {
        return String::new();
    }
    paragraph(&format!("Closing: {}.", list.join("; ")), 2)
}

/// Less than this out of square is how the saw cuts anyway, degrees (common practice, no source).
const FELT_DEG: f64 = 0.3;

/// Where the runs end when the marks are met to the last digit that is printed.
fn followed_text(followed: &[Followed], lengths: Lengths) -> String {
    if followed.is_empty() {
        return String::new();
    }
    let mut text = paragraph(
        "The marks are rounded together, so that the runs end where they were planned to. With every mark and clock met as printed they end off by no more than",
        2,
    );
    let mut table = Table::new(&[
        ("place", Side::Right),
        ("direction", Side::Right),
        ("run", Side::Left),
    ]);
    for end in followed {
        let up_to = end
            .up_to
            .as_ref()
            .map_or_else(String::new, |name| format!(", up to {name}"));
        table.row([
            lengths.fine_at_most(end.end_mm),
            format!(
                "{:.2}°",
                (end.end_rad.to_degrees() * 100.0 - 1e-9).ceil().max(0.0) / 100.0
            ),
            format!("{}{up_to}", end.run),
        ]);
    }
    text.push_str(&table.render());
    text
}

/// A length round the outside with its sign always.
fn signed(mm: f64, lengths: Lengths) -> String {
    let text = format!("{} {}", lengths.saw(mm), lengths.sign());
    if text.starts_with('-') {
        text
    } else {
        format!("+{text}")
    }
}

fn stock_words(card: &CutCard, lengths: Lengths) -> String {
    match card.stock.shape {
        StockShape::Straight { length } => format!("straight, {} long", lengths.about(length.mm())),
        StockShape::Bend {
            angle,
            clr,
            leg_a,
            leg_b,
        } => format!(
            "bend {}, CLR {} {}, legs A {} and B {}",
            write_deg(angle, 1).replace(" deg", "°"),
            lengths.size(clr.mm()),
            lengths.sign(),
            lengths.about(leg_a.mm()),
            lengths.about(leg_b.mm())
        ),
    }
}

fn card_text(card: &CutCard, lengths: Lengths) -> String {
    let item = format!(
        "{} no. {} ({})",
        source_words(&card.source),
        card.number,
        stock_words(card, lengths)
    );
    let mut text = format!("\n{}", paragraph(&item, 2));
    let parts: Vec<String> = card
        .parts
        .iter()
        .map(|part| {
            part.serves
                .iter()
                .map(|serves| serves.mark.as_str())
                .collect::<Vec<_>>()
                .join(" + ")
        })
        .collect();
    let gives = format!("gives, from end A: {}", parts.join(", then "));
    text.push_str(&paragraph(&gives, 4));
    let mut table = Table::new(&[
        ("cut", Side::Right),
        ("from end", Side::Left),
        ("outside", Side::Right),
        ("inside", Side::Right),
        ("side", Side::Right),
        ("saw", Side::Right),
        ("kerf toward", Side::Left),
        ("face of", Side::Left),
    ]);
    for cut in &card.cuts {
        table.row([
            cut.number.to_string(),
            match cut.from {
                StockEnd::A => "A",
                StockEnd::B => "B",
            }
            .to_owned(),
            lengths.saw(cut.reach.outside.mm()),
            lengths.saw(cut.reach.inside.mm()),
            lengths.saw(cut.reach.side.mm()),
            match cut.by {
                FaceBy::Saw => format!("{:.1}°", cut.angle.deg()),
                FaceBy::Dress { .. } => "dress".to_owned(),
            },
            match cut.kerf {
                KerfSide::TowardA => "A",
                KerfSide::TowardB => "B",
            }
            .to_owned(),
            cut.faces.join(", "),
        ]);
    }
    text.push_str(&if table.is_empty() {
        "    used whole, no cut\n".to_owned()
    } else {
        table.render()
    });
    for cut in &card.cuts {
        if let FaceBy::Dress { most } = cut.by {
            text.push_str(&paragraph(
                &format!(
                    "{}: not sawn: dress down to the ring; up to {} {} comes off, thinner than a blade can follow.",
                    cut.number,
                    lengths.size(most.mm()),
                    lengths.sign()
                ),
                4,
            ));
        }
    }
    for finding in &card.findings {
        text.push_str(&format!(
            "    {}\n",
            styled(
                FAILS,
                format!(
                    "cut {}: {}",
                    finding.cut,
                    lengths.sentence(&trouble_words(finding.trouble))
                )
            )
        ));
    }
    text
}

fn as_json(supply: &Supply, rolls: &[RollMark]) -> Value {
    json!({
        "unit": "mm, deg",
        "cards": supply.cards.iter().map(|card| json!({
            "from": source_words(&card.source),
            "number": card.number,
            "stock": stock_json(card),
            "gives": card.parts.iter().map(|part| json!({
                "pieces": part.serves.iter().map(|serves| &serves.mark).collect::<Vec<_>>(),
                "reversed": part.is_reversed,
            })).collect::<Vec<_>>(),
            "cuts": card.cuts.iter().map(|cut| json!({
                "number": cut.number,
                "from-end": match cut.from { StockEnd::A => "A", StockEnd::B => "B" },
                "outside": cut.reach.outside.mm(),
                "inside": cut.reach.inside.mm(),
                "side": cut.reach.side.mm(),
                "by": match cut.by { FaceBy::Saw => "saw", FaceBy::Dress { .. } => "dress" },
                "dress-at-most": match cut.by { FaceBy::Saw => None, FaceBy::Dress { most } => Some(most.mm()) },
                "saw-angle": cut.angle.deg(),
                "kerf-toward": match cut.kerf { KerfSide::TowardA => "A", KerfSide::TowardB => "B" },
                "face-of": cut.faces,
            })).collect::<Vec<_>>(),
            "findings": card.findings.iter().map(|finding| json!({
                "cut": finding.cut, "why": trouble_words(finding.trouble),
            })).collect::<Vec<_>>(),
        })).collect::<Vec<_>>(),
        "clocks": supply.fits.iter().map(|fit| json!({
            "run": fit.run, "part": fit.marks, "clock": fit.clock.deg(),
            "round-outside": fit.round_outside.mm(), "reversed": fit.is_reversed,
        })).collect::<Vec<_>>(),
        "rolls": rolls.iter().map(|roll| json!({
            "run": roll.run, "part": roll.mark, "component": roll.component,
            "clock": roll.clock.deg(), "round-neck": roll.round_neck.mm(),
            "from-flat": roll.from_flat.deg(),
        })).collect::<Vec<_>>(),
        "followed": supply.followed.iter().map(|end| json!({
            "run": end.run, "up-to": end.up_to, "end-off-by": to_four_places(end.end_mm),
            "direction-off-by": to_four_places(end.end_rad.to_degrees()),
        })).collect::<Vec<_>>(),
    })
}

/// The record keeps degrees as they are written, so that what is read back differs in its last bits.
fn to_four_places(value: f64) -> f64 {
    (value * 1e4).round() / 1e4
}

fn stock_json(card: &CutCard) -> Value {
    match card.stock.shape {
        StockShape::Straight { length } => json!({ "kind": "straight", "length": length.mm() }),
        StockShape::Bend {
            angle,
            clr,
            leg_a,
            leg_b,
        } => json!({
            "kind": "bend", "angle": angle.deg(), "clr": clr.mm(),
            "leg-a": leg_a.mm(), "leg-b": leg_b.mm(),
        }),
    }
}
