//! One run in the open, for tests that put something in its way; each takes what it needs.
#![allow(dead_code, reason = "each test takes what it needs")]

use std::sync::atomic::AtomicBool;

use tubewright_geometry::{Frame, Point, UnitVector};
use tubewright_route::problem::{Body, Rules, Run, StockBend, Tube};
use tubewright_route::{Budget, CostModel, Outcome, Piece, Route, RouteProblem, solve};

/// Centre-line radius of every bend, mm.
pub(crate) const CLR_MM: f64 = 90.0;
/// Outside radius of the tube, mm.
pub(crate) const RADIUS_MM: f64 = 30.0;

/// A run of 60 mm tube between two places, arriving rearwards.
pub(crate) fn problem(start: Frame, end: Point, bodies: Vec<Body>) -> RouteProblem {
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
            pins: Vec::new(),
            starts_at: None,
            ends_at: None,
            own_bodies: Vec::new(),
            end_room: None,
            start_room: None,
            most_bends: None,
        }],
    }
}

/// What is found at a test's effort.
pub(crate) fn solved(problem: &RouteProblem, cost: &CostModel) -> Outcome {
    let budget = Budget {
        work_units: 2500,
        seed: 1,
    };
    solve(problem, cost, budget, &AtomicBool::new(false), &mut |_| {}).unwrap()
}

/// The cheapest way.
pub(crate) fn best(outcome: Outcome) -> Route {
    match outcome {
        Outcome::Solved { alternatives, .. } => alternatives.into_iter().next().unwrap(),
        other => panic!("{other:?}"),
    }
}

/// Where pieces lead, from the definition.
pub(crate) fn walk(start: Frame, clr_mm: f64, pieces: &[Piece]) -> Frame {
    pieces.iter().fold(start, |frame, piece| match *piece {
        Piece::Straight { length_mm } => frame.advanced(length_mm),
        Piece::Bend {
            angle_rad,
            clock_rad,
        } => frame.rolled(clock_rad).bent(angle_rad, clr_mm),
        _ => panic!("no component here"),
    })
}
