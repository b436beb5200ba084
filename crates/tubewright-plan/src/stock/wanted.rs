//! The wanted list: parts that are neither on hand nor on offer, each with what to check before paying,
//! taken from the build.

use std::collections::BTreeMap;
use tubewright_build::model::{ComponentItem, ComponentKind, Item, ItemKind, Model, Section};

/// A part to look for second-hand or to have made.
#[derive(Clone, Debug, PartialEq)]
pub struct Wanted {
    /// The item.
    pub item: String,
    /// The components of the build that it is for.
    pub for_components: Vec<String>,
    /// How many are needed beyond what is on hand.
    pub count: u32,
    /// What to check before paying, each with the dimension that must fit.
    pub checks: Vec<String>,
}

/// What the build needs and nobody has on hand or on offer.
#[must_use]
pub fn wanted(model: &Model) -> Vec<Wanted> {
    let mut needed: BTreeMap<&str, Vec<String>> = BTreeMap::new();
    for component in &model.build.components {
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
        ComponentKind::Crossover => {
            for port in &component.ports {
                checks.push(format!(
                    "port {}: {:.0} mm along, {:.0} mm to the side, {:.0} mm up from its corner",
                    port.name, port.at.x, port.at.z, port.at.y
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
