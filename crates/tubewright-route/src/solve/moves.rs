//! Changes of a layout that may save money: a straight left out, a bend brought to a stock angle, a
//! bend left out or put in, a component moved past a bend.

use super::layout::{Joint, Layout, Slot, bend_range};
use crate::cost::CostModel;
use crate::problem::{RouteProblem, Tube};

/// A layout with sizes to start from.
#[derive(Clone, Debug)]
pub(crate) struct Variant {
    pub(crate) layout: Layout,
    pub(crate) x: Vec<f64>,
}

/// One elementary change.
#[derive(Clone, Copy, Debug, PartialEq)]
enum Change {
    Slot(usize, Slot),
    Bend(usize, usize, bool),
}

fn size(x: &[f64], i: usize) -> f64 {
    x.get(i).copied().unwrap_or(0.0)
}

fn set(x: &mut [f64], i: usize, value: f64) {
    if let Some(slot) = x.get_mut(i) {
        *slot = value;
    }
}

impl Variant {
    fn apply(&mut self, problem: &RouteProblem, tube: &Tube, change: Change) {
        match change {
            Change::Slot(i, slot) => {
                let at = 3 * i;
                let now = size(&self.x, at);
                set(
                    &mut self.x,
                    at,
                    match slot {
                        Slot::Absent => 0.0,
                        Slot::Leg => now,
                        Slot::Bought => now.max(problem.rules.min_straight_mm),
                    },
                );
                if let Some(s) = self.layout.slots.get_mut(i) {
                    *s = slot;
                }
            }
            Change::Bend(i, stock, exact) => {
                let (lo, hi) = bend_range(problem, tube, stock, exact);
                let now = size(&self.x, 3 * i + 1);
                set(&mut self.x, 3 * i + 1, now.clamp(lo, hi));
                if let Some(j) = self.layout.joints.get_mut(i) {
                    *j = Joint::Bend { stock, exact };
                }
            }
        }
    }
}

/// Everything one or two elementary changes away, and bends left out or put in, components moved.
/// Variants that cannot close for want of free sizes, with `loose` that the chain's own ends have, are left
/// out.
pub(crate) fn neighbours(
    problem: &RouteProblem,
    tube: &Tube,
    cost: &CostModel,
    from: &Variant,
    loose: usize,
) -> Vec<Variant> {
    let mut tighter = Vec::new();
    let mut looser = Vec::new();
    for (i, slot) in from.layout.slots.iter().enumerate() {
        let legs = from.layout.has_legs(i, tube, cost);
        match slot {
            Slot::Absent => {
                looser.push(Change::Slot(i, Slot::Bought));
                if legs {
                    looser.push(Change::Slot(i, Slot::Leg));
                }
            }
            Slot::Leg => {
                tighter.push(Change::Slot(i, Slot::Absent));
                looser.push(Change::Slot(i, Slot::Bought));
            }
            Slot::Bought => {
                tighter.push(Change::Slot(i, Slot::Absent));
                if legs {
                    tighter.push(Change::Slot(i, Slot::Leg));
                }
            }
        }
    }
    for (i, joint) in from.layout.joints.iter().enumerate() {
        let Joint::Bend { stock, exact } = *joint else {
            continue;
        };
        if exact {
            looser.push(Change::Bend(i, stock, false));
            if stock + 1 < tube.stock.len() {
                looser.push(Change::Bend(i, stock + 1, false));
                tighter.push(Change::Bend(i, stock + 1, true));
            }
            if stock > 0 {
                tighter.push(Change::Bend(i, stock - 1, true));
            }
        } else {
            tighter.push(Change::Bend(i, stock, true));
            if stock > 0 {
                tighter.push(Change::Bend(i, stock - 1, true));
                looser.push(Change::Bend(i, stock - 1, false));
            }
            if stock + 1 < tube.stock.len() {
                looser.push(Change::Bend(i, stock + 1, false));
            }
        }
    }
    let mut out = Vec::new();
    let mut push = |changes: &[Change]| {
        let mut variant = from.clone();
        for change in changes {
            variant.apply(problem, tube, *change);
        }
        out.push(variant);
    };
    for (k, a) in tighter.iter().enumerate() {
        push(&[*a]);
        for b in tighter.iter().skip(k + 1) {
            if touches(a) != touches(b) {
                push(&[*a, *b]);
            }
        }
        for b in &looser {
            if touches(a) != touches(b) {
                push(&[*a, *b]);
            }
        }
    }
    for a in &looser {
        push(&[*a]);
    }
    out.extend(without_a_bend(problem, tube, from));
    out.extend(with_a_bend(problem, from));
    out.extend(with_a_component_moved(problem, from));
    out.retain(|v| {
        let ranges = v.layout.ranges(problem, tube, cost);
        ranges.iter().filter(|r| r.is_free()).count() + loose >= 5
    });
    out
}

fn touches(change: &Change) -> (bool, usize) {
    match *change {
        Change::Slot(i, _) => (true, i),
        Change::Bend(i, ..) => (false, i),
    }
}

/// Bends left out one by one; the straights round it become one.
pub(super) fn without_a_bend(problem: &RouteProblem, tube: &Tube, from: &Variant) -> Vec<Variant> {
    let mut out = Vec::new();
    for (i, joint) in from.layout.joints.iter().enumerate() {
        if !matches!(joint, Joint::Bend { .. }) {
            continue;
        }
        let mut v = from.clone();
        v.layout.joints.remove(i);
        v.layout.slots.remove(i);
        let merged =
            size(&v.x, 3 * i) + size(&v.x, 3 * i + 3) + tube.clr_mm * size(&v.x, 3 * i + 1);
        // The plane of the next bend was relative to this one's.
        let clock = size(&v.x, 3 * i + 2);
        v.x.drain(3 * i..3 * i + 3);
        set(&mut v.x, 3 * i, merged.max(problem.rules.min_straight_mm));
        if let Some(s) = v.layout.slots.get_mut(i) {
            *s = Slot::Bought;
        }
        if let Some(next) = v
            .layout
            .joints
            .iter()
            .enumerate()
            .skip(i)
            .find_map(|(k, j)| matches!(j, Joint::Bend { .. }).then_some(k))
        {
            let at = 3 * next + 2;
            let now = size(&v.x, at);
            set(&mut v.x, at, now + clock);
        }
        let mut bare = v.clone();
        if let Some(s) = bare.layout.slots.get_mut(i) {
            *s = Slot::Absent;
        }
        set(&mut bare.x, 3 * i, 0.0);
        out.push(v);
        out.push(bare);
    }
    out
}

/// A small bend put into each slot, at four clock positions, with and without straights round it.
fn with_a_bend(problem: &RouteProblem, from: &Variant) -> Vec<Variant> {
    let mut out = Vec::new();
    if from.layout.bends() >= problem.rules.max_bends {
        return out;
    }
    for (i, slot) in from.layout.slots.iter().enumerate() {
        for quarter in 0..4 {
            let clock = f64::from(quarter) * core::f64::consts::FRAC_PI_2;
            let mut v = from.clone();
            let length = size(&v.x, 3 * i);
            v.layout.joints.insert(
                i,
                Joint::Bend {
                    stock: 0,
                    exact: false,
                },
            );
            let angle = problem.rules.min_bend_rad * 1.2;
            v.x.splice(3 * i..3 * i, [0.0, angle, clock]);
            if *slot == Slot::Bought && length > 2.5 * problem.rules.min_straight_mm {
                for (first, second) in [
                    (Slot::Bought, Slot::Absent),
                    (Slot::Absent, Slot::Bought),
                    (Slot::Bought, Slot::Bought),
                ] {
                    let mut w = v.clone();
                    let share = match (first, second) {
                        (Slot::Bought, Slot::Bought) => 0.5,
                        (Slot::Bought, _) => 1.0,
                        _ => 0.0,
                    };
                    set(&mut w.x, 3 * i, length * share);
                    set(&mut w.x, 3 * i + 3, length * (1.0 - share));
                    if let Some(s) = w.layout.slots.get_mut(i) {
                        *s = second;
                    }
                    w.layout.slots.insert(i, first);
                    correct_next_clock(&mut w, i, clock);
                    out.push(w);
                }
            } else {
                v.layout.slots.insert(i, Slot::Absent);
                correct_next_clock(&mut v, i, clock);
                out.push(v);
            }
        }
    }
    out
}

fn correct_next_clock(v: &mut Variant, inserted: usize, clock: f64) {
    let next = v
        .layout
        .joints
        .iter()
        .enumerate()
        .skip(inserted + 1)
        .find_map(|(k, j)| matches!(j, Joint::Bend { .. }).then_some(k));
    if let Some(k) = next {
        let at = 3 * k + 2;
        let now = size(&v.x, at);
        set(&mut v.x, at, now - clock);
    }
}

/// A component changed with the bend beside it.
fn with_a_component_moved(problem: &RouteProblem, from: &Variant) -> Vec<Variant> {
    let mut out = Vec::new();
    for i in 0..from.layout.joints.len().saturating_sub(1) {
        let (Some(a), Some(b)) = (
            from.layout.joints.get(i).copied(),
            from.layout.joints.get(i + 1).copied(),
        ) else {
            continue;
        };
        let is_component = |j: Joint| matches!(j, Joint::Component(_));
        if is_component(a) == is_component(b) {
            continue;
        }
        let mut v = from.clone();
        v.layout.joints.swap(i, i + 1);
        let sizes = [1, 2].map(|k| (size(&v.x, 3 * i + k), size(&v.x, 3 * i + 3 + k)));
        for (k, (first, second)) in [1, 2].into_iter().zip(sizes) {
            set(&mut v.x, 3 * i + k, second);
            set(&mut v.x, 3 * i + 3 + k, first);
        }
        out.push(v.clone());
        // With the slots round the pair opened, so that there is room to move.
        for s in i..=i + 2 {
            if let Some(slot) = v.layout.slots.get_mut(s)
                && *slot == Slot::Absent
            {
                let mut w = v.clone();
                if let Some(slot) = w.layout.slots.get_mut(s) {
                    *slot = Slot::Bought;
                }
                set(&mut w.x, 3 * s, problem.rules.min_straight_mm);
                out.push(w);
            }
        }
    }
    out
}
