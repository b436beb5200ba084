//! Saw marks, one card for each stock item.

use super::buy::supply_of;
use super::solve::solve;
use super::{Done, Failure, load, print};
use crate::cli::{Effort, Folder};
use crate::terminal::table::{Side, Table};
use crate::terminal::{FAILS, heading, paragraph, styled};
use serde_json::{Value, json};
use tubewright_plan::stages::Supply;
use tubewright_stock::{CutCard, KerfSide, Source, StockEnd, StockShape};

/// Shows the cut cards.
///
/// # Errors
/// The folder cannot be read, or there is nothing to plan from.
pub(crate) fn run(arguments: &Folder) -> Result<Done, Failure> {
    let loaded = load::load(&arguments.folder)?;
    let solved = solve(
        &loaded,
        Effort {
            effort: None,
            seed: None,
        },
    )?;
    let Some(supply) = supply_of(&loaded.model, &solved, &[])? else {
        print("  There is no route yet, so there is nothing to cut: see `tubewright route`.\n")?;
        return Ok(Done::Findings);
    };
    if arguments.json {
        print(&format!("{:#}\n", as_json(&supply)))?;
    } else {
        print(&as_text(&supply))?;
    }
    let can_saw = supply.cards.iter().all(|card| card.findings.is_empty());
    Ok(if can_saw && supply.plan.is_full() {
        Done::Clean
    } else {
        Done::Findings
    })
}

/// The cards as text.
pub(crate) fn as_text(supply: &Supply) -> String {
    let mut text = heading("Cut");
    text.push_str(&paragraph(
        "Before the first cut scribe a witness line along the whole item: on a bend along its outside, from end to end. Measure every mark from the end named, with the tape along the side named. The mark is a face of a piece; the kerf goes where the card says.",
        2,
    ));
    for card in &supply.cards {
        text.push_str(&card_text(card));
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
            format!("{:+.1} mm", fit.round_outside.mm()),
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
    text.push_str(&paragraph(
        "Clockwise looking downstream is plus, witness line to witness line. Sawn tube is sharp and hot work makes fume: deburr, wear eye protection, extract at the source.",
        2,
    ));
    text
}

fn source_words(source: &Source) -> String {
    match source {
        Source::OnHand(name) => format!("from the shelf: {name}"),
        Source::Bought(item) => format!("bought: {item}"),
    }
}

fn stock_words(card: &CutCard) -> String {
    match card.stock.shape {
        StockShape::Straight { length } => format!("straight, {:.0} mm long", length.mm()),
        StockShape::Bend {
            angle,
            clr,
            leg_a,
            leg_b,
        } => format!(
            "bend {:.0}°, CLR {:.1}, legs A {:.0} and B {:.0} mm",
            angle.deg(),
            clr.mm(),
            leg_a.mm(),
            leg_b.mm()
        ),
    }
}

fn card_text(card: &CutCard) -> String {
    let mut text = format!(
        "\n  {} no. {} ({})\n",
        source_words(&card.source),
        card.number,
        stock_words(card)
    );
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
    text.push_str(&format!(
        "    gives, from end A: {}\n",
        parts.join(", then ")
    ));
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
            format!("{:.1}", cut.reach.outside.mm()),
            format!("{:.1}", cut.reach.inside.mm()),
            format!("{:.1}", cut.reach.side.mm()),
            format!("{:.1}°", cut.angle.deg()),
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
    for finding in &card.findings {
        text.push_str(&format!(
            "    {}\n",
            styled(FAILS, format!("cut {}: {:?}", finding.cut, finding.trouble))
        ));
    }
    text
}

fn as_json(supply: &Supply) -> Value {
    json!({
        "unit": "mm, deg",
        "cards": supply.cards.iter().map(|card| json!({
            "from": source_words(&card.source),
            "number": card.number,
            "stock": stock_words(card),
            "cuts": card.cuts.iter().map(|cut| json!({
                "number": cut.number,
                "from-end": format!("{:?}", cut.from),
                "outside": cut.reach.outside.mm(),
                "inside": cut.reach.inside.mm(),
                "side": cut.reach.side.mm(),
                "saw-angle": cut.angle.deg(),
                "kerf": format!("{:?}", cut.kerf),
                "face-of": cut.faces,
            })).collect::<Vec<_>>(),
        })).collect::<Vec<_>>(),
        "clocks": supply.fits.iter().map(|fit| json!({
            "run": fit.run, "part": fit.marks, "clock": fit.clock.deg(),
            "round-outside": fit.round_outside.mm(), "reversed": fit.is_reversed,
        })).collect::<Vec<_>>(),
    })
}
