//! Where a part where runs meet may lie, and how it may be turned there.

use tubewright_build::model::Component;
use tubewright_geometry::{Point, Vector, math};
use tubewright_route::problem::{Ports, Region, Turn, TurnRoom};

use super::problem::RunError;

/// How a part may be turned: about how it is written to lie, by what is written; not at all when nothing is.
pub(super) fn turns_of(component: &Component, sides: [&Ports; 2]) -> Result<TurnRoom, RunError> {
    let middle = component.turn.as_ref().map_or(Turn::NONE, |turn| Turn {
        right_rad: turn.right.rad(),
        up_rad: turn.up.rad(),
        roll_rad: 0.0,
    });
    let mut by = match &component.may_turn {
        Some(turn) => Turn {
            right_rad: turn.right.rad(),
            up_rad: turn.up.rad(),
            roll_rad: turn.roll.rad(),
        },
        None => Turn::NONE,
    };
    if is_round(sides) {
        by.roll_rad = 0.0;
    }
    let turns = TurnRoom::about(middle, by);
    let most = [turns.least, turns.most].map(|turn| turn.right_rad.abs().max(turn.up_rad.abs()));
    if most.into_iter().any(|most| most >= math::FRAC_PI_2) || by.roll_rad >= math::PI {
        return Err(RunError::TurnsTooFar(component.name.to_string()));
    }
    Ok(turns)
}

/// Whether a part is the same however it is rolled: a cone.
fn is_round(sides: [&Ports; 2]) -> bool {
    let near = |v: Vector| v.y.abs() < 1e-9 && v.z.abs() < 1e-9;
    sides.into_iter().all(|ports| {
        near(ports.inlet)
            && near(ports.outlet)
            && near(ports.inlet_direction.vector())
            && near(ports.outlet_direction.vector())
    })
}

/// The room, grown to what the part takes where it does not fit in a coordinate.
pub(super) fn room_that_holds(room: Region, poses: Region, local: &[Vector]) -> Region {
    let (mut min, mut max) = (room.min.to_array(), room.max.to_array());
    for axis in 0..3 {
        for place in local {
            let place = place.to_array()[axis];
            min[axis] = min[axis].min(poses.min.to_array()[axis] + place);
            max[axis] = max[axis].max(poses.max.to_array()[axis] + place);
        }
    }
    Region {
        min: Point::from_array(min),
        max: Point::from_array(max),
    }
}

/// Where the origin of a thing may lie so that all its local places stay in the room; the middle of
/// the room where it does not fit in a coordinate.
pub(super) fn poses_within(room: Region, local: &[Vector]) -> Region {
    let mut min = room.min.to_array();
    let mut max = room.max.to_array();
    for axis in 0..3 {
        let coordinates = || local.iter().map(|v| v.to_array()[axis]);
        let (low, high) = (
            coordinates().fold(f64::INFINITY, f64::min),
            coordinates().fold(f64::NEG_INFINITY, f64::max),
        );
        min[axis] -= low;
        max[axis] -= high;
        if min[axis] > max[axis] {
            let middle = 0.5 * (min[axis] + max[axis]);
            min[axis] = middle;
            max[axis] = middle;
        }
    }
    Region {
        min: Point::from_array(min),
        max: Point::from_array(max),
    }
}
