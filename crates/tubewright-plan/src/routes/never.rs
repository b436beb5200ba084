//! Sides of bodies on which the person lets no run pass: as bodies of their own, that run out from a
//! body's outermost extent.

use tubewright_build::model::{Build, Direction};
use tubewright_geometry::{Bounds, OrientedBox, Point, Solid};

use crate::bodies::Bodies;

/// How far a closed side reaches, mm: further than any car is wide.
const REACH_MM: f64 = 4000.0;

/// A closed side of a body.
#[derive(Clone, Debug)]
pub struct ClosedSide {
    /// What it is called: `the left of gearbox`.
    pub name: String,
    /// The room that no run may enter, at rest, in the car's axes.
    pub solid: Solid,
}

/// All closed sides of the build; the second list names bodies without bounds, which have no sides.
#[must_use]
pub fn closed_sides(build: &Build, bodies: &Bodies) -> (Vec<ClosedSide>, Vec<String>) {
    let (mut closed, mut without_bounds) = (Vec::new(), Vec::new());
    for body in build
        .bodies
        .iter()
        .filter(|body| !body.closed_sides().is_empty())
    {
        let placed = bodies
            .placed
            .iter()
            .find(|placed| *placed.name == *body.name);
        let Some(bounds) = placed.and_then(|placed| placed.solid_in_car.bounds()) else {
            // A floor that is the room beyond a plane is closed above by itself.
            if body.never_pass.is_some() {
                without_bounds.push(body.name.to_string());
            }
            continue;
        };
        for &side in body.closed_sides() {
            closed.push(ClosedSide {
                name: format!("the {} of {}", side_word(side), body.name),
                solid: Solid::Box(beyond(&bounds, side)),
            });
        }
    }
    (closed, without_bounds)
}

const fn side_word(side: Direction) -> &'static str {
    match side {
        Direction::Front => "front",
        Direction::Rear => "rear",
        Direction::Left => "left",
        Direction::Right => "right",
        Direction::Up => "top",
        Direction::Down => "underside",
    }
}

/// The box that stands out from one side of a box.
fn beyond(bounds: &Bounds, side: Direction) -> OrientedBox {
    let (mut low, mut high) = (bounds.min.to_array(), bounds.max.to_array());
    for (k, way) in side.unit().to_array().into_iter().enumerate() {
        if let (Some(low), Some(high)) = (low.get_mut(k), high.get_mut(k)) {
            if way > 0.5 {
                (*low, *high) = (*high, *high + REACH_MM);
            } else if way < -0.5 {
                (*low, *high) = (*low - REACH_MM, *low);
            }
        }
    }
    let (low, high) = (Point::from_array(low), Point::from_array(high));
    OrientedBox::axis_aligned(
        low.lerp(high, 0.5),
        (high - low).to_array().map(|s| s / 2.0),
    )
}

#[cfg(test)]
mod tests {
    use super::*;
    use tubewright_geometry::distance::point_to_solid;

    #[test]
    fn a_closed_side_stands_out_from_the_body_and_nowhere_else() {
        let bounds = Bounds {
            min: Point::new(0.0, -100.0, 200.0),
            max: Point::new(500.0, 100.0, 400.0),
        };
        let middle = Point::new(250.0, 0.0, 300.0);
        let sides = [
            Direction::Front,
            Direction::Rear,
            Direction::Left,
            Direction::Right,
            Direction::Up,
            Direction::Down,
        ];
        for side in sides {
            let closed = Solid::Box(beyond(&bounds, side));
            for other in sides {
                let place = middle + other.unit() * 600.0;
                let is_inside = point_to_solid(place, &closed) <= 0.0;
                assert_eq!(is_inside, side == other, "{side:?} closed, at {other:?}");
            }
            assert!(point_to_solid(middle, &closed) > 0.0);
        }
    }
}
