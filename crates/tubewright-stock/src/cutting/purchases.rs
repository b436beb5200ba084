//! What purchases cost, in the integer program and in its relaxation.

use super::columns::{Column, Decision, Model, Plain, Scope, whole};
use super::problem::{CuttingProblem, Purchase, Tier};

impl Model {
    pub(super) fn add_purchases(&mut self, problem: &CuttingProblem, scope: &Scope) {
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
        let least_packs = |price: &Tier| u64::from(price.from).div_ceil(u64::from(purchase.pack));
        let tiers: Vec<(usize, Tier)> = usable_tiers(purchase, scope)
            .filter(|(_, price)| least_packs(price) <= most_packs)
            .collect();
        let falls = tiers
            .windows(2)
            .all(|pair| pair[1].1.each <= pair[0].1.each);
        // Where prices fall, buying at two of them is never cheaper than all at the lower one, and it is not
        // what is ordered in the end: see `answer`.
        let one_tier = (!falls).then(|| self.add_row(-1.0));
        for (at, (tier, price)) in tiers.iter().enumerate() {
            let mut entries = vec![supply];
            entries.extend(limit);
            let least = least_packs(price);
            let mut most = most_packs;
            if falls && least <= 1 {
                // From the next quantity on the next price holds.
                most = tiers
                    .get(at + 1)
                    .map_or(most, |(_, next)| least_packs(next) - 1);
            } else {
                // least × taken ≤ packs ≤ most × taken
                let (low, high) = (self.add_row(0.0), self.add_row(0.0));
                entries.extend([(low, 1.0), (high, -1.0)]);
                let mut taken = vec![(low, -(least as f64)), (high, most_packs as f64)];
                taken.extend(one_tier.map(|row| (row, -1.0)));
                self.fixed.push(Column {
                    decision: Decision::TakeTier {
                        purchase: index,
                        tier: *tier,
                    },
                    cost: 0.0,
                    entries: taken,
                    most: 1,
                });
            }
            self.fixed.push(Column {
                decision: Decision::Buy {
                    purchase: index,
                    tier: *tier,
                },
                cost: price.each as f64 * f64::from(purchase.pack),
                entries,
                most: whole(most),
            });
        }
    }

    /// More packs than this no plan within the budget can use: one bin for each part that fits and
    /// each spare, or as many as the best price asks for.
    fn most_packs(&self, problem: &CuttingProblem, purchase: &Purchase, scope: &Scope) -> u64 {
        let bin = &problem.bins[purchase.bin];
        let gives = |part: usize| {
            let part = &problem.parts[part];
            (part.family == bin.family && part.size <= bin.size)
                || bin.leg_family == Some(part.family)
        };
        let useful = u64::from(self.conflicts.most_needed(problem, gives));
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

    /// Every purchase at the lowest of its prices, a piece at a time, with a row for no more than what can be
    /// had of it: the purchases of the relaxation.
    ///
    /// No plan costs more so than it does: put every piece that it buys at the lowest price of its purchase.
    /// The rows of cutting are the same and those that are left of buying are met, for a plan buys no more
    /// than can be had. So what no mix of this model costs less than, no plan does.
    pub(super) fn add_single_prices(
        &mut self,
        problem: &CuttingProblem,
        scope: &Scope,
        last: &[usize],
    ) {
        self.plain = vec![None; problem.bins.len()];
        for (bin, b) in problem.bins.iter().enumerate() {
            let mut offers: Vec<Offered> = problem
                .purchases
                .iter()
                .enumerate()
                .filter(|(_, purchase)| purchase.bin == bin)
                .filter_map(|(index, purchase)| {
                    let last = last.get(index).copied().unwrap_or(usize::MAX);
                    self.offered(problem, index, purchase, scope, last)
                })
                .collect();
            // Nothing that is dearer is bought where something can be had in any number.
            offers.sort_by_key(|offer| {
                (
                    offer.plain.each,
                    offer.limit.is_some(),
                    offer.plain.purchase,
                )
            });
            let endless = offers.iter().position(|offer| offer.limit.is_none());
            offers.truncate(endless.map_or(offers.len(), |at| at + 1));
            if endless == Some(0) && b.on_hand == 0 && b.spare == 0 {
                self.plain[bin] = offers.first().map(|offer| offer.plain);
                continue;
            }
            for offer in offers {
                let mut entries = vec![(self.bin_row + bin, 1.0)];
                if let Some(limit) = offer.limit {
                    entries.push((self.add_row(-(limit as f64)), -1.0));
                }
                self.fixed.push(Column {
                    decision: Decision::Buy {
                        purchase: offer.plain.purchase,
                        tier: offer.plain.tier,
                    },
                    cost: offer.plain.each as f64,
                    entries,
                    most: whole(offer.most),
                });
            }
        }
    }

    /// A purchase at its lowest price, where it is of any use.
    fn offered(
        &self,
        problem: &CuttingProblem,
        index: usize,
        purchase: &Purchase,
        scope: &Scope,
        last: usize,
    ) -> Option<Offered> {
        if scope.suppliers.get(purchase.supplier) != Some(&true) {
            return None;
        }
        let pack = u64::from(purchase.pack);
        let most_packs = self.most_packs(problem, purchase, scope);
        let (tier, price) = usable_tiers(purchase, scope)
            .filter(|(tier, _)| *tier <= last)
            .filter(|(_, price)| u64::from(price.from).div_ceil(pack) <= most_packs)
            .min_by_key(|(_, price)| price.each)?;
        let can_be_had = purchase
            .available
            .map(|available| u64::from(available) / pack);
        (most_packs > 0).then_some(Offered {
            plain: Plain {
                purchase: index,
                tier,
                each: price.each,
            },
            limit: can_be_had
                .filter(|packs| *packs <= most_packs)
                .map(|packs| packs * pack),
            most: most_packs * pack,
        })
    }
}

/// What a purchase comes to in the relaxation.
struct Offered {
    plain: Plain,
    /// Pieces that can be had; `None` when more than any plan uses.
    limit: Option<u64>,
    /// More than this no plan uses.
    most: u64,
}

/// Prices whose least order the budget can pay.
fn usable_tiers<'a>(
    purchase: &'a Purchase,
    scope: &'a Scope,
) -> impl Iterator<Item = (usize, Tier)> + 'a {
    purchase
        .tiers
        .iter()
        .copied()
        .enumerate()
        .filter(|(_, tier)| {
            let least = u64::from(tier.from)
                .div_ceil(u64::from(purchase.pack))
                .max(1);
            tier.each as f64 * (least * u64::from(purchase.pack)) as f64 <= scope.budget
        })
}
