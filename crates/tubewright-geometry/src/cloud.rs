//! Clouds of scan points with a tree for fast distances.

use crate::bounds::Bounds;
use crate::box_tree::BoxTree;
use crate::vector::Point;

/// Points of a scan, each a ball of one radius, with a tree of boxes over them.
#[derive(Clone, Debug)]
pub struct PointCloud {
    points: Vec<Point>,
    radius_mm: f64,
    bounds: Bounds,
    tree: BoxTree,
}

impl PointCloud {
    /// Builds the cloud; `None` when it is empty, a coordinate is not finite, or the radius is
    /// negative or not finite. `radius_mm` is the scan's noise plus half its spacing.
    #[must_use]
    pub fn new(points: Vec<Point>, radius_mm: f64) -> Option<Self> {
        let sound = !points.is_empty()
            && u32::try_from(points.len()).is_ok()
            && points.iter().all(|p| p.is_finite())
            && radius_mm.is_finite()
            && radius_mm >= 0.0;
        sound.then(|| Self {
            bounds: Bounds::of_points(points.iter().copied()).grown(radius_mm),
            tree: BoxTree::build(points.iter().map(|&p| Bounds { min: p, max: p })),
            points,
            radius_mm,
        })
    }

    /// The places seen, in mm.
    #[must_use]
    pub fn points(&self) -> &[Point] {
        &self.points
    }

    /// Radius in mm of the ball round each point.
    #[must_use]
    pub const fn radius_mm(&self) -> f64 {
        self.radius_mm
    }

    /// A box that holds every ball.
    #[must_use]
    pub const fn bounds(&self) -> Bounds {
        self.bounds
    }

    pub(crate) const fn tree(&self) -> &BoxTree {
        &self.tree
    }

    /// Point by a number that the tree gave.
    pub(crate) fn point(&self, index: usize) -> Point {
        self.points[index]
    }
}
