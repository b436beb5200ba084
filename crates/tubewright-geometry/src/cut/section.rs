//! What bending does to the tube's section: thinner outside, out of round.

/// Wall at the outside of a bend, as parts of the wall before bending.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Thinning {
    /// Stretch of the outer fibre with the neutral fibre on the centre line: `r / R`.
    pub outer_strain: f64,
    /// All stretch taken from the wall: `R / (R + r)`, the lower estimate.
    pub thinnest_ratio: f64,
    /// Stretch shared equally by wall and girth: the square root of it, the upper estimate.
    pub shared_ratio: f64,
}

/// Textbook limits of the wall left at the outside of a bend of centre-line radius `clr_mm` in tube of
/// `od_mm`: constancy of volume (derivation). Real mandrel bends lie between: measure.
#[must_use]
pub fn thinning(clr_mm: f64, od_mm: f64) -> Thinning {
    let r = 0.5 * od_mm;
    let thinnest_ratio = clr_mm / (clr_mm + r);
    Thinning {
        outer_strain: r / clr_mm,
        thinnest_ratio,
        shared_ratio: thinnest_ratio.sqrt(),
    }
}

/// How far out of round a section is, in per cent of the nominal diameter:
/// `100 (Dmax - Dmin) / D`. Some standards divide by the mean of the two instead.
#[must_use]
pub fn ovality_percent(max_mm: f64, min_mm: f64, nominal_mm: f64) -> f64 {
    100.0 * (max_mm - min_mm) / nominal_mm
}

/// Ovality against a limit.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct OvalityFinding {
    /// Measured, in per cent.
    pub ovality_percent: f64,
    /// The limit, in per cent.
    pub limit_percent: f64,
    /// True when the section is within the limit.
    pub within: bool,
}

/// Ovality of a bend against `limit_percent`: 8 % is piping practice for radii of 5 diameters and more
/// (US military facilities criteria; ASME B31.3 332.2.1 from memory). Exhaust bends of 1 to 1.5
/// diameters are outside any pipe-code table.
#[must_use]
pub fn ovality_within(
    max_mm: f64,
    min_mm: f64,
    nominal_mm: f64,
    limit_percent: f64,
) -> OvalityFinding {
    let ovality_percent = ovality_percent(max_mm, min_mm, nominal_mm);
    OvalityFinding {
        ovality_percent,
        limit_percent,
        within: ovality_percent <= limit_percent,
    }
}

/// ASME B31.1 Table 102.4.5: bend radius in diameters, least wall before bending as a multiple of the
/// least wall required.
const PREBEND: [(f64, f64); 4] = [(3.0, 1.25), (4.0, 1.14), (5.0, 1.08), (6.0, 1.06)];

/// Recommended wall before bending as a multiple of the wall that is required, for a bend radius in
/// tube diameters; in between by straight lines, as the table allows. `None` below 3 diameters, where
/// the code gives nothing (all exhaust bends of 1 to 1.5 diameters); at 6 and above the last value.
/// Source: ASME B31.1 Table 102.4.5.
#[must_use]
pub fn prebend_wall_factor(radius_in_diameters: f64) -> Option<f64> {
    let (least, _) = PREBEND[0];
    if radius_in_diameters.is_nan() || radius_in_diameters < least {
        return None;
    }
    for pair in PREBEND.windows(2) {
        if let [(low, at_low), (high, at_high)] = *pair
            && radius_in_diameters <= high
        {
            let t = (radius_in_diameters - low) / (high - low);
            return Some(at_low + t * (at_high - at_low));
        }
    }
    PREBEND.last().map(|p| p.1)
}
