//! Residuals, tests, and what can be said of distances without a frame.

use super::{Adjustment, quadratic};
use crate::model::{RowOwner, linearise_kind};
use crate::network::{EndId, PointId, Reading, ReadingKind, SetupId, Target, Touch};
use crate::statistics::{K95, chi_squared_quantile, detectable_slip};
use tubewright_geometry::math;

/// A value with its standard deviation, both in mm or both in radians.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Measure {
    /// The value.
    pub value: f64,
    /// One σ.
    pub sigma: f64,
}

impl Measure {
    /// ± that holds 19 times in 20.
    #[must_use]
    pub fn plus_minus(&self) -> f64 {
        K95 * self.sigma
    }
}

/// One equation of a reading after the adjustment. Most readings have one; a symmetrical pair has
/// three.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct ReadingResult {
    /// Number of the reading.
    pub number: u32,
    /// Number of the equation within the reading, from 0.
    pub equation: usize,
    /// As read, mm or radians.
    pub observed: f64,
    /// What the adjusted network would show.
    pub adjusted: f64,
    /// Adjusted − observed.
    pub residual: f64,
    /// Standard deviation given to the reading.
    pub sigma: f64,
    /// Redundancy number r, 0 (nothing else checks it) to 1 (wholly checked by others). One for a
    /// reading set aside.
    pub redundancy: f64,
    /// Standardised residual w = v / (σ √r); zero below r = 0.01, where it is not tested. For a
    /// reading set aside, v over the σ of the difference.
    pub standardised: f64,
    /// Smallest slip that is found with 80 % probability (Baarda 1968): 4.13 σ / √r.
    pub detectable_slip: f64,
    /// Size of the slip if it alone is wrong: −v / r, observed − what it should be.
    pub estimated_slip: f64,
    /// True when the reading was left out and is only predicted.
    pub set_aside: bool,
}

/// Redundancy below which a reading counts as unchecked.
pub(crate) const UNCHECKED_BELOW: f64 = 0.1;

/// Redundancy below which a residual is not tested at all.
const UNTESTED_BELOW: f64 = 0.01;

impl ReadingResult {
    /// True when nothing else checks this one: r below 0.1 (common practice).
    #[must_use]
    pub fn is_unchecked(&self) -> bool {
        self.redundancy < UNCHECKED_BELOW
    }
}

/// The global test of the sum of squares against χ² (Ghilani, *Adjustment Computations*, chapter on
/// statistical tests), two-sided, 5 %.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct GlobalTest {
    /// Degrees of freedom: equations less rank.
    pub freedom: usize,
    /// Weighted sum of squares v'Pv.
    pub vtpv: f64,
    /// 2.5 % quantile.
    pub low: f64,
    /// 97.5 % quantile.
    pub high: f64,
}

impl GlobalTest {
    /// A-posteriori standard deviation of unit weight; 1 without freedom.
    #[must_use]
    pub fn s0(&self) -> f64 {
        #[expect(clippy::cast_precision_loss, reason = "a count of readings is small")]
        let freedom = self.freedom as f64;
        if self.freedom > 0 {
            (self.vtpv / freedom).sqrt()
        } else {
            1.0
        }
    }

    /// True when the readings agree with each other as well as their σ say, neither worse nor better.
    #[must_use]
    pub fn is_accepted(&self) -> bool {
        self.freedom == 0 || (self.vtpv >= self.low && self.vtpv <= self.high)
    }

    /// True when the readings agree worse than their σ say.
    #[must_use]
    pub fn is_too_high(&self) -> bool {
        self.freedom > 0 && self.vtpv > self.high
    }
}

/// What the readings do not fix.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Undetermined {
    /// Points whose place is free in some direction.
    pub points: Vec<PointId>,
    /// Ends whose place or direction is free.
    pub ends: Vec<EndId>,
    /// Set-ups whose floor is free: give heights of three marks.
    pub floors: Vec<SetupId>,
}

impl Undetermined {
    /// True when everything is fixed.
    #[must_use]
    pub fn is_empty(&self) -> bool {
        self.points.is_empty() && self.ends.is_empty() && self.floors.is_empty()
    }
}

impl Adjustment {
    /// Every equation of every reading, in the order of the readings, those set aside included.
    #[must_use]
    pub fn readings(&self) -> Vec<ReadingResult> {
        let mut results = Vec::with_capacity(self.rows.len());
        let mut row = 0;
        for (index, reading) in self.network.readings.iter().enumerate() {
            if reading.set_aside {
                results.extend(self.predicted(reading));
                continue;
            }
            let mut equation = 0;
            while row < self.rows.len() && self.rows.owner[row] == RowOwner::Reading(index) {
                results.push(self.result_of(reading, row, equation));
                row += 1;
                equation += 1;
            }
        }
        results
    }

    fn result_of(&self, reading: &Reading, row: usize, equation: usize) -> ReadingResult {
        let residual = self.rows.misfit[row];
        let sigma = self.rows.sigma[row];
        // Rounding can push a redundancy below zero or above one by a few digits.
        let redundancy = (1.0 - self.leverage[row] / (sigma * sigma)).clamp(0.0, 1.0);
        let tested = redundancy >= UNTESTED_BELOW;
        ReadingResult {
            number: reading.number,
            equation,
            observed: reading.value,
            adjusted: reading.value + residual,
            residual,
            sigma,
            redundancy,
            standardised: if tested {
                residual / (sigma * redundancy.sqrt())
            } else {
                0.0
            },
            detectable_slip: detectable_slip(sigma, redundancy),
            estimated_slip: if tested { -residual / redundancy } else { 0.0 },
            set_aside: false,
        }
    }

    fn predicted(&self, reading: &Reading) -> Vec<ReadingResult> {
        let mut results = Vec::new();
        let rows = linearise_kind(&self.network, &self.layout, &self.state, &reading.kind);
        let possible = self.can_expect(&reading.kind);
        for (equation, (value, row)) in rows.into_iter().enumerate() {
            let mut residual = value - reading.value;
            if reading.kind.is_angle() {
                residual = math::wrap_to_pi(residual);
            }
            let known = possible && self.fixes_row(&row);
            let variance = reading.sigma * reading.sigma
                + quadratic(&row, &self.knowledge.covariance).max(0.0);
            results.push(ReadingResult {
                number: reading.number,
                equation,
                observed: reading.value,
                adjusted: reading.value + residual,
                residual,
                sigma: reading.sigma,
                redundancy: if known { 1.0 } else { 0.0 },
                standardised: if known {
                    residual / variance.sqrt()
                } else {
                    0.0
                },
                detectable_slip: if known {
                    detectable_slip(variance.sqrt(), 1.0)
                } else {
                    f64::INFINITY
                },
                estimated_slip: if known { -residual } else { 0.0 },
                set_aside: true,
            });
        }
        results
    }

    /// Degrees of freedom, sum of squares and its bounds.
    #[must_use]
    pub fn global_test(&self) -> GlobalTest {
        let freedom = self.rows.len().saturating_sub(self.knowledge.rank);
        GlobalTest {
            freedom,
            vtpv: self.cost,
            low: chi_squared_quantile(0.025, freedom),
            high: chi_squared_quantile(0.975, freedom),
        }
    }

    /// What the readings do not fix, by number. Everything else is usable.
    #[must_use]
    pub fn undetermined(&self) -> Undetermined {
        let floors = (0..self.network.setups.len())
            .map(SetupId)
            .filter(|&s| self.layout.floors[s.0].tilt.is_some() && !self.fixes_floor(s))
            .collect();
        Undetermined {
            points: (0..self.network.points.len())
                .map(PointId)
                .filter(|&p| !self.fixes_point(p))
                .collect(),
            ends: (0..self.network.ends.len())
                .map(EndId)
                .filter(|&e| !self.fixes_end(e))
                .collect(),
            floors,
        }
    }

    /// What any reading would show and how well that is known, its own error not included; `None` when
    /// the readings do not fix it. First equation of a symmetrical pair.
    #[must_use]
    pub fn expected(&self, kind: &ReadingKind) -> Option<Measure> {
        if !self.can_expect(kind) {
            return None;
        }
        let rows = linearise_kind(&self.network, &self.layout, &self.state, kind);
        let (value, row) = rows.into_iter().next()?;
        self.fixes_row(&row).then(|| Measure {
            value,
            sigma: quadratic(&row, &self.knowledge.covariance).max(0.0).sqrt(),
        })
    }

    /// False for a reading on a floor or in a centre plane that no reading in use has anything to do
    /// with.
    pub(crate) fn can_expect(&self, kind: &ReadingKind) -> bool {
        let floor = kind.setup().is_none_or(|s| {
            self.network.setups.get(s.0).is_some_and(|spec| {
                let columns = &self.layout.floors[s.0];
                spec.floor_is_datum
                    || if kind.needs_plumb() {
                        columns.tilt.is_some()
                    } else {
                        columns.offset.is_some()
                    }
            })
        });
        let plane = self.layout.plane.is_some() || !matches!(kind, ReadingKind::Symmetry { .. });
        floor && plane && self.network.can_read(kind)
    }

    /// Straight distance between two targets with the σ that their joint covariance gives; `None`
    /// when the readings do not fix it.
    #[must_use]
    pub fn distance(&self, from: Target, to: Target) -> Option<Measure> {
        self.expected(&ReadingKind::Tape {
            from: Touch::place(from),
            to: Touch::place(to),
            burnt_mm: 0.0,
        })
    }

    /// Height of a target over the floor of a set-up; `None` when the readings do not fix it.
    #[must_use]
    pub fn height(&self, target: Target, setup: SetupId) -> Option<Measure> {
        self.expected(&ReadingKind::Height {
            target: Touch::place(target),
            setup,
        })
    }
}
