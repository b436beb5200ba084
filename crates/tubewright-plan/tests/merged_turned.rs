//! A merge that lies askew because it is written so: from its readings to the record and back.

#![allow(
    clippy::expect_used,
    clippy::panic,
    reason = "helpers of tests are tests, whatever the lint takes them for"
)]

mod common;

use std::collections::BTreeMap;

use common::merged::{EFFORT, RUNS, build_with, stock_with};
use common::prove::prove;
use common::solved::solve;
use tubewright_build::document::append_entry;
use tubewright_build::model::LengthUnits;
use tubewright_build::{Texts, read};
use tubewright_geometry::Point;
use tubewright_plan::frozen::{chosen_entry, frozen_plan, planned};
use tubewright_plan::plan_file::{
    PlanFile, Stage, StoredRoutes, StoredStage, routes_inputs, routes_result,
};
use tubewright_plan::routes::{PlannedKind, PlannedRun};
use tubewright_plan::stages::{Routed, routed_again};
use tubewright_route::Budget;
use tubewright_route::problem::PartPose;

fn pose_of(runs: &[PlannedRun]) -> PartPose {
    let mut pieces = runs.iter().flat_map(|run| &run.pieces);
    pieces
        .find_map(|piece| match &piece.kind {
            PlannedKind::Crossover { pose, .. } => Some(*pose),
            _ => None,
        })
        .expect("one run brings it")
}

/// Every place where a piece ends, and where the part's bars run.
fn places(runs: &[PlannedRun]) -> Vec<Point> {
    let pieces = runs.iter().flat_map(|run| &run.pieces);
    pieces
        .flat_map(|piece| {
            let bars = piece.elements.iter().map(|bar| bar.line.at(0.0));
            [piece.frame_in.origin, piece.frame_out.origin]
                .into_iter()
                .chain(bars)
        })
        .collect()
}

fn assert_same(runs: &[PlannedRun], was: &[PlannedRun]) {
    let (now, was) = (places(runs), places(was));
    assert_eq!(now.len(), was.len());
    for (now, was) in now.iter().zip(&was) {
        assert!(now.distance(*was) < 1e-6, "{now:?} was {was:?}");
    }
}

#[test]
fn a_merge_written_askew_lies_so_in_plan_record_and_cards() {
    let askew = "item = \"merge 57 to 63\"\nturn = { right = \"3 deg\", up = \"-2 deg\" }\nmay-turn = { up = \"1 deg\" }";
    let runs = RUNS.replace("item = \"merge 57 to 63\"", askew);
    let (build, stock) = (build_with(&runs), stock_with(""));
    let solved = solve(&build, &stock, None, &BTreeMap::new(), EFFORT);
    let best = solved.best().expect("there is a way");
    // The walker turns the item's own ports by the angles that the sheet tells.
    prove(&solved).assert_sound("askew");
    let turn = pose_of(&best.runs).turn;
    assert!((turn.right_rad.to_degrees() - 3.0).abs() < 1e-9);
    assert!(turn.roll_rad.abs() < 1e-12, "what is left out is held");
    let up = turn.up_rad.to_degrees();
    assert!((-3.0 - 1e-9..=-1.0 + 1e-9).contains(&up), "{up}");

    // Through the plan file.
    let budget = Budget {
        work_units: EFFORT,
        seed: 1,
    };
    let none = BTreeMap::new();
    let inputs = routes_inputs(&solved.model, &none, &solved.around.practice, budget);
    let result = routes_result(&inputs, &solved.posed, &solved.routed, budget);
    let mut plan = PlanFile::default();
    plan.set(Stage::Routes, StoredStage::new(&inputs, result));
    let stored = StoredRoutes::of(plan.stage(Stage::Routes).expect("set")).expect("sound");
    let Ok(Routed::Found(again)) = routed_again(&solved.model, &solved.posed, &stored) else {
        panic!("what was found is found again");
    };
    let first = again.first().expect("as many");
    assert_same(&first.runs, &best.runs);
    assert_eq!(pose_of(&first.runs), pose_of(&best.runs));

    // Through the record of what was chosen, in either unit.
    for units in [LengthUnits::Millimetres, LengthUnits::Inches] {
        let entry = chosen_entry("2026-03-02", &best.name, budget, &best.runs, units);
        let shop = append_entry(None, &entry).expect("it can be written");
        assert!(shop.contains("turned = {"), "{shop}");
        let read = read(Texts {
            build: Some(&build),
            stock: Some(&stock),
            shop: Some(&shop),
        });
        assert!(!read.has_errors(), "{:#?}", read.problems);
        let frozen = frozen_plan(&read.model.shop).expect("a plan is chosen");
        let (runs, troubles) = planned(&read.model, &solved.posed, &frozen);
        assert!(troubles.is_empty(), "{troubles:?}");
        assert_same(&runs, &best.runs);
    }
}

#[test]
fn only_parts_where_runs_meet_are_written_turned() {
    let turned = RUNS.replace(
        "item = \"resonator 63\"",
        "item = \"resonator 63\"\nmay-turn = { up = \"1 deg\" }",
    );
    let (build, stock) = (build_with(&turned), stock_with(""));
    let read = read(Texts {
        build: Some(&build),
        stock: Some(&stock),
        shop: None,
    });
    let said: Vec<String> = read.problems.iter().map(ToString::to_string).collect();
    assert!(read.has_errors());
    assert!(
        said.iter()
            .any(|said| said.contains("lies as its run does")),
        "{said:?}"
    );
}
