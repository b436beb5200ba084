//! One view: surroundings, ground, grid, runs, names.

use super::labels::{Ground, Label, Look};
use super::legend::mark_symbol;
use super::silhouette::{Shape, silhouette};
use super::tubes::{piece_items, spots_along, tick_ends};
use super::view::{View, ViewName};
use crate::drawing::{
    Dash, Drawing, Fill, Item, Lettering, Line, Rect, Spot, Weight, clip_polygon, clip_segment,
};
use crate::figure::Figure;
use crate::scene::{DrawnUnit, PieceKind, Scene, ScenePiece};
use tubewright_geometry::{Point, math};

const AROUND: Line = Line::new(Weight::Narrow, Dash::Phantom).grey();
const AROUND_MOVING: Line = Line::new(Weight::Narrow, Dash::Dashed).grey();
const AROUND_EDGE: Line = Line::solid(Weight::Hair).grey();

/// Draws one view into the drawing, on layers whose names begin with the view's.
pub(crate) fn draw_view(drawing: &mut Drawing, scene: &Scene, view: &View, grid_mm: f64) {
    let prefix = match view.name {
        ViewName::Side => "side",
        ViewName::Above => "above",
        ViewName::Behind => "behind",
    };
    let shapes: Vec<Shape> = scene
        .bodies
        .iter()
        .map(|body| silhouette(&body.solid, view))
        .collect();
    drawing.push(format!("{prefix}-grid"), grid(view, grid_mm, scene.unit));
    let mut around = Vec::new();
    for (body, shape) in scene.bodies.iter().zip(&shapes) {
        around.push(Item::Group {
            tag: body.name.clone(),
            items: body_items(shape, body.is_moving, view.window),
        });
    }
    drawing.push(format!("{prefix}-bodies"), around);
    drawing.push(format!("{prefix}-ground"), ground(scene, view));
    drawing.push(format!("{prefix}-runs"), piece_items(scene, view));
    let mut place = ground_of(scene, view, &shapes);
    drawing.push(format!("{prefix}-marks"), marks(scene, view));
    let mut names = component_names(scene, view, &mut place);
    for label in labels(scene, view, &shapes) {
        names.extend(place.place(&label));
    }
    drawing.push(format!("{prefix}-names"), names);
}

fn body_items(shape: &Shape, is_moving: bool, window: Rect) -> Vec<Item> {
    let line = if is_moving { AROUND_MOVING } else { AROUND };
    let mut items = Vec::new();
    for outline in &shape.outlines {
        let spots = clip_polygon(outline, window);
        if spots.len() > 2 {
            items.push(Item::Polygon {
                spots,
                line: Some(line),
                fill: Fill::Open,
            });
        }
    }
    for edge in &shape.edges {
        for pair in edge.windows(2) {
            if let [a, b] = *pair
                && let Some([a, b]) = clip_segment(a, b, window)
            {
                items.push(Item::line(a, b, AROUND_EDGE));
            }
        }
    }
    for (spots, width_mm) in &shape.bands {
        if spots.iter().any(|s| window.holds(*s)) {
            items.push(Item::Band {
                spots: spots.clone(),
                width_mm: *width_mm,
                line: Some(AROUND),
                fill: Fill::Paper,
            });
        }
    }
    for ([a, b], solid_side) in &shape.traces {
        if let Some([a, b]) = clip_segment(*a, *b, window) {
            items.push(Item::line(a, b, AROUND));
            items.extend(earth_strokes(a, b, *solid_side, 6.0, AROUND_EDGE));
        }
    }
    items
}

/// Short strokes on the solid side of a line.
fn earth_strokes(a: Spot, b: Spot, solid_side: Spot, spacing_mm: f64, line: Line) -> Vec<Item> {
    let length = a.distance(b);
    let Some(along) = (b - a).direction() else {
        return Vec::new();
    };
    let lean = (solid_side - along) * 1.4;
    let mut items = Vec::new();
    let mut s = 0.5 * spacing_mm;
    while s < length {
        let foot = a + along * s;
        items.push(Item::line(foot, foot + lean, line));
        s += spacing_mm;
    }
    items
}

fn ground(scene: &Scene, view: &View) -> Vec<Item> {
    let Some(z_mm) = scene.ground_z_mm else {
        return Vec::new();
    };
    if view.name == ViewName::Above {
        return Vec::new();
    }
    let y = view.spot(Point::new(0.0, 0.0, z_mm)).y;
    let (a, b) = (
        Spot::new(view.window.min.x, y),
        Spot::new(view.window.max.x, y),
    );
    let mut items = vec![Item::line(a, b, Line::solid(Weight::Wide))];
    items.extend(earth_strokes(
        a,
        b,
        Spot::new(0.0, 1.0),
        2.4,
        Line::solid(Weight::Hair),
    ));
    items
}

/// Lines of equal coordinate with their figures along the upper and left edges.
fn grid(view: &View, step_mm: f64, unit: DrawnUnit) -> Vec<Item> {
    let window = view.window;
    let [(letter_right, _), (letter_up, _)] = view.name.axis_words();
    let hair = Line::solid(Weight::Hair).grey();
    let lettering = Lettering::plain(1.8).grey();
    let mut items = Vec::new();
    let paper = step_mm * view.scale;
    let step = step_mm / unit.mm();
    let steps = |from: f64, to: f64, origin: f64| {
        let first = ((from - origin) / paper).ceil();
        let count = (((to - origin) / paper).floor() - first).clamp(-1.0, 200.0);
        let mut out = Vec::new();
        let mut i = 0.0;
        while i <= count {
            out.push(first + i);
            i += 1.0;
        }
        out
    };
    for k in steps(window.min.x, window.max.x, view.origin.x) {
        let x = view.origin.x + k * paper;
        items.push(Item::line(
            Spot::new(x, window.min.y - 1.5),
            Spot::new(x, window.max.y),
            if k.abs() < 0.5 {
                Line::new(Weight::Narrow, Dash::Centre).grey()
            } else {
                hair
            },
        ));
        items.push(Item::text(
            Spot::new(x, window.min.y - 2.2),
            format!("{letter_right} {}", Figure(k * step)),
            lettering.centred(),
        ));
    }
    for k in steps(window.min.y, window.max.y, view.origin.y) {
        let y = view.origin.y + k * paper;
        items.push(Item::line(
            Spot::new(window.min.x - 1.5, y),
            Spot::new(window.max.x, y),
            if k.abs() < 0.5 {
                Line::new(Weight::Narrow, Dash::Centre).grey()
            } else {
                hair
            },
        ));
        items.push(Item::text(
            Spot::new(window.min.x - 2.2, y + 0.36 * 1.8),
            format!("{letter_up} {}", Figure(-k * step)),
            lettering.ending(),
        ));
    }
    items
}

fn marks(scene: &Scene, view: &View) -> Vec<Item> {
    let mut items = Vec::new();
    for mark in &scene.marks {
        let centre = view.spot(mark.at);
        if !view.window.holds(centre) {
            continue;
        }
        items.extend(mark_symbol(centre));
    }
    items
}

/// What labels keep clear of.
fn ground_of(scene: &Scene, view: &View, shapes: &[Shape]) -> Ground {
    let mut balls = Vec::new();
    for piece in scene.runs.iter().flat_map(|run| &run.pieces) {
        for element in &piece.elements {
            let radius = element.radius * view.scale;
            let length = element.line.length();
            let count = (length / (element.radius * 0.8)).ceil().clamp(1.0, 400.0);
            let mut i = 0.0;
            while i <= count {
                balls.push((view.spot(element.line.at(length * i / count)), radius));
                i += 1.0;
            }
        }
        for solid in &piece.outline {
            let extent = Rect::of(silhouette(solid, view).spots());
            if extent.is_empty() {
                continue;
            }
            let (w, h) = (extent.width(), extent.height());
            let radius = 0.5 * w.min(h).max(0.2);
            let long = if w > h {
                Spot::new(w, 0.0)
            } else {
                Spot::new(0.0, h)
            };
            for i in 0..=8 {
                let t = f64::from(i) / 8.0 - 0.5;
                balls.push((
                    extent.centre() + long * (t * (1.0 - 2.0 * radius / w.max(h))),
                    radius,
                ));
            }
        }
    }
    let mut lines = Vec::new();
    for shape in shapes {
        for outline in &shape.outlines {
            let ring = outline.iter().copied();
            lines.extend(
                ring.clone()
                    .zip(ring.cycle().skip(1))
                    .map(|(a, b)| [a, b])
                    .take(outline.len()),
            );
        }
    }
    if let Some(z_mm) = scene.ground_z_mm.filter(|_| view.name != ViewName::Above) {
        let y = view.spot(Point::new(0.0, 0.0, z_mm)).y;
        lines.push([
            Spot::new(view.window.min.x, y),
            Spot::new(view.window.max.x, y),
        ]);
    }
    let mut ground = Ground::new(view.window, balls, lines);
    for mark in &scene.marks {
        let s = view.spot(mark.at);
        ground.take(Rect::new(s.x - 1.2, s.y - 1.2, 2.4, 2.4));
    }
    ground
}

/// Names of components written along them, when they fit.
fn component_names(scene: &Scene, view: &View, place: &mut Ground) -> Vec<Item> {
    let mut items = Vec::new();
    for piece in scene.runs.iter().flat_map(|run| &run.pieces) {
        let Some(name) = piece.name.as_ref().filter(|_| name_fits(piece, view)) else {
            continue;
        };
        if hidden(scene, piece, view) {
            continue;
        }
        let (a, b) = (
            view.spot(piece.frame_in.origin),
            view.spot(piece.frame_out.origin),
        );
        let mut turn_rad = math::atan2(b.y - a.y, b.x - a.x);
        if turn_rad.abs() > math::FRAC_PI_2 {
            turn_rad = math::wrap_to_pi(turn_rad + math::PI);
        }
        let lettering = NAME_ON_PIECE;
        let down = Spot::toward(turn_rad + math::FRAC_PI_2);
        let middle = a.lerp(b, 0.5);
        let width = lettering.width_mm(name);
        place.take(Rect::new(
            middle.x - 0.5 * width,
            middle.y - 1.2,
            width,
            2.4,
        ));
        // White beneath, or the strokes of the texture would run through the letters.
        let (along, half) = (Spot::toward(turn_rad) * (0.47 * width), down * 1.25);
        items.push(Item::Polygon {
            spots: vec![
                middle - along - half,
                middle + along - half,
                middle + along + half,
                middle - along + half,
            ],
            line: None,
            fill: Fill::Paper,
        });
        items.push(Item::Text {
            at: middle + down * (0.36 * lettering.size_mm),
            text: name.clone(),
            lettering,
            turn_rad,
            has_halo: false,
        });
    }
    items
}

const NAME_ON_PIECE: Lettering = Lettering::plain(2.2).centred();

fn name_fits(piece: &ScenePiece, view: &View) -> bool {
    let Some(name) = &piece.name else {
        return false;
    };
    let (a, b) = (
        view.spot(piece.frame_in.origin),
        view.spot(piece.frame_out.origin),
    );
    NAME_ON_PIECE.width_mm(name) < a.distance(b) * 0.95
}

/// True when something nearer to the eye covers the middle of the piece.
fn hidden(scene: &Scene, piece: &ScenePiece, view: &View) -> bool {
    spots_along(piece, view, 1)
        .first()
        .is_some_and(|&(spot, at)| covered(scene, piece, view, spot, at))
}

fn covered(scene: &Scene, piece: &ScenePiece, view: &View, spot: Spot, at: Point) -> bool {
    scene
        .runs
        .iter()
        .flat_map(|run| &run.pieces)
        .filter(|other| other.mark != piece.mark)
        .any(|other| {
            let reach = |solid_radius: f64| solid_radius * view.scale;
            spots_along(other, view, 12).iter().any(|&(s, p)| {
                let widest = other
                    .elements
                    .iter()
                    .map(|e| e.radius)
                    .fold(0.0_f64, f64::max);
                view.nearness(p) > view.nearness(at) + 2.0 * widest
                    && s.distance(spot) < reach(widest) * 1.2
            })
        })
}

fn labels(scene: &Scene, view: &View, shapes: &[Shape]) -> Vec<Label> {
    let mut out = Vec::new();
    for (i, place) in scene.tight_places.iter().enumerate() {
        let spot = view.spot(place.at);
        if view.window.holds(spot) {
            out.push(Label {
                text: (i + 1).to_string(),
                look: Look::Flag,
                anchors: vec![spot],
                least_mm: 3.5,
            });
        }
    }
    for run in &scene.runs {
        for piece in &run.pieces {
            let mut anchors = Vec::new();
            for &k in &[2_usize, 1, 3] {
                if let Some(&(spot, at)) = spots_along(piece, view, 5).get(k)
                    && view.window.holds(spot)
                    && !covered(scene, piece, view, spot, at)
                {
                    anchors.push(spot);
                }
            }
            let is_nameless = scene.nameless.tubes && piece.name.is_none();
            if anchors.is_empty() || is_nameless || !shows_well(piece, view) {
                continue;
            }
            let widest = piece_half_width(piece, view);
            let label_text = match (&piece.name, name_fits(piece, view)) {
                (Some(name), false) => format!("{} {name}", piece.mark),
                _ => piece.mark.clone(),
            };
            // The name is written on the component: its leader ends at a third.
            if name_fits(piece, view)
                && let Some(&(spot, _)) = spots_along(piece, view, 5).first()
            {
                anchors = vec![spot];
            }
            out.push(Label {
                text: label_text,
                look: Look::Mark,
                anchors,
                least_mm: widest + 2.4,
            });
        }
    }
    for run in &scene.runs {
        for piece in &run.pieces {
            let Some(joint) = &piece.joint else { continue };
            let spot = view.spot(piece.frame_in.origin);
            if !scene.nameless.joints
                && view.window.holds(spot)
                && shows_well(piece, view)
                && view.name != ViewName::Behind
                && !covered(scene, piece, view, spot, piece.frame_in.origin)
            {
                out.push(Label {
                    text: joint.clone(),
                    look: Look::Joint,
                    anchors: tick_ends(piece, run.od_mm, view).unwrap_or_else(|| vec![spot]),
                    least_mm: 1.9,
                });
            }
        }
        let last = run.last_joint.as_ref().zip(run.pieces.last());
        if let Some((joint, piece)) = last.filter(|_| !scene.nameless.joints) {
            let at = piece.frame_out.origin;
            let spot = view.spot(at);
            if view.window.holds(spot)
                && view.name != ViewName::Behind
                && !covered(scene, piece, view, spot, at)
            {
                out.push(Label {
                    text: joint.clone(),
                    look: Look::Joint,
                    anchors: vec![spot],
                    least_mm: 1.9,
                });
            }
        }
    }
    for mark in &scene.marks {
        let spot = view.spot(mark.at);
        if view.window.holds(spot) && mark_is_near(scene, mark.at, view) {
            out.push(Label {
                text: mark.name.clone(),
                look: Look::Name,
                anchors: vec![spot],
                least_mm: 2.4,
            });
        }
    }
    // Of two bodies that fall on each other (left and right rail from the side) only the nearer is
    // named.
    let mut named: Vec<(f64, &str, &Shape)> = scene
        .bodies
        .iter()
        .zip(shapes)
        .map(|(body, shape)| {
            let middle = body
                .solid
                .bounds()
                .map_or(0.0, |b| view.nearness(b.centre()));
            (middle, body.name.as_str(), shape)
        })
        .collect();
    named.sort_by(|p, q| q.0.total_cmp(&p.0));
    let mut seen: Vec<Rect> = Vec::new();
    for (_, name, shape) in named {
        let extent = Rect::of(shape.spots());
        let doubled = !extent.is_empty()
            && seen.iter().any(|other| {
                other.min.distance(extent.min) < 2.0 && other.max.distance(extent.max) < 2.0
            });
        // From behind a car is a heap of outlines: only what is large is named.
        let is_lost = view.name == ViewName::Behind
            && (extent.width() < LEAST_NAMED_MM || extent.height() < 0.25 * LEAST_NAMED_MM);
        if !doubled && !is_lost {
            seen.push(extent);
            out.extend(body_label(name, shape, view));
        }
    }
    out
}

/// Least width on paper of a body that is named in the view from behind, mm.
const LEAST_NAMED_MM: f64 = 16.0;

/// Of two marks that fall on each other the one nearer to the eye is named.
fn mark_is_near(scene: &Scene, at: Point, view: &View) -> bool {
    let spot = view.spot(at);
    !scene.marks.iter().any(|other| {
        view.spot(other.at).distance(spot) < 2.0
            && view.nearness(other.at) > view.nearness(at) + 1e-6
    })
}

/// A piece is marked where it is seen at more than a third of its length; from behind only what has
/// a body of its own, or nothing would be readable.
fn shows_well(piece: &ScenePiece, view: &View) -> bool {
    let spots = spots_along(piece, view, 12);
    let seen: f64 = spots
        .windows(2)
        .map(|w| match w {
            [a, b] => a.0.distance(b.0),
            _ => 0.0,
        })
        .sum();
    let true_length: f64 =
        piece.elements.iter().map(|e| e.line.length()).sum::<f64>() * view.scale * (11.0 / 12.0);
    match view.name {
        ViewName::Behind => {
            seen > 0.75 * true_length && seen > 6.0 && piece.kind != PieceKind::Straight
        }
        _ => seen > 0.34 * true_length,
    }
}

fn piece_half_width(piece: &ScenePiece, view: &View) -> f64 {
    let tube = piece
        .elements
        .iter()
        .map(|e| e.radius * view.scale)
        .fold(0.0_f64, f64::max);
    let axis = view
        .spot(piece.frame_in.origin)
        .lerp(view.spot(piece.frame_out.origin), 0.5);
    let along = (view.spot(piece.frame_out.origin) - view.spot(piece.frame_in.origin)).direction();
    let body = along.map_or(0.0, |along| {
        piece
            .outline
            .iter()
            .flat_map(|solid| silhouette(solid, view).outlines.concat())
            .map(|s| (s - axis).dot(along.quarter()).abs())
            .fold(0.0, f64::max)
    });
    tube.max(body)
}

/// A body's name: inside when there is room, else beside it; not at all when the body does not
/// show in the window.
fn body_label(name: &str, shape: &Shape, view: &View) -> Option<Label> {
    if let Some(([a, b], solid)) = shape.traces.first() {
        let [a, b] = clip_segment(*a, *b, view.window)?;
        return Some(Label {
            text: name.to_owned(),
            look: Look::Name,
            anchors: [0.8, 0.6, 0.4, 0.2]
                .map(|t| a.lerp(b, t) + *solid * 0.1)
                .to_vec(),
            least_mm: 3.0,
        });
    }
    let extent = Rect::of(shape.spots()).common(view.window);
    if extent.is_empty() {
        return None;
    }
    let c = extent.centre();
    let (w, h) = (extent.width(), extent.height());
    Some(Label {
        text: name.to_owned(),
        look: Look::Name,
        anchors: [
            (0.0, -0.5),
            (-0.3, -0.5),
            (0.3, -0.5),
            (0.0, 0.5),
            (-0.3, 0.5),
            (0.3, 0.5),
        ]
        .map(|(fx, fy)| c + Spot::new(fx * w, fy * h))
        .to_vec(),
        least_mm: 2.2,
    })
}
