use super::{Key, Kinds, Rule, Shape, Table, Target, Variant, may, must, tables};
use crate::quantity::Kind;

pub(super) const LENGTH: Shape = Shape::Quantity(Kind::Length);
pub(super) const SIZE: Shape = Shape::Quantity(Kind::Size);
pub(super) const EXTENT: Shape = Shape::Quantity(Kind::Extent);
const ANGLE: Shape = Shape::Quantity(Kind::Angle);
pub(super) const CLOCK: Shape = Shape::Quantity(Kind::Clock);
pub(super) const PLACE: Shape = Shape::Refer(Target::Place);
pub(super) const SETUP: Shape = Shape::Refer(Target::Setup);
pub(super) const CARRIER: Shape = Shape::Refer(Target::Carrier);
const SIDES: Shape = Shape::Choice(&["left", "right", "centre"]);
const BOLT: Shape = Shape::Whole { least: 1, most: 64 };
pub(super) const PAIR_OF_PLACES: Shape = Shape::List {
    of: &PLACE,
    least: 2,
    most: 2,
};
const PAIR_OF_ANGLES: Shape = Shape::List {
    of: &ANGLE,
    least: 2,
    most: 2,
};
pub(super) const THREE_NUMBERS: Shape = Shape::List {
    of: &Shape::Number,
    least: 3,
    most: 3,
};
pub(super) const MATERIAL: Shape =
    Shape::Choice(&["304", "321", "409", "mild", "cast iron", "aluminised"]);
pub(super) const DIRECTION: Shape =
    Shape::Choice(&["up", "down", "left", "right", "front", "rear"]);
pub(super) const CORNERS: Shape = Shape::List {
    of: &PLACE,
    least: 3,
    most: 100,
};

/// `build.toml`.
pub(crate) static BUILD: Table = Table {
    title: "build.toml",
    about: "The car: marks, set-ups, readings, bodies, ends, components, runs, wishes",
    keys: &[
        must(
            "format",
            Shape::Fixed("tubewright-build/1"),
            "Format of this file",
        ),
        must("name", Shape::Text, "Name of the job"),
        may("note", Shape::Text, "Words for yourself"),
        may("frame", Shape::Table(&FRAME), "Choice of the car's axes"),
        tables("mark", &Shape::Table(&MARK), 2000),
        tables("point", &Shape::Table(&POINT), 10_000),
        tables("setup", &Shape::Table(&SETUP_TABLE), 50),
        may(
            "accuracy",
            Shape::Table(&ACCURACY),
            "± of the kinds of reading, 19 in 20",
        ),
        tables("reading", &Shape::Table(&READING), 20_000),
        tables("end", &Shape::Table(&END), 500),
        tables("carrier", &Shape::Table(&CARRIER_TABLE), 100),
        may("gaps", Shape::Table(&GAPS), "Gaps by class"),
        tables("body", &Shape::Table(&super::body::BODY), 5000),
        may("engine", Shape::Table(&ENGINE), "The engine"),
        tables("component", &Shape::Table(&COMPONENT), 500),
        tables("run", &Shape::Table(&RUN), 100),
        may("wishes", Shape::Table(&WISHES), "What you wish"),
    ],
    kinds: None,
    rules: &[],
};

static FRAME: Table = Table {
    title: "frame",
    about: "The car's axes are chosen, not measured: x rearwards, y to the car's right, z up",
    keys: &[
        must("origin", PLACE, "Where x and z are zero"),
        must(
            "centre-line",
            Shape::List {
                of: &PAIR_OF_PLACES,
                least: 1,
                most: 100,
            },
            "Pairs of a left and a right place, mirrored in the middle plane",
        ),
        must("level", SETUP, "The set-up whose plumb line is z"),
    ],
    kinds: None,
    rules: &[],
};

static MARK: Table = Table {
    title: "mark",
    about: "Scribed or painted on the car to measure from",
    keys: &[
        must("name", Shape::Name(Target::Mark), "Its name"),
        may("place", Shape::Text, "Where it is, in words"),
        may("side", SIDES, "Tells the mirror twin only"),
        may(
            "carrier",
            CARRIER,
            "What it moves with; chassis when left out",
        ),
    ],
    kinds: None,
    rules: &[],
};

static POINT: Table = Table {
    title: "point",
    about: "A place on something, found by the adjustment",
    keys: &[
        must("name", Shape::Name(Target::Point), "Its name"),
        may("place", Shape::Text, "Where it is, in words"),
        may("side", SIDES, "Tells the mirror twin only"),
        may(
            "carrier",
            CARRIER,
            "What it moves with; chassis when left out",
        ),
    ],
    kinds: None,
    rules: &[],
};

static SETUP_TABLE: Table = Table {
    title: "setup",
    about: "How the car stands while it is measured",
    keys: &[
        must("name", Shape::Name(Target::Setup), "Its name"),
        must(
            "stance",
            Shape::Choice(&["wheels", "lift", "stands"]),
            "What the car stands on; only wheels gives ground clearance",
        ),
        may("note", Shape::Text, "Words for yourself"),
    ],
    kinds: None,
    rules: &[],
};

static ACCURACY: Table = Table {
    title: "accuracy",
    about: "± of the kinds of reading, 19 in 20; what is left out is common practice",
    keys: &[
        may("tape", SIZE, "Tape"),
        may("height", SIZE, "Height over the floor"),
        may("plumb", SIZE, "Plumb-bob points on the floor"),
        may("offset", SIZE, "Offset along a direction"),
        may("symmetry", SIZE, "Symmetry of the car"),
        may(
            "angle",
            Shape::Quantity(Kind::Turn),
            "Inclination, bearing and face",
        ),
        may(
            "rim",
            SIZE,
            "Added where the tape touches the rim of an end",
        ),
    ],
    kinds: None,
    rules: &[],
};

const FROM: Key = must("from", PLACE, "Mark, point or end");
const FROM_RIM: Key = may("from-rim", CLOCK, "Where on the rim, when `from` is an end");
const FROM_BOLT: Key = may("from-bolt", BOLT, "Which bolt hole, when `from` is an end");
const TO: Key = must("to", PLACE, "Mark, point or end");
const RIM: Key = may("rim", CLOCK, "Where on the rim, when the place is an end");
const BOLT_KEY: Key = may("bolt", BOLT, "Which bolt hole, when the place is an end");
const IN_SETUP: Key = must("setup", SETUP, "How the car stood");
const READS: Key = must("reads", EXTENT, "What it reads");
const READS_SIGNED: Key = must("reads", LENGTH, "What it reads, with its sign");
const READS_ANGLE: Key = must("reads", ANGLE, "What it reads, with its sign");
const PLUS_MINUS: Key = may("plus-minus", SIZE, "Its own ±, 19 in 20");
const PLUS_MINUS_ANGLE: Key = may(
    "plus-minus",
    Shape::Quantity(Kind::Turn),
    "Its own ±, 19 in 20",
);
const ONE_PLACE: [Rule; 2] = [
    Rule::NotBoth("from-rim", "from-bolt"),
    Rule::NotBoth("rim", "bolt"),
];

static READING: Table = Table {
    title: "reading",
    about: "One reading of a tape, a plumb bob or an inclinometer",
    keys: &[
        must(
            "number",
            Shape::Whole {
                least: 1,
                most: 1_000_000,
            },
            "Given once and never reused",
        ),
        may("note", Shape::Text, "Words for yourself"),
        may("doubt", Shape::Choice(&["dropped"]), "Kept, but not used"),
    ],
    kinds: Some(Kinds {
        key: "kind",
        about: "What was measured",
        of: &[
            Variant {
                words: &["tape"],
                keys: &[
                    FROM,
                    FROM_RIM,
                    FROM_BOLT,
                    TO,
                    RIM,
                    BOLT_KEY,
                    READS,
                    PLUS_MINUS,
                    may("burnt", EXTENT, "The tape started at this graduation"),
                    may("hole", Shape::OneOrMore(&HOLE, 2), "Hook in a hole's edge"),
                    may("side", Shape::OneOrMore(&SIDE, 2), "Face of a tube or rail"),
                ],
                rules: &ONE_PLACE,
            },
            Variant {
                words: &["height"],
                keys: &[
                    must("of", PLACE, "Mark, point or end"),
                    RIM,
                    BOLT_KEY,
                    IN_SETUP,
                    READS_SIGNED,
                    PLUS_MINUS,
                ],
                rules: &[Rule::NotBoth("rim", "bolt")],
            },
            Variant {
                words: &["plumb"],
                keys: &[
                    FROM, FROM_RIM, FROM_BOLT, TO, RIM, BOLT_KEY, IN_SETUP, READS, PLUS_MINUS,
                ],
                rules: &ONE_PLACE,
            },
            Variant {
                words: &["offset"],
                keys: &[
                    FROM,
                    FROM_RIM,
                    FROM_BOLT,
                    TO,
                    RIM,
                    BOLT_KEY,
                    must(
                        "along",
                        Shape::TextOrList(&Shape::Choice(&["plumb"]), &PAIR_OF_PLACES),
                        "Two places that give the direction, or \"plumb\"",
                    ),
                    may("setup", SETUP, "How the car stood, for \"plumb\""),
                    READS_SIGNED,
                    PLUS_MINUS,
                ],
                rules: &[
                    Rule::NotBoth("from-rim", "from-bolt"),
                    Rule::NotBoth("rim", "bolt"),
                    Rule::WordNeeds("along", "plumb", "setup"),
                ],
            },
            Variant {
                words: &["symmetry"],
                keys: &[
                    must("left", PLACE, "The place on the left"),
                    must("right", PLACE, "The place on the right"),
                    PLUS_MINUS,
                ],
                rules: &[],
            },
            Variant {
                words: &["inclination"],
                keys: &[
                    FROM,
                    FROM_RIM,
                    FROM_BOLT,
                    TO,
                    RIM,
                    BOLT_KEY,
                    IN_SETUP,
                    READS_ANGLE,
                    PLUS_MINUS_ANGLE,
                ],
                rules: &ONE_PLACE,
            },
            Variant {
                words: &["bearing"],
                keys: &[
                    FROM,
                    FROM_RIM,
                    FROM_BOLT,
                    TO,
                    RIM,
                    BOLT_KEY,
                    must("base", PAIR_OF_PLACES, "Start and end of the base line"),
                    IN_SETUP,
                    READS_ANGLE,
                    PLUS_MINUS_ANGLE,
                ],
                rules: &ONE_PLACE,
            },
            Variant {
                words: &["face"],
                keys: &[
                    must("end", Shape::Refer(Target::End), "The end"),
                    must("clock", CLOCK, "From the centre toward this clock mark"),
                    IN_SETUP,
                    READS_ANGLE,
                    PLUS_MINUS_ANGLE,
                ],
                rules: &[],
            },
        ],
    }),
    rules: &[],
};

static HOLE: Table = Table {
    title: "hole",
    about: "A hole whose edge was used in place of its centre",
    keys: &[
        must(
            "at",
            Shape::Choice(&["from", "to"]),
            "Which end of the tape",
        ),
        must("diameter", SIZE, "Diameter of the hole"),
        must("edge", Shape::Choice(&["near", "far"]), "Which edge"),
    ],
    kinds: None,
    rules: &[],
};

static SIDE: Table = Table {
    title: "side",
    about: "A tube or rail whose face was touched in place of its axis",
    keys: &[
        must(
            "at",
            Shape::Choice(&["from", "to"]),
            "Which end of the tape",
        ),
        must("of", SIZE, "Width of the tube or rail"),
        must(
            "face",
            Shape::Choice(&["near", "far", "outer", "inner"]),
            "Which face",
        ),
    ],
    kinds: None,
    rules: &[],
};

static END: Table = Table {
    title: "end",
    about: "Where a run starts or stops",
    keys: &[
        must("name", Shape::Name(Target::End), "Its name"),
        must(
            "kind",
            Shape::Choice(&["flange", "sawn tube", "tip", "joint"]),
            "What it is",
        ),
        may(
            "carrier",
            CARRIER,
            "What it moves with; chassis when left out",
        ),
        must("od", SIZE, "Outside diameter of the tube that meets it"),
        may(
            "rim",
            SIZE,
            "Diameter of the rim that is measured, when it differs",
        ),
        may("material", MATERIAL, "Its material"),
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
        may("place", Shape::Text, "Where it is, in words"),
        may("at", PLACE, "Where its centre is wished"),
        may(
            "points",
            Shape::Choice(&["rearwards", "forwards", "left", "right", "up", "down"]),
            "Direction of flow there",
        ),
        may("turn", Shape::Table(&TURN), "Turn away from that direction"),
        may("within", SIZE, "It may lie this far from `at`"),
    ],
    kinds: None,
    rules: &[
        Rule::Needs("at", "points"),
        Rule::Needs("points", "at"),
        Rule::Needs("turn", "at"),
        Rule::Needs("within", "at"),
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

static CARRIER_TABLE: Table = Table {
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

static GAPS: Table = Table {
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

static ENGINE: Table = Table {
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

static COMPONENT: Table = Table {
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
    ],
    kinds: None,
    rules: &[],
};

static RUN: Table = Table {
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
        may("note", Shape::Text, "Words for yourself"),
    ],
    kinds: None,
    rules: &[],
};

static WISHES: Table = Table {
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
        may(
            "seed",
            Shape::Whole {
                least: 0,
                most: i64::MAX,
            },
            "Seed of the route solver",
        ),
    ],
    kinds: None,
    rules: &[],
};
