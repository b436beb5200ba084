//! Tape readings to points and end poses with their uncertainty.
