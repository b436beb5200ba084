//! The printed shop packet.
//!
//! Give it a [`Packet`]: every word, table and drawing that goes on paper, as values. [`typeset`]
//! makes the PDF, byte for byte the same for the same packet. It decides nothing about the job: a
//! sheet that could not be made is a [`Body::NotMade`] with its reason and gets a page of its own,
//! so that it is missed by nobody.
//!
//! This crate knows no build, no plan, no file and no clock: the date is a text of the caller's.
//!
//! The typesetting engine is by far the slowest build of the project, so it stands behind the
//! feature `typeset`; without it [`typeset`] returns [`TypesetError::NoEngine`], and the packet's
//! types and [`template_data`] are there all the same.

#[cfg(feature = "typeset")]
mod layout;
mod lists;
mod packet;
mod table;
#[cfg(feature = "typeset")]
mod world;

#[cfg(feature = "typeset")]
pub use layout::{PageLayout, Placed};
pub use lists::{List, lists_of, to_csv, to_json};
pub use packet::{
    Block, Body, Figure, Packet, PacketPaper, Picture, Sheet, SheetKind, Stamp, Step,
};
pub use table::{Align, Column, Row, Table, Tone, Width};

/// The page design: what a sheet, a table, a caution looks like.
#[cfg(feature = "typeset")]
const TEMPLATE: &str = include_str!("packet.typ");

/// Why there is no PDF.
#[derive(Clone, Debug, PartialEq, Eq, thiserror::Error)]
#[non_exhaustive]
pub enum TypesetError {
    /// The engine refused the page design or a drawing.
    #[error("the packet cannot be typeset: {0}")]
    Engine(String),
    /// This build of the program has no typesetting engine.
    #[error("this tubewright was built without its typesetting engine, so it prints no PDF")]
    NoEngine,
}

/// The packet as the JSON text that the page design reads.
#[must_use]
pub fn template_data(packet: &Packet) -> String {
    // Strings, numbers and lists only: writing them cannot fail.
    serde_json::to_string(packet).unwrap_or_default()
}

/// Typesets the packet to the bytes of a PDF file. The same packet gives the same bytes.
///
/// # Errors
/// [`TypesetError`], with the engine's own words.
#[cfg(feature = "typeset")]
pub fn typeset(packet: &Packet) -> Result<Vec<u8>, TypesetError> {
    world::typeset(TEMPLATE, &template_data(packet)).map_err(TypesetError::Engine)
}

/// Where everything stands on the pages of the packet: what [`typeset`] would print.
///
/// # Errors
/// [`TypesetError`], with the engine's own words.
#[cfg(feature = "typeset")]
pub fn layout(packet: &Packet) -> Result<Vec<PageLayout>, TypesetError> {
    world::compiled(TEMPLATE, &template_data(packet))
        .map(|document| layout::pages_of(&document))
        .map_err(TypesetError::Engine)
}

/// Without the engine there is no PDF.
///
/// # Errors
/// Always [`TypesetError::NoEngine`].
#[cfg(not(feature = "typeset"))]
pub fn typeset(_packet: &Packet) -> Result<Vec<u8>, TypesetError> {
    Err(TypesetError::NoEngine)
}
