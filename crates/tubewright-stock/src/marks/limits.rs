//! How far a stock item may be off what its card was made for, before it must not be cut from that card.

use tubewright_geometry::{Angle, Length};

use super::card::{Cut, CutCard, KerfSide};
use crate::item::StockShape;
use crate::plan::{ARC_END_RAD, PartPlace, StockEnd};

/// What an item is measured for before it is cut.
#[derive(Clone, Debug, PartialEq)]
pub enum ItemLimits {
    /// A straight.
    Bar {
        /// Shorter than this it does not give its last part to what a cut may be off.
        least: Length,
    },
    /// A bend.
    Bend {
        /// Least and greatest angle.
        angle: [Angle; 2],
        /// Most that the centre-line radius may be off.
        radius_off: Length,
        /// Shorter legs A and B do not give what is kept and sawn of them, to what a cut may be off.
        legs: [Length; 2],
    },
}

/// Two rings that are taped from different ends of an item: whatever of it is off, angle, radius or legs, shows
/// between them.
#[derive(Clone, Debug, PartialEq)]
pub struct RingGap {
    /// Numbers of the cuts, the one toward end A first.
    pub between: [u32; 2],
    /// What lies between them along the inside of the bend when the item is as its card says.
    pub inside: Length,
    /// Less must not: what the saw eats.
    pub least: Length,
}

/// The radius of an item is that of its route within this, whatever it gives: more moves the ends of the bend
/// (common practice, no source).
const MOST_RADIUS_OFF: Length = Length::from_mm(2.0);

/// The limits of the item of a card. `bend_true` is how far the angle of a bend may be off its name, and `cut_length` how
/// far a length may be off its mark, each 19 times in 20, in the error budget of the shop. A part that takes the whole arc
/// of its item, or the end of it, has the item's own error; every other part has its angle from rings that are taped
/// from one end, which a radius that is off turns by a share of their place round the arc.
#[must_use]
pub fn item_limits(
    card: &CutCard,
    kerf: Length,
    bend_true: Angle,
    cut_length: Length,
) -> ItemLimits {
    let at_least = |needed: Length| (needed - cut_length).max(Length::ZERO);
    let StockShape::Bend {
        angle,
        clr,
        leg_a,
        leg_b,
    } = card.stock.shape
    else {
        let ends = card.parts.iter().filter_map(|part| match part.place {
            PartPlace::Bar { start, length } => Some(start + length),
            PartPlace::Arc { .. } | PartPlace::Leg { .. } => None,
        });
        // A part that closes is marked longer than it lies in the plan.
        let rings = card.cuts.iter().map(|cut| cut.reach.centre_line);
        return ItemLimits::Bar {
            least: at_least(ends.chain(rings).fold(Length::ZERO, Length::max)),
        };
    };
    let outside_radius = clr + card.stock.tube.od * 0.5;
    let radius_off = card.cuts.iter().fold(MOST_RADIUS_OFF, |least, cut| {
        let leg = match cut.from {
            StockEnd::A => leg_a,
            StockEnd::B => leg_b,
        };
        let turn_rad = (cut.reach.centre_line - leg).mm() / clr.mm();
        if turn_rad > ARC_END_RAD {
            least.min(outside_radius * (bend_true.rad() / turn_rad))
        } else {
            least
        }
    });
    ItemLimits::Bend {
        angle: [angle - bend_true, angle + bend_true],
        radius_off,
        legs: [(StockEnd::A, leg_a), (StockEnd::B, leg_b)]
            .map(|(end, leg)| at_least(needed_of_leg(card, end, leg, kerf))),
    }
}

/// Rings next to each other that are taped from different ends and whose kerfs lie between them.
#[must_use]
pub fn ring_gaps(card: &CutCard, kerf: Length) -> Vec<RingGap> {
    let StockShape::Bend {
        angle,
        clr,
        leg_a,
        leg_b,
    } = card.stock.shape
    else {
        return Vec::new();
    };
    let inside_radius = clr - card.stock.tube.od * 0.5;
    let whole = leg_a + inside_radius * angle.rad() + leg_b;
    let from_a = |cut: &Cut| match cut.from {
        StockEnd::A => cut.reach.inside,
        StockEnd::B => whole - cut.reach.inside,
    };
    let mut rings: Vec<&Cut> = card.cuts.iter().collect();
    rings.sort_by(|a, b| from_a(a).mm().total_cmp(&from_a(b).mm()));
    rings
        .windows(2)
        .filter_map(|pair| {
            let &[near, far] = pair else { return None };
            let is_between = near.kerf == KerfSide::TowardB && far.kerf == KerfSide::TowardA;
            (is_between && near.from != far.from).then(|| RingGap {
                between: [near.number, far.number],
                inside: from_a(far) - from_a(near),
                least: kerf,
            })
        })
        .collect()
}

/// What of a leg is kept or sawn off as parts of their own, with the kerf between them.
fn needed_of_leg(card: &CutCard, leg: StockEnd, whole: Length, kerf: Length) -> Length {
    let away = match leg {
        StockEnd::A => KerfSide::TowardA,
        StockEnd::B => KerfSide::TowardB,
    };
    let keeps = card.parts.iter().filter_map(|part| match part.place {
        PartPlace::Arc {
            keeps_a, keeps_b, ..
        } => Some(match leg {
            StockEnd::A => keeps_a,
            StockEnd::B => keeps_b,
        }),
        PartPlace::Bar { .. } | PartPlace::Leg { .. } => None,
    });
    // A part that closes is marked longer than it lies in the plan.
    let rings = card
        .cuts
        .iter()
        .filter(|cut| cut.from == leg && cut.kerf == away);
    let rings = rings.map(|cut| whole - cut.reach.centre_line);
    let kept = keeps.chain(rings).fold(Length::ZERO, Length::max);
    let sawn = card.parts.iter().filter_map(|part| match part.place {
        PartPlace::Leg { end, start, length } if end == leg => Some(start + length + kerf),
        _ => None,
    });
    let sawn = sawn.fold(Length::ZERO, Length::max);
    (sawn + kept).min(whole)
}
