//! What every route between two ends must do at least, and the least price of any list of bends and
//! straights that can do it.
//!
//! Turn: a curve from one place to another has a mean direction of travel, so its directions cannot
//! all lie within a cone about the first (or the last) that leaves the way from place to place
//! outside. From that and the triangle inequality on the sphere of directions follows the least total
//! turn, `2 ∠(d, way) − ∠(d0, d1)`. Distance: arcs of total turn Θ cover at most RΘ, straights their
//! length, components theirs. Derived here; no source.

use tubewright_geometry::{Vector, math};

use super::link::Link;
use super::prices::Prices;

/// Most bends that are tried one by one; more cost more, so that any number is covered by the last.
const MOST_BENDS: usize = 7;

pub(super) fn angle(a: Vector, b: Vector) -> f64 {
    math::atan2(a.cross(b).norm(), a.dot(b))
}

/// What a link must do at least.
#[derive(Clone, Copy, Debug)]
pub(super) struct Need {
    /// Distance in mm that bends and straights must cover.
    distance: f64,
    /// Turn in radians.
    turn: f64,
}

impl Need {
    pub(super) fn of(link: &Link) -> Self {
        let way = link.end - link.start;
        let doubt_mm = link.start_ball + link.end_ball;
        let between = angle(link.start_way, link.end_way);
        let free_turn = link.start_turn + link.end_turn;
        let mut turn = (between - free_turn).max(0.0);
        let apart = way.norm();
        if apart > doubt_mm {
            let doubt = math::asin((doubt_mm / apart).min(1.0)) + free_turn;
            for d in [link.start_way, link.end_way] {
                let aside = (angle(d, way) - doubt).min(math::FRAC_PI_2);
                turn = turn.max(2.0 * aside - between - free_turn);
            }
        }
        Self {
            distance: (apart - doubt_mm - link.components_mm).max(0.0),
            turn,
        }
    }

    /// The least price of `least` or more bends (`exactly`: of just as many) with straights.
    pub(super) fn price(&self, prices: &Prices, least: usize, exactly: bool) -> f64 {
        let mut best = f64::INFINITY;
        let mut search = Search {
            need: *self,
            prices,
            least,
            most: if exactly {
                least
            } else {
                MOST_BENDS.max(least)
            },
            is_open_ended: !exactly,
            best: &mut best,
        };
        search.each(0, 0, Sum::default());
        best
    }
}

/// Sums over a list of bends.
#[derive(Clone, Copy, Debug, Default)]
struct Sum {
    price: f64,
    least: f64,
    most: f64,
}

/// All lists of classes of bends, with any number of straights.
struct Search<'a> {
    need: Need,
    prices: &'a Prices,
    least: usize,
    most: usize,
    /// A full list stands for longer ones too, which turn and cover more without end.
    is_open_ended: bool,
    best: &'a mut f64,
}

impl Search<'_> {
    fn each(&mut self, class: usize, used: usize, sum: Sum) {
        if sum.price >= *self.best {
            return;
        }
        if used >= self.least {
            let price = self.list_price(used, sum);
            *self.best = self.best.min(price);
        }
        if used == self.most {
            return;
        }
        for (k, c) in self.prices.classes.iter().enumerate().skip(class) {
            let with = Sum {
                price: sum.price + c.price,
                least: sum.least + c.least,
                most: sum.most + c.most,
            };
            self.each(k, used + 1, with);
        }
    }

    fn list_price(&self, used: usize, sum: Sum) -> f64 {
        let open = self.is_open_ended && used == self.most;
        let most = if open { f64::INFINITY } else { sum.most };
        if most < self.need.turn {
            return f64::INFINITY;
        }
        let (radius, turn_price) = (self.prices.radius, self.prices.per_rad);
        let (distance, turn) = (self.need.distance, self.need.turn.max(sum.least));
        // Without any straight.
        let bare = if most * radius < distance {
            f64::INFINITY
        } else {
            turn_price * turn.max(distance / radius)
        };
        // With straights: more turn in place of length only where that pays.
        let at = |turn: f64| {
            let left = distance - radius * turn;
            turn_price * turn
                + if left > 0.0 {
                    self.prices.straight(left, f64::INFINITY)
                } else {
                    0.0
                }
        };
        let kink = (distance / radius).clamp(turn, most.max(turn));
        sum.price
            + bare
                .min(at(turn))
                .min(at(kink))
                .min(self.bought(turn, kink))
    }

    /// With a straight of any length, the turn anywhere between two values: linear, so least at one
    /// of them.
    fn bought(&self, turn: f64, kink: f64) -> f64 {
        let p = self.prices;
        let at = |turn: f64| {
            let left = (self.need.distance - p.radius * turn).max(0.0);
            p.per_rad * turn + p.straight(left.max(2e-6), f64::INFINITY)
        };
        at(turn).min(at(kink))
    }
}
