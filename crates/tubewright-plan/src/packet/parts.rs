//! Bought parts as they must be: what to check before the money is over the counter.

use super::PrintJob;
use super::joints::painted;
use super::words::{degrees, direction_words};
use crate::routes::{PlannedKind, in_car};
use tubewright_build::model::{ComponentItem, ComponentKind, Flows, Item, ItemKind, Port, Section};
use tubewright_geometry::{Vector, math};
use tubewright_packet::{Block, Body, Column, Sheet, SheetKind, Table};
use tubewright_route::problem::Turn;

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
                   a socket makes the run shorter by what goes into it. Length is over both necks, and where \
                   a part has none from port to port, each port being the end of a tube of the size \
                   named. A part that is not like this is not the part of this plan."
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
        is_below: true,
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
        // What is made by hand has a sheet of its own; what stands already is not bought.
        if let ItemKind::Component(component) = &item.kind
            && component.hand_made.is_none()
            && component.kind != ComponentKind::Stretch
        {
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
            if has_necks(component) {
                format!("{into} in, {out} out")
            } else {
                "none: welded at its ports".to_owned()
            },
            necks_for(part),
            component
                .mass
                .as_ref()
                .map_or_else(|| "weigh it".to_owned(), |mass| l.mass(mass.value.kg())),
        ]);
    }
    table
}

fn has_necks(component: &ComponentItem) -> bool {
    component.necks.iter().any(|neck| neck.mm() > 0.0)
}

/// The ports of a crossover, from the middle of its left inlet.
fn crossover(job: &PrintJob<'_>, part: &Part<'_>) -> Vec<Block> {
    let (l, sign) = (job.lengths, job.lengths.sign());
    let roll_rad = written_roll_rad(job, part.name);
    let turn = turn_of(job, part.name);
    let in_car = |v: Vector| turn.vector(in_car(v, roll_rad));
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
    let lies = if !turn.is_none() {
        turned_words(turn, roll_rad)
    } else if roll_rad == 0.0 && has_like_sides(part.component) {
        "level, left and right alike".to_owned()
    } else if roll_rad == 0.0 {
        "along the car, its own top up".to_owned()
    } else {
        format!(
            "rolled {}° clockwise looking downstream",
            degrees(roll_rad.to_degrees())
        )
    };
    let from = match first.name.as_str() {
        "R" => "right inlet",
        "L" => "left inlet",
        _ => "first inlet",
    };
    let has_sides = ports.iter().any(|port| port.name == "L");
    let painted = if has_sides {
        "an L at its left ports, an R at its right ports"
    } else {
        "its name at each port"
    };
    let leans = |port: &Port| {
        let way = port.travel.vector();
        math::acos(way.x.clamp(-1.0, 1.0)).to_degrees()
    };
    let turned = ports
        .iter()
        .all(|port| (leans(port) - leans(first)).abs() < 0.05);
    let stands = if turned {
        format!(
            "Each port stands {}° to the part's own length. ",
            degrees(leans(first))
        )
    } else {
        String::new()
    };
    vec![
        Block::Heading {
            text: format!("{}: its {} ports", part.name, number_words(ports.len())),
        },
        Block::Words {
            text: format!(
                "Counted from the middle of the {from}, as it lies in the car: {lies}. {stands}It is one part \
                 with one mark: paint {} on its upper side, {painted} and the arrow of flow.",
                part.mark
            ),
        },
        Block::Table { table },
    ]
}

/// Roll of a component as it is written, radians.
fn written_roll_rad(job: &PrintJob<'_>, name: &str) -> f64 {
    let written = job.model.build.component(name);
    let roll = written.and_then(|component| component.roll.as_ref());
    roll.map_or(0.0, |roll| roll.rad())
}

/// How a part where runs meet is turned in this plan.
pub(super) fn turn_of(job: &PrintJob<'_>, name: &str) -> Turn {
    let mut pieces = job.runs.iter().flat_map(|run| &run.pieces);
    let turn = pieces.find_map(|piece| match &piece.kind {
        PlannedKind::Crossover {
            name: own, pose, ..
        } if own == name => Some(pose.turn),
        _ => None,
    });
    turn.unwrap_or(Turn::NONE)
}

/// How it lies in the car: first rolled as it is written and as it was found, then raised, then turned aside.
pub(super) fn turned_words(turn: Turn, written_roll_rad: f64) -> String {
    let either = |rad: f64, [more, less]: [&str; 2]| {
        let deg = (rad.to_degrees() * 10.0).round() / 10.0;
        let word = if deg < 0.0 { less } else { more };
        (deg != 0.0).then(|| format!("{word} {}°", degrees(deg.abs())))
    };
    let parts = [
        either(
            turn.roll_rad + written_roll_rad,
            [
                "rolled clockwise looking downstream by",
                "rolled anticlockwise looking downstream by",
            ],
        ),
        either(
            turn.up_rad,
            ["its rear end raised by", "its rear end lowered by"],
        ),
        either(
            turn.right_rad,
            [
                "its rear end turned to the car's right by",
                "its rear end turned to the car's left by",
            ],
        ),
    ];
    let words: Vec<String> = parts.into_iter().flatten().collect();
    if words.is_empty() {
        return "along the car, its own top up".to_owned();
    }
    format!(
        "from along the car with its own top up {}",
        words.join(", then ")
    )
}

/// Whether all ports of a part lie at one height, in level directions, and every one off its middle has a mirror
/// image on the other side.
pub(super) fn has_like_sides(item: &ComponentItem) -> bool {
    let near = |a: f64, b: f64| (a - b).abs() < 0.05;
    let mut heights = item.ports.iter().map(|port| port.at.y);
    let height = heights.next().unwrap_or(0.0);
    let is_level = item
        .ports
        .iter()
        .all(|port| near(port.at.y, height) && port.travel.vector().y.abs() < 1e-3);
    is_level
        && item.ports.iter().all(|port| {
            let way = port.travel.vector();
            item.ports.iter().any(|other| {
                let across = other.travel.vector();
                other.flows == port.flows
                    && near(other.at.x, port.at.x)
                    && near(other.at.z, -port.at.z)
                    && (across.z + way.z).abs() < 1e-3
            })
        })
}

fn number_words(count: usize) -> String {
    match count {
        2 => "two".to_owned(),
        3 => "three".to_owned(),
        4 => "four".to_owned(),
        other => other.to_string(),
    }
}

/// The tubes that a part's necks are for: one for all, or one a port.
fn necks_for(part: &Part<'_>) -> String {
    let ports = &part.component.ports;
    let is_one = ports.windows(2).all(|pair| match pair {
        [a, b] => a.tube == b.tube,
        _ => true,
    });
    if is_one {
        return part.item.tube.as_deref().unwrap_or("").to_owned();
    }
    let words = ports
        .iter()
        .map(|port| format!("{}: {}", port.name, port.tube));
    words.collect::<Vec<_>>().join("; ")
}
