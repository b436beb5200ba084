//! Parts that are left longer until the gap that they close is measured: what that does to the marks of their card.

use super::card_drawing::{stretch_of, whole_mm};
use super::cut_cards::part_mark;
use crate::fit::{FitSheet, FitStep, Trim, is_of};
use crate::lengths::Lengths;
use tubewright_geometry::Length;
use tubewright_stock::{CutCard, CutPart, StockEnd, StockShape};

/// A card with parts that close a stretch.
#[derive(Clone, Debug)]
pub struct Closing {
    /// The card with its marks where they leave these parts longer; `None` where the marks stay and what to do is
    /// in the words.
    pub card: Option<CutCard>,
    /// What that means at the saw.
    pub words: String,
}

/// A part of a card that closes its stretch, with its step and what it is left longer by.
struct Left<'a>(&'a CutPart, &'a FitStep, Trim);

/// A part that is left longer on its item.
struct Stretched {
    /// Where it lies without, along the centre line from end A, mm.
    from_mm: f64,
    to_mm: f64,
    /// By how much longer it is left toward ends A and B, mm; nothing where there is no steel for it.
    toward_a_mm: f64,
    toward_b_mm: f64,
}

/// Which parts of a card close a stretch, and what that means at the saw, with lengths as `l` writes them; `None`
/// where none does.
#[must_use]
pub fn closing(l: Lengths, fit: &FitSheet, card: &CutCard) -> Option<Closing> {
    let left: Vec<Left<'_>> = card
        .parts
        .iter()
        .filter_map(|part| {
            let is_own = |step: &&FitStep| step.trim.is_some() && is_of(part, &step.marks);
            let step = fit.steps.iter().find(is_own)?;
            Some(Left(part, step, step.trim?))
        })
        .collect();
    if left.is_empty() {
        return None;
    }
    let parts: Vec<String> = left
        .iter()
        .map(|Left(part, step, trim)| {
            format!(
                "{} ({} until its gap is measured, fit step {})",
                part_mark(part),
                trim.words(l),
                step.step.number
            )
        })
        .collect();
    let closes = match left.len() {
        1 => "closes its stretch",
        _ => "close their stretches",
    };
    let mut words = format!("{} {closes}.", parts.join(", "));
    let stretched: Vec<Stretched> = left
        .iter()
        .map(|Left(part, _, trim)| {
            let [from_mm, to_mm] = stretch_of(part, card);
            let [toward_a_mm, toward_b_mm] =
                trim.left_on_item_mm(part).map(|mm| l.up_to_tape_mm(mm));
            Stretched {
                from_mm,
                to_mm,
                toward_a_mm,
                toward_b_mm,
            }
        })
        .collect();
    let together_mm: f64 = stretched.iter().map(|part| part.toward_b_mm).sum();
    let ends = card.parts.iter().map(|part| stretch_of(part, card)[1]);
    let spare_mm = whole_mm(card) - ends.fold(0.0, f64::max);
    let is_short = is_bar(card) && together_mm > spare_mm;
    let moved = if is_short {
        Vec::new()
    } else {
        with_trims(card, &stretched)
    };
    let mut longer_card = card.clone();
    let mut told = Vec::new();
    for (at, shift_mm) in moved {
        let Some(cut) = longer_card.cuts.get_mut(at) else {
            continue;
        };
        told.push(format!(
            "cut {} {} {}",
            cut.number,
            l.saw(cut.reach.outside.mm()),
            l.sign()
        ));
        let by = Length::from_mm(shift_mm);
        let reach = &mut cut.reach;
        for side in [
            &mut reach.outside,
            &mut reach.inside,
            &mut reach.side,
            &mut reach.centre_line,
        ] {
            *side += by;
        }
    }
    if !told.is_empty() {
        words.push_str(&format!(
            " THE MARKS ABOVE HOLD THAT ALREADY; without that they would be: {}.",
            told.join(", ")
        ));
    }
    if is_short {
        words.push_str(&format!(
            " The item has only {} to spare for them together: cut to the marks, and where a gap is then too wide \
             make that part again from what is on the shelf.",
            l.about(spare_mm.max(0.0))
        ));
    }
    for Left(part, _, trim) in &left {
        if let Some(lack) = trim.lack_words(l) {
            words.push_str(&format!(" {}: {lack}", part_mark(part)));
        }
    }
    Some(Closing {
        card: (!told.is_empty()).then_some(longer_card),
        words,
    })
}

fn is_bar(card: &CutCard) -> bool {
    matches!(card.stock.shape, StockShape::Straight { .. })
}

/// The cuts that lie elsewhere when parts are left longer: number in the card and by how much further from the end
/// that they are marked from, mm. On a bar what lies beyond a longer part moves with it. On a bend only the faces of
/// the part itself move, along the leg beside them, where back, inside and side move alike.
fn with_trims(card: &CutCard, parts: &[Stretched]) -> Vec<(usize, f64)> {
    let whole_mm = whole_mm(card);
    let is_bar = is_bar(card);
    let moved_mm = |at_mm: f64, part: &Stretched| {
        let is_at = |face_mm: f64| (at_mm - face_mm).abs() < FACE_MM;
        if is_bar {
            let is_beyond = at_mm >= part.to_mm - FACE_MM;
            if is_beyond { part.toward_b_mm } else { 0.0 }
        } else if is_at(part.from_mm) {
            -part.toward_a_mm
        } else if is_at(part.to_mm) {
            part.toward_b_mm
        } else {
            0.0
        }
    };
    card.cuts
        .iter()
        .enumerate()
        .filter_map(|(at, cut)| {
            let reach_mm = cut.reach.centre_line.mm();
            let (at_mm, sense) = match cut.from {
                StockEnd::A => (reach_mm, 1.0),
                StockEnd::B => (whole_mm - reach_mm, -1.0),
            };
            let shift_mm: f64 = parts.iter().map(|part| moved_mm(at_mm, part)).sum();
            (shift_mm.abs() > FACE_MM).then_some((at, sense * shift_mm))
        })
        .collect()
}

/// A cut so near to a face makes it, mm.
const FACE_MM: f64 = 0.01;

#[cfg(test)]
mod tests {
    use super::*;
    use tubewright_geometry::Angle;
    use tubewright_stock::{Cut, FaceBy, KerfSide, Reach, Source, StockPiece, TubeSpec};

    fn card(shape: StockShape, cuts: &[(StockEnd, f64)]) -> CutCard {
        let length = Length::from_mm;
        CutCard {
            source: Source::Bought("item".to_owned()),
            number: 1,
            stock: StockPiece {
                tube: TubeSpec {
                    od: length(57.0),
                    wall: length(1.5),
                    material: "304".to_owned(),
                },
                shape,
            },
            cuts: (1..)
                .zip(cuts)
                .map(|(number, &(from, mm))| Cut {
                    number,
                    by: FaceBy::Saw,
                    from,
                    reach: Reach {
                        outside: length(mm),
                        inside: length(mm),
                        side: length(mm),
                        centre_line: length(mm),
                    },
                    kerf: KerfSide::TowardB,
                    angle: Angle::from_rad(0.0),
                    faces: Vec::new(),
                    held: length(100.0),
                })
                .collect(),
            parts: Vec::new(),
            findings: Vec::new(),
        }
    }

    fn left(from_mm: f64, to_mm: f64, [toward_a_mm, toward_b_mm]: [f64; 2]) -> Stretched {
        Stretched {
            from_mm,
            to_mm,
            toward_a_mm,
            toward_b_mm,
        }
    }

    /// A bar of 3 m: the second part, to 988.6, gets 4 longer, the third, to 1719.2, 11. What lies before the
    /// second stays; what lies beyond both moves by both. From the other end the same marks come nearer.
    #[test]
    fn marks_beyond_a_longer_part_move_with_it() {
        let bar = StockShape::Straight {
            length: Length::from_mm(3000.0),
        };
        let longer = [
            left(346.0, 988.6, [0.0, 4.0]),
            left(988.6, 1719.2, [0.0, 11.0]),
        ];
        let marks = [346.0, 988.6, 1719.2, 2868.8];
        let from_a = card(bar, &marks.map(|mm| (StockEnd::A, mm)));
        assert_eq!(
            with_trims(&from_a, &longer),
            [(1, 4.0), (2, 15.0), (3, 15.0)]
        );
        let from_b = card(bar, &[(StockEnd::B, 131.2)]);
        assert_eq!(with_trims(&from_b, &longer), [(0, -15.0)]);
    }

    /// A bend between a face on leg A, 40 from its end, and one on leg B, 38 from that: left longer at both, the
    /// marks come nearer to both ends, each by its own; a mark of another part stays.
    #[test]
    fn on_a_bend_both_faces_move_along_their_legs() {
        let bend = StockShape::Bend {
            angle: Angle::from_rad(core::f64::consts::FRAC_PI_2),
            clr: Length::from_mm(95.3),
            leg_a: Length::from_mm(100.0),
            leg_b: Length::from_mm(100.0),
        };
        let whole = 200.0 + 95.3 * core::f64::consts::FRAC_PI_2;
        let cuts = [
            (StockEnd::A, 20.0),
            (StockEnd::A, 40.0),
            (StockEnd::B, 38.0),
        ];
        let longer = [left(40.0, whole - 38.0, [3.0, 4.0])];
        assert_eq!(
            with_trims(&card(bend, &cuts), &longer),
            [(1, -3.0), (2, -4.0)]
        );
        let one_end = [left(40.0, whole - 38.0, [0.0, 4.0])];
        assert_eq!(with_trims(&card(bend, &cuts), &one_end), [(2, -4.0)]);
    }
}
