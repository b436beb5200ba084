use super::row::Row;
use super::survey::carrier_or_chassis;
use crate::keys::Target;
use crate::model::{
    Body, BodyKind, Bolt, Carrier, CarrierKind, Class, Component, Direction, Edge, End, EndGiven,
    EndKind, Engine, Flows, Gaps, HeldBy, LengthUnits, Material, MayTurn, Motion, Name,
    PartMayTurn, PartTurn, PinnedPart, Room, Run, RunEnd, RunPin, SawOff, ScanPlace, Side, Through,
    Wishes,
};
use crate::quantity::Quantity;
use tubewright_geometry::{Angle, Length, Point, math};

pub(crate) const MATERIALS: [(&str, Material); 6] = [
    ("304", Material::Stainless304),
    ("321", Material::Stainless321),
    ("409", Material::Stainless409),
    ("mild", Material::Mild),
    ("cast iron", Material::CastIron),
    ("aluminised", Material::Aluminised),
];
pub(crate) const FLOWS: [(&str, Flows); 2] = [("out", Flows::Out), ("in", Flows::In)];
const DIRECTIONS: [(&str, Direction); 10] = [
    ("up", Direction::Up),
    ("above", Direction::Up),
    ("down", Direction::Down),
    ("below", Direction::Down),
    ("left", Direction::Left),
    ("right", Direction::Right),
    ("front", Direction::Front),
    ("forwards", Direction::Front),
    ("rear", Direction::Rear),
    ("rearwards", Direction::Rear),
];

/// Words of `held-by`.
const HELD_BY: [(&str, HeldBy); 4] = [
    ("bolts", HeldBy::Bolts),
    ("sprung bolts", HeldBy::SprungBolts),
    ("band clamp", HeldBy::BandClamp),
    ("slip", HeldBy::Slip),
];

pub(crate) fn end(row: &Row<'_>) -> Option<End> {
    let kinds = [
        ("flange", EndKind::Flange),
        ("sawn tube", EndKind::SawnTube),
        ("tip", EndKind::Tip),
        ("joint", EndKind::Joint),
    ];
    Some(End {
        name: row.name("name")?,
        kind: row.choice("kind", &kinds)?,
        carrier: carrier_or_chassis(row),
        od: row.length("od")?,
        rim: row.length("rim"),
        material: row.choice("material", &MATERIALS),
        held_by: row.choice("held-by", &HELD_BY),
        bolts: row.tables("bolts").iter().filter_map(bolt).collect(),
        flows: row.choice("flows", &FLOWS)?,
        place: row.text("place"),
        given: given(row),
        saw_off: row.table("saw-off").and_then(|saw| {
            Some(SawOff {
                back: saw.length("back")?,
                mitre: saw.angle("mitre"),
            })
        }),
        span: row.span(),
    })
}

fn bolt(row: &Row<'_>) -> Option<Bolt> {
    Some(Bolt {
        clock: row.clock("clock")?,
        circle: row.length("circle")?,
    })
}

fn unturned() -> Quantity<Angle> {
    Quantity::new(Angle::ZERO, "0 deg")
}

fn given(row: &Row<'_>) -> Option<EndGiven> {
    let turn = row.table("turn");
    let turned = |key: &str| {
        turn.and_then(|turn| turn.angle(key))
            .unwrap_or_else(unturned)
    };
    Some(EndGiven {
        at: row.place("at")?,
        points: row.choice("points", &DIRECTIONS)?,
        turn_up: turned("up"),
        turn_right: turned("right"),
        within: row.length("within"),
        room: row.places("room"),
        may_turn: row.table("may-turn").map(|turn| MayTurn {
            up: turn.angle("up").unwrap_or_else(unturned),
            right: turn.angle("right").unwrap_or_else(unturned),
        }),
    })
}

pub(crate) fn carrier(row: &Row<'_>) -> Option<Carrier> {
    let motion = || Motion {
        axis: row.places("axis"),
        rock: row.angles("rock"),
        bump: row.length("bump"),
        droop: row.length("droop"),
        steer: row.angles("steer"),
        kingpin: row.places("kingpin"),
    };
    Some(Carrier {
        name: row.name("name")?,
        kind: match row.word("kind")? {
            "engine" => CarrierKind::Engine(motion()),
            "wheel" => CarrierKind::Wheel(motion()),
            "axle" => CarrierKind::Axle(motion()),
            "hung" => CarrierKind::Hung {
                sway: row.length("sway")?,
            },
            _ => return None,
        },
        span: row.span(),
    })
}

pub(crate) fn gaps(row: &Row<'_>) -> Gaps {
    Gaps {
        structure: row.length("structure"),
        floor: row.length("floor"),
        driveline: row.length("driveline"),
        moving: row.length("moving"),
        tyre: row.length("tyre"),
        soft: row.length("soft"),
        soft_shielded: row.length("soft-shielded"),
        fuel_brake: row.length("fuel-brake"),
        heat: row.length("heat"),
        ground: row.length("ground"),
        bonnet: row.length("bonnet"),
        service: row.length("service"),
        run: row.length("run"),
        itself: row.length("self"),
    }
}

pub(crate) fn body(row: &Row<'_>) -> Option<Body> {
    let classes = [
        ("structure", Class::Structure),
        ("floor", Class::Floor),
        ("driveline", Class::Driveline),
        ("moving", Class::Moving),
        ("tyre", Class::Tyre),
        ("soft", Class::Soft),
        ("soft-shielded", Class::SoftShielded),
        ("fuel-brake", Class::FuelBrake),
        ("heat", Class::Heat),
        ("ground", Class::Ground),
        ("bonnet", Class::Bonnet),
        ("service", Class::Service),
    ];
    Some(Body {
        name: row.name("name")?,
        kind: body_kind(row)?,
        class: row.choice("class", &classes)?,
        carrier: carrier_or_chassis(row),
        gap: row.length("gap"),
        no_tip: row.length("no-tip"),
        never_pass: row.has("never-pass").then(|| {
            row.words("never-pass")
                .into_iter()
                .filter_map(|word| Some(DIRECTIONS.iter().find(|(known, _)| *known == word)?.1))
                .collect()
        }),
        note: row.text("note"),
        span: row.span(),
    })
}

fn body_kind(row: &Row<'_>) -> Option<BodyKind> {
    Some(match row.word("kind")? {
        "rail" => {
            let edge = row.word("edge")?;
            BodyKind::Rail {
                from: row.place("from")?,
                to: row.place("to")?,
                edge: Edge {
                    is_lower: edge.starts_with("lower"),
                    is_outer: edge.ends_with("outer"),
                },
                width: row.length("width")?,
                height: row.length("height")?,
            }
        }
        "tube" => BodyKind::Tube {
            from: row.place("from")?,
            to: row.place("to")?,
            touched: row.choice("touched", &DIRECTIONS)?,
            diameter: match row.length("girth") {
                Some(girth) => Quantity {
                    value: Length::from_mm(girth.mm() / math::PI),
                    text: format!("{} round", girth.text),
                    span: girth.span,
                },
                None => row.length("diameter")?,
            },
        },
        "tyre" => BodyKind::Tyre {
            hub: row.place("hub")?,
            marking: row.tyre("marking")?,
            side: row.choice("side", &[("left", Side::Left), ("right", Side::Right)])?,
            inboard: row.length("inboard")?,
            bulge: row.length("bulge"),
        },
        "tank" => BodyKind::Tank {
            corners: row.corner_places("corners")?,
            depth: row.length("depth")?,
            depth_goes: row.choice("depth-goes", &DIRECTIONS)?,
        },
        "box" => BodyKind::Box {
            corner: row.place("corner")?,
            opposite: row.place("opposite")?,
        },
        "capsule" => BodyKind::Capsule {
            from: row.place("from")?,
            to: row.place("to")?,
            diameter: row.length("diameter")?,
        },
        "cylinder" => BodyKind::Cylinder {
            from: row.place("from")?,
            to: row.place("to")?,
            diameter: row.length("diameter")?,
        },
        "sphere" => BodyKind::Sphere {
            at: row.place("at")?,
            diameter: row.length("diameter")?,
        },
        "outline" => BodyKind::Outline {
            corners: row.corner_places("corners")?,
            depth: row.length("depth")?,
            depth_goes: row.choice("depth-goes", &DIRECTIONS)?,
        },
        "half-space" => BodyKind::HalfSpace {
            through: row.places("through")?,
            keep_out: row.choice("keep-out", &DIRECTIONS)?,
        },
        "ground" => BodyKind::Ground {
            setup: row.name("setup")?,
        },
        "scan" => BodyKind::Scan {
            file: row.text("file")?,
            unit: row.file_unit("unit")?,
            noise: row.length("noise")?,
            fit_scale: row.yes("fit-scale").unwrap_or(false),
            places: row.tables("places").iter().filter_map(scan_place).collect(),
        },
        _ => return None,
    })
}

fn scan_place(row: &Row<'_>) -> Option<ScanPlace> {
    let [x, y, z] = row.numbers("at")?;
    Some(ScanPlace {
        mark: row.place("mark")?,
        at: Point { x, y, z },
    })
}

pub(crate) fn engine(row: &Row<'_>) -> Engine {
    Engine {
        layout: row.text("layout"),
        displacement: row.volume("displacement"),
        power: row.power("power"),
        max_speed: row.rotation_speed("max-speed"),
        span: row.span(),
    }
}

pub(crate) fn component(row: &Row<'_>) -> Option<Component> {
    let unturned = || Quantity::new(Angle::ZERO, "0 deg");
    Some(Component {
        name: row.name("name")?,
        item: row.name("item")?,
        carrier: row.carrier("carrier"),
        zone: row.places("zone"),
        roll: row.angle("roll"),
        turn: row.table("turn").map(|turn| PartTurn {
            up: turn.angle("up").unwrap_or_else(unturned),
            right: turn.angle("right").unwrap_or_else(unturned),
        }),
        may_turn: row.table("may-turn").map(|turn| PartMayTurn {
            up: turn.angle("up").unwrap_or_else(unturned),
            right: turn.angle("right").unwrap_or_else(unturned),
            roll: turn.angle("roll").unwrap_or_else(unturned),
        }),
        or: row.words("or").into_iter().map(Name::new).collect(),
        stands: match row.words("stands").as_slice() {
            [into, out] => Some([Name::new(into), Name::new(out)]),
            _ => None,
        },
        along: row.corner_places("along").unwrap_or_default(),
        span: row.span(),
    })
}

pub(crate) fn run(row: &Row<'_>) -> Option<Run> {
    let through = row
        .spanned_words("through")
        .into_iter()
        .map(|(text, range)| {
            let found = row.names.find(Target::Through, text)?;
            Some(Through {
                component: Name::new(found.name),
                side: found.side.map(str::to_owned),
                span: row.source.span(range),
            })
        })
        .collect::<Option<Vec<_>>>()?;
    Some(Run {
        name: row.name("name")?,
        from: run_end(row, "from")?,
        to: run_end(row, "to")?,
        tube: row.name("tube")?,
        through,
        max_bends: row.whole("max-bends"),
        passes: row.place_pairs("passes").unwrap_or_default(),
        joints_in: row.place_pairs("joints-in").unwrap_or_default(),
        pins: row.tables("pins").iter().filter_map(pin).collect(),
        note: row.text("note"),
        span: row.span(),
    })
}

fn pin(row: &Row<'_>) -> Option<RunPin> {
    Some(RunPin {
        what: row.choice("what", &PINNED)?,
        near: row.place("near")?,
        at: row.lengths("at")?,
        within: row.length("within")?,
        span: row.span(),
    })
}

const PINNED: [(&str, PinnedPart); 2] = [("joint", PinnedPart::Joint), ("line", PinnedPart::Line)];

fn run_end(row: &Row<'_>, key: &str) -> Option<RunEnd> {
    let found = row.names.find(Target::RunEnd, row.word(key)?)?;
    let name = Name::new(found.name);
    Some(if found.target == Target::End {
        RunEnd::End(name)
    } else {
        RunEnd::Port {
            component: name,
            port: found.side.map(str::to_owned),
        }
    })
}

pub(crate) fn wishes(row: &Row<'_>) -> Wishes {
    let rooms = row
        .words("order-of-room")
        .into_iter()
        .filter_map(|word| match word {
            "steering shaft" => Some(Room::SteeringShaft),
            "exhaust" => Some(Room::Exhaust),
            "coolant" => Some(Room::Coolant),
            "lines" => Some(Room::Lines),
            _ => None,
        })
        .collect();
    Wishes {
        keep_catalysts: row.yes("keep-catalysts"),
        order_of_room: rooms,
        effort: row.whole("effort"),
        seed: row.whole("seed"),
        units: row.choice(
            "units",
            &[
                ("mm", LengthUnits::Millimetres),
                ("in", LengthUnits::Inches),
            ],
        ),
    }
}
