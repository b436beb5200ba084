//! Parts where runs meet, and how they lie.

use tubewright_geometry::{CentreLine, Placement, Point, TubeElement, UnitVector, Vector, math};

use crate::problem::Region;

/// A round-ended bar of a crossover's body, in the crossover's own coordinates.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Bar {
    /// One end of the axis.
    pub a: Vector,
    /// Other end of the axis.
    pub b: Vector,
    /// Radius in mm.
    pub radius_mm: f64,
}

/// Inlet and outlet of one side of a crossover, in the crossover's own coordinates; directions are
/// those of the flow.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Ports {
    /// Place of the inlet.
    pub inlet: Vector,
    /// Direction of flow in.
    pub inlet_direction: UnitVector,
    /// Place of the outlet.
    pub outlet: Vector,
    /// Direction of flow out.
    pub outlet_direction: UnitVector,
}

/// A part where runs meet: a crossover that two runs pass, a merge, a split, or a cone between two sizes.
/// One that stands is neither shifted nor turned. Where both sides have one inlet or one outlet, their ports are the
/// same.
#[derive(Clone, Debug, PartialEq)]
pub struct Crossover {
    /// Name.
    pub id: String,
    /// Where its origin may lie.
    pub poses: Region,
    /// How it may be turned there.
    pub turns: TurnRoom,
    /// Room that its ports must lie in however it is turned; `None` where `poses` says all.
    pub ports_within: Option<Region>,
    /// Its body.
    pub body: Vec<Bar>,
    /// Ports of the left side.
    pub left: Ports,
    /// Ports of the right side.
    pub right: Ports,
    /// Whether it stands where it is already: then nobody asks whether it is clear of the bodies.
    pub stands: bool,
}

/// A side of a crossover.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Side {
    /// Left.
    Left,
    /// Right.
    Right,
}

impl Side {
    /// `L` or `R`, as painted and printed.
    #[must_use]
    pub const fn letter(self) -> &'static str {
        match self {
            Self::Left => "L",
            Self::Right => "R",
        }
    }
}

impl Crossover {
    /// The ports of a side.
    #[must_use]
    pub const fn ports(&self, side: Side) -> &Ports {
        match side {
            Side::Left => &self.left,
            Side::Right => &self.right,
        }
    }
}

/// Where a run passes a crossover.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Passage {
    /// Number of the crossover in the problem.
    pub crossover: usize,
    /// Side.
    pub side: Side,
}

/// How a part is turned from lying along the car, radians: rolled about its own length first, then raised, then
/// turned aside.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Turn {
    /// Its outlets to the car's right.
    pub right_rad: f64,
    /// Its outlets up.
    pub up_rad: f64,
    /// About its own length, clockwise looking downstream.
    pub roll_rad: f64,
}

impl Turn {
    /// Along the car.
    pub const NONE: Self = Self {
        right_rad: 0.0,
        up_rad: 0.0,
        roll_rad: 0.0,
    };

    /// The three angles: right, up, roll.
    #[must_use]
    pub const fn to_array(self) -> [f64; 3] {
        [self.right_rad, self.up_rad, self.roll_rad]
    }

    /// From the three angles.
    #[must_use]
    pub const fn from_array([right_rad, up_rad, roll_rad]: [f64; 3]) -> Self {
        Self {
            right_rad,
            up_rad,
            roll_rad,
        }
    }

    /// Whether it lies along the car, to the bit.
    #[must_use]
    pub fn is_none(self) -> bool {
        self == Self::NONE
    }

    /// Where a displacement in the part's own coordinates points.
    #[must_use]
    pub fn vector(self, v: Vector) -> Vector {
        if self.is_none() {
            return v;
        }
        let (sin, cos) = math::sin_cos(self.roll_rad);
        let v = Vector::new(v.x, v.y * cos - v.z * sin, v.y * sin + v.z * cos);
        let (sin, cos) = math::sin_cos(self.up_rad);
        let v = Vector::new(v.x * cos - v.z * sin, v.y, v.x * sin + v.z * cos);
        let (sin, cos) = math::sin_cos(self.right_rad);
        Vector::new(v.x * cos - v.y * sin, v.x * sin + v.y * cos, v.z)
    }

    /// The same of a direction.
    #[must_use]
    pub fn direction(self, u: UnitVector) -> UnitVector {
        UnitVector::from_unit(self.vector(u.vector()))
    }

    /// The axes about which the part turns with each of the three angles, right-handed.
    pub(crate) fn axes(self) -> [Vector; 3] {
        let (sin, cos) = math::sin_cos(self.right_rad);
        [
            Vector::new(0.0, 0.0, 1.0),
            Vector::new(sin, -cos, 0.0),
            self.vector(Vector::new(1.0, 0.0, 0.0)),
        ]
    }

    /// The turn that takes the car's axes to these.
    fn to_axes([x, y, z]: [Vector; 3]) -> Self {
        Self {
            right_rad: math::atan2(x.y, x.x),
            up_rad: math::asin(x.z.clamp(-1.0, 1.0)),
            roll_rad: math::atan2(y.z, z.z),
        }
    }
}

/// How far a part may be turned: the least and the most of each angle.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct TurnRoom {
    /// Least angles.
    pub least: Turn,
    /// Most angles.
    pub most: Turn,
}

impl TurnRoom {
    /// Not at all: it lies along the car.
    pub const NONE: Self = Self::held(Turn::NONE);

    /// It lies like this.
    #[must_use]
    pub const fn held(turn: Turn) -> Self {
        Self {
            least: turn,
            most: turn,
        }
    }

    /// By up to so much either way of each of the three angles.
    #[must_use]
    pub fn about(middle: Turn, by: Turn) -> Self {
        let (middle, by) = (middle.to_array(), by.to_array());
        Self {
            least: Turn::from_array([0, 1, 2].map(|k| middle[k] - by[k])),
            most: Turn::from_array([0, 1, 2].map(|k| middle[k] + by[k])),
        }
    }

    /// Whether there is no choice.
    #[must_use]
    pub fn is_held(&self) -> bool {
        self.least == self.most
    }

    /// Half-way between least and most.
    #[must_use]
    pub fn middle(&self) -> Turn {
        if self.is_held() {
            return self.least;
        }
        let (least, most) = (self.least.to_array(), self.most.to_array());
        Turn::from_array([0, 1, 2].map(|k| f64::midpoint(least[k], most[k])))
    }
}

/// Where a part lies, and how.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct PartPose {
    /// Place of its origin in the car's axes, mm.
    pub origin: Point,
    /// How it is turned about there.
    pub turn: Turn,
}

impl PartPose {
    /// Along the car.
    #[must_use]
    pub const fn at(origin: Point) -> Self {
        Self {
            origin,
            turn: Turn::NONE,
        }
    }

    /// Where a place in the part's own coordinates lies.
    #[must_use]
    pub fn place(&self, local: Vector) -> Point {
        self.origin + self.turn.vector(local)
    }

    /// Place and direction of flow of an inlet.
    #[must_use]
    pub fn inlet(&self, ports: &Ports) -> (Point, UnitVector) {
        (
            self.place(ports.inlet),
            self.turn.direction(ports.inlet_direction),
        )
    }

    /// Place and direction of flow of an outlet.
    #[must_use]
    pub fn outlet(&self, ports: &Ports) -> (Point, UnitVector) {
        (
            self.place(ports.outlet),
            self.turn.direction(ports.outlet_direction),
        )
    }

    /// A bar of the body as it lies.
    #[must_use]
    pub fn bar(&self, bar: &Bar) -> TubeElement {
        TubeElement {
            line: CentreLine::Segment {
                a: self.place(bar.a),
                b: self.place(bar.b),
            },
            radius: bar.radius_mm,
        }
    }

    /// The same moved.
    #[must_use]
    pub fn moved(&self, by: &Placement) -> Self {
        let axes = [
            Vector::new(1.0, 0.0, 0.0),
            Vector::new(0.0, 1.0, 0.0),
            Vector::new(0.0, 0.0, 1.0),
        ];
        Self {
            origin: by.point(self.origin),
            turn: Turn::to_axes(axes.map(|axis| by.vector(self.turn.vector(axis)))),
        }
    }
}

#[cfg(test)]
mod tests {
    use proptest::prelude::*;

    use super::*;

    fn turn() -> impl Strategy<Value = Turn> {
        [-3.0..3.0f64, -1.4..1.4f64, -3.0..3.0f64].prop_map(Turn::from_array)
    }

    proptest! {
        /// Each angle turns about its own axis: the change of a place is the axis across its arm.
        #[test]
        fn places_move_about_the_axes(turn in turn(), v in [-300.0..300.0f64, -300.0..300.0f64, -300.0..300.0f64]) {
            let v = Vector::from_array(v);
            prop_assert!((turn.vector(v).norm() - v.norm()).abs() < 1e-9);
            for k in 0..3 {
                let beside = |by: f64| {
                    let mut angles = turn.to_array();
                    angles[k] += by;
                    Turn::from_array(angles).vector(v)
                };
                let rate = (beside(1e-5) - beside(-1e-5)) * 5e4;
                let told = turn.axes()[k].cross(turn.vector(v));
                prop_assert!((rate - told).norm() < 1e-4, "{k}: {rate:?} {told:?}");
            }
        }

        /// What is moved is turned as the motion turns it.
        #[test]
        fn a_moved_part_lies_where_the_motion_takes_it(
            turn in turn(), about in -0.4..0.4f64, axis in [-1.0..1.0f64, -1.0..1.0f64, 0.1..1.0f64],
        ) {
            let pose = PartPose { origin: Point::new(900.0, -40.0, 210.0), turn };
            let axis = Vector::from_array(axis).direction().unwrap();
            let by = Placement::turned(Point::new(700.0, 10.0, 0.0), axis, about);
            let moved = pose.moved(&by);
            for local in [Vector::new(160.0, 38.0, -9.0), Vector::new(0.0, -38.0, 20.0)] {
                prop_assert!(moved.place(local).distance(by.point(pose.place(local))) < 1e-8);
            }
        }
    }
}
