//! The error budget: errors of pieces, joints and welds summed along the order of tacking, kept apart
//! by where they come from, so that it can be said what would have to be better.
//!
//! Every error is a small shift or turn at the place where it is made, independent of the others; it
//! goes on downstream as a rigid displacement (first order). Check distances at a joint take out what
//! they see: the fitter moves the open end until the tape reads what the plan says.

use nalgebra::SMatrix;
use tubewright_geometry::{Frame, Point, UnitVector, math};

use crate::spread::{PoseSpread, Row};

/// Where an error comes from.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
#[non_exhaustive]
pub enum Source {
    /// The place from which tacking starts: an end of the car or a hung part, as surveyed.
    Start,
    /// Cut lengths, and lengths of bought parts.
    CutLength,
    /// Faces out of square.
    CutAngle,
    /// Clock marks.
    Clock,
    /// True angles of bends.
    BendAngle,
    /// Pull of welds, beyond the mean that is added to cut lengths.
    WeldPull,
    /// The tape, the marks and the scribed places of the check distances.
    CheckDistances,
}

impl Source {
    /// All, in order.
    pub const ALL: [Self; 7] = [
        Self::Start,
        Self::CutLength,
        Self::CutAngle,
        Self::Clock,
        Self::BendAngle,
        Self::WeldPull,
        Self::CheckDistances,
    ];

    /// For the person.
    #[must_use]
    pub const fn words(self) -> &'static str {
        match self {
            Self::Start => "where the outlet or the hung part stands",
            Self::CutLength => "cut lengths",
            Self::CutAngle => "squareness of the cuts",
            Self::Clock => "clock marks",
            Self::BendAngle => "true angles of the bends",
            Self::WeldPull => "weld pull",
            Self::CheckDistances => "tape of the check distances",
        }
    }
}

/// Standard deviations of what the shop does to one piece and one joint.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Workmanship {
    /// Cut length, mm.
    pub cut_length_mm: f64,
    /// A cut face out of square, about each axis across the tube, radians.
    pub cut_angle_rad: f64,
    /// Clock of a joint, radians.
    pub clock_rad: f64,
    /// True angle of a bend, radians.
    pub bend_angle_rad: f64,
    /// Pull of a weld along the tube beyond its mean, mm.
    pub weld_pull_mm: f64,
}

/// One part that is tacked on: a piece, or a bend with the straights that its legs serve.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Tacked {
    /// At the end that is joined to what stands already; travel points away from it.
    pub joined: Frame,
    /// At its open end; travel points on. Twelve o'clock lies in the plane of its last bend.
    pub open: Frame,
    /// How many bends it holds.
    pub bends: u32,
    /// True when the joint is welded; false for a bolted flange, which has no pull and no clock of its
    /// own.
    pub is_welded: bool,
}

/// The spread at the open end of a part, by where it comes from.
#[derive(Clone, Debug, PartialEq)]
pub struct Budget {
    by_source: [PoseSpread; Source::ALL.len()],
}

impl Budget {
    /// Of the place where tacking starts.
    #[must_use]
    pub fn starting(start: PoseSpread) -> Self {
        let mut by_source = [PoseSpread::sure(start.at); Source::ALL.len()];
        if let Some(of_start) = by_source.first_mut() {
            *of_start = start;
        }
        Self { by_source }
    }

    /// Where it is counted.
    #[must_use]
    pub fn at(&self) -> Point {
        self.by_source.first().map_or(Point::ORIGIN, |s| s.at)
    }

    /// Everything together.
    #[must_use]
    pub fn total(&self) -> PoseSpread {
        self.by_source
            .iter()
            .skip(1)
            .fold(self.of(Source::Start), |sum, part| sum.plus(part))
    }

    /// What one source gives.
    #[must_use]
    pub fn of(&self, source: Source) -> PoseSpread {
        Source::ALL
            .iter()
            .position(|each| *each == source)
            .and_then(|index| self.by_source.get(index))
            .copied()
            .unwrap_or(PoseSpread::sure(self.at()))
    }

    fn change(&mut self, source: Source, change: impl FnOnce(&PoseSpread) -> PoseSpread) {
        if let Some(spread) = Source::ALL
            .iter()
            .position(|each| *each == source)
            .and_then(|index| self.by_source.get_mut(index))
        {
            *spread = change(spread);
        }
    }

    /// The budget at the open end of a part tacked on here.
    #[must_use]
    pub fn tacking(&self, part: &Tacked, work: &Workmanship) -> Self {
        let mut next = Self {
            by_source: self
                .by_source
                .map(|spread| spread.carried_to(part.open.origin)),
        };
        let at = &part.joined;
        let about = |axis: UnitVector, sigma: f64| {
            move |spread: &PoseSpread| spread.with_turn(axis, sigma, at.origin)
        };
        let along = |sigma: f64| move |spread: &PoseSpread| spread.with_shift(at.travel(), sigma);
        if part.is_welded {
            next.change(Source::Clock, about(at.travel(), work.clock_rad));
            // Both faces of the joint.
            for _ in 0..2 {
                next.change(Source::CutAngle, about(at.twelve(), work.cut_angle_rad));
                next.change(Source::CutAngle, about(at.three(), work.cut_angle_rad));
            }
            next.change(Source::WeldPull, along(work.weld_pull_mm));
        }
        next.change(Source::CutLength, along(work.cut_length_mm));
        if part.bends > 0 {
            let sigma = work.bend_angle_rad * f64::from(part.bends).sqrt();
            // About the bend's axis through the middle of the chord: the error is spread over the arc.
            let pivot = at.origin.lerp(part.open.origin, 0.5);
            let axis = part.open.three();
            next.change(Source::BendAngle, |spread| {
                spread.with_turn(axis, sigma, pivot)
            });
        }
        next
    }

    /// The budget when the open end is moved until these readings are met.
    #[must_use]
    pub fn checked(&self, rows: &[(Row, f64)]) -> Self {
        let (left, gains) = self.total().gains(rows);
        let mut next = Self {
            by_source: self.by_source.map(|spread| {
                PoseSpread::of_matrix(spread.at, left * spread.matrix() * left.transpose())
            }),
        };
        let of_readings: SMatrix<f64, 6, 6> = gains
            .iter()
            .zip(rows)
            .map(|(gain, (_, variance))| gain * gain.transpose() * *variance)
            .sum();
        next.change(Source::CheckDistances, |spread| {
            PoseSpread::of_matrix(spread.at, spread.matrix() + of_readings)
        });
        next
    }

    /// What must be better, and to what, so that a place keeps within `allowed_sigma_mm` along a
    /// direction: for each source that alone could do it, the factor (0 to 1) that its standard
    /// deviation must come down by, the largest factor (the least trouble) first. Empty when it keeps
    /// already, or when no single source can.
    #[must_use]
    pub fn what_must_be_better(
        &self,
        place: Point,
        direction: UnitVector,
        allowed_sigma_mm: f64,
    ) -> Vec<(Source, f64)> {
        let of = |spread: &PoseSpread| spread.variance_of(&spread.row_along(place, direction));
        let total: f64 = self.by_source.iter().map(of).sum();
        let excess = total - allowed_sigma_mm * allowed_sigma_mm;
        if excess <= 0.0 {
            return Vec::new();
        }
        let mut better: Vec<(Source, f64)> = Source::ALL
            .into_iter()
            .zip(&self.by_source)
            .filter_map(|(source, spread)| {
                let own = of(spread);
                (own > excess).then(|| (source, ((own - excess) / own).sqrt()))
            })
            .collect();
        better.sort_by(|a, b| b.1.total_cmp(&a.1));
        better
    }
}

/// How much longer a closing piece is left, so that it is long enough 19 times in 20 on each side: the
/// spread of both open ends along its axis.
#[must_use]
pub fn closing_trim_mm(upstream: &PoseSpread, downstream: &PoseSpread, axis: UnitVector) -> f64 {
    let variance = [upstream, downstream]
        .map(|spread| spread.variance_of(&spread.row_along(spread.at, axis)))
        .iter()
        .sum::<f64>();
    crate::NINETEEN_IN_TWENTY * variance.sqrt()
}

/// A bend that turns by less than this, or by so little less than half a turn, has legs too nearly in
/// line to take up a gap across them, radians (20°; common practice, no source).
const LEAST_TURN_RAD: f64 = 0.349_065_850_398_865_9;

/// How much longer a bend that closes is left on its leg upstream and on its leg downstream, so that
/// each is long enough 19 times in 20. The gap between the open ends is off by some vector; what of it
/// lies in the plane of the bend is taken up by its two legs, each by its coordinate along its own
/// direction, which the dual basis of the two directions gives (Strang, *Introduction to Linear Algebra*,
/// 5th edition, section 4.4). What lies across that plane no leg takes up. `None` for a bend that turns
/// by less than 20° or by more than 160°: its legs take up a length and nothing else.
#[must_use]
pub fn closing_trims_mm(
    upstream: &PoseSpread,
    downstream: &PoseSpread,
    into: UnitVector,
    out: UnitVector,
) -> Option<[f64; 2]> {
    let turn = into.angle_to(out);
    if turn.min(core::f64::consts::PI - turn) < LEAST_TURN_RAD {
        return None;
    }
    let (cosine, sine) = (math::cos(turn), math::sin(turn));
    // Perpendicular to the other leg, and as long as makes its product with its own leg one.
    let along = |own: UnitVector, other: UnitVector| {
        let square = (own.vector() - other.vector() * cosine).direction()?;
        Some(closing_trim_mm(upstream, downstream, square) / sine)
    };
    Some([along(into, out)?, along(out, into)?])
}
