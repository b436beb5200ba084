//! The order of tacking: from what is fixed, the closing piece named and last.

/// What a part of a run is to the fitter.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum PartKind {
    /// Sawn tube.
    Tube,
    /// A component that is bolted to what is upstream of it.
    Bolted,
    /// A component that is welded in.
    Component,
    /// A component that hangs on the car by itself.
    Hung,
}

/// One part in the order of flow.
#[derive(Clone, Debug, PartialEq)]
pub struct Part {
    /// Marks of the pieces that it is, upstream first.
    pub marks: Vec<String>,
    /// What it is.
    pub kind: PartKind,
    /// Mark of the joint at its upstream end.
    pub joint_upstream: String,
    /// Mark of the joint at its downstream end.
    pub joint_downstream: String,
    /// Length of straight that can still be trimmed, mm: of a straight that is a part of its own its
    /// length, of a bend the longer of its legs, nothing for a component.
    pub straight_mm: f64,
    /// True when it is a straight and nothing else.
    pub is_straight: bool,
    /// True when the item that it is sawn from has steel to spare beyond it, so that it can be left longer: of a
    /// bend at both its ends.
    pub has_room: bool,
    /// The crossover that it is, shared with another run.
    pub crossover: Option<String>,
    /// Marks of the joints inside it, which are welded on the bench before it goes up: hung parts that
    /// meet neck to neck are one assembly.
    pub on_the_bench: Vec<String>,
}

/// A run to be fitted.
#[derive(Clone, Debug, PartialEq)]
pub struct FitRun {
    /// Its name.
    pub name: String,
    /// Parts in the order of flow.
    pub parts: Vec<Part>,
    /// True when it ends at something that stands, not in the open.
    pub ends_fixed: bool,
}

/// Which way tacking goes.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Way {
    /// With the flow.
    Downstream,
    /// Against it, from something that stands.
    Upstream,
}

/// What is done.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Act {
    /// Hung at its place and held by check distances.
    Hang,
    /// Bolted on.
    Bolt,
    /// Tacked to what stands.
    Tack(Way),
    /// Measured between two open ends, cut to fit, tacked at both.
    Close,
}

/// One step.
#[derive(Clone, Debug, PartialEq)]
pub struct Step {
    /// From 1.
    pub number: u32,
    /// Number of the run.
    pub run: usize,
    /// Number of the part in its run.
    pub part: usize,
    /// What is done.
    pub act: Act,
    /// The joint that is made; for [`Act::Close`] the upstream one of two.
    pub makes: String,
    /// The joint at the open end, which the check distances prove; `None` when nothing is left open.
    pub proves: Option<String>,
}

/// The order: each run from its start, which is what is fixed best. Where it comes to something that stands by
/// itself (a hung part, which is hung then and not before; a crossover that another run brought; a fixed end) the
/// stretch is closed by its longest straight, the pieces behind it being tacked from the far side. A run whose tip is free
/// needs no closing piece after the last thing that stands.
#[must_use]
pub fn fit_order(runs: &[FitRun]) -> Vec<Step> {
    let mut steps: Vec<Step> = Vec::new();
    let mut push = |run: usize, part: usize, of: &Part, act: Act| {
        let (makes, proves) = match act {
            Act::Hang => (of.joint_upstream.clone(), Some(of.joint_downstream.clone())),
            Act::Bolt | Act::Tack(Way::Downstream) => {
                (of.joint_upstream.clone(), Some(of.joint_downstream.clone()))
            }
            Act::Tack(Way::Upstream) => {
                (of.joint_downstream.clone(), Some(of.joint_upstream.clone()))
            }
            Act::Close => (of.joint_upstream.clone(), None),
        };
        steps.push(Step {
            number: u32::try_from(steps.len()).map_or(u32::MAX, |n| n.saturating_add(1)),
            run,
            part,
            act,
            makes,
            proves,
        });
    };
    let mut standing: Vec<&str> = Vec::new();
    for (r, run) in runs.iter().enumerate() {
        let stands = |part: &Part| {
            part.kind == PartKind::Hung
                || part
                    .crossover
                    .as_deref()
                    .is_some_and(|name| standing.contains(&name))
        };
        let mut from = 0;
        while from < run.parts.len() {
            let until = run
                .parts
                .iter()
                .enumerate()
                .skip(from)
                .find(|(_, part)| stands(part))
                .map(|(index, _)| index);
            let to = until.unwrap_or(run.parts.len());
            let closes = (until.is_some() || run.ends_fixed)
                .then(|| closing(run.parts.get(from..to).unwrap_or(&[])))
                .flatten()
                .map(|index| index + from);
            for (index, part) in run.parts.iter().enumerate().take(to).skip(from) {
                if closes.is_some_and(|closes| index >= closes) {
                    break;
                }
                push(r, index, part, downstream(part));
            }
            if let Some((index, part)) =
                until.and_then(|index| Some((index, run.parts.get(index)?)))
                && part.kind == PartKind::Hung
            {
                push(r, index, part, Act::Hang);
            }
            if let Some(closes) = closes {
                for (index, part) in run.parts.iter().enumerate().take(to).skip(closes + 1).rev() {
                    push(r, index, part, Act::Tack(Way::Upstream));
                }
                if let Some(part) = run.parts.get(closes) {
                    push(r, closes, part, Act::Close);
                }
            }
            from = to + 1;
        }
        standing.extend(
            run.parts
                .iter()
                .filter_map(|part| part.crossover.as_deref()),
        );
    }
    steps
}

const fn downstream(part: &Part) -> Act {
    match part.kind {
        PartKind::Bolted => Act::Bolt,
        _ => Act::Tack(Way::Downstream),
    }
}

/// The part that closes a stretch. Best is a straight of its own that can be left longer, then a bend
/// that can be on both its legs, then a straight, then a bend; of the like the one with the longest
/// straight or leg. Without any tube nothing can be cut to fit.
fn closing(parts: &[Part]) -> Option<usize> {
    let rank = |part: &Part| match (part.is_straight, part.has_room) {
        (true, true) => 3,
        (false, true) => 2,
        (true, false) => 1,
        (false, false) => 0,
    };
    parts
        .iter()
        .enumerate()
        .filter(|(_, part)| part.kind == PartKind::Tube)
        .max_by(|(_, a), (_, b)| {
            rank(a)
                .cmp(&rank(b))
                .then(a.straight_mm.total_cmp(&b.straight_mm))
        })
        .map(|(index, _)| index)
}
