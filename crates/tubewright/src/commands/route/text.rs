//! Routes as text: the alternatives side by side, then the pieces of one.

use super::Shown;
use crate::commands::solve::Solved;
use crate::terminal::table::{COLUMNS, Side, Table};
use crate::terminal::{FAILS, WARNS, heading, paragraph, styled};
use std::path::Path;
use tubewright_plan::figures::Gap;
use tubewright_plan::frozen::Offer;
use tubewright_plan::lengths::Lengths;
use tubewright_plan::routes::{PlannedKind, PlannedPiece, PlannedRun, words_of_ends};
use tubewright_plan::stages::Routed;
use unicode_width::UnicodeWidthStr;

/// Alternatives that fit beside each other in 80 columns.
const ABREAST: usize = 4;

/// The alternatives, and the pieces of the chosen plan or else of the first.
pub(crate) fn as_text(solved: &Solved, shown: &[Shown<'_>], lengths: Lengths) -> String {
    let mut text = heading("Routes");
    for (name, reason) in &solved.posed.left_out {
        text.push_str(&format!(
            "  {}\n",
            styled(FAILS, format!("{name} is not routed"))
        ));
        text.push_str(&paragraph(&reason.to_string(), 4));
    }
    match &solved.routed {
        Some(Routed::Found(_)) => text.push_str(&side_by_side(shown, lengths)),
        Some(Routed::NotFound {
            work_units,
            would_help,
        }) => {
            text.push_str(&paragraph(
                &format!("No route found in this effort ({work_units} work units). There may be one: try --effort with more, or make room."),
                2,
            ));
            text.push_str(&help_text(would_help, lengths));
        }
        Some(Routed::NoneExists { proof, would_help }) => {
            let words = format!("No route exists: {proof}.");
            text.push_str(&paragraph(&lengths.sentence(&words), 2));
            text.push_str(&help_text(would_help, lengths));
        }
        Some(Routed::NothingToRoute) | None => text.push_str("  There is no run to route.\n"),
    }
    if let Some(chosen) = &solved.chosen {
        text.push_str(&paragraph(
            &format!(
                "Chosen on {}: {}. It stands as it is; what is above is only offered.",
                chosen.plan.on, chosen.plan.route
            ),
            2,
        ));
        for (number, shown) in shown.iter().enumerate() {
            if let Some(offer) = &shown.offer {
                text.push_str(&offer_text(number + 1, offer));
            }
        }
        for (run, trouble) in &chosen.troubles {
            text.push_str(&paragraph(&styled(FAILS, format!("{run}: {trouble}")), 2));
        }
    }
    for run in solved.runs() {
        text.push_str(&run_text(run, lengths));
        for words in words_of_ends(&solved.posed, run, lengths) {
            text.push_str(&paragraph(&words, 2));
        }
    }
    text.push_str(&paragraph(
        &format!(
            "Effort {} work units, seed {}: the same again gives the same routes.",
            solved.budget.work_units, solved.budget.seed
        ),
        2,
    ));
    text
}

/// Changes with which there is a way.
fn help_text(would_help: &[String], lengths: Lengths) -> String {
    if would_help.is_empty() {
        return paragraph(
            "No single change that was tried (less gap to one body, one body moved, one component less, tighter bends, better known places) gave a way in a sixteenth of the effort.",
            2,
        );
    }
    let mut text = paragraph(
        "What would help, each change by itself, made and solved:",
        2,
    );
    for (number, words) in would_help.iter().enumerate() {
        let words = lengths.sentence(words);
        text.push_str(&numbered(number + 1, &words));
    }
    text
}

/// What to type next.
pub(super) fn what_next(solved: &Solved, folder: &Path) -> String {
    let folder = folder.display();
    let words = match &solved.chosen {
        None => format!(
            "Before you buy or cut: `tubewright route {folder} --choose 1` writes that way into shop.toml, piece by piece."
        ),
        Some(chosen) if chosen.plan.is_begun => {
            format!("`tubewright route {folder} --accept 1` takes up a change.")
        }
        Some(_) => format!(
            "Nothing is bought or cut yet: `tubewright route {folder} --choose 1` chooses anew."
        ),
    };
    paragraph(&words, 2)
}

fn side_by_side(shown: &[Shown<'_>], lengths: Lengths) -> String {
    let mut text = String::new();
    for (number, shown) in shown.iter().enumerate() {
        text.push_str(&numbered(number + 1, &shown.alternative.name));
    }
    // As many abreast as the line holds: lengths in feet and inches are long.
    let abreast = (1..=ABREAST)
        .rev()
        .find(|&abreast| {
            let tables = comparison(shown, abreast, lengths);
            let mut lines = tables.lines();
            abreast == 1 || lines.all(|line| line.width() <= COLUMNS)
        })
        .unwrap_or(1);
    text.push_str(&comparison(shown, abreast, lengths));
    text.push_str(&paragraph(
        "Costs are in the currency of the prices. Cost as cut is the price of the buying list, welds and cuts at the shop's rate, and what bends, mitres, meetings, length and lost ground clearance are counted at; it sets the order among ways that close well, can be made, leave each sensor its room and blow nowhere that they must not. Cost as searched counts every bend as bought by itself and leaves out delivery and components but crossovers between which there is a choice; no way searched for costs less than the line below it.",
        2,
    ));
    text.push('\n');
    for (number, shown) in shown.iter().enumerate() {
        if let Some(gap) = &shown.figures.tightest {
            text.push_str(&numbered(number + 1, &gap_words(gap, lengths)));
        }
        if !shown.figures.without_mass.is_empty() {
            let list = shown.figures.without_mass.join(", ");
            text.push_str(&numbered(
                number + 1,
                &format!("the mass leaves out {list}: stock.toml names none"),
            ));
        }
        if shown.figures.missing > 0 {
            text.push_str(&numbered(
                number + 1,
                &styled(
                    FAILS,
                    format!(
                        "{} pieces cannot be made of what is on hand or on offer",
                        shown.figures.missing
                    ),
                ),
            ));
        }
    }
    if shown.len() < 3 {
        text.push_str("  Fewer than three ways were found in this effort.\n");
    }
    text
}

/// The figures in tables of so many alternatives each.
fn comparison(shown: &[Shown<'_>], abreast: usize, lengths: Lengths) -> String {
    let mut text = String::new();
    for (part, few) in shown.chunks(abreast).enumerate() {
        text.push('\n');
        let heads: Vec<String> = (0..few.len())
            .map(|number| (part * abreast + number + 1).to_string())
            .collect();
        let mut columns = vec![("", Side::Left)];
        columns.extend(heads.iter().map(|head| (head.as_str(), Side::Right)));
        let mut table = Table::new(&columns);
        for (label, cell) in rows(lengths) {
            let mut cells = vec![label.to_owned()];
            cells.extend(few.iter().map(&cell));
            table.row(cells);
        }
        text.push_str(&table.render());
    }
    text
}

type Cell = Box<dyn Fn(&Shown<'_>) -> String>;

/// The rows of the comparison.
fn rows(lengths: Lengths) -> Vec<(&'static str, Cell)> {
    let none = || "-".to_owned();
    vec![
        (
            "price",
            Box::new(move |shown| {
                shown
                    .figures
                    .price
                    .map_or_else(none, |price| price.to_string())
            }),
        ),
        (
            "weld and saw time",
            Box::new(move |shown| {
                shown
                    .figures
                    .hours
                    .map_or_else(none, |hours| format!("{hours:.1} h"))
            }),
        ),
        (
            "welds",
            Box::new(move |shown| {
                shown
                    .figures
                    .welds
                    .map_or_else(none, |welds| welds.to_string())
            }),
        ),
        (
            "cuts",
            Box::new(move |shown| {
                shown
                    .figures
                    .cuts
                    .map_or_else(none, |cuts| cuts.to_string())
            }),
        ),
        (
            "mass",
            Box::new(|shown| format!("{:.1} kg", shown.figures.mass_kg)),
        ),
        (
            "length",
            Box::new(move |shown| lengths.long(shown.figures.length_mm)),
        ),
        (
            "sum of bends",
            Box::new(|shown| format!("{:.0}°", shown.figures.bends_rad.to_degrees())),
        ),
        // An estimate, brought to degrees of bend that lose as much.
        (
            "mitres, meetings",
            Box::new(move |shown| match shown.figures.heads_as_bend_deg() {
                degrees if degrees < 0.5 => none(),
                degrees => format!("as {degrees:.0}°"),
            }),
        ),
        (
            "ends off by",
            Box::new(move |shown| lengths.fine(shown.figures.end_off_mm)),
        ),
        (
            "and in aim",
            Box::new(|shown| format!("{:.1}°", shown.figures.end_off_rad.to_degrees())),
        ),
        (
            "tightest gap",
            Box::new(move |shown| {
                let gap = shown.figures.tightest.as_ref();
                gap.map_or_else(none, |gap| lengths.tape(gap.gap_mm))
            }),
        ),
        (
            "over the ground",
            Box::new(move |shown| {
                let gap = shown.figures.ground.as_ref();
                gap.map_or_else(|| "not checked".to_owned(), |gap| lengths.tape(gap.gap_mm))
            }),
        ),
        (
            "cost as cut",
            Box::new(move |shown| {
                let cost = shown.figures.cost_as_cut;
                cost.map_or_else(none, |cost| format!("{cost:.0}"))
            }),
        ),
        (
            "cost as searched",
            Box::new(|shown| format!("{:.0}", shown.alternative.cost)),
        ),
        (
            "no way is below",
            Box::new(|shown| format!("{:.0}", shown.alternative.lower_bound.max(0.0))),
        ),
        (
            "left to gain",
            Box::new(|shown| format!("{:.0} %", 100.0 * gap_share(shown))),
        ),
    ]
}

/// How much of the cost might be saved at the very most.
pub(super) fn gap_share(shown: &Shown<'_>) -> f64 {
    let (cost, bound) = (shown.alternative.cost, shown.alternative.lower_bound);
    if cost > 0.0 {
        ((cost - bound) / cost).clamp(0.0, 1.0)
    } else {
        0.0
    }
}

fn numbered(number: usize, words: &str) -> String {
    let mut lines = crate::terminal::table::wrap(words, COLUMNS - 6);
    let mut text = format!("{number:>3}  {}\n", lines.remove(0));
    for line in lines {
        text.push_str(&format!("     {line}\n"));
    }
    text
}

fn gap_words(gap: &Gap, lengths: Lengths) -> String {
    let measured = gap.plus_minus_mm.map_or_else(
        || lengths.tape(gap.gap_mm),
        |plus_minus| lengths.with_plus_minus(gap.gap_mm, plus_minus),
    );
    format!(
        "tightest: {}, {measured} ({}), at least {}",
        gap.subject,
        lengths.sentence(&gap.place_words),
        lengths.tape(gap.wanted_mm)
    )
}

/// What an offer would change, for the person who decides.
pub(super) fn offer_text(number: usize, offer: &Offer) -> String {
    if offer.is_nothing() {
        return numbered(number, "is the chosen plan: it changes nothing");
    }
    let list = |marks: &[String]| {
        if marks.is_empty() {
            "none".to_owned()
        } else {
            marks.join(", ")
        }
    };
    let mut text = String::new();
    for run in &offer.runs {
        let mut words = format!(
            "changes {}: go {}; new {}; stay {}",
            run.run,
            list(&run.go),
            list(&run.come),
            list(&run.stay)
        );
        if !run.turned.is_empty() {
            words.push_str(&format!("; clocked otherwise {}", run.turned.join(", ")));
        }
        if !run.undone.is_empty() {
            words.push_str(&format!("; to be cut open again {}", run.undone.join(", ")));
        }
        text.push_str(&numbered(number, &words));
    }
    let words = if offer.cut_steel.is_empty() {
        "no steel that is cut would be lost".to_owned()
    } else {
        let cut: Vec<String> = offer
            .cut_steel
            .iter()
            .map(|cut| match cut.price {
                Some(price) if price > 0.0 => {
                    format!("{} (from {}, {price:.2} new)", cut.mark, cut.from)
                }
                Some(_) => format!("{} (from {}, from the shelf)", cut.mark, cut.from),
                None => format!("{} (from {}, no price)", cut.mark, cut.from),
            })
            .collect();
        styled(
            WARNS,
            format!(
                "steel that is cut and would be lost: {}; {:.2} together",
                cut.join(", "),
                offer.steel_price()
            ),
        )
    };
    text.push_str(&numbered(number, &words));
    text
}

/// The pieces of a run, as they are cut and clocked.
fn run_text(run: &PlannedRun, lengths: Lengths) -> String {
    let mut text = heading(&format!(
        "{} ({}), rounded to the shop's steps",
        run.name, run.tube
    ));
    let mut table = Table::new(&[
        ("piece", Side::Left),
        ("joint", Side::Left),
        ("what", Side::Left),
        ("size", Side::Right),
        ("clock", Side::Right),
        ("ends at x, y, z", Side::Left),
    ]);
    for piece in &run.pieces {
        let (what, size, clock) = words(piece, lengths);
        let p = piece.frame_out.origin.to_array();
        table.row([
            piece.mark.clone(),
            piece.joint.clone(),
            what,
            size,
            clock,
            p.map(|p| lengths.place(p)).join(", "),
        ]);
    }
    text.push_str(&table.render());
    text.push_str(&format!(
        "  closes at {} to {} and {:.1}°; places in {}; clock looking downstream\n",
        run.last_joint,
        lengths.fine(run.end_error_mm()),
        run.end_error_rad().to_degrees(),
        lengths.sign()
    ));
    text
}

fn words(piece: &PlannedPiece, lengths: Lengths) -> (String, String, String) {
    match &piece.kind {
        PlannedKind::Straight { length_mm } => (
            "straight".to_owned(),
            lengths.tape(*length_mm),
            String::new(),
        ),
        PlannedKind::Bend {
            angle_rad,
            clock_rad,
            clr_mm,
        } => (
            format!("bend, CLR {} {}", lengths.size(*clr_mm), lengths.sign()),
            format!("{:.1}°", angle_rad.to_degrees()),
            format!("{:+.1}°", clock_rad.to_degrees()),
        ),
        PlannedKind::Component {
            name, length_mm, ..
        } => (name.clone(), lengths.about(*length_mm), String::new()),
        PlannedKind::Crossover { name, side, .. } => (
            format!("{name}, side {}", side.letter()),
            lengths.about(piece.centre_line_mm()),
            String::new(),
        ),
    }
}
