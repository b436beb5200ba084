//! That a section comes out is held against balls laid along every element, pulled in small steps.

#![allow(
    clippy::expect_used,
    clippy::panic,
    reason = "helpers of tests are tests, whatever the lint takes them for"
)]

mod common;

use std::collections::BTreeMap;
use std::path::Path;

use common::solved::{SMALL_BUILD, SMALL_STOCK, Solved, solve};
use tubewright_build::model::{CarrierRef, Class, Name};
use tubewright_check::{Finding, Rule, State};
use tubewright_geometry::Vector;
use tubewright_geometry::distance::point_to_solid;

const KEPT_MM: f64 = 5.0;

fn removal(solved: &Solved) -> Vec<Finding> {
    let all = solved.board.findings().iter();
    all.filter(|f| f.rule == Rule::Removal).cloned().collect()
}

/// Least distance of the outside of the run to a body, with the run shifted; and to which. The first
/// 100 mm of a run are not held against what carries its start.
fn sampled(solved: &Solved, by: Vector) -> (f64, String) {
    let best = solved.best().expect("a way");
    let bodies = solved.around.bodies.placed.iter();
    let bodies: Vec<_> = bodies
        .filter(|body| body.class != Class::Ground)
        .map(|body| {
            let written = solved
                .model
                .build
                .bodies
                .iter()
                .find(|b| *b.name == *body.name);
            let carrier = &written.expect("a body of the build").carrier;
            (body, *carrier == CarrierRef::Carrier(Name::new("engine")))
        })
        .collect();
    let mut least = (f64::INFINITY, String::new());
    for run in &best.runs {
        let mut so_far = 0.0;
        for piece in &run.pieces {
            for element in &piece.elements {
                let length = element.line.length();
                let count = (length / 4.0).ceil().max(1.0);
                let mut n = 0.0;
                while n <= count {
                    let place = element.line.at(length * n / count) + by;
                    for (body, is_own) in &bodies {
                        if *is_own && so_far < 100.0 {
                            continue;
                        }
                        let off = point_to_solid(place, &body.solid_in_car) - element.radius;
                        if off < least.0 {
                            least = (off, body.name.clone());
                        }
                    }
                    n += 1.0;
                }
            }
            so_far += piece.frame_in.origin.distance(piece.frame_out.origin);
        }
    }
    least
}

#[test]
fn a_run_under_a_beam_comes_straight_down() {
    let solved = solve(SMALL_BUILD, SMALL_STOCK, None, &BTreeMap::new(), 4000);
    let [finding] = removal(&solved).try_into().expect("one section");
    assert_eq!(finding.state, State::Pass, "{}", finding.advice);
    assert!(
        finding.advice.contains("pulled straight down"),
        "{}",
        finding.advice
    );
    for step in 0..=300 {
        let (off, body) = sampled(&solved, down(2.0 * f64::from(step)));
        assert!(off >= KEPT_MM, "{off} mm to {body} after {} mm", 2 * step);
    }
}

/// What is named as in the way is met there, and not before: the kit car, whose run lies among its rails.
#[test]
fn what_bars_the_way_down_is_named_with_how_far_it_comes() {
    let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join("../../builds/kitcar-mid4");
    let text = |file: &str| std::fs::read_to_string(folder.join(file)).expect(file);
    let solved = solve(
        &text("build.toml"),
        &text("stock.toml"),
        None,
        &BTreeMap::new(),
        3000,
    );
    let [finding] = removal(&solved).try_into().expect("one section");
    assert_eq!(finding.state, State::NotChecked, "{}", finding.advice);
    let words = finding
        .advice
        .split("Straight down it meets ")
        .nth(1)
        .unwrap_or_else(|| panic!("{}", finding.advice));
    let (body, rest) = words.split_once(" with ").expect("a body and a piece");
    let after_mm: f64 = rest
        .split(" after ")
        .nth(1)
        .and_then(|rest| rest.split(' ').next())
        .and_then(|number| number.parse().ok())
        .expect("how far it comes");
    // A step before it is still held; two steps behind it is not.
    let (before, met) = sampled(&solved, down((after_mm - 5.0).max(0.0)));
    assert!(before >= KEPT_MM, "{before} mm to {met}");
    let (behind, met) = sampled(&solved, down(after_mm + 10.0));
    assert!(
        behind < KEPT_MM && met == body,
        "{behind} mm to {met}: {}",
        finding.advice
    );
}

fn down(mm: f64) -> Vector {
    Vector::new(0.0, 0.0, -mm)
}
