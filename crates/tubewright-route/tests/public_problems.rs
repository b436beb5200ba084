//! Every answer to the problems in `tests/problems` is walked by the independent judge.
#![expect(clippy::unwrap_used, clippy::panic, reason = "helpers of tests")]

use std::sync::atomic::AtomicBool;

use tubewright_route::form::{read_problem, write_outcome};
use tubewright_route::route::Reason;
use tubewright_route::{Budget, Outcome, RouteProblem, solve};

fn text(name: &str) -> String {
    let path = format!("{}/tests/problems/{name}.json", env!("CARGO_MANIFEST_DIR"));
    std::fs::read_to_string(path).unwrap()
}

/// Solves with little effort and returns the cost that the judge finds.
fn judged(name: &str, work_units: u64) -> f64 {
    let text = text(name);
    let (problem, cost) = read_problem(&text).unwrap();
    let budget = Budget {
        work_units,
        seed: 1,
    };
    let outcome = solve(
        &problem,
        &cost,
        budget,
        &AtomicBool::new(false),
        &mut |_| {},
    )
    .unwrap();
    let Outcome::Solved { alternatives, .. } = &outcome else {
        panic!("{name}: {outcome:?}");
    };
    let verdict = tubewright_walker::judge(&text, &write_outcome(&problem, &outcome)).unwrap();
    assert!(
        verdict.violations.is_empty(),
        "{name}: {:?}",
        verdict.violations
    );
    assert!(
        verdict.closure_mm < 1e-6,
        "{name} closes to {} mm",
        verdict.closure_mm
    );
    let stated = alternatives[0].cost;
    assert!(
        (stated - verdict.cost).abs() < 1e-6,
        "{name}: states {stated}, the judge finds {}",
        verdict.cost
    );
    assert!(alternatives[0].lower_bound <= verdict.cost);
    verdict.cost
}

#[test]
fn rolling_offset_costs_no_more_than_the_reference() {
    assert!(judged("a02-rolling-offset", 1500) <= 57.52);
}

#[test]
fn skew_ends_cost_no_more_than_the_reference() {
    assert!(judged("a04-skew", 3000) <= 76.44);
}

#[test]
fn under_the_crossmember_holds() {
    assert!(judged("b02-under-crossmember", 1500) <= 1.25 * 89.85);
}

#[test]
fn over_the_axle_holds() {
    assert!(judged("b05-over-axle", 1500) <= 1.25 * 106.78);
}

#[test]
fn resonator_in_its_zone_holds() {
    assert!(judged("c02-resonator", 1500) <= 1.25 * 106.51);
}

#[test]
fn two_runs_through_a_crossover_hold() {
    assert!(judged("d01-x-open", 4000) <= 1.25 * 260.14);
}

fn reason(name: &str) -> Reason {
    let (problem, cost) = read_problem(&text(name)).unwrap();
    let budget = Budget {
        work_units: 4000,
        seed: 1,
    };
    match solve(
        &problem,
        &cost,
        budget,
        &AtomicBool::new(false),
        &mut |_| {},
    )
    .unwrap()
    {
        Outcome::Infeasible { reason, .. } => reason,
        other => panic!("{name}: {other:?}"),
    }
}

#[test]
fn windows_too_low_are_proven_blocked() {
    assert_eq!(reason("e01-blocked"), Reason::Blocked);
}

#[test]
fn too_little_advance_is_proven() {
    assert_eq!(reason("e04-room"), Reason::TooLittleRoom);
}

/// The same bytes from one thread, two and four.
#[test]
fn threads_change_nothing() {
    for (name, work_units) in [
        ("b02-under-crossmember", 800),
        ("c02-resonator", 400),
        ("d01-x-open", 800),
        ("e04-room", 300),
    ] {
        threads_change_nothing_of(name, work_units);
    }
}

fn threads_change_nothing_of(name: &str, work_units: u64) {
    let (problem, cost) = read_problem(&text(name)).unwrap();
    let run = |threads: usize| {
        let pool = rayon::ThreadPoolBuilder::new()
            .num_threads(threads)
            .build()
            .unwrap();
        let budget = Budget {
            work_units,
            seed: 3,
        };
        let outcome = pool
            .install(|| {
                solve(
                    &problem,
                    &cost,
                    budget,
                    &AtomicBool::new(false),
                    &mut |_| {},
                )
            })
            .unwrap();
        write_outcome(&problem, &outcome)
    };
    let one = run(1);
    assert_eq!(one, run(2), "{name}");
    assert_eq!(one, run(4), "{name}");
}

/// A cancelled search ends at once and says that it found nothing in this effort.
#[test]
fn cancelled_before_it_starts() {
    let (problem, cost) = read_problem(&text("a04-skew")).unwrap();
    let budget = Budget {
        work_units: 1_000_000,
        seed: 1,
    };
    let outcome = solve(&problem, &cost, budget, &AtomicBool::new(true), &mut |_| {}).unwrap();
    assert!(
        matches!(outcome, Outcome::NotFoundInEffort { work_units: 0 }),
        "{outcome:?}"
    );
}

/// Moved and mirrored, a problem costs the same.
#[test]
fn moving_and_mirroring_change_no_cost() {
    use tubewright_geometry::{Frame, Point, UnitVector, Vector};
    let (problem, cost) = read_problem(&text("a04-skew")).unwrap();
    let price = |problem: &RouteProblem| {
        let budget = Budget {
            work_units: 6000,
            seed: 1,
        };
        match solve(problem, &cost, budget, &AtomicBool::new(false), &mut |_| {}).unwrap() {
            Outcome::Solved { alternatives, .. } => alternatives[0].cost,
            other => panic!("{other:?}"),
        }
    };
    let here = price(&problem);
    let mut mirrored = problem.clone();
    let mut moved = problem.clone();
    let by = Vector::new(37.0, -12.0, 5.0);
    for run in &mut moved.runs {
        run.start.origin += by;
        run.end += by;
    }
    let flip = |v: Vector| Vector::new(v.x, -v.y, v.z);
    let turn = |u: UnitVector| flip(u.vector()).direction().unwrap();
    for run in &mut mirrored.runs {
        let place = flip(run.start.origin.to_vector());
        run.start = Frame::new(
            Point::ORIGIN + place,
            turn(run.start.travel()),
            flip(run.start.twelve().vector()),
        )
        .unwrap();
        run.end = Point::ORIGIN + flip(run.end.to_vector());
        run.end_direction = turn(run.end_direction);
    }
    for (what, other) in [("moved", &moved), ("mirrored", &mirrored)] {
        let there = price(other);
        assert!(
            (here - there).abs() < 0.02,
            "{what}: {there} instead of {here}"
        );
    }
}
