//! Which way an end can still move when its readings do not fix it, and in words.

use super::Adjustment;
use crate::linear::{Matrix, V3};
use crate::network::{EndId, Target};
use crate::next_reading::Means;

/// How an end can still move against the places that are fixed.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Freedom {
    /// It can turn about its own travel: nothing tells its clock.
    Roll,
    /// It can turn about the line through two places.
    TurnAbout(Target, Target),
    /// It can turn about a line through one place.
    TurnAt(Target),
    /// It can slide along its own travel.
    SlideAlongTravel,
    /// It can slide, not turning.
    Slide,
    /// It can turn about some other line, or turn and slide at once.
    Turn,
}

/// What the readings of an end leave open.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Loose {
    /// In how many ways it can move: so many readings are lacking at least.
    pub ways: usize,
    /// The way, where there is only one.
    pub freedom: Option<Freedom>,
}

/// Share of a motion in the unknowns of an end below which the end stands still.
const STILL: f64 = 1e-3;

/// Distance in mm of a place from the line about which an end turns, within which the line counts as going
/// through it.
const THROUGH_MM: f64 = 5.0;

/// Sine of the angle between two directions below which they count as one: three degrees.
const ALONG: f64 = 0.05;

/// Millimetres of slide for each radian of turn below which a motion is a pure turn: on a rim it shifts less
/// than a tape shows.
const PITCH_MM: f64 = 10.0;

/// A slide that turns less than this in radians for each millimetre turns nothing.
const TURNLESS_PER_MM: f64 = 1e-5;

impl Adjustment {
    /// How an end can still move; `None` when its readings fix it, or there is no such end.
    #[must_use]
    pub fn loose_end(&self, end: EndId) -> Option<Loose> {
        let first = *self.layout.ends.get(end.0)?;
        if self.fixes_end(end) {
            return None;
        }
        let loose = &self.knowledge.loose;
        let own = Matrix::from_fn(6, loose.ncols(), |i, k| loose[(first + i, k)]);
        let svd = own.svd(true, false);
        let largest = svd.singular_values.max();
        let ways = svd
            .singular_values
            .iter()
            .filter(|s| **s > STILL * largest.max(STILL))
            .count();
        let lever = self.layout.levers[end.0];
        let freedom = svd.u.as_ref().filter(|_| ways == 1).map(|u| {
            let shift = V3::new(u[(0, 0)], u[(1, 0)], u[(2, 0)]);
            let turn = V3::new(u[(3, 0)], u[(4, 0)], u[(5, 0)]) / lever;
            self.freedom_of(end, shift, turn)
        });
        Some(Loose { ways, freedom })
    }

    fn freedom_of(&self, end: EndId, shift: V3, turn: V3) -> Freedom {
        let pose = &self.state.ends[end.0];
        let travel = pose.axes.column(0).into_owned();
        if turn.norm() <= TURNLESS_PER_MM * shift.norm() {
            return if travel.cross(&shift).norm() < ALONG * shift.norm() {
                Freedom::SlideAlongTravel
            } else {
                Freedom::Slide
            };
        }
        let squared = turn.norm_squared();
        if (turn.dot(&shift) / squared).abs() > PITCH_MM {
            return Freedom::Turn;
        }
        let axis = turn / squared.sqrt();
        let foot = pose.origin + turn.cross(&shift) / squared;
        let off = |place: V3| axis.cross(&(place - foot)).norm();
        if axis.cross(&travel).norm() < ALONG && off(pose.origin) < THROUGH_MM {
            return Freedom::Roll;
        }
        let mut through: Vec<(f64, Target)> = self
            .places_about(end)
            .into_iter()
            .map(|target| (off(self.state.place(&self.network, target)), target))
            .filter(|(off, _)| *off < THROUGH_MM)
            .collect();
        through.sort_by(|a, b| a.0.total_cmp(&b.0));
        let Some(&(_, one)) = through.first() else {
            return Freedom::Turn;
        };
        let here = self.state.place(&self.network, one);
        let other = through.iter().map(|(_, target)| *target).find(|target| {
            (self.state.place(&self.network, *target) - here).norm() > 2.0 * THROUGH_MM
        });
        other.map_or(Freedom::TurnAt(one), |other| Freedom::TurnAbout(one, other))
    }

    /// Places of the end itself that were read, and those that they were read from.
    fn places_about(&self, end: EndId) -> Vec<Target> {
        let is_own = |target: &Target| match target {
            Target::Rim { end: e, .. } | Target::Hole { end: e, .. } | Target::Centre(e) => {
                *e == end
            }
            Target::Point(_) => false,
        };
        let mut found: Vec<Target> = Vec::new();
        for reading in self.network.readings.iter().filter(|r| !r.set_aside) {
            let targets = reading.kind.targets();
            if targets.iter().any(is_own) {
                for target in targets {
                    if !found.contains(&target) {
                        found.push(target);
                    }
                }
            }
        }
        // Its own places first: they are nearest to the eye.
        found.sort_by_key(|target| !is_own(target));
        found
    }

    /// What the readings of an end leave open, and the one reading to add first: `joint J4 can still turn
    /// about the line through …: read …`. `None` when they fix it.
    #[must_use]
    pub fn loose_sentence(&self, end: EndId, means: Means) -> Option<String> {
        let loose = self.loose_end(end)?;
        let name = &self.network.ends.get(end.0)?.name;
        let at = |target: Target| self.network.target_name(target);
        let how = match loose.freedom {
            Some(Freedom::Roll) => "turn about its own travel: nothing tells its clock".to_owned(),
            Some(Freedom::TurnAbout(a, b)) => {
                format!("turn about the line through {} and {}", at(a), at(b))
            }
            Some(Freedom::TurnAt(a)) => format!("turn about a line through {}", at(a)),
            Some(Freedom::SlideAlongTravel) => "slide along its own travel".to_owned(),
            Some(Freedom::Slide) => "slide".to_owned(),
            Some(Freedom::Turn) => "turn".to_owned(),
            None => format!("move in {} ways", loose.ways),
        };
        let first = self
            .missing(means)
            .into_iter()
            .find(|missing| missing.what == Target::Centre(end))
            .and_then(|missing| missing.first)
            .map(|kind| format!("; read {}", self.network.reading_name(&kind)))
            .unwrap_or_default();
        let then = if loose.ways > 1 {
            format!(", then {} more", loose.ways - 1)
        } else {
            String::new()
        };
        Some(format!("{name} can still {how}{first}{then}"))
    }
}
