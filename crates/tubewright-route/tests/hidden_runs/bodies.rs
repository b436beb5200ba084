//! Bodies beside a hidden run, as near as they are told to be and never nearer than their gap.

use serde_json::{Value, json};
use tubewright_walker::{Ball, Solid, least_clearance};

use super::chain::{cross, plus, unit};
use super::draw::Draw;
use super::sheet::GAPS;

/// What a body may be.
#[derive(Clone, Copy, PartialEq, Eq)]
pub(super) enum Shapes {
    /// Boxes, bars and cylinders.
    Plain,
    /// Meshes and swept spaces as well.
    All,
}

/// A body with its form at a place, so that it can be shifted.
struct Form {
    kind: u8,
    size: [f64; 3],
    axes: [[f64; 3]; 3],
    corners: usize,
}

impl Form {
    fn drawn(draw: &mut Draw, shapes: Shapes) -> Self {
        let kind = match shapes {
            Shapes::Plain => draw.pick(&[0, 0, 1, 2]),
            Shapes::All => draw.pick(&[0, 1, 2, 3, 3, 4]),
        };
        let u = if draw.chance(0.5) {
            [1.0, 0.0, 0.0]
        } else {
            draw.direction()
        };
        let v = unit(cross(u, [0.31, 0.52, 0.79]));
        let longest = draw.pick(&[40.0, 120.0, 300.0]);
        Self {
            kind,
            size: [0; 3].map(|_| draw.between(8.0, longest)),
            axes: [u, v, unit(cross(u, v))],
            corners: draw.count(3, 7),
        }
    }

    fn ends(&self, at: [f64; 3]) -> ([f64; 3], [f64; 3], f64) {
        let half = self.size[0];
        (
            plus(at, self.axes[0], -half),
            plus(at, self.axes[0], half),
            self.size[1].min(120.0) * 0.5,
        )
    }

    /// The corners and faces of a prism whose outline is a star: not convex.
    fn mesh(&self, at: [f64; 3]) -> (Vec<[f64; 3]>, Vec<[usize; 3]>) {
        let n = 2 * self.corners;
        let mut vertices = Vec::new();
        for side in [-1.0, 1.0] {
            for k in 0..n {
                let turn = core::f64::consts::TAU * k as f64 / n as f64;
                let (sin, cos) = tubewright_geometry::math::sin_cos(turn);
                let out = if k % 2 == 0 { 1.0 } else { 0.55 };
                let p = plus(at, self.axes[0], side * self.size[0]);
                let p = plus(p, self.axes[1], out * cos * self.size[1]);
                vertices.push(plus(p, self.axes[2], out * sin * self.size[1]));
            }
            vertices.push(plus(at, self.axes[0], side * self.size[0]));
        }
        let (low, high) = (n, 2 * n + 1);
        let mut faces = Vec::new();
        for k in 0..n {
            let next = (k + 1) % n;
            let (a, b, c, d) = (k, next, n + 1 + k, n + 1 + next);
            faces.push([a, b, c]);
            faces.push([b, d, c]);
            faces.push([low, b, a]);
            faces.push([high, c, d]);
        }
        (vertices, faces)
    }

    fn solid(&self, at: [f64; 3]) -> Solid {
        let (a, b, radius) = self.ends(at);
        match self.kind {
            0 => Solid::Box {
                centre: at,
                half: self.size,
                axes: self.axes,
            },
            1 => Solid::Capsule { a, b, radius },
            2 => Solid::Cylinder { a, b, radius },
            3 => {
                let (vertices, faces) = self.mesh(at);
                Solid::Mesh { vertices, faces }
            }
            _ => Solid::Envelope(
                self.positions(at)
                    .map(|(a, b)| Solid::Capsule { a, b, radius })
                    .to_vec(),
            ),
        }
    }

    /// A bar that moves square to itself.
    fn positions(&self, at: [f64; 3]) -> [([f64; 3], [f64; 3]); 3] {
        [-0.5, 0.0, 0.5].map(|share| {
            let (a, b, _) = self.ends(plus(at, self.axes[2], share * self.size[2].min(80.0)));
            (a, b)
        })
    }

    fn json(&self, at: [f64; 3]) -> Value {
        let (a, b, r) = self.ends(at);
        match self.kind {
            0 => json!({"type": "box", "center": at, "half": self.size, "axes": self.axes}),
            1 => json!({"type": "capsule", "a": a, "b": b, "r": r}),
            2 => json!({"type": "cylinder", "a": a, "b": b, "r": r}),
            3 => {
                let (vertices, faces) = self.mesh(at);
                json!({"type": "mesh", "vertices": vertices, "faces": faces})
            }
            _ => {
                let of: Vec<Value> = self
                    .positions(at)
                    .iter()
                    .map(|(a, b)| json!({"type": "capsule", "a": a, "b": b, "r": r}))
                    .collect();
                json!({"type": "envelope", "of": of})
            }
        }
    }
}

/// A body near the run: its clearance is the gap of its class and about `spare` more.
pub(super) fn beside(
    draw: &mut Draw,
    balls: &[Ball],
    shapes: Shapes,
    spare: f64,
    number: usize,
) -> Option<Value> {
    let form = Form::drawn(draw, shapes);
    let (class, gap) = draw.pick(&GAPS);
    let ball = draw.pick(balls);
    let away = draw.direction();
    let mut at = plus(ball.centre, away, ball.radius + gap + spare);
    for _ in 0..12 {
        let (_, clearance) = least_clearance(balls, &form.solid(at))?;
        let short = gap + spare + 0.2 - clearance;
        if short.abs() < 2.0_f64.max(0.5 * spare) && clearance > gap + 0.1 {
            let mut out = form.json(at);
            out["id"] = json!(format!("body{number}"));
            out["class"] = json!(class);
            return Some(out);
        }
        at = plus(at, away, if short > 0.0 { short + 0.5 } else { short });
    }
    None
}

/// A wall square to x at the middle of the run, with a window round it; four boxes.
pub(super) fn wall(
    draw: &mut Draw,
    balls: &[Ball],
    (low, high): ([f64; 3], [f64; 3]),
    spare: f64,
    number: usize,
) -> Option<Vec<Value>> {
    let x = draw.pick(balls).centre[0];
    let half = draw.between(3.0, 25.0);
    let (class, gap) = draw.pick(&GAPS);
    let reach = half + gap + 60.0;
    let mut window = ([f64::INFINITY; 2], [f64::NEG_INFINITY; 2]);
    for ball in balls.iter().filter(|b| (b.centre[0] - x).abs() < reach) {
        for k in 0..2 {
            let c = ball.centre[k + 1];
            window.0[k] = window.0[k].min(c - ball.radius - gap - spare);
            window.1[k] = window.1[k].max(c + ball.radius + gap + spare);
        }
    }
    let boxes = [
        ([low[1], low[2]], [window.0[0], high[2]]),
        ([window.1[0], low[2]], [high[1], high[2]]),
        ([window.0[0], low[2]], [window.1[0], window.0[1]]),
        ([window.0[0], window.1[1]], [window.1[0], high[2]]),
    ];
    let mut out = Vec::new();
    for (k, (from, to)) in boxes.into_iter().enumerate() {
        if to[0] - from[0] < 1.0 || to[1] - from[1] < 1.0 {
            continue;
        }
        out.push(plate(
            [x - half, from[0], from[1]],
            [x + half, to[0], to[1]],
            class,
            &format!("wall{number}-{k}"),
        ));
    }
    Some(out)
}

/// A box between two corners.
pub(super) fn plate(from: [f64; 3], to: [f64; 3], class: &str, id: &str) -> Value {
    let centre = [0, 1, 2].map(|k| (from[k] + to[k]) / 2.0);
    let half = [0, 1, 2].map(|k| (to[k] - from[k]) / 2.0);
    json!({"id": id, "class": class, "type": "box", "center": centre, "half": half})
}
