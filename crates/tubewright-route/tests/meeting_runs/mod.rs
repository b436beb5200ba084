//! Two banks and a tail that meet in a merge, and a judge of what is found for them.
#![allow(dead_code, reason = "each test takes what it needs")]

use std::sync::atomic::AtomicBool;

use super::open::{problem, walk};
use tubewright_geometry::{Frame, Piece as TubePiece, Point, Solid, UnitVector, Vector};
use tubewright_route::problem::{
    Bar, Body, BodyKind, Crossover, Passage, Ports, Region, Run, Side, StockBend, TurnRoom,
};
use tubewright_route::{Budget, CostModel, Outcome, Piece, Route, RouteProblem, solve};

pub(crate) const TAIL_CLR_MM: f64 = 110.0;
pub(crate) const TAIL_RADIUS_MM: f64 = 36.0;
pub(crate) const RUN_GAP_MM: f64 = 25.0;

pub(crate) fn upright(at: [f64; 3]) -> Frame {
    Frame::upright(Point::from_array(at), UnitVector::X)
}

pub(crate) fn ahead(degrees: f64) -> UnitVector {
    UnitVector::X.rotated_about(UnitVector::Z, degrees.to_radians())
}

/// Two inlets of 60 mm, 76 mm apart, that lean together by 15° each, and one outlet of 72 mm.
pub(crate) fn merge(poses: Region) -> Crossover {
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

pub(crate) fn room(min: [f64; 3], max: [f64; 3]) -> Region {
    Region {
        min: Point::from_array(min),
        max: Point::from_array(max),
    }
}

pub(crate) fn side(side: Side) -> Passage {
    Passage { crossover: 0, side }
}

/// Two banks at either side of a gearbox, and one tail to the right of a differential.
pub(crate) fn two_into_one(poses: Region) -> RouteProblem {
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

pub(crate) fn wide() -> Region {
    room([800.0, -80.0, 150.0], [1500.0, 80.0, 260.0])
}

/// What is found at the effort of a problem of several runs.
pub(crate) fn solved(problem: &RouteProblem, cost: &CostModel) -> Outcome {
    let budget = Budget {
        work_units: 20_000,
        seed: 1,
    };
    solve(problem, cost, budget, &AtomicBool::new(false), &mut |_| {}).unwrap()
}

pub(crate) fn cost() -> CostModel {
    CostModel::route_problem(8.0, 3.0, 0.05, 6.0)
}

/// Places along the centre line of pieces, 2 mm apart, from the definitions.
pub(crate) fn places(start: Frame, clr_mm: f64, pieces: &[Piece]) -> Vec<(f64, Point)> {
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

pub(crate) fn clr_of(problem: &RouteProblem, run: usize) -> f64 {
    problem.tubes[problem.runs[run].tube].clr_mm
}

/// Where a run starts, from the pose that was found.
pub(crate) fn start_of(problem: &RouteProblem, route: &Route, run: usize) -> Frame {
    match problem.runs[run].starts_at {
        Some(passage) => {
            let ports = problem.crossovers[passage.crossover].ports(passage.side);
            let (place, travel) = route.crossovers[passage.crossover].outlet(ports);
            Frame::upright(place, travel)
        }
        None => problem.runs[run].start,
    }
}

pub(crate) fn from_capsule(solid: &Solid, place: Point) -> f64 {
    let Solid::Capsule { a, b, radius } = *solid else {
        panic!("only capsules here")
    };
    let along = ((place - a).dot(b - a) / (b - a).norm_squared()).clamp(0.0, 1.0);
    place.distance(a.lerp(b, along)) - radius
}

/// Every run begins and ends where it should, to the tolerance, and keeps its gaps to bodies and runs.
pub(crate) fn judge(
    problem: &RouteProblem,
    route: &Route,
    (place_mm, turn_rad): (f64, f64),
    slack_mm: f64,
) {
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
