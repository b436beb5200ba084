//! What is in the way, by the shapes that a tape gives.

use super::shapes::{
    CARRIED_BY, CORNERS, DIRECTION, EXTENT, LENGTH, NOTE, PLACE, SETUP, SIZE, THREE_NUMBERS,
};
use super::{Key, Kinds, Rule, Shape, Table, Target, Variant, may, must};
use crate::quantity::Kind;

const DIAMETER: Key = must("diameter", SIZE, "Its diameter");
const BODY_FROM: Key = must("from", PLACE, "One end");
const BODY_TO: Key = must("to", PLACE, "The other end");

pub(super) static BODY: Table = Table {
    title: "body",
    about: "Something a run must keep clear of",
    keys: &[
        must("name", Shape::Name(Target::Body), "Its name"),
        must(
            "class",
            Shape::Choice(&[
                "structure",
                "floor",
                "driveline",
                "moving",
                "tyre",
                "soft",
                "soft-shielded",
                "fuel-brake",
                "heat",
                "ground",
                "bonnet",
                "service",
            ]),
            "What it minds; decides the gap",
        ),
        CARRIED_BY,
        may("gap", EXTENT, "Its own gap"),
        may(
            "never-pass",
            Shape::List {
                of: &Shape::Choice(&["above", "below", "left", "right", "front", "rear"]),
                least: 0,
                most: 6,
            },
            "Sides of it on which no run may pass; for a floor that says nothing, above",
        ),
        may(
            "no-tip",
            EXTENT,
            "No tip may lie under or over it, nor nearer than this to its outline from above",
        ),
        NOTE,
    ],
    kinds: Some(Kinds {
        key: "kind",
        about: "Its shape, from what a tape gives",
        of: &BODY_KINDS,
    }),
    rules: &[],
};

static BODY_KINDS: [Variant; 11] = [
    Variant {
        words: &["rail"],
        keys: &[
            must("from", PLACE, "One end of the edge"),
            must("to", PLACE, "Other end of the edge"),
            must(
                "edge",
                Shape::Choice(&["lower outer", "lower inner", "upper outer", "upper inner"]),
                "Which of its edges the places lie on",
            ),
            must("width", SIZE, "Size across the car"),
            must("height", SIZE, "Size upwards"),
        ],
        rules: &[],
    },
    Variant {
        words: &["tube"],
        keys: &[
            must("from", PLACE, "One place on its surface"),
            must("to", PLACE, "Another place on its surface"),
            must(
                "touched",
                Shape::Choice(&["below", "above", "left", "right", "front", "rear"]),
                "Side of the tube on which the places lie",
            ),
            may("girth", SIZE, "Tape round it"),
            may("diameter", SIZE, "Or its diameter"),
        ],
        rules: &[Rule::OneOf(&["girth", "diameter"])],
    },
    Variant {
        words: &["tyre"],
        keys: &[
            must("hub", PLACE, "A place on the wheel's axis"),
            must("marking", Shape::Quantity(Kind::Tyre), "As on its wall"),
            must("side", Shape::Choice(&["left", "right"]), "Side of the car"),
            must(
                "inboard",
                LENGTH,
                "From the hub place inwards to the middle of the tyre",
            ),
            may("bulge", EXTENT, "Growth of the wall, each side"),
        ],
        rules: &[],
    },
    Variant {
        words: &["tank"],
        keys: &[
            must("corners", CORNERS, "Corners of its bottom or top, in order"),
            must("depth", SIZE, "Its depth"),
            must(
                "depth-goes",
                Shape::Choice(&["up", "down"]),
                "Where the depth goes from the corners",
            ),
        ],
        rules: &[],
    },
    Variant {
        words: &["box"],
        keys: &[
            must("corner", PLACE, "One corner"),
            must("opposite", PLACE, "The corner opposite"),
        ],
        rules: &[],
    },
    Variant {
        words: &["capsule", "cylinder"],
        keys: &[BODY_FROM, BODY_TO, DIAMETER],
        rules: &[],
    },
    Variant {
        words: &["sphere"],
        keys: &[must("at", PLACE, "Its centre"), DIAMETER],
        rules: &[],
    },
    Variant {
        words: &["outline"],
        keys: &[
            must("corners", CORNERS, "Its corners, in order"),
            must("depth", SIZE, "Its depth"),
            must(
                "depth-goes",
                DIRECTION,
                "Where the depth goes from the corners",
            ),
        ],
        rules: &[],
    },
    Variant {
        words: &["half-space"],
        keys: &[
            must(
                "through",
                Shape::List {
                    of: &PLACE,
                    least: 3,
                    most: 3,
                },
                "Three places in its plane",
            ),
            must(
                "keep-out",
                Shape::Choice(&["above", "below", "left", "right", "front", "rear"]),
                "The side of the plane that is taken",
            ),
        ],
        rules: &[],
    },
    Variant {
        words: &["ground"],
        keys: &[must("setup", SETUP, "The set-up on its wheels")],
        rules: &[],
    },
    Variant {
        words: &["scan"],
        keys: &[
            must("file", Shape::Path, "The scan, inside this folder"),
            must(
                "unit",
                Shape::Quantity(Kind::FileUnit),
                "What one unit of the file is",
            ),
            must("noise", EXTENT, "Noise allowance, 19 in 20"),
            may("fit-scale", Shape::Yes, "Also adjust the scale"),
            must(
                "places",
                Shape::List {
                    of: &SCAN_PLACE_SHAPE,
                    least: 4,
                    most: 200,
                },
                "Marks seen in the scan",
            ),
        ],
        rules: &[],
    },
];

static SCAN_PLACE_SHAPE: Shape = Shape::Table(&SCAN_PLACE);

static SCAN_PLACE: Table = Table {
    title: "place in a scan",
    about: "A mark seen in the scan",
    keys: &[
        must("mark", PLACE, "The mark"),
        must(
            "at",
            THREE_NUMBERS,
            "Where it is in the file, in the file's own units",
        ),
    ],
    kinds: None,
    rules: &[],
};
