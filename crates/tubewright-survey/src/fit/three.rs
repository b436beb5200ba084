//! Closed forms on three points.

use super::FitError;
use crate::linear::{point, v3, vector};
use tubewright_geometry::{Point, UnitVector};

/// Circle through three points in space.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct ThreePointCircle {
    /// Centre.
    pub centre: Point,
    /// Radius in mm.
    pub radius_mm: f64,
    /// Normal, right-handed from the first over the second to the third.
    pub normal: UnitVector,
}

/// The circle through three points, as on the rim of a port or a tube end.
///
/// # Errors
/// [`FitError::Degenerate`] for points in line.
pub fn circle_through(a: Point, b: Point, c: Point) -> Result<ThreePointCircle, FitError> {
    let degenerate = FitError::Degenerate { what: "a circle" };
    let (u, v) = (v3(b) - v3(a), v3(c) - v3(a));
    let cross = u.cross(&v);
    let squared = cross.norm_squared();
    if !squared.is_finite() || squared <= 1e-18 * u.norm_squared() * v.norm_squared() {
        return Err(degenerate);
    }
    let to_centre =
        (v.cross(&cross) * u.norm_squared() - u.cross(&cross) * v.norm_squared()) / (2.0 * squared);
    let normal = vector(cross).direction().ok_or(degenerate)?;
    Ok(ThreePointCircle {
        centre: point(v3(a) + to_centre),
        radius_mm: to_centre.norm(),
        normal,
    })
}

/// The two places at three tape distances from three marks, the lower one (smaller z) first. Where
/// the lengths just fail to meet, within `slack_mm`, both are the foot in the plane of the marks.
///
/// # Errors
/// [`FitError::DoNotMeet`] with the misclosure, [`FitError::Degenerate`] for marks in line.
pub fn trilaterate(
    marks: [Point; 3],
    lengths_mm: [f64; 3],
    slack_mm: f64,
) -> Result<[Point; 2], FitError> {
    let what = "a place from three marks";
    let [c1, c2, c3] = marks.map(v3);
    let [r1, r2, r3] = lengths_mm;
    let along = c2 - c1;
    let d = along.norm();
    let degenerate = || FitError::Degenerate { what };
    let ex = along.try_normalize(1e-9).ok_or_else(degenerate)?;
    let i = ex.dot(&(c3 - c1));
    let across = c3 - c1 - ex * i;
    let j = across.norm();
    let ey = across.try_normalize(1e-6).ok_or_else(degenerate)?;
    let ez = ex.cross(&ey);
    let x = (r1 * r1 - r2 * r2 + d * d) / (2.0 * d);
    let y = (r1 * r1 - r3 * r3 + i * i + j * j - 2.0 * i * x) / (2.0 * j);
    let squared = r1 * r1 - x * x - y * y;
    let foot = c1 + ex * x + ey * y;
    if squared.is_nan() {
        return Err(degenerate());
    }
    if squared < 0.0 {
        // In the plane of the marks the foot is too far from the first by this much.
        let misclosure_mm = (x * x + y * y).sqrt() - r1;
        if misclosure_mm > slack_mm {
            return Err(FitError::DoNotMeet { misclosure_mm });
        }
    }
    let z = squared.max(0.0).sqrt();
    let (p, q) = (foot + ez * z, foot - ez * z);
    Ok(if p.z <= q.z {
        [point(p), point(q)]
    } else {
        [point(q), point(p)]
    })
}
