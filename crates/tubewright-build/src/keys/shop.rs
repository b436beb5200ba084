//! `shop.toml`: the record of what happened to the steel.

use super::shapes::{
    ANGLE, CLOCK, COUNT, EXTENT, LEGS, NOTE, SIZE, THREE_NUMBERS, TURN_ANGLE, WHOLE,
};
use super::{Key, Kinds, Shape, Table, Target, Variant, may, must, tables};
use crate::quantity::Kind;

/// `shop.toml`.
pub(crate) static SHOP: Table = Table {
    title: "shop.toml",
    about: "What happened to the steel; only ever added to",
    keys: &[
        must(
            "format",
            Shape::Fixed("tubewright-shop/1"),
            "Format of this file",
        ),
        tables("entry", &Shape::Table(&ENTRY), 50_000),
    ],
    kinds: None,
    rules: &[],
};

const ITEM: Key = must("item", Shape::Refer(Target::Item), "The item");
const SUPPLIER: Key = may("supplier", Shape::Refer(Target::Supplier), "From whom");
const HOW_MANY: Key = must("count", COUNT, "How many");
const PIECE: Key = must("piece", Shape::Refer(Target::Piece), "Its mark");
const JOINT: Key = must("joint", Shape::Refer(Target::Joint), "Its mark");
const ROUTE: Key = must("route", Shape::Text, "The alternative, by what it does");
const READINGS: Key = may(
    "readings",
    Shape::List {
        of: &JOINT_READING_SHAPE,
        least: 1,
        most: 100,
    },
    "What the tape says to its rim",
);
const FACES: Key = may(
    "faces",
    Shape::List {
        of: &JOINT_FACE_SHAPE,
        least: 1,
        most: 100,
    },
    "Slopes of its face by the angle finder",
);
const STARTS: Key = may(
    "starts",
    Shape::List {
        of: &START_SHAPE,
        least: 1,
        most: 100,
    },
    "Where each run started, in the car's axes",
);
const PIECES: Key = must(
    "pieces",
    Shape::List {
        of: &FROZEN_PIECE_SHAPE,
        least: 1,
        most: 2000,
    },
    "The pieces as geometry, in the order of flow, run by run",
);

static ENTRY: Table = Table {
    title: "entry",
    about: "One thing that happened",
    keys: &[must("on", Shape::Date, "Date"), NOTE],
    kinds: Some(Kinds {
        key: "what",
        about: "What happened",
        of: &[
            Variant {
                words: &["chosen"],
                keys: &[
                    ROUTE,
                    may("effort", WHOLE, "Effort the solver had"),
                    may("seed", WHOLE, "Seed the solver had"),
                    STARTS,
                    PIECES,
                ],
                rules: &[],
            },
            Variant {
                words: &["got"],
                keys: &[ITEM, SUPPLIER, HOW_MANY],
                rules: &[],
            },
            Variant {
                words: &["out"],
                keys: &[ITEM, SUPPLIER],
                rules: &[],
            },
            Variant {
                words: &["other-size"],
                keys: &[
                    ITEM,
                    must(
                        "taken",
                        Shape::Refer(Target::Item),
                        "The item that was taken",
                    ),
                    SUPPLIER,
                    HOW_MANY,
                ],
                rules: &[],
            },
            Variant {
                words: &["spare"],
                keys: &[ITEM, HOW_MANY],
                rules: &[],
            },
            Variant {
                words: &["cut"],
                keys: &[
                    PIECE,
                    must(
                        "from",
                        Shape::Refer(Target::CutFrom),
                        "What it was cut from",
                    ),
                    may(
                        "of",
                        Shape::Table(&CUT_OF),
                        "Where in it the part lay, for what is left of it",
                    ),
                ],
                rules: &[],
            },
            Variant {
                words: &["spoiled"],
                keys: &[PIECE],
                rules: &[],
            },
            Variant {
                words: &["tacked", "checked"],
                keys: &[JOINT, READINGS, FACES],
                rules: &[],
            },
            Variant {
                words: &["welded"],
                keys: &[JOINT],
                rules: &[],
            },
            Variant {
                words: &["accepted"],
                keys: &[ROUTE, STARTS, PIECES],
                rules: &[],
            },
        ],
    }),
    rules: &[],
};

static CUT_OF: Table = Table {
    title: "where a part lay",
    about: "Where in its item a part lay and what it is in the run; `tick cut` writes it",
    keys: &[
        must(
            "number",
            COUNT,
            "Which of several of its kind, in the order in which they were begun",
        ),
        must(
            "gives",
            Shape::List {
                of: &CUT_GIVES_SHAPE,
                least: 1,
                most: 20,
            },
            "The pieces that the part is, upstream first",
        ),
    ],
    kinds: Some(Kinds {
        key: "kind",
        about: "In what part of the item",
        of: &[
            Variant {
                words: &["straight", "leg-a", "leg-b"],
                keys: &[
                    must("at", EXTENT, "From the open end A (of a leg: its open end)"),
                    must("length", SIZE, "Length"),
                ],
                rules: &[],
            },
            Variant {
                words: &["bend"],
                keys: &[
                    must("from", ANGLE, "Angle from the tangent line of leg A"),
                    must("angle", TURN_ANGLE, "Angle"),
                    must("legs", LEGS, "Kept of the legs at ends A and B"),
                ],
                rules: &[],
            },
        ],
    }),
    rules: &[],
};

static CUT_GIVES_SHAPE: Shape = Shape::Table(&CUT_GIVES);

static CUT_GIVES: Table = Table {
    title: "piece of a part",
    about: "A piece that a part is, or a share of it",
    keys: &[
        PIECE,
        may(
            "length",
            SIZE,
            "How much of a straight; left out for the bend itself",
        ),
    ],
    kinds: None,
    rules: &[],
};

static START_SHAPE: Shape = Shape::Table(&START);

static START: Table = Table {
    title: "start",
    about: "Where a run started when it was chosen, in the car's axes",
    keys: &[
        must("run", Shape::Refer(Target::Run), "The run"),
        must("at", THREE_NUMBERS, "Place in mm"),
        must("travel", THREE_NUMBERS, "Direction of flow"),
        must("twelve", THREE_NUMBERS, "Direction of twelve o'clock"),
        may(
            "tube",
            Shape::Refer(Target::Tube),
            "Its tube size; the run's own when left out",
        ),
        may(
            "joint",
            Shape::Name(Target::Joint),
            "Mark of the joint at its start",
        ),
    ],
    kinds: None,
    rules: &[],
};

static FROZEN_PIECE_SHAPE: Shape = Shape::Table(&FROZEN_PIECE);

static FROZEN_PIECE: Table = Table {
    title: "piece",
    about: "A piece of a chosen plan",
    keys: &[
        must("run", Shape::Refer(Target::Run), "The run it belongs to"),
        must(
            "mark",
            Shape::Name(Target::Piece),
            "Its mark, given once and never reused",
        ),
        may(
            "joint",
            Shape::Name(Target::Joint),
            "Mark of the joint at its downstream end",
        ),
    ],
    kinds: Some(Kinds {
        key: "kind",
        about: "Its shape",
        of: &[
            Variant {
                words: &["straight"],
                keys: &[must("length", SIZE, "Length between the cuts")],
                rules: &[],
            },
            Variant {
                words: &["bend"],
                keys: &[
                    must("angle", TURN_ANGLE, "Angle"),
                    must(
                        "clock",
                        CLOCK,
                        "Clock of the bend from the twelve carried along the run",
                    ),
                    must("clr", SIZE, "Centre-line radius"),
                    may("legs", LEGS, "Straight legs kept upstream and downstream"),
                ],
                rules: &[],
            },
            Variant {
                words: &["component"],
                keys: &[
                    must("component", Shape::Refer(Target::Component), "Its name"),
                    may("roll", CLOCK, "Clock of its own twelve o'clock"),
                    may("length", SIZE, "Its length when it was chosen"),
                    may(
                        "at",
                        THREE_NUMBERS,
                        "Place in mm of a component that several runs share",
                    ),
                    may(
                        "turned",
                        Shape::Table(&TURNED),
                        "How such a component is turned from how it lies by build.toml",
                    ),
                ],
                rules: &[],
            },
        ],
    }),
    rules: &[],
};

static TURNED: Table = Table {
    title: "turned",
    about: "How a part where runs meet is turned: rolled first, then raised, then turned aside",
    keys: &[
        may("right", ANGLE, "Its outlets to the car's right"),
        may("up", ANGLE, "Its outlets up"),
        may(
            "roll",
            ANGLE,
            "About its own length, clockwise looking downstream",
        ),
    ],
    kinds: None,
    rules: &[],
};

static JOINT_READING_SHAPE: Shape = Shape::Table(&JOINT_READING);

static JOINT_FACE_SHAPE: Shape = Shape::Table(&JOINT_FACE);

static JOINT_FACE: Table = Table {
    title: "slope of a joint's face",
    about: "The angle finder on a straight edge laid across the face",
    keys: &[
        must("clock", CLOCK, "From the centre toward this clock mark"),
        must("setup", Shape::Refer(Target::Setup), "In which set-up"),
        must(
            "reads",
            Shape::Quantity(Kind::Angle),
            "What the angle finder says, above level",
        ),
    ],
    kinds: None,
    rules: &[],
};

static JOINT_READING: Table = Table {
    title: "reading at a joint",
    about: "A tape from a mark to the joint",
    keys: &[
        must("from", Shape::Refer(Target::Place), "Mark, point or end"),
        may(
            "rim",
            CLOCK,
            "Clock mark on the joint's rim; its centre when left out",
        ),
        must("reads", Shape::Quantity(Kind::Extent), "What the tape says"),
    ],
    kinds: None,
    rules: &[],
};
