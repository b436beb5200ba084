//! The integer program over given columns.

use microlp::{ComparisonOp, OptimizationDirection, Problem, SolveOptions, SolveOutcome, Variable};

use super::columns::{Column, Row};
use super::solve::SolveError;

/// What the solver says, rounded to whole numbers.
pub(crate) struct Integers {
    /// Value of each column.
    pub(crate) counts: Vec<i64>,
    /// Their cost, summed by us.
    pub(crate) cost: f64,
    /// Whether the solver proved that no other values cost less.
    pub(crate) is_proven: bool,
    /// What the solver proved that no values cost less than, as far as it came.
    pub(crate) bound: Option<f64>,
}

/// A node of a program of so many columns counts as one.
const USUAL_COLUMNS: u64 = 6_000;

/// The nodes of a program: those of a small one are quick, so that it may have more of them.
fn nodes_for(nodes: u64, columns: usize) -> u64 {
    let more = USUAL_COLUMNS / (columns as u64).max(1);
    nodes.saturating_mul(more.clamp(1, 20))
}

/// Solves; `None` when the node budget ran out before any solution.
pub(crate) fn solve(
    rows: &[Row],
    columns: &[&Column],
    start: Option<&[i64]>,
    nodes: u64,
) -> Result<Option<Integers>, SolveError> {
    let mut program = Problem::new(OptimizationDirection::Minimize);
    let unknowns: Vec<Variable> = columns
        .iter()
        .map(|column| program.add_integer_var(column.cost, (0, column.most)))
        .collect();
    let mut by_row: Vec<Vec<(Variable, f64)>> = vec![Vec::new(); rows.len()];
    for (column, unknown) in columns.iter().zip(&unknowns) {
        for (row, value) in &column.entries {
            by_row[*row].push((*unknown, *value));
        }
    }
    for (row, terms) in rows.iter().zip(by_row) {
        let relation = if row.is_equal {
            ComparisonOp::Eq
        } else {
            ComparisonOp::Ge
        };
        if !terms.is_empty() {
            program.add_constraint(terms, relation, row.rhs);
        }
    }
    let mut options = SolveOptions::default();
    options.node_limit = Some(nodes_for(nodes, columns.len()));
    options.warm_start = start.map(|values| {
        unknowns
            .iter()
            .copied()
            .zip(values.iter().map(|value| *value as f64))
            .collect()
    });
    let (solution, is_proven) = match program.solve_with(options) {
        Ok(SolveOutcome::Solution(solution)) => {
            let is_proven = solution.status() == microlp::SolutionStatus::Optimal;
            (solution, is_proven)
        }
        Ok(_) => return Ok(None),
        Err(error) => {
            return Err(SolveError::Solver {
                message: error.to_string(),
            });
        }
    };
    let counts: Vec<i64> = unknowns
        .iter()
        .map(|unknown| solution.var_value(*unknown).round() as i64)
        .collect();
    let cost = columns
        .iter()
        .zip(&counts)
        .map(|(c, n)| c.cost * *n as f64)
        .sum();
    holds(rows, columns, &counts)?;
    Ok(Some(Integers {
        counts,
        cost,
        is_proven,
        bound: solution
            .stats()
            .best_bound
            .filter(|bound| bound.is_finite()),
    }))
}

/// Whole numbers must meet every row exactly: coefficients are whole, so half a unit is the
/// largest tolerance that means anything.
fn holds(rows: &[Row], columns: &[&Column], counts: &[i64]) -> Result<(), SolveError> {
    let mut sums = vec![0.0; rows.len()];
    for (column, count) in columns.iter().zip(counts) {
        for (row, value) in &column.entries {
            sums[*row] += value * *count as f64;
        }
    }
    let broken = rows.iter().zip(&sums).position(|(row, sum)| {
        if row.is_equal {
            (sum - row.rhs).abs() > 0.5
        } else {
            *sum < row.rhs - 0.5
        }
    });
    match broken {
        None => Ok(()),
        Some(row) => Err(SolveError::WrongAnswer { row }),
    }
}
