//! What each job of the trade lacks for this car.

use super::Texts;
use crate::model::{
    BodyKind, Build, CarrierKind, EntryKind, Flows, ItemKind, Model, Stance, Stock, StockShape,
};
use crate::problem::Missing;

pub(crate) fn missing(model: &Model, texts: &Texts<'_>) -> Vec<Missing> {
    let jobs = [
        (1, "Measure", measure(&model.build)),
        (2, "Describe what is in the way", describe(&model.build)),
        (3, "Choose sizes and parts", choose(model, texts)),
        (4, "Route", route(model)),
        (5, "Buy", buy(&model.stock)),
        (6, "Cut", chosen(model)),
        (7, "Fit and weld", chosen(model)),
        (8, "Lines", not_yet("lines")),
        (9, "Steering shaft", not_yet("a steering shaft")),
        (
            10,
            "Header tank and coolant circuit",
            not_yet("a coolant circuit"),
        ),
        (11, "Prove it", prove(&model.build)),
        (12, "Record", record(&model.build)),
    ];
    jobs.into_iter()
        .filter(|(_, _, lacks)| !lacks.is_empty())
        .map(|(job, title, lacks)| Missing { job, title, lacks })
        .collect()
}

fn lacks(list: &[(bool, &str)]) -> Vec<String> {
    list.iter()
        .filter(|(is_lacking, _)| *is_lacking)
        .map(|(_, words)| (*words).to_owned())
        .collect()
}

fn measure(build: &Build) -> Vec<String> {
    lacks(&[
        (
            build.marks.len() < 3,
            "At least three marks to measure from: add [[mark]].",
        ),
        (build.frame.is_none(), "The car's axes: add [frame]."),
        (
            build.setups.is_empty(),
            "How the car stands while it is measured: add [[setup]].",
        ),
        (build.readings.is_empty(), "Readings: add [[reading]]."),
    ])
}

fn describe(build: &Build) -> Vec<String> {
    let has_ground = build
        .bodies
        .iter()
        .any(|body| matches!(body.kind, BodyKind::Ground { .. }));
    let engine_moves = build.carriers.iter().any(
        |carrier| matches!(&carrier.kind, CarrierKind::Engine(motion) if motion.rock.is_some()),
    );
    lacks(&[
        (
            build.bodies.is_empty(),
            "Bodies that the tube must keep clear of: add [[body]].",
        ),
        (!has_ground, "The ground: add a [[body]] of kind ground."),
        (
            !engine_moves,
            "How far the engine rocks: add a [[carrier]] of kind engine with its axis and rock.",
        ),
    ])
}

fn choose(model: &Model, texts: &Texts<'_>) -> Vec<String> {
    let engine = model.build.engine.as_ref();
    let mut list = lacks(&[
        (engine.is_none(), "The engine: add [engine]."),
        (
            texts.stock.is_none(),
            "What can be bought: there is no stock.toml.",
        ),
    ]);
    if let Some(engine) = engine {
        list.extend(lacks(&[
            (
                engine.displacement.is_none(),
                "The engine's displacement: add it to [engine].",
            ),
            (
                engine.power.is_none(),
                "The engine's power: add it to [engine].",
            ),
            (
                engine.max_speed.is_none(),
                "The engine's greatest speed: add max-speed to [engine].",
            ),
        ]));
    }
    list
}

fn route(model: &Model) -> Vec<String> {
    let (build, stock) = (&model.build, &model.stock);
    let has_end = |flows: Flows| build.ends.iter().any(|end| end.flows == flows);
    let mut list = lacks(&[
        (
            !has_end(Flows::Out),
            "An end where a run leaves: add [[end]] with flows = \"out\".",
        ),
        (
            !has_end(Flows::In),
            "An end where a run arrives: add [[end]] with flows = \"in\".",
        ),
        (build.runs.is_empty(), "A run: add [[run]]."),
    ]);
    for run in &build.runs {
        let has_bend = stock.items.iter().any(|item| {
            item.tube.as_ref() == Some(&run.tube)
                && matches!(item.kind, ItemKind::Stock(StockShape::Bend { .. }))
        });
        if !has_bend {
            list.push(format!(
                "A bend of tube `{}` for run `{}`: add [[item]] of kind bend to stock.toml.",
                run.tube, run.name
            ));
        }
    }
    list
}

fn buy(stock: &Stock) -> Vec<String> {
    let mut list = lacks(&[
        (stock.items.is_empty(), "Items: add [[item]] to stock.toml."),
        (
            stock.suppliers.is_empty(),
            "A supplier: add [[supplier]] to stock.toml.",
        ),
        (
            stock.currency.is_none(),
            "The currency of prices: add currency to stock.toml.",
        ),
    ]);
    for item in &stock.items {
        if !stock.offers.iter().any(|offer| offer.item == item.name) {
            list.push(format!(
                "A price for `{}`: add [[offer]] to stock.toml.",
                item.name
            ));
        }
    }
    list
}

fn chosen(model: &Model) -> Vec<String> {
    let is_chosen = model
        .shop
        .entries
        .iter()
        .any(|entry| matches!(entry.what, EntryKind::Chosen { .. }));
    lacks(&[(
        !is_chosen,
        "A chosen alternative: route first, then choose one.",
    )])
}

fn not_yet(what: &str) -> Vec<String> {
    vec![format!(
        "This version of the build folder has no place for {what} yet."
    )]
}

fn prove(build: &Build) -> Vec<String> {
    let on_wheels = build
        .setups
        .iter()
        .any(|setup| setup.stance == Stance::Wheels);
    let mut list = lacks(&[(
        !on_wheels,
        "A set-up on its wheels: without one, ground clearance is not checked.",
    )]);
    for carrier in &build.carriers {
        let is_known = match &carrier.kind {
            CarrierKind::Engine(motion) => motion.rock.is_some(),
            CarrierKind::Wheel(motion) | CarrierKind::Axle(motion) => {
                motion.bump.is_some() && motion.droop.is_some()
            }
            CarrierKind::Hung { .. } => true,
        };
        if !is_known {
            list.push(format!(
                "How far carrier `{}` moves: without it, clearance to what it carries is not checked.",
                carrier.name
            ));
        }
    }
    list
}

fn record(build: &Build) -> Vec<String> {
    lacks(&[(build.name.is_none(), "A name for the job: add name.")])
}
