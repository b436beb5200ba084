//! Crossovers that are made by hand of two bends, and crossovers that stand in for each other: the estate's car, from its
//! readings to what the saw marks give.

#![allow(
    clippy::expect_used,
    clippy::indexing_slicing,
    clippy::panic,
    reason = "helpers of tests are tests, whatever the lint takes them for"
)]

mod common;

use common::crossings::{build, solved, stock};
use common::prove::{prove, prove_others};
use common::solved::Solved;
use std::collections::BTreeSet;
use tubewright_check::{Rule, State};
use tubewright_geometry::{Vector, math};
use tubewright_plan::figures::figures;
use tubewright_plan::packet::hand_made;
use tubewright_plan::routes::{PlannedKind, PlannedRun};
use tubewright_plan::stages::{Routed, check, supply};

/// Names of the crossovers of these runs.
fn crossovers(runs: &[PlannedRun]) -> BTreeSet<String> {
    let pieces = runs.iter().flat_map(|run| &run.pieces);
    pieces
        .filter_map(|piece| match &piece.kind {
            PlannedKind::Crossover { name, .. } => Some(name.clone()),
            _ => None,
        })
        .collect()
}

/// What fails, but for what the estate itself has wrong.
fn failing(solved: &Solved) -> Vec<String> {
    let findings = solved.board.findings().iter();
    findings
        .filter(|f| f.state == State::Fail && f.rule != Rule::DoubtfulReading)
        .map(|f| format!("{:?} {}", f.rule, f.subject))
        .collect()
}

#[test]
fn a_crossover_is_made_of_two_bends() {
    let solved = solved(&["X by hand"], 20_000);
    let best = solved.best().expect("there is a way");
    prove(&solved).assert_sound("by hand");
    assert_eq!(failing(&solved), Vec::<String>::new());
    assert_eq!(
        crossovers(&best.runs),
        BTreeSet::from(["X by hand".to_owned()])
    );

    // Its ports, from the bend itself: R = 85.5 mm, 45 degrees, legs of 60 mm, the plane 106 mm from the axis.
    let part = solved.posed.part("X by hand").expect("it is posed");
    let (sin, cos) = math::sin_cos(22.5_f64.to_radians());
    let aside = 106.0 - 85.5 * cos + 60.0 * sin;
    let long = 2.0 * (85.5 * sin + 60.0 * cos);
    assert!((part.left.inlet - Vector::new(0.0, -aside, 0.0)).norm() < 1e-9);
    assert!((part.right.outlet - Vector::new(long, aside, 0.0)).norm() < 1e-9);
    assert!((part.left.inlet_direction.vector() - Vector::new(cos, sin, 0.0)).norm() < 1e-12);
    assert!((part.left.outlet_direction.vector() - Vector::new(cos, -sin, 0.0)).norm() < 1e-12);

    // Two bends with their legs are cut for it, and nothing is bought under its own name.
    let supply = solved.supply.as_ref().expect("planned");
    assert!(supply.plan.is_full());
    assert!(
        supply
            .plan
            .components
            .iter()
            .all(|c| c.item != "X 57 of two bends")
    );
    let halves: Vec<&str> = best
        .runs
        .iter()
        .flat_map(|run| &run.pieces)
        .filter(|piece| matches!(piece.kind, PlannedKind::Crossover { .. }))
        .map(|piece| piece.mark.as_str())
        .collect();
    assert_eq!(halves.len(), 2);
    for mark in halves {
        let mut parts = supply.plan.cuts.iter().flat_map(|cut| &cut.parts);
        let part = parts
            .find(|part| part.serves.iter().any(|serves| serves.mark == mark))
            .expect("a bend is cut for it");
        let mut legs: Vec<&str> = part
            .serves
            .iter()
            .map(|serves| serves.mark.as_str())
            .collect();
        legs.sort_unstable();
        assert_eq!(legs, [mark, &format!("{mark}a"), &format!("{mark}b")]);
    }

    // One opening, with the length of its weld, its sheet and its hours.
    let [opening] = supply.openings.as_slice() else {
        panic!("{:?}", supply.openings);
    };
    let across = 2.0 * ((28.5_f64 + 85.5).powi(2) - 106.0_f64.powi(2)).sqrt();
    let high = 2.0 * (28.5_f64.powi(2) - (106.0_f64 - 85.5).powi(2)).sqrt();
    // The edge is longer than its two axes laid round as a rhomb, and shorter than the box round them.
    let (a, b) = (0.5 * across, 0.5 * high);
    assert!(
        opening.weld_mm > 4.0 * (a * a + b * b).sqrt(),
        "{}",
        opening.weld_mm
    );
    assert!(
        opening.weld_mm < 2.0 * (across + high),
        "{}",
        opening.weld_mm
    );
    let sheets = hand_made(&best.runs, supply);
    assert!(sheets.len() == 1 && sheets[0].is_asked_for);
    assert_eq!(
        sheets[0].made.as_ref().map(|made| made.0.as_str()),
        Ok("bend 57 45")
    );
    let practice = &solved.around.practice;
    let round = opening.weld_mm / (math::PI * 57.0);
    let told = figures(
        &solved.model,
        &solved.around,
        &solved.posed,
        &best.runs,
        Some(supply),
    );
    let saw: usize = supply.cards.iter().map(|card| card.cuts.len()).sum();
    let minutes = f64::from(supply.welds - 1) * practice.weld_time.minutes()
        + f64::from(u32::try_from(saw).expect("few")) * practice.cut_time.minutes()
        + round * (practice.weld_time.minutes() + 2.0 * practice.cut_time.minutes());
    assert!((told.hours.expect("counted") * 60.0 - minutes).abs() < 1e-6);
}

#[test]
fn each_crossover_that_may_stand_in_is_tried_and_ranked() {
    let solved = solved(&["X", "X by hand", "H"], 36_000);
    let Routed::Found(ways) = &solved.routed else {
        panic!("there is a way");
    };
    let mut tried = BTreeSet::new();
    for way in ways {
        let own = crossovers(&way.runs);
        assert_eq!(own.len(), 1, "both banks pass the same one: {own:?}");
        let name = own.into_iter().next().expect("one");
        assert!(
            way.name.ends_with(&format!("with {name}")),
            "{} has {name}",
            way.name
        );
        tried.insert(name);
    }
    let all = ["H", "X", "X by hand"].map(str::to_owned);
    assert_eq!(tried, BTreeSet::from(all));
    prove(&solved).assert_sound("first");
    let (others, verdict) = prove_others(&solved);
    verdict.assert_sound("others");
    assert!(others >= 2);

    // Those that close well first, then those that leave each sensor its room and blow nowhere that they must not, then
    // the cheaper as it is cut; bought once under its own name.
    let order: Vec<(bool, usize, f64)> = ways
        .iter()
        .map(|way| {
            let supply =
                supply(&solved.model, &solved.around.practice, &way.runs, &[]).expect("planned");
            let name = crossovers(&way.runs).into_iter().next().expect("one");
            let bought: Vec<&str> = supply
                .plan
                .components
                .iter()
                .map(|component| component.item.as_str())
                .filter(|item| ["x-pipe 57", "h-pipe 57", "X 57 of two bends"].contains(item))
                .collect();
            let expected: &[&str] = match name.as_str() {
                "X" => &["x-pipe 57"],
                "H" => &["h-pipe 57"],
                _ => &[],
            };
            assert_eq!(bought, expected, "{name}");
            assert!(way.lower_bound <= way.cost);
            let figures = figures(
                &solved.model,
                &solved.around,
                &solved.posed,
                &way.runs,
                Some(&supply),
            );
            let closes = figures.end_off_mm <= 3.0 && figures.end_off_rad.to_degrees() <= 1.0;
            let alone = Routed::Found(vec![way.clone()]);
            let judged = Some((&solved.posed, &alone));
            let faults = check(&solved.model, &solved.around, judged, Some(&supply))
                .findings()
                .iter()
                .filter(|finding| finding.state == State::Fail)
                .filter(|finding| matches!(finding.rule, Rule::SensorPlace | Rule::TipPlace))
                .count();
            (!closes, faults, figures.cost_as_cut.expect("planned"))
        })
        .collect();
    assert!(order.windows(2).all(|pair| pair[0] <= pair[1]), "{order:?}");
}

/// The first choice is the problem as written; what stands in changes the crossover and nothing else.
#[test]
fn a_choice_changes_the_crossover_alone() {
    let solved = solved(&["X", "H"], 1);
    let choices = solved.posed.choices();
    let names: Vec<&[String]> = choices
        .iter()
        .map(|choice| choice.parts.as_slice())
        .collect();
    assert_eq!(names, [&["X".to_owned()][..], &["H".to_owned()][..]]);
    let [as_written, other] = choices.as_slice() else {
        panic!("two");
    };
    assert_eq!(
        as_written.problem.crossovers,
        solved.posed.problem.crossovers
    );
    assert_eq!(other.problem.crossovers.len(), 1);
    // In the same room: an H of the same size may lie where the X may.
    assert_eq!(
        other.problem.crossovers[0].poses,
        as_written.problem.crossovers[0].poses
    );
    assert_eq!(other.problem.runs.len(), as_written.problem.runs.len());
}

/// What cannot be made or cannot stand in is told where it is written.
#[test]
fn what_cannot_be_made_or_stand_in_is_told() {
    let told = |build: &str, stock: &str| -> Vec<String> {
        let read = tubewright_build::read(tubewright_build::Texts {
            build: Some(build),
            stock: Some(stock),
            shop: None,
        });
        read.problems
            .iter()
            .map(|problem| format!("{problem:?}"))
            .collect()
    };
    let has = |found: &[String], words: &str| {
        assert!(
            found.iter().any(|problem| problem.contains(words)),
            "{words}: {found:#?}"
        );
    };
    let (build, stock) = (build(&["X", "H"]), stock());
    assert!(told(&build, &stock).is_empty());
    let with = |from: &str, to: &str| told(&build, &stock.replace(from, to));
    has(
        &with("taken-off = \"8 mm\"", "taken-off = \"1 mm\""),
        "opens no bore",
    );
    has(
        &with("leg = \"60 mm\"", "leg = \"120 mm\""),
        "the legs of `bend 57 45` are 100 mm long",
    );
    has(
        &with(
            "leg = \"60 mm\"\ntaken-off = \"8 mm\"",
            "leg = \"5 mm\"\ntaken-off = \"25 mm\"",
        ),
        "into the legs",
    );
    has(
        &with("bend = \"bend 57 45\"", "bend = \"straight 57 1 m\""),
        "is no bend",
    );
    let wrong = build.replace("or = [\"H\"]", "or = [\"cat L\"]");
    has(
        &told(&wrong, &stock),
        "`cat L` is no crossover with the same sides",
    );
    let twice = build.replace("or = [\"H\"]", "or = [\"H\", \"H\"]");
    has(&told(&twice, &stock), "`H` is there already");
}
