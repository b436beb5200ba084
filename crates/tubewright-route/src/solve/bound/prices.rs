//! The least that bends and straights cost when only intervals of their sizes are known.

use tubewright_geometry::math;

use crate::cost::{CostModel, Legs};
use crate::problem::{RouteProblem, Tube};

/// Lengths nearer to zero than this are no straight, mm.
const NOTHING_MM: f64 = 1e-6;

/// A way of buying a bend: a stock bend as it is, or cut to a smaller angle.
#[derive(Clone, Copy, Debug)]
pub(super) struct Class {
    /// Least angle, radians.
    pub(super) least: f64,
    /// Greatest angle, radians.
    pub(super) most: f64,
    /// Stock price, cut and weld.
    pub(super) price: f64,
    /// Number of the stock bend, and whether it is used as it is.
    pub(super) stock: usize,
    pub(super) exact: bool,
}

/// Prices of one tube under one cost model.
#[derive(Clone, Debug)]
pub(super) struct Prices {
    pub(super) classes: Vec<Class>,
    /// Turning and length of each radian of bend.
    pub(super) per_rad: f64,
    pub(super) radius: f64,
    pub(super) weld: f64,
    /// A mm of bought straight.
    pub(super) per_mm: f64,
    /// A mm that a leg serves for.
    leg_per_mm: f64,
    /// Longest straight that the legs of two bends can give, mm, and what that much costs to buy.
    legs_mm: f64,
    legs_price: f64,
    least_straight: f64,
}

impl Prices {
    pub(super) fn of(problem: &RouteProblem, tube: &Tube, cost: &CostModel) -> Self {
        let uncut = problem.rules.uncut_tolerance_rad;
        let smallest = problem.rules.min_bend_rad;
        let mut classes = Vec::new();
        let mut below = 0.0_f64;
        for (number, stock) in tube.stock.iter().enumerate() {
            let price = cost.weld + stock.price;
            classes.push(Class {
                least: smallest.max(stock.angle_rad - uncut),
                most: stock.angle_rad + uncut,
                price,
                stock: number,
                exact: true,
            });
            classes.push(Class {
                least: smallest.max(below - uncut),
                most: stock.angle_rad,
                price: price + cost.cut,
                stock: number,
                exact: false,
            });
            below = stock.angle_rad;
        }
        classes.retain(|c| c.least <= c.most);
        let legs_mm = match cost.legs {
            Legs::Ignored => 0.0,
            Legs::ServeAsStraight => {
                let longest = |leg: fn(&crate::problem::StockBend) -> f64| {
                    tube.stock.iter().map(leg).fold(0.0, f64::max)
                };
                longest(|s| s.leg_in_mm) + longest(|s| s.leg_out_mm)
            }
        };
        Self {
            classes,
            per_rad: cost.bend_per_rad(tube),
            radius: tube.clr_mm,
            weld: cost.weld,
            per_mm: cost.straight_per_mm(tube),
            leg_per_mm: cost.flow_per_mm,
            legs_mm,
            legs_price: legs_mm * tube.straight_price_per_m / 1000.0,
            least_straight: problem.rules.min_straight_mm,
        }
    }

    /// Greatest angle of one bend, radians.
    pub(super) fn most_bend(&self) -> f64 {
        self.classes.iter().map(|c| c.most).fold(0.0, f64::max)
    }

    /// Set-back `R tan(θ/2)` of an angle up to the greatest.
    pub(super) fn set_back(&self, angle: f64) -> f64 {
        self.radius * math::tan(angle.clamp(0.0, self.most_bend()) / 2.0)
    }

    /// A bend (its weld with it) of an angle somewhere in an interval; infinite when none can be.
    pub(super) fn bend(&self, low: f64, high: f64) -> f64 {
        self.classes
            .iter()
            .filter(|c| c.least <= high && c.most >= low)
            .map(|c| c.price + self.per_rad * c.least.max(low))
            .fold(f64::INFINITY, f64::min)
    }

    /// The class that [`Self::bend`] has found cheapest.
    pub(super) fn class(&self, low: f64, high: f64) -> Option<&Class> {
        let price = |c: &Class| c.price + self.per_rad * c.least.max(low);
        self.classes
            .iter()
            .filter(|c| c.least <= high && c.most >= low)
            .min_by(|a, b| price(a).total_cmp(&price(b)))
    }

    /// What stands between two set-backs when its length is somewhere in an interval: nothing, a leg,
    /// or a bought straight with its weld; infinite when none can be.
    pub(super) fn straight(&self, low: f64, high: f64) -> f64 {
        if high < -NOTHING_MM {
            return f64::INFINITY;
        }
        if low <= NOTHING_MM {
            return 0.0;
        }
        let by_leg = if low <= self.legs_mm {
            self.leg_per_mm * low
        } else {
            f64::INFINITY
        };
        let bought = if high < self.least_straight - NOTHING_MM {
            f64::INFINITY
        } else {
            self.weld + self.per_mm * low.max(self.least_straight) - self.legs_price
        };
        by_leg.min(bought.max(self.leg_per_mm * low))
    }
}
