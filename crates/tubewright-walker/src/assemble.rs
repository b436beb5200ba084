//! Parts put one after the other by the fit marks, from the start flange.
//!
//! From the definition: every part has a witness line, a bend along its outside; the fit mark turns
//! it from the witness line of the part before, clockwise looking downstream, in degrees and in
//! millimetres round the outside. A run starts with its twelve o'clock in place of a witness line,
//! and so does what follows a crossover. Each weld pulls its two sides together.

use crate::card::MadePart;
use crate::space::{Frame, V, angle_deg, norm, scale, sub};
use crate::walk::Piece;

/// A fit mark.
#[derive(Clone, Debug, PartialEq)]
pub struct Fit {
    /// Marks of the pieces that the part is, upstream first.
    pub marks: Vec<String>,
    /// Clock in degrees.
    pub clock_deg: f64,
    /// The same round the outside in mm.
    pub round_outside: f64,
    /// Turned end for end.
    pub is_reversed: bool,
}

/// How the broad side of an oval or a box is turned: from the witness line of the part before to its own,
/// clockwise looking downstream, in degrees and round the outside of its neck in mm.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Roll {
    /// In degrees.
    pub clock_deg: f64,
    /// The same round the neck in mm.
    pub round_neck: f64,
    /// Outside diameter of the neck in mm.
    pub neck_od: f64,
}

/// What is put next in a run.
#[derive(Clone, Debug, PartialEq)]
#[non_exhaustive]
pub enum Next {
    /// A part off the saw, with its fit mark.
    Part(MadePart, Fit),
    /// A component of this length, with its fit mark.
    Component {
        /// Length in mm.
        length: f64,
        /// Its fit mark.
        fit: Fit,
        /// For an oval or a box: how its broad side is turned.
        roll: Option<Roll>,
    },
    /// On from the outlet of a crossover.
    Crossover {
        /// The outlet, with its twelve o'clock.
        outlet: Frame,
        /// Where the inlet is, and the direction into it.
        inlet: Frame,
    },
}

/// A run put together.
#[derive(Clone, Debug)]
pub struct Assembled {
    /// The frame before the first and after each thing put.
    pub frames: Vec<Frame>,
    /// Marks of each thing put.
    pub marks: Vec<Vec<String>>,
    /// Length along the centre line of each, mm.
    pub developed: Vec<f64>,
    /// Pieces for [`crate::walk`] from the start, clocks from the bend before.
    pub pieces: Vec<Piece>,
    /// Mark of each of `pieces`, as the part calls it.
    pub piece_marks: Vec<Vec<String>>,
    /// Distance in mm and angle in degrees between an arrival at a crossover's inlet and the inlet.
    pub inlets: Vec<(f64, f64)>,
    /// For each thing put, where the middle of its broad side lies, square to the travel; nothing for what is
    /// round.
    pub broad_sides: Vec<Option<V>>,
    /// Everything that is wrong.
    pub faults: Vec<String>,
}

impl Assembled {
    /// Where the run ends.
    #[must_use]
    pub fn end(&self) -> Frame {
        self.frames[self.frames.len() - 1]
    }
}

/// Distance in mm and angle in degrees between an arrival and where it should be.
#[must_use]
pub fn apart(arrival: &Frame, wanted: &Frame) -> (f64, f64) {
    (
        norm(sub(arrival.point, wanted.point)),
        angle_deg(arrival.travel, wanted.travel),
    )
}

/// Puts a run together. `pull_mm` is what the weld before each thing put draws it upstream, by its
/// number; the last one is that at the run's end.
#[must_use]
pub fn assemble(start: Frame, order: &[Next], pull_mm: impl Fn(usize) -> f64) -> Assembled {
    let mut out = Assembled {
        frames: vec![start],
        marks: Vec::new(),
        developed: Vec::new(),
        pieces: Vec::new(),
        piece_marks: Vec::new(),
        inlets: Vec::new(),
        broad_sides: Vec::new(),
        faults: Vec::new(),
    };
    // Twelve o'clock of this frame is the witness line of what was put last.
    let mut frame = start;
    // Clock of the witness line from where the next bend's clock counts.
    let mut witness = 0.0;
    let drawn = |frame: Frame, by: f64| Frame {
        point: sub(frame.point, scale(frame.travel, by)),
        ..frame
    };
    for (number, next) in order.iter().enumerate() {
        if let Next::Part(_, fit) | Next::Component { fit, .. } = next {
            check_round(next, fit, &mut out.faults);
        }
        frame = drawn(frame, pull_mm(number));
        out.broad_sides.push(match next {
            Next::Component {
                roll: Some(roll), ..
            } => Some(frame.clocked(roll.clock_deg.to_radians()).twelve),
            _ => None,
        });
        let before = out.pieces.len();
        let developed = match next {
            Next::Part(part, fit) => {
                let (up, down) = if fit.is_reversed {
                    (part.leg_b, part.leg_a)
                } else {
                    (part.leg_a, part.leg_b)
                };
                frame = frame.clocked(fit.clock_deg.to_radians());
                witness += fit.clock_deg;
                let mut straight = |length: f64| {
                    if length > 0.0 {
                        out.pieces.push(Piece::Straight { length });
                    }
                };
                straight(up);
                frame = frame.ahead(up);
                if part.angle_deg > 0.0 {
                    // The centre of the bend is opposite its outside.
                    let toward = frame.clocked(core::f64::consts::PI);
                    frame = toward
                        .bent(part.angle_deg.to_radians(), part.clr)
                        .clocked(core::f64::consts::PI);
                    out.pieces.push(Piece::Bend {
                        angle_deg: part.angle_deg,
                        clock_deg: witness - 180.0,
                        clr: part.clr,
                    });
                    witness = 180.0;
                    if down > 0.0 {
                        out.pieces.push(Piece::Straight { length: down });
                    }
                    frame = frame.ahead(down);
                } else if down > 0.0 {
                    // A straight out of the leg at the other end of a bend.
                    straight(down);
                    frame = frame.ahead(down);
                }
                part.developed()
            }
            Next::Component { length, .. } => {
                frame = frame.ahead(*length);
                out.pieces.push(Piece::Straight { length: *length });
                *length
            }
            Next::Crossover { outlet, inlet } => {
                out.inlets.push(apart(&frame, inlet));
                frame = *outlet;
                witness = 0.0;
                out.pieces.push(Piece::Jump { to: *outlet });
                norm(sub(outlet.point, inlet.point))
            }
        };
        let marks = match next {
            Next::Part(_, fit) | Next::Component { fit, .. } => fit.marks.clone(),
            Next::Crossover { .. } => Vec::new(),
        };
        out.piece_marks
            .extend((before..out.pieces.len()).map(|_| marks.clone()));
        out.marks.push(marks);
        out.frames.push(frame);
        out.developed.push(developed);
    }
    if let Some(last) = out.frames.last_mut() {
        *last = drawn(*last, pull_mm(order.len()));
    }
    out
}

/// The clock in degrees and the millimetres round the outside say the same.
fn check_round(next: &Next, fit: &Fit, faults: &mut Vec<String>) {
    if let Next::Component {
        roll: Some(roll), ..
    } = next
    {
        let is = roll.neck_od / 2.0 * roll.clock_deg.to_radians();
        if (is - roll.round_neck).abs() > 1e-6 {
            faults.push(format!(
                "{:?}: a roll of {} deg is {is:.3} mm round the neck, the card says {:.3}",
                fit.marks, roll.clock_deg, roll.round_neck
            ));
        }
    }
    if let Next::Part(part, _) = next {
        let is = part.od / 2.0 * fit.clock_deg.to_radians();
        if (is - fit.round_outside).abs() > 1e-6 {
            faults.push(format!(
                "{:?}: {} deg is {is:.3} mm round the outside, the card says {:.3}",
                fit.marks, fit.clock_deg, fit.round_outside
            ));
        }
    }
}
