//! Ends that may lie in a room and starts that may be sawn further back: each is put where the whole run
//! costs least, never outside of its room, and the pieces arrive there by an independent walk.
#![expect(clippy::unwrap_used, clippy::panic, reason = "helpers of tests")]

mod open;

use open::CLR_MM;
use proptest::prelude::*;
use tubewright_geometry::{Frame, OrientedBox, Point, Solid, UnitVector};
use tubewright_route::problem::{Body, BodyKind, EndRoom, ProblemError, Region, StartRoom};
use tubewright_route::{
    CostModel, Outcome, Piece, Route, RouteProblem, ShopSteps, round_and_close,
};

const WELD: f64 = 9.0;
const CUT: f64 = 4.0;
/// Straight tube with its share of the flow proxy, a mm.
const PER_MM: f64 = (12.0 + 1.5) / 1000.0;

fn cost() -> CostModel {
    CostModel::route_problem(WELD, CUT, 0.05, 1.5)
}

fn problem(start: Frame, end: Point) -> RouteProblem {
    open::problem(start, end, Vec::new())
}

fn straight_ahead() -> Frame {
    Frame::upright(Point::new(0.0, 0.0, 300.0), UnitVector::X)
}

fn solved(problem: &RouteProblem) -> Outcome {
    open::solved(problem, &cost())
}

fn best(problem: &RouteProblem) -> Route {
    open::best(solved(problem))
}

/// Where the pieces lead from the start that the route names.
fn walked(route: &Route) -> Frame {
    open::walk(route.ends[0].start, CLR_MM, &route.runs[0])
}

fn bends(route: &Route) -> usize {
    let is_bend = |piece: &&Piece| matches!(piece, Piece::Bend { .. });
    route.runs[0].iter().filter(is_bend).count()
}

fn arrives_as_told(route: &Route) {
    let (arrival, told) = (walked(route), route.ends[0]);
    assert!(
        arrival.origin.distance(told.end) < 1e-6,
        "{arrival:?} {told:?}"
    );
    assert!(arrival.travel().angle_to(told.end_direction) < 1e-9);
}

fn along_the_valance() -> EndRoom {
    EndRoom {
        within: Region {
            min: Point::new(900.0, -20.0, 290.0),
            max: Point::new(900.0, 400.0, 350.0),
        },
        turn_aside_rad: 0.0,
        turn_up_rad: 0.0,
        columns: Vec::new(),
    }
}

/// Two welds and a length of tube.
fn straight_price(length_mm: f64) -> f64 {
    2.0 * WELD + length_mm * PER_MM
}

#[test]
fn a_tip_that_may_lie_along_the_valance_is_put_where_it_costs_least() {
    let mut problem = problem(straight_ahead(), Point::new(900.0, 180.0, 320.0));
    let held = best(&problem);
    assert!(held.ends[0].end.distance(problem.runs[0].end) < 1e-9);
    problem.runs[0].end_room = Some(along_the_valance());
    let loose = best(&problem);
    arrives_as_told(&loose);
    let end = loose.ends[0].end;
    assert!((end.x - 900.0).abs() < 1e-6, "{end:?}");
    assert!((-20.0 - 1e-6..=400.0 + 1e-6).contains(&end.y), "{end:?}");
    assert!((290.0 - 1e-6..=350.0 + 1e-6).contains(&end.z), "{end:?}");
    // Straight back from the start is in the room.
    let straight = straight_price(900.0);
    assert!(loose.cost < held.cost - 1.0, "{} {}", loose.cost, held.cost);
    assert!((loose.cost - straight).abs() < 0.05, "{}", loose.cost);
    assert!(loose.lower_bound <= straight + 1e-9);
}

/// A column over the straight way closes it: the tip leaves by the side that is nearer.
#[test]
fn a_tip_keeps_out_from_under_what_it_must_not_blow_at() {
    let mut problem = problem(straight_ahead(), Point::new(900.0, 180.0, 320.0));
    let column = Region {
        min: Point::new(500.0, -200.0, 0.0),
        max: Point::new(1200.0, 90.0, 0.0),
    };
    let mut room = along_the_valance();
    room.columns = vec![column];
    problem.runs[0].end_room = Some(room);
    let route = best(&problem);
    arrives_as_told(&route);
    let end = route.ends[0].end;
    assert!(end.y >= 90.0 - 0.05, "{end:?}");
    assert!(route.cost > straight_price(900.0) + 1.0);
}

/// A tip that may look aside needs one bend where a held one needs two.
#[test]
fn a_tip_is_turned_as_far_as_it_may_be() {
    let mut problem = problem(straight_ahead(), Point::new(900.0, 180.0, 300.0));
    let here = problem.runs[0].end;
    problem.runs[0].end_room = Some(EndRoom {
        within: Region {
            min: here,
            max: here,
        },
        turn_aside_rad: 35.0_f64.to_radians(),
        turn_up_rad: 5.0_f64.to_radians(),
        columns: Vec::new(),
    });
    let route = best(&problem);
    arrives_as_told(&route);
    assert!(route.ends[0].end.distance(here) < 1e-6);
    assert_eq!(bends(&route), 1, "{route:?}");
    let off = route.ends[0].end_direction.angle_to(UnitVector::X);
    assert!(off <= 35.2_f64.to_radians(), "{}", off.to_degrees());
    // As far as it may and no further: two bends again, or a turned tip at the edge of what it may.
    if let Some(room) = &mut problem.runs[0].end_room {
        room.turn_aside_rad = 2.0_f64.to_radians();
    }
    let route = best(&problem);
    arrives_as_told(&route);
    assert_eq!(bends(&route), 2);
    let sine = route.ends[0].end_direction.vector().y.abs();
    assert!(sine <= tubewright_geometry::math::sin(2.0_f64.to_radians()) + 1e-9);
}

/// A wall before the outlet leaves too little room to turn: sawn off further back there is enough.
#[test]
fn an_outlet_is_sawn_off_where_the_flange_leaves_no_room() {
    let wall = Body {
        id: "bulkhead".into(),
        solid: Solid::Box(OrientedBox::axis_aligned(
            Point::new(160.0, 0.0, 300.0),
            [10.0, 2000.0, 2000.0],
        )),
        gap_mm: 10.0,
        kind: BodyKind::Car,
    };
    let mut problem = problem(straight_ahead(), Point::new(-200.0, 600.0, 300.0));
    problem.runs[0].end_direction = UnitVector::Y;
    problem.bodies = vec![wall];
    // From the flange: bend of 90 mm and half a tube of 30 mm make 120 mm, and 150 − 10 are there.
    let held = best(&problem);
    let Solid::Box(wall) = &mut problem.bodies[0].solid else {
        panic!("a box")
    };
    wall.centre = Point::new(100.0, 0.0, 300.0);
    assert!(matches!(
        solved(&problem),
        Outcome::Infeasible { .. } | Outcome::NotFoundInEffort { .. }
    ));
    problem.runs[0].start_room = Some(StartRoom {
        least_mm: 0.0,
        back_mm: 120.0,
        turn_rad: 0.0,
    });
    let route = best(&problem);
    arrives_as_told(&route);
    let sawn = -route.ends[0].start.origin.x;
    // 90 − 10 mm are there at the flange, 120 are needed: at least 40 have to go.
    assert!((40.0 - 0.1..=120.0 + 1e-9).contains(&sawn), "{sawn}");
    assert!((route.ends[0].start.origin.y).abs() < 1e-9);
    assert!(route.ends[0].start.travel().angle_to(UnitVector::X) < 1e-12);
    assert!(held.cost > 0.0 && route.lower_bound <= route.cost);
    // The cut is paid.
    let cuts = route
        .terms
        .iter()
        .find(|(term, _)| *term == tubewright_route::route::Term::Cuts);
    assert!(cuts.is_some_and(|(_, money)| *money >= CUT - 1e-9));
}

/// What is welded on at an angle saves a bend.
#[test]
fn a_mitre_at_the_outlet_turns_as_far_as_it_may() {
    let mut problem = problem(straight_ahead(), Point::new(900.0, 180.0, 300.0));
    problem.runs[0].start_room = Some(StartRoom {
        least_mm: 0.0,
        back_mm: 20.0,
        turn_rad: 15.0_f64.to_radians(),
    });
    let route = best(&problem);
    arrives_as_told(&route);
    let turned = route.ends[0].start.travel().angle_to(UnitVector::X);
    assert!(turned <= 22.0_f64.to_radians());
    assert!(route.lower_bound <= route.cost + 1e-9);
    let mut held = problem.clone();
    held.runs[0].start_room = None;
    assert!(route.cost <= best(&held).cost + CUT + 1e-6);
    // Aimed at the end by the mitre: one bend to arrive by, where the held start needs two.
    let aim = tubewright_geometry::math::atan2(180.0, 920.0);
    assert!(turned > 0.8 * aim, "{}", turned.to_degrees());
    assert_eq!((bends(&route), bends(&best(&held))), (1, 2));
}

/// The flow that a mitre loses is paid by its angle; where that is dear, the run turns by a bend instead.
#[test]
fn a_mitre_pays_for_the_flow_that_it_loses() {
    let mut problem = problem(straight_ahead(), Point::new(900.0, 180.0, 300.0));
    problem.runs[0].start_room = Some(StartRoom {
        least_mm: 0.0,
        back_mm: 20.0,
        turn_rad: 15.0_f64.to_radians(),
    });
    let at = |flow_per_head: f64| {
        let priced = CostModel {
            flow_per_head,
            ..cost()
        };
        let route = open::best(open::solved(&problem, &priced));
        arrives_as_told(&route);
        let turned = route.ends[0].start.travel().angle_to(UnitVector::X);
        let told: f64 = route
            .terms
            .iter()
            .filter(|(term, _)| *term == tubewright_route::route::Term::FlowMitre)
            .map(|(_, money)| money)
            .sum();
        let lost = flow_per_head * tubewright_route::loss::mitre(turned);
        assert!((told - lost).abs() < 1e-6, "{told} for {lost}");
        let all: f64 = route.terms.iter().map(|(_, money)| money).sum();
        assert!((all - route.cost).abs() < 1e-6);
        assert!(route.lower_bound <= route.cost + 1e-9);
        (route.cost, turned)
    };
    let (free, cheap, dear) = (at(0.0), at(100.0), at(1e6));
    // Never cheaper by what is added, and never dearer than to pay for the angle that was free.
    assert!(cheap.0 >= free.0 - 1e-6);
    let paid = free.0 + 100.0 * tubewright_route::loss::mitre(free.1);
    assert!(cheap.0 <= paid + 1e-6, "{} > {paid}", cheap.0);
    assert!(free.1 > 5.0_f64.to_radians());
    assert!(dear.1 < 0.5_f64.to_radians(), "{} deg", dear.1.to_degrees());
}

#[test]
fn each_run_keeps_to_its_own_most_bends() {
    let mut problem = problem(straight_ahead(), Point::new(800.0, 150.0, 300.0));
    problem.runs[0].most_bends = Some(2);
    let route = best(&problem);
    assert!(bends(&route) <= 2);
    problem.runs[0].most_bends = Some(1);
    assert!(matches!(solved(&problem), Outcome::NotFoundInEffort { .. }));
}

#[test]
fn a_room_that_is_none_is_refused() {
    let mut problem = problem(straight_ahead(), Point::new(800.0, 150.0, 300.0));
    let mut room = along_the_valance();
    core::mem::swap(&mut room.within.min, &mut room.within.max);
    problem.runs[0].end_room = Some(room);
    assert!(matches!(
        problem.checked(),
        Err(ProblemError::UnsoundSize { .. })
    ));
    problem.runs[0].end_room = None;
    problem.runs[0].start_room = Some(StartRoom {
        least_mm: 0.0,
        back_mm: f64::NAN,
        turn_rad: 0.0,
    });
    assert!(problem.checked().is_err());
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(12))]

    /// Wherever the room is: never dearer than held at the wished place, the bound below, every end in its
    /// room, and rounded to the shop's steps from where the search put it.
    #[test]
    fn room_never_costs_and_is_never_left(
        x in 500.0..1200.0_f64, y in -300.0..300.0_f64, z in 150.0..450.0_f64,
        half in (0.0..30.0_f64, 5.0..120.0_f64, 5.0..60.0_f64), aside in 0.0..20.0_f64, back in 0.0..60.0_f64,
    ) {
        let end = Point::new(x, y, z);
        let mut problem = problem(straight_ahead(), end);
        let held = solved(&problem);
        let by = tubewright_geometry::Vector::new(half.0, half.1, half.2);
        problem.runs[0].end_room = Some(EndRoom {
            within: Region { min: end - by, max: end + by },
            turn_aside_rad: aside.to_radians(),
            turn_up_rad: 0.0,
            columns: Vec::new(),
        });
        problem.runs[0].start_room =
            (back > 20.0).then_some(StartRoom { least_mm: 0.0, back_mm: back, turn_rad: 0.0 });
        let route = best(&problem);
        arrives_as_told(&route);
        let off = route.ends[0].end - end;
        for (off, most) in off.to_array().into_iter().zip(by.to_array()) {
            prop_assert!(off.abs() <= most + 1e-6);
        }
        prop_assert!(route.lower_bound <= route.cost + 1e-9);
        if let Outcome::Solved { alternatives, .. } = held {
            let least = alternatives.first().map_or(f64::INFINITY, |held| held.cost);
            let cut = if back > 20.0 { CUT } else { 0.0 };
            prop_assert!(route.cost <= 1.02 * least + cut, "{} {least}", route.cost);
        }
        let settled = problem.held_at(&route);
        let rounded = round_and_close(&settled, &cost(), &route, ShopSteps::default(), None).unwrap();
        let told = rounded.ends[0].distance_mm;
        let rounded = rounded.route;
        let arrival = walked(&rounded);
        prop_assert!(arrival.origin.distance(rounded.ends[0].end) < 1e-6);
        prop_assert!(arrival.travel().angle_to(rounded.ends[0].end_direction) < 1e-6);
        // Out of the room by no more than is told.
        let off = arrival.origin - end;
        let out: f64 = off
            .to_array()
            .into_iter()
            .zip(by.to_array())
            .map(|(off, most)| (off.abs() - most).max(0.0).powi(2))
            .sum();
        prop_assert!(out.sqrt() <= told + 1e-6, "{} {told}", out.sqrt());
        // With room to all sides the rounded pieces end in it.
        if half.0 > 10.0 && half.1 > 20.0 && half.2 > 20.0 {
            prop_assert!(told < 1.0, "{told}");
        }
    }
}
