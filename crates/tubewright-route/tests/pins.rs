//! Rooms that a run must pass through, and rooms that must hold one of its joints.
#![expect(clippy::unwrap_used, clippy::panic, reason = "helpers of tests")]

mod open;

use open::{CLR_MM, best, problem, solved, walk};
use proptest::prelude::*;
use tubewright_geometry::{Frame, Point, UnitVector};
use tubewright_route::problem::{Pin, Pinned, Region};
use tubewright_route::{
    CostModel, Outcome, Piece, Route, RouteProblem, ShopSteps, round_and_close,
};

fn cost() -> CostModel {
    CostModel::route_problem(8.0, 3.0, 0.05, 6.0)
}

fn straight_on() -> RouteProblem {
    let start = Frame::upright(Point::new(0.0, 0.0, 300.0), UnitVector::X);
    problem(start, Point::new(2000.0, 60.0, 300.0), Vec::new())
}

fn room(middle: [f64; 3], half: f64) -> Region {
    let [x, y, z] = middle;
    Region {
        min: Point::new(x - half, y - half, z - half),
        max: Point::new(x + half, y + half, z + half),
    }
}

fn pinned(what: Pinned, rooms: &[Region]) -> RouteProblem {
    let mut out = straight_on();
    let pins = rooms.iter().map(|room| Pin { room: *room, what });
    out.runs[0].pins = pins.collect();
    out
}

/// Distance of a place from a room.
fn away(room: &Region, place: Point) -> f64 {
    let clamped = |at: f64, low: f64, high: f64| at.max(low).min(high);
    place.distance(Point::new(
        clamped(place.x, room.min.x, room.max.x),
        clamped(place.y, room.min.y, room.max.y),
        clamped(place.z, room.min.z, room.max.z),
    ))
}

/// How far the run stays from a room: with places a millimetre apart, or its joints alone.
fn stays_away(route: &Route, start: Frame, pin: &Pin) -> f64 {
    let mut frame = start;
    let mut least = away(&pin.room, frame.origin);
    for piece in &route.runs[0] {
        let length = match *piece {
            Piece::Straight { length_mm } => length_mm,
            Piece::Bend { angle_rad, .. } => angle_rad * CLR_MM,
            _ => panic!("no component here"),
        };
        let mut at = 0.0;
        while pin.what == Pinned::CentreLine && at < length {
            let part = match *piece {
                Piece::Bend { clock_rad, .. } => frame.rolled(clock_rad).bent(at / CLR_MM, CLR_MM),
                _ => frame.advanced(at),
            };
            least = least.min(away(&pin.room, part.origin));
            at += 1.0;
        }
        frame = walk(frame, CLR_MM, core::slice::from_ref(piece));
        least = least.min(away(&pin.room, frame.origin));
    }
    least
}

fn keeps(problem: &RouteProblem, route: &Route, slack_mm: f64) {
    for pin in &problem.runs[0].pins {
        let off = stays_away(route, problem.runs[0].start, pin);
        assert!(off <= slack_mm, "{off} mm beside {pin:?}");
    }
}

#[test]
fn it_goes_where_it_must_and_that_costs() {
    let free = best(solved(&straight_on(), &cost())).cost;
    let aside = pinned(Pinned::CentreLine, &[room([900.0, -250.0, 420.0], 30.0)]);
    let route = best(solved(&aside, &cost()));
    keeps(&aside, &route, 0.6);
    assert!(route.cost > free + 1.0, "{} and {free}", route.cost);
    assert!(route.lower_bound <= route.cost);
    let arrival = walk(aside.runs[0].start, CLR_MM, &route.runs[0]);
    assert!(arrival.origin.distance(aside.runs[0].end) < 1e-6);
    // In whole steps too.
    let steps = ShopSteps {
        length_mm: 1.0,
        angle_rad: 0.5_f64.to_radians(),
        clock_rad: 0.5_f64.to_radians(),
    };
    let rounded = round_and_close(&aside, &cost(), &route, steps, None);
    keeps(
        &aside,
        &rounded.map_or_else(|e| panic!("{e}"), |r| r.route),
        0.1,
    );
}

#[test]
fn a_room_on_the_way_costs_nothing() {
    let free = best(solved(&straight_on(), &cost()));
    let place = free.runs[0]
        .iter()
        .scan(straight_on().runs[0].start, |frame, piece| {
            *frame = walk(*frame, CLR_MM, core::slice::from_ref(piece));
            Some(frame.origin)
        });
    let joint = place.clone().next().unwrap_or(Point::ORIGIN);
    let here = pinned(Pinned::Joint, &[room(joint.to_array(), 25.0)]);
    let route = best(solved(&here, &cost()));
    keeps(&here, &route, 0.06);
    assert!((route.cost - free.cost).abs() < 0.01 * free.cost);
}

#[test]
fn a_joint_lies_where_it_is_wanted() {
    let here = pinned(Pinned::Joint, &[room([1200.0, 30.0, 300.0], 40.0)]);
    let route = best(solved(&here, &cost()));
    keeps(&here, &route, 0.06);
}

#[test]
fn two_rooms_are_both_passed() {
    let rooms = [
        room([600.0, 200.0, 350.0], 30.0),
        room([1400.0, -200.0, 250.0], 30.0),
    ];
    let here = pinned(Pinned::CentreLine, &rooms);
    keeps(&here, &best(solved(&here, &cost())), 0.6);
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(12))]
    #[test]
    fn wherever_the_room_lies_what_is_found_visits_it(
        x in 500.0..1500.0f64, y in -300.0..300.0f64, z in 100.0..500.0f64, half in 15.0..60.0f64,
        joint: bool,
    ) {
        let what = if joint { Pinned::Joint } else { Pinned::CentreLine };
        let here = pinned(what, &[room([x, y, z], half)]);
        match solved(&here, &cost()) {
            Outcome::Solved { alternatives, .. } => {
                for route in &alternatives {
                    keeps(&here, route, 0.6);
                }
            }
            other => prop_assert!(false, "{other:?}"),
        }
    }
}
