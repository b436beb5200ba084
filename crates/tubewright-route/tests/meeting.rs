//! Runs that end in one part and runs that leave it: two banks into one tail, one into two tips, a cone
//! between two sizes.
#![expect(clippy::unwrap_used, clippy::panic, reason = "helpers of tests")]

mod meeting_runs;
mod open;

use meeting_runs::{
    TAIL_CLR_MM, TAIL_RADIUS_MM, ahead, cost, judge, room, side, solved, two_into_one, upright,
    wide,
};
use open::{CLR_MM, best, problem};
use tubewright_geometry::{Frame, Point, Solid, UnitVector, Vector};
use tubewright_route::problem::{Bar, Body, BodyKind, Crossover, Ports, Run, Side, TurnRoom};
use tubewright_route::{Outcome, RouteProblem, ShopSteps, round_and_close};

#[test]
fn two_banks_meet_in_one_tail_of_another_size() {
    let problem = two_into_one(wide());
    let Outcome::Solved { alternatives, .. } = solved(&problem, &cost()) else {
        panic!("there is a way")
    };
    for route in &alternatives {
        judge(&problem, route, (1e-6, 1e-6), 0.06);
        assert!(route.lower_bound <= route.cost + 1e-9);
        assert!(route.lower_bound > 0.0);
    }
    // In whole steps everything still meets.
    let steps = ShopSteps {
        length_mm: 1.0,
        angle_rad: 0.5_f64.to_radians(),
        clock_rad: 0.5_f64.to_radians(),
    };
    let route = &alternatives[0];
    let rounded = round_and_close(&problem, &cost(), route, steps, None).unwrap();
    assert!(rounded.ends.iter().all(|end| end.is_end));
    judge(&problem, &rounded.route, (3.0, 0.02), 0.06);
}

/// A run that comes to an old stretch from the front and one that goes on from it: the stretch itself is nearer to a
/// beam than any tube may come.
fn round_an_old_stretch(stands: bool) -> RouteProblem {
    let beam = Body {
        id: "beam".into(),
        solid: Solid::Capsule {
            a: Point::new(1500.0, -400.0, 285.0),
            b: Point::new(1500.0, 400.0, 285.0),
            radius: 40.0,
        },
        gap_mm: 30.0,
        kind: BodyKind::Car,
    };
    let mut out = problem(upright([0.0, -150.0, 250.0]), Point::ORIGIN, vec![beam]);
    let ports = Ports {
        inlet: Vector::new(1000.0, 60.0, 180.0),
        inlet_direction: ahead(10.0),
        outlet: Vector::new(2000.0, 120.0, 200.0),
        outlet_direction: ahead(-5.0),
    };
    out.crossovers = vec![Crossover {
        id: "old".into(),
        poses: room([0.0; 3], [0.0; 3]),
        turns: TurnRoom::NONE,
        ports_within: None,
        body: vec![Bar {
            a: ports.inlet,
            b: ports.outlet,
            radius_mm: 30.0,
        }],
        left: ports,
        right: ports,
        stands,
    }];
    let run = out.runs[0].clone();
    let front = Run {
        id: "front".into(),
        ends_at: Some(side(Side::Left)),
        ..run.clone()
    };
    let rear = Run {
        id: "rear".into(),
        end: Point::new(3000.0, 300.0, 260.0),
        starts_at: Some(side(Side::Left)),
        ..run
    };
    out.runs = vec![front, rear];
    out
}

#[test]
fn a_stretch_that_stands_is_met_where_it_is_and_not_asked_for_its_gap() {
    let problem = round_an_old_stretch(true);
    let route = best(solved(&problem, &cost()));
    judge(&problem, &route, (1e-6, 1e-6), 0.06);
    let place = route.crossovers[0].origin;
    assert!(
        place.distance(Point::ORIGIN) < 1e-12,
        "it moved to {place:?}"
    );
    assert!(route.lower_bound > 0.0 && route.lower_bound <= route.cost + 1e-9);
    // As a part that is still to be put there it would be too near to the beam.
    let to_be_put = round_an_old_stretch(false);
    assert!(!matches!(
        solved(&to_be_put, &cost()),
        Outcome::Solved { .. }
    ));
}

#[test]
fn held_in_one_place_three_runs_cost_what_they_cost_alone() {
    let at = [1100.0, 10.0, 200.0];
    let held = two_into_one(room(at, at));
    let together = best(solved(&held, &cost()));
    judge(&held, &together, (1e-6, 1e-6), 0.06);
    let alone: f64 = (0..3)
        .map(|run| {
            let mut one = held.clone();
            let ports = *held.crossovers[0].ports(if run == 1 { Side::Right } else { Side::Left });
            let mut own = held.runs[run].clone();
            if own.starts_at.take().is_some() {
                own.start =
                    Frame::upright(Point::from_array(at) + ports.outlet, ports.outlet_direction);
            }
            if own.ends_at.take().is_some() {
                own.end = Point::from_array(at) + ports.inlet;
                own.end_direction = ports.inlet_direction;
            }
            one.runs = vec![own];
            one.crossovers.clear();
            best(solved(&one, &cost())).cost
        })
        .sum();
    assert!(
        (together.cost - alone).abs() < 0.01 * alone,
        "{} and {alone}",
        together.cost
    );
    // What no place of the part can cost less than, this place does not.
    let some = room([950.0, -40.0, 170.0], [1250.0, 60.0, 230.0]);
    let free = best(solved(&two_into_one(some), &cost()));
    assert!(free.lower_bound <= together.cost.min(free.cost));
    assert!(free.lower_bound > 0.6 * together.cost);
}

#[test]
fn one_run_parts_into_two_tips() {
    let mut parting = two_into_one(wide());
    let ports = |side: f64| Ports {
        inlet: Vector::ZERO,
        inlet_direction: UnitVector::X,
        outlet: Vector::new(160.0, 38.0 * side, 0.0),
        outlet_direction: ahead(15.0 * side),
    };
    let (left, right) = (ports(-1.0), ports(1.0));
    parting.crossovers[0].left = left;
    parting.crossovers[0].right = right;
    let bank = parting.runs[0].clone();
    let tip = |name: &str, y: f64, out: Side| Run {
        id: name.into(),
        starts_at: Some(side(out)),
        ends_at: None,
        end: Point::new(3000.0, y, 260.0),
        ..bank.clone()
    };
    parting.runs = vec![
        bank.clone(),
        tip("tip left", -450.0, Side::Left),
        tip("tip right", 450.0, Side::Right),
    ];
    let route = best(solved(&parting, &cost()));
    judge(&parting, &route, (1e-6, 1e-6), 0.06);
}

#[test]
fn a_cone_joins_two_sizes() {
    let mut coned = two_into_one(wide());
    let ports = Ports {
        inlet: Vector::ZERO,
        inlet_direction: UnitVector::X,
        outlet: Vector::new(90.0, 0.0, 0.0),
        outlet_direction: UnitVector::X,
    };
    coned.crossovers[0].left = ports;
    coned.crossovers[0].right = ports;
    coned.crossovers[0].body = vec![Bar {
        a: ports.inlet,
        b: ports.outlet,
        radius_mm: TAIL_RADIUS_MM,
    }];
    coned.runs.remove(1);
    let route = best(solved(&coned, &cost()));
    judge(&coned, &route, (1e-6, 1e-6), 0.06);
    assert!((CLR_MM - TAIL_CLR_MM).abs() > 1.0);
}

#[test]
fn a_mirrored_merge_is_a_mirrored_answer() {
    let one = two_into_one(room([900.0, -60.0, 190.0], [1300.0, 60.0, 210.0]));
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
