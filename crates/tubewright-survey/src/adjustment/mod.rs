//! The free adjustment: one network, solved, with everything that does not depend on a frame.

mod handedness;
mod loose;
mod report;
mod solve;

pub use handedness::{Handedness, Twin, TwinPlace};
pub use loose::{Freedom, Loose};
pub use report::{GlobalTest, Measure, ReadingResult, Undetermined};
pub(crate) use solve::readjust;
pub use solve::{adjust, adjust_near};

pub(crate) use handedness::directions;

use crate::linear::Matrix;
use crate::model::{Layout, Rows, State, linearise};
use crate::network::{EndId, Network, NetworkError, PointId, SetupId};
use crate::solve::network::{Knowledge, knowledge};

/// Why there is no adjustment.
#[derive(Clone, Debug, PartialEq, thiserror::Error)]
#[non_exhaustive]
pub enum AdjustError {
    /// The network is refused at the door.
    #[error(transparent)]
    Network(#[from] NetworkError),
    /// The number of start values does not fit the network.
    #[error("{given} start values for {needed} points: give one (or none) for each point")]
    StartCount {
        /// How many were given.
        given: usize,
        /// How many points there are.
        needed: usize,
    },
    /// No start led to finite numbers.
    #[error(
        "no shape was found that these readings could belong to: check units, and that the tape \
         lines connect the points with each other"
    )]
    NoShape,
}

/// A network and the shape that agrees best with its readings. The places are in a frame of their
/// own; [`Adjustment::seen_from`] puts them into the car's.
#[derive(Clone, Debug)]
pub struct Adjustment {
    pub(crate) network: Network,
    pub(crate) layout: Layout,
    pub(crate) state: State,
    pub(crate) rows: Rows,
    pub(crate) knowledge: Knowledge,
    /// a Q a' of each row.
    pub(crate) leverage: Vec<f64>,
    pub(crate) cost: f64,
    pub(crate) handedness: Handedness,
    pub(crate) twins: Vec<TwinPlace>,
    pub(crate) steps: usize,
    pub(crate) settled: bool,
}

/// Share of a column in unfixed directions above which it counts as undetermined.
const UNFIXED_SHARE: f64 = 1e-6;

/// `a Q a'` for a sparse row.
pub(crate) fn quadratic(row: &[(usize, f64)], q: &Matrix) -> f64 {
    bilinear(row, q, row)
}

/// `a Q b'` for sparse rows.
pub(crate) fn bilinear(a: &[(usize, f64)], q: &Matrix, b: &[(usize, f64)]) -> f64 {
    let mut sum = 0.0;
    for &(i, v) in a {
        for &(k, w) in b {
            sum += v * q[(i, k)] * w;
        }
    }
    sum
}

impl Adjustment {
    fn at(
        network: Network,
        layout: Layout,
        rest: crate::solve::least_squares::Rest<State>,
        handedness: Handedness,
    ) -> Self {
        let rows = linearise(&network, &layout, &rest.state);
        let knowledge = knowledge(&network, &layout, &rest.state, &rows);
        let leverage = (0..rows.len())
            .map(|i| quadratic(rows.row(i), &knowledge.covariance))
            .collect();
        Self {
            cost: rows.cost(),
            network,
            layout,
            state: rest.state,
            rows,
            knowledge,
            leverage,
            handedness,
            twins: Vec::new(),
            steps: rest.steps,
            settled: rest.settled,
        }
    }

    /// A network without any reading in use: nothing is fixed, nothing doubtful.
    ///
    /// # Errors
    /// [`NetworkError`] when it is refused for something else.
    pub fn unmeasured(network: &Network) -> Result<Self, NetworkError> {
        match network.checked() {
            Ok(()) | Err(NetworkError::Empty) => {}
            Err(error) => return Err(error),
        }
        let layout = Layout::of(network);
        let rest = crate::solve::least_squares::Rest {
            state: State::nowhere(network),
            cost: 0.0,
            steps: 0,
            settled: true,
        };
        Ok(Self::at(network.clone(), layout, rest, Handedness::Assumed))
    }

    /// The network that was adjusted.
    #[must_use]
    pub fn network(&self) -> &Network {
        &self.network
    }

    /// How left and right were told apart.
    #[must_use]
    pub fn handedness(&self) -> Handedness {
        self.handedness
    }

    /// Points and ends that fit nearly as well at a second place.
    #[must_use]
    pub fn twins(&self) -> &[TwinPlace] {
        &self.twins
    }

    /// Steps of the solver from the start that was kept.
    #[must_use]
    pub fn steps(&self) -> usize {
        self.steps
    }

    /// False when the solver ran out of effort: the numbers are then the best found, not the best.
    #[must_use]
    pub fn is_settled(&self) -> bool {
        self.settled
    }

    /// Largest share of some columns that no reading fixes.
    fn unfixed(&self, columns: impl IntoIterator<Item = usize>) -> f64 {
        columns
            .into_iter()
            .map(|c| self.knowledge.unfixed[c])
            .fold(0.0, f64::max)
    }

    /// True when the readings fix this point against the others.
    #[must_use]
    pub fn fixes_point(&self, point: PointId) -> bool {
        self.layout
            .points
            .get(point.0)
            .is_some_and(|c| self.unfixed(c.iter().flatten().copied()) < UNFIXED_SHARE)
    }

    /// True when the readings fix place and direction of this end.
    #[must_use]
    pub fn fixes_end(&self, end: EndId) -> bool {
        self.layout
            .ends
            .get(end.0)
            .is_some_and(|&c| self.unfixed(c..c + 6) < UNFIXED_SHARE)
    }

    /// True when the readings fix the floor of this set-up: heights of three marks do.
    #[must_use]
    pub fn fixes_floor(&self, setup: SetupId) -> bool {
        let datum = self
            .network
            .setups
            .get(setup.0)
            .is_some_and(|s| s.floor_is_datum);
        datum
            || self.layout.floors.get(setup.0).is_some_and(|f| {
                f.tilt
                    .is_some_and(|c| self.unfixed(c..c + 2) < UNFIXED_SHARE)
            })
    }

    /// True when an equation lies wholly in what the readings fix.
    pub(crate) fn fixes_row(&self, row: &[(usize, f64)]) -> bool {
        let loose = &self.knowledge.loose;
        let size: f64 = row.iter().map(|(_, v)| v * v).sum::<f64>().sqrt();
        (0..loose.ncols()).all(|k| {
            let along: f64 = row.iter().map(|&(c, v)| v * loose[(c, k)]).sum();
            along.abs() <= 1e-5 * size
        })
    }
}
