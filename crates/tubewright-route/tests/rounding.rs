//! Routes in the shop's steps still keep every gap and end close to where they should.
#![expect(clippy::unwrap_used, clippy::panic, reason = "helpers of tests")]

mod open;

use std::sync::atomic::AtomicBool;

use open::{CLR_MM, walk};

use proptest::prelude::*;
use tubewright_geometry::{Frame, Point, Vector};
use tubewright_route::form::{read_problem, write_outcome};
use tubewright_route::problem::StockBend;
use tubewright_route::{
    Budget, CostModel, Outcome, Piece, Route, RouteProblem, ShopSteps, round_and_close, solve,
};

/// As near as a fitter can set an end, mm and degrees.
const GOOD: (f64, f64) = (1.0, 0.3);

fn rounded(name: &str, steps: ShopSteps, near: (f64, f64)) {
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
        assert!(end.distance_mm <= near.0, "{name}: {end:?}");
        assert!(end.direction_rad.to_degrees() <= near.1, "{name}: {end:?}");
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
    // Two bends and one straight: as many sizes as conditions, so that there is hardly a choice.
    rounded("a04-skew", ShopSteps::default(), (3.0, 0.5));
}

#[test]
fn run_under_the_crossmember_in_whole_mm_and_degrees() {
    rounded("b02-under-crossmember", ShopSteps::default(), GOOD);
}

/// Narrow between clutter, with stock bends that stay uncut.
#[test]
fn run_with_resonator_in_whole_mm_and_degrees() {
    rounded("c02-resonator", ShopSteps::default(), GOOD);
}

#[test]
fn run_over_the_axle_in_sixteenths_and_degrees() {
    let steps = ShopSteps {
        length_mm: 25.4 / 16.0,
        ..ShopSteps::default()
    };
    rounded("b05-over-axle", steps, GOOD);
}

/// A problem in the open whose end is where the pieces end.
fn problem_round(start: Frame, pieces: &[Piece]) -> RouteProblem {
    let arrival = walk(start, CLR_MM, pieces);
    let mut problem = open::problem(start, arrival.origin, Vec::new());
    problem.runs[0].end_direction = arrival.travel();
    problem.tubes[0].stock = [15.0, 30.0, 45.0, 60.0, 90.0_f64]
        .map(|degrees| StockBend {
            angle_rad: degrees.to_radians(),
            price: 10.0,
            leg_in_mm: 0.0,
            leg_out_mm: 0.0,
        })
        .to_vec();
    problem.rules.max_bends = 12;
    problem.rules.stub_mm = 0.0;
    problem
}

prop_compose! {
    /// A straight and a bend, which may be of a stock angle.
    fn straight_and_bend()(
        length in 45.0..500.0f64, degrees in 8.0..88.0f64, stock in 0..12_usize,
        clock in -180.0..180.0f64,
    ) -> [Piece; 2] {
        let degrees = [15.0, 30.0, 45.0, 60.0, 90.0].get(stock).copied().unwrap_or(degrees);
        [
            Piece::Straight { length_mm: length },
            Piece::Bend { angle_rad: f64::to_radians(degrees), clock_rad: f64::to_radians(clock) },
        ]
    }
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(24))]

    /// Runs of four to six bends of any sizes end within 1 mm and 0.3 degrees in whole millimetres
    /// and degrees, and the end that is told is the end that the pieces make.
    #[test]
    fn random_runs_in_the_open_close_well(
        parts in prop::collection::vec(straight_and_bend(), 4..=6), last in 45.0..400.0f64,
        x in -500.0..500.0f64, aim in (-1.0..1.0f64, -1.0..1.0f64, 0.1..1.0f64),
    ) {
        let travel = Vector::new(aim.0, aim.1, aim.2).direction().unwrap();
        let start = Frame::upright(Point::new(x, 20.0, 300.0), travel);
        let mut pieces: Vec<Piece> = parts.concat();
        pieces.push(Piece::Straight { length_mm: last });
        let problem = problem_round(start, &pieces);
        let cost = CostModel::route_problem(9.0, 4.0, 0.05, 1.5);
        let route = Route {
            name: "random".into(),
            runs: vec![pieces],
            crossovers: Vec::new(),
            ends: Vec::new(),
            cost: 0.0,
            terms: Vec::new(),
            lower_bound: 0.0,
            tightest: None,
        };
        let rounded = round_and_close(&problem, &cost, &route, ShopSteps::default(), None);
        // A run that comes back through itself is no run.
        let Ok(rounded) = rounded else { return Err(TestCaseError::reject("meets itself")) };
        let arrival = walk(start, 90.0, &rounded.route.runs[0]);
        let off_mm = arrival.origin.distance(problem.runs[0].end);
        let off_rad = arrival.travel().angle_to(problem.runs[0].end_direction);
        prop_assert!((off_mm - rounded.ends[0].distance_mm).abs() < 1e-6);
        prop_assert!((off_rad - rounded.ends[0].direction_rad).abs() < 1e-6);
        prop_assert!(off_mm <= 1.0 && off_rad.to_degrees() <= 0.3, "{off_mm} mm, {off_rad} rad");
    }
}
