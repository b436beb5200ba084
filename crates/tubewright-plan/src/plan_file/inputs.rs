//! What each stage reads: the checked values, part by part, so that it can be told what changed.
//!
//! A stage depends on the earlier ones through the hash of what they read: each of them is a pure
//! function of it. Prices take no part in what the routes read.

use std::collections::BTreeMap;
use tubewright_build::hash::{Canonical, CanonicalHasher, StageHash};
use tubewright_build::model::{BodyKind, EntryKind, ItemKind, Model, OnHandWhat};
use tubewright_build::resolved::ResolvedPractice;
use tubewright_route::Budget;
use tubewright_route::cost::TERMS_VERSION;

use crate::frozen::FrozenPlan;

/// Name of the part that holds the version of the list of terms of the cost.
pub(super) const COST_TERMS: &str = "terms of the cost";

/// What a stage reads, with what the earlier ones read.
#[derive(Clone, Debug)]
pub struct Inputs {
    /// Name and version of the method.
    method: &'static str,
    /// Hashes of the parts by kind and name, those of earlier stages among them.
    parts: BTreeMap<&'static str, BTreeMap<String, StageHash>>,
    earlier: Vec<StageHash>,
}

impl Inputs {
    fn new(method: &'static str) -> Self {
        Self {
            method,
            parts: BTreeMap::new(),
            earlier: Vec::new(),
        }
    }

    /// Everything that these read is read too.
    fn after(mut self, earlier: &Self) -> Self {
        self.earlier.push(earlier.hash());
        for (kind, parts) in &earlier.parts {
            let known = self.parts.entry(kind).or_default();
            known.extend(parts.iter().map(|(name, hash)| (name.clone(), *hash)));
        }
        self
    }

    fn part(&mut self, kind: &'static str, name: &str, feed: impl FnOnce(&mut CanonicalHasher)) {
        let known = self.parts.entry(kind).or_default();
        let mut hasher = CanonicalHasher::new(kind);
        if let Some(twin) = known.get(name) {
            hasher.stage(twin);
        }
        feed(&mut hasher);
        known.insert(name.to_owned(), hasher.finish());
    }

    fn value<T: Canonical + ?Sized>(&mut self, kind: &'static str, name: &str, value: &T) {
        self.part(kind, name, |hasher| hasher.feed(value));
    }

    /// The hash over all of it.
    #[must_use]
    pub fn hash(&self) -> StageHash {
        let mut hasher = CanonicalHasher::new(self.method);
        for earlier in &self.earlier {
            hasher.stage(earlier);
        }
        for (kind, parts) in &self.parts {
            hasher.text(kind);
            hasher.whole(parts.len() as u64);
            for (name, hash) in parts {
                hasher.text(name);
                hasher.stage(hash);
            }
        }
        hasher.finish()
    }

    /// Short hashes of the parts by kind and name, as the file keeps them.
    #[must_use]
    pub fn short(&self) -> BTreeMap<String, BTreeMap<String, String>> {
        self.parts
            .iter()
            .map(|(kind, parts)| {
                let parts = parts
                    .iter()
                    .map(|(name, hash)| {
                        let mut short = hash.to_string();
                        short.truncate(SHORT);
                        (name.clone(), short)
                    })
                    .collect();
                ((*kind).to_owned(), parts)
            })
            .collect()
    }
}

/// Hexadecimal digits that are kept of a part's hash: the stage's own hash decides, these only tell
/// which part it was.
const SHORT: usize = 12;

/// What the survey reads.
#[must_use]
pub fn survey_inputs(model: &Model) -> Inputs {
    let build = &model.build;
    let mut inputs = Inputs::new("survey/1");
    inputs.value("frame", "axes", &build.frame);
    inputs.value("accuracy", "accuracy", &build.accuracy.resolved());
    for mark in &build.marks {
        inputs.value("marks", &mark.name, mark);
    }
    for point in &build.points {
        inputs.value("points", &point.name, point);
    }
    for setup in &build.setups {
        inputs.value("setups", &setup.name, setup);
    }
    for reading in &build.readings {
        inputs.value("readings", &reading.number.to_string(), reading);
    }
    for end in &build.ends {
        inputs.value("ends", &end.name, end);
    }
    inputs
}

/// What the bodies are built from. `scans` holds the bytes of the scan files.
#[must_use]
pub fn bodies_inputs(model: &Model, scans: &BTreeMap<String, Vec<u8>>) -> Inputs {
    let build = &model.build;
    let mut inputs = Inputs::new("bodies/1").after(&survey_inputs(model));
    inputs.value("gaps", "gaps", &build.gaps.resolved());
    for carrier in &build.carriers {
        inputs.value("carriers", &carrier.name, carrier);
    }
    for body in &build.bodies {
        inputs.part("bodies", &body.name, |hasher| {
            hasher.feed(body);
            if let BodyKind::Scan { file, .. } = &body.kind {
                hasher.bytes(scans.get(file).map_or(&[], Vec::as_slice));
            }
        });
    }
    inputs
}

/// What the routes are solved from: shapes and sizes, the worth of time and flow, effort and seed,
/// and no price.
#[must_use]
pub fn routes_inputs(
    model: &Model,
    scans: &BTreeMap<String, Vec<u8>>,
    practice: &ResolvedPractice,
    budget: Budget,
) -> Inputs {
    let (build, stock) = (&model.build, &model.stock);
    let mut inputs = Inputs::new("routes/1").after(&bodies_inputs(model, scans));
    for (order, run) in build.runs.iter().enumerate() {
        inputs.part("runs", &run.name, |hasher| {
            hasher.whole(order as u64);
            hasher.feed(run);
        });
    }
    for component in &build.components {
        inputs.value("components", &component.name, component);
    }
    for tube in &stock.tubes {
        inputs.value("tubes", &tube.name, tube);
    }
    for item in &stock.items {
        let can_be_had = match &item.kind {
            ItemKind::Stock(_) => crate::routes::price_of_one(stock, item).is_some(),
            ItemKind::Component(_) => true,
        };
        inputs.part("items", &item.name, |hasher| {
            hasher.feed(item);
            hasher.feed(&can_be_had);
        });
    }
    for (name, length) in [
        ("length-step", practice.length_step),
        ("least-straight", practice.least_straight),
    ] {
        inputs.value("practice", name, &length);
    }
    for (name, angle) in [
        ("bend-step", practice.bend_step),
        ("clock-step", practice.clock_step),
        ("least-bend", practice.least_bend),
    ] {
        inputs.value("practice", name, &angle);
    }
    for (name, rate) in [
        ("rate", &practice.rate),
        ("flow-per-degree", &practice.flow_per_degree),
        ("flow-per-metre", &practice.flow_per_metre),
        ("ground-loss", &practice.ground_loss),
    ] {
        inputs.value("practice", name, rate);
    }
    inputs.value("practice", "weld-time", &practice.weld_time);
    inputs.value("practice", "cut-time", &practice.cut_time);
    inputs.value("wishes", "effort", &build.wishes.effort);
    inputs.value("wishes", "seed", &build.wishes.seed);
    inputs.part("solver", "effort and seed", |hasher| {
        hasher.whole(budget.work_units);
        hasher.whole(budget.seed);
    });
    inputs.part("solver", COST_TERMS, |hasher| {
        hasher.whole(u64::from(TERMS_VERSION));
    });
    inputs
}

/// What buying and cutting are planned from: the chosen plan, or else the routes, and the shelf with
/// its prices.
#[must_use]
pub fn stock_inputs(
    model: &Model,
    practice: &ResolvedPractice,
    routes: &Inputs,
    chosen: Option<&FrozenPlan>,
) -> Inputs {
    let stock = &model.stock;
    let mut inputs = Inputs::new("stock/1");
    match chosen {
        Some(plan) => inputs.feed_chosen(model, plan),
        None => inputs = inputs.after(routes),
    }
    inputs.part("currency", "currency", |hasher| {
        hasher.text(
            stock
                .currency
                .as_ref()
                .map_or("", |currency| currency.code()),
        );
    });
    inputs.value("practice", "all", practice);
    for item in &stock.items {
        inputs.value("items", &item.name, item);
    }
    for tube in &stock.tubes {
        inputs.value("tubes", &tube.name, tube);
    }
    for offer in &stock.offers {
        inputs.value(
            "offers",
            &format!("{} from {}", offer.item, offer.supplier),
            offer,
        );
    }
    for supplier in &stock.suppliers {
        inputs.value("suppliers", &supplier.name, supplier);
    }
    for on_hand in &stock.on_hand {
        inputs.part("on-hand", &on_hand.name, |hasher| {
            hasher.feed(on_hand);
            // What it is an item of is hashed with the items.
            if let OnHandWhat::Item(item) = &on_hand.what {
                hasher.text(item);
            }
        });
    }
    // What was got, cut, spoiled and measured: each entry of the record that moves steel.
    for (number, entry) in (1u32..).zip(&model.shop.entries) {
        if !matches!(
            entry.what,
            EntryKind::Chosen { .. } | EntryKind::Accepted { .. } | EntryKind::Welded { .. }
        ) {
            inputs.value("record", &format!("{number:05}"), entry);
        }
    }
    inputs
}

/// What the checks judge by.
#[must_use]
pub fn checks_inputs(
    model: &Model,
    scans: &BTreeMap<String, Vec<u8>>,
    stock: &Inputs,
    chosen: Option<&FrozenPlan>,
) -> Inputs {
    let mut inputs = Inputs::new("checks/1")
        .after(&bodies_inputs(model, scans))
        .after(stock);
    if let Some(plan) = chosen {
        inputs.feed_chosen(model, plan);
    }
    inputs.value(
        "wishes",
        "keep-catalysts",
        &model.build.wishes.keep_catalysts,
    );
    inputs
}

impl Inputs {
    fn feed_chosen(&mut self, model: &Model, plan: &FrozenPlan) {
        for run in &plan.runs {
            self.part("chosen", &run.name, |hasher| {
                hasher.feed(&run.start);
                hasher.feed(&run.pieces);
                hasher.feed(&run.standing);
            });
        }
        for component in &model.build.components {
            self.value("components", &component.name, component);
        }
    }
}
