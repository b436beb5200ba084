//! One linear program: the cheapest mix of columns that keeps the rows, with the price of each row.
//!
//! Solved by an interior point method (Goulart & Chen, "Clarabel: An interior-point solver for conic
//! programs with quadratic objectives", 2024, from memory): its prices lie in the middle of all that are
//! best, which asks for fewer patterns than those of a corner do.

use clarabel::algebra::CscMatrix;
use clarabel::solver::{
    DefaultSettings, DefaultSolver, IPSolver, SolverStatus, SupportedConeT::NonnegativeConeT,
};

use super::columns::{Column, Row};
use super::solve::SolveError;

/// The program solved.
pub(crate) struct Mix {
    /// How much of each column.
    pub(crate) amounts: Vec<f64>,
    /// Price of each row.
    pub(crate) prices: Vec<f64>,
}

/// How exact a program is solved.
#[derive(Clone, Copy, PartialEq, Eq)]
pub(crate) enum Exactness {
    /// Enough to see what is wanted.
    Rough,
    /// Prices of some thousands are right to a hundred-thousandth.
    Fine,
}

/// Solves; `None` when no mix keeps the rows.
pub(crate) fn solve(
    rows: &[Row],
    columns: &[&Column],
    exactness: Exactness,
) -> Result<Option<Mix>, SolveError> {
    if columns.is_empty() || rows.is_empty() {
        let is_kept = rows
            .iter()
            .all(|row| row.rhs == 0.0 || (!row.is_equal && row.rhs < 0.0));
        return Ok(is_kept.then(|| Mix {
            amounts: vec![0.0; columns.len()],
            prices: vec![0.0; rows.len()],
        }));
    }
    // The dual program has fewer unknowns: the price of each row. Its limits are first one of each column,
    // that it is worth no more than it costs, then that the price of "at least" is never negative.
    let mut of_row: Vec<Vec<(usize, f64)>> = vec![Vec::new(); rows.len()];
    for (index, column) in columns.iter().enumerate() {
        for (row, value) in &column.entries {
            of_row[*row].push((index, *value));
        }
    }
    let mut limits: Vec<f64> = columns.iter().map(|column| column.cost).collect();
    let (mut starts, mut at_limit, mut values) = (vec![0], Vec::new(), Vec::new());
    for (row, mut entries) in rows.iter().zip(of_row) {
        if !row.is_equal {
            entries.push((limits.len(), -1.0));
            limits.push(0.0);
        }
        for (limit, value) in entries {
            at_limit.push(limit);
            values.push(value);
        }
        starts.push(at_limit.len());
    }
    let matrix = CscMatrix::new(limits.len(), rows.len(), starts, at_limit, values);
    let worth: Vec<f64> = rows.iter().map(|row| -row.rhs).collect();
    let cones = [NonnegativeConeT(limits.len())];
    let tolerance = match exactness {
        Exactness::Rough => 1e-5,
        Exactness::Fine => 1e-9,
    };
    let settings = DefaultSettings {
        verbose: false,
        tol_gap_abs: tolerance,
        tol_gap_rel: tolerance,
        tol_feas: tolerance,
        iterative_refinement_enable: exactness == Exactness::Fine,
        ..DefaultSettings::default()
    };
    let mut solver = DefaultSolver::new(
        &CscMatrix::zeros((rows.len(), rows.len())),
        &worth,
        &matrix,
        &limits,
        &cones,
        settings,
    )
    .map_err(|error| SolveError::Solver {
        message: error.to_string(),
    })?;
    solver.solve();
    let found = &solver.solution;
    match found.status {
        SolverStatus::Solved | SolverStatus::AlmostSolved => {}
        SolverStatus::DualInfeasible | SolverStatus::AlmostDualInfeasible => return Ok(None),
        _ if exactness == Exactness::Rough => return solve(rows, columns, Exactness::Fine),
        status => {
            return Err(SolveError::Solver {
                message: format!("{status:?}"),
            });
        }
    }
    let prices = rows
        .iter()
        .zip(&found.x)
        .map(|(row, price)| if row.is_equal { *price } else { price.max(0.0) })
        .collect();
    Ok(Some(Mix {
        amounts: found.z.iter().take(columns.len()).copied().collect(),
        prices,
    }))
}
