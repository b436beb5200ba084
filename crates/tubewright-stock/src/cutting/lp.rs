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

/// What a program is solved to when nothing else is asked: some thousands are right to a hundred-thousandth.
pub(crate) const FINE: f64 = 1e-9;

/// What a row asks for below this is rounding.
const ASKS: f64 = 1e-9;

/// Solves to this share of the whole; `None` when no mix keeps the rows.
pub(crate) fn solve(
    rows: &[Row],
    columns: &[&Column],
    tolerance: f64,
) -> Result<Option<Mix>, SolveError> {
    // The dual program has fewer unknowns: the price of each row. Its limits are first one of each column,
    // that it is worth no more than it costs, then that the price of "at least" is never negative.
    let mut of_row: Vec<Vec<(usize, f64)>> = vec![Vec::new(); rows.len()];
    for (index, column) in columns.iter().enumerate() {
        for (row, value) in &column.entries {
            of_row[*row].push((index, *value));
        }
    }
    // A row without columns has no say, as long as it asks for nothing.
    let is_met = |row: &Row| row.rhs < ASKS && (!row.is_equal || row.rhs > -ASKS);
    let mut left: Vec<(usize, Vec<(usize, f64)>)> = Vec::with_capacity(rows.len());
    for (at, (row, entries)) in rows.iter().zip(of_row).enumerate() {
        if !entries.is_empty() {
            left.push((at, entries));
        } else if !is_met(row) {
            return Ok(None);
        }
    }
    let mut prices = vec![0.0; rows.len()];
    if left.is_empty() {
        let amounts = vec![0.0; columns.len()];
        return Ok(Some(Mix { amounts, prices }));
    }
    let worth: Vec<f64> = left.iter().map(|(at, _)| -rows[*at].rhs).collect();
    let mut limits: Vec<f64> = columns.iter().map(|column| column.cost).collect();
    let (mut starts, mut at_limit, mut values) = (vec![0], Vec::new(), Vec::new());
    let places: Vec<usize> = left.iter().map(|(at, _)| *at).collect();
    for (at, mut entries) in left {
        if !rows[at].is_equal {
            entries.push((limits.len(), -1.0));
            limits.push(0.0);
        }
        for (limit, value) in entries {
            at_limit.push(limit);
            values.push(value);
        }
        starts.push(at_limit.len());
    }
    let matrix = CscMatrix::new(limits.len(), places.len(), starts, at_limit, values);
    let cones = [NonnegativeConeT(limits.len())];
    let settings = DefaultSettings {
        verbose: false,
        tol_gap_abs: tolerance,
        tol_gap_rel: tolerance,
        tol_feas: tolerance,
        iterative_refinement_enable: tolerance <= FINE,
        ..DefaultSettings::default()
    };
    let mut solver = DefaultSolver::new(
        &CscMatrix::zeros((places.len(), places.len())),
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
        _ if tolerance > FINE => return solve(rows, columns, FINE),
        status => {
            return Err(SolveError::Solver {
                message: format!("{status:?}"),
            });
        }
    }
    for (at, price) in places.iter().zip(&found.x) {
        prices[*at] = if rows[*at].is_equal {
            *price
        } else {
            price.max(0.0)
        };
    }
    Ok(Some(Mix {
        amounts: found.z.iter().take(columns.len()).copied().collect(),
        prices,
    }))
}
