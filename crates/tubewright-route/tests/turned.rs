//! Parts where runs meet that the search may turn.
#![expect(clippy::unwrap_used, clippy::panic, reason = "helpers of tests")]

mod meeting_runs;
mod open;

use meeting_runs::{cost, from_capsule, judge, room, side, solved, two_into_one, wide};
use open::best;
use tubewright_geometry::{Frame, Point, Solid, UnitVector, Vector};
use tubewright_route::problem::{Bar, Body, BodyKind, Ports, Side, Turn, TurnRoom};
use tubewright_route::{Outcome, RouteProblem, ShopSteps, round_and_close};

/// How far a part may be turned in these tests: ten degrees either way of each angle.
fn ten_degrees() -> TurnRoom {
    let ten = 10.0_f64.to_radians();
    TurnRoom::about(Turn::NONE, Turn::from_array([ten; 3]))
}

/// A long can between two rails that run askew along the car, in a room that keeps it between them.
fn can_between_rails() -> RouteProblem {
    let (right_rad, can_mm, radius_mm) = (8.0_f64.to_radians(), 400.0, 60.0);
    let way = UnitVector::X.rotated_about(UnitVector::Z, right_rad);
    let across = UnitVector::Z.vector().cross(way.vector());
    let middle = Point::new(1000.0, 0.0, 200.0);
    let rail = |name: &str, side: f64| Body {
        id: name.into(),
        solid: Solid::Capsule {
            a: middle + across * (110.0 * side) - way * 400.0,
            b: middle + across * (110.0 * side) + way * 400.0,
            radius: 20.0,
        },
        gap_mm: 20.0,
        kind: BodyKind::Car,
    };
    let mut out = two_into_one(room([700.0, -60.0, 195.0], [850.0, 60.0, 205.0]));
    out.bodies = vec![rail("left rail", -1.0), rail("right rail", 1.0)];
    out.runs.remove(1);
    out.runs[1].end = Point::new(2400.0, 160.0, 220.0);
    let ports = Ports {
        inlet: Vector::ZERO,
        inlet_direction: UnitVector::X,
        outlet: Vector::new(can_mm + 60.0, 0.0, 0.0),
        outlet_direction: UnitVector::X,
    };
    let part = &mut out.crossovers[0];
    (part.left, part.right) = (ports, ports);
    part.body = vec![Bar {
        a: Vector::new(30.0, 0.0, 0.0),
        b: Vector::new(30.0 + can_mm, 0.0, 0.0),
        radius_mm,
    }];
    out
}

#[test]
fn a_way_that_only_a_turned_part_gives_is_found() {
    let mut narrow = can_between_rails();
    assert!(!matches!(solved(&narrow, &cost()), Outcome::Solved { .. }));
    narrow.crossovers[0].turns = ten_degrees();
    let route = best(solved(&narrow, &cost()));
    judge(&narrow, &route, (1e-6, 1e-6), 0.06);
    let pose = route.crossovers[0];
    let turned = pose.turn.right_rad.to_degrees();
    assert!((4.0..=10.0).contains(&turned), "{turned}");
    let bar = pose.bar(&narrow.crossovers[0].body[0]);
    for step in 0..=100 {
        let place = bar.line.at(bar.line.length() * f64::from(step) / 100.0);
        for body in &narrow.bodies {
            let gap = from_capsule(&body.solid, place) - bar.radius;
            assert!(gap > body.gap_mm - 0.06, "{gap} to {}", body.id);
        }
    }
    // Not by more than it may.
    let little = 2.0_f64.to_radians();
    narrow.crossovers[0].turns = TurnRoom::about(Turn::NONE, Turn::from_array([little; 3]));
    assert!(!matches!(solved(&narrow, &cost()), Outcome::Solved { .. }));
}

#[test]
fn a_merge_that_may_turn_is_never_dearer_and_its_bound_holds_however_it_is_turned() {
    let held = best(solved(&two_into_one(wide()), &cost()));
    let mut free = two_into_one(wide());
    free.crossovers[0].turns = ten_degrees();
    let turned = best(solved(&free, &cost()));
    judge(&free, &turned, (1e-6, 1e-6), 0.06);
    assert!(
        turned.cost <= held.cost + 0.01,
        "{} {}",
        turned.cost,
        held.cost
    );
    assert!(turned.lower_bound > 0.0 && turned.lower_bound <= turned.cost);
    assert!(turned.lower_bound <= held.cost);
    let within = free.crossovers[0].turns;
    for (k, angle) in turned.crossovers[0].turn.to_array().into_iter().enumerate() {
        let (least, most) = (within.least.to_array()[k], within.most.to_array()[k]);
        assert!((least..=most).contains(&angle), "{angle}");
    }
    // However it is held turned, it costs no less than the bound over all turns.
    let found = turned.crossovers[0].turn;
    for turn in [found, within.least, within.most] {
        let mut as_found = free.clone();
        as_found.crossovers[0].turns = TurnRoom::held(turn);
        let again = best(solved(&as_found, &cost()));
        judge(&as_found, &again, (1e-6, 1e-6), 0.06);
        assert_eq!(again.crossovers[0].turn, turn);
        assert!(
            turned.lower_bound <= again.cost,
            "{} {}",
            turned.lower_bound,
            again.cost
        );
    }
    // In whole steps everything still meets.
    let steps = ShopSteps {
        length_mm: 1.0,
        angle_rad: 0.5_f64.to_radians(),
        clock_rad: 0.5_f64.to_radians(),
    };
    let rounded = round_and_close(&free, &cost(), &turned, steps, None).unwrap();
    judge(&free, &rounded.route, (3.0, 0.02), 0.06);
}

/// A car that stands askew: everything turned about the vertical, the part held at that turn.
#[test]
fn a_problem_turned_with_its_part_costs_the_same() {
    let at = [1100.0, 10.0, 200.0];
    let one = two_into_one(room(at, at));
    let by = 25.0_f64.to_radians();
    let spin = |p: Point| {
        let v = p.to_vector().rotated_about(UnitVector::Z, by);
        Point::from_array(v.to_array())
    };
    let mut other = one.clone();
    for body in &mut other.bodies {
        if let Solid::Capsule { a, b, .. } = &mut body.solid {
            (*a, *b) = (spin(*a), spin(*b));
        }
    }
    for run in &mut other.runs {
        run.start = Frame::upright(
            spin(run.start.origin),
            run.start.travel().rotated_about(UnitVector::Z, by),
        );
        run.end = spin(run.end);
        run.end_direction = run.end_direction.rotated_about(UnitVector::Z, by);
    }
    let there = spin(Point::from_array(at)).to_array();
    other.crossovers[0].poses = room(there, there);
    other.crossovers[0].turns = TurnRoom::held(Turn {
        right_rad: by,
        ..Turn::NONE
    });
    let (a, b) = (best(solved(&one, &cost())), best(solved(&other, &cost())));
    judge(&other, &b, (1e-6, 1e-6), 0.06);
    assert!(
        (a.cost - b.cost).abs() < 0.02 * a.cost,
        "{} and {}",
        a.cost,
        b.cost
    );
    assert!(a.lower_bound <= b.cost && b.lower_bound <= a.cost);
    assert!((a.lower_bound - b.lower_bound).abs() < 0.05 * a.lower_bound);
}

#[test]
fn a_mirrored_merge_that_may_turn_is_a_mirrored_answer() {
    let mut one = two_into_one(room([900.0, -60.0, 190.0], [1300.0, 60.0, 210.0]));
    one.crossovers[0].turns = ten_degrees();
    let mut other = one.clone();
    let flip = |p: Point| Point::new(p.x, -p.y, p.z);
    for run in &mut other.runs {
        run.start = Frame::upright(flip(run.start.origin), UnitVector::X);
        run.end = flip(run.end);
    }
    other.runs[0].ends_at = Some(side(Side::Right));
    other.runs[1].ends_at = Some(side(Side::Left));
    let (a, b) = (
        best(solved(&one, &cost())).cost,
        best(solved(&other, &cost())).cost,
    );
    assert!((a - b).abs() < 0.02 * a, "{a} and {b}");
}
