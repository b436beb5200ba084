//! One card for each stock item that is cut.

use super::card_drawing::picture;
use super::cautions::{AT_EVERY_CUT, AT_THE_SAW, caution, comes_apart, comes_apart_in_short};
use super::longer;
use super::words::{degrees, signed_degrees};
use super::{PrintJob, Way, slices};
use crate::fit::{FitSheet, is_of};
use crate::stages::Supply;
use tubewright_geometry::Length;
use tubewright_packet::{Block, Body, Column, Figure, Sheet, SheetKind, Step, Table};
use tubewright_stock::{
    Cut, CutCard, CutPart, FaceBy, FitMark, ItemLimits, KerfSide, PartPlace, SawTrouble, Source,
    StockEnd, StockShape, item_limits, ring_gaps,
};

/// The cards, in the order of the plan.
pub(super) fn sheets(job: &PrintJob<'_>, supply: &Supply, fit: Option<&FitSheet>) -> Vec<Sheet> {
    let cards: Vec<&CutCard> = supply.cards.iter().collect();
    if cards.is_empty() {
        return vec![Sheet {
            kind: SheetKind::Cut,
            title: "Cut cards".to_owned(),
            is_lying: false,
            is_below: false,
            body: Body::Made {
                blocks: vec![Block::Words {
                    text: "Nothing is cut: every part is used whole.".to_owned(),
                }],
            },
        }];
    }
    let count = cards.len();
    (1..)
        .zip(cards)
        .map(|(number, card)| sheet(job, (supply, fit), card, (number, count)))
        .collect()
}

/// Name of the item and where it comes from.
pub(super) fn names(card: &CutCard) -> (String, &'static str) {
    match &card.source {
        Source::OnHand(name) => (name.clone(), "from the shelf"),
        Source::Bought(item) => (item.clone(), "bought"),
    }
}

/// On every card of a way that nobody has chosen.
const NOT_CHOSEN: &str = "NOT CHOSEN YET: this card follows the first way that was found. Have a way \
    chosen, and cut from the cards that are printed for it.";

fn sheet(
    job: &PrintJob<'_>,
    (supply, fit): (&Supply, Option<&FitSheet>),
    card: &CutCard,
    (number, count): (u32, usize),
) -> Sheet {
    let (name, whence) = names(card);
    let kerf = job.around.practice.kerf.mm();
    let sign = job.lengths.sign();
    let copies = supply
        .cards
        .iter()
        .filter(|other| other.source == card.source)
        .count();
    let copy = if copies > 1 {
        format!(", no. {} of {copies}", card.number)
    } else {
        String::new()
    };
    let closing = fit.and_then(|fit| longer::closing(job.lengths, fit, card));
    let marked = closing
        .as_ref()
        .and_then(|closing| closing.card.as_ref())
        .unwrap_or(card);
    let mut blocks: Vec<Block> = matches!(job.way, Some(Way::Cheapest { .. }))
        .then(|| caution(NOT_CHOSEN))
        .into_iter()
        .chain(comes_apart_in_short(job))
        .collect();
    blocks.extend([
        Block::Figures {
            figures: vec![
                Figure {
                    value: name.clone(),
                    what: format!("{whence}{copy}"),
                },
                Figure {
                    value: card.cuts.len().to_string(),
                    what: match (card.cuts.len() == 1, are_square(card)) {
                        (true, true) => "cut, square",
                        (true, false) => "cut, NOT square",
                        (false, true) => "cuts, all square",
                        (false, false) => "cuts, NOT all square",
                    }
                    .to_owned(),
                },
                Figure {
                    value: format!("{} {sign}", job.lengths.saw(kerf)),
                    what: "kerf of the saw".to_owned(),
                },
            ],
        },
        Block::Words {
            text: format!(
                "{}; {}",
                job.lengths.stock(&card.stock),
                job.lengths.tube(&card.stock.tube)
            ),
        },
        picture(marked, &name, job.lengths),
    ]);
    blocks.extend(other_radius(job, card));
    for finding in &card.findings {
        blocks.push(caution(&trouble_words(job, finding.cut, finding.trouble)));
    }
    if card.cuts.is_empty() {
        blocks.push(Block::Words {
            text: "Used whole: no cut.".to_owned(),
        });
    } else {
        blocks.push(Block::Table {
            table: cuts(job, marked),
        });
    }
    blocks.push(Block::Table {
        table: parts(job, (supply, fit), card),
    });
    if let Some(closing) = &closing {
        blocks.push(caution(&closing.words));
    }
    if !card.cuts.is_empty() {
        blocks.push(Block::Steps {
            steps: steps(job, marked),
        });
        blocks.push(Block::Words {
            text: AT_EVERY_CUT.to_owned(),
        });
    }
    Sheet {
        kind: SheetKind::Cut,
        title: format!("Cut card {number} of {count}: {name}"),
        is_lying: false,
        is_below: true,
        body: Body::Made { blocks },
    }
}

/// Whether every cut stands square across its tube.
pub(super) fn are_square(card: &CutCard) -> bool {
    card.cuts.iter().all(|cut| cut.angle.deg().abs() < 0.05)
}

fn is_bend(card: &CutCard) -> bool {
    matches!(card.stock.shape, StockShape::Bend { .. })
}

/// How every card is read and cut, once for all.
pub(super) fn how_to(job: &PrintJob<'_>) -> Sheet {
    let step = |what: &str, how: &str| Step {
        what: what.to_owned(),
        how: how.to_owned(),
    };
    let steps = vec![
        step(
            "Measure the item",
            "Letter its ends A and B as in the picture. The card says between what its angle must lie, how far its \
             radius may be off and how long its legs must be at least: STOP where one of them does not hold. A leg \
             that is shorter or longer than its name moves every ring that is taped from its end: shift those by as \
             much. Where the card says what must lie between two rings, measure it before the first cut: whatever of \
             the item is off, it shows there. Where you stop, hand in what you measured, as an item on hand, and cut \
             from a new card.",
        ),
        step(
            "Scribe the witness line from A to B",
            "On a bend along its back (the outside of the curve), through both legs. On a straight \
             anywhere along it. Before the first cut, so that every part has it.",
        ),
        step(
            "Mark every cut before the first one",
            "Tape from the end that the card names. On a bend wrap the clock strip round each leg, 0 on \
             the witness line, and run lines at +90 and −90 (the sides) and at 180 (the inside) along the \
             whole bend. Mark along the back, the inside and both sides and join the four marks to one \
             ring; on a leg all four are alike. On a straight wrap the clock strip round the mark and \
             scribe along its edge; the line along a bar is drawn with an angle iron laid on it.",
        ),
        step(
            "Paint the mark of the part and the arrow of flow on each part",
            "As in the picture, on both sides of every cut: no part leaves the saw without a name.",
        ),
        step(
            "Saw in the order of the numbers",
            "The ring is the face of a part: leave the line. The blade runs beside it, on the side that \
             is black in the picture and toward the end that the card names. In a bend the blade stands \
             square to the tube at the ring, which is along the radius of the bend. Where the card says DRESS the ring, \
             dashed in the picture, is not sawn: grind down to it, square all round.",
        ),
        step(
            "Deburr, try the parts end to end",
            "Inside and outside. What is hatched in the picture is waste or an offcut for the shelf.",
        ),
        step(
            "Cut by the card, not by the run sheet",
            "A straight is longer on its card: what the welds will pull in is added there.",
        ),
    ];
    Sheet {
        kind: SheetKind::Cut,
        title: "How to cut from the cards".to_owned(),
        is_lying: false,
        is_below: false,
        body: Body::Made {
            blocks: comes_apart(job)
                .into_iter()
                .chain([Block::Steps { steps }])
                .chain(slices::how_to(job))
                .chain([caution(AT_THE_SAW)])
                .collect(),
        },
    }
}

/// The boxes to tick: what is measured first with the limits of this item, then marks, then the saw.
fn steps(job: &PrintJob<'_>, card: &CutCard) -> Vec<Step> {
    let (l, sign) = (job.lengths, job.lengths.sign());
    let practice = &job.around.practice;
    let limits = item_limits(card, practice.kerf, practice.bend_true, practice.cut_length);
    let measured = match limits {
        ItemLimits::Bar { least } => format!("at least {} {sign} long", l.saw(least.mm())),
        ItemLimits::Bend {
            angle: [least, most],
            radius_off,
            legs: [a, b],
        } => {
            let leg = |name: &str, least: Length| {
                (least.mm() > 0.0)
                    .then(|| format!(", leg {name} at least {} {sign}", l.saw(least.mm())))
            };
            format!(
                "between {}° and {}°, its radius within ± {} {sign}{}{}",
                degrees(least.deg()),
                degrees(most.deg()),
                l.small(radius_off.mm()),
                leg("A", a).unwrap_or_default(),
                leg("B", b).unwrap_or_default(),
            )
        }
    };
    let gaps: Vec<String> = ring_gaps(card, practice.kerf)
        .iter()
        .map(|gap| {
            format!(
                "between cuts {} and {} along the inside {} {sign}; under {} {sign} STOP",
                gap.between[0],
                gap.between[1],
                l.saw(gap.inside.mm()),
                l.saw(gap.least.mm())
            )
        })
        .collect();
    [
        (
            "Item measured, ends lettered A and B",
            format!("{measured}; else STOP"),
        ),
        ("Witness line scribed from A to B", String::new()),
        (
            "All rings marked, parts named, arrows painted",
            gaps.join("; "),
        ),
        ("Sawn in the order of the numbers", String::new()),
    ]
    .into_iter()
    .map(|(what, how)| (what.to_owned(), how))
    .chain(
        slices::words(job, card)
            .into_iter()
            .map(|what| (what, String::new())),
    )
    .map(|(what, how)| Step { what, how })
    .collect()
}

fn trouble_words(job: &PrintJob<'_>, cut: u32, trouble: SawTrouble) -> String {
    let (l, sign) = (job.lengths, job.lengths.sign());
    match trouble {
        SawTrouble::CannotHold { held, least } => format!(
            "Cut {cut}: only {} {sign} are left to hold and the saw wants {} {sign}. Cut it by hand or \
             with a grinder, or take another item.",
            l.saw(held.mm()),
            l.saw(least.mm())
        ),
        SawTrouble::TooLarge { od, capacity } => format!(
            "Cut {cut}: the tube is {} {sign} and the saw takes {} {sign}. Cut it with a band or by \
             hand.",
            l.size(od.mm()),
            l.size(capacity.mm())
        ),
    }
}

fn cuts(job: &PrintJob<'_>, card: &CutCard) -> Table {
    let sign = job.lengths.sign();
    let is_bend = is_bend(card);
    let mut columns = vec![
        Column::boxes(""),
        Column::figures("cut").big(),
        Column::words("from end").big(),
    ];
    if is_bend {
        columns.extend([
            Column::figures(&format!("along the back, {sign}")).big(),
            Column::figures(&format!("inside, {sign}")).big(),
            Column::figures(&format!("side, {sign}")).big(),
        ]);
    } else {
        columns.push(Column::figures(&format!("length, {sign}")).big());
    }
    let are_square = are_square(card);
    if !are_square {
        columns.push(Column::figures("saw from square").big());
    }
    columns.push(Column::words("blade toward").big());
    columns.push(Column::wide("the ring is a face of"));
    let mut table = Table::new("cuts", columns);
    for cut in &card.cuts {
        let mut cells = vec![
            String::new(),
            cut.number.to_string(),
            end_letter(cut.from).to_owned(),
            job.lengths.saw(cut.reach.outside.mm()),
        ];
        if is_bend {
            cells.push(job.lengths.saw(cut.reach.inside.mm()));
            cells.push(job.lengths.saw(cut.reach.side.mm()));
        }
        if !are_square {
            cells.push(format!("{}°", degrees(cut.angle.deg())));
        }
        let side = match cut.kerf {
            KerfSide::TowardA => "A",
            KerfSide::TowardB => "B",
        };
        cells.push(match cut.by {
            FaceBy::Saw => side.to_owned(),
            FaceBy::Dress { .. } => "DRESS".to_owned(),
        });
        cells.push(match cut.by {
            FaceBy::Saw => face_words(cut, card),
            FaceBy::Dress { most } => format!(
                "{}: not sawn, grind down to the ring; up to {} {sign} comes off",
                face_words(cut, card),
                job.lengths.saw(most.mm())
            ),
        });
        table.cells(cells);
    }
    table
}

/// The parts whose face a cut makes, as painted.
fn face_words(cut: &Cut, card: &CutCard) -> String {
    card.parts
        .iter()
        .filter(|part| part.serves.iter().any(|s| cut.faces.contains(&s.mark)))
        .map(part_mark)
        .collect::<Vec<_>>()
        .join(" and ")
}

pub(super) const fn end_letter(end: StockEnd) -> &'static str {
    match end {
        StockEnd::A => "A",
        StockEnd::B => "B",
    }
}

/// What is painted on a part.
pub(super) fn part_mark(part: &CutPart) -> String {
    part.serves
        .iter()
        .map(|serves| serves.mark.as_str())
        .collect::<Vec<_>>()
        .join("+")
}

/// That a bend on hand has another radius than the runs are drawn with.
fn other_radius(job: &PrintJob<'_>, card: &CutCard) -> Option<Block> {
    let StockShape::Bend { clr, .. } = card.stock.shape else {
        return None;
    };
    let mark = &card.parts.first()?.serves.first()?.mark;
    let mut runs = job.runs.iter();
    let run = runs.find(|run| run.pieces.iter().any(|piece| piece.mark == *mark))?;
    let (l, sign) = (job.lengths, job.lengths.sign());
    let [own, drawn] = [clr.mm(), run.clr_mm].map(|mm| l.size(mm));
    (own != drawn).then(|| Block::Words {
        text: format!(
            "Its radius of {own} {sign} was measured on it; the run sheet is drawn with {drawn} {sign}. The marks below \
             are for this item as it is."
        ),
    })
}

/// What is left longer of a part until its gap is measured, where the marks of its card hold that.
fn left_longer_mm(
    job: &PrintJob<'_>,
    fit: Option<&FitSheet>,
    card: &CutCard,
    part: &CutPart,
) -> f64 {
    let Some(fit) = fit else { return 0.0 };
    let holds =
        longer::closing(job.lengths, fit, card).is_some_and(|closing| closing.card.is_some());
    let mut steps = fit
        .steps
        .iter()
        .filter(|step| holds && is_of(part, &step.marks));
    let trim = steps.find_map(|step| step.trim);
    let left = trim.into_iter().flat_map(|trim| trim.left_mm()).flatten();
    left.map(|mm| job.lengths.up_to_tape_mm(mm)).sum()
}

/// What a part is as its card makes it; a straight that closes has both of its lengths.
pub(super) fn part_on_card(
    job: &PrintJob<'_>,
    fit: Option<&FitSheet>,
    card: &CutCard,
    part: &CutPart,
) -> String {
    let longer_mm = left_longer_mm(job, fit, card, part);
    let (l, sign) = (job.lengths, job.lengths.sign());
    match part.place {
        PartPlace::Bar { length, .. } if longer_mm > 0.0 => format!(
            "straight {} {sign} as marked, {} {sign} when it is cut to its gap",
            l.saw(length.mm() + longer_mm),
            l.saw(length.mm())
        ),
        _ => part_words(job, part),
    }
}

fn parts(
    job: &PrintJob<'_>,
    (supply, fit_sheet): (&Supply, Option<&FitSheet>),
    card: &CutCard,
) -> Table {
    let sign = job.lengths.sign();
    let mut table = Table::new(
        "parts",
        vec![
            Column::words("part, from A on").big(),
            Column::wide("what it is"),
            Column::words("flow").big(),
            Column::figures("clock").big(),
            Column::figures(&format!("round, {sign}")).big(),
            Column::words("from the line of"),
        ],
    );
    for part in &card.parts {
        let marks: Vec<&str> = part.serves.iter().map(|s| s.mark.as_str()).collect();
        let fit = supply.fits.iter().find(|fit| {
            fit.marks
                .iter()
                .map(String::as_str)
                .eq(marks.iter().copied())
        });
        let (clock, round, from) = fit.map_or_else(
            || (String::new(), String::new(), String::new()),
            |fit| {
                (
                    format!("{}°", signed_degrees(fit.clock.deg())),
                    plus(job.lengths.saw(fit.round_outside.mm())),
                    line_before(supply, fit),
                )
            },
        );
        table.row([
            part_mark(part),
            part_on_card(job, fit_sheet, card, part),
            if part.is_reversed { "B to A" } else { "A to B" }.to_owned(),
            clock,
            round,
            from,
        ]);
    }
    table
}

/// Whose witness line the clock of a part counts from.
pub(super) fn line_before(supply: &Supply, fit: &FitMark) -> String {
    let at = supply
        .fits
        .iter()
        .position(|other| other.run == fit.run && other.marks == fit.marks);
    let before = at
        .and_then(|at| supply.fits.get(at.checked_sub(1)?))
        .filter(|before| before.run == fit.run);
    match before {
        Some(before) => before.marks.join("+"),
        None if fit.run.contains(", behind ") => "12 o'clock of the crossover's outlet".to_owned(),
        None => "12 o'clock of where the run starts".to_owned(),
    }
}

/// A length with its sign, unless it is nought.
pub(super) fn plus(text: String) -> String {
    if text.starts_with('-') || text.chars().all(|c| matches!(c, '0' | '.')) {
        text
    } else {
        format!("+{text}")
    }
}

/// What a part is: length, or angle with the legs that it keeps.
pub(super) fn part_words(job: &PrintJob<'_>, part: &CutPart) -> String {
    let (l, sign) = (job.lengths, job.lengths.sign());
    match part.place {
        PartPlace::Bar { length, .. } => format!("straight {} {sign}", l.saw(length.mm())),
        PartPlace::Leg { length, .. } => {
            format!("straight {} {sign}, from the leg", l.saw(length.mm()))
        }
        PartPlace::Arc {
            sweep,
            keeps_a,
            keeps_b,
            ..
        } => {
            let mut text = format!("bend {}°", degrees(sweep.deg()));
            let kept = [(keeps_a, "A"), (keeps_b, "B")].map(|(kept, end)| (kept.mm(), end));
            let mut word = "with";
            for (kept_mm, end) in kept {
                if kept_mm > 0.002 {
                    text.push_str(&format!(" {word} {} {sign} of leg {end}", l.saw(kept_mm)));
                    word = "and";
                }
            }
            let [a, b] = kept.map(|(kept_mm, _)| kept_mm > 0.002);
            let into_leg = if part.is_reversed { b } else { a };
            text.push_str(match (a, b) {
                (true, true) if part.is_reversed => ", gas enters by leg B",
                (true, true) => ", gas enters by leg A",
                (false, false) => "",
                _ if into_leg => ", gas enters by the leg",
                _ => ", gas enters by the bend, leaves by the leg",
            });
            text
        }
    }
}
