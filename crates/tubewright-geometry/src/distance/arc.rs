//! Circular arcs: point to arc in closed form, and the arc as a row of chords with a known error.

use crate::math;
use crate::tube::CentreLine;
use crate::vector::{Point, UnitVector, Vector};

/// A stretch of centre line held within `slack_mm` of the segment `a`–`b`, and the other way round:
/// every place of the segment has a place of the stretch within `slack_mm`.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Chord {
    pub(crate) a: Point,
    pub(crate) b: Point,
    pub(crate) slack_mm: f64,
}

/// Part of an arc of at most 45°.
#[derive(Clone, Copy, Debug)]
pub(crate) struct ArcPiece {
    centre: Point,
    radius: f64,
    /// Directions from the centre to the two ends.
    from: Vector,
    to: Vector,
    /// Direction from the centre to the middle.
    middle: Vector,
    /// Angles along the whole arc in radians.
    start_rad: f64,
    end_rad: f64,
}

impl ArcPiece {
    fn new(centre: Point, radius: f64, from: (Vector, f64), to: (Vector, f64)) -> Self {
        let sum = from.0 + to.0;
        Self {
            centre,
            radius,
            from: from.0,
            to: to.0,
            middle: sum / sum.norm(),
            start_rad: from.1,
            end_rad: to.1,
        }
    }

    /// The chord moved out by half the sagitta `R (1 - cos(a/2))`, so that the arc lies within half
    /// the sagitta on either side. The sagitta is `R |from - middle|² / 2`, free of cancellation.
    pub(crate) fn chord(&self) -> Chord {
        let sagitta = self.radius * 0.5 * (self.from - self.middle).norm_squared();
        let shift = self.middle * (0.5 * sagitta);
        Chord {
            a: self.centre + self.from * self.radius + shift,
            b: self.centre + self.to * self.radius + shift,
            // A rounding allowance of 1e-13 of the radius keeps the promise at tiny angles.
            slack_mm: 0.5 * sagitta + 1e-13 * self.radius,
        }
    }

    /// The two halves.
    pub(crate) fn halves(&self) -> [Self; 2] {
        let middle = (self.middle, 0.5 * (self.start_rad + self.end_rad));
        [
            Self::new(
                self.centre,
                self.radius,
                (self.from, self.start_rad),
                middle,
            ),
            Self::new(self.centre, self.radius, middle, (self.to, self.end_rad)),
        ]
    }

    /// Distance along the whole arc, in mm, of the place abreast of fraction `t` of the chord.
    pub(crate) fn along_mm(&self, t: f64) -> f64 {
        let half = 0.5 * (self.end_rad - self.start_rad);
        let offset = math::asin(((2.0 * t - 1.0) * math::sin(half)).clamp(-1.0, 1.0));
        self.radius * (self.start_rad + half + offset)
    }
}

/// At most this many starting pieces: a full turn in steps of 45°.
pub(crate) const MOST_PIECES: usize = 8;

/// A centre line's starting pieces, without allocation; empty for a straight.
#[derive(Clone, Copy, Debug)]
pub(crate) struct ArcPieces {
    pieces: [Option<ArcPiece>; MOST_PIECES],
}

impl ArcPieces {
    pub(crate) fn iter(&self) -> impl Iterator<Item = &ArcPiece> {
        self.pieces.iter().flatten()
    }
}

/// Cuts a bend into pieces of at most 45° (a bend of more than a turn is held to a turn: it covers
/// the same places).
pub(crate) fn arc_pieces(line: &CentreLine) -> ArcPieces {
    let mut pieces = [None; MOST_PIECES];
    if let CentreLine::Arc {
        centre,
        u,
        v,
        radius,
        angle,
    } = *line
    {
        let angle = angle.min(math::TAU);
        #[expect(
            clippy::cast_possible_truncation,
            clippy::cast_sign_loss,
            reason = "between 1 and 8"
        )]
        let count = ((angle / math::FRAC_PI_4 - 1e-9).ceil().max(1.0) as usize).min(MOST_PIECES);
        let mut from = (u.vector(), 0.0);
        for (i, piece) in pieces.iter_mut().take(count).enumerate() {
            let end_rad = angle * (i + 1) as f64 / count as f64;
            let (sin, cos) = math::sin_cos(end_rad);
            let to = (u * cos + v * sin, end_rad);
            *piece = Some(ArcPiece::new(centre, radius, from, to));
            from = to;
        }
    }
    ArcPieces { pieces }
}

/// Angle in radians along the arc of the place nearest to `p`, and its distance from `p` in mm.
///
/// The nearest place of the whole circle lies abreast of `p`; when that is past the arc's ends, the
/// nearer end answers. On the circle's axis every place is equally near and the start is given.
#[must_use]
pub fn nearest_on_arc(
    p: Point,
    centre: Point,
    u: UnitVector,
    v: UnitVector,
    radius_mm: f64,
    angle_rad: f64,
) -> (f64, f64) {
    let d = p - centre;
    let (x, y) = (u.dot(d), v.dot(d));
    let z = u.vector().cross(v.vector()).dot(d);
    let mut abreast = math::atan2(y, x);
    if abreast < 0.0 {
        abreast += math::TAU;
    }
    if abreast <= angle_rad {
        return (abreast, math::hypot(math::hypot(x, y) - radius_mm, z));
    }
    let (sin, cos) = math::sin_cos(angle_rad);
    let to = |cx: f64, cy: f64| math::hypot(math::hypot(x - cx, y - cy), z);
    let (start, end) = (to(radius_mm, 0.0), to(radius_mm * cos, radius_mm * sin));
    if start <= end {
        (0.0, start)
    } else {
        (angle_rad, end)
    }
}

/// The least value of `outward · (place − point)` over the arc, signed, and the angle where it is:
/// `A + R (u·n cos t + v·n sin t)` is least at `atan2(v·n, u·n) + π` when the arc reaches it, else at
/// an end.
pub(super) fn lowest_on_arc(
    outward: UnitVector,
    point: Point,
    (centre, u, v, radius, angle): (Point, UnitVector, UnitVector, f64, f64),
) -> (f64, f64) {
    let (un, vn) = (outward.dot(u.vector()), outward.dot(v.vector()));
    let middle = outward.dot(centre - point);
    let at = |t: f64| {
        let (sin, cos) = math::sin_cos(t);
        middle + radius * (un * cos + vn * sin)
    };
    let mut lowest = math::atan2(vn, un) + math::PI;
    if lowest >= math::TAU {
        lowest -= math::TAU;
    }
    if lowest <= angle {
        return (middle - radius * math::hypot(un, vn), lowest);
    }
    let (start, end) = (at(0.0), at(angle));
    if start <= end {
        (start, 0.0)
    } else {
        (end, angle)
    }
}
