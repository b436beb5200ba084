//! The chosen runs from the side, from above and from behind, as one SVG.

use super::solve::Solved;
use super::{Failure, write_whole};
use std::path::Path;
use tubewright_build::model::Model;
use tubewright_check::Board;
use tubewright_plan::scene::scene_of;
use tubewright_sheets::{Paper, TitleBlock, three_views, to_svg};

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
    let scene = scene_of(model, &solved.around, solved.runs(), board);
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
