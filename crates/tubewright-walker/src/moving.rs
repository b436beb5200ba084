//! Gaps between a run and bodies that ride on carriers, by sampling the product of the ranges.

use crate::solid::Solid;
use crate::space::{V, add, cross, dot, norm, scale, sin_cos, sub};
use crate::walk::Ball;

/// One way in which a carrier moves, about the position that was measured.
#[derive(Clone, Copy, Debug, PartialEq)]
#[non_exhaustive]
pub enum Freedom {
    /// A right-handed turn about an axis.
    Turn {
        /// A place on the axis.
        on: [f64; 3],
        /// Its unit direction.
        axis: [f64; 3],
        /// Least and most in degrees.
        range_deg: [f64; 2],
    },
    /// A shift along a direction.
    Shift {
        /// Unit direction.
        along: [f64; 3],
        /// Least and most in mm.
        range: [f64; 2],
    },
    /// A shift any way up to a distance.
    Sway {
        /// The distance in mm.
        radius: f64,
    },
}

/// Freedoms, nearest to what rides first; each later one carries those before it.
pub type Carrier = [Freedom];

impl Freedom {
    fn range(&self) -> [f64; 2] {
        match *self {
            Self::Turn { range_deg, .. } => range_deg,
            Self::Shift { range, .. } => range,
            Self::Sway { .. } => [0.0, 0.0],
        }
    }

    fn moved(&self, p: V, value: f64) -> V {
        match *self {
            Self::Turn { on, axis, .. } => {
                // Rodrigues: the part along the axis stays, the rest turns.
                let (sin, cos) = sin_cos(value.to_radians());
                let arm = sub(p, on);
                let along = scale(axis, dot(axis, arm));
                let across = sub(arm, along);
                let turned = add(scale(across, cos), scale(cross(axis, arm), sin));
                add(on, add(along, turned))
            }
            Self::Shift { along, .. } => add(p, scale(along, value)),
            Self::Sway { .. } => p,
        }
    }
}

fn sway(carrier: &Carrier) -> f64 {
    carrier
        .iter()
        .map(|freedom| match freedom {
            Freedom::Sway { radius } => *radius,
            _ => 0.0,
        })
        .sum()
}

/// The tightest place found.
#[derive(Clone, Debug)]
pub struct Tightest {
    /// The ball, where it was measured.
    pub ball: Ball,
    /// The gap in mm, sways taken off: a true gap that occurs, so that nothing larger may be stated.
    pub gap: f64,
    /// Values of the freedoms of the run's carrier, then of the body's (degrees or mm).
    pub values: Vec<f64>,
}

/// Looks for the least gap between balls on one carrier and a body on another: a grid of `samples`
/// values over each range, then a search round the best that halves its step until it is below a
/// hundredth of a millimetre or degree. `None` without balls.
///
/// What rides on one and the same carrier does not move against each other: give no freedoms then,
/// except that what sways does so by itself.
#[must_use]
pub fn least_gap_moving(
    balls: &[Ball],
    rides: &Carrier,
    solid: &Solid,
    body: &Carrier,
    samples: u32,
) -> Option<Tightest> {
    let links: Vec<(&Freedom, bool)> = rides
        .iter()
        .map(|freedom| (freedom, false))
        .chain(body.iter().rev().map(|freedom| (freedom, true)))
        .collect();
    // As seen from the body: its own motion undone, last first.
    let seen = |p: V, values: &[f64]| {
        links
            .iter()
            .zip(values)
            .fold(p, |p, ((freedom, undo), value)| {
                freedom.moved(p, if *undo { -value } else { *value })
            })
    };
    let mut best: Option<Tightest> = None;
    let try_at = |values: &[f64], best: &mut Option<Tightest>| {
        let mut last: Option<(V, f64)> = None;
        let mut is_better = false;
        for ball in balls {
            let least = best.as_ref().map_or(f64::INFINITY, |best| best.gap);
            let centre = seen(ball.centre, values);
            if let Some((place, distance)) = last
                && distance - norm(sub(centre, place)) - ball.radius > least
            {
                continue;
            }
            let distance = solid.distance_within(centre, least + ball.radius);
            last = Some((centre, distance));
            let gap = distance - ball.radius;
            if gap < least {
                is_better = true;
                *best = Some(Tightest {
                    ball: *ball,
                    gap,
                    values: values.to_vec(),
                });
            }
        }
        is_better
    };
    let ranges: Vec<[f64; 2]> = links.iter().map(|(freedom, _)| freedom.range()).collect();
    let counts: Vec<u32> = ranges
        .iter()
        .map(|[least, most]| if least < most { samples.max(2) } else { 1 })
        .collect();
    let all: u32 = counts.iter().product();
    for number in 0..all {
        let mut rest = number;
        let values: Vec<f64> = ranges
            .iter()
            .zip(&counts)
            .map(|([least, most], count)| {
                let at = rest % count;
                rest /= count;
                if *count == 1 {
                    *least
                } else {
                    least + (most - least) * f64::from(at) / f64::from(count - 1)
                }
            })
            .collect();
        try_at(&values, &mut best);
    }
    let mut step: Vec<f64> = ranges
        .iter()
        .zip(&counts)
        .map(|([least, most], count)| (most - least) / f64::from((count - 1).max(1)))
        .collect();
    while step.iter().any(|step| *step > 0.01) {
        step.iter_mut().for_each(|step| *step *= 0.5);
        for (index, [least, most]) in ranges.iter().enumerate() {
            for side in [-1.0, 1.0] {
                let mut values = best.as_ref()?.values.clone();
                values[index] = (values[index] + side * step[index]).clamp(*least, *most);
                try_at(&values, &mut best);
            }
        }
    }
    let mut best = best?;
    best.gap -= sway(rides) + sway(body);
    // Back to the order of the lists.
    let of_body = best.values.split_off(rides.len());
    best.values.extend(of_body.into_iter().rev());
    Some(best)
}
