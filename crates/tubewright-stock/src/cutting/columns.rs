//! The integer program: rows, columns that are always there, and columns of patterns.

use std::rc::Rc;

use super::conflicts::Conflicts;
use super::leg_fill::LegClasses;
use super::pattern::Pattern;
use super::problem::CuttingProblem;

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
    TakeTier { purchase: usize, tier: usize },
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
    pub(crate) conflicts: Rc<Conflicts>,
    /// Price of going without one part.
    pub(crate) miss_cost: f64,
    /// Every plan costs a multiple of this: the greatest common divisor of all prices.
    pub(crate) money_step: f64,
    pub(super) bin_row: usize,
    /// First of the rows that are of buying alone.
    buying_row: usize,
    leg_row: usize,
    /// Bins with one plain price: their price is that of their patterns, and they need no row.
    pub(super) plain: Vec<Option<Plain>>,
}

/// The one price of a bin that can be had in any number.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Plain {
    pub(crate) purchase: usize,
    pub(crate) tier: usize,
    pub(crate) each: i64,
}

/// How exactly a model says what purchases cost.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(crate) enum Buying {
    /// As they are: with packs, and each price from its quantity on.
    Whole,
    /// Each at one price in any number, up to what can be had: the lowest, by purchase, of the prices up to this
    /// one. Where that is the last, no plan costs more so.
    Single(Vec<usize>),
}

/// Which part of the problem a model is of.
#[derive(Clone, Debug)]
pub(crate) struct Scope {
    /// Suppliers that may be bought from; their charges are paid outside the model.
    pub(crate) suppliers: Vec<bool>,
    /// No plan dearer than this is looked for.
    pub(crate) budget: f64,
    /// How purchases are put.
    pub(crate) buying: Buying,
}

/// What a second choice costs more, in minor units: all that can be chosen together cost less than half
/// of one more.
const SECOND: f64 = 2e-3;

const NO_MORE_THAN: i32 = 1_000_000;

pub(super) fn whole(count: u64) -> i32 {
    i32::try_from(count)
        .unwrap_or(NO_MORE_THAN)
        .min(NO_MORE_THAN)
}

impl Model {
    pub(crate) fn of(problem: &CuttingProblem, conflicts: Rc<Conflicts>, scope: &Scope) -> Self {
        let legs = LegClasses::of(problem, &conflicts.caps);
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
            buying_row: rows.len(),
            rows,
            fixed: Vec::new(),
            legs,
            conflicts,
            miss_cost,
            money_step,
            bin_row,
            leg_row,
            plain: Vec::new(),
        };
        model.add_misses(problem);
        model.add_fills();
        model.add_choices(problem, equality_row);
        match &scope.buying {
            Buying::Whole => model.add_purchases(problem, scope),
            Buying::Single(last) => model.add_single_prices(problem, scope, last),
        }
        model
    }

    fn add_misses(&mut self, problem: &CuttingProblem) {
        for (part, cap) in self.conflicts.caps.iter().enumerate() {
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
                    .map(|(part, _)| u64::from(self.conflicts.caps[*part]))
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

    pub(super) fn add_row(&mut self, rhs: f64) -> usize {
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
        let most = self.conflicts.caps.iter().map(|cap| u64::from(*cap)).sum();
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

    /// Whether a row is of buying: those of bins and of what can be had.
    pub(crate) fn is_of_buying(&self, row: usize) -> bool {
        (self.bin_row..self.leg_row).contains(&row) || row >= self.buying_row
    }

    /// More bins of a kind than this no plan cuts: all that are there and can be bought.
    pub(crate) fn most_cut(&self, problem: &CuttingProblem, bin: usize) -> f64 {
        let parts: f64 = self.conflicts.caps.iter().map(|cap| f64::from(*cap)).sum();
        if self.plain(bin).is_some() {
            return parts;
        }
        let row = self.bin_row + bin;
        let bought: f64 = self
            .fixed
            .iter()
            .filter(|column| matches!(column.decision, Decision::Buy { .. }))
            .flat_map(|column| column.entries.iter().map(|entry| (entry, column.most)))
            .filter(|((of, _), _)| *of == row)
            .map(|((_, pieces), most)| pieces * f64::from(most))
            .sum();
        parts.min(bought + f64::from(problem.bins[bin].on_hand))
    }

    /// Prices of the rows near these and nowhere too high for what is always there: a leg left over is worth its
    /// best filling, a bin no more than it is sold for, a part no more than going without it.
    pub(crate) fn settled(&self, mut prices: Vec<f64>) -> Vec<f64> {
        for price in prices.iter_mut().take(self.leg_row) {
            *price = price.min(self.miss_cost);
        }
        for leg in prices
            .iter_mut()
            .take(self.buying_row)
            .skip(self.leg_row)
            .take(self.legs.fills.len())
        {
            *leg = 0.0;
        }
        for column in &self.fixed {
            let (row, is_leg) = match column.decision {
                Decision::Fill { class, .. } => (self.leg_row + class, true),
                Decision::Buy { .. } => (column.entries.first().map_or(0, |(row, _)| *row), false),
                _ => continue,
            };
            let others: f64 = column
                .entries
                .iter()
                .filter(|(other, _)| *other != row)
                .map(|(other, value)| value * prices[*other])
                .sum();
            prices[row] = if is_leg {
                prices[row].max(others)
            } else {
                prices[row].min(column.cost - others)
            };
        }
        prices
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
