//! The whole of a build at a glance, and the news of it.

use super::{BodyView, MeasureView, RecordEntry, RouteView, Solving};
use serde::Serialize;
use std::collections::BTreeMap;
use ts_rs::TS;

/// Everything that the page shows, as of one revision of the folder.
#[derive(Clone, Debug, Serialize, TS)]
#[serde(rename_all = "camelCase")]
pub struct View {
    /// Names the texts that all of this was computed from; changes whenever one of them does.
    pub revision: String,
    /// Names everything that is derived too: the ways found and the one that is shown.
    pub version: String,
    /// `mm` or `in`: the unit that the build is written in.
    pub units: String,
    /// Name of the build.
    pub name: String,
    /// The build's own note.
    pub note: Option<String>,
    /// What is wrong in the files, each as the command line shows it.
    pub problems: Vec<FileProblem>,
    /// What each job still lacks.
    pub missing: Vec<JobLacks>,
    /// The readings and what they give.
    pub measure: MeasureView,
    /// What is in the way.
    pub bodies: Vec<BodyView>,
    /// The routes.
    pub route: RouteView,
    /// What happened to the steel, oldest first.
    pub record: Vec<RecordEntry>,
    /// What has names in the files, for the forms: each list with the names in it.
    pub names: BTreeMap<String, Vec<String>>,
    /// What can be taken back, newest last; empty when nothing can.
    pub can_undo: Option<String>,
    /// What can be done again.
    pub can_redo: Option<String>,
}

/// One problem in a file.
#[derive(Clone, Debug, Serialize, TS)]
#[serde(rename_all = "camelCase")]
pub struct FileProblem {
    /// True when nothing is computed before it is mended.
    pub is_error: bool,
    /// File, line, column and all words.
    pub words: String,
}

/// What one job lacks.
#[derive(Clone, Debug, Serialize, TS)]
#[serde(rename_all = "camelCase")]
pub struct JobLacks {
    /// The job.
    pub job: String,
    /// What it lacks.
    pub lacks: Vec<String>,
}

/// Pushed to every open page.
#[derive(Clone, Debug, Serialize, TS)]
#[serde(rename_all = "camelCase", tag = "event")]
pub enum News {
    /// Something changed: fetch the view again.
    Changed,
    /// The solver went on.
    Solving {
        /// How far it is.
        progress: Solving,
    },
}

/// A demonstration build that can be played with.
#[derive(Clone, Debug, Serialize, TS)]
#[serde(rename_all = "camelCase")]
pub struct SampleView {
    /// Its name in the address: `demo/NAME/`.
    pub name: String,
    /// One line.
    pub title: String,
}
