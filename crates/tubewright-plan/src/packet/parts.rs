//! Bought parts as they must be: what to check before the money is over the counter.

use super::PrintJob;
use super::joints::painted;
use super::words::{degrees, direction_words};
use crate::routes::PlannedKind;
use tubewright_build::model::{ComponentItem, Flows, Item, ItemKind, Section};
use tubewright_geometry::{Vector, math};
use tubewright_packet::{Block, Body, Column, Sheet, SheetKind, Table};

/// A part of the runs with its item.
struct Part<'a> {
    mark: String,
    name: &'a str,
    item: &'a Item,
    component: &'a ComponentItem,
}

/// The sheet; none when nothing is bought but tube.
pub(super) fn sheet(job: &PrintJob<'_>) -> Option<Sheet> {
    let parts = parts(job);
    if parts.is_empty() {
        return None;
    }
    let mut blocks = vec![
        Block::Words {
            text: "Necks are plain tube of the size named and are welded butt to butt: a part whose neck is \
                   a socket makes the run shorter by what goes into it. Length is over both necks. A part \
                   that is not like this is not the part of this plan."
                .to_owned(),
        },
        Block::Table {
            table: sizes(job, &parts),
        },
    ];
    for part in &parts {
        if part
            .component
            .ports
            .iter()
            .any(|port| port.flows == Flows::In && port.name != "in")
        {
            blocks.extend(crossover(job, part));
        }
    }
    Some(Sheet {
        kind: SheetKind::Buy,
        title: "Bought parts, as they must be".to_owned(),
        is_lying: false,
        body: Body::Made { blocks },
    })
}

fn parts<'a>(job: &PrintJob<'a>) -> Vec<Part<'a>> {
    let mut parts: Vec<Part<'a>> = Vec::new();
    for piece in job.runs.iter().flat_map(|run| &run.pieces) {
        let (PlannedKind::Component { name, .. } | PlannedKind::Crossover { name, .. }) =
            &piece.kind
        else {
            continue;
        };
        if parts.iter().any(|part| part.name == name) {
            continue;
        }
        let item = job
            .model
            .build
            .component(name)
            .and_then(|component| job.model.stock.item(&component.item));
        let Some(item) = item else { continue };
        if let ItemKind::Component(component) = &item.kind {
            parts.push(Part {
                mark: painted(name, &piece.mark, job.runs).to_owned(),
                name,
                item,
                component,
            });
        }
    }
    parts
}

fn sizes(job: &PrintJob<'_>, parts: &[Part<'_>]) -> Table {
    let (l, sign) = (job.lengths, job.lengths.sign());
    let mut table = Table::new(
        "bought-parts",
        vec![
            Column::words("part").big(),
            Column::words("what"),
            Column::figures(&format!("length over necks, {sign}")).big(),
            Column::words(&format!("body, {sign}")),
            Column::words(&format!("necks, {sign}")),
            Column::wide("necks are for"),
            Column::figures("mass"),
        ],
    );
    for part in parts {
        let component = part.component;
        let body = component.body.as_ref().map_or_else(
            || "as its tube".to_owned(),
            |body| match body {
                Section::Round { diameter } => format!("Ø{}", l.size(diameter.mm())),
                Section::Oval { width, height } => format!(
                    "oval {} across × {} high",
                    l.size(width.mm()),
                    l.size(height.mm())
                ),
                Section::Box { width, height } => {
                    format!(
                        "{} across × {} high",
                        l.size(width.mm()),
                        l.size(height.mm())
                    )
                }
            },
        );
        let necks = component.necks.each_ref().map(|neck| l.size(neck.mm()));
        let [into, out] = &necks;
        table.row([
            part.mark.clone(),
            format!("{} ({})", part.name, part.item.name),
            l.place(component.length.mm()),
            body,
            format!("{into} in, {out} out"),
            part.item.tube.as_deref().unwrap_or("").to_owned(),
            component
                .mass
                .as_ref()
                .map_or_else(|| "–".to_owned(), |mass| mass.text.clone()),
        ]);
    }
    table
}

/// The ports of a crossover, from the middle of its left inlet.
fn crossover(job: &PrintJob<'_>, part: &Part<'_>) -> Vec<Block> {
    let (l, sign) = (job.lengths, job.lengths.sign());
    // A component's own axes: x along, y up, z to the right.
    let in_car = |v: Vector| Vector::new(v.x, -v.z, v.y);
    let ports = &part.component.ports;
    let Some(first) = ports.iter().find(|port| port.flows == Flows::In) else {
        return Vec::new();
    };
    let mut table = Table::new(
        "ports",
        vec![
            Column::words("port").big(),
            Column::figures(&format!("rearwards, {sign}")).big(),
            Column::figures(&format!("to the car's right, {sign}")).big(),
            Column::figures(&format!("up, {sign}")).big(),
            Column::wide("the gas there runs"),
        ],
    );
    for port in ports {
        let at = in_car(port.at - first.at);
        let flows = match port.flows {
            Flows::In => "in",
            Flows::Out => "out",
        };
        let side = match port.name.as_str() {
            "L" => "left",
            "R" => "right",
            other => other,
        };
        table.row([
            format!("{side}, {flows}"),
            l.place(at.x),
            l.place(at.y),
            l.place(at.z),
            direction_words(in_car(port.travel.vector()).to_array()),
        ]);
    }
    let turn = math::atan2(first.travel.vector().z, first.travel.vector().x)
        .abs()
        .to_degrees();
    vec![
        Block::Heading {
            text: format!("{}: its four ports", part.name),
        },
        Block::Words {
            text: format!(
                "Counted from the middle of the {} inlet, as it lies in the car: level, left and right alike. \
                 Each port stands {}° to the part's own length. It is one part with one mark: paint {} on \
                 its upper side, an L at its left ports, an R at its right ports and the arrow of flow.",
                if first.name == "R" { "right" } else { "left" },
                degrees(turn),
                part.mark
            ),
        },
        Block::Table { table },
    ]
}
