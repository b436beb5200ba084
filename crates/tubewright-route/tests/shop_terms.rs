//! What a shop's problem has beside the form's: ground clearance has a price, and the body that
//! carries a flange does not block it.
#![expect(clippy::unwrap_used, clippy::panic, reason = "helpers of tests")]

use std::sync::atomic::AtomicBool;

use tubewright_geometry::distance::closest_point_on_solid;
use tubewright_geometry::{Frame, OrientedBox, Point, Solid, UnitVector, Vector, math};
use tubewright_route::cost::GroundTerm;
use tubewright_route::problem::{
    Body, BodyKind, Component, Placement, Region, Roll, Rules, Run, Section, StockBend, Tube,
};
use tubewright_route::route::Term;
use tubewright_route::{Budget, CostModel, Outcome, Piece, Route, RouteProblem, solve};

const CLR_MM: f64 = 90.0;
const RADIUS_MM: f64 = 30.0;

fn problem(start: Frame, end: Point, bodies: Vec<Body>) -> RouteProblem {
    let stock = [30.0, 45.0, 90.0_f64].map(|degrees| StockBend {
        angle_rad: degrees.to_radians(),
        price: 10.0,
        leg_in_mm: 0.0,
        leg_out_mm: 0.0,
    });
    RouteProblem {
        id: "shop".into(),
        bodies,
        workspace: None,
        tubes: vec![Tube {
            id: "60".into(),
            od_mm: 2.0 * RADIUS_MM,
            wall_mm: 2.0,
            clr_mm: CLR_MM,
            stock: stock.to_vec(),
            straight_price_per_m: 12.0,
        }],
        rules: Rules {
            min_straight_mm: 30.0,
            min_bend_rad: 5.0_f64.to_radians(),
            max_bends: 6,
            self_gap_mm: 0.0,
            run_gap_mm: 0.0,
            uncut_tolerance_rad: 0.5_f64.to_radians(),
            stub_mm: 100.0,
            rounding_room_mm: 0.0,
            end_place_mm: 0.0,
            end_turn_rad: 0.0,
        },
        components: Vec::new(),
        crossovers: Vec::new(),
        runs: vec![Run {
            id: "run".into(),
            tube: 0,
            start,
            end,
            end_direction: UnitVector::X,
            components: Vec::new(),
            passage: None,
            components_before_passage: None,
            end_within: None,
            most_bends: None,
            own_bodies: Vec::new(),
        }],
    }
}

fn solved(problem: &RouteProblem, cost: &CostModel) -> Outcome {
    let budget = Budget {
        work_units: 2500,
        seed: 1,
    };
    solve(problem, cost, budget, &AtomicBool::new(false), &mut |_| {}).unwrap()
}

fn best(outcome: Outcome) -> Route {
    match outcome {
        Outcome::Solved { alternatives, .. } => alternatives.into_iter().next().unwrap(),
        other => panic!("{other:?}"),
    }
}

/// Places on the centre line with the distance along it, a few mm apart, from the definition.
fn places(start: Frame, pieces: &[Piece]) -> Vec<(f64, Point)> {
    let mut frame = start;
    let mut along = 0.0;
    let mut out = Vec::new();
    for piece in pieces {
        for k in 0..=200 {
            let share = f64::from(k) / 200.0;
            let (length, place) = match *piece {
                Piece::Straight { length_mm } => (length_mm, frame.advanced(share * length_mm)),
                Piece::Bend {
                    angle_rad,
                    clock_rad,
                } => (
                    angle_rad * CLR_MM,
                    frame.rolled(clock_rad).bent(share * angle_rad, CLR_MM),
                ),
                _ => panic!("no component here"),
            };
            out.push((along + share * length, place.origin));
            if k == 200 {
                frame = place;
                along += length;
            }
        }
    }
    out
}

fn ground() -> Body {
    Body {
        id: "ground".into(),
        solid: Solid::HalfSpace {
            point: Point::ORIGIN,
            outward: UnitVector::Z,
        },
        gap_mm: 80.0,
        kind: BodyKind::Ground,
    }
}

/// A crossmember in the way that may be passed under, near the ground, or over, the longer way.
#[test]
fn lost_ground_clearance_is_priced_and_weighed() {
    let member = Body {
        id: "crossmember".into(),
        solid: Solid::Box(OrientedBox::axis_aligned(
            Point::new(500.0, 0.0, 260.0),
            [40.0, 800.0, 50.0],
        )),
        gap_mm: 10.0,
        kind: BodyKind::Car,
    };
    let start = Frame::upright(Point::new(0.0, 0.0, 220.0), UnitVector::X);
    let problem = problem(
        start,
        Point::new(1000.0, 0.0, 220.0),
        vec![ground(), member],
    );
    let free = CostModel::route_problem(9.0, 4.0, 0.05, 1.5);
    let term = GroundTerm {
        wanted_mm: 200.0,
        per_mm: 2.0,
    };
    let priced = CostModel {
        ground: Some(term),
        ..free.clone()
    };
    let lost = |route: &Route| {
        let low = places(start, &route.runs[0])
            .into_iter()
            .map(|(_, p)| p.z - RADIUS_MM)
            .fold(f64::INFINITY, f64::min);
        term.per_mm * (term.wanted_mm - low).max(0.0)
    };
    let without = best(solved(&problem, &free));
    let with = best(solved(&problem, &priced));
    let told = with
        .terms
        .iter()
        .find(|(t, _)| *t == Term::Ground)
        .map_or(0.0, |t| t.1);
    assert!((told - lost(&with)).abs() < 0.1, "{told} {}", lost(&with));
    let sum: f64 = with.terms.iter().map(|t| t.1).sum();
    assert!((sum - with.cost).abs() < 1e-6);
    assert!(with.cost <= without.cost + lost(&without) + 1e-6);
    assert!(lost(&with) < lost(&without), "the price changes nothing");
}

/// A flange 10 mm out of the face of the block that carries it, where 25 mm are asked for.
#[test]
fn the_body_that_carries_a_flange_does_not_block_it() {
    let block = Solid::Box(OrientedBox::axis_aligned(
        Point::new(-160.0, 0.0, 400.0),
        [150.0, 200.0, 150.0],
    ));
    let body = Body {
        id: "block".into(),
        solid: block.clone(),
        gap_mm: 25.0,
        kind: BodyKind::Car,
    };
    let start = Frame::upright(
        Point::new(0.0, 0.0, 400.0),
        Vector::new(1.0, 0.0, 0.0).direction().unwrap(),
    );
    let cost = CostModel::route_problem(9.0, 4.0, 0.05, 1.5);
    let mut problem = problem(start, Point::new(700.0, 200.0, 250.0), vec![body]);
    assert!(matches!(
        solved(&problem, &cost),
        Outcome::Infeasible { .. }
    ));
    problem.runs[0].own_bodies = vec![0];
    let route = best(solved(&problem, &cost));
    for (along, place) in places(start, &route.runs[0]) {
        let gap = closest_point_on_solid(place, &block).distance_mm - RADIUS_MM;
        assert!(along < 100.0 || gap >= 25.0 - 0.05, "{gap} at {along}");
    }
}

/// A wall with a window that leaves 12 mm round a straight run, in a closed room.
fn behind_a_window(gap_mm: f64) -> RouteProblem {
    let plate = |centre: [f64; 3], half: [f64; 3]| {
        Solid::Box(OrientedBox::axis_aligned(
            Point::new(centre[0], centre[1], centre[2]),
            half,
        ))
    };
    let clear = RADIUS_MM + 12.0;
    let wall = Solid::Union(vec![
        plate([50.0, 0.0, 300.0 + clear + 200.0], [20.0, 400.0, 200.0]),
        plate([50.0, 0.0, 300.0 - clear - 200.0], [20.0, 400.0, 200.0]),
        plate([50.0, clear + 200.0, 300.0], [20.0, 200.0, 400.0]),
        plate([50.0, -clear - 200.0, 300.0], [20.0, 200.0, 400.0]),
    ]);
    let body = Body {
        id: "mount".into(),
        solid: wall,
        gap_mm,
        kind: BodyKind::Car,
    };
    let start = Frame::upright(Point::new(0.0, 0.0, 300.0), UnitVector::X);
    let mut problem = problem(start, Point::new(600.0, 0.0, 300.0), vec![body]);
    problem.workspace = Some(Region {
        min: Point::new(-100.0, -350.0, -50.0),
        max: Point::new(700.0, 350.0, 650.0),
    });
    problem
}

/// What is proven of a problem when nothing is searched for.
fn proven(problem: &RouteProblem) -> Outcome {
    let cost = CostModel::route_problem(9.0, 4.0, 0.05, 1.5);
    let budget = Budget {
        work_units: 100,
        seed: 1,
    };
    solve(problem, &cost, budget, &AtomicBool::new(true), &mut |_| {}).unwrap()
}

/// The bound and the proofs look at no more than what every route must keep clear of.
#[test]
fn the_body_that_carries_a_flange_takes_part_in_no_proof() {
    let mut problem = behind_a_window(18.0);
    assert!(
        matches!(proven(&problem), Outcome::Infeasible { .. }),
        "12 mm are less than 18"
    );
    problem.runs[0].own_bodies = vec![0];
    assert!(matches!(proven(&problem), Outcome::NotFoundInEffort { .. }));
    let cost = CostModel::route_problem(9.0, 4.0, 0.05, 1.5);
    let route = best(solved(&problem, &cost));
    // Straight through: two welds, a length of tube with its share of the flow proxy.
    let straight = 2.0 * 9.0 + 0.6 * (12.0 + 1.5);
    assert!((route.cost - straight).abs() < 1e-6, "{}", route.cost);
    assert!(
        route.lower_bound <= straight,
        "the bound {} is above a route of {straight}",
        route.lower_bound
    );
}

/// What rounding may use up of a gap is not counted as missing in a proof.
#[test]
fn rounding_room_is_no_reason_for_a_proof() {
    let mut problem = behind_a_window(14.0);
    assert!(matches!(proven(&problem), Outcome::Infeasible { .. }));
    problem.rules.rounding_room_mm = 3.0;
    assert!(matches!(proven(&problem), Outcome::NotFoundInEffort { .. }));
}

/// An oval body passes between two plates on its edge only.
#[test]
fn an_oval_body_is_turned_where_it_may_be() {
    let plate = |side: f64| Body {
        id: format!("plate at {side}"),
        solid: Solid::Box(OrientedBox::axis_aligned(
            Point::new(400.0, side * 65.0, 300.0),
            [200.0, 10.0, 300.0],
        )),
        gap_mm: 5.0,
        kind: BodyKind::Car,
    };
    let start = Frame::upright(Point::new(0.0, 0.0, 300.0), UnitVector::X);
    let mut problem = problem(
        start,
        Point::new(800.0, 0.0, 300.0),
        vec![plate(1.0), plate(-1.0)],
    );
    let zone = Region {
        min: Point::new(250.0, -5.0, 290.0),
        max: Point::new(560.0, 5.0, 310.0),
    };
    problem.components.push(Component {
        id: "can".into(),
        length_mm: 300.0,
        section: Section::Oval {
            width_mm: 140.0,
            height_mm: 80.0,
        },
        zone: Some(zone),
        placement: Placement::Anywhere,
        roll: Roll::Free,
    });
    problem.runs[0].components = vec![0];
    let cost = CostModel::route_problem(9.0, 4.0, 0.05, 1.5);
    let route = best(solved(&problem, &cost));
    let roll = route.runs[0].iter().find_map(|piece| match piece {
        Piece::Component { roll_rad, .. } => Some(*roll_rad),
        _ => None,
    });
    // On edge it is 80 mm wide between plates 110 mm apart, with 5 mm asked for on both sides.
    let flat = math::cos(roll.unwrap()).abs();
    assert!(flat * 30.0 + 40.0 <= 50.0 + 0.1, "{roll:?}");
    problem.components[0].roll = Roll::Fixed(0.0);
    assert!(!matches!(solved(&problem, &cost), Outcome::Solved { .. }));
    problem.components[0].roll = Roll::Fixed(core::f64::consts::FRAC_PI_2);
    assert!(matches!(solved(&problem, &cost), Outcome::Solved { .. }));
}

/// A run that must step aside needs two bends; one that may have no more than one finds none.
#[test]
fn each_run_keeps_to_its_own_most_bends() {
    let start = Frame::upright(Point::new(0.0, 0.0, 300.0), UnitVector::X);
    let mut problem = problem(start, Point::new(800.0, 150.0, 300.0), Vec::new());
    let cost = CostModel::route_problem(9.0, 4.0, 0.05, 1.5);
    problem.runs[0].most_bends = Some(2);
    let route = best(solved(&problem, &cost));
    let bends = |piece: &&Piece| matches!(piece, Piece::Bend { .. });
    assert!(route.runs[0].iter().filter(bends).count() <= 2);
    problem.runs[0].most_bends = Some(1);
    assert!(matches!(
        solved(&problem, &cost),
        Outcome::NotFoundInEffort { .. }
    ));
}

/// A tip that may lie anywhere along the valance: straight back costs nothing but the tube.
#[test]
fn an_end_that_may_lie_in_a_room_is_put_where_it_costs_least() {
    let start = Frame::upright(Point::new(0.0, 0.0, 300.0), UnitVector::X);
    let mut problem = problem(start, Point::new(900.0, 180.0, 320.0), Vec::new());
    let cost = CostModel::route_problem(9.0, 4.0, 0.05, 1.5);
    let held = best(solved(&problem, &cost));
    problem.runs[0].end_within = Some(Region {
        min: Point::new(900.0, -20.0, 290.0),
        max: Point::new(900.0, 400.0, 350.0),
    });
    let loose = best(solved(&problem, &cost));
    let (_, arrival) = places(start, &loose.runs[0]).pop().unwrap();
    let room = problem.runs[0].end_within.unwrap();
    assert!((arrival.x - 900.0).abs() < 1e-6, "{arrival:?}");
    assert!(arrival.y >= room.min.y - 1e-6 && arrival.y <= room.max.y + 1e-6);
    assert!(arrival.z >= room.min.z - 1e-6 && arrival.z <= room.max.z + 1e-6);
    assert!(loose.cost < held.cost - 1.0, "{} {}", loose.cost, held.cost);
    // Straight back from the start is in the room.
    let straight = 2.0 * 9.0 + 0.9 * (12.0 + 1.5);
    assert!((loose.cost - straight).abs() < 0.05, "{}", loose.cost);
    assert!(loose.lower_bound <= straight + 1e-9);
}
