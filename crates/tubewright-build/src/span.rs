//! Where in which file something was written.

use core::fmt;
use core::ops::Range;

/// One of the four files of a build folder.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum FileKind {
    /// `build.toml`: the car.
    Build,
    /// `stock.toml`: the shop's items, offers and practice.
    Stock,
    /// `shop.toml`: the append-only record of what happened to the steel.
    Shop,
    /// `plan.json`: everything derived.
    Plan,
}

impl FileKind {
    /// All four, in the order in which they are read and written.
    pub const ALL: [Self; 4] = [Self::Build, Self::Stock, Self::Shop, Self::Plan];

    /// The file's name inside the folder.
    #[must_use]
    pub const fn file_name(self) -> &'static str {
        match self {
            Self::Build => "build.toml",
            Self::Stock => "stock.toml",
            Self::Shop => "shop.toml",
            Self::Plan => "plan.json",
        }
    }
}

impl fmt::Display for FileKind {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(self.file_name())
    }
}

/// Bytes `start..end` of one file.
///
/// Two spans always compare equal: where something stands is no part of what it says, so that two
/// models can be compared whatever the order and the comments of the files they came from. Compare
/// [`Span::range`] where the place itself is meant.
#[derive(Clone, Copy, Debug)]
pub struct Span {
    /// The file.
    pub file: FileKind,
    /// First byte.
    pub start: usize,
    /// One past the last byte.
    pub end: usize,
}

impl Span {
    /// A span of bytes in a file.
    #[must_use]
    pub const fn new(file: FileKind, start: usize, end: usize) -> Self {
        Self { file, start, end }
    }

    /// For values made by a program and not read from a file.
    #[must_use]
    pub const fn none() -> Self {
        Self::new(FileKind::Build, 0, 0)
    }

    /// The bytes.
    #[must_use]
    pub const fn range(self) -> Range<usize> {
        self.start..self.end
    }
}

impl PartialEq for Span {
    fn eq(&self, _: &Self) -> bool {
        true
    }
}

impl Eq for Span {}
