//! Loss of ground clearance: the lowest place over all chains against what is wished for.

use tubewright_geometry::Point;

use super::chain::Laid;
use super::room::lowest;
use super::system::System;
use crate::problem::BodyKind;

impl System<'_, '_> {
    /// What the lowest place costs in money, and how that changes with each size. Only ground that is
    /// a plane is looked at; at a kink between two lowest places the change is that of the first.
    pub(super) fn lost_ground(&self, laid: &[Laid]) -> (f64, Vec<f64>) {
        let none = (0.0, Vec::new());
        let Some(term) = self.ctx.cost.ground.filter(|term| term.per_mm > 0.0) else {
            return none;
        };
        let mut least: Option<(f64, usize, usize, f64, Point)> = None;
        for body in self.ctx.problem.bodies.iter() {
            let (BodyKind::Ground, tubewright_geometry::Solid::HalfSpace { point, outward }) =
                (body.kind, &body.solid)
            else {
                continue;
            };
            let offset = outward.dot(point.to_vector());
            for (c, chain) in laid.iter().enumerate() {
                for (e, element) in chain.elements.iter().enumerate() {
                    let line = &element.tube.line;
                    let (height, share) = lowest(line, outward.vector());
                    let clearance = height - offset - element.tube.radius;
                    if least.is_none_or(|l| clearance < l.0) {
                        let place = line.at(share * line.length());
                        least = Some((clearance, c, e, share, place));
                    }
                }
            }
        }
        let Some((clearance, c, e, share, place)) = least else {
            return none;
        };
        let lost = term.wanted_mm - clearance;
        if lost <= 0.0 {
            return none;
        }
        let mut gradient = vec![0.0; self.sizes.len()];
        let up = self
            .ctx
            .problem
            .bodies
            .iter()
            .find_map(|body| match (&body.kind, &body.solid) {
                (BodyKind::Ground, tubewright_geometry::Solid::HalfSpace { outward, .. }) => {
                    Some(outward.vector())
                }
                _ => None,
            });
        if let (Some(up), Some(chain)) = (up, laid.get(c))
            && let Some(element) = chain.elements.get(e)
        {
            let weight = up * -term.per_mm;
            self.add_gradient(&mut gradient, (c, chain), element, share, place, weight);
        }
        (term.per_mm * lost, gradient)
    }
}
