//! `stock.toml`: tubes, items, offers, suppliers, what is on hand, practice.

use super::car::TURN;
use super::shapes::{COUNT, EXTENT, LEGS, LENGTH, MATERIAL, NOTE, SIZE, TURN_ANGLE};
use super::{Key, Kinds, Rule, Shape, Table, Target, Variant, may, must, tables};
use crate::quantity::{Kind, Per};

const TOLERANCE: Shape = Shape::Quantity(Kind::Tolerance);
const MONEY: Shape = Shape::Quantity(Kind::Money);
const TUBE: Shape = Shape::Refer(Target::Tube);
const PLACE_IN_ITEM: Shape = Shape::List {
    of: &LENGTH,
    least: 3,
    most: 3,
};

/// `stock.toml`.
pub(crate) static STOCK: Table = Table {
    title: "stock.toml",
    about: "The shop: tube sizes, items, offers, what is on hand, practice",
    keys: &[
        must(
            "format",
            Shape::Fixed("tubewright-stock/1"),
            "Format of this file",
        ),
        must("currency", Shape::Currency, "Currency of all prices"),
        tables("tube", &Shape::Table(&TUBE_TABLE), 1000),
        tables("item", &Shape::Table(&ITEM), 10_000),
        tables("offer", &Shape::Table(&OFFER), 50_000),
        tables("supplier", &Shape::Table(&SUPPLIER), 1000),
        tables("on-hand", &Shape::Table(&ON_HAND), 10_000),
        may(
            "practice",
            Shape::Table(&PRACTICE),
            "The shop's own figures",
        ),
    ],
    kinds: None,
    rules: &[],
};

static TUBE_TABLE: Table = Table {
    title: "tube",
    about: "A tube size",
    keys: &[
        must("name", Shape::Name(Target::Tube), "Its name"),
        must(
            "od",
            SIZE,
            "Outside diameter; never the bore or the nominal size",
        ),
        must("wall", SIZE, "Wall"),
        must("material", MATERIAL, "Material"),
        may(
            "density",
            Shape::Quantity(Kind::Density),
            "From the material when left out",
        ),
    ],
    kinds: None,
    rules: &[],
};

const ITEM_TUBE: Key = must("tube", TUBE, "Tube size");
const ANGLE: Key = must("angle", TURN_ANGLE, "Angle of the bend");
const CLR: Key = must("clr", SIZE, "Centre-line radius");
const LEGS_KEY: Key = must("legs", LEGS, "Straight legs at the two ends");
const TUBE_LENGTH: Key = must("length", SIZE, "Length");
const BEND: Variant = Variant {
    words: &["bend"],
    keys: &[ITEM_TUBE, ANGLE, CLR, LEGS_KEY],
    rules: &[],
};
const STRAIGHT: Variant = Variant {
    words: &["straight"],
    keys: &[ITEM_TUBE, TUBE_LENGTH],
    rules: &[],
};

static ITEM: Table = Table {
    title: "item",
    about: "Geometry of something that can be bought",
    keys: &[must("name", Shape::Name(Target::Item), "Its name"), NOTE],
    kinds: Some(Kinds {
        key: "kind",
        about: "What it is",
        of: &[
            BEND,
            STRAIGHT,
            Variant {
                words: &[
                    "catalyst",
                    "resonator",
                    "silencer",
                    "flex",
                    "crossover",
                    "merge",
                    "cone",
                    "stretch",
                    "joint",
                    "bung",
                    "tip",
                    "flange",
                    "hanger",
                ],
                keys: &[
                    may("tube", TUBE, "Tube size of its necks"),
                    must("length", SIZE, "Length along the flow, necks included"),
                    may("body", Shape::Table(&SECTION), "Section of its body"),
                    may("neck", EXTENT, "Length of the neck at each end"),
                    may(
                        "necks",
                        LEGS,
                        "Length of the neck at the inlet and at the outlet",
                    ),
                    may("mass", Shape::Quantity(Kind::Mass), "Mass"),
                    may(
                        "ports",
                        Shape::List {
                            of: &Shape::Table(&PORT),
                            least: 1,
                            most: 16,
                        },
                        "Its ports, when it is not straight through",
                    ),
                ],
                rules: &[Rule::NotBoth("neck", "necks")],
            },
            Variant {
                words: &["hand-made crossover"],
                keys: &[
                    ITEM_TUBE,
                    must(
                        "bend",
                        Shape::Refer(Target::Item),
                        "The bend that it is made of, twice",
                    ),
                    must(
                        "leg",
                        EXTENT,
                        "Straight leg that stays on at both ends of each bend",
                    ),
                    must(
                        "taken-off",
                        SIZE,
                        "What the split takes off the back of each bend at its apex",
                    ),
                ],
                rules: &[],
            },
        ],
    }),
    rules: &[],
};

static SECTION: Table = Table {
    title: "body of an item",
    about: "Section of its body square to the flow",
    keys: &[],
    kinds: Some(Kinds {
        key: "shape",
        about: "Shape of the section",
        of: &[
            Variant {
                words: &["round"],
                keys: &[must("diameter", SIZE, "Diameter")],
                rules: &[],
            },
            Variant {
                words: &["oval", "box"],
                keys: &[
                    must("width", SIZE, "Size across"),
                    must("height", SIZE, "Size toward its twelve o'clock"),
                ],
                rules: &[],
            },
        ],
    }),
    rules: &[],
};

static PORT: Table = Table {
    title: "port",
    about: "A side that gas passes by (in and out), or a single port (at and flows)",
    keys: &[
        must("name", Shape::Text, "Name of the port or of the side"),
        may(
            "in",
            PLACE_IN_ITEM,
            "Middle of the side's inlet: along flow, right, up",
        ),
        may("out", PLACE_IN_ITEM, "Middle of the side's outlet"),
        may(
            "toe",
            TOLERANCE,
            "The sides converge by this angle at the inlet and part by it at the outlet",
        ),
        may("at", PLACE_IN_ITEM, "Middle of a single port"),
        may(
            "flows",
            Shape::Choice(&["in", "out"]),
            "Whether gas flows in or out at a single port",
        ),
        may(
            "turn",
            Shape::Table(&TURN),
            "Direction of flow at a single port, turned up then right from along the flow",
        ),
        may(
            "tube",
            TUBE,
            "Size of the neck, when it differs from the item's",
        ),
    ],
    kinds: None,
    rules: &[
        Rule::OneOf(&["in", "at"]),
        Rule::Needs("in", "out"),
        Rule::Needs("out", "in"),
        Rule::Needs("toe", "in"),
        Rule::Needs("at", "flows"),
        Rule::Needs("flows", "at"),
        Rule::Needs("turn", "at"),
    ],
};

static OFFER: Table = Table {
    title: "offer",
    about: "A supplier's price for an item",
    keys: &[
        must("item", Shape::Refer(Target::Item), "The item"),
        must("supplier", Shape::Refer(Target::Supplier), "The supplier"),
        must("price", MONEY, "Price of one, or of one pack"),
        may(
            "breaks",
            Shape::List {
                of: &Shape::Table(&BREAK),
                least: 1,
                most: 20,
            },
            "Lower prices from a number on",
        ),
        may("pack", COUNT, "Sold in packs of this many"),
        may(
            "quantity",
            Shape::Whole {
                least: 0,
                most: 1_000_000,
            },
            "How many they have",
        ),
        may("tax", Shape::Quantity(Kind::Share), "Tax to be added"),
        may("delivery", Shape::Text, "When it comes, in words"),
        may("date", Shape::Date, "Date of the price"),
    ],
    kinds: None,
    rules: &[],
};

static BREAK: Table = Table {
    title: "price break",
    about: "A lower price from a number on",
    keys: &[
        must("from", COUNT, "From this many"),
        must("price", MONEY, "Price of each"),
    ],
    kinds: None,
    rules: &[],
};

static SUPPLIER: Table = Table {
    title: "supplier",
    about: "Who sells it",
    keys: &[
        must("name", Shape::Name(Target::Supplier), "Its name"),
        may("delivery-charge", MONEY, "Added once per order"),
        NOTE,
    ],
    kinds: None,
    rules: &[],
};

static ON_HAND: Table = Table {
    title: "thing on hand",
    about: "What lies in the shop, as measured",
    keys: &[
        must("name", Shape::Name(Target::OnHand), "Its name"),
        may("count", COUNT, "How many; 1 when left out"),
        NOTE,
    ],
    kinds: Some(Kinds {
        key: "kind",
        about: "What it is",
        of: &[
            BEND,
            STRAIGHT,
            Variant {
                words: &["item"],
                keys: &[must(
                    "item",
                    Shape::Refer(Target::Item),
                    "A whole item of the catalogue",
                )],
                rules: &[],
            },
        ],
    }),
    rules: &[],
};

const fn rate(per: Per, per_in_key: bool) -> Shape {
    Shape::Quantity(Kind::Rate { per, per_in_key })
}

static PRACTICE: Table = Table {
    title: "practice",
    about: "The shop's own figures; what is left out is common practice",
    keys: &[
        may("rate", rate(Per::Hour, false), "Price of an hour"),
        may(
            "weld-time",
            Shape::Quantity(Kind::Duration),
            "Time for one weld, fit-up included",
        ),
        may(
            "cut-time",
            Shape::Quantity(Kind::Duration),
            "Time for one cut",
        ),
        may("kerf", EXTENT, "Width of the saw cut"),
        may("length-step", SIZE, "Lengths are rounded to this"),
        may("bend-step", TURN_ANGLE, "Bend angles are rounded to this"),
        may("clock-step", TURN_ANGLE, "Clock angles are rounded to this"),
        may(
            "least-straight",
            EXTENT,
            "Shortest straight between two bends",
        ),
        may("least-bend", TOLERANCE, "Smallest bend worth making"),
        may("least-grip", EXTENT, "Shortest piece that the saw can hold"),
        may("saw-capacity", SIZE, "Largest section that the saw takes"),
        may("cut-length", EXTENT, "± of a cut length, 19 in 20"),
        may("cut-angle", TOLERANCE, "± of a cut angle"),
        may("clock", TOLERANCE, "± of a clock mark"),
        may("bend-true", TOLERANCE, "± of a bend's true angle"),
        may("weld-pull", EXTENT, "Shrink per weld, added to cut lengths"),
        may(
            "flow-per-degree",
            rate(Per::Degree, true),
            "Worth of flow lost per degree of bend",
        ),
        may(
            "flow-per-metre",
            rate(Per::Metre, true),
            "Worth of flow lost per metre",
        ),
        may(
            "ground-loss",
            rate(Per::Millimetre, false),
            "Worth of ground clearance lost below 150 mm",
        ),
        may(
            "spares",
            Shape::Whole {
                least: 0,
                most: 1000,
            },
            "Spare bends on the buying list beside the plan; none unless a number is written",
        ),
    ],
    kinds: None,
    rules: &[],
};
