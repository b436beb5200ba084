//! Proven optima and LP bounds of cutting plans.

use tubewright_stock::cutting::{
    Bin, CuttingProblem, Effort, Part, Proof, Purchase, Tier, solve_cutting,
};

use crate::data::{Check, check, floats};

const DATA: &str = include_str!("../data/cutting.toml");

fn problem_of(check: &Check) -> CuttingProblem {
    let of = |names: [&str; 3]| {
        names
            .iter()
            .find_map(|name| check.input(name))
            .map(floats)
            .unwrap_or_default()
    };
    let thousandths = |v: f64| (v * 1000.0).round() as i64;
    let kerf = ["kerf_mm", "kerf_deg", "kerf_in"]
        .iter()
        .find(|name| check.input(name).is_some())
        .map(|name| check.number(name))
        .unwrap();
    let legs_needed = check.input("legs_needed").map(floats);
    let legs_per_stock = check.input("legs_per_stock").map(floats);
    let counts = check.numbers("demand_count");
    let parts = of(["piece_mm", "piece_deg", "piece_in"])
        .iter()
        .enumerate()
        .map(|(index, size)| Part {
            family: 0,
            size: thousandths(*size),
            legs: [legs_needed.as_ref().map_or(0, |legs| legs[index] as i64), 0],
            count: counts[index] as u32,
        })
        .collect();
    let sizes = of(["stock_mm", "stock_deg", "stock_in"]);
    let bins = sizes
        .iter()
        .enumerate()
        .map(|(index, size)| Bin {
            family: 0,
            size: thousandths(*size),
            kerf: thousandths(kerf),
            legs: match legs_per_stock.as_ref().map_or(0, |legs| legs[index] as i64) {
                0 => [0, 0],
                1 => [1, 0],
                _ => [1, 1],
            },
            leg_kerf: 0,
            leg_family: None,
            on_hand: 0,
            spare: 0,
        })
        .collect();
    let available = check.input("available_count").map(floats);
    let purchases = check
        .numbers("price_each")
        .iter()
        .enumerate()
        .map(|(bin, each)| Purchase {
            bin,
            supplier: 0,
            pack: 1,
            tiers: vec![Tier {
                from: 1,
                each: (each * 100.0).round() as i64,
            }],
            available: available.as_ref().map(|counts| counts[bin] as u32),
        })
        .collect();
    CuttingProblem {
        parts,
        bins,
        purchases,
        delivery: vec![0],
        ..CuttingProblem::default()
    }
}

fn proven(id: &str) {
    let check = check(DATA, id);
    let problem = problem_of(&check);
    let solution = solve_cutting(&problem, &Effort::default())
        .unwrap_or_else(|error| panic!("{error}; {}", check.source()));
    let optimum = (check.expected_number("optimal") * 100.0).round() as i64;
    assert_eq!(
        solution.cost,
        optimum,
        "cost in hundredths; {}",
        check.source()
    );
    assert_eq!(solution.proof, Proof::Optimal, "{}", check.source());
    let bound = solution.relaxation / 100.0;
    let expected = check.expected_number("lp_bound");
    assert!(
        (bound - expected).abs() < 1e-4,
        "LP bound {bound}, {expected}; {}",
        check.source()
    );
    assert!(solution.missing.is_empty());
}

macro_rules! checks {
    ($($name:ident = $id:literal;)*) => {
        $(#[test] fn $name() { proven($id); })*
    };
}

checks! {
    cut_5600_published = "cut-5600-published";
    cut_100in_chvatal = "cut-100in-chvatal";
    cut_exhaust_straights = "cut-exhaust-straights";
    cut_kerf_bites = "cut-kerf-bites";
    cut_kerf_bites_3mm = "cut-kerf-bites-3mm";
    cut_mixed_stock_prices = "cut-mixed-stock-prices";
    bend_cut_basic = "bend-cut-basic";
    bend_cut_basic_nokerf = "bend-cut-basic-nokerf";
    bend_cut_legs_free = "bend-cut-legs-free";
    bend_cut_legs_needed = "bend-cut-legs-needed";
}
