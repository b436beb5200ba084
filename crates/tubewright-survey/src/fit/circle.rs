//! Circles in a plane.

use super::{FitError, needs, rms};
use crate::solve::least_squares::{Effort, Equations, LeastSquares, minimise};
use nalgebra::{DMatrix, DVector};

/// A circle in a plane, in the unit of its points.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Circle {
    /// Centre.
    pub centre: [f64; 2],
    /// Radius.
    pub radius: f64,
    /// `sqrt(Σ e² / n)` of the orthogonal distances.
    pub rms: f64,
}

fn distances(points: &[[f64; 2]], centre: [f64; 2], radius: f64) -> Vec<f64> {
    points
        .iter()
        .map(|p| {
            let (x, y) = (p[0] - centre[0], p[1] - centre[1]);
            (x * x + y * y).sqrt() - radius
        })
        .collect()
}

/// Algebraic fit: smallest `|B u|` with `u` of length one for `a (x² + y²) + b·x + c = 0` (Gander,
/// Golub & Strebel 1994, BIT 34:558). A start for [`fit_circle`], drawn toward small circles.
///
/// # Errors
/// [`FitError`] for fewer than three points or points in line.
pub fn fit_circle_algebraic(points: &[[f64; 2]]) -> Result<Circle, FitError> {
    let what = "a circle";
    needs(what, points.len(), 3)?;
    let b = DMatrix::from_fn(points.len().max(4), 4, |i, k| {
        points
            .get(i)
            .map_or(0.0, |&[x, y]| [x * x + y * y, x, y, 1.0][k])
    });
    let svd = b.svd(false, true);
    let v_t = svd.v_t.ok_or(FitError::Degenerate { what })?;
    let u: [f64; 4] = core::array::from_fn(|k| v_t[(3, k)]);
    let centre = [-0.5 * u[1] / u[0], -0.5 * u[2] / u[0]];
    let squared = centre[0] * centre[0] + centre[1] * centre[1] - u[3] / u[0];
    if !squared.is_finite() || squared <= 0.0 || u[0].abs() < 1e-14 {
        return Err(FitError::Degenerate { what });
    }
    let radius = squared.sqrt();
    Ok(Circle {
        centre,
        radius,
        rms: rms(&distances(points, centre, radius)),
    })
}

struct Orthogonal<'a>(&'a [[f64; 2]]);

impl LeastSquares for Orthogonal<'_> {
    type State = [f64; 3];
    type Matrix = DMatrix<f64>;

    fn width(&self) -> usize {
        3
    }

    fn room(&self) -> Equations {
        Equations::zeros(self.width())
    }

    fn equations(&mut self, s: &[f64; 3], into: &mut Equations) {
        into.clear();
        for p in self.0 {
            let (x, y) = (p[0] - s[0], p[1] - s[1]);
            let d = (x * x + y * y).sqrt();
            let long = d.max(1e-12);
            into.add(&[-x / long, -y / long, -1.0], d - s[2]);
        }
    }

    fn moved(&self, s: &[f64; 3], step: &DVector<f64>) -> [f64; 3] {
        core::array::from_fn(|k| s[k] + step[k])
    }
}

/// Geometric fit: least squared orthogonal distances, started from the algebraic fit (Gander, Golub &
/// Strebel 1994).
///
/// # Errors
/// [`FitError`] for fewer than three points or points in line.
pub fn fit_circle(points: &[[f64; 2]]) -> Result<Circle, FitError> {
    let start = fit_circle_algebraic(points)?;
    let state = [start.centre[0], start.centre[1], start.radius];
    let rest = minimise(&mut Orthogonal(points), state, Effort::default());
    if !rest.settled || rest.state[2] <= 0.0 {
        return Err(FitError::NotSettled { what: "a circle" });
    }
    let centre = [rest.state[0], rest.state[1]];
    Ok(Circle {
        centre,
        radius: rest.state[2],
        rms: rms(&distances(points, centre, rest.state[2])),
    })
}
