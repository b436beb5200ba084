//! What is wrong or missing in a build folder, as values.

use crate::span::{FileKind, Span};
use core::fmt;

/// How much a problem matters.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Severity {
    /// What was written is used, but looks odd.
    Hint,
    /// What was written cannot be used; the element it belongs to is left out.
    Error,
}

/// Something wrong in one of the files.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Problem {
    /// The file.
    pub file: FileKind,
    /// Line, counted from 1.
    pub line: usize,
    /// Column in characters, counted from 1.
    pub column: usize,
    /// The bytes.
    pub span: Span,
    /// The offending words as they stand in the file, shortened when long.
    pub words: String,
    /// What was read.
    pub what: String,
    /// Why it cannot stand so.
    pub why: String,
    /// What to do, or to type.
    pub do_this: String,
    /// How much it matters.
    pub severity: Severity,
    /// The name or key that was probably meant.
    pub did_you_mean: Option<String>,
}

impl fmt::Display for Problem {
    /// `build.toml:12:9: what` and below it the words, why and what to do.
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        writeln!(
            f,
            "{}:{}:{}: {}",
            self.file, self.line, self.column, self.what
        )?;
        if !self.words.is_empty() {
            writeln!(f, "  here: {}", self.words)?;
        }
        if !self.why.is_empty() {
            writeln!(f, "  why:  {}", self.why)?;
        }
        if let Some(meant) = &self.did_you_mean {
            writeln!(f, "  did you mean `{meant}`?")?;
        }
        write!(f, "  do:   {}", self.do_this)
    }
}

/// What a job of the trade (J1 Measure … J12 Record) lacks for this car.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Missing {
    /// Number of the job, 1 to 12.
    pub job: u8,
    /// The job's word: `Measure`, `Route`, ….
    pub title: &'static str,
    /// What is missing and what to write, one sentence each.
    pub lacks: Vec<String>,
}
