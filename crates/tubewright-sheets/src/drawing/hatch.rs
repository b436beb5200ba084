//! Hatching as plain lines, so that every format shows the same.

use super::spot::Spot;
use tubewright_geometry::math;

/// Parallel strokes that fill a closed outline (convex or not, even–odd rule), at `angle_rad` from
/// rightwards (clockwise on the paper), `spacing_mm` apart. The strokes lie on one grid of the whole
/// sheet, so that neighbouring areas hatched alike meet. Empty when the spacing is not above zero.
#[must_use]
pub fn hatch(outline: &[Spot], angle_rad: f64, spacing_mm: f64) -> Vec<[Spot; 2]> {
    let mut strokes = Vec::new();
    if spacing_mm.is_nan() || spacing_mm <= 1e-3 || outline.len() < 3 {
        return strokes;
    }
    let along = Spot::toward(angle_rad);
    let across = along.quarter();
    let reach = |pick: fn(f64, f64) -> f64, start: f64| {
        outline.iter().map(|s| s.dot(across)).fold(start, pick)
    };
    let first = (reach(f64::min, f64::INFINITY) / spacing_mm).ceil();
    let last = (reach(f64::max, f64::NEG_INFINITY) / spacing_mm).floor();
    // A sheet never needs more; a slip in the spacing must not fill the memory.
    let count = (last - first).clamp(-1.0, 20_000.0);
    let mut step = 0.0;
    while step <= count {
        let level = (first + step) * spacing_mm;
        let mut cuts: Vec<f64> = edges(outline)
            .filter_map(|(a, b)| {
                let (da, db) = (a.dot(across) - level, b.dot(across) - level);
                ((da < 0.0) != (db < 0.0)).then(|| a.lerp(b, da / (da - db)).dot(along))
            })
            .collect();
        cuts.sort_by(f64::total_cmp);
        for pair in cuts.chunks_exact(2) {
            if let [from, to] = *pair {
                let foot = across * level;
                strokes.push([foot + along * from, foot + along * to]);
            }
        }
        step += 1.0;
    }
    strokes
}

fn edges(outline: &[Spot]) -> impl Iterator<Item = (Spot, Spot)> + '_ {
    outline
        .iter()
        .copied()
        .zip(outline.iter().copied().cycle().skip(1))
}

/// The angle of hatching that the trade draws first: rising to the right at 45°.
pub(crate) const RISING_RAD: f64 = -math::FRAC_PI_4;
