//! What the written files promise once they are let in.

use crate::{Broken, edits, promise};
use tubewright_build::{FileKind, Texts, read};
use tubewright_plan::plan_file::{PlanFile, Stage, StoredRoutes};

pub(crate) fn build_file(bytes: &[u8]) -> Result<(), Broken> {
    if let Ok(text) = core::str::from_utf8(bytes) {
        edits::untouched(FileKind::Build, text)?;
        edits::renamed(Texts {
            build: Some(text),
            ..Texts::default()
        })?;
    }
    written(bytes, |text| Texts {
        build: Some(text),
        ..Texts::default()
    })
}

pub(crate) fn stock_file(bytes: &[u8]) -> Result<(), Broken> {
    if let Ok(text) = core::str::from_utf8(bytes) {
        edits::untouched(FileKind::Stock, text)?;
    }
    written(bytes, |text| Texts {
        stock: Some(text),
        ..Texts::default()
    })
}

pub(crate) fn shop_file(bytes: &[u8]) -> Result<(), Broken> {
    written(bytes, |text| Texts {
        shop: Some(text),
        ..Texts::default()
    })
}

fn written<'a>(bytes: &'a [u8], texts_with: impl Fn(&'a str) -> Texts<'a>) -> Result<(), Broken> {
    // The binary refuses what is no text before this door.
    let Ok(text) = core::str::from_utf8(bytes) else {
        return Ok(());
    };
    let texts = texts_with(text);
    let first = read(texts);
    promise(first == read(texts), "equal texts are read equally", || {
        "two readings differ".to_owned()
    })?;
    for problem in &first.problems {
        let of_file = match problem.file {
            FileKind::Build => texts.build,
            FileKind::Stock => texts.stock,
            FileKind::Shop => texts.shop,
            _ => None,
        };
        let range = problem.span.range();
        // What is missing from a file that is not there has no place.
        let lines = of_file.unwrap_or("").split('\n').count();
        promise(
            range.end <= of_file.unwrap_or("").len()
                && of_file.unwrap_or("").get(range.clone()).is_some()
                && (1..=lines).contains(&problem.line)
                && problem.column >= 1,
            "a problem points into the text",
            || format!("{problem:?}"),
        )?;
        promise(
            !problem.what.is_empty() && !problem.do_this.is_empty(),
            "a problem says what it is and what to do",
            || format!("{problem:?}"),
        )?;
    }
    Ok(())
}

pub(crate) fn route_problem(bytes: &[u8]) -> Result<(), Broken> {
    let Ok(text) = core::str::from_utf8(bytes) else {
        return Ok(());
    };
    let Err(refusal) = tubewright_route::form::read_problem(text) else {
        return Ok(());
    };
    promise(
        !refusal.to_string().is_empty(),
        "a refusal says why",
        String::new,
    )
}

/// `plan.json` is only derived: one that is damaged counts as none, and one that is taken is written
/// again as it was.
pub(crate) fn plan_json(bytes: &[u8]) -> Result<(), Broken> {
    let Ok(text) = core::str::from_utf8(bytes) else {
        return Ok(());
    };
    edits::renamed_plan(text)?;
    let plan = match PlanFile::parse(text) {
        Ok(plan) => plan,
        Err(refusal) => {
            return promise(
                !refusal.to_string().is_empty(),
                "a refusal says why",
                String::new,
            );
        }
    };
    let written = plan.to_text();
    let again = PlanFile::parse(&written);
    promise(
        again.as_ref().is_ok_and(|again| again.to_text() == written),
        "a plan that was taken is taken again as it was written",
        || format!("{again:?}"),
    )?;
    let Some(routes) = plan.stage(Stage::Routes) else {
        return Ok(());
    };
    match StoredRoutes::of(routes) {
        Ok(_) => Ok(()),
        Err(refusal) => promise(
            !refusal.to_string().is_empty(),
            "routes that cannot be used again are refused with the reason",
            String::new,
        ),
    }
}
