//! Triangle meshes with a tree for fast distances.

use crate::bounds::Bounds;
use crate::box_tree::BoxTree;
use crate::vector::Point;

/// Triangles over shared vertices, in millimetres, with a tree of boxes over them. The tree is built
/// once, with the mesh.
#[derive(Clone, Debug)]
pub struct TriangleMesh {
    vertices: Vec<Point>,
    triangles: Vec<[u32; 3]>,
    bounds: Bounds,
    closed: bool,
    tree: BoxTree,
}

impl TriangleMesh {
    /// Builds the mesh; `None` when a triangle names a vertex that is not there, a coordinate is not
    /// finite, or there is no triangle. Triangles without area are kept: they count as their edges.
    #[must_use]
    pub fn new(vertices: Vec<Point>, triangles: Vec<[u32; 3]>) -> Option<Self> {
        let count = u32::try_from(vertices.len()).ok()?;
        let sound = !triangles.is_empty()
            && u32::try_from(triangles.len()).is_ok()
            && vertices.iter().all(|v| v.is_finite())
            && triangles.iter().flatten().all(|&index| index < count);
        sound.then(|| {
            let corners = |t: &[u32; 3]| t.map(|i| vertices[i as usize]);
            let tree = BoxTree::build(triangles.iter().map(|t| Bounds::of_points(corners(t))));
            let bounds = Bounds::of_points(triangles.iter().flat_map(corners));
            let closed = is_closed(&vertices, &triangles);
            Self {
                vertices,
                triangles,
                bounds,
                closed,
                tree,
            }
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

    /// A box that holds every triangle.
    #[must_use]
    pub const fn bounds(&self) -> Bounds {
        self.bounds
    }

    /// True when the surface has no border: every edge is run through as often one way as the other
    /// (vertices at the very same place count as one). Only such a mesh has an inside.
    #[must_use]
    pub const fn is_closed(&self) -> bool {
        self.closed
    }

    pub(crate) const fn tree(&self) -> &BoxTree {
        &self.tree
    }

    /// Corners by a number that the tree gave.
    pub(crate) fn corners(&self, index: usize) -> [Point; 3] {
        self.triangles[index].map(|i| self.vertices[i as usize])
    }
}

fn is_closed(vertices: &[Point], triangles: &[[u32; 3]]) -> bool {
    let same = weld(vertices);
    let mut edges: Vec<(u32, u32, bool)> = Vec::with_capacity(triangles.len() * 3);
    for t in triangles {
        let [a, b, c] = t.map(|i| same[i as usize]);
        for (from, to) in [(a, b), (b, c), (c, a)] {
            if from != to {
                edges.push((from.min(to), from.max(to), from < to));
            }
        }
    }
    edges.sort_unstable();
    edges
        .chunk_by(|p, q| (p.0, p.1) == (q.0, q.1))
        .all(|run| run.iter().filter(|e| e.2).count() * 2 == run.len())
        && !edges.is_empty()
}

/// For each vertex the first one at the very same place.
fn weld(vertices: &[Point]) -> Vec<u32> {
    let key = |i: u32| {
        let p = vertices[i as usize];
        // Adding zero makes -0 into +0.
        [p.x + 0.0, p.y + 0.0, p.z + 0.0].map(f64::to_bits)
    };
    let count = u32::try_from(vertices.len()).unwrap_or(u32::MAX);
    let mut order: Vec<u32> = (0..count).collect();
    order.sort_unstable_by_key(|&i| (key(i), i));
    let mut same: Vec<u32> = (0..count).collect();
    for run in order.chunk_by(|&i, &j| key(i) == key(j)) {
        for &i in run {
            same[i as usize] = run[0];
        }
    }
    same
}
