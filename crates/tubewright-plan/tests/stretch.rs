//! A stretch of tube that stands in the car already and stays: one run comes to it, another goes on from it, and each is
//! what its cards give.

#![allow(
    clippy::expect_used,
    clippy::indexing_slicing,
    clippy::panic,
    reason = "helpers of tests are tests, whatever the lint takes them for"
)]

mod common;

use common::prove::prove;
use common::solved::{SMALL_BUILD, SMALL_STOCK, Solved, solve};
use std::collections::BTreeMap;
use tubewright_check::{Rule, State};
use tubewright_fit::order::Act;
use tubewright_geometry::Point;
use tubewright_plan::fit::fit_sheet;
use tubewright_plan::routes::PlannedKind;
use tubewright_plan::stock::wanted;

const ITEM: &str = r#"
[[item]]
name = "old pipe 50"
kind = "stretch"
tube = "50x1.5 mild"
length = "251 mm"
"#;

/// Two places with their readings, the ends there, the stretch between them and the runs before and behind it.
const OLD: &str = r#"
[[point]]
name = "old front place"

[[point]]
name = "old rear place"

[[end]]
name = "old front"
kind = "sawn tube"
carrier = "chassis"
od = "50 mm"
flows = "in"
at = "old front place"
points = "rearwards"

[[end]]
name = "old rear"
kind = "sawn tube"
carrier = "chassis"
od = "50 mm"
flows = "out"
at = "old rear place"
points = "rearwards"

[[component]]
name = "old"
item = "old pipe 50"
stands = ["old front", "old rear"]

[[run]]
name = "main"
from = "outlet"
to = "old.in"
tube = "50x1.5 mild"
through = ["flex"]
max-bends = 4

[[run]]
name = "tail"
from = "old.out"
to = "tip"
tube = "50x1.5 mild"
through = ["silencer"]
max-bends = 4

"#;

/// Where the two places are: rearwards and to the right of the left front mark, over the floor, mm.
const PLACES: [(&str, [f64; 3]); 2] = [
    ("old front place", [950.0, 560.0, 250.0]),
    ("old rear place", [1200.0, 580.0, 250.0]),
];

/// The marks in the same way, as the small bench has them.
const MARKS: [(&str, [f64; 3]); 4] = [
    ("A left", [0.0, 0.0, 200.0]),
    ("A right", [0.0, 1000.0, 200.0]),
    ("B left", [2000.0, 0.0, 220.0]),
    ("B right", [2000.0, 1000.0, 220.0]),
];

/// The tape from every mark to both places, to the millimetre, and their heights.
fn readings() -> String {
    let mut text = String::new();
    let mut number = 200;
    let mut add = |words: String| {
        number += 1;
        text.push_str(&format!("[[reading]]\nnumber = {number}\n{words}\n\n"));
    };
    for (name, place) in PLACES {
        for (mark, at) in MARKS {
            let far = Point::from_array(place).distance(Point::from_array(at));
            add(format!(
                "kind = \"tape\"\nfrom = \"{mark}\"\nto = \"{name}\"\nreads = \"{far:.0} mm\""
            ));
        }
        add(format!(
            "kind = \"height\"\nof = \"{name}\"\nsetup = \"on its wheels\"\nreads = \"{:.0} mm\"",
            place[2]
        ));
    }
    text
}

fn build() -> String {
    let run = SMALL_BUILD.find("[[run]]").expect("it has one");
    let wishes = SMALL_BUILD.find("[wishes]").expect("it has wishes");
    format!(
        "{}{}{OLD}{}",
        &SMALL_BUILD[..run],
        readings(),
        &SMALL_BUILD[wishes..]
    )
}

fn solved() -> Solved {
    let stock = format!("{SMALL_STOCK}\n{ITEM}");
    solve(&build(), &stock, None, &BTreeMap::new(), 12_000)
}

#[test]
fn a_stretch_stays_where_it_was_measured_and_both_runs_are_what_their_cards_give() {
    let solved = solved();
    let best = solved.best().expect("there is a way");
    prove(&solved).assert_sound("stretch");
    let fails: Vec<String> = solved
        .board
        .findings()
        .iter()
        .filter(|f| f.state == State::Fail && f.rule != Rule::DoubtfulReading)
        .map(|f| format!("{:?} {}", f.rule, f.subject))
        .collect();
    // The catalyst and what else the small bench lacks is not the stretch's affair.
    assert!(
        fails
            .iter()
            .all(|fail| !fail.contains("old") && !fail.starts_with("End")),
        "{fails:#?}"
    );

    // The first run ends at its one end, the second starts at the other, to what rounding leaves.
    let end = |name: &str| solved.around.measured.places.ends[name].frame_in_car;
    let [main, tail] = ["main", "tail"].map(|name| {
        let mut runs = best.runs.iter();
        runs.find(|run| run.name == name).expect("it is there")
    });
    let (old, before) = (main.pieces.last().expect("pieces"), main.pieces.len() - 2);
    assert!(matches!(&old.kind, PlannedKind::Crossover { name, .. } if name == "old"));
    let arrives = main.pieces[before].frame_out;
    assert!(arrives.origin.distance(end("old front").origin) < 3.0);
    assert!(arrives.travel().angle_to(end("old front").travel()) < 0.02);
    assert!(tail.start.origin.distance(end("old rear").origin) < 1e-9);
    assert!(tail.start.travel().angle_to(end("old rear").travel()) < 1e-9);
    // The parts are shared out as they are written, each once.
    let parts = |run: &tubewright_plan::routes::PlannedRun| -> Vec<String> {
        let pieces = run.pieces.iter();
        pieces
            .filter_map(|piece| match &piece.kind {
                PlannedKind::Component { name, .. } => Some(name.clone()),
                _ => None,
            })
            .collect()
    };
    assert_eq!(
        (parts(main), parts(tail)),
        (vec!["flex".into()], vec!["silencer".into()])
    );

    // Nobody buys, cuts or looks for it, and nobody puts it up: it is looked at.
    let supply = solved.supply.as_ref().expect("planned");
    assert!(
        supply
            .plan
            .components
            .iter()
            .all(|c| c.item != "old pipe 50")
    );
    assert!(
        wanted(&solved.model)
            .iter()
            .all(|wanted| wanted.item != "old pipe 50")
    );
    let joints: usize = supply
        .request
        .runs
        .iter()
        .map(|r| r.welds_at_ends as usize)
        .sum();
    assert!(joints >= 2, "both of its welds are counted: {joints}");
    let sheet = fit_sheet(&solved.model, &solved.around, &best.runs, &supply.whole);
    let of_old: Vec<_> = sheet
        .steps
        .iter()
        .filter(|s| s.marks.contains(&old.mark))
        .collect();
    assert_eq!(of_old.len(), 1);
    assert!(of_old[0].is_there && of_old[0].step.act == Act::Hang);
    assert!(sheet.steps.iter().filter(|step| step.is_there).count() == 1);
}

/// Whether it stands is said by its item and its two ends together.
#[test]
fn a_stretch_that_stands_nowhere_is_told() {
    let told = |build: &str| -> Vec<String> {
        let stock = format!("{SMALL_STOCK}\n{ITEM}");
        let read = tubewright_build::read(tubewright_build::Texts {
            build: Some(build),
            stock: Some(&stock),
            shop: None,
        });
        read.problems
            .iter()
            .map(|problem| format!("{problem:?}"))
            .collect()
    };
    let build = build();
    assert!(told(&build).is_empty(), "{:#?}", told(&build));
    let stands = "stands = [\"old front\", \"old rear\"]\n";
    let has = |with: &str, words: &str| {
        let found = told(&build.replace(stands, with));
        assert!(
            found.iter().any(|problem| problem.contains(words)),
            "{words}: {found:#?}"
        );
    };
    has("", "a stretch stands in the car, and nothing says where");
    has(
        "stands = [\"old rear\", \"old front\"]\n",
        "gas comes in at its first end",
    );
    let silencer = build.replace(
        "item = \"silencer 50\"\n",
        &format!("item = \"silencer 50\"\n{stands}"),
    );
    assert!(
        told(&silencer)
            .iter()
            .any(|p| p.contains("is for items of kind `stretch`"))
    );
}
