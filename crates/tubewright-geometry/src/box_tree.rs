//! A tree of bounding boxes over numbered items, walked by any lower bound, nearest boxes first.
//!
//! The tree is an R*-tree of the crate `rstar`, loaded in bulk (T. Lee and S. Lee, *OMT: Overlap
//! minimizing top-down bulk loading algorithm for R-tree*, CAiSE 2003), which stays balanced
//! whatever the boxes are: equal, on one line, or two million of them. Boxes are in single precision
//! rounded outward, so that a bound is never too large. Ours is what it lacks: the walk by a bound
//! for a whole length of tube, with a limit that falls as nearer items are found.

use rstar::{AABB, ParentNode, RStarInsertionStrategy, RTree, RTreeNode, RTreeObject};
use smallvec::SmallVec;

use crate::bounds::Bounds;
use crate::vector::{Point, UnitVector, Vector};

/// Most children of a node.
const FANOUT: usize = 8;

#[derive(Clone, Copy, Debug)]
struct Fanout;

impl rstar::RTreeParams for Fanout {
    const MIN_SIZE: usize = FANOUT / 2;
    const MAX_SIZE: usize = FANOUT;
    const REINSERTION_COUNT: usize = 1;
    type DefaultInsertionStrategy = RStarInsertionStrategy;
}

/// An item's box and its number.
#[derive(Clone, Copy, Debug)]
struct Item {
    slab: Slab,
    number: u32,
}

impl RTreeObject for Item {
    type Envelope = AABB<[f32; 3]>;

    #[inline]
    fn envelope(&self) -> Self::Envelope {
        AABB::from_bounds(self.slab.min, self.slab.max)
    }
}

/// A box in single precision.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Slab {
    min: [f32; 3],
    max: [f32; 3],
}

impl Slab {
    fn of(bounds: &Bounds) -> Self {
        Self {
            min: bounds.min.to_array().map(rounded_down),
            max: bounds.max.to_array().map(rounded_up),
        }
    }

    fn of_node(node: &ParentNode<Item>) -> Self {
        let envelope = node.envelope();
        Self {
            min: envelope.lower(),
            max: envelope.upper(),
        }
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

/// The tree.
#[derive(Clone, Debug)]
pub(crate) struct BoxTree {
    tree: RTree<Item, Fanout>,
}

impl BoxTree {
    /// Builds the tree over items `0..boxes.len()`, whose boxes are finite. At most `u32::MAX` items
    /// are taken.
    pub(crate) fn build(boxes: impl Iterator<Item = Bounds>) -> Self {
        let items = (0..u32::MAX)
            .zip(boxes)
            .map(|(number, bounds)| Item {
                slab: Slab::of(&bounds),
                number,
            })
            .collect();
        Self {
            tree: RTree::bulk_load_with_params(items),
        }
    }

    /// Visits the items whose box may be nearer than the limit, nearest boxes first.
    ///
    /// `bound` gives a lower bound of the squared distance for a box; `leaf` is given an item and
    /// the present limit (squared) and returns the new limit; minus infinity stops the walk.
    pub(crate) fn visit(
        &self,
        limit_squared: f64,
        bound: impl Fn(&Slab) -> f64,
        mut leaf: impl FnMut(usize, f64) -> f64,
    ) {
        if self.tree.size() > 0 {
            walk(self.tree.root(), limit_squared, &bound, &mut leaf);
        }
    }
}

/// Walks the children of a node; returns the limit that is left.
fn walk(
    parent: &ParentNode<Item>,
    mut limit: f64,
    bound: &impl Fn(&Slab) -> f64,
    leaf: &mut impl FnMut(usize, f64) -> f64,
) -> f64 {
    // The bulk load may leave a node a few children more than the fan-out.
    let mut inner: SmallVec<[(f64, &ParentNode<Item>); 2 * FANOUT]> = SmallVec::new();
    for child in parent.children() {
        match child {
            RTreeNode::Leaf(item) => {
                if bound(&item.slab) < limit {
                    limit = leaf(item.number as usize, limit);
                }
            }
            RTreeNode::Parent(child) => {
                let nearest = bound(&Slab::of_node(child));
                if nearest < limit {
                    inner.push((nearest, child));
                }
            }
        }
    }
    inner.sort_unstable_by(|a, b| a.0.total_cmp(&b.0));
    for (nearest, child) in inner {
        if nearest >= limit {
            break;
        }
        limit = walk(child, limit, bound, leaf);
    }
    limit
}

impl Slab {
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
    start: Point,
    along: Vector,
    /// One over the squared length; zero for a segment without length.
    inverse_squared: f64,
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
        let length_squared = along.norm_squared();
        let inverse_squared = if length_squared > 0.0 {
            1.0 / length_squared
        } else {
            0.0
        };
        Self {
            start: a,
            along,
            // Of a segment shorter than its square can be told it is infinite: then the ends alone count.
            inverse_squared: if inverse_squared.is_finite() {
                inverse_squared
            } else {
                0.0
            },
            lo: [0, 1, 2].map(|i| pa[i].min(pb[i])),
            hi: [0, 1, 2].map(|i| pa[i].max(pb[i])),
            across,
        }
    }

    /// Lower bound of the squared distance from the segment to a box: the largest of the distance
    /// between the two boxes, the gaps along the three cross directions and the gap along the way from
    /// the segment to the middle of the box (each gap is a true lower bound because the directions have
    /// length one).
    ///
    /// The last is what the others are not, within the size of the box of the true distance: without it
    /// a segment at a slant sees boxes nearer by a share of the distance, however small they are, and a
    /// walk visits a share of all items.
    pub(crate) fn squared(&self, slab: &Slab) -> f64 {
        let mut sum = 0.0;
        let (mut centre, mut half) = ([0.0; 3], [0.0; 3]);
        for i in 0..3 {
            let (lo, hi) = (f64::from(slab.min[i]), f64::from(slab.max[i]));
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
        widest = widest.max(self.gap_toward(centre, half));
        // One part in 1e12 is given up so that rounding in the projections cannot lift the bound.
        (sum.max(widest * widest)) * (1.0 - 1e-12)
    }

    /// The gap along the way from the segment's nearest place to the middle of a box.
    fn gap_toward(&self, centre: Vector, half: [f64; 3]) -> f64 {
        let off = centre - self.start.to_vector();
        let t = (off.dot(self.along) * self.inverse_squared).clamp(0.0, 1.0);
        let off = off - self.along * t;
        let distance = off.norm();
        if distance <= 0.0 {
            return 0.0;
        }
        // No place of the segment lies further along that way than the nearest, but for rounding.
        let lean = off.dot(self.along);
        let further = (lean * (1.0 - t)).max(-lean * t);
        let reach = half[0] * off.x.abs() + half[1] * off.y.abs() + half[2] * off.z.abs();
        // What rounding may have put on either of what is taken from each other is given up.
        distance * (1.0 - 1e-12) - (reach + further) / distance * (1.0 + 1e-12)
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

    /// True when the half-line may meet the box.
    pub(crate) fn meets(&self, slab: &Slab) -> bool {
        let (mut enter, mut leave) = (0.0_f64, f64::INFINITY);
        for i in 0..3 {
            let t0 = (f64::from(slab.min[i]) - self.origin[i]) * self.inverse[i];
            let t1 = (f64::from(slab.max[i]) - self.origin[i]) * self.inverse[i];
            enter = enter.max(t0.min(t1));
            leave = leave.min(t0.max(t1));
        }
        enter <= leave + 1e-9 * (1.0 + leave.abs())
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    /// The items that a walk with this limit visits, as often as it does.
    fn visited(tree: &BoxTree, limit_squared: f64, bound: impl Fn(&Slab) -> f64) -> Vec<usize> {
        let mut seen = Vec::new();
        tree.visit(limit_squared, bound, |item, limit| {
            seen.push(item);
            limit
        });
        seen.sort_unstable();
        seen
    }

    fn boxes() -> impl Strategy<Value = Vec<Bounds>> {
        let place = prop_oneof![Just(7.0), -500.0..500.0_f64];
        let corner = (place.clone(), place.clone(), place);
        proptest::collection::vec((corner, 0.0..40.0_f64), 0..300).prop_map(|all| {
            all.into_iter()
                .map(|((x, y, z), size)| {
                    let p = Point::new(x, y, z);
                    Bounds { min: p, max: p }.grown(size)
                })
                .collect()
        })
    }

    proptest! {
        #[test]
        fn a_walk_without_limit_visits_every_item_once(boxes in boxes()) {
            let tree = BoxTree::build(boxes.iter().copied());
            let seen = visited(&tree, f64::INFINITY, |_| 0.0);
            prop_assert_eq!(seen, (0..boxes.len()).collect::<Vec<_>>());
        }

        #[test]
        fn no_item_nearer_than_the_limit_is_passed_over(boxes in boxes(), limit in 0.1..300.0_f64) {
            let tree = BoxTree::build(boxes.iter().copied());
            let from = Point::new(3.0, -20.0, 11.0);
            let seen = visited(&tree, limit * limit, |slab| slab.point_bound(from));
            for (number, b) in boxes.iter().enumerate() {
                let out = [(b.min.x, b.max.x, from.x), (b.min.y, b.max.y, from.y), (b.min.z, b.max.z, from.z)]
                    .map(|(lo, hi, at)| (lo - at).max(at - hi).max(0.0));
                let distance = (out[0] * out[0] + out[1] * out[1] + out[2] * out[2]).sqrt();
                if distance < limit {
                    prop_assert!(seen.binary_search(&number).is_ok(), "{} mm off", distance);
                }
            }
        }
    }

    /// A slab from a corner and sizes, and a segment.
    fn slab_and_segment() -> impl Strategy<Value = (Bounds, Point, Point)> {
        let place = || prop_oneof![Just(0.0), -300.0..300.0_f64];
        let point = move || (place(), place(), place()).prop_map(|(x, y, z)| Point::new(x, y, z));
        let size = || prop_oneof![Just(0.0), 0.0..2.0_f64, 0.0..200.0_f64];
        (point(), (size(), size(), size()), point(), point()).prop_map(|(min, size, a, b)| {
            let max = min + Vector::new(size.0, size.1, size.2);
            (Bounds { min, max }, a, b)
        })
    }

    proptest! {
        #[test]
        fn a_box_is_never_told_further_off_than_it_is((bounds, a, b) in slab_and_segment()) {
            let told = SegmentBound::new(a, b).squared(&Slab::of(&bounds)).sqrt();
            let least = (0..=400)
                .map(|i| bounds.distance(a.lerp(b, f64::from(i) / 400.0)))
                .fold(f64::INFINITY, f64::min);
            prop_assert!(told <= least + 1e-9, "told {} mm, is {} mm", told, least);
        }

        #[test]
        fn a_box_is_told_off_by_no_more_than_its_size((bounds, a, b) in slab_and_segment()) {
            let told = SegmentBound::new(a, b).squared(&Slab::of(&bounds)).sqrt();
            let middle = crate::distance::point_to_segment(bounds.centre(), a, b);
            let size = bounds.half_diagonal_mm();
            // The boxes are rounded outward to single precision.
            prop_assert!(told >= middle - size - 1e-3, "told {} mm, is {} mm", told, middle);
        }
    }

    /// Square tiles over a plane that lies aslant to all axes, `across` of them each way.
    fn tiles(across: u32) -> Vec<Bounds> {
        let (u, v) = (Vector::new(0.8, 0.36, 0.48), Vector::new(-0.6, 0.48, 0.64));
        let step = 400.0 / f64::from(across);
        let at = |i: u32| f64::from(i) * step - 200.0;
        let corner = |i, j| Point::ORIGIN + u * at(i) + v * at(j);
        (0..across * across)
            .map(|k| {
                let (i, j) = (k / across, k % across);
                Bounds::of_points([corner(i, j), corner(i + 1, j), corner(i, j + 1)])
            })
            .collect()
    }

    /// A straight over the plane, 40 mm off and a little aslant to it: with boxes of a quarter of the
    /// size four times as many may be as near as the nearest on a strip along it, and no more.
    #[test]
    fn finer_tiles_are_not_looked_at_by_the_share() {
        let normal = Vector::new(0.0, -0.8, 0.6);
        let way = Vector::new(0.8, 0.36, 0.48) + normal * 0.1;
        let a = Point::ORIGIN + normal * 40.0 + Vector::new(3.0, 2.0, 1.0);
        let segment = SegmentBound::new(a - way * 120.0, a + way * 120.0);
        let looked = |across| {
            let tiles = tiles(across);
            let tree = BoxTree::build(tiles.iter().copied());
            let mut count = 0;
            tree.visit(
                f64::INFINITY,
                |slab| segment.squared(slab),
                |item, limit| {
                    count += 1;
                    let middle = tiles[item].centre();
                    let far =
                        crate::distance::point_to_segment(middle, a - way * 120.0, a + way * 120.0);
                    limit.min(far * far)
                },
            );
            count
        };
        let (coarse, fine) = (looked(60), looked(240));
        assert!(
            fine < 5 * coarse.max(20),
            "{coarse} of 3600, {fine} of 57600"
        );
    }

    #[test]
    fn equal_boxes_and_boxes_on_a_line_make_a_shallow_tree() {
        for step in [0.0, 1.0] {
            let boxes = (0..200_000).map(|i| {
                let p = Point::new(f64::from(i) * step, 2.0, 3.0);
                Bounds { min: p, max: p }
            });
            let tree = BoxTree::build(boxes);
            assert_eq!(visited(&tree, f64::INFINITY, |_| 0.0).len(), 200_000);
            assert!(depth(tree.tree.root()) <= 8, "step {step}");
        }
    }

    fn depth(parent: &ParentNode<Item>) -> usize {
        let inner = parent.children().iter().map(|child| match child {
            RTreeNode::Leaf(_) => 0,
            RTreeNode::Parent(inner) => depth(inner),
        });
        1 + inner.max().unwrap_or(0)
    }
}
