//! Small changes of what was measured, and how surely their sum is known: everything comes from one
//! adjustment, so that errors common to two places cancel between them.

use super::Survey;
use crate::network::{EndId, PointId, SetupId};
use tubewright_geometry::{Frame, Point, Vector};

/// Something that the survey found.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Part {
    /// A mark or point: three numbers, its place.
    Point(PointId),
    /// An end: six numbers, its place and a small turn in radians about x, y, z.
    End(EndId),
    /// A floor: four numbers, its direction up and `up · place` of any place on it.
    Floor(SetupId),
}

/// A small change in mm as a sum over numbers that the survey found, each with its factor.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Change {
    terms: Vec<(Part, [f64; 6])>,
}

impl Change {
    /// How far a point moves along a direction.
    #[must_use]
    pub fn of_point(point: PointId, along: Vector) -> Self {
        Self {
            terms: vec![(
                Part::Point(point),
                [along.x, along.y, along.z, 0.0, 0.0, 0.0],
            )],
        }
    }

    /// How far a place moves along a direction that moves rigidly with an end at `frame`:
    /// `along · (δ + θ × arm)`.
    #[must_use]
    pub fn carried_by_end(end: EndId, frame: &Frame, place: Point, along: Vector) -> Self {
        let turn = (place - frame.origin).cross(along);
        Self {
            terms: vec![(
                Part::End(end),
                [along.x, along.y, along.z, turn.x, turn.y, turn.z],
            )],
        }
    }

    /// How far a floor rises under a place: `δoffset − δup · place`.
    #[must_use]
    pub fn of_floor(floor: SetupId, under: Point) -> Self {
        Self {
            terms: vec![(
                Part::Floor(floor),
                [-under.x, -under.y, -under.z, 1.0, 0.0, 0.0],
            )],
        }
    }

    /// Adds another change times a factor.
    pub fn add(&mut self, other: &Self, factor: f64) {
        for (part, values) in &other.terms {
            let scaled = values.map(|value| factor * value);
            match self.terms.iter_mut().find(|(own, _)| own == part) {
                Some((_, own)) => {
                    for (sum, value) in own.iter_mut().zip(scaled) {
                        *sum += value;
                    }
                }
                None => self.terms.push((*part, scaled)),
            }
        }
    }

    /// This change times a factor.
    #[must_use]
    pub fn times(mut self, factor: f64) -> Self {
        for (_, values) in &mut self.terms {
            *values = values.map(|value| factor * value);
        }
        self
    }
}

impl Survey {
    /// Rows of a part in the joint covariance; `None` when the readings do not fix it.
    fn rows_of(&self, part: Part) -> Option<core::ops::Range<usize>> {
        let ends = 3 * self.points.len();
        let floors = ends + 6 * self.ends.len();
        let (is_fixed, first, count) = match part {
            Part::Point(p) => (*self.point_fixed.get(p.0)?, 3 * p.0, 3),
            Part::End(e) => (*self.end_fixed.get(e.0)?, ends + 6 * e.0, 6),
            Part::Floor(s) => (self.floors.get(s.0)?.is_some(), floors + 4 * s.0, 4),
        };
        is_fixed.then_some(first..first + count)
    }

    /// A change by rows of the joint covariance.
    fn form_of(&self, change: &Change) -> Option<Vec<(usize, f64)>> {
        let mut form = Vec::new();
        for (part, values) in &change.terms {
            form.extend(self.rows_of(*part)?.zip(*values));
        }
        Some(form)
    }

    /// Covariance of two small changes in mm²; `None` when the readings do not fix something in them.
    #[must_use]
    pub fn covariance_of(&self, a: &Change, b: &Change) -> Option<f64> {
        let (a, b) = (self.form_of(a)?, self.form_of(b)?);
        let row = |i: usize| {
            b.iter()
                .map(|&(k, v)| self.covariance[(i, k)] * v)
                .sum::<f64>()
        };
        Some(a.iter().map(|&(i, v)| v * row(i)).sum())
    }

    /// Standard deviation of a small change in mm; `None` when the readings do not fix something in it.
    #[must_use]
    pub fn sigma_of(&self, change: &Change) -> Option<f64> {
        Some(self.covariance_of(change, change)?.max(0.0).sqrt())
    }
}
