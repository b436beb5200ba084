//! The plan file: what comes back, what makes a stage older and what does not, and what hostile or
//! damaged files do: nothing.

#![allow(
    clippy::unwrap_used,
    clippy::panic,
    clippy::indexing_slicing,
    reason = "helpers of tests are tests, whatever the lint takes them for"
)]

use proptest::prelude::*;
use std::collections::BTreeMap;
use std::sync::OnceLock;
use std::sync::atomic::AtomicBool;
use tubewright_build::document::{NameKind, rename};
use tubewright_build::model::Model;
use tubewright_build::{FileKind, Texts, read};
use tubewright_plan::plan_file::{
    Freshness, Inputs, PlanFile, PlanFileError, Renamed, Stage, StoredRoutes, StoredStage,
    bodies_inputs, bodies_result, carried_over, checks_inputs, checks_result, routes_inputs,
    routes_result, stock_inputs, stock_result, survey_inputs, survey_result,
};
use tubewright_plan::routes::PosedProblem;
use tubewright_plan::stages::{
    Routed, Surroundings, check, route, routed_again, supply, survey_and_bodies,
};
use tubewright_route::Budget;

const BUILD: &str = include_str!("data/small/build.toml");
const STOCK: &str = include_str!("data/small/stock.toml");
const SHOP: &str = include_str!("data/small/shop.toml");
const BUDGET: Budget = Budget {
    work_units: 1500,
    seed: 1,
};

fn model(build: &str, stock: &str) -> Model {
    let read = read(Texts {
        build: Some(build),
        stock: Some(stock),
        shop: Some(SHOP),
    });
    assert!(read.problems.is_empty(), "{:#?}", read.problems);
    read.model
}

struct Job {
    model: Model,
    around: Surroundings,
    posed: PosedProblem,
    routed: Routed,
    text: String,
}

/// The small bench, solved once.
fn job() -> &'static Job {
    static JOB: OnceLock<Job> = OnceLock::new();
    JOB.get_or_init(|| {
        let model = model(BUILD, STOCK);
        let around = survey_and_bodies(&model, &BTreeMap::new()).unwrap();
        let never = AtomicBool::new(false);
        let (posed, routed) = route(&model, &around, BUDGET, &never, &mut |_| {}).unwrap();
        let inputs = every_input(&model);
        let Routed::Found(alternatives) = &routed else {
            panic!("the small bench has a route");
        };
        let first = &alternatives.first().unwrap().runs;
        let supply = supply(&model, &around.practice, first, &[]).unwrap();
        let board = check(&model, &around, Some((&posed, &routed)), Some(&supply));
        let mut plan = PlanFile::default();
        let [survey, bodies, routes, stock, checks] = &inputs;
        for (stage, inputs, result) in [
            (Stage::Checks, checks, checks_result(checks, &board)),
            (Stage::Survey, survey, survey_result(survey, &around)),
            (Stage::Bodies, bodies, bodies_result(bodies, &around)),
            (
                Stage::Routes,
                routes,
                routes_result(routes, &posed, &routed, BUDGET),
            ),
            (Stage::Stock, stock, stock_result(stock, &supply)),
        ] {
            plan.set(stage, StoredStage::new(inputs, result));
        }
        Job {
            text: plan.to_text(),
            model,
            around,
            posed,
            routed,
        }
    })
}

const STAGES: [Stage; 5] = [
    Stage::Survey,
    Stage::Bodies,
    Stage::Routes,
    Stage::Stock,
    Stage::Checks,
];

fn every_input(model: &Model) -> [Inputs; 5] {
    let none = BTreeMap::new();
    let practice = model.stock.practice.resolved(model.stock.currency.unwrap());
    let routes = routes_inputs(model, &none, &practice, BUDGET);
    let stock = stock_inputs(model, &practice, &routes, None);
    let checks = checks_inputs(model, &none, &stock, None);
    [
        survey_inputs(model),
        bodies_inputs(model, &none),
        routes,
        stock,
        checks,
    ]
}

/// The stages that are older after an edit, with the words of the first.
fn older(build: &str, stock: &str) -> (Vec<&'static str>, String) {
    let plan = PlanFile::parse(&job().text).unwrap();
    let now = every_input(&model(build, stock));
    let mut names = Vec::new();
    let mut words = String::new();
    for (stage, inputs) in STAGES.iter().zip(&now) {
        let freshness = plan.stage(*stage).unwrap().freshness(inputs);
        if !freshness.is_fresh() {
            if words.is_empty() {
                words = freshness.words(3);
            }
            names.push(stage.name());
        }
    }
    (names, words)
}

#[test]
fn what_was_written_comes_back_bit_for_bit() {
    let job = job();
    let plan = PlanFile::parse(&job.text).unwrap();
    assert_eq!(plan.to_text(), job.text, "equal plans give equal bytes");
    let stored = StoredRoutes::of(plan.stage(Stage::Routes).unwrap()).unwrap();
    assert_eq!(stored.budget, BUDGET);
    let again = routed_again(&job.model, &job.posed, &stored).unwrap();
    let (Routed::Found(again), Routed::Found(solved)) = (again, &job.routed) else {
        panic!("routes come back as routes");
    };
    assert_eq!(&again, solved);
    assert!(job.around.bodies.missing.is_empty());
}

#[test]
fn only_what_read_a_change_is_older_and_the_change_is_named() {
    let edit = |text: &str, old: &str, new: &str| {
        let edited = text.replacen(old, new, 1);
        assert_ne!(edited, text, "{old} is not there");
        edited
    };
    let all = vec!["survey", "bodies", "routes", "stock", "checks"];
    let cases: Vec<(&str, String, String, Vec<&str>, &str)> = vec![
        ("nothing", BUILD.into(), STOCK.into(), vec![], ""),
        (
            "a comment",
            edit(BUILD, "[frame]", "# seen\n[frame]"),
            STOCK.into(),
            vec![],
            "",
        ),
        (
            "a unit",
            edit(BUILD, "\"10 mm\"", "\"1 cm\""),
            STOCK.into(),
            vec![],
            "",
        ),
        (
            "units that are shown",
            edit(BUILD, "\"mm\"", "\"in\""),
            STOCK.into(),
            vec![],
            "",
        ),
        (
            "a price",
            BUILD.into(),
            edit(STOCK, "9.00 EUR", "9.10 EUR"),
            vec!["stock", "checks"],
            "older than the offer of “bend 45 from Yard”",
        ),
        (
            "the kerf",
            BUILD.into(),
            edit(STOCK, "[practice]", "[practice]\nkerf = \"2 mm\""),
            vec!["stock", "checks"],
            "older than the shop's practice",
        ),
        (
            "the worth of an hour",
            BUILD.into(),
            edit(STOCK, "60 EUR/h", "61 EUR/h"),
            vec!["routes", "stock", "checks"],
            "older than rate of the shop's practice",
        ),
        (
            "a reading",
            edit(BUILD, "\"330 mm\"", "\"331 mm\""),
            STOCK.into(),
            all,
            "older than reading ",
        ),
        (
            "a gap",
            edit(
                BUILD,
                "class = \"structure\"",
                "class = \"structure\"\ngap = \"30 mm\"",
            ),
            STOCK.into(),
            vec!["bodies", "routes", "stock", "checks"],
            "older than body “beam”",
        ),
        (
            "a new body",
            edit(
                BUILD,
                "[[component]]",
                "[[body]]\nname = \"ball\"\nkind = \"sphere\"\nclass = \"heat\"\nat = \"beam a\"\ndiameter = \"10 mm\"\n\n[[component]]",
            ),
            STOCK.into(),
            vec!["bodies", "routes", "stock", "checks"],
            "older than body “ball”, which is new",
        ),
        (
            "a bend that is sold no more",
            BUILD.into(),
            edit(
                STOCK,
                "[[offer]]\nitem = \"bend 30\"\nsupplier = \"Yard\"\nprice = \"8.00 EUR\"\n",
                "",
            ),
            vec!["routes", "stock", "checks"],
            "older than item “bend 30”",
        ),
        (
            "the wished effort",
            edit(BUILD, "effort = 1500", "effort = 1501"),
            STOCK.into(),
            vec!["routes", "stock", "checks"],
            "older than the wish effort",
        ),
        (
            "a wish that only the checks read",
            edit(BUILD, "[wishes]", "[wishes]\nkeep-catalysts = false"),
            STOCK.into(),
            vec!["checks"],
            "older than the wish keep-catalysts",
        ),
    ];
    for (what, build, stock, stages, words) in cases {
        let (found, said) = older(&build, &stock);
        assert_eq!(found, stages, "{what}: {said}");
        assert!(said.starts_with(words), "{what}: {said}");
    }
}

#[test]
fn what_is_no_plan_is_told_and_never_a_panic() {
    let deep = format!(
        "{{\"format\":\"tubewright-plan/1\",\"stages\":{{\"routes\":{{\"read\":\"{}\",\"result\":{}{}}}}}}}",
        "0".repeat(64),
        "[".repeat(200_000),
        "]".repeat(200_000)
    );
    let routes_of = |text: &str| {
        PlanFile::parse(text).and_then(|plan| StoredRoutes::of(plan.stage(Stage::Routes).unwrap()))
    };
    assert!(routes_of(&deep).is_err());
    assert!(matches!(
        PlanFile::parse("{\"format\":\"tubewright-plan/2\",\"stages\":{},\"more\":1}"),
        Err(PlanFileError::OtherForm { found }) if found == "tubewright-plan/2"
    ));
    for text in [
        "",
        "null",
        "[]",
        "{\"format\":3}",
        "{\"half of a pl",
        "\u{feff}{}",
    ] {
        assert!(PlanFile::parse(text).is_err(), "{text}");
    }
    let text = &job().text;
    let at = text.find("\"length\": 120.0").unwrap();
    for number in ["NaN", "1e999", "-1.0", "1e9", "\"120\"", "null"] {
        let mut hostile = text.clone();
        hostile.replace_range(
            at..at + "\"length\": 120.0".len(),
            &format!("\"length\": {number}"),
        );
        assert!(routes_of(&hostile).is_err(), "{number}");
    }
    let stranger = text.replace("\"run\": \"main\"", "\"run\": \"another\"");
    let stored = routes_of(&stranger).unwrap();
    assert!(matches!(
        routed_again(&job().model, &job().posed, &stored),
        Err(PlanFileError::NotOfThisBuild(_))
    ));
}

#[test]
fn a_stage_of_another_method_is_older_without_a_cause() {
    let text = &job().text;
    let at = text.find("\"read\": \"").unwrap() + 9;
    let mut other = text.clone();
    other.replace_range(at..at + 64, &"0".repeat(64));
    let plan = PlanFile::parse(&other).unwrap();
    let freshness = plan
        .stage(Stage::Survey)
        .unwrap()
        .freshness(&survey_inputs(&job().model));
    assert_eq!(freshness, Freshness::Older(Vec::new()));
    assert_eq!(
        freshness.words(3),
        "made by another version of this program"
    );
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(300))]
    #[test]
    fn a_file_that_was_meddled_with_never_panics(
        at in 0.0..1.0f64, length in 0_usize..40, with in "[0-9a-zA-Z\\[\\]{}\",:.eE+-]{0,8}",
    ) {
        let text = &job().text;
        let place = |share: f64| {
            #[expect(clippy::cast_possible_truncation, clippy::cast_sign_loss, clippy::cast_precision_loss, reason = "a share of a short text")]
            let mut place = (share * text.len() as f64) as usize;
            while !text.is_char_boundary(place) {
                place += 1;
            }
            place
        };
        let from = place(at);
        let mut to = (from + length).min(text.len());
        while !text.is_char_boundary(to) {
            to += 1;
        }
        let mut meddled = text.clone();
        meddled.replace_range(from..to, &with);
        if let Ok(plan) = PlanFile::parse(&meddled) {
            prop_assert_eq!(PlanFile::parse(&plan.to_text()).unwrap().to_text(), plan.to_text());
            if let Some(stage) = plan.stage(Stage::Routes) {
                if let Ok(stored) = StoredRoutes::of(stage) {
                    let _ = routed_again(&job().model, &job().posed, &stored);
                }
                let _ = stage.freshness(&survey_inputs(&job().model)).words(3);
            }
        }
    }
}

/// The texts after a renaming.
fn renamed(kind: NameKind, old: &str, new: &str) -> (String, String, String) {
    let texts = Texts {
        build: Some(BUILD),
        stock: Some(STOCK),
        shop: Some(SHOP),
    };
    let changes = rename(texts, Some(&job().text), kind, old, new).unwrap();
    let after = |file, text: &str| changes.text(file).unwrap_or(text).to_owned();
    (
        after(FileKind::Build, BUILD),
        after(FileKind::Stock, STOCK),
        after(FileKind::Plan, &job().text),
    )
}

#[test]
fn a_renaming_leaves_the_routes_fresh_and_as_a_new_search_would_give_them() {
    let build = &job().model.build;
    let stock = &job().model.stock;
    let cases = [
        (NameKind::Mark, build.marks[0].name.to_string()),
        (NameKind::Body, build.bodies[0].name.to_string()),
        (NameKind::End, build.ends[0].name.to_string()),
        (NameKind::Run, build.runs[0].name.to_string()),
        (NameKind::Component, build.components[0].name.to_string()),
        (NameKind::Tube, stock.tubes[0].name.to_string()),
        (NameKind::Item, stock.items[0].name.to_string()),
    ];
    let none = BTreeMap::new();
    let never = AtomicBool::new(false);
    for (kind, old) in cases {
        let new = "zz 排气, the new one";
        let (build, stock, plan) = renamed(kind, &old, new);
        let after = model(&build, &stock);
        let what = Renamed {
            kind,
            old: &old,
            new,
        };
        let carried = carried_over(&plan, &job().model, &after, &none, what)
            .unwrap_or_else(|| panic!("{kind:?} {old}: nothing is carried over"));
        let around = survey_and_bodies(&after, &none).unwrap();
        let inputs = routes_inputs(&after, &none, &around.practice, BUDGET);
        let stage = carried.stage(Stage::Routes).unwrap();
        assert!(stage.freshness(&inputs).is_fresh(), "{kind:?} {old}");
        // Not only fresh by its hash: a search from nothing gives the same bytes.
        let (posed, routed) = route(&after, &around, BUDGET, &never, &mut |_| {}).unwrap();
        let anew = routes_result(&inputs, &posed, &routed, BUDGET);
        assert_eq!(stage.result(), anew, "{kind:?} {old}");
    }
}

#[test]
fn routes_that_were_older_than_the_build_are_not_made_fresh_by_a_renaming() {
    let edited = BUILD.replacen("\"10 mm\"", "\"12 mm\"", 1);
    assert_ne!(edited, BUILD);
    let before = model(&edited, STOCK);
    let old = before.build.bodies[0].name.to_string();
    let texts = Texts {
        build: Some(&edited),
        stock: Some(STOCK),
        shop: Some(SHOP),
    };
    let changes = rename(texts, Some(&job().text), NameKind::Body, &old, "other").unwrap();
    let after = model(changes.text(FileKind::Build).unwrap(), STOCK);
    let plan = changes.text(FileKind::Plan).unwrap_or(&job().text);
    let what = Renamed {
        kind: NameKind::Body,
        old: &old,
        new: "other",
    };
    let carried = carried_over(plan, &before, &after, &BTreeMap::new(), what);
    assert!(carried.is_none());
}
