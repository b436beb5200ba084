//! The error budget: what small errors of pieces and welds do at the far end of a run.
//!
//! Each error is a small shift and turn at the place where it happens; at the end of the run it is
//! the same turn, and a shift of the turn times the lever arm (first-order propagation, elementary
//! rigid-body kinematics). Errors of different pieces and joints are independent.

use tubewright_geometry::{Angle, Frame, Length, UnitVector, Vector};

/// Standard deviations of what the shop does to one piece and one joint.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Tolerances {
    /// Cut length.
    pub cut_length: Length,
    /// Squareness of a cut face, about each axis across the tube.
    pub cut_angle: Angle,
    /// Clock of a joint.
    pub clock: Angle,
    /// True angle of a bend.
    pub bend_angle: Angle,
    /// Pull of a weld along the tube, beyond the mean that is added to cut lengths.
    pub weld_pull: Length,
}

impl Tolerances {
    /// 0.5 mm of length, 0.5° of face, 1° of clock, 0.5° of bend, 0.25 mm of pull, each as a
    /// standard deviation: common practice, no source. To be shown and edited.
    #[must_use]
    pub const fn common_practice() -> Self {
        Self {
            cut_length: Length::from_mm(0.5),
            cut_angle: Angle::from_deg(0.5),
            clock: Angle::from_deg(1.0),
            bend_angle: Angle::from_deg(0.5),
            weld_pull: Length::from_mm(0.25),
        }
    }
}

/// One piece in the chain.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct ChainPiece {
    /// Where it ends downstream, as planned; twelve o'clock toward the centre of the bend when it
    /// is one, so that its error of angle turns about three o'clock.
    pub downstream: Frame,
    /// Whether it is a bend.
    pub is_bend: bool,
    /// Whether a joint is made at its downstream end.
    pub has_joint: bool,
}

/// Covariance of a place: shifts in mm along x, y, z, then turns in radians about x, y, z.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Covariance(pub [[f64; 6]; 6]);

impl Covariance {
    /// Nothing is uncertain.
    pub const ZERO: Self = Self([[0.0; 6]; 6]);

    /// Standard deviation of the place along a direction.
    #[must_use]
    pub fn along(&self, direction: UnitVector) -> Length {
        let d = direction.to_array();
        let variance: f64 = (0..3)
            .flat_map(|i| (0..3).map(move |j| (i, j)))
            .map(|(i, j)| d[i] * self.0[i][j] * d[j])
            .sum();
        Length::from_mm(variance.max(0.0).sqrt())
    }

    /// Standard deviation of the turn about an axis.
    #[must_use]
    pub fn about(&self, axis: UnitVector) -> Angle {
        let d = axis.to_array();
        let variance: f64 = (0..3)
            .flat_map(|i| (0..3).map(move |j| (i, j)))
            .map(|(i, j)| d[i] * self.0[i + 3][j + 3] * d[j])
            .sum();
        Angle::from_rad(variance.max(0.0).sqrt())
    }

    fn add(&mut self, shift: Vector, turn: Vector) {
        let e = [shift.x, shift.y, shift.z, turn.x, turn.y, turn.z];
        for (row, a) in self.0.iter_mut().zip(e) {
            for (value, b) in row.iter_mut().zip(e) {
                *value += a * b;
            }
        }
    }
}

/// Covariance of `end`, a frame at or beyond the end of the chain, when the chain is tacked from a
/// sure start in the order of `pieces`.
#[must_use]
pub fn end_covariance(pieces: &[ChainPiece], end: &Frame, tolerances: &Tolerances) -> Covariance {
    let mut covariance = Covariance::ZERO;
    for piece in pieces {
        let at = &piece.downstream;
        let arm = end.origin - at.origin;
        let mut turned = |axis: UnitVector, sigma: Angle| {
            let turn = axis * sigma.rad();
            covariance.add(turn.cross(arm), turn);
        };
        if piece.is_bend {
            turned(at.three(), tolerances.bend_angle);
        }
        if piece.has_joint {
            turned(at.twelve(), tolerances.cut_angle);
            turned(at.three(), tolerances.cut_angle);
            turned(at.travel(), tolerances.clock);
            covariance.add(at.travel() * tolerances.weld_pull.mm(), Vector::ZERO);
        }
        covariance.add(at.travel() * tolerances.cut_length.mm(), Vector::ZERO);
    }
    covariance
}

/// How much longer the closing piece is left, so that it is long enough 19 times in 20 on each
/// side: 1.96 standard deviations along its axis (normal distribution).
#[must_use]
pub fn closing_trim(covariance: &Covariance, axis: UnitVector) -> Length {
    covariance.along(axis) * 1.96
}
