//! The shop's figures for cutting.

use tubewright_geometry::{Angle, Length};

use crate::bend_cut::kerf_angles;
use crate::item::{StockPiece, StockShape};
use crate::money::Money;

/// How much of a bend one saw cut takes.
///
/// A saw slot has parallel faces. When one of them is square to the tube the other lies a kerf k
/// beside it, at radius ρ at the angle `asin(k/ρ)` (closed form).
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum KerfRule {
    /// `k/R` on the centre line: the usual shop figure. The second face is out of square by
    /// `asin(k/R)` and the fit-up takes it.
    Nominal,
    /// `asin(k/(R - OD/2))`: the second piece can be trimmed square again.
    SquareFaces,
}

/// What the shop's saw does and holds.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct ShopRules {
    /// Width of the saw cut.
    pub kerf: Length,
    /// How a cut through a bend is planned.
    pub kerf_rule: KerfRule,
    /// Shortest tube that the saw can hold, along the centre line.
    pub least_grip: Length,
    /// Largest outside diameter that the saw takes.
    pub saw_capacity: Length,
    /// Cut from each end of a bought straight before anything else.
    pub end_trim: Length,
    /// A bend serves when its centre-line radius is within this of the run's.
    pub clr_tolerance: Length,
    /// Shortest part of a straight that is left on a leg when two legs share it: a weld closer to
    /// the arc is hard to reach.
    pub least_leg: Length,
}

impl ShopRules {
    /// Kerf 2 mm square-faced, grip 60 mm, saw to 115 mm, no end trim, radius within 1 mm, shared
    /// legs from 10 mm: common practice, no source. To be shown and edited, not assumed.
    #[must_use]
    pub const fn common_practice() -> Self {
        Self {
            kerf: Length::from_mm(2.0),
            kerf_rule: KerfRule::SquareFaces,
            least_grip: Length::from_mm(60.0),
            saw_capacity: Length::from_mm(115.0),
            end_trim: Length::from_mm(0.0),
            clr_tolerance: Length::from_mm(1.0),
            least_leg: Length::from_mm(10.0),
        }
    }

    /// What one cut through the arc of a bend takes; `None` when the radius does not exceed half
    /// the tube by more than the kerf (no such bend exists).
    #[must_use]
    pub fn arc_kerf(&self, stock: &StockPiece) -> Option<Angle> {
        let StockShape::Bend { clr, .. } = stock.shape else {
            return None;
        };
        let kerf = kerf_angles(clr, stock.tube.od, self.kerf)?;
        Some(match self.kerf_rule {
            KerfRule::Nominal => kerf.nominal,
            KerfRule::SquareFaces => kerf.inside,
        })
    }
}

/// Prices of work.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Rates {
    /// One weld, fit-up included. Its currency is that of the plan.
    pub weld: Money,
}
