//! The whole solution: bound, plan, proof.

use super::job::{Job, Search};
use super::pattern::Pattern;
use super::problem::{CuttingProblem, CuttingProblemError, Effort};

/// Legs left over, cut into straights.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct FillUse {
    /// Parts from each such leg.
    pub parts: Vec<(usize, u32)>,
    /// How many legs.
    pub count: u32,
    /// Class of leg: legs of one class are those with the same fills.
    pub class: usize,
}

/// Bins cut in one way.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct CutUse {
    /// The way.
    pub pattern: Pattern,
    /// How many bins.
    pub count: u32,
    /// Class of the leg left over at each end; `None` when nothing can be cut from it.
    pub leg_classes: [Option<usize>; 2],
}

/// How sure it is that nothing is cheaper.
#[derive(Clone, Copy, Debug, PartialEq)]
#[non_exhaustive]
pub enum Proof {
    /// No plan costs less.
    Optimal,
    /// The effort ran out: no plan costs less than this, in minor units.
    NotBelow(i64),
}

/// A plan in whole numbers.
#[derive(Clone, Debug, PartialEq)]
pub struct CuttingSolution {
    /// Patterns and how many bins are cut so, in the order of bins and patterns.
    pub cuts: Vec<CutUse>,
    /// Legs left over that are cut into straights.
    pub fills: Vec<FillUse>,
    /// Packs by purchase and tier.
    pub packs: Vec<(usize, usize, u32)>,
    /// Chosen choices.
    pub chosen: Vec<usize>,
    /// Parts that cannot be made: class and number.
    pub missing: Vec<(usize, u32)>,
    /// Spares that cannot be had: bin and number.
    pub missing_spares: Vec<(usize, u32)>,
    /// Price of purchases, deliveries and choices in minor units, without what is missing.
    pub cost: i64,
    /// Value of the linear relaxation over all proper patterns, in minor units, with what is
    /// missing at its penalty.
    pub relaxation: f64,
    /// Proof.
    pub proof: Proof,
}

/// Why no plan came out.
#[derive(Clone, Debug, PartialEq, thiserror::Error)]
#[non_exhaustive]
pub enum SolveError {
    /// The problem makes no sense.
    #[error(transparent)]
    Problem(#[from] CuttingProblemError),
    /// The linear or integer solver gave up.
    #[error("the solver gave up on this plan: {message}")]
    Solver {
        /// Its words.
        message: String,
    },
    /// The solver stopped without a solution.
    #[error("the solver stopped before it had a plan; allow more effort")]
    Interrupted,
    /// Column generation did not settle.
    #[error("the bound did not settle after {rounds} rounds; allow more effort")]
    NoConvergence {
        /// Rounds done.
        rounds: usize,
    },
    /// A pattern search ran out of steps.
    #[error("stock kind {bin} can be cut in too many ways; allow more steps")]
    TooManySteps {
        /// Index of the bin.
        bin: usize,
    },
    /// The solver's answer breaks a row of the program.
    #[error("the solver's answer breaks row {row} of the program; the plan is withheld")]
    WrongAnswer {
        /// Index of the row.
        row: usize,
    },
}

/// Solves the cutting and buying problem.
///
/// Going without a part is possible at a penalty above any price, so that a problem without a
/// full plan still says which parts are missing.
///
/// # Errors
///
/// When the problem makes no sense or the solver fails; never a plan that breaks a rule of the
/// program.
pub fn solve_cutting(
    problem: &CuttingProblem,
    effort: &Effort,
) -> Result<CuttingSolution, SolveError> {
    problem.check()?;
    let charged: Vec<usize> = (0..problem.delivery.len())
        .filter(|supplier| {
            problem.delivery[*supplier] > 0
                && problem
                    .purchases
                    .iter()
                    .any(|purchase| purchase.supplier == *supplier)
        })
        .collect();
    let mut search = Search::of(problem, effort);
    let mut sets: Vec<Job> = supplier_sets(problem, &charged)
        .into_iter()
        .map(|suppliers| Job::of(problem, suppliers))
        .collect();
    let (mut relaxation, mut open_bound) = search.all(&mut sets)?;
    let found = search.best.ok_or(SolveError::Interrupted)?;
    if let Some(always @ [_, ..]) = charged.get(MOST_CHARGED..) {
        let charges: i64 = always
            .iter()
            .map(|supplier| problem.delivery[*supplier])
            .sum();
        relaxation -= charges as f64;
        open_bound = open_bound.min(relaxation);
    }
    let mut solution = found.solution;
    solution.relaxation = relaxation;
    solution.proof = if open_bound >= found.cost - 0.5 {
        Proof::Optimal
    } else {
        Proof::NotBelow(open_bound.round() as i64)
    };
    Ok(solution)
}

/// Most suppliers with a charge whose every subset is tried; beyond it the first
/// six are chosen freely and the others are always paid, so that the plan may be dearer than need
/// be by those charges.
const MOST_CHARGED: usize = 6;

/// Every set of suppliers that may be bought from.
fn supplier_sets(problem: &CuttingProblem, charged: &[usize]) -> Vec<Vec<bool>> {
    let free = charged
        .get(..MOST_CHARGED.min(charged.len()))
        .unwrap_or(charged);
    (0..1usize << free.len())
        .map(|set| {
            let mut allowed = vec![true; problem.delivery.len()];
            for (bit, supplier) in free.iter().enumerate() {
                allowed[*supplier] = set >> bit & 1 == 1;
            }
            allowed
        })
        .collect()
}
