//! Why a scan was refused.

use core::fmt;

/// Where in the file.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[non_exhaustive]
pub enum Place {
    /// A line of a text file, from 1.
    Line(u64),
    /// A triangle or polygon of a binary file, from 1.
    Face(u64),
    /// A vertex of a binary file, from 1.
    Vertex(u64),
}

impl fmt::Display for Place {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::Line(n) => write!(f, "line {n}"),
            Self::Face(n) => write!(f, "face {n}"),
            Self::Vertex(n) => write!(f, "vertex {n}"),
        }
    }
}

/// Why a scan was refused. Each message says what, where and what to do.
#[derive(Clone, Debug, PartialEq, thiserror::Error)]
#[non_exhaustive]
pub enum ScanError {
    /// The file has no bytes.
    #[error("the scan is empty; export it again")]
    Empty,
    /// Millimetres per unit is not a finite number above zero.
    #[error(
        "{mm_per_unit} mm per unit makes no size; say what one unit of the scan is (mm, in, m)"
    )]
    BadUnit {
        /// What was passed.
        mm_per_unit: f64,
    },
    /// Longer than the limit.
    #[error(
        "the scan has {bytes} bytes and at most {limit} are read; \
         crop it to the part that the run passes, or export fewer triangles"
    )]
    TooManyBytes {
        /// Length of the file.
        bytes: usize,
        /// The limit.
        limit: usize,
    },
    /// More triangles than the limit.
    #[error("the scan has more than {limit} triangles; crop or thin it before export")]
    TooManyTriangles {
        /// The limit.
        limit: usize,
    },
    /// More vertices than the limit.
    #[error("the scan has more than {limit} vertices or points; crop or thin it before export")]
    TooManyVertices {
        /// The limit.
        limit: usize,
    },
    /// Looks like none of the formats.
    #[error("this is no STL, OBJ, PLY or XYZ file; export the scan as one of these")]
    UnknownFormat,
    /// A coordinate is NaN or infinite.
    #[error("{place}: a coordinate is not a number ({text}); the export is damaged there")]
    NotFinite {
        /// Where.
        place: Place,
        /// What was read.
        text: String,
    },
    /// A coordinate is absurdly far away.
    #[error(
        "vertex {vertex}: {coordinate_mm} mm from the scan's origin, more than {limit_mm} mm; \
         check the unit, or move the scan to its own origin before export"
    )]
    TooFar {
        /// Number of the vertex as read, from 1.
        vertex: u64,
        /// The coordinate in mm.
        coordinate_mm: f64,
        /// The limit in mm.
        limit_mm: f64,
    },
    /// Something that should be a number is none.
    #[error("{place}: expected a number, read \"{text}\"")]
    NotANumber {
        /// Where.
        place: Place,
        /// What was read, cut to 40 bytes.
        text: String,
    },
    /// The file ends too soon.
    #[error("the file ends too soon: {missing}; copy or export it again")]
    Truncated {
        /// What is not there.
        missing: String,
    },
    /// A face names a vertex that is not there.
    #[error("{place}: the face names vertex {index}, but there are {vertices}")]
    NoSuchVertex {
        /// Where.
        place: Place,
        /// The number as written.
        index: i64,
        /// How many vertices there are.
        vertices: u64,
    },
    /// The file breaks a rule of its format.
    #[error("{place}: {problem}")]
    Malformed {
        /// Where.
        place: Place,
        /// What is wrong, in words.
        problem: String,
    },
    /// A part of the format that is not read.
    #[error("{what} is not read; export as plain triangles")]
    Unsupported {
        /// What.
        what: String,
    },
    /// No triangle with an area and no point is left.
    #[error("nothing is left of the scan: {dropped} triangles had no area and there are no points")]
    NothingLeft {
        /// Triangles that were dropped.
        dropped: u64,
    },
}
