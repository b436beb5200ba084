//! What the texts say, what the readings give, and the runs that are worked with.

use crate::derived::Derived;
use std::collections::BTreeMap;
use std::sync::{Arc, Mutex, PoisonError};
use tubewright_build::folder::Folder;
use tubewright_build::hash::CanonicalHasher;
use tubewright_build::model::{BodyKind, Model};
use tubewright_build::{FileKind, ReadBuild, Severity};
use tubewright_check::Board;
use tubewright_plan::fit;
use tubewright_plan::frozen::{self, FrozenError, FrozenPlan};
use tubewright_plan::plan_file::{PlanFile, Stage, StoredRoutes, bodies_inputs, routes_inputs};
use tubewright_plan::routes::{PlannedRun, PosedProblem};
use tubewright_plan::stages::{
    Routed, Supply, Surroundings, USUAL_EFFORT, check, check_chosen, pose, routed_again,
    survey_and_bodies,
};
use tubewright_route::Budget;

/// How many things are named that the routes are older than.
const NAMED: usize = 4;

/// A car as of one state of the folder. What is dearer than the readings is worked out when it is
/// asked for and then kept.
#[derive(Debug)]
pub(crate) struct Car {
    /// As read.
    pub(crate) read: ReadBuild,
    /// Names the texts that all this came from.
    pub(crate) revision: String,
    /// The adjusted readings, the bodies and the runs, or why there are none.
    pub(crate) job: Result<Job, String>,
    /// Bytes of the scans by file name.
    pub(crate) scans: BTreeMap<String, Vec<u8>>,
    /// Scans that lie in the folder, by the names that a body names them by.
    pub(crate) scan_files: Vec<String>,
    /// Names what the surroundings were made from, so that they are not made twice.
    surroundings: String,
    derived: Mutex<BTreeMap<usize, Arc<Derived>>>,
}

/// A car that could be measured.
#[derive(Debug)]
pub(crate) struct Job {
    /// The adjusted readings and the bodies.
    pub(crate) around: Surroundings,
    /// The runs as they are put to the solver.
    pub(crate) posed: PosedProblem,
    /// What the solver found, as the plan file keeps it.
    pub(crate) routed: Option<Routed>,
    /// What those routes are older than.
    pub(crate) older: Option<String>,
    /// The plan that was chosen, with its pieces walked.
    pub(crate) chosen: Option<Chosen>,
    /// Effort and seed of the next search.
    pub(crate) budget: Budget,
}

/// The chosen plan.
#[derive(Debug)]
pub(crate) struct Chosen {
    /// As the record has it.
    pub(crate) plan: FrozenPlan,
    /// Its runs where they really hang: every joint that is tacked and measured in its place.
    pub(crate) runs: Vec<PlannedRun>,
    /// Its runs as the record has them.
    pub(crate) planned: Vec<PlannedRun>,
    /// Runs that cannot be walked.
    pub(crate) troubles: Vec<(String, FrozenError)>,
}

impl Car {
    /// Reads the folder. Surroundings of `before` are taken over when nothing that they come from has
    /// changed.
    pub(crate) fn of(folder: &Folder, before: Option<&Self>) -> Self {
        let read = folder.read();
        let errors = read
            .problems
            .iter()
            .filter(|problem| problem.severity == Severity::Error)
            .count();
        let scans: BTreeMap<String, Vec<u8>> = read
            .model
            .build
            .bodies
            .iter()
            .filter_map(|body| match &body.kind {
                // One that cannot be read is left out, and its body says so.
                BodyKind::Scan { file, .. } => Some((file.clone(), folder.scan(file).ok()?)),
                _ => None,
            })
            .collect();
        let surroundings = surroundings_hash(folder, &read.model, &scans);
        let known = before
            .filter(|before| before.surroundings == surroundings)
            .and_then(|before| before.job.as_ref().ok())
            .map(|job| job.around.clone());
        let job = if errors > 0 {
            Err(format!(
                "{errors} place{} in the files cannot be read; nothing is computed before they are mended",
                if errors == 1 { "" } else { "s" }
            ))
        } else {
            known
                .map_or_else(|| survey_and_bodies(&read.model, &scans), Ok)
                .map(|around| job_of(folder, &read.model, &scans, around))
                .map_err(|error| error.to_string())
        };
        let mut hasher = CanonicalHasher::new("page/1");
        for file in [FileKind::Build, FileKind::Stock, FileKind::Shop] {
            hasher.text(folder.text(file).unwrap_or_default());
        }
        Self {
            revision: hasher.finish().to_string(),
            read,
            job,
            scans,
            scan_files: folder.scans(),
            surroundings,
            derived: Mutex::new(BTreeMap::new()),
        }
    }

    /// The build.
    pub(crate) fn model(&self) -> &Model {
        &self.read.model
    }

    /// The job, or why there is none.
    pub(crate) fn good_job(&self) -> Option<&Job> {
        self.job.as_ref().ok()
    }

    /// The runs that are bought, cut and judged: the chosen ones, else those of the way that is shown.
    pub(crate) fn runs(&self, way: usize) -> &[PlannedRun] {
        let Some(job) = self.good_job() else {
            return &[];
        };
        if let Some(chosen) = &job.chosen {
            return &chosen.runs;
        }
        match &job.routed {
            Some(Routed::Found(ways)) => {
                ways.get(way).or(ways.first()).map_or(&[], |way| &way.runs)
            }
            _ => &[],
        }
    }

    /// What is worked out for a way that is shown.
    pub(crate) fn derived(&self, way: usize) -> Arc<Derived> {
        let mut kept = self.derived.lock().unwrap_or_else(PoisonError::into_inner);
        Arc::clone(kept.entry(way).or_default())
    }
}

impl Job {
    /// Every check of the chosen plan, else of the way that is shown.
    pub(crate) fn board(&self, model: &Model, way: usize, supply: Option<&Supply>) -> Board {
        match (&self.chosen, &self.routed) {
            (Some(chosen), _) => check_chosen(
                model,
                &self.around,
                &self.posed,
                &chosen.runs,
                &chosen.troubles,
                supply,
            ),
            (None, Some(Routed::Found(ways))) if way > 0 && way < ways.len() => {
                // The board judges the first way of a list: the one that is shown is put first.
                let shown = ways.get(way).cloned().into_iter().collect();
                let routed = Routed::Found(shown);
                check(model, &self.around, Some((&self.posed, &routed)), supply)
            }
            (None, Some(routed)) => check(model, &self.around, Some((&self.posed, routed)), supply),
            (None, None) => check(model, &self.around, None, supply),
        }
    }
}

/// Everything that the surroundings depend on.
fn surroundings_hash(folder: &Folder, model: &Model, scans: &BTreeMap<String, Vec<u8>>) -> String {
    let mut hasher = CanonicalHasher::new("page-surroundings/1");
    hasher.text(&bodies_inputs(model, scans).hash().to_string());
    // What the survey and the bodies read is hashed above as values;
    // The shop's figures are read from here; names and notes of the build from there.
    for file in [FileKind::Build, FileKind::Stock] {
        hasher.text(folder.text(file).unwrap_or_default());
    }
    hasher.finish().to_string()
}

fn job_of(
    folder: &Folder,
    model: &Model,
    scans: &BTreeMap<String, Vec<u8>>,
    around: Surroundings,
) -> Job {
    let posed = pose(model, &around);
    let wishes = &model.build.wishes;
    let mut budget = Budget {
        work_units: wishes.effort.unwrap_or(USUAL_EFFORT),
        seed: wishes.seed.unwrap_or(1),
    };
    let plan = plan_of(folder);
    let stage = plan.stage(Stage::Routes);
    let stored = stage.and_then(|stage| Some((stage, StoredRoutes::of(stage).ok()?)));
    let mut older = None;
    let routed = stored.and_then(|(stage, stored)| {
        budget = stored.budget;
        let now = routes_inputs(model, scans, &around.practice, stored.budget);
        let freshness = stage.freshness(&now);
        older = (!freshness.is_fresh()).then(|| freshness.words(NAMED));
        routed_again(model, &posed, &stored).ok()
    });
    let chosen = frozen::frozen_plan(&model.shop).map(|plan| {
        let (planned, troubles) = frozen::planned(model, &posed, &plan);
        Chosen {
            runs: fit::runs_as_built(model, &around, &planned).runs,
            plan,
            planned,
            troubles,
        }
    });
    Job {
        older: older.filter(|_| routed.is_some()),
        around,
        posed,
        routed,
        chosen,
        budget,
    }
}

/// The plan file; one that is damaged counts as none, since all of it is derived.
pub(crate) fn plan_of(folder: &Folder) -> PlanFile {
    folder
        .text(FileKind::Plan)
        .and_then(|text| PlanFile::parse(text).ok())
        .unwrap_or_default()
}
