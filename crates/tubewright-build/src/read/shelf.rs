use super::car::{FLOWS, MATERIALS};
use super::row::Row;
use crate::model::{
    ComponentItem, ComponentKind, Flows, HandMade, Item, ItemKind, Name, Offer, OnHand, OnHandWhat,
    Port, Practice, PriceBreak, Section, StockShape, Supplier, Tube,
};
use crate::quantity::{Per, Quantity};
use tubewright_geometry::{Angle, Length, Point, UnitVector, Vector, math};

const COMPONENT_KINDS: [(&str, ComponentKind); 13] = [
    ("catalyst", ComponentKind::Catalyst),
    ("resonator", ComponentKind::Resonator),
    ("silencer", ComponentKind::Silencer),
    ("flex", ComponentKind::Flex),
    ("crossover", ComponentKind::Crossover),
    ("merge", ComponentKind::Merge),
    ("cone", ComponentKind::Cone),
    ("stretch", ComponentKind::Stretch),
    ("joint", ComponentKind::Joint),
    ("bung", ComponentKind::Bung),
    ("tip", ComponentKind::Tip),
    ("flange", ComponentKind::Flange),
    ("hanger", ComponentKind::Hanger),
];

pub(crate) fn tube(row: &Row<'_>) -> Option<Tube> {
    Some(Tube {
        name: row.name("name")?,
        od: row.length("od")?,
        wall: row.length("wall")?,
        material: row.choice("material", &MATERIALS)?,
        density: row.density("density"),
        span: row.span(),
    })
}

fn stock_shape(row: &Row<'_>) -> Option<StockShape> {
    match row.word("kind")? {
        "bend" => Some(StockShape::Bend {
            angle: row.angle("angle")?,
            clr: row.length("clr")?,
            legs: row.lengths("legs")?,
        }),
        "straight" => Some(StockShape::Straight {
            length: row.length("length")?,
        }),
        _ => None,
    }
}

pub(crate) fn item(row: &Row<'_>) -> Option<Item> {
    let kind = match stock_shape(row) {
        Some(shape) => ItemKind::Stock(shape),
        None => ItemKind::Component(component_item(row)?),
    };
    Some(Item {
        name: row.name("name")?,
        kind,
        tube: row.name("tube"),
        note: row.text("note"),
        span: row.span(),
    })
}

fn component_item(row: &Row<'_>) -> Option<ComponentItem> {
    if row.word("kind") == Some("hand-made crossover") {
        return hand_made(row);
    }
    let length = row.length("length")?;
    let none = || Quantity::new(Length::ZERO, "0 mm");
    let necks = match (row.lengths("necks"), row.length("neck")) {
        (Some(necks), _) => necks,
        (None, Some(neck)) => [neck.clone(), neck],
        (None, None) => [none(), none()],
    };
    let tube = row.name("tube");
    let written = row.tables("ports");
    let ports = if written.is_empty() {
        tube.map_or_else(Vec::new, |tube| straight_through(length.value, &tube))
    } else {
        let ports: Option<Vec<_>> = written
            .iter()
            .map(|port| ports_of(port, tube.as_ref()))
            .collect();
        ports?.into_iter().flatten().collect()
    };
    Some(ComponentItem {
        kind: row.choice("kind", &COMPONENT_KINDS)?,
        length,
        body: row.table("body").as_ref().and_then(section),
        necks,
        mass: row.mass("mass"),
        ports,
        hand_made: None,
    })
}

/// A crossover of two bends; its sizes are filled in when its bend is known.
fn hand_made(row: &Row<'_>) -> Option<ComponentItem> {
    let none = || Quantity::new(Length::ZERO, "0 mm");
    Some(ComponentItem {
        kind: ComponentKind::Crossover,
        length: none(),
        body: None,
        necks: [none(), none()],
        mass: None,
        ports: Vec::new(),
        hand_made: Some(Box::new(HandMade {
            bend: row.name("bend")?,
            leg: row.length("leg")?,
            taken_off: row.length("taken-off")?,
            angle: Angle::ZERO,
            clr: Length::ZERO,
        })),
    })
}

fn straight_through(length: Length, tube: &Name) -> Vec<Port> {
    [("in", Flows::In, 0.0), ("out", Flows::Out, length.mm())]
        .into_iter()
        .map(|(name, flows, x)| Port {
            name: name.to_owned(),
            flows,
            at: Point { x, y: 0.0, z: 0.0 },
            travel: UnitVector::X,
            tube: tube.clone(),
        })
        .collect()
}

fn section(row: &Row<'_>) -> Option<Section> {
    match row.word("shape")? {
        "round" => Some(Section::Round {
            diameter: row.length("diameter")?,
        }),
        "oval" => Some(Section::Oval {
            width: row.length("width")?,
            height: row.length("height")?,
        }),
        "box" => Some(Section::Box {
            width: row.length("width")?,
            height: row.length("height")?,
        }),
        _ => None,
    }
}

/// Written as along flow, right, up; kept as along the travel, toward twelve, toward three. Right
/// is the car's right when the flow runs rearwards, which is away from three o'clock.
fn local(written: &[Quantity<Length>; 3]) -> Point {
    let [along, right, up] = written;
    Point {
        x: along.mm(),
        y: up.mm(),
        z: -right.mm(),
    }
}

fn ports_of(row: &Row<'_>, item_tube: Option<&Name>) -> Option<Vec<Port>> {
    let name = row.text("name")?;
    let tube = row.name("tube").or_else(|| item_tube.cloned())?;
    let port = |flows: Flows, at: Point, travel: UnitVector| Port {
        name: name.clone(),
        flows,
        at,
        travel,
        tube: tube.clone(),
    };
    if let Some(at) = row.lengths("at") {
        let turn = row.table("turn");
        let angle = |key: &str| {
            turn.and_then(|turn| turn.angle(key))
                .map_or(Angle::ZERO, |angle| angle.value)
        };
        let travel = turned(angle("up"), angle("right"));
        return Some(vec![port(row.choice("flows", &FLOWS)?, local(&at), travel)]);
    }
    let inlet = local(&row.lengths("in")?);
    let outlet = local(&row.lengths("out")?);
    let toe = row.angle("toe").map_or(Angle::ZERO, |toe| toe.value);
    Some(vec![
        port(Flows::In, inlet, toed(inlet, toe)),
        port(Flows::Out, outlet, toed(outlet, -toe)),
    ])
}

/// Along the flow, turned up and then right.
fn turned(up: Angle, right: Angle) -> UnitVector {
    let (sin_up, cos_up) = math::sin_cos(up.rad());
    let (sin_right, cos_right) = math::sin_cos(right.rad());
    let direction = Vector {
        x: cos_up * cos_right,
        y: sin_up,
        z: -cos_up * sin_right,
    };
    direction.direction().unwrap_or(UnitVector::X)
}

/// Along the flow, turned by `toe` toward the item's axis as seen from `at`.
fn toed(at: Point, toe: Angle) -> UnitVector {
    let inward = Vector {
        x: 0.0,
        y: -at.y,
        z: -at.z,
    };
    let Some(inward) = inward.direction() else {
        return UnitVector::X;
    };
    let (sin, cos) = math::sin_cos(toe.rad());
    (UnitVector::X * cos + inward * sin)
        .direction()
        .unwrap_or(UnitVector::X)
}

pub(crate) fn offer(row: &Row<'_>) -> Option<Offer> {
    Some(Offer {
        item: row.name("item")?,
        supplier: row.name("supplier")?,
        price: row.money("price")?,
        breaks: row
            .tables("breaks")
            .iter()
            .filter_map(|row| {
                Some(PriceBreak {
                    from: row.whole("from")?,
                    price: row.money("price")?,
                })
            })
            .collect(),
        pack: row.whole("pack").unwrap_or(1),
        quantity: row.whole("quantity"),
        tax: row.share("tax"),
        delivery: row.text("delivery"),
        date: row.text("date"),
        span: row.span(),
    })
}

pub(crate) fn supplier(row: &Row<'_>) -> Option<Supplier> {
    Some(Supplier {
        name: row.name("name")?,
        delivery_charge: row.money("delivery-charge"),
        note: row.text("note"),
        span: row.span(),
    })
}

pub(crate) fn on_hand(row: &Row<'_>) -> Option<OnHand> {
    let what = match stock_shape(row) {
        Some(shape) => OnHandWhat::Stock {
            tube: row.name("tube")?,
            shape,
        },
        None => OnHandWhat::Item(row.name("item")?),
    };
    Some(OnHand {
        name: row.name("name")?,
        what,
        count: row.whole("count").unwrap_or(1),
        note: row.text("note"),
        span: row.span(),
    })
}

pub(crate) fn practice(row: &Row<'_>) -> Practice {
    Practice {
        rate: row.rate("rate", Per::Hour, false),
        weld_time: row.duration("weld-time"),
        cut_time: row.duration("cut-time"),
        kerf: row.length("kerf"),
        length_step: row.length("length-step"),
        bend_step: row.angle("bend-step"),
        clock_step: row.angle("clock-step"),
        least_straight: row.length("least-straight"),
        least_bend: row.angle("least-bend"),
        least_grip: row.length("least-grip"),
        saw_capacity: row.length("saw-capacity"),
        cut_length: row.length("cut-length"),
        cut_angle: row.angle("cut-angle"),
        clock: row.angle("clock"),
        bend_true: row.angle("bend-true"),
        weld_pull: row.length("weld-pull"),
        flow_per_degree: row.rate("flow-per-degree", Per::Degree, true),
        flow_per_metre: row.rate("flow-per-metre", Per::Metre, true),
        ground_loss: row.rate("ground-loss", Per::Millimetre, false),
        spares: row.whole("spares"),
    }
}
