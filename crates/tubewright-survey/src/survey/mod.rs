//! The adjusted network in the frame that the person chose.

mod ellipsoid;
mod joint;
mod pose;

pub use ellipsoid::{Ellipse, Ellipsoid};
pub use joint::{Change, Part};
pub use pose::EndPose;

use crate::adjustment::{Adjustment, Measure};
use crate::frame_choice::Datum;
use crate::linear::{M3, Matrix, V3, point, skew, vector};
use crate::model::TILT_LEVER_MM;
use crate::network::{EndId, PointId, SetupId};
use crate::statistics::K95;
use tubewright_geometry::{Frame, Point, UnitVector};

/// A point with the uncertainty of its coordinates in the chosen frame.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct SurveyedPoint {
    /// Coordinates in mm.
    pub place: Point,
    /// Covariance of x, y, z in mm².
    pub covariance: [[f64; 3]; 3],
}

/// Floor of a set-up in the chosen frame.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct SurveyedFloor {
    /// A place on the floor, below or above the origin.
    pub place: Point,
    /// Out of the floor, up.
    pub up: UnitVector,
    /// Plumb line, up. Equal to `up` where no reading tells the two apart.
    pub plumb: UnitVector,
}

/// Coordinates, poses and their joint covariance in one frame.
#[derive(Clone, Debug, PartialEq)]
pub struct Survey {
    points: Vec<V3>,
    point_fixed: Vec<bool>,
    ends: Vec<Frame>,
    end_fixed: Vec<bool>,
    floors: Vec<Option<SurveyedFloor>>,
    /// Three rows for each point, six for each end, then four for each floor: its direction up and
    /// its offset, `up · place` of any place on it.
    covariance: Matrix,
    /// Derivatives of those rows by the adjustment's unknowns.
    pub(crate) by_unknowns: Matrix,
}

fn rows3(m: M3) -> [[f64; 3]; 3] {
    core::array::from_fn(|i| core::array::from_fn(|k| m[(i, k)]))
}

impl SurveyedPoint {
    /// One σ of x, y and z in mm.
    #[must_use]
    pub fn sigmas(&self) -> [f64; 3] {
        core::array::from_fn(|k| self.covariance[k][k].max(0.0).sqrt())
    }

    /// ± of x, y and z in mm, each holding 19 times in 20.
    #[must_use]
    pub fn plus_minus(&self) -> [f64; 3] {
        self.sigmas().map(|s| K95 * s)
    }

    /// Standard error ellipsoid.
    #[must_use]
    pub fn ellipsoid(&self) -> Ellipsoid {
        Ellipsoid::of(&self.covariance)
    }

    /// Standard error ellipse in plan.
    #[must_use]
    pub fn ellipse_in_plan(&self) -> Ellipse {
        let c = &self.covariance;
        Ellipse::of([[c[0][0], c[0][1]], [c[1][0], c[1][1]]])
    }
}

impl Survey {
    pub(crate) fn of(adjustment: &Adjustment, datum: Option<&Datum>) -> Self {
        let state = &adjustment.state;
        let layout = &adjustment.layout;
        let to_car = datum.map_or_else(M3::identity, |d| M3::from_columns(&d.axes).transpose());
        let origin = datum.map_or_else(V3::zeros, |d| d.origin);
        let first_floor = 3 * state.points.len() + 6 * state.ends.len();
        let count = first_floor + 4 * state.floors.len();
        let mut by = Matrix::zeros(count, layout.width);
        for (i, place) in state.points.iter().enumerate() {
            let mut block = by.rows_mut(3 * i, 3);
            for (k, column) in layout.points[i].iter().enumerate() {
                if let Some(column) = *column {
                    let mut c = block.column_mut(column);
                    c += to_car.column(k);
                }
            }
            if let Some(d) = datum {
                // dP' = R'(dP − dO − omega × (P − O))
                block -= to_car * (&d.origin_by - skew(place - origin) * &d.turn_by);
            }
        }
        for (i, pose) in state.ends.iter().enumerate() {
            let row = 3 * state.points.len() + 6 * i;
            let first = layout.ends[i];
            let lever = layout.levers[i];
            let mut block = by.rows_mut(row, 3);
            for k in 0..3 {
                let mut c = block.column_mut(first + k);
                c += to_car.column(k);
            }
            if let Some(d) = datum {
                block -= to_car * (&d.origin_by - skew(pose.origin - origin) * &d.turn_by);
            }
            let mut turn = by.rows_mut(row + 3, 3);
            for k in 0..3 {
                let mut c = turn.column_mut(first + 3 + k);
                c += to_car.column(k) / lever;
            }
            if let Some(d) = datum {
                turn -= to_car * &d.turn_by;
            }
        }
        for (i, floor) in state.floors.iter().enumerate() {
            let normal = floor.plane.normal();
            let columns = &layout.floors[i];
            let mut up_by = Matrix::zeros(3, layout.width);
            let mut offset_by = Matrix::zeros(1, layout.width);
            if let Some(c) = columns.tilt {
                up_by.set_column(c, &(floor.plane.e1() / TILT_LEVER_MM));
                up_by.set_column(c + 1, &(floor.plane.e2() / TILT_LEVER_MM));
            }
            if let Some(c) = columns.offset {
                offset_by[(0, c)] = 1.0;
            }
            // In the car: offset' = offset − up · O, up' = R' up.
            offset_by -= origin.transpose() * &up_by;
            if let Some(d) = datum {
                offset_by -= normal.transpose() * &d.origin_by;
                up_by += skew(normal) * &d.turn_by;
            }
            by.rows_mut(first_floor + 4 * i, 3)
                .copy_from(&(to_car * up_by));
            by.rows_mut(first_floor + 4 * i + 3, 1)
                .copy_from(&offset_by);
        }
        let covariance = &by * &adjustment.knowledge.covariance * by.transpose();
        let into = |p: V3| to_car * (p - origin);
        let unit = |v: V3| UnitVector::from_unit(vector((to_car * v).normalize()));
        Self {
            points: state.points.iter().map(|p| into(*p)).collect(),
            point_fixed: (0..state.points.len())
                .map(|i| adjustment.fixes_point(PointId(i)))
                .collect(),
            ends: state
                .ends
                .iter()
                .map(|pose| {
                    Frame::from_axes(
                        point(into(pose.origin)),
                        unit(pose.axes.column(0).into_owned()),
                        unit(pose.axes.column(1).into_owned()),
                    )
                })
                .collect(),
            end_fixed: (0..state.ends.len())
                .map(|i| adjustment.fixes_end(EndId(i)))
                .collect(),
            floors: (0..state.floors.len())
                .map(|i| {
                    let floor = &state.floors[i];
                    let known = layout.floors[i].offset.is_some()
                        || adjustment.network.setups[i].floor_is_datum;
                    (known && adjustment.fixes_floor(SetupId(i))).then(|| {
                        let normal = floor.plane.normal();
                        let foot = origin + normal * (floor.plane.offset - normal.dot(&origin));
                        SurveyedFloor {
                            place: point(into(foot)),
                            up: unit(normal),
                            plumb: unit(floor.plumb().0),
                        }
                    })
                })
                .collect(),
            covariance,
            by_unknowns: by,
        }
    }

    /// A point, or `None` when the readings do not fix it.
    #[must_use]
    pub fn point(&self, id: PointId) -> Option<SurveyedPoint> {
        let place = self.points.get(id.0)?;
        self.point_fixed[id.0].then(|| SurveyedPoint {
            place: point(*place),
            covariance: rows3(self.block(3 * id.0, 3 * id.0)),
        })
    }

    /// Where a point is drawn even when the readings do not fix it.
    #[must_use]
    pub fn rough_place(&self, id: PointId) -> Option<Point> {
        self.points.get(id.0).map(|p| point(*p))
    }

    /// An end, or `None` when the readings do not fix it.
    #[must_use]
    pub fn end(&self, id: EndId) -> Option<EndPose> {
        let frame = *self.ends.get(id.0)?;
        let row = 3 * self.points.len() + 6 * id.0;
        self.end_fixed[id.0].then(|| EndPose {
            frame,
            covariance: core::array::from_fn(|i| {
                core::array::from_fn(|k| self.covariance[(row + i, row + k)])
            }),
        })
    }

    /// Floor of a set-up; `None` when no heights fix it.
    #[must_use]
    pub fn floor(&self, id: SetupId) -> Option<SurveyedFloor> {
        self.floors.get(id.0).copied().flatten()
    }

    fn block(&self, row: usize, column: usize) -> M3 {
        self.covariance.fixed_view::<3, 3>(row, column).into_owned()
    }

    /// Covariance in mm² between the coordinates of two points.
    #[must_use]
    pub fn cross_covariance(&self, p: PointId, q: PointId) -> Option<[[f64; 3]; 3]> {
        let there = |id: PointId| self.point_fixed.get(id.0) == Some(&true);
        (there(p) && there(q)).then(|| rows3(self.block(3 * p.0, 3 * q.0)))
    }

    /// Covariance between two ends' six numbers (place in mm, rotation in rad, car axes).
    #[must_use]
    pub fn end_cross_covariance(&self, a: EndId, b: EndId) -> Option<[[f64; 6]; 6]> {
        let there = |id: EndId| self.end_fixed.get(id.0) == Some(&true);
        let row = |id: EndId| 3 * self.points.len() + 6 * id.0;
        (there(a) && there(b)).then(|| {
            core::array::from_fn(|i| {
                core::array::from_fn(|k| self.covariance[(row(a) + i, row(b) + k)])
            })
        })
    }

    /// Covariance between a point (rows) and an end (columns: place in mm, rotation in rad).
    #[must_use]
    pub fn point_end_covariance(&self, p: PointId, e: EndId) -> Option<[[f64; 6]; 3]> {
        let there =
            self.point_fixed.get(p.0) == Some(&true) && self.end_fixed.get(e.0) == Some(&true);
        let row = 3 * self.points.len() + 6 * e.0;
        there.then(|| {
            core::array::from_fn(|i| {
                core::array::from_fn(|k| self.covariance[(3 * p.0 + i, row + k)])
            })
        })
    }

    /// Distance between two points with the σ of their joint covariance:
    /// `u'(Cpp + Cqq − Cpq − Cqp)u`.
    #[must_use]
    pub fn distance(&self, p: PointId, q: PointId) -> Option<Measure> {
        if !(*self.point_fixed.get(p.0)? && *self.point_fixed.get(q.0)?) {
            return None;
        }
        let d = self.points[q.0] - self.points[p.0];
        let length = d.norm();
        let u = d.try_normalize(1e-9)?;
        let (i, k) = (3 * p.0, 3 * q.0);
        let c = self.block(i, i) + self.block(k, k) - self.block(i, k) - self.block(k, i);
        Some(Measure {
            value: length,
            sigma: u.dot(&(c * u)).max(0.0).sqrt(),
        })
    }

    /// Sum of the variances of all coordinates of points that are fixed, mm².
    #[must_use]
    pub fn trace_mm2(&self) -> f64 {
        (0..self.points.len())
            .filter(|&i| self.point_fixed[i])
            .map(|i| self.block(3 * i, 3 * i).trace())
            .sum()
    }
}
