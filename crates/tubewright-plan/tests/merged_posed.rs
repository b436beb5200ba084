//! Parts where runs meet as they are put to the solver: where they lie, what room they take, and which runs are
//! left out because a part is not whole.

#![allow(
    clippy::expect_used,
    clippy::indexing_slicing,
    reason = "helpers of tests are tests, whatever the lint takes them for"
)]

mod common;

use std::collections::BTreeMap;

use common::merged::{CONED_STOCK, PARTED, RUNS, build_with, stock_with};
use tubewright_build::{Texts, read};
use tubewright_geometry::{Vector, math};
use tubewright_plan::routes::PosedProblem;
use tubewright_plan::stages::{pose, survey_and_bodies};
use tubewright_route::problem::Side;

/// The build's runs as they are put to the solver.
fn posed(build: &str, more_stock: &str) -> PosedProblem {
    let read = read(Texts {
        build: Some(build),
        stock: Some(&stock_with(more_stock)),
        shop: None,
    });
    assert!(!read.has_errors(), "{:#?}", read.problems);
    let around = survey_and_bodies(&read.model, &BTreeMap::new()).expect("adjusts");
    pose(&read.model, &around)
}

/// Every run that is left out, with the reason.
fn left_out(runs: &str) -> Vec<String> {
    let posed = posed(&build_with(runs), CONED_STOCK);
    assert_eq!(posed.runs.len(), posed.problem.runs.len());
    let words = posed
        .left_out
        .iter()
        .map(|(run, why)| format!("{run}: {why}"));
    words.collect()
}

/// `RUNS` without the run of this name.
fn without(name: &str) -> String {
    let from = RUNS
        .find(&format!("[[run]]\nname = \"{name}\""))
        .expect("is there");
    let rest = &RUNS[from + 1..];
    let to = rest.find("[[run]]").map_or(RUNS.len(), |at| from + 1 + at);
    format!("{}{}", &RUNS[..from], &RUNS[to..])
}

#[test]
fn each_outlet_may_be_sawn_off_by_itself() {
    let sawn = |build: String, port: &str| {
        let end = format!("name = \"{port}\"\n");
        let at = build.find(&format!("[[end]]\n{end}")).expect("is there") + "[[end]]\n".len();
        let (before, behind) = build.split_at(at + end.len());
        format!("{before}saw-off = {{ back = \"60 mm\" }}\n{behind}")
    };
    let posed = |build: &str| posed(build, "");
    let one = sawn(build_with(RUNS), "left port");
    let choices = posed(&one).with_outlets_sawn();
    assert_eq!(choices.len(), 1);
    let both = sawn(one, "right port");
    let choices = posed(&both).with_outlets_sawn();
    let names: Vec<&[String]> = choices.iter().map(|(_, names)| names.as_slice()).collect();
    assert_eq!(
        names,
        [
            &["left bank".to_owned()][..],
            &["right bank".to_owned()][..],
            &["left bank".to_owned(), "right bank".to_owned()][..],
        ]
    );
    for (problem, names) in &choices {
        let sawn = problem.runs.iter().filter(|run| run.start_room.is_some());
        assert_eq!(sawn.count(), names.len());
    }
}

#[test]
fn parts_that_are_not_whole_leave_their_runs_out_with_the_reason() {
    assert_eq!(left_out(RUNS), Vec::<String>::new());
    // No run has the right inlet.
    let open = left_out(&without("right bank"));
    assert_eq!(open.len(), 2, "{open:?}");
    assert!(
        open.iter()
            .all(|why| why.contains("port R of “Y” is left open")),
        "{open:?}"
    );
    let open = left_out(&without("tail"));
    assert!(
        open.iter()
            .all(|why| why.contains("port out of “Y” is left open")),
        "{open:?}"
    );
    // A tail of the banks' size on a wider outlet.
    let narrow = RUNS.replace(
        "tube = \"63.5x1.5 304\"\nthrough",
        "tube = \"57x1.5 304\"\nthrough",
    );
    let size = left_out(&narrow);
    assert_eq!(size.len(), 1, "{size:?}");
    assert!(
        size[0].starts_with("tail: ") && size[0].contains("57.0 mm") && size[0].contains("63.5 mm"),
        "{size:?}"
    );
    // A bank whose outlet is nowhere: what it alone leads to has no place either.
    let lost = PARTED
        .replace("from = \"left port\"", "from = \"fork.L\"")
        .replace(
            "name = \"to the left\"\nfrom = \"fork.L\"",
            "name = \"to the left\"\nfrom = \"left port\"",
        );
    let back = left_out(&lost);
    assert!(
        back.iter()
            .any(|why| why.starts_with("bank: ") && why.contains("leads back to “fork”")),
        "{back:?}"
    );
    assert!(
        back.iter().any(|why| why.starts_with("to the right: ")
            && why.contains("which no run that is routed leads to")),
        "{back:?}"
    );
}

#[test]
fn a_part_lies_rolled_as_it_is_told() {
    let rolled = RUNS.replace(
        "item = \"merge 57 to 63\"\n",
        "item = \"merge 57 to 63\"\nroll = \"90 deg\"\n",
    );
    let posed = posed(&build_with(&rolled), "");
    let part = &posed.problem.crossovers[0];
    // Clockwise looking downstream its left, which is three o'clock, comes to six, and its right to twelve.
    assert!(
        (part.left.inlet - Vector::new(0.0, 0.0, -38.0)).norm() < 1e-9,
        "{:?}",
        part.left
    );
    assert!(
        (part.right.inlet - Vector::new(0.0, 0.0, 38.0)).norm() < 1e-9,
        "{:?}",
        part.right
    );
    let up = part.left.inlet_direction.vector().z;
    assert!((up - math::sin(12f64.to_radians())).abs() < 1e-9, "{up}");
    assert!((part.left.outlet - Vector::new(180.0, 0.0, 0.0)).norm() < 1e-9);
}

/// One oval silencer that both banks pass, each from an inlet of its own to an outlet of its own.
const SHARED: &str = r#"
[[component]]
name = "can"
item = "shared can"
carrier = "hung"

[[run]]
name = "left bank"
from = "left port"
to = "can.L in"
tube = "57x1.5 304"
through = ["flex L", "cat L"]

[[run]]
name = "right bank"
from = "right port"
to = "can.R in"
tube = "57x1.5 304"
through = ["flex R", "cat R"]

[[run]]
name = "left tail"
from = "can.L out"
to = "left tip"
tube = "57x1.5 304"
through = []

[[run]]
name = "right tail"
from = "can.R out"
to = "right tip"
tube = "57x1.5 304"
through = []
"#;

const SHARED_STOCK: &str = r#"
[[item]]
name = "shared can"
kind = "silencer"
tube = "57x1.5 304"
length = "500 mm"
body = { shape = "oval", width = "240 mm", height = "120 mm" }
neck = "40 mm"
ports = [
  { name = "L in", at = ["0 mm", "-60 mm", "0 mm"], flows = "in" },
  { name = "R in", at = ["0 mm", "60 mm", "0 mm"], flows = "in" },
  { name = "L out", at = ["500 mm", "-60 mm", "0 mm"], flows = "out" },
  { name = "R out", at = ["500 mm", "60 mm", "0 mm"], flows = "out" },
]
mass = "6.2 kg"
"#;

#[test]
fn a_silencer_that_banks_share_takes_the_room_of_its_can() {
    let posed = posed(&build_with(SHARED), SHARED_STOCK);
    assert!(posed.left_out.is_empty(), "{:?}", posed.left_out);
    let part = &posed.problem.crossovers[0];
    assert!((part.left.inlet.y + 60.0).abs() < 1e-9 && (part.right.outlet.y - 60.0).abs() < 1e-9);
    let sides: Vec<Option<Side>> = posed
        .problem
        .runs
        .iter()
        .map(|run| run.ends_at.or(run.starts_at).map(|met| met.side))
        .collect();
    let (left, right) = (Some(Side::Left), Some(Side::Right));
    assert_eq!(sides, [left, right, left, right]);
    // Every place on the outside of the real can, flat ends at its necks, lies within the bars.
    for step in 0..=40 {
        let x = 40.0 + 420.0 * f64::from(step) / 40.0;
        for hour in 0..72 {
            let (sin, cos) = math::sin_cos(math::TAU * f64::from(hour) / 72.0);
            let y = 60.0 * sin + if sin >= 0.0 { 60.0 } else { -60.0 };
            let place = Vector::new(x, y, 60.0 * cos);
            let outside = part
                .body
                .iter()
                .map(|bar| {
                    let way = bar.b - bar.a;
                    let along = ((place - bar.a).dot(way) / way.norm_squared()).clamp(0.0, 1.0);
                    (place - bar.a - way * along).norm() - bar.radius_mm
                })
                .fold(f64::INFINITY, f64::min);
            assert!(outside < 1e-6, "{place:?} sticks out by {outside}");
        }
    }
}
