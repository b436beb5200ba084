use super::dress::as_written;
use super::edit::{EditError, parse};
use super::in_json;
use crate::Texts;
use crate::folder::Changes;
use crate::keys::build::BUILD;
use crate::keys::shop::SHOP;
use crate::keys::stock::STOCK;
use crate::keys::{Shape, Table, Target, Variant};
use crate::read::{Names, declared_names, rivals, unfit_name};
use crate::span::FileKind;
use thiserror::Error;
use toml_edit::{Item, TableLike, Value};

/// What can be renamed.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
#[non_exhaustive]
pub enum NameKind {
    /// A mark.
    Mark,
    /// A point.
    Point,
    /// An end.
    End,
    /// A set-up.
    Setup,
    /// A carrier.
    Carrier,
    /// A body.
    Body,
    /// A component.
    Component,
    /// A run.
    Run,
    /// A tube size.
    Tube,
    /// An item.
    Item,
    /// A supplier.
    Supplier,
    /// Something on hand.
    OnHand,
}

impl NameKind {
    /// All of them.
    pub const ALL: [Self; 12] = [
        Self::Mark,
        Self::Point,
        Self::End,
        Self::Setup,
        Self::Carrier,
        Self::Body,
        Self::Component,
        Self::Run,
        Self::Tube,
        Self::Item,
        Self::Supplier,
        Self::OnHand,
    ];

    pub(super) const fn target(self) -> Target {
        match self {
            Self::Mark => Target::Mark,
            Self::Point => Target::Point,
            Self::End => Target::End,
            Self::Setup => Target::Setup,
            Self::Carrier => Target::Carrier,
            Self::Body => Target::Body,
            Self::Component => Target::Component,
            Self::Run => Target::Run,
            Self::Tube => Target::Tube,
            Self::Item => Target::Item,
            Self::Supplier => Target::Supplier,
            Self::OnHand => Target::OnHand,
        }
    }
}

/// Why nothing was renamed.
#[derive(Clone, Debug, Error, PartialEq, Eq)]
#[non_exhaustive]
pub enum RenameError {
    /// A file cannot be read, so references in it could be missed.
    #[error(transparent)]
    NotReadable(#[from] EditError),
    /// `plan.json` is not JSON.
    #[error(
        "plan.json cannot be read; delete it (it is derived from the other files) and rename again"
    )]
    PlanNotReadable,
    /// Nothing of this kind has the old name.
    #[error("there is no {kind} named `{old}`")]
    Unknown {
        /// The kind.
        kind: &'static str,
        /// The old name.
        old: String,
        /// The nearest name of that kind.
        did_you_mean: Option<String>,
    },
    /// Something has the new name already.
    #[error("the {kind} `{new}` exists already; the two could not be told apart")]
    Taken {
        /// The kind of the thing that has it.
        kind: &'static str,
        /// The new name.
        new: String,
    },
    /// The new name cannot be a name.
    #[error("`{new}` cannot be a name: {why}")]
    Unfit {
        /// The new name.
        new: String,
        /// Why.
        why: &'static str,
    },
}

/// Renames one thing and carries every reference to it in all four files. The changes hold the new
/// text of each file that changes (`plan` is the text of `plan.json`); comments, order and spacing stay.
///
/// # Errors
/// A [`RenameError`]; nothing is changed then.
pub fn rename(
    texts: Texts<'_>,
    plan: Option<&str>,
    kind: NameKind,
    old: &str,
    new: &str,
) -> Result<Changes, RenameError> {
    let target = kind.target();
    let mut documents = Vec::new();
    for (file, text, table) in [
        (FileKind::Build, texts.build, &BUILD),
        (FileKind::Stock, texts.stock, &STOCK),
        (FileKind::Shop, texts.shop, &SHOP),
    ] {
        if let Some(text) = text {
            documents.push((file, text, table, parse(file, text)?));
        }
    }
    let names = declared_names(texts);
    if !names.has(target, old) {
        return Err(RenameError::Unknown {
            kind: target.words(),
            old: old.to_owned(),
            did_you_mean: names.nearest(target, old),
        });
    }
    if let Some(why) = unfit_name(target, new) {
        return Err(RenameError::Unfit {
            new: new.to_owned(),
            why,
        });
    }
    let is_chassis = target == Target::Carrier && new == "chassis";
    let taken = rivals(target).find(|&rival| names.has(rival, new));
    if let (Some(rival), true) = (taken.or(is_chassis.then_some(target)), new != old) {
        return Err(RenameError::Taken {
            kind: rival.words(),
            new: new.to_owned(),
        });
    }
    let renaming = Renaming {
        names: &names,
        target,
        old,
        new,
    };
    let mut changes = Changes::renaming();
    for (file, text, table, mut document) in documents {
        renaming.table(table, document.as_table_mut());
        let renamed = as_written(text, &document.to_string());
        if renamed != text {
            changes.set(file, renamed);
        }
    }
    if let Some(text) = plan {
        let renamed =
            in_json::exchange_names(text, &|target, text| renaming.exchanged(target, text))
                .ok_or(RenameError::PlanNotReadable)?;
        if renamed != text {
            changes.set(FileKind::Plan, renamed);
        }
    }
    Ok(changes)
}

struct Renaming<'r> {
    names: &'r Names,
    target: Target,
    old: &'r str,
    new: &'r str,
}

impl Renaming<'_> {
    /// What a reference becomes; `None` when it names something else.
    fn exchanged(&self, reference: Target, text: &str) -> Option<String> {
        let found = self.names.find(reference, text)?;
        if found.target != self.target || found.name != self.old {
            return None;
        }
        Some(found.side.map_or_else(
            || self.new.to_owned(),
            |side| format!("{}.{side}", self.new),
        ))
    }

    fn table(&self, table: &'static Table, row: &mut dyn TableLike) {
        let word = table
            .kinds
            .as_ref()
            .and_then(|kinds| row.get(kinds.key)?.as_str());
        let variant: Option<&'static Variant> = word.and_then(|word| table.variant(word));
        for (name, item) in row.iter_mut() {
            if let Some(key) = table.key(name.get(), variant) {
                self.item(key.shape, item);
            }
        }
    }

    fn item(&self, shape: Shape, item: &mut Item) {
        match (shape, item) {
            (shape, Item::Value(value)) => self.value(shape, value),
            (Shape::List { of, .. }, Item::ArrayOfTables(rows)) => {
                for row in rows.iter_mut() {
                    if let Some(table) = of.table() {
                        self.table(table, row);
                    }
                }
            }
            (Shape::OneOrMore(table, _), Item::ArrayOfTables(rows)) => {
                for row in rows.iter_mut() {
                    self.table(table, row);
                }
            }
            (Shape::Table(table) | Shape::OneOrMore(table, _), Item::Table(row)) => {
                self.table(table, row);
            }
            _ => {}
        }
    }

    fn value(&self, shape: Shape, value: &mut Value) {
        match (shape, &mut *value) {
            (Shape::Name(declared), Value::String(text))
                if declared == self.target && text.value() == self.old =>
            {
                exchange(value, self.new);
            }
            (Shape::Refer(reference), Value::String(text)) => {
                if let Some(new) = self.exchanged(reference, text.value()) {
                    exchange(value, &new);
                }
            }
            (Shape::List { of, .. }, Value::Array(items)) => {
                for item in items.iter_mut() {
                    self.value(*of, item);
                }
            }
            (Shape::TextOrList(_, list), Value::Array(_)) => self.value(*list, value),
            (Shape::OneOrMore(table, _), Value::Array(items)) => {
                for item in items.iter_mut() {
                    self.value(Shape::Table(table), item);
                }
            }
            (Shape::Table(table) | Shape::OneOrMore(table, _), Value::InlineTable(row)) => {
                self.table(table, row);
            }
            _ => {}
        }
    }
}

fn exchange(value: &mut Value, new: &str) {
    let mut exchanged = Value::from(new);
    *exchanged.decor_mut() = value.decor().clone();
    *value = exchanged;
}
