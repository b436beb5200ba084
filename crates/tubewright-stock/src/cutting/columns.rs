//! The integer program: rows, columns that are always there, and columns of patterns.

use super::leg_fill::LegClasses;
use super::pattern::Pattern;
use super::problem::{CuttingProblem, Purchase, Tier};

/// What a column decides.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(crate) enum Decision {
    /// Cut a bin so.
    Cut(Pattern),
    /// Cut a leg of this class so (index of the fill).
    Fill { class: usize, fill: usize },
    /// Buy packs of a purchase at a tier.
    Buy { purchase: usize, tier: usize },
    /// Take this tier of this purchase at all.
    TakeTier,
    /// Choose.
    Choose(usize),
    /// Go without one part of this class.
    Miss(usize),
    /// Go without one spare of this bin.
    MissSpare(usize),
}

/// One unknown, whole and ≥ 0.
#[derive(Clone, Debug)]
pub(crate) struct Column {
    pub(crate) decision: Decision,
    pub(crate) cost: f64,
    /// Row and coefficient.
    pub(crate) entries: Vec<(usize, f64)>,
    pub(crate) most: i32,
}

impl Column {
    /// The pattern, of a column that cuts one.
    pub(crate) fn pattern(&self) -> Option<&Pattern> {
        match &self.decision {
            Decision::Cut(pattern) => Some(pattern),
            _ => None,
        }
    }
}

/// `Σ ≥ rhs`, or `=`.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Row {
    pub(crate) rhs: f64,
    pub(crate) is_equal: bool,
}

/// Rows and the columns that no search adds.
pub(crate) struct Model {
    pub(crate) rows: Vec<Row>,
    pub(crate) fixed: Vec<Column>,
    pub(crate) legs: LegClasses,
    pub(crate) caps: Vec<u32>,
    /// Price of going without one part.
    pub(crate) miss_cost: f64,
    /// Every plan costs a multiple of this: the greatest common divisor of all prices.
    pub(crate) money_step: f64,
    bin_row: usize,
    leg_row: usize,
    /// Bins with one plain price: their price is that of their patterns, and they need no row.
    plain: Vec<Option<Plain>>,
}

/// The one price of a bin that can be had in any number.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Plain {
    pub(crate) purchase: usize,
    pub(crate) tier: usize,
    pub(crate) each: i64,
}

/// Which part of the problem a model is of.
#[derive(Clone, Debug)]
pub(crate) struct Scope {
    /// Suppliers that may be bought from; their charges are paid outside the model.
    pub(crate) suppliers: Vec<bool>,
    /// No plan dearer than this is looked for.
    pub(crate) budget: f64,
    /// Leave out every price but the first of each purchase.
    pub(crate) is_first_price_only: bool,
}

/// What a second choice costs more, in minor units: all that can be chosen together cost less than half
/// of one more.
const SECOND: f64 = 2e-3;

const NO_MORE_THAN: i32 = 1_000_000;

fn whole(count: u64) -> i32 {
    i32::try_from(count)
        .unwrap_or(NO_MORE_THAN)
        .min(NO_MORE_THAN)
}

impl Model {
    pub(crate) fn of(problem: &CuttingProblem, scope: &Scope) -> Self {
        let caps = problem.caps();
        let legs = LegClasses::of(problem, &caps);
        let at_least = |rhs: f64| Row {
            rhs,
            is_equal: false,
        };
        // Rows: parts, bins, legs, equalities; those of purchases follow as they come.
        let mut rows: Vec<Row> = problem
            .parts
            .iter()
            .map(|part| at_least(f64::from(part.count)))
            .collect();
        let bin_row = rows.len();
        rows.extend(
            problem
                .bins
                .iter()
                .map(|bin| at_least(f64::from(bin.spare) - f64::from(bin.on_hand))),
        );
        let leg_row = rows.len();
        rows.extend(legs.fills.iter().map(|_| at_least(0.0)));
        let equality_row = rows.len();
        rows.extend(problem.equalities.iter().map(|e| Row {
            rhs: e.rhs as f64,
            is_equal: true,
        }));
        let money_step = money_step(problem);
        let miss_cost = (miss_cost(problem) / money_step).ceil() * money_step;
        let mut model = Self {
            rows,
            fixed: Vec::new(),
            legs,
            caps,
            miss_cost,
            money_step,
            bin_row,
            leg_row,
            plain: Vec::new(),
        };
        model.add_misses(problem);
        model.add_fills();
        model.add_choices(problem, equality_row);
        model.add_purchases(problem, scope);
        model
    }

    fn add_misses(&mut self, problem: &CuttingProblem) {
        for (part, cap) in self.caps.iter().enumerate() {
            self.fixed.push(Column {
                decision: Decision::Miss(part),
                cost: self.miss_cost,
                entries: vec![(part, 1.0)],
                most: whole(u64::from(*cap)),
            });
        }
        for (bin, spare) in problem.bins.iter().map(|bin| bin.spare).enumerate() {
            if spare > 0 {
                self.fixed.push(Column {
                    decision: Decision::MissSpare(bin),
                    cost: self.miss_cost,
                    entries: vec![(self.bin_row + bin, 1.0)],
                    most: whole(u64::from(spare)),
                });
            }
        }
    }

    fn add_fills(&mut self) {
        for (class, fills) in self.legs.fills.iter().enumerate() {
            for (fill, parts) in fills.iter().enumerate() {
                let mut entries: Vec<(usize, f64)> = parts
                    .iter()
                    .map(|(part, n)| (*part, f64::from(*n)))
                    .collect();
                entries.push((self.leg_row + class, -1.0));
                let most = parts
                    .iter()
                    .map(|(part, _)| u64::from(self.caps[*part]))
                    .sum();
                self.fixed.push(Column {
                    decision: Decision::Fill { class, fill },
                    cost: 0.0,
                    entries,
                    most: whole(most),
                });
            }
        }
    }

    fn add_choices(&mut self, problem: &CuttingProblem, equality_row: usize) {
        for (index, choice) in problem.choices.iter().enumerate() {
            let needs = choice.needs.iter().map(|(part, n)| (*part, -f64::from(*n)));
            let links = problem
                .equalities
                .iter()
                .enumerate()
                .flat_map(|(row, equality)| {
                    equality
                        .terms
                        .iter()
                        .filter(|(chosen, _)| *chosen == index)
                        .map(move |(_, coefficient)| (equality_row + row, *coefficient as f64))
                });
            self.fixed.push(Column {
                decision: Decision::Choose(index),
                cost: choice.cost as f64 + if choice.is_second { SECOND } else { 0.0 },
                entries: summed(needs.chain(links).collect()),
                most: 1,
            });
        }
    }

    fn add_purchases(&mut self, problem: &CuttingProblem, scope: &Scope) {
        self.plain = (0..problem.bins.len())
            .map(|bin| self.plain_price(problem, scope, bin))
            .collect();
        for (index, purchase) in problem.purchases.iter().enumerate() {
            let is_allowed = scope.suppliers.get(purchase.supplier) == Some(&true);
            let most_packs = self.most_packs(problem, purchase, scope);
            if !is_allowed || most_packs == 0 || self.plain[purchase.bin].is_some() {
                continue;
            }
            let limit = purchase
                .available
                .filter(|available| u64::from(available / purchase.pack) <= most_packs)
                .map(|available| (self.add_row(-f64::from(available / purchase.pack)), -1.0));
            self.add_tiers(index, purchase, most_packs, limit, scope);
        }
    }

    /// The one price that matters of a bin: it can be had in any number that a plan within the
    /// budget could use, one by one, and no other price of the bin is lower.
    fn plain_price(&self, problem: &CuttingProblem, scope: &Scope, bin: usize) -> Option<Plain> {
        let b = &problem.bins[bin];
        if b.on_hand > 0 || b.spare > 0 {
            return None;
        }
        let offered = || {
            problem
                .purchases
                .iter()
                .enumerate()
                .filter(|(_, purchase)| {
                    purchase.bin == bin && scope.suppliers.get(purchase.supplier) == Some(&true)
                })
        };
        let lowest = offered()
            .flat_map(|(_, purchase)| usable_tiers(purchase, scope))
            .map(|(_, tier)| tier.each)
            .min()?;
        offered().find_map(|(index, purchase)| {
            let first = purchase.tiers.first()?;
            let most = self.most_packs(problem, purchase, scope);
            let is_plenty = purchase
                .available
                .is_none_or(|available| u64::from(available) > most);
            (purchase.pack == 1 && first.from <= 1 && first.each == lowest && is_plenty).then_some(
                Plain {
                    purchase: index,
                    tier: 0,
                    each: first.each,
                },
            )
        })
    }

    fn add_tiers(
        &mut self,
        index: usize,
        purchase: &Purchase,
        most_packs: u64,
        limit: Option<(usize, f64)>,
        scope: &Scope,
    ) {
        let supply = (self.bin_row + purchase.bin, f64::from(purchase.pack));
        let tiers: Vec<(usize, Tier)> = usable_tiers(purchase, scope).collect();
        let first = tiers.first().map_or(1, |(_, tier)| tier.from);
        let is_plain = tiers.len() == 1 && first <= purchase.pack;
        // At most one price at a time.
        let one_tier = (!is_plain).then(|| self.add_row(-1.0));
        for (tier, price) in tiers {
            let mut entries = vec![supply];
            entries.extend(limit);
            let least = u64::from(price.from).div_ceil(u64::from(purchase.pack));
            if least > most_packs {
                continue;
            }
            if let Some(one_tier) = one_tier {
                // least × taken ≤ packs ≤ most × taken
                let (low, high) = (self.add_row(0.0), self.add_row(0.0));
                entries.extend([(low, 1.0), (high, -1.0)]);
                self.fixed.push(Column {
                    decision: Decision::TakeTier,
                    cost: 0.0,
                    entries: vec![
                        (low, -(least as f64)),
                        (high, most_packs as f64),
                        (one_tier, -1.0),
                    ],
                    most: 1,
                });
            }
            self.fixed.push(Column {
                decision: Decision::Buy {
                    purchase: index,
                    tier,
                },
                cost: price.each as f64 * f64::from(purchase.pack),
                entries,
                most: whole(most_packs),
            });
        }
    }

    /// More packs than this no plan within the budget can use: one bin for each part that fits and
    /// each spare, or as many as the best price asks for.
    fn most_packs(&self, problem: &CuttingProblem, purchase: &Purchase, scope: &Scope) -> u64 {
        let bin = &problem.bins[purchase.bin];
        let useful: u64 = problem
            .parts
            .iter()
            .zip(&self.caps)
            .filter(|(part, _)| {
                (part.family == bin.family && part.size <= bin.size)
                    || bin.leg_family == Some(part.family)
            })
            .map(|(_, cap)| u64::from(*cap))
            .sum();
        let useful = useful + u64::from(bin.spare);
        if useful == 0 {
            return 0;
        }
        let pack = u64::from(purchase.pack);
        let best = usable_tiers(purchase, scope)
            .last()
            .map_or(0, |(_, tier)| u64::from(tier.from));
        let mut packs = useful.max(best).div_ceil(pack);
        let cheapest = usable_tiers(purchase, scope)
            .map(|(_, tier)| tier.each)
            .min();
        if let Some(cheapest @ 1..) = cheapest {
            let payable = (scope.budget / (cheapest as f64 * pack as f64)).floor();
            if payable < packs as f64 {
                packs = payable.max(0.0) as u64;
            }
        }
        purchase
            .available
            .map_or(packs, |available| packs.min(u64::from(available) / pack))
    }

    fn add_row(&mut self, rhs: f64) -> usize {
        self.rows.push(Row {
            rhs,
            is_equal: false,
        });
        self.rows.len() - 1
    }

    /// The column of a pattern.
    pub(crate) fn cut(&self, problem: &CuttingProblem, pattern: Pattern) -> Column {
        let bin = &problem.bins[pattern.bin];
        let mut entries: Vec<(usize, f64)> = pattern
            .counts
            .iter()
            .map(|(part, n)| (*part, f64::from(*n)))
            .collect();
        let plain = self.plain[pattern.bin];
        if plain.is_none() {
            entries.push((self.bin_row + pattern.bin, -1.0));
        }
        for left in pattern.legs_left(problem) {
            if let Some(class) = self.legs.class(bin, left) {
                entries.push((self.leg_row + class, 1.0));
            }
        }
        let most = self.caps.iter().map(|cap| u64::from(*cap)).sum();
        Column {
            decision: Decision::Cut(pattern),
            cost: plain.map_or(0.0, |plain| plain.each as f64),
            entries: summed(entries),
            most: whole(most),
        }
    }

    /// Class of the leg left over at each end.
    pub(crate) fn leg_classes(
        &self,
        problem: &CuttingProblem,
        pattern: &Pattern,
    ) -> [Option<usize>; 2] {
        let bin = &problem.bins[pattern.bin];
        pattern
            .legs_left(problem)
            .map(|left| self.legs.class(bin, left))
    }

    /// What one bin costs at these dual prices.
    pub(crate) fn bin_price(&self, duals: &[f64], bin: usize) -> f64 {
        match self.plain.get(bin) {
            Some(Some(plain)) => plain.each as f64,
            _ => duals.get(self.bin_row + bin).copied().unwrap_or(0.0),
        }
    }

    /// The one price of a bin, when it has one.
    pub(crate) fn plain(&self, bin: usize) -> Option<Plain> {
        self.plain.get(bin).copied().flatten()
    }

    /// What second choices add to the cost of a plan at most: nobody pays it.
    pub(crate) fn most_for_seconds(&self, problem: &CuttingProblem) -> f64 {
        let seconds = problem.choices.iter().filter(|choice| choice.is_second);
        SECOND * seconds.count().min(problem.equalities.len()) as f64
    }

    /// Dual price of a leg class.
    pub(crate) fn leg_price(&self, duals: &[f64], class: usize) -> f64 {
        duals.get(self.leg_row + class).copied().unwrap_or(0.0)
    }
}

/// Adds up entries of the same row, rows rising.
fn summed(mut entries: Vec<(usize, f64)>) -> Vec<(usize, f64)> {
    entries.sort_by_key(|(row, _)| *row);
    let mut merged: Vec<(usize, f64)> = Vec::with_capacity(entries.len());
    for (row, value) in entries {
        match merged.last_mut() {
            Some((last, sum)) if *last == row => *sum += value,
            _ => merged.push((row, value)),
        }
    }
    merged
}

/// Going without a part must cost more than the dearest way to get it: a pack at the dearest price
/// or the quantity that a cheaper price asks for, its delivery, and the dearest choices around it.
fn miss_cost(problem: &CuttingProblem) -> f64 {
    let dearest_pack = problem
        .purchases
        .iter()
        .flat_map(|purchase| {
            purchase
                .tiers
                .iter()
                .map(|tier| tier.each as f64 * f64::from(purchase.pack.max(tier.from)))
        })
        .fold(0.0, f64::max);
    let delivery = problem
        .delivery
        .iter()
        .map(|charge| *charge as f64)
        .fold(0.0, f64::max);
    let choice = problem
        .choices
        .iter()
        .map(|choice| choice.cost as f64)
        .fold(0.0, f64::max);
    // Doubled, for getting one part may move another to a dearer bin.
    (2.0 * (dearest_pack + delivery + 3.0 * choice)).max(1.0) + 1.0
}

/// Greatest common divisor of all prices.
fn money_step(problem: &CuttingProblem) -> f64 {
    let packs = problem
        .purchases
        .iter()
        .flat_map(|p| p.tiers.iter().map(|tier| tier.each * i64::from(p.pack)));
    let choices = problem.choices.iter().map(|choice| choice.cost);
    let gcd = packs
        .chain(choices)
        .chain(problem.delivery.iter().copied())
        .fold(0, gcd);
    gcd.max(1) as f64
}

fn gcd(mut a: i64, mut b: i64) -> i64 {
    while b != 0 {
        (a, b) = (b, a % b);
    }
    a.abs()
}

/// Prices whose least order the budget can pay.
fn usable_tiers<'a>(
    purchase: &'a Purchase,
    scope: &'a Scope,
) -> impl Iterator<Item = (usize, Tier)> + 'a {
    let prices = if scope.is_first_price_only {
        1
    } else {
        usize::MAX
    };
    purchase
        .tiers
        .iter()
        .copied()
        .enumerate()
        .take(prices)
        .filter(|(_, tier)| {
            let least = u64::from(tier.from)
                .div_ceil(u64::from(purchase.pack))
                .max(1);
            tier.each as f64 * (least * u64::from(purchase.pack)) as f64 <= scope.budget
        })
}
