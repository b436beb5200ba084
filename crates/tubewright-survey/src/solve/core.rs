//! What moves when the part that holds together is taken to stand still.

use crate::linear::{Matrix, V3};
use crate::model::{Layout, State};

/// Part of a motion below which a distance counts as unchanged.
const UNCHANGED: f64 = 1e-5;

/// Loose directions of a free network are found square to its rigid motions, so that a single loose
/// point drags everything along the other way. Given those (`loose`) and the rigid motions, the same
/// space of motions with three points held that hold together; `loose` itself where there are none.
pub(super) fn against_core(
    layout: &Layout,
    state: &State,
    loose: Matrix,
    motions: &Matrix,
) -> Matrix {
    if loose.ncols() == 0 || motions.ncols() == 0 {
        return loose;
    }
    let Some(core) = core_points(layout, state, &loose) else {
        return loose;
    };
    let all = Matrix::from_fn(loose.nrows(), loose.ncols() + motions.ncols(), |i, k| {
        if k < loose.ncols() {
            loose[(i, k)]
        } else {
            motions[(i, k - loose.ncols())]
        }
    });
    let columns: Vec<usize> = core
        .iter()
        .flat_map(|&p| layout.points[p].iter().flatten().copied())
        .collect();
    let moved = all.select_rows(&columns);
    let eigen = (moved.transpose() * &moved).symmetric_eigen();
    let mut order: Vec<usize> = (0..eigen.eigenvalues.len()).collect();
    order.sort_by(|&i, &k| eigen.eigenvalues[i].total_cmp(&eigen.eigenvalues[k]));
    let still: Vec<_> = order
        .iter()
        .take(loose.ncols())
        .map(|&k| &all * eigen.eigenvectors.column(k))
        .collect();
    Matrix::from_columns(&still).qr().q()
}

/// Three points, not in line, whose distances no loose motion changes; those that share such distances
/// with most others.
fn core_points(layout: &Layout, state: &State, loose: &Matrix) -> Option<[usize; 3]> {
    let count = state.points.len();
    let keeps = |p: usize, q: usize| {
        let Some(u) = (state.points[q] - state.points[p]).try_normalize(1.0) else {
            return false;
        };
        (0..loose.ncols()).all(|k| {
            let along = |point: usize| -> f64 {
                (0..3)
                    .filter_map(|i| Some(loose[(layout.points[point][i]?, k)] * u[i]))
                    .sum()
            };
            (along(q) - along(p)).abs() < UNCHANGED
        })
    };
    let mates: Vec<Vec<usize>> = (0..count)
        .map(|p| (0..count).filter(|&q| q != p && keeps(p, q)).collect())
        .collect();
    let most = |among: &[usize]| {
        let mut sorted = among.to_vec();
        sorted.sort_by(|&i, &k| mates[k].len().cmp(&mates[i].len()).then(i.cmp(&k)));
        sorted
    };
    let everyone: Vec<usize> = (0..count).collect();
    for a in most(&everyone) {
        for b in most(&mates[a]) {
            let both: Vec<usize> = mates[a]
                .iter()
                .copied()
                .filter(|p| mates[b].contains(p))
                .collect();
            let wide = |c: &usize| {
                let (u, v): (V3, V3) = (
                    state.points[b] - state.points[a],
                    state.points[*c] - state.points[a],
                );
                u.cross(&v).norm() > 0.1 * u.norm() * v.norm()
            };
            if let Some(c) = most(&both).into_iter().find(wide) {
                return Some([a, b, c]);
            }
        }
    }
    None
}
