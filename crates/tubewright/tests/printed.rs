//! What the program prints for one small build whose plan is chosen, in 80 columns, and what it ends
//! with. The chosen plan stands in the record, so that a better solver changes nothing here.

#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    reason = "helpers of tests are tests, whatever the lint takes them for"
)]

use std::fs;
use std::path::{Path, PathBuf};
use std::process::{Command, Output};
use tempfile::TempDir;
use unicode_width::UnicodeWidthStr;

const CHOSEN: &str = include_str!("data/chosen.shop.toml");

/// A copy of the small bench with this record.
struct Bench {
    _dir: TempDir,
    folder: PathBuf,
}

impl Bench {
    fn new(shop: &str) -> Self {
        let dir = tempfile::tempdir().unwrap();
        let folder = dir.path().join("bench");
        fs::create_dir(&folder).unwrap();
        let source =
            Path::new(env!("CARGO_MANIFEST_DIR")).join("../tubewright-plan/tests/data/small");
        for file in ["build.toml", "stock.toml"] {
            fs::copy(source.join(file), folder.join(file)).unwrap();
        }
        fs::write(folder.join("shop.toml"), shop).unwrap();
        Self { _dir: dir, folder }
    }

    fn edit(&self, file: &str, old: &str, new: &str) {
        let path = self.folder.join(file);
        let text = fs::read_to_string(&path).unwrap();
        let edited = text.replacen(old, new, 1);
        assert_ne!(edited, text, "{old} is not in {file}");
        fs::write(path, edited).unwrap();
    }

    fn run(&self, command: &str, more: &[&str]) -> Output {
        Command::new(env!("CARGO_BIN_EXE_tubewright"))
            .arg(command)
            .arg(&self.folder)
            .args(more)
            .env_remove("CLICOLOR_FORCE")
            .output()
            .unwrap()
    }

    /// What is printed, the folder's own path taken out, held to 80 columns.
    fn prints(&self, command: &str, more: &[&str], code: i32) -> String {
        let ran = self.run(command, more);
        let said = String::from_utf8(ran.stderr).unwrap();
        let text = String::from_utf8(ran.stdout).unwrap();
        assert_eq!(ran.status.code(), Some(code), "{command}: {text}{said}");
        for line in text.lines() {
            let length = line.width();
            assert!(
                length <= 80 || line.contains(&*self.folder.to_string_lossy()),
                "{command} prints {length} columns: {line}"
            );
        }
        text.replace(&*self.folder.to_string_lossy(), "FOLDER")
    }

    fn json(&self, command: &str, more: &[&str]) -> serde_json::Value {
        let mut arguments = more.to_vec();
        arguments.push("--json");
        let ran = self.run(command, &arguments);
        serde_json::from_slice(&ran.stdout).expect("--json prints JSON and nothing else")
    }
}

#[test]
fn buy_prints_the_list_for_the_chosen_plan() {
    let bench = Bench::new(CHOSEN);
    insta::assert_snapshot!(bench.prints("buy", &[], 0));
}

#[test]
fn buy_without_an_item_finds_another() {
    let bench = Bench::new(CHOSEN);
    insta::assert_snapshot!(bench.prints("buy", &["--without", "bend 45"], 0));
}

#[test]
fn cut_prints_the_cards_in_either_unit() {
    let bench = Bench::new(CHOSEN);
    insta::assert_snapshot!("cut_in_millimetres", bench.prints("cut", &[], 0));
    bench.edit("build.toml", "units = \"mm\"", "units = \"in\"");
    insta::assert_snapshot!("cut_in_inches", bench.prints("cut", &[], 0));
}

#[test]
fn measure_shows_the_places_in_either_unit() {
    let bench = Bench::new(CHOSEN);
    insta::assert_snapshot!("measure_in_millimetres", bench.prints("measure", &[], 0));
    bench.edit("build.toml", "units = \"mm\"", "units = \"in\"");
    insta::assert_snapshot!("measure_in_inches", bench.prints("measure", &[], 0));
}

#[test]
fn rename_says_what_it_did_and_changes_no_list() {
    let bench = Bench::new(CHOSEN);
    insta::assert_snapshot!(
        "rename",
        bench.prints("rename", &["body", "beam", "cross beam"], 0)
    );
    // What was bought, cut and chosen is not touched by a name.
    insta::assert_snapshot!(
        "buy_prints_the_list_for_the_chosen_plan",
        bench.prints("buy", &[], 0)
    );
}

#[test]
fn check_judges_the_chosen_plan() {
    let bench = Bench::new(CHOSEN);
    // The bench has no catalyst, which fails.
    insta::assert_snapshot!(bench.prints("check", &[], 1));
}

#[test]
fn json_has_the_keys_that_the_handbook_lists() {
    let bench = Bench::new(CHOSEN);
    for (command, keys) in [
        (
            "buy",
            "buy cost-with-welds delivery done from-the-shelf missing no-plan-below price spares welds",
        ),
        ("cut", "cards clocks done followed rolls unit"),
        (
            "check",
            "chosen does-not-apply fail findings not-checked pass routes-older-than",
        ),
        (
            "route",
            "alternatives chosen effort left-out seed status unit why would-help",
        ),
    ] {
        let value = bench.json(command, &[]);
        let mut found: Vec<&str> = value
            .as_object()
            .unwrap()
            .keys()
            .map(String::as_str)
            .collect();
        found.sort_unstable();
        assert_eq!(found.join(" "), keys, "{command}");
        let page = include_str!("../../../handbook/src/commands.md");
        for key in found {
            assert!(
                page.contains(&format!("`{key}`")),
                "the handbook does not explain {key}"
            );
        }
    }
}

#[test]
fn the_routes_are_shown_side_by_side_with_every_figure() {
    let bench = Bench::new("format = \"tubewright-shop/1\"\n");
    let text = bench.prints("route", &[], 0);
    for label in [
        "price",
        "weld and saw time",
        "welds",
        "cuts",
        "mass",
        "length",
        "sum of bends",
        "ends off by",
        "tightest gap",
        "over the ground",
        "cost as cut",
        "cost as searched",
        "no way is below",
        "left to gain",
    ] {
        let line = text
            .lines()
            .find(|line| line.trim_start().starts_with(label));
        assert!(
            line.is_some_and(|line| line.len() > 30),
            "{label} is missing:\n{text}"
        );
    }
    assert!(text.contains("tightest: main to "), "{text}");
    // Feet and inches are longer and keep to 80 columns all the same.
    bench.edit("build.toml", "units = \"mm\"", "units = \"in\"");
    assert!(bench.prints("route", &[], 0).contains(" ft "));
    bench.edit("build.toml", "units = \"in\"", "units = \"mm\"");
    // The same again, and the plan that was kept, are the same bytes.
    let kept = fs::read(bench.folder.join("plan.json")).unwrap();
    assert_eq!(bench.prints("route", &[], 0), text);
    assert_eq!(fs::read(bench.folder.join("plan.json")).unwrap(), kept);
}

#[test]
fn a_fresh_plan_is_used_again_and_an_older_one_is_told() {
    let bench = Bench::new("format = \"tubewright-shop/1\"\n");
    let first = bench.prints("cut", &[], 0);
    let plan = fs::read_to_string(bench.folder.join("plan.json")).unwrap();
    // Another solution would show: the plan's own is taken as it is.
    bench.edit("plan.json", "\"way\": \"", "\"way\": \"kept, ");
    bench.prints("route", &["--choose", "1", "--on", "2026-03-02"], 0);
    let record = fs::read_to_string(bench.folder.join("shop.toml")).unwrap();
    assert!(record.contains("route = \"kept, "), "{record}");
    fs::write(
        bench.folder.join("shop.toml"),
        "format = \"tubewright-shop/1\"\n",
    )
    .unwrap();
    fs::write(bench.folder.join("plan.json"), &plan).unwrap();
    assert_eq!(bench.prints("cut", &[], 0), first);
}

#[test]
fn what_the_routes_are_older_than_is_named() {
    let bench = Bench::new("format = \"tubewright-shop/1\"\n");
    bench.prints("route", &[], 0);
    bench.edit(
        "build.toml",
        "class = \"structure\"",
        "class = \"structure\"\ngap = \"26 mm\"",
    );
    let said = String::from_utf8(bench.run("buy", &[]).stderr).unwrap();
    assert!(said.contains("older than body “beam”"), "{said}");
    let said = String::from_utf8(bench.run("buy", &[]).stderr).unwrap();
    assert!(!said.contains("older"), "it was solved again: {said}");
    bench.edit("build.toml", "\"26 mm\"", "\"27 mm\"");
    let ran = bench.run("route", &["--choose", "1"]);
    assert_eq!(ran.status.code(), Some(2), "what is chosen was looked at");
    assert!(
        String::from_utf8(ran.stderr)
            .unwrap()
            .contains("older than body “beam”")
    );
}

#[test]
fn a_begun_plan_stands_until_a_change_is_accepted() {
    let begun = format!(
        "{CHOSEN}\n[[entry]]\non = \"2026-03-05\"\nwhat = \"cut\"\npiece = \"M4\"\nfrom = \"bend 45\"\n"
    );
    let bench = Bench::new(&begun);
    bench.prints("route", &[], 0);
    let ran = bench.run("route", &["--choose", "2"]);
    assert_eq!(ran.status.code(), Some(2));
    assert_eq!(
        fs::read_to_string(bench.folder.join("shop.toml")).unwrap(),
        begun
    );
    let buy = bench.prints("buy", &[], 0);
    assert!(buy.contains("chosen on 2026-03-02"), "{buy}");
    let ways = bench.json("route", &[]);
    let offers = ways["alternatives"].as_array().unwrap();
    let change = offers
        .iter()
        .position(|way| !way["offer"]["runs"].as_array().unwrap().is_empty())
        .expect("some way differs from the chosen one");
    bench.prints(
        "route",
        &["--accept", &(change + 1).to_string(), "--on", "2026-03-06"],
        0,
    );
    let record = fs::read_to_string(bench.folder.join("shop.toml")).unwrap();
    assert!(record.starts_with(&begun), "the record is only added to");
    assert!(record.contains("what = \"accepted\""), "{record}");
    assert!(bench.prints("cut", &[], 0).contains("chosen on 2026-03-02"));
}

#[test]
fn a_plan_that_cannot_be_used_is_said_and_computed_anew() {
    let bench = Bench::new(CHOSEN);
    let cards = bench.prints("cut", &[], 0);
    let huge = vec![b' '; 60_000_000];
    for hostile in [&b"{\"half of a pl"[..], &[0xff, 0xfe, 0x00][..], &huge] {
        fs::write(bench.folder.join("plan.json"), hostile).unwrap();
        let ran = bench.run("cut", &[]);
        assert_eq!(ran.status.code(), Some(0));
        assert!(
            String::from_utf8(ran.stderr)
                .unwrap()
                .contains("plan.json is left aside")
        );
        assert_eq!(bench.prints("cut", &[], 0), cards);
        let plan = fs::read_to_string(bench.folder.join("plan.json")).unwrap();
        assert!(
            plan.starts_with("{\n  \"format\": \"tubewright-plan/1\""),
            "a sound one stands there"
        );
    }
}
