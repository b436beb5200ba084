//! A crossover made by hand: two mirrored bends, each with its back cut off along a plane, welded
//! together round the opening.
//!
//! Everything is in the frame of one bend: its axis along z through the origin, its apex on the x
//! axis, the plane `x = plane_mm`. The other bend is the mirror image in the plane.

mod oval;
mod solid;

pub use solid::split_cross_step;

use crate::template::Unrolled;
use oval::Oval;
use tubewright_geometry::math;
use tubewright_geometry::template::{SplitBend, SplitError};

/// Two equal stock bends split along a plane parallel to their axes.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct SplitCross {
    /// Outer diameter in mm.
    pub od_mm: f64,
    /// Wall in mm.
    pub wall_mm: f64,
    /// Centre-line radius in mm.
    pub clr_mm: f64,
    /// Angle of each bend in radians.
    pub bend_rad: f64,
    /// Legs up- and downstream in mm.
    pub legs_mm: [f64; 2],
    /// Distance of the plane from the bend's axis in mm.
    pub plane_mm: f64,
}

/// A mark on the bend: on this line along the tube, so far from the apex ring, to either side.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct SplitMark {
    /// Round the tube from its back, in radians; the same to both sides.
    pub from_back_rad: f64,
    /// Round the outside from the back, in mm.
    pub round_mm: f64,
    /// Along the tube from the apex ring, in mm.
    pub along_mm: f64,
}

/// Why there is no crossover of these bends.
#[derive(Clone, Debug, PartialEq, thiserror::Error)]
#[non_exhaustive]
pub enum SplitCrossError {
    /// The plane misses or the sizes are no bend's.
    #[error(transparent)]
    Split(#[from] SplitError),
    /// The opening runs past the end of a leg.
    #[error(
        "the split runs {reach_mm:.1} mm into the legs, which are {leg_mm:.1} mm long: take bends with longer legs or move the plane out"
    )]
    LegTooShort {
        /// How far it runs into the leg, in mm.
        reach_mm: f64,
        /// The shorter leg in mm.
        leg_mm: f64,
    },
    /// The wall leaves no bore, or the plane takes only wall and opens nothing.
    #[error("a wall of {wall_mm} mm: the plane opens no bore; move it inward")]
    NoOpening {
        /// The wall in mm.
        wall_mm: f64,
    },
}

impl SplitCross {
    /// Half of it: the outside of one bend.
    ///
    /// # Errors
    /// [`SplitCrossError`] when the plane does not open the bore of this bend within its legs.
    pub fn half(&self) -> Result<SplitBend, SplitCrossError> {
        let outer = SplitBend::new(self.clr_mm, 0.5 * self.od_mm, self.plane_mm, self.bend_rad)?;
        let no_opening = SplitCrossError::NoOpening {
            wall_mm: self.wall_mm,
        };
        if !(self.wall_mm > 0.0 && self.wall_mm < 0.5 * self.od_mm) {
            return Err(no_opening);
        }
        self.bore().map_err(|_| no_opening)?;
        let reach_mm = outer.half_length_mm(0.0).map_or(0.0, |whole| {
            whole - (self.clr_mm + 0.5 * self.od_mm) * 0.5 * self.bend_rad
        });
        let leg_mm = self.legs_mm[0].min(self.legs_mm[1]);
        if outer.runs_into_legs() && reach_mm >= leg_mm {
            return Err(SplitCrossError::LegTooShort { reach_mm, leg_mm });
        }
        Ok(outer)
    }

    /// The same for the bore.
    ///
    /// # Errors
    /// As [`SplitBend::new`].
    pub fn bore(&self) -> Result<SplitBend, SplitError> {
        SplitBend::new(
            self.clr_mm,
            0.5 * self.od_mm - self.wall_mm,
            self.plane_mm,
            self.bend_rad,
        )
    }

    /// Marks on the bend every `step_rad` round the tube from its back, and at the last line that is
    /// cut.
    ///
    /// # Errors
    /// As [`Self::half`].
    pub fn marks(&self, step_rad: f64) -> Result<Vec<SplitMark>, SplitCrossError> {
        let half = self.half()?;
        let limit = half.limit_rad();
        let mut angles: Vec<f64> = (0..720)
            .map(|i| step_rad * f64::from(i))
            .take_while(|q| *q < limit - 1e-6)
            .collect();
        angles.push(limit);
        Ok(angles
            .into_iter()
            .filter_map(|q| {
                Some(SplitMark {
                    from_back_rad: q,
                    round_mm: 0.5 * self.od_mm * q,
                    along_mm: half.half_length_mm(q)?,
                })
            })
            .collect())
    }

    /// Length of the weld round the opening, on the outside, in mm: the oval in the plane, as a
    /// polygon of 4000 sides (short by less than 0.01 mm for tubes below 200 mm).
    ///
    /// # Errors
    /// As [`Self::half`].
    pub fn weld_mm(&self) -> Result<f64, SplitCrossError> {
        let oval = Oval::new(self.half()?, self, 0.5 * self.od_mm);
        Ok(oval.length_mm(1000) * 4.0)
    }

    /// The template of the opening, from the apex ring.
    ///
    /// # Errors
    /// As [`Self::half`].
    pub fn template(&self, paper_mm: f64) -> Result<Unrolled, SplitCrossError> {
        Ok(Unrolled::opening(&self.half()?, paper_mm))
    }

    /// Angle between the two tubes where they part: the bend's own angle.
    #[must_use]
    pub fn crossing_deg(&self) -> f64 {
        self.bend_rad * 180.0 / math::PI
    }
}
