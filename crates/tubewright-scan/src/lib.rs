//! Phone scans (STL, OBJ, PLY) as bounded, checked triangle sets and point sets.
