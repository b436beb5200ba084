//! The chosen runs from the side, from above and from behind, as one SVG.

use super::solve::Solved;
use super::{Failure, write_whole};
use std::path::Path;
use tubewright_build::model::{Class, ComponentKind, Model};
use tubewright_check::{Board, Limit};
use tubewright_plan::routes::{PlannedKind, PlannedPiece, PlannedRun, component_kind};
use tubewright_plan::stages::Routed;
use tubewright_sheets::{
    Paper, PieceKind, Scene, SceneBody, SceneMark, ScenePiece, SceneRun, TightPlace, TitleBlock,
    three_views, to_svg,
};

/// Most tight places that are listed on the drawing.
const TIGHT_PLACES: usize = 8;

/// Writes the drawing of the first alternative beside its name through a temporary file.
///
/// # Errors
/// There is nothing to draw, or the file cannot be written.
pub(crate) fn write(
    model: &Model,
    solved: &Solved,
    board: &Board,
    out: &Path,
) -> Result<(), Failure> {
    let scene = scene_of(model, solved, board);
    let block = TitleBlock {
        build: scene.title.clone(),
        sheet_name: "Runs, three views".to_owned(),
        note: model.build.note.clone(),
        ..TitleBlock::default()
    };
    let drawing = three_views(&scene, &block, Paper::A3)
        .map_err(|error| Failure::Drawing(error.to_string()))?;
    write_whole(out, &to_svg(&drawing))?;
    Ok(())
}

fn scene_of(model: &Model, solved: &Solved, board: &Board) -> Scene {
    let places = &solved.around.measured.places;
    let runs = match &solved.routed {
        Routed::Found(alternatives) => alternatives.first().map_or(&[][..], |best| &best.runs),
        _ => &[],
    };
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
        bodies: solved
            .around
            .bodies
            .placed
            .iter()
            .filter(|body| body.class != Class::Ground)
            .map(|body| SceneBody {
                name: body.name.clone(),
                class_words: format!("{:?}", body.class).to_lowercase(),
                solid: body.solid_in_car.clone(),
                is_moving: !body.motion.0.is_fixed(),
            })
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
        joint: Some(piece.joint.clone()),
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
