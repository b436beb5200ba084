//! The checked scan.

use core::fmt;

use tubewright_geometry::{Point, TriangleMesh};

/// Triangles over shared vertices, or points only; millimetres in the scan's own frame.
///
/// Every coordinate is finite, every triangle has an area and names vertices that are there.
#[derive(Clone, Debug, PartialEq)]
pub struct Scan {
    pub(crate) vertices: Vec<Point>,
    pub(crate) triangles: Vec<[u32; 3]>,
    pub(crate) warnings: Vec<ScanWarning>,
}

impl Scan {
    /// The vertices, or the points of a points-only scan, in mm.
    #[must_use]
    pub fn vertices(&self) -> &[Point] {
        &self.vertices
    }

    /// Vertex numbers of each triangle; empty for a points-only scan.
    #[must_use]
    pub fn triangles(&self) -> &[[u32; 3]] {
        &self.triangles
    }

    /// What was put right on the way in.
    #[must_use]
    pub fn warnings(&self) -> &[ScanWarning] {
        &self.warnings
    }

    /// Whether the scan has points but no surface.
    #[must_use]
    pub fn is_points_only(&self) -> bool {
        self.triangles.is_empty()
    }

    /// The surface as a mesh; `None` for a points-only scan.
    #[must_use]
    pub fn mesh(&self) -> Option<TriangleMesh> {
        TriangleMesh::new(self.vertices.clone(), self.triangles.clone())
    }

    /// The surface as a mesh without copying, or the points back.
    ///
    /// # Errors
    ///
    /// The points, when the scan has no triangles.
    pub fn into_mesh(self) -> Result<TriangleMesh, Vec<Point>> {
        if self.triangles.is_empty() {
            return Err(self.vertices);
        }
        TriangleMesh::new(self.vertices, self.triangles).ok_or_else(Vec::new)
    }

    /// Smallest box along the scan's axes that holds every vertex: lowest and highest corner.
    #[must_use]
    pub fn bounds(&self) -> (Point, Point) {
        let first = self.vertices.first().copied().unwrap_or(Point::ORIGIN);
        self.vertices.iter().fold((first, first), |(low, high), v| {
            (
                Point::new(low.x.min(v.x), low.y.min(v.y), low.z.min(v.z)),
                Point::new(high.x.max(v.x), high.y.max(v.y), high.z.max(v.z)),
            )
        })
    }
}

/// Something that was put right while reading, with its count.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[non_exhaustive]
pub enum ScanWarning {
    /// Triangles without area, dropped.
    DroppedTriangles(u64),
    /// Polygons with more than three corners, split into fans.
    SplitPolygons(u64),
    /// Vertices at the same place, merged (STL repeats each vertex in every triangle).
    MergedVertices(u64),
    /// Vertices of no triangle, left out of a surface.
    UnusedVertices(u64),
    /// Bytes after the end of the data, skipped.
    TrailingBytes(u64),
    /// The text ends without its closing word; all whole triangles before it were read.
    NoClosingWord,
}

impl fmt::Display for ScanWarning {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::DroppedTriangles(n) => write!(f, "{n} triangles without area dropped"),
            Self::SplitPolygons(n) => write!(f, "{n} polygons split into triangles"),
            Self::MergedVertices(n) => write!(f, "{n} repeated vertices merged"),
            Self::UnusedVertices(n) => write!(f, "{n} vertices that no triangle uses left out"),
            Self::TrailingBytes(n) => write!(f, "{n} bytes after the end of the data skipped"),
            Self::NoClosingWord => {
                write!(
                    f,
                    "the file ends without its closing word: it may be cut short"
                )
            }
        }
    }
}
