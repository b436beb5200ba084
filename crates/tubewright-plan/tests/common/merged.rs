//! The estate's car with runs that end in parts and start from them.

use std::collections::BTreeMap;
use std::fs;

use super::solved::{Solved, folder, solve};

/// Two banks into one tail.
pub(crate) const RUNS: &str = include_str!("../data/merged/runs.toml");
/// What they are made of besides.
pub(crate) const STOCK: &str = include_str!("../data/merged/stock.toml");
/// Work units: enough for a way.
pub(crate) const EFFORT: u64 = 20_000;

/// The estate's build with these runs in place of what is behind its catalysts.
pub(crate) fn build_with(runs: &str) -> String {
    let build = fs::read_to_string(folder("estate-v6").join("build.toml")).expect("is there");
    let crossover = build
        .find("[[component]]\nname = \"X\"")
        .expect("it has one");
    let wishes = build.find("[wishes]").expect("it has wishes");
    format!("{}{runs}\n{}", &build[..crossover], &build[wishes..])
}

/// What there is to buy for it.
pub(crate) fn stock_with(more_stock: &str) -> String {
    let stock = fs::read_to_string(folder("estate-v6").join("stock.toml")).expect("is there");
    format!("{stock}\n{STOCK}\n{more_stock}")
}

/// Solves it.
pub(crate) fn solved_with(runs: &str, more_stock: &str) -> Solved {
    let stock = stock_with(more_stock);
    solve(&build_with(runs), &stock, None, &BTreeMap::new(), EFFORT)
}
