//! Which pieces come out of which bars and bends, and what to buy: in whole numbers, without any
//! word of steel.
//!
//! Sizes are thousandths (0.001 mm along a straight, 0.001° along an arc), money is minor units.
//! The method: an integer program over cutting patterns (P. C. Gilmore, R. E. Gomory, *A linear
//! programming approach to the cutting-stock problem*, Operations Research 9, 1961, from memory).
//! Patterns are found by column generation with the knapsack capped at the demand, and without parts
//! that no plan needs together (only *proper* patterns), which gives the bound; then every pattern
//! whose reduced cost lies below the gap between the bound and the best plan so far is enumerated, and
//! the integer program over these is solved: a pattern above the gap can be in no cheaper plan, so the
//! optimum is proven. Where there are too many of them, the proof stays open.
//!
//! Plans come from dives: what a relaxation wants most is made whole, and the rest is relaxed again. Which
//! patterns a dive takes hangs on small things, so there are several, at first prices, at the prices that
//! the best plan reached, and at costs that are shaken a little; the integer program over all that
//! they took is small and puts the best of them together.
//!
//! Two solvers share the work, each from a crate: an interior point method for the relaxations, whose
//! prices are those of all best plans together, and branch and bound for the whole numbers.

mod answer;
mod columns;
mod conflicts;
mod dive;
mod integer;
mod job;
mod leg_fill;
mod lp;
mod pattern;
mod problem;
mod purchases;
mod relaxation;
mod search;
mod solve;
mod start;

pub use pattern::Pattern;
pub(crate) use pattern::whole_legs;
pub use problem::{
    Bin, Choice, CuttingProblem, CuttingProblemError, Effort, Equality, Part, Purchase, Tier,
};
pub use solve::{CutUse, CuttingSolution, FillUse, Proof, SolveError, solve_cutting};
