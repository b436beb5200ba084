//! Present values of the unknowns, and how a step moves them.

use super::{Layout, TILT_LEVER_MM};
use crate::linear::{M3, V3, Vector1, basis_about, rotation, v3};
use crate::network::{End, Network, Target};
use tubewright_geometry::math;

/// A plane with a basis that is carried along when it tilts: columns e1, e2, normal.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Facing {
    pub(crate) basis: M3,
    /// Normal · place of any point in the plane, mm.
    pub(crate) offset: f64,
}

#[derive(Clone, Copy, Debug)]
pub(crate) struct Pose {
    pub(crate) origin: V3,
    /// Columns travel, twelve, three.
    pub(crate) axes: M3,
}

#[derive(Clone, Copy, Debug)]
pub(crate) struct Floor {
    pub(crate) plane: Facing,
    /// Lean of the plumb line against the floor's normal, along e1 and e2, tangent of the angle.
    pub(crate) lean: [f64; 2],
}

#[derive(Clone, Debug)]
pub(crate) struct State {
    pub(crate) points: Vec<V3>,
    pub(crate) ends: Vec<Pose>,
    pub(crate) floors: Vec<Floor>,
    /// Centre plane of the car, normal to the right.
    pub(crate) plane: Facing,
    /// Direction to the car's right and the offset of the centre plane, kept constant while the
    /// equations are solved; used only by readings to an outer or inner side.
    pub(crate) sideways: Option<(V3, f64)>,
}

impl Facing {
    pub(crate) fn new(normal: V3, offset: f64) -> Self {
        Self {
            basis: basis_about(normal),
            offset,
        }
    }

    pub(crate) fn e1(&self) -> V3 {
        self.basis.column(0).into_owned()
    }

    pub(crate) fn e2(&self) -> V3 {
        self.basis.column(1).into_owned()
    }

    pub(crate) fn normal(&self) -> V3 {
        self.basis.column(2).into_owned()
    }

    fn tilted(&self, t1: f64, t2: f64) -> Self {
        let omega = self.e2() * t1 - self.e1() * t2;
        Self {
            basis: rotation(omega) * self.basis,
            offset: self.offset,
        }
    }
}

impl Floor {
    pub(crate) fn level(normal: V3, offset: f64) -> Self {
        Self {
            plane: Facing::new(normal, offset),
            lean: [0.0; 2],
        }
    }

    /// The plumb line, up, and the length that was divided out.
    pub(crate) fn plumb(&self) -> (V3, f64) {
        let up =
            self.plane.normal() + self.plane.e1() * self.lean[0] + self.plane.e2() * self.lean[1];
        let norm = up.norm();
        (up / norm, norm)
    }
}

/// Place of a target in the local frame of its end.
pub(crate) fn local_place(end: &End, target: Target) -> V3 {
    match target {
        Target::Rim { clock_rad, .. } => {
            let (sin, cos) = math::sin_cos(clock_rad);
            V3::new(0.0, cos, sin) * end.rim_radius_mm
        }
        Target::Hole { hole, .. } => end.holes.get(hole).map_or_else(V3::zeros, |&h| v3(h)),
        Target::Centre(_) | Target::Point(_) => V3::zeros(),
    }
}

impl State {
    /// Everything at one place: nothing is known yet.
    pub(crate) fn nowhere(network: &Network) -> Self {
        Self {
            points: vec![V3::zeros(); network.points.len()],
            ends: vec![
                Pose {
                    origin: V3::zeros(),
                    axes: M3::identity(),
                };
                network.ends.len()
            ],
            floors: vec![Floor::level(V3::z(), 0.0); network.setups.len()],
            plane: Facing::new(V3::y(), 0.0),
            sideways: None,
        }
    }

    /// Where a target is.
    pub(crate) fn place(&self, network: &Network, target: Target) -> V3 {
        match target {
            Target::Point(p) => self.points[p.0],
            Target::Rim { end, .. } | Target::Hole { end, .. } | Target::Centre(end) => {
                let pose = &self.ends[end.0];
                pose.origin + pose.axes * local_place(&network.ends[end.0], target)
            }
        }
    }

    pub(crate) fn moved(&self, layout: &Layout, step: &Vector1) -> Self {
        let mut next = self.clone();
        for (place, columns) in next.points.iter_mut().zip(&layout.points) {
            for (k, column) in columns.iter().enumerate() {
                if let Some(column) = *column {
                    place[k] += step[column];
                }
            }
        }
        for (i, pose) in next.ends.iter_mut().enumerate() {
            let c = layout.ends[i];
            pose.origin += V3::new(step[c], step[c + 1], step[c + 2]);
            let omega = V3::new(step[c + 3], step[c + 4], step[c + 5]) / layout.levers[i];
            pose.axes = rotation(omega) * pose.axes;
        }
        for (floor, columns) in next.floors.iter_mut().zip(&layout.floors) {
            if let Some(c) = columns.tilt {
                floor.plane = floor
                    .plane
                    .tilted(step[c] / TILT_LEVER_MM, step[c + 1] / TILT_LEVER_MM);
            }
            if let Some(c) = columns.offset {
                floor.plane.offset += step[c];
            }
            if let Some(c) = columns.plumb {
                floor.lean[0] += step[c] / TILT_LEVER_MM;
                floor.lean[1] += step[c + 1] / TILT_LEVER_MM;
            }
        }
        if let Some(c) = layout.plane {
            next.plane = next
                .plane
                .tilted(step[c] / TILT_LEVER_MM, step[c + 1] / TILT_LEVER_MM);
            next.plane.offset += step[c + 2];
        }
        next
    }

    /// Sideways direction and centre plane from the pairs' own mean; `None` without pairs.
    pub(crate) fn sideways_from_pairs(&self, network: &Network) -> Option<(V3, f64)> {
        let mut direction = V3::zeros();
        let mut middle = V3::zeros();
        for pair in &network.pairs {
            let (l, r) = (self.points[pair.left.0], self.points[pair.right.0]);
            direction += (r - l).try_normalize(1e-9).unwrap_or_else(V3::zeros);
            middle += (l + r) * 0.5;
        }
        let normal = direction.try_normalize(1e-9)?;
        #[expect(clippy::cast_precision_loss, reason = "a count of pairs is small")]
        let count = network.pairs.len() as f64;
        Some((normal, normal.dot(&middle) / count))
    }
}
