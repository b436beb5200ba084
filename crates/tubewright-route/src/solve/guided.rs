//! Starts from where the bound points to: the polygons of least bound, each mended and improved. What
//! random starts have missed is found here, or shown not to be there.

use std::collections::BTreeSet;

use super::bound::Guide;
use super::descend::Effort;
use super::improve::{Meter, Scope, Solution, improve, mend, replaced};
use super::layout::{Joint, Slot};
use super::moves::Variant;
use super::polyline::{Ends, Placed, Polyline};
use super::system::{Context, System, tube_of};

/// Most ways of laying the straights of one guide.
const MOST_WAYS: usize = 8;

/// Follows a guide for one run of the best solution so far; a cheaper solution, where there is one.
pub(crate) fn follow(
    ctx: &Context<'_>,
    best: &Solution,
    run: usize,
    guide: &Guide,
    meter: &mut Meter<'_>,
) -> Option<Solution> {
    let chain = best.chains.iter().position(|c| c.run == run)?;
    let ends = {
        let system = System::new(ctx, best.chains.clone());
        let poses = system.poses(&best.x);
        let chain = best.chains.get(chain)?;
        let (end, end_direction) = chain.target.at(&ctx.slides, &poses);
        Ends {
            start: chain.start.at(&ctx.slides, &poses),
            end,
            end_direction,
        }
    };
    let mut found: Option<Solution> = None;
    for way in ways(guide) {
        if meter.is_over() {
            break;
        }
        let Some(variant) = laid(ctx, (run, ends), guide, &way) else {
            continue;
        };
        let (chains, x) = replaced(best, chain, variant);
        let effort = Effort {
            steps: 40,
            pull: 0.1,
        };
        let (solution, landing) = mend(ctx, chains, &x, effort);
        meter.spent += landing.work * best.chains.len() as u64;
        if let Some(s) = solution
            && s.cost < found.as_ref().map_or(best.cost, |f| f.cost)
        {
            found = Some(s);
        }
    }
    let scope = Scope::Together;
    found.map(|s| improve(ctx, s, scope, &mut BTreeSet::new(), meter, |_, _, _| {}))
}

/// For each side with straight tube, the slot that it is in: before, between or behind its
/// components.
fn ways(guide: &Guide) -> Vec<Vec<Option<usize>>> {
    let mut out: Vec<Vec<Option<usize>>> = vec![Vec::new()];
    for (load, &has_straight) in guide.loads.iter().zip(&guide.has_straight) {
        let slots: Vec<Option<usize>> = if has_straight {
            (0..=load.len()).map(Some).collect()
        } else {
            vec![None]
        };
        out = out
            .iter()
            .flat_map(|way| {
                slots.iter().map(|slot| {
                    let mut all = way.clone();
                    all.push(*slot);
                    all
                })
            })
            .collect();
    }
    out.truncate(MOST_WAYS);
    out
}

fn laid(
    ctx: &Context<'_>,
    (run, ends): (usize, Ends),
    guide: &Guide,
    way: &[Option<usize>],
) -> Option<Variant> {
    let tube = tube_of(ctx.problem, run)?;
    let mut line = Polyline {
        corners: guide.corners.clone(),
        placed: Vec::new(),
    };
    let sharpest = core::f64::consts::PI * 0.6;
    let bare = line.fit(ctx.problem, &ends, tube.clr_mm, sharpest)?;
    // Each side's length beyond its components goes into the slot that the way says.
    let mut slots = Vec::new();
    for (side, load) in guide.loads.iter().enumerate() {
        let lengths: Vec<f64> = load
            .iter()
            .filter_map(|c| ctx.problem.components.get(*c))
            .map(|c| c.length_mm)
            .collect();
        let whole = bare.slots.get(side).copied()?;
        let back = side
            .checked_sub(1)
            .and_then(|k| bare.angles.get(k))
            .map_or(0.0, |a| {
                tube.clr_mm * tubewright_geometry::math::tan(a / 2.0)
            });
        let straight = (whole - lengths.iter().sum::<f64>()).max(0.0);
        let mut at = back;
        for (k, (component, length)) in load.iter().zip(&lengths).enumerate() {
            let has = way.get(side).copied()? == Some(k);
            at += if has { straight } else { 0.0 };
            line.placed.push(Placed {
                component: *component,
                side,
                from: at,
            });
            at += length;
            slots.push(has);
        }
        slots.push(way.get(side).copied()? == Some(load.len()));
    }
    let fit = line.fit(ctx.problem, &ends, tube.clr_mm, sharpest)?;
    let (mut layout, mut x) = line.to_chain(ctx.problem, tube, ctx.cost, &ends, &fit)?;
    let mut bends = guide.bends.iter();
    for joint in &mut layout.joints {
        if let Joint::Bend { stock, exact } = joint {
            (*stock, *exact) = *bends.next()?;
        }
    }
    for (k, has) in slots.into_iter().enumerate() {
        let length = x.get(3 * k).copied()?;
        let slot = match (has, layout.has_legs(k, tube, ctx.cost)) {
            (false, _) => Slot::Absent,
            (true, true) => layout.slot_for(k, length, ctx.problem, tube, ctx.cost),
            (true, false) => Slot::Bought,
        };
        *layout.slots.get_mut(k)? = slot;
        if slot == Slot::Absent {
            *x.get_mut(3 * k)? = 0.0;
        }
    }
    Some(Variant { layout, x })
}

/// All that the bound points to, followed with what effort is left; the bound, and what was found.
pub(crate) fn bound_and_follow(
    ctx: &Context<'_>,
    best: &Solution,
    boxes: usize,
    meter: &mut Meter<'_>,
    better: &mut dyn FnMut(&Solution, u64, bool),
) -> (f64, Vec<Solution>) {
    let mut now = best.clone();
    let mut found = Vec::new();
    let bound = super::bound::refined(ctx, best.cost, boxes, &mut |run, guide| {
        let cheaper = follow(ctx, &now, run, guide, meter)?;
        now = cheaper;
        better(&now, meter.spent, true);
        found.push(now.clone());
        Some(now.cost)
    });
    (bound, found)
}
