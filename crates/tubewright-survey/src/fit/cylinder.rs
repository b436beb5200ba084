//! A cylinder through points on a tube.

use super::flat::principal;
use super::{Circle, FitError, centroid, fit_circle, needs, rms, signed};
use crate::linear::{V3, basis_about, point, v3, vector};
use crate::solve::least_squares::{Effort, Equations, LeastSquares, minimise};
use nalgebra::{DMatrix, DVector};
use tubewright_geometry::{Point, UnitVector};

/// A cylinder fitted by orthogonal (radial) distances.
#[derive(Clone, Debug, PartialEq)]
pub struct Cylinder {
    /// Foot of the points' middle on the axis.
    pub axis_point: Point,
    /// Direction of the axis, its largest component positive.
    pub axis: UnitVector,
    /// Radius in mm.
    pub radius_mm: f64,
    /// Radial distances in mm, positive outside.
    pub residuals_mm: Vec<f64>,
    /// `sqrt(Σ e² / n)`, mm.
    pub rms_mm: f64,
}

#[derive(Clone)]
struct State {
    through: V3,
    axis: V3,
    radius: f64,
}

struct Radial<'a> {
    points: &'a [V3],
    /// Half the length of the cloud: turns tilts into millimetres.
    lever: f64,
}

impl Radial<'_> {
    fn arm(s: &State, p: &V3) -> V3 {
        let d = p - s.through;
        d - s.axis * s.axis.dot(&d)
    }
}

impl LeastSquares for Radial<'_> {
    type State = State;
    type Matrix = DMatrix<f64>;

    fn width(&self) -> usize {
        5
    }

    fn room(&self) -> Equations {
        Equations::zeros(self.width())
    }

    fn equations(&mut self, s: &State, into: &mut Equations) {
        into.clear();
        let basis = basis_about(s.axis);
        let (e1, e2) = (basis.column(0), basis.column(1));
        for p in self.points {
            let arm = Self::arm(s, p);
            let d = arm.norm();
            let u = arm / d.max(1e-12);
            let along = s.axis.dot(&(p - s.through)) / self.lever;
            let row = [
                -u.dot(&e1),
                -u.dot(&e2),
                -u.dot(&e1) * along,
                -u.dot(&e2) * along,
                -1.0,
            ];
            into.add(&row, d - s.radius);
        }
    }

    fn moved(&self, s: &State, step: &DVector<f64>) -> State {
        let basis = basis_about(s.axis);
        let (e1, e2) = (basis.column(0), basis.column(1));
        let tilt = (e1 * step[2] + e2 * step[3]) / self.lever;
        State {
            through: s.through + e1 * step[0] + e2 * step[1],
            axis: (s.axis + tilt).normalize(),
            radius: s.radius + step[4],
        }
    }
}

/// Cylinder of least squared radial distances. Started along several directions with a circle fitted
/// square to each; the least sum is kept.
///
/// # Errors
/// [`FitError`] for fewer than five points or points that determine none.
pub fn fit_cylinder(points: &[Point]) -> Result<Cylinder, FitError> {
    let what = "a cylinder";
    needs(what, points.len(), 5)?;
    let p: Vec<V3> = points.iter().map(|p| v3(*p)).collect();
    let middle = centroid(&p);
    let (_, axes, spread) = principal(points).ok_or(FitError::Degenerate { what })?;
    if spread[1] <= 1e-9 * spread[0] || spread[0] <= 0.0 {
        return Err(FitError::Degenerate { what });
    }
    let mut problem = Radial {
        points: &p,
        lever: spread[0].max(1.0),
    };
    // The three principal directions and the four between them: a short piece of wide tube is widest
    // across its axis.
    let mut starts: Vec<V3> = axes.to_vec();
    for (a, b) in [(1.0, 1.0), (1.0, -1.0), (-1.0, 1.0), (-1.0, -1.0)] {
        starts.push((axes[0] + axes[1] * a + axes[2] * b).normalize());
    }
    let mut best: Option<(f64, State)> = None;
    for axis in starts {
        let basis = basis_about(axis);
        let (e1, e2) = (basis.column(0).into_owned(), basis.column(1).into_owned());
        let flat: Vec<[f64; 2]> = p
            .iter()
            .map(|q| [e1.dot(&(q - middle)), e2.dot(&(q - middle))])
            .collect();
        let Ok(Circle { centre, radius, .. }) = fit_circle(&flat) else {
            continue;
        };
        let start = State {
            through: middle + e1 * centre[0] + e2 * centre[1],
            axis,
            radius,
        };
        let rest = minimise(&mut problem, start, Effort::default());
        let better = best.as_ref().is_none_or(|(cost, _)| rest.cost < *cost);
        if rest.settled && rest.state.radius > 0.0 && better {
            best = Some((rest.cost, rest.state));
        }
    }
    let (_, state) = best.ok_or(FitError::NotSettled { what })?;
    let residuals_mm: Vec<f64> = p
        .iter()
        .map(|q| Radial::arm(&state, q).norm() - state.radius)
        .collect();
    let axis = signed(state.axis);
    let foot = state.through + axis * axis.dot(&(middle - state.through));
    Ok(Cylinder {
        axis_point: point(foot),
        axis: UnitVector::from_unit(vector(axis)),
        radius_mm: state.radius,
        rms_mm: rms(&residuals_mm),
        residuals_mm,
    })
}
