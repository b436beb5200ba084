//! Cars that nobody wrote the program against, from their readings to what the saw marks give.
//!
//! `TUBEWRIGHT_RANDOM_CARS=500` walks more of them, `TUBEWRIGHT_RANDOM_CAR=17` one alone.

#![allow(
    clippy::print_stdout,
    reason = "what was measured is shown when the test is asked to show it"
)]

mod common;

use std::collections::BTreeMap;

use common::prove::prove;
use common::random::random_car;
use common::solved::{Solved, solve};
use tubewright_geometry::{Angle, Length};

/// Enough for a first plan.
const EFFORT: u64 = 500;

fn from_environment(name: &str) -> Option<u64> {
    std::env::var(name).ok()?.parse().ok()
}

#[test]
fn random_cars_are_what_their_cards_give() {
    let count = from_environment("TUBEWRIGHT_RANDOM_CARS").unwrap_or(22);
    let effort = from_environment("TUBEWRIGHT_EFFORT").unwrap_or(EFFORT);
    let seeds: Vec<u64> = match from_environment("TUBEWRIGHT_RANDOM_CAR") {
        Some(one) => vec![one],
        None => (0..count).collect(),
    };
    let (mut routed, mut cut) = (0, 0);
    let mut faults = Vec::new();
    for seed in &seeds {
        let car = random_car(*seed);
        let solved = solve(&car.build, &car.stock, None, &BTreeMap::new(), effort);
        assert!(
            solved.around.measured.frame_problem.is_none(),
            "car {seed}: {:?}",
            solved.around.measured.frame_problem
        );
        assert!(
            solved.around.bodies.missing.is_empty() && solved.posed.left_out.is_empty(),
            "car {seed}: {:?} {:?}",
            solved.around.bodies.missing,
            solved.posed.left_out
        );
        let verdict = prove(&solved);
        routed += u64::from(solved.best().is_some());
        cut += u64::from(
            solved
                .supply
                .as_ref()
                .is_some_and(|supply| supply.plan.is_full()),
        );
        for note in &verdict.notes {
            println!("car {seed}: {note}");
        }
        faults.extend(
            verdict
                .faults
                .iter()
                .map(|fault| format!("car {seed}: {fault}")),
        );
    }
    println!("{} cars, {routed} routed, {cut} cut", seeds.len());
    assert!(
        faults.is_empty(),
        "the walker finds {} faults:\n  {}",
        faults.len(),
        faults.join("\n  ")
    );
    // Else nothing was proved.
    assert!(
        seeds.len() < 10 || 2 * cut >= count,
        "only {cut} of {count} were cut"
    );
}

/// One car, small enough to be solved again and again.
fn small() -> Solved {
    let car = random_car(3);
    solve(&car.build, &car.stock, None, &BTreeMap::new(), 300)
}

/// What is wrong when `spoil` has had its way with a sound plan.
fn faults_after(spoil: impl Fn(&mut Solved)) -> Vec<String> {
    let mut solved = small();
    spoil(&mut solved);
    prove(&solved).faults
}

/// An error by its name, and how it is made.
type Planted = (&'static str, fn(&mut Solved));

#[test]
fn the_walker_notices_what_is_planted() {
    assert_eq!(faults_after(|_| {}), Vec::<String>::new());
    let planted: [Planted; 6] = [
        ("a clock half a degree off", |solved| {
            let supply = solved.supply.as_mut().expect("cut");
            let mut bends = supply.fits.iter_mut().filter(|fit| fit.clock.rad() != 0.0);
            let fit = bends.next_back().expect("a bend");
            let off = Angle::from_deg(0.5);
            fit.clock += off;
            let od = Length::from_mm(60.0);
            fit.round_outside += od * (off.rad() / 2.0);
        }),
        ("round the outside the other way", |solved| {
            let supply = solved.supply.as_mut().expect("cut");
            for fit in &mut supply.fits {
                fit.round_outside = -fit.round_outside;
            }
        }),
        ("a mark 2 mm off", |solved| {
            let supply = solved.supply.as_mut().expect("cut");
            for card in &mut supply.cards {
                for cut in &mut card.cuts {
                    cut.reach.outside += Length::from_mm(2.0);
                    cut.reach.inside += Length::from_mm(2.0);
                    cut.reach.side += Length::from_mm(2.0);
                }
            }
        }),
        ("the kerf on the other side", |solved| {
            use tubewright_stock::KerfSide;
            let supply = solved.supply.as_mut().expect("cut");
            for cut in supply.cards.iter_mut().flat_map(|card| &mut card.cuts) {
                cut.kerf = match cut.kerf {
                    KerfSide::TowardA => KerfSide::TowardB,
                    KerfSide::TowardB => KerfSide::TowardA,
                };
            }
        }),
        ("stock used twice", |solved| {
            let supply = solved.supply.as_mut().expect("cut");
            let again = supply.plan.cuts[0].clone();
            supply.plan.cuts.push(again);
        }),
        ("a body 60 mm nearer than it was judged", |solved| {
            let everywhere = tubewright_geometry::Vector::new(0.0, 0.0, 60.0);
            for body in &mut solved.around.bodies.placed {
                let placed = tubewright_geometry::Placement::shifted(everywhere);
                body.solid_in_car = placed.solid(&body.solid_in_car);
            }
        }),
    ];
    for (what, spoil) in planted {
        assert!(!faults_after(spoil).is_empty(), "{what} is not noticed");
    }
}
