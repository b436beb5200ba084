//! The parts of the runs, each with the items of the stock file that could take its place.

use crate::api::{PartChoice, PartView};
use crate::derived::Shown;
use tubewright_build::model::{
    Component, ComponentItem, ComponentKind, Flows, Item, ItemKind, Model, OnHandWhat, RunEnd,
    Section,
};
use tubewright_plan::routes::{component_item, price_of_one};

/// All of them, in the order of the build.
pub(crate) fn of(shown: &Shown) -> Vec<PartView> {
    let model = shown.car.model();
    let is_chosen = shown.car.good_job().is_some_and(|job| job.chosen.is_some());
    let components = model.build.components.iter();
    components
        .filter_map(|component| part(model, component, is_chosen))
        .collect()
}

fn part(model: &Model, component: &Component, is_chosen: bool) -> Option<PartView> {
    let now = component_item(model, &component.name)?;
    let mut choices: Vec<PartChoice> = model
        .stock
        .items
        .iter()
        .filter_map(|item| match &item.kind {
            ItemKind::Component(shape) if shape.kind == now.kind => {
                Some(choice(model, component, now, item, shape))
            }
            _ => None,
        })
        .collect();
    choices.sort_by_key(|choice| (!choice.is_now, choice.unfit.is_some()));
    Some(PartView {
        component: component.name.to_string(),
        kind: word(now.kind).to_owned(),
        runs: runs_through(model, component),
        choices,
        is_chosen,
    })
}

fn runs_through(model: &Model, component: &Component) -> Vec<String> {
    let meets = |end: &RunEnd| match end {
        RunEnd::Port { component: at, .. } => *at == component.name,
        RunEnd::End(_) => false,
    };
    let runs = model.build.runs.iter().filter(|run| {
        let mut through = run.through.iter();
        through.any(|through| through.component == component.name)
            || meets(&run.from)
            || meets(&run.to)
    });
    runs.map(|run| run.name.to_string()).collect()
}

fn choice(
    model: &Model,
    component: &Component,
    now: &ComponentItem,
    item: &Item,
    shape: &ComponentItem,
) -> PartChoice {
    let (section, body) = match &shape.body {
        Some(Section::Round { diameter }) => ("round", Some([diameter.mm(); 2])),
        Some(Section::Oval { width, height }) => ("oval", Some([width.mm(), height.mm()])),
        Some(Section::Box { width, height }) => ("box", Some([width.mm(), height.mm()])),
        None => ("", None),
    };
    let tube = item.tube.as_ref().and_then(|tube| model.stock.tube(tube));
    let on_hand = model.stock.on_hand.iter();
    let is_offered = model
        .stock
        .offers
        .iter()
        .any(|offer| offer.item == item.name);
    PartChoice {
        item: item.name.to_string(),
        is_now: item.name == component.item,
        length: shape.length.mm(),
        necks: shape.necks.each_ref().map(|neck| neck.mm()),
        body,
        section: section.to_owned(),
        tube: tube.map(|tube| tube.od.mm()),
        mass: shape.mass.as_ref().map(|mass| mass.kg()),
        price: price_of_one(&model.stock, item)
            .filter(|_| is_offered)
            .map(|price| words_of_price(model, price)),
        on_hand: on_hand
            .filter(|on_hand| matches!(&on_hand.what, OnHandWhat::Item(name) if *name == item.name))
            .map(|on_hand| on_hand.count)
            .sum(),
        unfit: why_unfit(model, component, now, item, shape),
    }
}

fn words_of_price(model: &Model, price: f64) -> String {
    match &model.stock.currency {
        Some(currency) => format!("{price:.2} {}", currency.code()),
        None => format!("{price:.2}"),
    }
}

/// Why an item cannot stand where another one stands: other ports, or another tube at one of them.
fn why_unfit(
    model: &Model,
    component: &Component,
    now: &ComponentItem,
    item: &Item,
    shape: &ComponentItem,
) -> Option<String> {
    let ports = |of: &ComponentItem| -> Vec<(String, bool)> {
        let mut all: Vec<(String, bool)> = of
            .ports
            .iter()
            .map(|port| (port.name.clone(), port.flows == Flows::In))
            .collect();
        all.sort();
        all
    };
    if ports(now) != ports(shape) {
        return Some(
            "its ports are others, so the runs would not find their way through it".to_owned(),
        );
    }
    let od = |name: &str| model.stock.tube(name).map(|tube| tube.od.mm());
    let was = model.stock.item(&component.item);
    let tubes = |of: Option<&Item>, shape: &ComponentItem| -> Vec<Option<f64>> {
        let own = of.and_then(|item| item.tube.as_ref()).map(|tube| od(tube));
        let ports = shape.ports.iter().map(|port| od(&port.tube));
        own.into_iter().chain(ports).collect()
    };
    (tubes(was, now) != tubes(Some(item), shape))
        .then(|| "it is made for another tube; a sleeve or a cone would have to join it".to_owned())
}

const fn word(kind: ComponentKind) -> &'static str {
    match kind {
        ComponentKind::Catalyst => "catalyst",
        ComponentKind::Resonator => "resonator",
        ComponentKind::Silencer => "silencer",
        ComponentKind::Flex => "flex section",
        ComponentKind::Crossover => "crossover",
        ComponentKind::Merge => "merge",
        ComponentKind::Cone => "cone",
        ComponentKind::Joint => "joint",
        ComponentKind::Bung => "bung",
        ComponentKind::Tip => "tip",
        ComponentKind::Flange => "flange",
        ComponentKind::Hanger => "hanger",
        _ => "part",
    }
}
