//! Where nothing fits, every change that is named, or two together, was solved: made in the build itself, it gives a way.

#![allow(
    clippy::expect_used,
    clippy::panic,
    reason = "helpers of tests are tests, whatever the lint takes them for"
)]

mod common;

use std::collections::BTreeMap;

use common::solved::{SMALL_BUILD, SMALL_STOCK, Solved, solve};
use tubewright_check::State;
use tubewright_plan::stages::Routed;

/// The small bench with these words in place of those.
fn bench(old: &str, new: &str) -> Solved {
    assert!(SMALL_BUILD.contains(old), "the bench is written otherwise");
    solve(
        &SMALL_BUILD.replace(old, new),
        SMALL_STOCK,
        None,
        &BTreeMap::new(),
        8000,
    )
}

fn help_of(solved: &Solved) -> &[String] {
    match &solved.routed {
        Routed::NotFound { would_help, .. } | Routed::NoneExists { would_help, .. } => would_help,
        other => panic!("a way was found: {other:?}"),
    }
}

const BEAM: &str = "name = \"beam\"\nkind = \"box\"\nclass = \"structure\"\n";

fn beam(class: &str, gap_mm: f64) -> Solved {
    let asked =
        format!("name = \"beam\"\nkind = \"box\"\nclass = \"{class}\"\ngap = \"{gap_mm} mm\"\n");
    bench(BEAM, &asked)
}

#[test]
fn the_least_gap_that_is_named_gives_a_way() {
    let asked = 400.0;
    let blocked = beam("structure", asked);
    let help = help_of(&blocked);
    let words = help
        .iter()
        .find(|words| words.contains("to “beam” instead of 400 mm"))
        .unwrap_or_else(|| panic!("no gap is named: {help:#?}"));
    let gap_mm: f64 = words
        .strip_prefix("with a gap of ")
        .and_then(|rest| rest.split(' ').next())
        .and_then(|number| number.parse().ok())
        .expect("a gap in whole millimetres");
    assert!(gap_mm > 0.0 && gap_mm < asked, "{words}");
    assert!(beam("structure", gap_mm).best().is_some(), "{words}");
    let told = blocked
        .board
        .findings()
        .iter()
        .any(|finding| finding.state == State::Fail && finding.advice.contains(words.as_str()));
    assert!(told, "the checks say it too");
}

#[test]
fn what_carries_brakes_or_fuel_is_moved_and_never_come_nearer() {
    let blocked = beam("fuel-brake", 400.0);
    let help = help_of(&blocked);
    assert!(
        help.iter()
            .any(|words| words == "with “beam” moved out of the way there is one"),
        "{help:#?}"
    );
    assert!(
        !help.iter().any(|words| words.contains("to “beam”")),
        "{help:#?}"
    );
}

/// Two beams in one place, each with a gap that leaves no way.
fn beams(gaps_mm: [f64; 2]) -> Solved {
    let [beam, brace] = gaps_mm;
    let asked = format!(
        "name = \"beam\"\nkind = \"box\"\nclass = \"structure\"\ngap = \"{beam} mm\"\n\
         corner = \"beam a\"\nopposite = \"beam b\"\n\n\
         [[body]]\nname = \"brace\"\nkind = \"box\"\nclass = \"structure\"\ngap = \"{brace} mm\"\n"
    );
    bench(BEAM, &asked)
}

#[test]
fn where_no_single_change_does_two_are_told_that_do_together() {
    let blocked = beams([400.0, 380.0]);
    let help = help_of(&blocked);
    let words = help
        .iter()
        .find(|words| words.starts_with("there is a way only with these together"))
        .unwrap_or_else(|| panic!("no two are named: {help:#?}"));
    let gap_mm = |name: &str| -> f64 {
        let behind = format!(" mm to “{name}” instead of");
        let before = words.split(&behind).next().expect("it names both");
        let number = before.rsplit(' ').next().expect("a number before it");
        number.parse().unwrap_or_else(|_| panic!("{name}: {words}"))
    };
    let both = [gap_mm("beam"), gap_mm("brace")];
    assert!(both[0] < 400.0 && both[1] < 380.0, "{words}");
    assert!(beams(both).best().is_some(), "{words}");
    // Neither is named alone, because neither does alone.
    assert!(beams([both[0], 380.0]).best().is_none(), "{words}");
    assert!(beams([400.0, both[1]]).best().is_none(), "{words}");
}
