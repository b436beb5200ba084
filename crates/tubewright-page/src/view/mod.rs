//! From the stages' own values to what the page shows.

mod buy;
mod counter;
mod errands;
mod fit;
mod hand;
mod measure;
mod next;
mod parts;
mod prove;
mod record;
mod remake;
mod route;
mod solids;
mod templates;

pub(crate) use counter::of as counter;
pub(crate) use errands::{make as buy_or_make, round as errands};
pub(crate) use fit::{joint, of as fit};
pub(crate) use hand::{drag, laid, side_word};
pub(crate) use measure::scan;
pub(crate) use parts::of as parts;
pub(crate) use route::figures as ways;
pub(crate) use solids::{of as solids, small_picture};
pub(crate) use templates::{Wanted as TemplatesWanted, drawn as templates_drawn, of as templates};

use crate::api::{FileProblem, JobLacks, Plan, Solving, View};
use crate::derived::Shown;
use std::collections::BTreeMap;
use tubewright_build::Severity;
use tubewright_build::model::{ComponentKind, Flows, LengthUnits, Model, Name};
use tubewright_plan::routes::component_item;

/// Everything that is quick.
pub(crate) fn of(
    shown: &Shown,
    solving: Option<Solving>,
    (can_undo, can_redo): (Option<String>, Option<String>),
) -> View {
    let read = &shown.car.read;
    let build = &read.model.build;
    View {
        revision: shown.car.revision.clone(),
        version: shown.version.clone(),
        units: match build.shown_units().units {
            LengthUnits::Millimetres => "mm",
            LengthUnits::Inches => "in",
        }
        .to_owned(),
        name: build
            .name
            .clone()
            .unwrap_or_else(|| "a build without a name".to_owned()),
        note: build.note.clone(),
        problems: read
            .problems
            .iter()
            .map(|problem| FileProblem {
                is_error: problem.severity == Severity::Error,
                words: problem.to_string(),
            })
            .collect(),
        missing: read
            .missing
            .iter()
            .map(|job| JobLacks {
                job: job.title.to_owned(),
                lacks: job.lacks.clone(),
            })
            .collect(),
        measure: measure::of(&shown.car),
        bodies: measure::bodies(&shown.car),
        route: route::of(shown, solving),
        record: record::of(&read.model.shop),
        names: names(&read.model, &shown.car.scan_files),
        can_undo,
        can_redo,
    }
}

/// What the shop does with the plan.
pub(crate) fn plan(shown: &Shown) -> Plan {
    let supply = shown.now();
    let good = supply.and_then(Result::ok);
    Plan {
        version: shown.version.clone(),
        buy: good.map(|supply| buy::of(shown, supply)),
        buy_problem: supply.and_then(Result::err).map(str::to_owned),
        cards: good
            .map(|supply| buy::cards(shown, supply))
            .unwrap_or_default(),
        remakes: remake::of(shown),
        made: remake::made(shown),
        clocks: good.map(buy::clocks).unwrap_or_default(),
        rolls: buy::rolls(shown),
        prove: shown.board().map(prove::of).unwrap_or_default(),
    }
}

fn names(model: &Model, scan_files: &[String]) -> BTreeMap<String, Vec<String>> {
    let (build, stock) = (&model.build, &model.stock);
    let mut all = BTreeMap::new();
    let mut put = |list: &str, names: Vec<&Name>| {
        let names = names.into_iter().map(ToString::to_string).collect();
        all.insert(list.to_owned(), names);
    };
    put("mark", build.marks.iter().map(|it| &it.name).collect());
    put("point", build.points.iter().map(|it| &it.name).collect());
    put("setup", build.setups.iter().map(|it| &it.name).collect());
    put("end", build.ends.iter().map(|it| &it.name).collect());
    put(
        "carrier",
        build.carriers.iter().map(|it| &it.name).collect(),
    );
    put("body", build.bodies.iter().map(|it| &it.name).collect());
    put(
        "component",
        build.components.iter().map(|it| &it.name).collect(),
    );
    put("run", build.runs.iter().map(|it| &it.name).collect());
    put("tube", stock.tubes.iter().map(|it| &it.name).collect());
    put("item", stock.items.iter().map(|it| &it.name).collect());
    put(
        "supplier",
        stock.suppliers.iter().map(|it| &it.name).collect(),
    );
    put("on-hand", stock.on_hand.iter().map(|it| &it.name).collect());
    all.insert("scan".to_owned(), scan_files.to_vec());
    all.extend(ways_through(model));
    all
}

/// What a run may go through by which side, and at what inlet it may end and from what outlet start.
fn ways_through(model: &Model) -> [(String, Vec<String>); 3] {
    let [mut passed, mut inlets, mut outlets] = [const { Vec::new() }; 3];
    for component in &model.build.components {
        let name = &component.name;
        let Some(item) = component_item(model, name) else {
            passed.push(name.to_string());
            continue;
        };
        let count = |flows: Flows| item.ports.iter().filter(|p| p.flows == flows).count();
        let sides = |flows: Flows| {
            let ports = item.ports.iter().filter(move |port| port.flows == flows);
            ports.map(|port| format!("{name}.{}", port.name))
        };
        let meets = matches!(
            item.kind,
            ComponentKind::Merge | ComponentKind::Cone | ComponentKind::Stretch
        ) || count(Flows::In) > 1
            || count(Flows::Out) > 1;
        if item.kind == ComponentKind::Crossover {
            passed.extend(sides(Flows::In));
        } else if meets {
            inlets.extend(sides(Flows::In));
            outlets.extend(sides(Flows::Out));
        } else {
            passed.push(name.to_string());
        }
    }
    [("passed", passed), ("inlet", inlets), ("outlet", outlets)]
        .map(|(list, names)| (list.to_owned(), names))
}
