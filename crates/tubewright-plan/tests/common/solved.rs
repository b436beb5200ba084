//! A build from its texts to findings.

use std::collections::BTreeMap;
use std::fs;
use std::path::{Path, PathBuf};
use std::sync::atomic::AtomicBool;

use tubewright_build::model::{BodyKind, Model};
use tubewright_build::{Texts, read};
use tubewright_check::Board;
use tubewright_plan::routes::PosedProblem;
use tubewright_plan::stages::{
    Alternative, Routed, Supply, Surroundings, check, route, supply, survey_and_bodies,
};
use tubewright_route::Budget;

/// The small bench: one run among boxes.
pub(crate) const SMALL_BUILD: &str = include_str!("../data/small/build.toml");
/// What there is to buy for it.
pub(crate) const SMALL_STOCK: &str = include_str!("../data/small/stock.toml");

/// Everything that the stages give.
pub(crate) struct Solved {
    pub(crate) model: Model,
    pub(crate) around: Surroundings,
    pub(crate) posed: PosedProblem,
    pub(crate) routed: Routed,
    pub(crate) supply: Option<Supply>,
    pub(crate) board: Board,
}

/// A way other than the first, bought, cut and judged as if it were the first.
pub(crate) struct Other {
    pub(crate) alternative: Alternative,
    pub(crate) supply: Supply,
    pub(crate) board: Board,
}

impl Solved {
    /// The alternative that is judged and cut.
    pub(crate) fn best(&self) -> Option<&Alternative> {
        match &self.routed {
            Routed::Found(alternatives) => alternatives.first(),
            _ => None,
        }
    }

    /// The other ways.
    pub(crate) fn others(&self) -> Vec<Other> {
        let Routed::Found(alternatives) = &self.routed else {
            return Vec::new();
        };
        alternatives
            .iter()
            .skip(1)
            .map(|alternative| {
                let supply = supply(&self.model, &self.around.practice, &alternative.runs, &[])
                    .expect("the stock file is whole");
                let alone = Routed::Found(vec![alternative.clone()]);
                let judged = Some((&self.posed, &alone));
                Other {
                    board: check(&self.model, &self.around, judged, Some(&supply)),
                    alternative: alternative.clone(),
                    supply,
                }
            })
            .collect()
    }
}

/// Solves what the texts say.
///
/// # Panics
/// When the texts cannot be used.
pub(crate) fn solve(
    build: &str,
    stock: &str,
    shop: Option<&str>,
    scans: &BTreeMap<String, Vec<u8>>,
    work_units: u64,
) -> Solved {
    let read = read(Texts {
        build: Some(build),
        stock: Some(stock),
        shop,
    });
    assert!(!read.has_errors(), "{:#?}", read.problems);
    let model = read.model;
    let around = survey_and_bodies(&model, scans).expect("the readings can be adjusted");
    let budget = Budget {
        work_units,
        seed: 1,
    };
    let (posed, routed) = route(
        &model,
        &around,
        budget,
        &AtomicBool::new(false),
        &mut |_| {},
    )
    .expect("the problem holds together");
    let supply = match &routed {
        Routed::Found(alternatives) => alternatives.first().map(|best| {
            supply(&model, &around.practice, &best.runs, &[]).expect("the stock file is whole")
        }),
        _ => None,
    };
    let board = check(&model, &around, Some((&posed, &routed)), supply.as_ref());
    Solved {
        model,
        around,
        posed,
        routed,
        supply,
        board,
    }
}

/// Where a build folder of the project is.
pub(crate) fn folder(name: &str) -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR"))
        .join("../../builds")
        .join(name)
}

/// Solves a build folder of the project.
///
/// # Panics
/// When it cannot be read.
pub(crate) fn solve_folder(name: &str, work_units: u64) -> Solved {
    let folder = folder(name);
    let text = |file: &str| fs::read_to_string(folder.join(file)).expect(file);
    let (build, stock, shop) = (text("build.toml"), text("stock.toml"), text("shop.toml"));
    let mut scans = BTreeMap::new();
    let model = read(Texts {
        build: Some(&build),
        ..Texts::default()
    })
    .model;
    for body in &model.build.bodies {
        if let BodyKind::Scan { file, .. } = &body.kind {
            scans.insert(file.clone(), fs::read(folder.join(file)).expect(file));
        }
    }
    solve(&build, &stock, Some(&shop), &scans, work_units)
}
