//! Depth-first search over the patterns of one bin: the most valuable one, or all above a value.

use super::conflicts::Conflicts;
use super::pattern::{Pattern, leg_count, one_leg, whole_legs};
use super::problem::{Bin, CuttingProblem};

/// What parts and legs left over are worth, in minor units: the dual prices.
pub(crate) struct Values<'a> {
    pub(crate) parts: &'a [f64],
    /// Worth of a leg of this length left over from this bin; `None` when nothing can be cut from it.
    pub(crate) leg: &'a dyn Fn(&Bin, i64) -> Option<f64>,
}

/// Walks the patterns of one bin.
pub(crate) struct PatternSearch<'a> {
    problem: &'a CuttingProblem,
    bin: usize,
    /// Parts that keep no leg: they lie anywhere.
    items: Vec<Item>,
    /// Parts that keep one leg: they lie at an end.
    at_ends: Vec<Item>,
    values: &'a Values<'a>,
    conflicts: &'a Conflicts,
    /// Only patterns worth more are found; rises as better ones are found when `best_only`.
    threshold: f64,
    best_only: bool,
    /// No two legs left over are worth more.
    most_for_legs: f64,
    /// Whether something can be cut from a leg left over, whatever it is worth at these prices.
    has_use_for_legs: bool,
    steps: u64,
    most: usize,
    found: Vec<(f64, Pattern)>,
    is_cut_short: bool,
}

#[derive(Clone, Copy)]
struct Item {
    part: usize,
    weight: i64,
    cap: u32,
    value: f64,
    leg: i64,
}

/// Which of the parts with a leg lies at each end.
type Ends = [Option<usize>; 2];

/// So many patterns of a bin are kept while the best is looked for.
const MOST_BETTER: usize = 2;

/// Room for rounding in comparisons of dual prices, in minor units: a millionth of a cent is far
/// below any price and far above the solver's 1e-9 relative.
const SLACK: f64 = 1e-6;

impl<'a> PatternSearch<'a> {
    pub(crate) fn new(
        problem: &'a CuttingProblem,
        conflicts: &'a Conflicts,
        bin: usize,
        values: &'a Values<'a>,
        steps: u64,
    ) -> Self {
        let b = &problem.bins[bin];
        let (at_ends, mut items): (Vec<Item>, Vec<Item>) = problem
            .parts
            .iter()
            .enumerate()
            .filter(|(index, part)| {
                part.family == b.family
                    && part.size <= b.size
                    && conflicts.caps[*index] > 0
                    && leg_count(part) < 2
                    && one_leg(part) <= b.legs[0].max(b.legs[1])
            })
            .map(|(index, part)| Item {
                part: index,
                weight: part.size + b.kerf,
                cap: conflicts.caps[index],
                value: values.parts[index],
                leg: one_leg(part),
            })
            .partition(|item| item.leg > 0);
        // Dearest by size first: the fractional bound is then that of the next items.
        items.sort_by(|x, y| {
            let (x_density, y_density) = (x.value / x.weight as f64, y.value / y.weight as f64);
            y_density.total_cmp(&x_density).then(x.part.cmp(&y.part))
        });
        let legs_left = at_ends.iter().map(|item| item.leg).chain([0]);
        let most_for_legs = b
            .legs
            .iter()
            .map(|leg| {
                legs_left
                    .clone()
                    .filter_map(|kept| (values.leg)(b, leg - kept - b.leg_kerf))
                    .fold(0.0, f64::max)
            })
            .sum();
        let has_use_for_legs = b
            .legs
            .iter()
            .any(|leg| (values.leg)(b, leg - b.leg_kerf).is_some());
        Self {
            problem,
            bin,
            items,
            at_ends,
            values,
            conflicts,
            threshold: 0.0,
            best_only: true,
            most_for_legs,
            has_use_for_legs,
            steps,
            most: usize::MAX,
            found: Vec::new(),
            is_cut_short: false,
        }
    }

    /// The most valuable pattern worth more than `threshold`, and before it those that were the most valuable
    /// until then, some of them; `Err` when the steps ran out.
    pub(crate) fn best(mut self, threshold: f64) -> Result<Vec<(f64, Pattern)>, ()> {
        self.threshold = threshold;
        // What is worth nothing makes no pattern better.
        self.items.retain(|item| item.value > SLACK);
        self.at_ends.retain(|item| item.value > SLACK);
        self.run();
        if self.is_cut_short {
            Err(())
        } else {
            Ok(self.found)
        }
    }

    /// Every pattern worth more than `threshold` to which no part without legs can be added;
    /// `Err` when there are more than `most` or the steps ran out. A pattern with room for another
    /// part is never better than the one with it, for demand is "at least".
    pub(crate) fn all(mut self, threshold: f64, most: usize) -> Result<Vec<Pattern>, ()> {
        self.threshold = threshold;
        self.best_only = false;
        self.most = most;
        self.run();
        if self.is_cut_short {
            return Err(());
        }
        Ok(self.found.into_iter().map(|(_, pattern)| pattern).collect())
    }

    /// What lies at the ends is settled first; the room between them is then an ordinary knapsack.
    fn run(&mut self) {
        self.whole_parts();
        self.between([None, None]);
        for first in 0..self.at_ends.len() {
            self.between([Some(first), None]);
            let again = usize::from(self.at_ends[first].cap < 2);
            for second in first + again..self.at_ends.len() {
                self.between([Some(first), Some(second)]);
            }
        }
    }

    /// The patterns with these parts at the ends.
    fn between(&mut self, ends: Ends) {
        let bin = &self.problem.bins[self.bin];
        let [first, second] = ends.map(|end| end.map(|item| self.at_ends[item]));
        let at_ends = || first.into_iter().chain(second);
        let room = bin.size + bin.kerf - at_ends().map(|item| item.weight).sum::<i64>();
        if room < 0 {
            return;
        }
        let of_ends: f64 = at_ends().map(|item| item.value).sum();
        if of_ends + self.most_for_legs + most_more(&self.items, room) <= self.threshold - SLACK
            || first.is_some_and(|a| second.is_some_and(|b| self.exclude(a, b)))
        {
            return;
        }
        let ways = self.arrangements(ends);
        let legs = ways
            .iter()
            .map(|way| {
                let kept = way.map(|end| end.map_or(0, |item| self.at_ends[item].leg));
                (0..2)
                    .filter_map(|end| {
                        (self.values.leg)(bin, bin.legs[end] - kept[end] - bin.leg_kerf)
                    })
                    .sum::<f64>()
            })
            .fold(f64::NEG_INFINITY, f64::max);
        let items: Vec<Item> = self
            .items
            .iter()
            .filter(|item| !at_ends().any(|end| self.exclude(end, **item)))
            .copied()
            .collect();
        let mut counts = vec![0; items.len()];
        self.descend(&items, 0, room, of_ends + legs, &mut counts, &ways);
    }

    fn exclude(&self, a: Item, b: Item) -> bool {
        self.conflicts.exclude(a.part, b.part)
    }

    /// Parts that keep both legs take the whole arc.
    fn whole_parts(&mut self) {
        let bin = &self.problem.bins[self.bin];
        let whole: Vec<usize> = (0..self.problem.parts.len())
            .filter(|index| {
                let part = &self.problem.parts[*index];
                part.family == bin.family && part.size == bin.size && leg_count(part) == 2
            })
            .collect();
        for part in whole {
            let wanted = &self.problem.parts[part];
            let turns: &[bool] = if wanted.legs[0] == wanted.legs[1] {
                &[false]
            } else {
                &[false, true]
            };
            for is_turned in turns {
                if whole_legs(bin, wanted, *is_turned).is_some() {
                    self.offer(Pattern {
                        bin: self.bin,
                        counts: vec![(part, 1)],
                        ends: [Some(part), Some(part)],
                        is_turned: *is_turned,
                    });
                }
            }
        }
    }

    fn descend(
        &mut self,
        items: &[Item],
        at: usize,
        room: i64,
        value: f64,
        counts: &mut [u32],
        ways: &[Ends],
    ) {
        let rest = items.get(at..).unwrap_or_default();
        if self.is_cut_short || value + most_more(rest, room) <= self.threshold - SLACK {
            return;
        }
        self.steps = self.steps.saturating_sub(1);
        if self.steps == 0 {
            self.is_cut_short = true;
            return;
        }
        let Some(item) = rest.first().copied() else {
            self.finish(items, room, counts, ways);
            return;
        };
        let fit = u32::try_from(room / item.weight)
            .unwrap_or(u32::MAX)
            .min(item.cap);
        let is_excluded = fit > 0 && self.is_excluded(items, &counts[..at], item);
        let fit = if is_excluded { 0 } else { fit };
        for count in (0..=fit).rev() {
            counts[at] = count;
            self.descend(
                items,
                at + 1,
                room - item.weight * i64::from(count),
                value + item.value * f64::from(count),
                counts,
                ways,
            );
        }
        counts[at] = 0;
    }

    /// Whether no plan needs this part beside those that are taken.
    fn is_excluded(&self, items: &[Item], counts: &[u32], item: Item) -> bool {
        items
            .iter()
            .zip(counts)
            .any(|(other, count)| *count > 0 && self.exclude(*other, item))
    }

    /// The ways in which up to two parts with a leg can lie at the ends of the bin.
    fn arrangements(&self, [first, second]: Ends) -> Vec<Ends> {
        let bin = &self.problem.bins[self.bin];
        let fits = |end: usize, item: Option<usize>| {
            item.is_none_or(|item| self.at_ends[item].leg <= bin.legs[end])
        };
        let mut ways = vec![[first, second]];
        // Turned round it is another pattern only when the ends differ.
        if first != second && bin.legs[0] != bin.legs[1] {
            ways.push([second, first]);
        }
        ways.retain(|way| fits(0, way[0]) && fits(1, way[1]));
        if ways.is_empty() && fits(0, second) && fits(1, first) {
            ways.push([second, first]);
        }
        ways
    }

    fn finish(&mut self, items: &[Item], room: i64, counts: &[u32], ways: &[Ends]) {
        // A bend may be worth cutting for its legs alone, even where they are worth nothing at these
        // prices: a bend on hand costs nothing either.
        let is_empty = counts.iter().all(|n| *n == 0);
        if is_empty && ways == [[None, None]] && !self.has_use_for_legs {
            return;
        }
        let has_room_for_more = || {
            items.iter().zip(counts).any(|(item, count)| {
                *count < item.cap && item.weight <= room && !self.is_excluded(items, counts, *item)
            })
        };
        if !self.best_only && has_room_for_more() {
            return;
        }
        for way in ways {
            let mut by_class: Vec<(usize, u32)> = items
                .iter()
                .zip(counts)
                .filter(|(_, count)| **count > 0)
                .map(|(item, count)| (item.part, *count))
                .collect();
            let ends = way.map(|end| end.map(|item| self.at_ends[item].part));
            match ends {
                [Some(a), Some(b)] if a == b => by_class.push((a, 2)),
                _ => by_class.extend(ends.iter().flatten().map(|part| (*part, 1))),
            }
            by_class.sort_unstable();
            self.offer(Pattern {
                bin: self.bin,
                counts: by_class,
                ends,
                is_turned: false,
            });
        }
    }

    fn offer(&mut self, pattern: Pattern) {
        let value = worth(self.problem, &pattern, self.values);
        if value <= self.threshold {
            return;
        }
        if self.best_only {
            self.threshold = value;
            if self.found.len() >= MOST_BETTER {
                self.found.remove(0);
            }
        } else if self.found.len() >= self.most {
            self.is_cut_short = true;
            return;
        }
        self.found.push((value, pattern));
    }
}

/// No parts of these are worth more in this room: the dearest by size first, the last of them in part
/// (Dantzig, "Discrete-variable extremum problems", Operations Research 5, 1957, from memory).
fn most_more(items: &[Item], mut room: i64) -> f64 {
    let mut worth = 0.0;
    for item in items {
        if item.value <= 0.0 {
            break;
        }
        let all = item.weight.saturating_mul(i64::from(item.cap));
        if all >= room {
            return worth + item.value * (room as f64 / item.weight as f64);
        }
        worth += item.value * f64::from(item.cap);
        room -= all;
    }
    worth
}

/// What a pattern's parts and the legs it leaves are worth.
pub(crate) fn worth(problem: &CuttingProblem, pattern: &Pattern, values: &Values<'_>) -> f64 {
    let parts: f64 = pattern
        .counts
        .iter()
        .map(|(part, n)| values.parts[*part] * f64::from(*n))
        .sum();
    let bin = &problem.bins[pattern.bin];
    let legs: f64 = pattern
        .legs_left(problem)
        .iter()
        .filter_map(|leg| (values.leg)(bin, *leg))
        .sum();
    parts + legs
}
