//! Cars are found from their readings alone.
#![allow(
    clippy::unwrap_used,
    clippy::panic,
    clippy::print_stderr,
    reason = "a test fails by panicking"
)]

mod common;

use common::cars::{Kind, random_car};
use tubewright_survey::{EndId, Handedness, PointId, adjust};

/// Every place of an exactly measured car is found again, without one coordinate.
fn found_again(kind: Kind, seeds: core::ops::Range<u64>, needed: usize) {
    let count = seeds.end - seeds.start;
    let mut found = 0;
    for seed in seeds {
        let car = random_car(seed, kind);
        let adjustment = adjust(&car.network).unwrap();
        assert_eq!(adjustment.handedness(), Handedness::Told, "seed {seed}");
        let survey = adjustment.seen_from(&car.frame).unwrap();
        let worst = (0..car.places.len())
            .map(|i| {
                survey
                    .point(PointId(i))
                    .map_or(f64::INFINITY, |p| p.place.distance(car.places[i]))
            })
            .chain((0..car.ends.len()).map(|i| {
                survey.end(EndId(i)).map_or(f64::INFINITY, |e| {
                    let turn = e.frame.travel().angle_to(car.ends[i].travel())
                        + e.frame.twelve().angle_to(car.ends[i].twelve());
                    e.frame.origin.distance(car.ends[i].origin) + 100.0 * turn
                })
            }))
            .fold(0.0, f64::max);
        if worst < 1e-4 {
            found += 1;
        } else {
            eprintln!(
                "seed {seed}: off by {worst} mm, vtpv {}",
                adjustment.global_test().vtpv
            );
        }
    }
    assert!(found >= needed, "found {found} of {count} cars");
}

#[test]
fn with_heights() {
    let kind = Kind {
        points: 6,
        ends: 0,
        lines: 3,
        heights: true,
        noise: 0.0,
    };
    found_again(kind, 0..100, 100);
}

#[test]
fn with_ends() {
    let kind = Kind {
        points: 3,
        ends: 2,
        lines: 4,
        heights: true,
        noise: 0.0,
    };
    found_again(kind, 0..40, 40);
}

#[test]
fn distances_only() {
    let kind = Kind {
        points: 6,
        ends: 0,
        lines: 4,
        heights: false,
        noise: 0.0,
    };
    found_again(kind, 0..60, 60);
}
