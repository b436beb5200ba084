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

/// A merge of the banks' own size, a cone and a fork, to buy besides.
pub(crate) const CONED_STOCK: &str = r#"
[[item]]
name = "merge 57"
kind = "merge"
tube = "57x1.5 304"
length = "180 mm"
ports = [
  { name = "L", at = ["0 mm", "-38 mm", "0 mm"], flows = "in", turn = { up = "0 deg", right = "12 deg" } },
  { name = "R", at = ["0 mm", "38 mm", "0 mm"], flows = "in", turn = { up = "0 deg", right = "-12 deg" } },
  { name = "out", at = ["180 mm", "0 mm", "0 mm"], flows = "out" },
]
mass = "0.8 kg"

[[item]]
name = "cone 57 to 63"
kind = "cone"
tube = "57x1.5 304"
length = "60 mm"
ports = [
  { name = "in", at = ["0 mm", "0 mm", "0 mm"], flows = "in" },
  { name = "out", at = ["60 mm", "0 mm", "0 mm"], flows = "out", tube = "63.5x1.5 304" },
]
mass = "0.1 kg"

[[item]]
name = "splitter 57"
kind = "merge"
tube = "57x1.5 304"
length = "180 mm"
ports = [
  { name = "in", at = ["0 mm", "0 mm", "0 mm"], flows = "in" },
  { name = "L", at = ["180 mm", "-40 mm", "0 mm"], flows = "out", turn = { up = "0 deg", right = "-12 deg" } },
  { name = "R", at = ["180 mm", "40 mm", "0 mm"], flows = "out", turn = { up = "0 deg", right = "12 deg" } },
]
mass = "0.8 kg"

[[offer]]
item = "merge 57"
supplier = "North Road Tube"
price = "58.00 EUR"

[[offer]]
item = "cone 57 to 63"
supplier = "North Road Tube"
price = "14.00 EUR"

[[offer]]
item = "splitter 57"
supplier = "North Road Tube"
price = "58.00 EUR"
"#;

/// One bank that parts into two tips.
pub(crate) const PARTED: &str = r#"
[[component]]
name = "fork"
item = "splitter 57"

[[run]]
name = "bank"
from = "left port"
to = "fork.in"
tube = "57x1.5 304"
through = ["flex L", "cat L"]

[[run]]
name = "to the left"
from = "fork.L"
to = "left tip"
tube = "57x1.5 304"
through = []

[[run]]
name = "to the right"
from = "fork.R"
to = "right tip"
tube = "57x1.5 304"
through = []
"#;
