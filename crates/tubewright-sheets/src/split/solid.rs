//! The two halves as STEP solids: cylinders on the legs, a torus on the bend, the plane of the weld.
//!
//! Where the plane cuts the bend the edge is a spiric section, for which STEP has no curve: it is
//! written as a cubic spline through 96 places with their directions, within 1e-7 mm of the true one
//! for tubes of this trade.

use super::oval::Oval;
use super::{SplitCross, SplitCrossError};
use crate::solids::StepStamp;
use crate::solids::entities::{Entities, Part, assembly};
use tubewright_geometry::math;
use tubewright_geometry::template::SplitBend;
use tubewright_geometry::{Point, UnitVector, Vector};

/// Both halves in one file, each a named solid: the plane of the weld is `x = 0`, the tubes run
/// along y, half `one` at minus x and half `two` its mirror image.
///
/// # Errors
/// [`SplitCrossError`] when the sizes give no crossover.
pub fn split_cross_step(cross: &SplitCross, stamp: &StepStamp) -> Result<String, SplitCrossError> {
    let (outer, bore) = (cross.half()?, cross.bore()?);
    let seats = [
        (
            "one",
            Seat {
                origin: Point::new(-cross.plane_mm, 0.0, 0.0),
                x: UnitVector::X,
                z: UnitVector::Z,
            },
        ),
        (
            // Turned half round about y: the same as mirrored, for each half is its own mirror image
            // in z.
            "two",
            Seat {
                origin: Point::new(cross.plane_mm, 0.0, 0.0),
                x: -UnitVector::X,
                z: -UnitVector::Z,
            },
        ),
    ];
    let mut parts: Vec<Part<'_>> = Vec::new();
    for (name, seat) in seats {
        let name = format!("split bend {name}");
        let own = name.clone();
        parts.push((
            name,
            Box::new(move |e: &mut Entities| half(e, cross, seat, &own, [outer, bore])),
        ));
    }
    Ok(assembly("hand-made crossover", stamp, &parts))
}

/// Where a half sits in the file's axes; y is y.
#[derive(Clone, Copy)]
struct Seat {
    origin: Point,
    x: UnitVector,
    z: UnitVector,
}

impl Seat {
    fn turn(&self, [x, y, z]: [f64; 3]) -> Vector {
        self.x * x + UnitVector::Y * y + self.z * z
    }

    fn point(&self, at: [f64; 3]) -> Point {
        self.origin + self.turn(at)
    }

    /// `along` must be of length one.
    fn unit(&self, along: [f64; 3]) -> UnitVector {
        UnitVector::from_unit(self.turn(along))
    }
}

/// A circle round the tube, or what the plane leaves of it.
struct Section {
    centre: [f64; 3],
    travel: [f64; 3],
    /// Toward the back.
    out: [f64; 3],
}

fn section(cross: &SplitCross, angle_rad: f64, beyond_mm: f64) -> Section {
    let (sin, cos) = math::sin_cos(angle_rad);
    let travel = [-sin, cos, 0.0];
    Section {
        centre: [
            cross.clr_mm * cos + beyond_mm * travel[0],
            cross.clr_mm * sin + beyond_mm * travel[1],
            0.0,
        ],
        travel,
        out: [cos, sin, 0.0],
    }
}

impl Section {
    fn on_rim(&self, radius_mm: f64, q: f64) -> [f64; 3] {
        let (sin, cos) = math::sin_cos(q);
        [
            self.centre[0] + radius_mm * cos * self.out[0],
            self.centre[1] + radius_mm * cos * self.out[1],
            radius_mm * sin,
        ]
    }

    /// The circle whose parameter is the angle from the back.
    fn circle(&self, e: &mut Entities, seat: Seat, radius_mm: f64) -> usize {
        let [x, y, z] = self.travel;
        e.circle(
            seat.point(self.centre),
            seat.unit([-x, -y, -z]),
            seat.unit(self.out),
            radius_mm,
        )
    }
}

type Directed = (usize, bool);

fn reversed(edges: &[Directed]) -> Vec<Directed> {
    edges.iter().rev().map(|&(edge, on)| (edge, !on)).collect()
}

/// What one radius gives: its faces, the rings at ends A and B, the oval in order.
struct Skin {
    faces: Vec<usize>,
    ends: [usize; 2],
    oval: Vec<Directed>,
}

fn half(
    e: &mut Entities,
    cross: &SplitCross,
    seat: Seat,
    name: &str,
    [outer, bore]: [SplitBend; 2],
) -> usize {
    let out = skin(
        e,
        cross,
        seat,
        &Oval::new(outer, cross, 0.5 * cross.od_mm),
        true,
    );
    let bore_mm = 0.5 * cross.od_mm - cross.wall_mm;
    let inner = skin(e, cross, seat, &Oval::new(bore, cross, bore_mm), false);
    let mut faces = [out.faces, inner.faces].concat();
    let flat = |e: &mut Entities, at: Point, normal: UnitVector, edges: [&[Directed]; 2]| {
        let place = e.placement(at, normal, normal.any_normal());
        let plane = e.add(&format!("PLANE('',#{place})"));
        let bounds = [
            e.bound("FACE_OUTER_BOUND", edges[0]),
            e.bound("FACE_BOUND", edges[1]),
        ];
        e.add(&format!(
            "ADVANCED_FACE('',({}),#{plane},.T.)",
            Entities::list(&bounds)
        ))
    };
    let half_rad = 0.5 * cross.bend_rad;
    for (i, sense) in [(0, -1.0), (1, 1.0)] {
        let leg = cross.legs_mm[i] * sense;
        let end = section(cross, sense * half_rad, leg);
        let normal = seat.unit(end.travel.map(|v| v * sense));
        // The rings run against the travel: forward is against the clock where the face looks back.
        let forward = sense < 0.0;
        faces.push(flat(
            e,
            seat.point(end.centre),
            normal,
            [&[(out.ends[i], forward)], &[(inner.ends[i], !forward)]],
        ));
    }
    faces.push(flat(
        e,
        seat.point([cross.plane_mm, 0.0, 0.0]),
        seat.unit([1.0, 0.0, 0.0]),
        [&out.oval, &reversed(&inner.oval)],
    ));
    let shell = e.add(&format!("CLOSED_SHELL('',({}))", Entities::list(&faces)));
    let name = Entities::text(name);
    e.add(&format!("MANIFOLD_SOLID_BREP({name},#{shell})"))
}

/// One cubic through places and directions per unit of parameter.
fn spline(e: &mut Entities, seat: Seat, plane_mm: f64, knots: &[([f64; 2], [f64; 2])]) -> usize {
    let at = |[y, z]: [f64; 2]| seat.point([plane_mm, y, z]);
    let mut poles = Vec::new();
    let last = knots.len().saturating_sub(1);
    for (i, (place, along)) in knots.iter().enumerate() {
        let aside = |sense: f64| {
            at([
                place[0] + sense * along[0] / 3.0,
                place[1] + sense * along[1] / 3.0,
            ])
        };
        if i == 0 {
            poles.push(at(*place));
        } else {
            poles.push(aside(-1.0));
        }
        if i == last {
            poles.push(at(*place));
        } else {
            poles.push(aside(1.0));
        }
    }
    let ids: Vec<usize> = poles.into_iter().map(|p| e.point(p)).collect();
    let inner = vec!["2"; knots.len().saturating_sub(2)];
    let counts = [&["4"][..], &inner, &["4"]].concat().join(",");
    let values: Vec<String> = (0..knots.len()).map(|i| format!("{i}.")).collect();
    e.add(&format!(
        "B_SPLINE_CURVE_WITH_KNOTS('',3,({}),.UNSPECIFIED.,.F.,.F.,({counts}),({}),.UNSPECIFIED.)",
        Entities::list(&ids),
        values.join(",")
    ))
}

/// Pieces of a spline.
const PIECES: u32 = 96;

fn share(from: f64, to: f64, i: u32) -> f64 {
    from + (to - from) * f64::from(i) / f64::from(PIECES)
}

fn skin(e: &mut Entities, cross: &SplitCross, seat: Seat, oval: &Oval, is_outside: bool) -> Skin {
    let r = oval.radius_mm;
    let half_rad = 0.5 * cross.bend_rad;
    let pi = math::PI;
    let tangent = [
        section(cross, -half_rad, 0.0),
        section(cross, half_rad, 0.0),
    ];
    let ends = [
        section(cross, -half_rad, -cross.legs_mm[0]),
        section(cross, half_rad, cross.legs_mm[1]),
    ];
    let edge = |e: &mut Entities, from: usize, to: usize, curve: usize| {
        e.add(&format!("EDGE_CURVE('',#{from},#{to},#{curve},.T.)"))
    };
    // Vertices of the seams, on the inner side of the bend.
    let seam_at = |e: &mut Entities, s: &Section| e.vertex(seat.point(s.on_rim(r, pi)));
    let tangent_seam = [seam_at(e, &tangent[0]), seam_at(e, &tangent[1])];
    let mut loops_of_legs: [Vec<Directed>; 2] = [Vec::new(), Vec::new()];
    let mut end_edges = [0; 2];
    let mut seams = [0; 2];
    for i in 0..2 {
        let sign = if i == 0 { 1.0 } else { -1.0 };
        if cross.legs_mm[i] < 1e-6 {
            continue;
        }
        let vertex = seam_at(e, &ends[i]);
        let circle = ends[i].circle(e, seat, r);
        end_edges[i] = edge(e, vertex, vertex, circle);
        let from = seat.point(ends[i].on_rim(r, pi));
        let line = e.line(from, seat.unit(ends[i].travel.map(|v| v * sign)));
        seams[i] = edge(e, vertex, tangent_seam[i], line);
    }
    // What is left of the rings where the legs meet the bend, from the upper cut over the inside to
    // the lower cut, and the oval in order: against the clock seen from the waste.
    let (rings, oval_edges, torus_bounds);
    if let Some(leaves) = oval.leaves_rad {
        let cut_at = |e: &mut Entities, s: &Section, q: f64| e.vertex(seat.point(s.on_rim(r, q)));
        let upper = [
            cut_at(e, &tangent[0], leaves),
            cut_at(e, &tangent[1], leaves),
        ];
        let lower = [
            cut_at(e, &tangent[0], -leaves),
            cut_at(e, &tangent[1], -leaves),
        ];
        let mut found: [[usize; 2]; 2] = [[0; 2]; 2];
        for i in 0..2 {
            let circles = [tangent[i].circle(e, seat, r), tangent[i].circle(e, seat, r)];
            found[i] = [
                edge(e, upper[i], tangent_seam[i], circles[0]),
                edge(e, tangent_seam[i], lower[i], circles[1]),
            ];
        }
        let leg = |e: &mut Entities, sense: f64| {
            // Through the tip of the opening in a leg; downstream from below to above.
            let step = 2.0 * leaves / f64::from(PIECES);
            let knots: Vec<_> = (0..=PIECES)
                .map(|i| {
                    let q = share(-leaves, leaves, i) * sense;
                    let [y, z] = oval.in_leg(q);
                    let (y0, y1) = (oval.in_leg(q - 1e-4)[0], oval.in_leg(q + 1e-4)[0]);
                    let turn = step * sense;
                    (
                        [y * sense, z],
                        [(y1 - y0) / 2e-4 * turn * sense, r * math::cos(q) * turn],
                    )
                })
                .collect();
            spline(e, seat, cross.plane_mm, &knots)
        };
        let over = |e: &mut Entities, is_top: bool| {
            let [from, to] = oval.upper_range();
            let (from, to) = if is_top {
                (from, to)
            } else {
                (pi + from, pi + to)
            };
            bend_spline(e, seat, cross.plane_mm, oval, from, to)
        };
        let curves = [leg(e, 1.0), over(e, true), leg(e, -1.0), over(e, false)];
        let edges = [
            edge(e, lower[1], upper[1], curves[0]),
            edge(e, upper[1], upper[0], curves[1]),
            edge(e, upper[0], lower[0], curves[2]),
            edge(e, lower[0], lower[1], curves[3]),
        ];
        let [a, b] = found;
        loops_of_legs[0] = vec![(a[1], true), (edges[2], false), (a[0], true)];
        loops_of_legs[1] = vec![(b[0], false), (edges[0], false), (b[1], false)];
        torus_bounds = vec![vec![
            (a[1], false),
            (a[0], false),
            (edges[1], false),
            (b[0], true),
            (b[1], true),
            (edges[3], false),
        ]];
        oval_edges = edges.map(|edge| (edge, true)).to_vec();
        rings = None;
    } else {
        let mut found = [0; 2];
        for i in 0..2 {
            let circle = tangent[i].circle(e, seat, r);
            found[i] = edge(e, tangent_seam[i], tangent_seam[i], circle);
        }
        let tips = [oval.on_bend(0.0), oval.on_bend(pi)]
            .map(|[y, z]| e.vertex(seat.point([cross.plane_mm, y, z])));
        let curves = [
            bend_spline(e, seat, cross.plane_mm, oval, 0.0, pi),
            bend_spline(e, seat, cross.plane_mm, oval, pi, 2.0 * pi),
        ];
        let edges = [
            edge(e, tips[0], tips[1], curves[0]),
            edge(e, tips[1], tips[0], curves[1]),
        ];
        let hub_mm = cross.clr_mm - r;
        let (sin, cos) = math::sin_cos(-half_rad);
        let arc = e.circle(
            seat.point([0.0; 3]),
            seat.unit([0.0, 0.0, 1.0]),
            seat.unit([cos, sin, 0.0]),
            hub_mm,
        );
        let seam = edge(e, tangent_seam[0], tangent_seam[1], arc);
        loops_of_legs[0] = vec![(found[0], true)];
        loops_of_legs[1] = vec![(found[1], false)];
        torus_bounds = vec![
            vec![
                (found[0], false),
                (seam, true),
                (found[1], true),
                (seam, false),
            ],
            vec![(edges[1], false), (edges[0], false)],
        ];
        oval_edges = edges.map(|edge| (edge, true)).to_vec();
        rings = Some(found);
    }
    let mut faces = Vec::new();
    let mut face = |e: &mut Entities, bounds: &[Vec<Directed>], surface: usize| {
        let ids: Vec<usize> = (0..)
            .zip(bounds)
            .map(|(i, edges)| {
                let kind = if i == 0 {
                    "FACE_OUTER_BOUND"
                } else {
                    "FACE_BOUND"
                };
                if is_outside {
                    e.bound(kind, edges)
                } else {
                    e.bound(kind, &reversed(edges))
                }
            })
            .collect();
        let sense = if is_outside { ".T." } else { ".F." };
        faces.push(e.add(&format!(
            "ADVANCED_FACE('',({}),#{surface},{sense})",
            Entities::list(&ids)
        )));
    };
    for i in 0..2 {
        if cross.legs_mm[i] < 1e-6 {
            if let Some(found) = rings {
                end_edges[i] = found[i];
            }
            continue;
        }
        let place = e.placement(
            seat.point(ends[i].centre),
            seat.unit(ends[i].travel),
            seat.unit(ends[i].out.map(|v| -v)),
        );
        let surface = e.add(&format!(
            "CYLINDRICAL_SURFACE('',#{place},{})",
            Entities::real(r)
        ));
        let cut = &loops_of_legs[i];
        let bound = if i == 0 {
            [
                &[(end_edges[0], false), (seams[0], true)][..],
                cut,
                &[(seams[0], false)],
            ]
            .concat()
        } else {
            // The seam edge runs from the end to the bend.
            [
                cut,
                &[(seams[1], false), (end_edges[1], true), (seams[1], true)][..],
            ]
            .concat()
        };
        face(e, &[bound], surface);
    }
    let place = e.placement(
        seat.point([0.0; 3]),
        seat.unit([0.0, 0.0, 1.0]),
        seat.unit([-1.0, 0.0, 0.0]),
    );
    let surface = e.add(&format!(
        "TOROIDAL_SURFACE('',#{place},{},{})",
        Entities::real(cross.clr_mm),
        Entities::real(r)
    ));
    face(e, &torus_bounds, surface);
    Skin {
        faces,
        ends: end_edges,
        oval: oval_edges,
    }
}

fn bend_spline(
    e: &mut Entities,
    seat: Seat,
    plane_mm: f64,
    oval: &Oval,
    from: f64,
    to: f64,
) -> usize {
    let step = (to - from) / f64::from(PIECES);
    let knots: Vec<_> = (0..=PIECES)
        .map(|i| {
            let t = share(from, to, i);
            (oval.on_bend(t), oval.along_bend(t).map(|v| v * step))
        })
        .collect();
    spline(e, seat, plane_mm, &knots)
}
