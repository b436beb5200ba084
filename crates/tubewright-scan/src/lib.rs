//! Phone scans and meshes from other programs, as bounded and checked triangles or points.
//!
//! Bytes go in; a [`Scan`] in millimetres or a [`ScanError`] that says where and why comes out.
//! Formats: STL (ASCII and binary), OBJ, PLY (ASCII, little-endian, big-endian) and plain XYZ
//! point lists; OBJ and PLY may carry points only.
//!
//! None of these formats says what one unit is, and this crate does not guess: the caller passes
//! `mm_per_unit` (1 for millimetres, 25.4 for inches, 1000 for metres).
//!
//! ```
//! use tubewright_scan::{Limits, ScanFormat, read_scan};
//! let text = b"v 0 0 0\nv 1 0 0\nv 0 1 0\nf 1 2 3\n";
//! let scan = read_scan(text, Some(ScanFormat::Obj), 25.4, &Limits::default())?;
//! assert_eq!(scan.triangles().len(), 1);
//! // The second vertex was written 1 in from the first: 25.4 mm.
//! assert_eq!(scan.vertices()[1].x, 25.4);
//! # Ok::<(), tubewright_scan::ScanError>(())
//! ```
//!
//! # Why the readers are our own
//!
//! A scan comes from outside and may be cut short, mis-exported or hostile; the reader must name
//! the line or triangle, never allocate on the word of a header, and never run on. The published
//! readers were tried against that: the STL and OBJ ones keep single-precision coordinates and do
//! not say where a bad one stands, and the PLY one makes as many values as the header says when an
//! element has no properties, so that a file of 60 bytes can fill the memory. They serve here as
//! second opinions in the tests instead: on sound files both must read the same.
//!
//! What it cannot do: textures, normals and colours are skipped; PLY triangle strips are refused;
//! a polygon with more than three corners is split into a fan, which is right for convex ones.

mod assemble;
mod error;
mod limits;
mod obj;
mod ply;
mod scan;
mod stl;
mod text;
mod xyz;

pub use error::{Place, ScanError};
pub use limits::{Limits, ScanFormat};
pub use scan::{Scan, ScanWarning};

/// Reads a scan.
///
/// `format` is what the file's name says ([`ScanFormat::from_extension`]); `None` tells the format
/// from the content. `mm_per_unit` must be finite and greater than zero.
///
/// # Errors
///
/// Every refusal is a [`ScanError`] with the place and the reason. The call never panics, and its
/// memory and time stay proportional to the length of `bytes`, whatever a header claims.
pub fn read_scan(
    bytes: &[u8],
    format: Option<ScanFormat>,
    mm_per_unit: f64,
    limits: &Limits,
) -> Result<Scan, ScanError> {
    if !(mm_per_unit.is_finite() && mm_per_unit > 0.0) {
        return Err(ScanError::BadUnit { mm_per_unit });
    }
    if bytes.len() > limits.max_bytes {
        return Err(ScanError::TooManyBytes {
            bytes: bytes.len(),
            limit: limits.max_bytes,
        });
    }
    if bytes.is_empty() {
        return Err(ScanError::Empty);
    }
    // A byte-order mark before text is no part of it.
    let bytes = bytes.strip_prefix(b"\xEF\xBB\xBF").unwrap_or(bytes);
    let format = match format {
        Some(format) => format,
        None => ScanFormat::of_content(bytes).ok_or(ScanError::UnknownFormat)?,
    };
    let raw = match format {
        ScanFormat::Stl => stl::read(bytes, limits)?,
        ScanFormat::Obj => obj::read(bytes, limits)?,
        ScanFormat::Ply => ply::read(bytes, limits)?,
        ScanFormat::Xyz => xyz::read(bytes, limits)?,
    };
    assemble::assemble(raw, mm_per_unit, limits)
}
