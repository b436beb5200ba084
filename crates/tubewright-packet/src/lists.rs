//! Every list of the packet for other programs: the same words and figures as on paper.

use crate::packet::{Block, Body, Packet};
use crate::table::Tone;
use serde_json::{Map, Value};

/// A list: the tables of one name on all sheets, one below the other.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct List {
    /// Its name ("cuts"), good as a file name.
    pub name: &'static str,
    /// Heads of its columns; the first is `sheet`, the second `group`.
    pub heads: Vec<String>,
    /// Rows of as many cells.
    pub rows: Vec<Vec<String>>,
}

/// The lists of a packet in the order in which they first appear. Tables of one name with other
/// columns (a bend has three marks where a bar has one) add the columns that are new; boxes to tick
/// are left out.
#[must_use]
pub fn lists_of(packet: &Packet) -> Vec<List> {
    let mut lists: Vec<List> = Vec::new();
    for sheet in &packet.sheets {
        let Body::Made { blocks } = &sheet.body else {
            continue;
        };
        for block in blocks {
            let Block::Table { table } = block else {
                continue;
            };
            if table.name.is_empty() {
                continue;
            }
            let at = lists.iter().position(|list| list.name == table.name);
            let at = at.unwrap_or_else(|| {
                lists.push(List {
                    name: table.name,
                    heads: vec!["sheet".to_owned(), "group".to_owned()],
                    rows: Vec::new(),
                });
                lists.len() - 1
            });
            let Some(list) = lists.get_mut(at) else {
                continue;
            };
            let places: Vec<Option<usize>> = table
                .columns
                .iter()
                .map(|column| {
                    (!column.is_to_fill).then(|| {
                        let found = list.heads.iter().position(|head| *head == column.head);
                        found.unwrap_or_else(|| {
                            list.heads.push(column.head.clone());
                            list.heads.len() - 1
                        })
                    })
                })
                .collect();
            let mut group = String::new();
            for row in &table.rows {
                if row.tone == Tone::Group {
                    group = row.cells.first().cloned().unwrap_or_default();
                    continue;
                }
                if row.tone == Tone::Note {
                    continue;
                }
                let mut cells = vec![String::new(); list.heads.len()];
                for (slot, words) in [(0, &sheet.title), (1, &group)] {
                    if let Some(cell) = cells.get_mut(slot) {
                        cell.clone_from(words);
                    }
                }
                for (place, words) in places.iter().zip(&row.cells) {
                    if let Some(cell) = place.and_then(|place| cells.get_mut(place)) {
                        cell.clone_from(words);
                    }
                }
                list.rows.push(cells);
            }
        }
    }
    for list in &mut lists {
        let width = list.heads.len();
        for row in &mut list.rows {
            row.resize(width, String::new());
        }
    }
    lists
}

/// The list as CSV (RFC 4180: commas, quotes doubled, CR LF).
#[must_use]
pub fn to_csv(list: &List) -> String {
    let mut out = String::new();
    for row in core::iter::once(&list.heads).chain(&list.rows) {
        let cells: Vec<String> = row.iter().map(|cell| quoted(cell)).collect();
        out.push_str(&cells.join(","));
        out.push_str("\r\n");
    }
    out
}

fn quoted(cell: &str) -> String {
    if cell.contains([',', '"', '\n', '\r']) {
        format!("\"{}\"", cell.replace('"', "\"\""))
    } else {
        cell.to_owned()
    }
}

/// All lists as one JSON text, each a list of objects by the heads of its columns; the stamp of the
/// packet before them.
#[must_use]
pub fn to_json(packet: &Packet) -> String {
    let mut lists = Map::new();
    for list in lists_of(packet) {
        let rows = list
            .rows
            .iter()
            .map(|row| {
                Value::Object(
                    list.heads
                        .iter()
                        .zip(row)
                        .filter(|(_, cell)| !cell.is_empty())
                        .map(|(head, cell)| (head.clone(), Value::from(cell.as_str())))
                        .collect(),
                )
            })
            .collect();
        lists.insert(list.name.to_owned(), Value::Array(rows));
    }
    let value = serde_json::json!({
        "build": packet.stamp.build,
        "plan": packet.stamp.plan_hash,
        "date": packet.stamp.date,
        "units": packet.stamp.units,
        "note": packet.stamp.note,
        "lists": lists,
    });
    format!("{value:#}\n")
}
