//! Test-only judge: rebuilds a run from the numbers on the card, sharing no code with the solver.
