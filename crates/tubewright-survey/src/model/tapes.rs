//! Equations in millimetres. Each gives the modelled value and writes its derivatives.

use super::writer::Writer;
use crate::linear::V3;
use crate::network::{CarAxis, Line, SetupId, Side, Target, Touch};

/// Shortest distance in mm that has a direction; below it the gradient is taken as zero.
const SHORTEST_MM: f64 = 1e-9;

fn direction(d: V3) -> (f64, V3) {
    let length = d.norm();
    if length > SHORTEST_MM {
        (length, d / length)
    } else {
        (length, V3::zeros())
    }
}

impl Writer<'_> {
    /// Shift of the touched place from the target, outward or inward across the car.
    fn sideways_shift(&self, touch: Touch) -> V3 {
        let outboard = touch.contact.outboard_mm();
        let Some((normal, offset)) = self.state.sideways else {
            return V3::zeros();
        };
        if outboard == 0.0 {
            return V3::zeros();
        }
        let hinted = match touch.target {
            Target::Point(p) => match self.network.points[p.0].hint.side {
                Some(Side::Left) => Some(-1.0),
                Some(Side::Right) => Some(1.0),
                _ => None,
            },
            _ => None,
        };
        let sign =
            hinted.unwrap_or_else(|| (normal.dot(&self.place(touch.target)) - offset).signum());
        normal * (sign * outboard)
    }

    pub(crate) fn tape(&mut self, from: Touch, to: Touch, burnt_mm: f64) -> f64 {
        let a = self.place(from.target) + self.sideways_shift(from);
        let b = self.place(to.target) + self.sideways_shift(to);
        let (length, u) = direction(b - a);
        self.by_place(to.target, u);
        self.by_place(from.target, -u);
        length + from.contact.along_tape_mm() + to.contact.along_tape_mm() + burnt_mm
    }

    pub(crate) fn height(&mut self, touch: Touch, setup: SetupId) -> f64 {
        let plane = self.state.floors[setup.0].plane;
        let normal = plane.normal();
        let place = self.place(touch.target) + self.sideways_shift(touch);
        self.by_place(touch.target, normal);
        self.by_floor_normal(setup, place);
        self.by_floor_offset(setup, -1.0);
        normal.dot(&place) - plane.offset + touch.contact.along_tape_mm()
    }

    pub(crate) fn plumb(&mut self, from: Target, to: Target, setup: SetupId) -> f64 {
        let (up, _) = self.state.floors[setup.0].plumb();
        let d = self.place(to) - self.place(from);
        let rise = up.dot(&d);
        let (length, u) = direction(d - up * rise);
        self.by_place(to, u);
        self.by_place(from, -u);
        self.by_plumb(setup, u * -rise);
        length
    }

    pub(crate) fn offset(&mut self, from: Target, to: Target, along: Line) -> f64 {
        let d = self.place(to) - self.place(from);
        match along {
            Line::Plumb(setup) => {
                let (up, _) = self.state.floors[setup.0].plumb();
                self.by_place(to, up);
                self.by_place(from, -up);
                self.by_plumb(setup, d);
                up.dot(&d)
            }
            Line::Through(a, b) => {
                let (length, e) = direction(self.place(b) - self.place(a));
                let value = d.dot(&e);
                self.by_place(to, e);
                self.by_place(from, -e);
                if length > SHORTEST_MM {
                    let across = (d - e * value) / length;
                    self.by_place(b, across);
                    self.by_place(a, -across);
                }
                value
            }
        }
    }

    /// One of the three equations of a symmetrical pair: 0 the middle lies in the centre plane, 1 and
    /// 2 the line between them is square to it.
    pub(crate) fn symmetry(&mut self, left: Target, right: Target, equation: usize) -> f64 {
        let plane = self.state.plane;
        let (e1, e2, n) = (plane.e1(), plane.e2(), plane.normal());
        let (p, q) = (self.place(left), self.place(right));
        if equation == 0 {
            let middle = (p + q) * 0.5;
            self.by_place(left, n * 0.5);
            self.by_place(right, n * 0.5);
            self.by_centre_plane(e1.dot(&middle), e2.dot(&middle), -1.0);
            return n.dot(&middle) - plane.offset;
        }
        let d = q - p;
        let e = if equation == 1 { e1 } else { e2 };
        self.by_place(right, e);
        self.by_place(left, -e);
        let turn = -n.dot(&d);
        if equation == 1 {
            self.by_centre_plane(turn, 0.0, 0.0);
        } else {
            self.by_centre_plane(0.0, turn, 0.0);
        }
        e.dot(&d)
    }

    pub(crate) fn axis_symmetry(&mut self, axis: CarAxis, p: Target, q: Target) -> f64 {
        let (e, sign) = match axis {
            CarAxis::X => (V3::x(), -1.0),
            CarAxis::Y => (V3::y(), 1.0),
            CarAxis::Z => (V3::z(), -1.0),
        };
        self.by_place(p, e);
        self.by_place(q, e * sign);
        e.dot(&self.place(p)) + sign * e.dot(&self.place(q))
    }
}
