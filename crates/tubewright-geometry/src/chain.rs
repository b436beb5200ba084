//! A run as a chain of pieces walked from a start frame: frames at every joint, centre lines, length.

use crate::frame::Frame;
use crate::rows::{BendRow, BendTable};
use crate::tube::{CentreLine, TubeElement};

/// One piece of a chain.
#[derive(Clone, Copy, Debug, PartialEq)]
#[non_exhaustive]
pub enum Piece {
    /// Straight tube.
    Straight {
        /// Length in mm, ≥ 0.
        length_mm: f64,
    },
    /// A bend.
    Bend {
        /// Turn of the direction in radians, > 0.
        bend_rad: f64,
        /// Clock angle of the bend's centre at its upstream end, from the frame's twelve o'clock,
        /// clockwise looking downstream, in radians. After a bend twelve o'clock points to that
        /// bend's centre, so this is the rotation between two bends.
        clock_rad: f64,
        /// Centre-line radius in mm, > 0.
        clr_mm: f64,
    },
    /// A straight body with its own diameter: resonator, silencer, catalyst, flex.
    Component {
        /// Length along the run in mm, ≥ 0.
        length_mm: f64,
    },
}

/// Pieces in the direction of travel, from a start frame.
#[derive(Clone, Debug, PartialEq)]
pub struct Chain {
    /// Upstream end.
    pub start: Frame,
    /// Pieces in order.
    pub pieces: Vec<Piece>,
}

/// How far one end is from another.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct EndError {
    /// Distance between the two places in mm.
    pub place_mm: f64,
    /// Angle between the two directions of travel in radians.
    pub direction_rad: f64,
    /// Roll between the two twelve o'clocks in radians (only meaningful when the directions agree).
    pub clock_rad: f64,
}

impl Piece {
    /// Length along the centre line in mm.
    #[must_use]
    pub fn length_mm(&self) -> f64 {
        match *self {
            Self::Straight { length_mm } | Self::Component { length_mm } => length_mm,
            Self::Bend {
                bend_rad, clr_mm, ..
            } => bend_rad * clr_mm,
        }
    }

    /// The frame at the piece's downstream end, from the one at its upstream end.
    #[must_use]
    pub fn carry(&self, upstream: &Frame) -> Frame {
        match *self {
            Self::Straight { length_mm } | Self::Component { length_mm } => {
                upstream.advanced(length_mm)
            }
            Self::Bend {
                bend_rad,
                clock_rad,
                clr_mm,
            } => upstream.rolled(clock_rad).bent(bend_rad, clr_mm),
        }
    }

    /// The piece's centre line from the frame at its upstream end.
    #[must_use]
    pub fn centre_line(&self, upstream: &Frame) -> CentreLine {
        match *self {
            Self::Straight { length_mm } | Self::Component { length_mm } => {
                CentreLine::straight(upstream, length_mm)
            }
            Self::Bend {
                bend_rad,
                clock_rad,
                clr_mm,
            } => CentreLine::bend(&upstream.rolled(clock_rad), bend_rad, clr_mm),
        }
    }
}

impl Chain {
    /// Frames at every joint: the start, then the downstream end of each piece.
    #[must_use]
    pub fn frames(&self) -> Vec<Frame> {
        let mut frame = self.start;
        let mut frames = vec![frame];
        for piece in &self.pieces {
            frame = piece.carry(&frame);
            frames.push(frame);
        }
        frames
    }

    /// The frame at the downstream end.
    #[must_use]
    pub fn end(&self) -> Frame {
        self.pieces
            .iter()
            .fold(self.start, |frame, piece| piece.carry(&frame))
    }

    /// The pieces' centre lines in order.
    #[must_use]
    pub fn centre_lines(&self) -> Vec<CentreLine> {
        self.pieces
            .iter()
            .zip(self.frames())
            .map(|(piece, frame)| piece.centre_line(&frame))
            .collect()
    }

    /// The pieces as swept balls; `radius_mm` gives the outside radius of each piece by its place in
    /// the chain.
    #[must_use]
    pub fn elements(&self, radius_mm: impl Fn(usize, &Piece) -> f64) -> Vec<TubeElement> {
        self.centre_lines()
            .into_iter()
            .zip(&self.pieces)
            .enumerate()
            .map(|(index, (line, piece))| TubeElement {
                line,
                radius: radius_mm(index, piece),
            })
            .collect()
    }

    /// Length along the centre line in mm, components included.
    #[must_use]
    pub fn developed_length_mm(&self) -> f64 {
        self.pieces.iter().map(Piece::length_mm).sum()
    }

    /// How far the downstream end is from `target`.
    #[must_use]
    pub fn end_error(&self, target: &Frame) -> EndError {
        let end = self.end();
        EndError {
            place_mm: end.origin.distance(target.origin),
            direction_rad: end.travel().angle_to(target.travel()),
            clock_rad: target.clock_of(end.twelve().vector()),
        }
    }

    /// The same chain from its other end: twelve o'clock at the new start points to the centre of
    /// what was the last bend.
    #[must_use]
    pub fn reversed(&self) -> Self {
        // A bend's clock is the roll from the bend before it: reversed, from the bend after it.
        let mut next_clock = 0.0;
        let pieces = self
            .pieces
            .iter()
            .rev()
            .map(|piece| match *piece {
                Piece::Bend {
                    bend_rad,
                    clock_rad,
                    clr_mm,
                } => {
                    let turned = Piece::Bend {
                        bend_rad,
                        clock_rad: next_clock,
                        clr_mm,
                    };
                    next_clock = clock_rad;
                    turned
                }
                straight => straight,
            })
            .collect();
        Self {
            start: self.end().reversed(),
            pieces,
        }
    }

    /// The bend table of the chain: straights and components that follow each other are added up. A
    /// bend directly after a bend in the same plane with the same radius stays a row of its own.
    #[must_use]
    pub fn table(&self) -> BendTable {
        let mut table = BendTable::default();
        let mut straight_mm = 0.0;
        for piece in &self.pieces {
            match *piece {
                Piece::Straight { length_mm } | Piece::Component { length_mm } => {
                    straight_mm += length_mm;
                }
                Piece::Bend {
                    bend_rad,
                    clock_rad,
                    clr_mm,
                } => {
                    table.rows.push(BendRow {
                        straight_mm,
                        rotation_rad: clock_rad,
                        bend_rad,
                        clr_mm,
                    });
                    straight_mm = 0.0;
                }
            }
        }
        table.last_straight_mm = straight_mm;
        table
    }

    /// The chain of a bend table; straights of no length are left out.
    #[must_use]
    pub fn from_table(start: Frame, table: &BendTable) -> Self {
        let mut pieces = Vec::with_capacity(2 * table.rows.len() + 1);
        let straight = |pieces: &mut Vec<Piece>, length_mm: f64| {
            if length_mm != 0.0 {
                pieces.push(Piece::Straight { length_mm });
            }
        };
        for row in &table.rows {
            straight(&mut pieces, row.straight_mm);
            pieces.push(Piece::Bend {
                bend_rad: row.bend_rad,
                clock_rad: row.rotation_rad,
                clr_mm: row.clr_mm,
            });
        }
        straight(&mut pieces, table.last_straight_mm);
        Self { start, pieces }
    }
}
