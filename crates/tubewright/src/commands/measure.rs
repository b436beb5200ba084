//! Adjust the readings and show what they give, and what to measure next.

mod json;
mod text;

use super::{Done, Failure, load, print};
use crate::cli::Measure;
use crate::terminal::lengths::shown_lengths;
use crate::terminal::{heading, paragraph};
use tubewright_build::model::Build;
use tubewright_plan::lengths::Lengths;
use tubewright_plan::stages::{Surroundings, survey_and_bodies};
use tubewright_plan::survey::guide;

/// Shows the survey.
///
/// # Errors
/// The folder cannot be read, or the readings cannot be adjusted at all.
pub(crate) fn run(arguments: &Measure) -> Result<Done, Failure> {
    let loaded = load::load_the_car(&arguments.at.folder)?;
    let build = &loaded.model.build;
    let around = survey_and_bodies(&loaded.model, &loaded.scans)?;
    if arguments.at.json {
        let guide = guide(build, &around.measured, &around.bodies.placed);
        print(&format!("{:#}\n", json::as_json(&around, &guide)))?;
    } else {
        let lengths = shown_lengths(&loaded.model);
        print(&as_text(build, &around, lengths, arguments.all))?;
        if !loaded.missing.is_empty() {
            let mut text = heading("What is still missing");
            for job in &loaded.missing {
                for lack in &job.lacks {
                    text.push_str(&paragraph(&format!("{}: {lack}", job.title), 2));
                }
            }
            print(&text)?;
        }
    }
    let is_clean = around.measured.doubtful.is_empty() && around.measured.frame_problem.is_none();
    Ok(if is_clean {
        Done::Clean
    } else {
        Done::Findings
    })
}

/// The survey as text.
pub(crate) fn as_text(
    build: &Build,
    around: &Surroundings,
    lengths: Lengths,
    with_all: bool,
) -> String {
    let guide = guide(build, &around.measured, &around.bodies.placed);
    text::as_text(around, &guide, lengths, with_all)
}
