//! Damped Gauss–Newton for small dense problems.

use nalgebra::{DMatrix, DVector};

/// A sum of squares to be made small.
pub trait LeastSquares {
    /// Present values of the unknowns, on whatever manifold they live.
    type State: Clone;

    /// Sum of weighted squares at `state`.
    fn cost(&self, state: &Self::State) -> f64;

    /// `J'WJ` and `J'Wr` at `state`, with `r` = model − observed.
    fn normal_equations(&self, state: &Self::State) -> (DMatrix<f64>, DVector<f64>);

    /// `state` moved by a step.
    fn moved(&self, state: &Self::State, step: &DVector<f64>) -> Self::State;
}

/// When to stop.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Effort {
    /// Most steps tried.
    pub steps: usize,
    /// Settled when the predicted decrease of the sum of squares is below this part of it …
    pub settled_relative: f64,
    /// … or below this.
    pub settled_absolute: f64,
    /// First damping as a part of the largest diagonal element.
    pub first_damping: f64,
}

impl Default for Effort {
    fn default() -> Self {
        Self {
            steps: 500,
            settled_relative: 1e-16,
            settled_absolute: 1e-18,
            first_damping: 1e-3,
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
/// undamped steps until nothing is left to gain. λI and not λ·diag: the latter can stop on a false
/// plateau where a column of the Jacobian vanishes.
///
/// Finds a local minimum; several starts are the caller's matter. A cost that is not finite at the
/// start is returned unsettled at once.
pub fn minimise<P: LeastSquares>(problem: &P, start: P::State, effort: Effort) -> Rest<P::State> {
    let mut rest = Rest {
        cost: problem.cost(&start),
        state: start,
        steps: 0,
        settled: false,
    };
    if !rest.cost.is_finite() {
        return rest;
    }
    let (mut n, mut g) = problem.normal_equations(&rest.state);
    let largest = |n: &DMatrix<f64>| n.diagonal().iter().fold(0.0_f64, |m, d| m.max(*d));
    let mut damping = effort.first_damping * largest(&n).max(f64::MIN_POSITIVE);
    let mut growth = 2.0;
    while rest.steps < effort.steps {
        rest.steps += 1;
        let mut damped = n.clone();
        for k in 0..damped.nrows() {
            damped[(k, k)] += damping;
        }
        let Some(factor) = damped.cholesky() else {
            damping = (damping * growth).max(1e-15 * largest(&n));
            growth *= 2.0;
            if !damping.is_finite() {
                return rest;
            }
            continue;
        };
        let step = -factor.solve(&g);
        let predicted = step.dot(&(&step * damping - &g));
        let limit = (effort.settled_relative * rest.cost).max(effort.settled_absolute);
        if predicted <= limit {
            rest.settled = true;
            break;
        }
        let next = problem.moved(&rest.state, &step);
        let cost = problem.cost(&next);
        let gain = (rest.cost - cost) / predicted;
        if cost.is_finite() && gain > 0.0 {
            rest.state = next;
            rest.cost = cost;
            (n, g) = problem.normal_equations(&rest.state);
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
                break;
            }
        }
    }
    polish(problem, &mut rest, (n, g), effort);
    rest
}

/// Undamped steps: the damped ones stop a little short, and the last digits are compared with
/// others'.
fn polish<P: LeastSquares>(
    problem: &P,
    rest: &mut Rest<P::State>,
    (mut n, mut g): (DMatrix<f64>, DVector<f64>),
    effort: Effort,
) {
    let mut previous = f64::INFINITY;
    for _ in 0..8 {
        let Some(factor) = n.clone().cholesky() else {
            return;
        };
        let step = -factor.solve(&g);
        let predicted = -step.dot(&g);
        // Rounding of the gradient sets the floor under the predicted decrease.
        if !predicted.is_finite() || predicted >= previous || predicted <= 0.0 {
            return;
        }
        let next = problem.moved(&rest.state, &step);
        let cost = problem.cost(&next);
        if !cost.is_finite() || cost > rest.cost * (1.0 + 1e-12) + effort.settled_absolute {
            return;
        }
        rest.state = next;
        rest.cost = cost;
        if predicted <= 1e-24 * (1.0 + cost) {
            return;
        }
        previous = predicted;
        (n, g) = problem.normal_equations(&rest.state);
    }
}
