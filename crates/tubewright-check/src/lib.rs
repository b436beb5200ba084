//! Findings: one value per rule checked, in the four states.
