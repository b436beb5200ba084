//! The stages from readings to saw marks, each a pure function with its hash.
