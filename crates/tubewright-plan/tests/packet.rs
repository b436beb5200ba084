//! The printed packet as values: every sheet of the job, or a page that says why not.

#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::panic,
    reason = "helpers of tests are tests, whatever the lint takes them for"
)]

use std::collections::BTreeMap;
use std::sync::atomic::AtomicBool;
use tubewright_build::model::Model;
use tubewright_build::{Texts, read};
use tubewright_check::Board;
use tubewright_geometry::Length;
use tubewright_packet::{Block, Body, Packet, PacketPaper, SheetKind, Stamp, Tone, lists_of};
use tubewright_plan::fit::fit_sheet;
use tubewright_plan::lengths::Lengths;
use tubewright_plan::packet::{JointKind, PrintJob, Way, joints_of, packet_of};
use tubewright_plan::routes::PosedProblem;
use tubewright_plan::stages::{
    Routed, Supply, Surroundings, check, route, supply, survey_and_bodies,
};
use tubewright_route::Budget;
use tubewright_stock::{StockShape, substitutes};

fn model() -> Model {
    let read = read(Texts {
        build: Some(include_str!("data/small/build.toml")),
        stock: Some(include_str!("data/small/stock.toml")),
        shop: Some(include_str!("data/small/shop.toml")),
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
    let model = model();
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
    SheetKind::Cautions,
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

#[test]
fn the_fit_sheet_holds_every_step_with_its_clock_and_every_tape() {
    let bench = bench();
    let Routed::Found(alternatives) = &bench.routed else {
        panic!("the small bench has a route");
    };
    let sheet = fit_sheet(
        &bench.model,
        &bench.around,
        &alternatives[0].runs,
        &bench.supply.plan,
    );
    let lists = lists_of(&packet(&bench));
    let fit = lists.iter().find(|list| list.name == "fit").unwrap();
    let tapes: usize = sheet
        .steps
        .iter()
        .flat_map(|step| &step.checks)
        .map(|check| check.distances.len())
        .sum();
    let trims = sheet
        .steps
        .iter()
        .filter(|step| step.trim_mm.is_some())
        .count();
    assert!(tapes > 0, "the small bench has marks to tape from");
    assert_eq!(fit.rows.len(), sheet.steps.len() + trims + tapes);
}

#[test]
fn a_part_that_closes_its_stretch_says_so_where_it_is_cut() {
    let bench = bench();
    let text = words(&packet(&bench));
    let Routed::Found(alternatives) = &bench.routed else {
        panic!("the small bench has a route");
    };
    let sheet = fit_sheet(
        &bench.model,
        &bench.around,
        &alternatives[0].runs,
        &bench.supply.plan,
    );
    let closing = sheet.steps.iter().filter(|step| step.trim_mm.is_some());
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
