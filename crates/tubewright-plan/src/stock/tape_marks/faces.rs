//! Which cuts bound a part, and what each does to the end of its run.

use tubewright_geometry::{Vector, math};
use tubewright_stock::{
    Cut, CutCard, CutPart, PartPlace, ShopRules, StockEnd, StockPiece, StockShape,
};

use super::levers::{End, Lever, Levers};

/// What a cut does through one of the faces that it makes.
pub(super) struct Effect {
    stretch: usize,
    /// 1 when the part grows as the mark goes further from the end that its tape starts at, else -1.
    grows: f64,
    /// For each millimetre that the part grows along its centre line, and that it shrinks.
    longer: End,
    shorter: End,
}

impl Effect {
    /// Moves the ends by a mark that is `by_mm` too far along the centre line.
    pub(super) fn apply(&self, ends: &mut [End], by_mm: f64) {
        let growth = self.grows * by_mm;
        let per_mm = if growth > 0.0 {
            self.longer
        } else {
            self.shorter
        };
        if let Some(end) = ends.get_mut(self.stretch) {
            *end += per_mm * growth;
        }
    }
}

/// For each cut what it does. What bends of another radius than planned do is added to `fixed`.
pub(super) fn effects(
    card: &CutCard,
    rules: &ShopRules,
    levers: &Levers,
    fixed: &mut [End],
) -> Vec<Vec<Effect>> {
    let mut of_cuts: Vec<Vec<Effect>> = card.cuts.iter().map(|_| Vec::new()).collect();
    for part in &card.parts {
        other_radius(part, &card.stock, levers, fixed);
        let Some(extent) = Extent::of(part, card) else {
            continue;
        };
        for is_high in [false, true] {
            let at_mm = if is_high { extent.high } else { extent.low };
            let Some(index) = cut_at(card, rules, part, at_mm) else {
                continue;
            };
            // Toward end B the high face lengthens the part and the low face shortens it.
            let is_from_b = card
                .cuts
                .get(index)
                .is_some_and(|cut| cut.from == StockEnd::B);
            let grows = if is_high == is_from_b { -1.0 } else { 1.0 };
            let (Some(effect), Some(of_cut)) = (
                extent.effect(part, card, levers, is_high, grows),
                of_cuts.get_mut(index),
            ) else {
                continue;
            };
            of_cut.push(effect);
        }
    }
    of_cuts
}

/// A bend of another radius than planned moves what is behind it.
fn other_radius(part: &CutPart, stock: &StockPiece, levers: &Levers, fixed: &mut [End]) {
    let (PartPlace::Arc { sweep, .. }, StockShape::Bend { clr, .. }) = (part.place, stock.shape)
    else {
        return;
    };
    for serves in &part.serves {
        if let Some(Lever::Bend {
            stretch,
            clr_mm,
            frame_in,
            ..
        }) = levers.piece(&serves.mark)
            && let Some(end) = fixed.get_mut(*stretch)
        {
            let (sin, cos) = math::sin_cos(sweep.rad());
            *end += End {
                place: (frame_in.travel() * sin + frame_in.twelve() * (1.0 - cos))
                    * (clr.mm() - clr_mm),
                turn: Vector::ZERO,
            };
        }
    }
}

/// On what a face of a part lies.
#[derive(Clone, Copy, PartialEq)]
enum On {
    /// A straight, or the leg of a bend that serves one.
    Straight,
    /// The arc.
    Arc,
    /// Where the arc begins: further out it leaves a stub of leg.
    Tangent,
}

/// Where a part lies along the centre line from end A, mm, and on what its faces lie.
struct Extent {
    low: f64,
    high: f64,
    low_on: On,
    high_on: On,
}

impl Extent {
    fn of(part: &CutPart, card: &CutCard) -> Option<Self> {
        let whole = match card.stock.shape {
            StockShape::Straight { length } => length.mm(),
            StockShape::Bend {
                angle,
                clr,
                leg_a,
                leg_b,
            } => leg_a.mm() + clr.mm() * angle.rad() + leg_b.mm(),
        };
        let straight = |low: f64, high: f64| Self {
            low,
            high,
            low_on: On::Straight,
            high_on: On::Straight,
        };
        match (part.place, card.stock.shape) {
            (
                PartPlace::Bar { start, length }
                | PartPlace::Leg {
                    end: StockEnd::A,
                    start,
                    length,
                },
                _,
            ) => Some(straight(start.mm(), (start + length).mm())),
            (
                PartPlace::Leg {
                    end: StockEnd::B,
                    start,
                    length,
                },
                _,
            ) => Some(straight(whole - (start + length).mm(), whole - start.mm())),
            (
                PartPlace::Arc {
                    start,
                    sweep,
                    keeps_a,
                    keeps_b,
                },
                StockShape::Bend {
                    angle, clr, leg_a, ..
                },
            ) => {
                let from = leg_a.mm() + clr.mm() * start.rad();
                let on = |keeps_mm: f64, left_rad: f64| {
                    if keeps_mm > 0.0 {
                        On::Straight
                    } else if left_rad.to_degrees() > NOTHING_DEG {
                        On::Arc
                    } else {
                        On::Tangent
                    }
                };
                Some(Self {
                    low: from - keeps_a.mm(),
                    high: from + clr.mm() * sweep.rad() + keeps_b.mm(),
                    low_on: on(keeps_a.mm(), start.rad()),
                    high_on: on(keeps_b.mm(), (angle - start - sweep).rad()),
                })
            }
            _ => None,
        }
    }

    /// What a face does to the end of the run, by the piece whose size it sets.
    fn effect(
        &self,
        part: &CutPart,
        card: &CutCard,
        levers: &Levers,
        is_high: bool,
        grows: f64,
    ) -> Option<Effect> {
        let on = if is_high { self.high_on } else { self.low_on };
        // Upstream first; the flow may run from B to A.
        let is_upstream = is_high == part.is_reversed;
        let piece = match on {
            On::Straight if is_upstream => part.serves.first(),
            On::Straight => part.serves.last(),
            // The bend itself gives no length of straight.
            On::Arc | On::Tangent => part.serves.iter().find(|serves| serves.length.mm() == 0.0),
        };
        let effect = |stretch: usize, longer: End, shorter: End| Effect {
            stretch,
            grows,
            longer,
            shorter,
        };
        match (levers.piece(&piece?.mark)?, card.stock.shape) {
            (Lever::Straight { stretch, per_mm }, _) => Some(effect(*stretch, *per_mm, *per_mm)),
            (
                Lever::Bend {
                    stretch,
                    per_rad,
                    frame_in,
                    frame_out,
                    ..
                },
                StockShape::Bend { clr, .. },
            ) => {
                let arc = *per_rad * (1.0 / clr.mm());
                let travel = if is_upstream { frame_in } else { frame_out }.travel();
                let stub = End {
                    place: travel.vector(),
                    turn: Vector::ZERO,
                };
                let longer = if on == On::Tangent { stub } else { arc };
                Some(effect(*stretch, longer, arc))
            }
            (Lever::Bend { .. }, StockShape::Straight { .. }) => None,
        }
    }
}

/// The cutting plan counts in thousandths: less of an arc is none, degrees.
const NOTHING_DEG: f64 = 0.002;

/// The cut that makes this face, if it is no end of the item: its mark, or the far side of its kerf.
fn cut_at(card: &CutCard, rules: &ShopRules, part: &CutPart, at: f64) -> Option<usize> {
    let is_named = |cut: &Cut| {
        part.serves
            .iter()
            .all(|serves| cut.faces.contains(&serves.mark))
    };
    let kerf_mm = match (rules.arc_kerf(&card.stock), card.stock.shape) {
        (Some(kerf), StockShape::Bend { clr, .. }) => rules.kerf.mm().max(clr.mm() * kerf.rad()),
        _ => rules.kerf.mm(),
    };
    let whole = match card.stock.shape {
        StockShape::Straight { length } => length.mm(),
        StockShape::Bend {
            angle,
            clr,
            leg_a,
            leg_b,
        } => leg_a.mm() + clr.mm() * angle.rad() + leg_b.mm(),
    };
    let away = |cut: &Cut| {
        let from_a = match cut.from {
            StockEnd::A => cut.reach.centre_line.mm(),
            StockEnd::B => whole - cut.reach.centre_line.mm(),
        };
        (from_a - at).abs()
    };
    card.cuts
        .iter()
        .enumerate()
        .filter(|(_, cut)| is_named(cut) && away(cut) <= kerf_mm + 0.02)
        .min_by(|x, y| away(x.1).total_cmp(&away(y.1)))
        .map(|(index, _)| index)
}
