//! Check distances: the tape from marks on the car to places scribed on the open end, so that the tape
//! proves the tack.

use tubewright_geometry::{
    CentreLine, Frame, Point, Solid, TubeElement, UnitVector, Vector, distance, math,
};

use crate::NINETEEN_IN_TWENTY;
use crate::budget::Budget;
use crate::built::rim_place;
use crate::spread::{PoseSpread, Row};

/// A mark on the car.
#[derive(Clone, Debug, PartialEq)]
pub struct Mark {
    /// Its name.
    pub name: String,
    /// Its place.
    pub place: Point,
    /// Its covariance, mm².
    pub covariance: [[f64; 3]; 3],
}

/// How the shop tapes.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Taping {
    /// Standard deviation of a tape, mm.
    pub tape_sigma_mm: f64,
    /// Standard deviation of a scribed place round the tube, mm.
    pub scribe_sigma_mm: f64,
    /// Longest line that is taped by one person, mm.
    pub longest_mm: f64,
    /// Shortest line worth taping, mm.
    pub shortest_mm: f64,
    /// Round positions of the clock at which places are scribed.
    pub clocks: u32,
}

impl Taping {
    /// Scribed to 1 mm (σ 0.5), lines of 60 to 2500 mm, twelve hours of the clock: common practice, no
    /// source. The tape is the shop's own.
    #[must_use]
    pub const fn usual(tape_sigma_mm: f64) -> Self {
        Self {
            tape_sigma_mm,
            scribe_sigma_mm: 0.5,
            longest_mm: 2500.0,
            shortest_mm: 60.0,
            clocks: 12,
        }
    }
}

/// A distance that can be taped.
#[derive(Clone, Debug, PartialEq)]
pub struct CheckDistance {
    /// Name of the mark.
    pub mark: String,
    /// Clock of the scribed place.
    pub clock_rad: f64,
    /// The place.
    pub place: Point,
    /// What the tape says when the joint is where the plan has it, mm.
    pub distance_mm: f64,
    /// How it reads a displacement of the joint.
    pub row: Row,
    /// Its variance: tape, mark and scribed place, mm².
    pub variance: f64,
}

/// What tapes may not cross.
#[derive(Clone, Copy, Debug)]
pub struct InTheWay<'a> {
    /// Bodies of the car.
    pub bodies: &'a [Solid],
    /// Tubes and components that hang there already.
    pub tubes: &'a [TubeElement],
}

/// A tape is a line of this radius, mm.
const TAPE_RADIUS_MM: f64 = 2.0;

/// Marks lie on the outside of bodies, scribed places on the outside of the tube: so much of a line at
/// each end does not count, mm.
const AT_MARK_MM: f64 = 15.0;
const AT_TUBE_MM: f64 = 6.0;

/// A tape may lie along a face of the body that its mark is punched on, which is only as square as it was
/// measured: the line counts as open when it would be from a place so far off the mark, mm. Bent over an edge
/// that stands out so far a tape reads half a millimetre more, which is less than it tells.
const OFF_ITS_FACE_MM: f64 = 3.0;

/// A line that comes in flatter than this along the tube's side cannot be held to a scribed place, sine
/// (about 27°; common practice, no source).
const LEAST_RISE: f64 = 0.45;

/// Every distance that can be taped to the rim of a joint: from each mark to each clock place, along
/// lines that nothing crosses.
#[must_use]
pub fn possible_distances(
    frame: &Frame,
    radius_mm: f64,
    marks: &[Mark],
    in_the_way: &InTheWay<'_>,
    taping: &Taping,
) -> Vec<CheckDistance> {
    let mut possible = Vec::new();
    for mark in marks {
        let taped = distances_from(mark, frame, radius_mm, taping);
        possible.extend(taped.filter(|taped| is_open(mark.place, taped.place, in_the_way)));
    }
    possible
}

/// The distances from a mark to each clock place of a joint's rim that are neither too long nor too short and
/// do not come in too flat. What is in the way is not looked at.
pub fn distances_from<'a>(
    mark: &'a Mark,
    frame: &'a Frame,
    radius_mm: f64,
    taping: &'a Taping,
) -> impl Iterator<Item = CheckDistance> + 'a {
    (0..taping.clocks).filter_map(move |hour| {
        let clock_rad = math::TAU * f64::from(hour) / f64::from(taping.clocks.max(1));
        let place = rim_place(frame, radius_mm, Some(clock_rad));
        let line = place - mark.place;
        let distance_mm = line.norm();
        if distance_mm > taping.longest_mm || distance_mm < taping.shortest_mm {
            return None;
        }
        let direction = line.direction()?;
        let outward = frame.at_clock(clock_rad);
        if -direction.dot(outward.vector()) < LEAST_RISE {
            return None;
        }
        let row = PoseSpread::sure(frame.origin).row_along(place, direction);
        let d = direction.to_array();
        let of_mark: f64 = mark
            .covariance
            .iter()
            .zip(d)
            .map(|(row, a)| row.iter().zip(d).map(|(c, b)| a * c * b).sum::<f64>())
            .sum();
        let round = direction.dot(frame.travel().vector().cross(outward.vector()));
        Some(CheckDistance {
            mark: mark.name.clone(),
            clock_rad,
            place,
            distance_mm,
            row,
            variance: taping.tape_sigma_mm.powi(2)
                + of_mark.max(0.0)
                + (taping.scribe_sigma_mm * round).powi(2),
        })
    })
}

/// Whether a straight line from a mark to a scribed place is crossed by nothing, the body that the mark is
/// punched on included.
#[must_use]
pub fn is_open(mark: Point, place: Point, in_the_way: &InTheWay<'_>) -> bool {
    let Some(direction) = (place - mark).direction() else {
        return false;
    };
    let between = |from: Point, radius| TubeElement {
        line: CentreLine::Segment {
            a: from + direction * AT_MARK_MM,
            b: place - direction * AT_TUBE_MM,
        },
        radius,
    };
    let line = between(mark, TAPE_RADIUS_MM);
    in_the_way.bodies.iter().all(|solid| {
        if distance::point_to_solid(mark, solid) >= AT_MARK_MM {
            return distance::is_clear(&line, solid, 0.0);
        }
        around(mark).any(|from| distance::is_clear(&between(from, TAPE_RADIUS_MM), solid, 0.0))
    }) && in_the_way
        .tubes
        .iter()
        .all(|tube| distance::are_clear(&line, tube, 0.0))
}

/// The place and those [`OFF_ITS_FACE_MM`] off it, along the axes of the car and between them.
fn around(place: Point) -> impl Iterator<Item = Point> {
    const STEPS: [f64; 3] = [0.0, -1.0, 1.0];
    let all = STEPS
        .into_iter()
        .flat_map(|x| STEPS.map(|y| (x, y)))
        .flat_map(|(x, y)| STEPS.map(|z| Vector::new(x, y, z)));
    all.map(move |step| match step.direction() {
        Some(direction) => place + direction * (OFF_ITS_FACE_MM + TAPE_RADIUS_MM),
        None => place,
    })
}

/// Chooses the distances that fix a joint best beside what the budget knows of it already: each one
/// makes the volume of the remaining spread least (D-optimal design; greedy, then exchanged as long as
/// an exchange helps; V. V. Fedorov, *Theory of Optimal Experiments*, from memory). Two distances are
/// never of the same mark and clock.
#[must_use]
pub fn choose(before: &PoseSpread, possible: &[CheckDistance], count: usize) -> Vec<CheckDistance> {
    let mut chosen: Vec<usize> = Vec::new();
    while chosen.len() < count.min(possible.len()) {
        let spread = left_by(before, possible, &chosen, None);
        let Some(best) = best_for(&spread, possible, &chosen) else {
            break;
        };
        chosen.push(best);
    }
    for _ in 0..MOST_EXCHANGES {
        let mut is_better = false;
        for at in 0..chosen.len() {
            let spread = left_by(before, possible, &chosen, Some(at));
            let Some(&now) = chosen.get(at) else {
                continue;
            };
            let worth = |index: usize| {
                possible
                    .get(index)
                    .map_or(0.0, |d| spread.variance_of(&d.row) / d.variance)
            };
            let others: Vec<usize> = chosen.iter().copied().filter(|i| *i != now).collect();
            if let Some(best) = best_for(&spread, possible, &others)
                && worth(best) > worth(now) * 1.000_001
                && let Some(slot) = chosen.get_mut(at)
            {
                *slot = best;
                is_better = true;
            }
        }
        if !is_better {
            break;
        }
    }
    chosen
        .iter()
        .filter_map(|index| possible.get(*index).cloned())
        .collect()
}

const MOST_EXCHANGES: usize = 8;

fn left_by(
    before: &PoseSpread,
    possible: &[CheckDistance],
    chosen: &[usize],
    less: Option<usize>,
) -> PoseSpread {
    let rows: Vec<(Row, f64)> = chosen
        .iter()
        .enumerate()
        .filter(|(at, _)| Some(*at) != less)
        .filter_map(|(_, index)| possible.get(*index))
        .map(|d| (d.row, d.variance))
        .collect();
    before.checked(&rows)
}

/// By the matrix determinant lemma the determinant falls by `1 + h P hᵀ / r`.
fn best_for(spread: &PoseSpread, possible: &[CheckDistance], taken: &[usize]) -> Option<usize> {
    let mut best: Option<(f64, usize)> = None;
    for (index, distance) in possible.iter().enumerate() {
        if taken.contains(&index) {
            continue;
        }
        let worth = spread.variance_of(&distance.row) / distance.variance;
        if best.is_none_or(|(most, _)| worth > most) {
            best = Some((worth, index));
        }
    }
    best.map(|(_, index)| index)
}

/// A place of the tube that is near something and moves with the joint.
#[derive(Clone, Debug, PartialEq)]
pub struct NearPlace {
    /// What it is near to, in words.
    pub near: String,
    /// The place.
    pub place: Point,
    /// Toward what it is near to.
    pub toward: UnitVector,
    /// Gap less the gap that must be kept, mm.
    pub room_mm: f64,
    /// Standard deviation of the other body there, mm.
    pub other_sigma_mm: f64,
}

/// How far the check distances of a joint may be off.
#[derive(Clone, Debug, PartialEq)]
pub struct Tolerance {
    /// Each distance may be off by this, mm, all of them at once and the worst way round, and every gap
    /// is still kept 19 times in 20. Negative when the budget breaks a gap even with distances that
    /// read true.
    pub most_mm: f64,
    /// The near place that sets it; `None` when the most that is allowed anyway does.
    pub set_by: Option<usize>,
}

/// The tolerance of the check distances of a joint: with gains k of the distances on a near place's
/// shift, `t Σ|k| + 1.96 √(σ² of what is left + σ² of the other body) ≤ room`.
#[must_use]
pub fn tolerance(
    before: &PoseSpread,
    chosen: &[CheckDistance],
    near: &[NearPlace],
    most_mm: f64,
) -> Tolerance {
    let rows: Vec<(Row, f64)> = chosen.iter().map(|d| (d.row, d.variance)).collect();
    let (_, gains) = before.gains(&rows);
    let left = before.checked(&rows);
    let mut tolerance = Tolerance {
        most_mm,
        set_by: None,
    };
    for (index, place) in near.iter().enumerate() {
        let g = nalgebra::SVector::<f64, 6>::from(left.row_along(place.place, place.toward));
        let pull: f64 = gains.iter().map(|gain| g.dot(gain).abs()).sum();
        let sigma = (left.variance_of(&left.row_along(place.place, place.toward))
            + place.other_sigma_mm.powi(2))
        .sqrt();
        let spare = place.room_mm - NINETEEN_IN_TWENTY * sigma;
        let most = if spare < 0.0 {
            spare
        } else if pull > 1e-9 {
            spare / pull
        } else {
            f64::INFINITY
        };
        if most < tolerance.most_mm {
            tolerance = Tolerance {
                most_mm: most,
                set_by: Some(index),
            };
        }
    }
    tolerance
}

/// The budget at a joint when these distances are kept to.
#[must_use]
pub fn budget_checked(budget: &Budget, chosen: &[CheckDistance]) -> Budget {
    let rows: Vec<(Row, f64)> = chosen.iter().map(|d| (d.row, d.variance)).collect();
    budget.checked(&rows)
}
