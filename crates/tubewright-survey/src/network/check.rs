//! The door: numbers and names that cannot be worked with are refused once, here.

use super::{CarAxis, Line, Network, ReadingKind, Target};

/// Why a network cannot be adjusted at all.
#[derive(Clone, Debug, PartialEq, thiserror::Error)]
#[non_exhaustive]
pub enum NetworkError {
    /// Two readings have the same number.
    #[error("two readings have the number {number}: give each its own, so that it can be named")]
    SameNumber {
        /// The number.
        number: u32,
    },
    /// A value or sigma is not a usable number.
    #[error(
        "reading {number}: value {value} with ± {sigma} (1 sigma) cannot be used: both must be \
         finite, sigma above zero and the value below 100 m"
    )]
    BadNumber {
        /// Number of the reading.
        number: u32,
        /// Its value.
        value: f64,
        /// Its sigma.
        sigma: f64,
    },
    /// A reading names something that the network does not have.
    #[error("reading {number} names a point, end, hole or set-up that is not there")]
    NotThere {
        /// Number of the reading.
        number: u32,
    },
    /// Both ends of a tape are at the same target.
    #[error("reading {number} goes from a place to the same place")]
    SamePlace {
        /// Number of the reading.
        number: u32,
    },
    /// The outer or inner side was used, but nothing tells the car's sideways direction.
    #[error(
        "reading {number} goes to the outer or inner side, but no pair of left and right marks \
         tells which way is outward: name one pair"
    )]
    NoSideways {
        /// Number of the reading.
        number: u32,
    },
    /// An end whose rim cannot exist.
    #[error("end \"{name}\": a rim of radius {rim_radius_mm} mm cannot be measured")]
    BadRim {
        /// Its name.
        name: String,
        /// The radius given.
        rim_radius_mm: f64,
    },
    /// A pair names a point that is not there, or one point twice.
    #[error("pair {index} does not name two different points of the network")]
    BadPair {
        /// Number of the pair, from 0.
        index: usize,
    },
    /// A start or held coordinate is not a number.
    #[error("a coordinate given for \"{name}\" is not a finite number")]
    BadCoordinate {
        /// Name of the point.
        name: String,
    },
    /// There is nothing to adjust.
    #[error("there are no readings in use: measure at least one distance")]
    Empty,
}

/// Longest value accepted, mm: longer than any car, so that a unit mistaken by a thousand is caught.
const LONGEST_MM: f64 = 100_000.0;

impl Network {
    /// Refuses what cannot be adjusted.
    ///
    /// # Errors
    /// The first [`NetworkError`] found, readings in their order.
    pub fn checked(&self) -> Result<(), NetworkError> {
        for point in &self.points {
            if point.held.iter().flatten().any(|c| !c.is_finite()) {
                return Err(NetworkError::BadCoordinate {
                    name: point.name.clone(),
                });
            }
        }
        for end in &self.ends {
            let radius = end.rim_radius_mm;
            let sound = radius.is_finite() && radius > 0.0 && radius < LONGEST_MM;
            if !sound || !end.holes.iter().all(|h| h.is_finite()) {
                return Err(NetworkError::BadRim {
                    name: end.name.clone(),
                    rim_radius_mm: radius,
                });
            }
        }
        for (index, pair) in self.pairs.iter().enumerate() {
            let there = |p: super::PointId| p.0 < self.points.len();
            if !there(pair.left) || !there(pair.right) || pair.left == pair.right {
                return Err(NetworkError::BadPair { index });
            }
        }
        let mut numbers: Vec<u32> = self.readings.iter().map(|r| r.number).collect();
        numbers.sort_unstable();
        if let Some(same) = numbers.windows(2).find(|w| w[0] == w[1]) {
            return Err(NetworkError::SameNumber { number: same[0] });
        }
        self.check_readings()
    }

    fn check_readings(&self) -> Result<(), NetworkError> {
        if self.readings.iter().all(|r| r.set_aside) {
            return Err(NetworkError::Empty);
        }
        for reading in &self.readings {
            let number = reading.number;
            let sound = reading.value.is_finite()
                && reading.value.abs() < LONGEST_MM
                && reading.sigma.is_finite()
                && reading.sigma > 0.0
                && reading.kind.touches().iter().all(|t| {
                    t.contact
                        .size_mm()
                        .is_none_or(|s| s.is_finite() && (0.0..LONGEST_MM).contains(&s))
                });
            if !sound {
                return Err(NetworkError::BadNumber {
                    number,
                    value: reading.value,
                    sigma: reading.sigma,
                });
            }
            if !self.has_all_of(&reading.kind) {
                return Err(NetworkError::NotThere { number });
            }
            if same_place(&reading.kind) {
                return Err(NetworkError::SamePlace { number });
            }
            let sideways = reading
                .kind
                .touches()
                .iter()
                .any(|t| t.contact.outboard_mm() != 0.0);
            if sideways && self.pairs.is_empty() {
                return Err(NetworkError::NoSideways { number });
            }
        }
        Ok(())
    }

    /// True when a reading of this kind could be made in this network.
    pub(crate) fn can_read(&self, kind: &ReadingKind) -> bool {
        self.has_all_of(kind) && !same_place(kind)
    }

    fn has_all_of(&self, kind: &ReadingKind) -> bool {
        let targets = kind.targets().iter().all(|t| match *t {
            Target::Point(p) => p.0 < self.points.len(),
            Target::Rim { end, clock_rad } => end.0 < self.ends.len() && clock_rad.is_finite(),
            Target::Hole { end, hole } => {
                self.ends.get(end.0).is_some_and(|e| hole < e.holes.len())
            }
            Target::Centre(end) => end.0 < self.ends.len(),
        });
        targets && kind.setup().is_none_or(|s| s.0 < self.setups.len())
    }
}

fn same_place(kind: &ReadingKind) -> bool {
    match *kind {
        ReadingKind::Tape { from, to, .. } => from.target == to.target,
        ReadingKind::Plumb { from, to, .. } | ReadingKind::Inclination { from, to, .. } => {
            from == to
        }
        ReadingKind::Offset { from, to, along } => {
            from == to || matches!(along, Line::Through(a, b) if a == b)
        }
        ReadingKind::Symmetry { left, right } => left == right,
        ReadingKind::AxisSymmetry { p, q, axis } => p == q && axis != CarAxis::Y,
        ReadingKind::Bearing {
            from,
            to,
            base_from,
            base_to,
            ..
        } => from == to || base_from == base_to,
        _ => false,
    }
}
