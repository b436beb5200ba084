//! Runs that end in one part and runs that leave it: two banks into one tail, one into two tips, a cone
//! between two sizes.
#![expect(clippy::unwrap_used, clippy::panic, reason = "helpers of tests")]

mod open;

use std::sync::atomic::AtomicBool;

use open::{CLR_MM, best, problem, walk};
use tubewright_geometry::{Frame, Piece as TubePiece, Point, Solid, UnitVector, Vector};
use tubewright_route::problem::{
    Bar, Body, BodyKind, Crossover, Passage, Ports, Region, Run, Side, StockBend, TurnRoom,
};
use tubewright_route::{
    Budget, CostModel, Outcome, Piece, Route, RouteProblem, ShopSteps, round_and_close, solve,
};

const TAIL_CLR_MM: f64 = 110.0;
const TAIL_RADIUS_MM: f64 = 36.0;
const RUN_GAP_MM: f64 = 25.0;

fn upright(at: [f64; 3]) -> Frame {
    Frame::upright(Point::from_array(at), UnitVector::X)
}

fn ahead(degrees: f64) -> UnitVector {
    UnitVector::X.rotated_about(UnitVector::Z, degrees.to_radians())
}

/// Two inlets of 60 mm, 76 mm apart, that lean together by 15° each, and one outlet of 72 mm.
fn merge(poses: Region) -> Crossover {
    let ports = |side: f64| Ports {
        inlet: Vector::new(0.0, 38.0 * side, 0.0),
        inlet_direction: ahead(-15.0 * side),
        outlet: Vector::new(160.0, 0.0, 0.0),
        outlet_direction: UnitVector::X,
    };
    let (left, right) = (ports(-1.0), ports(1.0));
    let bar = |ports: &Ports| Bar {
        a: ports.inlet,
        b: ports.outlet,
        radius_mm: 32.0,
    };
    Crossover {
        id: "Y".into(),
        stands: false,
        turns: TurnRoom::NONE,
        ports_within: None,
        poses,
        body: vec![bar(&left), bar(&right)],
        left,
        right,
    }
}

fn room(min: [f64; 3], max: [f64; 3]) -> Region {
    Region {
        min: Point::from_array(min),
        max: Point::from_array(max),
    }
}

fn side(side: Side) -> Passage {
    Passage { crossover: 0, side }
}

/// Two banks at either side of a gearbox, and one tail to the right of a differential.
fn two_into_one(poses: Region) -> RouteProblem {
    let gearbox = Body {
        id: "gearbox".into(),
        solid: Solid::Capsule {
            a: Point::new(-200.0, 0.0, 330.0),
            b: Point::new(600.0, 0.0, 330.0),
            radius: 130.0,
        },
        gap_mm: 20.0,
        kind: BodyKind::Car,
    };
    let axle = Body {
        id: "axle".into(),
        solid: Solid::Capsule {
            a: Point::new(2200.0, -700.0, 220.0),
            b: Point::new(2200.0, 700.0, 220.0),
            radius: 60.0,
        },
        gap_mm: 25.0,
        kind: BodyKind::Car,
    };
    let mut out = problem(
        upright([0.0, -260.0, 200.0]),
        Point::ORIGIN,
        vec![gearbox, axle],
    );
    out.rules.run_gap_mm = RUN_GAP_MM;
    out.rules.self_gap_mm = 10.0;
    let mut tail_tube = out.tubes[0].clone();
    tail_tube.id = "72".into();
    tail_tube.od_mm = 2.0 * TAIL_RADIUS_MM;
    tail_tube.clr_mm = TAIL_CLR_MM;
    tail_tube.stock = vec![StockBend {
        angle_rad: 90.0_f64.to_radians(),
        price: 16.0,
        leg_in_mm: 0.0,
        leg_out_mm: 0.0,
    }];
    out.tubes.push(tail_tube);
    let bank = out.runs[0].clone();
    let left = Run {
        id: "left".into(),
        ends_at: Some(side(Side::Left)),
        ..bank.clone()
    };
    let right = Run {
        id: "right".into(),
        start: upright([40.0, 240.0, 190.0]),
        ends_at: Some(side(Side::Right)),
        ..bank.clone()
    };
    let tail = Run {
        id: "tail".into(),
        tube: 1,
        end: Point::new(3000.0, 420.0, 260.0),
        starts_at: Some(side(Side::Left)),
        ..bank
    };
    out.runs = vec![left, right, tail];
    out.crossovers = vec![merge(poses)];
    out
}

fn wide() -> Region {
    room([800.0, -80.0, 150.0], [1500.0, 80.0, 260.0])
}

/// What is found at the effort of a problem of several runs.
fn solved(problem: &RouteProblem, cost: &CostModel) -> Outcome {
    let budget = Budget {
        work_units: 20_000,
        seed: 1,
    };
    solve(problem, cost, budget, &AtomicBool::new(false), &mut |_| {}).unwrap()
}

fn cost() -> CostModel {
    CostModel::route_problem(8.0, 3.0, 0.05, 6.0)
}

/// Places along the centre line of pieces, 2 mm apart, from the definitions.
fn places(start: Frame, clr_mm: f64, pieces: &[Piece]) -> Vec<(f64, Point)> {
    let mut out = Vec::new();
    let (mut frame, mut along) = (start, 0.0);
    for piece in pieces {
        let length = match *piece {
            Piece::Straight { length_mm } => length_mm,
            Piece::Bend { angle_rad, .. } => angle_rad * clr_mm,
            _ => panic!("no component here"),
        };
        let mut at = 0.0;
        while at < length {
            let part = match *piece {
                Piece::Bend { clock_rad, .. } => TubePiece::Bend {
                    bend_rad: at / clr_mm,
                    clock_rad,
                    clr_mm,
                },
                _ => TubePiece::Straight { length_mm: at },
            };
            let here = match part {
                TubePiece::Bend {
                    bend_rad,
                    clock_rad,
                    ..
                } => frame.rolled(clock_rad).bent(bend_rad, clr_mm),
                _ => frame.advanced(at),
            };
            out.push((along + at, here.origin));
            at += 2.0;
        }
        frame = walk(frame, clr_mm, core::slice::from_ref(piece));
        along += length;
    }
    out.push((along, frame.origin));
    out
}

fn clr_of(problem: &RouteProblem, run: usize) -> f64 {
    problem.tubes[problem.runs[run].tube].clr_mm
}

/// Where a run starts, from the pose that was found.
fn start_of(problem: &RouteProblem, route: &Route, run: usize) -> Frame {
    match problem.runs[run].starts_at {
        Some(passage) => {
            let ports = problem.crossovers[passage.crossover].ports(passage.side);
            let (place, travel) = route.crossovers[passage.crossover].outlet(ports);
            Frame::upright(place, travel)
        }
        None => problem.runs[run].start,
    }
}

fn from_capsule(solid: &Solid, place: Point) -> f64 {
    let Solid::Capsule { a, b, radius } = *solid else {
        panic!("only capsules here")
    };
    let along = ((place - a).dot(b - a) / (b - a).norm_squared()).clamp(0.0, 1.0);
    place.distance(a.lerp(b, along)) - radius
}

/// Every run begins and ends where it should, to the tolerance, and keeps its gaps to bodies and runs.
fn judge(problem: &RouteProblem, route: &Route, (place_mm, turn_rad): (f64, f64), slack_mm: f64) {
    let mut lines = Vec::new();
    for (number, (run, pieces)) in problem.runs.iter().zip(&route.runs).enumerate() {
        let clr = clr_of(problem, number);
        let start = start_of(problem, route, number);
        assert!(route.ends[number].start.origin.distance(start.origin) < 1e-9);
        let arrival = walk(start, clr, pieces);
        let (end, direction) = match run.ends_at {
            Some(passage) => {
                let ports = problem.crossovers[passage.crossover].ports(passage.side);
                route.crossovers[passage.crossover].inlet(ports)
            }
            None => (run.end, run.end_direction),
        };
        assert!(route.ends[number].end.distance(end) < 1e-9);
        let off = arrival.origin.distance(end);
        assert!(off <= place_mm, "{} ends {off} mm off", run.id);
        let turned = arrival.travel().angle_to(direction);
        assert!(turned <= turn_rad, "{} is {turned} rad off", run.id);
        lines.push(places(start, clr, pieces));
    }
    let radius = |run: usize| 0.5 * problem.tubes[problem.runs[run].tube].od_mm;
    for (number, line) in lines.iter().enumerate() {
        for (_, place) in line {
            for body in &problem.bodies {
                let gap = from_capsule(&body.solid, *place) - radius(number) - body.gap_mm;
                assert!(gap > -slack_mm, "{gap} to {}", body.id);
            }
        }
    }
    // Away from the part the runs keep their gap; beside it they part as its ports do.
    for (a, first) in lines.iter().enumerate() {
        for (b, second) in lines.iter().enumerate().skip(a + 1) {
            let near = |run: usize, along: f64, line: &[(f64, Point)]| {
                let reach = core::f64::consts::PI * clr_of(problem, run) + 1.0;
                let length = line.last().unwrap().0;
                match problem.runs[run].starts_at {
                    Some(_) => along <= reach,
                    None => length - along <= reach,
                }
            };
            let port = |run: usize, line: &[(f64, Point)]| match problem.runs[run].starts_at {
                Some(_) => line[0].1,
                None => line.last().unwrap().1,
            };
            let both = radius(a) + radius(b);
            let at_ports = port(a, first).distance(port(b, second)) - both;
            for (s, p) in first {
                for (t, q) in second {
                    let gap = p.distance(*q) - both;
                    let wanted = if near(a, *s, first) && near(b, *t, second) {
                        at_ports.min(RUN_GAP_MM) - 0.2
                    } else {
                        RUN_GAP_MM
                    };
                    assert!(gap > wanted - slack_mm, "{gap} < {wanted} of {a} and {b}");
                }
            }
        }
    }
}

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
