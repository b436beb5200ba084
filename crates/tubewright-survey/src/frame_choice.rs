//! The choice of frame: origin mark, centre line, level. Made after the adjustment; it changes
//! coordinates and their ± only, never a distance or the ± of one.

use crate::adjustment::{Adjustment, directions};
use crate::linear::V3;
use crate::model::TILT_LEVER_MM;
use crate::network::{Pair, PointId, SetupId};
use crate::survey::Survey;

/// What lies level: z of the car is square to it.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum LevelChoice {
    /// The floor of a set-up, as its heights give it.
    Floor(SetupId),
    /// Three marks are at one height. Up is where set-ups or words say; without them, right-handed
    /// through the three.
    Marks([PointId; 3]),
}

/// What runs straight rearward, seen from above.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum CentreLineChoice {
    /// From the middle of the front pair to the middle of the rear pair.
    Pairs {
        /// Front pair.
        front: Pair,
        /// Rear pair.
        rear: Pair,
    },
    /// Square to the line from the left to the right mark of one pair.
    SquareTo(Pair),
    /// From one mark to another.
    Marks {
        /// Front one.
        front: PointId,
        /// Rear one.
        rear: PointId,
    },
}

/// Where coordinates are counted from and along what.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum FrameChoice {
    /// The adjustment's own frame: that of held coordinates or of start values; otherwise without
    /// meaning.
    AsAdjusted,
    /// A frame of the car.
    Car {
        /// x and z are counted from this mark; y from the car's middle.
        origin: PointId,
        /// The x axis, rearwards, and the middle of the car: y is zero halfway between the marks of
        /// the front pair, or at the front mark.
        centre_line: CentreLineChoice,
        /// The z axis, up.
        level: LevelChoice,
    },
}

/// Why a frame cannot be had.
#[derive(Clone, Debug, PartialEq, thiserror::Error)]
#[non_exhaustive]
pub enum FrameError {
    /// The readings do not fix a mark of the frame.
    #[error("the frame needs \"{name}\", which the readings do not fix: tie it to more marks")]
    UndeterminedPoint {
        /// Its name.
        name: String,
    },
    /// The readings do not fix the floor.
    #[error(
        "the floor of set-up \"{name}\" is not fixed: give heights of at least three marks in it"
    )]
    UndeterminedFloor {
        /// Its name.
        name: String,
    },
    /// A number that is not in the network.
    #[error("the frame names a mark or set-up that is not there")]
    NotThere,
    /// The marks chosen do not give a direction.
    #[error("the {what} has no direction: its marks are less than 1 mm apart or stand upright")]
    NoDirection {
        /// Centre line or level.
        what: &'static str,
    },
}

/// Linear form in the unknowns with three components.
type Form = nalgebra::Matrix3xX<f64>;

/// Axes and origin in the adjustment's own frame, with their derivatives by the unknowns.
#[derive(Clone, Debug)]
pub(crate) struct Datum {
    pub(crate) origin: V3,
    /// x, y, z of the car.
    pub(crate) axes: [V3; 3],
    /// 3 × width.
    pub(crate) origin_by: Form,
    /// Rotation of the axes, 3 × width.
    pub(crate) turn_by: Form,
}

impl Adjustment {
    /// The adjusted network in a frame of the car: coordinates, poses and joint covariance.
    ///
    /// # Errors
    /// [`FrameError`] when the readings do not fix what the frame is made of.
    pub fn seen_from(&self, choice: &FrameChoice) -> Result<Survey, FrameError> {
        let datum = match *choice {
            FrameChoice::AsAdjusted => None,
            FrameChoice::Car {
                origin,
                centre_line,
                level,
            } => Some(self.datum(origin, centre_line, level)?),
        };
        Ok(Survey::of(self, datum.as_ref()))
    }

    fn mark(&self, point: PointId) -> Result<V3, FrameError> {
        let spec = self
            .network
            .points
            .get(point.0)
            .ok_or(FrameError::NotThere)?;
        if !self.fixes_point(point) {
            return Err(FrameError::UndeterminedPoint {
                name: spec.name.clone(),
            });
        }
        Ok(self.state.points[point.0])
    }

    /// Adds `factor · dP` to a form.
    fn add_point(&self, form: &mut Form, point: PointId, factor: f64) {
        for (k, column) in self.layout.points[point.0].iter().enumerate() {
            if let Some(column) = *column {
                form[(k, column)] += factor;
            }
        }
    }

    fn datum(
        &self,
        origin: PointId,
        centre_line: CentreLineChoice,
        level: LevelChoice,
    ) -> Result<Datum, FrameError> {
        let width = self.layout.width;
        let (z, z_by) = self.level(level)?;
        // The line and whether it is the x axis (else the y axis).
        let mut line_by = Form::zeros(width);
        let (middle_marks, line, is_x) = match centre_line {
            CentreLineChoice::Pairs { front, rear } => {
                let mut line = V3::zeros();
                for (point, factor) in [
                    (rear.left, 0.5),
                    (rear.right, 0.5),
                    (front.left, -0.5),
                    (front.right, -0.5),
                ] {
                    line += self.mark(point)? * factor;
                    self.add_point(&mut line_by, point, factor);
                }
                ([front.left, front.right], line, true)
            }
            CentreLineChoice::SquareTo(pair) => {
                let line = self.mark(pair.right)? - self.mark(pair.left)?;
                self.add_point(&mut line_by, pair.right, 1.0);
                self.add_point(&mut line_by, pair.left, -1.0);
                ([pair.left, pair.right], line, false)
            }
            CentreLineChoice::Marks { front, rear } => {
                let line = self.mark(rear)? - self.mark(front)?;
                self.add_point(&mut line_by, rear, 1.0);
                self.add_point(&mut line_by, front, -1.0);
                ([front, front], line, true)
            }
        };
        let rise = z.dot(&line);
        let plan = line - z * rise;
        let run = plan.norm();
        if run < 1.0 {
            return Err(FrameError::NoDirection {
                what: "centre line",
            });
        }
        let first = plan / run;
        let (x, y) = if is_x {
            (first, z.cross(&first))
        } else {
            (first.cross(&z), first)
        };
        // Turn about z: motion of the line in plan, square to itself, less what the tilt of z does.
        let square = z.cross(&first);
        let spin = (square.transpose() * &line_by - square.transpose() * &z_by * rise) / run;
        // omega = -(dz·y) x + (dz·x) y + spin z
        let turn_by = -x * (y.transpose() * &z_by) + y * (x.transpose() * &z_by) + z * spin;
        let mut mark_by = Form::zeros(width);
        let mark = self.mark(origin)?;
        self.add_point(&mut mark_by, origin, 1.0);
        // The origin mark moved square to the car onto its middle plane: O = M − y (y · (M − C)).
        let mut apart = mark;
        let mut apart_by = mark_by.clone();
        for point in middle_marks {
            apart -= self.mark(point)? * 0.5;
            self.add_point(&mut apart_by, point, -0.5);
        }
        let y_by = -crate::linear::skew(y) * &turn_by;
        let aside = y.dot(&apart);
        let aside_by = apart.transpose() * &y_by + y.transpose() * &apart_by;
        let origin_by = mark_by - y_by * aside - y * aside_by;
        Ok(Datum {
            origin: mark - y * aside,
            axes: [x, y, z],
            origin_by,
            turn_by,
        })
    }

    fn level(&self, level: LevelChoice) -> Result<(V3, Form), FrameError> {
        let width = self.layout.width;
        let mut by = Form::zeros(width);
        match level {
            LevelChoice::Floor(setup) => {
                let spec = self
                    .network
                    .setups
                    .get(setup.0)
                    .ok_or(FrameError::NotThere)?;
                if !self.fixes_floor(setup) {
                    return Err(FrameError::UndeterminedFloor {
                        name: spec.name.clone(),
                    });
                }
                let plane = &self.state.floors[setup.0].plane;
                if let Some(c) = self.layout.floors[setup.0].tilt {
                    by.set_column(c, &(plane.e1() / TILT_LEVER_MM));
                    by.set_column(c + 1, &(plane.e2() / TILT_LEVER_MM));
                }
                Ok((plane.normal(), by))
            }
            LevelChoice::Marks([a, b, c]) => {
                let (pa, pb, pc) = (self.mark(a)?, self.mark(b)?, self.mark(c)?);
                let (u, v) = (pb - pa, pc - pa);
                let cross = u.cross(&v);
                let size = cross.norm();
                if size < 1.0 {
                    return Err(FrameError::NoDirection { what: "level" });
                }
                let up = directions(&self.network, &self.state).up;
                let sign = if up.is_some_and(|up| up.dot(&cross) < 0.0) {
                    -1.0
                } else {
                    1.0
                };
                let n = cross * (sign / size);
                let mut u_by = Form::zeros(width);
                let mut v_by = Form::zeros(width);
                self.add_point(&mut u_by, b, 1.0);
                self.add_point(&mut u_by, a, -1.0);
                self.add_point(&mut v_by, c, 1.0);
                self.add_point(&mut v_by, a, -1.0);
                // d(u × v) = u × dv − v × du, its part along n removed.
                let cross_by = crate::linear::skew(u) * &v_by - crate::linear::skew(v) * &u_by;
                let along = n * (n.transpose() * &cross_by);
                by.copy_from(&((cross_by - along) * (sign / size)));
                Ok((n, by))
            }
        }
    }
}
