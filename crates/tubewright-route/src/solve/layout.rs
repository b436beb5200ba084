//! What a run is made of, apart from its sizes: which joints in which order, which straights are
//! there, which bends are of a stock angle. Within one layout the cost is linear in the sizes.

use crate::cost::{CostModel, Legs};
use crate::problem::{RouteProblem, StockBend, Tube};

/// A place between two joints.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub(crate) enum Slot {
    /// Welded face to face.
    Absent,
    /// Straight made of the legs of the neighbouring stock bends.
    Leg,
    /// A bought straight.
    Bought,
}

/// A bend or a component.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub(crate) enum Joint {
    /// Bought as stock bend number `stock`; cut to a smaller angle unless `exact`.
    Bend { stock: usize, exact: bool },
    /// Component number in the problem.
    Component(usize),
}

/// Joints with the slots before, between and behind them (one more than joints).
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub(crate) struct Layout {
    pub(crate) joints: Vec<Joint>,
    pub(crate) slots: Vec<Slot>,
}

/// Range and price of one size. Sizes of a layout stand in the order slot, angle, clock, slot, ...
/// (for a component: slot, nothing, roll).
#[derive(Clone, Copy, Debug)]
pub(crate) struct Size {
    pub(crate) lo: f64,
    pub(crate) hi: f64,
    pub(crate) price: f64,
    /// Lever that makes an angle comparable to a length, mm for one unit.
    pub(crate) lever: f64,
}

/// Lever of angles in mm per radian: about how far the rest of a run moves (common practice for
/// mixed least squares, no source).
pub(crate) const ANGLE_LEVER_MM: f64 = 200.0;
/// Longest straight that is considered, mm.
const LONGEST_MM: f64 = 1e5;

impl Size {
    const FIXED_ZERO: Self = Self {
        lo: 0.0,
        hi: 0.0,
        price: 0.0,
        lever: 1.0,
    };

    pub(crate) fn is_free(&self) -> bool {
        self.hi > self.lo
    }
}

impl Layout {
    pub(crate) fn bends(&self) -> usize {
        self.joints
            .iter()
            .filter(|j| matches!(j, Joint::Bend { .. }))
            .count()
    }

    /// Number of sizes.
    pub(crate) fn sizes(&self) -> usize {
        3 * self.joints.len() + 1
    }

    /// Straight length that the legs on both sides of a slot can give, mm.
    fn legs_at(&self, slot: usize, tube: &Tube, cost: &CostModel) -> f64 {
        if cost.legs == Legs::Ignored {
            return 0.0;
        }
        let bend = |index: Option<usize>| match index.and_then(|i| self.joints.get(i)) {
            Some(&Joint::Bend { stock, exact }) => tube.stock.get(stock).map(|s| (*s, exact)),
            _ => None,
        };
        let before = match bend(slot.checked_sub(1)) {
            // A bend cut to angle is cut behind its arc: that leg is gone.
            Some((s, true)) => s.leg_out_mm,
            _ => 0.0,
        };
        let after = bend(Some(slot)).map_or(0.0, |(s, _)| s.leg_in_mm);
        before + after
    }

    /// Range and price of every size.
    pub(crate) fn ranges(
        &self,
        problem: &RouteProblem,
        tube: &Tube,
        cost: &CostModel,
    ) -> Vec<Size> {
        let rules = &problem.rules;
        let straight = cost.straight_per_mm(tube);
        let mut out = Vec::with_capacity(self.sizes());
        for (i, slot) in self.slots.iter().enumerate() {
            let legs = self.legs_at(i, tube, cost);
            out.push(match slot {
                Slot::Absent => Size::FIXED_ZERO,
                Slot::Leg => Size {
                    lo: 0.0,
                    hi: legs,
                    price: cost.flow_per_mm,
                    lever: 1.0,
                },
                Slot::Bought => Size {
                    lo: rules.min_straight_mm + legs,
                    hi: LONGEST_MM,
                    price: straight,
                    lever: 1.0,
                },
            });
            match self.joints.get(i) {
                Some(&Joint::Bend { stock, exact }) => {
                    let (lo, hi) = bend_range(problem, tube, stock, exact);
                    out.push(Size {
                        lo,
                        hi,
                        price: cost.bend_per_rad(tube),
                        lever: ANGLE_LEVER_MM,
                    });
                    out.push(Size {
                        lo: -1e3,
                        hi: 1e3,
                        price: 0.0,
                        lever: ANGLE_LEVER_MM,
                    });
                }
                Some(Joint::Component(_)) => {
                    out.push(Size::FIXED_ZERO);
                    // Roll is chosen among a few values, not slid.
                    out.push(Size {
                        lo: 0.0,
                        hi: 0.0,
                        ..Size::FIXED_ZERO
                    });
                }
                None => {}
            }
        }
        out
    }

    /// The part of the cost that does not depend on sizes: one weld for each piece, prices of bends,
    /// cuts.
    pub(crate) fn fixed_cost(&self, tube: &Tube, cost: &CostModel) -> f64 {
        let joints: f64 = self
            .joints
            .iter()
            .map(|joint| {
                cost.weld
                    + match *joint {
                        Joint::Bend { stock, exact } => {
                            tube.stock.get(stock).map_or(0.0, |s| s.price)
                                + if exact { 0.0 } else { cost.cut }
                        }
                        Joint::Component(_) => 0.0,
                    }
            })
            .sum();
        let slots: f64 = self
            .slots
            .iter()
            .enumerate()
            .filter(|(_, slot)| **slot == Slot::Bought)
            .map(|(i, _)| {
                cost.weld - self.legs_at(i, tube, cost) * tube.straight_price_per_m / 1000.0
            })
            .sum();
        joints + slots
    }

    /// The cheapest slot kind that can hold a length; `None` when none can.
    pub(crate) fn slot_for(
        &self,
        slot: usize,
        length_mm: f64,
        problem: &RouteProblem,
        tube: &Tube,
        cost: &CostModel,
    ) -> Slot {
        let legs = self.legs_at(slot, tube, cost);
        if legs > 0.0 && length_mm > 1e-6 && length_mm <= legs {
            Slot::Leg
        } else if length_mm >= problem.rules.min_straight_mm * 0.5 {
            Slot::Bought
        } else {
            Slot::Absent
        }
    }

    /// Whether a slot may be made of legs.
    pub(crate) fn has_legs(&self, slot: usize, tube: &Tube, cost: &CostModel) -> bool {
        self.legs_at(slot, tube, cost) > 0.0
    }
}

/// The angles that bend `stock` may have.
pub(crate) fn bend_range(
    problem: &RouteProblem,
    tube: &Tube,
    stock: usize,
    exact: bool,
) -> (f64, f64) {
    let rules = &problem.rules;
    // A little inside the tolerance, so that writing in degrees and reading back stays inside it.
    let uncut = rules.uncut_tolerance_rad * 0.98;
    let angle = |s: &StockBend| s.angle_rad;
    let own = tube.stock.get(stock).map_or(0.0, angle);
    if exact {
        // Never below the smallest bend that the rules allow.
        let lo = (own - uncut).max(rules.min_bend_rad.min(own));
        return (lo, own + uncut);
    }
    let below = stock
        .checked_sub(1)
        .and_then(|i| tube.stock.get(i))
        .map_or(0.0, angle);
    let wider = rules.uncut_tolerance_rad * 1.02;
    let lo = (below + wider).max(rules.min_bend_rad);
    (lo, (own - wider).max(lo))
}

/// The stock bend to buy for an angle, and whether it then needs no cut.
pub(crate) fn stock_for(tube: &Tube, angle_rad: f64, uncut_rad: f64) -> (usize, bool) {
    let index = tube
        .stock
        .iter()
        .position(|s| s.angle_rad >= angle_rad - uncut_rad)
        .unwrap_or(tube.stock.len().saturating_sub(1));
    let own = tube.stock.get(index).map_or(0.0, |s| s.angle_rad);
    (index, (own - angle_rad).abs() <= uncut_rad)
}
