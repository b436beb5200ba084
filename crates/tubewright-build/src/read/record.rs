use super::row::Row;
use crate::model::{
    CutGives, CutOf, CutPlace, Entry, EntryKind, FrozenPiece, FrozenShape, FrozenStart, JointFace,
    JointReading,
};
use crate::quantity::Quantity;
use tubewright_geometry::{Angle, Frame, Length, Point, Vector};

pub(crate) fn entry(row: &Row<'_>) -> Option<Entry> {
    Some(Entry {
        on: row.text("on")?,
        what: entry_kind(row)?,
        note: row.text("note"),
        span: row.span(),
    })
}

fn entry_kind(row: &Row<'_>) -> Option<EntryKind> {
    let supplier = || row.name("supplier");
    Some(match row.word("what")? {
        "chosen" => EntryKind::Chosen {
            route: row.text("route")?,
            effort: row.whole("effort"),
            seed: row.whole("seed"),
            starts: all(row, "starts", start)?,
            pieces: all(row, "pieces", piece)?,
        },
        "got" => EntryKind::Got {
            item: row.name("item")?,
            supplier: supplier(),
            count: row.whole("count")?,
        },
        "out" => EntryKind::Out {
            item: row.name("item")?,
            supplier: supplier(),
        },
        "other-size" => EntryKind::OtherSize {
            item: row.name("item")?,
            taken: row.name("taken")?,
            supplier: supplier(),
            count: row.whole("count")?,
        },
        "spare" => EntryKind::Spare {
            item: row.name("item")?,
            count: row.whole("count")?,
        },
        "cut" => EntryKind::Cut {
            piece: row.text("piece")?,
            from: row.name("from")?,
            of: match row.table("of") {
                None => None,
                Some(of) => Some(cut_of(&of)?),
            },
        },
        "spoiled" => EntryKind::Spoiled {
            piece: row.text("piece")?,
        },
        "tacked" => EntryKind::Tacked {
            joint: row.text("joint")?,
            readings: all(row, "readings", joint_reading)?,
            faces: all(row, "faces", joint_face)?,
        },
        "welded" => EntryKind::Welded {
            joint: row.text("joint")?,
        },
        "checked" => EntryKind::Checked {
            joint: row.text("joint")?,
            readings: all(row, "readings", joint_reading)?,
            faces: all(row, "faces", joint_face)?,
        },
        "accepted" => EntryKind::Accepted {
            route: row.text("route")?,
            starts: all(row, "starts", start)?,
            pieces: all(row, "pieces", piece)?,
        },
        _ => return None,
    })
}

fn cut_of(row: &Row<'_>) -> Option<CutOf> {
    let (at, length) = (|| row.length("at"), || row.length("length"));
    Some(CutOf {
        number: row.whole("number")?,
        gives: all(row, "gives", cut_gives)?,
        place: match row.word("kind")? {
            "straight" => CutPlace::Straight {
                at: at()?,
                length: length()?,
            },
            "leg-a" => CutPlace::LegA {
                at: at()?,
                length: length()?,
            },
            "leg-b" => CutPlace::LegB {
                at: at()?,
                length: length()?,
            },
            "bend" => CutPlace::Bend {
                at: row.angle("from")?,
                angle: row.angle("angle")?,
                legs: row.lengths("legs")?,
            },
            _ => return None,
        },
    })
}

fn cut_gives(row: &Row<'_>) -> Option<CutGives> {
    Some(CutGives {
        piece: row.text("piece")?,
        length: row.length("length"),
    })
}

fn all<T>(row: &Row<'_>, key: &str, lower: fn(&Row<'_>) -> Option<T>) -> Option<Vec<T>> {
    row.tables(key).iter().map(lower).collect()
}

/// The frame written at a start; `None` when its two directions do not make a right angle.
pub(crate) fn start_frame(row: &Row<'_>) -> Option<Frame> {
    let [x, y, z] = row.numbers("at")?;
    let direction = |key: &str| {
        let [x, y, z] = row.numbers(key)?;
        Vector { x, y, z }.direction()
    };
    let (travel, twelve) = (direction("travel")?, direction("twelve")?);
    // Directions are written with a handful of digits; a degree and more is no rounding.
    (travel.dot(twelve.vector()).abs() < 0.02)
        .then(|| Frame::new(Point { x, y, z }, travel, twelve.vector()))
        .flatten()
}

fn start(row: &Row<'_>) -> Option<FrozenStart> {
    Some(FrozenStart {
        run: row.name("run")?,
        frame: start_frame(row)?,
        tube: row.name("tube"),
        joint: row.text("joint"),
    })
}

fn piece(row: &Row<'_>) -> Option<FrozenPiece> {
    let none = || Quantity::new(Length::ZERO, "0 mm");
    let shape = match row.word("kind")? {
        "straight" => FrozenShape::Straight {
            length: row.length("length")?,
        },
        "bend" => FrozenShape::Bend {
            angle: row.angle("angle")?,
            clock: row.clock("clock")?,
            clr: row.length("clr")?,
            legs: row.lengths("legs").unwrap_or_else(|| [none(), none()]),
        },
        "component" => FrozenShape::Component {
            component: row.name("component")?,
            roll: row.clock("roll"),
            length: row.length("length"),
            at: row.numbers("at").map(Point::from_array),
            turned: row.table("turned").map(|turned| {
                let not = || Quantity::new(Angle::ZERO, "0 deg");
                let angle = |key| turned.angle(key).unwrap_or_else(not);
                Box::new([angle("right"), angle("up"), angle("roll")])
            }),
        },
        _ => return None,
    };
    Some(FrozenPiece {
        run: row.name("run")?,
        mark: row.text("mark")?,
        joint: row.text("joint"),
        shape,
    })
}

fn joint_face(row: &Row<'_>) -> Option<JointFace> {
    Some(JointFace {
        clock: row.clock("clock")?,
        setup: row.name("setup")?,
        reads: row.angle("reads")?,
    })
}

fn joint_reading(row: &Row<'_>) -> Option<JointReading> {
    Some(JointReading {
        from: row.place("from")?,
        rim: row.clock("rim").map(|clock| clock.value),
        reads: row.length("reads")?,
    })
}
