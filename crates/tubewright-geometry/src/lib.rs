//! Frames, tubes, bends, runs, cut surfaces with their unrolled templates, bodies and distances.
//!
//! Lengths are millimetres, angles radians. The car's axes follow ISO 4130: x rearwards, y to the
//! car's right, z up. This crate knows no file, no clock and no car: only geometry.
//!
//! - A run: [`rows_from_points`] and [`BendTable`], [`Chain`] of [`Piece`]s walked from a [`Frame`],
//!   [`TubeElement`]s as swept balls.
//! - What is in the way: [`Solid`]s, [`TriangleMesh`]es and [`PointCloud`]s of a scan.
//! - How near: [`distance`] (one body, or a [`distance::SolidSet`]) and [`motion`] (carriers that move).
//! - How to make it: [`bend`], [`cut`], [`template`], [`tube_standards`]; [`ramp`] and [`practice`].
//!
//! ```
//! use tubewright_geometry::{distance, rows_from_points, Chain, OrientedBox, Point, Solid};
//!
//! // Three points: a right angle in 60 mm tube, bent at 90 mm radius.
//! let points = [[0.0, 0.0, 0.0], [400.0, 0.0, 0.0], [400.0, 300.0, 0.0]].map(Point::from_array);
//! let placed = rows_from_points(&points, &[90.0])?;
//! let run = Chain::from_table(placed.start, &placed.table);
//! let gearbox = Solid::Box(OrientedBox::axis_aligned(Point::new(200.0, 150.0, 0.0), [100.0; 3]));
//! let gaps = run.elements(|_, _| 30.0).iter().map(|tube| {
//!     distance::clearance(tube, &gearbox, 1e-3).gap_mm
//! }).collect::<Vec<_>>();
//! // The first straight passes 50 mm from the box's face at y = 50, less 30 mm of radius.
//! assert!((gaps[0] - 20.0).abs() < 1e-9);
//! # Ok::<(), tubewright_geometry::RowsError>(())
//! ```
//!
//! Not here yet: the depth of an overlap (a centre line inside a body counts as minus the radius), and
//! second-order bounds for motions (the search over positions takes milliseconds, not microseconds).

pub mod bend;
pub mod bounds;
mod box_tree;
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
mod solid_check;
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
pub use solid_check::SolidError;
pub use tube::{CentreLine, TubeElement};
pub use vector::{Point, UnitVector, Vector};
