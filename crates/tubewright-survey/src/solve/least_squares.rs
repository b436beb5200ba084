//! Damped Gauss–Newton for small dense problems.

use super::polish::polished;
use nalgebra::{Cholesky, DMatrix, DVector, Dyn};

/// The equations of a step at one place: `J'WJ`, `J'Wr` and the sum of weighted squares, with
/// `r` = model − observed.
#[derive(Clone, Debug, PartialEq)]
pub struct Equations {
    /// `J'WJ`; its lower triangle is read.
    pub matrix: DMatrix<f64>,
    /// `J'Wr`.
    pub gradient: DVector<f64>,
    /// `r'Wr`.
    pub cost: f64,
}

impl Equations {
    /// All zero, for so many unknowns.
    #[must_use]
    pub fn zeros(width: usize) -> Self {
        Self {
            matrix: DMatrix::zeros(width, width),
            gradient: DVector::zeros(width),
            cost: 0.0,
        }
    }

    /// All zero again.
    pub fn clear(&mut self) {
        self.matrix.fill(0.0);
        self.gradient.fill(0.0);
        self.cost = 0.0;
    }

    /// Adds one equation `row · step = −misfit` of weight one.
    pub fn add(&mut self, row: &[f64], misfit: f64) {
        for (i, a) in row.iter().enumerate() {
            self.gradient[i] += a * misfit;
            for (k, b) in row.iter().enumerate() {
                self.matrix[(i, k)] += a * b;
            }
        }
        self.cost += misfit * misfit;
    }
}

/// A sum of squares to be made small.
pub trait LeastSquares {
    /// Present values of the unknowns, on whatever manifold they live.
    type State: Clone;

    /// Number of unknowns.
    fn width(&self) -> usize;

    /// The equations at `state`, into cleared or used room of the right size.
    fn equations(&mut self, state: &Self::State, into: &mut Equations);

    /// `state` moved by a step.
    fn moved(&self, state: &Self::State, step: &DVector<f64>) -> Self::State;

    /// Damping never falls below this part of the largest diagonal element. Above zero where steps exist
    /// that change no equation: without damping their matrix has no factor.
    fn least_damping(&self) -> f64 {
        0.0
    }

    /// Orthonormal steps, in columns, that change no equation at `state`.
    fn unseen(&mut self, _state: &Self::State) -> DMatrix<f64> {
        DMatrix::zeros(self.width(), 0)
    }
}

/// When to stop.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Effort {
    /// Most damped steps tried.
    pub steps: usize,
    /// Damped steps end when the predicted decrease of the sum of squares is below this part of
    /// it …
    pub settled_relative: f64,
    /// … or below this.
    pub settled_absolute: f64,
    /// First damping as a part of the largest diagonal element.
    pub first_damping: f64,
    /// Most undamped steps after them, down to the floor that rounding sets. None for a rough answer.
    pub last_steps: usize,
}

impl Default for Effort {
    fn default() -> Self {
        Self {
            steps: 500,
            settled_relative: 1e-12,
            settled_absolute: 1e-14,
            first_damping: 1e-3,
            last_steps: 120,
        }
    }
}

impl Effort {
    /// For starts that are tried and mostly thrown away: the last digits are left out.
    #[must_use]
    pub fn without_last_digits() -> Self {
        Self {
            last_steps: 0,
            ..Self::default()
        }
    }
}

/// Where the solver came to rest.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Rest<S> {
    /// The unknowns.
    pub state: S,
    /// Sum of weighted squares.
    pub cost: f64,
    /// Steps tried.
    pub steps: usize,
    /// True when the predicted decrease fell below the limit; false when the effort ran out.
    pub settled: bool,
}

/// Minimises by Levenberg's damping λI, λ controlled by the gain ratio (Madsen, Nielsen, Tingleff,
/// *Methods for Non-Linear Least Squares Problems*, 2nd ed. 2004, algorithm 3.16, from memory), then
/// undamped steps until rounding leaves nothing to gain. λI and not λ·diag: the latter can stop on a
/// false plateau where a column of the Jacobian vanishes.
///
/// Finds a local minimum; several starts are the caller's matter. A cost that is not finite at the
/// start is returned unsettled at once.
pub fn minimise<P: LeastSquares>(
    problem: &mut P,
    start: P::State,
    effort: Effort,
) -> Rest<P::State> {
    let width = problem.width();
    let mut here = Equations::zeros(width);
    problem.equations(&start, &mut here);
    let mut rest = Rest {
        cost: here.cost,
        state: start,
        steps: 0,
        settled: false,
    };
    if !rest.cost.is_finite() {
        return rest;
    }
    let mut there = Equations::zeros(width);
    damped(problem, &mut rest, &mut here, &mut there, effort);
    if effort.last_steps > 0 && rest.cost.is_finite() {
        polished(problem, &mut rest, here, there, effort.last_steps);
    }
    rest
}

fn largest(matrix: &DMatrix<f64>) -> f64 {
    (0..matrix.nrows()).fold(f64::MIN_POSITIVE, |m, k| m.max(matrix[(k, k)]))
}

/// The damped steps; `here` is kept at `rest.state`.
fn damped<P: LeastSquares>(
    problem: &mut P,
    rest: &mut Rest<P::State>,
    here: &mut Equations,
    there: &mut Equations,
    effort: Effort,
) {
    let mut damping = effort.first_damping * largest(&here.matrix);
    let mut growth = 2.0;
    let mut room = DMatrix::zeros(here.matrix.nrows(), here.matrix.ncols());
    let mut step = here.gradient.clone();
    while rest.steps < effort.steps {
        rest.steps += 1;
        let top = largest(&here.matrix);
        damping = damping.max(problem.least_damping() * top);
        room.copy_from(&here.matrix);
        for k in 0..room.nrows() {
            room[(k, k)] += damping;
        }
        let factor: Cholesky<f64, Dyn> = match room.cholesky() {
            Some(factor) => factor,
            None => {
                room = here.matrix.clone();
                damping = (damping * growth).max(1e-15 * top);
                growth *= 2.0;
                if !damping.is_finite() {
                    return;
                }
                continue;
            }
        };
        step.copy_from(&here.gradient);
        step.neg_mut();
        factor.solve_mut(&mut step);
        room = factor.unpack_dirty();
        let predicted = damping * step.norm_squared() - step.dot(&here.gradient);
        let limit = (effort.settled_relative * rest.cost).max(effort.settled_absolute);
        // With much damping left a small step says nothing.
        let free = damping <= effort.first_damping * top;
        if predicted <= limit && (free || predicted <= 0.0) {
            rest.settled = true;
            return;
        }
        let next = problem.moved(&rest.state, &step);
        problem.equations(&next, there);
        let gain = (rest.cost - there.cost) / predicted;
        if there.cost.is_finite() && gain > 0.0 {
            rest.state = next;
            rest.cost = there.cost;
            core::mem::swap(here, there);
            let keep = 2.0 * gain - 1.0;
            damping *= (1.0 - keep * keep * keep).max(1.0 / 3.0);
            // Near the end damping only slows the last digits down.
            if gain > 0.9 {
                damping *= 0.1;
            }
            growth = 2.0;
        } else {
            damping *= growth;
            growth *= 2.0;
            // A step this small is lost in the rounding of the sum: nothing is left to gain.
            if predicted <= 1e-13 * rest.cost || !damping.is_finite() {
                rest.settled = damping.is_finite();
                return;
            }
        }
    }
}
