//! What a person reads when a file is wrong: place, words, reason and what to type.

#![allow(
    clippy::unwrap_used,
    reason = "helpers of tests are tests, whatever the lint takes them for"
)]

use std::fmt::Write as _;
use tubewright_build::model::HeldBy;
use tubewright_build::{ReadBuild, Severity, Texts, read};

const MEANING: &str = include_str!("bad/meaning.build.toml");
const MEANING_STOCK: &str = include_str!("bad/meaning.stock.toml");
const KEYS: &str = include_str!("bad/keys.build.toml");
const SYNTAX: &str = include_str!("bad/syntax.build.toml");

fn all(read: &ReadBuild) -> String {
    let mut text = String::new();
    for problem in &read.problems {
        let kind = match problem.severity {
            Severity::Error => "error",
            _ => "hint",
        };
        writeln!(text, "[{kind}] {problem}\n").unwrap();
    }
    text
}

fn build(text: &str) -> ReadBuild {
    read(Texts {
        build: Some(text),
        ..Texts::default()
    })
}

#[test]
fn broken_lines() {
    insta::assert_snapshot!(all(&build(SYNTAX)));
}

#[test]
fn wrong_keys_and_values() {
    insta::assert_snapshot!(all(&build(KEYS)));
}

#[test]
fn sound_lines_without_sense() {
    insta::assert_snapshot!(all(&read(Texts {
        build: Some(MEANING),
        stock: Some(MEANING_STOCK),
        shop: None,
    })));
}

#[test]
fn what_each_job_lacks() {
    let read = build("format = \"tubewright-build/1\"\nname = \"New\"\n");
    let mut text = String::new();
    for missing in &read.missing {
        writeln!(text, "J{} {}", missing.job, missing.title).unwrap();
        for lack in &missing.lacks {
            writeln!(text, "   {lack}").unwrap();
        }
    }
    insta::assert_snapshot!(text);
}

#[test]
fn every_problem_points_at_its_words_and_says_what_to_do() {
    for (build, stock) in [(SYNTAX, None), (KEYS, None), (MEANING, Some(MEANING_STOCK))] {
        let read = read(Texts {
            build: Some(build),
            stock,
            shop: None,
        });
        assert!(read.has_errors());
        for problem in &read.problems {
            let text = if problem.file.file_name() == "build.toml" {
                build
            } else {
                stock.unwrap()
            };
            assert!(
                !problem.what.is_empty() && !problem.why.is_empty() && !problem.do_this.is_empty()
            );
            let line = text.lines().nth(problem.line - 1).unwrap_or_default();
            let here: String = line.chars().skip(problem.column - 1).collect();
            let words = problem.words.trim_end_matches('…');
            assert!(
                here.trim_start().starts_with(words) || here.is_empty() && line.trim() == words,
                "{problem}"
            );
        }
    }
}

#[test]
fn a_model_never_holds_a_name_that_it_does_not_know() {
    // Every file of this crate with any one line taken out.
    for (build, stock) in [
        (MEANING, MEANING_STOCK),
        (
            include_str!("data/estate/build.toml"),
            include_str!("data/estate/stock.toml"),
        ),
    ] {
        let lines: Vec<&str> = build.lines().collect();
        for left_out in (0..lines.len()).step_by(3) {
            let text: String = lines
                .iter()
                .enumerate()
                .filter(|(at, _)| *at != left_out)
                .map(|(_, line)| format!("{line}\n"))
                .collect();
            let model = read(Texts {
                build: Some(&text),
                stock: Some(stock),
                shop: None,
            })
            .model;
            for run in &model.build.runs {
                assert!(model.stock.tube(&run.tube).is_some());
                for through in &run.through {
                    let component = model.build.component(&through.component).unwrap();
                    assert!(model.stock.item(&component.item).is_some());
                }
            }
            for body in &model.build.bodies {
                if let tubewright_build::model::CarrierRef::Carrier(name) = &body.carrier {
                    assert!(model.build.carrier(name).is_some());
                }
            }
        }
    }
}

#[test]
fn too_long_and_too_deep_are_refused_at_the_door() {
    let long = " ".repeat(4_000_001);
    let read_long = build(&long);
    assert_eq!(read_long.problems.len(), 1, "{:?}", read_long.problems);
    let deep = format!("name = {}", "[".repeat(100_000));
    let read_deep = build(&deep);
    assert_eq!(read_deep.problems.len(), 1);
}

/// What holds an end is told of the kinds that something holds, each with its own ways.
#[test]
fn an_end_is_held_by_what_its_kind_can_be_held_by() {
    let with = |kind: &str, held_by: &str| {
        let text = format!(
            "format = \"tubewright-build/1\"\nname = \"one end\"\n\n[[end]]\nname = \"outlet\"\nkind = \"{kind}\"\n\
             od = \"60 mm\"\nflows = \"out\"\nheld-by = \"{held_by}\"\n"
        );
        let read = build(&text);
        let said: Vec<String> = read.problems.iter().map(ToString::to_string).collect();
        let held = read.model.build.end("outlet").and_then(|end| end.held_by);
        (held, said.join("\n"))
    };
    for (kind, held_by, is) in [
        ("flange", "bolts", HeldBy::Bolts),
        ("flange", "sprung bolts", HeldBy::SprungBolts),
        ("flange", "band clamp", HeldBy::BandClamp),
        ("sawn tube", "slip", HeldBy::Slip),
    ] {
        assert_eq!(with(kind, held_by), (Some(is), String::new()));
    }
    for (kind, held_by) in [
        ("flange", "slip"),
        ("sawn tube", "bolts"),
        ("joint", "band clamp"),
    ] {
        let (held, said) = with(kind, held_by);
        assert_eq!(held, None, "{kind} {held_by}");
        let words = format!("a {kind} is not held by “{held_by}”");
        assert!(
            said.contains(&words) && said.contains("remove `held-by`"),
            "{said}"
        );
    }
}
