//! Plain vectors `[x, y, z]` and the frame carried along a run.

pub(crate) type V = [f64; 3];

pub(crate) fn add(a: V, b: V) -> V {
    [a[0] + b[0], a[1] + b[1], a[2] + b[2]]
}

pub(crate) fn sub(a: V, b: V) -> V {
    [a[0] - b[0], a[1] - b[1], a[2] - b[2]]
}

pub(crate) fn scale(a: V, k: f64) -> V {
    [a[0] * k, a[1] * k, a[2] * k]
}

pub(crate) fn dot(a: V, b: V) -> f64 {
    a[0] * b[0] + a[1] * b[1] + a[2] * b[2]
}

pub(crate) fn cross(a: V, b: V) -> V {
    [
        a[1] * b[2] - a[2] * b[1],
        a[2] * b[0] - a[0] * b[2],
        a[0] * b[1] - a[1] * b[0],
    ]
}

pub(crate) fn norm(a: V) -> f64 {
    dot(a, a).sqrt()
}

pub(crate) fn unit(a: V) -> V {
    scale(a, 1.0 / norm(a))
}

#[expect(
    clippy::disallowed_methods,
    reason = "the judge shares no code with the project, its trigonometry included"
)]
pub(crate) fn sin_cos(rad: f64) -> (f64, f64) {
    rad.sin_cos()
}

#[expect(
    clippy::disallowed_methods,
    reason = "the judge shares no code with the project, its trigonometry included"
)]
pub(crate) fn atan2(y: f64, x: f64) -> f64 {
    y.atan2(x)
}

#[expect(
    clippy::disallowed_methods,
    reason = "the judge shares no code with the project, its trigonometry included"
)]
pub(crate) fn asin(x: f64) -> f64 {
    x.asin()
}

/// Angle between two unit vectors in degrees.
pub(crate) fn angle_deg(a: V, b: V) -> f64 {
    atan2(norm(cross(a, b)), dot(a, b)).to_degrees()
}

/// Twelve o'clock of a frame travelling along `travel`: the upward direction square to it, or for
/// a vertical travel the rearward one.
pub(crate) fn upright(travel: V) -> V {
    let toward = |axis: V| sub(axis, scale(travel, dot(axis, travel)));
    let up = toward([0.0, 0.0, 1.0]);
    if norm(up) > 1e-9 {
        unit(up)
    } else {
        unit(toward([1.0, 0.0, 0.0]))
    }
}

/// Place, direction of travel and twelve o'clock (the side that the next bend at clock 0 goes to).
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Frame {
    /// On the centre line, in mm.
    pub point: [f64; 3],
    /// Unit direction of travel.
    pub travel: [f64; 3],
    /// Unit direction square to the travel.
    pub twelve: [f64; 3],
}

impl Frame {
    /// A frame whose twelve o'clock lies toward `up`; `up` must not be parallel to the travel.
    #[must_use]
    pub fn toward(point: [f64; 3], travel: [f64; 3], up: [f64; 3]) -> Self {
        Self {
            point,
            travel,
            twelve: unit(sub(up, scale(travel, dot(up, travel)))),
        }
    }

    /// A frame whose twelve o'clock lies toward the car's up.
    #[must_use]
    pub fn upright(point: [f64; 3], travel: [f64; 3]) -> Self {
        Self {
            point,
            travel,
            twelve: upright(travel),
        }
    }

    pub(crate) fn ahead(&self, length: f64) -> Self {
        Self {
            point: add(self.point, scale(self.travel, length)),
            ..*self
        }
    }

    pub(crate) fn clocked(&self, rad: f64) -> Self {
        let (sin, cos) = sin_cos(rad);
        let across = cross(self.travel, self.twelve);
        Self {
            twelve: add(scale(self.twelve, cos), scale(across, sin)),
            ..*self
        }
    }

    pub(crate) fn bent(&self, rad: f64, clr: f64) -> Self {
        let (sin, cos) = sin_cos(rad);
        Self {
            point: add(
                add(self.point, scale(self.travel, clr * sin)),
                scale(self.twelve, clr * (1.0 - cos)),
            ),
            travel: add(scale(self.travel, cos), scale(self.twelve, sin)),
            twelve: sub(scale(self.twelve, cos), scale(self.travel, sin)),
        }
    }
}
