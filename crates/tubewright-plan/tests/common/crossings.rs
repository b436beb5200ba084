//! The estate's car with other crossovers that may stand in the place of its bought X.

use std::collections::BTreeMap;
use std::fs;

use super::solved::{Solved, folder, solve};

/// Crossovers to choose from: one of two bends, and one with parallel legs.
const ITEMS: &str = r#"
[[item]]
name = "X 57 of two bends"
kind = "hand-made crossover"
tube = "57x1.5 304"
bend = "bend 57 45"
leg = "60 mm"
taken-off = "8 mm"

[[item]]
name = "h-pipe 57"
kind = "crossover"
tube = "57x1.5 304"
length = "240 mm"
body = { shape = "round", diameter = "64 mm" }
ports = [
  { name = "L", in = ["0 mm", "-60 mm", "0 mm"], out = ["240 mm", "-60 mm", "0 mm"] },
  { name = "R", in = ["0 mm", "60 mm", "0 mm"], out = ["240 mm", "60 mm", "0 mm"] },
]
mass = "1.4 kg"

[[offer]]
item = "h-pipe 57"
supplier = "North Road Tube"
price = "55.00 EUR"
"#;

const COMPONENTS: &str = r#"
[[component]]
name = "X by hand"
item = "X 57 of two bends"

[[component]]
name = "H"
item = "h-pipe 57"

"#;

/// The estate's stock file with them.
pub(crate) fn stock() -> String {
    let stock = fs::read_to_string(folder("estate-v6").join("stock.toml")).expect("is there");
    format!("{stock}\n{ITEMS}")
}

/// The estate's build, its X one of these, the first as written: `["X", "H"]`.
pub(crate) fn build(parts: &[&str]) -> String {
    let build = fs::read_to_string(folder("estate-v6").join("build.toml")).expect("is there");
    let (first, others) = parts.split_first().expect("at least one");
    let swapped = build
        .replace("\"X.L\"", &format!("\"{first}.L\""))
        .replace("\"X.R\"", &format!("\"{first}.R\""));
    let others: Vec<String> = others.iter().map(|name| format!("\"{name}\"")).collect();
    let line = match others.as_slice() {
        [] => String::new(),
        others => format!("or = [{}]\n", others.join(", ")),
    };
    let zone = "zone = [\"X room low front left\", \"X room high rear right\"]\n";
    let mut text = format!("{swapped}\n{COMPONENTS}");
    let header = format!("[[component]]\nname = \"{first}\"\n");
    assert!(text.contains(&header), "{first} is a component");
    // Its room goes with the one that is written.
    if *first != "X" {
        text = text.replace(zone, "");
        text = text.replace(&header, &format!("{header}{zone}"));
    }
    text.replace(&header, &format!("{header}{line}"))
}

/// Solves it.
pub(crate) fn solved(parts: &[&str], effort: u64) -> Solved {
    solve(&build(parts), &stock(), None, &BTreeMap::new(), effort)
}
