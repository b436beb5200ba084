//! The ways of one chain in the shop's steps that end nearest to where they should.
//!
//! Once all angles are chosen the direction of the end is known, and its place is linear in the
//! lengths. So the whole steps of all angles near the present ones are searched by meeting in the
//! middle: each choice for the bends nearer the start leaves a direction that the bends nearer the
//! end must make. Every pair that does gets lengths in whole steps by the least change in real
//! numbers and the nearest corner of its cell. Nothing is linearised, so that choices far from the
//! present sizes are judged as exactly as near ones.

use tubewright_geometry::{Point, UnitVector, Vector, math};

use super::super::chain::Stance;
use super::super::layout::{Joint, Layout, Size, Slot};
use super::super::slides::Slide;
use super::ShopSteps;
use crate::problem::Component;

/// One chain with fixed ends, to be brought to whole steps.
pub(super) struct Lattice<'a> {
    pub(super) layout: &'a Layout,
    pub(super) components: &'a [Component],
    pub(super) ranges: &'a [Size],
    pub(super) clr_mm: f64,
    pub(super) start: Stance,
    pub(super) end: Point,
    pub(super) direction: UnitVector,
    /// Room that the end may lie in and turn in, where it has any.
    pub(super) room: Option<&'a Slide>,
    pub(super) steps: ShopSteps,
    /// Sizes of the closing piece (first and last) and its own steps.
    pub(super) fine: Option<((usize, usize), ShopSteps)>,
}

/// One way to round, with what it leaves at the end.
#[derive(Clone, Debug)]
pub(super) struct Way {
    pub(super) x: Vec<f64>,
    pub(super) distance_mm: f64,
    pub(super) direction_rad: f64,
    /// The less the better: error at the end, and a little for how much was changed.
    score: f64,
}

/// An end this near is as good as a fitter can set it: mm.
pub(super) const GOOD_MM: f64 = 1.0;
/// The same for the direction, radians (0.3°).
pub(super) const GOOD_RAD: f64 = 0.3 * core::f64::consts::PI / 180.0;

/// Choices of angles held for each half of a chain.
const HALF_WAYS: usize = 3000;
/// Pairs of halves that get lengths.
const MOST_PAIRS: usize = 100_000;
/// Ways given back.
const MOST_WAYS: usize = 600;
/// Steps that a clock and an angle may move from the present value.
const MOST_STEPS: [i32; 2] = [12, 5];
/// A leg shorter than this is cut off at the bend's tangent line instead, mm: nobody welds to a
/// sliver (common practice, no source).
const LEAST_LEG_MM: f64 = 5.0;
/// How far the rest of a run moves with an angle, mm a radian, where choices are ranked.
const LEVER_MM: f64 = 150.0;

struct Choice {
    size: usize,
    values: Vec<f64>,
}

/// What one choice of the angles of a half makes of it.
struct Half {
    out: Stance,
    slots: Vec<Vector>,
    moved: f64,
    number: usize,
}

struct Straight {
    size: usize,
    step: f64,
    lo: f64,
    hi: f64,
}

impl Lattice<'_> {
    /// The best ways, best first; `x` closes the chain.
    pub(super) fn ways(&self, x: &[f64]) -> Vec<Way> {
        let mut base = x.to_vec();
        let straights = self.straights(&mut base);
        let joints = self.layout.joints.len();
        let choices: Vec<Vec<Choice>> = (0..joints).map(|i| self.choices(i, &base)).collect();
        let total: usize = choices.iter().map(Vec::len).sum();
        let mut split = 0;
        let mut before = 0;
        while split < joints && 2 * before < total {
            before += choices.get(split).map_or(0, Vec::len);
            split += 1;
        }
        let mut choices = choices;
        let late: Vec<Choice> = choices.split_off(split).into_iter().flatten().collect();
        let early: Vec<Choice> = choices.into_iter().flatten().collect();
        let local = Stance {
            origin: Point::ORIGIN,
            travel: Vector::new(1.0, 0.0, 0.0),
            twelve: Vector::new(0.0, 1.0, 0.0),
        };
        let mut first = self.halves(&early, &base, self.start, 0..split, false);
        let second = self.halves(&late, &base, local, split..joints, true);
        first.sort_by(|a, b| a.moved.total_cmp(&b.moved));
        let cells = Cells::new(&second);
        let mut kept: Vec<Way> = Vec::new();
        let mut pairs = 0;
        for a in &first {
            let wanted = into(&a.out, self.direction.vector());
            let mut near: Vec<(f64, usize)> = Vec::new();
            cells.near(wanted, &mut near);
            for (_, index) in near {
                let Some(b) = second.get(index) else { continue };
                pairs += 1;
                let worst = if kept.len() < MOST_WAYS {
                    f64::INFINITY
                } else {
                    kept.last().map_or(f64::INFINITY, |k| k.score)
                };
                let Some(way) = self.joined(a, b, (&early, &late), &straights, &base, worst) else {
                    continue;
                };
                let at = kept.partition_point(|k| k.score <= way.score);
                kept.insert(at, way);
                kept.truncate(MOST_WAYS);
            }
            if pairs > MOST_PAIRS {
                break;
            }
        }
        kept
    }

    fn own_steps(&self, size: usize) -> ShopSteps {
        match self.fine {
            Some(((a, b), steps)) if (a..=b).contains(&size) => steps,
            _ => self.steps,
        }
    }

    /// Straights that may change; the others get their whole step in `base` at once.
    fn straights(&self, base: &mut [f64]) -> Vec<Straight> {
        let mut out = Vec::new();
        for (i, slot) in self.layout.slots.iter().enumerate() {
            let size = 3 * i;
            let (Some(range), Some(value)) = (self.ranges.get(size), base.get_mut(size)) else {
                continue;
            };
            if !range.is_free() {
                continue;
            }
            let step = self.own_steps(size).length_mm;
            let mut lo = range.lo;
            if *slot == Slot::Leg {
                if *value < 0.5 * LEAST_LEG_MM {
                    *value = 0.0;
                    continue;
                }
                lo = lo.max(LEAST_LEG_MM);
            }
            let (lo, hi) = (
                (lo / step - 1e-9).ceil() * step,
                (range.hi / step + 1e-9).floor() * step,
            );
            if hi < lo {
                *value = range.lo;
                continue;
            }
            out.push(Straight { size, step, lo, hi });
        }
        out
    }

    /// Values in whole steps of the angles of a joint, nearest first. A stock bend is bent to its
    /// stock angle: `base` already says so.
    fn choices(&self, joint: usize, base: &[f64]) -> Vec<Choice> {
        let Some(Joint::Bend { exact, .. }) = self.layout.joints.get(joint) else {
            return Vec::new();
        };
        let mut out = Vec::new();
        for (k, most) in [2, 1].into_iter().zip(MOST_STEPS) {
            let size = 3 * joint + k;
            if k == 1 && *exact {
                continue;
            }
            let (Some(range), Some(&value)) = (self.ranges.get(size), base.get(size)) else {
                continue;
            };
            let own = self.own_steps(size);
            let step = if k == 1 { own.angle_rad } else { own.clock_rad };
            let middle = (value.clamp(range.lo, range.hi) / step).round();
            let mut values: Vec<f64> = (-most..=most)
                .map(|n| (middle + f64::from(n)) * step)
                .filter(|v| *v >= range.lo - 1e-9 && *v <= range.hi + 1e-9)
                .collect();
            values.sort_by(|a, b| (a - value).abs().total_cmp(&(b - value).abs()));
            if values.is_empty() {
                values.push(value);
            }
            out.push(Choice { size, values });
        }
        out
    }

    /// Every choice of a half, at most [`HALF_WAYS`]: angles get fewer values when there are many.
    fn halves(
        &self,
        choices: &[Choice],
        base: &[f64],
        start: Stance,
        joints: core::ops::Range<usize>,
        is_late: bool,
    ) -> Vec<Half> {
        let counts = counts(choices);
        let total: usize = counts.iter().product();
        let mut x = base.to_vec();
        (0..total)
            .map(|number| {
                let mut moved = 0.0;
                for (size, value) in picked(choices, &counts, number) {
                    let was = base.get(size).copied().unwrap_or(value);
                    moved += LEVER_MM * (value - was).abs();
                    if let Some(slot) = x.get_mut(size) {
                        *slot = value;
                    }
                }
                let (out, slots) = self.walk(start, joints.clone(), is_late, &x);
                Half {
                    out,
                    slots,
                    moved,
                    number,
                }
            })
            .collect()
    }

    /// Walks joints with the slot before each; the late half has the last slot of the chain too.
    fn walk(
        &self,
        start: Stance,
        joints: core::ops::Range<usize>,
        is_late: bool,
        x: &[f64],
    ) -> (Stance, Vec<Vector>) {
        let size = |i: usize| x.get(i).copied().unwrap_or(0.0);
        let all = self.layout.joints.len();
        let mut slots = Vec::with_capacity(joints.len() + 1);
        let mut stance = start;
        for i in joints {
            slots.push(stance.travel);
            stance = stance.ahead(size(3 * i));
            match self.layout.joints.get(i) {
                Some(Joint::Bend { .. }) => {
                    stance = stance
                        .clocked(size(3 * i + 2))
                        .bent(size(3 * i + 1), self.clr_mm);
                }
                Some(&Joint::Component(c)) => {
                    stance = stance.ahead(self.components.get(c).map_or(0.0, |c| c.length_mm));
                }
                None => {}
            }
        }
        if is_late {
            slots.push(stance.travel);
            stance = stance.ahead(size(3 * all));
        }
        (stance, slots)
    }

    /// Lengths for a pair of halves.
    fn joined(
        &self,
        a: &Half,
        b: &Half,
        (early, late): (&[Choice], &[Choice]),
        straights: &[Straight],
        base: &[f64],
        worst: f64,
    ) -> Option<Way> {
        let travel = out_of(&a.out, b.out.travel);
        let direction = self.room.map_or(self.direction, |room| {
            room.nearest_arrival(self.direction, travel)
        });
        let direction_rad = math::atan2(
            travel.cross(direction.vector()).norm(),
            direction.dot(travel),
        );
        let arrival = a.out.origin + out_of(&a.out, b.out.origin.to_vector());
        let end = self
            .room
            .map_or(self.end, |room| room.nearest_place(arrival));
        let missing = end - arrival;
        let ways: Vec<Vector> = straights
            .iter()
            .map(|s| {
                let slot = s.size / 3;
                match a.slots.get(slot) {
                    Some(&v) => v,
                    None => b
                        .slots
                        .get(slot - a.slots.len())
                        .map_or(Vector::ZERO, |&v| out_of(&a.out, v)),
                }
            })
            .collect();
        let now: Vec<f64> = straights
            .iter()
            .map(|s| base.get(s.size).copied().unwrap_or(0.0))
            .collect();
        let wanted = least_change(&ways, &now, straights, missing);
        let (lengths, left) = nearest_corner(&ways, &now, &wanted, straights, missing);
        let distance_mm = self.room.map_or(left.norm(), |room| {
            let place = end - left;
            room.nearest_place(place).distance(place)
        });
        let moved: f64 = a.moved
            + b.moved
            + lengths
                .iter()
                .zip(&now)
                .map(|(l, n)| (l - n).abs())
                .sum::<f64>();
        let error = (distance_mm / GOOD_MM).powi(2) + (direction_rad / GOOD_RAD).powi(2);
        let score = error + 2e-4 * moved * moved;
        if score.is_nan() || score >= worst {
            return None;
        }
        let mut x = base.to_vec();
        let picks = picked(early, &counts(early), a.number)
            .into_iter()
            .chain(picked(late, &counts(late), b.number))
            .chain(straights.iter().map(|s| s.size).zip(lengths));
        for (size, value) in picks {
            if let Some(slot) = x.get_mut(size) {
                *slot = value;
            }
        }
        Some(Way {
            x,
            distance_mm,
            direction_rad,
            score,
        })
    }
}

/// A car vector in the coordinates of a stance (travel, twelve, three).
fn into(stance: &Stance, v: Vector) -> Vector {
    Vector::new(
        stance.travel.dot(v),
        stance.twelve.dot(v),
        stance.travel.cross(stance.twelve).dot(v),
    )
}

fn out_of(stance: &Stance, v: Vector) -> Vector {
    stance.travel * v.x + stance.twelve * v.y + stance.travel.cross(stance.twelve) * v.z
}

/// How many values each angle gets: one more in turn as long as the choices are few enough.
fn counts(choices: &[Choice]) -> Vec<usize> {
    let mut counts: Vec<usize> = choices.iter().map(|_| 1).collect();
    let most = choices.iter().map(|c| c.values.len()).max().unwrap_or(0);
    for more in 2..=most {
        for (i, choice) in choices.iter().enumerate() {
            if choice.values.len() < more {
                continue;
            }
            let total: usize = counts
                .iter()
                .enumerate()
                .map(|(k, c)| if k == i { more } else { *c })
                .product();
            if total > HALF_WAYS {
                return counts;
            }
            if let Some(c) = counts.get_mut(i) {
                *c = more;
            }
        }
    }
    counts
}

/// Sizes and values of choice `number`.
fn picked(choices: &[Choice], counts: &[usize], number: usize) -> Vec<(usize, f64)> {
    let mut rest = number;
    choices
        .iter()
        .zip(counts)
        .filter_map(|(choice, &count)| {
            let value = choice.values.get(rest % count).copied()?;
            rest /= count;
            Some((choice.size, value))
        })
        .collect()
}

/// Lengths in real numbers that make up what is missing with the least change, held to their ranges.
fn least_change(ways: &[Vector], now: &[f64], straights: &[Straight], missing: Vector) -> Vec<f64> {
    let mut out = now.to_vec();
    let mut held = vec![false; ways.len()];
    let mut left = missing;
    for _ in 0..3 {
        // Normal equations; the small diagonal keeps them solvable when straights are too few.
        let mut g = [[1e-6, 0.0, 0.0], [0.0, 1e-6, 0.0], [0.0, 0.0, 1e-6]];
        for (way, _) in ways.iter().zip(&held).filter(|(_, h)| !**h) {
            let t = way.to_array();
            for (row, a) in g.iter_mut().zip(t) {
                for (cell, b) in row.iter_mut().zip(t) {
                    *cell += a * b;
                }
            }
        }
        let y = solve_three(&g, left);
        let mut stopped = false;
        for (((o, way), s), h) in out.iter_mut().zip(ways).zip(straights).zip(held.iter_mut()) {
            if *h {
                continue;
            }
            let wished = *o + way.dot(y);
            let value = wished.clamp(s.lo, s.hi);
            left = left - *way * (value - *o);
            *o = value;
            if (wished - value).abs() > 1e-9 {
                *h = true;
                stopped = true;
            }
        }
        if !stopped {
            break;
        }
    }
    out
}

/// Solves a symmetric system of three by Cramer's rule.
fn solve_three(g: &[[f64; 3]; 3], b: Vector) -> Vector {
    let [r0, r1, r2] = g.map(Vector::from_array);
    let det = r0.dot(r1.cross(r2));
    if det.abs() < 1e-300 {
        return Vector::ZERO;
    }
    // Rows and columns are alike.
    Vector::new(
        b.dot(r1.cross(r2)) / det,
        r0.dot(b.cross(r2)) / det,
        r0.dot(r1.cross(b)) / det,
    )
}

/// Straights whose step below and above are both tried.
const BOTH_WAYS: usize = 6;

/// The corner of the cell of whole steps that leaves least, with what it leaves.
fn nearest_corner(
    ways: &[Vector],
    now: &[f64],
    wanted: &[f64],
    straights: &[Straight],
    missing: Vector,
) -> (Vec<f64>, Vector) {
    let mut left = missing;
    let mut lengths = Vec::with_capacity(ways.len());
    let mut open: Vec<(usize, f64, Vector, f64)> = Vec::new();
    for (i, (((way, s), n), w)) in ways.iter().zip(straights).zip(now).zip(wanted).enumerate() {
        let below = ((w / s.step).floor() * s.step).clamp(s.lo, s.hi);
        let above = (below + s.step).min(s.hi);
        let doubt = ((w - below) / s.step - 0.5).abs();
        left = left - *way * (below - n);
        lengths.push(below);
        if above > below + 1e-9 {
            open.push((i, doubt, *way * (above - below), above));
        }
    }
    open.sort_by(|a, b| a.1.total_cmp(&b.1));
    for &(i, _, change, above) in open.iter().skip(BOTH_WAYS) {
        let under = wanted
            .get(i)
            .zip(lengths.get(i))
            .map_or(0.0, |(w, l)| w - l);
        if under > 0.5 * change.norm()
            && let Some(l) = lengths.get_mut(i)
        {
            *l = above;
            left = left - change;
        }
    }
    open.truncate(BOTH_WAYS);
    let mut best = (0_u32, left);
    for pattern in 1..(1_u32 << open.len()) {
        let rest = open
            .iter()
            .enumerate()
            .filter(|(k, _)| pattern >> k & 1 == 1)
            .fold(left, |rest, (_, o)| rest - o.2);
        if rest.norm_squared() < best.1.norm_squared() {
            best = (pattern, rest);
        }
    }
    for (k, &(i, _, _, above)) in open.iter().enumerate() {
        if best.0 >> k & 1 == 1
            && let Some(l) = lengths.get_mut(i)
        {
            *l = above;
        }
    }
    (lengths, best.1)
}

/// Directions of the later half in cells of the ball, for those near a wanted one.
struct Cells {
    sorted: Vec<([i32; 3], Vector, usize)>,
}

/// Directions that count as meeting, a chord on the unit ball.
const REACH: f64 = 1.5 * GOOD_RAD;

impl Cells {
    fn new(halves: &[Half]) -> Self {
        let mut sorted: Vec<_> = halves
            .iter()
            .enumerate()
            .map(|(i, h)| (Self::cell(h.out.travel), h.out.travel, i))
            .collect();
        sorted.sort_by(|a, b| a.0.cmp(&b.0).then(a.2.cmp(&b.2)));
        Self { sorted }
    }

    #[expect(
        clippy::cast_possible_truncation,
        reason = "a unit vector over a reach"
    )]
    fn cell(v: Vector) -> [i32; 3] {
        v.to_array().map(|c| (c / REACH).floor() as i32)
    }

    /// Those within reach; when there are none, the nearest few anywhere.
    fn near(&self, wanted: Vector, out: &mut Vec<(f64, usize)>) {
        let [cx, cy, cz] = Self::cell(wanted);
        for dx in -1..=1 {
            for dy in -1..=1 {
                // Cells of one row follow each other.
                let (from, to) = ([cx + dx, cy + dy, cz - 1], [cx + dx, cy + dy, cz + 1]);
                let start = self.sorted.partition_point(|s| s.0 < from);
                for (cell, v, index) in self.sorted.iter().skip(start) {
                    if *cell > to {
                        break;
                    }
                    let apart = (*v - wanted).norm();
                    if apart <= REACH {
                        out.push((apart, *index));
                    }
                }
            }
        }
        if out.is_empty() && self.sorted.len() <= 400 {
            out.extend(
                self.sorted
                    .iter()
                    .map(|(_, v, index)| ((*v - wanted).norm(), *index)),
            );
            out.sort_by(|a, b| a.0.total_cmp(&b.0));
            out.truncate(3);
        }
    }
}
