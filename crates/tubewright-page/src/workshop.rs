//! One open build: its folder, what was computed from it, and who wants to hear of changes.

use crate::api::{
    Counter, Deed, DragAsked, DragView, ErrandsAsked, ErrandsView, FitView, JointView,
    LaidViewView, MakeAsked, MakeView, News, PartView, Plan, Refusal, ScanView, SolidView, Solving,
    TemplatesView, View, WayFigures,
};
use crate::car::{Car, plan_of};
use crate::deeds::{Deeded, changes_of, pinned, refusal, refuse_new_errors, said};
use crate::derived::Shown;
use crate::samples::Sample;
use crate::undo::{Undo, Way};
use crate::view::TemplatesWanted;
use crate::{pieces, steel, view};
use std::collections::BTreeMap;
use std::path::{Path, PathBuf};
use std::sync::atomic::{AtomicBool, Ordering};
use std::sync::{Arc, Mutex, MutexGuard, PoisonError};
use tokio::sync::broadcast;
use tubewright_build::FileKind;
use tubewright_build::folder::{Changes, Folder, FolderError};
use tubewright_build::model::Model;
use tubewright_plan::bodies::look_at_scan;
use tubewright_plan::lengths::Lengths;
use tubewright_plan::packet::{TrueScale, card_picture, closing};
use tubewright_plan::plan_file::{
    Stage, StoredStage, bodies_inputs, bodies_result, routes_inputs, routes_result, survey_inputs,
    survey_result,
};
use tubewright_plan::routes::PosedProblem;
use tubewright_plan::stages::{Routed, Surroundings, route};
use tubewright_route::Budget;
use tubewright_sheets::Scene;

/// Pieces of news that a slow page may fall behind; then it fetches everything anew.
const NEWS_KEPT: usize = 64;

/// An open build. Shared by all requests; cheap to clone.
#[derive(Clone, Debug)]
pub struct Workshop {
    inner: Arc<Inner>,
}

#[derive(Debug)]
struct Inner {
    path: PathBuf,
    samples: &'static [Sample],
    bench: Mutex<Bench>,
    news: broadcast::Sender<News>,
    cancel: AtomicBool,
}

#[derive(Debug)]
struct Bench {
    folder: Folder,
    undo: Undo,
    car: Arc<Car>,
    solving: Option<Solving>,
    shown: usize,
    /// Grows with every change of what is shown.
    serial: u64,
}

/// Why a build cannot be opened.
#[derive(Debug, thiserror::Error)]
#[non_exhaustive]
pub enum OpenError {
    /// The folder cannot be read.
    #[error(transparent)]
    Folder(#[from] FolderError),
}

impl Workshop {
    /// Opens a build folder and adjusts its readings. `samples` are the demonstrations whose stock may
    /// be taken over.
    ///
    /// # Errors
    /// [`OpenError`] when the folder cannot be read; problems inside the files are shown on the page.
    pub fn open(path: &Path, samples: &'static [Sample]) -> Result<Self, OpenError> {
        let folder = Folder::open(path)?;
        let car = Arc::new(Car::of(&folder, None));
        Ok(Self {
            inner: Arc::new(Inner {
                path: path.to_owned(),
                samples,
                bench: Mutex::new(Bench {
                    undo: Undo::of(path),
                    folder,
                    car,
                    solving: None,
                    shown: 0,
                    serial: 0,
                }),
                news: broadcast::channel(NEWS_KEPT).0,
                cancel: AtomicBool::new(false),
            }),
        })
    }

    /// Where the build lies.
    #[must_use]
    pub fn path(&self) -> &Path {
        &self.inner.path
    }

    /// Hears of changes from now on.
    pub(crate) fn listen(&self) -> broadcast::Receiver<News> {
        self.inner.news.subscribe()
    }

    /// What the readings give and what was found: everything that is quick.
    pub(crate) fn view(&self) -> View {
        let (shown, solving, undo) = {
            let bench = self.bench();
            let next = |way| bench.undo.next(way).map(str::to_owned);
            let undo = (next(Way::Back), next(Way::Again));
            (bench.shown(), bench.solving, undo)
        };
        view::of(&shown, solving, undo)
    }

    /// The list, the cards and the checks.
    pub(crate) fn plan(&self) -> Plan {
        view::plan(&self.shown())
    }

    /// What the ways are compared by.
    pub(crate) fn ways(&self) -> Vec<WayFigures> {
        view::ways(&self.shown())
    }

    /// What to take when something is out.
    pub(crate) fn counter(&self) -> Counter {
        view::counter(&self.shown())
    }

    /// The order of the errands.
    ///
    /// # Errors
    /// A [`Refusal`] with the reason.
    pub(crate) fn errands(&self, asked: &ErrandsAsked) -> Result<ErrandsView, Refusal> {
        view::errands(&self.shown(), asked)
    }

    /// What buying and making cost.
    ///
    /// # Errors
    /// A [`Refusal`] with the reason.
    pub(crate) fn buy_or_make(&self, asked: &MakeAsked) -> Result<MakeView, Refusal> {
        view::buy_or_make(&self.shown(), asked)
    }

    /// The order of tacking.
    pub(crate) fn fit(&self) -> FitView {
        view::fit(&self.shown())
    }

    /// A joint as built, with ways to go on.
    ///
    /// # Errors
    /// A [`Refusal`] when nothing is chosen or the readings give no place.
    pub(crate) fn joint(&self, joint: &str) -> Result<JointView, Refusal> {
        let shown = self.shown();
        steel::joint_as_found(&shown, joint)
            .map(|(found, offers, why)| view::joint(&found, &offers, why))
    }

    /// A run with a joint or a bend moved by hand.
    ///
    /// # Errors
    /// A [`Refusal`] when it is not there any more, or is held.
    pub(crate) fn drag(&self, asked: &DragAsked) -> Result<DragView, Refusal> {
        view::drag(&self.shown(), asked)
    }

    /// Where the drawing's views of this width draw the car.
    pub(crate) fn laid(&self, width_mm: f64) -> Vec<LaidViewView> {
        view::laid(&self.shown(), width_mm)
    }

    /// The parts, each with what could take its place.
    pub(crate) fn parts(&self) -> Vec<PartView> {
        view::parts(&self.shown())
    }

    /// The scene of the way that is shown.
    pub(crate) fn scene(&self) -> Option<Scene> {
        self.shown().scene()
    }

    /// The picture of a cut card, by its place among the cards, with lengths in the unit of this sign;
    /// for any other in that of the build.
    pub(crate) fn card_picture(&self, number: usize, unit: Option<&str>) -> Option<String> {
        let shown = self.shown();
        let card = shown.now()?.ok()?.cards.get(number)?;
        let lengths = unit
            .and_then(Lengths::of_sign)
            .unwrap_or_else(|| Lengths::of(shown.car.model()));
        // As the marks are that it is cut by.
        let longer = shown
            .fit_now()
            .and_then(|fit| closing(lengths, fit, card)?.card);
        let drawing = card_picture(longer.as_ref().unwrap_or(card), lengths).ok()?;
        Some(tubewright_sheets::to_svg(&drawing))
    }

    /// The wrap-round templates.
    pub(crate) fn templates(&self, wanted: &TemplatesWanted) -> TemplatesView {
        view::templates(&self.shown(), wanted)
    }

    /// The same as drawings.
    ///
    /// # Errors
    /// Words why there are none.
    pub(crate) fn templates_drawn(
        &self,
        wanted: &TemplatesWanted,
    ) -> Result<Vec<TrueScale>, String> {
        view::templates_drawn(&self.shown(), wanted)
    }

    /// The small picture of one way.
    pub(crate) fn way_picture(&self, way: usize) -> Option<String> {
        let shown = self.shown();
        let job = shown.car.good_job()?;
        let Some(Routed::Found(ways)) = &job.routed else {
            return None;
        };
        Some(view::small_picture(
            &job.around.bodies.placed,
            &ways.get(way)?.runs,
        ))
    }

    /// The bodies as shapes.
    pub(crate) fn solids(&self) -> Vec<SolidView> {
        view::solids(&self.shown())
    }

    fn shown(&self) -> Shown {
        self.bench().shown()
    }

    /// Does what the person asked and saves it.
    ///
    /// # Errors
    /// A [`Refusal`] with the reason; the files are then as they were.
    pub(crate) fn deed(&self, deed: &Deed) -> Result<(), Refusal> {
        let mut bench = self.bench();
        bench.catch_up()?;
        let deeded = match deed {
            Deed::Choose { on, way, name } => {
                steel::choosing(&bench.folder, &bench.car, on, *way, name)?
            }
            Deed::AcceptWay { on, way, name } => {
                steel::accepting(&bench.folder, &bench.car, on, *way, name)?
            }
            Deed::AcceptOffer {
                on,
                joint,
                number,
                what,
            } => steel::taking_up(&bench.folder, &bench.shown(), on, joint, *number, what)?,
            Deed::Happened { on, what } if pieces::is_at_the_saw(what) => {
                pieces::at_the_saw(&bench.folder, &bench.shown(), on, what)?
            }
            Deed::ShelveRest { piece, left } => {
                pieces::shelving(&bench.folder, &bench.shown(), piece, left)?
            }
            Deed::Pin {
                run,
                is_joint,
                at,
                within,
            } => {
                let deeded = pinned(&bench.folder, &bench.shown(), run, *is_joint, *at, within)?;
                refuse_new_errors(&bench.folder, &deeded.changes)?;
                deeded
            }
            other => changes_of(&bench.folder, other, self.inner.samples)?,
        };
        bench.save(deeded)?;
        drop(bench);
        self.tell(News::Changed);
        Ok(())
    }

    /// Puts a new scan into the folder; none is ever overwritten.
    ///
    /// # Errors
    /// A [`Refusal`] when it is no scan, its name is none, or there is one of that name.
    pub(crate) fn add_scan(&self, name: &str, content: &[u8]) -> Result<ScanView, Refusal> {
        let look = look_at_scan(name, content).map_err(said)?;
        let mut bench = self.bench();
        let file = bench.folder.add_scan(name, content).map_err(said)?;
        bench.read_again();
        drop(bench);
        self.tell(News::Changed);
        Ok(view::scan(file, look))
    }

    /// Takes the last change back or does it again.
    ///
    /// # Errors
    /// A [`Refusal`] with the reason.
    pub(crate) fn undo(&self, way: Way) -> Result<(), Refusal> {
        let mut guard = self.bench();
        guard.catch_up()?;
        let bench = &mut *guard;
        bench
            .undo
            .go(&mut bench.folder, way)
            .map_err(|error| refusal(&error.to_string()))?;
        bench.read_again();
        drop(guard);
        self.tell(News::Changed);
        Ok(())
    }

    /// Shows another way.
    pub(crate) fn show(&self, way: usize) {
        let mut bench = self.bench();
        bench.shown = way;
        bench.serial += 1;
        drop(bench);
        self.tell(News::Changed);
    }

    /// Starts the solver, unless it is running.
    ///
    /// # Errors
    /// A [`Refusal`] when there is nothing to solve from.
    pub(crate) fn solve(&self) -> Result<(), Refusal> {
        let work = {
            let mut bench = self.bench();
            if bench.solving.is_some() {
                return Ok(());
            }
            let Ok(job) = &bench.car.job else {
                return Err(refusal("there are no places yet: measure first"));
            };
            let work = Work {
                model: bench.car.model().clone(),
                scans: bench.car.scans.clone(),
                around: job.around.clone(),
                budget: job.budget,
            };
            bench.solving = Some(Solving {
                done: 0,
                of: work.budget.work_units,
                best: None,
            });
            work
        };
        self.inner.cancel.store(false, Ordering::Relaxed);
        self.tell(News::Changed);
        let workshop = self.clone();
        std::thread::spawn(move || workshop.work(&work));
        Ok(())
    }

    fn work(&self, work: &Work) {
        let mut last = 0;
        let outcome = route(
            &work.model,
            &work.around,
            work.budget,
            &self.inner.cancel,
            &mut |progress| {
                let solving = Solving {
                    done: progress.work_units.min(progress.budget_units),
                    of: progress.budget_units,
                    best: progress.best_cost,
                };
                // A hundred steps are plenty for a bar.
                let step = solving.done * 100 / solving.of.max(1);
                if step != last {
                    last = step;
                    self.bench().solving = Some(solving);
                    self.tell(News::Solving { progress: solving });
                }
            },
        );
        let mut bench = self.bench();
        bench.solving = None;
        bench.shown = 0;
        let was_stopped = self.inner.cancel.load(Ordering::Relaxed);
        match outcome {
            // What a stopped search holds depends on when it was stopped: it is shown and not kept.
            Ok((_, routed @ Routed::Found(_))) if was_stopped => bench.show_only(routed),
            Ok(_) if was_stopped => {}
            Ok((posed, routed)) => bench.keep(work, &posed, &routed),
            Err(_) => {}
        }
        bench.serial += 1;
        drop(bench);
        self.tell(News::Changed);
    }

    /// Stops the solver; the best so far is shown.
    pub(crate) fn stop(&self) {
        self.inner.cancel.store(true, Ordering::Relaxed);
    }

    /// Looks whether somebody else changed the files, and tells the pages.
    pub(crate) fn look(&self) {
        let mut bench = self.bench();
        let is_changed = bench
            .folder
            .changed_on_disk()
            .is_ok_and(|changed| !changed.is_empty());
        if is_changed && bench.catch_up().is_ok() {
            drop(bench);
            self.tell(News::Changed);
        }
    }

    /// Opens the folder anew, with what can be taken back.
    ///
    /// # Errors
    /// A [`Refusal`] when it cannot be read.
    pub(crate) fn open_again(&self) -> Result<(), Refusal> {
        let mut bench = self.bench();
        bench.folder =
            Folder::open(&self.inner.path).map_err(|error| refusal(&error.to_string()))?;
        bench.undo = Undo::of(&self.inner.path);
        bench.shown = 0;
        bench.read_again();
        drop(bench);
        self.tell(News::Changed);
        Ok(())
    }

    fn tell(&self, news: News) {
        // Nobody listening is no error.
        let _heard = self.inner.news.send(news);
    }

    /// A thread that died holding the bench left it as it was: every change is one assignment.
    fn bench(&self) -> MutexGuard<'_, Bench> {
        self.inner
            .bench
            .lock()
            .unwrap_or_else(PoisonError::into_inner)
    }
}

/// What a search is made from.
struct Work {
    model: Model,
    scans: BTreeMap<String, Vec<u8>>,
    around: Surroundings,
    budget: Budget,
}

impl Bench {
    fn shown(&self) -> Shown {
        let version = format!("{}-{}-{}", self.car.revision, self.shown, self.serial);
        Shown::new(&self.car, self.shown, version)
    }

    fn save(&mut self, deeded: Deeded) -> Result<(), Refusal> {
        let before = deeded
            .file
            .map(|file| (file, self.folder.text(file).map(str::to_owned)));
        self.folder
            .save(&deeded.changes)
            .map_err(|error| refusal(&error.to_string()))?;
        if let Some((file, before)) = before
            && let Some(after) = deeded.changes.text(file)
        {
            self.undo
                .remember(file, deeded.words, before, after.to_owned());
        }
        self.read_again();
        Ok(())
    }

    fn read_again(&mut self) {
        self.car = Arc::new(Car::of(&self.folder, Some(&self.car)));
        self.serial += 1;
    }

    /// What was found is shown until something changes, and not kept.
    fn show_only(&mut self, routed: Routed) {
        let mut car = Car::of(&self.folder, Some(&self.car));
        if let Ok(job) = &mut car.job {
            job.routed = Some(routed);
            job.older = None;
        }
        self.car = Arc::new(car);
    }

    /// Keeps what the solver found in the plan file, and works with it.
    fn keep(&mut self, work: &Work, posed: &PosedProblem, routed: &Routed) {
        let mut plan = plan_of(&self.folder);
        let around = &work.around;
        let inputs = survey_inputs(&work.model);
        let result = survey_result(&inputs, around);
        plan.set(Stage::Survey, StoredStage::new(&inputs, result));
        let inputs = bodies_inputs(&work.model, &work.scans);
        let result = bodies_result(&inputs, around);
        plan.set(Stage::Bodies, StoredStage::new(&inputs, result));
        let inputs = routes_inputs(&work.model, &work.scans, &around.practice, work.budget);
        let result = routes_result(&inputs, posed, routed, work.budget);
        plan.set(Stage::Routes, StoredStage::new(&inputs, result));
        let mut changes = Changes::new();
        changes.set(FileKind::Plan, plan.to_text());
        // All of it is derived: where it cannot be written it is shown all the same.
        if self.catch_up().is_ok() && self.folder.save(&changes).is_ok() {
            self.read_again();
        } else {
            self.show_only(routed.clone());
        }
    }

    /// Takes over what somebody else saved.
    fn catch_up(&mut self) -> Result<(), Refusal> {
        let said = |error: FolderError| refusal(&error.to_string());
        if self.folder.changed_on_disk().map_err(said)?.is_empty() {
            return Ok(());
        }
        self.folder = Folder::open(self.folder.path()).map_err(said)?;
        self.read_again();
        Ok(())
    }
}
