//! The patterns that every relaxation begins with.

use super::columns::Model;
use super::pattern::{Pattern, leg_count, one_leg, whole_legs};
use super::problem::CuttingProblem;

/// Every part alone in the cheapest bin that can give it: enough for a price of each.
pub(crate) fn start_patterns<'a>(
    problem: &'a CuttingProblem,
    model: &'a Model,
) -> impl Iterator<Item = Pattern> + 'a {
    (0..problem.parts.len())
        .filter(|part| model.conflicts.caps[*part] > 0)
        .filter_map(|part| {
            (0..problem.bins.len())
                .filter_map(|bin| alone(problem, bin, part))
                .min_by_key(|pattern| {
                    let plain = model.plain(pattern.bin);
                    (plain.map_or(i64::MAX, |plain| plain.each), pattern.bin)
                })
        })
}

/// One part alone out of a bin.
fn alone(problem: &CuttingProblem, bin: usize, part: usize) -> Option<Pattern> {
    let (b, p) = (&problem.bins[bin], &problem.parts[part]);
    if p.family != b.family || p.size > b.size {
        return None;
    }
    let is_turned = leg_count(p) == 2 && whole_legs(b, p, false).is_none();
    let ends = match leg_count(p) {
        0 => [None, None],
        1 if one_leg(p) <= b.legs[0] => [Some(part), None],
        1 if one_leg(p) <= b.legs[1] => [None, Some(part)],
        2 if p.size == b.size && whole_legs(b, p, is_turned).is_some() => [Some(part), Some(part)],
        _ => return None,
    };
    Some(Pattern {
        bin,
        counts: vec![(part, 1)],
        ends,
        is_turned,
    })
}
