//! Tolerances of outside diameter and wall. A slip joint is checked at their extremes.

use super::{below, up_to};

/// ASTM A554 "Diameter, Wall and Ovality Tolerances", welded stainless mechanical tube, bead not
/// removed, as reprinted. Upper end of the diameter band, then upper ends of wall bands with the
/// tolerance, all in inches, ends inclusive (the first diameter band ends below 0.5). The last wall end
/// of the last band, 0.165, is from memory.
const A554: [(f64, &[(f64, f64)]); 6] = [
    (0.5, &[(0.049, 0.004)]),
    (1.0, &[(0.065, 0.005), (0.134, 0.010)]),
    (1.5, &[(0.065, 0.008), (0.134, 0.010)]),
    (2.0, &[(0.049, 0.010), (0.083, 0.011), (0.149, 0.012)]),
    (2.5, &[(0.065, 0.012), (0.109, 0.013), (0.165, 0.014)]),
    (3.5, &[(0.165, 0.014)]),
];

/// Thinnest wall in the table, inches.
const A554_LEAST_WALL_IN: f64 = 0.020;

/// Tolerance of the mean outside diameter in inches (plus and minus); `None` outside the table.
/// Source: ASTM A554.
#[must_use]
pub fn a554_od_tolerance_in(od_in: f64, wall_in: f64) -> Option<f64> {
    if od_in <= 0.0 || below(wall_in, A554_LEAST_WALL_IN) {
        return None;
    }
    let (_, walls) = A554.iter().enumerate().find_map(|(band, (end, walls))| {
        let inside = if band == 0 {
            below(od_in, *end)
        } else {
            up_to(od_in, *end)
        };
        inside.then_some((band, walls))
    })?;
    walls
        .iter()
        .find(|(end, _)| up_to(wall_in, *end))
        .map(|w| w.1)
}

/// Least and greatest single reading of the outside diameter in inches. The wall is thin when it is 3 %
/// of the diameter or less and the diameter 5 in or less: readings may then stray by twice the
/// tolerance, although their mean may not. Source: ASTM A554 note 2.
#[must_use]
pub fn a554_od_range_in(od_in: f64, wall_in: f64) -> Option<(f64, f64)> {
    let tolerance = a554_od_tolerance_in(od_in, wall_in)?;
    let thin = up_to(wall_in, 0.03 * od_in) && up_to(od_in, 5.0);
    let stray = if thin { 2.0 * tolerance } else { tolerance };
    Some((od_in - stray, od_in + stray))
}

/// Tolerances of one size.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct WallTolerance {
    /// Outside diameter in mm, plus and minus.
    pub od_mm: f64,
    /// Wall in per cent, plus and minus.
    pub wall_percent: f64,
}

/// Tolerances of ASTM A269 austenitic tube (Table 1, as reprinted); `None` outside 0 to 139.7 mm. A
/// diameter on a break belongs to the upper class.
#[must_use]
pub fn a269_tolerance(od_mm: f64) -> Option<WallTolerance> {
    const BANDS: [(f64, f64, f64); 4] = [
        (12.7, 0.13, 15.0),
        (38.1, 0.13, 10.0),
        (88.9, 0.25, 10.0),
        (139.7, 0.38, 10.0),
    ];
    (od_mm > 0.0)
        .then(|| BANDS.iter().find(|(end, ..)| below(od_mm, *end)))
        .flatten()
        .map(|&(_, od_mm, wall_percent)| WallTolerance {
            od_mm,
            wall_percent,
        })
}

/// Tolerance in mm (plus and minus) of the outside diameter of ASTM A249 welded austenitic tube (A249 /
/// A1016, as reprinted; inch values 0.004 to 0.015); `None` outside 0 to 101.6 mm. Wall ±10 %.
#[must_use]
pub fn a249_od_tolerance_mm(od_mm: f64) -> Option<f64> {
    if od_mm.is_nan() || od_mm <= 0.0 {
        return None;
    }
    if below(od_mm, 25.4) {
        Some(0.10)
    } else if up_to(od_mm, 38.1) {
        Some(0.15)
    } else if below(od_mm, 50.8) {
        Some(0.20)
    } else if below(od_mm, 63.5) {
        Some(0.25)
    } else if below(od_mm, 76.2) {
        Some(0.30)
    } else {
        up_to(od_mm, 101.6).then_some(0.38)
    }
}
