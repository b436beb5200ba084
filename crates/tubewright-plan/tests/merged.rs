//! Two banks that end in a merge and one tail that leaves it: the estate's car with other runs, from its
//! readings to what the saw marks give.

#![allow(
    clippy::expect_used,
    clippy::indexing_slicing,
    clippy::panic,
    reason = "helpers of tests are tests, whatever the lint takes them for"
)]

mod common;

use common::merged::{CONED_STOCK, PARTED, RUNS, solved_with};
use common::prove::{prove, prove_others};
use common::solved::Solved;
use tubewright_check::{Rule, State};
use tubewright_fit::order::{Act, Way};
use tubewright_geometry::{Point, Vector, math};
use tubewright_plan::fit::fit_sheet;
use tubewright_plan::routes::{PlannedKind, PlannedRun, away_from_pin_mm};
use tubewright_plan::stages::{Routed, check};
use tubewright_route::problem::PartPose;

fn named<'a>(runs: &'a [PlannedRun], name: &str) -> &'a PlannedRun {
    runs.iter().find(|run| run.name == name).expect("is there")
}

/// Where the part lies, from the run that has it as its last piece.
fn pose_of(run: &PlannedRun) -> PartPose {
    match run.pieces.last().map(|piece| &piece.kind) {
        Some(PlannedKind::Crossover { pose, .. }) => *pose,
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
    let part = pose_of(left);
    let arrives = |place: Point, at: Vector| place.distance(part.place(at));
    let before = left.pieces[left.pieces.len() - 2].frame_out;
    assert!(arrives(before.origin, Vector::new(0.0, -38.0, 0.0)) < 3.0);
    assert!(arrives(right.arrival().origin, Vector::new(0.0, 38.0, 0.0)) < 3.0);
    assert!(arrives(tail.start.origin, Vector::new(180.0, 0.0, 0.0)) < 1e-6);
    let lean = 12f64.to_radians();
    let way = part
        .turn
        .vector(Vector::new(math::cos(lean), -math::sin(lean), 0.0));
    assert!((right.arrival().travel().vector() - way).norm() < 0.02);
    assert!(tail.od_mm > left.od_mm);
    // Its first clock is counted from what is there: nobody scribed a rim that is not made yet.
    let twelve = tail.twelve_words();
    assert!(
        twelve.contains("highest place of the outlet of"),
        "{twelve}"
    );
    assert!(left.twelve_words().contains("scribed on the rim"));

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

/// A cone between the merge, of the banks' own size, and the tail.
const CONED: &str = r#"
[[component]]
name = "Y"
item = "merge 57"
zone = ["X room low front left", "X room high rear right"]

[[component]]
name = "cone"
item = "cone 57 to 63"

[[component]]
name = "silencer"
item = "silencer 63"
carrier = "hung"

[[run]]
name = "tail"
from = "cone.out"
to = "right tip"
tube = "63.5x1.5 304"
through = ["silencer"]

[[run]]
name = "left bank"
from = "left port"
to = "Y.L"
tube = "57x1.5 304"
through = ["flex L", "cat L"]

[[run]]
name = "right bank"
from = "right port"
to = "Y.R"
tube = "57x1.5 304"
through = ["flex R", "cat R"]

[[run]]
name = "middle"
from = "Y.out"
to = "cone.in"
tube = "57x1.5 304"
through = []
"#;

#[test]
fn a_cone_takes_the_tail_to_another_size() {
    let solved = solved_with(CONED, CONED_STOCK);
    let best = solved.best().expect("there is a way");
    prove(&solved).assert_sound("coned");
    assert_eq!(failing(&solved), Vec::<String>::new());
    let middle = named(&best.runs, "middle");
    let tail = named(&best.runs, "tail");
    assert!(middle.brings_its_end());
    let cone = pose_of(middle);
    assert!(
        tail.start
            .origin
            .distance(cone.place(Vector::new(60.0, 0.0, 0.0)))
            < 1e-6
    );
    assert_eq!(middle.last_joint, tail.pieces[0].joint);
    // The tail is written first and is tacked when what it hangs on stands.
    let supply = solved.supply.as_ref().expect("planned");
    let sheet = fit_sheet(&solved.model, &solved.around, &best.runs, &supply.plan);
    let first = |run: &PlannedRun| {
        let joint = run.pieces[0].joint.as_str();
        let mut steps = sheet.steps.iter();
        steps.position(|step| step.step.makes == joint && step.step.act != Act::Hang)
    };
    let bank = named(&best.runs, "left bank");
    assert!(first(bank) < first(middle));
    assert!(first(middle) < first(tail));
}

#[test]
fn one_run_parts_into_two_tips() {
    let solved = solved_with(PARTED, CONED_STOCK);
    let best = solved.best().expect("there is a way");
    prove(&solved).assert_sound("parted");
    assert_eq!(failing(&solved), Vec::<String>::new());
    let bank = named(&best.runs, "bank");
    let (left, right) = (
        named(&best.runs, "to the left"),
        named(&best.runs, "to the right"),
    );
    // Behind the first outlet the weld is the bank's last joint, behind the second it has a mark of its own.
    assert_eq!(left.pieces[0].joint, bank.last_joint);
    assert_ne!(right.pieces[0].joint, bank.last_joint);
    let fork = pose_of(bank);
    assert!(
        left.start
            .origin
            .distance(fork.place(Vector::new(180.0, -40.0, 0.0)))
            < 1e-6
    );
    assert!(
        right
            .start
            .origin
            .distance(fork.place(Vector::new(180.0, 40.0, 0.0)))
            < 1e-6
    );
    let supply = solved.supply.as_ref().expect("planned");
    let pieces: usize = best.runs.iter().map(|run| run.pieces.len()).sum();
    assert!(pieces > 4);
    assert_eq!(
        supply
            .plan
            .components
            .iter()
            .filter(|c| c.item == "splitter 57")
            .count(),
        1
    );
}

/// Distance of a place from the box between two points of the build.
fn off_room(solved: &Solved, corners: [&str; 2], place: Point) -> f64 {
    let points = &solved.around.measured.places.points;
    let [a, b] = corners.map(|name| points[name].point_in_car);
    let near = |at: f64, a: f64, b: f64| at.max(a.min(b)).min(a.max(b));
    place.distance(Point::new(
        near(place.x, a.x, b.x),
        near(place.y, a.y, b.y),
        near(place.z, a.z, b.z),
    ))
}

#[test]
fn a_run_passes_the_room_that_it_must_and_has_a_joint_where_it_is_wanted() {
    const ROOM: [&str; 2] = ["X room low front left", "X room high rear right"];
    let pins = "through = [\"flex L\", \"cat L\"]\npasses = [[\"X room low front left\", \"X room high rear \
                right\"]]\njoints-in = [[\"X room low front left\", \"X room high rear right\"]]\n";
    let runs = PARTED.replacen("through = [\"flex L\", \"cat L\"]\n", pins, 1);
    assert_ne!(runs, PARTED);
    let solved = solved_with(&runs, CONED_STOCK);
    let best = solved.best().expect("there is a way");
    let bank = named(&best.runs, "bank");
    let joint = bank
        .pieces
        .iter()
        .map(|piece| off_room(&solved, ROOM, piece.frame_out.origin))
        .fold(f64::INFINITY, f64::min);
    assert!(joint < 0.1, "{joint}");
    assert_eq!(failing(&solved), Vec::<String>::new());
    let kept: Vec<&str> = solved
        .board
        .findings()
        .iter()
        .filter(|finding| finding.rule == Rule::WishKept && finding.subject.contains("X room"))
        .map(|finding| finding.subject.as_str())
        .collect();
    assert_eq!(
        kept,
        [
            "bank has a joint in the room from X room low front left to X room high rear right",
            "bank passes the room from X room low front left to X room high rear right",
        ]
    );
    // Elsewhere it is a fault: the same pieces and another room.
    let mut elsewhere = solved.posed.clone();
    for pin in &mut elsewhere.problem.runs[0].pins {
        let up = Vector::new(0.0, 0.0, 500.0);
        pin.room.min += up;
        pin.room.max += up;
        let away = away_from_pin_mm(&bank.pieces, pin);
        let sampled = bank
            .pieces
            .iter()
            .flat_map(|piece| {
                let length = piece.centre_line_mm();
                (0..=400).map(move |k| piece.frame_at(length * f64::from(k) / 400.0).origin - up)
            })
            .map(|place| off_room(&solved, ROOM, place))
            .fold(f64::INFINITY, f64::min);
        assert!(
            away >= sampled - 0.5 && away > 100.0,
            "{away} and {sampled}"
        );
    }
    let alone = Routed::Found(vec![best.clone()]);
    let board = check(
        &solved.model,
        &solved.around,
        Some((&elsewhere, &alone)),
        None,
    );
    let fails = board
        .findings()
        .iter()
        .filter(|finding| finding.rule == Rule::WishKept && finding.state == State::Fail);
    assert_eq!(fails.count(), 2);
}
