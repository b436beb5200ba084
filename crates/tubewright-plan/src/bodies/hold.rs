//! What a body hangs on, and how the gap to it changes when that moves.

use tubewright_build::model::{BodyKind, PlaceAt};
use tubewright_geometry::distance::point_to_solid;
use tubewright_geometry::{Point, UnitVector, Vector};
use tubewright_survey::Change;
use tubewright_survey::fit::carried_by_marks;

use super::PlacedBody;
use super::shape::solid_on_trial;
use crate::places::{Joint, PlacedPoint};

/// A place that a body hangs on.
#[derive(Clone, Debug, PartialEq)]
pub struct Anchor {
    /// Which one.
    pub at: AnchorAt,
    /// Where it is, with its ±.
    pub placed: PlacedPoint,
}

/// What an anchor is.
#[derive(Clone, Debug, PartialEq)]
pub enum AnchorAt {
    /// A mark, a point or the middle of an end.
    Place(PlaceAt),
    /// The floor of a set-up.
    Floor(String),
}

/// Step in mm by which places are moved to see how a gap changes: the distances are exact to far less,
/// and a body bends over far more.
const TRIAL_MM: f64 = 0.01;

impl Anchor {
    pub(crate) fn at(place: &PlaceAt, placed: PlacedPoint) -> Self {
        Self {
            at: AnchorAt::Place(place.clone()),
            placed,
        }
    }

    pub(crate) fn on_floor(setup: &str, placed: PlacedPoint) -> Self {
        Self {
            at: AnchorAt::Floor(setup.to_owned()),
            placed,
        }
    }
}

impl PlacedBody {
    /// How the gap from `from`, a place outside the body at rest, changes when the places move that the
    /// body hangs on; `nearest` is the place of the body nearest to it. `None` when that cannot be
    /// said: `from` lies inside.
    ///
    /// The body is built again with each of its places moved a little, so that turning and growing
    /// count as they do: the far end of a rail beyond its two points moves more than either.
    #[must_use]
    pub fn gap_change(&self, from: Point, nearest: Point, joint: &Joint) -> Option<Change> {
        let toward = (nearest - from).direction()?.vector();
        let mut change = Change::default();
        match &self.kind {
            BodyKind::Ground { setup } => {
                // The floor that rises comes nearer, wherever it is seen from.
                change.add(&joint.floor_change(setup, nearest)?, -1.0);
            }
            BodyKind::Scan { fit_scale, .. } => {
                let marks: Vec<Point> = self.anchor_points();
                let shares = carried_by_marks(&marks, *fit_scale, nearest, toward)?;
                for (anchor, share) in self.anchors.iter().zip(shares) {
                    change.add(&anchor.change(joint, share)?, 1.0);
                }
            }
            kind => {
                let points = self.anchor_points();
                for (index, anchor) in self.anchors.iter().enumerate() {
                    let by = gap_by_place(kind, &points, index, from)?;
                    change.add(&anchor.change(joint, by)?, 1.0);
                }
            }
        }
        Some(change)
    }

    /// Standard deviation in mm along a direction of a place of the body that no reading of its places
    /// shows: how well a scan fits its marks.
    #[must_use]
    pub fn own_sigma_mm(&self, place: Point, along: Vector) -> f64 {
        self.scan
            .as_ref()
            .map_or(0.0, |scan| scan.placement.sigma_at(place, along))
    }

    fn anchor_points(&self) -> Vec<Point> {
        self.anchors
            .iter()
            .map(|anchor| anchor.placed.point_in_car)
            .collect()
    }
}

impl Anchor {
    fn change(&self, joint: &Joint, along: Vector) -> Option<Change> {
        match &self.at {
            AnchorAt::Place(place) => joint.place_change(place, along),
            AnchorAt::Floor(_) => None,
        }
    }
}

/// Derivative of the distance from `from` by the place of one anchor.
fn gap_by_place(kind: &BodyKind, points: &[Point], index: usize, from: Point) -> Option<Vector> {
    let mut slopes = [0.0; 3];
    for (slope, axis) in slopes
        .iter_mut()
        .zip([UnitVector::X, UnitVector::Y, UnitVector::Z])
    {
        let gap = |step: f64| -> Option<f64> {
            let mut moved = points.to_vec();
            *moved.get_mut(index)? += axis * step;
            let gap = point_to_solid(from, &solid_on_trial(kind, &moved)?);
            (gap > 0.0).then_some(gap)
        };
        *slope = (gap(TRIAL_MM)? - gap(-TRIAL_MM)?) / (2.0 * TRIAL_MM);
    }
    Some(Vector::new(slopes[0], slopes[1], slopes[2]))
}
