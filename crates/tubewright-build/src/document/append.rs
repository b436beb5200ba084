//! The record is only ever added to.

use super::dress::usual_end;
use super::edit::{EditError, parse};
use super::written::Written;
use crate::model::{
    CutOf, CutPlace, Entry, EntryKind, FrozenPiece, FrozenShape, FrozenStart, JointFace,
    JointReading, Name,
};
use crate::quantity::{Clock, Quantity, write_deg};
use crate::read::is_date;
use crate::span::FileKind;
use thiserror::Error;
use tubewright_geometry::{Length, UnitVector};

/// Why an entry was not added; the record is as it was.
#[derive(Clone, Debug, Error, PartialEq, Eq)]
#[non_exhaustive]
pub enum AppendError {
    /// The record cannot be read.
    #[error(transparent)]
    NotReadable(#[from] EditError),
    /// The date is none.
    #[error("`{on}` is no date; write it like 2026-03-02")]
    Date {
        /// What was given.
        on: String,
    },
}

/// The record with one entry more: every byte of `record` stays, the entry follows. A record that
/// is not there yet (`None`) is begun.
///
/// # Errors
/// An [`AppendError`] when the record cannot be read or the date is none.
pub fn append_entry(record: Option<&str>, entry: &Entry) -> Result<String, AppendError> {
    if !is_date(&entry.on) {
        return Err(AppendError::Date {
            on: entry.on.clone(),
        });
    }
    let mut text = record.map_or_else(
        || "format = \"tubewright-shop/1\"\n".to_owned(),
        str::to_owned,
    );
    parse(FileKind::Shop, &text)?;
    let mut added = String::new();
    if !text.is_empty() && !text.ends_with('\n') {
        added.push('\n');
    }
    added.push_str("\n[[entry]]\n");
    for (key, value) in fields(entry) {
        push_field(&mut added, key, &value);
    }
    text.push_str(&added.replace('\n', usual_end(&text)));
    // A record whose lists are written on one line (`entry = [ … ]`) cannot take a header.
    parse(FileKind::Shop, &text)?;
    Ok(text)
}

/// Lists of tables stand one to a line, as a person would write them.
fn push_field(text: &mut String, key: &str, value: &Written) {
    match value {
        Written::List(items) if matches!(items.first(), Some(Written::Table(_))) => {
            text.push_str(key);
            text.push_str(" = [\n");
            for item in items {
                text.push_str("  ");
                text.push_str(item.to_value().to_string().trim());
                text.push_str(",\n");
            }
            text.push_str("]\n");
        }
        _ => {
            text.push_str(key);
            text.push_str(" = ");
            text.push_str(value.to_value().to_string().trim());
            text.push('\n');
        }
    }
}

type Fields = Vec<(&'static str, Written)>;

fn fields(entry: &Entry) -> Fields {
    let mut fields: Fields = vec![("on", Written::text(&entry.on))];
    let mut add = |key: &'static str, value: Written| fields.push((key, value));
    let name = |name: &Name| Written::text(name.as_str());
    let count = |count: u32| Written::Whole(i64::from(count));
    match &entry.what {
        EntryKind::Chosen {
            route,
            effort,
            seed,
            starts,
            pieces,
        } => {
            add("what", Written::text("chosen"));
            add("route", Written::text(route));
            for (key, number) in [("effort", effort), ("seed", seed)] {
                if let Some(number) = number.and_then(|number| i64::try_from(number).ok()) {
                    add(key, Written::Whole(number));
                }
            }
            if !starts.is_empty() {
                add("starts", Written::List(starts.iter().map(start).collect()));
            }
            add("pieces", Written::List(pieces.iter().map(piece).collect()));
        }
        EntryKind::Got {
            item,
            supplier,
            count: number,
        } => {
            add("what", Written::text("got"));
            add("item", name(item));
            if let Some(supplier) = supplier {
                add("supplier", name(supplier));
            }
            add("count", count(*number));
        }
        EntryKind::Out { item, supplier } => {
            add("what", Written::text("out"));
            add("item", name(item));
            if let Some(supplier) = supplier {
                add("supplier", name(supplier));
            }
        }
        EntryKind::OtherSize {
            item,
            taken,
            supplier,
            count: number,
        } => {
            add("what", Written::text("other-size"));
            add("item", name(item));
            add("taken", name(taken));
            if let Some(supplier) = supplier {
                add("supplier", name(supplier));
            }
            add("count", count(*number));
        }
        EntryKind::Spare {
            item,
            count: number,
        } => {
            add("what", Written::text("spare"));
            add("item", name(item));
            add("count", count(*number));
        }
        EntryKind::Cut { piece, from, of } => {
            add("what", Written::text("cut"));
            add("piece", Written::text(piece));
            add("from", name(from));
            if let Some(of) = of {
                add("of", cut_of(of));
            }
        }
        EntryKind::Spoiled { piece } => {
            add("what", Written::text("spoiled"));
            add("piece", Written::text(piece));
        }
        EntryKind::Tacked {
            joint,
            readings,
            faces,
        }
        | EntryKind::Checked {
            joint,
            readings,
            faces,
        } => {
            let is_tacked = matches!(entry.what, EntryKind::Tacked { .. });
            add(
                "what",
                Written::text(if is_tacked { "tacked" } else { "checked" }),
            );
            add("joint", Written::text(joint));
            if !readings.is_empty() {
                let readings = readings.iter().map(joint_reading).collect();
                add("readings", Written::List(readings));
            }
            if !faces.is_empty() {
                add(
                    "faces",
                    Written::List(faces.iter().map(joint_face).collect()),
                );
            }
        }
        EntryKind::Welded { joint } => {
            add("what", Written::text("welded"));
            add("joint", Written::text(joint));
        }
        EntryKind::Accepted {
            route,
            starts,
            pieces,
        } => {
            add("what", Written::text("accepted"));
            add("route", Written::text(route));
            if !starts.is_empty() {
                add("starts", Written::List(starts.iter().map(start).collect()));
            }
            add("pieces", Written::List(pieces.iter().map(piece).collect()));
        }
    }
    if let Some(note) = &entry.note {
        add("note", Written::text(note));
    }
    fields
}

fn cut_of(of: &CutOf) -> Written {
    let mut fields = vec![field("number", Written::Whole(i64::from(of.number)))];
    let stretch = |kind: &str, at: &Quantity<Length>, length: &Quantity<Length>| {
        vec![
            field("kind", Written::text(kind)),
            field("at", Written::text(&at.text)),
            field("length", Written::text(&length.text)),
        ]
    };
    fields.extend(match &of.place {
        CutPlace::Straight { at, length } => stretch("straight", at, length),
        CutPlace::LegA { at, length } => stretch("leg-a", at, length),
        CutPlace::LegB { at, length } => stretch("leg-b", at, length),
        CutPlace::Bend {
            at,
            angle,
            legs: kept,
        } => vec![
            field("kind", Written::text("bend")),
            field("from", Written::text(&at.text)),
            field("angle", Written::text(&angle.text)),
            field("legs", legs(kept)),
        ],
    });
    let gives = of.gives.iter().map(|gives| {
        let mut fields = vec![field("piece", Written::text(&gives.piece))];
        fields.extend(
            gives
                .length
                .as_ref()
                .map(|length| field("length", Written::text(&length.text))),
        );
        Written::Table(fields)
    });
    fields.push(field("gives", Written::List(gives.collect())));
    Written::Table(fields)
}

fn field(key: &str, value: Written) -> (String, Written) {
    (key.to_owned(), value)
}

fn direction(direction: UnitVector) -> Written {
    numbers(direction.to_array())
}

fn numbers(numbers: [f64; 3]) -> Written {
    Written::List(numbers.map(Written::Number).to_vec())
}

fn start(start: &FrozenStart) -> Written {
    let mut fields = vec![
        field("run", Written::text(start.run.as_str())),
        field("at", numbers(start.frame.origin.to_array())),
        field("travel", direction(start.frame.travel())),
        field("twelve", direction(start.frame.twelve())),
    ];
    if let Some(tube) = &start.tube {
        fields.push(field("tube", Written::text(tube.as_str())));
    }
    if let Some(joint) = &start.joint {
        fields.push(field("joint", Written::text(joint)));
    }
    Written::Table(fields)
}

fn legs(legs: &[Quantity<Length>; 2]) -> Written {
    Written::texts(legs.iter().map(|leg| leg.text.as_str()))
}

fn piece(piece: &FrozenPiece) -> Written {
    let mut fields = vec![
        field("run", Written::text(piece.run.as_str())),
        field("mark", Written::text(&piece.mark)),
    ];
    if let Some(joint) = &piece.joint {
        fields.push(field("joint", Written::text(joint)));
    }
    match &piece.shape {
        FrozenShape::Straight { length } => {
            fields.push(field("kind", Written::text("straight")));
            fields.push(field("length", Written::text(&length.text)));
        }
        FrozenShape::Bend {
            angle,
            clock,
            clr,
            legs: both,
        } => {
            fields.push(field("kind", Written::text("bend")));
            fields.push(field("angle", Written::text(&angle.text)));
            fields.push(field("clock", Written::text(&clock.text)));
            fields.push(field("clr", Written::text(&clr.text)));
            if both.iter().any(|leg| leg.mm() != 0.0) {
                fields.push(field("legs", legs(both)));
            }
        }
        FrozenShape::Component {
            component,
            roll,
            length,
            at,
            turned,
        } => {
            fields.push(field("kind", Written::text("component")));
            fields.push(field("component", Written::text(component.as_str())));
            if let Some(roll) = roll {
                fields.push(field("roll", Written::text(&roll.text)));
            }
            if let Some(length) = length {
                fields.push(field("length", Written::text(&length.text)));
            }
            if let Some(at) = at {
                fields.push(field("at", numbers(at.to_array())));
            }
            if let Some(turned) = turned {
                let [right, up, roll] = turned.each_ref().map(|angle| Written::text(&angle.text));
                let angles = vec![field("right", right), field("up", up), field("roll", roll)];
                fields.push(field("turned", Written::Table(angles)));
            }
        }
    }
    Written::Table(fields)
}

fn joint_face(face: &JointFace) -> Written {
    Written::Table(vec![
        field("clock", Written::text(&face.clock.text)),
        field("setup", Written::text(face.setup.as_str())),
        field("reads", Written::text(&face.reads.text)),
    ])
}

fn joint_reading(reading: &JointReading) -> Written {
    let mut fields = vec![field(
        "from",
        Written::text(reading.from.at.name().as_str()),
    )];
    if let Some(rim) = reading.rim {
        fields.push(field("rim", Written::text(clock_text(rim))));
    }
    fields.push(field("reads", Written::text(&reading.reads.text)));
    Written::Table(fields)
}

/// `4:30` where the clock has such a mark, else an angle.
fn clock_text(clock: Clock) -> String {
    let half_degrees = clock.angle().deg() * 2.0;
    let whole = half_degrees.round();
    if (half_degrees - whole).abs() < 1e-9 && (0.0..720.0).contains(&whole) {
        #[expect(
            clippy::cast_possible_truncation,
            clippy::cast_sign_loss,
            reason = "checked to be a whole number from 0 to 719"
        )]
        let minutes = whole as u32;
        let hours = match minutes / 60 {
            0 => 12,
            hours => hours,
        };
        return format!("{hours}:{:02}", minutes % 60);
    }
    write_deg(clock.angle(), 6)
}
