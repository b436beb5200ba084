//! What a scan promises once it is let in.

use crate::{Broken, promise};
use tubewright_scan::{Limits, ScanFormat, read_scan};

/// Small enough that a fuzzer meets the bounds, large enough for every seed.
const LIMITS: Limits = Limits {
    max_bytes: 1 << 20,
    max_triangles: 20_000,
    max_vertices: 40_000,
    max_coordinate_mm: 1e6,
};

pub(crate) fn scan(bytes: &[u8], format: Option<ScanFormat>) -> Result<(), Broken> {
    let read = read_scan(bytes, format, 25.4, &LIMITS);
    promise(
        read == read_scan(bytes, format, 25.4, &LIMITS),
        "equal bytes are read equally",
        || "two readings differ".to_owned(),
    )?;
    let scan = match read {
        Ok(scan) => scan,
        Err(refusal) => {
            let words = refusal.to_string();
            return promise(
                words.len() > 10 && words.len() < 2_000,
                "a refusal says why, in a few lines",
                || words,
            );
        }
    };
    promise(
        scan.vertices().len() <= LIMITS.max_vertices
            && scan.triangles().len() <= LIMITS.max_triangles,
        "a scan is no larger than its bounds",
        || {
            format!(
                "{} vertices, {} triangles",
                scan.vertices().len(),
                scan.triangles().len()
            )
        },
    )?;
    for (number, vertex) in scan.vertices().iter().enumerate() {
        promise(
            [vertex.x, vertex.y, vertex.z]
                .iter()
                .all(|mm| mm.is_finite() && mm.abs() <= LIMITS.max_coordinate_mm),
            "every vertex is a finite place within bounds",
            || format!("vertex {number} at {vertex:?}"),
        )?;
    }
    for (number, corners) in scan.triangles().iter().enumerate() {
        promise(
            corners
                .iter()
                .all(|&corner| (corner as usize) < scan.vertices().len()),
            "every corner of a triangle is a vertex",
            || format!("triangle {number} with corners {corners:?}"),
        )?;
        let [a, b, c] = *corners;
        promise(
            a != b && b != c && c != a,
            "the corners of a triangle are three places",
            || format!("triangle {number} with corners {corners:?}"),
        )?;
    }
    let (low, high) = scan.bounds();
    promise(
        low.x <= high.x && low.y <= high.y && low.z <= high.z,
        "a scan that is let in takes up room",
        || format!("bounds {low:?} to {high:?}"),
    )?;
    promise(
        scan.is_points_only() == scan.mesh().is_none(),
        "a scan with triangles gives a mesh, one without gives points",
        || format!("points only: {}", scan.is_points_only()),
    )
}
