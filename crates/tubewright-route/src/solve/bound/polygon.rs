//! Branch and bound over tangent polygons of a given number of bends.
//!
//! A run of `n` bends is known by the polygon of its tangents: the first corner lies `a` ahead of the
//! start, the last `b` behind the end, those between are free. For `n = 1` and `2` that is the square
//! of `(a, b)`, for `n = 3` there are three more sizes. Over a box of these sizes each direction of a
//! side lies in a cone, so each bend's angle in an interval; from the angles follow set-backs
//! `R tan(θ/2)`, and from them what is left of each side for straights and components. Each interval
//! has its least price ([`Prices`]); their sum is below the cost of every run in the box. The box of
//! the least sum is halved until the least sum of all is as good as asked, or the effort is spent:
//! at any time the least sum of the boxes that are left is a bound (Land and Doig, "An automatic
//! method of solving discrete programming problems", Econometrica 28, 1960; intervals after Moore,
//! "Interval Analysis", 1966; the boxes and prices are derived here).
//!
//! A box is dropped when every run in it meets a body: a place that all of them pass within `dev` of,
//! and whose margin is less than the tube's radius by more than `dev` ([`super::bodies`]).

use tubewright_geometry::{Point, Vector, math};

use super::bodies::Bodies;
use super::link::Link;
use super::need::angle;
use super::prices::Prices;
use super::queue::LeastFirst;

/// Boxes are not halved below this, mm: the tolerance of an arrival blurs more.
const FINEST_MM: f64 = 0.5;

/// Most free sizes: both ends and one free corner.
const SIZES: usize = 5;

/// A corner: on a line within `along` of its middle, or in a ball.
#[derive(Clone, Copy, Debug)]
pub(super) struct Corner {
    pub(super) at: Point,
    axis: Vector,
    along: f64,
    ball: f64,
}

impl Corner {
    pub(super) const fn reach(&self) -> f64 {
        self.along + self.ball
    }
}

/// A side of the polygon.
#[derive(Clone, Copy, Debug)]
pub(super) struct Leg {
    pub(super) way: Vector,
    /// Half-angle of the cone that its direction lies in, radians.
    pub(super) cone: f64,
    pub(super) least: f64,
    pub(super) most: f64,
}

/// A polygon known up to intervals, its ends with it.
#[derive(Clone, Debug)]
pub(super) struct Shape {
    /// Start, corners, end.
    pub(super) corners: Vec<Corner>,
    /// One side between each two.
    pub(super) legs: Vec<Leg>,
    /// Least and greatest angle at each corner between, start and end left out.
    pub(super) angles: Vec<(f64, f64)>,
}

/// A box of sizes.
#[derive(Clone, Copy, Debug)]
struct Node {
    low: [f64; SIZES],
    high: [f64; SIZES],
    /// Which sharing-out of the components over the sides.
    share: usize,
}

impl Node {
    fn is_near(&self, other: &Self, mm: f64) -> bool {
        self.share == other.share
            && (0..SIZES).all(|k| {
                let middle = |n: &Self| f64::midpoint(n.low[k], n.high[k]);
                (middle(self) - middle(other)).abs() < 1.5 * mm
            })
    }
}

/// What limits a search.
#[derive(Clone, Copy, Debug)]
pub(super) struct Limit {
    /// A bound of this much is good enough.
    pub(super) enough: f64,
    /// Boxes that may be looked at.
    pub(super) boxes: usize,
}

/// A polygon that the least bound points to: a start for the search.
#[derive(Clone, Debug)]
pub(crate) struct Guide {
    /// Corners between start and end.
    pub(crate) corners: Vec<Point>,
    /// Components on each side, in order.
    pub(crate) loads: Vec<Vec<usize>>,
    /// The bend at each corner: stock number, and whether it is used as it is.
    pub(crate) bends: Vec<(usize, bool)>,
    /// For each side whether there is straight tube on it.
    pub(crate) has_straight: Vec<bool>,
}

/// Looks at a guide; what is enough from now on, when something cheaper was found from it.
pub(crate) type Follow<'f> = dyn FnMut(&Guide) -> Option<f64> + 'f;

/// Guides are taken from boxes of this width for one, two and three bends, mm.
const GUIDE_MM: [f64; 3] = [16.0, 16.0, 100.0];
/// Most guides of one number of bends.
const MOST_GUIDES: usize = 24;

/// What a search has found.
#[derive(Clone, Copy, Debug)]
pub(super) struct Found {
    /// No run costs less.
    pub(super) bound: f64,
    /// What was enough at the end.
    pub(super) enough: f64,
    /// Boxes looked at.
    pub(super) boxes: usize,
}

/// The least cost of any run with exactly `bends` bends (1 to 3) on the link, as far as can be told;
/// what is enough when it is at least that. `follow` is shown where the least bound points to.
pub(super) fn least(
    link: &Link,
    bends: usize,
    prices: &Prices,
    bodies: &Bodies<'_>,
    limit: Limit,
    follow: &mut Follow<'_>,
) -> Found {
    let search = Search {
        link,
        bends,
        prices,
        bodies,
        shares: shares(link.components.len(), bends + 1),
    };
    search.run(limit, follow)
}

/// All ways of sharing out components in order over sides: how many lie on each.
fn shares(components: usize, sides: usize) -> Vec<Vec<usize>> {
    if sides == 1 {
        return vec![vec![components]];
    }
    let mut out = Vec::new();
    for here in 0..=components {
        for rest in shares(components - here, sides - 1) {
            let mut all = vec![here];
            all.extend(rest);
            out.push(all);
        }
    }
    out
}

struct Search<'a> {
    link: &'a Link,
    bends: usize,
    prices: &'a Prices,
    bodies: &'a Bodies<'a>,
    shares: Vec<Vec<usize>>,
}

impl Search<'_> {
    fn run(&self, mut limit: Limit, follow: &mut Follow<'_>) -> Found {
        let done = |bound: f64, limit: Limit, boxes: usize| Found {
            bound,
            enough: limit.enough,
            boxes,
        };
        let Some((low, high)) = self.domain(limit.enough) else {
            return done(limit.enough, limit, 0);
        };
        let mut blurred = limit.enough;
        let mut followed: Vec<Node> = Vec::new();
        let guide_mm = GUIDE_MM.get(self.bends - 1).copied().unwrap_or(0.0);
        let mut open = LeastFirst::new();
        let mut number = 0;
        for share in 0..self.shares.len() {
            let node = Node { low, high, share };
            number += 1;
            open.push(self.price(&node), node);
        }
        while let Some((bound, node)) = open.pop() {
            if bound >= limit.enough {
                return done(limit.enough.min(blurred), limit, number);
            }
            let widest = (0..SIZES)
                .map(|k| node.high[k] - node.low[k])
                .enumerate()
                .max_by(|a, b| a.1.total_cmp(&b.1).then(b.0.cmp(&a.0)));
            let Some((k, width)) = widest else {
                return done(bound.min(blurred), limit, number);
            };
            if width < guide_mm
                && followed.len() < MOST_GUIDES
                && !followed.iter().any(|f| f.is_near(&node, guide_mm))
            {
                followed.push(node);
                if let Some(enough) = self.guide(&node).and_then(|g| follow(&g)) {
                    limit.enough = limit.enough.min(enough);
                }
            }
            if number >= limit.boxes {
                return done(bound.min(blurred), limit, number);
            }
            if width < FINEST_MM {
                // Left open for good; the others may still point to something.
                blurred = blurred.min(bound);
                continue;
            }
            let middle = f64::midpoint(node.low[k], node.high[k]);
            for upper in [false, true] {
                let mut half = node;
                if upper {
                    half.low[k] = middle;
                } else {
                    half.high[k] = middle;
                }
                number += 1;
                let half_bound = self.price(&half).max(bound);
                if half_bound < limit.enough {
                    open.push(half_bound, half);
                }
            }
        }
        done(limit.enough.min(blurred), limit, number)
    }

    /// The polygon in the middle of a box, of what its price supposes.
    fn guide(&self, node: &Node) -> Option<Guide> {
        let shape = self.shape(node)?;
        let mut bends = Vec::new();
        let mut backs = vec![(0.0, 0.0)];
        for &(low, high) in &shape.angles {
            let class = self.prices.class(low, high)?;
            bends.push((class.stock, class.exact));
            backs.push((self.prices.set_back(low), self.prices.set_back(high)));
        }
        backs.push((0.0, 0.0));
        let mut rest = self.link.components.as_slice();
        let (mut loads, mut has_straight) = (Vec::new(), Vec::new());
        for (k, leg) in shape.legs.iter().enumerate() {
            let count = self.shares.get(node.share)?.get(k).copied()?;
            let (load, after) = rest.split_at_checked(count)?;
            rest = after;
            let (a, b) = (backs.get(k)?, backs.get(k + 1)?);
            let least = leg.least - a.1 - b.1 - self.bodies.length(load);
            has_straight.push(self.prices.straight(least, f64::INFINITY) > 0.0);
            loads.push(load.to_vec());
        }
        let inner = shape.corners.len().checked_sub(1)?;
        let corners = shape.corners.get(1..inner)?.iter().map(|c| c.at).collect();
        Some(Guide {
            corners,
            loads,
            bends,
            has_straight,
        })
    }

    /// The box of all sizes that could cost less than `enough`.
    fn domain(&self, enough: f64) -> Option<([f64; SIZES], [f64; SIZES])> {
        let link = self.link;
        let per_mm = self.prices.per_mm.max(1e-4);
        let set_back = self.prices.set_back(self.prices.most_bend());
        let by_price = enough / per_mm + 2.0 * set_back + link.components_mm;
        let ahead = by_price.min(self.bodies.ahead(link) + set_back);
        let behind = by_price.min(self.bodies.behind(link) + set_back);
        if !(ahead >= 0.0 && behind >= 0.0 && by_price.is_finite()) {
            return None;
        }
        let mut low = [0.0; SIZES];
        let mut high = [ahead, behind, 0.0, 0.0, 0.0];
        if self.bends == 3 {
            let (a, b) = self.bodies.corners_within(
                link.start.lerp(link.end, 0.5),
                by_price + link.start_ball + link.end_ball,
                self.prices.radius,
            );
            for (k, (a, b)) in a.into_iter().zip(b).enumerate() {
                if a > b {
                    return None;
                }
                if let (Some(low), Some(high)) = (low.get_mut(2 + k), high.get_mut(2 + k)) {
                    (*low, *high) = (a, b);
                }
            }
        }
        Some((low, high))
    }

    fn shape(&self, node: &Node) -> Option<Shape> {
        let link = self.link;
        let middle = |k: usize| f64::midpoint(node.low[k], node.high[k]);
        let half = |k: usize| (node.high[k] - node.low[k]) / 2.0;
        let first = Corner {
            at: link.start + link.start_way * middle(0),
            axis: link.start_way,
            along: half(0),
            ball: link.start_ball + node.high[0] * link.start_turn,
        };
        let last = Corner {
            at: link.end - link.end_way * middle(1),
            axis: link.end_way,
            along: half(1),
            ball: link.end_ball + node.high[1] * link.end_turn,
        };
        let mut corners = vec![Corner {
            at: link.start,
            axis: link.start_way,
            along: 0.0,
            ball: link.start_ball,
        }];
        match self.bends {
            1 => {
                // One corner, reached from both ends.
                if first.at.distance(last.at) > first.reach() + last.reach() {
                    return None;
                }
                corners.push(if first.reach() < last.reach() {
                    first
                } else {
                    last
                });
            }
            2 => corners.extend([first, last]),
            _ => corners.extend([
                first,
                Corner {
                    at: Point::new(middle(2), middle(3), middle(4)),
                    axis: Vector::ZERO,
                    along: 0.0,
                    ball: Vector::new(half(2), half(3), half(4)).norm(),
                },
                last,
            ]),
        }
        corners.push(Corner {
            at: link.end,
            axis: link.end_way,
            along: 0.0,
            ball: link.end_ball,
        });
        let sides = corners.len() - 1;
        let mut legs = Vec::with_capacity(sides);
        for (k, pair) in corners.windows(2).enumerate() {
            let [p, q] = pair else { continue };
            legs.push(if k == 0 {
                Leg {
                    way: link.start_way,
                    cone: link.start_turn,
                    least: node.low[0],
                    most: node.high[0],
                }
            } else if k + 1 == sides {
                Leg {
                    way: link.end_way,
                    cone: link.end_turn,
                    least: node.low[1],
                    most: node.high[1],
                }
            } else {
                side(p, q)
            });
        }
        let most_bend = self.prices.most_bend();
        let mut angles = Vec::with_capacity(self.bends);
        for pair in legs.windows(2) {
            let [a, b] = pair else { continue };
            let doubt = a.cone + b.cone;
            let (low, high) = if doubt >= math::PI {
                (0.0, math::PI)
            } else {
                let turn = angle(a.way, b.way);
                ((turn - doubt).max(0.0), turn + doubt)
            };
            if low > most_bend {
                return None;
            }
            angles.push((low, high.min(most_bend)));
        }
        Some(Shape {
            corners,
            legs,
            angles,
        })
    }

    /// No run in the box costs less; infinite when there is none.
    fn price(&self, node: &Node) -> f64 {
        let Some(shape) = self.shape(node) else {
            return f64::INFINITY;
        };
        let mut total = self.prices.weld * (1.0 + self.link.components.len() as f64);
        let mut backs = vec![(0.0, 0.0)];
        for &(low, high) in &shape.angles {
            total += self.prices.bend(low, high);
            backs.push((self.prices.set_back(low), self.prices.set_back(high)));
        }
        backs.push((0.0, 0.0));
        let none = Vec::new();
        let share = self.shares.get(node.share).unwrap_or(&none);
        let mut done = 0;
        let mut loads = Vec::with_capacity(share.len());
        for (k, leg) in shape.legs.iter().enumerate() {
            let count = share.get(k).copied().unwrap_or(0);
            let load = self
                .link
                .components
                .get(done..done + count)
                .unwrap_or_default();
            done += count;
            let length = self.bodies.length(load);
            let (Some(a), Some(b)) = (backs.get(k), backs.get(k + 1)) else {
                continue;
            };
            total += self.prices.straight(
                leg.least - a.1 - b.1 - length,
                leg.most - a.0 - b.0 - length,
            );
            if !total.is_finite() {
                return total;
            }
            loads.push(load);
        }
        if self.bodies.all_meet(&shape, &backs, &loads) {
            return f64::INFINITY;
        }
        total
    }
}

/// The side between two corners: its direction turns only by what the corners move square to it.
fn side(p: &Corner, q: &Corner) -> Leg {
    let way = q.at - p.at;
    let apart = way.norm();
    let reach = p.reach() + q.reach();
    let (least, most) = ((apart - reach).max(0.0), apart + reach);
    if apart <= reach * (1.0 + 1e-9) {
        return Leg {
            way: Vector::new(1.0, 0.0, 0.0),
            cone: math::PI,
            least,
            most,
        };
    }
    let way = way / apart;
    let wide = math::asin(reach / apart);
    // How much a move along the corner's line turns the side, at most, over the whole box.
    let aside = |corner: &Corner| {
        if corner.along <= 0.0 {
            return 0.0;
        }
        let turn = angle(corner.axis, way);
        let (low, high) = (turn - wide, turn + wide);
        if low <= math::FRAC_PI_2 && high >= math::FRAC_PI_2 {
            corner.along
        } else {
            corner.along * math::sin(low).abs().max(math::sin(high).abs())
        }
    };
    let square = aside(p) + p.ball + aside(q) + q.ball;
    Leg {
        way,
        cone: wide.min(square / (apart - reach)),
        least,
        most,
    }
}
