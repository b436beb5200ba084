//! Pieces of the runs as they look in one view, nearest last.

use super::silhouette::silhouette;
use super::view::View;
use crate::drawing::{Dash, Fill, Item, Line, Spot, Weight, hatch};
use crate::scene::{PieceKind, Scene, ScenePiece};
use tubewright_geometry::{CentreLine, Point, UnitVector, math};

/// One painted part of a piece with its nearness to the eye.
struct Part {
    nearness_mm: f64,
    tag: String,
    items: Vec<Item>,
}

/// The pieces of all runs, painted so that what is nearer hides what is farther.
pub(crate) fn piece_items(scene: &Scene, view: &View) -> Vec<Item> {
    let mut parts: Vec<Part> = Vec::new();
    for run in &scene.runs {
        for piece in &run.pieces {
            if piece.kind == PieceKind::Crossover {
                parts.push(crossover_part(piece, view));
            }
            for (i, element) in piece.elements.iter().enumerate() {
                if piece.kind == PieceKind::Crossover {
                    continue;
                }
                parts.push(Part {
                    nearness_mm: nearness(&element.line, view),
                    tag: piece.mark.clone(),
                    items: element_items(piece, i, view),
                });
            }
            if !piece.outline.is_empty() {
                parts.push(body_part(piece, view));
            }
            parts.extend(joint_part(piece, run.od_mm, view));
        }
    }
    // Stable: equal nearness keeps the order of travel.
    parts.sort_by(|p, q| p.nearness_mm.total_cmp(&q.nearness_mm));
    parts
        .into_iter()
        .map(|part| Item::Group {
            tag: part.tag,
            items: part.items,
        })
        .collect()
}

fn nearness(line: &CentreLine, view: &View) -> f64 {
    let length = line.length();
    [0.0, 0.25, 0.5, 0.75, 1.0]
        .iter()
        .map(|t| view.nearness(line.at(length * t)))
        .sum::<f64>()
        / 5.0
}

const EDGE: Line = Line::solid(Weight::Medium);

fn element_items(piece: &ScenePiece, index: usize, view: &View) -> Vec<Item> {
    let Some(element) = piece.elements.get(index) else {
        return Vec::new();
    };
    let line = &element.line;
    let spots: Vec<Spot> = view
        .centre_points(line)
        .into_iter()
        .map(|p| view.spot(p))
        .collect();
    let [start, end] = end_directions(line);
    let (a, b) = (line.at(0.0), line.at(line.length()));
    let mut items = Vec::new();
    // The end that looks away from the eye first, the near end last; an end inside a piece (where a
    // leg meets its arc) shows no line.
    let eye = view.name.toward_eye();
    let is_first = index == 0;
    let is_last = index + 1 == piece.elements.len();
    let ends = [(a, -start, is_first), (b, end, is_last)];
    let radius = element.radius - 0.5 * EDGE.weight.mm() / view.scale;
    let rim = |centre: Point, axis: UnitVector, is_open: bool| {
        end_item(view, centre, axis, radius, is_open)
    };
    for (centre, outward, is_open) in ends {
        if eye.dot(outward.vector()) <= 0.0 {
            items.extend(rim(centre, outward, is_open));
        }
    }
    items.push(Item::Band {
        spots: spots.clone(),
        width_mm: 2.0 * element.radius * view.scale,
        line: Some(EDGE),
        fill: Fill::Paper,
    });
    for (centre, outward, is_open) in ends {
        if eye.dot(outward.vector()) > 0.0 {
            items.extend(rim(centre, outward, is_open));
        }
    }
    items.push(Item::Polyline {
        spots,
        line: Line::new(Weight::Hair, Dash::Centre),
    });
    items
}

/// Arms that run into one another: all edges first, then all insides, so that only the outline of
/// the whole is left.
fn crossover_part(piece: &ScenePiece, view: &View) -> Part {
    let mut items = Vec::new();
    let edge_mm = EDGE.weight.mm();
    let middles: Vec<(Vec<Spot>, f64)> = piece
        .elements
        .iter()
        .map(|element| super::silhouette::band(element, view))
        .collect();
    for element in &piece.elements {
        let line = &element.line;
        let [start, end] = end_directions(line);
        for (centre, outward) in [(line.at(0.0), -start), (line.at(line.length()), end)] {
            items.extend(end_item(
                view,
                centre,
                outward,
                element.radius - 0.5 * edge_mm / view.scale,
                true,
            ));
        }
    }
    for line in [Some(EDGE), None] {
        for (spots, width_mm) in &middles {
            items.push(Item::Band {
                spots: spots.clone(),
                width_mm: if line.is_some() {
                    *width_mm
                } else {
                    width_mm - 2.0 * edge_mm
                },
                line,
                fill: Fill::Paper,
            });
        }
    }
    for (spots, _) in middles {
        items.push(Item::Polyline {
            spots,
            line: Line::new(Weight::Hair, Dash::Centre),
        });
    }
    let count = f64::from(u32::try_from(piece.elements.len().max(1)).unwrap_or(u32::MAX));
    Part {
        nearness_mm: piece
            .elements
            .iter()
            .map(|e| nearness(&e.line, view))
            .sum::<f64>()
            / count,
        tag: piece.mark.clone(),
        items,
    }
}

/// The rim of a tube's end: an ellipse, or a mere line when the end is seen edge-on (within 1°).
fn end_item(
    view: &View,
    centre: Point,
    axis: UnitVector,
    radius_mm: f64,
    is_open: bool,
) -> Option<Item> {
    if view.name.toward_eye().dot(axis.vector()).abs() > 0.0175 {
        return Some(Item::Polygon {
            spots: view.rim(centre, axis, radius_mm),
            line: is_open.then_some(EDGE),
            fill: Fill::Paper,
        });
    }
    let across = view.slant(axis).direction()?.quarter() * (radius_mm * view.scale);
    let at = view.spot(centre);
    is_open.then(|| Item::line(at - across, at + across, EDGE))
}

/// Directions of travel at both ends.
pub(crate) fn end_directions(line: &CentreLine) -> [UnitVector; 2] {
    match *line {
        CentreLine::Arc { u, v, angle, .. } => {
            let (sin, cos) = math::sin_cos(angle);
            [v, UnitVector::from_unit(v * cos - u * sin)]
        }
        CentreLine::Segment { a, b } => {
            let d = (b - a).direction().unwrap_or(UnitVector::X);
            [d, d]
        }
        _ => [UnitVector::X; 2],
    }
}

fn body_part(piece: &ScenePiece, view: &View) -> Part {
    let mut items = Vec::new();
    for solid in &piece.outline {
        let shape = silhouette(solid, view);
        for outline in shape.outlines {
            items.push(Item::Polygon {
                spots: outline.clone(),
                line: Some(Line::solid(Weight::Wide)),
                fill: Fill::Paper,
            });
            items.extend(texture(piece.kind, &outline));
        }
        for edge in shape.edges {
            items.push(Item::Polyline {
                spots: edge,
                line: Line::solid(Weight::Narrow),
            });
        }
        for (spots, width_mm) in shape.bands {
            items.push(Item::Band {
                spots,
                width_mm,
                line: Some(Line::solid(Weight::Wide)),
                fill: Fill::Paper,
            });
        }
    }
    let (a, b) = (piece.frame_in.origin, piece.frame_out.origin);
    items.push(Item::line(
        view.spot(a),
        view.spot(b),
        Line::new(Weight::Hair, Dash::Centre),
    ));
    Part {
        nearness_mm: view.nearness(a.lerp(b, 0.5)),
        tag: piece.mark.clone(),
        items,
    }
}

/// What tells a catalyst from a flex at a glance: strokes, no colour.
pub(crate) fn texture(kind: PieceKind, outline: &[Spot]) -> Vec<Item> {
    let strokes = |angle_rad: f64, spacing_mm: f64| {
        hatch(outline, angle_rad, spacing_mm)
            .into_iter()
            .map(|[a, b]| Item::line(a, b, Line::solid(Weight::Hair)))
    };
    let rising = crate::drawing::RISING_RAD;
    match kind {
        PieceKind::Flex => strokes(rising, 0.9).chain(strokes(-rising, 0.9)).collect(),
        PieceKind::Catalyst => strokes(0.0, 1.1)
            .chain(strokes(math::FRAC_PI_2, 1.1))
            .collect(),
        PieceKind::Resonator => strokes(rising, 1.6).collect(),
        _ => Vec::new(),
    }
}

/// A joint: a wide tick across the tube that reaches past both edges.
fn joint_part(piece: &ScenePiece, od_mm: f64, view: &View) -> Option<Part> {
    let ends = tick_ends(piece, od_mm, view)?;
    Some(Part {
        // In front of the two pieces that meet here, behind whatever passes over them.
        nearness_mm: view.nearness(piece.frame_in.origin) + 0.5 * od_mm,
        tag: piece.joint.clone()?,
        items: vec![Item::Polyline {
            spots: ends,
            line: Line::solid(Weight::Wide),
        }],
    })
}

/// Both ends of a joint's tick; `None` where there is no joint, or where it is seen so nearly end-on
/// that the rim itself shows it.
pub(crate) fn tick_ends(piece: &ScenePiece, od_mm: f64, view: &View) -> Option<Vec<Spot>> {
    piece.joint.as_ref()?;
    let frame = &piece.frame_in;
    let slant = view.slant(piece.cut_in.unwrap_or(frame.travel()));
    if slant.norm() < 0.35 {
        return None;
    }
    let across = slant.direction()?.quarter() * (0.5 * od_mm * view.scale + 1.0);
    let at = view.spot(frame.origin);
    Some(vec![at - across, at + across])
}

/// Where a piece can be pointed at: spots along it with how much of it shows there.
pub(crate) fn spots_along(piece: &ScenePiece, view: &View, count: u32) -> Vec<(Spot, Point)> {
    let total: f64 = piece.elements.iter().map(|e| e.line.length()).sum();
    let mut out = Vec::new();
    for i in 0..count {
        let mut s = total * (f64::from(i) + 0.5) / f64::from(count);
        for element in &piece.elements {
            let length = element.line.length();
            if s <= length {
                let p = element.line.at(s);
                out.push((view.spot(p), p));
                break;
            }
            s -= length;
        }
    }
    out
}
