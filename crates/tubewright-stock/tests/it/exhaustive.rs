//! The optimum is that of exhaustive search, written from the rules and not from the solver.

use proptest::prelude::*;
use tubewright_stock::cutting::{
    Bin, Choice, CuttingProblem, Effort, Equality, Part, Proof, Purchase, Tier, solve_cutting,
};

#[derive(Clone, Default)]
struct Open {
    bin: usize,
    arc_used: i64,
    arc_parts: u32,
    is_whole: bool,
    kept: [i64; 2],
    is_end_taken: [bool; 2],
    fill: [i64; 2],
}

struct Search<'a> {
    problem: &'a CuttingProblem,
    best: Option<i64>,
}

impl Search<'_> {
    /// Puts part after part into an open bin or a new one.
    fn place(&mut self, parts: &[usize], open: &mut Vec<Open>) {
        let Some((part, rest)) = parts.split_first() else {
            if let Some(cost) = buying_cost(self.problem, open) {
                self.best = Some(self.best.map_or(cost, |best| best.min(cost)));
            }
            return;
        };
        let p = &self.problem.parts[*part];
        for at in 0..=open.len() {
            let kinds = if at == open.len() {
                0..self.problem.bins.len()
            } else {
                0..1
            };
            for kind in kinds {
                let before = open.clone();
                if at == open.len() {
                    open.push(Open {
                        bin: kind,
                        ..Open::default()
                    });
                }
                let bin = &self.problem.bins[open[at].bin];
                for way in ways(bin, p, &open[at]) {
                    let kept = core::mem::replace(&mut open[at], way);
                    self.place(rest, open);
                    open[at] = kept;
                }
                *open = before;
            }
        }
    }
}

/// Every way to put one more part into an open bin.
fn ways(bin: &Bin, part: &Part, open: &Open) -> Vec<Open> {
    let mut ways = Vec::new();
    let used = open.arc_used + part.size + if open.arc_parts > 0 { bin.kerf } else { 0 };
    if part.family == bin.family && used <= bin.size && !open.is_whole {
        let next = Open {
            arc_used: used,
            arc_parts: open.arc_parts + 1,
            ..open.clone()
        };
        let leg_fits = |open: &Open, end: usize, leg: i64| {
            leg + bin.leg_kerf + open.fill[end].max(0) <= bin.legs[end]
                || (open.fill[end] == 0 && leg <= bin.legs[end])
        };
        let legs: Vec<i64> = part.legs.iter().copied().filter(|leg| *leg > 0).collect();
        match legs.as_slice() {
            [] => ways.push(next),
            [leg] => {
                for end in 0..2 {
                    if !open.is_end_taken[end] && leg_fits(open, end, *leg) {
                        let mut next = next.clone();
                        next.is_end_taken[end] = true;
                        next.kept[end] = *leg;
                        ways.push(next);
                    }
                }
            }
            _ => {
                if open.arc_parts == 0 && part.size == bin.size {
                    for legs in [part.legs, [part.legs[1], part.legs[0]]] {
                        if (0..2).all(|end| leg_fits(open, end, legs[end])) {
                            ways.push(Open {
                                is_whole: true,
                                kept: legs,
                                is_end_taken: [true; 2],
                                ..next.clone()
                            });
                        }
                    }
                }
            }
        }
    }
    if bin.leg_family == Some(part.family) {
        for end in 0..2 {
            let first = open.fill[end] == 0;
            let fill = open.fill[end] + part.size + if first { 0 } else { bin.leg_kerf };
            if fill + bin.leg_kerf + open.kept[end] <= bin.legs[end] {
                let mut next = open.clone();
                next.fill[end] = fill;
                ways.push(next);
            }
        }
    }
    ways
}

/// Cheapest way to buy what is open, every split over the purchases tried.
fn buying_cost(problem: &CuttingProblem, open: &[Open]) -> Option<i64> {
    let mut needed: Vec<i64> = problem
        .bins
        .iter()
        .map(|bin| i64::from(bin.spare) - i64::from(bin.on_hand))
        .collect();
    open.iter().for_each(|open| needed[open.bin] += 1);
    fn buy(
        problem: &CuttingProblem,
        at: usize,
        needed: &mut Vec<i64>,
        suppliers: &mut Vec<bool>,
        cost: i64,
        best: &mut Option<i64>,
    ) {
        if best.is_some_and(|best| cost >= best) {
            return;
        }
        let Some(purchase) = problem.purchases.get(at) else {
            if needed.iter().all(|n| *n <= 0) {
                *best = Some(cost);
            }
            return;
        };
        let most = purchase.available.unwrap_or(12).min(12);
        for quantity in (0..=most).filter(|q| q % purchase.pack == 0) {
            let tier = purchase
                .tiers
                .iter()
                .rev()
                .find(|tier| tier.from <= quantity);
            let (each, is_sold) = match tier {
                Some(tier) => (tier.each, true),
                None => (0, quantity == 0),
            };
            if !is_sold {
                continue;
            }
            let known = suppliers[purchase.supplier];
            let charge = i64::from(quantity > 0 && !known) * problem.delivery[purchase.supplier];
            suppliers[purchase.supplier] |= quantity > 0;
            needed[purchase.bin] -= i64::from(quantity);
            buy(
                problem,
                at + 1,
                needed,
                suppliers,
                cost + charge + each * i64::from(quantity),
                best,
            );
            needed[purchase.bin] += i64::from(quantity);
            suppliers[purchase.supplier] = known;
        }
    }
    let mut best = None;
    let mut suppliers = vec![false; problem.delivery.len()];
    buy(problem, 0, &mut needed, &mut suppliers, 0, &mut best);
    best
}

/// Least cost over every set of choices that the equalities allow.
fn exhaustive(problem: &CuttingProblem) -> Option<i64> {
    let mut best: Option<i64> = None;
    for set in 0u32..1 << problem.choices.len() {
        let chosen = |choice: usize| i64::from(set >> choice & 1);
        let allowed = problem.equalities.iter().all(|equality| {
            equality
                .terms
                .iter()
                .map(|(c, k)| chosen(*c) * k)
                .sum::<i64>()
                == equality.rhs
        });
        if !allowed {
            continue;
        }
        let mut parts: Vec<usize> = Vec::new();
        for (index, part) in problem.parts.iter().enumerate() {
            parts.extend((0..part.count).map(|_| index));
        }
        let mut cost = 0;
        for (index, choice) in problem.choices.iter().enumerate() {
            if chosen(index) == 1 {
                cost += choice.cost;
                for (part, n) in &choice.needs {
                    parts.extend((0..*n).map(|_| *part));
                }
            }
        }
        let mut search = Search {
            problem,
            best: None,
        };
        search.place(&parts, &mut Vec::new());
        if let Some(found) = search.best {
            best = Some(best.map_or(found + cost, |best| best.min(found + cost)));
        }
    }
    best
}

fn tiers() -> impl Strategy<Value = Vec<Tier>> {
    (500i64..4000, prop::option::of((2u32..5, 50i64..100))).prop_map(|(each, second)| {
        let mut tiers = vec![Tier { from: 1, each }];
        if let Some((from, percent)) = second {
            tiers.push(Tier {
                from,
                each: each * percent / 100,
            });
        }
        tiers
    })
}

prop_compose! {
    /// Straights only: bars of two lengths, packs, price breaks, two suppliers, on hand, spares.
    fn bars()(
        sizes in prop::collection::vec((100i64..900, 1u32..3), 1..4),
        stock in prop::collection::vec((700i64..2000, 0u32..2, 0u32..2), 1..3),
        kerf in 0i64..40,
        offers in prop::collection::vec(
            (0usize..2, 0usize..2, 1u32..3, tiers(), prop::option::of(0u32..5)), 1..4),
        delivery in prop::collection::vec(0i64..800, 2),
    ) -> CuttingProblem {
        let bins: Vec<Bin> = stock
            .iter()
            .map(|(size, on_hand, spare)| Bin {
                family: 0, size: *size, kerf, legs: [0, 0], leg_kerf: 0, leg_family: None,
                on_hand: *on_hand, spare: *spare,
            })
            .collect();
        let purchases = offers
            .into_iter()
            .map(|(bin, supplier, pack, tiers, available)| Purchase {
                bin: bin % bins.len(), supplier, pack, tiers, available,
            })
            .collect();
        CuttingProblem {
            parts: sizes
                .into_iter()
                .map(|(size, count)| Part { family: 0, size, legs: [0, 0], count })
                .collect(),
            bins, purchases, delivery, ..CuttingProblem::default()
        }
    }
}

prop_compose! {
    /// Bends with legs, straights that a bar or a leg left over can give, and one straight that may
    /// be its own part or a leg of the bend beside it.
    fn bends()(
        arcs in prop::collection::vec((10i64..60, 0i64..3, 1u32..3), 1..3),
        straight in 20i64..90,
        stock in prop::collection::vec((30i64..100, 0i64..100, 0i64..100, 800i64..3000), 1..3),
        bar in (100i64..300, 500i64..3000),
        kerf in 0i64..4,
        weld in 0i64..900,
        choice_angle in 10i64..60,
    ) -> CuttingProblem {
        let mut parts: Vec<Part> = arcs
            .into_iter()
            .map(|(size, legs, count)| Part {
                family: 0,
                size,
                legs: match legs { 0 => [0, 0], 1 => [30, 0], _ => [40, 30] },
                count,
            })
            .collect();
        let own = parts.len();
        parts.push(Part { family: 1, size: straight, legs: [0, 0], count: 0 });
        parts.push(Part { family: 0, size: choice_angle, legs: [0, 0], count: 0 });
        parts.push(Part { family: 0, size: choice_angle, legs: [straight, 0], count: 0 });
        let mut bins: Vec<Bin> = stock
            .iter()
            .map(|(size, a, b, _)| Bin {
                family: 0, size: *size, kerf, legs: [*a, *b], leg_kerf: 2, leg_family: Some(1),
                on_hand: 0, spare: 0,
            })
            .collect();
        bins.push(Bin {
            family: 1, size: bar.0, kerf: 2, legs: [0, 0], leg_kerf: 0, leg_family: None,
            on_hand: 0, spare: 0,
        });
        let prices: Vec<i64> = stock.iter().map(|s| s.3).chain([bar.1]).collect();
        let purchases = prices
            .into_iter()
            .enumerate()
            .map(|(bin, each)| Purchase {
                bin, supplier: 0, pack: 1, tiers: vec![Tier { from: 1, each }], available: None,
            })
            .collect();
        CuttingProblem {
            parts, bins, purchases,
            delivery: vec![0],
            choices: vec![
                Choice { cost: weld, needs: vec![(own, 1), (own + 1, 1)], is_second: false },
                Choice { cost: 0, needs: vec![(own + 2, 1)], is_second: false },
            ],
            equalities: vec![Equality { terms: vec![(0, 1), (1, 1)], rhs: 1 }],
        }
    }
}

fn agrees(problem: &CuttingProblem) -> Result<(), TestCaseError> {
    let found = solve_cutting(problem, &Effort::default());
    let found = found.map_err(|error| TestCaseError::fail(format!("{error}")))?;
    match exhaustive(problem) {
        None => prop_assert!(
            !found.missing.is_empty() || !found.missing_spares.is_empty(),
            "exhaustive search finds no plan, the solver says {found:?}"
        ),
        Some(best) => {
            prop_assert!(found.missing.is_empty() && found.missing_spares.is_empty());
            prop_assert_eq!(found.cost, best);
            prop_assert_eq!(found.proof, Proof::Optimal);
            prop_assert!(found.relaxation <= best as f64 + 1e-3);
        }
    }
    Ok(())
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(96))]

    #[test]
    fn bars_are_as_cheap_as_exhaustive_search(problem in bars()) {
        agrees(&problem)?;
    }

    #[test]
    fn bends_are_as_cheap_as_exhaustive_search(problem in bends()) {
        agrees(&problem)?;
    }
}
