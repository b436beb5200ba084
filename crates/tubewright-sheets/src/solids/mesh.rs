//! Solids as closed triangle meshes.

use super::pipe::{Ring, Shape, Span};
use tubewright_geometry::{Point, UnitVector, Vector, math};

/// Corners with their normals, and triangles that turn against the clock seen from outside.
#[derive(Default)]
pub(crate) struct Triangles {
    pub(crate) places: Vec<Point>,
    pub(crate) normals: Vec<Vector>,
    pub(crate) corners: Vec<u32>,
}

pub(crate) fn triangles(shape: &Shape, chord_mm: f64) -> Triangles {
    let mut mesh = Triangles::default();
    match shape {
        Shape::Pipe {
            rings,
            spans,
            outer_mm,
            bore_mm,
        } => {
            let sides = sides_for(*outer_mm, chord_mm);
            let sections = sections(rings, spans, *outer_mm, chord_mm);
            mesh.skin(&sections, *outer_mm, sides, 1.0);
            mesh.skin(&sections, *bore_mm, sides, -1.0);
            if let (Some(first), Some(last)) = (sections.first(), sections.last()) {
                mesh.annulus(first, [*outer_mm, *bore_mm], sides, -1.0);
                mesh.annulus(last, [*outer_mm, *bore_mm], sides, 1.0);
            }
        }
        Shape::Turned {
            start,
            axis,
            steps,
            end_mm,
        } => {
            let widest = steps.iter().map(|s| s.1).fold(0.0, f64::max);
            let sides = sides_for(widest, chord_mm);
            let seam = axis.any_normal();
            let ring = |along_mm: f64| Ring {
                centre: *start + *axis * along_mm,
                travel: *axis,
                seam,
                normal: *axis,
            };
            let mut inner = 0.0;
            for (i, &(from_mm, radius_mm)) in steps.iter().enumerate() {
                let to_mm = steps.get(i + 1).map_or(*end_mm, |next| next.0);
                let step = if inner < radius_mm { -1.0 } else { 1.0 };
                mesh.annulus(
                    &ring(from_mm),
                    [radius_mm.max(inner), radius_mm.min(inner)],
                    sides,
                    step,
                );
                mesh.skin(&[ring(from_mm), ring(to_mm)], radius_mm, sides, 1.0);
                inner = radius_mm;
            }
            mesh.annulus(&ring(*end_mm), [inner, 0.0], sides, 1.0);
        }
    }
    mesh
}

/// Sides of a round section whose chords miss it by at most `chord_mm`.
fn sides_for(radius_mm: f64, chord_mm: f64) -> u32 {
    let half = math::acos((1.0 - chord_mm / radius_mm).clamp(0.0, 1.0)).max(0.01);
    let mut sides = 8;
    while f64::from(sides) * half < math::PI && sides < 256 {
        sides += 4;
    }
    sides
}

/// Bends cut into steps whose outside misses the true one by at most `chord_mm`.
fn sections(rings: &[Ring], spans: &[Span], outer_mm: f64, chord_mm: f64) -> Vec<Ring> {
    let mut out: Vec<Ring> = rings.first().copied().into_iter().collect();
    for (span, pair) in spans.iter().zip(rings.windows(2)) {
        let [from, to] = *pair else { continue };
        if let Span::Bend {
            centre,
            axis,
            clr_mm,
            bend_rad,
        } = *span
        {
            let half =
                math::acos((1.0 - chord_mm / (clr_mm + outer_mm)).clamp(0.0, 1.0)).max(0.005);
            let count = (0.5 * bend_rad / half).ceil().clamp(1.0, 500.0);
            let mut i = 1.0;
            while i < count {
                let turn = bend_rad * i / count;
                let travel = from.travel.rotated_about(axis, turn);
                out.push(Ring {
                    centre: centre + (from.centre - centre).rotated_about(axis, turn),
                    travel,
                    seam: from.seam.rotated_about(axis, turn),
                    normal: travel,
                });
                i += 1.0;
            }
        }
        out.push(to);
    }
    out
}

impl Triangles {
    fn push(&mut self, place: Point, normal: Vector) -> u32 {
        let index = u32::try_from(self.places.len()).unwrap_or(u32::MAX);
        self.places.push(place);
        self.normals.push(normal);
        index
    }

    fn around(ring: &Ring, i: u32, sides: u32) -> UnitVector {
        // The last side ends at the very first direction, so that the seam closes to the bit.
        let turn = math::TAU * f64::from(i % sides) / f64::from(sides);
        ring.seam.rotated_about(ring.travel, turn)
    }

    /// The surface through the sections; `side` is 1 outside, -1 for a bore.
    fn skin(&mut self, sections: &[Ring], radius_mm: f64, sides: u32, side: f64) {
        let rows: Vec<Vec<u32>> = sections
            .iter()
            .map(|ring| {
                (0..sides)
                    .map(|i| {
                        let out = Self::around(ring, i, sides);
                        self.push(ring.on_rim(radius_mm, out), out * side)
                    })
                    .collect()
            })
            .collect();
        for pair in rows.windows(2) {
            let [from, to] = pair else { continue };
            let next = |row: &[u32]| {
                row.iter()
                    .copied()
                    .cycle()
                    .skip(1)
                    .take(row.len())
                    .collect::<Vec<_>>()
            };
            for (((&a, b), &c), d) in from.iter().zip(next(from)).zip(to).zip(next(to)) {
                if side > 0.0 {
                    self.corners.extend([a, b, d, a, d, c]);
                } else {
                    self.corners.extend([a, d, b, a, c, d]);
                }
            }
        }
    }

    /// A flat ring (a disc when the inner radius is zero) that looks along the section's normal
    /// (`side` 1) or against it (-1).
    fn annulus(&mut self, ring: &Ring, [outer_mm, inner_mm]: [f64; 2], sides: u32, side: f64) {
        let normal = ring.normal * side;
        let mut rows = [outer_mm, inner_mm].map(|radius_mm| {
            (0..sides)
                .map(|i| (ring.on_rim(radius_mm, Self::around(ring, i, sides)), normal))
                .collect::<Vec<_>>()
        });
        if inner_mm <= 0.0 {
            rows[1].truncate(1);
        }
        let [outer, inner] = rows.map(|row| {
            row.into_iter()
                .map(|(p, n)| self.push(p, n))
                .collect::<Vec<u32>>()
        });
        let count = outer.len();
        for i in 0..count {
            let j = (i + 1) % count;
            let (Some(&a), Some(&b)) = (outer.get(i), outer.get(j)) else {
                continue;
            };
            let (c, d) = match (inner.get(i), inner.get(j), inner.first()) {
                (Some(&c), Some(&d), _) if inner.len() > 1 => (c, Some(d)),
                (_, _, Some(&hub)) => (hub, None),
                _ => continue,
            };
            let mut face = |x: u32, y: u32, z: u32| {
                if side > 0.0 {
                    self.corners.extend([x, y, z]);
                } else {
                    self.corners.extend([x, z, y]);
                }
            };
            face(a, b, c);
            if let Some(d) = d {
                face(b, d, c);
            }
        }
    }
}
