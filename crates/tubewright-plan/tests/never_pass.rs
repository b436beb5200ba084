//! Sides of bodies that the person has closed stay free of runs, and wishes that nothing acts on are
//! said aloud.

#![allow(
    clippy::expect_used,
    reason = "helpers of tests are tests, whatever the lint takes them for"
)]

mod common;

use std::collections::BTreeMap;
use std::path::Path;

use common::solved::{Solved, solve};
use tubewright_check::State;
use tubewright_geometry::distance::point_to_solid;
use tubewright_plan::routes::closed_sides;

/// Work units: enough for a route, not for a good one.
const EFFORT: u64 = 3000;

fn kit_car(change: impl Fn(&str) -> String) -> Solved {
    let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join("../../builds/kitcar-mid4");
    let text = |file: &str| std::fs::read_to_string(folder.join(file)).expect(file);
    solve(
        &change(&text("build.toml")),
        &text("stock.toml"),
        None,
        &BTreeMap::new(),
        EFFORT,
    )
}

fn with_closed(side: &str) -> Solved {
    kit_car(|build| {
        let from = "hub RR\"\ndiameter = \"64 mm\"\n";
        assert!(
            build.contains(from),
            "the drive shafts are written otherwise"
        );
        build.replace(from, &format!("{from}never-pass = [\"{side}\"]\n"))
    })
}

#[test]
fn no_run_passes_a_closed_side() {
    let mut found = 0;
    for side in ["below", "above"] {
        let solved = with_closed(side);
        let (closed, without_bounds) = closed_sides(&solved.model.build, &solved.around.bodies);
        assert!(without_bounds.is_empty() && closed.len() == 1);
        let Some(best) = solved.best() else { continue };
        found += 1;
        for piece in best.runs.iter().flat_map(|run| &run.pieces) {
            for element in &piece.elements {
                for step in 0..=20 {
                    let along = element.line.length() * f64::from(step) / 20.0;
                    let off = point_to_solid(element.line.at(along), &closed[0].solid);
                    assert!(
                        off >= element.radius - 0.05,
                        "{side}: {off} mm off at {}",
                        piece.mark
                    );
                }
            }
        }
        let kept = solved
            .board
            .findings()
            .iter()
            .find(|f| f.subject.contains("keeps off"));
        assert_eq!(kept.expect("it is judged").state, State::Pass, "{side}");
    }
    assert!(
        found > 0,
        "neither over nor under the drive shafts is a way found"
    );
}

#[test]
fn a_wish_that_nothing_acts_on_is_said_aloud() {
    let solved = kit_car(|build| {
        let first = "order-of-room = [\"exhaust\", \"coolant\"";
        assert!(build.contains(first), "the wish is written otherwise");
        build.replace(first, "order-of-room = [\"coolant\", \"exhaust\"")
    });
    let said = solved
        .board
        .findings()
        .iter()
        .find(|f| f.subject.contains("order-of-room"));
    assert_eq!(said.expect("it is said").state, State::NotChecked);
}
