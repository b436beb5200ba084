//! Each mark to the division below or above, so that every run ends best.

use super::faces::Effect;
use super::levers::End;
use crate::stages::{END_TOLERANCE_DEG, END_TOLERANCE_MM};

/// A mark with its two divisions, as how far each is off along the centre line, mm.
pub(super) struct Choice {
    pub(super) effects: Vec<Effect>,
    pub(super) below: f64,
    pub(super) above: f64,
}

impl Choice {
    fn is_free(&self) -> bool {
        self.below.to_bits() != self.above.to_bits()
    }

    /// Moves the ends by this mark.
    fn put(&self, ends: &mut [End], is_above: bool) {
        let by_mm = if is_above { self.above } else { self.below };
        for effect in &self.effects {
            effect.apply(ends, by_mm);
        }
    }
}

/// A direction that is off by a radian is as bad as a place that is off by this, mm: the two
/// tolerances of an end are worth the same.
fn lever_mm() -> f64 {
    END_TOLERANCE_MM / END_TOLERANCE_DEG.to_radians()
}

fn badness(ends: &[End]) -> f64 {
    let lever = lever_mm();
    ends.iter()
        .map(|end| end.place.norm_squared() + lever * lever * end.turn.norm_squared())
        .sum()
}

/// What a turn must gain to be worth it, mm²: less is rounding of the arithmetic.
const LEAST_GAIN: f64 = 1e-9;
/// Rounds of looking at every mark and every pair; each one gains, and few are needed.
const MOST_ROUNDS: usize = 60;
/// Marks that are turned together with one, so that a hundred cuts take no noticeable time.
const MOST_PAIRED: usize = 40;

/// Whether each mark goes to the division above, and where the stretches then end.
pub(super) fn chosen(choices: &[Choice], fixed: &[End]) -> (Vec<bool>, Vec<End>) {
    // Begin at the nearest divisions.
    let mut is_above: Vec<bool> = choices
        .iter()
        .map(|choice| choice.above.abs() < choice.below.abs())
        .collect();
    let ends_of = |is_above: &[bool]| {
        let mut ends = fixed.to_vec();
        for (choice, above) in choices.iter().zip(is_above) {
            choice.put(&mut ends, *above);
        }
        ends
    };
    let free: Vec<usize> = (0..choices.len())
        .filter(|&index| choices.get(index).is_some_and(Choice::is_free))
        .collect();
    let turned = |is_above: &[bool], which: &[usize]| {
        let mut after = is_above.to_vec();
        for &index in which {
            if let Some(above) = after.get_mut(index) {
                *above = !*above;
            }
        }
        after
    };
    for _ in 0..MOST_ROUNDS {
        let mut best: Option<(f64, Vec<bool>)> = None;
        let now = badness(&ends_of(&is_above));
        let mut look = |which: &[usize]| {
            let after = turned(&is_above, which);
            let then = badness(&ends_of(&after));
            let least = best.as_ref().map_or(now - LEAST_GAIN, |(least, _)| *least);
            if then < least {
                best = Some((then, after));
            }
        };
        for (order, &a) in free.iter().enumerate() {
            look(&[a]);
            for &b in free.iter().skip(order + 1).take(MOST_PAIRED) {
                look(&[a, b]);
            }
        }
        let Some((_, after)) = best else { break };
        is_above = after;
    }
    let ends = ends_of(&is_above);
    (is_above, ends)
}
