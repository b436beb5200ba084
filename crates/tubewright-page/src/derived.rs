//! What is dearer than the readings: worked out when it is asked for, once for each state.

use crate::car::Car;
use std::sync::{Arc, OnceLock};
use tubewright_check::Board;
use tubewright_plan::figures::{Figures, figures};
use tubewright_plan::fit::{FitSheet, Steel, fit_sheet};
use tubewright_plan::hangers::{HungRuns, hangers};
use tubewright_plan::scene::scene_of;
use tubewright_plan::sensors::{Sensor, sensors};
use tubewright_plan::stages::{Routed, Supply, supply, supply_from_the_start};
use tubewright_plan::stock::{Remake, before_spoiled, is_left_a_length, part_of};
use tubewright_sheets::Scene;
use tubewright_stock::{StockPlan, Substitute, substitutes};

/// Pairs of items that are worked out for the counter beside each single one.
const PAIRS: usize = 3;

/// What is worked out of one car for one way that is shown.
#[derive(Debug, Default)]
pub(crate) struct Derived {
    whole: OnceLock<Option<Result<Supply, String>>>,
    now: OnceLock<Option<Result<Supply, String>>>,
    board: OnceLock<Option<Board>>,
    fit: OnceLock<Option<FitSheet>>,
    fit_now: OnceLock<Option<FitSheet>>,
    sensors: OnceLock<Vec<Sensor>>,
    hung: OnceLock<Vec<HungRuns>>,
    counter: OnceLock<Result<Vec<Substitute>, String>>,
    remakes: OnceLock<Vec<Remade>>,
    figures: OnceLock<Vec<Figures>>,
}

/// A piece that was spoiled and is not cut again.
#[derive(Clone, Debug)]
pub(crate) struct Remade {
    /// Its mark.
    pub(crate) piece: String,
    /// The cheapest remake, or why none was worked out.
    pub(crate) remake: Result<Remake, String>,
    /// Whether what is left of it is told as a length and not as an angle; none when the record does not
    /// say what it came from.
    pub(crate) is_left_a_length: Option<bool>,
}

/// A car with the way that is shown and what is worked out for it.
#[derive(Clone, Debug)]
pub(crate) struct Shown {
    /// The car.
    pub(crate) car: Arc<Car>,
    /// Number of the way.
    pub(crate) way: usize,
    /// Names this state: changes whenever anything of it may.
    pub(crate) version: String,
    derived: Arc<Derived>,
}

impl Shown {
    pub(crate) fn new(car: &Arc<Car>, way: usize, version: String) -> Self {
        Self {
            car: Arc::clone(car),
            derived: car.derived(way),
            way,
            version,
        }
    }

    /// What to buy and cut for everything, as if nothing had happened yet.
    pub(crate) fn whole(&self) -> Option<Result<&Supply, &str>> {
        let worked_out = self.derived.whole.get_or_init(|| {
            let job = self.car.good_job()?;
            let runs = self.car.runs(self.way);
            if runs.is_empty() {
                return None;
            }
            let made = supply_from_the_start(self.car.model(), &job.around.practice, runs, &[]);
            Some(made.map_err(|error| error.to_string()))
        });
        borrowed(worked_out)
    }

    /// What is still to be bought and cut, when a supplier was out of something or a piece was spoiled;
    /// else the whole.
    pub(crate) fn now(&self) -> Option<Result<&Supply, &str>> {
        let worked_out = self.derived.now.get_or_init(|| {
            let whole = self.whole()?.ok()?;
            let steel = Steel::of(&self.car.model().shop);
            if !is_touched(&whole.plan, &steel) {
                return None;
            }
            let job = self.car.good_job()?;
            let runs = self.car.runs(self.way);
            let made = supply(self.car.model(), &job.around.practice, runs, &[]);
            Some(made.map_err(|error| error.to_string()))
        });
        borrowed(worked_out).or_else(|| self.whole())
    }

    /// Whether the plan is another one because a supplier was out of something that it wants, or a piece
    /// was spoiled.
    pub(crate) fn is_planned_anew(&self) -> bool {
        let _worked_out = self.now();
        matches!(self.derived.now.get(), Some(Some(_)))
    }

    /// How each spoiled piece is made again.
    pub(crate) fn remakes(&self) -> &[Remade] {
        self.derived.remakes.get_or_init(|| {
            let steel = Steel::of(&self.car.model().shop);
            let pieces = steel.to_remake();
            pieces.into_iter().map(|piece| self.remade(piece)).collect()
        })
    }

    fn remade(&self, piece: &str) -> Remade {
        let found = || -> Result<(Remake, Option<bool>), String> {
            let none = || "there is no plan to make it by".to_owned();
            let now = self.now().ok_or_else(none)??;
            let job = self.car.good_job().ok_or_else(none)?;
            let model = before_spoiled(self.car.model(), piece).ok_or_else(none)?;
            let runs = self.car.runs(self.way);
            let before = supply(&model, &job.around.practice, runs, &[])
                .map_err(|error| error.to_string())?;
            let lay = part_of(&before.whole.cuts, piece);
            Ok((
                Remake::of(&now.plan, before.plan.price, piece),
                lay.map(|(_, part)| is_left_a_length(part)),
            ))
        };
        let (remake, is_left_a_length) = match found() {
            Ok((remake, is_left_a_length)) => (Ok(remake), is_left_a_length),
            Err(why) => (Err(why), None),
        };
        Remade {
            piece: piece.to_owned(),
            remake,
            is_left_a_length,
        }
    }

    /// Every check.
    pub(crate) fn board(&self) -> Option<&Board> {
        self.derived
            .board
            .get_or_init(|| {
                let job = self.car.good_job()?;
                let supply = self.whole().and_then(Result::ok);
                Some(job.board(self.car.model(), self.way, supply))
            })
            .as_ref()
    }

    /// The scene of the way that is shown.
    pub(crate) fn scene(&self) -> Option<Scene> {
        let job = self.car.good_job()?;
        let runs = self.car.runs(self.way);
        Some(scene_of(self.car.model(), &job.around, runs, self.board()?))
    }

    /// The order of tacking with its check distances.
    pub(crate) fn fit(&self) -> Option<&FitSheet> {
        self.derived
            .fit
            .get_or_init(|| {
                let job = self.car.good_job()?;
                let whole = self.whole()?.ok()?;
                let runs = self.car.runs(self.way);
                Some(fit_sheet(self.car.model(), &job.around, runs, &whole.plan))
            })
            .as_ref()
    }

    /// The same for the cutting plan as it is now, when that is another one than at the start: what its
    /// cards leave longer hangs on it.
    pub(crate) fn fit_now(&self) -> Option<&FitSheet> {
        if !self.is_planned_anew() {
            return self.fit();
        }
        self.derived
            .fit_now
            .get_or_init(|| {
                let job = self.car.good_job()?;
                let now = self.now()?.ok()?;
                let runs = self.car.runs(self.way);
                Some(fit_sheet(self.car.model(), &job.around, runs, &now.whole))
            })
            .as_ref()
    }

    /// Where the sensors' bungs go.
    pub(crate) fn sensors(&self) -> &[Sensor] {
        self.derived.sensors.get_or_init(|| {
            let Some(job) = self.car.good_job() else {
                return Vec::new();
            };
            let runs = self.car.runs(self.way);
            sensors(self.car.model(), &job.around, runs, self.whole_plan())
        })
    }

    /// How the runs hang.
    pub(crate) fn hung(&self) -> &[HungRuns] {
        self.derived.hung.get_or_init(|| {
            let Some(job) = self.car.good_job() else {
                return Vec::new();
            };
            let runs = self.car.runs(self.way);
            let (model, plan) = (self.car.model(), self.whole_plan());
            hangers(model, &job.around, runs, plan, self.sensors())
        })
    }

    fn whole_plan(&self) -> Option<&StockPlan> {
        let whole = self.whole().and_then(Result::ok);
        whole.map(|whole| &whole.plan)
    }

    /// What to take when something is out.
    pub(crate) fn counter(&self) -> Result<&[Substitute], &str> {
        self.derived
            .counter
            .get_or_init(|| match self.now() {
                Some(Ok(now)) => {
                    substitutes(&now.request, &now.plan, PAIRS).map_err(|error| error.to_string())
                }
                Some(Err(why)) => Err(why.to_owned()),
                None => Ok(Vec::new()),
            })
            .as_deref()
            .map_err(String::as_str)
    }

    /// What the ways are compared by, in their order.
    pub(crate) fn figures(&self) -> &[Figures] {
        self.derived.figures.get_or_init(|| {
            let Some(job) = self.car.good_job() else {
                return Vec::new();
            };
            let Some(Routed::Found(ways)) = &job.routed else {
                return Vec::new();
            };
            let model = self.car.model();
            ways.iter()
                .map(|way| {
                    let made = supply(model, &job.around.practice, &way.runs, &[]).ok();
                    figures(model, &job.around, &job.posed, &way.runs, made.as_ref())
                })
                .collect()
        })
    }
}

fn borrowed(worked_out: &Option<Result<Supply, String>>) -> Option<Result<&Supply, &str>> {
    Some(worked_out.as_ref()?.as_ref().map_err(String::as_str))
}

/// Whether something that the plan buys was out and was not brought home since, or steel was spoiled: a
/// plan as if nothing had happened would then cut what is gone.
fn is_touched(plan: &StockPlan, steel: &Steel) -> bool {
    let is_out = plan.buys.iter().any(|buy| {
        steel.record.out.iter().any(|(item, supplier)| {
            *item == buy.item && supplier.as_ref().is_none_or(|name| *name == buy.supplier)
        })
    });
    is_out || steel.record.sawn.iter().any(|sawn| !sawn.is_good)
}
