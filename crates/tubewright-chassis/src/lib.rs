//! What holds and joins things under a car. So far: how a run of tube hangs on its rubbers.
//!
//! Knows no build, no body and no file: a run comes in as places joined by tubes, with masses and springs.
//!
//! *Units*: millimetres, newtons, kilograms, seconds; stiffness in N/mm, Young's modulus in MPa.

pub mod beams;
pub mod hangers;

pub use beams::{BeamError, Beams, Factored, TubeBeam};
pub use hangers::{HangLimits, Hung, Rubber, RubberPlace, hang, settled};

/// Standard acceleration of free fall, m/s² (Résolution 3 de la 3e CGPM, 1901).
pub const FREE_FALL_M_PER_S2: f64 = 9.806_65;
