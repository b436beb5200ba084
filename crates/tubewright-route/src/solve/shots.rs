//! Random starts: tangent polylines thrown round a guide path, ranked by a rough price before any is
//! mended.

use tubewright_geometry::{Point, Vector, math};

use super::field::Field;
use super::layout::{Layout, stock_for};
use super::polyline::{Ends, Fit, Placed, Polyline};
use super::random::Random;
use crate::cost::CostModel;
use crate::problem::{Placement, RouteProblem, Section, Tube};

/// What a thrown start is made from.
pub(crate) struct Aim<'a> {
    pub(crate) problem: &'a RouteProblem,
    pub(crate) cost: &'a CostModel,
    pub(crate) tube: &'a Tube,
    pub(crate) ends: Ends,
    /// Places from start to end, at least two.
    pub(crate) guide: &'a [Point],
    /// Components that this chain carries, in order.
    pub(crate) components: &'a [usize],
    /// How far corners stray from the guide, mm.
    pub(crate) stray: f64,
}

/// A start worth mending.
#[derive(Clone, Debug)]
pub(crate) struct Shot {
    pub(crate) layout: Layout,
    pub(crate) x: Vec<f64>,
    pub(crate) score: f64,
}

/// Sharpest bend of a shot, a little over a right angle: mending brings it back.
const SHARPEST_RAD: f64 = 1.75;
/// Spacing of the places looked up along a shot, mm.
const LOOK_MM: f64 = 35.0;

impl Aim<'_> {
    /// Throws one polyline with `bends` corners.
    pub(crate) fn throw(&self, random: &mut Random, bends: usize) -> Polyline {
        let ends = &self.ends;
        let (s, e) = (ends.start.origin, ends.end);
        let (d0, d1) = (ends.start.travel, ends.end_direction.vector());
        let clr = self.tube.clr_mm;
        let span = s.distance(e);
        let lead = |random: &mut Random| {
            if random.unit() < 0.6 {
                random.between(0.1, 1.1) * clr
            } else {
                random.between(0.2, 0.6) * span.max(clr)
            }
        };
        let mut corners = Vec::with_capacity(bends);
        if bends == 1 {
            corners.push(nearest_to_both(s, d0, e, d1));
        } else if bends >= 2 {
            let mut shares: Vec<f64> = (0..bends - 2).map(|_| random.unit()).collect();
            shares.sort_by(f64::total_cmp);
            corners.push(s + d0 * lead(random));
            for share in shares {
                let jitter = Vector::new(random.bell(), random.bell(), random.bell());
                corners.push(along(self.guide, share) + jitter * self.stray);
            }
            corners.push(e - d1 * lead(random));
        }
        let mut placed = Vec::new();
        let mut side = 0;
        for &component in self.components {
            let Some(part) = self.problem.components.get(component) else {
                continue;
            };
            if part.placement == Placement::AtStart {
                placed.push(Placed {
                    component,
                    side: 0,
                    from: 0.0,
                });
                continue;
            }
            side += random.below(bends + 1 - side);
            placed.push(Placed {
                component,
                side,
                from: f64::NAN,
            });
            if let Some(zone) = part.zone {
                // Draw the side through the zone where its corners are free to move.
                let pick = |random: &mut Random| {
                    let t = [random.unit(), random.unit(), random.unit()];
                    let (lo, hi) = (zone.min.to_array(), zone.max.to_array());
                    let at = |k: usize| -> f64 {
                        match (lo.get(k), hi.get(k), t.get(k)) {
                            (Some(l), Some(h), Some(t)) => l + (h - l) * t,
                            _ => 0.0,
                        }
                    };
                    Point::new(at(0), at(1), at(2))
                };
                let (mut a, mut b) = (pick(random), pick(random));
                if (b - a).dot(e - s) < 0.0 {
                    core::mem::swap(&mut a, &mut b);
                }
                if let Some(u) = (b - a).direction() {
                    let middle = a.lerp(b, 0.5);
                    let half = part.length_mm / 2.0;
                    let out = [random.between(0.2, 1.2), random.between(0.2, 1.2)];
                    if side >= 2
                        && let Some(c) = corners.get_mut(side - 1)
                    {
                        *c = middle - u * (half + out[0] * clr);
                    }
                    if side >= 1
                        && side + 1 < bends
                        && let Some(c) = corners.get_mut(side)
                    {
                        *c = middle + u * (half + out[1] * clr);
                    }
                }
            }
        }
        let mut line = Polyline { corners, placed };
        self.place_components(random, &mut line);
        line
    }

    /// Gives each component that has none a place on its side: by its zone, else at random.
    fn place_components(&self, random: &mut Random, line: &mut Polyline) {
        let ends = self.ends;
        let clr = self.tube.clr_mm;
        let corner = |i: usize, line: &Polyline| line.corners.get(i).copied();
        let mut used: Vec<f64> = Vec::new();
        for k in 0..line.placed.len() {
            let Some(p) = line.placed.get(k).copied() else {
                continue;
            };
            let from = if p.side == 0 {
                ends.start.origin
            } else {
                corner(p.side - 1, line).unwrap_or(ends.start.origin)
            };
            let to = corner(p.side, line).unwrap_or(ends.end);
            let length = from.distance(to);
            let after = used
                .get(k.wrapping_sub(1))
                .copied()
                .filter(|_| {
                    k > 0
                        && line
                            .placed
                            .get(k - 1)
                            .is_some_and(|before| before.side == p.side)
                })
                .unwrap_or(if p.side == 0 { 0.0 } else { 0.4 * clr });
            let Some(part) = self.problem.components.get(p.component) else {
                used.push(after);
                continue;
            };
            let mut at = p.from;
            if at.is_nan() {
                let free = (length - part.length_mm - after - 0.4 * clr).max(0.0);
                at = match (part.zone, (to - from).direction()) {
                    (Some(zone), Some(u)) => {
                        let middle = zone.min.lerp(zone.max, 0.5);
                        (u.dot(middle - from) - part.length_mm / 2.0).max(after)
                    }
                    _ => {
                        let t = match random.below(3) {
                            0 => 0.0,
                            1 => 1.0,
                            _ => random.unit(),
                        };
                        after + t * free
                    }
                };
            }
            if let Some(slot) = line.placed.get_mut(k) {
                slot.from = at;
            }
            used.push(at + part.length_mm);
        }
    }

    /// Fits and prices a polyline; `None` when it is hopeless.
    pub(crate) fn rate(
        &self,
        line: &Polyline,
        field: &Field<'_>,
        worst: f64,
    ) -> Option<(f64, Fit)> {
        let fit = line.fit(self.problem, &self.ends, self.tube.clr_mm, SHARPEST_RAD)?;
        let cost = self.price(&fit);
        let mut score = cost + 0.15 * fit.short;
        if score > worst {
            return None;
        }
        score += 0.25 * self.overlap(line, &fit, field, (worst - score) / 0.25)?;
        Some((score, fit))
    }

    /// Makes a start of a rated polyline.
    pub(crate) fn finish(&self, line: &Polyline, fit: &Fit, score: f64) -> Option<Shot> {
        let (layout, x) = line.to_chain(self.problem, self.tube, self.cost, &self.ends, fit)?;
        Some(Shot { layout, x, score })
    }

    fn price(&self, fit: &Fit) -> f64 {
        let cost = self.cost;
        let uncut = self.problem.rules.uncut_tolerance_rad;
        let mut sum = cost.weld;
        for &angle in &fit.angles {
            let (stock, exact) = stock_for(self.tube, angle, uncut);
            sum += self.tube.stock.get(stock).map_or(0.0, |s| s.price);
            sum += cost.weld + if exact { 0.0 } else { cost.cut };
            sum += angle * cost.bend_per_rad(self.tube);
        }
        for &slot in &fit.slots {
            if slot > 0.5 * self.problem.rules.min_straight_mm {
                sum += cost.weld + slot * cost.straight_per_mm(self.tube);
            }
        }
        sum
    }

    /// How deep the run would lie in bodies, summed in mm over places looked up; `None` past `most`.
    fn overlap(&self, line: &Polyline, fit: &Fit, field: &Field<'_>, most: f64) -> Option<f64> {
        let radius = self.tube.od_mm / 2.0;
        let clr = self.tube.clr_mm;
        let mut deep = 0.0;
        let mut from = self.ends.start.origin;
        let mut back = 0.0;
        let sides = line.corners.len() + 1;
        for side in 0..sides {
            let to = line.corners.get(side).copied().unwrap_or(self.ends.end);
            let ahead = fit
                .angles
                .get(side)
                .map_or(0.0, |a| clr * math::tan(a / 2.0));
            let length = from.distance(to);
            let u = (to - from) / length.max(1e-9);
            let mut at = back;
            let last = (length - ahead).max(back);
            loop {
                let body = line
                    .placed
                    .iter()
                    .filter(|p| p.side == side)
                    .filter_map(|p| {
                        let part = self.problem.components.get(p.component)?;
                        let inside = at >= p.from && at <= p.from + part.length_mm;
                        inside.then(|| body_radius(part.section))
                    })
                    .fold(radius, f64::max);
                deep += (body - field.margin(from + u * at)).max(0.0);
                if deep > most {
                    return None;
                }
                if at >= last {
                    break;
                }
                at = (at + LOOK_MM).min(last);
            }
            if let (Some(angle), Some(next)) = (fit.angles.get(side), {
                let after = line.corners.get(side + 1).copied().unwrap_or(self.ends.end);
                (after - to).direction()
            }) {
                // Middle of the bend.
                if let Some(inward) = (next.vector() - u).direction() {
                    let depth = clr / math::cos(angle / 2.0) - clr;
                    deep += (radius - field.margin(to + inward * depth)).max(0.0);
                }
            }
            from = to;
            back = ahead;
        }
        Some(deep)
    }
}

pub(crate) fn body_radius(section: Section) -> f64 {
    match section {
        Section::Round { diameter_mm } => diameter_mm / 2.0,
        Section::Oval { height_mm, .. } => height_mm / 2.0,
    }
}

/// The place nearest to the line on from `s` and the line back from `e`.
fn nearest_to_both(s: Point, d0: Vector, e: Point, d1: Vector) -> Point {
    let w = s - e;
    let b = d0.dot(d1);
    let (d, f) = (d0.dot(w), d1.dot(w));
    let under = 1.0 - b * b;
    if under < 1e-9 {
        return s.lerp(e, 0.5);
    }
    let a = (b * f - d) / under;
    let c = (f - b * d) / under;
    (s + d0 * a).lerp(e + d1 * c, 0.5)
}

/// The place at a share of a path's length.
pub(crate) fn along(path: &[Point], share: f64) -> Point {
    let total: f64 = path
        .windows(2)
        .map(|w| match w {
            [a, b] => a.distance(*b),
            _ => 0.0,
        })
        .sum();
    let mut left = share * total;
    for pair in path.windows(2) {
        let [a, b] = pair else { continue };
        let length = a.distance(*b);
        if left <= length && length > 0.0 {
            return a.lerp(*b, left / length);
        }
        left -= length;
    }
    path.last().copied().unwrap_or(Point::ORIGIN)
}
