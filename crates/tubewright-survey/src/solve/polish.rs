//! The last digits of a least-squares problem: undamped steps down to the floor that rounding sets.
//!
//! Where misfits are large against the bend of the equations, Gauss–Newton steps shrink by a constant
//! factor only, or not at all. They are mixed with the steps before them so that the slow directions
//! are taken out (Anderson 1965, *Iterative procedures for nonlinear integral equations*; Walker & Ni
//! 2011, *Anderson acceleration for fixed-point iterations*, from memory). The mixture is weighed by the
//! normal matrix, so that units of the unknowns do not matter.

use super::least_squares::{Equations, LeastSquares, Rest};
use nalgebra::{Cholesky, DMatrix, DVector, Dyn};

/// Predicted decrease of the sum of squares at which a state counts as at rest: a step of 1e-11 σ.
/// Even in a direction that is known to a metre only it is below 1e-8 mm.
const AT_REST: f64 = 1e-22;

/// Steps that bring no further halving of the predicted decrease, after which rounding is believed to
/// set the floor.
const PATIENCE: usize = 8;

/// Steps taken with one factor of the normal matrix, and most steps that are mixed.
const MEMORY: usize = 8;

/// Part of the sum of squares by which rounding may raise it.
const ROUNDING: f64 = 1e-12;

/// Square of a pivot against its diagonal element below which a direction counts as loose.
const LOOSE: f64 = 1e-11;

/// Brings `rest` from where the damped steps left it to where no step can gain any more. `here` holds
/// the equations at `rest.state`.
pub(super) fn polished<P: LeastSquares<Matrix = DMatrix<f64>>>(
    problem: &mut P,
    rest: &mut Rest<P::State>,
    mut here: Equations,
    mut there: Equations,
    most: usize,
) {
    let unseen = problem.unseen(&rest.state);
    let mut state = rest.state.clone();
    let mut least = f64::INFINITY;
    let mut idle = 0;
    let mut mixer = Mixer::default();
    let Some(mut factor) = factor(&here.matrix, &unseen) else {
        return;
    };
    for round in 1..=most {
        let step = -factor.solve(&here.gradient);
        let predicted = -step.dot(&here.gradient);
        if !predicted.is_finite() {
            return;
        }
        idle = if predicted < 0.5 * least { 0 } else { idle + 1 };
        if predicted < least {
            least = predicted;
            rest.state = state.clone();
            rest.cost = here.cost;
        }
        if predicted <= AT_REST || idle >= PATIENCE {
            return;
        }
        let Some(next) = forward(problem, &state, (&here, &mut there), &mut mixer, step) else {
            return;
        };
        state = next;
        core::mem::swap(&mut here, &mut there);
        rest.steps += 1;
        if round % MEMORY == 0 {
            let Some(renewed) = self::factor(&here.matrix, &unseen) else {
                return;
            };
            factor = renewed;
            mixer.forget();
        }
    }
}

/// The factor of the normal matrix with the unseen motions held, and, where the equations leave a
/// direction loose, with just enough damping that it stays put.
fn factor(matrix: &DMatrix<f64>, unseen: &DMatrix<f64>) -> Option<Cholesky<f64, Dyn>> {
    let width = matrix.nrows();
    #[expect(clippy::cast_precision_loss, reason = "a count of unknowns is small")]
    let mean = matrix.trace() / width.max(1) as f64;
    let mut held = matrix.clone();
    held.ger_all(unseen, mean);
    let diagonal = held.diagonal();
    let sound = held.clone().cholesky().filter(|f| {
        let pivots = f.l_dirty().diagonal();
        pivots
            .iter()
            .zip(diagonal.iter())
            .all(|(p, d)| p * p > LOOSE * d)
    });
    sound.or_else(|| {
        for k in 0..width {
            held[(k, k)] += 1e-9 * mean;
        }
        held.cholesky()
    })
}

/// Adds the projector on some directions.
trait HoldStill {
    fn ger_all(&mut self, directions: &DMatrix<f64>, strength: f64);
}

impl HoldStill for DMatrix<f64> {
    fn ger_all(&mut self, directions: &DMatrix<f64>, strength: f64) {
        for column in directions.column_iter() {
            self.ger(strength, &column, &column, 1.0);
        }
    }
}

/// One step ahead, mixed with those before; shortened where the sum of squares would rise. The
/// equations of the place that is reached are left in `there`.
fn forward<P: LeastSquares<Matrix = DMatrix<f64>>>(
    problem: &mut P,
    state: &P::State,
    (here, there): (&Equations, &mut Equations),
    mixer: &mut Mixer,
    step: DVector<f64>,
) -> Option<P::State> {
    let bound = here.cost * (1.0 + ROUNDING) + f64::MIN_POSITIVE;
    let mut attempt = |step: &DVector<f64>| {
        let next = problem.moved(state, step);
        problem.equations(&next, there);
        (there.cost <= bound).then_some(next)
    };
    let mixed = mixer.mixed(&step, &here.gradient);
    if let Some(next) = attempt(&mixed) {
        mixer.taken(mixed, step, here.gradient.clone());
        return Some(next);
    }
    mixer.forget();
    let mut shorter = step;
    for _ in 0..6 {
        if let Some(next) = attempt(&shorter) {
            return Some(next);
        }
        shorter *= 0.5;
    }
    None
}

/// Remembers steps and what became of them, since the factor was last renewed.
#[derive(Default)]
struct Mixer {
    /// The step that was taken last, the plain step proposed there, and the gradient there.
    last: Option<(DVector<f64>, DVector<f64>, DVector<f64>)>,
    /// Changes from one place to the next: of place and plain step together, of the plain step, and of
    /// the gradient.
    changes: Vec<(DVector<f64>, DVector<f64>, DVector<f64>)>,
}

impl Mixer {
    fn forget(&mut self) {
        self.last = None;
        self.changes.clear();
    }

    fn taken(&mut self, moved: DVector<f64>, step: DVector<f64>, gradient: DVector<f64>) {
        self.last = Some((moved, step, gradient));
    }

    /// The plain step less that combination of the changes that makes what is left smallest.
    fn mixed(&mut self, step: &DVector<f64>, gradient: &DVector<f64>) -> DVector<f64> {
        if let Some((moved, before, gradient_before)) = self.last.take() {
            let by = step - before;
            self.changes
                .push((moved + &by, by, gradient - gradient_before));
        }
        let count = self.changes.len();
        if count == 0 {
            return step.clone();
        }
        // Steps are −N⁻¹ times gradients, so that −(change of step)·(change of gradient) is their
        // product weighed by N.
        let mut products = DMatrix::from_fn(count, count, |i, k| {
            -self.changes[i].1.dot(&self.changes[k].2)
        });
        let ridge = 1e-14 * products.trace();
        for k in 0..count {
            products[(k, k)] += ridge;
        }
        let right = DVector::from_fn(count, |i, _| -step.dot(&self.changes[i].2));
        let Some(factor) = products.cholesky() else {
            self.changes.clear();
            return step.clone();
        };
        let parts = factor.solve(&right);
        let mut mixed = step.clone();
        for (part, (change, _, _)) in parts.iter().zip(&self.changes) {
            mixed.axpy(-part, change, 1.0);
        }
        mixed
    }
}
