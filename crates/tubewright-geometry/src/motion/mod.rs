//! What moves: carriers as an ordered list of freedoms, each with its range.
//!
//! Clearance between a tube on one carrier and a body on another is taken over the *product* of the
//! two carriers' ranges, by bounds: a stretch of positions is judged by its middle and by how far
//! anything can be from there, so no position between samples is missed.

mod clearance;
mod envelope;
mod set;
mod tyre;

pub use clearance::{MotionSearch, MovingClearance, clearance_in_motion, is_clear_in_motion};
pub use envelope::{Extreme, furthest_along, point_envelope};
pub use set::{MovingObstacle, MovingSet, MovingSetClearance};
pub use tyre::{SteeredTyre, TyreEnvelope, tyre_envelope};

use crate::placement::Placement;
use crate::vector::{Point, UnitVector};

/// One way a carrier can move, with its range about the position that was measured (zero).
#[derive(Clone, Copy, Debug, PartialEq)]
#[non_exhaustive]
pub enum Freedom {
    /// A shift along a direction: suspension bump (along up) and droop (negative).
    Shift {
        /// Direction of positive values.
        direction: UnitVector,
        /// Least value in mm.
        min_mm: f64,
        /// Greatest value in mm.
        max_mm: f64,
    },
    /// A turn about a line, right-handed: engine rock about its roll axis, steering about the
    /// kingpin.
    Turn {
        /// A place on the axis, in the measured position.
        on_axis: Point,
        /// Direction of the axis, in the measured position.
        axis: UnitVector,
        /// Least angle in radians.
        min_rad: f64,
        /// Greatest angle in radians.
        max_rad: f64,
    },
    /// A shift of any direction up to a distance: sway on rubber hangers.
    Sway {
        /// Greatest distance in mm.
        radius_mm: f64,
    },
}

/// What a carrier may do: freedoms in order, the first acting on the measured position and each later
/// one carrying all before it along. For a front wheel: the turn about the kingpin, then the bump.
///
/// An empty list stands still: the chassis.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Motion {
    /// Freedoms, nearest to the body first.
    pub freedoms: Vec<Freedom>,
}

impl Freedom {
    /// Least and greatest value, in mm or radians; zero for a sway, which has no single value.
    #[must_use]
    pub const fn range(&self) -> (f64, f64) {
        match *self {
            Self::Shift { min_mm, max_mm, .. } => (min_mm, max_mm),
            Self::Turn {
                min_rad, max_rad, ..
            } => (min_rad, max_rad),
            Self::Sway { .. } => (0.0, 0.0),
        }
    }

    /// The position at one value; a sway is left out.
    #[must_use]
    pub fn at(&self, value: f64) -> Placement {
        match *self {
            Self::Shift { direction, .. } => Placement::shifted(direction * value),
            Self::Turn { on_axis, axis, .. } => Placement::turned(on_axis, axis, value),
            Self::Sway { .. } => Placement::IDENTITY,
        }
    }

    /// How far a point moves at most for one unit of the value: 1 for a shift, the distance from the
    /// axis for a turn.
    fn speed_at(&self, p: Point) -> f64 {
        match *self {
            Self::Shift { .. } => 1.0,
            Self::Turn { on_axis, axis, .. } => axis.vector().cross(p - on_axis).norm(),
            Self::Sway { .. } => 0.0,
        }
    }

    /// How much that speed can differ from one point to another 1 mm off.
    const fn speed_per_mm(&self) -> f64 {
        match self {
            Self::Turn { .. } => 1.0,
            Self::Shift { .. } | Self::Sway { .. } => 0.0,
        }
    }
}

impl Motion {
    /// The chassis: nothing moves.
    pub const FIXED: Self = Self {
        freedoms: Vec::new(),
    };

    /// The position at one value a freedom (missing values count as zero, sways are left out).
    #[must_use]
    pub fn at(&self, values: &[f64]) -> Placement {
        self.freedoms
            .iter()
            .zip(values)
            .fold(Placement::IDENTITY, |so_far, (freedom, &value)| {
                so_far.then(&freedom.at(value))
            })
    }

    /// All sways together in mm: they add up, whatever turns lie between.
    #[must_use]
    pub fn sway_mm(&self) -> f64 {
        self.freedoms
            .iter()
            .map(|f| match f {
                Freedom::Sway { radius_mm } => radius_mm.abs(),
                _ => 0.0,
            })
            .sum()
    }

    /// True when nothing in the list moves anything.
    #[must_use]
    pub fn is_fixed(&self) -> bool {
        self.sway_mm() <= 0.0
            && self.freedoms.iter().all(|f| {
                let (min, max) = f.range();
                min == 0.0 && max == 0.0
            })
    }
}

/// One freedom in a row of them that acts on a tube, as seen from the body.
#[derive(Clone, Copy, Debug)]
struct Link {
    freedom: Freedom,
    /// True for the body's own freedoms, which act backwards on the tube.
    backwards: bool,
    /// Place in the list it came from.
    place: usize,
}

impl Link {
    /// What it does to the tube at this value of its freedom.
    fn at(&self, value: f64) -> Placement {
        self.freedom.at(if self.backwards { -value } else { value })
    }
}

/// The tube's freedoms in order, then the body's undone from the last to the first: what the tube
/// does as seen from the body.
fn relative_links(tube: &Motion, body: &Motion) -> Vec<Link> {
    let moving = |f: &Freedom| !matches!(f, Freedom::Sway { .. });
    let own = tube.freedoms.iter().enumerate().map(|(place, f)| Link {
        freedom: *f,
        backwards: false,
        place,
    });
    let undone = body
        .freedoms
        .iter()
        .enumerate()
        .rev()
        .map(|(place, f)| Link {
            freedom: *f,
            backwards: true,
            place,
        });
    own.chain(undone).filter(|l| moving(&l.freedom)).collect()
}

/// A box of values: middle and half width for every link.
#[derive(Clone, Debug)]
struct Values {
    middle: Vec<f64>,
    half: Vec<f64>,
}

impl Values {
    fn whole(links: &[Link]) -> Self {
        let ranges = links.iter().map(|l| {
            let (a, b) = l.freedom.range();
            (a.min(b), a.max(b))
        });
        Self {
            middle: ranges.clone().map(|(a, b)| 0.5 * (a + b)).collect(),
            half: ranges.map(|(a, b)| 0.5 * (b - a)).collect(),
        }
    }

    /// The two halves, cut across one link.
    fn cut(&self, link: usize) -> [Self; 2] {
        [-0.5, 0.5].map(|side| {
            let mut part = self.clone();
            if let (Some(m), Some(h)) = (part.middle.get_mut(link), part.half.get_mut(link)) {
                *m += side * *h;
                *h *= 0.5;
            }
            part
        })
    }
}

/// Position at the middle of a box of values, and how far any point of a ball can be from there.
struct Spread {
    at_middle: Placement,
    /// Farthest in mm that a point of the ball is from its place at the middle.
    reach_mm: f64,
    /// The link that gives the largest part of it.
    widest: Option<usize>,
}

/// `centre` and `ball_mm` hold the moving thing, in its measured position.
///
/// Changing one value at a time: link `k` moves a point by at most its half width times the largest
/// speed, which is the speed at the ball's middle (in the middle position) plus, for a turn, the
/// distance that a point can be from there: the ball's radius and what the links before may add. All
/// later links are rigid and keep that distance.
fn spread(links: &[Link], values: &Values, centre: Point, ball_mm: f64) -> Spread {
    let mut result = Spread {
        at_middle: Placement::IDENTITY,
        reach_mm: 0.0,
        widest: None,
    };
    let mut largest = 0.0;
    let rows = links.iter().zip(values.middle.iter().zip(&values.half));
    for (index, (link, (&middle, &half))) in rows.enumerate() {
        let here = result.at_middle.point(centre);
        let speed =
            link.freedom.speed_at(here) + link.freedom.speed_per_mm() * (ball_mm + result.reach_mm);
        let part = half * speed;
        if part > largest {
            largest = part;
            result.widest = Some(index);
        }
        result.reach_mm += part;
        result.at_middle = result.at_middle.then(&link.at(middle));
    }
    result
}

/// The same as [`spread`] for the coordinate along `direction` only, as a reach in mm: a link counts
/// with the part of its speed that points along it. What later turns may do to that direction within
/// their ranges is added (a unit vector turned by an angle moves by that angle at most).
fn spread_along(
    links: &[Link],
    values: &Values,
    (centre, ball_mm): (Point, f64),
    direction: UnitVector,
) -> Spread {
    // The direction as each link sees it: brought back through the later ones, with its doubt.
    let mut seen = Vec::with_capacity(links.len());
    let (mut d, mut doubt) = (direction, 0.0);
    for (link, (&middle, &half)) in links
        .iter()
        .zip(values.middle.iter().zip(&values.half))
        .rev()
    {
        seen.push((d, doubt));
        if let Freedom::Turn { axis, .. } = link.freedom {
            let value = if link.backwards { -middle } else { middle };
            d = d.rotated_about(axis, -value);
            doubt += half;
        }
    }
    let mut whole_reach_mm = 0.0;
    let mut result = Spread {
        at_middle: Placement::IDENTITY,
        reach_mm: 0.0,
        widest: None,
    };
    let mut largest = 0.0;
    let rows = links.iter().zip(values.middle.iter().zip(&values.half));
    for (index, ((link, (&middle, &half)), (d, doubt))) in
        rows.zip(seen.into_iter().rev()).enumerate()
    {
        let here = result.at_middle.point(centre);
        let speed =
            link.freedom.speed_at(here) + link.freedom.speed_per_mm() * (ball_mm + whole_reach_mm);
        let share = match link.freedom {
            Freedom::Shift { direction, .. } => d.dot(direction.vector()).abs(),
            Freedom::Turn { axis, .. } => d.vector().cross(axis.vector()).norm(),
            Freedom::Sway { .. } => 0.0,
        };
        let part = half * speed * (share + doubt).min(1.0);
        if part > largest {
            largest = part;
            result.widest = Some(index);
        }
        result.reach_mm += part;
        whole_reach_mm += half * speed;
        result.at_middle = result.at_middle.then(&link.at(middle));
    }
    result
}

/// Values by the lists they came from; zero for sways.
fn sorted_back(
    links: &[Link],
    values: &[f64],
    tube: &Motion,
    body: &Motion,
) -> (Vec<f64>, Vec<f64>) {
    let mut of_tube = vec![0.0; tube.freedoms.len()];
    let mut of_body = vec![0.0; body.freedoms.len()];
    for (link, &value) in links.iter().zip(values) {
        let list = if link.backwards {
            &mut of_body
        } else {
            &mut of_tube
        };
        if let Some(slot) = list.get_mut(link.place) {
            *slot = value;
        }
    }
    (of_tube, of_body)
}

/// A ball round a tube's centre line.
fn ball_round(line: &crate::tube::CentreLine) -> (Point, f64) {
    let bounds = line.bounds();
    (bounds.centre(), bounds.half_diagonal_mm())
}
