//! The three views of a shop drawing.

use crate::drawing::{Rect, Spot};
use tubewright_geometry::{CentreLine, Point, UnitVector, math};

/// Where the eye is.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum ViewName {
    /// At the car's left: x to the right, z up.
    Side,
    /// Over the car: x to the right, the car's right side up.
    Above,
    /// Behind the car: the car's right to the right, z up.
    Behind,
}

impl ViewName {
    /// All three, as they stand on the sheet.
    pub const ALL: [Self; 3] = [Self::Side, Self::Above, Self::Behind];

    /// Heading of the view.
    #[must_use]
    pub const fn heading(self) -> &'static str {
        match self {
            Self::Side => "From the left side",
            Self::Above => "From above",
            Self::Behind => "From behind",
        }
    }

    /// The car's direction that points to the right on the paper.
    #[must_use]
    pub const fn right(self) -> UnitVector {
        match self {
            Self::Side | Self::Above => UnitVector::X,
            Self::Behind => UnitVector::Y,
        }
    }

    /// The car's direction that points up on the paper.
    #[must_use]
    pub const fn up(self) -> UnitVector {
        match self {
            Self::Side | Self::Behind => UnitVector::Z,
            Self::Above => UnitVector::Y,
        }
    }

    /// The car's direction that points from the paper to the eye.
    #[must_use]
    pub fn toward_eye(self) -> UnitVector {
        match self {
            Self::Side => -UnitVector::Y,
            Self::Above => UnitVector::Z,
            Self::Behind => UnitVector::X,
        }
    }

    /// Letters and words of the axes to the right and up.
    #[must_use]
    pub const fn axis_words(self) -> [(&'static str, &'static str); 2] {
        match self {
            Self::Side => [("x", "rearwards"), ("z", "up")],
            Self::Above => [("x", "rearwards"), ("y", "right")],
            Self::Behind => [("y", "right"), ("z", "up")],
        }
    }
}

/// A view laid on the paper: where the car's origin comes to lie, and the scale.
#[derive(Clone, Copy, Debug)]
pub(crate) struct View {
    pub(crate) name: ViewName,
    /// Paper mm per mm of the car.
    pub(crate) scale: f64,
    /// Where the car's origin lies on the paper.
    pub(crate) origin: Spot,
    /// What is drawn of it.
    pub(crate) window: Rect,
}

/// How far a bend's polyline may lie from the true curve, in mm of paper.
pub(crate) const CHORD_MM: f64 = 0.02;

impl View {
    pub(crate) fn spot(&self, point: Point) -> Spot {
        let v = point.to_vector();
        self.origin + Spot::new(self.name.right().dot(v), -self.name.up().dot(v)) * self.scale
    }

    /// Larger is nearer to the eye, in mm of the car.
    pub(crate) fn nearness(&self, point: Point) -> f64 {
        self.name.toward_eye().dot(point.to_vector())
    }

    /// Direction on the paper (not of length one: foreshortened) of a direction in the car.
    pub(crate) fn slant(&self, direction: UnitVector) -> Spot {
        let v = direction.vector();
        Spot::new(self.name.right().dot(v), -self.name.up().dot(v))
    }

    /// A centre line as points that miss it by at most [`CHORD_MM`] on the paper.
    pub(crate) fn centre_points(&self, line: &CentreLine) -> Vec<Point> {
        sampled(line, CHORD_MM / self.scale)
    }

    /// The rim of a round end, as spots.
    pub(crate) fn rim(&self, centre: Point, axis: UnitVector, radius_mm: f64) -> Vec<Spot> {
        let u = axis.any_normal();
        (0..RIM)
            .map(|i| {
                let turn = math::TAU * f64::from(i) / f64::from(RIM);
                self.spot(centre + u.rotated_about(axis, turn) * radius_mm)
            })
            .collect()
    }
}

/// Corners of a round rim: at 10 mm radius on the paper the polygon is off by 0.02 mm.
const RIM: u32 = 48;

/// Points along a centre line whose chords miss it by at most `sagitta_mm`
/// (sagitta = R (1 − cos(Δ/2))).
pub(crate) fn sampled(line: &CentreLine, sagitta_mm: f64) -> Vec<Point> {
    let count = match *line {
        CentreLine::Arc { radius, angle, .. } => {
            let cos = (1.0 - sagitta_mm / radius).clamp(-1.0, 1.0);
            let step = 2.0 * math::acos(cos);
            (angle / step.max(1e-3)).ceil().clamp(1.0, 4000.0)
        }
        _ => 1.0,
    };
    let length = line.length();
    let mut points = Vec::new();
    let mut i = 0.0;
    while i <= count {
        points.push(line.at(length * i / count));
        i += 1.0;
    }
    points
}
