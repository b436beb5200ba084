//! The printed packet as values: every sheet of the job, or a page that says why not.

#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::panic,
    reason = "helpers of tests are tests, whatever the lint takes them for"
)]

mod maps;

use std::collections::BTreeMap;
use std::sync::atomic::AtomicBool;
use tubewright_build::model::Model;
use tubewright_build::{Texts, read};
use tubewright_check::Board;
use tubewright_geometry::Length;
use tubewright_packet::{Block, Body, Packet, PacketPaper, SheetKind, Stamp, Tone, lists_of};
use tubewright_plan::fit::{FitSheet, fit_sheet};
use tubewright_plan::lengths::Lengths;
use tubewright_plan::packet::{JointKind, PrintJob, Way, joints_of, packet_of};
use tubewright_plan::routes::PosedProblem;
use tubewright_plan::stages::{
    Routed, Supply, Surroundings, check, route, supply, survey_and_bodies,
};
use tubewright_route::Budget;
use tubewright_stock::{StockShape, substitutes};

const BUILD: &str = include_str!("../data/small/build.toml");

fn model() -> Model {
    model_of(BUILD)
}

fn model_of(build: &str) -> Model {
    let read = read(Texts {
        build: Some(build),
        stock: Some(include_str!("../data/small/stock.toml")),
        shop: Some(include_str!("../data/small/shop.toml")),
    });
    assert!(read.problems.is_empty(), "{:#?}", read.problems);
    read.model
}

struct Bench {
    model: Model,
    around: Surroundings,
    posed: PosedProblem,
    routed: Routed,
    supply: Supply,
    board: Board,
}

fn bench() -> Bench {
    bench_of(model())
}

fn bench_of(model: Model) -> Bench {
    let around = survey_and_bodies(&model, &BTreeMap::new()).unwrap();
    let budget = Budget {
        work_units: 1500,
        seed: 1,
    };
    let never = AtomicBool::new(false);
    let (posed, routed) = route(&model, &around, budget, &never, &mut |_| {}).unwrap();
    let Routed::Found(alternatives) = &routed else {
        panic!("the small bench has a route");
    };
    let supply = supply(&model, &around.practice, &alternatives[0].runs, &[]).unwrap();
    let board = check(&model, &around, Some((&posed, &routed)), Some(&supply));
    Bench {
        model,
        around,
        posed,
        routed,
        supply,
        board,
    }
}

fn stamp() -> Stamp {
    Stamp {
        build: "small".to_owned(),
        plan_hash: "3f9c07d2a1".to_owned(),
        date: "2026-03-14".to_owned(),
        units: "mm and degrees".to_owned(),
        note: None,
    }
}

fn packet(bench: &Bench) -> Packet {
    let Routed::Found(alternatives) = &bench.routed else {
        panic!("the small bench has a route");
    };
    assert!(!bench.posed.runs.is_empty());
    let best = &alternatives[0];
    let found = substitutes(&bench.supply.request, &bench.supply.plan, 1).unwrap();
    let job = PrintJob {
        model: &bench.model,
        around: &bench.around,
        way: Some(Way::Cheapest {
            name: &best.name,
            cost: best.cost,
            lower_bound: best.lower_bound,
            among: alternatives.len(),
        }),
        runs: &best.runs,
        supply: Some(&bench.supply),
        substitutes: Ok(&found),
        board: &bench.board,
        lengths: Lengths::Millimetres,
    };
    packet_of(&job, stamp(), PacketPaper::A4)
}

const KINDS: [SheetKind; 14] = [
    SheetKind::Cover,
    SheetKind::Cautions,
    SheetKind::Survey,
    SheetKind::Run,
    SheetKind::Buy,
    SheetKind::Counter,
    SheetKind::TakeAlong,
    SheetKind::Cut,
    SheetKind::Template,
    SheetKind::Fit,
    SheetKind::Weld,
    SheetKind::JointMap,
    SheetKind::Checks,
    SheetKind::Readings,
];

#[test]
fn every_sheet_of_the_job_is_there_in_the_order_of_the_work() {
    let packet = packet(&bench());
    let mut kinds: Vec<SheetKind> = packet.sheets.iter().map(|sheet| sheet.kind).collect();
    assert!(kinds.is_sorted(), "{kinds:?}");
    kinds.dedup();
    assert_eq!(kinds, KINDS);
    for sheet in &packet.sheets {
        assert!(
            !matches!(sheet.body, Body::NotMade { .. }),
            "{} was not made",
            sheet.title
        );
    }
}

#[test]
fn without_a_route_the_sheets_that_need_one_say_so() {
    let model = model();
    let around = survey_and_bodies(&model, &BTreeMap::new()).unwrap();
    let board = check(&model, &around, None, None);
    let job = PrintJob {
        model: &model,
        around: &around,
        way: None,
        runs: &[],
        supply: None,
        substitutes: Err("there is no buying plan"),
        board: &board,
        lengths: Lengths::Millimetres,
    };
    let packet = packet_of(&job, stamp(), PacketPaper::UsLetter);
    let mut kinds: Vec<SheetKind> = packet.sheets.iter().map(|sheet| sheet.kind).collect();
    kinds.dedup();
    assert_eq!(kinds, KINDS, "none is left out in silence");
    let not_made: Vec<SheetKind> = packet
        .sheets
        .iter()
        .filter(|sheet| matches!(&sheet.body, Body::NotMade { why, .. } if !why.is_empty()))
        .map(|sheet| sheet.kind)
        .collect();
    for kind in [
        SheetKind::Run,
        SheetKind::Buy,
        SheetKind::Cut,
        SheetKind::Fit,
        SheetKind::Weld,
    ] {
        assert!(
            not_made.contains(&kind),
            "{kind:?} must say that it was not made"
        );
    }
}

#[test]
fn the_cards_hold_every_cut_and_every_part_of_the_plan() {
    let bench = bench();
    let lists = lists_of(&packet(&bench));
    let rows = |name: &str| {
        lists
            .iter()
            .find(|list| list.name == name)
            .map_or(0, |list| list.rows.len())
    };
    let cuts: usize = bench.supply.cards.iter().map(|card| card.cuts.len()).sum();
    let parts: usize = bench.supply.cards.iter().map(|card| card.parts.len()).sum();
    assert_eq!((rows("cuts"), rows("parts")), (cuts, parts));
    assert_eq!(
        rows("buy"),
        bench.supply.plan.buys.len() + bench.supply.plan.deliveries.len()
    );
}

fn fitted(bench: &Bench) -> FitSheet {
    let Routed::Found(alternatives) = &bench.routed else {
        panic!("the small bench has a route");
    };
    fit_sheet(
        &bench.model,
        &bench.around,
        &alternatives[0].runs,
        &bench.supply.plan,
    )
}

#[test]
fn the_fit_sheet_holds_every_step_with_its_clock_and_every_tape() {
    let bench = bench();
    let sheet = fitted(&bench);
    let lists = lists_of(&packet(&bench));
    let fit = lists.iter().find(|list| list.name == "fit").unwrap();
    // From one mark alone they say one thing, and that once.
    let tapes: usize = sheet
        .steps
        .iter()
        .flat_map(|step| &step.checks)
        .map(|check| check.only_mark().map_or(check.distances.len(), |_| 1))
        .sum();
    let trims = sheet
        .steps
        .iter()
        .filter_map(|step| step.trim)
        .flat_map(|trim| trim.left_mm())
        .flatten()
        .count();
    assert!(tapes > 0, "the small bench has marks to tape from");
    assert_eq!(fit.rows.len(), sheet.steps.len() + trims + tapes);
}

#[test]
fn a_part_that_closes_its_stretch_says_so_where_it_is_cut() {
    let bench = bench();
    let text = words(&packet(&bench));
    let sheet = fitted(&bench);
    let closing = sheet.steps.iter().filter(|step| step.trim.is_some());
    for step in closing {
        let said = format!("fit step {}", step.step.number);
        assert!(text.contains(&said), "{said} is on no card");
    }
}

#[test]
fn an_item_that_cannot_be_drawn_says_so_on_its_card() {
    let mut bench = bench();
    let card = &mut bench.supply.cards[0];
    card.stock.shape = StockShape::Straight {
        length: Length::ZERO,
    };
    let packet = packet(&bench);
    let card = packet
        .sheets
        .iter()
        .find(|sheet| sheet.title.starts_with("Cut card 1 "))
        .unwrap();
    let Body::Made { blocks } = &card.body else {
        panic!("the card itself is made");
    };
    assert!(blocks.iter().any(
        |block| matches!(block, Block::NotMade { what, why } if what.contains("picture") && !why.is_empty())
    ));
    assert!(
        blocks
            .iter()
            .any(|block| matches!(block, Block::Table { .. })),
        "its marks stand all the same"
    );
}

#[test]
fn every_joint_is_welded_or_lies_inside_one_part() {
    let bench = bench();
    let Routed::Found(alternatives) = &bench.routed else {
        panic!("the small bench has a route");
    };
    let runs = &alternatives[0].runs;
    let joints = joints_of(&bench.model, runs, &bench.supply);
    let pieces: usize = runs.iter().map(|run| run.pieces.len()).sum();
    let named = joints
        .iter()
        .filter(|joint| joint.mark.starts_with('J'))
        .count();
    assert_eq!(
        named,
        pieces + runs.len(),
        "one before each piece, one at each end"
    );
    let welds = joints
        .iter()
        .filter(|joint| joint.kind == JointKind::Weld)
        .count();
    // One weld fewer than parts, for a run without a crossover.
    let parts = bench.supply.fits.len();
    assert_eq!(welds, parts - runs.len());
}

/// Rows of a list by the head of their columns.
fn list(packet: &Packet, name: &str) -> Vec<BTreeMap<String, String>> {
    let lists = lists_of(packet);
    let list = lists.iter().find(|list| list.name == name).unwrap();
    let named = |row: &Vec<String>| {
        list.heads
            .iter()
            .cloned()
            .zip(row.iter().cloned())
            .collect()
    };
    list.rows.iter().map(named).collect()
}

/// Nothing is cut before it is known where it comes apart: that stands on the cover and on every card.
#[test]
fn the_cover_and_every_card_ask_where_it_comes_apart() {
    let packet = packet(&bench());
    let says = |sheet: &&tubewright_packet::Sheet| {
        match &sheet.body {
        Body::Made { blocks } => blocks.iter().any(
            |block| matches!(block, Block::Caution { text } if text.starts_with("NOT KNOWN YET WHERE IT COMES APART AGAIN")),
        ),
        _ => false,
    }
    };
    let cards = packet
        .sheets
        .iter()
        .filter(|sheet| sheet.kind == SheetKind::Cut);
    assert!(cards.clone().count() > 1);
    assert!(cards.clone().all(|sheet| says(&sheet)));
    assert!(says(&&packet.sheets[0]));
}

/// What stands at the end of a run is the sum of what stands above it.
#[test]
fn the_pieces_of_a_run_add_up_to_its_end() {
    let rows = list(&packet(&bench()), "pieces");
    let figure = |row: &BTreeMap<String, String>| row["welded length, mm"].parse::<f64>().unwrap();
    let (end, pieces) = rows.split_last().unwrap();
    let sum: f64 = pieces.iter().map(figure).sum();
    assert!(
        (sum - figure(end)).abs() < 1e-6,
        "{sum} and {}",
        figure(end)
    );
}

/// A band clamp is not told as bolts, and of a flange that nobody has told more of the sheets say so.
#[test]
fn the_first_joint_is_told_as_what_holds_it() {
    let untold = words(&packet(&bench()));
    for said in [
        "FASTEN M1 on at J1",
        "NOT GIVEN WHAT HOLDS THIS JOINT",
        "outlet (flange, not given what holds it)",
    ] {
        assert!(untold.contains(said), "{said}");
    }
    assert!(!untold.contains("BOLT M1"));
    let clamped = BUILD.replace(
        "kind = \"flange\"\n",
        "kind = \"flange\"\nheld-by = \"band clamp\"\n",
    );
    let said = words(&packet(&bench_of(model_of(&clamped))));
    for words in [
        "CLAMP M1 on at J1",
        "Held by a band clamp",
        "band clamp; weld the collar",
        "1 × band clamp with its mating collar",
    ] {
        assert!(said.contains(words), "{words}");
    }
    assert!(!said.contains("new gasket and bolts") && !said.contains("NOT GIVEN WHAT HOLDS"));
}

/// The flange is welded to the first piece too: once round a tube of 50 mm is 157 mm, six times 0.94 m.
#[test]
fn the_seam_at_the_first_flange_is_counted() {
    let bench = bench();
    let packet = packet(&bench);
    let rows = list(&packet, "welds");
    assert_eq!(
        (rows[0]["joint"].as_str(), rows[0]["weld, mm"].as_str()),
        ("J1", "157")
    );
    let last = rows.last().unwrap();
    assert_eq!(last["weld, mm"], "none", "an open tip");
    let seams = rows.iter().filter(|row| row["weld, mm"] == "157").count();
    let said = words(&packet);
    assert!(
        said.contains(&format!("{seams} welds\n")),
        "the cover counts {seams}"
    );
    let together = format!(
        "{:.2} m of weld together",
        seams as f64 * 50.0 * core::f64::consts::PI / 1000.0
    );
    assert!(said.contains(&together), "{together}");
}

/// One list of spares, on the sheet that is bought from, whether the shop asks for spares or is advised; none where it
/// wants none.
#[test]
fn spares_are_listed_once() {
    for (asked, on) in [
        (Some(2), vec!["Buy"]),
        (None, vec!["Buy"]),
        (Some(0), Vec::new()),
    ] {
        let mut model = model();
        model.stock.practice.spares = asked;
        let packet = packet(&bench_of(model));
        let is_spare = |block: &Block| matches!(block, Block::Heading { text } if text.to_lowercase().contains("spare"));
        let holding: Vec<&str> = packet
            .sheets
            .iter()
            .filter(
                |sheet| matches!(&sheet.body, Body::Made { blocks } if blocks.iter().any(is_spare)),
            )
            .map(|sheet| sheet.title.as_str())
            .collect();
        assert_eq!(holding, on, "{asked:?}");
    }
}

/// Nobody at the bench has the program: no command, no file, no key.
#[test]
fn paper_names_no_command_and_no_file() {
    let said = words(&packet(&bench()));
    for word in [
        "`",
        "tubewright ",
        ".toml",
        "snooping",
        "asked:",
        "this program",
        "stock file",
    ] {
        assert!(!said.contains(word), "{word} is on paper");
    }
}

/// An inch job is in inches and pounds on every sheet.
#[test]
fn an_inch_job_has_no_kilogram_and_no_millimetre_on_its_maps() {
    let bench = bench();
    let Routed::Found(alternatives) = &bench.routed else {
        panic!("the small bench has a route");
    };
    let best = &alternatives[0];
    let job = PrintJob {
        model: &bench.model,
        around: &bench.around,
        way: Some(Way::Chosen {
            name: &best.name,
            on: "2026-03-14",
        }),
        runs: &best.runs,
        supply: Some(&bench.supply),
        substitutes: Ok(&[]),
        board: &bench.board,
        lengths: Lengths::Inches,
    };
    let said = words(&packet_of(&job, stamp(), PacketPaper::UsLetter));
    for unit in [" kg", " N ", " N:", "litres", "l/min"] {
        let line = said.lines().find(|line| line.contains(unit));
        assert_eq!(line, None, "{unit}");
    }
    assert!(said.contains("9.0 lb"), "the silencer of 4.1 kg");
}

/// The words of a packet, without its drawings.
fn words(packet: &Packet) -> String {
    let mut out = String::new();
    for sheet in &packet.sheets {
        out.push_str(&format!("\n=== {}\n", sheet.title));
        let blocks = match &sheet.body {
            Body::Made { blocks } => blocks.as_slice(),
            Body::TrueScale { .. } => {
                out.push_str("(true scale)\n");
                continue;
            }
            Body::NotMade { why, .. } => {
                out.push_str(&format!("NOT MADE {why}\n"));
                continue;
            }
        };
        for block in blocks {
            match block {
                Block::Heading { text } => out.push_str(&format!("# {text}\n")),
                Block::Words { text } => out.push_str(&format!("{text}\n")),
                Block::Caution { text } => out.push_str(&format!("! {text}\n")),
                Block::Items { lines } => {
                    for line in lines {
                        out.push_str(&format!("- {line}\n"));
                    }
                }
                Block::Figures { figures } => {
                    for figure in figures {
                        out.push_str(&format!("{} {}\n", figure.value, figure.what));
                    }
                }
                Block::Steps { steps } => {
                    for step in steps {
                        out.push_str(&format!("[ ] {}: {}\n", step.what, step.how));
                    }
                }
                Block::Table { table } => {
                    let heads: Vec<&str> = table.columns.iter().map(|c| c.head.as_str()).collect();
                    out.push_str(&format!("| {}\n", heads.join(" | ")));
                    for row in &table.rows {
                        let sign = if row.tone == Tone::Group { "##" } else { " " };
                        out.push_str(&format!("{sign} {}\n", row.cells.join(" | ").trim_end()));
                    }
                }
                Block::Picture { picture } => out.push_str(&format!("({})\n", picture.words)),
                Block::Pictures { pictures } => {
                    for picture in pictures {
                        out.push_str(&format!("({})\n", picture.words));
                    }
                }
                Block::NotMade { what, why } => out.push_str(&format!("NOT MADE {what}: {why}\n")),
                Block::Contents => out.push_str("(contents)\n"),
                Block::NewPage => out.push_str("---\n"),
                _ => {}
            }
        }
    }
    out
}

#[test]
fn the_words_of_the_packet_are_as_they_were_read_and_approved() {
    insta::assert_snapshot!(words(&packet(&bench())));
}
