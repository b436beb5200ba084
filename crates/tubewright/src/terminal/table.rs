//! Plain tables of at most 80 columns.

use unicode_width::UnicodeWidthStr;

/// The width that every human output keeps to.
pub(crate) const COLUMNS: usize = 80;

/// Which side of its column a cell keeps to.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Side {
    /// Words.
    Left,
    /// Numbers.
    Right,
}

/// A table whose last column wraps into what is left of the line.
#[derive(Clone, Debug)]
pub(crate) struct Table {
    heads: Vec<(String, Side)>,
    rows: Vec<Vec<String>>,
    indent: usize,
}

impl Table {
    /// A table with these column heads.
    pub(crate) fn new(heads: &[(&str, Side)]) -> Self {
        let heads = heads
            .iter()
            .map(|&(head, side)| (head.to_owned(), side))
            .collect();
        Self {
            heads,
            rows: Vec::new(),
            indent: 2,
        }
    }

    /// Adds a row; missing cells are empty, more cells than heads are dropped.
    pub(crate) fn row<I: IntoIterator<Item = S>, S: Into<String>>(&mut self, cells: I) {
        let mut cells: Vec<String> = cells.into_iter().map(Into::into).collect();
        cells.resize(self.heads.len(), String::new());
        self.rows.push(cells);
    }

    /// True when no row was added.
    pub(crate) fn is_empty(&self) -> bool {
        self.rows.is_empty()
    }

    /// The lines, each at most [`COLUMNS`] wide where the columns before the last allow it.
    pub(crate) fn render(&self) -> String {
        let widths: Vec<usize> = self
            .heads
            .iter()
            .enumerate()
            .map(|(i, (head, _))| {
                let cells = self
                    .rows
                    .iter()
                    .filter_map(|row| row.get(i))
                    .map(|c| c.width());
                cells.chain([head.width()]).max().unwrap_or(0)
            })
            .collect();
        let fixed: usize = widths.iter().rev().skip(1).map(|w| w + 2).sum::<usize>() + self.indent;
        let last = COLUMNS.saturating_sub(fixed).max(16);
        let mut out = String::new();
        let heads: Vec<String> = self.heads.iter().map(|(head, _)| head.clone()).collect();
        if heads.iter().any(|head| !head.is_empty()) {
            self.push_row(&mut out, &heads, &widths, last);
        }
        for row in &self.rows {
            self.push_row(&mut out, row, &widths, last);
        }
        out
    }

    fn push_row(&self, out: &mut String, cells: &[String], widths: &[usize], last: usize) {
        let mut line = " ".repeat(self.indent);
        for ((cell, width), (_, side)) in cells
            .iter()
            .zip(widths)
            .zip(&self.heads)
            .take(cells.len().saturating_sub(1))
        {
            let pad = " ".repeat(width.saturating_sub(cell.width()));
            match side {
                Side::Left => line.push_str(&format!("{cell}{pad}  ")),
                Side::Right => line.push_str(&format!("{pad}{cell}  ")),
            }
        }
        let hang = line.width();
        let text = cells.last().map_or("", String::as_str);
        let (side, width) = (
            self.heads.last().map(|h| h.1),
            widths.last().copied().unwrap_or(0),
        );
        let mut pieces = wrap(text, last).into_iter();
        let first = pieces.next().unwrap_or_default();
        if side == Some(Side::Right) {
            line.push_str(&" ".repeat(width.min(last).saturating_sub(first.width())));
        }
        line.push_str(&first);
        out.push_str(line.trim_end());
        out.push('\n');
        for piece in pieces {
            out.push_str(&" ".repeat(hang));
            out.push_str(&piece);
            out.push('\n');
        }
    }
}

/// Columns that a text takes on the terminal; the codes of its colours take none.
fn columns(text: &str) -> usize {
    anstream::adapter::strip_str(text)
        .map(UnicodeWidthStr::width)
        .sum()
}

/// Breaks text at spaces into lines of at most `width` columns; a word longer than that stands alone.
pub(crate) fn wrap(text: &str, width: usize) -> Vec<String> {
    let mut lines = Vec::new();
    let mut line = String::new();
    for word in text.split_whitespace() {
        let needed = columns(&line) + usize::from(!line.is_empty()) + columns(word);
        if !line.is_empty() && needed > width {
            lines.push(core::mem::take(&mut line));
        }
        if !line.is_empty() {
            line.push(' ');
        }
        line.push_str(word);
    }
    if !line.is_empty() || lines.is_empty() {
        lines.push(line);
    }
    lines
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn colour_takes_no_columns() {
        let plain =
            "Mind: grind the coat off on both sides, outside and inside, before you weld it";
        for width in 8..90 {
            let coloured = super::super::styled(super::super::WARNS, plain);
            let stripped: Vec<String> = wrap(&coloured, width)
                .iter()
                .map(|line| anstream::adapter::strip_str(line).to_string())
                .collect();
            assert_eq!(stripped, wrap(plain, width), "{width} columns");
        }
    }

    #[test]
    fn no_line_is_wider_than_the_terminal_and_no_word_is_lost() {
        let mut table = Table::new(&[
            ("piece", Side::Left),
            ("mm", Side::Right),
            ("note", Side::Left),
        ]);
        let note = "a long note that must be broken over several lines because it does not fit beside the columns";
        table.row(["L1", "1234", note]);
        table.row(["左排气", "9", "short"]);
        let text = table.render();
        assert!(text.lines().all(|line| line.width() <= COLUMNS), "{text}");
        let words: Vec<_> = text.split_whitespace().collect();
        assert!(note.split_whitespace().all(|word| words.contains(&word)));
        let columns: Vec<_> = text
            .lines()
            .filter(|l| l.contains("1234") || l.contains(" 9 "))
            .map(|l| {
                let end = l
                    .find("1234")
                    .map_or_else(|| l.find(" 9 ").map(|i| i + 2), |i| Some(i + 4))
                    .unwrap();
                l[..end].width()
            })
            .collect();
        assert_eq!(
            columns[0], columns[1],
            "numbers end in the same column whatever the script"
        );
    }
}
