//! A network as a least-squares problem, and the joint covariance of its unknowns.

use super::core::against_core;
use super::gauge::unseen_motions;
use super::least_squares::{Effort, Equations, LeastSquares, Rest, minimise};
use crate::linear::{Matrix, Vector1};
use crate::model::{Layout, Rows, State, linearise_into};
use crate::network::{Contact, Network};

pub(crate) struct NetworkProblem<'a> {
    network: &'a Network,
    layout: &'a Layout,
    /// Room that is used again at every step.
    rows: Rows,
}

impl<'a> NetworkProblem<'a> {
    pub(crate) fn new(network: &'a Network, layout: &'a Layout) -> Self {
        Self {
            network,
            layout,
            rows: Rows::default(),
        }
    }
}

/// All unknowns are millimetres or levers turned by millimetres: even what is known to ten metres only is
/// hardly held back by this.
const LEAST_DAMPING: f64 = 1e-11;

impl LeastSquares for NetworkProblem<'_> {
    type State = State;
    type Matrix = Matrix;

    fn width(&self) -> usize {
        self.layout.width
    }

    fn room(&self) -> Equations {
        Equations::zeros(self.width())
    }

    fn equations(&mut self, state: &State, into: &mut Equations) {
        linearise_into(self.network, self.layout, state, &mut self.rows);
        self.rows.normal_equations(into);
    }

    fn moved(&self, state: &State, step: &Vector1) -> State {
        state.moved(self.layout, step)
    }

    fn least_damping(&self) -> f64 {
        LEAST_DAMPING
    }

    fn unseen(&mut self, state: &State) -> Matrix {
        linearise_into(self.network, self.layout, state, &mut self.rows);
        unseen_motions(self.network, self.layout, state, &self.rows)
    }
}

/// Solves from `start`; sideways readings are settled by repeating with the direction renewed.
pub(crate) fn solve_from(
    network: &Network,
    layout: &Layout,
    start: State,
    effort: Effort,
) -> Rest<State> {
    let mut problem = NetworkProblem::new(network, layout);
    let sideways = network
        .readings
        .iter()
        .any(|r| !r.set_aside && r.kind.touches().iter().any(|t| is_sideways(t.contact)));
    let mut rest = minimise(&mut problem, renewed(network, layout, start), effort);
    if !sideways {
        return rest;
    }
    for _ in 0..20 {
        let before = rest.state.sideways;
        let next = renewed(network, layout, rest.state.clone());
        let turned = match (before, next.sideways) {
            (Some((a, _)), Some((b, _))) => (a - b).norm(),
            _ => 0.0,
        };
        if turned < 1e-12 {
            break;
        }
        rest = minimise(&mut problem, next, effort);
    }
    rest
}

fn is_sideways(contact: Contact) -> bool {
    matches!(
        contact,
        Contact::OuterSide { .. } | Contact::InnerSide { .. }
    )
}

/// The sideways direction as it follows from the present places: the centre plane where symmetry
/// readings give one, else the mean of the pairs.
fn renewed(network: &Network, layout: &Layout, mut state: State) -> State {
    let pairs = state.sideways_from_pairs(network);
    state.sideways = match (layout.plane, pairs) {
        (Some(_), Some((direction, _))) => {
            let sign = direction.dot(&state.plane.normal()).signum();
            Some((state.plane.normal() * sign, state.plane.offset * sign))
        }
        (_, pairs) => pairs,
    };
    state
}

/// What is known of the unknowns at the solution.
#[derive(Clone, Debug)]
pub(crate) struct Knowledge {
    /// Covariance with inner constraints; meaningless in the undetermined columns.
    pub(crate) covariance: Matrix,
    /// Rank of the equations.
    pub(crate) rank: usize,
    /// For each column, how much of it lies in directions that no reading fixes, 0 to 1.
    pub(crate) unfixed: Vec<f64>,
    /// Orthonormal directions, in columns, that no reading fixes (rigid motions apart).
    pub(crate) loose: Matrix,
}

/// Square of the ratio of weakest to strongest direction, columns made equal, below which a
/// direction counts as not fixed: a σ a hundred thousand times that of the readings.
const LOOSE: f64 = 1e-10;

pub(crate) fn knowledge(
    network: &Network,
    layout: &Layout,
    state: &State,
    rows: &Rows,
) -> Knowledge {
    let width = layout.width;
    if width == 0 {
        return Knowledge {
            covariance: Matrix::zeros(0, 0),
            rank: 0,
            unfixed: Vec::new(),
            loose: Matrix::zeros(0, 0),
        };
    }
    let mut equations = Equations::zeros(width);
    rows.normal_equations(&mut equations);
    let mut n = equations.matrix;
    let motions = unseen_motions(network, layout, state, rows);
    #[expect(clippy::cast_precision_loss, reason = "a count of unknowns is small")]
    let strength = n.trace() / (width as f64);
    n += &motions * motions.transpose() * strength;
    let scale: Vec<f64> = n
        .diagonal()
        .iter()
        .map(|d| if *d > 0.0 { d.sqrt() } else { 1.0 })
        .collect();
    let scaled = Matrix::from_fn(width, width, |i, k| n[(i, k)] / (scale[i] * scale[k]));
    let mut loose = Matrix::zeros(width, 0);
    let mut unfixed = vec![0.0; width];
    let factor = scaled.clone().cholesky().filter(|f| {
        // The squared pivots bound the smallest eigenvalue from above; a small one asks for the
        // eigenvalues themselves.
        f.l_dirty().diagonal().iter().all(|p| p * p > 1e-7)
    });
    let inverse = if let Some(factor) = factor {
        factor.inverse()
    } else {
        let eigen = scaled.symmetric_eigen();
        let mut inverse = Matrix::zeros(width, width);
        let mut null = Vec::new();
        for (k, &value) in eigen.eigenvalues.iter().enumerate() {
            let column = eigen.eigenvectors.column(k);
            if value > LOOSE {
                inverse += column * column.transpose() / value;
            } else {
                let unscaled = Vector1::from_fn(width, |i, _| column[i] / scale[i]);
                null.push(unscaled.normalize());
            }
        }
        if !null.is_empty() {
            let found = Matrix::from_columns(&null).qr().q();
            let q = against_core(layout, state, found, &motions);
            for (i, share) in unfixed.iter_mut().enumerate() {
                *share = q.row(i).norm_squared();
            }
            loose = q;
        }
        inverse
    };
    let mut covariance =
        Matrix::from_fn(width, width, |i, k| inverse[(i, k)] / (scale[i] * scale[k]));
    if strength > 0.0 {
        covariance -= &motions * motions.transpose() / strength;
    }
    Knowledge {
        rank: width - motions.ncols() - loose.ncols(),
        covariance,
        unfixed,
        loose,
    }
}
