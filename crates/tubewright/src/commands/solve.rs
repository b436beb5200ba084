//! The runs that a command works with: the chosen plan, else the routes of the plan file when they
//! are fresh, else routes solved now, with progress on stderr and Ctrl-C.

use super::Failure;
use super::load::Loaded;
use super::plan::{Kept, NAMED, Plan};
use crate::cli::Effort;
use crate::interrupt;
use crate::terminal::{WARNS, say, styled};
use indicatif::{ProgressBar, ProgressDrawTarget, ProgressStyle};
use tubewright_check::Board;
use tubewright_plan::fit::{self, AsBuilt};
use tubewright_plan::frozen::{self, FrozenError, FrozenPlan};
use tubewright_plan::plan_file::Freshness;
use tubewright_plan::routes::{PlannedRun, PosedProblem};
use tubewright_plan::stages::{
    self, Routed, Supply, SupplyError, Surroundings, USUAL_EFFORT, pose, survey_and_bodies,
};
use tubewright_route::Budget;

/// The chosen plan, walked.
#[derive(Debug)]
pub(crate) struct Chosen {
    /// As the record has it.
    pub(crate) plan: FrozenPlan,
    /// Its runs where they really hang: every joint that is tacked and measured in its place.
    pub(crate) runs: Vec<PlannedRun>,
    /// What was found of each measured joint, and how closing pieces meet them.
    pub(crate) built: AsBuilt,
    /// Its runs as the record has them.
    pub(crate) planned: Vec<PlannedRun>,
    /// Runs that cannot be walked.
    pub(crate) troubles: Vec<(String, FrozenError)>,
}

/// A build with its surroundings and runs.
#[derive(Debug)]
pub(crate) struct Solved {
    /// The surroundings.
    pub(crate) around: Surroundings,
    /// The posed problem.
    pub(crate) posed: PosedProblem,
    /// What the solver found; `None` when the chosen plan made solving needless.
    pub(crate) routed: Option<Routed>,
    /// The chosen plan, when there is one.
    pub(crate) chosen: Option<Chosen>,
    /// Effort and seed of the routes.
    pub(crate) budget: Budget,
    /// What the routes of the plan file are older than, when they are and were not solved anew.
    pub(crate) older: Option<Freshness>,
    /// The plan file.
    pub(crate) plan: Plan,
}

impl Solved {
    /// The runs that are bought, cut and checked: the chosen ones, else the first alternative.
    pub(crate) fn runs(&self) -> &[PlannedRun] {
        if let Some(chosen) = &self.chosen {
            return &chosen.runs;
        }
        match &self.routed {
            Some(Routed::Found(alternatives)) => {
                alternatives.first().map_or(&[], |best| &best.runs)
            }
            _ => &[],
        }
    }

    /// The plan as the record has it.
    pub(crate) fn frozen(&self) -> Option<&FrozenPlan> {
        self.chosen.as_ref().map(|chosen| &chosen.plan)
    }

    /// What to buy and where to cut; `None` without runs.
    ///
    /// # Errors
    /// The stock file lacks something or the planner fails.
    pub(crate) fn supply(
        &self,
        loaded: &Loaded,
        without: &[String],
    ) -> Result<Option<Supply>, SupplyError> {
        let runs = self.runs();
        if runs.is_empty() {
            return Ok(None);
        }
        stages::supply(&loaded.model, &self.around.practice, runs, without).map(Some)
    }

    /// Every check of the runs.
    pub(crate) fn board(&self, loaded: &Loaded, supply: Option<&Supply>) -> Board {
        match (&self.chosen, &self.routed) {
            (Some(chosen), _) => stages::check_chosen(
                &loaded.model,
                &self.around,
                &self.posed,
                &chosen.runs,
                &chosen.troubles,
                supply,
            ),
            (None, Some(routed)) => stages::check(
                &loaded.model,
                &self.around,
                Some((&self.posed, routed)),
                supply,
            ),
            (None, None) => stages::check(&loaded.model, &self.around, None, supply),
        }
    }
}

/// The runs of the chosen plan or of a fresh plan file; solves only when there is neither.
///
/// # Errors
/// The readings cannot be adjusted, or the routes cannot be posed.
pub(crate) fn runs_of(loaded: &mut Loaded) -> Result<Solved, Failure> {
    let begun = begin(loaded)?;
    go_on(loaded, begun)
}

/// The same for a car that is measured already.
///
/// # Errors
/// The routes cannot be posed.
pub(crate) fn go_on(loaded: &Loaded, mut solved: Solved) -> Result<Solved, Failure> {
    match solved.plan.routes(loaded, &solved.around, &solved.posed) {
        Kept::Fresh(routed, budget) => {
            solved.routed = Some(routed);
            solved.budget = budget;
        }
        Kept::Older(older) => solved.older = Some(older),
        Kept::Absent => {}
    }
    if solved.chosen.is_none() && solved.routed.is_none() {
        if let Some(older) = solved.older.take() {
            say(&format!(
                "{}: the routes of plan.json are {}; solving again",
                styled(WARNS, "note"),
                older.words(NAMED)
            ));
        }
        solve_into(loaded, &mut solved)?;
    }
    Ok(solved)
}

/// Solves with the effort that was asked for, whatever the plan file holds.
///
/// # Errors
/// The readings cannot be adjusted, or the routes cannot be posed.
pub(crate) fn solve(loaded: &mut Loaded, effort: Effort) -> Result<Solved, Failure> {
    let mut solved = begin(loaded)?;
    solved.budget.work_units = effort.effort.unwrap_or(solved.budget.work_units);
    solved.budget.seed = effort.seed.unwrap_or(solved.budget.seed);
    solve_into(loaded, &mut solved)?;
    Ok(solved)
}

/// The car as it is measured and the chosen plan; nothing is solved.
///
/// # Errors
/// The readings cannot be adjusted.
pub(crate) fn begin(loaded: &Loaded) -> Result<Solved, Failure> {
    let around = survey_and_bodies(&loaded.model, &loaded.scans)?;
    let posed = pose(&loaded.model, &around);
    let wishes = &loaded.model.build.wishes;
    let chosen = frozen::frozen_plan(&loaded.model.shop).map(|plan| {
        let (planned, troubles) = frozen::planned(&loaded.model, &posed, &plan);
        let built = fit::runs_as_built(&loaded.model, &around, &planned);
        Chosen {
            plan,
            runs: built.runs.clone(),
            built,
            planned,
            troubles,
        }
    });
    Ok(Solved {
        budget: Budget {
            work_units: wishes.effort.unwrap_or(USUAL_EFFORT),
            seed: wishes.seed.unwrap_or(1),
        },
        around,
        posed,
        routed: None,
        chosen,
        older: None,
        plan: Plan::open(loaded),
    })
}

fn solve_into(loaded: &Loaded, solved: &mut Solved) -> Result<(), Failure> {
    let budget = solved.budget;
    let bar = ProgressBar::with_draw_target(Some(budget.work_units), ProgressDrawTarget::stderr());
    if let Ok(style) = ProgressStyle::with_template("routing {bar:30} {percent:>3} %  {msg}") {
        bar.set_style(style);
    }
    let outcome = stages::route(
        &loaded.model,
        &solved.around,
        budget,
        interrupt::flag(),
        &mut |progress| {
            bar.set_position(progress.work_units.min(progress.budget_units));
            if let Some(cost) = progress.best_cost {
                bar.set_message(format!("best so far {cost:.0}"));
            }
        },
    );
    bar.finish_and_clear();
    let (posed, routed) = outcome?;
    if interrupt::was_asked() {
        // What a stopped search holds depends on when it was stopped: it is shown and not kept.
        say(&format!(
            "{}: stopped early; plan.json stays as it was",
            styled(WARNS, "note")
        ));
    } else {
        solved
            .plan
            .keep_routes(loaded, &solved.around, &posed, &routed, budget);
    }
    solved.posed = posed;
    solved.routed = Some(routed);
    solved.older = None;
    Ok(())
}
