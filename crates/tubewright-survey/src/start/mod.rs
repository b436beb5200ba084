//! Start values from the readings alone.
//!
//! A sketch of all places (points, and each measured place of an end) is built from distances and
//! heights only: place after place by intersecting circles or spheres round the places that already
//! stand, from several first triangles; relaxed; folded places unfolded by trying their mirror places
//! and by letting the sketch pass through a fourth dimension (Crippen & Havel, *Distance Geometry and
//! Molecular Conformation*, 1988, from memory); classical scaling of shortest-path distances
//! (Torgerson 1952, from memory) where no triangle was measured.

mod chance;
mod intersect;
mod lift;
mod place;
mod relax;
mod scaling;
mod sketch;

use chance::Chance;
pub(crate) use lift::{lift, node_places, rigid};
pub(crate) use place::{alternatives, end_alternatives};
pub(crate) use sketch::Sketch;

use crate::linear::V3;

/// Most first triangles tried one after another.
const TRIES: usize = 6;

/// Sketches to start from, in the order to try them. Each is made when it is asked for.
pub(crate) fn sketches(sketch: &Sketch) -> impl Iterator<Item = Vec<V3>> + '_ {
    let mut best: Option<(f64, Vec<V3>)> = None;
    let mut unfolded = relax::Unfolded::default();
    (0..TRIES + 3).filter_map(move |attempt| {
        #[expect(clippy::cast_possible_truncation, reason = "a handful of attempts")]
        let mut chance = Chance::new(attempt as u32);
        let places = if attempt < TRIES {
            let placed = place::build(sketch, attempt, &mut chance)?;
            unfolded.of(sketch, &placed)
        } else if attempt == TRIES {
            unfolded.of(sketch, &scaling::scaled(sketch)?)
        } else {
            let (_, from) = best.as_ref()?;
            unfolded.of(sketch, &relax::through_fourth(sketch, from, &mut chance))
        };
        let cost = relax::cost(sketch, &places);
        if best.as_ref().is_none_or(|(least, _)| cost < *least) {
            best = Some((cost, places.clone()));
        }
        Some(places)
    })
}
