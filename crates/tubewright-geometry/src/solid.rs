//! Bodies as solids: what a tube must keep clear of, and what a component takes up.

use crate::cloud::PointCloud;
use crate::mesh::TriangleMesh;
use crate::tube::TubeElement;
use crate::vector::{Point, UnitVector, Vector};
use std::sync::Arc as Shared;

/// A solid in millimetres. Distances to it are measured to its surface and are zero inside.
#[derive(Clone, Debug)]
#[non_exhaustive]
pub enum Solid {
    /// A box with its own axes.
    Box(OrientedBox),
    /// All places within `radius` of the segment `a`–`b`: a tube with round ends.
    Capsule {
        /// One end of the axis.
        a: Point,
        /// Other end of the axis.
        b: Point,
        /// Radius in mm, > 0.
        radius: f64,
    },
    /// A tube with flat ends square to its axis.
    Cylinder {
        /// Centre of one end face.
        a: Point,
        /// Centre of the other end face.
        b: Point,
        /// Radius in mm, > 0.
        radius: f64,
    },
    /// A ball.
    Sphere {
        /// Centre.
        centre: Point,
        /// Radius in mm, > 0.
        radius: f64,
    },
    /// Everything on the far side of a plane from `outward`: the ground is `point.z`, outward up.
    HalfSpace {
        /// A place on the plane.
        point: Point,
        /// Points out of the solid.
        outward: UnitVector,
    },
    /// An outline, convex or not, extruded straight.
    Prism(Prism),
    /// A closed or open triangle mesh. A closed mesh with outward winding has an inside (distance
    /// zero); an open one is a surface only.
    Mesh(Shared<TriangleMesh>),
    /// Points of a scan, each a ball of radius `radius` (the scan's noise plus half its spacing).
    Cloud {
        /// The places seen.
        points: Shared<[Point]>,
        /// Radius in mm of the ball round each.
        radius: f64,
    },
    /// Points of a scan with a tree over them: the same as `Cloud`, but fast when there are many.
    PointCloud(Shared<PointCloud>),
    /// A piece of tube taken as a solid bar with round ends: a straight or a bend of another run.
    Tube(TubeElement),
    /// Several solids taken together.
    Union(Vec<Solid>),
}

/// A box with its own axes.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct OrientedBox {
    /// Centre.
    pub centre: Point,
    /// Three directions, square to each other, right-handed.
    pub axes: [UnitVector; 3],
    /// Half the size along each axis in mm, ≥ 0.
    pub half: [f64; 3],
}

/// An outline in a plane, extruded square to the plane.
#[derive(Clone, Debug, PartialEq)]
pub struct Prism {
    /// A place in the plane of the outline; local coordinates start here.
    pub origin: Point,
    /// First local axis.
    pub u: UnitVector,
    /// Second local axis, square to `u`.
    pub v: UnitVector,
    /// Corners in local coordinates (along `u`, along `v`), in order, at least three, not crossing
    /// itself; either sense.
    pub outline: Vec<[f64; 2]>,
    /// Extrusion along u × v in mm, from 0 to this, > 0.
    pub depth: f64,
}

impl OrientedBox {
    /// A box along the axes of the frame it is given in.
    #[must_use]
    pub const fn axis_aligned(centre: Point, half: [f64; 3]) -> Self {
        Self {
            centre,
            axes: [UnitVector::X, UnitVector::Y, UnitVector::Z],
            half,
        }
    }

    /// The eight corners.
    #[must_use]
    pub fn corners(&self) -> [Point; 8] {
        core::array::from_fn(|i| {
            let sign = |bit: usize| if i & bit == 0 { -1.0 } else { 1.0 };
            let offset: Vector = self.axes[0] * (self.half[0] * sign(1))
                + self.axes[1] * (self.half[1] * sign(2))
                + self.axes[2] * (self.half[2] * sign(4));
            self.centre + offset
        })
    }
}
