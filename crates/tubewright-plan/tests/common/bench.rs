//! A random car with its chosen plan and a record, and a joint of it that is measured.

use std::collections::BTreeMap;
use std::sync::atomic::AtomicBool;

use super::random::random_car;
use super::solved::{Solved, solve};
use tubewright_build::document::append_entry;
use tubewright_build::model::{
    Entry, EntryKind, JointReading, LengthUnits, Model, Name, Place, PlaceAt,
};
use tubewright_build::quantity::{Clock, Quantity, write_mm};
use tubewright_build::{Span, Texts, read};
use tubewright_geometry::{Angle, Frame, Length, math};
use tubewright_plan::fit::{
    Joint, JointFound, Offer, OfferSettings, Steel, as_built, fit_run, joint_as_built, joints_of,
    offers, split_at_welds,
};
use tubewright_plan::frozen::{chosen_entry, frozen_plan, planned};
use tubewright_plan::routes::PlannedRun;
use tubewright_plan::stages::{Supply, supply};
use tubewright_route::Budget;

/// A car with its chosen plan and a record.
pub(crate) struct Bench {
    pub(crate) build: String,
    pub(crate) stock: String,
    pub(crate) solved: Solved,
    pub(crate) record: String,
}

impl Bench {
    pub(crate) fn of(seed: u64) -> Option<Self> {
        let car = random_car(seed);
        Self::of_build(car.build, car.stock, 500)
    }

    /// A car of these texts with the first way chosen.
    pub(crate) fn of_build(build: String, stock: String, work_units: u64) -> Option<Self> {
        let solved = solve(&build, &stock, None, &BTreeMap::new(), work_units);
        let best = solved.best()?;
        let budget = Budget {
            work_units,
            seed: 1,
        };
        let entry = chosen_entry(
            "2026-03-02",
            &best.name,
            budget,
            &best.runs,
            LengthUnits::Millimetres,
        );
        let record = append_entry(None, &entry).expect("an entry");
        Some(Self {
            build,
            stock,
            solved,
            record,
        })
    }

    pub(crate) fn model(&self, record: &str) -> Model {
        let read = read(Texts {
            build: Some(&self.build),
            stock: Some(&self.stock),
            shop: Some(record),
        });
        assert!(!read.has_errors(), "{:#?}\n{record}", read.problems);
        read.model
    }

    pub(crate) fn planned(&self, model: &Model) -> Vec<PlannedRun> {
        let plan = frozen_plan(&model.shop).expect("a chosen plan");
        let (runs, troubles) = planned(model, &self.solved.posed, &plan);
        assert!(troubles.is_empty(), "{troubles:?}");
        runs
    }

    pub(crate) fn supply(&self, model: &Model, runs: &[PlannedRun]) -> Supply {
        supply(model, &self.solved.around.practice, runs, &[]).expect("a stock file")
    }

    /// The joint of the record that is measured last, with what is offered.
    pub(crate) fn offered(
        &self,
        record: &str,
        mark: &str,
    ) -> (Vec<PlannedRun>, JointFound, Vec<Offer>) {
        let model = self.model(record);
        let runs = self.planned(&model);
        let supply = self.supply(&model, &runs);
        let steel = Steel::of(&model.shop);
        let mut before = steel.clone();
        before.readings.remove(mark);
        let around = &self.solved.around;
        let built = as_built(&model, around, &runs, &supply.whole, &before);
        let split = split_at_welds(&model, &built.runs, &supply.whole);
        let found = joint_as_built(&model, around, &split, &steel, mark).expect("a place");
        let never = AtomicBool::new(false);
        let settings = OfferSettings {
            route_effort: 0,
            seed: 1,
            cancel: &never,
        };
        let all = offers(
            &model,
            around,
            &self.solved.posed,
            &split,
            &steel,
            &found,
            settings,
        );
        (split, found, all)
    }
}

pub(crate) fn entry(what: EntryKind) -> Entry {
    Entry {
        on: "2026-03-03".to_owned(),
        what,
        note: None,
        span: Span::none(),
    }
}

pub(crate) fn after(record: &str, what: EntryKind) -> String {
    append_entry(Some(record), &entry(what)).expect("an entry")
}

/// The joint between two parts about a third along the run, with parts behind it.
pub(crate) fn a_joint(model: &Model, run: &PlannedRun, supply: &Supply) -> Option<Joint> {
    let (_, groups) = fit_run(model, run, &supply.whole);
    let at = groups.len() / 3;
    let group = groups.get(at.max(1))?;
    (groups.len() > at.max(1) + 2)
        .then(|| {
            joints_of(run)
                .into_iter()
                .find(|joint| joint.piece == group.from)
        })?
        .filter(|joint| !joint.mark.is_empty())
}

/// What tapes from every mark of the chassis to four clocks of the rim say of a joint that lies here.
pub(crate) fn tapes(bench: &Bench, od_mm: f64, frame: &Frame) -> Vec<JointReading> {
    let places = &bench.solved.around.measured.places;
    let model = &bench.solved.model;
    let marks = model
        .build
        .marks
        .iter()
        .filter_map(|mark| Some((mark.name.clone(), places.points.get(mark.name.as_str())?)));
    marks
        .take(4)
        .zip([0.0, 90.0, 180.0, 270.0])
        .flat_map(|((name, placed), from_deg)| {
            [0.0, 120.0, 240.0].map(|by| {
                let clock = math::wrap_to_pi(f64::to_radians(from_deg + by));
                let place = frame.origin + frame.at_clock(clock) * (0.5 * od_mm);
                let reads = Length::from_mm(place.distance(placed.point_in_car));
                JointReading {
                    from: Place {
                        at: PlaceAt::Mark(Name::new(name.as_str())),
                        span: Span::none(),
                    },
                    rim: Some(Clock::from_angle(Angle::from_rad(clock))),
                    reads: Quantity::new(reads, write_mm(reads, 1)),
                }
            })
        })
        .collect()
}
