//! The chosen runs among the bodies, as what the drawings are made of.

use crate::bodies::PlacedBody;
use crate::lengths::Lengths;
use crate::routes::{PlannedKind, PlannedPiece, PlannedRun, component_kind};
use crate::stages::Surroundings;
use tubewright_build::model::{Class, ComponentKind, Model};
use tubewright_check::{Board, Limit};
use tubewright_sheets::{
    Nameless, PieceKind, Scene, SceneBody, SceneMark, ScenePiece, SceneRun, TightPlace,
};

/// Most tight places that are listed on the drawing.
const TIGHT_PLACES: usize = 8;

/// The scene of one alternative: the bodies as they stand, its runs, the marks, the tightest places
/// of `board`.
#[must_use]
pub fn scene_of(model: &Model, around: &Surroundings, runs: &[PlannedRun], board: &Board) -> Scene {
    let places = &around.measured.places;
    let mut tight: Vec<TightPlace> = board
        .findings()
        .iter()
        .filter_map(|finding| {
            let (measured, place) = (finding.measured?, finding.place.as_ref()?);
            let Some(Limit::AtLeast(wanted_mm)) = finding.limit else {
                return None;
            };
            let (piece, body) = finding.subject.split_once(" to ")?;
            Some(TightPlace {
                piece: piece.to_owned(),
                body: body.to_owned(),
                at: place.point_in_car,
                gap_mm: measured.value,
                plus_minus_mm: measured.plus_minus,
                wanted_mm,
            })
        })
        .collect();
    tight.sort_by(|a, b| (a.gap_mm - a.wanted_mm).total_cmp(&(b.gap_mm - b.wanted_mm)));
    tight.truncate(TIGHT_PLACES);
    Scene {
        title: model.build.name.clone().unwrap_or_default(),
        bodies: around
            .bodies
            .placed
            .iter()
            .filter(|body| body.class != Class::Ground)
            .map(scene_body)
            .collect(),
        runs: runs.iter().map(|run| scene_run(model, run)).collect(),
        marks: model
            .build
            .marks
            .iter()
            .filter_map(|mark| {
                let at = places.points.get(mark.name.as_str())?.point_in_car;
                Some(SceneMark {
                    name: mark.name.to_string(),
                    at,
                })
            })
            .collect(),
        ground_z_mm: places
            .floors
            .values()
            .find(|floor| floor.is_on_wheels)
            .map(|floor| floor.point_in_car.z),
        tight_places: tight,
        nameless: Nameless::default(),
        unit: Lengths::of(model).drawn(),
    }
}

fn scene_body(body: &PlacedBody) -> SceneBody {
    SceneBody {
        name: body.name.clone(),
        class_words: class_words(body.class).to_owned(),
        solid: body.solid_in_car.clone(),
        is_moving: !body.motion.0.is_fixed(),
    }
}

/// What a fabricator calls a class of bodies.
#[must_use]
pub const fn class_words(class: Class) -> &'static str {
    match class {
        Class::Structure => "structure",
        Class::Floor => "floor",
        Class::Driveline => "driveline",
        Class::Moving => "moving part",
        Class::Tyre => "tyre",
        Class::Soft => "soft, no shield",
        Class::SoftShielded => "soft, behind a shield",
        Class::FuelBrake => "fuel or brake part",
        Class::Heat => "hot metal",
        Class::Ground => "ground",
        Class::Bonnet => "bonnet",
        Class::Service => "service room",
    }
}

fn scene_run(model: &Model, run: &PlannedRun) -> SceneRun {
    let wall_mm = model
        .stock
        .tube(&run.tube)
        .map_or(0.0, |tube| tube.wall.mm());
    SceneRun {
        name: run.name.clone(),
        od_mm: run.od_mm,
        pieces: run
            .pieces
            .iter()
            .map(|piece| scene_piece(model, piece, wall_mm))
            .collect(),
        last_joint: Some(run.last_joint.clone())
            .filter(|mark| !mark.is_empty() && run.ends_at_part().is_none()),
    }
}

fn scene_piece(model: &Model, piece: &PlannedPiece, wall_mm: f64) -> ScenePiece {
    let (kind, name) = match &piece.kind {
        PlannedKind::Straight { .. } => (PieceKind::Straight, None),
        PlannedKind::Bend { .. } => (PieceKind::Bend, None),
        PlannedKind::Crossover { name, .. } => (PieceKind::Crossover, Some(name.clone())),
        PlannedKind::Component { name, .. } => (
            match component_kind(model, name) {
                Some(ComponentKind::Flex) => PieceKind::Flex,
                Some(ComponentKind::Catalyst) => PieceKind::Catalyst,
                Some(ComponentKind::Resonator) => PieceKind::Resonator,
                Some(ComponentKind::Silencer) => PieceKind::Silencer,
                _ => PieceKind::Component,
            },
            Some(name.clone()),
        ),
    };
    // The first element of a component is its tube, the others the room its can takes.
    let is_component = matches!(piece.kind, PlannedKind::Component { .. });
    let tubes = if is_component {
        1
    } else {
        piece.elements.len()
    };
    ScenePiece {
        mark: piece.mark.clone(),
        joint: Some(piece.joint.clone()).filter(|mark| !mark.is_empty()),
        kind,
        name,
        elements: piece.elements.iter().take(tubes).copied().collect(),
        wall_mm,
        frame_in: piece.frame_in,
        frame_out: piece.frame_out,
        outline: piece
            .elements
            .iter()
            .skip(tubes)
            .map(|element| tubewright_geometry::Solid::Tube(*element))
            .collect(),
        cut_in: None,
        cut_out: None,
    }
}
