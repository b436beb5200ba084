//! The wanted list: parts that are neither on hand nor on offer, each with what to check before paying,
//! taken from the build.

use std::collections::BTreeMap;
use tubewright_build::model::{
    CarrierKind, CarrierRef, Component, ComponentItem, ComponentKind, End, FrozenShape, HeldBy,
    Item, ItemKind, Model, Run, Section,
};

use crate::fit::Fastening;
use crate::frozen::frozen_plan;
use crate::routes::{component_item, component_kind, end_of_run, goes_through};

/// A part to look for second-hand or to have made.
#[derive(Clone, Debug, PartialEq)]
pub struct Wanted {
    /// The item.
    pub item: String,
    /// The components or ends of the build that it is for.
    pub for_components: Vec<String>,
    /// How many are needed beyond what is on hand.
    pub count: u32,
    /// What to check before paying, each with the dimension that must fit.
    pub checks: Vec<String>,
}

/// What the build needs and nobody has on hand or on offer: components first, then what no component
/// of the build names although the run cannot be fitted without it: the mating flange of a measured
/// flange, a sensor bung before a catalyst, what a hung can hangs on.
#[must_use]
pub fn wanted(model: &Model) -> Vec<Wanted> {
    let mut list = wanted_components(model);
    for run in &model.build.runs {
        list.extend(mating_flanges(model, run));
        list.extend(sensor_bung(model, run));
    }
    list.extend(hangers(model));
    list
}

/// What mates with a flange or slip joint that the run meets, where no component of the run does.
fn mating_flanges(model: &Model, run: &Run) -> Vec<Wanted> {
    if goes_through(model, run, ComponentKind::Flange) {
        return Vec::new();
    }
    [&run.from, &run.to]
        .into_iter()
        .filter_map(|end| end_of_run(&model.build, end))
        .filter_map(|end| Some((end, Fastening::of(end)?)))
        .map(|(end, held)| Wanted {
            item: held.wanted().to_owned(),
            for_components: vec![end.name.to_string()],
            count: 1,
            checks: flange_checks(end, held),
        })
        .collect()
}

fn flange_checks(end: &End, held: Fastening) -> Vec<String> {
    let mut checks = vec![match (end.bolts.as_slice(), held) {
        (_, Fastening::By(HeldBy::BandClamp)) => "collar: outside diameter and the slopes of its sides with a caliper and a gauge, off the one on the car; a band fits one kind of collar alone".to_owned(),
        (_, Fastening::By(HeldBy::Slip)) => format!(
            "sizes: {} outside is what the run has; try it over or into the tube on the car before you pay, and the clamp round both",
            end.od.text
        ),
        ([], Fastening::NotGiven) => "what holds it on the car: bolts through a flat flange, bolts with springs over a ball, or a band round two collars; with bolts a rubbing of the holes, with a band the collar's outside diameter".to_owned(),
        ([], _) => "bolt holes: number, circle and size, off the flange on the car with a rubbing or a gasket; no hole of it is measured yet".to_owned(),
        (bolts, _) => format!(
            "{} holes: {}; lay it on a rubbing of the flange on the car",
            bolts.len(),
            bolts
                .iter()
                .map(|bolt| format!("{} on a circle of {}", bolt.clock.text, bolt.circle.text))
                .collect::<Vec<_>>()
                .join(", ")
        ),
    }];
    if held.needs_weld() {
        checks.push(format!(
            "bore for a tube of {} outside; the tube goes in or butts, so that no step faces the flow",
            end.od.text
        ));
    }
    if end.saw_off.is_some() {
        checks.push("not needed where the chosen way saws this outlet off".to_owned());
    }
    if let Some(material) = end.material {
        checks.push(format!(
            "material: what it is welded to decides the filler; the one on the car is {}",
            material.word()
        ));
    }
    checks.extend(
        [
            held.needs_weld().then_some(
                "sealing face: flat to a straight edge, no pits; same kind as its mate (flat with gasket, or a ball and its ring)",
            ),
            Some("bolts: thread and pitch by a gauge, not by eye; nuts that stand heat, copper plated or all metal"),
        ]
        .into_iter()
        .flatten()
        .map(str::to_owned),
    );
    checks
}

/// A run with a catalyst and no bung has nowhere for its sensor.
fn sensor_bung(model: &Model, run: &Run) -> Option<Wanted> {
    let is_needed = goes_through(model, run, ComponentKind::Catalyst)
        && !goes_through(model, run, ComponentKind::Bung);
    is_needed.then(|| Wanted {
        item: "sensor bung, when the engine has a sensor there".to_owned(),
        for_components: vec![run.name.to_string()],
        count: 1,
        checks: vec![
            "thread of the sensor in your hand: most are M18 x 1.5 (common practice, no source)"
                .to_owned(),
            "material welds to the tube of the run; a stepped bung sits in the wall, a saddle on it"
                .to_owned(),
            "room for the sensor, its spanner and its cable where it goes; tip above level, so that water runs off"
                .to_owned(),
        ],
    })
}

/// What hangers are called on the list.
pub(crate) const HANGERS: &str = "hangers: rubber, rod and bracket";

/// What the hung components hang on.
fn hangers(model: &Model) -> Option<Wanted> {
    let is_hung = |component: &&Component| {
        matches!(&component.carrier, Some(CarrierRef::Carrier(name))
            if model.build.carrier(name).is_some_and(|carrier| matches!(carrier.kind, CarrierKind::Hung { .. })))
    };
    let has_hangers = model
        .build
        .components
        .iter()
        .any(|component| component_kind(model, &component.name) == Some(ComponentKind::Hanger));
    let hung: Vec<String> = model
        .build
        .components
        .iter()
        .filter(is_hung)
        .map(|component| component.name.to_string())
        .collect();
    (!has_hangers && !hung.is_empty()).then(|| Wanted {
        item: HANGERS.to_owned(),
        count: u32::try_from(2 * hung.len()).unwrap_or(u32::MAX),
        for_components: hung,
        checks: vec![
            "two to a can, one near each end, is common practice (no source); the sheet “Hanger and joint map” tells where each goes and what it carries"
                .to_owned(),
            "rubber: rod size, load for its share of the can, heat; no cracks when stretched".to_owned(),
            "rod: same material as the can or one that welds to it; bracket bolts to a rail, never to a brake or fuel line's clip"
                .to_owned(),
        ],
    })
}

fn wanted_components(model: &Model) -> Vec<Wanted> {
    let mut needed: BTreeMap<&str, Vec<String>> = BTreeMap::new();
    // Of crossovers that may stand in for each other the chosen one is needed, else the one that is written.
    let chosen = frozen_plan(&model.shop);
    let is_chosen = |name: &str| {
        let mut pieces = chosen
            .iter()
            .flat_map(|plan| &plan.runs)
            .flat_map(|run| &run.pieces);
        pieces.any(|piece| {
            matches!(&piece.shape, FrozenShape::Component { component, .. } if *component == *name)
        })
    };
    let stands_in = |name: &str| {
        let mut all = model.build.components.iter();
        all.any(|other| other.or.iter().any(|stand_in| *stand_in == *name))
    };
    // What is made by hand is cut, and what stands is there.
    let is_made = |name: &str| {
        component_item(model, name)
            .is_some_and(|item| item.hand_made.is_some() || item.kind == ComponentKind::Stretch)
    };
    let needed_now = |component: &&Component| {
        let name = component.name.as_str();
        let is_one_of_many = !component.or.is_empty() || stands_in(name);
        !is_made(name)
            && match &chosen {
                Some(_) if is_one_of_many => is_chosen(name),
                _ => !stands_in(name),
            }
    };
    for component in model.build.components.iter().filter(needed_now) {
        needed
            .entry(component.item.as_str())
            .or_default()
            .push(component.name.to_string());
    }
    needed
        .into_iter()
        .filter_map(|(name, for_components)| {
            let item = model.stock.item(name)?;
            let is_offered = model
                .stock
                .offers
                .iter()
                .any(|offer| offer.item == *name && offer.quantity != Some(0));
            let on_hand: u32 = model
                .stock
                .on_hand
                .iter()
                .filter(|on_hand| {
                    matches!(&on_hand.what, tubewright_build::model::OnHandWhat::Item(known) if *known == *name)
                })
                .map(|on_hand| on_hand.count)
                .sum();
            let count = u32::try_from(for_components.len())
                .unwrap_or(u32::MAX)
                .saturating_sub(on_hand);
            (!is_offered && count > 0).then(|| Wanted {
                item: name.to_owned(),
                for_components,
                count,
                checks: checks(model, item),
            })
        })
        .collect()
}

fn checks(model: &Model, item: &Item) -> Vec<String> {
    let mut checks = Vec::new();
    if let Some(tube) = item.tube.as_deref().and_then(|name| model.stock.tube(name)) {
        checks.push(format!(
            "necks: {} outside, wall {}, {}; measure outside with a caliper, not the nominal size",
            tube.od.text,
            tube.wall.text,
            tube.material.word()
        ));
    }
    if let ItemKind::Component(component) = &item.kind {
        checks.extend(of_component(component));
    }
    checks.push(
        "weld seams and the inside: no cracks, no rust through, nothing loose when shaken"
            .to_owned(),
    );
    checks
}

fn of_component(component: &ComponentItem) -> Vec<String> {
    let mut checks = vec![format!(
        "length along the flow {}, necks {} and {}",
        component.length.text, component.necks[0].text, component.necks[1].text
    )];
    checks.extend(component.body.as_ref().map(|body| match body {
        Section::Round { diameter } => format!("body no thicker than {}", diameter.text),
        Section::Oval { width, height } | Section::Box { width, height } => {
            format!("body no larger than {} by {}", width.text, height.text)
        }
    }));
    match component.kind {
        ComponentKind::Catalyst => checks.push(
            "the brick whole when looked through; approval mark and its number against your engine: local law decides"
                .to_owned(),
        ),
        ComponentKind::Flex => checks.push(
            "braid whole, liner inside; not stretched, and never one that was welded in twisted".to_owned(),
        ),
        ComponentKind::Crossover | ComponentKind::Merge | ComponentKind::Cone => {
            for port in &component.ports {
                checks.push(format!(
                    "port {} for {}: {:.0} mm along, {:.0} mm to the side, {:.0} mm up from its corner",
                    port.name, port.tube, port.at.x, port.at.z, port.at.y
                ));
            }
        }
        ComponentKind::Silencer | ComponentKind::Resonator => checks.push(
            "which end is in: the arrow; side of the car, when its necks are offset; drain hole down"
                .to_owned(),
        ),
        _ => {}
    }
    checks
}
