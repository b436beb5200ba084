//! What may slide and turn while a run is searched: crossovers, ends that may lie anywhere in a room, and starts
//! that may be sawn further back. Their places are sizes like any other.

use tubewright_geometry::{Frame, Point, UnitVector, Vector, math};

use super::chain::{Screw, Stance};
use super::layout::{ANGLE_LEVER_MM, Size};
use crate::problem::{Crossover, EndRoom, PartPose, Region, RouteProblem, Turn};

/// Sizes of a slide: along its three axes, and three turns.
pub(crate) const SLIDE_SIZES: usize = 6;

/// How a thing may slide and turn.
#[derive(Clone, Debug)]
pub(crate) struct Slide {
    /// Axes of the three shifts.
    axes: [Vector; 3],
    low: [f64; 3],
    high: [f64; 3],
    /// Least and most of each turn: of an end the sine of what its direction may be off, else radians. Ends and
    /// starts have two.
    turn_low: [f64; 3],
    turn_high: [f64; 3],
    /// Directions that an end may turn to, axes that a start may turn about.
    pub(crate) across: [Vector; 2],
    /// Upright columns that it must keep out of.
    pub(crate) columns: Vec<Region>,
}

/// Place of a slide.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Pose {
    pub(crate) shift: Vector,
    /// Of a crossover to the right, up and rolled; of an end and a start toward or about its two axes.
    pub(crate) turn: [f64; 3],
}

impl Pose {
    /// Not turned.
    pub(crate) const fn shifted(shift: Vector) -> Self {
        Self {
            shift,
            turn: [0.0; 3],
        }
    }

    /// That of a crossover.
    pub(crate) fn of_part(part: &PartPose) -> Self {
        Self {
            shift: part.origin.to_vector(),
            turn: part.turn.to_array(),
        }
    }

    /// How a crossover lies.
    pub(crate) fn part(&self) -> PartPose {
        PartPose {
            origin: Point::ORIGIN + self.shift,
            turn: Turn::from_array(self.turn),
        }
    }
}

/// All slides of a problem: the crossovers by number, then the ends and starts of runs.
#[derive(Clone, Debug, Default)]
pub(crate) struct Slides {
    pub(crate) all: Vec<Slide>,
    /// For each run the numbers of the slides of its start and its end.
    of_run: Vec<[Option<usize>; 2]>,
    crossovers: usize,
}

/// The car's axes.
pub(crate) const AXES: [Vector; 3] = [
    Vector::new(1.0, 0.0, 0.0),
    Vector::new(0.0, 1.0, 0.0),
    Vector::new(0.0, 0.0, 1.0),
];

impl Slides {
    pub(crate) fn of(problem: &RouteProblem) -> Self {
        let mut out = Self {
            all: problem.crossovers.iter().map(Slide::of_part).collect(),
            of_run: Vec::new(),
            crossovers: problem.crossovers.len(),
        };
        for run in &problem.runs {
            let start = run.start_room.map(|room| {
                let frame = &run.start;
                out.all.push(Slide {
                    axes: [frame.travel(), frame.twelve(), frame.three()].map(UnitVector::vector),
                    low: [-room.back_mm, 0.0, 0.0],
                    high: [-room.least_mm, 0.0, 0.0],
                    turn_low: either_way([room.turn_rad; 2]).0,
                    turn_high: either_way([room.turn_rad; 2]).1,
                    across: [frame.twelve().vector(), frame.three().vector()],
                    columns: Vec::new(),
                });
                out.all.len() - 1
            });
            let end = run.end_room.as_ref().map(|room| {
                let wished = (run.end, run.end_direction);
                out.all.push(Slide::of_end(wished, room));
                out.all.len() - 1
            });
            out.of_run.push([start, end]);
        }
        out
    }

    pub(crate) const fn is_crossover(&self, number: usize) -> bool {
        number < self.crossovers
    }

    /// Whether there is anything but crossovers.
    pub(crate) const fn has_loose_ends(&self) -> bool {
        self.all.len() > self.crossovers
    }

    pub(crate) fn start_of(&self, run: usize) -> Option<usize> {
        self.of_run.get(run)?[0]
    }

    pub(crate) fn end_of(&self, run: usize) -> Option<usize> {
        self.of_run.get(run)?[1]
    }

    /// The sizes of places of all slides, in their order.
    pub(crate) fn sizes_at(&self, poses: &[Pose]) -> Vec<f64> {
        self.all
            .iter()
            .zip(poses)
            .flat_map(|(slide, pose)| slide.sizes_at(pose))
            .collect()
    }

    /// Where everything stands as it is wished: crossovers in the middle of their room.
    pub(crate) fn as_wished(&self, problem: &RouteProblem) -> Vec<Pose> {
        let mut poses: Vec<Pose> = self.all.iter().map(|slide| slide.at([0.5; 3])).collect();
        for (run, numbers) in problem.runs.iter().zip(&self.of_run) {
            // An outlet as long as it may be left.
            if let Some((slide, pose)) =
                numbers[0].and_then(|n| Some((self.all.get(n)?, poses.get_mut(n)?)))
            {
                *pose = slide.at([1.0; 3]);
            }
            if let Some(pose) = numbers[1].and_then(|n| poses.get_mut(n)) {
                *pose = Pose::shifted(run.end.to_vector());
            }
        }
        poses
    }
}

/// Least and most of two turns by up to so much either way.
const fn either_way([a, b]: [f64; 2]) -> ([f64; 3], [f64; 3]) {
    ([-a, -b, 0.0], [a, b, 0.0])
}

/// To the right of a direction seen along it, and up from it.
fn sides_of(at: Point, direction: UnitVector) -> [Vector; 2] {
    let frame = Frame::upright(at, direction);
    [frame.three().vector(), frame.twelve().vector()]
}

impl Slide {
    const fn within(room: Region) -> Self {
        Self {
            axes: AXES,
            low: [room.min.x, room.min.y, room.min.z],
            high: [room.max.x, room.max.y, room.max.z],
            turn_low: [0.0; 3],
            turn_high: [0.0; 3],
            across: [Vector::ZERO; 2],
            columns: Vec::new(),
        }
    }

    fn of_part(part: &Crossover) -> Self {
        Self {
            turn_low: part.turns.least.to_array(),
            turn_high: part.turns.most.to_array(),
            ..Self::within(part.poses)
        }
    }

    /// An end wished at a place with a direction, with its room.
    pub(crate) fn of_end((at, direction): (Point, UnitVector), room: &EndRoom) -> Self {
        let (turn_low, turn_high) =
            either_way([room.turn_aside_rad, room.turn_up_rad].map(math::sin));
        Self {
            turn_low,
            turn_high,
            across: sides_of(at, direction),
            columns: room.columns.clone(),
            ..Self::within(room.within)
        }
    }

    /// Ranges of its sizes; none of them has a price.
    pub(crate) fn sizes(&self) -> [Size; SLIDE_SIZES] {
        let size = |k: usize| {
            let (lo, hi, lever) = match k.checked_sub(3) {
                None => (self.low[k], self.high[k], 1.0),
                Some(turn) => (self.turn_low[turn], self.turn_high[turn], ANGLE_LEVER_MM),
            };
            Size {
                lo,
                hi,
                price: 0.0,
                lever,
            }
        };
        core::array::from_fn(size)
    }

    /// Place at shares of the three ranges, turned as in the middle of what it may.
    pub(crate) fn at(&self, shares: [f64; 3]) -> Pose {
        let mut sizes = [0.0; SLIDE_SIZES];
        for (k, share) in shares.into_iter().enumerate() {
            sizes[k] = self.low[k] + (self.high[k] - self.low[k]) * share;
        }
        let middle = self.turned_at([0.5; 3]);
        let [_, _, _, turn @ ..] = &mut sizes;
        *turn = middle;
        self.pose(sizes)
    }

    /// Turns at shares of their ranges.
    pub(crate) fn turned_at(&self, shares: [f64; 3]) -> [f64; 3] {
        [0, 1, 2].map(|k| {
            let (low, high) = (self.turn_low[k], self.turn_high[k]);
            if low < high {
                low + (high - low) * shares[k]
            } else {
                low
            }
        })
    }

    /// Whether it has no turns to choose from.
    pub(crate) fn is_turn_held(&self) -> bool {
        self.turn_low
            .iter()
            .zip(&self.turn_high)
            .all(|(low, high)| low >= high)
    }

    /// A turn that is in its ranges and in whole steps, where there is one.
    pub(crate) fn in_steps(&self, turn: [f64; 3], step_rad: f64) -> [f64; 3] {
        [0, 1, 2].map(|k| {
            let (low, high) = (self.turn_low[k], self.turn_high[k]);
            if low < high {
                ((turn[k] / step_rad).round() * step_rad).clamp(low, high) + 0.0
            } else {
                turn[k]
            }
        })
    }

    pub(crate) fn pose(&self, sizes: [f64; SLIDE_SIZES]) -> Pose {
        let [a, b, c, turn @ ..] = sizes;
        Pose {
            shift: self.axes[0] * a + self.axes[1] * b + self.axes[2] * c,
            turn,
        }
    }

    /// The sizes of a place. The axes that a slide moves along are square to each other.
    pub(crate) fn sizes_at(&self, pose: &Pose) -> [f64; SLIDE_SIZES] {
        let along = |k: usize| self.axes[k].dot(pose.shift);
        let [a, b, c] = pose.turn;
        [along(0), along(1), along(2), a, b, c]
    }

    /// How a place that slides along moves with each shift.
    pub(crate) const fn axis(&self, k: usize) -> Vector {
        self.axes[k]
    }

    /// A start that is turned: about its first axis, then about its second, which stands still.
    pub(crate) fn turned(&self, stance: Stance, turn: [f64; 3]) -> Stance {
        let about = |stance: Stance, k: usize| {
            if turn[k] == 0.0 {
                return stance;
            }
            let axis = UnitVector::from_unit(self.across[k]);
            Stance {
                travel: stance.travel.rotated_about(axis, turn[k]),
                twelve: stance.twelve.rotated_about(axis, turn[k]),
                ..stance
            }
        };
        about(about(stance, 0), 1)
    }

    /// Velocities of all behind a start with its two turns.
    pub(crate) fn turning(&self, through: Point, turn: [f64; 3]) -> [Screw; 3] {
        if self.is_turn_held() {
            return [Screw::NONE; 3];
        }
        let second = UnitVector::from_unit(self.across[1]);
        [
            Screw::turn(self.across[0].rotated_about(second, turn[1]), through),
            Screw::turn(self.across[1], through),
            Screw::NONE,
        ]
    }

    /// The direction of arrival at an end that is turned.
    pub(crate) fn arrival(&self, direction: UnitVector, turn: [f64; 3]) -> UnitVector {
        let aside = self.across[0] * turn[0] + self.across[1] * turn[1];
        let ahead = (1.0 - aside.norm_squared()).max(0.0).sqrt();
        (direction.vector() * ahead + aside)
            .direction()
            .unwrap_or(direction)
    }

    /// The place of an end's room that is nearest to a place.
    pub(crate) fn nearest_place(&self, place: Point) -> Point {
        let within = |place: Point| {
            let mut at = place.to_array();
            for ((at, low), high) in at.iter_mut().zip(self.low).zip(self.high) {
                *at = at.clamp(low, high);
            }
            Point::from_array(at)
        };
        self.columns.iter().fold(within(place), |place, column| {
            let (margin, out) = out_of_column(column, place);
            within(place + out * (-margin).max(0.0))
        })
    }

    /// The direction of arrival allowed at an end that is nearest to a direction.
    pub(crate) fn nearest_arrival(&self, wished: UnitVector, travel: Vector) -> UnitVector {
        self.arrival(wished, self.nearest_turn(travel))
    }

    /// Where an end stands that lies at a place and is arrived at in a direction.
    pub(crate) fn end_at(&self, place: Point, travel: Vector) -> Pose {
        Pose {
            shift: place.to_vector(),
            turn: self.nearest_turn(travel),
        }
    }

    fn nearest_turn(&self, travel: Vector) -> [f64; 3] {
        let [a, b] = [0, 1].map(|k| {
            let most = self.turn_high[k];
            self.across[k].dot(travel).clamp(-most, most)
        });
        [a, b, 0.0]
    }
}

/// How far a place is outside of an upright column, mm (inside it is below zero), and the direction that
/// leads out of it soonest.
pub(crate) fn out_of_column(column: &Region, place: Point) -> (f64, Vector) {
    let sides = [
        (column.min.x - place.x, AXES[0] * -1.0),
        (place.x - column.max.x, AXES[0]),
        (column.min.y - place.y, AXES[1] * -1.0),
        (place.y - column.max.y, AXES[1]),
    ];
    sides
        .into_iter()
        .max_by(|a, b| a.0.total_cmp(&b.0))
        .unwrap_or((f64::INFINITY, Vector::ZERO))
}
