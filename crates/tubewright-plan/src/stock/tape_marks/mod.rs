//! Saw marks as a tape can show them.
//!
//! A mark is printed to a division of the tape. Rounded one by one the remainders pile up: a mark in an
//! arc that is 0.05 mm off turns everything behind it by 0.025°, a millimetre at two metres. So the
//! divisions of all marks are chosen together, each the one below or the one above its place, so that
//! every run ends where it was planned to; what is left is told with the cards.
//!
//! Method: the end of a run moves in proportion to what each mark is off by (second order is below a
//! hundredth of a millimetre); the choice is a small closest-vector problem, searched by turning over
//! one mark and two marks at a time until nothing gets better. Common practice, no source.

mod faces;
mod levers;
mod search;

use tubewright_geometry::Length;
use tubewright_stock::{Cut, CutCard, Reach, ShopRules, StockEnd, StockShape};

use crate::routes::PlannedRun;
use faces::effects;
use levers::{End, Levers};
use search::{Choice, chosen};

/// How far from where it was planned to a run ends when every mark is met as it is printed.
#[derive(Clone, Debug, PartialEq)]
pub struct Followed {
    /// The run.
    pub run: String,
    /// The crossover that ends this stretch of it; `None` for the stretch to the run's end.
    pub up_to: Option<String>,
    /// Distance in mm.
    pub end_mm: f64,
    /// Angle of the direction in radians.
    pub end_rad: f64,
}

/// Puts every mark of the cards on a division of the tape
/// ([`Lengths::saw_division_mm`](crate::lengths::Lengths::saw_division_mm)) and says where the runs then end. Inside and
/// side are read at the same place as outside, each to its own nearest division.
#[must_use]
pub fn on_the_tape(
    cards: &mut [CutCard],
    rules: &ShopRules,
    runs: &[PlannedRun],
    division_mm: f64,
) -> Vec<Followed> {
    let levers = Levers::of(runs);
    let mut fixed = vec![End::ZERO; levers.stretches.len()];
    let mut choices = Vec::new();
    let mut divisions = Vec::new();
    for card in cards.iter() {
        let of_cuts = effects(card, rules, &levers, &mut fixed);
        for (cut, effects) in card.cuts.iter().zip(of_cuts) {
            let at = cut.reach.outside.mm() / division_mm;
            // A mark on a division stays there.
            let (below, above) = if (at - at.round()).abs() < 1e-5 {
                (at.round(), at.round())
            } else {
                (at.floor(), at.floor() + 1.0)
            };
            let off = |division: f64| {
                centre_line_at(card, cut, division * division_mm) - cut.reach.centre_line.mm()
            };
            choices.push(Choice {
                effects,
                below: off(below),
                above: off(above),
            });
            divisions.push([below, above]);
        }
    }
    let (is_above, ends) = chosen(&choices, &fixed);
    let mut readings = divisions
        .into_iter()
        .zip(is_above)
        .map(|([below, above], is_above)| if is_above { above } else { below } * division_mm);
    for card in cards.iter_mut() {
        let reaches: Vec<Reach> = card
            .cuts
            .iter()
            .zip(&mut readings)
            .map(|(cut, outside_mm)| read_at(card, cut, outside_mm, division_mm))
            .collect();
        for (cut, reach) in card.cuts.iter_mut().zip(reaches) {
            cut.reach = reach;
        }
    }
    levers
        .stretches
        .iter()
        .zip(ends)
        .map(|(stretch, end)| Followed {
            run: stretch.run.clone(),
            up_to: stretch.up_to.clone(),
            end_mm: end.place.norm(),
            end_rad: end.turn.norm(),
        })
        .collect()
}

/// The leg before the arc on the way of the tape, the radius of the bend and of its tube, mm; `None` on
/// a straight.
fn on_bend(card: &CutCard, cut: &Cut) -> Option<[f64; 3]> {
    match card.stock.shape {
        StockShape::Bend {
            clr, leg_a, leg_b, ..
        } => {
            let leg = match cut.from {
                StockEnd::A => leg_a,
                StockEnd::B => leg_b,
            };
            Some([leg.mm(), clr.mm(), 0.5 * card.stock.tube.od.mm()])
        }
        StockShape::Straight { .. } => None,
    }
}

/// Where a reading along the outside lies along the centre line, mm.
fn centre_line_at(card: &CutCard, cut: &Cut, outside_mm: f64) -> f64 {
    match on_bend(card, cut) {
        Some([leg_mm, clr_mm, r_mm]) if outside_mm > leg_mm => {
            leg_mm + (outside_mm - leg_mm) * clr_mm / (clr_mm + r_mm)
        }
        _ => outside_mm,
    }
}

/// The readings of all lines for one along the outside.
fn read_at(card: &CutCard, cut: &Cut, outside_mm: f64, division_mm: f64) -> Reach {
    let to_division = |mm: f64| Length::from_mm((mm / division_mm).round() * division_mm);
    let centre_mm = centre_line_at(card, cut, outside_mm);
    let inside_mm = match on_bend(card, cut) {
        Some([leg_mm, clr_mm, r_mm]) if outside_mm > leg_mm => {
            leg_mm + (outside_mm - leg_mm) * (clr_mm - r_mm) / (clr_mm + r_mm)
        }
        _ => outside_mm,
    };
    Reach {
        outside: Length::from_mm(outside_mm),
        inside: to_division(inside_mm),
        side: to_division(centre_mm),
        centre_line: Length::from_mm(centre_mm),
    }
}
