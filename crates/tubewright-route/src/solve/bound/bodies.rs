//! Whether every run in a box of sizes meets a body, leaves the workspace or a component's zone.
//!
//! The distance to a body changes by no more than the way moved. So where all runs of a box pass
//! within `dev` of a place, and the place has less margin than the tube's radius by more than `dev`,
//! all of them are in the way. Only such places are looked at: on the sides of the tangent polygon
//! between the greatest set-backs, in the middle of each arc, and along the axes of components.

use std::borrow::Cow;

use tubewright_geometry::{Point, Vector, math};

use super::link::Link;
use super::polygon::{Leg, Shape};
use crate::problem::{Component, RouteProblem};
use crate::solve::room::Room;
use crate::solve::shots::body_radius;

/// Slack of clearances, with room to spare: the form allows 0.05 mm.
const SLACK_MM: f64 = 0.1;
/// Slack of zones, with room to spare.
const ZONE_SLACK_MM: f64 = 1e-3;
/// Finest step along a side, mm.
const STEP_MM: f64 = 6.0;
/// Farthest that a straight is followed, mm.
const FARTHEST_MM: f64 = 2e4;
/// Parts into which a component's range along a side is cut.
const PARTS: usize = 24;

/// What is in the way of one run.
pub(super) struct Bodies<'a> {
    problem: &'a RouteProblem,
    room: Cow<'a, Room>,
    /// Of the tube.
    radius: f64,
    /// Slack of clearances, with what rounding to the shop's steps may use up.
    slack: f64,
    /// A box for which more than this is unknown of a place is not looked at: no gap is wider.
    most_doubt: f64,
}

impl<'a> Bodies<'a> {
    /// Bodies that carry the run's start are left out: its first stub is not held against them.
    pub(super) fn new(
        problem: &'a RouteProblem,
        room: &'a Room,
        own_bodies: &[usize],
        radius: f64,
    ) -> Self {
        let room = if own_bodies.is_empty() {
            Cow::Borrowed(room)
        } else {
            let mut others = problem.clone();
            let mut number = 0;
            others.bodies.retain(|_| {
                number += 1;
                !own_bodies.contains(&(number - 1))
            });
            Cow::Owned(Room::new(&others))
        };
        let widest = problem.bodies.iter().map(|b| b.gap_mm).fold(0.0, f64::max);
        Self {
            problem,
            room,
            radius,
            slack: SLACK_MM + problem.rules.rounding_room_mm,
            most_doubt: radius + widest,
        }
    }

    fn component(&self, number: usize) -> Option<&Component> {
        self.problem.components.get(number)
    }

    /// Length of components together, mm.
    pub(super) fn length(&self, load: &[usize]) -> f64 {
        load.iter()
            .filter_map(|c| self.component(*c))
            .map(|c| c.length_mm)
            .sum()
    }

    fn is_met(&self, place: Point, doubt: f64) -> bool {
        self.room.margin_at(place) + doubt < self.radius - self.slack
    }

    /// How far the tube goes straight on from the start before it meets something, mm.
    pub(super) fn ahead(&self, link: &Link) -> f64 {
        self.free(link.start, link.start_way, |s| {
            link.start_ball + s * link.start_turn
        })
    }

    /// How far the tube comes straight to the end, mm.
    pub(super) fn behind(&self, link: &Link) -> f64 {
        self.free(link.end, link.end_way * -1.0, |s| {
            link.end_ball + s * link.end_turn
        })
    }

    fn free(&self, from: Point, way: Vector, doubt: impl Fn(f64) -> f64) -> f64 {
        let mut s = 0.0;
        while s < FARTHEST_MM {
            let spare = self.room.margin_at(from + way * s) + doubt(s) - (self.radius - self.slack);
            if spare < 0.0 {
                return s;
            }
            s += spare.max(STEP_MM / 4.0);
        }
        FARTHEST_MM
    }

    /// The box that corners of the polygon may lie in: within `reach` of a place, and no further out
    /// of the workspace than the corner of a square bend of the radius is off its arc.
    pub(super) fn corners_within(
        &self,
        middle: Point,
        reach: f64,
        clr: f64,
    ) -> ([f64; 3], [f64; 3]) {
        let mut low = middle.to_array().map(|x| x - reach);
        let mut high = middle.to_array().map(|x| x + reach);
        if let Some(w) = self.problem.workspace {
            let out = clr * (2.0_f64.sqrt() - 1.0) + 1.0 - self.radius;
            for (low, w) in low.iter_mut().zip(w.min.to_array()) {
                *low = low.max(w - out);
            }
            for (high, w) in high.iter_mut().zip(w.max.to_array()) {
                *high = high.min(w + out);
            }
        }
        (low, high)
    }

    /// Whether all runs of the shape are in the way of something. `backs` are least and greatest
    /// set-backs at every corner, `loads` the components on every side.
    pub(super) fn all_meet(&self, shape: &Shape, backs: &[(f64, f64)], loads: &[&[usize]]) -> bool {
        for (k, leg) in shape.legs.iter().enumerate() {
            let (Some(p), Some(q)) = (shape.corners.get(k), shape.corners.get(k + 1)) else {
                continue;
            };
            let (Some(&a), Some(&b)) = (backs.get(k), backs.get(k + 1)) else {
                continue;
            };
            if self.side_meets(leg, (p.at, p.reach()), (q.at, q.reach()), a.1, b.1) {
                return true;
            }
            let load = loads.get(k).copied().unwrap_or_default();
            if !load.is_empty() && !self.load_fits(leg, p.at, p.reach(), a.0, b.0, load) {
                return true;
            }
        }
        shape.angles.iter().enumerate().any(|(k, angles)| {
            let (Some(before), Some(after), Some(corner)) = (
                shape.legs.get(k),
                shape.legs.get(k + 1),
                shape.corners.get(k + 1),
            ) else {
                return false;
            };
            self.arc_meets(before, after, corner.at, corner.reach(), *angles, backs, k)
        })
    }

    fn side_meets(
        &self,
        leg: &Leg,
        (p, p_reach): (Point, f64),
        (q, q_reach): (Point, f64),
        a: f64,
        b: f64,
    ) -> bool {
        // Shares of the side that lie between the bends in every run.
        if leg.least <= a + b {
            return false;
        }
        let (from, to) = (a / leg.least, 1.0 - b / leg.least);
        let length = p.distance(q);
        if length < 1e-6 || p_reach.min(q_reach) > self.most_doubt {
            return false;
        }
        let mut t = from;
        while t <= to {
            let doubt = (1.0 - t) * p_reach + t * q_reach;
            let mut step = STEP_MM;
            if doubt < self.most_doubt {
                let spare = self.room.margin_at(p.lerp(q, t)) + doubt - (self.radius - self.slack);
                if spare < 0.0 {
                    return true;
                }
                step = step.max(0.7 * spare);
            }
            t += step / length;
        }
        false
    }

    /// The middle of an arc lies `R (1/cos(θ/2) − 1)` from its corner, toward the inside.
    #[expect(clippy::too_many_arguments, reason = "one call, plainer than a struct")]
    fn arc_meets(
        &self,
        before: &Leg,
        after: &Leg,
        corner: Point,
        reach: f64,
        (low, high): (f64, f64),
        backs: &[(f64, f64)],
        k: usize,
    ) -> bool {
        let Some(&(least, most)) = backs.get(k + 1) else {
            return false;
        };
        let inward = after.way - before.way;
        let size = inward.norm();
        if size < 1e-9 {
            return self.is_met(corner, reach + most);
        }
        // R (1/cos − 1) = R tan(θ/2) tan(θ/4).
        let off = |back: f64, angle: f64| back * math::tan(angle / 4.0);
        let (near, far) = (off(least, low), off(most, high));
        let turned = if low > 1e-3 {
            ((before.cone + after.cone) / (2.0 * math::sin(low / 2.0))).min(2.0)
        } else {
            2.0
        };
        let doubt = reach + (far - near) / 2.0 + far * turned;
        if doubt > self.most_doubt {
            return false;
        }
        let place = corner + inward / size * f64::midpoint(near, far);
        self.is_met(place, doubt)
    }

    /// Whether the components of one side can lie on it in order, each in its zone and clear.
    fn load_fits(
        &self,
        leg: &Leg,
        from: Point,
        reach: f64,
        a: f64,
        b: f64,
        load: &[usize],
    ) -> bool {
        let total = self.length(load);
        let (mut before, mut after) = (0.0, total);
        for &number in load {
            let Some(component) = self.component(number) else {
                continue;
            };
            after -= component.length_mm;
            let low = a + before;
            let high = leg.most - b - after - component.length_mm;
            before += component.length_mm;
            if !self.component_fits(component, leg, from, reach, (low, high)) {
                return false;
            }
        }
        true
    }

    /// Whether a component can begin somewhere between two distances along a side.
    fn component_fits(
        &self,
        component: &Component,
        leg: &Leg,
        from: Point,
        reach: f64,
        (mut low, mut high): (f64, f64),
    ) -> bool {
        if low > high + ZONE_SLACK_MM {
            return false;
        }
        let length = component.length_mm;
        let doubt = reach + (high + length) * leg.cone.min(2.0);
        if let Some(zone) = component.zone {
            // Both ends of the axis in the box, each coordinate on its own.
            let (start, way) = (from.to_array(), leg.way.to_array());
            let (min, max) = (zone.min.to_array(), zone.max.to_array());
            for k in 0..3 {
                let (Some(&p), Some(&d), Some(&lo), Some(&hi)) =
                    (start.get(k), way.get(k), min.get(k), max.get(k))
                else {
                    continue;
                };
                for end in [0.0, length] {
                    let near = lo - doubt - ZONE_SLACK_MM - p - d * end;
                    let far = hi + doubt + ZONE_SLACK_MM - p - d * end;
                    if d.abs() < 1e-9 {
                        if near > 1e-6 || far < -1e-6 {
                            return false;
                        }
                        continue;
                    }
                    let (one, two) = (near / d, far / d);
                    low = low.max(one.min(two));
                    high = high.min(one.max(two));
                }
            }
            if low > high + ZONE_SLACK_MM {
                return false;
            }
        }
        let radius = body_radius(component.section);
        let part = (high - low).max(0.0) / PARTS as f64;
        let doubt = reach + (high.max(0.0) + length) * leg.cone.min(2.0) + part / 2.0;
        if doubt > self.most_doubt + radius {
            return true;
        }
        let out = radius.min(length / 2.0);
        let balls = [out, length / 2.0, length - out];
        (0..PARTS).any(|k| {
            let at = low + (k as f64 + 0.5) * part;
            balls.iter().all(|ball| {
                let place = from + leg.way * (at + ball);
                self.room.margin_at(place) + doubt >= radius - self.slack
            })
        })
    }
}
