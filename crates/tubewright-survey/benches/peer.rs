//! Time of one adjustment, with covariance and residuals, from rough places, and of whole cars from
//! their readings alone.

#![allow(clippy::unwrap_used, reason = "a bench fails by panicking")]
#![allow(missing_docs, reason = "the bench harness makes public items")]

#[path = "../tests/common/mod.rs"]
mod common;

use common::{
    Checks,
    cars::{Kind, forty_points, random_car},
    check_network,
};
use divan::Bencher;
use tubewright_survey::{adjust, adjust_near, find_doubtful};

fn main() {
    divan::main();
}

#[divan::bench(args = ["tape-net-a-coords", "tape-net-b-coords", "tape-net-c-coords", "tape-net-d-free"])]
fn published_network(bencher: Bencher<'_, '_>, id: &str) {
    let net = check_network(Checks::networks().get(id).inputs);
    bencher.bench_local(|| adjust_near(&net.network, &net.start).unwrap().readings());
}

#[divan::bench]
fn forty_points_two_hundred_readings(bencher: Bencher<'_, '_>) {
    let (network, start, _) = forty_points(7);
    bencher.bench_local(|| adjust_near(&network, &start).unwrap().readings());
}

#[divan::bench]
fn car_of_twelve_points_and_two_ends_from_readings_alone(bencher: Bencher<'_, '_>) {
    let car = random_car(
        1,
        Kind {
            points: 6,
            ends: 2,
            lines: 4,
            heights: true,
            noise: 1.0,
        },
    );
    bencher.bench_local(|| adjust(&car.network).unwrap());
}

#[divan::bench]
fn a_slip_is_named(bencher: Bencher<'_, '_>) {
    let mut car = random_car(
        1,
        Kind {
            points: 6,
            ends: 0,
            lines: 5,
            heights: true,
            noise: 1.0,
        },
    );
    car.network.readings[20].value += 100.0;
    let adjustment = adjust(&car.network).unwrap();
    bencher.bench_local(|| find_doubtful(&adjustment).doubtful.len());
}
