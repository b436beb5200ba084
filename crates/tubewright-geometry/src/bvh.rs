//! A compact tree of bounding boxes over numbered items.
//!
//! 32 bytes a node in one flat array, boxes in single precision rounded outward (so a bound is never
//! too large), up to four items a leaf: two million triangles take 40 MB. It is our own because the
//! tree of the general collision library that judges our distances in the tests (parry3d-f64) keeps
//! one item a leaf and boxes in double precision, 128 bytes an item, and because walking it by a bound
//! for a whole segment, not for a box or a point, is what makes long tubes cheap.
//!
//! Build: binned surface-area heuristic (I. Wald, *On fast construction of SAH-based bounding volume
//! hierarchies*, 2007), with a split at the median where that fails or the tree gets too deep.

use crate::bounds::Bounds;
use crate::vector::{Point, UnitVector, Vector};

const LEAF_ITEMS: usize = 4;
const BINS: usize = 16;
/// Below this depth every split is at the median, so no tree is deeper than this plus 32.
const DEEPEST_BINNED: usize = 40;
const STACK: usize = DEEPEST_BINNED + 40;

#[derive(Clone, Copy, Debug)]
pub(crate) struct Node {
    min: [f32; 3],
    max: [f32; 3],
    /// Leaf: first place in `items`. Inner: index of the right child (the left one follows).
    first: u32,
    /// Number of items, zero for an inner node.
    count: u32,
}

#[derive(Clone, Debug, Default)]
pub(crate) struct Bvh {
    nodes: Vec<Node>,
    items: Vec<u32>,
}

#[derive(Clone, Copy)]
struct Slab {
    min: [f32; 3],
    max: [f32; 3],
}

impl Slab {
    const EMPTY: Self = Self {
        min: [f32::INFINITY; 3],
        max: [f32::NEG_INFINITY; 3],
    };

    fn of(bounds: &Bounds) -> Self {
        Self {
            min: bounds.min.to_array().map(rounded_down),
            max: bounds.max.to_array().map(rounded_up),
        }
    }

    fn join(&mut self, other: &Self) {
        for i in 0..3 {
            self.min[i] = self.min[i].min(other.min[i]);
            self.max[i] = self.max[i].max(other.max[i]);
        }
    }

    fn centre(&self, axis: usize) -> f32 {
        0.5 * self.min[axis] + 0.5 * self.max[axis]
    }

    fn half_area(&self) -> f32 {
        let [x, y, z] = [0, 1, 2].map(|i| (self.max[i] - self.min[i]).max(0.0));
        x * y + y * z + z * x
    }
}

#[expect(
    clippy::cast_possible_truncation,
    reason = "rounded outward right after"
)]
fn rounded_down(x: f64) -> f32 {
    let near = x as f32;
    if f64::from(near) > x {
        near.next_down()
    } else {
        near
    }
}

#[expect(
    clippy::cast_possible_truncation,
    reason = "rounded outward right after"
)]
fn rounded_up(x: f64) -> f32 {
    let near = x as f32;
    if f64::from(near) < x {
        near.next_up()
    } else {
        near
    }
}

impl Bvh {
    /// Builds the tree over items `0..boxes.len()`. At most `u32::MAX` items are taken.
    pub(crate) fn build(boxes: impl Iterator<Item = Bounds>) -> Self {
        let slabs: Vec<Slab> = boxes.map(|b| Slab::of(&b)).collect();
        let count = u32::try_from(slabs.len()).unwrap_or(u32::MAX);
        let mut tree = Self {
            nodes: Vec::with_capacity(slabs.len()),
            items: (0..count).collect(),
        };
        if count > 0 {
            let end = tree.items.len();
            tree.build_node(&slabs, 0, end, 0);
            tree.nodes.shrink_to_fit();
        }
        tree
    }

    fn build_node(&mut self, slabs: &[Slab], start: usize, end: usize, depth: usize) {
        let mut bounds = Slab::EMPTY;
        let mut centres = Slab::EMPTY;
        for &item in &self.items[start..end] {
            let slab = &slabs[item as usize];
            bounds.join(slab);
            let c = [0, 1, 2].map(|axis| slab.centre(axis));
            centres.join(&Slab { min: c, max: c });
        }
        let here = self.nodes.len();
        self.nodes.push(Node {
            min: bounds.min,
            max: bounds.max,
            first: index_u32(start),
            count: index_u32(end - start),
        });
        if end - start <= LEAF_ITEMS {
            return;
        }
        let middle = if depth < DEEPEST_BINNED {
            self.split_binned(slabs, start, end, &centres)
        } else {
            None
        }
        .unwrap_or_else(|| self.split_median(slabs, start, end, &centres));
        self.build_node(slabs, start, middle, depth + 1);
        let right = index_u32(self.nodes.len());
        self.build_node(slabs, middle, end, depth + 1);
        self.nodes[here].first = right;
        self.nodes[here].count = 0;
    }

    /// Partitions by the cheapest of the bin borders on the widest axis; `None` when all centres
    /// fall together.
    fn split_binned(
        &mut self,
        slabs: &[Slab],
        start: usize,
        end: usize,
        centres: &Slab,
    ) -> Option<usize> {
        let axis = widest(centres);
        let (lo, width) = (centres.min[axis], centres.max[axis] - centres.min[axis]);
        if width <= 0.0 || !width.is_finite() {
            return None;
        }
        #[expect(
            clippy::cast_possible_truncation,
            clippy::cast_sign_loss,
            reason = "a bin number between 0 and BINS - 1"
        )]
        let bin_of = |slab: &Slab| {
            let place = (slab.centre(axis) - lo) / width * BINS as f32;
            (place.max(0.0) as usize).min(BINS - 1)
        };
        let mut bins = [(Slab::EMPTY, 0_u32); BINS];
        for &item in &self.items[start..end] {
            let slab = &slabs[item as usize];
            let bin = &mut bins[bin_of(slab)];
            bin.0.join(slab);
            bin.1 += 1;
        }
        let mut right_cost = [f32::INFINITY; BINS];
        let (mut box_, mut n) = (Slab::EMPTY, 0);
        for i in (1..BINS).rev() {
            box_.join(&bins[i].0);
            n += bins[i].1;
            right_cost[i] = if n == 0 {
                f32::INFINITY
            } else {
                box_.half_area() * n as f32
            };
        }
        let (mut best, mut best_cost) = (None, f32::INFINITY);
        let (mut box_, mut n) = (Slab::EMPTY, 0);
        for i in 1..BINS {
            box_.join(&bins[i - 1].0);
            n += bins[i - 1].1;
            let cost = box_.half_area() * n as f32 + right_cost[i];
            if n > 0 && cost < best_cost {
                best = Some(i);
                best_cost = cost;
            }
        }
        let border = best?;
        let mut middle = start;
        for i in start..end {
            if bin_of(&slabs[self.items[i] as usize]) < border {
                self.items.swap(middle, i);
                middle += 1;
            }
        }
        (middle > start && middle < end).then_some(middle)
    }

    fn split_median(&mut self, slabs: &[Slab], start: usize, end: usize, centres: &Slab) -> usize {
        let axis = widest(centres);
        let half = (end - start) / 2;
        self.items[start..end].select_nth_unstable_by(half, |&i, &j| {
            let (a, b) = (&slabs[i as usize], &slabs[j as usize]);
            a.centre(axis).total_cmp(&b.centre(axis)).then(i.cmp(&j))
        });
        start + half
    }

    /// Visits the items whose box may be nearer than the limit, nearest boxes first.
    ///
    /// `bound` gives a lower bound of the squared distance for a node; `leaf` is given an item and
    /// the present limit (squared) and returns the new limit; minus infinity stops the walk.
    pub(crate) fn visit(
        &self,
        limit_squared: f64,
        bound: impl Fn(&Node) -> f64,
        mut leaf: impl FnMut(usize, f64) -> f64,
    ) {
        let Some(root) = self.nodes.first() else {
            return;
        };
        let mut limit = limit_squared;
        let mut stack = [(0_u32, 0.0_f64); STACK];
        stack[0] = (0, bound(root));
        let mut depth = 1;
        while depth > 0 {
            depth -= 1;
            let (index, nearest) = stack[depth];
            if nearest >= limit {
                continue;
            }
            let node = &self.nodes[index as usize];
            if node.count > 0 {
                let first = node.first as usize;
                for &item in &self.items[first..first + node.count as usize] {
                    limit = leaf(item as usize, limit);
                }
                continue;
            }
            let (left, right) = (index + 1, node.first);
            let left_bound = bound(&self.nodes[left as usize]);
            let right_bound = bound(&self.nodes[right as usize]);
            let (far, near) = if left_bound <= right_bound {
                ((right, right_bound), (left, left_bound))
            } else {
                ((left, left_bound), (right, right_bound))
            };
            for entry in [far, near] {
                if entry.1 < limit {
                    stack[depth] = entry;
                    depth += 1;
                }
            }
        }
    }

    #[cfg(test)]
    pub(crate) fn assert_valid(&self, boxes: &[Bounds]) {
        let mut seen = vec![false; boxes.len()];
        for node in &self.nodes {
            for &item in self
                .items
                .iter()
                .skip(node.first as usize)
                .take(node.count as usize)
            {
                let b = boxes[item as usize];
                for (i, (lo, hi)) in b
                    .min
                    .to_array()
                    .into_iter()
                    .zip(b.max.to_array())
                    .enumerate()
                {
                    assert!(f64::from(node.min[i]) <= lo && f64::from(node.max[i]) >= hi);
                }
                assert!(!seen[item as usize], "item {item} twice");
                seen[item as usize] = true;
            }
        }
        assert!(seen.iter().all(|&s| s), "an item is in no leaf");
    }
}

#[expect(
    clippy::cast_possible_truncation,
    reason = "bounded by the number of items, itself a u32"
)]
const fn index_u32(index: usize) -> u32 {
    index as u32
}

fn widest(slab: &Slab) -> usize {
    let w = [0, 1, 2].map(|i| slab.max[i] - slab.min[i]);
    if w[0] >= w[1] && w[0] >= w[2] {
        0
    } else if w[1] >= w[2] {
        1
    } else {
        2
    }
}

impl Node {
    /// Squared distance from a point to the box.
    pub(crate) fn point_bound(&self, p: Point) -> f64 {
        let p = p.to_array();
        let mut sum = 0.0;
        for (i, x) in p.into_iter().enumerate() {
            let out = (f64::from(self.min[i]) - x)
                .max(x - f64::from(self.max[i]))
                .max(0.0);
            sum += out * out;
        }
        sum
    }
}

/// A segment prepared for lower bounds against boxes.
pub(crate) struct SegmentBound {
    lo: [f64; 3],
    hi: [f64; 3],
    /// Directions square to the segment and to one coordinate axis, with the segment's place on
    /// each; a segment along that axis has none (all zero: separates nothing).
    across: [(Vector, f64); 3],
}

impl SegmentBound {
    pub(crate) fn new(a: Point, b: Point) -> Self {
        let (pa, pb) = (a.to_array(), b.to_array());
        let along = b - a;
        let across = [UnitVector::X, UnitVector::Y, UnitVector::Z].map(|axis| {
            along
                .cross(axis.vector())
                .direction()
                .map_or((Vector::ZERO, 0.0), |n| (n.vector(), n.dot(a.to_vector())))
        });
        Self {
            lo: [0, 1, 2].map(|i| pa[i].min(pb[i])),
            hi: [0, 1, 2].map(|i| pa[i].max(pb[i])),
            across,
        }
    }

    /// Lower bound of the squared distance from the segment to a node's box: the larger of the
    /// distance between the two boxes and the gaps along the three cross directions (separating
    /// axes; each gap is a true lower bound because the directions have length one).
    pub(crate) fn squared(&self, node: &Node) -> f64 {
        let mut sum = 0.0;
        let (mut centre, mut half) = ([0.0; 3], [0.0; 3]);
        for i in 0..3 {
            let (lo, hi) = (f64::from(node.min[i]), f64::from(node.max[i]));
            let out = (lo - self.hi[i]).max(self.lo[i] - hi).max(0.0);
            sum += out * out;
            centre[i] = 0.5 * (lo + hi);
            half[i] = 0.5 * (hi - lo);
        }
        let centre = Vector::from_array(centre);
        let mut widest: f64 = 0.0;
        for (n, place) in &self.across {
            let reach = half[0] * n.x.abs() + half[1] * n.y.abs() + half[2] * n.z.abs();
            widest = widest.max((n.dot(centre) - place).abs() - reach);
        }
        // One part in 1e12 is given up so that rounding in the projections cannot lift the bound.
        (sum.max(widest * widest)) * (1.0 - 1e-12)
    }
}

/// A ray prepared for box tests.
pub(crate) struct RayBound {
    origin: [f64; 3],
    inverse: [f64; 3],
}

impl RayBound {
    /// `direction` has no zero component.
    pub(crate) fn new(origin: Point, direction: Vector) -> Self {
        Self {
            origin: origin.to_array(),
            inverse: direction.to_array().map(|d| 1.0 / d),
        }
    }

    /// True when the half-line may meet the node's box.
    pub(crate) fn meets(&self, node: &Node) -> bool {
        let (mut enter, mut leave) = (0.0_f64, f64::INFINITY);
        for i in 0..3 {
            let t0 = (f64::from(node.min[i]) - self.origin[i]) * self.inverse[i];
            let t1 = (f64::from(node.max[i]) - self.origin[i]) * self.inverse[i];
            enter = enter.max(t0.min(t1));
            leave = leave.min(t0.max(t1));
        }
        enter <= leave + 1e-9 * (1.0 + leave.abs())
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_item_is_in_one_leaf_and_inside_its_boxes() {
        // A fixed scatter from a linear congruential sequence, with a heap of equal boxes in it.
        let mut state = 12_345_u64;
        let mut next = move || {
            state = state
                .wrapping_mul(6_364_136_223_846_793_005)
                .wrapping_add(1);
            (state >> 40) as f64 / 1000.0
        };
        let mut boxes = Vec::new();
        for i in 0..2000 {
            let p = if i % 3 == 0 {
                Point::new(1.0, 2.0, 3.0)
            } else {
                Point::new(next(), next(), next())
            };
            boxes.push(Bounds { min: p, max: p }.grown(0.1));
        }
        for count in [0, 1, 4, 5, 2000] {
            Bvh::build(boxes.iter().take(count).copied()).assert_valid(&boxes[..count]);
        }
    }
}
