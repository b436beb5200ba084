//! Many bodies at once, each with the gap that it asks for.

use super::dispatch::point_to_solid;
use super::stretch::all_stretches;
use super::{Clearance, clearance_below, is_clear};
use crate::bounds::Bounds;
use crate::box_tree::{BoxTree, SegmentBound};
use crate::cloud::PointCloud;
use crate::solid::Solid;
use crate::tube::TubeElement;
use crate::vector::Point;
use std::sync::Arc as Shared;

/// A body and the gap that a tube must keep from it.
#[derive(Clone, Debug)]
pub struct Obstacle {
    /// The body.
    pub solid: Solid,
    /// Required gap in mm, outside of the tube to the body.
    pub gap_mm: f64,
}

/// The tightest body of a set.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct SetClearance {
    /// Which obstacle, counted in the order they were given.
    pub body: usize,
    /// Gap less the required gap in mm, negative when too near. Never larger than the true one.
    pub margin_mm: f64,
    /// The gap itself and its place. `part` counts within a mesh or cloud, or the member of a union.
    pub clearance: Clearance,
}

/// Bodies prepared for many queries: unions taken apart, clouds given a tree, boxes round all.
///
/// Plain data, never changed by a query: it may be shared between threads.
#[derive(Clone, Debug)]
pub struct SolidSet {
    parts: Vec<Part>,
    /// Parts without end come first; the tree is over the rest.
    unbounded: usize,
    tree: BoxTree,
    bodies: usize,
}

#[derive(Clone, Debug)]
struct Part {
    body: usize,
    member: Option<usize>,
    solid: Solid,
    gap_mm: f64,
}

impl SolidSet {
    /// Prepares the obstacles. Solids are taken over (meshes and clouds are shared, not copied,
    /// except that a plain `Cloud` is given a tree).
    #[must_use]
    pub fn new(obstacles: impl IntoIterator<Item = Obstacle>) -> Self {
        let mut parts = Vec::new();
        let mut bodies = 0;
        for (body, obstacle) in obstacles.into_iter().enumerate() {
            bodies = body + 1;
            flatten(obstacle.solid, obstacle.gap_mm, body, None, &mut parts);
        }
        let (mut all, bounded): (Vec<Part>, Vec<Part>) = parts
            .into_iter()
            .partition(|part| part.solid.bounds().is_none());
        let unbounded = all.len();
        let tree = BoxTree::build(bounded.iter().map(|part| {
            part.solid
                .bounds()
                .unwrap_or(Bounds::EMPTY)
                .grown(part.gap_mm.max(0.0))
        }));
        all.extend(bounded);
        Self {
            parts: all,
            unbounded,
            tree,
            bodies,
        }
    }

    /// Number of obstacles given.
    #[must_use]
    pub const fn len(&self) -> usize {
        self.bodies
    }

    /// True when no obstacle was given.
    #[must_use]
    pub const fn is_empty(&self) -> bool {
        self.bodies == 0
    }

    /// True when the tube keeps its gap from every body.
    #[must_use]
    pub fn is_clear(&self, tube: &TubeElement) -> bool {
        self.first_blocking(tube).is_none()
    }

    /// Some body that the tube is too near to; `None` when it is clear of all. Which one is fixed by
    /// the set and the tube, but it need not be the tightest.
    #[must_use]
    pub fn first_blocking(&self, tube: &TubeElement) -> Option<usize> {
        let blocked = |part: &&Part| !is_clear(tube, &part.solid, part.gap_mm);
        let (unbounded, bounded) = self.parts.split_at(self.unbounded);
        if let Some(part) = unbounded.iter().find(blocked) {
            return Some(part.body);
        }
        let reach = Reach::new(tube);
        let mut found = None;
        self.tree.visit(
            reach.limit(tube.radius),
            |node| reach.squared(node),
            |index, limit| match bounded.get(index).filter(blocked) {
                Some(part) => {
                    found = Some(part.body);
                    f64::NEG_INFINITY
                }
                None => limit,
            },
        );
        found
    }

    /// The body with the least margin (gap less required gap); `None` when the set is empty or no
    /// margin is below `limit_mm`. `tolerance_mm` as in [`super::clearance`].
    #[must_use]
    pub fn tightest(
        &self,
        tube: &TubeElement,
        tolerance_mm: f64,
        limit_mm: f64,
    ) -> Option<SetClearance> {
        let mut best: Option<SetClearance> = None;
        let mut try_part = |part: &Part| {
            let limit = best.map_or(limit_mm, |b| b.margin_mm);
            if let Some(clearance) =
                clearance_below(tube, &part.solid, tolerance_mm, limit + part.gap_mm)
                && clearance.gap_mm - part.gap_mm < limit
            {
                best = Some(SetClearance {
                    body: part.body,
                    margin_mm: clearance.gap_mm - part.gap_mm,
                    clearance: Clearance {
                        part: part.member.or(clearance.part),
                        ..clearance
                    },
                });
            }
            best.map_or(limit_mm, |b| b.margin_mm)
        };
        let (unbounded, bounded) = self.parts.split_at(self.unbounded);
        let mut limit = limit_mm;
        for part in unbounded {
            limit = try_part(part);
        }
        let reach = Reach::new(tube);
        self.tree.visit(
            reach.limit(limit + tube.radius),
            |node| reach.squared(node),
            |index, present| match bounded.get(index) {
                Some(part) => reach.limit(try_part(part) + tube.radius),
                None => present,
            },
        );
        best
    }

    /// The margin to every body that is below `limit_mm`, one entry a body (its tightest part), in
    /// the order of the bodies.
    #[must_use]
    pub fn all_below(
        &self,
        tube: &TubeElement,
        tolerance_mm: f64,
        limit_mm: f64,
    ) -> Vec<SetClearance> {
        let mut found: Vec<Option<SetClearance>> = vec![None; self.bodies];
        let reach = Reach::new(tube);
        let mut try_part = |part: &Part| {
            let Some(slot) = found.get_mut(part.body) else {
                return;
            };
            let limit = slot.map_or(limit_mm, |b| b.margin_mm);
            if let Some(clearance) =
                clearance_below(tube, &part.solid, tolerance_mm, limit + part.gap_mm)
                && clearance.gap_mm - part.gap_mm < limit
            {
                *slot = Some(SetClearance {
                    body: part.body,
                    margin_mm: clearance.gap_mm - part.gap_mm,
                    clearance: Clearance {
                        part: part.member.or(clearance.part),
                        ..clearance
                    },
                });
            }
        };
        let (unbounded, bounded) = self.parts.split_at(self.unbounded);
        unbounded.iter().for_each(&mut try_part);
        self.tree.visit(
            reach.limit(limit_mm + tube.radius),
            |node| reach.squared(node),
            |index, limit| {
                if let Some(part) = bounded.get(index) {
                    try_part(part);
                }
                limit
            },
        );
        found.into_iter().flatten().collect()
    }

    /// Distance less required gap, least over all bodies, for a bare point (a tube of no size): the
    /// value of a clearance field. Exact to rounding; plus infinity for an empty set. It changes by
    /// at most the distance moved, so a tube of radius `r` whose centre line stays within `m` mm of
    /// `point` is clear when this is at least `r + m`.
    #[must_use]
    pub fn margin_at(&self, point: Point) -> f64 {
        let (unbounded, bounded) = self.parts.split_at(self.unbounded);
        let margin = |part: &Part| point_to_solid(point, &part.solid) - part.gap_mm;
        let mut least = unbounded.iter().map(margin).fold(f64::INFINITY, f64::min);
        self.tree.visit(
            squared_limit(least),
            |node| node.point_bound(point),
            |index, present| match bounded.get(index) {
                Some(part) => {
                    least = least.min(margin(part));
                    squared_limit(least)
                }
                None => present,
            },
        );
        least
    }
}

/// A node's box, grown by the required gap, bounds distance less gap from below only outside the
/// box, where it is positive; inside, the margin may be anything. So a limit at or below zero still
/// lets through the nodes whose bound is zero.
fn squared_limit(limit_mm: f64) -> f64 {
    if limit_mm > 0.0 {
        (limit_mm * limit_mm).max(f64::MIN_POSITIVE)
    } else {
        f64::MIN_POSITIVE
    }
}

fn flatten(solid: Solid, gap_mm: f64, body: usize, member: Option<usize>, parts: &mut Vec<Part>) {
    match solid {
        Solid::Union(members) => {
            for (index, inner) in members.into_iter().enumerate() {
                flatten(inner, gap_mm, body, member.or(Some(index)), parts);
            }
        }
        Solid::Cloud { points, radius } => {
            let solid = match PointCloud::new(points.to_vec(), radius) {
                Some(cloud) => Solid::PointCloud(Shared::new(cloud)),
                None => Solid::Cloud { points, radius },
            };
            parts.push(Part {
                body,
                member,
                solid,
                gap_mm,
            });
        }
        solid => parts.push(Part {
            body,
            member,
            solid,
            gap_mm,
        }),
    }
}

/// A tube's centre line as up to eight chords, for bounds against boxes.
struct Reach {
    chords: [Option<SegmentBound>; super::arc::MOST_PIECES],
    slack_mm: f64,
}

impl Reach {
    fn new(tube: &TubeElement) -> Self {
        let mut chords = [const { None }; super::arc::MOST_PIECES];
        let mut slack_mm = 0.0_f64;
        let mut slots = chords.iter_mut();
        all_stretches(&tube.line, |stretch| {
            let chord = stretch.chord();
            slack_mm = slack_mm.max(chord.slack_mm);
            if let Some(slot) = slots.next() {
                *slot = Some(SegmentBound::new(chord.a, chord.b));
            }
            true
        });
        Self { chords, slack_mm }
    }

    fn squared(&self, slab: &crate::box_tree::Slab) -> f64 {
        self.chords
            .iter()
            .flatten()
            .map(|chord| chord.squared(slab))
            .fold(f64::INFINITY, f64::min)
    }

    fn limit(&self, limit_mm: f64) -> f64 {
        let reach = limit_mm.max(0.0) + self.slack_mm;
        squared_limit(reach)
    }
}
