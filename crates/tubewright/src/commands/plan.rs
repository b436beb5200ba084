//! `plan.json` between commands: what is fresh is used again, what is older is told and computed anew.

use super::load::Loaded;
use crate::terminal::{WARNS, say, styled};
use tubewright_build::FileKind;
use tubewright_build::folder::{Changes, SaveError};
use tubewright_check::Board;
use tubewright_plan::frozen::FrozenPlan;
use tubewright_plan::plan_file::{
    Freshness, Inputs, PlanFile, Stage, StoredRoutes, StoredStage, bodies_inputs, bodies_result,
    checks_inputs, checks_result, routes_inputs, routes_result, stock_inputs, stock_result,
    survey_inputs, survey_result,
};
use tubewright_plan::routes::PosedProblem;
use tubewright_plan::stages::{Routed, Supply, Surroundings, routed_again};
use tubewright_route::Budget;

/// How many things are named that a stage is older than.
pub(crate) const NAMED: usize = 4;

/// The plan of a folder while a command works.
#[derive(Debug)]
pub(crate) struct Plan {
    file: PlanFile,
    is_changed: bool,
}

/// What the plan file holds of the routes.
#[derive(Debug)]
pub(crate) enum Kept {
    /// They are of what lies in the folder now.
    Fresh(Routed, Budget),
    /// They are older than this.
    Older(Freshness),
    /// There are none.
    Absent,
}

impl Plan {
    /// The plan of the folder; one that is damaged counts as none, and that is said.
    pub(crate) fn open(loaded: &Loaded) -> Self {
        let file = match (
            loaded.folder.plan_trouble(),
            loaded.folder.text(FileKind::Plan),
        ) {
            (Some(trouble), _) => Err(trouble.to_owned()),
            (None, Some(text)) => PlanFile::parse(text).map_err(|error| error.to_string()),
            (None, None) => Ok(PlanFile::default()),
        };
        Self {
            file: file.unwrap_or_else(|why| {
                say_unusable(&why);
                PlanFile::default()
            }),
            is_changed: false,
        }
    }

    /// The routes of the plan file when they are fresh, else what they are older than.
    pub(crate) fn routes(
        &self,
        loaded: &Loaded,
        around: &Surroundings,
        posed: &PosedProblem,
    ) -> Kept {
        let Some(stage) = self.file.stage(Stage::Routes) else {
            return Kept::Absent;
        };
        let stored = match StoredRoutes::of(stage) {
            Ok(stored) => stored,
            Err(why) => {
                say_unusable(&why.to_string());
                return Kept::Absent;
            }
        };
        let now = routes_inputs(
            &loaded.model,
            &loaded.scans,
            &around.practice,
            stored.budget,
        );
        match stage.freshness(&now) {
            Freshness::Fresh => match routed_again(&loaded.model, posed, &stored) {
                Ok(routed) => Kept::Fresh(routed, stored.budget),
                Err(why) => {
                    say_unusable(&why.to_string());
                    Kept::Absent
                }
            },
            older @ Freshness::Older(_) => Kept::Older(older),
        }
    }

    /// Keeps the survey, the bodies and the routes.
    pub(crate) fn keep_routes(
        &mut self,
        loaded: &Loaded,
        around: &Surroundings,
        posed: &PosedProblem,
        routed: &Routed,
        budget: Budget,
    ) {
        let inputs = survey_inputs(&loaded.model);
        self.keep(Stage::Survey, &inputs, || survey_result(&inputs, around));
        let inputs = bodies_inputs(&loaded.model, &loaded.scans);
        self.keep(Stage::Bodies, &inputs, || bodies_result(&inputs, around));
        let inputs = routes_inputs(&loaded.model, &loaded.scans, &around.practice, budget);
        self.keep(Stage::Routes, &inputs, || {
            routes_result(&inputs, posed, routed, budget)
        });
    }

    /// Keeps the buying and cutting plan.
    pub(crate) fn keep_supply(
        &mut self,
        loaded: &Loaded,
        around: &Surroundings,
        budget: Budget,
        chosen: Option<&FrozenPlan>,
        supply: &Supply,
    ) {
        let inputs = stock_inputs_of(loaded, around, budget, chosen);
        self.keep(Stage::Stock, &inputs, || stock_result(&inputs, supply));
    }

    /// Keeps what the checks say.
    pub(crate) fn keep_checks(
        &mut self,
        loaded: &Loaded,
        around: &Surroundings,
        budget: Budget,
        chosen: Option<&FrozenPlan>,
        board: &Board,
    ) {
        let stock = stock_inputs_of(loaded, around, budget, chosen);
        let inputs = checks_inputs(&loaded.model, &loaded.scans, &stock, chosen);
        self.keep(Stage::Checks, &inputs, || checks_result(&inputs, board));
    }

    fn keep(&mut self, stage: Stage, inputs: &Inputs, result: impl FnOnce() -> String) {
        self.file.set(stage, StoredStage::new(inputs, result()));
        self.is_changed = true;
    }

    /// Writes the plan when something in it is new; not after Ctrl-C, because what a stopped search
    /// holds depends on when it was stopped. That it cannot be written is told and is no
    /// failure: everything in it is derived.
    pub(crate) fn save(self, loaded: &mut Loaded) {
        if !self.is_changed || crate::interrupt::was_asked() {
            return;
        }
        let text = self.file.to_text();
        if loaded.folder.text(FileKind::Plan) == Some(text.as_str()) {
            return;
        }
        let mut changes = Changes::new();
        changes.set(FileKind::Plan, text);
        if let Err(error) = loaded.folder.save(&changes) {
            let why = match error {
                SaveError::ChangedOnDisk { .. } => {
                    "another program wrote it meanwhile; it stays as that left it".to_owned()
                }
                other => other.to_string(),
            };
            say(&format!(
                "{}: plan.json was not written: {why}",
                styled(WARNS, "note")
            ));
        }
    }
}

fn stock_inputs_of(
    loaded: &Loaded,
    around: &Surroundings,
    budget: Budget,
    chosen: Option<&FrozenPlan>,
) -> Inputs {
    let routes = routes_inputs(&loaded.model, &loaded.scans, &around.practice, budget);
    stock_inputs(&loaded.model, &around.practice, &routes, chosen)
}

fn say_unusable(why: &str) {
    say(&format!(
        "{}: plan.json is left aside: {why}; it is computed anew",
        styled(WARNS, "note")
    ));
}
