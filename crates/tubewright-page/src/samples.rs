//! The demonstration builds, as the program brings them.

/// A demonstration build.
#[derive(Debug)]
pub struct Sample {
    /// Short name, fit for an address.
    pub name: &'static str,
    /// One line for the person.
    pub title: &'static str,
    /// Files below the build folder: path and content.
    pub files: &'static [(&'static str, &'static [u8])],
}

impl Sample {
    /// The text of one of its files.
    #[must_use]
    pub fn text(&self, path: &str) -> Option<&'static str> {
        let (_, bytes) = self.files.iter().find(|(name, _)| *name == path)?;
        core::str::from_utf8(bytes).ok()
    }
}
