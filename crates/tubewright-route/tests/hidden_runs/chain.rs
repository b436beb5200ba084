//! Hidden chains of pieces, and frames carried along them.

use serde_json::{Value, json};
use tubewright_walker::{Ball, Body, Frame, Piece, Walk, walk};

use super::draw::Draw;
use super::sheet::{MIN_STRAIGHT_MM, STOCK_DEG, Tube};

/// A component of a hidden run.
#[derive(Clone, Debug)]
pub(super) struct Part {
    pub(super) id: String,
    pub(super) length: f64,
    pub(super) body: Body,
    pub(super) roll: f64,
}

/// One hidden piece.
#[derive(Clone, Debug)]
pub(super) enum Bit {
    Straight(f64),
    Bend(f64, f64),
    Part(Part),
}

impl Bit {
    pub(super) fn json(&self) -> Value {
        match self {
            Self::Straight(length) => json!({"type": "straight", "length": length}),
            Self::Bend(angle, clock) => {
                json!({"type": "bend", "angle": angle, "clocking": clock})
            }
            Self::Part(part) => json!({"type": "component", "id": part.id, "roll": part.roll}),
        }
    }

    fn piece(&self, clr: f64) -> Piece {
        match self {
            Self::Straight(length) => Piece::Straight { length: *length },
            Self::Bend(angle_deg, clock_deg) => Piece::Bend {
                angle_deg: *angle_deg,
                clock_deg: *clock_deg,
                clr,
            },
            Self::Part(part) => Piece::Component {
                length: part.length,
                body: part.body,
                roll_deg: part.roll,
            },
        }
    }
}

pub(super) fn walked(start: Frame, tube: Tube, bits: &[Bit]) -> Walk {
    let pieces: Vec<Piece> = bits.iter().map(|b| b.piece(tube.clr)).collect();
    walk(start, tube.od, &pieces, 4.0)
}

/// Bends with straights between most of them; `longest` of one straight in mm.
pub(super) fn bends(draw: &mut Draw, count: usize, longest: f64) -> Vec<Bit> {
    let mut out = Vec::new();
    let straight = |draw: &mut Draw, out: &mut Vec<Bit>| {
        if draw.chance(0.75) {
            out.push(Bit::Straight(draw.between(MIN_STRAIGHT_MM, longest)));
        }
    };
    for _ in 0..count {
        straight(draw, &mut out);
        let angle = if draw.chance(0.5) {
            draw.pick(&STOCK_DEG)
        } else {
            draw.between(6.0, 80.0)
        };
        let clock = if draw.chance(0.4) {
            draw.pick(&[0.0, 90.0, 180.0, -90.0])
        } else {
            draw.between(-180.0, 180.0)
        };
        out.push(Bit::Bend(angle, clock));
    }
    straight(draw, &mut out);
    if out.is_empty() {
        out.push(Bit::Straight(longest));
    }
    out
}

/// Puts a part somewhere between the pieces, in the order of `parts`.
pub(super) fn with_parts(draw: &mut Draw, bits: Vec<Bit>, parts: Vec<Part>) -> Vec<Bit> {
    let mut places: Vec<usize> = parts.iter().map(|_| draw.count(0, bits.len())).collect();
    places.sort_unstable();
    let mut out = Vec::new();
    let mut parts = parts.into_iter().zip(places).peekable();
    for (k, bit) in bits.into_iter().enumerate() {
        while let Some((part, _)) = parts.next_if(|(_, at)| *at == k) {
            out.push(Bit::Part(part));
        }
        out.push(bit);
    }
    out.extend(parts.map(|(part, _)| Bit::Part(part)));
    out
}

/// The start frame from which `bits` arrive at `place` with `travel`, rolled by `roll` about it.
pub(super) fn arriving(
    tube: Tube,
    bits: &[Bit],
    place: [f64; 3],
    travel: [f64; 3],
    roll_deg: f64,
) -> Frame {
    let origin = Frame::toward([0.0; 3], [1.0, 0.0, 0.0], [0.0, 0.0, 1.0]);
    let end = *walked(origin, tube, bits).frames.last().unwrap();
    // The clocked frame comes from the judge's own bend of no angle.
    let rolled = *walk(
        Frame::upright(place, travel),
        tube.od,
        &[Piece::Bend {
            angle_deg: 1e-12,
            clock_deg: roll_deg,
            clr: tube.clr,
        }],
        4.0,
    )
    .frames
    .last()
    .unwrap();
    let (from, to) = (axes(&end), axes(&rolled));
    let turn = |v: [f64; 3]| {
        let parts = from.map(|a| dot(a, v));
        [0, 1, 2].map(|k| (0..3).map(|i| to[i][k] * parts[i]).sum::<f64>())
    };
    let back = turn(end.point);
    Frame {
        point: [0, 1, 2].map(|k| place[k] - back[k]),
        travel: unit(turn([1.0, 0.0, 0.0])),
        twelve: unit(turn([0.0, 0.0, 1.0])),
    }
}

fn axes(f: &Frame) -> [[f64; 3]; 3] {
    [f.travel, f.twelve, cross(f.travel, f.twelve)]
}

pub(super) fn dot(a: [f64; 3], b: [f64; 3]) -> f64 {
    a[0] * b[0] + a[1] * b[1] + a[2] * b[2]
}

pub(super) fn cross(a: [f64; 3], b: [f64; 3]) -> [f64; 3] {
    [
        a[1] * b[2] - a[2] * b[1],
        a[2] * b[0] - a[0] * b[2],
        a[0] * b[1] - a[1] * b[0],
    ]
}

pub(super) fn unit(v: [f64; 3]) -> [f64; 3] {
    let n = dot(v, v).sqrt();
    v.map(|x| x / n)
}

pub(super) fn plus(a: [f64; 3], b: [f64; 3], by: f64) -> [f64; 3] {
    [0, 1, 2].map(|k| a[k] + by * b[k])
}

/// Least and greatest coordinates of balls with their radii.
pub(super) fn extent(balls: &[Ball]) -> ([f64; 3], [f64; 3]) {
    let (mut low, mut high) = ([f64::INFINITY; 3], [f64::NEG_INFINITY; 3]);
    for ball in balls {
        for k in 0..3 {
            low[k] = low[k].min(ball.centre[k] - ball.radius);
            high[k] = high[k].max(ball.centre[k] + ball.radius);
        }
    }
    (low, high)
}
