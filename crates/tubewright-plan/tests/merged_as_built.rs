//! Runs that meet in a part, as built: the part found off its place moves what meets there.

#![allow(
    clippy::expect_used,
    clippy::indexing_slicing,
    reason = "helpers of tests are tests, whatever the lint takes them for"
)]

mod common;

use std::sync::OnceLock;

use common::bench::{Bench, after, tapes};
use common::merged::{EFFORT, RUNS, build_with, stock_with};
use tubewright_build::model::{EntryKind, Model};
use tubewright_check::Rule;
use tubewright_geometry::{Frame, Vector};
use tubewright_plan::fit::{OfferKind, joint_of, runs_as_built, why_no_offer};
use tubewright_plan::routes::{PlannedKind, PlannedRun};
use tubewright_plan::stages::check_chosen;

fn bench() -> &'static Bench {
    static BENCH: OnceLock<Bench> = OnceLock::new();
    BENCH.get_or_init(|| {
        // A way is enough; each test is a process of its own.
        Bench::of_build(build_with(RUNS), stock_with(""), EFFORT / 4).expect("there is a way")
    })
}

fn number(runs: &[PlannedRun], name: &str) -> usize {
    runs.iter()
        .position(|run| run.name == name)
        .expect("is there")
}

fn planned() -> Vec<PlannedRun> {
    bench().planned(&bench().model(&bench().record))
}

/// The record with a joint tacked where `frame` lies and taped there.
fn tacked(record: &str, mark: &str, od_mm: f64, frame: &Frame) -> String {
    after(
        record,
        EntryKind::Tacked {
            joint: mark.to_owned(),
            readings: tapes(bench(), od_mm, frame),
            faces: Vec::new(),
        },
    )
}

fn moved(frame: &Frame, by: Vector) -> Frame {
    Frame::from_axes(frame.origin + by, frame.travel(), frame.twelve())
}

#[test]
fn the_joint_behind_the_part_is_the_tails_and_as_wide_as_it() {
    let runs = planned();
    let (tail, bank) = (number(&runs, "tail"), number(&runs, "left bank"));
    let mark = runs[bank].last_joint.clone();
    assert_eq!(runs[tail].pieces[0].joint, mark);
    assert_eq!(
        joint_of(&runs, &mark).map(|(run, joint)| (run, joint.piece)),
        Some((tail, 0))
    );
    assert!((runs[bank].end_od_mm - runs[tail].od_mm).abs() < 1e-9);
    // Tapes to the rim of the tail's size, where it is planned, find it there.
    let record = tacked(&bench().record, &mark, runs[tail].od_mm, &runs[tail].start);
    let (_, found, _) = bench().offered(&record, &mark);
    // The marks tell least about up and down; with the banks' diameter it would be 1.7 mm.
    assert!(found.off.norm() < 0.5, "{:?}", found.off);
    // No mark is spent on it.
    let joints = runs
        .iter()
        .flat_map(|run| run.pieces.iter().map(|p| &p.joint).chain([&run.last_joint]));
    let mut numbers: Vec<u32> = joints
        .filter_map(|mark| mark.strip_prefix('J')?.parse().ok())
        .collect();
    numbers.sort_unstable();
    numbers.dedup();
    let last = u32::try_from(numbers.len()).expect("few");
    assert!(numbers.into_iter().eq(1..=last));
}

#[test]
fn a_part_found_off_its_place_moves_what_meets_there() {
    let was = planned();
    let [tail, left, right] = ["tail", "left bank", "right bank"].map(|name| number(&was, name));
    let mark = was[left].last_joint.clone();
    let by = Vector::new(0.0, 4.0, 0.0);
    let at = moved(&was[tail].start, by);
    let record = tacked(&bench().record, &mark, was[tail].od_mm, &at);
    let (_, found, all) = bench().offered(&record, &mark);
    assert_eq!(found.run, tail);
    assert!((found.off - by).norm() < 0.5, "{:?}", found.off);
    assert_eq!(all[0].kind, OfferKind::AsPlanned);
    assert!(all.iter().any(|offer| offer.arrives), "{all:#?}");

    let model = bench().model(&record);
    let around = &bench().solved.around;
    let built = runs_as_built(&model, around, &bench().planned(&model));
    assert!(built.troubles.is_empty(), "{:?}", built.troubles);
    assert_eq!(built.found.len(), 1);
    // The part lies where its outlet was found; the tail starts there; the other bank must come to its inlet.
    let is = &built.runs;
    let shift = |a: tubewright_geometry::Point, b: tubewright_geometry::Point| (a - b - by).norm();
    assert!(shift(is[left].arrival().origin, was[left].arrival().origin) < 0.5);
    assert!(shift(is[tail].pieces[0].frame_in.origin, was[tail].start.origin) < 0.5);
    assert!(shift(is[right].end_point, was[right].end_point) < 0.7);
    // The right bank is not closed yet: the piece that closes it is cut to the gap that is there, the others stay.
    let ends_at = is[right].arrival().origin;
    assert!(ends_at.distance(is[right].end_point) < 0.1);
    let changed: Vec<&str> = is[right]
        .pieces
        .iter()
        .zip(&was[right].pieces)
        .filter_map(|(is, was)| match (&is.kind, &was.kind) {
            (PlannedKind::Straight { length_mm: a }, PlannedKind::Straight { length_mm: b }) => {
                ((a - b).abs() > 0.01).then_some(is.mark.as_str())
            }
            _ => None,
        })
        .collect();
    assert_eq!(changed.len(), 1, "{changed:?}");
    assert!(built.faces.iter().all(|face| face.mark == changed[0]));
    assert_eq!(built.faces.len(), 2);
    assert!(judged_end(&model, is) < 0.1);

    // Closed already, it leans with the part.
    let closed = after(
        &record,
        EntryKind::Tacked {
            joint: was[right].last_joint.clone(),
            readings: Vec::new(),
            faces: Vec::new(),
        },
    );
    let model = bench().model(&closed);
    let built = runs_as_built(&model, around, &bench().planned(&model));
    assert!(built.faces.is_empty());
    let is = &built.runs;
    assert!(shift(is[right].arrival().origin, was[right].arrival().origin) < 0.7);
    assert!(judged_end(&model, is) < 1.0);
}

/// How far the board says that the right bank ends from its inlet, mm.
fn judged_end(model: &Model, runs: &[PlannedRun]) -> f64 {
    let around = &bench().solved.around;
    let board = check_chosen(model, around, &bench().solved.posed, runs, &[], None);
    let mut findings = board.findings().iter();
    let end = findings.find(|finding| {
        finding.rule == Rule::EndPlace && finding.subject.starts_with("end of right bank")
    });
    let measured = end.and_then(|finding| finding.measured);
    measured.expect("is judged").value
}

#[test]
fn what_is_tacked_behind_it_leans_with_it() {
    let was = planned();
    let [tail, left] = ["tail", "left bank"].map(|name| number(&was, name));
    let by = Vector::new(0.0, 3.0, 0.0);
    let first = was[left].last_joint.clone();
    let second = was[tail].pieces[2].joint.clone();
    let od_mm = was[tail].od_mm;
    let record = tacked(&bench().record, &first, od_mm, &moved(&was[tail].start, by));
    let at = joint_of(&was, &second)
        .map(|(_, joint)| joint.frame)
        .expect("is there");
    let record = tacked(&record, &second, od_mm, &moved(&at, by));
    let model = bench().model(&record);
    let built = runs_as_built(&model, &bench().solved.around, &bench().planned(&model));
    assert!(built.troubles.is_empty(), "{:?}", built.troubles);
    assert_eq!(built.found.len(), 2);
    for piece in 0..2 {
        let off = built.runs[tail].pieces[piece].frame_out.origin
            - was[tail].pieces[piece].frame_out.origin
            - by;
        assert!(off.norm() < 1.5, "{piece}: {off:?}");
    }
}

#[test]
fn before_the_part_it_says_what_comes_next() {
    let was = planned();
    let left = number(&was, "left bank");
    let joint = was[left].pieces.last().expect("has some").joint.clone();
    let at = joint_of(&was, &joint)
        .map(|(_, joint)| joint.frame)
        .expect("is there");
    let by = Vector::new(0.0, 4.0, 0.0);
    let record = tacked(&bench().record, &joint, was[left].od_mm, &moved(&at, by));
    let (runs, found, all) = bench().offered(&record, &joint);
    assert!(all.is_empty());
    let words = why_no_offer(&runs, &found);
    assert!(
        words.contains('Y') && words.contains(&was[left].last_joint),
        "{words}"
    );
}
