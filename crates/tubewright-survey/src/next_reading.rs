//! Which one further reading to take to gain most.

use crate::adjustment::{Adjustment, Measure, quadratic};
use crate::linear::{Matrix, V3, v3};
use crate::model::{RowOwner, linearise_kind};
use crate::network::{EndId, PointId, Reading, ReadingKind, SetupId, Target, Touch};
use crate::survey::Survey;
use tubewright_geometry::math::FRAC_PI_2;

/// What is to become surer.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Goal {
    /// All points that the readings fix: the sum of their variances.
    Everything,
    /// One point.
    Point(PointId),
    /// An end: its centre and the place this far straight on from it.
    End {
        /// Which end.
        end: EndId,
        /// How far on, mm.
        reach_mm: f64,
    },
    /// The direction of an end: σ in radians, both ways that it can lean together.
    Direction(EndId),
    /// The distance between two targets.
    Distance(Target, Target),
    /// The check on a reading that nothing else checks.
    Reading(u32),
}

/// What could be measured.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Means {
    /// σ of a tape line, mm.
    pub tape_sigma_mm: f64,
    /// σ of a height, mm.
    pub height_sigma_mm: f64,
    /// Longest line that is practical, mm.
    pub longest_mm: f64,
}

/// A reading worth taking.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Proposal {
    /// What to measure.
    pub kind: ReadingKind,
    /// What it will show, with the σ of the present knowledge; `None` when it cannot be said yet.
    pub expected: Option<Measure>,
    /// σ of the goal before, mm (root of the sum of variances); infinite when it is not fixed yet.
    pub sigma_before: f64,
    /// σ of the goal with this reading.
    pub sigma_after: f64,
}

/// A point or an end that the readings do not fix, and what would.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Missing {
    /// Which: a point or the centre of an end.
    pub what: Target,
    /// How many further readings it takes at least.
    pub readings: usize,
    /// The one to take first.
    pub first: Option<ReadingKind>,
}

type Row = Vec<(usize, f64)>;

/// Shortest line worth pulling a tape along, mm (common practice, no source).
const SHORTEST_MM: f64 = 50.0;

impl Adjustment {
    /// Readings not yet taken, in the order of what they gain for `goal`, best first, at most `count`.
    /// The covariance is updated by one row each (Sherman & Morrison), so nothing is solved again.
    #[must_use]
    pub fn next_readings(
        &self,
        survey: &Survey,
        goal: Goal,
        means: Means,
        count: usize,
    ) -> Vec<Proposal> {
        let Some(rows) = self.goal_rows(survey, goal) else {
            return Vec::new();
        };
        let q = &self.knowledge.covariance;
        let by = &rows * q;
        let before: f64 = (0..rows.nrows()).map(|i| by.row(i).dot(&rows.row(i))).sum();
        let mut found: Vec<Proposal> = Vec::new();
        for (kind, sigma) in self.candidates(means) {
            let Some((value, row)) = self.first_row(&kind) else {
                continue;
            };
            if !self.fixes_row(&row) {
                continue;
            }
            let variance = quadratic(&row, q).max(0.0);
            let gain = gain(&row, &by) / (sigma * sigma + variance);
            found.push(Proposal {
                kind,
                expected: Some(Measure {
                    value,
                    sigma: variance.sqrt(),
                }),
                sigma_before: before.max(0.0).sqrt(),
                sigma_after: (before - gain).max(0.0).sqrt(),
            });
        }
        found.sort_by(|a, b| a.sigma_after.total_cmp(&b.sigma_after));
        found.truncate(count);
        found
    }

    /// What a reading that was not taken yet would do for `goal`: σ of the goal before and with it, mm;
    /// `None` where either is not fixed.
    #[must_use]
    pub fn effect(
        &self,
        survey: &Survey,
        kind: &ReadingKind,
        sigma: f64,
        goal: Goal,
    ) -> Option<(f64, f64)> {
        let rows = self.goal_rows(survey, goal)?;
        let (_, row) = self.first_row(kind)?;
        self.fixes_row(&row).then_some(())?;
        let q = &self.knowledge.covariance;
        let by = &rows * q;
        let before: f64 = (0..rows.nrows()).map(|i| by.row(i).dot(&rows.row(i))).sum();
        let after = before - gain(&row, &by) / (sigma * sigma + quadratic(&row, q).max(0.0));
        Some((before.max(0.0).sqrt(), after.max(0.0).sqrt()))
    }

    /// Points and ends that the readings do not fix, each with what would.
    #[must_use]
    pub fn missing(&self, means: Means) -> Vec<Missing> {
        let loose = &self.knowledge.loose;
        let candidates: Vec<(ReadingKind, f64, Row)> = self
            .candidates(means)
            .into_iter()
            .filter_map(|(kind, sigma)| Some((kind, sigma, self.first_row(&kind)?.1)))
            .collect();
        let open = self.undetermined();
        let points = open.points.into_iter().map(|point| {
            let columns: Vec<usize> = self.layout.points[point.0]
                .iter()
                .flatten()
                .copied()
                .collect();
            (Target::Point(point), columns)
        });
        let ends = open.ends.into_iter().map(|end| {
            let first = self.layout.ends[end.0];
            (Target::Centre(end), (first..first + 6).collect())
        });
        points
            .chain(ends)
            .map(|(what, columns): (Target, Vec<usize>)| {
                let own =
                    Matrix::from_fn(columns.len(), loose.ncols(), |i, k| loose[(columns[i], k)]);
                let singular = own.svd(false, false).singular_values;
                let first = candidates
                    .iter()
                    .filter(|(_, _, row)| row.iter().any(|(c, _)| columns.contains(c)))
                    .map(|(kind, sigma, row)| {
                        let seen: f64 = (0..loose.ncols())
                            .map(|k| {
                                let along: f64 = row.iter().map(|&(c, v)| v * loose[(c, k)]).sum();
                                along * along
                            })
                            .sum();
                        (seen / (sigma * sigma), kind)
                    })
                    .filter(|(seen, _)| *seen > 1e-6)
                    .max_by(|a, b| a.0.total_cmp(&b.0))
                    .map(|(_, kind)| *kind);
                Missing {
                    what,
                    readings: singular.iter().filter(|s| **s > 1e-3).count(),
                    first,
                }
            })
            .collect()
    }

    /// For each reading that nothing else checks, the one further reading that would check it best.
    #[must_use]
    pub fn unchecked(&self, survey: &Survey, means: Means) -> Vec<(u32, Option<Proposal>)> {
        let mut numbers: Vec<u32> = self
            .readings()
            .iter()
            .filter(|r| !r.set_aside && r.is_unchecked())
            .map(|r| r.number)
            .collect();
        numbers.dedup();
        numbers
            .into_iter()
            .map(|number| {
                let best = self.next_readings(survey, Goal::Reading(number), means, 1);
                (number, best.first().copied())
            })
            .collect()
    }

    fn first_row(&self, kind: &ReadingKind) -> Option<(f64, Row)> {
        self.can_expect(kind).then_some(())?;
        linearise_kind(&self.network, &self.layout, &self.state, kind)
            .into_iter()
            .next()
    }

    /// The goal as linear forms in the unknowns; `None` when the readings do not fix it.
    fn goal_rows(&self, survey: &Survey, goal: Goal) -> Option<Matrix> {
        let by = &survey.by_unknowns;
        let points = self.network.points.len();
        let dense = |row: &Row| {
            let mut m = Matrix::zeros(1, self.layout.width);
            for &(c, v) in row {
                m[(0, c)] += v;
            }
            m
        };
        match goal {
            Goal::Everything => {
                let fixed: Vec<usize> = (0..points)
                    .filter(|&i| self.fixes_point(PointId(i)))
                    .flat_map(|i| 3 * i..3 * i + 3)
                    .collect();
                (!fixed.is_empty()).then(|| by.select_rows(&fixed))
            }
            Goal::Point(p) => self
                .fixes_point(p)
                .then(|| by.rows(3 * p.0, 3).into_owned()),
            Goal::End { end, reach_mm } => {
                let pose = survey.end(end)?;
                let arm: V3 = v3(pose.frame.advanced(reach_mm).origin) - v3(pose.frame.origin);
                let row = 3 * points + 6 * end.0;
                let place = by.rows(row, 3).into_owned();
                let further = &place - crate::linear::skew(arm) * by.rows(row + 3, 3);
                let mut both = Matrix::zeros(6, self.layout.width);
                both.rows_mut(0, 3).copy_from(&place);
                both.rows_mut(3, 3).copy_from(&further);
                Some(both)
            }
            Goal::Direction(end) => {
                let pose = survey.end(end)?;
                let turn = by.rows(3 * points + 6 * end.0 + 3, 3);
                let across = [pose.frame.twelve(), pose.frame.three()];
                let lean = |k: usize| V3::from(across[k].to_array()).transpose() * turn;
                let mut both = Matrix::zeros(2, self.layout.width);
                for k in 0..2 {
                    both.row_mut(k).copy_from(&lean(k));
                }
                Some(both)
            }
            Goal::Distance(a, b) => {
                let kind = ReadingKind::Tape {
                    from: Touch::place(a),
                    to: Touch::place(b),
                    burnt_mm: 0.0,
                };
                let (_, row) = self.first_row(&kind)?;
                self.fixes_row(&row).then(|| dense(&row))
            }
            Goal::Reading(number) => {
                let index = self
                    .network
                    .readings
                    .iter()
                    .position(|r| r.number == number)?;
                let row = (0..self.rows.len())
                    .find(|&i| self.rows.owner[i] == RowOwner::Reading(index))?;
                Some(dense(&self.rows.row(row).to_vec()))
            }
        }
    }

    /// Tape lines between points and to the rims at the four quarters, and heights, not yet taken.
    fn candidates(&self, means: Means) -> Vec<(ReadingKind, f64)> {
        let network = &self.network;
        let mut found = Vec::new();
        let taken = |a: Target, b: Target| {
            network.readings.iter().any(|r| match r.kind {
                ReadingKind::Tape { from, to, .. } => {
                    (from.target, to.target) == (a, b) || (from.target, to.target) == (b, a)
                }
                _ => false,
            })
        };
        let mut line = |a: Target, b: Target| {
            let length = (self.state.place(network, b) - self.state.place(network, a)).norm();
            if (SHORTEST_MM..=means.longest_mm).contains(&length) && !taken(a, b) {
                let kind = ReadingKind::Tape {
                    from: Touch::place(a),
                    to: Touch::place(b),
                    burnt_mm: 0.0,
                };
                found.push((kind, means.tape_sigma_mm));
            }
        };
        let points = network.points.len();
        let point = |i: usize| Target::Point(PointId(i));
        for a in 0..points {
            for b in a + 1..points {
                line(point(a), point(b));
            }
            for end in 0..network.ends.len() {
                for quarter in 0..4_u8 {
                    let rim = Target::Rim {
                        end: EndId(end),
                        clock_rad: f64::from(quarter) * FRAC_PI_2,
                    };
                    line(rim, point(a));
                }
            }
        }
        for setup in (0..network.setups.len()).map(SetupId) {
            if self.layout.floors[setup.0].offset.is_none() {
                continue;
            }
            for p in (0..points).map(PointId) {
                let has = network.readings.iter().any(|r| is_height(r, p, setup));
                if !has {
                    let kind = ReadingKind::Height {
                        target: Touch::point(p),
                        setup,
                    };
                    found.push((kind, means.height_sigma_mm));
                }
            }
        }
        found
    }
}

fn is_height(reading: &Reading, point: PointId, in_setup: SetupId) -> bool {
    match reading.kind {
        ReadingKind::Height { target, setup } => {
            target.target == Target::Point(point) && setup == in_setup
        }
        _ => false,
    }
}

/// Sum of the squared covariances of a row with the rows of a goal, given those times the covariance.
fn gain(row: &Row, by: &Matrix) -> f64 {
    (0..by.nrows())
        .map(|i| {
            let along: f64 = row.iter().map(|&(c, v)| v * by[(i, c)]).sum();
            along * along
        })
        .sum()
}
