//! Tips that may lie along the tail and outlets that may be sawn off, on the demonstration kit car: from the
//! build file to the joints, the plan file and the findings.

#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::panic,
    reason = "helpers of tests are tests, whatever the lint takes them for"
)]

mod common;

use std::collections::BTreeMap;
use std::fmt::Write;
use std::path::Path;
use std::sync::OnceLock;

use common::solved::{Solved, solve};
use tubewright_build::document::append_entry;
use tubewright_build::model::EndKind;
use tubewright_build::{Texts, read};
use tubewright_check::{Rule, State};
use tubewright_geometry::Point;
use tubewright_plan::fit::{Act, PartKind, fit_sheet};
use tubewright_plan::frozen::{chosen_entry, frozen_plan, planned};
use tubewright_plan::lengths::Lengths;
use tubewright_plan::packet::{TemplateJob, joints_of, shaped_words, templates_of};
use tubewright_plan::plan_file::{
    PlanFile, Stage, StoredRoutes, StoredStage, routes_inputs, routes_result,
};
use tubewright_plan::routes::{FLANGE_MM, PlannedKind, words_of_ends};
use tubewright_plan::stages::{Routed, routed_again, supply, survey_and_bodies};
use tubewright_route::Budget;
use tubewright_sheets::{Drawing, Paper, to_svg};

/// Work units: enough for a route, not for a good one.
const EFFORT: u64 = 3000;
/// The tail of the car, left and right: opposite corners of the room of the tip.
const TAIL: [(&str, Point); 2] = [
    ("tail left", Point::new(726.0, -480.0, 150.0)),
    ("tail right", Point::new(726.0, 150.0, 230.0)),
];

fn text(file: &str) -> String {
    let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join("../../builds/kitcar-mid4");
    std::fs::read_to_string(folder.join(file)).expect(file)
}

/// The build with two places at the tail, taped from every mark to the millimetre.
fn with_tail() -> &'static str {
    static TEXT: OnceLock<String> = OnceLock::new();
    TEXT.get_or_init(|| {
        let (build, stock) = (text("build.toml"), text("stock.toml"));
        let read = read(Texts {
            build: Some(&build),
            stock: Some(&stock),
            shop: None,
        });
        let around = survey_and_bodies(&read.model, &BTreeMap::new()).unwrap();
        let mut out = build;
        let mut number = 900;
        for (name, at) in TAIL {
            write!(out, "\n[[point]]\nname = \"{name}\"\n").unwrap();
            for mark in &read.model.build.marks {
                let place = around.measured.places.points[mark.name.as_str()];
                let mm = at.distance(place.point_in_car).round();
                number += 1;
                write!(
                    out,
                    "\n[[reading]]\nnumber = {number}\nkind = \"tape\"\nfrom = \"{}\"\nto = \"{name}\"\nreads = \"{mm} mm\"\n",
                    mark.name
                )
                .unwrap();
            }
        }
        out
    })
}

/// The build with these lines put behind lines that stand in it.
fn changed(changes: &[(&str, &str)]) -> String {
    let mut build = with_tail().to_owned();
    for (line, more) in changes {
        assert_eq!(
            build.matches(line).count(),
            1,
            "{line} is written otherwise"
        );
        build = build.replace(line, &format!("{line}{more}"));
    }
    build
}

fn solved(changes: &[(&str, &str)]) -> Solved {
    let build = changed(changes);
    solve(&build, &text("stock.toml"), None, &BTreeMap::new(), EFFORT)
}

const TIP: &str = "points = \"rearwards\"\nwithin = \"10 mm\"\n";
const OUTLET: &str = "place = \"V-band flange of the turbine housing\"\n";
const SAW_OFF: &str = "saw-off = { back = \"45 mm\" }\n";
const TUB: &str = "name = \"luggage tub\"\n";

fn findings(solved: &Solved, rule: Rule) -> Vec<(State, String)> {
    solved
        .board
        .findings()
        .iter()
        .filter(|finding| finding.rule == rule)
        .map(|finding| {
            (
                finding.state,
                format!("{} {}", finding.subject, finding.advice),
            )
        })
        .collect()
}

#[test]
fn a_tip_along_the_tail_costs_less_and_is_told_where_it_is() {
    let held = solved(&[]);
    let held_run = &held.best().unwrap().runs[0];
    assert!(words_of_ends(&held.posed, held_run, Lengths::Millimetres).is_empty());
    // Nobody has said where a tip must not blow.
    let said = findings(&held, Rule::TipPlace);
    assert!(
        matches!(said.as_slice(), [(State::NotChecked, _)]),
        "{said:?}"
    );
    let loose = solved(&[
        (TIP, "room = [\"tail left\", \"tail right\"]\n"),
        (TUB, "no-tip = \"100 mm\"\n"),
    ]);
    let best = loose.best().unwrap();
    assert!(best.cost < held.best().unwrap().cost, "{}", best.cost);
    let run = &best.runs[0];
    let tip = run.arrival().origin;
    let [(_, low), (_, high)] = TAIL;
    // The corners were taped to the millimetre: the room is known to a few.
    for (at, (low, high)) in tip
        .to_array()
        .into_iter()
        .zip(low.to_array().into_iter().zip(high.to_array()))
    {
        assert!((low - 6.0..=high + 6.0).contains(&at), "{tip:?}");
    }
    assert!(run.end_error_mm() < 1.0 && run.end_error_rad().to_degrees() < 0.5);
    let words = words_of_ends(&loose.posed, run, Lengths::Millimetres);
    assert!(
        words.len() == 1 && words[0].contains("than wished"),
        "{words:?}"
    );
    let said = findings(&loose, Rule::TipPlace);
    assert!(matches!(said.as_slice(), [(State::Pass, _)]), "{said:?}");
}

/// The cheapest tip lies near the left tyre; with half a metre kept from that it goes to the right.
#[test]
fn no_tip_lies_near_what_it_must_not_blow_at() {
    const ROOM: (&str, &str) = (TIP, "room = [\"tail left\", \"tail right\"]\n");
    let far_from = |solved: &Solved| {
        let tyre = solved.around.bodies.placed.iter();
        let bounds = tyre
            .filter(|body| *body.name == *"left rear tyre")
            .find_map(|body| body.solid_in_car.bounds())
            .unwrap();
        solved.best().unwrap().runs[0].arrival().origin.y - bounds.max.y
    };
    let anywhere = solved(&[ROOM]);
    assert!(far_from(&anywhere) < 500.0, "{}", far_from(&anywhere));
    let kept = solved(&[
        ROOM,
        ("name = \"left rear tyre\"\n", "no-tip = \"500 mm\"\n"),
    ]);
    assert!(far_from(&kept) > 500.0, "{}", far_from(&kept));
    let said = findings(&kept, Rule::TipPlace);
    assert!(matches!(said.as_slice(), [(State::Pass, _)]), "{said:?}");
}

#[test]
fn an_outlet_is_sawn_off_where_it_may_be_and_stands_in_every_list() {
    let solved = solved(&[(OUTLET, SAW_OFF)]);
    let Routed::Found(ways) = &solved.routed else {
        panic!("there is a way")
    };
    let is_sawn = |name: &str| name.ends_with("outlet sawn off");
    assert!(ways.iter().any(|way| !is_sawn(&way.name)));
    let way = ways.iter().find(|way| is_sawn(&way.name)).unwrap();
    let run = &way.runs[0];
    let sawn = run.sawn.unwrap();
    assert!(
        (FLANGE_MM - 0.01..=45.01).contains(&sawn.back_mm),
        "{sawn:?}"
    );
    // With a flex section first it is sawn square.
    assert!(sawn.turn_rad.abs() < 1e-9);
    let outlet = solved.posed.runs[0].start.frame_in_car;
    let back = outlet
        .advanced(-sawn.back_mm)
        .origin
        .distance(run.start.origin);
    assert!(back < 1e-6, "{back}");
    assert!(run.twelve_words().contains("carried along the outlet"));
    let supply = supply(&solved.model, &solved.around.practice, &way.runs, &[]).unwrap();
    let joints = joints_of(&solved.model, &way.runs, &supply);
    assert_eq!(joints[0].meets, Some(EndKind::SawnTube));
    assert!(
        joints[0].between[0].contains("sawn off"),
        "{:?}",
        joints[0].between
    );
    // Nothing is bolted to it.
    let sheet = fit_sheet(&solved.model, &solved.around, &way.runs, &supply.whole);
    assert!(
        sheet
            .steps
            .iter()
            .all(|step| step.step.act != Act::Bolt && step.kind != PartKind::Bolted)
    );
    let words = words_of_ends(&solved.posed, run, Lengths::Millimetres);
    assert!(words[0].contains("sawn off"), "{words:?}");
    // In the plan file and in the record of what was chosen it is the same run.
    let budget = Budget {
        work_units: EFFORT,
        seed: 1,
    };
    let inputs = routes_inputs(
        &solved.model,
        &BTreeMap::new(),
        &solved.around.practice,
        budget,
    );
    let mut plan = PlanFile::default();
    plan.set(
        Stage::Routes,
        StoredStage::new(
            &inputs,
            routes_result(&inputs, &solved.posed, &solved.routed, budget),
        ),
    );
    let plan = PlanFile::parse(&plan.to_text()).unwrap();
    let stored = StoredRoutes::of(plan.stage(Stage::Routes).unwrap()).unwrap();
    let Routed::Found(again) = routed_again(&solved.model, &solved.posed, &stored).unwrap() else {
        panic!("routes come back as routes")
    };
    assert_eq!(&again, ways);
    let units = solved.model.build.shown_units().units;
    let entry = chosen_entry("2026-11-30", &way.name, budget, &way.runs, units);
    let shop = append_entry(None, &entry).unwrap();
    let build = changed(&[(OUTLET, SAW_OFF)]);
    let chosen = read(Texts {
        build: Some(&build),
        stock: Some(&text("stock.toml")),
        shop: Some(&shop),
    });
    assert!(!chosen.has_errors(), "{:#?}", chosen.problems);
    let frozen = frozen_plan(&chosen.model.shop).unwrap();
    let (runs, troubles) = planned(&chosen.model, &solved.posed, &frozen);
    assert!(troubles.is_empty(), "{troubles:?}");
    let (kept, was) = (runs[0].sawn.unwrap(), sawn);
    assert!(
        (kept.back_mm - was.back_mm).abs() < 0.01,
        "{kept:?} {was:?}"
    );
    assert!(runs[0].arrival().origin.distance(run.arrival().origin) < 0.1);
}

#[test]
fn cast_iron_and_what_is_not_said_are_never_sawn_off() {
    for material in ["material = \"cast iron\"\n", ""] {
        let build = changed(&[(OUTLET, SAW_OFF)]).replace(
            "rim = \"104 mm\"\nmaterial = \"304\"\n",
            &format!("rim = \"104 mm\"\n{material}"),
        );
        let solved = solve(&build, &text("stock.toml"), None, &BTreeMap::new(), EFFORT);
        let Routed::Found(ways) = &solved.routed else {
            panic!("there is a way")
        };
        assert!(ways.iter().all(|way| way.runs[0].sawn.is_none()));
        let said = findings(&solved, Rule::WishKept);
        assert!(
            said.iter()
                .any(|(state, words)| *state == State::NotChecked && words.starts_with("saw-off")),
            "{said:?}"
        );
    }
}

/// The curve of a template: how far it reaches along the tube, and where it lies on the line that the strip
/// starts at, both from its nearest place to the downstream edge.
fn curve(whole: &Drawing) -> [f64; 2] {
    let svg = to_svg(whole);
    let (_, from) = svg.split_once("data-layer=\"curve\">").unwrap();
    let (layer, _) = from.split_once("</g>").unwrap();
    let (_, from) = layer.split_once("d=\"").unwrap();
    let (path, _) = from.split_once('"').unwrap();
    let numbers: Vec<f64> = path
        .split(|c: char| !(c.is_ascii_digit() || c == '.' || c == '-'))
        .filter_map(|number| number.parse().ok())
        .collect();
    let spots: Vec<[f64; 2]> = numbers.chunks(2).map(|pair| [pair[0], pair[1]]).collect();
    assert!(spots.len() > 20, "{path}");
    let top = spots.iter().map(|at| at[1]).fold(f64::INFINITY, f64::min);
    let foot = spots
        .iter()
        .map(|at| at[1])
        .fold(f64::NEG_INFINITY, f64::max);
    let first = spots.iter().min_by(|a, b| a[0].total_cmp(&b[0])).unwrap();
    [foot - top, first[1] - top]
}

#[test]
fn a_mitred_outlet_has_a_template_for_both_its_sides() {
    let solved = solved(&[(OUTLET, SAW_OFF)]);
    let Routed::Found(ways) = &solved.routed else {
        panic!("there is a way")
    };
    let way = ways.iter().find(|way| way.runs[0].sawn.is_some()).unwrap();
    let job = |runs| TemplateJob {
        model: &solved.model,
        runs,
        supply: None,
        lengths: Lengths::Millimetres,
        source_line: "kit car",
        paper: Paper::A4,
    };
    // Sawn square it has none.
    let square = templates_of(job(&way.runs)).unwrap();
    assert_eq!(square.len(), 1, "{:?}", square[0].name);
    let supply = supply(&solved.model, &solved.around.practice, &way.runs, &[]).unwrap();
    assert!(shaped_words(&way.runs, Some(&supply)).contains("no shaped template"));
    let mut runs = way.runs.clone();
    let mut sawn = runs[0].sawn.unwrap();
    sawn.turn_rad = 20.0_f64.to_radians();
    runs[0].sawn = Some(sawn);
    runs[0].pieces[0].kind = PlannedKind::Straight { length_mm: 80.0 };
    assert!(shaped_words(&runs, Some(&supply)).contains("sawn off as a mitre"));
    let templates = templates_of(job(&runs)).unwrap();
    let mark = runs[0].pieces[0].mark.clone();
    assert_eq!(templates.len(), 3);
    assert!(templates[1].title.contains("10°"), "{}", templates[1].title);
    assert!(templates[2].title.contains(&mark), "{}", templates[2].title);
    // From short to long side: D tan(10°) = 63.5 × 0.17633.
    for (at, template) in templates[1..].iter().enumerate() {
        let [height, first] = curve(&template.whole);
        assert!((height - 11.197).abs() < 0.02, "{at}: {height}");
        // The strip starts at the short side of the outlet, and at the long side of the piece: both lie
        // furthest upstream.
        assert!((first - height).abs() < 0.02, "{at}: {first}");
    }
    // The middle of the cut lies back by what is sawn off, the short side half of that height more.
    let back = format!("{:.0} mm back", sawn.back_mm + 0.5 * 11.197);
    assert!(templates[1].lay.contains(&back), "{}", templates[1].lay);
    assert!(
        templates[2].lay.contains("6 mm longer"),
        "{}",
        templates[2].lay
    );
}
