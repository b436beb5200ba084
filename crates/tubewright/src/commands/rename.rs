//! `tubewright rename`: another name for something, in all files at once.

use super::{Done, Failure, print};
use crate::cli::{NameKindWord, Rename};
use std::collections::BTreeMap;
use tubewright_build::document::rename;
use tubewright_build::folder::{Changes, Folder};
use tubewright_build::model::BodyKind;
use tubewright_build::{FileKind, Texts, read};
use tubewright_plan::plan_file::{Renamed, carried_over};

/// Renames and saves; all files or none.
pub(crate) fn run(arguments: &Rename) -> Result<Done, Failure> {
    let mut folder = Folder::open(&arguments.folder)?;
    let NameKindWord(kind) = arguments.kind;
    let renamed = Renamed {
        kind,
        old: &arguments.old,
        new: &arguments.new,
    };
    let mut changes = rename(
        folder.texts(),
        folder.text(FileKind::Plan),
        kind,
        renamed.old,
        renamed.new,
    )?;
    if let Some(plan) = plan_after(&folder, &changes, renamed) {
        changes.set(FileKind::Plan, plan);
    }
    let files: Vec<_> = changes.files().map(FileKind::file_name).collect();
    folder.save(&changes)?;
    print(&format!(
        "“{}” is “{}” now, in {}\n",
        arguments.old,
        arguments.new,
        files.join(", ")
    ))?;
    Ok(Done::Clean)
}

/// The plan under the new name, when its routes are those of the build; else they are solved anew when
/// they are next asked for.
fn plan_after(folder: &Folder, changes: &Changes, renamed: Renamed<'_>) -> Option<String> {
    let text = changes
        .text(FileKind::Plan)
        .or_else(|| folder.text(FileKind::Plan))?;
    let before = folder.read();
    let now = |file| changes.text(file).or_else(|| folder.text(file));
    let after = read(Texts {
        build: now(FileKind::Build),
        stock: now(FileKind::Stock),
        shop: now(FileKind::Shop),
    });
    if before.has_errors() || after.has_errors() {
        return None;
    }
    let mut scans = BTreeMap::new();
    for body in &before.model.build.bodies {
        if let BodyKind::Scan { file, .. } = &body.kind
            && let Ok(bytes) = folder.scan(file)
        {
            scans.insert(file.clone(), bytes);
        }
    }
    let plan = carried_over(text, &before.model, &after.model, &scans, renamed)?;
    Some(plan.to_text())
}
