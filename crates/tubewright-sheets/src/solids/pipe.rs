//! A piece as rings and what lies between them.

use super::SolidError;
use crate::scene::{PieceKind, ScenePiece};
use tubewright_geometry::{CentreLine, Point, Solid, TubeElement, UnitVector, math};

/// A section of a pipe where one stretch ends and the next begins.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Ring {
    pub(crate) centre: Point,
    /// Direction of the tube.
    pub(crate) travel: UnitVector,
    /// Square to the travel: where the seam of the surface runs.
    pub(crate) seam: UnitVector,
    /// Square to the cut, downstream; equal to the travel for a square section.
    pub(crate) normal: UnitVector,
}

/// What lies between two rings.
#[derive(Clone, Copy, Debug)]
pub(crate) enum Span {
    Straight,
    Bend {
        centre: Point,
        axis: UnitVector,
        clr_mm: f64,
        bend_rad: f64,
    },
}

/// One solid of a piece.
#[derive(Clone, Debug)]
pub(crate) enum Shape {
    /// A hollow tube through its rings.
    Pipe {
        rings: Vec<Ring>,
        spans: Vec<Span>,
        outer_mm: f64,
        bore_mm: f64,
    },
    /// A full body turned about an axis: places along it with the radius from there on.
    Turned {
        start: Point,
        axis: UnitVector,
        steps: Vec<(f64, f64)>,
        end_mm: f64,
    },
}

impl Ring {
    /// The place on the ring's rim at radius `radius_mm` in the direction `around` square to the travel.
    pub(crate) fn on_rim(&self, radius_mm: f64, around: UnitVector) -> Point {
        let out = around * radius_mm;
        let climb = self.normal.dot(self.travel.vector());
        self.centre + out - self.travel * (self.normal.dot(out) / climb)
    }

    pub(crate) fn is_square(&self) -> bool {
        self.normal.angle_to(self.travel) < 1e-9
    }
}

/// The solids of a piece: one, but for a crossover (each arm) or a bought part whose body is not
/// turned about its tube (its tube only).
pub(crate) fn shapes(piece: &ScenePiece) -> Result<Vec<Shape>, SolidError> {
    if piece.kind == PieceKind::Crossover {
        return piece
            .elements
            .iter()
            .map(|element| pipe(piece, core::slice::from_ref(element), [None, None]))
            .collect();
    }
    if let Some(turned) = turned(piece) {
        return Ok(vec![turned]);
    }
    // A straight whose weld lies inside it is two as long as its joint is only tacked: they may not meet yet.
    let is_straight = piece
        .elements
        .iter()
        .all(|element| matches!(element.line, CentreLine::Segment { .. }));
    let chains = if piece.kind == PieceKind::Straight && is_straight {
        chains(&piece.elements)
    } else {
        vec![piece.elements.as_slice()]
    };
    let last = chains.len().saturating_sub(1);
    chains
        .into_iter()
        .enumerate()
        .map(|(n, chain)| {
            let cut_in = piece.cut_in.filter(|_| n == 0);
            let cut_out = piece.cut_out.filter(|_| n == last);
            pipe(piece, chain, [cut_in, cut_out])
        })
        .collect()
}

/// Farthest that the end of one element may lie from the start of the next to be one tube, mm, and the
/// largest kink between them, radians.
const JOINED_MM: f64 = 1e-3;
const JOINED_RAD: f64 = 1e-4;

/// Farthest that a tack is ever off, mm and radians: beyond it something is missing (common practice, no
/// source).
const TACKED_OFF_MM: f64 = 60.0;
const TACKED_OFF_RAD: f64 = 20.0 * math::PI / 180.0;

/// The elements in stretches that hang together, where a tack parts them; one empty stretch when there is
/// none.
fn chains(elements: &[TubeElement]) -> Vec<&[TubeElement]> {
    let is_one = |a: &TubeElement, b: &TubeElement| {
        let length = a.line.length();
        let Some(((start, toward), travel)) = entry(&b.line).zip(a.line.direction_at(length))
        else {
            return true;
        };
        let (off, lean) = (a.line.at(length).distance(start), travel.angle_to(toward));
        let is_joined = off < JOINED_MM && lean < JOINED_RAD;
        is_joined || off > TACKED_OFF_MM || lean > TACKED_OFF_RAD
    };
    if elements.is_empty() {
        return vec![elements];
    }
    elements.chunk_by(is_one).collect()
}

/// A component whose body is a cylinder on its own tube: neck, body, neck, full.
fn turned(piece: &ScenePiece) -> Option<Shape> {
    let ([Solid::Cylinder { a, b, radius }], [tube]) =
        (piece.outline.as_slice(), piece.elements.as_slice())
    else {
        return None;
    };
    let CentreLine::Segment { a: start, b: end } = tube.line else {
        return None;
    };
    let axis = (end - start).direction()?;
    let along = |p: Point| axis.dot(p - start);
    let off = |p: Point| (p - start - axis * along(p)).norm();
    let (from, to) = (along(*a).min(along(*b)), along(*a).max(along(*b)));
    let end_mm = start.distance(end);
    let fits = off(*a) < 1e-6 && off(*b) < 1e-6 && from > 1e-6 && to < end_mm - 1e-6;
    (fits && *radius > tube.radius + 1e-6 && tube.radius > 0.0).then(|| Shape::Turned {
        start,
        axis,
        steps: vec![(0.0, tube.radius), (from, *radius), (to, tube.radius)],
        end_mm,
    })
}

/// Least angle between a cut plane and the tube (common practice, no source: no saw cuts less).
const LEAST_CUT_RAD: f64 = 10.0 * math::PI / 180.0;

fn pipe(
    piece: &ScenePiece,
    elements: &[TubeElement],
    cuts: [Option<UnitVector>; 2],
) -> Result<Shape, SolidError> {
    let mark = || piece.mark.clone();
    let broken = |element: usize| SolidError::Broken {
        mark: mark(),
        element,
    };
    let first = elements.first().ok_or_else(|| broken(1))?;
    let outer_mm = first.radius;
    let bore_mm = outer_mm - piece.wall_mm;
    if !(piece.wall_mm > 0.0 && bore_mm > 0.0) {
        return Err(SolidError::NoBore {
            mark: mark(),
            wall_mm: piece.wall_mm,
            radius_mm: outer_mm,
        });
    }
    let (start, travel) = entry(&first.line).ok_or_else(|| broken(1))?;
    let seam = elements
        .iter()
        .find_map(|e| match e.line {
            CentreLine::Arc { u, .. } => Some(u),
            _ => None,
        })
        .unwrap_or_else(|| travel.any_normal());
    // The outward direction of the first bend is square to a leg before it.
    let seam = travel
        .normal_toward(seam.vector())
        .ok_or_else(|| broken(1))?;
    let mut ring = Ring {
        centre: start,
        travel,
        seam,
        normal: travel,
    };
    let mut rings = vec![ring];
    let mut spans = Vec::new();
    for (i, element) in elements.iter().enumerate() {
        let (at, toward) = entry(&element.line).ok_or_else(|| broken(i + 1))?;
        let joins = at.distance(ring.centre) < JOINED_MM
            && toward.angle_to(ring.travel) < JOINED_RAD
            && (element.radius - outer_mm).abs() < 1e-6
            && element.line.length() > 1e-6;
        if !joins {
            return Err(broken(i + 1));
        }
        match element.line {
            CentreLine::Segment { b, .. } => {
                ring.centre = b;
                spans.push(Span::Straight);
            }
            CentreLine::Arc {
                centre,
                u,
                v,
                radius,
                angle,
            } => {
                if radius <= outer_mm {
                    return Err(SolidError::TooTight {
                        mark: mark(),
                        clr_mm: radius,
                        radius_mm: outer_mm,
                    });
                }
                let axis = UnitVector::from_unit(u.vector().cross(v.vector()));
                ring.centre = element.line.at(element.line.length());
                ring.travel = v.rotated_about(axis, angle);
                ring.seam = ring.seam.rotated_about(axis, angle);
                spans.push(Span::Bend {
                    centre,
                    axis,
                    clr_mm: radius,
                    bend_rad: angle,
                });
            }
            _ => return Err(broken(i + 1)),
        }
        ring.normal = ring.travel;
        rings.push(ring);
    }
    let [cut_in, cut_out] = cuts;
    if let (Some(cut), Some(end)) = (cut_in, rings.first_mut()) {
        cut_end(piece, end, spans.first(), cut)?;
    }
    if let (Some(cut), Some(end)) = (cut_out, rings.last_mut()) {
        cut_end(piece, end, spans.last(), cut)?;
    }
    Ok(Shape::Pipe {
        rings,
        spans,
        outer_mm,
        bore_mm,
    })
}

fn cut_end(
    piece: &ScenePiece,
    ring: &mut Ring,
    span: Option<&Span>,
    cut: UnitVector,
) -> Result<(), SolidError> {
    let cut = if cut.dot(ring.travel.vector()) < 0.0 {
        -cut
    } else {
        cut
    };
    let lean = cut.angle_to(ring.travel);
    let is_square = lean < 1e-9;
    let is_straight = matches!(span, Some(Span::Straight));
    if lean > math::FRAC_PI_2 - LEAST_CUT_RAD || (!is_square && !is_straight) {
        return Err(SolidError::Cut {
            mark: piece.mark.clone(),
        });
    }
    ring.normal = cut;
    Ok(())
}

fn entry(line: &CentreLine) -> Option<(Point, UnitVector)> {
    match *line {
        CentreLine::Segment { a, b } => (b - a).direction().map(|d| (a, d)),
        CentreLine::Arc {
            v, angle, radius, ..
        } => (angle > 0.0 && radius > 0.0).then(|| (line.at(0.0), v)),
        _ => None,
    }
}
