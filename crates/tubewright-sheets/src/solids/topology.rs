//! Faces, loops and edges of a solid as STEP entities.

use super::pipe::{Ring, Shape, Span};
use super::step::Entities;
use tubewright_geometry::{Point, UnitVector};

/// A closed edge round the tube: its vertex, and the entity.
#[derive(Clone, Copy)]
struct Rim {
    vertex: usize,
    at: Point,
    edge: usize,
}

/// Writes the solid and returns its MANIFOLD_SOLID_BREP.
pub(crate) fn solid(e: &mut Entities, name: &str, shape: &Shape) -> usize {
    let faces = match shape {
        Shape::Pipe {
            rings,
            spans,
            outer_mm,
            bore_mm,
        } => {
            let outer = skin(e, rings, spans, *outer_mm, true);
            let bore = skin(e, rings, spans, *bore_mm, false);
            let mut faces = [outer.0, bore.0].concat();
            if let (Some(ring), Some(o), Some(b)) = (rings.first(), outer.1.first(), bore.1.first())
            {
                faces.push(flat(
                    e,
                    ring.centre,
                    -ring.normal,
                    (o, false),
                    Some((b, true)),
                ));
            }
            if let (Some(ring), Some(o), Some(b)) = (rings.last(), outer.1.last(), bore.1.last()) {
                faces.push(flat(
                    e,
                    ring.centre,
                    ring.normal,
                    (o, true),
                    Some((b, false)),
                ));
            }
            faces
        }
        Shape::Turned {
            start,
            axis,
            steps,
            end_mm,
        } => turned(e, *start, *axis, steps, *end_mm),
    };
    let shell = e.add(&format!("CLOSED_SHELL('',({}))", Entities::list(&faces)));
    let name = Entities::text(name);
    e.add(&format!("MANIFOLD_SOLID_BREP({name},#{shell})"))
}

/// Surfaces between the rings at one radius; the inside of a bore looks toward the axis.
fn skin(
    e: &mut Entities,
    rings: &[Ring],
    spans: &[Span],
    radius_mm: f64,
    is_outside: bool,
) -> (Vec<usize>, Vec<Rim>) {
    let rims: Vec<Rim> = rings.iter().map(|ring| rim(e, ring, radius_mm)).collect();
    let mut faces = Vec::new();
    for ((span, ring), pair) in spans.iter().zip(rings).zip(rims.windows(2)) {
        let [from, to] = *pair else { continue };
        let (surface, seam_curve) = match *span {
            Span::Straight => {
                let place = e.placement(ring.centre, ring.travel, ring.seam);
                let surface = e.add(&format!(
                    "CYLINDRICAL_SURFACE('',#{place},{})",
                    Entities::real(radius_mm)
                ));
                (surface, e.line(from.at, ring.travel))
            }
            Span::Bend {
                centre,
                axis,
                clr_mm,
                ..
            } => {
                let out = axis
                    .normal_toward(ring.centre - centre)
                    .unwrap_or_else(|| axis.any_normal());
                let place = e.placement(centre, axis, out);
                let surface = e.add(&format!(
                    "TOROIDAL_SURFACE('',#{place},{},{})",
                    Entities::real(clr_mm),
                    Entities::real(radius_mm)
                ));
                // The seam is the circle that its foot runs on about the bend's axis.
                let hub = centre + axis * axis.dot(from.at - centre);
                let toward = axis
                    .normal_toward(from.at - hub)
                    .unwrap_or_else(|| axis.any_normal());
                (surface, e.circle(hub, axis, toward, hub.distance(from.at)))
            }
        };
        let seam = e.add(&format!(
            "EDGE_CURVE('',#{},#{},#{seam_curve},.T.)",
            from.vertex, to.vertex
        ));
        // Against the clock as seen from outside the steel.
        let edges = if is_outside {
            [
                (from.edge, true),
                (seam, true),
                (to.edge, false),
                (seam, false),
            ]
        } else {
            [
                (seam, true),
                (to.edge, true),
                (seam, false),
                (from.edge, false),
            ]
        };
        let bound = e.bound("FACE_OUTER_BOUND", &edges);
        let sense = if is_outside { ".T." } else { ".F." };
        faces.push(e.add(&format!("ADVANCED_FACE('',(#{bound}),#{surface},{sense})")));
    }
    (faces, rims)
}

fn rim(e: &mut Entities, ring: &Ring, radius_mm: f64) -> Rim {
    let at = ring.on_rim(radius_mm, ring.seam);
    let curve = if ring.is_square() {
        e.circle(ring.centre, ring.travel, ring.seam, radius_mm)
    } else {
        // The plane cuts the cylinder in an ellipse, long where the tube leans into the plane.
        let long = ring
            .normal
            .normal_toward(ring.travel.vector())
            .unwrap_or(ring.seam);
        let climb = ring.normal.dot(ring.travel.vector());
        e.ellipse(
            ring.centre,
            ring.normal,
            long,
            [radius_mm / climb, radius_mm],
        )
    };
    let vertex = e.vertex(at);
    let edge = e.add(&format!("EDGE_CURVE('',#{vertex},#{vertex},#{curve},.T.)"));
    Rim { vertex, at, edge }
}

/// A plane face that looks along `outward`, with at most one hole.
fn flat(
    e: &mut Entities,
    centre: Point,
    outward: UnitVector,
    (outer, outer_forward): (&Rim, bool),
    hole: Option<(&Rim, bool)>,
) -> usize {
    let place = e.placement(centre, outward, outward.any_normal());
    let plane = e.add(&format!("PLANE('',#{place})"));
    let mut bounds = vec![e.bound("FACE_OUTER_BOUND", &[(outer.edge, outer_forward)])];
    if let Some((rim, forward)) = hole {
        bounds.push(e.bound("FACE_BOUND", &[(rim.edge, forward)]));
    }
    e.add(&format!(
        "ADVANCED_FACE('',({}),#{plane},.T.)",
        Entities::list(&bounds)
    ))
}

fn turned(
    e: &mut Entities,
    start: Point,
    axis: UnitVector,
    steps: &[(f64, f64)],
    end_mm: f64,
) -> Vec<usize> {
    let seam = axis.any_normal();
    let ring = |along_mm: f64| Ring {
        centre: start + axis * along_mm,
        travel: axis,
        seam,
        normal: axis,
    };
    let mut faces = Vec::new();
    let mut before: Option<(Rim, f64)> = None;
    for (i, &(from_mm, radius_mm)) in steps.iter().enumerate() {
        let to_mm = steps.get(i + 1).map_or(end_mm, |next| next.0);
        let (skin_faces, rims) = skin(
            e,
            &[ring(from_mm), ring(to_mm)],
            &[Span::Straight],
            radius_mm,
            true,
        );
        faces.extend(skin_faces);
        let [first, last] = rims.as_slice() else {
            continue;
        };
        let centre = ring(from_mm).centre;
        faces.push(match &before {
            None => flat(e, centre, -axis, (first, false), None),
            Some((rim, radius)) if *radius < radius_mm => {
                flat(e, centre, -axis, (first, false), Some((rim, true)))
            }
            Some((rim, _)) => flat(e, centre, axis, (rim, true), Some((first, false))),
        });
        before = Some((*last, radius_mm));
    }
    if let Some((rim, _)) = &before {
        faces.push(flat(e, ring(end_mm).centre, axis, (rim, true), None));
    }
    faces
}
