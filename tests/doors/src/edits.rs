//! What edits promise of any text: comments and bytes stay, and renaming changes a name only.

use crate::{Broken, promise};
use tubewright_build::document::{Document, NameKind, rename};
use tubewright_build::model::Model;
use tubewright_build::{FileKind, Texts, read};

/// A name that no input is likely to have.
const NEW: &str = "another name, ü 7";

/// Opens the text for edits without making any.
pub(crate) fn untouched(file: FileKind, text: &str) -> Result<(), Broken> {
    match Document::parse(file, text) {
        Ok(document) => promise(
            document.text() == text,
            "a text that is opened for edits and not edited keeps every byte",
            || document.text(),
        ),
        Err(refusal) => promise(
            !refusal.to_string().is_empty(),
            "a refusal says why",
            String::new,
        ),
    }
}

/// Renames one thing there and back. Which one is the length's to say: every kind has its turn, and
/// an input costs a fuzzer five readings and not forty.
pub(crate) fn renamed(texts: Texts<'_>) -> Result<(), Broken> {
    let before = read(texts);
    if !before.problems.is_empty() {
        return Ok(());
    }
    let names = first_names(&before.model);
    let turn = texts.build.map_or(0, str::len) % names.len().max(1);
    if let Some((kind, name)) = names.get(turn) {
        // Refusals (a name that two things share, say) are answers.
        let Ok(there) = rename(texts, None, *kind, name, NEW) else {
            return Ok(());
        };
        let changed = Texts {
            build: there.text(FileKind::Build).or(texts.build),
            stock: there.text(FileKind::Stock).or(texts.stock),
            shop: there.text(FileKind::Shop).or(texts.shop),
        };
        let after = read(changed);
        promise(
            after.problems.is_empty(),
            "a sound build is sound after a renaming",
            || format!("{kind:?} {name:?}: {:?}", after.problems),
        )?;
        let back = rename(changed, None, *kind, NEW, name);
        let Ok(back) = back else {
            return promise(false, "a renaming can be taken back", || {
                format!("{kind:?} {name:?}: {back:?}")
            });
        };
        let again = read(Texts {
            build: back.text(FileKind::Build).or(changed.build),
            stock: back.text(FileKind::Stock).or(changed.stock),
            shop: back.text(FileKind::Shop).or(changed.shop),
        });
        promise(
            again.model == before.model,
            "a renaming that is taken back changes nothing",
            || format!("{kind:?} {name:?}"),
        )?;
    }
    Ok(())
}

fn first_names(model: &Model) -> Vec<(NameKind, String)> {
    let build = &model.build;
    [
        build.marks.first().map(|it| (NameKind::Mark, &it.name)),
        build.points.first().map(|it| (NameKind::Point, &it.name)),
        build.ends.first().map(|it| (NameKind::End, &it.name)),
        build.setups.first().map(|it| (NameKind::Setup, &it.name)),
        build
            .carriers
            .first()
            .map(|it| (NameKind::Carrier, &it.name)),
        build.bodies.first().map(|it| (NameKind::Body, &it.name)),
        build
            .components
            .first()
            .map(|it| (NameKind::Component, &it.name)),
        build.runs.first().map(|it| (NameKind::Run, &it.name)),
    ]
    .into_iter()
    .flatten()
    .map(|(kind, name)| (kind, name.to_string()))
    .collect()
}

/// Renames a mark in a plan there and back.
pub(crate) fn renamed_plan(text: &str) -> Result<(), Broken> {
    let texts = Texts {
        build: Some("format = \"tubewright-build/1\"\nname = \"n\"\n[[mark]]\nname = \"A\"\n"),
        ..Texts::default()
    };
    let Ok(there) = rename(texts, Some(text), NameKind::Mark, "A", NEW) else {
        return Ok(());
    };
    let changed = Texts {
        build: there.text(FileKind::Build),
        ..Texts::default()
    };
    let plan = there.text(FileKind::Plan).unwrap_or(text);
    let back = rename(changed, Some(plan), NameKind::Mark, NEW, "A");
    promise(
        back.is_ok(),
        "a plan that was renamed is still a plan",
        || format!("{back:?}"),
    )
}
