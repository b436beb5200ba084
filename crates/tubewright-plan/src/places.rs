//! Where everything is, with its ±: what the survey found, by the build's names.

use std::collections::BTreeMap;
use std::sync::Arc as Shared;
use tubewright_build::model::{EndPlace, PlaceAt};
use tubewright_build::resolved::ResolvedAccuracy;
use tubewright_geometry::{Frame, Point, UnitVector, Vector};
use tubewright_survey::{Change, EndId, PointId, SetupId, Survey};

/// Covariance of a place in mm², along the car's axes.
pub type Covariance3 = [[f64; 3]; 3];

/// Covariance of a pose: place in mm, then a small turn about the car's axes in radians.
pub type Covariance6 = [[f64; 6]; 6];

/// A mark or point in the car's axes.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct PlacedPoint {
    /// Its place.
    pub point_in_car: Point,
    /// Its covariance, mm².
    pub covariance: Covariance3,
}

/// An end in the car's axes.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct PlacedEnd {
    /// Centre, travel downstream, twelve o'clock.
    pub frame_in_car: Frame,
    /// Covariance of place (mm) and turn (rad).
    pub covariance: Covariance6,
}

/// The floor of a set-up in the car's axes.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct PlacedFloor {
    /// A place on it, below the origin mark.
    pub point_in_car: Point,
    /// Out of the floor, into the car.
    pub up: UnitVector,
    /// Up along the plumb line; the same where no reading tells the two apart.
    pub plumb: UnitVector,
    /// Standard deviation of its height under the car's middle, mm.
    pub sigma_mm: f64,
    /// True when the car stood on its wheels.
    pub is_on_wheels: bool,
}

/// Everything that the survey placed.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Places {
    /// Marks and points by name.
    pub points: BTreeMap<String, PlacedPoint>,
    /// Ends by name.
    pub ends: BTreeMap<String, PlacedEnd>,
    /// Floors by the name of their set-up.
    pub floors: BTreeMap<String, PlacedFloor>,
    /// How the errors of all these hang together.
    pub joint: Joint,
}

/// The one adjustment that all places come from: what two places have in common cancels between
/// them, which their own ± does not show.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Joint {
    survey: Option<Shared<Survey>>,
    points: BTreeMap<String, PointId>,
    ends: BTreeMap<String, EndHold>,
    floors: BTreeMap<String, SetupId>,
}

/// What an end's place and direction hang on.
#[derive(Clone, Debug, PartialEq)]
enum EndHold {
    /// It was measured as a pose.
    Measured(EndId),
    /// It lies on a point, its direction is chosen.
    OnPoint(PointId),
    /// It lies at the middle of another end, its direction is chosen.
    OnEnd(EndId),
}

impl Joint {
    pub(crate) fn of(survey: Survey) -> Self {
        Self {
            survey: Some(Shared::new(survey)),
            ..Self::default()
        }
    }

    pub(crate) fn add_point(&mut self, name: &str, id: PointId) {
        self.points.insert(name.to_owned(), id);
    }

    pub(crate) fn add_end(&mut self, name: &str, id: EndId) {
        self.ends.insert(name.to_owned(), EndHold::Measured(id));
    }

    /// An end whose direction is chosen and that lies at `on`.
    pub(crate) fn add_chosen_end(&mut self, name: &str, on: &PlaceAt) {
        let hold = match on {
            PlaceAt::Mark(point) | PlaceAt::Point(point) => self
                .points
                .get(point.as_str())
                .copied()
                .map(EndHold::OnPoint),
            PlaceAt::End { end, .. } => self.ends.get(end.as_str()).map(|hold| match hold {
                EndHold::Measured(id) | EndHold::OnEnd(id) => EndHold::OnEnd(*id),
                EndHold::OnPoint(id) => EndHold::OnPoint(*id),
            }),
        };
        if let Some(hold) = hold {
            self.ends.insert(name.to_owned(), hold);
        }
    }

    pub(crate) fn add_floor(&mut self, name: &str, id: SetupId) {
        self.floors.insert(name.to_owned(), id);
    }

    /// The adjusted network in the car's axes; `None` before the axes can be had.
    #[must_use]
    pub fn survey(&self) -> Option<&Survey> {
        self.survey.as_deref()
    }

    /// Covariance of two small changes, mm².
    #[must_use]
    pub fn covariance_mm2(&self, a: &Change, b: &Change) -> Option<f64> {
        self.survey.as_ref()?.covariance_of(a, b)
    }

    /// Standard deviation of a small change, mm.
    #[must_use]
    pub fn sigma_mm(&self, change: &Change) -> Option<f64> {
        self.survey.as_ref()?.sigma_of(change)
    }

    /// How far a mark or point moves along a direction.
    #[must_use]
    pub fn point_change(&self, name: &str, along: Vector) -> Option<Change> {
        Some(Change::of_point(*self.points.get(name)?, along))
    }

    /// How far the floor of a set-up rises under a place of the car.
    #[must_use]
    pub fn floor_change(&self, setup: &str, under: Point) -> Option<Change> {
        Some(Change::of_floor(*self.floors.get(setup)?, under))
    }

    /// How far a place that moves rigidly with the end at `frame` moves along a direction: the end's
    /// direction carries further the longer the lever arm. An end whose direction is chosen only
    /// shifts.
    #[must_use]
    pub fn end_change(
        &self,
        end: &str,
        frame: &Frame,
        place: Point,
        along: Vector,
    ) -> Option<Change> {
        Some(match *self.ends.get(end)? {
            EndHold::Measured(id) => Change::carried_by_end(id, frame, place, along),
            EndHold::OnEnd(id) => Change::carried_by_end(id, frame, frame.origin, along),
            EndHold::OnPoint(id) => Change::of_point(id, along),
        })
    }

    /// How far a mark, a point or the middle of an end moves along a direction.
    #[must_use]
    pub fn place_change(&self, place: &PlaceAt, along: Vector) -> Option<Change> {
        match place {
            PlaceAt::Mark(name) | PlaceAt::Point(name) => self.point_change(name, along),
            PlaceAt::End { end, .. } => {
                // Without a lever arm the frame does not matter.
                let frame = Frame::upright(Point::ORIGIN, UnitVector::X);
                self.end_change(end, &frame, frame.origin, along)
            }
        }
    }
}

impl PlacedPoint {
    /// Standard deviation along a direction, mm.
    #[must_use]
    pub fn sigma_along(&self, direction: Vector) -> f64 {
        quadratic_form(&self.covariance, direction.to_array())
            .max(0.0)
            .sqrt()
    }

    /// The largest standard deviation in any direction is at most this, mm.
    #[must_use]
    pub fn sigma_bound(&self) -> f64 {
        sigma_bound(&self.covariance)
    }
}

impl PlacedEnd {
    /// A place that is built and not measured: as near to its plan as check distances hold a joint.
    #[must_use]
    pub fn as_built(frame_in_car: Frame, accuracy: &ResolvedAccuracy) -> Self {
        let sigma_mm = joint_sigma_mm(accuracy);
        let mut covariance = [[0.0; 6]; 6];
        for (k, row) in covariance.iter_mut().enumerate().take(3) {
            if let Some(slot) = row.get_mut(k) {
                *slot = sigma_mm * sigma_mm;
            }
        }
        Self {
            frame_in_car,
            covariance,
        }
    }

    /// Covariance of a place that moves rigidly with the end, mm²: the end's direction carries
    /// further the longer the lever arm.
    #[must_use]
    pub fn covariance_at(&self, point_in_car: Point) -> Covariance3 {
        let arm = point_in_car - self.frame_in_car.origin;
        // A small turn w moves the place by w × arm; its rows by component of w:
        let lever = [
            [0.0, arm.z, -arm.y],
            [-arm.z, 0.0, arm.x],
            [arm.y, -arm.x, 0.0],
        ];
        let jacobian: [[f64; 6]; 3] = core::array::from_fn(|i| {
            core::array::from_fn(|j| match j {
                0..=2 => f64::from(u8::from(i == j)),
                _ => lever[i][j - 3],
            })
        });
        core::array::from_fn(|i| {
            core::array::from_fn(|j| {
                let mut sum = 0.0;
                for (a, row) in self.covariance.iter().enumerate() {
                    for (b, value) in row.iter().enumerate() {
                        sum += jacobian[i][a] * value * jacobian[j][b];
                    }
                }
                sum
            })
        })
    }

    /// The largest standard deviation of the travel direction is at most this, radians.
    #[must_use]
    pub fn direction_sigma_rad(&self) -> f64 {
        let twelve = self.frame_in_car.twelve().to_array();
        let three = self.frame_in_car.three().to_array();
        let turn: Covariance3 =
            core::array::from_fn(|i| core::array::from_fn(|j| self.covariance[i + 3][j + 3]));
        let about_twelve = quadratic_form(&turn, twelve).max(0.0);
        let about_three = quadratic_form(&turn, three).max(0.0);
        (about_twelve + about_three).sqrt()
    }
}

/// A bound of the largest standard deviation in any direction, mm: the root of the Frobenius norm,
/// which is never less than the largest eigenvalue.
#[must_use]
pub fn sigma_bound(covariance: &Covariance3) -> f64 {
    covariance
        .iter()
        .flatten()
        .map(|value| value * value)
        .sum::<f64>()
        .sqrt()
        .sqrt()
}

/// Standard deviation in any direction of a joint that was set by check distances while tacking, mm:
/// twice that of one tape, which three or more well-spread tapes keep (common practice, no source).
#[must_use]
pub fn joint_sigma_mm(accuracy: &ResolvedAccuracy) -> f64 {
    2.0 * accuracy.tape.mm() / crate::survey::NINETEEN_IN_TWENTY
}

/// Covariance of the centre line of a run at a place `share` of the way from its start, mm²: each
/// end's place and direction carried there by its lever arm and weighted by the distance to the other
/// end, for the run is held at both.
#[must_use]
pub fn covariance_between(
    start: &PlacedEnd,
    end: &PlacedEnd,
    place: Point,
    share: f64,
) -> Covariance3 {
    let from_start = start.covariance_at(place);
    let from_end = end.covariance_at(place);
    let (a, b) = ((1.0 - share).powi(2), share.powi(2));
    core::array::from_fn(|i| core::array::from_fn(|j| a * from_start[i][j] + b * from_end[i][j]))
}

/// `vᵀ C v`.
pub(crate) fn quadratic_form(covariance: &Covariance3, v: [f64; 3]) -> f64 {
    let mut sum = 0.0;
    for (row, a) in covariance.iter().zip(v) {
        for (value, b) in row.iter().zip(v) {
            sum += a * value * b;
        }
    }
    sum
}

impl Places {
    /// A mark, a point, or the centre, rim or bolt hole of an end; bolt holes and rims need the
    /// end's sizes and are not resolved here.
    #[must_use]
    pub fn place(&self, place: &PlaceAt) -> Option<PlacedPoint> {
        match place {
            PlaceAt::Mark(name) | PlaceAt::Point(name) => self.points.get(name.as_str()).copied(),
            PlaceAt::End {
                end,
                at: EndPlace::Centre,
            } => {
                let end = self.ends.get(end.as_str())?;
                let point_in_car = end.frame_in_car.origin;
                Some(PlacedPoint {
                    point_in_car,
                    covariance: end.covariance_at(point_in_car),
                })
            }
            PlaceAt::End { .. } => None,
        }
    }
}
