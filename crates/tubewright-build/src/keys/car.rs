//! Ends, carriers, gaps, the engine, components, runs and wishes.

use super::shapes::{
    ANGLE, CARRIED_BY, CARRIER, CLOCK, EXTENT, IN_WORDS, MATERIAL, NOTE, PAIR_OF_ANGLES,
    PAIR_OF_PLACES, PLACE, SIZE, THREE_LENGTHS, TURN_ANGLE, WHOLE,
};
use super::{Key, Kinds, Rule, Shape, Table, Target, Variant, may, must};
use crate::quantity::Kind;

pub(super) static END: Table = Table {
    title: "end",
    about: "Where a run starts or stops",
    keys: &[
        must("name", Shape::Name(Target::End), "Its name"),
        must(
            "kind",
            Shape::Choice(&["flange", "sawn tube", "tip", "joint"]),
            "What it is",
        ),
        CARRIED_BY,
        must("od", SIZE, "Outside diameter of the tube that meets it"),
        may(
            "rim",
            SIZE,
            "Diameter of the rim that is measured, when it differs",
        ),
        may("material", MATERIAL, "Its material"),
        may(
            "held-by",
            Shape::Choice(&["bolts", "sprung bolts", "band clamp", "slip"]),
            "What holds there what meets it: of a flange its bolts, sprung bolts over a ball and ring, or a band clamp; slip: a tube over or into a sawn tube, with a clamp",
        ),
        may(
            "bolts",
            Shape::List {
                of: &Shape::Table(&BOLT_TABLE),
                least: 1,
                most: 64,
            },
            "Its bolt holes, numbered from 1 in this order",
        ),
        must(
            "flows",
            Shape::Choice(&["out", "in"]),
            "out: a run leaves here; in: one arrives",
        ),
        IN_WORDS,
        may("at", PLACE, "Where its centre is wished"),
        may(
            "points",
            Shape::Choice(&["rearwards", "forwards", "left", "right", "up", "down"]),
            "Direction of flow there",
        ),
        may("turn", Shape::Table(&TURN), "Turn away from that direction"),
        may(
            "within",
            SIZE,
            "How far from where it should be the pieces may end",
        ),
        may(
            "room",
            PAIR_OF_PLACES,
            "Opposite corners of the room that it may lie in; `at` is then only where it is wished",
        ),
        may(
            "may-turn",
            Shape::Table(&MAY_TURN),
            "How far it may be turned from its direction, either way",
        ),
        may(
            "saw-off",
            Shape::Table(&SAW_OFF),
            "How the outlet may be sawn off and a run welded to it; steel and stainless only",
        ),
    ],
    kinds: None,
    rules: &[
        Rule::Needs("at", "points"),
        Rule::Needs("points", "at"),
        Rule::Needs("turn", "at"),
        Rule::Needs("within", "at"),
        Rule::Needs("room", "at"),
        Rule::Needs("may-turn", "at"),
    ],
};

static BOLT_TABLE: Table = Table {
    title: "bolt hole",
    about: "A bolt hole of a flange",
    keys: &[
        must("clock", CLOCK, "Its place round the centre"),
        must("circle", SIZE, "Diameter of the bolt circle"),
    ],
    kinds: None,
    rules: &[],
};

pub(super) static MAY_TURN: Table = Table {
    title: "may-turn",
    about: "How far the direction of an end may be turned, either way",
    keys: &[
        may(
            "up",
            TURN_ANGLE,
            "Up or down; for a vertical one forwards or rearwards",
        ),
        may("right", TURN_ANGLE, "To the right or the left"),
    ],
    kinds: None,
    rules: &[],
};

pub(super) static PART_MAY_TURN: Table = Table {
    title: "may-turn of a part",
    about: "How far the search may turn a part where runs meet, either way; what is left out is held",
    keys: &[
        may("up", TURN_ANGLE, "Its outlets up or down"),
        may("right", TURN_ANGLE, "Its outlets to the right or the left"),
        may("roll", TURN_ANGLE, "About its own length"),
    ],
    kinds: None,
    rules: &[],
};

pub(super) static SAW_OFF: Table = Table {
    title: "saw-off",
    about: "How an outlet may be sawn off",
    keys: &[
        must(
            "back",
            SIZE,
            "Up to so far back from its face along its own line",
        ),
        may(
            "mitre",
            TURN_ANGLE,
            "What is welded on may lean away by up to this",
        ),
    ],
    kinds: None,
    rules: &[],
};

pub(super) static TURN: Table = Table {
    title: "turn",
    about: "Turn away from a direction: up (forwards for a vertical one), then right",
    keys: &[
        may("up", ANGLE, "Up, or forwards for a vertical direction"),
        may("right", ANGLE, "To the car's right"),
    ],
    kinds: None,
    rules: &[],
};

const BUMP: Key = may("bump", EXTENT, "Upwards travel from where it stands");
const DROOP: Key = may("droop", EXTENT, "Downwards travel from where it stands");

pub(super) static CARRIER_TABLE: Table = Table {
    title: "carrier",
    about: "Something that moves and carries other things with it",
    keys: &[must("name", Shape::Name(Target::Carrier), "Its name")],
    kinds: Some(Kinds {
        key: "kind",
        about: "What it is",
        of: &[
            Variant {
                words: &["engine"],
                keys: &[
                    may(
                        "axis",
                        PAIR_OF_PLACES,
                        "Two places on the axis it rocks about, front then rear",
                    ),
                    may(
                        "rock",
                        PAIR_OF_ANGLES,
                        "Least and most rock, right-handed about front to rear",
                    ),
                ],
                rules: &[Rule::Needs("rock", "axis"), Rule::Needs("axis", "rock")],
            },
            Variant {
                words: &["wheel"],
                keys: &[
                    BUMP,
                    DROOP,
                    may(
                        "steer",
                        PAIR_OF_ANGLES,
                        "Least and most steer, right-handed about the kingpin upwards",
                    ),
                    may(
                        "kingpin",
                        PAIR_OF_PLACES,
                        "Two places on the kingpin axis, low then high",
                    ),
                ],
                rules: &[
                    Rule::Needs("steer", "kingpin"),
                    Rule::Needs("kingpin", "steer"),
                ],
            },
            Variant {
                words: &["axle"],
                keys: &[BUMP, DROOP],
                rules: &[],
            },
            Variant {
                words: &["hung"],
                keys: &[must("sway", EXTENT, "How far it sways, any way")],
                rules: &[],
            },
        ],
    }),
    rules: &[],
};

pub(super) static GAPS: Table = Table {
    title: "gaps",
    about: "Gaps by class; what is left out is common practice",
    keys: &[
        may("structure", EXTENT, "Rails, crossmembers"),
        may("floor", EXTENT, "Floor pan"),
        may("driveline", EXTENT, "Gearbox, propshaft, axle"),
        may("moving", EXTENT, "Linkages, suspension arms"),
        may("tyre", EXTENT, "Tyres"),
        may("soft", EXTENT, "Hose, wiring, plastic without a shield"),
        may(
            "soft-shielded",
            EXTENT,
            "Hose, wiring, plastic behind a shield",
        ),
        may("fuel-brake", EXTENT, "Fuel and brake parts"),
        may("heat", EXTENT, "Hot metal"),
        may("ground", EXTENT, "The ground"),
        may("bonnet", EXTENT, "Bonnet"),
        may("service", EXTENT, "Room kept free by hand"),
        may("run", EXTENT, "Run against run"),
        may("self", EXTENT, "A run against itself"),
    ],
    kinds: None,
    rules: &[],
};

pub(super) static ENGINE: Table = Table {
    title: "engine",
    about: "The engine",
    keys: &[
        may("layout", Shape::Text, "inline 4, V6, …"),
        may(
            "displacement",
            Shape::Quantity(Kind::Volume),
            "Swept volume",
        ),
        may("power", Shape::Quantity(Kind::Power), "Greatest power"),
        may(
            "max-speed",
            Shape::Quantity(Kind::RotationSpeed),
            "Greatest speed",
        ),
    ],
    kinds: None,
    rules: &[],
};

pub(super) static COMPONENT: Table = Table {
    title: "component",
    about: "An item of the stock file put into this car",
    keys: &[
        must(
            "name",
            Shape::Name(Target::Component),
            "Its name, without a full stop",
        ),
        must("item", Shape::Refer(Target::Item), "The item of stock.toml"),
        may(
            "carrier",
            CARRIER,
            "What it moves with; its run's when left out",
        ),
        may(
            "zone",
            PAIR_OF_PLACES,
            "Opposite corners of the room it must lie in",
        ),
        may("roll", ANGLE, "Fixed clock of its own twelve o'clock"),
        may(
            "turn",
            Shape::Table(&TURN),
            "Of a part where runs meet: how its outlets are turned away from rearwards",
        ),
        may(
            "may-turn",
            Shape::Table(&PART_MAY_TURN),
            "Of a part where runs meet: how far the search may turn it from how it lies, either way",
        ),
        may(
            "or",
            Shape::List {
                of: &Shape::Refer(Target::Component),
                least: 1,
                most: 4,
            },
            "Other crossovers that may stand in its place; routes are searched with each",
        ),
        may(
            "stands",
            Shape::List {
                of: &Shape::Refer(Target::End),
                least: 2,
                most: 2,
            },
            "Of a stretch that stands in the car and stays: the ends where gas comes in and goes out",
        ),
        may(
            "along",
            Shape::List {
                of: &PLACE,
                least: 1,
                most: 50,
            },
            "Of such a stretch: places along its centre line, in the order of flow",
        ),
    ],
    kinds: None,
    rules: &[
        Rule::Needs("along", "stands"),
        Rule::NotBoth("or", "stands"),
        Rule::NotBoth("turn", "stands"),
        Rule::NotBoth("may-turn", "stands"),
    ],
};

const ROOMS: Shape = Shape::List {
    of: &PAIR_OF_PLACES,
    least: 1,
    most: 10,
};

pub(super) static RUN: Table = Table {
    title: "run",
    about: "One run of tube from an end to another",
    keys: &[
        must("name", Shape::Name(Target::Run), "Its name"),
        must(
            "from",
            Shape::Refer(Target::RunEnd),
            "Where the gas comes from",
        ),
        must("to", Shape::Refer(Target::RunEnd), "Where it goes"),
        must("tube", Shape::Refer(Target::Tube), "The tube it is made of"),
        may(
            "through",
            Shape::List {
                of: &Shape::Refer(Target::Through),
                least: 0,
                most: 50,
            },
            "Components in the order of flow; X.L enters component X by side L",
        ),
        may(
            "max-bends",
            Shape::Whole { least: 0, most: 50 },
            "Most bends",
        ),
        may(
            "passes",
            ROOMS,
            "Rooms that it must pass through: each two opposite corners",
        ),
        may(
            "joints-in",
            ROOMS,
            "Rooms that must each hold one of its joints, where hands and tools reach",
        ),
        may(
            "pins",
            Shape::List {
                of: &Shape::Table(&PIN),
                least: 1,
                most: 20,
            },
            "Small rooms where it was pinned by hand",
        ),
        NOTE,
    ],
    kinds: None,
    rules: &[],
};

pub(super) static PIN: Table = Table {
    title: "pin",
    about: "A small room that must hold a joint of the run, or be passed through by it",
    keys: &[
        must(
            "what",
            Shape::Choice(&["joint", "line"]),
            "joint: one of its joints lies there; line: it passes through",
        ),
        must("near", PLACE, "The mark or point that it is set out from"),
        must(
            "at",
            THREE_LENGTHS,
            "How far rearwards, to the right and up from there its middle lies",
        ),
        must(
            "within",
            SIZE,
            "How far from its middle it reaches, each way",
        ),
    ],
    kinds: None,
    rules: &[],
};

pub(super) static WISHES: Table = Table {
    title: "wishes",
    about: "What you wish",
    keys: &[
        may("keep-catalysts", Shape::Yes, "Catalysts stay"),
        may(
            "order-of-room",
            Shape::List {
                of: &Shape::Choice(&["steering shaft", "exhaust", "coolant", "lines"]),
                least: 1,
                most: 4,
            },
            "Who claims room first",
        ),
        may(
            "effort",
            Shape::Whole {
                least: 1,
                most: 1_000_000_000_000,
            },
            "Work units for the route solver",
        ),
        may("seed", WHOLE, "Seed of the route solver"),
        may(
            "units",
            Shape::Choice(&["mm", "in"]),
            "In what lengths are shown",
        ),
    ],
    kinds: None,
    rules: &[],
};
