//! From pieces to the parts that are really tacked: a bend with the straights that its legs serve is
//! one part and has no weld inside; a straight that two legs share is welded in its middle.

use tubewright_build::model::{CarrierKind, CarrierRef, ComponentKind, Model};
use tubewright_build::quantity::Currency;
use tubewright_fit::order::{Act, FitRun, Part, PartKind, Step, Way, fit_order};
use tubewright_geometry::{CentreLine, Frame, Length, TubeElement};
use tubewright_stock::{CutPart, PartPlace, StockPlan};

use super::closing::ends_at_something;
use super::fastening::Fastening;
use crate::routes::{PlannedKind, PlannedPiece, PlannedRun, component_kind, in_turn};

/// The part of the plan that is the bend of this mark.
fn bend_part<'a>(plan: &'a StockPlan, mark: &str) -> Option<&'a CutPart> {
    plan.cuts.iter().flat_map(|cut| &cut.parts).find(|part| {
        matches!(part.place, PartPlace::Arc { .. })
            && part
                .serves
                .iter()
                .any(|serves| serves.mark == mark && serves.length.mm() < 1e-9)
    })
}

/// What a bend's part gives of the straight of this mark, mm.
fn share_mm(plan: &StockPlan, bend: Option<&PlannedPiece>, straight: &str) -> f64 {
    bend.filter(|piece| matches!(piece.kind, PlannedKind::Bend { .. }))
        .and_then(|piece| bend_part(plan, &piece.mark))
        .and_then(|part| {
            part.serves
                .iter()
                .find(|serves| serves.mark == straight)
                .map(|serves| serves.length.mm())
        })
        .unwrap_or(0.0)
}

/// The runs with every straight that two legs share split where its weld is. The weld has the mark of
/// the joint upstream of the straight, which is no weld then; the split straights share their mark. Joints
/// at which a bend is tacked against the flow have its line for their twelve o'clock.
#[must_use]
pub fn split_at_welds(model: &Model, runs: &[PlannedRun], plan: &StockPlan) -> Vec<PlannedRun> {
    let mut split: Vec<PlannedRun> = runs.iter().map(|run| split_run(run, plan)).collect();
    let FitOrder { parts, steps } = FitOrder::of(model, &split, plan);
    for step in steps {
        let against = step.act == Act::Tack(Way::Upstream);
        let part = parts
            .get(step.run)
            .and_then(|(fit, groups)| Some((fit.parts.get(step.part)?, groups.get(step.part)?)));
        let (Some((part, pieces)), Some(run), true) = (part, split.get_mut(step.run), against)
        else {
            continue;
        };
        let mut own = run.pieces.iter().take(pieces.to).skip(pieces.from);
        if own.any(|piece| matches!(piece.kind, PlannedKind::Bend { .. })) {
            run.lined_from_behind.insert(part.joint_upstream.clone());
        }
    }
    split
}

/// The parts of split runs, with their pieces, and the order in which they are tacked.
pub(super) struct FitOrder {
    /// By run.
    pub(super) parts: Vec<(FitRun, Vec<PartPieces>)>,
    /// In the order of tacking; numbers of runs and parts are those of `parts`.
    pub(super) steps: Vec<Step>,
}

impl FitOrder {
    pub(super) fn of(model: &Model, split: &[PlannedRun], plan: &StockPlan) -> Self {
        let parts: Vec<_> = split.iter().map(|run| fit_run(model, run, plan)).collect();
        let turn = in_turn(&split.iter().collect::<Vec<_>>());
        let fit_runs: Vec<FitRun> = turn
            .iter()
            .filter_map(|number| Some(parts.get(*number)?.0.clone()))
            .collect();
        let mut steps = fit_order(&fit_runs);
        for step in &mut steps {
            step.run = turn.get(step.run).copied().unwrap_or(step.run);
        }
        Self { parts, steps }
    }
}

pub(crate) fn split_run(run: &PlannedRun, plan: &StockPlan) -> PlannedRun {
    let mut out = run.clone();
    out.pieces.clear();
    for (index, piece) in run.pieces.iter().enumerate() {
        let before = index.checked_sub(1).and_then(|i| run.pieces.get(i));
        let after = run.pieces.get(index + 1);
        let (a, b) = (
            share_mm(plan, before, &piece.mark),
            share_mm(plan, after, &piece.mark),
        );
        match piece.kind {
            PlannedKind::Straight { length_mm } if a > 0.0 && b > 0.0 => {
                let first = length_mm * a / (a + b);
                let middle = piece.frame_in.advanced(first);
                let half = |frame: &Frame, length_mm: f64, joint: String| PlannedPiece {
                    mark: piece.mark.clone(),
                    joint,
                    kind: PlannedKind::Straight { length_mm },
                    frame_in: *frame,
                    frame_out: frame.advanced(length_mm),
                    elements: vec![TubeElement {
                        line: CentreLine::straight(frame, length_mm),
                        radius: 0.5 * run.od_mm,
                    }],
                    uncovered_mm: piece.uncovered_mm,
                };
                out.pieces.push(half(&piece.frame_in, first, String::new()));
                out.pieces
                    .push(half(&middle, length_mm - first, piece.joint.clone()));
            }
            _ => out.pieces.push(piece.clone()),
        }
    }
    out
}

/// The runs with split straights whole again.
#[must_use]
pub fn joined(runs: &[PlannedRun]) -> Vec<PlannedRun> {
    runs.iter()
        .map(|run| {
            let mut out = run.clone();
            out.pieces.clear();
            out.lined_from_behind.clear();
            for piece in &run.pieces {
                let same = out.pieces.last_mut().filter(|last| last.mark == piece.mark);
                match (same, &piece.kind) {
                    (Some(last), PlannedKind::Straight { length_mm: more }) => {
                        if let PlannedKind::Straight { length_mm } = &mut last.kind {
                            *length_mm += more;
                        }
                        last.joint.clone_from(&piece.joint);
                        last.frame_out = piece.frame_out;
                        last.elements.extend(piece.elements.iter().cloned());
                    }
                    _ => out.pieces.push(piece.clone()),
                }
            }
            out
        })
        .collect()
}

/// A part with the pieces of the split run that it is: numbers `from..to`.
#[derive(Clone, Debug, PartialEq)]
pub struct PartPieces {
    /// First piece.
    pub from: usize,
    /// One past the last.
    pub to: usize,
}

/// The parts of a split run in the order of flow, for the fitter, each with its pieces.
#[must_use]
pub fn fit_run(model: &Model, run: &PlannedRun, plan: &StockPlan) -> (FitRun, Vec<PartPieces>) {
    let groups = hung_together(model, run, groups(run, plan));
    let parts = groups
        .iter()
        .map(|group| part_of(model, run, plan, group))
        .collect();
    (
        FitRun {
            name: run.name.clone(),
            parts,
            ends_fixed: ends_at_something(model, run),
        },
        groups,
    )
}

fn groups(run: &PlannedRun, plan: &StockPlan) -> Vec<PartPieces> {
    let mut groups: Vec<PartPieces> = Vec::new();
    for (index, piece) in run.pieces.iter().enumerate() {
        let before = index.checked_sub(1).and_then(|i| run.pieces.get(i));
        let is_straight = |piece: &PlannedPiece| matches!(piece.kind, PlannedKind::Straight { .. });
        // The second half of a split straight starts a part of its own, the first belongs to the bend
        // before it.
        let is_half = before.is_some_and(|before| before.mark == piece.mark);
        let joins = match before {
            Some(before) if !is_half => {
                let on_leg_before =
                    is_straight(piece) && share_mm(plan, Some(before), &piece.mark) > 0.0;
                let on_leg_after =
                    is_straight(before) && share_mm(plan, Some(piece), &before.mark) > 0.0;
                // A shared straight that was split: its second half is with the bend behind it.
                on_leg_before || on_leg_after
            }
            _ => false,
        };
        match groups.last_mut() {
            Some(group) if joins => group.to = index + 1,
            _ => groups.push(PartPieces {
                from: index,
                to: index + 1,
            }),
        }
    }
    groups
}

/// Hung parts that meet neck to neck, with no tube between them to cut, go up as one.
fn hung_together(model: &Model, run: &PlannedRun, groups: Vec<PartPieces>) -> Vec<PartPieces> {
    let is_hung = |group: &PartPieces| {
        run.pieces
            .iter()
            .take(group.to)
            .skip(group.from)
            .any(|piece| match &piece.kind {
                PlannedKind::Component { name, .. } => {
                    component_part(model, name) == PartKind::Hung
                }
                _ => false,
            })
    };
    let mut out: Vec<PartPieces> = Vec::with_capacity(groups.len());
    for group in groups {
        match out.last_mut() {
            Some(last) if is_hung(last) && is_hung(&group) => last.to = group.to,
            _ => out.push(group),
        }
    }
    out
}

/// What a part that closes can be left longer by, so that it counts as having room: twice what the trims of
/// usual stretches are, mm (common practice, no source).
const ROOM_TO_CLOSE_MM: f64 = 15.0;

/// Whether a part of the plan that is these pieces has steel beyond it to be left longer: a straight at either
/// end, a bend at both.
fn has_room(model: &Model, plan: &StockPlan, marks: &[String]) -> bool {
    let currency = model.stock.currency.unwrap_or(Currency::NONE);
    let kerf = model.stock.practice.resolved(currency).kerf;
    part_and_room(plan, marks, kerf).is_some_and(|(part, room)| {
        let [a, b] = room.map(Length::mm);
        match part.place {
            PartPlace::Arc { .. } => a.min(b) >= ROOM_TO_CLOSE_MM,
            PartPlace::Bar { .. } | PartPlace::Leg { .. } => a.max(b) >= ROOM_TO_CLOSE_MM,
        }
    })
}

/// The part of the plan with these marks, and the steel beyond it toward ends A and B of its item.
pub(super) fn part_and_room<'a>(
    plan: &'a StockPlan,
    marks: &[String],
    kerf: Length,
) -> Option<(&'a CutPart, [Length; 2])> {
    plan.cuts.iter().find_map(|cut| {
        let part = cut.parts.iter().find(|part| is_of(part, marks))?;
        Some((part, cut.room_beyond(part, kerf)))
    })
}

/// Whether a part of the plan is the one with these marks, in the order of flow.
pub(crate) fn is_of(part: &CutPart, marks: &[String]) -> bool {
    let serves = part.serves.iter().map(|serves| serves.mark.as_str());
    serves.eq(marks.iter().map(String::as_str))
}

fn part_of(model: &Model, run: &PlannedRun, plan: &StockPlan, group: &PartPieces) -> Part {
    let pieces = || run.pieces.iter().take(group.to).skip(group.from);
    let mut marks: Vec<String> = pieces().map(|piece| piece.mark.clone()).collect();
    marks.dedup();
    let kind = pieces()
        .find_map(|piece| match &piece.kind {
            PlannedKind::Component { name, .. } => Some(component_part(model, name)),
            PlannedKind::Crossover { name, .. } => Some(match component_part(model, name) {
                PartKind::Hung => PartKind::Hung,
                _ => PartKind::Component,
            }),
            _ => None,
        })
        .map(|kind| match kind {
            // Elsewhere than at a start that is held by bolts or a clamp it is welded in.
            PartKind::Bolted if group.from > 0 || Fastening::at_start(model, run).is_none() => {
                PartKind::Component
            }
            kind => kind,
        })
        .unwrap_or(PartKind::Tube);
    let straight_mm = pieces()
        .filter_map(|piece| match piece.kind {
            PlannedKind::Straight { length_mm } => Some(length_mm),
            _ => None,
        })
        .fold(0.0, f64::max);
    let joint_upstream = pieces()
        .next()
        .map_or_else(String::new, |piece| piece.joint.clone());
    let joint_downstream = run
        .pieces
        .get(group.to)
        .map_or(&run.last_joint, |next| &next.joint)
        .clone();
    Part {
        has_room: kind == PartKind::Tube && has_room(model, plan, &marks),
        marks,
        kind,
        joint_upstream,
        joint_downstream,
        straight_mm: if kind == PartKind::Tube {
            straight_mm
        } else {
            0.0
        },
        is_straight: pieces().all(|piece| matches!(piece.kind, PlannedKind::Straight { .. })),
        on_the_bench: pieces()
            .skip(1)
            .filter(|piece| matches!(piece.kind, PlannedKind::Component { .. }))
            .map(|piece| piece.joint.clone())
            .filter(|joint| kind == PartKind::Hung && !joint.is_empty())
            .collect(),
        crossover: pieces().find_map(|piece| match &piece.kind {
            PlannedKind::Crossover { name, .. } => Some(name.clone()),
            _ => None,
        }),
    }
}

fn component_part(model: &Model, name: &str) -> PartKind {
    let is_hung = model
        .build
        .component(name)
        .and_then(|component| match &component.carrier {
            Some(CarrierRef::Carrier(carrier)) => model.build.carrier(carrier),
            _ => None,
        })
        .is_some_and(|carrier| matches!(carrier.kind, CarrierKind::Hung { .. }));
    // What stands already is held by nothing that is tacked, as what hangs.
    if is_hung || component_kind(model, name) == Some(ComponentKind::Stretch) {
        PartKind::Hung
    } else if component_kind(model, name) == Some(ComponentKind::Flex) {
        PartKind::Bolted
    } else {
        PartKind::Component
    }
}
