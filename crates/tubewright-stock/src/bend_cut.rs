//! One saw cut through a bend: what it takes and where it is marked. Closed forms, elementary
//! geometry.

use tubewright_geometry::{Angle, Length, math};

/// Angles that one saw cut takes of a bend.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct KerfAngles {
    /// `k/R`: the usual shop figure.
    pub nominal: Angle,
    /// `asin(k/R)` on the centre line; also what the unsquared face is out of square.
    pub centre_line: Angle,
    /// `asin(k/(R + r))` on the outside.
    pub outside: Angle,
    /// `asin(k/(R - r))` on the inside: plan on it to have both faces square.
    pub inside: Angle,
}

/// What a cut of width `kerf` takes of a bend of centre-line radius `clr` in a tube of `od`; `None`
/// when the inside radius does not exceed the kerf.
#[must_use]
pub fn kerf_angles(clr: Length, od: Length, kerf: Length) -> Option<KerfAngles> {
    let (clr_mm, r_mm, kerf_mm) = (clr.mm(), od.mm() / 2.0, kerf.mm());
    if kerf_mm < 0.0 || clr_mm - r_mm <= kerf_mm {
        return None;
    }
    let at = |radius_mm: f64| Angle::from_rad(math::asin(kerf_mm / radius_mm));
    Some(KerfAngles {
        nominal: Angle::from_rad(kerf_mm / clr_mm),
        centre_line: at(clr_mm),
        outside: at(clr_mm + r_mm),
        inside: at(clr_mm - r_mm),
    })
}

/// How far along the surface a place of a bend lies from the tangent line.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct ArcReach {
    /// Along the centre line: `R A`.
    pub centre_line: Length,
    /// Along the outside: `(R + r) A`. A tape laid on the back of the bend reads this.
    pub outside: Length,
    /// Along the inside: `(R - r) A`.
    pub inside: Length,
}

/// Reach of the angle `angle` from the tangent line of a bend. Along the side, halfway between
/// inside and outside, the tape reads the centre-line value.
#[must_use]
pub fn arc_reach(clr: Length, od: Length, angle: Angle) -> ArcReach {
    let r = od / 2.0;
    ArcReach {
        centre_line: clr * angle.rad(),
        outside: (clr + r) * angle.rad(),
        inside: (clr - r) * angle.rad(),
    }
}

/// From the tangent line to where the centre lines of both sides would meet: `R tan(A/2)`; for
/// turns below 180°.
#[must_use]
pub fn set_back(clr: Length, angle: Angle) -> Length {
    clr * math::tan(angle.rad() / 2.0)
}
