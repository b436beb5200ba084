//! One file's text with its lines, and the problems found in it.

use crate::problem::{Problem, Severity};
use crate::span::{FileKind, Span};
use core::ops::Range;

/// Words quoted in a message are cut off after this many letters.
const LONGEST_WORDS: usize = 60;

/// The text of one file.
pub(crate) struct Source<'a> {
    pub(crate) file: FileKind,
    pub(crate) text: &'a str,
    line_starts: Vec<usize>,
    /// Stretches after a syntax error whose content was guessed: what is wrong there follows from
    /// the syntax error, which is told already.
    guessed: Vec<Range<usize>>,
}

/// What to say about one place.
pub(crate) struct Said {
    pub(crate) what: String,
    pub(crate) why: String,
    pub(crate) do_this: String,
    pub(crate) meant: Option<String>,
}

impl Said {
    pub(crate) fn new(
        what: impl Into<String>,
        why: impl Into<String>,
        do_this: impl Into<String>,
    ) -> Self {
        Self {
            what: what.into(),
            why: why.into(),
            do_this: do_this.into(),
            meant: None,
        }
    }

    pub(crate) fn meant(mut self, meant: Option<String>) -> Self {
        self.meant = meant;
        self
    }
}

impl<'a> Source<'a> {
    pub(crate) fn new(file: FileKind, text: &'a str) -> Self {
        let line_starts = core::iter::once(0)
            .chain(text.match_indices('\n').map(|(at, _)| at + 1))
            .collect();
        Self {
            file,
            text,
            line_starts,
            guessed: Vec::new(),
        }
    }

    pub(crate) fn span(&self, range: Range<usize>) -> Span {
        Span::new(self.file, range.start, range.end)
    }

    /// Line and column in characters, counted from 1.
    pub(crate) fn line_column(&self, at: usize) -> (usize, usize) {
        let at = at.min(self.text.len());
        let line = self.line_starts.partition_point(|&start| start <= at);
        let start = self.line_starts.get(line.saturating_sub(1)).copied();
        let before = self.text.get(start.unwrap_or(0)..at).unwrap_or_default();
        (line, before.chars().count() + 1)
    }

    /// Marks everything from the line of `at` to the next table header as guessed.
    pub(crate) fn guess_from(&mut self, at: usize) {
        let (line, _) = self.line_column(at);
        let start = self.line_starts.get(line - 1).copied().unwrap_or(0);
        let end = self
            .line_starts
            .iter()
            .skip(line)
            .copied()
            .find(|&next| {
                self.text
                    .get(next..)
                    .is_some_and(|rest| rest.trim_start_matches([' ', '\t']).starts_with('['))
            })
            .unwrap_or(self.text.len() + 1);
        self.guessed.push(start..end);
    }

    fn is_guessed(&self, range: &Range<usize>) -> bool {
        self.guessed
            .iter()
            .any(|guessed| guessed.start <= range.end && range.start < guessed.end)
    }

    /// The words of a range; for an empty range what follows on its line, or the whole line.
    fn words(&self, range: &Range<usize>) -> &'a str {
        let first_line = |text: &'a str| text.lines().next().unwrap_or_default();
        let from = |start: usize| self.text.get(start..).map(first_line).unwrap_or_default();
        if !range.is_empty() {
            return self
                .text
                .get(range.clone())
                .map(first_line)
                .unwrap_or_default();
        }
        // What the file as a whole lacks stands nowhere.
        if range.start == 0 {
            return "";
        }
        let rest = from(range.start);
        if !rest.trim().is_empty() {
            return rest;
        }
        let (line, _) = self.line_column(range.start);
        self.line_starts
            .get(line.saturating_sub(1))
            .map(|&start| from(start))
            .unwrap_or_default()
    }

    pub(crate) fn problem(&self, range: Range<usize>, severity: Severity, said: Said) -> Problem {
        let (line, column) = self.line_column(range.start);
        let words = self.words(&range).trim();
        let mut shown: String = words.chars().take(LONGEST_WORDS).collect();
        if shown.len() < words.len() {
            shown.push('…');
        }
        Problem {
            file: self.file,
            line,
            column,
            span: self.span(range),
            words: shown,
            what: said.what,
            why: said.why,
            do_this: said.do_this,
            severity,
            did_you_mean: said.meant,
        }
    }
}

/// Problems of all files, as they are found.
#[derive(Default)]
pub(crate) struct Problems {
    pub(crate) found: Vec<Problem>,
}

impl Problems {
    pub(crate) fn error(&mut self, source: &Source<'_>, range: Range<usize>, said: Said) {
        if !source.is_guessed(&range) {
            self.found
                .push(source.problem(range, Severity::Error, said));
        }
    }

    pub(crate) fn hint(&mut self, source: &Source<'_>, range: Range<usize>, said: Said) {
        if !source.is_guessed(&range) {
            self.found.push(source.problem(range, Severity::Hint, said));
        }
    }

    pub(crate) fn syntax(&mut self, source: &Source<'_>, range: Range<usize>, said: Said) {
        self.found
            .push(source.problem(range, Severity::Error, said));
    }
}
