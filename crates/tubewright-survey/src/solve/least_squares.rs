//! Damped Gauss–Newton for small problems.

use super::polish::polished;
use nalgebra::{DMatrix, DVector};

/// The matrix `J'WJ` of a step, dense or sparse.
pub trait NormalMatrix {
    /// What a factor of it lies in; used again at every step.
    type Factor;

    /// Room for a factor.
    fn factor(&self) -> Self::Factor;

    /// Largest element of the diagonal, above zero.
    fn largest(&self) -> f64;

    /// Solves `(self + damping I) x = right` in the place of `right`. False, with `right` of no use, where
    /// the sum is not positive definite.
    fn solve_damped(
        &self,
        factor: &mut Self::Factor,
        damping: f64,
        right: &mut DVector<f64>,
    ) -> bool;
}

impl NormalMatrix for DMatrix<f64> {
    type Factor = Self;

    fn factor(&self) -> Self {
        Self::zeros(self.nrows(), self.ncols())
    }

    fn largest(&self) -> f64 {
        (0..self.nrows()).fold(f64::MIN_POSITIVE, |m, k| m.max(self[(k, k)]))
    }

    fn solve_damped(&self, factor: &mut Self, damping: f64, right: &mut DVector<f64>) -> bool {
        let mut room = core::mem::replace(factor, Self::zeros(0, 0));
        room.copy_from(self);
        for k in 0..room.nrows() {
            room[(k, k)] += damping;
        }
        let Some(factored) = room.cholesky() else {
            *factor = NormalMatrix::factor(self);
            return false;
        };
        factored.solve_mut(right);
        *factor = factored.unpack_dirty();
        true
    }
}

/// The equations of a step at one place: `J'WJ`, `J'Wr` and the sum of weighted squares, with
/// `r` = model − observed.
#[derive(Clone, Debug, PartialEq)]
pub struct Equations<M = DMatrix<f64>> {
    /// `J'WJ`; of a dense one the lower triangle is read.
    pub matrix: M,
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

    /// How `J'WJ` is kept.
    type Matrix: NormalMatrix;

    /// Number of unknowns.
    fn width(&self) -> usize;

    /// Room for the equations.
    fn room(&self) -> Equations<Self::Matrix>;

    /// The equations at `state`, into cleared or used room.
    fn equations(&mut self, state: &Self::State, into: &mut Equations<Self::Matrix>);

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
pub fn minimise<P: LeastSquares<Matrix = DMatrix<f64>>>(
    problem: &mut P,
    start: P::State,
    effort: Effort,
) -> Rest<P::State> {
    let (mut here, mut there) = (problem.room(), problem.room());
    let mut rest = damped(problem, start, (&mut here, &mut there), effort);
    if effort.last_steps > 0 && rest.cost.is_finite() {
        polished(problem, &mut rest, here, there, effort.last_steps);
    }
    rest
}

/// The damped steps of [`minimise`] alone, with whatever matrix; [`Effort::last_steps`] is not read.
pub fn minimise_roughly<P: LeastSquares>(
    problem: &mut P,
    start: P::State,
    effort: Effort,
) -> Rest<P::State> {
    let (mut here, mut there) = (problem.room(), problem.room());
    damped(problem, start, (&mut here, &mut there), effort)
}

/// The damped steps. `here` holds the equations where they came to rest.
fn damped<P: LeastSquares>(
    problem: &mut P,
    start: P::State,
    (here, there): (&mut Equations<P::Matrix>, &mut Equations<P::Matrix>),
    effort: Effort,
) -> Rest<P::State> {
    problem.equations(&start, here);
    let mut rest = Rest {
        cost: here.cost,
        state: start,
        steps: 0,
        settled: false,
    };
    if rest.cost.is_finite() {
        take_steps(problem, &mut rest, here, there, effort);
    }
    rest
}

/// Steps until they gain nothing; `here` is kept at `rest.state`.
fn take_steps<P: LeastSquares>(
    problem: &mut P,
    rest: &mut Rest<P::State>,
    here: &mut Equations<P::Matrix>,
    there: &mut Equations<P::Matrix>,
    effort: Effort,
) {
    let mut damping = effort.first_damping * here.matrix.largest();
    let mut growth = 2.0;
    let mut factor = here.matrix.factor();
    let mut step = here.gradient.clone();
    while rest.steps < effort.steps {
        rest.steps += 1;
        let top = here.matrix.largest();
        damping = damping.max(problem.least_damping() * top);
        step.copy_from(&here.gradient);
        step.neg_mut();
        if !here.matrix.solve_damped(&mut factor, damping, &mut step) {
            damping = (damping * growth).max(1e-15 * top);
            growth *= 2.0;
            if !damping.is_finite() {
                return;
            }
            continue;
        }
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
