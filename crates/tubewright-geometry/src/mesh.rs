//! Triangle meshes.

use crate::vector::Point;

/// Triangles over shared vertices, in millimetres.
#[derive(Clone, Debug)]
pub struct TriangleMesh {
    vertices: Vec<Point>,
    triangles: Vec<[u32; 3]>,
}

impl TriangleMesh {
    /// Builds the mesh; `None` when a triangle names a vertex that is not there, a coordinate is not
    /// finite, or there is no triangle.
    #[must_use]
    pub fn new(vertices: Vec<Point>, triangles: Vec<[u32; 3]>) -> Option<Self> {
        let count = u32::try_from(vertices.len()).ok()?;
        let sound = !triangles.is_empty()
            && vertices.iter().all(|v| v.is_finite())
            && triangles.iter().flatten().all(|&index| index < count);
        sound.then_some(Self {
            vertices,
            triangles,
        })
    }

    /// The vertices in mm.
    #[must_use]
    pub fn vertices(&self) -> &[Point] {
        &self.vertices
    }

    /// Vertex numbers of each triangle.
    #[must_use]
    pub fn triangles(&self) -> &[[u32; 3]] {
        &self.triangles
    }
}
