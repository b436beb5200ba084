//! What a tool or a plumb line meets that is held somewhere while the car stands raised.

use tubewright_build::model::Class;
use tubewright_geometry::TubeElement;
use tubewright_geometry::distance::{are_clear, is_clear};

use super::{Bodies, PlacedBody};
use crate::routes::PlannedPiece;

impl Bodies {
    /// Name of the first body, or else mark of the first of these pieces, that any of `held` touches; bodies are kept
    /// off by `off_mm`. Room kept free by hand is air, and the ground is far below.
    pub(crate) fn first_met<'a>(
        &self,
        pieces: impl IntoIterator<Item = &'a PlannedPiece>,
        held: &[TubeElement],
        off_mm: impl Fn(&PlacedBody) -> f64,
    ) -> Option<String> {
        let mut bodies = self
            .placed
            .iter()
            .filter(|body| !matches!(body.class, Class::Service | Class::Ground));
        let body = bodies.find(|body| {
            let off_mm = off_mm(body);
            !held
                .iter()
                .all(|part| is_clear(part, &body.solid_in_car, off_mm))
        });
        if let Some(body) = body {
            return Some(body.name.clone());
        }
        let mut pieces = pieces.into_iter();
        let piece = pieces.find(|piece| {
            let mut elements = piece.elements.iter();
            elements.any(|element| !held.iter().all(|part| are_clear(part, element, 0.0)))
        });
        piece.map(|piece| piece.mark.clone())
    }
}
