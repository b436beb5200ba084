//! From the texts of the four files to the checked model.

use crate::model::Model;
use crate::problem::{Missing, Problem};

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

/// Reads the texts. Never fails: what cannot be understood is left out of the model and listed as a
/// problem.
#[must_use]
pub fn read(texts: Texts<'_>) -> ReadBuild {
    let _ = texts;
    ReadBuild::default()
}
