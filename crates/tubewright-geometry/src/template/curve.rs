//! What all wrapped curves have in common: stations, and a smooth line for the printer.

use crate::math;

/// A cut end as a curve round a tube.
pub trait WrapCurve {
    /// Radius in mm of the tube that the template is wrapped round.
    fn tube_radius_mm(&self) -> f64;

    /// How far along the tube the cut lies on the line at `q_rad` round it, in mm; `None` where the
    /// cut does not reach that line.
    fn along_mm(&self, q_rad: f64) -> Option<f64>;

    /// Angles in `[0, 2π]` at which the curve has a corner or ends: the smooth line is cut there.
    fn corners_rad(&self) -> Vec<f64> {
        Vec::new()
    }
}

/// One line along the tube with its mark.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Station {
    /// Angle round the tube in radians.
    pub q_rad: f64,
    /// Across the strip in mm.
    pub across_mm: f64,
    /// Along the tube in mm; `None` where the line is not cut.
    pub along_mm: Option<f64>,
}

/// `count` equally spaced stations from `q = 0`, on paper of `paper_mm` thickness (0 for marking the
/// tube itself).
#[must_use]
pub fn stations(curve: &impl WrapCurve, count: usize, paper_mm: f64) -> Vec<Station> {
    let across = curve.tube_radius_mm() + 0.5 * paper_mm;
    (0..count)
        .map(|i| {
            let q_rad = math::TAU * i as f64 / count as f64;
            Station {
                q_rad,
                across_mm: across * q_rad,
                along_mm: curve.along_mm(q_rad),
            }
        })
        .collect()
}

/// Starting intervals of the smooth line in one turn: no wrapped curve here has more than a few
/// bends in one of them.
const STARTING_INTERVALS: u32 = 64;
/// Halvings after which an interval is narrower than 1e-14 of a turn.
const DEEPEST: u32 = 40;

/// The curve as polylines `(across, along)` in mm, one for each stretch that is cut, from `q = 0` to a
/// whole turn.
///
/// `tolerance_mm` (> 0) is how far the curve may lie from the polyline. Each interval is halved until
/// the curve at a quarter, half and three quarters of it lies within half the tolerance of the chord;
/// between these the curves, smooth but for their corners, stay within the whole.
#[must_use]
pub fn polyline(curve: &impl WrapCurve, paper_mm: f64, tolerance_mm: f64) -> Vec<Vec<[f64; 2]>> {
    let across = curve.tube_radius_mm() + 0.5 * paper_mm;
    let point = |q: f64| curve.along_mm(q).map(|y| [across * q, y]);
    let mut breaks: Vec<f64> = (0..=STARTING_INTERVALS)
        .map(|i| math::TAU * f64::from(i) / f64::from(STARTING_INTERVALS))
        .chain(curve.corners_rad())
        .collect();
    breaks.retain(|q| (0.0..=math::TAU).contains(q));
    breaks.sort_by(f64::total_cmp);
    breaks.dedup();
    let mut lines: Vec<Vec<[f64; 2]>> = Vec::new();
    let mut open: Vec<[f64; 2]> = Vec::new();
    let mut from: Option<f64> = None;
    for q in breaks {
        match (point(q), from) {
            (Some(p), None) => {
                open.push(p);
                from = Some(q);
            }
            (Some(p), Some(start)) => {
                // Cut at both ends; in between it may still miss the line.
                if point(0.5 * (start + q)).is_some() {
                    let last = open.last().copied().unwrap_or(p);
                    refine(
                        &point,
                        (start, last),
                        (q, p),
                        tolerance_mm,
                        DEEPEST,
                        &mut open,
                    );
                } else {
                    lines.push(core::mem::take(&mut open));
                }
                open.push(p);
                from = Some(q);
            }
            (None, Some(_)) => {
                lines.push(core::mem::take(&mut open));
                from = None;
            }
            (None, None) => {}
        }
    }
    lines.push(open);
    lines.retain(|line| line.len() > 1);
    lines
}

/// Pushes the points strictly between two that the tolerance asks for.
fn refine(
    point: &impl Fn(f64) -> Option<[f64; 2]>,
    from: (f64, [f64; 2]),
    to: (f64, [f64; 2]),
    tolerance_mm: f64,
    depth: u32,
    out: &mut Vec<[f64; 2]>,
) {
    if depth == 0 {
        return;
    }
    let at = |t: f64| from.0 + t * (to.0 - from.0);
    let off = [0.25, 0.5, 0.75]
        .into_iter()
        .filter_map(|t| point(at(t)))
        .map(|p| chord_distance(p, from.1, to.1))
        .fold(0.0, f64::max);
    if off <= 0.5 * tolerance_mm {
        return;
    }
    let middle = at(0.5);
    if let Some(p) = point(middle) {
        refine(point, from, (middle, p), tolerance_mm, depth - 1, out);
        out.push(p);
        refine(point, (middle, p), to, tolerance_mm, depth - 1, out);
    }
}

fn chord_distance(p: [f64; 2], a: [f64; 2], b: [f64; 2]) -> f64 {
    let (dx, dy) = (b[0] - a[0], b[1] - a[1]);
    let (px, py) = (p[0] - a[0], p[1] - a[1]);
    let length = dx * dx + dy * dy;
    let t = if length > 0.0 {
        ((px * dx + py * dy) / length).clamp(0.0, 1.0)
    } else {
        0.0
    };
    math::hypot(px - t * dx, py - t * dy)
}

/// The least `along` of the curve in mm, over the whole turn: what is taken off so that the template
/// starts at zero. `None` when no line is cut. Exact to 1e-9 mm for a smooth curve.
#[must_use]
pub fn least_mm(curve: &impl WrapCurve) -> Option<f64> {
    const STEPS: u32 = 720;
    let step = math::TAU / f64::from(STEPS);
    let value = |q: f64| curve.along_mm(q).unwrap_or(f64::INFINITY);
    let best = (0..STEPS)
        .map(|i| f64::from(i) * step)
        .chain(curve.corners_rad())
        .min_by(|a, b| value(*a).total_cmp(&value(*b)))?;
    // Within a step either side the curve has one minimum: thirds.
    let (mut lo, mut hi) = (best - step, best + step);
    for _ in 0..100 {
        let (a, b) = (lo + (hi - lo) / 3.0, hi - (hi - lo) / 3.0);
        if value(a) <= value(b) {
            hi = b;
        } else {
            lo = a;
        }
    }
    let least = value(0.5 * (lo + hi)).min(value(best));
    least.is_finite().then_some(least)
}
