//! From the columns taken to the plan.

use super::columns::{Column, Decision, Model};
use super::integer::Integers;
use super::problem::CuttingProblem;
use super::solve::{CutUse, CuttingSolution, FillUse, Proof};

/// A plan in terms of these columns, for a search to begin with.
pub(crate) fn start_values(model: &Model, columns: &[&Column], plan: &CuttingSolution) -> Vec<i64> {
    let bought = |wanted: (usize, usize)| {
        let mut packs = plan.packs.iter();
        packs
            .find(|(purchase, tier, _)| (*purchase, *tier) == wanted)
            .map_or(0, |(.., count)| *count)
    };
    let missing = |list: &[(usize, u32)], wanted: usize| {
        list.iter()
            .find(|(index, _)| *index == wanted)
            .map_or(0, |(_, count)| *count)
    };
    let value = |decision: &Decision| match decision {
        Decision::Cut(pattern) => {
            let mut cuts = plan.cuts.iter();
            cuts.find(|cut| cut.pattern == *pattern)
                .map_or(0, |cut| cut.count)
        }
        Decision::Fill { class, fill } => {
            let parts = model
                .legs
                .fills
                .get(*class)
                .and_then(|fills| fills.get(*fill));
            let is_it = |used: &&FillUse| used.class == *class && Some(&used.parts) == parts;
            plan.fills.iter().find(is_it).map_or(0, |used| used.count)
        }
        Decision::Buy { purchase, tier } => bought((*purchase, *tier)),
        Decision::TakeTier { purchase, tier } => bought((*purchase, *tier)).min(1),
        Decision::Choose(choice) => u32::from(plan.chosen.contains(choice)),
        Decision::Miss(part) => missing(&plan.missing, *part),
        Decision::MissSpare(bin) => missing(&plan.missing_spares, *bin),
    };
    columns
        .iter()
        .map(|column| i64::from(value(&column.decision)))
        .collect()
}

/// The plan that these columns are, as yet without bound or proof, and what it costs less than they do, because
/// all that is bought of one purchase has one price.
pub(crate) fn solution(
    problem: &CuttingProblem,
    model: &Model,
    columns: &[Column],
    integers: &Integers,
) -> (CuttingSolution, i64) {
    let mut out = CuttingSolution {
        cuts: Vec::new(),
        fills: Vec::new(),
        packs: Vec::new(),
        chosen: Vec::new(),
        missing: Vec::new(),
        missing_spares: Vec::new(),
        cost: 0,
        relaxation: f64::NEG_INFINITY,
        proof: Proof::NotBelow(0),
    };
    for (column, count) in columns.iter().zip(&integers.counts) {
        let Ok(count @ 1..) = u32::try_from(*count) else {
            continue;
        };
        let mut is_paid = true;
        match &column.decision {
            Decision::Cut(pattern) => out.cuts.push(CutUse {
                pattern: pattern.clone(),
                count,
                leg_classes: model.leg_classes(problem, pattern),
            }),
            Decision::Fill { class, fill } => {
                let parts = model
                    .legs
                    .fills
                    .get(*class)
                    .and_then(|fills| fills.get(*fill));
                out.fills.push(FillUse {
                    parts: parts.cloned().unwrap_or_default(),
                    count,
                    class: *class,
                });
            }
            Decision::Buy { purchase, tier } => out.packs.push((*purchase, *tier, count)),
            Decision::TakeTier { .. } => {}
            Decision::Choose(choice) => out.chosen.push(*choice),
            Decision::Miss(part) => {
                out.missing.push((*part, count));
                is_paid = false;
            }
            Decision::MissSpare(bin) => {
                out.missing_spares.push((*bin, count));
                is_paid = false;
            }
        }
        if is_paid {
            out.cost += column.cost.round() as i64 * i64::from(count);
        }
    }
    add_plain_purchases(model, &mut out);
    let before = out.cost;
    join_tiers(problem, &mut out);
    let saved = before - out.cost;
    out.cuts.sort_by(|a, b| a.pattern.cmp(&b.pattern));
    (out, saved)
}

/// Bins with one price are bought as they are cut.
fn add_plain_purchases(model: &Model, out: &mut CuttingSolution) {
    for cut in &out.cuts {
        let Some(plain) = model.plain(cut.pattern.bin) else {
            continue;
        };
        match out
            .packs
            .iter_mut()
            .find(|(purchase, ..)| *purchase == plain.purchase)
        {
            Some((_, _, count)) => *count += cut.count,
            None => out.packs.push((plain.purchase, plain.tier, cut.count)),
        }
    }
    out.packs.sort_unstable();
}

/// What is bought of one purchase is bought at the lowest price that its quantity has; the cost falls with it.
fn join_tiers(problem: &CuttingProblem, out: &mut CuttingSolution) {
    let mut joined: Vec<(usize, usize, u32)> = Vec::with_capacity(out.packs.len());
    for (purchase, tier, packs) in core::mem::take(&mut out.packs) {
        match joined.last_mut() {
            Some((last, _, sum)) if *last == purchase => *sum += packs,
            _ => {
                joined.push((purchase, tier, packs));
                continue;
            }
        }
        let Some((_, lower, sum)) = joined.last_mut() else {
            continue;
        };
        let bought = &problem.purchases[purchase];
        let pack = i64::from(bought.pack);
        let paid = |tier: usize, packs: u32| bought.tiers[tier].each * pack * i64::from(packs);
        out.cost -= paid(*lower, *sum - packs) + paid(tier, packs);
        *lower = (*lower).max(tier);
        out.cost += paid(*lower, *sum);
    }
    out.packs = joined;
}
