//! Where circles and spheres meet.

use crate::linear::{V3, any_normal};

/// The two places at distances `r1` and `r2` in plan from `c1` and `c2`, at height `z`; where the
/// circles do not meet, the nearest place to both.
pub(crate) fn circles(c1: V3, r1: f64, c2: V3, r2: f64, z: f64) -> Option<[V3; 2]> {
    let mut along = c2 - c1;
    along.z = 0.0;
    let d = along.norm();
    if d < 1.0 {
        return None;
    }
    let u = along / d;
    let x = (d * d + r1 * r1 - r2 * r2) / (2.0 * d);
    let y = (r1 * r1 - x * x).max(0.0).sqrt();
    let side = V3::new(-u.y, u.x, 0.0);
    let foot = V3::new(c1.x, c1.y, z) + u * x;
    Some([foot + side * y, foot - side * y])
}

/// The two places at distances `r` from three centres; where the spheres do not meet, the foot in the
/// plane of the centres. `None` for centres nearly in line.
pub(crate) fn spheres(c: [V3; 3], r: [f64; 3]) -> Option<[V3; 2]> {
    let [c1, c2, c3] = c;
    let d = (c2 - c1).norm();
    if d < 1.0 {
        return None;
    }
    let ex = (c2 - c1) / d;
    let i = ex.dot(&(c3 - c1));
    let across = c3 - c1 - ex * i;
    let j = across.norm();
    if j < 1.0 {
        return None;
    }
    let ey = across / j;
    let ez = ex.cross(&ey);
    let x = (r[0] * r[0] - r[1] * r[1] + d * d) / (2.0 * d);
    let y = (r[0] * r[0] - r[2] * r[2] + i * i + j * j - 2.0 * i * x) / (2.0 * j);
    let z = (r[0] * r[0] - x * x - y * y).max(0.0).sqrt();
    let foot = c1 + ex * x + ey * y;
    Some([foot + ez * z, foot - ez * z])
}

/// Some place on the circle where two spheres meet, at `turn` radians round it given as cosine and
/// sine.
pub(crate) fn on_two_spheres(c1: V3, r1: f64, c2: V3, r2: f64, (cos, sin): (f64, f64)) -> V3 {
    let d = (c2 - c1).norm().max(1.0);
    let u = (c2 - c1).try_normalize(1e-9).unwrap_or_else(V3::x);
    let x = (d * d + r1 * r1 - r2 * r2) / (2.0 * d);
    let rho = (r1 * r1 - x * x).max(0.0).sqrt();
    let e1 = any_normal(u);
    let e2 = u.cross(&e1);
    c1 + u * x + (e1 * cos + e2 * sin) * rho
}
