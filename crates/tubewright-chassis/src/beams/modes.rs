//! The lowest natural frequencies by subspace iteration (Bathe 1996, section 11.6).

use super::matrix::{Factor, Sparse};
use nalgebra::{Cholesky, DMatrix, DVector};

/// Rounds at most.
const MOST_ROUNDS: usize = 200;

/// Eigenvalues that change by less than this share are found: frequencies are told to whole hertz.
const SETTLED: f64 = 1e-7;

/// The lowest squares of natural angular frequencies, 1/s², ascending.
pub(super) fn lowest(stiff: &mut Factor, heavy: &Sparse, count: usize) -> Vec<f64> {
    let size = stiff.size();
    let width = (2 * count).max(count + 8).min(size);
    // Bathe's start: one vector that moves everything, then unit vectors, here spread evenly.
    let mut basis: Vec<Vec<f64>> = (0..width)
        .map(|column| {
            let mut start = vec![if column == 0 { 1.0 } else { 0.0 }; size];
            if let Some(at) = start.get_mut(column * size / width) {
                *at = 1.0;
            }
            start
        })
        .collect();
    let mut last: Vec<f64> = Vec::new();
    for _ in 0..MOST_ROUNDS {
        let loads: Vec<Vec<f64>> = basis.iter().map(|column| heavy.times(column)).collect();
        let moved: Vec<Vec<f64>> = loads
            .iter()
            .map(|load| {
                let mut moved = load.clone();
                stiff.solve(&mut moved);
                moved
            })
            .collect();
        let stiff_small = DMatrix::from_fn(width, width, |i, k| dot(&moved[i], &loads[k]));
        let heavy_moved: Vec<Vec<f64>> = moved.iter().map(|column| heavy.times(column)).collect();
        let heavy_small = DMatrix::from_fn(width, width, |i, k| dot(&moved[i], &heavy_moved[k]));
        let Some((squares, turns)) = small_modes(&stiff_small, &heavy_small) else {
            return last;
        };
        basis = (0..width)
            .map(|column| {
                let mut next = vec![0.0; size];
                for (from, own) in moved.iter().enumerate() {
                    let share = turns[(from, column)];
                    for (to, value) in next.iter_mut().zip(own) {
                        *to += share * value;
                    }
                }
                next
            })
            .collect();
        let found: Vec<f64> = squares.iter().take(count).copied().collect();
        let is_settled = last.len() == found.len()
            && last
                .iter()
                .zip(&found)
                .all(|(a, b)| (a - b).abs() <= SETTLED * b.abs());
        last = found;
        if is_settled {
            break;
        }
    }
    last
}

fn dot(a: &[f64], b: &[f64]) -> f64 {
    a.iter().zip(b).map(|(a, b)| a * b).sum()
}

/// `K φ = ω² M φ` of a small pair, ascending, with the vectors as columns, `M`-normal.
fn small_modes(stiff: &DMatrix<f64>, heavy: &DMatrix<f64>) -> Option<(DVector<f64>, DMatrix<f64>)> {
    // With K as the unit matrix: stiffness is always definite, mass need not be.
    let lower = Cholesky::new(stiff.clone())?.l();
    let inverse = lower.clone().try_inverse()?;
    let whole = &inverse * heavy * inverse.transpose();
    let whole = 0.5 * (&whole + whole.transpose());
    let eigen = whole.symmetric_eigen();
    let mut order: Vec<usize> = (0..stiff.nrows()).collect();
    order.sort_by(|a, b| eigen.eigenvalues[*b].total_cmp(&eigen.eigenvalues[*a]));
    let squares = DVector::from_iterator(
        order.len(),
        order.iter().map(|&k| {
            let share = eigen.eigenvalues[k];
            if share > 0.0 {
                1.0 / share
            } else {
                f64::INFINITY
            }
        }),
    );
    let turns = inverse.transpose() * eigen.eigenvectors;
    let turns = DMatrix::from_columns(
        &order
            .iter()
            .map(|&k| turns.column(k).into_owned())
            .collect::<Vec<_>>(),
    );
    Some((squares, turns))
}
