//! The chosen plan: what was chosen comes back from the record, marks are never given twice, and an
//! offer names the steel that it would cost.

#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::panic,
    reason = "helpers of tests are tests, whatever the lint takes them for"
)]

use std::collections::{BTreeMap, BTreeSet};
use std::sync::OnceLock;
use std::sync::atomic::AtomicBool;
use tubewright_build::document::append_entry;
use tubewright_build::model::{Entry, EntryKind, LengthUnits, Model, Name};
use tubewright_build::{Span, Texts, read};
use tubewright_plan::frozen::{accepted_entry, chosen_entry, frozen_plan, offer_of, planned};
use tubewright_plan::plan_file::{
    PlanFile, Stage, StoredRoutes, StoredStage, routes_inputs, routes_result,
};
use tubewright_plan::routes::{PlannedRun, PosedProblem};
use tubewright_plan::stages::{Alternative, Routed, route, routed_again, survey_and_bodies};
use tubewright_route::Budget;

const BUILD: &str = include_str!("data/small/build.toml");
const STOCK: &str = include_str!("data/small/stock.toml");
const SHOP: &str = include_str!("data/small/shop.toml");
const BUDGET: Budget = Budget {
    work_units: 1500,
    seed: 1,
};

fn model(shop: &str) -> Model {
    let read = read(Texts {
        build: Some(BUILD),
        stock: Some(STOCK),
        shop: Some(shop),
    });
    assert!(read.problems.is_empty(), "{:#?}\n{shop}", read.problems);
    read.model
}

/// The routes of the small bench as the plan file keeps them; solved once.
fn stored() -> &'static (PosedProblem, StoredRoutes) {
    static STORED: OnceLock<(PosedProblem, StoredRoutes)> = OnceLock::new();
    STORED.get_or_init(|| {
        let model = model(SHOP);
        let around = survey_and_bodies(&model, &BTreeMap::new()).unwrap();
        let never = AtomicBool::new(false);
        let (posed, routed) = route(&model, &around, BUDGET, &never, &mut |_| {}).unwrap();
        let inputs = routes_inputs(&model, &BTreeMap::new(), &around.practice, BUDGET);
        let mut plan = PlanFile::default();
        plan.set(
            Stage::Routes,
            StoredStage::new(&inputs, routes_result(&inputs, &posed, &routed, BUDGET)),
        );
        let stored = StoredRoutes::of(plan.stage(Stage::Routes).unwrap()).unwrap();
        (posed, stored)
    })
}

/// The alternatives with the marks that they have beside this record.
fn alternatives(model: &Model) -> Vec<Alternative> {
    let (posed, stored) = stored();
    let Routed::Found(found) = routed_again(model, posed, stored).unwrap() else {
        panic!("the small bench has routes");
    };
    assert!(found.len() > 1, "the test needs a second way");
    found
}

fn after(shop: &str, entry: &Entry) -> String {
    append_entry(Some(shop), entry).unwrap()
}

fn chosen(shop: &str, index: usize, units: LengthUnits) -> String {
    let alternative = &alternatives(&model(shop))[index];
    after(
        shop,
        &chosen_entry(
            "2026-03-02",
            &alternative.name,
            BUDGET,
            &alternative.runs,
            units,
        ),
    )
}

fn frozen_runs(model: &Model) -> Vec<PlannedRun> {
    let plan = frozen_plan(&model.shop).unwrap();
    let (runs, troubles) = planned(model, &stored().0, &plan);
    assert!(troubles.is_empty(), "{troubles:?}");
    runs
}

fn marks(runs: &[PlannedRun]) -> BTreeSet<String> {
    let pieces = runs.iter().flat_map(|run| &run.pieces);
    let joints = runs.iter().map(|run| run.last_joint.clone());
    pieces
        .flat_map(|piece| [piece.mark.clone(), piece.joint.clone()])
        .chain(joints)
        .collect()
}

fn entry(what: EntryKind) -> Entry {
    Entry {
        on: "2026-03-03".to_owned(),
        what,
        note: None,
        span: Span::none(),
    }
}

#[test]
fn what_was_chosen_comes_back_from_the_record_in_either_unit() {
    let count = alternatives(&model(SHOP)).len();
    for index in 0..count {
        for units in [LengthUnits::Millimetres, LengthUnits::Inches] {
            let way = &alternatives(&model(SHOP))[index];
            let runs = frozen_runs(&model(&chosen(SHOP, index, units)));
            assert_eq!(runs.len(), way.runs.len());
            for (run, was) in runs.iter().zip(&way.runs) {
                assert_eq!(
                    marks(std::slice::from_ref(run)),
                    marks(std::slice::from_ref(was))
                );
                for (piece, was) in run.pieces.iter().zip(&was.pieces) {
                    assert_eq!((&piece.mark, &piece.joint), (&was.mark, &was.joint));
                    let off = piece.frame_out.origin.distance(was.frame_out.origin);
                    assert!(off < 1e-6, "{} is {off} mm off", piece.mark);
                }
            }
        }
    }
}

#[test]
fn the_chosen_way_itself_is_no_change_and_keeps_every_mark() {
    let model = model(&chosen(SHOP, 0, LengthUnits::Millimetres));
    let runs = frozen_runs(&model);
    let way = &alternatives(&model)[0];
    assert_eq!(marks(&way.runs), marks(&runs));
    assert!(offer_of(&model.shop, &model.stock, &runs, &way.runs).is_nothing());
}

#[test]
fn no_mark_is_given_twice_however_often_the_plan_is_changed() {
    let mut shop = chosen(SHOP, 0, LengthUnits::Millimetres);
    let count = alternatives(&model(&shop)).len();
    let mut given = marks(&frozen_runs(&model(&shop)));
    for step in 1..7 {
        let before = model(&shop);
        let old = frozen_runs(&before);
        let way = &alternatives(&before)[step % count];
        let offer = offer_of(&before.shop, &before.stock, &old, &way.runs);
        let now = marks(&way.runs);
        let kept: BTreeSet<String> = now.intersection(&marks(&old)).cloned().collect();
        for mark in now.difference(&kept) {
            assert!(given.insert(mark.clone()), "{mark} was given before");
        }
        if offer.is_nothing() {
            continue;
        }
        for run in &offer.runs {
            for mark in &run.stay {
                assert!(kept.contains(mark));
            }
            for mark in &run.come {
                assert!(!kept.contains(mark));
            }
        }
        shop = after(
            &shop,
            &accepted_entry("2026-03-04", &way.name, &way.runs, LengthUnits::Millimetres),
        );
        assert_eq!(
            marks(&frozen_runs(&model(&shop))),
            now,
            "the accepted way stands"
        );
    }
}

#[test]
fn steel_that_is_cut_stands_in_the_offer_and_spoiled_steel_does_not() {
    let shop = chosen(SHOP, 0, LengthUnits::Millimetres);
    assert!(!frozen_plan(&model(&shop).shop).unwrap().is_begun);
    let mut record = shop.clone();
    for run in frozen_runs(&model(&shop)) {
        for piece in &run.pieces {
            record = after(
                &record,
                &entry(EntryKind::Cut {
                    piece: piece.mark.clone(),
                    from: Name::new("bend 45"),
                    of: None,
                }),
            );
        }
    }
    let cut = model(&record);
    assert!(frozen_plan(&cut.shop).unwrap().is_begun);
    let old = frozen_runs(&cut);
    let (offer, index) = (1..alternatives(&cut).len())
        .map(|index| {
            let way = &alternatives(&cut)[index];
            (offer_of(&cut.shop, &cut.stock, &old, &way.runs), index)
        })
        .find(|(offer, _)| !offer.cut_steel.is_empty())
        .expect("another way needs other pieces");
    let go: Vec<&String> = offer.runs.iter().flat_map(|run| &run.go).collect();
    let lost: Vec<&String> = offer.cut_steel.iter().map(|cut| &cut.mark).collect();
    assert_eq!(go, lost, "every piece was cut");
    assert!((offer.steel_price() - 9.0 * lost.len() as f64).abs() < 1e-9);
    // A spoiled piece is lost already.
    let spoiled = after(
        &record,
        &entry(EntryKind::Spoiled {
            piece: lost[0].clone(),
        }),
    );
    let spoiled = model(&spoiled);
    let way = &alternatives(&spoiled)[index];
    let offer = offer_of(&spoiled.shop, &spoiled.stock, &old, &way.runs);
    assert_eq!(offer.cut_steel.len(), lost.len() - 1);
}
