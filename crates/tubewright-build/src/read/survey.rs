use super::row::Row;
use crate::model::{
    Accuracy, Along, CarrierRef, CentreLinePair, Doubt, Face, FrameChoice, HoleEdge, HookedHole,
    Mark, MeasuredPoint, Place, PlusMinus, Reading, ReadingKind, Setup, Side, Stance, TapeEnd,
    TubeSide,
};

const SIDES: [(&str, Side); 3] = [
    ("left", Side::Left),
    ("right", Side::Right),
    ("centre", Side::Centre),
];
const TAPE_ENDS: [(&str, TapeEnd); 2] = [("from", TapeEnd::From), ("to", TapeEnd::To)];

pub(crate) fn carrier_or_chassis(row: &Row<'_>) -> CarrierRef {
    row.carrier("carrier").unwrap_or_default()
}

pub(crate) fn frame(row: &Row<'_>) -> Option<FrameChoice> {
    Some(FrameChoice {
        origin: row.place("origin")?,
        centre_line: row
            .place_pairs("centre-line")?
            .into_iter()
            .map(|[left, right]| CentreLinePair { left, right })
            .collect(),
        level: row.name("level")?,
        span: row.span(),
    })
}

pub(crate) fn mark(row: &Row<'_>) -> Option<Mark> {
    Some(Mark {
        name: row.name("name")?,
        place: row.text("place"),
        side: row.choice("side", &SIDES),
        carrier: carrier_or_chassis(row),
        span: row.span(),
    })
}

pub(crate) fn point(row: &Row<'_>) -> Option<MeasuredPoint> {
    Some(MeasuredPoint {
        name: row.name("name")?,
        place: row.text("place"),
        side: row.choice("side", &SIDES),
        carrier: carrier_or_chassis(row),
        span: row.span(),
    })
}

pub(crate) fn setup(row: &Row<'_>) -> Option<Setup> {
    let stances = [
        ("wheels", Stance::Wheels),
        ("lift", Stance::Lift),
        ("stands", Stance::Stands),
    ];
    Some(Setup {
        name: row.name("name")?,
        stance: row.choice("stance", &stances)?,
        note: row.text("note"),
        span: row.span(),
    })
}

pub(crate) fn accuracy(row: &Row<'_>) -> Accuracy {
    Accuracy {
        tape: row.length("tape"),
        height: row.length("height"),
        plumb: row.length("plumb"),
        offset: row.length("offset"),
        symmetry: row.length("symmetry"),
        angle: row.angle("angle"),
        rim: row.length("rim"),
    }
}

pub(crate) fn reading(row: &Row<'_>) -> Option<Reading> {
    let kind = reading_kind(row)?;
    let plus_minus = match kind {
        ReadingKind::Inclination { .. }
        | ReadingKind::Bearing { .. }
        | ReadingKind::Face { .. } => row.angle("plus-minus").map(PlusMinus::Angle),
        _ => row.length("plus-minus").map(PlusMinus::Length),
    };
    Some(Reading {
        number: row.whole("number")?,
        kind,
        plus_minus,
        note: row.text("note"),
        doubt: row.choice("doubt", &[("dropped", Doubt::Dropped)]),
        span: row.span(),
    })
}

fn from(row: &Row<'_>) -> Option<Place> {
    row.place_on("from", "from-rim", "from-bolt")
}

fn to(row: &Row<'_>) -> Option<Place> {
    row.place_on("to", "rim", "bolt")
}

fn reading_kind(row: &Row<'_>) -> Option<ReadingKind> {
    Some(match row.word("kind")? {
        "tape" => ReadingKind::Tape {
            from: from(row)?,
            to: to(row)?,
            reads: row.length("reads")?,
            burnt: row.length("burnt"),
            holes: row.tables("hole").iter().filter_map(hole).collect(),
            sides: row.tables("side").iter().filter_map(side).collect(),
        },
        "height" => ReadingKind::Height {
            of: row.place_on("of", "rim", "bolt")?,
            setup: row.name("setup")?,
            reads: row.length("reads")?,
        },
        "plumb" => ReadingKind::Plumb {
            from: from(row)?,
            to: to(row)?,
            setup: row.name("setup")?,
            reads: row.length("reads")?,
        },
        "offset" => ReadingKind::Offset {
            from: from(row)?,
            to: to(row)?,
            along: match row.places("along") {
                Some(line) => Along::Line(line),
                None => Along::Plumb {
                    setup: row.name("setup")?,
                },
            },
            reads: row.length("reads")?,
        },
        "symmetry" => ReadingKind::Symmetry {
            left: row.place("left")?,
            right: row.place("right")?,
        },
        "inclination" => ReadingKind::Inclination {
            from: from(row)?,
            to: to(row)?,
            setup: row.name("setup")?,
            reads: row.angle("reads")?,
        },
        "bearing" => ReadingKind::Bearing {
            from: from(row)?,
            to: to(row)?,
            base: row.places("base")?,
            setup: row.name("setup")?,
            reads: row.angle("reads")?,
        },
        "face" => ReadingKind::Face {
            end: row.name("end")?,
            clock: row.clock("clock")?,
            setup: row.name("setup")?,
            reads: row.angle("reads")?,
        },
        _ => return None,
    })
}

fn hole(row: &Row<'_>) -> Option<HookedHole> {
    Some(HookedHole {
        at: row.choice("at", &TAPE_ENDS)?,
        diameter: row.length("diameter")?,
        edge: row.choice("edge", &[("near", HoleEdge::Near), ("far", HoleEdge::Far)])?,
    })
}

fn side(row: &Row<'_>) -> Option<TubeSide> {
    let faces = [
        ("near", Face::Near),
        ("far", Face::Far),
        ("outer", Face::Outer),
        ("inner", Face::Inner),
    ];
    Some(TubeSide {
        at: row.choice("at", &TAPE_ENDS)?,
        of: row.length("of")?,
        face: row.choice("face", &faces)?,
    })
}
