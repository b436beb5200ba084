//! Many bodies on their own carriers, each with the gap that it asks for.

use super::{
    Freedom, Motion, MotionSearch, MovingClearance, clearance_in_motion, is_clear_in_motion,
};
use crate::bounds::Bounds;
use crate::distance::is_clear;
use crate::solid::Solid;
use crate::tube::TubeElement;

/// A body on a carrier and the gap that a tube must keep from it in every position.
#[derive(Clone, Debug)]
pub struct MovingObstacle {
    /// The body, in its measured position.
    pub solid: Solid,
    /// Required gap in mm.
    pub gap_mm: f64,
    /// What its carrier may do.
    pub motion: Motion,
}

/// Moving bodies prepared for many queries. Plain data, never changed by a query.
#[derive(Clone, Debug)]
pub struct MovingSet {
    parts: Vec<Prepared>,
}

#[derive(Clone, Debug)]
struct Prepared {
    obstacle: MovingObstacle,
    bounds: Option<Bounds>,
    /// How far its carrier can take any place of it; no bound for a body without end.
    travel_mm: Option<f64>,
}

/// The tightest body of a moving set.
#[derive(Clone, Debug, PartialEq)]
pub struct MovingSetClearance {
    /// Which obstacle, counted in the order they were given.
    pub body: usize,
    /// Gap over all positions less the required gap, in mm; never larger than the true one.
    pub margin_mm: f64,
    /// The gap, its place and the position.
    pub clearance: MovingClearance,
}

impl Motion {
    /// How far the carrier can take any place of a box from its measured position, in mm: an upper
    /// bound, sways included.
    #[must_use]
    pub fn most_travel_mm(&self, bounds: &Bounds) -> f64 {
        let (centre, ball) = (bounds.centre(), bounds.half_diagonal_mm());
        let mut travel = 0.0;
        for freedom in &self.freedoms {
            let (min, max) = freedom.range();
            let most = min.abs().max(max.abs());
            travel += match freedom {
                Freedom::Sway { radius_mm } => radius_mm.abs(),
                // Earlier freedoms have moved the place by `travel` at most.
                other => most * (other.speed_at(centre) + other.speed_per_mm() * (ball + travel)),
            };
        }
        travel
    }
}

impl MovingSet {
    /// Prepares the obstacles.
    #[must_use]
    pub fn new(obstacles: impl IntoIterator<Item = MovingObstacle>) -> Self {
        let parts = obstacles
            .into_iter()
            .map(|obstacle| {
                let bounds = obstacle.solid.bounds();
                Prepared {
                    travel_mm: bounds.map(|b| obstacle.motion.most_travel_mm(&b)),
                    bounds,
                    obstacle,
                }
            })
            .collect();
        Self { parts }
    }

    /// Number of obstacles.
    #[must_use]
    pub fn len(&self) -> usize {
        self.parts.len()
    }

    /// True when there is no obstacle.
    #[must_use]
    pub fn is_empty(&self) -> bool {
        self.parts.is_empty()
    }

    /// The first body that the tube comes too near to in some position; `None` when it is clear of all
    /// in every position. `undecided_mm` as in [`is_clear_in_motion`].
    #[must_use]
    pub fn first_blocking(
        &self,
        tube: &TubeElement,
        tube_motion: &Motion,
        undecided_mm: f64,
    ) -> Option<usize> {
        let own = OwnTravel::new(tube, tube_motion);
        self.parts
            .iter()
            .position(|part| !part.is_clear(tube, tube_motion, &own, undecided_mm))
    }

    /// The body with the least margin over every position, when it is below `limit_mm`.
    #[must_use]
    pub fn tightest(
        &self,
        tube: &TubeElement,
        tube_motion: &Motion,
        effort: MotionSearch,
        limit_mm: f64,
    ) -> Option<MovingSetClearance> {
        let own = OwnTravel::new(tube, tube_motion);
        let mut best: Option<MovingSetClearance> = None;
        for (body, part) in self.parts.iter().enumerate() {
            let limit = best.as_ref().map_or(limit_mm, |b| b.margin_mm);
            if let Some(found) = part.below(body, tube, tube_motion, &own, effort, limit) {
                best = Some(found);
            }
        }
        best
    }

    /// Every body whose margin over every position is below `limit_mm`, in order.
    #[must_use]
    pub fn all_below(
        &self,
        tube: &TubeElement,
        tube_motion: &Motion,
        effort: MotionSearch,
        limit_mm: f64,
    ) -> Vec<MovingSetClearance> {
        let own = OwnTravel::new(tube, tube_motion);
        self.parts
            .iter()
            .enumerate()
            .filter_map(|(body, part)| part.below(body, tube, tube_motion, &own, effort, limit_mm))
            .collect()
    }
}

/// The tube's own box and travel, worked out once a query.
struct OwnTravel {
    bounds: Bounds,
    travel_mm: f64,
}

impl OwnTravel {
    fn new(tube: &TubeElement, motion: &Motion) -> Self {
        let line = tube.line.bounds();
        Self {
            travel_mm: motion.most_travel_mm(&line),
            bounds: tube.bounds(),
        }
    }
}

impl Prepared {
    /// True when the boxes, or the bodies in their measured position, are farther apart than both can
    /// travel and `need_mm` besides.
    fn is_out_of_reach(&self, tube: &TubeElement, own: &OwnTravel, need_mm: f64) -> bool {
        let (Some(bounds), Some(travel)) = (&self.bounds, self.travel_mm) else {
            return false;
        };
        let reach = own.travel_mm + travel + need_mm;
        bounds.distance_to(&own.bounds) >= reach.max(0.0) && reach >= 0.0
            || is_clear(tube, &self.obstacle.solid, reach)
    }

    fn is_clear(
        &self,
        tube: &TubeElement,
        tube_motion: &Motion,
        own: &OwnTravel,
        undecided_mm: f64,
    ) -> bool {
        let MovingObstacle {
            solid,
            gap_mm,
            motion,
        } = &self.obstacle;
        self.is_out_of_reach(tube, own, *gap_mm)
            || is_clear_in_motion(tube, tube_motion, solid, motion, *gap_mm, undecided_mm)
    }

    fn below(
        &self,
        body: usize,
        tube: &TubeElement,
        tube_motion: &Motion,
        own: &OwnTravel,
        effort: MotionSearch,
        limit_mm: f64,
    ) -> Option<MovingSetClearance> {
        let MovingObstacle {
            solid,
            gap_mm,
            motion,
        } = &self.obstacle;
        if limit_mm.is_finite() && self.is_out_of_reach(tube, own, gap_mm + limit_mm) {
            return None;
        }
        let clearance = clearance_in_motion(tube, tube_motion, solid, motion, effort);
        let margin_mm = clearance.gap_mm - gap_mm;
        (margin_mm < limit_mm).then_some(MovingSetClearance {
            body,
            margin_mm,
            clearance,
        })
    }
}
