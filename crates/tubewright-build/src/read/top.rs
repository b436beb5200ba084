//! The top of a file: its single tables and its lists of tables.

use super::check::Checker;
use super::source::Said;
use crate::keys::{Key, Shape, Table};
use core::ops::Range;
use toml::de::{DeTable, DeValue};

/// Whether a key is one that holds a list of tables under `[[header]]`.
fn is_table_list(key: &Key) -> bool {
    matches!(
        key.shape,
        Shape::List {
            of: Shape::Table(_),
            ..
        }
    )
}

/// The tables of one list with their headers' bytes.
pub(crate) struct Element<'a> {
    pub(crate) table: &'static Table,
    pub(crate) rows: Vec<(&'a DeTable<'a>, Range<usize>)>,
}

/// The tables of the list at a key of the file.
pub(crate) fn elements<'a>(
    root: &'static Table,
    de: &'a DeTable<'a>,
    key: &str,
) -> Option<Element<'a>> {
    let declared = root.keys.iter().find(|known| known.name == key)?;
    let Shape::List {
        of: Shape::Table(table),
        most,
        ..
    } = declared.shape
    else {
        return None;
    };
    let DeValue::Array(items) = de.get(key)?.get_ref() else {
        return None;
    };
    let rows = items
        .iter()
        .take(most)
        .filter_map(|item| Some((item.get_ref().as_table()?, item.span())))
        .collect();
    Some(Element { table, rows })
}

impl Checker<'_> {
    /// Checks the top of a file; the elements of its lists are left to [`elements`].
    pub(crate) fn root(&mut self, table: &'static Table, de: &DeTable<'_>) {
        for (name, value) in de.iter() {
            let Some(key) = table.key(name.get_ref(), None) else {
                self.unknown(table, table.title, None, name);
                continue;
            };
            if !is_table_list(&key) {
                self.value(key.name, key.shape, value);
                continue;
            }
            let Shape::List { most, .. } = key.shape else {
                continue;
            };
            match value.get_ref() {
                DeValue::Array(items) => {
                    if items.len() > most {
                        self.error(
                            value.span(),
                            Said::new(
                                format!("there are {} of [[{}]]", items.len(), key.name),
                                format!("at most {most} are read"),
                                "split the job, or remove some",
                            ),
                        );
                    }
                    for item in items.iter() {
                        if item.get_ref().as_table().is_none() {
                            self.wrong_type(key.name, Shape::Table(table), item);
                        }
                    }
                }
                _ => {
                    self.error(
                        value.span(),
                        Said::new(
                            format!("`{}` is not a list of tables", key.name),
                            "there can be many of them, so each has a header in double brackets",
                            format!("write the header as [[{}]]", key.name),
                        ),
                    );
                }
            }
        }
        for key in table.keys.iter().filter(|key| key.is_required) {
            if de.get(key.name).is_none() {
                self.missing(table.title, key.name, key.about, 0..0);
            }
        }
    }
}
