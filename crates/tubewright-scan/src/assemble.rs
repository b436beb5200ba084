//! From what a reader collected to a checked scan: one place for every rule that all formats share.

use std::collections::HashMap;

use tubewright_geometry::Point;

use crate::error::{Place, ScanError};
use crate::limits::Limits;
use crate::scan::{Scan, ScanWarning};

/// What a reader collected, in the units of the file.
#[derive(Default)]
pub(crate) struct Raw {
    pub(crate) vertices: Vec<[f64; 3]>,
    pub(crate) triangles: Vec<[u32; 3]>,
    pub(crate) split_polygons: u64,
    pub(crate) merge: bool,
    pub(crate) warnings: Vec<ScanWarning>,
    /// Whether the file has faces at all, even if all were dropped.
    pub(crate) has_faces: bool,
}

impl Raw {
    pub(crate) fn push_vertex(&mut self, xyz: [f64; 3], limits: &Limits) -> Result<(), ScanError> {
        // Vertices that will be merged (STL) repeat three to a triangle: the bound on triangles
        // holds them already.
        if !self.merge && self.vertices.len() >= limits.max_vertices {
            return Err(ScanError::TooManyVertices {
                limit: limits.max_vertices,
            });
        }
        self.vertices.push(xyz);
        Ok(())
    }

    pub(crate) fn push_triangle(
        &mut self,
        corners: [u32; 3],
        limits: &Limits,
    ) -> Result<(), ScanError> {
        self.has_faces = true;
        if self.triangles.len() >= limits.max_triangles {
            return Err(ScanError::TooManyTriangles {
                limit: limits.max_triangles,
            });
        }
        self.triangles.push(corners);
        Ok(())
    }

    /// Adds a polygon as a fan about its first corner.
    pub(crate) fn push_polygon(
        &mut self,
        corners: &[u32],
        place: Place,
        limits: &Limits,
    ) -> Result<(), ScanError> {
        let [first, rest @ ..] = corners else {
            return Err(too_few_corners(place, 0));
        };
        if rest.len() < 2 {
            return Err(too_few_corners(place, corners.len()));
        }
        if rest.len() > 2 {
            self.split_polygons += 1;
        }
        for pair in rest.windows(2) {
            if let [second, third] = *pair {
                self.push_triangle([*first, second, third], limits)?;
            }
        }
        Ok(())
    }
}

fn too_few_corners(place: Place, corners: usize) -> ScanError {
    ScanError::Malformed {
        place,
        problem: format!("a face needs three corners, this one has {corners}"),
    }
}

/// Scales, merges, drops what has no area, and keeps only vertices in use.
pub(crate) fn assemble(raw: Raw, mm_per_unit: f64, limits: &Limits) -> Result<Scan, ScanError> {
    let Raw {
        vertices,
        triangles,
        split_polygons,
        merge,
        mut warnings,
        has_faces,
    } = raw;
    let mut points = Vec::with_capacity(vertices.len());
    for (number, xyz) in (1..).zip(&vertices) {
        points.push(scaled(*xyz, mm_per_unit, number, limits)?);
    }
    drop(vertices);
    if split_polygons > 0 {
        warnings.push(ScanWarning::SplitPolygons(split_polygons));
    }
    let (points, renumbered) = if merge {
        merged(&points)
    } else {
        (points, Vec::new())
    };
    if merge {
        let repeats = renumbered.len() - points.len();
        if repeats > 0 {
            warnings.push(ScanWarning::MergedVertices(repeats as u64));
        }
    }
    let renumber = |index: u32| renumbered.get(index as usize).copied().unwrap_or(index);

    let read = triangles.len();
    let kept: Vec<[u32; 3]> = triangles
        .into_iter()
        .map(|corners| corners.map(renumber))
        .filter(|corners| has_area(*corners, &points))
        .collect();
    let dropped = (read - kept.len()) as u64;
    if dropped > 0 {
        warnings.push(ScanWarning::DroppedTriangles(dropped));
    }
    if kept.is_empty() && (has_faces || points.is_empty()) {
        return Err(ScanError::NothingLeft { dropped });
    }
    if kept.is_empty() {
        return Ok(Scan {
            vertices: points,
            triangles: kept,
            warnings,
        });
    }
    let (vertices, triangles, unused) = only_used(&points, kept);
    if unused > 0 {
        warnings.push(ScanWarning::UnusedVertices(unused));
    }
    Ok(Scan {
        vertices,
        triangles,
        warnings,
    })
}

fn scaled(
    xyz: [f64; 3],
    mm_per_unit: f64,
    vertex: u64,
    limits: &Limits,
) -> Result<Point, ScanError> {
    // `+ 0.0` makes minus zero plain zero, so that merging by bits sees one place as one.
    let xyz_mm = xyz.map(|v| v * mm_per_unit + 0.0);
    let far = xyz_mm
        .iter()
        .copied()
        .find(|v| v.is_nan() || v.abs() > limits.max_coordinate_mm);
    match far {
        None => Ok(Point::from_array(xyz_mm)),
        Some(coordinate_mm) => Err(ScanError::TooFar {
            vertex,
            coordinate_mm,
            limit_mm: limits.max_coordinate_mm,
        }),
    }
}

/// Points at exactly the same place become one, numbered in order of first appearance. Near is
/// not same: welding by a tolerance could close a gap that is there.
fn merged(points: &[Point]) -> (Vec<Point>, Vec<u32>) {
    let mut number_of: HashMap<[u64; 3], u32> = HashMap::with_capacity(points.len() / 4);
    let mut unique: Vec<Point> = Vec::new();
    let renumbered = points
        .iter()
        .map(|point| {
            *number_of
                .entry(point.to_array().map(f64::to_bits))
                .or_insert_with(|| {
                    unique.push(*point);
                    // The bound on triangles keeps the count far below 2^32.
                    u32::try_from(unique.len() - 1).unwrap_or(u32::MAX)
                })
        })
        .collect();
    (unique, renumbered)
}

/// Whether the triangle has an area: its height is more than 1e-9 of its longest side, which is
/// a hundred times the rounding of double precision and a hundredth of that of single precision.
fn has_area(corners: [u32; 3], points: &[Point]) -> bool {
    let [a, b, c] = corners.map(|index| points.get(index as usize));
    let (Some(a), Some(b), Some(c)) = (a, b, c) else {
        return false;
    };
    let (ab, ac, bc) = (*b - *a, *c - *a, *c - *b);
    let longest = ab
        .norm_squared()
        .max(ac.norm_squared())
        .max(bc.norm_squared());
    ab.cross(ac).norm() > 1e-9 * longest
}

/// Leaves out vertices of no triangle: a stray one would blow up the bounds.
fn only_used(points: &[Point], mut triangles: Vec<[u32; 3]>) -> (Vec<Point>, Vec<[u32; 3]>, u64) {
    const NONE: u32 = u32::MAX;
    let mut new_number = vec![NONE; points.len()];
    for index in triangles.iter().flatten() {
        if let Some(slot) = new_number.get_mut(*index as usize) {
            *slot = 0;
        }
    }
    let mut used = Vec::new();
    let mut next = 0;
    for (slot, point) in new_number.iter_mut().zip(points) {
        if *slot != NONE {
            *slot = next;
            next += 1;
            used.push(*point);
        }
    }
    for index in triangles.iter_mut().flatten() {
        *index = new_number.get(*index as usize).copied().unwrap_or(0);
    }
    let unused = (points.len() - used.len()) as u64;
    (used, triangles, unused)
}
