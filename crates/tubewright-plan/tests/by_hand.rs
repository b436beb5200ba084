//! Joints and bends that are moved by hand, and pins that the next search keeps.

#![allow(
    clippy::expect_used,
    clippy::unwrap_used,
    reason = "helpers of tests are tests, whatever the lint takes them for"
)]

mod common;

use std::collections::BTreeMap;
use std::sync::OnceLock;

use common::solved::{SMALL_BUILD, SMALL_STOCK, Solved, solve};
use tubewright_build::FileKind;
use tubewright_build::document::{Document, ElementRef, Written};
use tubewright_check::State;
use tubewright_geometry::{Point, Vector};
use tubewright_plan::routes::{
    DragError, Grip, PlannedKind, PlannedRun, away_from_pin_mm, dragged, grips,
};
use tubewright_plan::stages::Routed;

const EFFORT: u64 = 1500;
const NONE_STANDS: &dyn Fn(&str) -> bool = &|_| false;

fn small() -> &'static Solved {
    static SOLVED: OnceLock<Solved> = OnceLock::new();
    SOLVED.get_or_init(|| solve(SMALL_BUILD, SMALL_STOCK, None, &BTreeMap::new(), EFFORT))
}

fn run() -> &'static PlannedRun {
    &small().best().expect("the small bench has a way").runs[0]
}

/// Where a joint or the middle of a bend lies in a run.
fn place_of(run: &PlannedRun, grip: Grip) -> Point {
    let mut all = grips(run, NONE_STANDS).into_iter();
    all.find(|place| place.grip == grip).unwrap().at
}

/// Everything that can be taken is moved a thumb's width each way: both ends stay, parts and radii stay, what
/// was taken goes along or as far as the run gives, and never further away than it was.
#[test]
fn the_ends_stay_and_what_is_taken_goes_along() {
    let (solved, run) = (small(), run());
    let moves = [
        Vector::new(25.0, 0.0, 0.0),
        Vector::new(0.0, -25.0, 0.0),
        Vector::new(0.0, 0.0, 25.0),
        Vector::new(-15.0, 12.0, -9.0),
    ];
    let free: Vec<_> = grips(run, NONE_STANDS)
        .into_iter()
        .filter(|place| place.is_free)
        .collect();
    assert!(free.len() >= 4, "{free:?}");
    let mut reached = 0;
    for place in &free {
        for by in moves {
            let to = place.at + by;
            let moved = dragged(
                &solved.model,
                &solved.posed,
                run,
                place.grip,
                to,
                NONE_STANDS,
            )
            .unwrap();
            let words = format!("{} by {by:?}", place.mark);
            let (was, now) = (run.arrival(), moved.run.arrival());
            assert!(was.origin.distance(now.origin) < 0.06, "{words}");
            assert!(was.travel().angle_to(now.travel()) < 2e-4, "{words}");
            assert_eq!(run.start, moved.run.start, "{words}");
            assert!(
                place_of(&moved.run, place.grip).distance(moved.at) < 1e-6,
                "{words}: it says where it came"
            );
            assert!(moved.at.distance(to) < by.norm() + 0.1, "{words}");
            // A quarter of the way is following; and nothing else goes much further than the hand does.
            if moved.at.distance(to) < 0.75 * by.norm() {
                reached += 1;
            }
            for (old, new) in run.pieces.iter().zip(&moved.run.pieces) {
                let spread = old.frame_out.origin.distance(new.frame_out.origin);
                assert!(
                    spread < 2.5 * by.norm() + 5.1,
                    "{words}: {} goes {spread} mm",
                    old.mark
                );
            }
            for (old, new) in run.pieces.iter().zip(&moved.run.pieces) {
                assert_eq!((&old.mark, &old.joint), (&new.mark, &new.joint));
                match (&old.kind, &new.kind) {
                    (PlannedKind::Straight { .. }, PlannedKind::Straight { length_mm }) => {
                        assert!(*length_mm >= 0.0, "{words}");
                    }
                    (
                        PlannedKind::Bend { clr_mm: old, .. },
                        PlannedKind::Bend {
                            clr_mm, angle_rad, ..
                        },
                    ) => {
                        assert!((old - clr_mm).abs() < 1e-9 && *angle_rad >= 0.0, "{words}");
                    }
                    (old, new) => assert_eq!(old, new, "{words}: parts stay as they are"),
                }
            }
        }
    }
    assert!(reached > free.len(), "{reached} of {}", 4 * free.len());
}

#[test]
fn what_is_not_moved_stays() {
    let (solved, run) = (small(), run());
    for place in grips(run, NONE_STANDS)
        .into_iter()
        .filter(|place| place.is_free)
    {
        let moved = dragged(
            &solved.model,
            &solved.posed,
            run,
            place.grip,
            place.at,
            NONE_STANDS,
        )
        .unwrap();
        for (old, new) in run.pieces.iter().zip(&moved.run.pieces) {
            let off = old.frame_out.origin.distance(new.frame_out.origin);
            assert!(off < 0.1, "{}: {} moved {off} mm", place.mark, old.mark);
        }
    }
}

#[test]
fn an_end_and_a_tacked_joint_are_held() {
    let (solved, run) = (small(), run());
    let first = dragged(
        &solved.model,
        &solved.posed,
        run,
        Grip::Joint(0),
        run.start.origin,
        NONE_STANDS,
    );
    assert!(matches!(first, Err(DragError::Held(_))), "{first:?}");
    let none = dragged(
        &solved.model,
        &solved.posed,
        run,
        Grip::Joint(run.pieces.len() + 3),
        run.start.origin,
        NONE_STANDS,
    );
    assert_eq!(none.unwrap_err(), DragError::NoSuch);
    // With the middle one tacked nothing before it moves when something behind it does.
    let middle = run.pieces.len() / 2;
    let tacked = run.pieces[middle].joint.clone();
    let stands = |joint: &str| joint == tacked;
    let places = grips(run, &stands);
    assert!(
        places
            .iter()
            .any(|place| place.mark == tacked && !place.is_free)
    );
    let behind = places
        .iter()
        .filter(|place| place.is_free)
        .filter(|place| matches!(place.grip, Grip::Joint(at) | Grip::Bend(at) if at >= middle));
    let mut moved_any = false;
    for place in behind {
        let to = place.at + Vector::new(0.0, 10.0, 10.0);
        let moved = dragged(&solved.model, &solved.posed, run, place.grip, to, &stands).unwrap();
        moved_any |= moved.at.distance(place.at) > 1.0;
        for (old, new) in run.pieces.iter().zip(&moved.run.pieces).take(middle) {
            assert!(old.frame_out.origin.distance(new.frame_out.origin) < 1e-6);
        }
    }
    assert!(moved_any);
}

fn pinned(what: &str, at: Point) -> String {
    let mark = small()
        .around
        .measured
        .places
        .points
        .get("A left")
        .expect("the small bench has the mark A left");
    let offsets = (at - mark.point_in_car)
        .to_array()
        .map(|mm| format!("{mm:.0} mm"));
    let mut document = Document::parse(FileKind::Build, SMALL_BUILD).unwrap();
    let pin = Written::Table(vec![
        ("what".to_owned(), Written::text(what)),
        ("near".to_owned(), Written::text("A left")),
        (
            "at".to_owned(),
            Written::texts(offsets.iter().map(String::as_str)),
        ),
        ("within".to_owned(), Written::text("12 mm")),
    ]);
    document
        .push(
            &ElementRef::Named("run".to_owned(), "main".to_owned()),
            "pins",
            &pin,
        )
        .unwrap();
    document.text()
}

/// A joint of another way is pinned: from then on every way has a joint there, and the board says so.
#[test]
fn a_pin_is_kept_by_every_way() {
    let Routed::Found(ways) = &small().routed else {
        panic!("the small bench has ways");
    };
    let best = &ways[0].runs[0];
    let other = ways
        .iter()
        .skip(1)
        .flat_map(|way| &way.runs[0].pieces[1..])
        .map(|piece| piece.frame_in.origin)
        .max_by(|a, b| nearest_joint(best, *a).total_cmp(&nearest_joint(best, *b)))
        .expect("there is another way");
    assert!(
        nearest_joint(best, other) > 25.0,
        "the best way is not there"
    );
    let solved = solve(
        &pinned("joint", other),
        SMALL_STOCK,
        None,
        &BTreeMap::new(),
        4 * EFFORT,
    );
    let Routed::Found(ways) = &solved.routed else {
        panic!("a way is there, as it was before");
    };
    for way in ways {
        let pin = &solved.posed.problem.runs[0].pins[0];
        let away = away_from_pin_mm(&way.runs[0].pieces, pin);
        assert!(away < 3.0, "{}: {away} mm away", way.name);
    }
    let finding = solved
        .board
        .findings()
        .iter()
        .find(|finding| finding.subject.contains("the pin"))
        .expect("it is judged");
    assert_eq!(finding.state, State::Pass, "{finding:?}");
}

fn nearest_joint(run: &PlannedRun, place: Point) -> f64 {
    run.pieces
        .iter()
        .map(|piece| piece.frame_in.origin.distance(place))
        .fold(f64::INFINITY, f64::min)
}
