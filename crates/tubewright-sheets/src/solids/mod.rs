//! Pieces as solids for other programs: STEP with exact surfaces, glTF with triangles.

mod glb;
mod mesh;
mod pipe;
mod step;
mod topology;

/// What other solids of this crate are written with.
pub(crate) mod entities {
    pub(crate) use super::step::{Entities, Part, assembly};
}

pub use glb::{MeshFineness, to_glb};
pub use step::{StepStamp, to_step};

/// Why no solid file was written.
#[derive(Clone, Debug, PartialEq, thiserror::Error)]
#[non_exhaustive]
pub enum SolidError {
    /// Nothing has a shape.
    #[error("there is no piece to write yet: plan a run first")]
    NothingToWrite,
    /// A piece has no tube, a gap in it, or a number that is not finite.
    #[error(
        "piece {mark}: its tube is broken or has no length at element {element}; check the plan that it came from"
    )]
    Broken {
        /// Mark of the piece.
        mark: String,
        /// Number of the element from upstream, from 1.
        element: usize,
    },
    /// The wall does not leave a bore.
    #[error(
        "piece {mark}: a wall of {wall_mm} mm leaves no bore in a tube of radius {radius_mm} mm; check the item in the stock file"
    )]
    NoBore {
        /// Mark of the piece.
        mark: String,
        /// Wall in mm.
        wall_mm: f64,
        /// Outer radius in mm.
        radius_mm: f64,
    },
    /// A bend's inside radius is not above zero: its surface would cross itself.
    #[error(
        "piece {mark}: a bend of radius {clr_mm} mm is too tight for a tube of radius {radius_mm} mm"
    )]
    TooTight {
        /// Mark of the piece.
        mark: String,
        /// Centre-line radius in mm.
        clr_mm: f64,
        /// Outer radius in mm.
        radius_mm: f64,
    },
    /// A cut plane lies along the tube, or the end it cuts is not straight.
    #[error(
        "piece {mark}: its end cut stands less than 10° to the tube, or cuts a bend slantwise, which is not written as a solid yet"
    )]
    Cut {
        /// Mark of the piece.
        mark: String,
    },
}
