//! A symmetric matrix of small square blocks, one for each pair of places that something ties, and its
//! factor by a crate (`clarabel`'s LDLᵀ with the minimum degree order of Amestoy, Davis & Duff, 1996).

use super::least_squares::{Equations, NormalMatrix};
use clarabel::algebra::CscMatrix;
use clarabel::qdldl::{QDLDLFactorisation, QDLDLSettings};
use nalgebra::DVector;
use std::rc::Rc;

/// Which blocks there are. Columns lie one after another; in each the rows of the blocks above the
/// diagonal come first, in the order of their places, then those of the block on the diagonal.
#[derive(Debug)]
struct Pattern {
    dims: usize,
    /// Places before each that it is tied to, ascending.
    before: Vec<Vec<usize>>,
    /// Where each column starts.
    starts: Vec<usize>,
    /// Where the diagonal elements lie.
    diagonal: Vec<usize>,
    /// All of them by number, as the factor takes them.
    every: Vec<usize>,
}

/// Upper triangle of a symmetric matrix over places with so many coordinates each.
#[derive(Clone, Debug)]
pub(crate) struct Blocks {
    pattern: Rc<Pattern>,
    values: Vec<f64>,
}

impl Blocks {
    /// All zero: so many places with `dims` coordinates each, of which these pairs are tied.
    pub(crate) fn zeros(
        places: usize,
        dims: usize,
        ties: impl Iterator<Item = (usize, usize)>,
    ) -> Self {
        let mut before = vec![Vec::new(); places];
        for (a, b) in ties.filter(|(a, b)| a != b) {
            before[a.max(b)].push(a.min(b));
        }
        let (mut starts, mut diagonal) = (vec![0], Vec::new());
        let mut length = 0;
        for mates in &mut before {
            mates.sort_unstable();
            mates.dedup();
            for k in 0..dims {
                length += mates.len() * dims + k + 1;
                diagonal.push(length - 1);
                starts.push(length);
            }
        }
        Self {
            pattern: Rc::new(Pattern {
                dims,
                before,
                starts,
                diagonal,
                every: (0..length).collect(),
            }),
            values: vec![0.0; length],
        }
    }

    /// Number of rows.
    pub(crate) fn width(&self) -> usize {
        self.pattern.diagonal.len()
    }

    /// All zero again.
    pub(crate) fn clear(&mut self) {
        self.values.fill(0.0);
    }

    /// Where the block of two tied places lies: rows of the first of them, columns of the later.
    pub(crate) fn block(&self, a: usize, b: usize) -> Option<Block> {
        let (row, column) = (a.min(b), a.max(b));
        let slot = self.pattern.slot(row, column)?;
        Some(Block {
            column: column * self.pattern.dims,
            first: slot * self.pattern.dims,
        })
    }

    /// The block of one place.
    pub(crate) fn own(&self, place: usize) -> Block {
        Block {
            column: place * self.pattern.dims,
            first: self.pattern.before[place].len() * self.pattern.dims,
        }
    }

    /// Adds to an element of a block; of one on the diagonal, to one with `row` at most `column`.
    pub(crate) fn add(&mut self, block: Block, row: usize, column: usize, value: f64) {
        let at = self.pattern.starts[block.column + column] + block.first + row;
        self.values[at] += value;
    }

    /// Makes the rows and columns of a place those of the unit matrix.
    pub(crate) fn hold(&mut self, place: usize) {
        let pattern = Rc::clone(&self.pattern);
        let dims = pattern.dims;
        for column in place * dims..(place + 1) * dims {
            self.values[pattern.starts[column]..pattern.starts[column + 1]].fill(0.0);
            self.values[pattern.diagonal[column]] = 1.0;
        }
        for other in place + 1..pattern.before.len() {
            let Some(slot) = pattern.slot(place, other) else {
                continue;
            };
            for column in other * dims..(other + 1) * dims {
                let first = pattern.starts[column] + slot * dims;
                self.values[first..first + dims].fill(0.0);
            }
        }
    }
}

/// Where a block lies, whatever values stand in it.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Block {
    /// Its first column.
    column: usize,
    /// Elements of a column before those of the block.
    first: usize,
}

impl Pattern {
    /// Which of the blocks over that of `column` is that of `row`, an earlier place.
    fn slot(&self, row: usize, column: usize) -> Option<usize> {
        self.before[column].binary_search(&row).ok()
    }
}

impl Equations<Blocks> {
    /// All zero.
    pub(crate) fn sparse(matrix: Blocks) -> Self {
        Self {
            gradient: DVector::zeros(matrix.width()),
            matrix,
            cost: 0.0,
        }
    }
}

impl NormalMatrix for Blocks {
    /// None until the first step, or where the crate refuses the matrix.
    type Factor = Option<QDLDLFactorisation<f64>>;

    fn factor(&self) -> Self::Factor {
        let pattern = &self.pattern;
        let rows = (0..self.width())
            .flat_map(|column| {
                let place = column / pattern.dims;
                pattern.before[place]
                    .iter()
                    .flat_map(|&other| other * pattern.dims..(other + 1) * pattern.dims)
                    .chain(place * pattern.dims..=column)
            })
            .collect();
        let matrix = CscMatrix {
            m: self.width(),
            n: self.width(),
            colptr: pattern.starts.clone(),
            rowval: rows,
            nzval: self.values.clone(),
        };
        let settings = QDLDLSettings {
            logical: true,
            regularize_enable: false,
            ..QDLDLSettings::default()
        };
        QDLDLFactorisation::new(&matrix, Some(settings)).ok()
    }

    fn largest(&self) -> f64 {
        self.pattern
            .diagonal
            .iter()
            .fold(f64::MIN_POSITIVE, |m, &at| m.max(self.values[at]))
    }

    fn solve_damped(
        &self,
        factor: &mut Self::Factor,
        damping: f64,
        right: &mut DVector<f64>,
    ) -> bool {
        let Some(factor) = factor else { return false };
        factor.update_values(&self.pattern.every, &self.values);
        for &at in &self.pattern.diagonal {
            factor.update_values(&[at], &[self.values[at] + damping]);
        }
        if factor.refactor().is_err() || !factor.D.iter().all(|d| *d > 0.0) {
            return false;
        }
        factor.solve(right.as_mut_slice());
        true
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use nalgebra::DMatrix;
    use proptest::prelude::*;

    proptest! {
        /// Solves as the dense matrix does.
        #[test]
        fn solves_as_the_dense_matrix(
            places in 1_usize..9,
            dims in 1_usize..5,
            ties in prop::collection::vec((0_usize..9, 0_usize..9, prop::array::uniform4(-1.0_f64..1.0)), 0..30),
            held in 0_usize..9,
            damping in 1e-3_f64..0.5,
            right in prop::collection::vec(-1.0_f64..1.0, 36),
        ) {
            let ties: Vec<_> = ties
                .into_iter()
                .map(|(a, b, along)| (a % places, b % places, along))
                .filter(|(a, b, _)| a != b)
                .collect();
            let mut sparse = Blocks::zeros(places, dims, ties.iter().map(|t| (t.0, t.1)));
            let width = sparse.width();
            let mut dense = DMatrix::zeros(width, width);
            for &(a, b, along) in &ties {
                let mut row = DVector::zeros(width);
                for k in 0..dims {
                    row[a * dims + k] = along[k];
                    row[b * dims + k] = -along[k];
                }
                dense += &row * row.transpose();
                let between = sparse.block(a, b);
                prop_assert!(between.is_some());
                for i in 0..dims {
                    for k in 0..dims {
                        if i <= k {
                            sparse.add(sparse.own(a), i, k, along[i] * along[k]);
                            sparse.add(sparse.own(b), i, k, along[i] * along[k]);
                        }
                        if let Some(between) = between {
                            sparse.add(between, i, k, -along[i] * along[k]);
                        }
                    }
                }
            }
            if held < places {
                sparse.hold(held);
                for c in held * dims..(held + 1) * dims {
                    dense.row_mut(c).fill(0.0);
                    dense.column_mut(c).fill(0.0);
                    dense[(c, c)] = 1.0;
                }
            }
            let right = DVector::from_column_slice(&right[..width]);
            let (mut one, mut other) = (right.clone(), right);
            prop_assert!((sparse.largest() - NormalMatrix::largest(&dense)).abs() < 1e-12);
            prop_assert!(sparse.solve_damped(&mut sparse.factor(), damping, &mut one));
            prop_assert!(dense.solve_damped(&mut NormalMatrix::factor(&dense), damping, &mut other));
            prop_assert!((&one - &other).norm() <= 1e-9 * (1.0 + other.norm()));
        }
    }
}
