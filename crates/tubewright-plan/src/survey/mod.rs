//! The first stage: readings adjusted together, places in the car's axes with their ±.

mod guide;
mod network;
mod places;

pub use guide::{
    Check, Gain, Guide, Lack, SetupTrouble, Suggestion, Surer, Twofold, guide, known_distances,
};
pub use network::{NINETEEN_IN_TWENTY, NamedNetwork, carrier_of, network_of};
pub use places::FrameProblem;

use tubewright_build::model::Build;
use tubewright_build::resolved::ResolvedAccuracy;
use tubewright_survey::{
    AdjustError, Adjustment, Doubtful, NetworkError, StartValues, TapeScale, adjust, adjust_near,
    find_doubtful,
};

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

impl Measured {
    /// The scale of the tape that most readings were taken with.
    #[must_use]
    pub fn scale(&self) -> TapeScale {
        let readings = &self.named.network.readings;
        let inches = readings
            .iter()
            .filter(|reading| reading.scale == TapeScale::Inches)
            .count();
        if 2 * inches > readings.len() {
            TapeScale::Inches
        } else {
            TapeScale::Millimetres
        }
    }
}

/// Adjusts the readings of a build.
///
/// # Errors
/// [`AdjustError`] when the network cannot be worked with at all; a bad fit is no error.
pub fn measure(build: &Build) -> Result<Measured, AdjustError> {
    let accuracy = build.accuracy.resolved();
    let named = network_of(build, &accuracy);
    let with_all = match adjust(&named.network) {
        // A car that nothing was read on yet opens like any other.
        Err(AdjustError::Network(NetworkError::Empty)) => Adjustment::unmeasured(&named.network)?,
        other => other?,
    };
    Ok(measured(build, accuracy, named, with_all))
}

/// Adjusts the readings of a build that was measured before, after some of them changed: from the shape
/// found then, which saves looking for it. Where the readings do not agree in that shape, or something
/// is new, it is looked for afresh. Second places of a point are not looked for again.
///
/// # Errors
/// As [`measure`].
pub fn measure_again(build: &Build, before: &Measured) -> Result<Measured, AdjustError> {
    let accuracy = build.accuracy.resolved();
    let named = network_of(build, &accuracy);
    let start = StartValues {
        points: named
            .network
            .points
            .iter()
            .map(|point| {
                let found = before.places.points.get(point.name.as_str())?;
                Some(found.point_in_car)
            })
            .collect(),
        ends: named
            .network
            .ends
            .iter()
            .map(|end| Some(before.places.ends.get(end.name.as_str())?.frame_in_car))
            .collect(),
    };
    if start.points.iter().any(Option::is_none) {
        return measure(build);
    }
    let with_all = adjust_near(&named.network, &start)?;
    let found = measured(build, accuracy, named, with_all);
    if found.adjustment.global_test().is_too_high() {
        return measure(build);
    }
    Ok(found)
}

fn measured(
    build: &Build,
    accuracy: ResolvedAccuracy,
    named: NamedNetwork,
    with_all: Adjustment,
) -> Measured {
    let snooping = find_doubtful(&with_all);
    let adjustment = snooping.without_them;
    let (places, frame_problem) = match places::places_in_car(build, &named, &adjustment) {
        Ok(places) => (places, None),
        Err(problem) => (Places::default(), Some(problem)),
    };
    Measured {
        named,
        with_all,
        adjustment,
        doubtful: snooping.doubtful,
        places,
        frame_problem,
        accuracy,
    }
}
