//! Equations in radians.

use super::writer::Writer;
use crate::linear::V3;
use crate::network::{EndId, SetupId, Target};
use tubewright_geometry::math;

/// Shortest plan length in mm that has an azimuth.
const SHORTEST_MM: f64 = 1e-9;

/// A direction of an end that is nearer to the plumb line than this (sine) stands upright: its inclination has
/// no slope of its own there.
const UPRIGHT: f64 = 1e-6;

/// Inclination of `d` over the plane square to `up`, with its gradients by `d` and by `up`.
fn inclination(d: V3, up: V3) -> (f64, V3, V3) {
    let rise = up.dot(&d);
    let plan = d - up * rise;
    let run = plan.norm();
    let squared = d.norm_squared();
    if run < SHORTEST_MM * squared.sqrt().max(1e-300) || squared == 0.0 {
        return (math::atan2(rise, run), V3::zeros(), V3::zeros());
    }
    // d(theta) = (run d(rise) - rise d(run)) / d^2, d(run) = plan/run . d(d) - rise/run d . d(up)
    let by_d = (up * run - plan * (rise / run)) / squared;
    let by_up = d * ((run + rise * rise / run) / squared);
    (math::atan2(rise, run), by_d, by_up)
}

impl Writer<'_> {
    pub(crate) fn inclination(&mut self, from: Target, to: Target, setup: SetupId) -> f64 {
        let (up, _) = self.state.floors[setup.0].plumb();
        let (value, by_d, by_up) = inclination(self.place(to) - self.place(from), up);
        self.by_place(to, by_d);
        self.by_place(from, -by_d);
        self.by_plumb(setup, by_up);
        value
    }

    pub(crate) fn bearing(
        &mut self,
        (from, to): (Target, Target),
        (base_from, base_to): (Target, Target),
        setup: SetupId,
    ) -> f64 {
        let (up, _) = self.state.floors[setup.0].plumb();
        let base = self.place(base_to) - self.place(base_from);
        let line = self.place(to) - self.place(from);
        let (zb, zl) = (up.dot(&base), up.dot(&line));
        // Clockwise from above is the negative sense about up.
        let cross = base.cross(&line);
        let s = -up.dot(&cross);
        let c = base.dot(&line) - zb * zl;
        let squared = s * s + c * c;
        if squared > 0.0 {
            let (ks, kc) = (c / squared, -s / squared);
            let by_line = -up.cross(&base) * ks + (base - up * zb) * kc;
            let by_base = -line.cross(&up) * ks + (line - up * zl) * kc;
            let by_up = -cross * ks - (base * zl + line * zb) * kc;
            self.by_place(to, by_line);
            self.by_place(from, -by_line);
            self.by_place(base_to, by_base);
            self.by_place(base_from, -by_base);
            self.by_plumb(setup, by_up);
        }
        math::atan2(s, c)
    }

    pub(crate) fn face_inclination(&mut self, end: EndId, clock_rad: f64, setup: SetupId) -> f64 {
        let (sin, cos) = math::sin_cos(clock_rad);
        self.direction_inclination(end, V3::new(0.0, cos, sin), setup)
    }

    pub(crate) fn twelve_up(&mut self, end: EndId, setup: SetupId) -> f64 {
        // Three o'clock is level both with twelve at the top and at the bottom; the angle seen along
        // the travel tells them apart.
        let pose = self.state.ends[end.0];
        let (up, _) = self.state.floors[setup.0].plumb();
        let twelve = pose.axes.column(1).into_owned();
        let three = pose.axes.column(2).into_owned();
        let (s, c) = (-three.dot(&up), twelve.dot(&up));
        let squared = s * s + c * c;
        if squared > 1e-18 {
            let (ks, kc) = (c / squared, -s / squared);
            self.by_end_direction(end, three, -up * ks);
            self.by_end_direction(end, twelve, up * kc);
            self.by_plumb(setup, -three * ks + twelve * kc);
        }
        math::atan2(s, c)
    }

    fn direction_inclination(&mut self, end: EndId, local: V3, setup: SetupId) -> f64 {
        let direction = self.state.ends[end.0].axes * local;
        let (up, _) = self.state.floors[setup.0].plumb();
        let (value, mut by_d, mut by_up) = inclination(direction, up);
        // A line that stands upright leans no way, but can: along the flow, which is how the face of a
        // flange is turned; across it the reading of three o'clock tells.
        let rise = up.dot(&direction);
        if (direction - up * rise).norm() < UPRIGHT {
            let travel = self.state.ends[end.0].axes.column(0).into_owned();
            let level = (travel - up * up.dot(&travel)).try_normalize(0.1);
            let lean = level.unwrap_or_else(V3::zeros) * rise.signum();
            (by_d, by_up) = (-lean, lean);
        }
        self.by_end_direction(end, direction, by_d);
        self.by_plumb(setup, by_up);
        value
    }
}
