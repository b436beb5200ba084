//! Time of the whole search: the public problems at a fifth of the usual effort, and how it grows
//! with bodies and bends.
#![expect(clippy::unwrap_used, reason = "a bench on its own data")]

#[path = "../tests/hidden_runs/mod.rs"]
mod hidden_runs;

use std::sync::atomic::AtomicBool;

use tubewright_route::form::read_problem;
use tubewright_route::{Budget, Outcome, solve};

fn main() {
    divan::main();
}

fn solved(text: &str, work_units: u64) -> Outcome {
    let (problem, cost) = read_problem(text).unwrap();
    let budget = Budget {
        work_units,
        seed: 1,
    };
    solve(
        &problem,
        &cost,
        budget,
        &AtomicBool::new(false),
        &mut |_| {},
    )
    .unwrap()
}

/// One public problem with 4000 work units, bound and alternatives with it.
#[divan::bench(sample_count = 3, sample_size = 1, args = [
    "a02-rolling-offset", "a04-skew", "b02-under-crossmember", "b05-over-axle", "c02-resonator",
    "d01-x-open", "e01-blocked", "e04-room",
])]
fn public(bencher: divan::Bencher<'_, '_>, name: &str) {
    let path = format!("{}/tests/problems/{name}.json", env!("CARGO_MANIFEST_DIR"));
    let text = std::fs::read_to_string(path).unwrap();
    bencher.bench(|| solved(&text, 4000));
}

/// A hidden run of three bends among so many bodies, 1000 work units.
#[divan::bench(sample_count = 3, sample_size = 1, args = [2, 10, 40, 160])]
fn bodies(bencher: divan::Bencher<'_, '_>, bodies: usize) {
    let text = hidden_runs::sized(3, bodies, 1).problem;
    bencher.bench(|| solved(&text, 1000));
}

/// A hidden run of so many bends among eight bodies, 1000 work units.
#[divan::bench(sample_count = 3, sample_size = 1, args = [2, 4, 8, 12])]
fn bends(bencher: divan::Bencher<'_, '_>, bends: usize) {
    let text = hidden_runs::sized(bends, 8, 1).problem;
    bencher.bench(|| solved(&text, 1000));
}
