//! How the end of a run moves when a piece of it is a little longer or bends a little more.

use core::ops::{Add, AddAssign, Mul};
use std::collections::BTreeMap;
use tubewright_geometry::{Frame, Vector};

use crate::routes::{PlannedKind, PlannedRun};

/// A small move of a run's end: its place in mm, its direction in radians.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct End {
    pub(super) place: Vector,
    pub(super) turn: Vector,
}

impl End {
    pub(super) const ZERO: Self = Self {
        place: Vector::ZERO,
        turn: Vector::ZERO,
    };
}

impl Add for End {
    type Output = Self;
    fn add(self, other: Self) -> Self {
        Self {
            place: self.place + other.place,
            turn: self.turn + other.turn,
        }
    }
}

impl AddAssign for End {
    fn add_assign(&mut self, other: Self) {
        *self = *self + other;
    }
}

impl Mul<f64> for End {
    type Output = Self;
    fn mul(self, by: f64) -> Self {
        Self {
            place: self.place * by,
            turn: self.turn * by,
        }
    }
}

/// A part of a run that is closed by itself: up to a crossover, or from there to the end.
pub(super) struct Stretch {
    pub(super) run: String,
    pub(super) up_to: Option<String>,
}

/// What a piece does to the end of its stretch.
#[derive(Clone, Copy)]
pub(super) enum Lever {
    /// For each millimetre of length.
    Straight { stretch: usize, per_mm: End },
    /// For each radian of bend.
    Bend {
        stretch: usize,
        per_rad: End,
        clr_mm: f64,
        frame_in: Frame,
        frame_out: Frame,
    },
}

pub(super) struct Levers {
    pub(super) stretches: Vec<Stretch>,
    pieces: BTreeMap<String, Lever>,
}

impl Levers {
    pub(super) fn of(runs: &[PlannedRun]) -> Self {
        let mut levers = Self {
            stretches: Vec::new(),
            pieces: BTreeMap::new(),
        };
        for run in runs {
            let mut begins = 0;
            for (index, piece) in run.pieces.iter().enumerate() {
                if let PlannedKind::Crossover { name, .. } = &piece.kind {
                    levers.stretch(run, begins, index, &piece.frame_in, Some(name));
                    begins = index + 1;
                }
            }
            if !run.brings_its_end() {
                levers.stretch(run, begins, run.pieces.len(), &run.arrival(), None);
            }
        }
        levers
    }

    fn stretch(
        &mut self,
        run: &PlannedRun,
        from: usize,
        to: usize,
        end: &Frame,
        up_to: Option<&String>,
    ) {
        let stretch = self.stretches.len();
        self.stretches.push(Stretch {
            run: run.name.clone(),
            up_to: up_to.cloned(),
        });
        for piece in run.pieces.get(from..to).unwrap_or(&[]) {
            let out = &piece.frame_out;
            let lever = match piece.kind {
                PlannedKind::Straight { .. } => Lever::Straight {
                    stretch,
                    per_mm: End {
                        place: out.travel().vector(),
                        turn: Vector::ZERO,
                    },
                },
                PlannedKind::Bend { clr_mm, .. } => {
                    // About the axis of the bend, through the downstream end of its arc.
                    let axis = piece.frame_in.three().vector();
                    Lever::Bend {
                        stretch,
                        per_rad: End {
                            place: out.travel().vector() * clr_mm
                                + axis.cross(end.origin - out.origin),
                            turn: axis.cross(end.travel().vector()),
                        },
                        clr_mm,
                        frame_in: piece.frame_in,
                        frame_out: piece.frame_out,
                    }
                }
                PlannedKind::Component { .. } | PlannedKind::Crossover { .. } => continue,
            };
            self.pieces.insert(piece.mark.clone(), lever);
        }
    }

    pub(super) fn piece(&self, mark: &str) -> Option<&Lever> {
        self.pieces.get(mark)
    }
}
