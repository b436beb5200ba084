//! Parts that are left longer until the gap that they close is measured: what that does to the marks of their card.

use super::card_drawing::{stretch_of, whole_mm};
use super::cut_cards::part_mark;
use crate::fit::{FitSheet, FitStep};
use crate::lengths::Lengths;
use tubewright_geometry::Length;
use tubewright_stock::{CutCard, CutPart, PartPlace, StockEnd, StockShape};

/// A card with parts that close a stretch.
#[derive(Clone, Debug)]
pub struct Closing {
    /// The card with its marks where they leave these parts longer; `None` where the marks stay and what to do is
    /// in the words.
    pub card: Option<CutCard>,
    /// What that means at the saw.
    pub words: String,
}

/// What holds of a part that closes a stretch and turns it.
const TURNS: &str = " A bend that closes has this length at one end alone, and its other leg has none to spare: butt \
    that end first, and where the gap is then too wide along that leg make the part beyond it again; never pull it in.";

/// The end of a bend that is left longer, seen along the flow; none of a straight.
pub(super) fn long_end(part: &CutPart) -> Option<&'static str> {
    // Marks move away from end A of the item.
    matches!(part.place, PartPlace::Arc { .. }).then_some(if part.is_reversed {
        "upstream"
    } else {
        "downstream"
    })
}

/// Whether a step puts this part up.
pub(super) fn is_of(step: &FitStep, part: &CutPart) -> bool {
    let serves = part.serves.iter().map(|serves| serves.mark.as_str());
    serves.eq(step.marks.iter().map(String::as_str))
}

/// Which parts of a card close a stretch, and what that means at the saw, with lengths as `l` writes them; `None`
/// where none does.
#[must_use]
pub fn closing(l: Lengths, fit: &FitSheet, card: &CutCard) -> Option<Closing> {
    let mut together_mm = 0.0;
    let mut longer: Vec<(f64, f64)> = Vec::new();
    let parts: Vec<String> = card
        .parts
        .iter()
        .filter_map(|part| {
            let mut steps = fit.steps.iter();
            let step = steps.find(|step| step.trim_mm.is_some() && is_of(step, part))?;
            let trim_mm = l.up_to_tape_mm(step.trim_mm?);
            together_mm += trim_mm;
            longer.push((stretch_of(part, card)[1], trim_mm));
            Some(format!(
                "{} ({} longer{}, fit step {})",
                part_mark(part),
                l.about(trim_mm),
                long_end(part).map_or_else(String::new, |end| format!(" at its {end} end")),
                step.step.number
            ))
        })
        .collect();
    if parts.is_empty() {
        return None;
    }
    let ends_mm = card
        .parts
        .iter()
        .map(|part| stretch_of(part, card)[1])
        .fold(0.0, f64::max);
    let spare_mm = whole_mm(card) - ends_mm;
    let (one, them) = match parts.len() {
        1 => ("closes its stretch", "It is"),
        _ => ("close their stretches", "They are"),
    };
    let bent = card.parts.iter().any(|part| {
        let is_own = |step: &FitStep| is_of(step, part) && step.trim_mm.is_some();
        long_end(part).is_some() && fit.steps.iter().any(is_own)
    });
    let turns = if bent { TURNS } else { "" };
    let parts = parts.join(", ");
    let moved = with_trim(card, &longer).filter(|moved| !moved.is_empty());
    if let Some(moved) = moved.filter(|_| spare_mm >= together_mm) {
        let mut longer_card = card.clone();
        let mut told = Vec::new();
        for (at, shift_mm) in moved {
            let Some(cut) = longer_card.cuts.get_mut(at) else {
                continue;
            };
            let was_mm = cut.reach.centre_line.mm();
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
            told.push(format!("cut {} {} {}", cut.number, l.saw(was_mm), l.sign()));
        }
        return Some(Closing {
            words: format!(
                "{parts} {one}. {them} left longer until the gap is measured: THE MARKS ABOVE HOLD THAT ALREADY. Cut to \
                 the gap it would be {}.{turns}",
                told.join(", ")
            ),
            card: Some(longer_card),
        });
    }
    let room = if spare_mm >= together_mm {
        format!("The item has {} to spare.", l.about(spare_mm))
    } else {
        format!(
            "The item has only {} to spare: cut to the marks and take what is short from the shelf.",
            l.about(spare_mm.max(0.0))
        )
    };
    Some(Closing {
        card: None,
        words: format!(
            "{parts} {one}. {them} left longer until the gap is measured: add it at the part's far mark, and move \
             every mark beyond it as far. {room}{turns}"
        ),
    })
}

/// The cuts that lie elsewhere when parts are left longer: number in the card and by how much further from the end
/// that they are marked from, mm; `longer` is where each part ends from end A, mm, and by how much. None where a mark
/// would move over the arc of a bend, on which back, inside and side move differently.
fn with_trim(card: &CutCard, longer: &[(f64, f64)]) -> Option<Vec<(usize, f64)>> {
    let whole_mm = whole_mm(card);
    if let StockShape::Bend { leg_b, .. } = card.stock.shape {
        let leg_mm = whole_mm - leg_b.mm();
        let is_on_leg = longer.iter().all(|(ends_mm, _)| *ends_mm > leg_mm);
        let is_from_b = card
            .cuts
            .iter()
            .all(|cut| cut.from == StockEnd::B || cut.reach.centre_line.mm() <= leg_mm);
        if !(is_on_leg && is_from_b) {
            return None;
        }
    }
    let moved = card
        .cuts
        .iter()
        .enumerate()
        .filter_map(|(at, cut)| {
            let reach_mm = cut.reach.centre_line.mm();
            let (at_mm, sense) = match cut.from {
                StockEnd::A => (reach_mm, 1.0),
                StockEnd::B => (whole_mm - reach_mm, -1.0),
            };
            let shift_mm: f64 = longer
                .iter()
                .filter(|(ends_mm, _)| at_mm >= ends_mm - 0.01)
                .map(|(_, trim_mm)| trim_mm)
                .sum();
            (shift_mm > 0.0).then_some((at, sense * shift_mm))
        })
        .collect();
    Some(moved)
}

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

    /// A bar of 3 m: the second part, to 988.6, gets 4 longer, the third, to 1719.2, 11. What lies before the
    /// second stays; what lies beyond both moves by both. From the other end the same marks come nearer.
    #[test]
    fn marks_beyond_a_longer_part_move_with_it() {
        let bar = StockShape::Straight {
            length: Length::from_mm(3000.0),
        };
        let longer = [(988.6, 4.0), (1719.2, 11.0)];
        let marks = [346.0, 988.6, 1719.2, 2868.8];
        let from_a = card(bar, &marks.map(|mm| (StockEnd::A, mm)));
        assert_eq!(
            with_trim(&from_a, &longer).unwrap(),
            [(1, 4.0), (2, 15.0), (3, 15.0)]
        );
        let from_b = card(bar, &[(StockEnd::B, 131.2)]);
        assert_eq!(with_trim(&from_b, &longer).unwrap(), [(0, -15.0)]);
    }

    /// On the far leg a mark moves alike all round; over the arc back and inside do not, and nothing is said.
    #[test]
    fn on_a_bend_only_a_leg_gets_longer() {
        let bend = StockShape::Bend {
            angle: Angle::from_rad(core::f64::consts::FRAC_PI_2),
            clr: Length::from_mm(95.3),
            leg_a: Length::from_mm(100.0),
            leg_b: Length::from_mm(100.0),
        };
        let whole = 200.0 + 95.3 * core::f64::consts::FRAC_PI_2;
        let on_leg = card(bend, &[(StockEnd::B, 37.9)]);
        assert_eq!(
            with_trim(&on_leg, &[(whole - 37.9, 4.0)]).unwrap(),
            [(0, -4.0)]
        );
        let on_arc = card(bend, &[(StockEnd::A, 160.0)]);
        assert_eq!(with_trim(&on_arc, &[(160.0, 4.0)]), None);
    }
}
