//! What is measured: axes, marks, points, set-ups, readings.

use super::shapes::{
    ANGLE, BOLT, CARRIED_BY, CLOCK, EXTENT, IN_WORDS, LENGTH, NOTE, PAIR_OF_PLACES, PLACE, SETUP,
    SIDES, SIZE, TURN_ANGLE,
};
use super::{Key, Kinds, Rule, Shape, Table, Target, Variant, may, must};

pub(super) static FRAME: Table = Table {
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
        must(
            "level",
            SETUP,
            "The set-up whose floor is level: z is square to it",
        ),
    ],
    kinds: None,
    rules: &[],
};

/// A place with a name: marks and points differ in what they are for, not in what is said of them.
macro_rules! place {
    ($title:literal, $about:literal, $target:expr) => {
        Table {
            title: $title,
            about: $about,
            keys: &[
                must("name", Shape::Name($target), "Its name"),
                IN_WORDS,
                may("side", SIDES, "Tells the mirror twin only"),
                CARRIED_BY,
            ],
            kinds: None,
            rules: &[],
        }
    };
}

pub(super) static MARK: Table = place!(
    "mark",
    "Scribed or painted on the car to measure from",
    Target::Mark
);

pub(super) static POINT: Table = place!(
    "point",
    "A place on something, found by the adjustment",
    Target::Point
);

pub(super) static SETUP_TABLE: Table = Table {
    title: "setup",
    about: "How the car stands while it is measured",
    keys: &[
        must("name", Shape::Name(Target::Setup), "Its name"),
        must(
            "stance",
            Shape::Choice(&["wheels", "lift", "stands"]),
            "What the car stands on; only wheels gives ground clearance",
        ),
        NOTE,
    ],
    kinds: None,
    rules: &[],
};

pub(super) static ACCURACY: Table = Table {
    title: "accuracy",
    about: "± of the kinds of reading, 19 in 20; what is left out is common practice",
    keys: &[
        may("tape", SIZE, "Tape"),
        may("height", SIZE, "Height over the floor"),
        may("plumb", SIZE, "Plumb-bob points on the floor"),
        may("offset", SIZE, "Offset along a direction"),
        may("symmetry", SIZE, "Symmetry of the car"),
        may("angle", TURN_ANGLE, "Inclination, bearing and face"),
        may(
            "rim",
            SIZE,
            "Tape to the rim or a bolt hole of an end, in place of `tape`",
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
const PLUS_MINUS_ANGLE: Key = may("plus-minus", TURN_ANGLE, "Its own ±, 19 in 20");
const ONE_PLACE: [Rule; 2] = [
    Rule::NotBoth("from-rim", "from-bolt"),
    Rule::NotBoth("rim", "bolt"),
];

/// The keys of a reading between two places, and the further ones of its kind.
macro_rules! between {
    ($($further:expr),* $(,)?) => {
        &[FROM, FROM_RIM, FROM_BOLT, TO, RIM, BOLT_KEY, $($further),*]
    };
}

pub(super) static READING: Table = Table {
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
        NOTE,
        may("doubt", Shape::Choice(&["dropped"]), "Kept, but not used"),
    ],
    kinds: Some(Kinds {
        key: "kind",
        about: "What was measured",
        of: &[
            Variant {
                words: &["tape"],
                keys: between![
                    READS,
                    PLUS_MINUS,
                    may("burnt", EXTENT, "The tape started at this graduation"),
                    may("hole", Shape::OneOrMore(&HOLE, 2), "Hook in a hole's edge"),
                    may("side", Shape::OneOrMore(&SIDE, 2), "Face of a tube or rail")
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
                keys: between![IN_SETUP, READS, PLUS_MINUS],
                rules: &ONE_PLACE,
            },
            Variant {
                words: &["offset"],
                keys: between![
                    must(
                        "along",
                        Shape::TextOrList(&Shape::Choice(&["plumb"]), &PAIR_OF_PLACES),
                        "Two places that give the direction, or \"plumb\"",
                    ),
                    may("setup", SETUP, "How the car stood, for \"plumb\""),
                    READS_SIGNED,
                    PLUS_MINUS
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
                keys: between![IN_SETUP, READS_ANGLE, PLUS_MINUS_ANGLE],
                rules: &ONE_PLACE,
            },
            Variant {
                words: &["bearing"],
                keys: between![
                    must("base", PAIR_OF_PLACES, "Start and end of the base line"),
                    IN_SETUP,
                    READS_ANGLE,
                    PLUS_MINUS_ANGLE
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
