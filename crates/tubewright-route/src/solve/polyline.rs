//! Tangent polylines: the corners of a run's straights prolonged. A polyline whose first side lies
//! along the start's travel and whose last side lies along the end's is closed by construction,
//! which makes it the place where random starts are thrown.

use tubewright_geometry::{Point, UnitVector, Vector, math};

use super::chain::Stance;
use super::layout::{Joint, Layout, Slot, stock_for};
use crate::cost::CostModel;
use crate::problem::{RouteProblem, Tube};

/// A component on a side of the polyline.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Placed {
    pub(crate) component: usize,
    /// Side of the polyline, from 0.
    pub(crate) side: usize,
    /// From the side's upstream corner to the component's upstream end, mm.
    pub(crate) from: f64,
}

/// Corners (bends) between start and end, with the components placed on the sides in order.
#[derive(Clone, Debug)]
pub(crate) struct Polyline {
    pub(crate) corners: Vec<Point>,
    pub(crate) placed: Vec<Placed>,
}

/// Ends of a chain.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Ends {
    pub(crate) start: Stance,
    pub(crate) end: Point,
    pub(crate) end_direction: UnitVector,
}

/// Set-back of a bend: from corner to tangent point.
fn set_back(clr: f64, angle: f64) -> f64 {
    clr * math::tan(angle / 2.0)
}

/// What a polyline would be as a run, before clearances are looked at.
pub(crate) struct Fit {
    pub(crate) angles: Vec<f64>,
    /// Lengths of the slots in order (between corners and components).
    pub(crate) slots: Vec<f64>,
    /// Missing length over all slots, mm.
    pub(crate) short: f64,
}

impl Polyline {
    /// Directions of the sides.
    fn directions(&self, ends: &Ends) -> Option<Vec<Vector>> {
        let mut out = Vec::with_capacity(self.corners.len() + 1);
        let mut from = ends.start.origin;
        for (i, &to) in self.corners.iter().enumerate() {
            if i == 0 {
                out.push(ends.start.travel);
            } else {
                out.push((to - from).direction()?.vector());
            }
            from = to;
        }
        out.push(ends.end_direction.vector());
        Some(out)
    }

    /// Angles and slot lengths; `None` when a bend would be sharper than `sharpest`.
    pub(crate) fn fit(
        &self,
        problem: &RouteProblem,
        ends: &Ends,
        clr: f64,
        sharpest: f64,
    ) -> Option<Fit> {
        let directions = self.directions(ends)?;
        let mut angles = Vec::with_capacity(self.corners.len());
        for pair in directions.windows(2) {
            let [a, b] = pair else { return None };
            let angle = math::atan2(a.cross(*b).norm(), a.dot(*b));
            if angle > sharpest {
                return None;
            }
            angles.push(angle);
        }
        let mut slots = Vec::new();
        let mut short = 0.0;
        let mut from = ends.start.origin;
        let mut back = 0.0;
        let mut placed = self.placed.iter().peekable();
        for (side, direction) in directions.iter().enumerate() {
            let to = self.corners.get(side).copied().unwrap_or(ends.end);
            let ahead = angles.get(side).map_or(0.0, |a| set_back(clr, *a));
            // Signed, so that a side run backwards shows as missing length.
            let length = direction.dot(to - from);
            let mut at = back;
            while let Some(p) = placed.next_if(|p| p.side == side) {
                slots.push(p.from - at);
                at = p.from
                    + problem
                        .components
                        .get(p.component)
                        .map_or(0.0, |c| c.length_mm);
            }
            slots.push(length - ahead - at);
            from = to;
            back = ahead;
        }
        for slot in &slots {
            short += (-slot).max(0.0);
        }
        Some(Fit {
            angles,
            slots,
            short,
        })
    }

    /// Layout and sizes of a fit.
    pub(crate) fn to_chain(
        &self,
        problem: &RouteProblem,
        tube: &Tube,
        cost: &CostModel,
        ends: &Ends,
        fit: &Fit,
    ) -> Option<(Layout, Vec<f64>)> {
        let directions = self.directions(ends)?;
        let mut joints = Vec::new();
        let mut sizes: Vec<(f64, f64)> = Vec::new();
        let mut twelve = ends.start.twelve;
        let mut placed = self.placed.iter().peekable();
        for (side, direction) in directions.iter().enumerate() {
            while let Some(p) = placed.next_if(|p| p.side == side) {
                joints.push(Joint::Component(p.component));
                sizes.push((0.0, 0.0));
            }
            if let (Some(angle), Some(next)) = (fit.angles.get(side), directions.get(side + 1)) {
                let toward = *next - *direction * direction.dot(*next);
                let toward = toward.direction().map_or(twelve, |d| d.vector());
                let across = direction.cross(twelve);
                let clock = math::atan2(across.dot(toward), twelve.dot(toward));
                let (stock, exact) = stock_for(tube, *angle, problem.rules.uncut_tolerance_rad);
                joints.push(Joint::Bend { stock, exact });
                sizes.push((*angle, clock));
                twelve = (toward * math::cos(*angle) - *direction * math::sin(*angle))
                    .direction()
                    .map_or(twelve, |d| d.vector());
            }
        }
        let mut layout = Layout {
            slots: vec![Slot::Absent; joints.len() + 1],
            joints,
        };
        let mut x = Vec::with_capacity(layout.sizes());
        for i in 0..layout.slots.len() {
            let length = fit.slots.get(i).copied().unwrap_or(0.0);
            let slot = layout.slot_for(i, length, problem, tube, cost);
            if let Some(s) = layout.slots.get_mut(i) {
                *s = slot;
            }
            x.push(length.max(0.0));
            if let Some((angle, clock)) = sizes.get(i) {
                x.push(*angle);
                x.push(*clock);
            }
        }
        Some((layout, x))
    }
}
