//! Two banks that end in a merge and one tail that leaves it: the estate's car with other runs, from its
//! readings to what the saw marks give.

#![allow(
    clippy::expect_used,
    clippy::indexing_slicing,
    reason = "helpers of tests are tests, whatever the lint takes them for"
)]

mod common;

use std::collections::BTreeMap;
use std::fs;

use common::prove::{prove, prove_others};
use common::solved::{Solved, folder, solve};
use tubewright_check::{Rule, State};
use tubewright_fit::order::{Act, Way};
use tubewright_geometry::{Point, Vector};
use tubewright_plan::fit::fit_sheet;
use tubewright_plan::routes::{PlannedKind, PlannedRun};

const RUNS: &str = include_str!("data/merged/runs.toml");
const STOCK: &str = include_str!("data/merged/stock.toml");
const EFFORT: u64 = 20_000;

/// The estate's build with these runs in place of what is behind its catalysts.
fn build_with(runs: &str) -> String {
    let build = fs::read_to_string(folder("estate-v6").join("build.toml")).expect("is there");
    let crossover = build
        .find("[[component]]\nname = \"X\"")
        .expect("it has one");
    let wishes = build.find("[wishes]").expect("it has wishes");
    format!("{}{runs}\n{}", &build[..crossover], &build[wishes..])
}

fn solved_with(runs: &str, more_stock: &str) -> Solved {
    let stock = fs::read_to_string(folder("estate-v6").join("stock.toml")).expect("is there");
    let stock = format!("{stock}\n{STOCK}\n{more_stock}");
    solve(&build_with(runs), &stock, None, &BTreeMap::new(), EFFORT)
}

fn named<'a>(runs: &'a [PlannedRun], name: &str) -> &'a PlannedRun {
    runs.iter().find(|run| run.name == name).expect("is there")
}

/// Where the part lies, from the run that has it as its last piece.
fn origin_of(run: &PlannedRun) -> Point {
    match run.pieces.last().map(|piece| &piece.kind) {
        Some(PlannedKind::Crossover { origin, .. }) => *origin,
        other => panic!("{} ends in {other:?}", run.name),
    }
}

/// The findings that fail, but for what the estate itself has wrong.
fn failing(solved: &Solved) -> Vec<String> {
    solved
        .board
        .findings()
        .iter()
        .filter(|finding| finding.state == State::Fail && finding.rule != Rule::DoubtfulReading)
        .map(|finding| format!("{:?} {}", finding.rule, finding.subject))
        .collect()
}

#[test]
fn two_banks_end_in_a_merge_and_a_wider_tail_leaves_it() {
    let solved = solved_with(RUNS, "");
    let best = solved.best().expect("there is a way");
    prove(&solved).assert_sound("merged");
    let (others, verdict) = prove_others(&solved);
    verdict.assert_sound("merged");
    assert!(others >= 2, "{others} other ways");
    assert_eq!(failing(&solved), Vec::<String>::new());

    // The item's own numbers: inlets 38 mm to either side, its outlet 180 mm behind.
    let left = named(&best.runs, "left bank");
    let right = named(&best.runs, "right bank");
    let tail = named(&best.runs, "tail");
    let part = origin_of(left);
    let arrives = |place: Point, at: Vector| place.distance(part + at);
    let before = left.pieces[left.pieces.len() - 2].frame_out;
    assert!(arrives(before.origin, Vector::new(0.0, -38.0, 0.0)) < 3.0);
    assert!(arrives(right.arrival().origin, Vector::new(0.0, 38.0, 0.0)) < 3.0);
    assert!(arrives(tail.start.origin, Vector::new(180.0, 0.0, 0.0)) < 1e-6);
    assert!((right.arrival().travel().vector().y + 12f64.to_radians().sin()).abs() < 0.02);
    assert!(tail.od_mm > left.od_mm);

    // One weld behind the merge, with one mark; one part bought; every joint has a mark of its own else.
    assert_eq!(left.last_joint, tail.pieces[0].joint);
    let supply = solved.supply.as_ref().expect("planned");
    let merges = supply
        .plan
        .components
        .iter()
        .filter(|c| c.item == "merge 57 to 63");
    assert_eq!(merges.count(), 1);
    let mut joints: Vec<&str> = best
        .runs
        .iter()
        .flat_map(|run| {
            run.pieces
                .iter()
                .map(|p| p.joint.as_str())
                .chain([run.last_joint.as_str()])
        })
        .collect();
    let all = joints.len();
    joints.sort_unstable();
    joints.dedup();
    assert_eq!(joints.len() + 1, all);

    // Beside the merge the banks part as its inlets do: 76 mm less a diameter.
    let gap = nearest(left, right) - left.od_mm;
    assert!(gap > 76.0 - 57.0 - 1.0, "{gap}");
    goes_together(&solved);
}

/// The least distance of the centre lines of two runs, sampled.
fn nearest(a: &PlannedRun, b: &PlannedRun) -> f64 {
    let places = |run: &PlannedRun| -> Vec<Point> {
        run.pieces
            .iter()
            .filter(|piece| !matches!(piece.kind, PlannedKind::Crossover { .. }))
            .flat_map(|piece| {
                let length = piece.centre_line_mm();
                (0..=50).map(move |k| piece.frame_at(length * f64::from(k) / 50.0).origin)
            })
            .collect()
    };
    let (first, second) = (places(a), places(b));
    first
        .iter()
        .flat_map(|p| second.iter().map(|q| p.distance(*q)))
        .fold(f64::INFINITY, f64::min)
}

/// The merge goes up with one bank; the other closes on it, the tail is tacked from it.
fn goes_together(solved: &Solved) {
    let best = solved.best().expect("there is a way");
    let supply = solved.supply.as_ref().expect("planned");
    let sheet = fit_sheet(&solved.model, &solved.around, &best.runs, &supply.plan);
    let number = |name: &str| best.runs.iter().position(|run| run.name == name);
    let first_of = |name: &str| {
        let mut steps = sheet.steps.iter();
        steps
            .position(|step| Some(step.step.run) == number(name) && step.step.act != Act::Hang)
            .expect("has a step")
    };
    let tail_first = &sheet.steps[first_of("tail")].step;
    assert_eq!(tail_first.act, Act::Tack(Way::Downstream));
    let merge_up = sheet
        .steps
        .iter()
        .position(|step| {
            Some(&step.step.makes)
                == named(&best.runs, "left bank")
                    .pieces
                    .last()
                    .map(|p| &p.joint)
        })
        .expect("it goes up");
    assert!(merge_up < first_of("tail"));
    let closes = |name: &str| {
        let mut steps = sheet.steps.iter();
        steps.any(|step| Some(step.step.run) == number(name) && step.step.act == Act::Close)
    };
    assert!(closes("right bank"));
    assert!(!closes("left bank"));
}
