//! A symmetric sparse matrix and its factor by a crate (`clarabel`'s LDLᵀ).

use super::EACH;
use super::element::Matrix12;
use clarabel::algebra::CscMatrix;
use clarabel::qdldl::{QDLDLFactorisation, QDLDLSettings};
use nalgebra::Matrix6;
use std::collections::BTreeMap;

/// The upper triangle, by column and row.
#[derive(Clone, Debug)]
pub(super) struct Sparse {
    size: usize,
    elements: BTreeMap<(usize, usize), f64>,
}

impl Sparse {
    pub(super) const fn new(size: usize) -> Self {
        Self {
            size,
            elements: BTreeMap::new(),
        }
    }

    pub(super) const fn size(&self) -> usize {
        self.size
    }

    fn add(&mut self, row: usize, column: usize, value: f64) {
        if row <= column {
            *self.elements.entry((column, row)).or_insert(0.0) += value;
        }
    }

    pub(super) fn add_place(&mut self, place: usize, block: &Matrix6<f64>) {
        for i in 0..EACH {
            for k in 0..EACH {
                self.add(EACH * place + i, EACH * place + k, block[(i, k)]);
            }
        }
    }

    pub(super) fn add_member(&mut self, ends: [usize; 2], block: &Matrix12) {
        let place = |i: usize| EACH * ends[i / EACH] + i % EACH;
        for i in 0..2 * EACH {
            for k in 0..2 * EACH {
                self.add(place(i), place(k), block[(i, k)]);
            }
        }
    }

    pub(super) fn times(&self, of: &[f64]) -> Vec<f64> {
        let mut result = vec![0.0; self.size];
        for (&(column, row), value) in &self.elements {
            result[row] += value * of[column];
            if row != column {
                result[column] += value * of[row];
            }
        }
        result
    }

    /// Its factor; `None` when it is not positive definite.
    pub(super) fn factor(&self) -> Option<Factor> {
        let mut starts = vec![0; self.size + 1];
        for &(column, _) in self.elements.keys() {
            starts[column + 1] += 1;
        }
        for column in 0..self.size {
            starts[column + 1] += starts[column];
        }
        let matrix = CscMatrix {
            m: self.size,
            n: self.size,
            colptr: starts,
            rowval: self.elements.keys().map(|&(_, row)| row).collect(),
            nzval: self.elements.values().copied().collect(),
        };
        let settings = QDLDLSettings {
            regularize_enable: false,
            ..QDLDLSettings::default()
        };
        let factor = QDLDLFactorisation::new(&matrix, Some(settings)).ok()?;
        let most = self.elements.values().fold(0.0_f64, |m, v| m.max(v.abs()));
        let is_held = factor.D.iter().all(|pivot| *pivot > 1e-14 * most);
        is_held.then_some(Factor(factor))
    }
}

/// The factor of a matrix.
pub(super) struct Factor(QDLDLFactorisation<f64>);

impl core::fmt::Debug for Factor {
    fn fmt(&self, f: &mut core::fmt::Formatter<'_>) -> core::fmt::Result {
        f.debug_struct("Factor").finish_non_exhaustive()
    }
}

impl Factor {
    pub(super) fn solve(&mut self, right: &mut [f64]) {
        self.0.solve(right);
    }

    pub(super) fn size(&self) -> usize {
        self.0.D.len()
    }
}
