//! Fits of simple shapes to measured points.
//!
//! The sign of a fitted normal, direction or axis makes its largest component positive; a circle
//! through three points turns right-handed from the first over the second to the third.

mod circle;
mod cylinder;
mod flat;
mod placement;
mod rigid;
mod three;

pub use circle::{Circle, fit_circle, fit_circle_algebraic};
pub use cylinder::{Cylinder, fit_cylinder};
pub use flat::{FittedLine, FittedPlane, fit_line, fit_plane};
pub use placement::{Placement, carried_by_marks, place_scan};
pub use rigid::{RigidFit, SimilarityFit, fit_rigid, fit_similarity, fit_similarity_plane};
pub use three::{ThreePointCircle, circle_through, trilaterate};

use crate::linear::V3;

/// Why a fit cannot be made.
#[derive(Clone, Debug, PartialEq, thiserror::Error)]
#[non_exhaustive]
pub enum FitError {
    /// Too few points.
    #[error("{given} points are too few for {what}: it takes at least {needed}")]
    TooFew {
        /// What was to be fitted.
        what: &'static str,
        /// Points given.
        given: usize,
        /// Points needed.
        needed: usize,
    },
    /// The two lists differ in length.
    #[error("{from} points cannot be fitted to {to}: give them in pairs")]
    NotPaired {
        /// Length of the first list.
        from: usize,
        /// Length of the second.
        to: usize,
    },
    /// The points do not determine the shape: all in one place, in line, or not finite.
    #[error(
        "the points do not determine {what}: they lie in one place or in line; spread them out"
    )]
    Degenerate {
        /// What was to be fitted.
        what: &'static str,
    },
    /// Three distances that do not meet.
    #[error(
        "the three tape lengths do not meet: they miss each other by {misclosure_mm:.1} mm; measure \
         them again"
    )]
    DoNotMeet {
        /// How far the third sphere is from the circle of the other two, mm.
        misclosure_mm: f64,
    },
    /// The iteration did not come to rest.
    #[error("the fit of {what} did not settle: the points are too few or too far from one")]
    NotSettled {
        /// What was to be fitted.
        what: &'static str,
    },
}

fn needs(what: &'static str, given: usize, needed: usize) -> Result<(), FitError> {
    if given < needed {
        return Err(FitError::TooFew {
            what,
            given,
            needed,
        });
    }
    Ok(())
}

#[expect(clippy::cast_precision_loss, reason = "a count of points is small")]
pub(crate) fn centroid(points: &[V3]) -> V3 {
    points.iter().sum::<V3>() / points.len().max(1) as f64
}

#[expect(clippy::cast_precision_loss, reason = "a count of points is small")]
fn rms(residuals: &[f64]) -> f64 {
    (residuals.iter().map(|e| e * e).sum::<f64>() / residuals.len().max(1) as f64).sqrt()
}

/// The same direction with its largest component positive.
fn signed(v: V3) -> V3 {
    let largest = v
        .iter()
        .fold(0.0_f64, |m, c| if c.abs() > m.abs() { *c } else { m });
    if largest < 0.0 { -v } else { v }
}
