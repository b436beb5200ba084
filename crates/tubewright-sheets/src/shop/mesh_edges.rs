//! The edges of a mesh that a draughtsman would draw.

use tubewright_geometry::{Point, TriangleMesh, UnitVector, Vector};

/// No more edges than this are drawn of one mesh, the longest first: a picture, not the scan.
pub(crate) const MOST_EDGES: usize = 3000;

/// Edges where the surface turns away from the eye, edges of the border, and creases sharper than
/// about 40° on the side toward the eye. At most [`MOST_EDGES`], the longest.
pub(crate) fn mesh_edges(mesh: &TriangleMesh, eye: UnitVector) -> Vec<[Point; 2]> {
    let vertices = mesh.vertices();
    let corner = |i: u32| {
        usize::try_from(i)
            .ok()
            .and_then(|i| vertices.get(i))
            .copied()
            .unwrap_or_default()
    };
    // Every edge by its two places, so that a soup of triangles welds; with the normal beside it.
    let mut sides: Vec<([[u64; 3]; 2], [Point; 2], Vector)> = Vec::new();
    for t in mesh.triangles() {
        let [a, b, c] = t.map(corner);
        let Some(normal) = (b - a).cross(c - a).direction() else {
            continue;
        };
        for (p, q) in [(a, b), (b, c), (c, a)] {
            let (kp, kq) = (key(p), key(q));
            let entry = if kp <= kq {
                ([kp, kq], [p, q])
            } else {
                ([kq, kp], [q, p])
            };
            sides.push((entry.0, entry.1, normal.vector()));
        }
    }
    sides.sort_by_key(|s| s.0);
    let mut drawn: Vec<(f64, [Point; 2])> = Vec::new();
    for run in sides.chunk_by(|p, q| p.0 == q.0) {
        let Some((_, edge, _)) = run.first() else {
            continue;
        };
        let shows = match run {
            [one, two] => {
                let (d1, d2) = (eye.dot(one.2), eye.dot(two.2));
                let turns_away = (d1 > 0.0) != (d2 > 0.0);
                let is_crease = one.2.dot(two.2) < 0.766 && (d1 > 0.0 || d2 > 0.0);
                turns_away || is_crease
            }
            _ => true,
        };
        let [a, b] = *edge;
        if shows {
            drawn.push((a.distance(b), *edge));
        }
    }
    // A stable sort: equal lengths keep the order of their places.
    drawn.sort_by(|p, q| q.0.total_cmp(&p.0));
    drawn.truncate(MOST_EDGES);
    drawn.into_iter().map(|(_, edge)| edge).collect()
}

fn key(p: Point) -> [u64; 3] {
    // Adding zero makes -0 into +0.
    p.to_array().map(|c| (c + 0.0).to_bits())
}
