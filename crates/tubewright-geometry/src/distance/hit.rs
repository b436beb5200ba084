//! What a segment query returns inside this family.

use crate::vector::Point;

/// Nearest place of a segment to a body.
#[derive(Clone, Copy, Debug)]
pub(super) struct Hit {
    /// Distance to the body in mm, zero inside.
    pub(super) distance_mm: f64,
    /// Fraction along the segment, 0..=1.
    pub(super) fraction: f64,
    /// Nearest place of the body.
    pub(super) on_body: Point,
    /// Triangle, cloud point or union member.
    pub(super) part: Option<usize>,
}

impl Hit {
    /// Nothing nearer than `limit_mm` was found.
    pub(super) const fn beyond(limit_mm: f64, place: Point) -> Self {
        Self {
            distance_mm: limit_mm,
            fraction: 0.0,
            on_body: place,
            part: None,
        }
    }

    /// The body's surface moved out by `radius_mm` toward the segment: distance less, zero inside.
    pub(super) fn shrunk(self, radius_mm: f64, on_line: Point) -> Self {
        if self.distance_mm <= radius_mm {
            return Self {
                distance_mm: 0.0,
                on_body: on_line,
                ..self
            };
        }
        Self {
            distance_mm: self.distance_mm - radius_mm,
            on_body: self.on_body + (on_line - self.on_body) * (radius_mm / self.distance_mm),
            ..self
        }
    }
}
