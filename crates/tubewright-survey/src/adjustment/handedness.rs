//! A car and its mirror image have the same distances and heights. Words decide.

use crate::linear::V3;
use crate::model::State;
use crate::network::{Along, EndId, Level, Network, PointId, ReadingKind, Side};

/// How the shape was told from its mirror image.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Handedness {
    /// By what the person said of left and right, front and rear, high and low (or the floor).
    Told,
    /// By readings that a mirror image would not fit, or by held coordinates.
    Measured,
    /// By nothing: left and right may be exchanged. Say of some marks which side they are on and
    /// which are at the front.
    Assumed,
}

/// What may also lie elsewhere.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Twin {
    /// A point.
    Point(PointId),
    /// An end: another place, or the same place facing another way.
    End(EndId),
}

/// A second place that the readings allow as well. A height, a slope of the face, one more tape line
/// or a word about the place decides.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct TwinPlace {
    /// Of what.
    pub what: Twin,
    /// Distance in mm of the other place from the one that was kept.
    pub apart_mm: f64,
    /// For an end, by how much the other one is turned, radians.
    pub turned_rad: f64,
    /// Sum of squares with the other place less that with the one kept, below 6.63 (1 % of χ² with
    /// one degree of freedom).
    pub worse_by: f64,
}

/// Directions of the car as far as set-ups, pairs and words tell them.
#[derive(Clone, Copy, Debug, Default)]
pub(crate) struct Directions {
    pub(crate) up: Option<V3>,
    pub(crate) right: Option<V3>,
    pub(crate) rear: Option<V3>,
}

fn mean(places: &[V3]) -> Option<V3> {
    #[expect(clippy::cast_precision_loss, reason = "a count of points is small")]
    let count = places.len() as f64;
    (!places.is_empty()).then(|| places.iter().sum::<V3>() / count)
}

pub(crate) fn directions(network: &Network, state: &State) -> Directions {
    let of = |wanted: &dyn Fn(&crate::network::PlaceHint) -> bool| {
        let places: Vec<V3> = network
            .points
            .iter()
            .zip(&state.points)
            .filter(|(spec, _)| wanted(&spec.hint))
            .map(|(_, place)| *place)
            .collect();
        mean(&places)
    };
    let between = |a: Option<V3>, b: Option<V3>| (b? - a?).try_normalize(1.0);
    let has_height = |index: usize| {
        network
            .readings
            .iter()
            .any(|r| matches!(r.kind, ReadingKind::Height { setup, .. } if setup.0 == index))
    };
    let up = (0..network.setups.len())
        .find(|&s| has_height(s) || network.setups[s].floor_is_datum)
        .map(|s| state.floors[s].plane.normal())
        .or_else(|| {
            between(
                of(&|h| h.level == Some(Level::Low)),
                of(&|h| h.level == Some(Level::High)),
            )
        });
    let mut pairs = V3::zeros();
    for pair in &network.pairs {
        pairs += state.points[pair.right.0] - state.points[pair.left.0];
    }
    let right = pairs.try_normalize(1.0).or_else(|| {
        let left = of(&|h| h.side == Some(Side::Left));
        let centre = of(&|h| h.side == Some(Side::Centre));
        let right = of(&|h| h.side == Some(Side::Right));
        between(left.or(centre), right.or(centre))
    });
    let front = of(&|h| h.along == Some(Along::Front));
    let middle = of(&|h| h.along == Some(Along::Middle));
    let rear = of(&|h| h.along == Some(Along::Rear));
    Directions {
        up,
        right,
        rear: between(front.or(middle), rear.or(middle)),
    }
}

/// +1 or −1 by what usually lies at the rear, where nothing tells.
pub(crate) fn likely_hand(network: &Network, state: &State) -> Option<f64> {
    Directions {
        rear: likely_rear(network, state),
        ..directions(network, state)
    }
    .hand()
}

/// Direction from the pairs to what usually lies behind them.
pub(crate) fn likely_rear(network: &Network, state: &State) -> Option<V3> {
    let pairs: Vec<V3> = network
        .pairs
        .iter()
        .flat_map(|pair| [pair.left, pair.right])
        .map(|id| state.points[id.0])
        .collect();
    let rear: Vec<V3> = network
        .likely_rear
        .iter()
        .map(|id| state.points[id.0])
        .collect();
    (mean(&rear)? - mean(&pairs)?).try_normalize(1.0)
}

/// Least volume of the three directions, as unit vectors, that decides: below it one of them nearly
/// lies in the plane of the others, and the words contradict or say nothing.
const LEAST_VOLUME: f64 = 0.05;

impl Directions {
    /// +1 for the car as it is, −1 for its mirror image, `None` when not all is told.
    pub(crate) fn hand(&self) -> Option<f64> {
        let volume = self.rear?.dot(&self.right?.cross(&self.up?));
        (volume.abs() > LEAST_VOLUME).then(|| volume.signum())
    }

    /// Which of two places the words about a point prefer: true for the first.
    pub(crate) fn prefers(
        &self,
        network: &Network,
        state: &State,
        point: usize,
        first: V3,
        second: V3,
    ) -> Option<bool> {
        let hint = network.points[point].hint;
        let d = first - second;
        // Less than a hand's breadth apart in the direction that the word is about decides nothing.
        let along = |direction: Option<V3>| direction.map(|u| u.dot(&d)).filter(|x| x.abs() > 50.0);
        let sideways = match hint.side {
            Some(Side::Left) => along(self.right).map(|x| x < 0.0),
            Some(Side::Right) => along(self.right).map(|x| x > 0.0),
            Some(Side::Centre) => state
                .sideways_from_pairs(network)
                .map(|(n, c)| (n.dot(&first) - c).abs() < (n.dot(&second) - c).abs()),
            None => None,
        };
        sideways
            .or_else(|| match hint.level {
                Some(Level::Low) => along(self.up).map(|x| x < 0.0),
                Some(Level::High) => along(self.up).map(|x| x > 0.0),
                None => None,
            })
            .or_else(|| match hint.along {
                Some(Along::Front) => along(self.rear).map(|x| x < 0.0),
                Some(Along::Rear) => along(self.rear).map(|x| x > 0.0),
                _ => None,
            })
    }
}
