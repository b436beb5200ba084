//! Frames, tubes, bends, runs, cut surfaces with their unrolled templates, bodies and distances.
//!
//! Lengths are millimetres, angles radians. The car's axes follow ISO 4130: x rearwards, y to the
//! car's right, z up. This crate knows no file, no clock and no car: only geometry.

pub mod bend;
pub mod bounds;
mod bvh;
pub mod chain;
pub mod cloud;
pub mod cut;
pub mod distance;
pub mod frame;
pub mod math;
pub mod mesh;
pub mod motion;
pub mod placement;
pub mod practice;
pub mod quantity;
pub mod ramp;
pub mod rows;
pub mod solid;
pub mod template;
pub mod tube;
pub mod tube_standards;
pub mod vector;

pub use bend::{BendScalars, bend_scalars, setback_mm};
pub use bounds::Bounds;
pub use chain::{Chain, EndError, Piece};
pub use cloud::PointCloud;
pub use frame::Frame;
pub use mesh::TriangleMesh;
pub use motion::{Freedom, Motion};
pub use placement::Placement;
pub use quantity::{Angle, Length};
pub use rows::{BendRow, BendTable, PlacedTable, RowsError, rows_from_points};
pub use solid::{OrientedBox, Prism, Solid};
pub use tube::{CentreLine, TubeElement};
pub use vector::{Point, UnitVector, Vector};
