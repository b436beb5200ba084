//! The tubewright command line.

fn main() {}
