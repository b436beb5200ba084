//! The keys of the files, declared once: the parser, the completion schema and renaming all walk
//! these tables.

mod body;
pub(crate) mod build;
mod car;
mod shapes;
pub(crate) mod shop;
pub(crate) mod stock;
mod survey;

use crate::quantity::Kind;

/// What may stand at a key.
#[derive(Clone, Copy, Debug)]
pub(crate) enum Shape {
    /// Words for a person.
    Text,
    /// A fixed word: the format of the file.
    Fixed(&'static str),
    /// Declares a name.
    Name(Target),
    /// A whole number.
    Whole { least: i64, most: i64 },
    /// A plain number, where the file's own units are meant.
    Number,
    /// True or false.
    Yes,
    /// Text with a unit.
    Quantity(Kind),
    /// One of these words.
    Choice(&'static [&'static str]),
    /// A path inside the folder.
    Path,
    /// A date, year-month-day.
    Date,
    /// A currency's three letters.
    Currency,
    /// The name of something declared elsewhere.
    Refer(Target),
    /// A list.
    List {
        of: &'static Shape,
        least: usize,
        most: usize,
    },
    /// A table in braces or under a header.
    Table(&'static Table),
    /// Text, or else a list.
    TextOrList(&'static Shape, &'static Shape),
    /// A table, or a list of at most this many.
    OneOrMore(&'static Table, usize),
}

impl Shape {
    /// The table, when it is one.
    pub(crate) const fn table(&self) -> Option<&'static Table> {
        match self {
            Self::Table(table) => Some(table),
            _ => None,
        }
    }
}

/// What a name names.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub(crate) enum Target {
    Mark,
    Point,
    End,
    Setup,
    Carrier,
    Body,
    Component,
    Run,
    Tube,
    Item,
    Supplier,
    OnHand,
    /// A mark, a point or an end.
    Place,
    /// An end, or a port of a component.
    RunEnd,
    /// A component, or one side of it.
    Through,
    /// An item or a thing on hand.
    CutFrom,
    /// A mark number of a piece in the record.
    Piece,
    /// A mark number of a joint in the record.
    Joint,
}

/// A table of keys.
#[derive(Debug)]
pub(crate) struct Table {
    /// What one of it is called in messages: `mark`, `reading`.
    pub(crate) title: &'static str,
    /// For the completion of editors.
    pub(crate) about: &'static str,
    pub(crate) keys: &'static [Key],
    pub(crate) kinds: Option<Kinds>,
    pub(crate) rules: &'static [Rule],
}

/// One key decides which further keys apply.
#[derive(Debug)]
pub(crate) struct Kinds {
    pub(crate) key: &'static str,
    pub(crate) about: &'static str,
    pub(crate) of: &'static [Variant],
}

/// The further keys for some words of the deciding key.
#[derive(Debug)]
pub(crate) struct Variant {
    pub(crate) words: &'static [&'static str],
    pub(crate) keys: &'static [Key],
    pub(crate) rules: &'static [Rule],
}

/// One key.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Key {
    pub(crate) name: &'static str,
    pub(crate) shape: Shape,
    pub(crate) is_required: bool,
    pub(crate) about: &'static str,
}

/// What holds between the keys of one table.
#[derive(Clone, Copy, Debug)]
pub(crate) enum Rule {
    /// Exactly one of these.
    OneOf(&'static [&'static str]),
    /// The first needs the second.
    Needs(&'static str, &'static str),
    /// The first, when it is this word, needs the second.
    WordNeeds(&'static str, &'static str, &'static str),
    /// At most one of these.
    NotBoth(&'static str, &'static str),
}

pub(crate) const fn must(name: &'static str, shape: Shape, about: &'static str) -> Key {
    Key {
        name,
        shape,
        is_required: true,
        about,
    }
}

pub(crate) const fn may(name: &'static str, shape: Shape, about: &'static str) -> Key {
    Key {
        name,
        shape,
        is_required: false,
        about,
    }
}

/// A list of tables under `[[header]]`.
pub(crate) const fn tables(name: &'static str, of: &'static Shape, most: usize) -> Key {
    may(name, Shape::List { of, least: 0, most }, "")
}

impl Table {
    /// The keys that apply when the deciding key says `word`.
    pub(crate) fn variant(&self, word: &str) -> Option<&'static Variant> {
        self.kinds
            .as_ref()?
            .of
            .iter()
            .find(|variant| variant.words.contains(&word))
    }

    /// All words of the deciding key.
    pub(crate) fn kind_words(&self) -> Vec<&'static str> {
        self.kinds.as_ref().map_or_else(Vec::new, |kinds| {
            kinds
                .of
                .iter()
                .flat_map(|variant| variant.words.iter().copied())
                .collect()
        })
    }

    /// The key of this name among those that always apply and those of the variant.
    pub(crate) fn key(&self, name: &str, variant: Option<&'static Variant>) -> Option<Key> {
        self.keys
            .iter()
            .chain(variant.map_or(&[][..], |variant| variant.keys))
            .find(|key| key.name == name)
            .copied()
    }
}

impl Target {
    /// With its article, for messages.
    pub(crate) fn with_article(self) -> String {
        let words = self.words();
        let article = if words.starts_with(['a', 'e', 'i', 'o', 'u']) {
            "an"
        } else {
            "a"
        };
        format!("{article} {words}")
    }

    /// Without an article, for messages.
    pub(crate) const fn words(self) -> &'static str {
        match self {
            Self::Mark => "mark",
            Self::Point => "point",
            Self::End => "end",
            Self::Setup => "set-up",
            Self::Carrier => "carrier",
            Self::Body => "body",
            Self::Component => "component",
            Self::Run => "run",
            Self::Tube => "tube",
            Self::Item => "item",
            Self::Supplier => "supplier",
            Self::OnHand => "thing on hand",
            Self::Place => "mark, point or end",
            Self::RunEnd => "end or component",
            Self::Through => "component",
            Self::CutFrom => "item or thing on hand",
            Self::Piece => "piece",
            Self::Joint => "joint",
        }
    }

    /// Where such a name is declared, for messages.
    pub(crate) const fn home(self) -> &'static str {
        match self {
            Self::Mark => "[[mark]] in build.toml",
            Self::Point => "[[point]] in build.toml",
            Self::End => "[[end]] in build.toml",
            Self::Setup => "[[setup]] in build.toml",
            Self::Carrier => "[[carrier]] in build.toml",
            Self::Body => "[[body]] in build.toml",
            Self::Component | Self::Through => "[[component]] in build.toml",
            Self::Run => "[[run]] in build.toml",
            Self::Tube => "[[tube]] in stock.toml",
            Self::Item => "[[item]] in stock.toml",
            Self::Supplier => "[[supplier]] in stock.toml",
            Self::OnHand => "[[on-hand]] in stock.toml",
            Self::Place => "[[mark]], [[point]] or [[end]] in build.toml",
            Self::RunEnd => "[[end]] or [[component]] in build.toml",
            Self::CutFrom => "[[item]] or [[on-hand]] in stock.toml",
            Self::Piece | Self::Joint => "a `chosen` entry of shop.toml",
        }
    }

    /// The declared kinds that such a reference may name.
    pub(crate) const fn declared(self) -> &'static [Self] {
        match self {
            Self::Place => &[Self::Mark, Self::Point, Self::End],
            Self::RunEnd => &[Self::End, Self::Component],
            Self::Through => &[Self::Component],
            Self::CutFrom => &[Self::Item, Self::OnHand],
            Self::Mark => &[Self::Mark],
            Self::Point => &[Self::Point],
            Self::End => &[Self::End],
            Self::Setup => &[Self::Setup],
            Self::Carrier => &[Self::Carrier],
            Self::Body => &[Self::Body],
            Self::Component => &[Self::Component],
            Self::Run => &[Self::Run],
            Self::Tube => &[Self::Tube],
            Self::Item => &[Self::Item],
            Self::Supplier => &[Self::Supplier],
            Self::OnHand => &[Self::OnHand],
            Self::Piece => &[Self::Piece],
            Self::Joint => &[Self::Joint],
        }
    }
}
