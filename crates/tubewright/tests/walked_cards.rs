//! The text that `tubewright cut` prints, followed at the saw and at the bench by the walker: every part
//! is the planned one and every run ends where the cards themselves say.

#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::indexing_slicing,
    clippy::panic,
    reason = "helpers of tests are tests, whatever the lint takes them for"
)]

#[path = "../../tubewright-plan/tests/common/mod.rs"]
mod common;
mod printed_cards;

use common::prove::{Verdict, follow};
use common::solved::Solved;
use printed_cards::paper_of;
use std::collections::BTreeMap;
use std::fs;
use std::path::Path;
use std::process::Command;
use tubewright_build::{FileKind, folder::Folder, model::BodyKind};
use tubewright_plan::plan_file::{PlanFile, Stage, StoredRoutes};
use tubewright_plan::stages::{Routed, check, pose, routed_again, supply, survey_and_bodies};

/// What the cars wish for themselves.
const EFFORT: u64 = 40_000;

/// A demonstration car with little effort in a new folder, and what `cut` prints of it.
fn printed(name: &str) -> (tempfile::TempDir, String) {
    let dir = tempfile::tempdir().unwrap();
    let source = Path::new(env!("CARGO_MANIFEST_DIR"))
        .join("../../builds")
        .join(name);
    copy(&source, dir.path());
    let build = dir.path().join("build.toml");
    let text = fs::read_to_string(&build).unwrap();
    let lines: Vec<String> = text
        .lines()
        .filter(|line| !line.starts_with("effort = "))
        .map(|line| match line {
            "[wishes]" => format!("[wishes]\neffort = {EFFORT}"),
            line => line.to_owned(),
        })
        .collect();
    assert!(text.contains("[wishes]"), "{name} has wishes");
    fs::write(&build, lines.join("\n") + "\n").unwrap();
    let ran = Command::new(env!("CARGO_BIN_EXE_tubewright"))
        .arg("cut")
        .arg(dir.path())
        .env_remove("CLICOLOR_FORCE")
        .output()
        .unwrap();
    let code = ran.status.code();
    let said = String::from_utf8(ran.stderr).unwrap();
    assert!(matches!(code, Some(0 | 1)), "{name}: {code:?} {said}");
    (dir, String::from_utf8(ran.stdout).unwrap())
}

fn copy(from: &Path, to: &Path) {
    fs::create_dir_all(to).unwrap();
    for entry in fs::read_dir(from).unwrap() {
        let entry = entry.unwrap();
        let target = to.join(entry.file_name());
        if entry.file_type().unwrap().is_dir() {
            copy(&entry.path(), &target);
        } else {
            fs::copy(entry.path(), target).unwrap();
        }
    }
}

/// The same folder as the library reads it; the routes are those that the command left in plan.json.
fn solved(folder: &Path) -> Solved {
    let folder = Folder::open(folder).unwrap();
    let model = folder.read().model;
    let mut scans = BTreeMap::new();
    for body in &model.build.bodies {
        if let BodyKind::Scan { file, .. } = &body.kind {
            scans.insert(file.clone(), folder.scan(file).unwrap());
        }
    }
    let around = survey_and_bodies(&model, &scans).unwrap();
    let posed = pose(&model, &around);
    let plan = PlanFile::parse(folder.text(FileKind::Plan).unwrap()).unwrap();
    let stored = StoredRoutes::of(plan.stage(Stage::Routes).unwrap()).unwrap();
    let routed = routed_again(&model, &posed, &stored).unwrap();
    let Routed::Found(found) = &routed else {
        panic!("there is a route");
    };
    let supply = supply(&model, &around.practice, &found[0].runs, &[]).unwrap();
    let board = check(&model, &around, None, None);
    Solved {
        model,
        around,
        posed,
        routed,
        supply: Some(supply),
        board,
    }
}

fn faults_of(name: &str, spoil: impl Fn(&str) -> String) -> Vec<String> {
    let (dir, text) = printed(name);
    let solved = solved(dir.path());
    let supply = solved.supply.as_ref().unwrap();
    let runs = &solved.best().unwrap().runs;
    let mut verdict = Verdict::default();
    let paper = paper_of(&spoil(&text), &solved, supply);
    assert_eq!(paper.cards.len(), supply.cards.len(), "{text}");
    let walked = follow(&solved, supply, runs, &paper, &mut verdict);
    assert_eq!(walked.len(), runs.len(), "{:#?}", verdict.faults);
    verdict.faults
}

#[test]
fn the_printed_cards_in_millimetres_give_the_planned_runs() {
    for name in ["kitcar-mid4", "estate-v6"] {
        let faults = faults_of(name, str::to_owned);
        assert_eq!(faults, Vec::<String>::new(), "{name}");
    }
}

#[test]
fn the_printed_cards_in_inches_give_the_planned_run() {
    let faults = faults_of("pickup-six", str::to_owned);
    assert_eq!(faults, Vec::<String>::new());
}

/// One digit of one printed mark wrong: the walk of the text must find it.
#[test]
fn a_wrong_digit_in_print_is_found() {
    let faults = faults_of("kitcar-mid4", |text| {
        let line = text
            .lines()
            .find(|line| {
                line.trim_start().starts_with("1  A") || line.trim_start().starts_with("1  B")
            })
            .expect("a first cut");
        let mut cells: Vec<&str> = line.split_whitespace().collect();
        let wrong: Vec<String> = cells[2..5]
            .iter()
            .map(|cell| format!("{:.1}", cell.parse::<f64>().unwrap() + 1.0))
            .collect();
        for (cell, wrong) in cells[2..5].iter_mut().zip(&wrong) {
            *cell = wrong;
        }
        let changed = format!("    {}", cells.join("  "));
        text.replacen(line, &changed, 1)
    });
    assert!(!faults.is_empty());
}
