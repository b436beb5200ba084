//! Keeping what is drawn inside a window of the paper.

use super::spot::{Rect, Spot};

/// The part of a polygon inside an upright window (Sutherland and Hodgman, "Reentrant polygon
/// clipping", Communications of the ACM 17, 1974). Exact for convex polygons; a concave one may
/// keep edges along the window. Empty when nothing is inside.
#[must_use]
pub fn clip_polygon(spots: &[Spot], window: Rect) -> Vec<Spot> {
    // Each side as a signed distance, positive inside.
    let sides: [&dyn Fn(Spot) -> f64; 4] = [
        &|s| s.x - window.min.x,
        &|s| window.max.x - s.x,
        &|s| s.y - window.min.y,
        &|s| window.max.y - s.y,
    ];
    let mut kept = spots.to_vec();
    for inside in sides {
        let ring = core::mem::take(&mut kept);
        let Some(&last) = ring.last() else {
            return Vec::new();
        };
        let mut before = last;
        for spot in ring {
            let (d0, d1) = (inside(before), inside(spot));
            if (d0 < 0.0) != (d1 < 0.0) {
                kept.push(before.lerp(spot, d0 / (d0 - d1)));
            }
            if d1 >= 0.0 {
                kept.push(spot);
            }
            before = spot;
        }
    }
    kept
}

/// The part of a segment inside an upright window; `None` when it misses it (Liang and Barsky, "A
/// new concept and method for line clipping", ACM Transactions on Graphics 3, 1984).
#[must_use]
pub fn clip_segment(a: Spot, b: Spot, window: Rect) -> Option<[Spot; 2]> {
    let d = b - a;
    let (mut t0, mut t1) = (0.0_f64, 1.0_f64);
    for (step, room) in [
        (-d.x, a.x - window.min.x),
        (d.x, window.max.x - a.x),
        (-d.y, a.y - window.min.y),
        (d.y, window.max.y - a.y),
    ] {
        if step.abs() < f64::MIN_POSITIVE {
            if room < 0.0 {
                return None;
            }
        } else if step < 0.0 {
            t0 = t0.max(room / step);
        } else {
            t1 = t1.min(room / step);
        }
    }
    (t0 <= t1).then(|| [a.lerp(b, t0), a.lerp(b, t1)])
}
