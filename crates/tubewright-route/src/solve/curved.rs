//! What costs money and is not linear in the sizes: lost ground clearance, and the flow lost at mitres.

use tubewright_geometry::math;

use super::chain::Laid;
use super::system::{Anchor, Chain, System};
use crate::loss;

impl System<'_, '_> {
    /// What it costs at these sizes, and how that changes with each of them; no changes where there is none.
    pub(super) fn curved_cost(&self, x: &[f64], laid: &[Laid]) -> (f64, Vec<f64>) {
        let (mut lost, mut gradient) = self.lost_ground(laid);
        for chain in &self.chains {
            let Some((turn, first)) = self.mitre(chain, x) else {
                continue;
            };
            let ([a, b], [sin_a, sin_b]) = (turn.map(math::cos), turn.map(math::sin));
            // sin²(δ/2) with cos δ = cos a cos b: the two turns are about axes square to each other.
            let half = 0.5 * (1.0 - a * b);
            lost += self.ctx.cost.flow_per_head * loss::mitre_of(half);
            let slope = self.ctx.cost.flow_per_head * loss::mitre_slope(half);
            gradient.resize(self.sizes.len(), 0.0);
            for (k, by) in [0.5 * sin_a * b, 0.5 * a * sin_b].into_iter().enumerate() {
                if let Some(slot) = gradient.get_mut(first + k) {
                    *slot += slope * by;
                }
            }
        }
        (lost, gradient)
    }

    /// What is lost at outlets that are sawn off as mitres.
    pub(super) fn lost_at_mitres(&self, x: &[f64]) -> f64 {
        let turns = self.chains.iter().filter_map(|chain| self.mitre(chain, x));
        let halves = turns.map(|(turn, _)| 0.5 * (1.0 - math::cos(turn[0]) * math::cos(turn[1])));
        halves
            .map(|half| self.ctx.cost.flow_per_head * loss::mitre_of(half))
            .sum()
    }

    /// The two turns of a start that is sawn off, and the number of the first among the sizes.
    fn mitre(&self, chain: &Chain, x: &[f64]) -> Option<([f64; 2], usize)> {
        let Anchor::Slides(slide, _) = chain.start else {
            return None;
        };
        if !chain.is_sawn(self.ctx) || self.ctx.cost.flow_per_head <= 0.0 {
            return None;
        }
        let first = self.pose_index(slide) + 3;
        let turn = |k: usize| x.get(first + k).copied().unwrap_or(0.0);
        Some(([turn(0), turn(1)], first))
    }
}
