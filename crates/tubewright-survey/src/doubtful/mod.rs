//! Readings that the others contradict, and the slip that was probably made.

mod digits;
mod sentence;
mod slips;

pub use sentence::shown_length;
pub use slips::{Explanation, SlipKind, TapeEnd};

use crate::adjustment::{Adjustment, Measure, ReadingResult, adjust, readjust};
use crate::network::Target;
use crate::statistics::CRITICAL_W;
use rayon::prelude::*;

/// A reading that was set aside because the others contradict it.
#[derive(Clone, Debug, PartialEq)]
pub struct Doubtful {
    /// Number of the reading.
    pub number: u32,
    /// The reading in the adjustment in which it stood out.
    pub result: ReadingResult,
    /// What the other readings say it should show, with the σ of that alone.
    pub others_say: Measure,
    /// Slips that explain it, likeliest first; empty when none does.
    pub explanations: Vec<Explanation>,
    /// Readings that would explain the contradiction as well if they were the wrong ones: one more
    /// line decides.
    pub or_else: Vec<u32>,
}

/// Doubtful readings and the adjustment without them.
#[derive(Clone, Debug)]
pub struct Snooping {
    /// In the order in which they were found; the first is the surest.
    pub doubtful: Vec<Doubtful>,
    /// The network adjusted with these readings set aside.
    pub without_them: Adjustment,
}

/// Readings with a standardised residual above this part of the largest are tried as well: in a
/// network bent far by a slip the largest residual is not always the culprit's.
const RIVAL_PART: f64 = 0.75;

/// Most rivals tried.
const RIVALS: usize = 4;

/// Sums of squares nearer than this explain equally well: 5 % of χ² with one degree of freedom.
const EQUALLY_GOOD: f64 = 3.84;

/// Finds the readings that the others contradict, one at a time: the largest |w| above 3.29 is set
/// aside, the network adjusted again, and so on; never all at once (Baarda 1968, data snooping).
/// Readings set aside that fit after all once a worse one is gone are taken in again. At most a
/// quarter of the readings is set aside; beyond that the network is to be measured anew.
#[must_use]
pub fn find_doubtful(adjustment: &Adjustment) -> Snooping {
    let most = adjustment.network().readings.len() / 4;
    let mut current = adjustment.clone();
    let mut doubtful: Vec<Doubtful> = Vec::new();
    while doubtful.len() < most.max(1) {
        let Some((found, next)) = worst(&current) else {
            break;
        };
        doubtful.push(found);
        current = next;
    }
    if !doubtful.is_empty() {
        current = unfolded(current);
    }
    reinstate(&mut doubtful, &mut current);
    for found in &mut doubtful {
        explain(found, &current);
    }
    Snooping {
        doubtful,
        without_them: current,
    }
}

/// A slip can fold the shape, or turn it into its mirror image, and its absence alone does not unfold it:
/// what is left is looked for afresh, and taken where it fits as well.
fn unfolded(current: Adjustment) -> Adjustment {
    match adjust(current.network()) {
        Ok(fresh) if fresh.global_test().vtpv < current.global_test().vtpv + EQUALLY_GOOD => fresh,
        _ => current,
    }
}

/// Largest equation of each reading that is in use and tested, largest first.
fn ranked(adjustment: &Adjustment) -> Vec<ReadingResult> {
    let mut largest: Vec<ReadingResult> = Vec::new();
    for result in adjustment.readings() {
        if result.set_aside {
            continue;
        }
        match largest.last_mut().filter(|l| l.number == result.number) {
            Some(last) if last.standardised.abs() < result.standardised.abs() => *last = result,
            Some(_) => {}
            None => largest.push(result),
        }
    }
    largest.sort_by(|a, b| {
        b.standardised
            .abs()
            .total_cmp(&a.standardised.abs())
            .then(a.number.cmp(&b.number))
    });
    largest
}

/// The reading whose absence makes the others agree best, if one stands out at all.
fn worst(adjustment: &Adjustment) -> Option<(Doubtful, Adjustment)> {
    let ranked = ranked(adjustment);
    let first = ranked.first()?.standardised.abs();
    if first <= CRITICAL_W {
        return None;
    }
    let rivals: Vec<&ReadingResult> = ranked
        .iter()
        .filter(|r| r.standardised.abs() >= RIVAL_PART * first)
        .take(RIVALS)
        .collect();
    // Each is a solution of its own; they come back in the order in which they went.
    let mut trials: Vec<(ReadingResult, Adjustment)> = rivals
        .into_par_iter()
        .map(|r| {
            let network = adjustment.network().without(r.number);
            let mut trial = readjust(network, adjustment);
            // A slip can fold the whole shape; without it the shape is looked for afresh.
            if trial.global_test().is_too_high()
                && let Ok(fresh) = adjust(trial.network())
                && fresh.global_test().vtpv < trial.global_test().vtpv
            {
                trial = fresh;
            }
            (*r, trial)
        })
        .filter(|(_, trial)| {
            trial.undetermined().points.len() <= adjustment.undetermined().points.len()
        })
        .collect();
    trials.sort_by(|a, b| a.1.global_test().vtpv.total_cmp(&b.1.global_test().vtpv));
    let least = trials.first()?.1.global_test().vtpv;
    let or_else = trials
        .iter()
        .skip(1)
        .filter(|(_, t)| t.global_test().vtpv < least + EQUALLY_GOOD)
        .map(|(r, _)| r.number)
        .collect();
    let (result, next) = trials.swap_remove(0);
    let found = Doubtful {
        number: result.number,
        result,
        others_say: Measure {
            value: result.observed - result.estimated_slip,
            sigma: result.sigma,
        },
        explanations: Vec::new(),
        or_else,
    };
    Some((found, next))
}

/// Takes readings in again that fit once all worse ones are gone, or once the shape is unfolded that made
/// them look wrong.
fn reinstate(doubtful: &mut Vec<Doubtful>, current: &mut Adjustment) {
    while !doubtful.is_empty() {
        let fits = current
            .readings()
            .into_iter()
            .filter(|r| r.set_aside && r.redundancy > 0.5)
            .filter(|r| doubtful.iter().any(|d| d.number == r.number))
            .filter(|r| r.standardised.abs() < 2.0)
            .min_by(|a, b| a.standardised.abs().total_cmp(&b.standardised.abs()));
        let Some(fits) = fits else { return };
        let mut network = current.network().clone();
        for reading in &mut network.readings {
            if reading.number == fits.number {
                reading.set_aside = false;
            }
        }
        let next = readjust(network, current);
        if ranked(&next)
            .first()
            .is_some_and(|r| r.standardised.abs() > CRITICAL_W)
        {
            return;
        }
        doubtful.retain(|d| d.number != fits.number);
        *current = next;
    }
}

fn explain(found: &mut Doubtful, without: &Adjustment) {
    let Some(reading) = without.network().reading(found.number) else {
        return;
    };
    if let Some(expected) = without.expected(&reading.kind) {
        found.others_say = expected;
    }
    found.explanations = slips::explanations(without, reading, found.others_say);
}

/// An explanation must be this much likelier than the next to be called probable: a place in the car's
/// middle is as far from the left mark as from the right one.
const LIKELIER: f64 = 2.0;

impl Doubtful {
    /// The explanation that is likelier than all else together and clearly likelier than the next.
    fn probable(&self) -> Option<&Explanation> {
        let first = self.explanations.first()?;
        let next = self.explanations.get(1).map_or(0.0, |e| e.probability);
        (first.probability > 0.5 && first.probability > LIKELIER * next).then_some(first)
    }

    /// The value it probably was, in mm or radians, when one slip is likelier than all else together.
    #[must_use]
    pub fn was_probably(&self) -> Option<f64> {
        let first = self.probable()?;
        (!first.keeps_value()).then_some(first.value)
    }

    /// The mark it probably went to instead, when that is likelier than all else together.
    #[must_use]
    pub fn went_to(&self) -> Option<Target> {
        self.probable()?.instead_of()
    }
}
