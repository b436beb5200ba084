//! Where to hang a run, so that every rubber carries its share and nothing sinks far.
//!
//! The run is a frame of tubes with its masses; a rubber pulls upward in proportion to its stretch. What a
//! set of rubbers carries comes from the frame's own flexibility: with `C` the rise at one place of a newton
//! at another and `d` the shift under weight with no rubber, the loads are `(C + I/k) F = -d` (force method;
//! J. S. Przemieniecki, *Theory of Matrix Structural Analysis*, McGraw-Hill 1968, chapter 8).
//!
//! Places are tried in sets, the fewest first: all sets where these are few, else the best one added at a time
//! and then each in turn put where it is best, until nothing gets better.

use crate::beams::{BeamError, Beams};
use nalgebra::{DMatrix, DVector};
use tubewright_geometry::{Point, Vector};

/// What a hanger's rubber does.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Rubber {
    /// Upward, N/mm, > 0.
    pub upright_n_per_mm: f64,
    /// Sideways, N/mm, ≥ 0.
    pub sideways_n_per_mm: f64,
}

/// A place where a rubber may take hold.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct RubberPlace {
    /// Place of the frame.
    pub place: usize,
    /// From there to the rubber, mm: the rod.
    pub arm: Vector,
    /// What speaks against it, in mm of sinking that it would be taken for: a long rod, a bend.
    pub against_mm: f64,
}

/// What hangers must keep to.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct HangLimits {
    /// Most that one rubber carries at rest, N.
    pub most_load_n: f64,
    /// Least that one carries, N: less, and it rattles or is lifted.
    pub least_load_n: f64,
    /// Most that any place sinks, mm.
    pub most_sag_mm: f64,
    /// Least distance between two of them, mm.
    pub apart_mm: f64,
    /// Fewest rubbers.
    pub least_rubbers: usize,
    /// Most rubbers.
    pub most_rubbers: usize,
}

/// A set of places with what it does.
#[derive(Clone, Debug, PartialEq)]
pub struct Hung {
    /// Numbers of the places, ascending.
    pub chosen: Vec<usize>,
    /// What each of them carries, N.
    pub loads_n: Vec<f64>,
    /// How far the place that sinks most does, mm.
    pub sag_mm: f64,
    /// The limits are kept.
    pub is_within: bool,
    /// Groups of which one place should have been chosen and none was.
    pub lacking: usize,
    /// What is over or under the limits, in N, 10 N for a mm and [`LACKING_N`] for a group without a rubber; then
    /// what it is ranked by among sets of as many.
    worth: [f64; 2],
}

/// What a frame does on chosen rubbers, their sideways hold counted.
#[derive(Clone, Debug, PartialEq)]
pub struct Settled {
    /// What each rubber carries, N.
    pub loads_n: Vec<f64>,
    /// How far every place of the frame sinks, mm; less than nothing where it rises.
    pub sags_mm: Vec<f64>,
    /// Lowest natural frequencies, Hz.
    pub frequencies_hz: Vec<f64>,
}

/// Sets that are all tried.
const ALL_TRIED: usize = 30_000;

/// Hold of every place against drifting away, N/mm: a thousandth of a soft rubber's.
const DRIFT_N_PER_MM: f64 = 1e-3;

/// What a group without a rubber is as bad as, N over the limits: next to nothing, so that a run that cannot have
/// both is carried first.
const LACKING_N: f64 = 1e-3;

/// The best set of the fewest rubbers that keeps to the limits and has a place of each group in `one_of` (numbers
/// of places); where none does, the best of the most. `None` when there are fewer places than rubbers.
///
/// # Errors
/// [`BeamError`] when the frame is unsound.
pub fn hang(
    beams: &Beams,
    places: &[RubberPlace],
    rubber: Rubber,
    limits: &HangLimits,
    one_of: &[Vec<usize>],
) -> Result<Option<Hung>, BeamError> {
    let flexible = Flexible {
        one_of: one_of.to_vec(),
        ..Flexible::of(beams, places, rubber)?
    };
    let mut best: Option<Hung> = None;
    for count in limits.least_rubbers..=limits.most_rubbers.min(places.len()) {
        let Some(found) = flexible.best_of(count, limits) else {
            continue;
        };
        if found.is_within && found.lacking == 0 {
            return Ok(Some(found));
        }
        if best
            .as_ref()
            .is_none_or(|best| found.worth[0] < best.worth[0] - 1e-9)
        {
            best = Some(found);
        }
    }
    Ok(best)
}

/// What a frame does on these rubbers.
///
/// # Errors
/// [`BeamError`] when the frame is unsound or still loose.
pub fn settled(
    beams: &Beams,
    places: &[RubberPlace],
    rubber: Rubber,
    frequencies: usize,
) -> Result<Settled, BeamError> {
    let mut hung = beams.clone();
    let Rubber {
        upright_n_per_mm: upright,
        sideways_n_per_mm: sideways,
    } = rubber;
    for at in places {
        hung.spring(at.place, at.arm, [sideways, sideways, upright], [0.0; 3]);
    }
    let mut factored = hung.factored()?;
    let moved = factored.under_weight();
    Ok(Settled {
        loads_n: places
            .iter()
            .map(|at| -upright * moved.shift(at.place, at.arm).z)
            .collect(),
        sags_mm: (0..beams.len())
            .map(|place| -moved.shift(place, Vector::ZERO).z)
            .collect(),
        frequencies_hz: factored.frequencies_hz(frequencies),
    })
}

/// How the frame and the places answer to a newton at each place.
struct Flexible {
    /// Rise of each place by a newton at each, with the rubber's own give on the diagonal, mm/N.
    give: DMatrix<f64>,
    /// Shift of each place with no rubber, mm.
    fall: DVector<f64>,
    /// Rise of every place of the frame by a newton at each, mm/N.
    rise: DMatrix<f64>,
    /// Shift of every place of the frame with no rubber, mm.
    bare: DVector<f64>,
    against_mm: Vec<f64>,
    /// Where each place is.
    at: Vec<Point>,
    /// Groups that each should have a rubber.
    one_of: Vec<Vec<usize>>,
}

impl Flexible {
    fn of(beams: &Beams, places: &[RubberPlace], rubber: Rubber) -> Result<Self, BeamError> {
        let mut held = beams.clone();
        for place in 0..beams.len() {
            held.spring(
                place,
                Vector::ZERO,
                [DRIFT_N_PER_MM; 3],
                [DRIFT_N_PER_MM; 3],
            );
        }
        let mut factored = held.factored()?;
        let weight = factored.under_weight();
        let moved: Vec<_> = places
            .iter()
            .map(|at| factored.under_a_newton(at.place, at.arm))
            .collect();
        let count = places.len();
        Ok(Self {
            give: DMatrix::from_fn(count, count, |i, k| {
                let own = if i == k {
                    1.0 / rubber.upright_n_per_mm
                } else {
                    0.0
                };
                moved[k].shift(places[i].place, places[i].arm).z + own
            }),
            fall: DVector::from_fn(count, |i, _| weight.shift(places[i].place, places[i].arm).z),
            rise: DMatrix::from_fn(beams.len(), count, |i, k| moved[k].shift(i, Vector::ZERO).z),
            bare: DVector::from_fn(beams.len(), |i, _| weight.shift(i, Vector::ZERO).z),
            against_mm: places.iter().map(|at| at.against_mm).collect(),
            at: places
                .iter()
                .map(|at| beams.at(at.place).ok_or(BeamError::Place(at.place)))
                .collect::<Result<_, _>>()?,
            one_of: Vec::new(),
        })
    }

    fn on(&self, chosen: &[usize], limits: &HangLimits) -> Option<Hung> {
        let count = chosen.len();
        let is_apart = |(number, k): (usize, &usize)| {
            chosen
                .iter()
                .skip(number + 1)
                .all(|other| self.at[*k].distance(self.at[*other]) >= limits.apart_mm)
        };
        if !chosen.iter().enumerate().all(is_apart) {
            return None;
        }
        let give = DMatrix::from_fn(count, count, |i, k| self.give[(chosen[i], chosen[k])]);
        let fall = DVector::from_fn(count, |i, _| -self.fall[chosen[i]]);
        let loads = give.cholesky()?.solve(&fall);
        let mut sag_mm = f64::NEG_INFINITY;
        for place in 0..self.bare.len() {
            let rise: f64 = chosen
                .iter()
                .zip(loads.iter())
                .map(|(k, load)| self.rise[(place, *k)] * load)
                .sum();
            sag_mm = sag_mm.max(-(self.bare[place] + rise));
        }
        let over: f64 = loads
            .iter()
            .map(|load| {
                (load - limits.most_load_n).max(0.0) + (limits.least_load_n - load).max(0.0)
            })
            .sum();
        let over = over + 10.0 * (sag_mm - limits.most_sag_mm).max(0.0);
        let is_without = |group: &&Vec<usize>| !group.iter().any(|place| chosen.contains(place));
        let lacking = self.one_of.iter().filter(is_without).count();
        let lacking_n: f64 = self
            .one_of
            .iter()
            .filter(is_without)
            .map(|_| LACKING_N)
            .sum();
        let against: f64 = chosen.iter().map(|k| self.against_mm[*k]).sum();
        Some(Hung {
            chosen: chosen.to_vec(),
            loads_n: loads.iter().copied().collect(),
            sag_mm,
            is_within: over <= 0.0,
            lacking,
            worth: [over + lacking_n, sag_mm + against],
        })
    }

    /// The better of two, the first where they are equal.
    fn better(one: Option<Hung>, other: Option<Hung>) -> Option<Hung> {
        match (one, other) {
            (Some(one), Some(other)) => {
                let is_less = other.worth[0] < one.worth[0] - 1e-9
                    || (other.worth[0] < one.worth[0] + 1e-9
                        && other.worth[1] < one.worth[1] - 1e-9);
                Some(if is_less { other } else { one })
            }
            (one, other) => one.or(other),
        }
    }

    fn best_of(&self, count: usize, limits: &HangLimits) -> Option<Hung> {
        let places = self.against_mm.len();
        if count == 0 || count > places {
            return None;
        }
        if sets(places, count) <= ALL_TRIED {
            return self.best_of_all(count, limits);
        }
        let mut chosen: Vec<usize> = Vec::new();
        while chosen.len() < count {
            let next = (0..places)
                .filter(|k| !chosen.contains(k))
                .filter_map(|k| self.on(&with(&chosen, k), limits))
                .map(Some)
                .fold(None, Self::better)?;
            chosen = next.chosen;
        }
        let mut best = self.on(&chosen, limits)?;
        loop {
            let mut next: Option<Hung> = Some(best.clone());
            for out in &best.chosen {
                let rest: Vec<usize> = best.chosen.iter().copied().filter(|k| k != out).collect();
                for k in (0..places).filter(|k| !best.chosen.contains(k)) {
                    next = Self::better(next, self.on(&with(&rest, k), limits));
                }
            }
            match next {
                Some(next) if next.chosen != best.chosen => best = next,
                _ => return Some(best),
            }
        }
    }

    fn best_of_all(&self, count: usize, limits: &HangLimits) -> Option<Hung> {
        let places = self.against_mm.len();
        let mut chosen: Vec<usize> = (0..count).collect();
        let mut best = None;
        loop {
            best = Self::better(best, self.on(&chosen, limits));
            // The next set in the order of the words over its numbers.
            let Some(turn) = (0..count).rev().find(|&k| chosen[k] < places - count + k) else {
                return best;
            };
            chosen[turn] += 1;
            for k in turn + 1..count {
                chosen[k] = chosen[k - 1] + 1;
            }
        }
    }
}

/// Sets of `count` out of `places`, or more than are ever all tried.
fn sets(places: usize, count: usize) -> usize {
    let mut number: usize = 1;
    for k in 0..count {
        number = number.saturating_mul(places - k) / (k + 1);
        if number > 1_000_000 {
            return number;
        }
    }
    number
}

fn with(chosen: &[usize], one: usize) -> Vec<usize> {
    let mut all = chosen.to_vec();
    all.push(one);
    all.sort_unstable();
    all
}
