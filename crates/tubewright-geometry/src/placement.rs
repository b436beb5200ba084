//! Where a rigid body has moved to: a rotation and then a shift.

use crate::cloud::PointCloud;
use crate::frame::Frame;
use crate::mesh::TriangleMesh;
use crate::solid::{OrientedBox, Prism, Solid};
use crate::tube::{CentreLine, TubeElement};
use crate::vector::{Point, UnitVector, Vector};
use std::sync::Arc as Shared;

/// A rigid motion from one position to another: points are turned, then shifted.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Placement {
    /// Images of the x, y and z directions.
    axes: [Vector; 3],
    /// Image of the origin, as a displacement from it in mm.
    shift: Vector,
}

impl Placement {
    /// Leaves everything where it is.
    pub const IDENTITY: Self = Self {
        axes: [
            Vector::new(1.0, 0.0, 0.0),
            Vector::new(0.0, 1.0, 0.0),
            Vector::new(0.0, 0.0, 1.0),
        ],
        shift: Vector::ZERO,
    };

    /// A shift by `displacement` mm.
    #[must_use]
    pub const fn shifted(displacement: Vector) -> Self {
        Self {
            shift: displacement,
            ..Self::IDENTITY
        }
    }

    /// A turn by `angle_rad`, right-handed about the line through `on_axis` along `axis`.
    #[must_use]
    pub fn turned(on_axis: Point, axis: UnitVector, angle_rad: f64) -> Self {
        let axes = Self::IDENTITY
            .axes
            .map(|v| v.rotated_about(axis, angle_rad));
        let turn = Self {
            axes,
            shift: Vector::ZERO,
        };
        let centre = on_axis.to_vector();
        Self {
            axes,
            shift: centre - turn.vector(centre),
        }
    }

    /// The motion that carries one frame onto another.
    #[must_use]
    pub fn between(from: &Frame, to: &Frame) -> Self {
        let carried = |v: Vector| to.vector_from_local(from.local_from_vector(v));
        let axes = Self::IDENTITY.axes.map(carried);
        let turn = Self {
            axes,
            shift: Vector::ZERO,
        };
        Self {
            axes,
            shift: to.origin.to_vector() - turn.vector(from.origin.to_vector()),
        }
    }

    /// This motion first, then `next`.
    #[must_use]
    pub fn then(&self, next: &Self) -> Self {
        Self {
            axes: self.axes.map(|v| next.vector(v)),
            shift: next.vector(self.shift) + next.shift,
        }
    }

    /// The motion back.
    #[must_use]
    pub fn inverse(&self) -> Self {
        let [x, y, z] = self.axes;
        let back = Self {
            axes: [
                Vector::new(x.x, y.x, z.x),
                Vector::new(x.y, y.y, z.y),
                Vector::new(x.z, y.z, z.z),
            ],
            shift: Vector::ZERO,
        };
        Self {
            shift: -back.vector(self.shift),
            ..back
        }
    }

    /// Where a point goes.
    #[must_use]
    pub fn point(&self, p: Point) -> Point {
        Point::ORIGIN + (self.vector(p.to_vector()) + self.shift)
    }

    /// Where a displacement goes: turned only.
    #[must_use]
    pub fn vector(&self, v: Vector) -> Vector {
        let [x, y, z] = self.axes;
        x * v.x + y * v.y + z * v.z
    }

    /// Where a direction goes.
    #[must_use]
    pub fn direction(&self, u: UnitVector) -> UnitVector {
        let v = self.vector(u.vector());
        UnitVector::from_unit(v / v.norm())
    }

    /// Where a frame goes.
    #[must_use]
    pub fn frame(&self, frame: &Frame) -> Frame {
        Frame::from_axes(
            self.point(frame.origin),
            self.direction(frame.travel()),
            self.direction(frame.twelve()),
        )
    }

    /// Where a centre line goes.
    #[must_use]
    pub fn centre_line(&self, line: &CentreLine) -> CentreLine {
        match *line {
            CentreLine::Segment { a, b } => CentreLine::Segment {
                a: self.point(a),
                b: self.point(b),
            },
            CentreLine::Arc {
                centre,
                u,
                v,
                radius,
                angle,
            } => CentreLine::Arc {
                centre: self.point(centre),
                u: self.direction(u),
                v: self.direction(v),
                radius,
                angle,
            },
        }
    }

    /// Where a piece of tube goes.
    #[must_use]
    pub fn tube(&self, tube: &TubeElement) -> TubeElement {
        TubeElement {
            line: self.centre_line(&tube.line),
            radius: tube.radius,
        }
    }

    /// Where a solid goes. Meshes and clouds are copied and their trees built anew: for drawing and
    /// for bodies placed once, not for a search over positions.
    #[must_use]
    pub fn solid(&self, solid: &Solid) -> Solid {
        let all = |points: &[Point]| points.iter().map(|&p| self.point(p)).collect::<Vec<_>>();
        match solid {
            Solid::Box(b) => Solid::Box(OrientedBox {
                centre: self.point(b.centre),
                axes: b.axes.map(|a| self.direction(a)),
                half: b.half,
            }),
            Solid::Capsule { a, b, radius } => Solid::Capsule {
                a: self.point(*a),
                b: self.point(*b),
                radius: *radius,
            },
            Solid::Cylinder { a, b, radius } => Solid::Cylinder {
                a: self.point(*a),
                b: self.point(*b),
                radius: *radius,
            },
            Solid::Sphere { centre, radius } => Solid::Sphere {
                centre: self.point(*centre),
                radius: *radius,
            },
            Solid::HalfSpace { point, outward } => Solid::HalfSpace {
                point: self.point(*point),
                outward: self.direction(*outward),
            },
            Solid::Prism(p) => Solid::Prism(Prism {
                origin: self.point(p.origin),
                u: self.direction(p.u),
                v: self.direction(p.v),
                outline: p.outline.clone(),
                depth: p.depth,
            }),
            // The same triangles over finite points: building it again cannot fail.
            Solid::Mesh(mesh) => TriangleMesh::new(all(mesh.vertices()), mesh.triangles().to_vec())
                .map_or_else(|| solid.clone(), |moved| Solid::Mesh(Shared::new(moved))),
            Solid::Cloud { points, radius } => Solid::Cloud {
                points: all(points).into(),
                radius: *radius,
            },
            Solid::PointCloud(cloud) => PointCloud::new(all(cloud.points()), cloud.radius_mm())
                .map_or_else(
                    || solid.clone(),
                    |moved| Solid::PointCloud(Shared::new(moved)),
                ),
            Solid::Tube(tube) => Solid::Tube(self.tube(tube)),
            Solid::Union(members) => Solid::Union(members.iter().map(|m| self.solid(m)).collect()),
        }
    }
}
