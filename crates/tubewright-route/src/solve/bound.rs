//! A price that no route can undercut, from what every route must do: turn, cover the distance, and
//! be bought and welded piece by piece.
//!
//! Turn: a curve from one place to another has a mean direction of travel, so its directions cannot
//! all lie within a cone about the first (or the last) that leaves the way from place to place
//! outside. From that and the triangle inequality on the sphere of directions follows the least total
//! turn. Distance: arcs of total turn Θ cover at most RΘ, straights their length, components theirs.
//! Number of bends: none only on one line, one only where the two lines of travel meet. Derived here;
//! no source.

use tubewright_geometry::{Point, Vector, math};

use crate::cost::{CostModel, Legs};
use crate::problem::{Passage, Region, RouteProblem, Tube};

/// What the ends of a chain may be off by, with room to spare: the tolerances of the form are 1 mm
/// and 0.2°.
const PLACE_MM: f64 = 3.0;
const DIRECTION_RAD: f64 = 0.01;
/// Most bends that are tried one by one; more cost more, so that any number is covered by the last.
const MOST_BENDS: usize = 7;

/// No route of the problem costs less than this.
pub(crate) fn lower_bound(problem: &RouteProblem, cost: &CostModel) -> f64 {
    let mut total = 0.0;
    for run in &problem.runs {
        let Some(tube) = problem.tubes.get(run.tube) else {
            continue;
        };
        let components: f64 = run
            .components
            .iter()
            .filter_map(|c| problem.components.get(*c))
            .map(|c| c.length_mm)
            .sum();
        total += cost.weld * (1.0 + run.components.len() as f64);
        let start = (run.start.origin, run.start.travel().vector());
        let end = (run.end, run.end_direction.vector());
        let passed = run.passage.and_then(|Passage { crossover, side }| {
            let x = problem.crossovers.get(crossover)?;
            Some((x.poses, *x.ports(side)))
        });
        match passed {
            None => {
                let need = Need::between(start, end, components);
                total += need.price(problem, tube, cost);
            }
            Some((poses, ports)) => {
                total += cost.weld;
                let inlet = reach(start.0, ports.inlet, poses);
                let outlet = reach(end.0, ports.outlet, poses);
                for (apart, from, to) in [
                    (inlet, start.1, ports.inlet_direction.vector()),
                    (outlet, ports.outlet_direction.vector(), end.1),
                ] {
                    let need = Need::toward(apart, from, to, components);
                    total += need.price(problem, tube, cost);
                }
            }
        }
    }
    total
}

/// Least distance from a place to a port over all places of the crossover.
fn reach(from: Point, port: Vector, poses: Region) -> f64 {
    let p = (from - port).to_array();
    let (lo, hi) = (poses.min.to_array(), poses.max.to_array());
    let mut squared = 0.0;
    for ((p, lo), hi) in p.into_iter().zip(lo).zip(hi) {
        let out = (lo - p).max(p - hi).max(0.0);
        squared += out * out;
    }
    squared.sqrt()
}

/// What a chain must do at least.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Need {
    /// Distance in mm that bends and straights must cover.
    distance: f64,
    /// Turn in radians.
    turn: f64,
    bends: usize,
}

fn angle(a: Vector, b: Vector) -> f64 {
    math::atan2(a.cross(b).norm(), a.dot(b))
}

impl Need {
    pub(crate) fn between(
        (s, d0): (Point, Vector),
        (e, d1): (Point, Vector),
        components: f64,
    ) -> Self {
        let way = e - s;
        let apart = way.norm();
        let mut need = Self::toward(apart, d0, d1, components);
        if apart > 10.0 * PLACE_MM {
            // The end may be off, which turns the way a little.
            let doubt = DIRECTION_RAD + 1.2 * PLACE_MM / apart;
            let between = angle(d0, d1);
            for d in [d0, d1] {
                let aside = angle(d, way).min(math::FRAC_PI_2);
                need.turn = need.turn.max(2.0 * aside - between - 3.0 * doubt);
            }
            let aside = angle(d0, way) - doubt;
            if aside > 0.0 {
                need.bends = need.bends.max(1);
            }
            // One bend only where the lines of travel meet: how far they pass each other.
            let across = d0.cross(d1);
            let pass = if across.norm() > 0.05 {
                (way.dot(across) / across.norm()).abs()
                    - DIRECTION_RAD * apart * 2.0 / across.norm()
            } else if between < 1.0 {
                // Near to parallel: one small bend cannot make up for an offset.
                let offset = way.cross(d0).norm();
                offset - (between + DIRECTION_RAD) * (apart + 1.0)
            } else {
                0.0
            };
            if pass > 2.0 * PLACE_MM {
                need.bends = need.bends.max(2);
            }
        }
        need
    }

    pub(crate) fn toward(apart: f64, d0: Vector, d1: Vector, components: f64) -> Self {
        let turn = (angle(d0, d1) - DIRECTION_RAD).max(0.0);
        Self {
            distance: (apart - PLACE_MM - components).max(0.0),
            turn,
            bends: usize::from(turn > 0.0),
        }
    }

    /// The least price of bends and straights that can do it, welds at their fronts with them.
    pub(crate) fn price(&self, problem: &RouteProblem, tube: &Tube, cost: &CostModel) -> f64 {
        let mut best = f64::INFINITY;
        let mut counts = vec![0usize; tube.stock.len()];
        self.each(problem, tube, cost, 0, 0, &mut counts, &mut best);
        best
    }

    /// All lists of stock bends of up to [`MOST_BENDS`], with any number of straights.
    #[expect(clippy::too_many_arguments, reason = "a recursion over one list")]
    fn each(
        &self,
        problem: &RouteProblem,
        tube: &Tube,
        cost: &CostModel,
        class: usize,
        used: usize,
        counts: &mut Vec<usize>,
        best: &mut f64,
    ) {
        let Some(slot) = counts.get(class).copied() else {
            if used >= self.bends.min(MOST_BENDS) {
                let price = self.list_price(problem, tube, cost, counts, used);
                *best = best.min(price);
            }
            return;
        };
        for more in 0..=(MOST_BENDS - used) {
            if let Some(c) = counts.get_mut(class) {
                *c = more;
            }
            self.each(problem, tube, cost, class + 1, used + more, counts, best);
        }
        if let Some(c) = counts.get_mut(class) {
            *c = slot;
        }
    }

    fn list_price(
        &self,
        problem: &RouteProblem,
        tube: &Tube,
        cost: &CostModel,
        counts: &[usize],
        used: usize,
    ) -> f64 {
        let uncut = problem.rules.uncut_tolerance_rad;
        let (mut fixed, mut least, mut most) = (0.0, 0.0, 0.0);
        let mut below = 0.0;
        for (stock, count) in tube.stock.iter().zip(counts) {
            let n = *count as f64;
            fixed += n * (cost.weld + stock.price);
            least += n * f64::max(problem.rules.min_bend_rad, below);
            most += n * (stock.angle_rad + uncut);
            below = stock.angle_rad - uncut;
        }
        let radius = tube.clr_mm;
        // A full list stands for longer ones too, which turn and cover more without end.
        let open_ended = used == MOST_BENDS;
        if most < self.turn && !open_ended {
            return f64::INFINITY;
        }
        let turn_price = cost.bend_per_rad(tube);
        let turn = self.turn.max(least);
        let legs_serve = cost.legs == Legs::ServeAsStraight;
        let straight_price = if legs_serve {
            cost.flow_per_mm
        } else {
            cost.straight_per_mm(tube)
        };
        // Without any straight.
        let bare = if open_ended {
            turn_price * turn
        } else if most * radius < self.distance {
            f64::INFINITY
        } else {
            turn_price * turn.max(self.distance / radius)
        };
        // With at least one: its weld, and more turn in place of length only where that pays.
        let weld = if legs_serve { 0.0 } else { cost.weld };
        let at = |turn: f64| {
            turn_price * turn + straight_price * (self.distance - radius * turn).max(0.0)
        };
        let kink = (self.distance / radius).clamp(turn, most.max(turn));
        let with = weld + at(turn).min(at(kink));
        fixed + bare.min(with)
    }
}
