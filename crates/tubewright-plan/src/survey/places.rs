//! The car's axes, and everything placed in them.

use tubewright_build::model::Build;
use tubewright_survey::{
    Adjustment, CentreLineChoice, FrameChoice, FrameError, LevelChoice, Pair, PointId, SetupId,
    Stance, Survey, Target,
};

use super::network::NamedNetwork;
use crate::places::{Joint, PlacedEnd, PlacedFloor, PlacedPoint, Places};
use crate::routes::given_frame;

/// Why the car's axes cannot be had.
#[derive(Clone, Debug, PartialEq, thiserror::Error)]
#[non_exhaustive]
pub enum FrameProblem {
    /// The build does not say.
    #[error(
        "build.toml has no [frame]: say which mark is the origin, which marks are left and right pairs, and which set-up is level"
    )]
    NotChosen,
    /// It names something that is not a mark of the network.
    #[error("the frame names “{0}”, which is no mark with readings")]
    NoMark(String),
    /// It has no pair.
    #[error("the frame needs at least one left and right pair in centre-line")]
    NoPair,
    /// The survey cannot give it.
    #[error(transparent)]
    Frame(#[from] FrameError),
}

/// Places everything that the readings fix.
///
/// # Errors
/// [`FrameProblem`] when the car's axes cannot be had; nothing is placed then.
pub(crate) fn places_in_car(
    build: &Build,
    named: &NamedNetwork,
    adjustment: &Adjustment,
) -> Result<Places, FrameProblem> {
    let survey = adjustment.seen_from(&frame_choice(build, named)?)?;
    let mut places = Places {
        joint: Joint::of(survey.clone()),
        ..Places::default()
    };
    for name in build
        .marks
        .iter()
        .map(|mark| &mark.name)
        .chain(build.points.iter().map(|point| &point.name))
    {
        let Some((id, point)) = named
            .point(name)
            .and_then(|id| Some((id, survey.point(id)?)))
        else {
            continue;
        };
        places.joint.add_point(name, id);
        places.points.insert(
            name.to_string(),
            PlacedPoint {
                point_in_car: point.place,
                covariance: point.covariance,
            },
        );
    }
    for end in &build.ends {
        let placed = match &end.given {
            None => named
                .end(&end.name)
                .and_then(|id| Some((id, survey.end(id)?)))
                .map(|(id, pose)| {
                    places.joint.add_end(&end.name, id);
                    PlacedEnd {
                        frame_in_car: pose.frame,
                        covariance: pose.covariance,
                    }
                }),
            Some(given) => places.place(&given.at.at).map(|at| {
                places.joint.add_chosen_end(&end.name, &given.at.at);
                PlacedEnd {
                    frame_in_car: given_frame(given, at.point_in_car),
                    covariance: direction_is_chosen(&at),
                }
            }),
        };
        if let Some(placed) = placed {
            places.ends.insert(end.name.to_string(), placed);
        }
    }
    for setup in &build.setups {
        if let Some((id, floor)) = floor_of(&setup.name, named, adjustment, &survey) {
            places.joint.add_floor(&setup.name, id);
            places.floors.insert(setup.name.to_string(), floor);
        }
    }
    Ok(places)
}

/// A tip's direction is chosen and not measured: it has no ± of its own.
fn direction_is_chosen(at: &PlacedPoint) -> crate::places::Covariance6 {
    core::array::from_fn(|i| {
        core::array::from_fn(|j| {
            if i < 3 && j < 3 {
                at.covariance[i][j]
            } else {
                0.0
            }
        })
    })
}

fn frame_choice(build: &Build, named: &NamedNetwork) -> Result<FrameChoice, FrameProblem> {
    let frame = build.frame.as_ref().ok_or(FrameProblem::NotChosen)?;
    let mark = |name: &str| -> Result<PointId, FrameProblem> {
        named
            .point(name)
            .ok_or_else(|| FrameProblem::NoMark(name.to_owned()))
    };
    let pairs = frame
        .centre_line
        .iter()
        .map(|pair| {
            Ok(Pair {
                left: mark(pair.left.at.name())?,
                right: mark(pair.right.at.name())?,
            })
        })
        .collect::<Result<Vec<_>, FrameProblem>>()?;
    let centre_line = match pairs.as_slice() {
        [] => return Err(FrameProblem::NoPair),
        [only] => CentreLineChoice::SquareTo(*only),
        [front, .., rear] => CentreLineChoice::Pairs {
            front: *front,
            rear: *rear,
        },
    };
    let level = named
        .setup(&frame.level)
        .ok_or_else(|| FrameProblem::NoMark(frame.level.to_string()))?;
    Ok(FrameChoice::Car {
        origin: mark(frame.origin.at.name())?,
        centre_line,
        level: LevelChoice::Floor(level),
    })
}

fn floor_of(
    name: &str,
    named: &NamedNetwork,
    adjustment: &Adjustment,
    survey: &Survey,
) -> Option<(SetupId, PlacedFloor)> {
    let id = named.setup(name)?;
    let floor = survey.floor(id)?;
    // The worst-known height among all points stands for the whole floor: it is what a ground
    // clearance anywhere under the car can be wrong by.
    let sigma_mm = (0..named.network.points.len())
        .filter_map(|index| adjustment.height(Target::Point(PointId(index)), id))
        .map(|height| height.sigma)
        .fold(0.0, f64::max);
    let is_on_wheels = named
        .network
        .setups
        .get(id.0)
        .is_some_and(|setup| setup.stance == Stance::Wheels);
    let placed = PlacedFloor {
        point_in_car: floor.place,
        up: floor.up,
        plumb: floor.plumb,
        sigma_mm,
        is_on_wheels,
    };
    Some((id, placed))
}
