//! One way to cut one bin.

use super::problem::{Bin, CuttingProblem, Part};

/// Parts that come out of one bin of a kind.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub struct Pattern {
    /// Index of the bin.
    pub bin: usize,
    /// Part class and number, classes rising.
    pub counts: Vec<(usize, u32)>,
    /// Part class that keeps the leg at each end of the bin; `None` where the leg is left over.
    pub ends: [Option<usize>; 2],
    /// Whether one part that keeps both legs lies turned round, its first leg at the bin's second end:
    /// it leaves other rests of the legs.
    pub is_turned: bool,
}

impl Pattern {
    /// Number of parts.
    #[must_use]
    pub fn part_count(&self) -> u32 {
        self.counts.iter().map(|(_, n)| n).sum()
    }

    /// What is left of each leg of the bin after the cut that frees it, in thousandths of mm; below
    /// or at zero when nothing is.
    pub(crate) fn legs_left(&self, problem: &CuttingProblem) -> [i64; 2] {
        let bin = &problem.bins[self.bin];
        let kept = match self.ends {
            [Some(a), Some(b)] if a == b && self.part_count() == 1 => {
                whole_legs(bin, &problem.parts[a], self.is_turned).unwrap_or(bin.legs)
            }
            ends => ends.map(|end| end.map_or(0, |part| one_leg(&problem.parts[part]))),
        };
        [0, 1].map(|end| bin.legs[end] - kept[end] - bin.leg_kerf)
    }
}

/// The leg of a part that has at most one.
pub(crate) fn one_leg(part: &Part) -> i64 {
    part.legs[0].max(part.legs[1])
}

/// How many legs a part keeps.
pub(crate) fn leg_count(part: &Part) -> usize {
    part.legs.iter().filter(|leg| **leg > 0).count()
}

/// Which leg of a part that takes a whole bin lies at which end of the bin, as it is or turned round;
/// `None` when it does not fit so.
pub(crate) fn whole_legs(bin: &Bin, part: &Part, is_turned: bool) -> Option<[i64; 2]> {
    let [a, b] = part.legs;
    let legs = if is_turned { [b, a] } else { [a, b] };
    (legs[0] <= bin.legs[0] && legs[1] <= bin.legs[1]).then_some(legs)
}
