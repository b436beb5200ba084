//! One card for each stock item that is cut.

use super::PrintJob;
use super::cautions::{AT_THE_SAW, caution};
use super::words::{degrees, signed_degrees};
use crate::stages::Supply;
use tubewright_geometry::cut::StockBend;
use tubewright_packet::{Block, Body, Column, Figure, Picture, Sheet, SheetKind, Step, Table};
use tubewright_sheets::{
    BladeSide, CardCut, CardError, CardItem, CardPart, Drawing, cut_picture, to_svg,
};
use tubewright_stock::{
    Cut, CutCard, CutPart, FaceBy, KerfSide, PartPlace, SawTrouble, Source, StockEnd, StockShape,
};

/// Width of the picture on the card, mm.
const PICTURE_MM: f64 = 184.0;

/// The cards, in the order of the plan.
pub(super) fn sheets(job: &PrintJob<'_>, supply: &Supply) -> Vec<Sheet> {
    let cards: Vec<&CutCard> = supply.cards.iter().collect();
    if cards.is_empty() {
        return vec![Sheet {
            kind: SheetKind::Cut,
            title: "Cut cards".to_owned(),
            is_lying: false,
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
        .map(|(number, card)| sheet(job, supply, card, (number, count)))
        .collect()
}

/// Name of the item and where it comes from.
fn names(card: &CutCard) -> (String, &'static str) {
    match &card.source {
        Source::OnHand(name) => (name.clone(), "from the shelf"),
        Source::Bought(item) => (item.clone(), "bought"),
    }
}

fn sheet(
    job: &PrintJob<'_>,
    supply: &Supply,
    card: &CutCard,
    (number, count): (u32, usize),
) -> Sheet {
    let (name, whence) = names(card);
    let kerf = job.around.practice.kerf.mm();
    let sign = job.lengths.sign();
    let copy = if card.number > 1 {
        format!(", piece {} of these", card.number)
    } else {
        String::new()
    };
    let mut blocks = vec![
        Block::Figures {
            figures: vec![
                Figure {
                    value: name.clone(),
                    what: format!("{whence}{copy}"),
                },
                Figure {
                    value: card.cuts.len().to_string(),
                    what: if card.cuts.len() == 1 {
                        "cut, square".to_owned()
                    } else {
                        "cuts, all square".to_owned()
                    },
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
        picture(card, &name),
    ];
    for finding in &card.findings {
        blocks.push(caution(&trouble_words(job, finding.cut, finding.trouble)));
    }
    if card.cuts.is_empty() {
        blocks.push(Block::Words {
            text: "Used whole: no cut.".to_owned(),
        });
    } else {
        blocks.push(Block::Table {
            table: cuts(job, card),
        });
    }
    blocks.push(Block::Table {
        table: parts(job, supply, card),
    });
    if !card.cuts.is_empty() {
        blocks.push(Block::Steps { steps: steps() });
        blocks.push(caution(AT_THE_SAW));
    }
    Sheet {
        kind: SheetKind::Cut,
        title: format!("Cut card {number} of {count}: {name}"),
        is_lying: false,
        body: Body::Made { blocks },
    }
}

fn is_bend(card: &CutCard) -> bool {
    matches!(card.stock.shape, StockShape::Bend { .. })
}

/// How every card is read and cut, once for all.
pub(super) fn how_to() -> Sheet {
    let step = |what: &str, how: &str| Step {
        what: what.to_owned(),
        how: how.to_owned(),
    };
    let steps = vec![
        step(
            "Measure the item",
            "Letter its ends A and B as in the picture. If its angle, radius, a leg or its length is \
             not as the card says, stop: the card does not hold for it.",
        ),
        step(
            "Scribe the witness line from A to B",
            "On a bend along its back (the outside of the curve), through both legs. On a straight \
             anywhere along it. Before the first cut, so that every part has it.",
        ),
        step(
            "Mark every cut before the first one",
            "Tape from the end that the card names. On a bend mark along the back, along the inside \
             and along both sides, and join the four marks to one ring; on a leg all four are alike. \
             On a straight wrap the clock strip round the mark and scribe along its edge.",
        ),
        step(
            "Paint the mark of the part and the arrow of flow on each part",
            "As in the picture, on both sides of every cut: no part leaves the saw without a name.",
        ),
        step(
            "Saw in the order of the numbers",
            "The ring is the face of a part: leave the line. The blade runs beside it, on the side that \
             is black in the picture and toward the end that the card names. In a bend the blade stands \
             square to the tube at the ring, which is along the radius of the bend.",
        ),
        step(
            "Deburr, try the parts end to end",
            "Inside and outside. What is hatched in the picture is waste or an offcut for the shelf.",
        ),
    ];
    Sheet {
        kind: SheetKind::Cut,
        title: "How to cut from the cards".to_owned(),
        is_lying: false,
        body: Body::Made {
            blocks: vec![Block::Steps { steps }, caution(AT_THE_SAW)],
        },
    }
}

fn steps() -> Vec<Step> {
    [
        "Item is as named above, ends lettered A and B",
        "Witness line scribed from A to B",
        "All rings marked, parts named, arrows painted",
        "Sawn in the order of the numbers",
    ]
    .into_iter()
    .map(|what| Step {
        what: what.to_owned(),
        how: String::new(),
    })
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

const fn end_letter(end: StockEnd) -> &'static str {
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

fn parts(job: &PrintJob<'_>, supply: &Supply, card: &CutCard) -> Table {
    let sign = job.lengths.sign();
    let mut table = Table::new(
        "parts",
        vec![
            Column::words("part, from A on").big(),
            Column::wide("what it is"),
            Column::words("flow").big(),
            Column::figures("clock to the part before").big(),
            Column::figures(&format!("round the outside, {sign}")).big(),
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
        let (clock, round) = fit.map_or_else(
            || (String::new(), String::new()),
            |fit| {
                (
                    format!("{}°", signed_degrees(fit.clock.deg())),
                    job.lengths.saw(fit.round_outside.mm()),
                )
            },
        );
        table.row([
            part_mark(part),
            part_words(job, part),
            if part.is_reversed { "B to A" } else { "A to B" }.to_owned(),
            clock,
            round,
        ]);
    }
    table
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
            for (kept, end) in [(keeps_a, "A"), (keeps_b, "B")] {
                if kept.mm() > 0.002 {
                    text.push_str(&format!(", {} {sign} of leg {end}", l.saw(kept.mm())));
                }
            }
            text
        }
    }
}

fn picture(card: &CutCard, name: &str) -> Block {
    match card_picture(card) {
        Ok(drawing) => Block::Picture {
            picture: Picture {
                svg: to_svg(&drawing),
                width_mm: drawing.width_mm,
                height_mm: drawing.height_mm,
                words: format!("{name} from the side with its cuts"),
            },
        },
        Err(error) => Block::NotMade {
            what: "the picture of this item".to_owned(),
            why: error.to_string(),
        },
    }
}

/// The stock item from the side with its cuts and the pieces that it gives, as on the printed card.
///
/// # Errors
/// [`CardError`] for sizes that are not sound and cuts that are not on the item.
pub fn card_picture(card: &CutCard) -> Result<Drawing, CardError> {
    let (name, _) = names(card);
    let (near_leg_mm, far_leg_mm, bend_rad, clr_mm) = match card.stock.shape {
        StockShape::Straight { length } => (length.mm(), 0.0, 0.0, 0.0),
        StockShape::Bend {
            angle,
            clr,
            leg_a,
            leg_b,
        } => (leg_a.mm(), leg_b.mm(), angle.rad(), clr.mm()),
    };
    let stock = StockBend {
        od_mm: card.stock.tube.od.mm(),
        clr_mm,
        bend_rad,
        near_leg_mm,
        far_leg_mm,
    };
    let whole_mm = near_leg_mm + clr_mm * bend_rad + far_leg_mm;
    let cuts = card
        .cuts
        .iter()
        .map(|cut| CardCut {
            number: cut.number,
            along_mm: match cut.from {
                StockEnd::A => cut.reach.centre_line.mm(),
                StockEnd::B => whole_mm - cut.reach.centre_line.mm(),
            },
            kerf: match cut.kerf {
                KerfSide::TowardA => BladeSide::Near,
                KerfSide::TowardB => BladeSide::Far,
            },
            words: String::new(),
        })
        .collect();
    let mut parts = Vec::new();
    let mut at_mm = 0.0;
    let mut named: Vec<(f64, f64, String)> = card
        .parts
        .iter()
        .map(|part| {
            let [from, to] = stretch_of(part, card);
            let mark = part_mark(part);
            let arrow = if part.is_reversed {
                format!("← {mark}")
            } else {
                format!("{mark} →")
            };
            (from, to, arrow)
        })
        .collect();
    named.sort_by(|a, b| a.0.total_cmp(&b.0));
    let waste = |from_mm: f64, to_mm: f64| CardPart {
        mark: None,
        from_mm,
        to_mm,
    };
    for (from_mm, to_mm, mark) in named {
        if from_mm - at_mm > 0.01 {
            parts.push(waste(at_mm, from_mm));
        }
        parts.push(CardPart {
            mark: Some(mark),
            from_mm,
            to_mm,
        });
        at_mm = to_mm;
    }
    if whole_mm - at_mm > 0.01 {
        parts.push(waste(at_mm, whole_mm));
    }
    let item = CardItem {
        name,
        stock,
        cuts,
        parts,
    };
    cut_picture(&item, PICTURE_MM)
}

/// Where a part lies along the centre line, in mm from end A.
fn stretch_of(part: &CutPart, card: &CutCard) -> [f64; 2] {
    match (part.place, card.stock.shape) {
        (PartPlace::Bar { start, length }, _)
        | (
            PartPlace::Leg {
                end: StockEnd::A,
                start,
                length,
            },
            _,
        ) => [start.mm(), (start + length).mm()],
        (
            PartPlace::Leg {
                end: StockEnd::B,
                start,
                length,
            },
            StockShape::Bend {
                angle,
                clr,
                leg_a,
                leg_b,
            },
        ) => {
            let whole = leg_a.mm() + clr.mm() * angle.rad() + leg_b.mm();
            [whole - (start + length).mm(), whole - start.mm()]
        }
        (
            PartPlace::Arc {
                start,
                sweep,
                keeps_a,
                keeps_b,
            },
            StockShape::Bend { clr, leg_a, .. },
        ) => {
            let from = leg_a.mm() + clr.mm() * start.rad();
            [
                from - keeps_a.mm(),
                from + clr.mm() * sweep.rad() + keeps_b.mm(),
            ]
        }
        _ => [0.0, 0.0],
    }
}
