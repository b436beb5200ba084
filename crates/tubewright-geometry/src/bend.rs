//! One bend in numbers, two bends together, and offsets made of two equal bends.

use crate::math;

/// Lengths that belong to one bend. Elementary geometry, with `A` the turn of the direction.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct BendScalars {
    /// From the tangent line to the tangent intersection: `R tan(A/2)`, in mm.
    pub setback_mm: f64,
    /// Along the centre line: `R A`.
    pub centre_line_mm: f64,
    /// Along the outside of the bend: `(R + D/2) A`. What a tape laid on the outside reads.
    pub extrados_mm: f64,
    /// Along the inside of the bend: `(R - D/2) A`.
    pub intrados_mm: f64,
    /// Straight from tangent line to tangent line on the centre line: `2 R sin(A/2)`.
    pub chord_mm: f64,
    /// From the tangent intersection to the centre line: `R (1/cos(A/2) - 1)`.
    pub corner_cut_mm: f64,
    /// What the bend saves against going round the corner: `2 setback - R A`.
    pub gain_mm: f64,
}

/// The lengths of a bend of `bend_rad` (0 to below π), centre-line radius `clr_mm` and outside
/// diameter `od_mm`. At π the set-back and corner cut have no end: model a U as two 90° bends.
#[must_use]
pub fn bend_scalars(od_mm: f64, clr_mm: f64, bend_rad: f64) -> BendScalars {
    let half = 0.5 * bend_rad;
    let setback_mm = clr_mm * math::tan(half);
    let centre_line_mm = clr_mm * bend_rad;
    BendScalars {
        setback_mm,
        centre_line_mm,
        extrados_mm: (clr_mm + 0.5 * od_mm) * bend_rad,
        intrados_mm: (clr_mm - 0.5 * od_mm) * bend_rad,
        chord_mm: 2.0 * clr_mm * math::sin(half),
        // 1/cos - 1 = tan(half) tan(quarter), without the cancellation of a small bend.
        corner_cut_mm: setback_mm * math::tan(0.5 * half),
        gain_mm: 2.0 * setback_mm - centre_line_mm,
    }
}

/// Set-back of a bend in mm: `R tan(A/2)`.
#[must_use]
pub fn setback_mm(clr_mm: f64, bend_rad: f64) -> f64 {
    clr_mm * math::tan(0.5 * bend_rad)
}

/// Angle in radians by which two bends turn the line together, when the second is rolled by
/// `roll_rad` against the first: `cos G = cos A cos B - sin A sin B cos Φ`.
///
/// Taken from the chord of the two directions (haversine form of the spherical law of cosines), which
/// keeps its digits near 0 and π where the arc cosine loses them.
#[must_use]
pub fn angle_of_two_bends(first_rad: f64, second_rad: f64, roll_rad: f64) -> f64 {
    // Directions before the first bend (z turned back) and after the second, seen from between.
    let (sin_a, cos_a) = math::sin_cos(first_rad);
    let (sin_b, cos_b) = math::sin_cos(second_rad);
    let (sin_p, cos_p) = math::sin_cos(roll_rad);
    let before = crate::vector::Vector::new(cos_a, -sin_a, 0.0);
    let after = crate::vector::Vector::new(cos_b, sin_b * cos_p, sin_b * sin_p);
    math::atan2(before.cross(after).norm(), before.dot(after))
}

/// An offset made with two equal fittings of angle `A`.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Offset {
    /// Square distance between the two lines: `√(rise² + roll²)`, in mm.
    pub true_offset_mm: f64,
    /// How far the plane of the offset is rolled from straight up: `atan(roll / rise)`, in radians.
    pub roll_angle_rad: f64,
    /// Along the slanted leg between the tangent intersections: `H / sin A`.
    pub travel_mm: f64,
    /// Along the line: `H / tan A`.
    pub run_mm: f64,
    /// Straight between the two bends' tangent lines: `H / sin A - 2 R tan(A/2)`; negative means
    /// that it cannot be made with this bend.
    pub straight_mm: f64,
    /// Smallest offset that two such bends make, with no straight between: `2 R (1 - cos A)`.
    pub min_offset_mm: f64,
}

/// An offset with `rise_mm` up and `roll_mm` aside, made with two equal bends of `bend_rad` (0 to
/// π, ends excluded) and centre-line radius `clr_mm` (0 for fittings measured to their centre).
///
/// Elementary geometry; nothing is rounded in between.
#[must_use]
pub fn rolling_offset(rise_mm: f64, roll_mm: f64, bend_rad: f64, clr_mm: f64) -> Offset {
    let true_offset_mm = math::hypot(rise_mm, roll_mm);
    let (sin, cos) = math::sin_cos(bend_rad);
    let travel_mm = true_offset_mm / sin;
    let half_sin = math::sin(0.5 * bend_rad);
    Offset {
        true_offset_mm,
        roll_angle_rad: math::atan2(roll_mm, rise_mm),
        travel_mm,
        run_mm: true_offset_mm * cos / sin,
        straight_mm: travel_mm - 2.0 * setback_mm(clr_mm, bend_rad),
        min_offset_mm: 4.0 * clr_mm * half_sin * half_sin,
    }
}

/// Travel for an offset of one: `1 / sin A`.
#[must_use]
pub fn travel_multiplier(bend_rad: f64) -> f64 {
    1.0 / math::sin(bend_rad)
}
