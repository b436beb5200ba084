//! How far a stock item may be off what its card was made for, before it must not be cut from that card.

use tubewright_geometry::{Angle, Length};

use super::card::{Cut, CutCard, KerfSide};
use crate::item::StockShape;
use crate::plan::{CutPart, PartPlace, StockEnd};
use crate::rules::ShopRules;

/// What an item is measured for before it is cut.
#[derive(Clone, Debug, PartialEq)]
pub enum ItemLimits {
    /// A straight.
    Bar {
        /// Shorter than this it does not give its last part.
        least: Length,
    },
    /// A bend.
    Bend {
        /// Least and greatest angle.
        angle: [Angle; 2],
        /// Most that the centre-line radius may be off.
        radius_off: Length,
        /// Shorter legs A and B do not give what is kept and sawn of them.
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

/// The limits of the item of a card. `bend_true` is how far the angle of a bend may be off its name, 19 times in 20,
/// in the error budget of the shop: a part that takes the whole arc of its item, or its middle, has the item's error.
#[must_use]
pub fn item_limits(card: &CutCard, rules: &ShopRules, bend_true: Angle) -> ItemLimits {
    let StockShape::Bend {
        angle,
        clr,
        leg_a,
        leg_b,
    } = card.stock.shape
    else {
        let ends = card.parts.iter().map(|part| match part.place {
            PartPlace::Bar { start, length } => start + length,
            PartPlace::Arc { .. } | PartPlace::Leg { .. } => Length::ZERO,
        });
        return ItemLimits::Bar {
            least: ends.fold(Length::ZERO, Length::max),
        };
    };
    let outside_mm = clr.mm() + 0.5 * card.stock.tube.od.mm();
    let inside_mm = clr.mm() - 0.5 * card.stock.tube.od.mm();
    // What a part's angle may be off, where its two faces are taped from different ends.
    let tolerance = bend_true.rad();
    let mut short_rad = tolerance;
    let mut radius_mm = MOST_RADIUS_OFF.mm();
    for cut in &card.cuts {
        let leg = match cut.from {
            StockEnd::A => leg_a,
            StockEnd::B => leg_b,
        };
        let turn_rad = (cut.reach.centre_line - leg).mm() / clr.mm();
        if turn_rad > ARC_END_RAD {
            // The ring stays in the arc, and so does its part within its angle.
            short_rad = short_rad.min(angle.rad() - turn_rad);
            radius_mm = radius_mm.min(tolerance * outside_mm / turn_rad);
        }
    }
    for gap in ring_gaps(card, rules) {
        let spare_mm = (gap.inside - gap.least).max(Length::ZERO).mm();
        if inside_mm > 0.0 {
            let spare_rad = spare_mm / inside_mm;
            short_rad = short_rad.min(spare_rad);
            radius_mm = radius_mm.min(spare_rad * outside_mm / angle.rad().max(ARC_END_RAD));
        }
    }
    ItemLimits::Bend {
        angle: [
            Angle::from_rad(angle.rad() - short_rad.max(0.0)),
            Angle::from_rad(angle.rad() + tolerance),
        ],
        radius_off: Length::from_mm(radius_mm.max(0.0)),
        legs: [
            least_leg(&card.parts, StockEnd::A, leg_a, rules.kerf),
            least_leg(&card.parts, StockEnd::B, leg_b, rules.kerf),
        ],
    }
}

/// Rings next to each other that are taped from different ends and whose kerfs lie between them.
#[must_use]
pub fn ring_gaps(card: &CutCard, rules: &ShopRules) -> Vec<RingGap> {
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
                least: rules.kerf,
            })
        })
        .collect()
}

/// An arc that ends so near to a leg ends at it, radians.
const ARC_END_RAD: f64 = 1e-6;

/// What of a leg is kept or sawn off as parts of their own, with the kerfs between them.
fn least_leg(parts: &[CutPart], leg: StockEnd, whole: Length, kerf: Length) -> Length {
    let kept = parts.iter().filter_map(|part| match part.place {
        PartPlace::Arc {
            keeps_a, keeps_b, ..
        } => Some(match leg {
            StockEnd::A => keeps_a,
            StockEnd::B => keeps_b,
        }),
        PartPlace::Bar { .. } | PartPlace::Leg { .. } => None,
    });
    let kept = kept.fold(Length::ZERO, Length::max);
    let sawn = parts.iter().filter_map(|part| match part.place {
        PartPlace::Leg { end, start, length } if end == leg => Some(start + length),
        _ => None,
    });
    let sawn = sawn.fold(Length::ZERO, Length::max);
    let is_sawn = sawn.mm() > 0.0;
    let needed = if is_sawn { sawn + kerf + kept } else { kept };
    needed.min(whole)
}
