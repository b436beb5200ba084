//! A stretch between two ends that are known up to a ball and a cone: a whole run, or the part of it
//! before or behind a crossover whose place is known up to a box.

use tubewright_geometry::{Point, Vector};

/// One stretch.
#[derive(Clone, Debug)]
pub(super) struct Link {
    pub(super) start: Point,
    pub(super) start_way: Vector,
    /// How far the start may be off, mm.
    pub(super) start_ball: f64,
    /// How far the direction of leaving may be off, radians.
    pub(super) start_turn: f64,
    pub(super) end: Point,
    pub(super) end_way: Vector,
    /// How far the end may be off, mm; the tolerance of an arrival with it.
    pub(super) end_ball: f64,
    /// How far the direction of arrival may be off, radians.
    pub(super) end_turn: f64,
    /// Numbers of the components on it, in order.
    pub(super) components: Vec<usize>,
    /// Their lengths together, mm.
    pub(super) components_mm: f64,
}
