//! From the texts of the four files to the checked model.
//!
//! Three steps: the spanned tables are held against the declared keys ([`check`]), the tables that
//! are sound ([`sound`]) become typed elements, and what holds between elements is checked ([`link`]).

mod car;
mod check;
mod limits;
mod link;
mod missing;
mod names;
mod prune;
mod record;
mod row;
mod shelf;
mod sound;
mod source;
mod survey;
mod top;

use crate::keys::build::BUILD;
use crate::keys::shop::SHOP;
use crate::keys::stock::STOCK;
use crate::keys::{Table, Target};
use crate::model::{Build, Model, Shop, Stock};
use crate::problem::{Missing, Problem, Severity};
use crate::span::FileKind;
use check::Checker;
use row::Row;
use source::{Problems, Said, Source};
use std::collections::BTreeSet;
use toml::de::{DeTable, DeValue};

pub(crate) use check::is_date;
pub(crate) use limits::LARGEST_TOML;
pub(crate) use names::{Names, rivals, unfit_name};

/// The texts of a build folder; a file that is not there is `None`.
#[derive(Clone, Copy, Debug, Default)]
pub struct Texts<'a> {
    /// `build.toml`.
    pub build: Option<&'a str>,
    /// `stock.toml`.
    pub stock: Option<&'a str>,
    /// `shop.toml`.
    pub shop: Option<&'a str>,
}

/// A build folder as read: as much of it as could be understood, and everything that is wrong.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct ReadBuild {
    /// What could be understood.
    pub model: Model,
    /// All problems of all files, in the order of the files and their lines.
    pub problems: Vec<Problem>,
    /// What each job of the trade lacks; jobs that lack nothing are not listed.
    pub missing: Vec<Missing>,
}

impl ReadBuild {
    /// Whether something that was written could not be used.
    #[must_use]
    pub fn has_errors(&self) -> bool {
        self.problems
            .iter()
            .any(|problem| problem.severity == Severity::Error)
    }
}

/// Reads the texts. Never fails: what cannot be understood is left out of the model and listed as a
/// problem.
///
/// ```
/// use tubewright_build::{Texts, read};
///
/// let build = "format = \"tubewright-build/1\"\nname = \"Estate\"\n[[mark]]\nname = \"A left\"\n";
/// let read = read(Texts { build: Some(build), ..Texts::default() });
/// assert_eq!(read.model.build.marks.len(), 1);
/// assert!(read.problems.is_empty());
/// assert!(!read.missing.is_empty(), "one mark alone measures nothing");
/// ```
#[must_use]
pub fn read(texts: Texts<'_>) -> ReadBuild {
    let mut problems = Problems::default();
    let mut names = Names::default();
    let sheets = [
        Sheet::open(FileKind::Build, texts.build, &mut problems),
        Sheet::open(FileKind::Stock, texts.stock, &mut problems),
        Sheet::open(FileKind::Shop, texts.shop, &mut problems),
    ];
    for sheet in sheets.iter().flatten() {
        names.collect(sheet.table, &sheet.root, &sheet.source, &mut problems);
        names.add_file(sheet.source.file);
    }
    let [build, stock, shop] = &sheets;
    let mut model = Model::default();
    if let Some(sheet) = build {
        model.build = sheet.build(&names, &mut problems);
    }
    if let Some(sheet) = stock {
        model.stock = sheet.stock(&names, &mut problems);
    }
    if let Some(sheet) = shop {
        model.shop = sheet.shop(&names, &mut problems);
    }
    let sources: Vec<&Source<'_>> = sheets.iter().flatten().map(|sheet| &sheet.source).collect();
    link::link(&mut model, &sources, &mut problems);
    prune::prune(&mut model, &sources, &mut problems);
    let mut problems = problems.found;
    problems.sort_by_key(|problem| (problem.file, problem.span.start, problem.span.end));
    let missing = missing::missing(&model, &texts);
    ReadBuild {
        model,
        problems,
        missing,
    }
}

/// The names that the texts declare.
pub(crate) fn declared_names(texts: Texts<'_>) -> Names {
    let mut unheard = Problems::default();
    let mut names = Names::default();
    for (file, text) in [
        (FileKind::Build, texts.build),
        (FileKind::Stock, texts.stock),
        (FileKind::Shop, texts.shop),
    ] {
        if let Some(sheet) = Sheet::open(file, text, &mut unheard) {
            names.collect(sheet.table, &sheet.root, &sheet.source, &mut unheard);
        }
    }
    names
}

/// One file, parsed.
struct Sheet<'a> {
    table: &'static Table,
    source: Source<'a>,
    root: DeTable<'a>,
}

impl<'a> Sheet<'a> {
    fn open(file: FileKind, text: Option<&'a str>, problems: &mut Problems) -> Option<Self> {
        let text = text?;
        let table = match file {
            FileKind::Build => &BUILD,
            FileKind::Stock => &STOCK,
            FileKind::Shop | FileKind::Plan => &SHOP,
        };
        let mut source = Source::new(file, text);
        if let Some(said) = limits::refusal(text) {
            problems.syntax(&source, 0..0, said);
            return None;
        }
        let (root, errors) = DeTable::parse_recoverable(text);
        for error in errors {
            let range = error.span().unwrap_or(0..0);
            problems.syntax(
                &source,
                range.clone(),
                Said::new(
                    error.message().lines().next().unwrap_or_default(),
                    "the line cannot be read as TOML",
                    "look at quotes, brackets and the equals sign of this line",
                ),
            );
            source.guess_from(range.start);
        }
        Some(Self {
            table,
            source,
            root: root.into_inner(),
        })
    }

    fn checker<'c>(&'c self, names: &'c Names, problems: &'c mut Problems) -> Checker<'c> {
        Checker {
            source: &self.source,
            names,
            problems,
        }
    }

    /// All sound elements of one list of tables.
    fn all<T>(
        &self,
        key: &str,
        names: &Names,
        problems: &mut Problems,
        lower: impl Fn(&Row<'_>) -> Option<T>,
    ) -> Vec<T> {
        let Some(top::Element { table, rows }) = top::elements(self.table, &self.root, key) else {
            return Vec::new();
        };
        let mut sound = Vec::with_capacity(rows.len());
        for (de, range) in rows {
            let is_good = self
                .checker(names, problems)
                .table(table, de, range.clone());
            let row = Row::new(de, &self.source, names, range.clone());
            if !is_good || !sound::row_is_sound(key, &row, problems) {
                continue;
            }
            match lower(&row) {
                Some(element) => sound.push(element),
                None => problems.error(
                    &self.source,
                    range,
                    Said::new(
                        format!("{} cannot be understood", check::label(table, de)),
                        "its values do not go together",
                        "compare it with the handbook, The build folder",
                    ),
                ),
            }
        }
        sound
    }

    /// Numbers that are given twice, also by readings that are wrong in some other way: all that is
    /// wrong is told in one go.
    fn reading_numbers(&self, problems: &mut Problems) {
        let Some(top::Element { rows, .. }) = top::elements(self.table, &self.root, "reading")
        else {
            return;
        };
        let mut given = BTreeSet::new();
        for (de, _) in rows {
            let Some(value) = de.get("number") else {
                continue;
            };
            if let Some(number) = value.get_ref().as_integer()
                && !given.insert(number.as_str())
            {
                problems.error(
                    &self.source,
                    value.span(),
                    Said::new(
                        format!("reading number {number} is given twice"),
                        "a number is given once, so that a doubtful reading can be named",
                        "give one of the two the next number that was never used",
                    ),
                );
            }
        }
    }

    /// The row at a key that holds one table.
    fn one<'s>(&'s self, key: &str, names: &'s Names) -> Option<Row<'s>> {
        let value = self.root.get(key)?;
        match value.get_ref() {
            DeValue::Table(de) => Some(Row::new(de, &self.source, names, value.span())),
            _ => None,
        }
    }

    fn text(&self, key: &str) -> Option<String> {
        let text = self.root.get(key)?.get_ref().as_str()?;
        (!text.trim().is_empty()).then(|| text.to_owned())
    }

    fn build(&self, names: &Names, problems: &mut Problems) -> Build {
        self.checker(names, problems).root(self.table, &self.root);
        self.reading_numbers(problems);
        Build {
            name: self.text("name"),
            note: self.text("note"),
            frame: self.one("frame", names).as_ref().and_then(survey::frame),
            marks: self.all("mark", names, problems, survey::mark),
            points: self.all("point", names, problems, survey::point),
            setups: self.all("setup", names, problems, survey::setup),
            accuracy: self
                .one("accuracy", names)
                .as_ref()
                .map(survey::accuracy)
                .unwrap_or_default(),
            readings: self.all("reading", names, problems, survey::reading),
            ends: self.all("end", names, problems, car::end),
            carriers: self.all("carrier", names, problems, car::carrier),
            gaps: self
                .one("gaps", names)
                .as_ref()
                .map(car::gaps)
                .unwrap_or_default(),
            bodies: self.all("body", names, problems, car::body),
            engine: self.one("engine", names).as_ref().map(car::engine),
            components: self.all("component", names, problems, car::component),
            runs: self.all("run", names, problems, car::run),
            wishes: self
                .one("wishes", names)
                .as_ref()
                .map(car::wishes)
                .unwrap_or_default(),
        }
    }

    fn stock(&self, names: &Names, problems: &mut Problems) -> Stock {
        self.checker(names, problems).root(self.table, &self.root);
        Stock {
            currency: self
                .text("currency")
                .and_then(|code| crate::quantity::Currency::from_code(&code)),
            tubes: self.all("tube", names, problems, shelf::tube),
            items: self.all("item", names, problems, shelf::item),
            offers: self.all("offer", names, problems, shelf::offer),
            suppliers: self.all("supplier", names, problems, shelf::supplier),
            on_hand: self.all("on-hand", names, problems, shelf::on_hand),
            practice: self
                .one("practice", names)
                .as_ref()
                .map(shelf::practice)
                .unwrap_or_default(),
        }
    }

    fn shop(&self, names: &Names, problems: &mut Problems) -> Shop {
        self.checker(names, problems).root(self.table, &self.root);
        Shop {
            entries: self.all("entry", names, problems, record::entry),
        }
    }
}

/// The file in which names of a kind are declared.
pub(crate) const fn home_file(target: Target) -> FileKind {
    match target {
        Target::Tube | Target::Item | Target::Supplier | Target::OnHand | Target::CutFrom => {
            FileKind::Stock
        }
        Target::Piece | Target::Joint => FileKind::Shop,
        _ => FileKind::Build,
    }
}
