//! Writes one equation: gradients by places and directions become entries by columns.

use super::state::{State, local_place};
use super::{Layout, TILT_LEVER_MM};
use crate::linear::V3;
use crate::network::{EndId, Network, SetupId, Target};

/// What the kinds of reading write to.
pub(crate) struct Writer<'a> {
    pub(crate) network: &'a Network,
    pub(crate) layout: &'a Layout,
    pub(crate) state: &'a State,
    pub(crate) entries: Vec<(usize, f64)>,
}

impl Writer<'_> {
    pub(crate) fn place(&self, target: Target) -> V3 {
        self.state.place(self.network, target)
    }

    /// Derivative of the equation by the place of a target.
    pub(crate) fn by_place(&mut self, target: Target, gradient: V3) {
        match target {
            Target::Point(p) => {
                for (k, column) in self.layout.points[p.0].iter().enumerate() {
                    if let Some(column) = *column {
                        self.entries.push((column, gradient[k]));
                    }
                }
            }
            Target::Rim { end, .. } | Target::Hole { end, .. } | Target::Centre(end) => {
                let c = self.layout.ends[end.0];
                for k in 0..3 {
                    self.entries.push((c + k, gradient[k]));
                }
                let arm =
                    self.state.ends[end.0].axes * local_place(&self.network.ends[end.0], target);
                self.by_rotation(end, arm.cross(&gradient));
            }
        }
    }

    /// Derivative by a direction fixed to an end.
    pub(crate) fn by_end_direction(&mut self, end: EndId, direction: V3, gradient: V3) {
        self.by_rotation(end, direction.cross(&gradient));
    }

    fn by_rotation(&mut self, end: EndId, torque: V3) {
        let c = self.layout.ends[end.0] + 3;
        let lever = self.layout.levers[end.0];
        for k in 0..3 {
            self.entries.push((c + k, torque[k] / lever));
        }
    }

    /// Derivative by the normal of a set-up's floor.
    pub(crate) fn by_floor_normal(&mut self, setup: SetupId, gradient: V3) {
        let plane = &self.state.floors[setup.0].plane;
        if let Some(c) = self.layout.floors[setup.0].tilt {
            self.entries
                .push((c, gradient.dot(&plane.e1()) / TILT_LEVER_MM));
            self.entries
                .push((c + 1, gradient.dot(&plane.e2()) / TILT_LEVER_MM));
        }
    }

    pub(crate) fn by_floor_offset(&mut self, setup: SetupId, gradient: f64) {
        if let Some(c) = self.layout.floors[setup.0].offset {
            self.entries.push((c, gradient));
        }
    }

    /// Derivative by the plumb direction (a unit vector) of a set-up.
    pub(crate) fn by_plumb(&mut self, setup: SetupId, gradient: V3) {
        let floor = self.state.floors[setup.0];
        let (up, norm) = floor.plumb();
        let g = (gradient - up * up.dot(&gradient)) / norm;
        let (e1, e2, n) = (floor.plane.e1(), floor.plane.e2(), floor.plane.normal());
        if let Some(c) = self.layout.floors[setup.0].tilt {
            let d1 = e1 - n * floor.lean[0];
            let d2 = e2 - n * floor.lean[1];
            self.entries.push((c, g.dot(&d1) / TILT_LEVER_MM));
            self.entries.push((c + 1, g.dot(&d2) / TILT_LEVER_MM));
        }
        if let Some(c) = self.layout.floors[setup.0].plumb {
            self.entries.push((c, g.dot(&e1) / TILT_LEVER_MM));
            self.entries.push((c + 1, g.dot(&e2) / TILT_LEVER_MM));
        }
    }

    /// Derivative by tilt toward e1, toward e2 and by the offset of the car's centre plane.
    pub(crate) fn by_centre_plane(&mut self, tilt1: f64, tilt2: f64, offset: f64) {
        if let Some(c) = self.layout.plane {
            self.entries.push((c, tilt1 / TILT_LEVER_MM));
            self.entries.push((c + 1, tilt2 / TILT_LEVER_MM));
            self.entries.push((c + 2, offset));
        }
    }
}
