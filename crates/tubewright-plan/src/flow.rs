//! Estimates of the flow that is lost where runs meet and where an outlet is sawn off as a mitre, which a run's degrees of
//! bend do not show.

use std::collections::BTreeSet;
use tubewright_build::model::{ComponentItem, ComponentKind, Flows, Model, Port};
use tubewright_build::resolved::ResolvedPractice;
use tubewright_route::loss;

use crate::routes::{PlannedRun, component_item};

/// Dynamic heads that are lost at the mitres of these runs and where they meet.
#[must_use]
pub fn heads_lost(model: &Model, runs: &[PlannedRun]) -> f64 {
    let parts: BTreeSet<&str> = runs.iter().flat_map(PlannedRun::met_parts).collect();
    let at_parts: f64 = parts
        .into_iter()
        .map(|name| heads_at_part(model, name))
        .sum();
    let sawn = runs.iter().filter_map(|run| run.sawn);
    at_parts + sawn.map(|sawn| loss::mitre(sawn.turn_rad)).sum::<f64>()
}

/// Dynamic heads that are lost in a part where runs meet. In a crossover the gas of each bank is taken to turn from its
/// own inlet to its own outlet: sharply in a bought one, as in a bend in one that is made of bends. What passes from bank
/// to bank is not counted, nor what it saves.
#[must_use]
pub fn heads_at_part(model: &Model, name: &str) -> f64 {
    let Some(item) = component_item(model, name) else {
        return 0.0;
    };
    let ports = |flows: Flows| -> Vec<&Port> {
        let own = item.ports.iter().filter(|port| port.flows == flows);
        own.collect()
    };
    let (inlets, outlets) = (ports(Flows::In), ports(Flows::Out));
    let bore = |port: &Port| {
        let tube = model.stock.tube(&port.tube);
        tube.map_or(f64::NAN, |tube| tube.od.mm() - 2.0 * tube.wall.mm())
    };
    let area = |of: &Port, to: &Port| (bore(of) / bore(to)).powi(2);
    let heads = match (inlets.as_slice(), outlets.as_slice()) {
        _ if item.kind == ComponentKind::Crossover => {
            inlets.iter().map(|inlet| turned_in(item, inlet)).sum()
        }
        ([one, two], [out]) if is_open(item) => {
            let half = |inlet: &Port| {
                let aside = inlet.travel.angle_to(out.travel);
                0.5 * loss::merge(area(inlet, out), aside)
            };
            half(one) + half(two)
        }
        ([inlet], [one, two]) if is_open(item) => {
            let half = |out: &Port| {
                let aside = out.travel.angle_to(inlet.travel);
                0.5 * loss::fork(area(out, inlet), aside)
            };
            half(one) + half(two)
        }
        ([inlet], [out]) if item.kind == ComponentKind::Cone => {
            loss::cone(bore(inlet), bore(out), item.length.mm())
        }
        // What a silencer loses is its own affair and the same for every way.
        _ => 0.0,
    };
    if heads.is_finite() { heads } else { 0.0 }
}

/// Whether runs meet in tubes, and not in the chamber of a can.
fn is_open(item: &ComponentItem) -> bool {
    matches!(item.kind, ComponentKind::Merge | ComponentKind::Cone)
}

/// What is lost on a bank's way through a crossover.
fn turned_in(item: &ComponentItem, inlet: &Port) -> f64 {
    let Some(outlet) = item.outlet(Some(&inlet.name)) else {
        return 0.0;
    };
    let turn = inlet.travel.angle_to(outlet.travel);
    if item.hand_made.is_some() {
        loss::RIGHT_ANGLED_BEND * turn.to_degrees() / 90.0
    } else {
        loss::mitre(turn)
    }
}

/// What so many dynamic heads cost, in the shop's money-like units.
#[must_use]
pub fn price_of_heads(practice: &ResolvedPractice, heads: f64) -> f64 {
    heads * loss::per_head(practice.flow_per_degree.major_per_unit)
}
