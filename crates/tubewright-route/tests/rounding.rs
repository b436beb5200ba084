//! Routes in the shop's steps still keep every gap and end close to where they should.
#![expect(clippy::unwrap_used, clippy::panic, reason = "helpers of tests")]

use std::sync::atomic::AtomicBool;

use tubewright_route::form::{read_problem, write_outcome};
use tubewright_route::{Budget, Outcome, Piece, ShopSteps, round_and_close, solve};

fn rounded(name: &str, steps: ShopSteps) {
    let path = format!("{}/tests/problems/{name}.json", env!("CARGO_MANIFEST_DIR"));
    let text = std::fs::read_to_string(path).unwrap();
    let (problem, cost) = read_problem(&text).unwrap();
    let budget = Budget {
        work_units: 1000,
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
        panic!("{name} {outcome:?}");
    };
    let r = round_and_close(&problem, &cost, &alternatives[0], steps, None).unwrap();
    for piece in r.route.runs.iter().flatten() {
        let whole = |value: f64, step: f64| ((value / step) - (value / step).round()).abs() < 1e-6;
        match *piece {
            Piece::Straight { length_mm } => {
                assert!(whole(length_mm, steps.length_mm), "{length_mm}");
            }
            Piece::Bend {
                angle_rad,
                clock_rad,
            } => {
                assert!(whole(angle_rad, steps.angle_rad) && whole(clock_rad, steps.clock_rad));
            }
            _ => {}
        }
    }
    for end in &r.ends {
        assert!(end.distance_mm < 4.0, "{name}: {end:?}");
        assert!(end.direction_rad.to_degrees() < 1.0, "{name}: {end:?}");
    }
    // The judge sees the same end error and no gap broken.
    let shown = Outcome::Solved {
        alternatives: vec![r.route.clone()],
        work_units: 0,
    };
    let verdict = tubewright_walker::judge(&text, &write_outcome(&problem, &shown)).unwrap();
    assert!(
        verdict.violations.iter().all(|v| v.rule == 2),
        "{name}: {:?}",
        verdict.violations
    );
    let worst = r.ends.iter().map(|e| e.distance_mm).fold(0.0, f64::max);
    assert!((verdict.closure_mm - worst).abs() < 1e-6);
    assert!((verdict.cost - r.route.cost).abs() < 1e-6);
}

#[test]
fn open_run_in_whole_mm_and_degrees() {
    rounded("a04-skew", ShopSteps::default());
}

#[test]
fn run_under_the_crossmember_in_whole_mm_and_degrees() {
    rounded("b02-under-crossmember", ShopSteps::default());
}

/// Narrow between clutter: whole degrees leave no way, a fifth of one does.
#[test]
fn run_with_resonator_in_finer_steps() {
    let steps = ShopSteps {
        length_mm: 0.5,
        angle_rad: 0.2_f64.to_radians(),
        clock_rad: 0.2_f64.to_radians(),
    };
    rounded("c02-resonator", steps);
}
