//! Cars that nobody wrote the program against, from their readings to what the saw marks give.
//!
//! `TUBEWRIGHT_RANDOM_CARS=500` walks more of them, `TUBEWRIGHT_RANDOM_CAR=17` one alone.

#![allow(
    clippy::print_stdout,
    clippy::expect_used,
    reason = "what was measured is shown when the test is asked to show it; helpers may stop a test"
)]

mod common;

use std::collections::BTreeMap;

use common::prove::{prove, prove_others};
use common::random::meeting::random_meeting_car;
use common::random::random_car;
use common::solved::{Solved, solve};
use tubewright_geometry::{Angle, Length};
use tubewright_plan::stages::Supply;
use tubewright_stock::PartPlace;

/// Enough for a first plan.
const EFFORT: u64 = 500;

/// Every body is there and every run is put to the solver.
fn assert_whole(solved: &Solved, seed: u64) {
    let (missing, left_out) = (&solved.around.bodies.missing, &solved.posed.left_out);
    assert!(
        missing.is_empty() && left_out.is_empty(),
        "car {seed}: {missing:?} {left_out:?}"
    );
}

fn assert_sound(faults: &[String]) {
    assert!(
        faults.is_empty(),
        "the walker finds {} faults:\n  {}",
        faults.len(),
        faults.join("\n  ")
    );
}

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
    let (mut routed, mut cut, mut others) = (0, 0, 0);
    let mut faults = Vec::new();
    for seed in &seeds {
        let car = random_car(*seed);
        let solved = solve(&car.build, &car.stock, None, &BTreeMap::new(), effort);
        assert!(
            solved.around.measured.frame_problem.is_none(),
            "car {seed}: {:?}",
            solved.around.measured.frame_problem
        );
        assert_whole(&solved, *seed);
        let mut verdict = prove(&solved);
        // The other ways of every third car: they take as long as the first ones together.
        if seed % 3 == 0 {
            let (more, of_others) = prove_others(&solved);
            others += more;
            verdict.faults.extend(of_others.faults);
            verdict.notes.extend(of_others.notes);
        }
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
    println!(
        "{} cars, {routed} routed, {cut} cut, {others} other ways",
        seeds.len()
    );
    assert_sound(&faults);
    // Else nothing was proved.
    assert!(
        seeds.len() < 10 || 2 * cut >= count,
        "only {cut} of {count} were cut"
    );
}

#[test]
fn random_cars_whose_runs_meet_are_what_their_cards_give() {
    let count = from_environment("TUBEWRIGHT_RANDOM_CARS").unwrap_or(8);
    let effort = from_environment("TUBEWRIGHT_EFFORT").unwrap_or(4000);
    let seeds: Vec<u64> = match from_environment("TUBEWRIGHT_RANDOM_CAR") {
        Some(one) => vec![one],
        None => (0..count).collect(),
    };
    let (mut routed, mut cut) = (0, 0);
    let mut faults = Vec::new();
    for seed in &seeds {
        let car = random_meeting_car(*seed);
        let solved = solve(&car.build, &car.stock, None, &BTreeMap::new(), effort);
        assert_whole(&solved, *seed);
        let verdict = prove(&solved);
        routed += u64::from(solved.best().is_some());
        let is_full = |supply: &Supply| supply.plan.is_full();
        cut += u64::from(solved.supply.as_ref().is_some_and(is_full));
        for note in &verdict.notes {
            println!("car {seed}: {note}");
        }
        let named = verdict
            .faults
            .iter()
            .map(|fault| format!("car {seed}: {fault}"));
        faults.extend(named);
    }
    println!("{} cars, {routed} routed, {cut} cut", seeds.len());
    assert_sound(&faults);
    assert!(
        seeds.len() < 8 || 2 * cut >= count,
        "only {cut} of {count} were cut"
    );
}

/// One car, small enough to be solved again and again.
fn small() -> Solved {
    let car = random_car(3);
    solve(&car.build, &car.stock, None, &BTreeMap::new(), 300)
}

/// What is wrong when `spoil` has had its way with a sound plan: it says what must be named.
fn faults_after(spoil: impl Fn(&mut Solved) -> String) -> (String, Vec<String>) {
    let mut solved = small();
    let named = spoil(&mut solved);
    (named, prove(&solved).faults)
}

/// An error by its name, and how it is made.
type Planted = (&'static str, fn(&mut Solved) -> String);

fn every_cut(solved: &mut Solved) -> impl Iterator<Item = &mut tubewright_stock::Cut> {
    let supply = solved.supply.as_mut().expect("cut");
    supply.cards.iter_mut().flat_map(|card| &mut card.cuts)
}

fn shift(cut: &mut tubewright_stock::Cut, mm: f64) {
    for reading in [
        &mut cut.reach.outside,
        &mut cut.reach.inside,
        &mut cut.reach.side,
    ] {
        *reading += Length::from_mm(mm);
    }
}

fn marks_of(part: &tubewright_stock::CutPart) -> Vec<String> {
    part.serves
        .iter()
        .map(|serves| serves.mark.clone())
        .collect()
}

/// Errors of one size on one thing: the walker must name the thing.
#[test]
fn the_walker_names_what_is_planted() {
    let planted: [Planted; 5] = [
        ("a mark on a leg or straight 1.5 mm off", |solved| {
            let cut = every_cut(solved)
                .find(|cut| (cut.reach.outside - cut.reach.inside).mm().abs() < 1e-9)
                .expect("a square cut on a straight");
            shift(cut, 1.5);
            cut.faces[0].clone()
        }),
        ("a mark in an arc 1.5 mm off along every line", |solved| {
            let cut = every_cut(solved)
                .find(|cut| (cut.reach.outside - cut.reach.inside).mm() > 1.0)
                .expect("a cut in an arc");
            // The three readings no longer are of one place.
            shift(cut, 1.5);
            format!("cut {}", cut.number)
        }),
        ("a mark in an arc at another place by 1.5 mm", |solved| {
            let supply = solved.supply.as_mut().expect("cut");
            let (card, index) = supply
                .cards
                .iter_mut()
                .find_map(|card| {
                    let index = card
                        .cuts
                        .iter()
                        .position(|cut| (cut.reach.outside - cut.reach.inside).mm() > 1.0)?;
                    Some((card, index))
                })
                .expect("a cut in an arc");
            let tubewright_stock::StockShape::Bend { clr, .. } = card.stock.shape else {
                panic!("a bend");
            };
            let r = card.stock.tube.od.mm() / 2.0;
            let cut = &mut card.cuts[index];
            let turn = 1.5 / (clr.mm() + r);
            cut.reach.outside += Length::from_mm(1.5);
            cut.reach.side += Length::from_mm(turn * clr.mm());
            cut.reach.inside += Length::from_mm(turn * (clr.mm() - r));
            cut.faces[0].clone()
        }),
        ("a clock a degree off", |solved| {
            let supply = solved.supply.as_mut().expect("cut");
            let mut bends = supply.fits.iter_mut().filter(|fit| fit.clock.rad() != 0.0);
            let fit = bends.next_back().expect("a bend");
            let off = Angle::from_deg(1.0);
            let before = fit.clock.rad();
            fit.clock += off;
            let od = fit.round_outside / (before / 2.0);
            fit.round_outside += od * (off.rad() / 2.0);
            fit.marks.join(" + ")
        }),
        ("two parts swapped", |solved| {
            let supply = solved.supply.as_mut().expect("cut");
            // Two parts of different size whose marks are painted the wrong way round.
            let parts: Vec<(Vec<String>, f64)> = supply
                .cards
                .iter()
                .flat_map(|card| &card.parts)
                .map(|part| {
                    let size = match part.place {
                        PartPlace::Arc { sweep, .. } => -sweep.deg(),
                        PartPlace::Bar { length, .. } | PartPlace::Leg { length, .. } => {
                            length.mm()
                        }
                    };
                    (marks_of(part), size)
                })
                .collect();
            let (a, b) = parts
                .iter()
                .flat_map(|a| parts.iter().map(move |b| (a, b)))
                .find(|(a, b)| a.0.len() == b.0.len() && a.1 * b.1 > 0.0 && (a.1 - b.1).abs() > 2.0)
                .expect("two parts that differ");
            let swapped = |mark: &mut String| {
                let of = |from: &[String], to: &[String]| {
                    let at = from.iter().position(|other| other == mark)?;
                    Some(to[at].clone())
                };
                if let Some(other) = of(&a.0, &b.0).or_else(|| of(&b.0, &a.0)) {
                    *mark = other;
                }
            };
            for card in &mut supply.cards {
                for part in &mut card.parts {
                    part.serves.iter_mut().for_each(|s| swapped(&mut s.mark));
                }
                for cut in &mut card.cuts {
                    cut.faces.iter_mut().for_each(swapped);
                }
            }
            a.0.last().expect("a mark").clone()
        }),
    ];
    for (what, spoil) in planted {
        let (named, faults) = faults_after(spoil);
        assert!(
            faults.iter().any(|fault| fault.contains(&named)),
            "{what}: {named} is not named in {faults:#?}"
        );
    }
}

#[test]
fn the_walker_notices_what_is_planted() {
    assert_eq!(faults_after(|_| String::new()).1, Vec::<String>::new());
    let planted: [Planted; 4] = [
        ("round the outside the other way", |solved| {
            let supply = solved.supply.as_mut().expect("cut");
            for fit in &mut supply.fits {
                fit.round_outside = -fit.round_outside;
            }
            String::new()
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
            String::new()
        }),
        ("stock used twice", |solved| {
            let supply = solved.supply.as_mut().expect("cut");
            let again = supply.plan.cuts[0].clone();
            supply.plan.cuts.push(again);
            String::new()
        }),
        ("a body 60 mm nearer than it was judged", |solved| {
            let everywhere = tubewright_geometry::Vector::new(0.0, 0.0, 60.0);
            for body in &mut solved.around.bodies.placed {
                let placed = tubewright_geometry::Placement::shifted(everywhere);
                body.solid_in_car = placed.solid(&body.solid_in_car);
            }
            String::new()
        }),
    ];
    for (what, spoil) in planted {
        assert!(!faults_after(spoil).1.is_empty(), "{what} is not noticed");
    }
}
