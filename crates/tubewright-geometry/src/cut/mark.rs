//! Where to mark a cut on a stock bend, along its outside, inside, sides and centre line.

use thiserror::Error;

/// A bend as it lies on the bench: leg, arc, leg.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct StockBend {
    /// Outside diameter in mm.
    pub od_mm: f64,
    /// Centre-line radius in mm.
    pub clr_mm: f64,
    /// Angle of the bend in radians.
    pub bend_rad: f64,
    /// Leg before the bend in mm: the end that marks are measured from.
    pub near_leg_mm: f64,
    /// Leg after the bend in mm.
    pub far_leg_mm: f64,
}

/// Where a square cut goes.
#[derive(Clone, Copy, Debug, PartialEq)]
#[non_exhaustive]
pub enum CutPlace {
    /// In the near leg, this many mm from its physical end.
    NearLeg {
        /// From the near end in mm.
        from_end_mm: f64,
    },
    /// In the bend, this angle from the near tangent line.
    Bend {
        /// From the near tangent line in radians.
        from_tangent_rad: f64,
    },
    /// In the far leg, this many mm past the far tangent line.
    FarLeg {
        /// From the far tangent line in mm.
        from_tangent_mm: f64,
    },
}

/// A place along the tube, measured on four lines, in mm.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Marks {
    /// Along the centre line (no tape can be laid there).
    pub centre_line_mm: f64,
    /// Along the outside of the bend.
    pub outside_mm: f64,
    /// Along the inside of the bend.
    pub inside_mm: f64,
    /// Along either side, a quarter turn round from the outside: as long as the centre line.
    pub side_mm: f64,
}

/// Why a cut cannot be marked.
#[derive(Clone, Copy, Debug, Error, PartialEq)]
#[non_exhaustive]
pub enum MarkError {
    /// The place is past the end of the stretch it is in.
    #[error(
        "a cut at {asked} in the {stretch}, which is only {there} long: take another stock bend"
    )]
    BeyondStretch {
        /// Which stretch.
        stretch: &'static str,
        /// What was asked, in mm (or radians in the bend).
        asked: f64,
        /// What there is.
        there: f64,
    },
}

impl StockBend {
    /// Marks measured from the near *tangent line*, along the arc only, for a cut at `angle_rad` into
    /// the bend: `ρ a` with `ρ = R`, `R + D/2`, `R - D/2`. Elementary geometry.
    #[must_use]
    pub fn marks_from_tangent(&self, angle_rad: f64) -> Marks {
        let half = 0.5 * self.od_mm;
        Marks {
            centre_line_mm: self.clr_mm * angle_rad,
            outside_mm: (self.clr_mm + half) * angle_rad,
            inside_mm: (self.clr_mm - half) * angle_rad,
            side_mm: self.clr_mm * angle_rad,
        }
    }

    /// Marks measured from the near *physical end* of the item: leg and arc.
    ///
    /// # Errors
    /// [`MarkError::BeyondStretch`] when the place is not on the item.
    ///
    /// ```
    /// use tubewright_geometry::cut::{CutPlace, StockBend};
    /// let stock = StockBend {
    ///     od_mm: 60.0, clr_mm: 90.0, bend_rad: 1.5, near_leg_mm: 100.0, far_leg_mm: 100.0,
    /// };
    /// let m = stock.marks_from_end(CutPlace::Bend { from_tangent_rad: 1.0 }).unwrap();
    /// // 100 of leg and 1 rad at 120 outside, 90 on the centre line, 60 inside.
    /// assert_eq!((m.outside_mm, m.centre_line_mm, m.inside_mm), (220.0, 190.0, 160.0));
    /// ```
    pub fn marks_from_end(&self, place: CutPlace) -> Result<Marks, MarkError> {
        let within = |stretch: &'static str, asked: f64, there: f64| {
            // A nanometre of rounding past the end is the end.
            if (-1e-6..=there + 1e-6).contains(&asked) {
                Ok(())
            } else {
                Err(MarkError::BeyondStretch {
                    stretch,
                    asked,
                    there,
                })
            }
        };
        let (before_mm, angle_rad, after_mm) = match place {
            CutPlace::NearLeg { from_end_mm } => {
                within("near leg", from_end_mm, self.near_leg_mm)?;
                (from_end_mm, 0.0, 0.0)
            }
            CutPlace::Bend { from_tangent_rad } => {
                within("bend", from_tangent_rad, self.bend_rad)?;
                (self.near_leg_mm, from_tangent_rad, 0.0)
            }
            CutPlace::FarLeg { from_tangent_mm } => {
                within("far leg", from_tangent_mm, self.far_leg_mm)?;
                (self.near_leg_mm, self.bend_rad, from_tangent_mm)
            }
        };
        let arc = self.marks_from_tangent(angle_rad);
        let straight_mm = before_mm + after_mm;
        Ok(Marks {
            centre_line_mm: straight_mm + arc.centre_line_mm,
            outside_mm: straight_mm + arc.outside_mm,
            inside_mm: straight_mm + arc.inside_mm,
            side_mm: straight_mm + arc.side_mm,
        })
    }

    /// Marks of the same cut measured from the *far* physical end.
    ///
    /// # Errors
    /// As [`Self::marks_from_end`].
    pub fn marks_from_far_end(&self, place: CutPlace) -> Result<Marks, MarkError> {
        let near = self.marks_from_end(place)?;
        let whole = self.whole_length();
        Ok(Marks {
            centre_line_mm: whole.centre_line_mm - near.centre_line_mm,
            outside_mm: whole.outside_mm - near.outside_mm,
            inside_mm: whole.inside_mm - near.inside_mm,
            side_mm: whole.side_mm - near.side_mm,
        })
    }

    /// Length of the whole item along the four lines.
    #[must_use]
    pub fn whole_length(&self) -> Marks {
        let arc = self.marks_from_tangent(self.bend_rad);
        let legs_mm = self.near_leg_mm + self.far_leg_mm;
        Marks {
            centre_line_mm: legs_mm + arc.centre_line_mm,
            outside_mm: legs_mm + arc.outside_mm,
            inside_mm: legs_mm + arc.inside_mm,
            side_mm: legs_mm + arc.side_mm,
        }
    }

    /// The cut's place from how far along the centre line it is from the near physical end.
    ///
    /// # Errors
    /// [`MarkError::BeyondStretch`] when it is past the item.
    pub fn place_along(&self, centre_line_mm: f64) -> Result<CutPlace, MarkError> {
        let arc_mm = self.clr_mm * self.bend_rad;
        let place = if centre_line_mm < self.near_leg_mm {
            CutPlace::NearLeg {
                from_end_mm: centre_line_mm,
            }
        } else if centre_line_mm < self.near_leg_mm + arc_mm {
            CutPlace::Bend {
                from_tangent_rad: (centre_line_mm - self.near_leg_mm) / self.clr_mm,
            }
        } else {
            CutPlace::FarLeg {
                from_tangent_mm: centre_line_mm - self.near_leg_mm - arc_mm,
            }
        };
        self.marks_from_end(place).map(|_| place)
    }
}
