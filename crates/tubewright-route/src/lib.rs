//! The route solver.
