//! Tables on paper.

use serde::Serialize;

/// A table.
#[derive(Clone, Debug, Default, PartialEq, Serialize)]
pub struct Table {
    /// Short name, lower case, under which it is exported as a list; empty when it is none.
    pub name: &'static str,
    /// The columns.
    pub columns: Vec<Column>,
    /// The rows; each has a cell for every column.
    pub rows: Vec<Row>,
}

/// A column.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Column {
    /// Words in the head.
    pub head: String,
    /// Where its cells stand.
    pub align: Align,
    /// How wide it is.
    pub width: Width,
    /// Whether its cells are read from afar.
    pub is_big: bool,
    /// Whether its cells are boxes to tick or lines to write on; its cells are then the words beside.
    pub is_to_fill: bool,
}

/// Where the cells of a column stand.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "kebab-case")]
pub enum Align {
    /// Words.
    Left,
    /// Figures.
    Right,
    /// Marks.
    Centre,
}

/// How wide a column is.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
#[serde(tag = "width", content = "value", rename_all = "kebab-case")]
pub enum Width {
    /// As wide as its cells.
    Auto,
    /// A share of what the others leave.
    Share(f64),
    /// In mm.
    Mm(f64),
}

/// A row.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
pub struct Row {
    /// One for each column.
    pub cells: Vec<String>,
    /// How it looks.
    pub tone: Tone,
}

/// How a row looks; told by weight and frame alone.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "kebab-case")]
pub enum Tone {
    /// As usual.
    Plain,
    /// Bold: a sum, a failure.
    Strong,
    /// A line over the whole table that heads the rows below: its first cell.
    Group,
    /// Words over the whole table that belong to the row above: its first cell. In no list.
    Note,
}

impl Column {
    /// A column of words.
    #[must_use]
    pub fn words(head: &str) -> Self {
        Self {
            head: head.to_owned(),
            align: Align::Left,
            width: Width::Auto,
            is_big: false,
            is_to_fill: false,
        }
    }

    /// A column of words that takes what room there is.
    #[must_use]
    pub fn wide(head: &str) -> Self {
        Self {
            width: Width::Share(1.0),
            ..Self::words(head)
        }
    }

    /// A column of figures.
    #[must_use]
    pub fn figures(head: &str) -> Self {
        Self {
            align: Align::Right,
            ..Self::words(head)
        }
    }

    /// A column of boxes to tick.
    #[must_use]
    pub fn boxes(head: &str) -> Self {
        Self {
            align: Align::Centre,
            is_to_fill: true,
            ..Self::words(head)
        }
    }

    /// The same, so many mm wide: its head and cells break where they are longer.
    #[must_use]
    pub const fn mm(mut self, mm: f64) -> Self {
        self.width = Width::Mm(mm);
        self
    }

    /// The same, read from afar.
    #[must_use]
    pub fn big(mut self) -> Self {
        self.is_big = true;
        self
    }
}

impl Table {
    /// A table with these columns and no rows.
    #[must_use]
    pub const fn new(name: &'static str, columns: Vec<Column>) -> Self {
        Self {
            name,
            columns,
            rows: Vec::new(),
        }
    }

    /// Adds a row; cells that are missing are empty.
    pub fn row<const N: usize>(&mut self, cells: [String; N]) {
        self.push(cells.into(), Tone::Plain);
    }

    /// Adds a row of as many cells as the caller has; cells that are missing are empty.
    pub fn cells(&mut self, cells: Vec<String>) {
        self.push(cells, Tone::Plain);
    }

    /// Adds a bold row.
    pub fn strong_row<const N: usize>(&mut self, cells: [String; N]) {
        self.push(cells.into(), Tone::Strong);
    }

    /// Adds a line that heads the rows below it.
    pub fn group(&mut self, words: impl Into<String>) {
        self.push(vec![words.into()], Tone::Group);
    }

    /// Adds words below the last row.
    pub fn note(&mut self, words: impl Into<String>) {
        self.push(vec![words.into()], Tone::Note);
    }

    fn push(&mut self, mut cells: Vec<String>, tone: Tone) {
        cells.resize(self.columns.len(), String::new());
        self.rows.push(Row { cells, tone });
    }

    /// Whether it has no rows.
    #[must_use]
    pub fn is_empty(&self) -> bool {
        self.rows.is_empty()
    }
}
