use super::dress::as_written;
use super::written::Written;
use crate::keys::build::BUILD;
use crate::keys::stock::STOCK;
use crate::keys::{Shape, Table};
use crate::span::FileKind;
use thiserror::Error;
use toml_edit::{Array, ArrayOfTables, DocumentMut, Item, Value};

/// `build.toml` or `stock.toml`, open for edits.
///
/// ```
/// use tubewright_build::document::{Document, ElementRef, Written};
/// use tubewright_build::FileKind;
///
/// let text = "[[reading]]\nnumber = 4 # kept\nreads = \"812 mm\"   # by hand\n";
/// let mut document = Document::parse(FileKind::Build, text).unwrap();
/// document
///     .set(&ElementRef::Reading(4), "reads", &Written::text("712 mm"))
///     .unwrap();
/// assert_eq!(
///     document.text(),
///     "[[reading]]\nnumber = 4 # kept\nreads = \"712 mm\"   # by hand\n"
/// );
/// ```
#[derive(Clone, Debug)]
pub struct Document {
    file: FileKind,
    /// The text as it was opened, for what the TOML writer does not keep.
    written: String,
    toml: DocumentMut,
}

/// One element of a file.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum ElementRef {
    /// The keys before the first header.
    Head,
    /// A single table: `frame`, `accuracy`, `practice`, ….
    Table(String),
    /// An element of a list by its name: `("point", "rail L front")`.
    Named(String, String),
    /// A reading by its number.
    Reading(u32),
    /// An element of a list by its place in it, counted from 0: for offers, which have no name.
    Nth(String, usize),
}

/// Why an edit was not made; the document is as it was.
#[derive(Clone, Debug, Error, PartialEq, Eq)]
#[non_exhaustive]
pub enum EditError {
    /// The file cannot be read as TOML, so nothing can be put into it without guessing.
    #[error("{file} cannot be edited while a line of it cannot be read: {message}")]
    NotToml {
        /// The file.
        file: FileKind,
        /// What the reader says, with line and column.
        message: String,
    },
    /// The record and the plan are not edited.
    #[error("{file} is not edited: {why}")]
    NotEditable {
        /// The file.
        file: FileKind,
        /// Why not.
        why: &'static str,
    },
    /// There is no such element.
    #[error("{file} has no {element}; it may have been removed or renamed elsewhere")]
    NoElement {
        /// The file.
        file: FileKind,
        /// The element.
        element: String,
    },
    /// There is no such value in a list, or no list.
    #[error("{key} of {element} in {file} has no such entry; it may have been changed elsewhere")]
    NoList {
        /// The file.
        file: FileKind,
        /// The element.
        element: String,
        /// The key of the list.
        key: String,
    },
    /// The format has no such key.
    #[error("a {element} has no key `{key}`; nothing would read it")]
    NoKey {
        /// The element.
        element: String,
        /// The key.
        key: String,
    },
    /// Every number up to the largest was given.
    #[error("the readings' numbers are used up")]
    NumbersUsedUp,
}

impl ElementRef {
    fn words(&self) -> String {
        match self {
            Self::Head => "head".to_owned(),
            Self::Table(name) => format!("table [{name}]"),
            Self::Named(list, name) => format!("{list} `{name}`"),
            Self::Reading(number) => format!("reading {number}"),
            Self::Nth(list, at) => format!("{list} {}", at + 1),
        }
    }
}

impl Document {
    /// Opens a text for edits.
    ///
    /// # Errors
    /// [`EditError::NotToml`] when a line cannot be read, [`EditError::NotEditable`] for the record
    /// and the plan.
    pub fn parse(file: FileKind, text: &str) -> Result<Self, EditError> {
        let why = match file {
            FileKind::Build | FileKind::Stock => None,
            FileKind::Shop => Some("what happened to the steel is only ever added to"),
            FileKind::Plan => Some("it is derived from the other files"),
        };
        if let Some(why) = why {
            return Err(EditError::NotEditable { file, why });
        }
        Ok(Self {
            file,
            written: text.to_owned(),
            toml: parse(file, text)?,
        })
    }

    /// The file.
    #[must_use]
    pub const fn file(&self) -> FileKind {
        self.file
    }

    /// The text with all edits made; every line that no edit was about is as it was, line end and all.
    #[must_use]
    pub fn text(&self) -> String {
        as_written(&self.written, &self.toml.to_string())
    }

    /// Sets the value of a key, adding the key when it is not there. A comment after the old value
    /// stays.
    ///
    /// # Errors
    /// [`EditError::NoElement`], [`EditError::NoKey`].
    pub fn set(
        &mut self,
        element: &ElementRef,
        key: &str,
        value: &Written,
    ) -> Result<(), EditError> {
        self.check_key(element, key)?;
        let table = self.table_for_edit(element)?;
        let mut value = value.to_value();
        match table.get_mut(key) {
            Some(Item::Value(old)) => {
                *value.decor_mut() = old.decor().clone();
                *old = value;
            }
            _ => {
                table.insert(key, Item::Value(value));
            }
        }
        Ok(())
    }

    /// Removes a key with the comment after its value; true when it was there.
    ///
    /// # Errors
    /// [`EditError::NoElement`].
    pub fn clear(&mut self, element: &ElementRef, key: &str) -> Result<bool, EditError> {
        if let ElementRef::Table(name) = element
            && self.toml.get(name).is_none()
        {
            return Ok(false);
        }
        Ok(self.table_for_edit(element)?.remove(key).is_some())
    }

    /// Puts a value at the end of the list at a key; the key is added when it is not there. The other
    /// values of the list stay as they are written, with their comments.
    ///
    /// # Errors
    /// [`EditError::NoElement`], [`EditError::NoKey`], [`EditError::NoList`].
    pub fn push(
        &mut self,
        element: &ElementRef,
        key: &str,
        value: &Written,
    ) -> Result<(), EditError> {
        self.check_key(element, key)?;
        let no_list = self.no_list(element, key);
        let table = self.table_for_edit(element)?;
        match table.get_mut(key) {
            None => {
                let mut list = Array::new();
                list.push(value.to_value());
                table.insert(key, Item::Value(Value::Array(list)));
            }
            Some(Item::Value(Value::Array(list))) => list.push(value.to_value()),
            Some(_) => return Err(no_list),
        }
        Ok(())
    }

    /// The texts of the list at a key, in their order; none when there is no such list.
    #[must_use]
    pub fn texts_of(&self, element: &ElementRef, key: &str) -> Vec<String> {
        let row = self
            .locate(element)
            .and_then(|(list, at)| self.rows(&list).nth(at)?.get(key));
        let list = row.and_then(Item::as_array);
        list.into_iter()
            .flatten()
            .map(|value| value.as_str().unwrap_or_default().to_owned())
            .collect()
    }

    /// Takes one value, counted from 0, out of the list at a key; with the last one the key goes too.
    ///
    /// # Errors
    /// [`EditError::NoElement`], [`EditError::NoList`] when there is no such value.
    pub fn take_out(
        &mut self,
        element: &ElementRef,
        key: &str,
        at: usize,
    ) -> Result<(), EditError> {
        let no_list = self.no_list(element, key);
        let table = self.table_for_edit(element)?;
        match table.get_mut(key) {
            Some(Item::Value(Value::Array(list))) if at < list.len() => {
                keep_comment_before(list, at);
                list.remove(at);
                if list.is_empty() {
                    table.remove(key);
                }
                Ok(())
            }
            _ => Err(no_list),
        }
    }

    /// Adds an element at the end of a list, after a blank line.
    ///
    /// # Errors
    /// [`EditError::NoKey`] when the format has no such list or the elements no such key.
    pub fn add(&mut self, list: &str, fields: &[(&str, Written)]) -> Result<(), EditError> {
        for (key, _) in fields {
            self.check_key(&ElementRef::Nth(list.to_owned(), 0), key)?;
        }
        let mut table = toml_edit::Table::new();
        table.decor_mut().set_prefix("\n");
        for (key, value) in fields {
            table.insert(key, Item::Value(value.to_value()));
        }
        let item = self
            .toml
            .as_table_mut()
            .entry(list)
            .or_insert_with(|| Item::ArrayOfTables(ArrayOfTables::new()));
        if !item.is_array_of_tables() {
            // `mark = [{ … }]` on one line is the same list in another dress.
            let old = core::mem::take(item);
            *item = old
                .into_array_of_tables()
                .map_or_else(|old| old, Item::ArrayOfTables);
        }
        item.as_array_of_tables_mut()
            .ok_or_else(|| EditError::NoElement {
                file: self.file,
                element: format!("list [[{list}]]"),
            })?
            .push(table);
        Ok(())
    }

    /// Adds a reading with the next number that was never given (one more than the largest that is
    /// there or that `given_before` names), and gives that number.
    ///
    /// # Errors
    /// [`EditError::NoKey`], [`EditError::NumbersUsedUp`].
    pub fn add_reading(
        &mut self,
        given_before: u32,
        fields: &[(&str, Written)],
    ) -> Result<u32, EditError> {
        let largest = self
            .rows("reading")
            .filter_map(|row| row.get("number")?.as_integer())
            .max()
            .unwrap_or(0)
            .max(i64::from(given_before));
        let number = u32::try_from(largest + 1)
            .ok()
            .filter(|number| *number <= 1_000_000)
            .ok_or(EditError::NumbersUsedUp)?;
        let mut all = vec![("number", Written::Whole(i64::from(number)))];
        all.extend(fields.iter().filter(|(key, _)| *key != "number").cloned());
        self.add("reading", &all)?;
        Ok(number)
    }

    /// Removes an element of a list. Comments above its header go with it; all others stay.
    ///
    /// # Errors
    /// [`EditError::NoElement`].
    pub fn remove(&mut self, element: &ElementRef) -> Result<(), EditError> {
        let missing = self.no_element(element);
        let (list, at) = self.locate(element).ok_or_else(|| missing.clone())?;
        match self.toml.get_mut(&list) {
            Some(Item::ArrayOfTables(tables)) if at < tables.len() => {
                tables.remove(at);
                if tables.is_empty() {
                    self.toml.remove(&list);
                }
                Ok(())
            }
            Some(Item::Value(Value::Array(array))) if at < array.len() => {
                array.remove(at);
                Ok(())
            }
            _ => Err(missing),
        }
    }

    fn no_list(&self, element: &ElementRef, key: &str) -> EditError {
        EditError::NoList {
            file: self.file,
            element: element.words(),
            key: key.to_owned(),
        }
    }

    fn no_element(&self, element: &ElementRef) -> EditError {
        EditError::NoElement {
            file: self.file,
            element: element.words(),
        }
    }

    fn root(&self) -> &'static Table {
        if self.file == FileKind::Stock {
            &STOCK
        } else {
            &BUILD
        }
    }

    fn check_key(&self, element: &ElementRef, key: &str) -> Result<(), EditError> {
        let root = self.root();
        let name = match element {
            ElementRef::Head => None,
            ElementRef::Table(name) => Some(name.as_str()),
            ElementRef::Named(list, _) | ElementRef::Nth(list, _) => Some(list.as_str()),
            ElementRef::Reading(_) => Some("reading"),
        };
        let table = match name {
            None => Some(root),
            Some(name) => root.key(name, None).and_then(|key| match key.shape {
                Shape::Table(table) => Some(table),
                Shape::List { of, .. } => of.table(),
                _ => None,
            }),
        };
        let is_known = table.is_some_and(|table| {
            table.key(key, None).is_some()
                || table.kinds.as_ref().is_some_and(|kinds| {
                    kinds.key == key
                        || kinds
                            .of
                            .iter()
                            .any(|variant| table.key(key, Some(variant)).is_some())
                })
        });
        if is_known {
            return Ok(());
        }
        Err(EditError::NoKey {
            element: name.unwrap_or(root.title).to_owned(),
            key: key.to_owned(),
        })
    }

    fn rows(&self, list: &str) -> Box<dyn Iterator<Item = &dyn toml_edit::TableLike> + '_> {
        match self.toml.get(list) {
            Some(Item::ArrayOfTables(tables)) => {
                Box::new(tables.iter().map(|row| row as &dyn toml_edit::TableLike))
            }
            Some(Item::Value(Value::Array(array))) => Box::new(array.iter().filter_map(|value| {
                value
                    .as_inline_table()
                    .map(|row| row as &dyn toml_edit::TableLike)
            })),
            _ => Box::new(core::iter::empty()),
        }
    }

    /// The list and the place in it.
    fn locate(&self, element: &ElementRef) -> Option<(String, usize)> {
        match element {
            ElementRef::Head | ElementRef::Table(_) => None,
            ElementRef::Named(list, name) => self
                .rows(list)
                .position(|row| row.get("name").and_then(Item::as_str) == Some(name))
                .map(|at| (list.clone(), at)),
            ElementRef::Reading(number) => self
                .rows("reading")
                .position(|row| {
                    row.get("number").and_then(Item::as_integer) == Some(i64::from(*number))
                })
                .map(|at| ("reading".to_owned(), at)),
            ElementRef::Nth(list, at) => Some((list.clone(), *at)),
        }
    }

    fn table_for_edit(
        &mut self,
        element: &ElementRef,
    ) -> Result<&mut dyn toml_edit::TableLike, EditError> {
        let missing = self.no_element(element);
        if let ElementRef::Head = element {
            return Ok(self.toml.as_table_mut());
        }
        if let ElementRef::Table(name) = element {
            return self
                .toml
                .as_table_mut()
                .entry(name)
                .or_insert_with(|| {
                    let mut table = toml_edit::Table::new();
                    table.decor_mut().set_prefix("\n");
                    Item::Table(table)
                })
                .as_table_like_mut()
                .ok_or(missing);
        }
        let (list, at) = self.locate(element).ok_or_else(|| missing.clone())?;
        let found: Option<&mut dyn toml_edit::TableLike> = match self.toml.get_mut(&list) {
            Some(Item::ArrayOfTables(tables)) => tables.get_mut(at).map(|row| row as _),
            Some(Item::Value(Value::Array(array))) => array
                .get_mut(at)
                .and_then(Value::as_inline_table_mut)
                .map(|row| row as _),
            _ => None,
        };
        found.ok_or(missing)
    }
}

/// Hands the comment behind the value before this one on to what follows: the TOML writer holds it as the
/// beginning of this value.
fn keep_comment_before(list: &mut Array, at: usize) {
    let before = |list: &Array, at: usize| -> Option<String> {
        let prefix = list.get(at)?.decor().prefix()?.as_str()?;
        Some(prefix.to_owned())
    };
    let Some((comment, _)) = before(list, at).as_deref().and_then(split_at_line_end) else {
        return;
    };
    let trailing = list.trailing().as_str().unwrap_or_default().to_owned();
    let follows = before(list, at + 1).unwrap_or(trailing);
    let Some((_, rest)) = split_at_line_end(&follows) else {
        return;
    };
    let whole = format!("{comment}{rest}");
    match list.get_mut(at + 1) {
        Some(next) => next.decor_mut().set_prefix(whole),
        None => list.set_trailing(whole),
    }
}

/// What stands on the first line, and the rest with its line end.
fn split_at_line_end(text: &str) -> Option<(String, String)> {
    let (line, rest) = text.split_once('\n')?;
    Some((line.to_owned(), format!("\n{rest}")))
}

pub(super) fn parse(file: FileKind, text: &str) -> Result<DocumentMut, EditError> {
    text.parse().map_err(|error: toml_edit::TomlError| {
        let message = error.to_string();
        let mut lines = message.lines();
        let first = lines.next().unwrap_or_default();
        let last = lines.last().unwrap_or_default();
        EditError::NotToml {
            file,
            message: format!("{first}: {last}"),
        }
    })
}
