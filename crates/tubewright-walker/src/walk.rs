//! Carries a frame along pieces and lays balls on the way.

use crate::solid::Solid;
use crate::space::{Frame, V, add, cross, dot, norm, scale, sub};

/// The outer shape of a component.
#[derive(Clone, Copy, Debug, PartialEq)]
#[non_exhaustive]
pub enum Body {
    /// Round, with this diameter in mm.
    Round {
        /// Diameter in mm.
        diameter: f64,
    },
    /// Oval, lying flat at roll 0.
    Oval {
        /// The longer size in mm.
        width: f64,
        /// The shorter size in mm.
        height: f64,
    },
}

/// One piece of a run, lengths in mm and angles in degrees as they stand on the card.
#[derive(Clone, Copy, Debug, PartialEq)]
#[non_exhaustive]
pub enum Piece {
    /// Straight tube.
    Straight {
        /// Length in mm.
        length: f64,
    },
    /// A bend.
    Bend {
        /// Angle in degrees.
        angle_deg: f64,
        /// Clocking in degrees, relative to the plane of the bend before.
        clock_deg: f64,
        /// Centre-line radius in mm.
        clr: f64,
    },
    /// A component.
    Component {
        /// Length in mm.
        length: f64,
        /// Outer shape.
        body: Body,
        /// Roll in degrees.
        roll_deg: f64,
    },
    /// The run goes on from another frame, this far on (a crossover between inlet and outlet).
    Jump {
        /// The outlet.
        to: Frame,
    },
}

/// A ball that the run must have room for.
#[derive(Clone, Copy, Debug)]
pub struct Ball {
    /// Centre in mm.
    pub centre: [f64; 3],
    /// Radius in mm.
    pub radius: f64,
    /// Distance along the run in mm.
    pub along: f64,
    /// Number of the piece it belongs to.
    pub piece: usize,
}

/// What walking a run gives.
#[derive(Clone, Debug)]
pub struct Walk {
    /// The start frame and the frame after each piece.
    pub frames: Vec<Frame>,
    /// Distance along the run at each of `frames`.
    pub along: Vec<f64>,
    /// Balls on the centre line, neighbours at most the asked spacing apart, and those of component
    /// bodies.
    pub balls: Vec<Ball>,
}

/// Walks the pieces from `start`, laying balls of radius `od / 2` at most `spacing` mm apart.
#[must_use]
pub fn walk(start: Frame, od: f64, pieces: &[Piece], spacing: f64) -> Walk {
    let mut frame = start;
    let mut along = 0.0;
    let mut out = Walk {
        frames: vec![start],
        along: vec![0.0],
        balls: vec![Ball {
            centre: start.point,
            radius: od / 2.0,
            along: 0.0,
            piece: 0,
        }],
    };
    for (index, piece) in pieces.iter().enumerate() {
        let mut lay = |at: &dyn Fn(f64) -> Frame, length: f64| {
            let count = steps(length, spacing);
            for i in 0..=count {
                let share = i as f64 / count as f64;
                out.balls.push(Ball {
                    centre: at(share).point,
                    radius: od / 2.0,
                    along: along + share * length,
                    piece: index,
                });
            }
        };
        match *piece {
            Piece::Straight { length } => {
                lay(&|t| frame.ahead(t * length), length);
                frame = frame.ahead(length);
                along += length;
            }
            Piece::Bend {
                angle_deg,
                clock_deg,
                clr,
            } => {
                let angle = angle_deg.to_radians();
                let turned = frame.clocked(clock_deg.to_radians());
                lay(&|t| turned.bent(t * angle, clr), angle * clr);
                frame = turned.bent(angle, clr);
                along += angle * clr;
            }
            Piece::Component {
                length,
                body,
                roll_deg,
            } => {
                lay(&|t| frame.ahead(t * length), length);
                lay_body(
                    &mut out.balls,
                    frame,
                    length,
                    body,
                    roll_deg,
                    along,
                    index,
                    spacing,
                );
                frame = frame.ahead(length);
                along += length;
            }
            Piece::Jump { to } => {
                along += norm(sub(to.point, frame.point));
                frame = to;
                out.balls.push(Ball {
                    centre: to.point,
                    radius: od / 2.0,
                    along,
                    piece: index,
                });
            }
        }
        out.frames.push(frame);
        out.along.push(along);
    }
    out
}

#[expect(
    clippy::cast_possible_truncation,
    clippy::cast_sign_loss,
    reason = "a small positive count"
)]
fn steps(length: f64, spacing: f64) -> usize {
    ((length / spacing).ceil().max(1.0)) as usize
}

#[expect(
    clippy::too_many_arguments,
    reason = "one call, plainer than a struct for it"
)]
fn lay_body(
    balls: &mut Vec<Ball>,
    frame: Frame,
    length: f64,
    body: Body,
    roll_deg: f64,
    along: f64,
    piece: usize,
    spacing: f64,
) {
    let (radius, spread) = match body {
        Body::Round { diameter } => (diameter / 2.0, 0.0),
        Body::Oval { width, height } => (height / 2.0, (width - height) / 2.0),
    };
    let upright = Frame::upright(frame.point, frame.travel).clocked(roll_deg.to_radians());
    let wide = cross(frame.travel, upright.twelve);
    let (from, to) = if length < 2.0 * radius {
        (length / 2.0, length / 2.0)
    } else {
        (radius, length - radius)
    };
    let rows = if to > from {
        steps(to - from, spacing)
    } else {
        1
    };
    let columns = if spread > 0.0 {
        steps(2.0 * spread, spacing.max(1.0))
    } else {
        1
    };
    for i in 0..=rows {
        let at = from + (to - from) * i as f64 / rows as f64;
        for j in 0..=columns {
            let aside = spread * (2.0 * j as f64 / columns as f64 - 1.0);
            balls.push(Ball {
                centre: add(frame.ahead(at).point, scale(wide, aside)),
                radius,
                along: along + at,
                piece,
            });
        }
    }
}

/// The ball with the least surface-to-surface distance to a body, and that distance in mm
/// (negative only by the ball's own radius when its centre is inside).
#[must_use]
pub fn least_clearance(balls: &[Ball], solid: &Solid) -> Option<(Ball, f64)> {
    let mut best: Option<(Ball, f64)> = None;
    let mut last: Option<(V, f64)> = None;
    for ball in balls {
        // A distance changes by no more than the way moved, so places near a far one are skipped.
        if let (Some((centre, distance)), Some((_, least))) = (last, best)
            && distance - norm(sub(ball.centre, centre)) - ball.radius > least
        {
            continue;
        }
        let distance = solid.distance(ball.centre);
        last = Some((ball.centre, distance));
        if best.is_none_or(|(_, least)| distance - ball.radius < least) {
            best = Some((*ball, distance - ball.radius));
        }
    }
    best
}

/// Least surface-to-surface distance between balls of two lists that `counts` accepts.
pub(crate) fn least_between(
    a: &[Ball],
    b: &[Ball],
    counts: impl Fn(&Ball, &Ball) -> bool,
) -> Option<(Ball, Ball, f64)> {
    let mut best: Option<(Ball, Ball, f64)> = None;
    for x in a {
        let mut last: Option<(V, f64)> = None;
        for y in b {
            if !counts(x, y) {
                continue;
            }
            if let (Some((centre, distance)), Some((_, _, least))) = (last, best)
                && distance - norm(sub(y.centre, centre)) - x.radius - y.radius > least
            {
                continue;
            }
            let d = sub(x.centre, y.centre);
            let distance = dot(d, d).sqrt();
            last = Some((y.centre, distance));
            let gap = distance - x.radius - y.radius;
            if best.is_none_or(|(_, _, least)| gap < least) {
                best = Some((*x, *y, gap));
            }
        }
    }
    best
}
