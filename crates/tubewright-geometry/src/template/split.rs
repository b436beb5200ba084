//! A bend split by a plane along its axis: half of a crossover.
//!
//! The plane stands parallel to the bend's axis at distance `d` from it and takes the outside of the
//! bend off (a spiric section of Perseus). Two mirror-image bends cut so close on each other along
//! the plane. Lengths are from the apex section, the same to either side. Formulas: elementary
//! geometry of the torus; the area integral is taken in the angle round the tube, with the square root
//! at its end substituted away.

use thiserror::Error;

use super::curve::WrapCurve;
use super::mitre::PlaneCut;
use crate::math;
use crate::vector::{Point, UnitVector, Vector};

/// A bend and the plane that splits it.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct SplitBend {
    clr_mm: f64,
    tube_radius_mm: f64,
    distance_mm: f64,
    bend_rad: f64,
}

/// Why a bend cannot be split so.
#[derive(Clone, Copy, Debug, Error, PartialEq)]
#[non_exhaustive]
pub enum SplitError {
    /// The plane misses the tube or parts it.
    #[error(
        "a plane {distance_mm} mm from the bend's axis does not open a bend that reaches from \
         {inside_mm} to {outside_mm} mm: place it between"
    )]
    Misses {
        /// Distance of the plane from the bend's axis in mm.
        distance_mm: f64,
        /// Inside of the bend in mm.
        inside_mm: f64,
        /// Outside of the bend in mm.
        outside_mm: f64,
    },
    /// The sizes are not those of a bend.
    #[error(
        "radius {clr_mm} mm, tube radius {tube_radius_mm} mm, bend {bend_rad} rad: not a bend (the \
         bend must lie between 0 and π, its radius above the tube's)"
    )]
    Bend {
        /// Centre-line radius in mm.
        clr_mm: f64,
        /// Tube radius in mm.
        tube_radius_mm: f64,
        /// Angle of the stock bend in radians.
        bend_rad: f64,
    },
    /// No place of the plane gives so large an opening.
    #[error("an opening of {area_mm2} mm² is more than this bend can give ({most_mm2} mm²)")]
    Area {
        /// What was asked, in mm².
        area_mm2: f64,
        /// The largest there is, in mm².
        most_mm2: f64,
    },
}

/// How near a line's limit the plane may pass and still count as cutting it, in mm: at `d = R` the
/// two side lines lie on the limit and count as cut.
const TOUCH_MM: f64 = 1e-9;

impl SplitBend {
    /// A stock bend of `bend_rad`, centre-line radius `clr_mm`, tube radius `tube_radius_mm` (outer for
    /// marking, inner for the flow opening), split at its apex by a plane `distance_mm` from the bend's
    /// axis.
    ///
    /// # Errors
    /// [`SplitError`] when the plane does not lie between the inside and the outside of the bend.
    pub fn new(
        clr_mm: f64,
        tube_radius_mm: f64,
        distance_mm: f64,
        bend_rad: f64,
    ) -> Result<Self, SplitError> {
        let sound = tube_radius_mm > 0.0
            && clr_mm > tube_radius_mm
            && clr_mm.is_finite()
            && bend_rad > 0.0
            && bend_rad <= math::PI;
        if !sound {
            return Err(SplitError::Bend {
                clr_mm,
                tube_radius_mm,
                bend_rad,
            });
        }
        let (inside_mm, outside_mm) = (clr_mm - tube_radius_mm, clr_mm + tube_radius_mm);
        if distance_mm.is_nan() || distance_mm <= inside_mm || distance_mm >= outside_mm {
            return Err(SplitError::Misses {
                distance_mm,
                inside_mm,
                outside_mm,
            });
        }
        Ok(Self {
            clr_mm,
            tube_radius_mm,
            distance_mm,
            bend_rad,
        })
    }

    fn rho_mm(&self, q_rad: f64) -> f64 {
        self.clr_mm + self.tube_radius_mm * math::cos(q_rad)
    }

    /// Half the opening's length along the line `q` (0 at the outside of the bend) from the apex, in
    /// mm: `ρ acos(d/ρ)`; past the end of a short stock bend the leg is cut by the same plane. `None`
    /// when the line is not cut.
    #[must_use]
    pub fn half_length_mm(&self, q_rad: f64) -> Option<f64> {
        let rho = self.rho_mm(q_rad);
        if rho < self.distance_mm - TOUCH_MM {
            return None;
        }
        let section = math::acos((self.distance_mm / rho).min(1.0));
        let half = 0.5 * self.bend_rad;
        if section <= half {
            return Some(rho * section);
        }
        let in_leg = self.leg_cut().along_mm(q_rad)?;
        Some(rho * half + in_leg)
    }

    /// The leg after the bend, cut by the same plane; lengths from the bend's tangent line, `q` as in
    /// the bend.
    #[must_use]
    pub fn leg_cut(&self) -> PlaneCut {
        let (sin, cos) = math::sin_cos(0.5 * self.bend_rad);
        PlaneCut {
            origin: Point::new(self.clr_mm * cos, self.clr_mm * sin, 0.0),
            along: UnitVector::from_unit(Vector::new(-sin, cos, 0.0)),
            zero: UnitVector::from_unit(Vector::new(cos, sin, 0.0)),
            quarter: UnitVector::Z,
            radius_mm: self.tube_radius_mm,
            normal: UnitVector::X,
            offset_mm: self.distance_mm,
        }
    }

    /// The last line that is cut, to either side of the outside of the bend, in radians:
    /// `acos((d - R)/r)`.
    #[must_use]
    pub fn limit_rad(&self) -> f64 {
        math::acos((self.distance_mm - self.clr_mm) / self.tube_radius_mm)
    }

    /// True when the cut runs out of the bend into its legs.
    #[must_use]
    pub fn runs_into_legs(&self) -> bool {
        self.bend_used_rad() > self.bend_rad
    }

    /// Angle of bend that the split needs, in radians: `2 acos(d/(R + r))`. Half of it is also the angle
    /// between the tube and the plane where the split ends.
    #[must_use]
    pub fn bend_used_rad(&self) -> f64 {
        2.0 * math::acos(self.distance_mm / (self.clr_mm + self.tube_radius_mm))
    }

    /// What the plane takes off the outside of the bend at the apex, in mm.
    #[must_use]
    pub fn removed_depth_mm(&self) -> f64 {
        self.clr_mm + self.tube_radius_mm - self.distance_mm
    }

    /// Length of the opening in the plane, in mm, within the bend: `2 √((R + r)² - d²)`; in a short
    /// bend, to where the outside lines of the legs meet the plane.
    #[must_use]
    pub fn opening_length_mm(&self) -> f64 {
        let outside = self.clr_mm + self.tube_radius_mm;
        if self.runs_into_legs() {
            let (sin, cos) = math::sin_cos(0.5 * self.bend_rad);
            let in_leg = (outside * cos - self.distance_mm) / sin;
            return 2.0 * (outside * sin + in_leg * cos);
        }
        2.0 * ((outside - self.distance_mm) * (outside + self.distance_mm)).sqrt()
    }

    /// Height of the opening in the plane, along the bend's axis, in mm: `2 √(r² - (d - R)²)` for
    /// `d ≥ R`, else the tube's whole diameter.
    #[must_use]
    pub fn opening_height_mm(&self) -> f64 {
        let past = self.distance_mm - self.clr_mm;
        if past < 0.0 {
            return 2.0 * self.tube_radius_mm;
        }
        2.0 * ((self.tube_radius_mm - past) * (self.tube_radius_mm + past)).sqrt()
    }

    /// Area of the opening in the plane, in mm²: `4 ∫ half width dz` with `z = r sin q`, over the lines
    /// that are cut (beyond a quarter turn `dz` is negative, which takes off the part inside the ring).
    #[must_use]
    pub fn opening_area_mm2(&self) -> f64 {
        /// Simpson's rule; the integrand is smooth in `u`.
        const STEPS: u32 = 1000;
        let limit = self.limit_rad();
        let (half_sin, half_cos) = math::sin_cos(0.5 * self.bend_rad);
        let value = |u: f64| {
            // q = limit (1 - u²): the half width goes to zero like a square root at the limit.
            let q = limit * (1.0 - u * u);
            let rho = self.rho_mm(q);
            let across = ((rho - self.distance_mm) * (rho + self.distance_mm)).max(0.0);
            let in_bend = rho * half_cos <= self.distance_mm;
            let half_width = if in_bend {
                across.sqrt()
            } else {
                let in_leg = (rho * half_cos - self.distance_mm) / half_sin;
                rho * half_sin + in_leg * half_cos
            };
            half_width * self.tube_radius_mm * math::cos(q) * 2.0 * limit * u
        };
        let step = 1.0 / f64::from(STEPS);
        let mut sum = value(0.0) + value(1.0);
        for i in 1..STEPS {
            let weight = if i % 2 == 1 { 4.0 } else { 2.0 };
            sum += weight * value(f64::from(i) * step);
        }
        4.0 * sum * step / 3.0
    }
}

impl WrapCurve for SplitBend {
    fn tube_radius_mm(&self) -> f64 {
        self.tube_radius_mm
    }

    fn along_mm(&self, q_rad: f64) -> Option<f64> {
        self.half_length_mm(q_rad)
    }

    fn corners_rad(&self) -> Vec<f64> {
        let limit = self.limit_rad();
        let mut corners = vec![limit, math::TAU - limit];
        // Where the cut leaves the bend: ρ cos(A/2) = d.
        let half_cos = math::cos(0.5 * self.bend_rad);
        let leaves = (self.distance_mm / half_cos - self.clr_mm) / self.tube_radius_mm;
        if half_cos > 1e-9 && leaves.abs() < 1.0 {
            let q = math::acos(leaves);
            corners.extend([q, math::TAU - q]);
        }
        corners
    }
}

/// Distance in mm of the plane from the bend's axis that opens `area_mm2`, in a bend long enough that
/// the legs stay whole.
///
/// From the outside of the bend inward the opening grows to a largest one, a little inside the centre
/// line, and then shrinks again; the answer is on the outer side, where less is cut away.
///
/// # Errors
/// [`SplitError::Area`] when no plane opens so much; [`SplitError::Bend`] for sizes that are no bend.
pub fn split_distance_for_area(
    clr_mm: f64,
    tube_radius_mm: f64,
    area_mm2: f64,
) -> Result<f64, SplitError> {
    let whole = SplitBend::new(clr_mm, tube_radius_mm, clr_mm, math::PI)?;
    let area = |distance_mm: f64| {
        SplitBend {
            distance_mm,
            ..whole
        }
        .opening_area_mm2()
    };
    let (mut lo, mut hi) = (clr_mm - tube_radius_mm, clr_mm);
    // The one largest opening, by thirds; it is flat there, so 1e-6 of the radius is ample.
    while hi - lo > 1e-6 * tube_radius_mm {
        let (a, b) = (lo + (hi - lo) / 3.0, hi - (hi - lo) / 3.0);
        if area(a) < area(b) {
            lo = a;
        } else {
            hi = b;
        }
    }
    let largest_at = 0.5 * (lo + hi);
    let most_mm2 = area(largest_at);
    if area_mm2.is_nan() || area_mm2 <= 0.0 || area_mm2 > most_mm2 {
        return Err(SplitError::Area { area_mm2, most_mm2 });
    }
    (lo, hi) = (largest_at, clr_mm + tube_radius_mm);
    for _ in 0..50 {
        let middle = 0.5 * (lo + hi);
        if area(middle) >= area_mm2 {
            lo = middle;
        } else {
            hi = middle;
        }
    }
    Ok(0.5 * (lo + hi))
}
