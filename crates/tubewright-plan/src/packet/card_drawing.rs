//! The picture on a cut card: the item from the side, its rings, the blade's side, what each part is.

use super::cut_cards::{names, part_mark};
use crate::lengths::Lengths;
use tubewright_geometry::cut::StockBend;
use tubewright_packet::{Block, Picture};
use tubewright_sheets::{
    BladeSide, CardCut, CardError, CardItem, CardLengths, CardPart, Drawing, cut_picture, to_svg,
};
use tubewright_stock::{CutCard, CutPart, FaceBy, KerfSide, PartPlace, StockEnd, StockShape};

/// Width of the picture on the card, mm.
const PICTURE_MM: f64 = 184.0;
/// Height that leaves room on the same page for the cuts below it, mm.
const PICTURE_HIGH_MM: f64 = 92.0;

/// Length of the item along its centre line, mm.
pub(super) fn whole_mm(card: &CutCard) -> f64 {
    match card.stock.shape {
        StockShape::Straight { length } => length.mm(),
        StockShape::Bend {
            angle,
            clr,
            leg_a,
            leg_b,
        } => leg_a.mm() + clr.mm() * angle.rad() + leg_b.mm(),
    }
}

/// The picture as a block, or why there is none.
pub(super) fn picture(card: &CutCard, name: &str, lengths: Lengths) -> Block {
    match card_picture(card, lengths) {
        Ok(drawing) => Block::Picture {
            picture: Picture {
                svg: to_svg(&drawing),
                width_mm: drawing.width_mm * (PICTURE_HIGH_MM / drawing.height_mm).min(1.0),
                height_mm: drawing.height_mm.min(PICTURE_HIGH_MM),
                words: format!("{name} from the side with its cuts"),
            },
        },
        Err(error) => Block::NotMade {
            what: "the picture of this item".to_owned(),
            why: error.to_string(),
        },
    }
}

/// How lengths are written in the picture: as in the words beside it.
const fn card_lengths(lengths: Lengths) -> CardLengths {
    let sign = lengths.sign();
    match lengths {
        Lengths::Millimetres => CardLengths {
            sign,
            saw: |mm| Lengths::Millimetres.saw(mm),
            size: |mm| Lengths::Millimetres.size(mm),
        },
        Lengths::Inches => CardLengths {
            sign,
            saw: |mm| Lengths::Inches.saw(mm),
            size: |mm| Lengths::Inches.size(mm),
        },
    }
}

/// The stock item from the side with its cuts and the pieces that it gives, as on the printed card;
/// its lengths as `lengths` writes them.
///
/// # Errors
/// [`CardError`] for sizes that are not sound and cuts that are not on the item.
pub fn card_picture(card: &CutCard, lengths: Lengths) -> Result<Drawing, CardError> {
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
            kerf: match (cut.by, cut.kerf) {
                (FaceBy::Dress { .. }, _) => None,
                (FaceBy::Saw, KerfSide::TowardA) => Some(BladeSide::Near),
                (FaceBy::Saw, KerfSide::TowardB) => Some(BladeSide::Far),
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
        lengths: card_lengths(lengths),
    };
    cut_picture(&item, PICTURE_MM)
}

/// Where a part lies along the centre line, in mm from end A.
pub(super) fn stretch_of(part: &CutPart, card: &CutCard) -> [f64; 2] {
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
