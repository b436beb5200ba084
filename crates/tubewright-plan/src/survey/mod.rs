//! The first stage: readings adjusted together, places in the car's axes with their ±.

mod network;
mod places;

pub use network::{NINETEEN_IN_TWENTY, NamedNetwork, carrier_of, network_of};
pub use places::FrameProblem;

use tubewright_build::model::Build;
use tubewright_build::resolved::ResolvedAccuracy;
use tubewright_survey::{AdjustError, Adjustment, Doubtful, adjust, find_doubtful};

use crate::places::Places;

/// The adjusted readings of a build.
#[derive(Clone, Debug)]
pub struct Measured {
    /// The network by the build's names.
    pub named: NamedNetwork,
    /// All readings that are in use adjusted together, doubtful ones among them.
    pub with_all: Adjustment,
    /// The adjustment that places come from: doubtful readings are set aside, as if they had not been
    /// taken, until the person corrects or drops them.
    pub adjustment: Adjustment,
    /// The doubtful readings, each with the slip that explains it.
    pub doubtful: Vec<Doubtful>,
    /// Places in the car's axes.
    pub places: Places,
    /// Why there are no places in the car's axes, when there are none.
    pub frame_problem: Option<FrameProblem>,
    /// The accuracy that was used, with what was filled in.
    pub accuracy: ResolvedAccuracy,
}

/// Adjusts the readings of a build.
///
/// # Errors
/// [`AdjustError`] when the network cannot be worked with at all; a bad fit is no error.
pub fn measure(build: &Build) -> Result<Measured, AdjustError> {
    let accuracy = build.accuracy.resolved();
    let named = network_of(build, &accuracy);
    let with_all = adjust(&named.network)?;
    let snooping = find_doubtful(&with_all);
    let adjustment = snooping.without_them;
    let (places, frame_problem) = match places::places_in_car(build, &named, &adjustment) {
        Ok(places) => (places, None),
        Err(problem) => (Places::default(), Some(problem)),
    };
    Ok(Measured {
        named,
        with_all,
        adjustment,
        doubtful: snooping.doubtful,
        places,
        frame_problem,
        accuracy,
    })
}
