//! What a shop's problem has beside the form's: ground clearance has a price, and the body that
//! carries a flange does not block it.
#![expect(clippy::unwrap_used, clippy::panic, reason = "helpers of tests")]

mod open;

use open::{CLR_MM, RADIUS_MM, best, problem, solved};

use tubewright_geometry::distance::closest_point_on_solid;
use tubewright_geometry::{Frame, OrientedBox, Point, Solid, UnitVector, Vector};
use tubewright_route::cost::GroundTerm;
use tubewright_route::problem::{Body, BodyKind};
use tubewright_route::route::Term;
use tubewright_route::{CostModel, Outcome, Piece, Route};

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
