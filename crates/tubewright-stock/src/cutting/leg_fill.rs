//! Legs left over are short straights: what can be cut from them.

use std::collections::BTreeMap;

use super::problem::{Bin, CuttingProblem};

/// One way to cut one leg left over.
pub(crate) type Fill = Vec<(usize, u32)>;

/// Classes of legs left over that can give the same parts.
#[derive(Default)]
pub(crate) struct LegClasses {
    /// Fills to which nothing can be added, by class.
    pub(crate) fills: Vec<Vec<Fill>>,
    /// Whether every way to cut every leg was found.
    pub(crate) is_complete: bool,
    /// Class of a family, a length and a kerf.
    class_of: BTreeMap<(u32, i64, i64), usize>,
}

/// Most ways to cut one leg that are looked at: a leg is short, real numbers are below ten.
const MOST_FILLS: usize = 500;

impl LegClasses {
    /// Finds every length that a pattern can leave over and groups those that can give the same.
    pub(crate) fn of(problem: &CuttingProblem, caps: &[u32]) -> Self {
        let mut lengths: Vec<(u32, i64, i64)> = Vec::new();
        for bin in &problem.bins {
            let Some(family) = bin.leg_family else {
                continue;
            };
            let kept = problem
                .parts
                .iter()
                .filter(|part| part.family == bin.family)
                .flat_map(|part| part.legs)
                .chain([0]);
            for need in kept {
                for leg in bin.legs {
                    let left = leg - need - bin.leg_kerf;
                    if left > 0 {
                        lengths.push((family, left, bin.leg_kerf));
                    }
                }
            }
        }
        lengths.sort_unstable();
        lengths.dedup();
        let mut classes = Self {
            is_complete: true,
            ..Self::default()
        };
        let mut known: BTreeMap<(u32, Vec<Fill>), usize> = BTreeMap::new();
        for (family, left, kerf) in lengths {
            let fills = maximal_fills(problem, caps, family, left, kerf);
            if fills.is_empty() {
                continue;
            }
            classes.is_complete &= fills.len() < MOST_FILLS;
            let class = *known.entry((family, fills.clone())).or_insert_with(|| {
                classes.fills.push(fills);
                classes.fills.len() - 1
            });
            classes.class_of.insert((family, left, kerf), class);
        }
        classes
    }

    /// The class of a leg left over; `None` when nothing can be cut from it.
    pub(crate) fn class(&self, bin: &Bin, left: i64) -> Option<usize> {
        self.class_of
            .get(&(bin.leg_family?, left, bin.leg_kerf))
            .copied()
    }
}

fn maximal_fills(
    problem: &CuttingProblem,
    caps: &[u32],
    family: u32,
    left: i64,
    kerf: i64,
) -> Vec<Fill> {
    let fitting: Vec<(usize, i64)> = problem
        .parts
        .iter()
        .enumerate()
        .filter(|(index, part)| {
            part.family == family && part.size <= left && part.legs == [0, 0] && caps[*index] > 0
        })
        .map(|(index, part)| (index, part.size + kerf))
        .collect();
    let mut found = Vec::new();
    fill_from(&fitting, caps, left + kerf, &mut Vec::new(), &mut found);
    found
}

fn fill_from(
    fitting: &[(usize, i64)],
    caps: &[u32],
    room: i64,
    taken: &mut Fill,
    found: &mut Vec<Fill>,
) {
    let Some(((part, weight), rest)) = fitting.split_first() else {
        if !taken.is_empty() && found.len() < MOST_FILLS {
            found.push(taken.clone());
        }
        return;
    };
    let fit = u32::try_from(room / weight)
        .unwrap_or(u32::MAX)
        .min(caps[*part]);
    for count in (0..=fit).rev() {
        // Fewer of the last one than fit is the same fill with less in it.
        let left = room - weight * i64::from(count);
        if count < fit && rest.is_empty() {
            break;
        }
        if count > 0 {
            taken.push((*part, count));
        }
        fill_from(rest, caps, left, taken, found);
        if count > 0 {
            taken.pop();
        }
        if found.len() >= MOST_FILLS {
            return;
        }
    }
}
