//! Point and segment to the points of a scan.

use super::hit::Hit;
use super::segment_segment::nearest_on_segment;
use crate::box_tree::SegmentBound;
use crate::cloud::PointCloud;
use crate::vector::Point;

/// Distance to the nearest ball, by looking at every point: for a cloud without a tree.
pub(super) fn segment_to_points(a: Point, b: Point, points: &[Point], radius: f64) -> Hit {
    let mut least = f64::INFINITY;
    let mut best = Hit::beyond(f64::INFINITY, a);
    for (index, &p) in points.iter().enumerate() {
        let t = nearest_on_segment(p, a, b);
        let d = (p - a.lerp(b, t)).norm_squared();
        if d < least {
            least = d;
            best = ball_hit(a, b, t, p, index);
        }
    }
    best.shrunk(radius, a.lerp(b, best.fraction))
}

fn ball_hit(a: Point, b: Point, t: f64, p: Point, index: usize) -> Hit {
    Hit {
        distance_mm: p.distance(a.lerp(b, t)),
        fraction: t,
        on_body: p,
        part: Some(index),
    }
}

/// The same through the cloud's tree; a hit at the limit when nothing is nearer.
pub(super) fn segment_to_cloud(a: Point, b: Point, cloud: &PointCloud, limit_mm: f64) -> Hit {
    let reach = limit_mm + cloud.radius_mm();
    let mut best = Hit::beyond(limit_mm, a);
    if limit_mm <= 0.0 {
        return best;
    }
    let mut found = None;
    let segment = SegmentBound::new(a, b);
    cloud.tree().visit(
        reach * reach,
        |node| segment.squared(node),
        |index, limit| {
            let p = cloud.point(index);
            let t = nearest_on_segment(p, a, b);
            let d = (p - a.lerp(b, t)).norm_squared();
            if d < limit {
                found = Some((t, p, index));
                d
            } else {
                limit
            }
        },
    );
    if let Some((t, p, index)) = found {
        best = ball_hit(a, b, t, p, index).shrunk(cloud.radius_mm(), a.lerp(b, t));
    }
    best
}
