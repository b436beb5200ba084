//! The fit sheet: the steps in order, what the tape must say after each, and how far it may be off.

use tubewright_build::model::{CarrierKind, CarrierRef, ComponentKind, Model};
use tubewright_fit::budget::{Budget, Tacked};
use tubewright_fit::check::{
    InTheWay, Mark, NearPlace, Taping, budget_checked, choose, possible_distances, tolerance,
};
use tubewright_fit::order::{Act, Part, PartKind, Step, Way};
use tubewright_fit::{NINETEEN_IN_TWENTY, PoseSpread};
use tubewright_geometry::{Frame, Solid, TubeElement, UnitVector, distance};
use tubewright_stock::StockPlan;

use super::fastening::Fastening;
use super::joint_check::JointCheck;
use super::joints::{Joint, joints_of};
use super::loose::{LOOSEST_MM, LooseWay};
use super::new_mark::one_more;
use super::parts::{FitOrder, PartPieces, part_and_room, split_at_welds};
use super::pose::workmanship;
use super::trim::Trim;
use crate::places::PlacedEnd;
use crate::routes::{PlannedKind, PlannedRun, component_kind};
use crate::stages::Surroundings;

/// Fewest check distances at a joint.
pub const LEAST_CHECKS: usize = 3;

/// Most: more are not taped (common practice, no source).
const MOST_CHECKS: usize = 6;

/// A place nearer to a body than this is looked at for the tolerance, mm.
const NEAR_MM: f64 = 80.0;

/// A hung part set by eye lies within this of its place (σ; common practice, no source).
const HUNG_SIGMA_MM: f64 = 5.0;
const HUNG_SIGMA_DEG: f64 = 2.0;

/// One step with its checks.
#[derive(Clone, Debug, PartialEq)]
pub struct FitStep {
    /// Step in the order.
    pub step: Step,
    /// Name of the run.
    pub run: String,
    /// Marks of the pieces.
    pub marks: Vec<String>,
    /// Kind of the part.
    pub kind: PartKind,
    /// Whether it stands in the car already, a stretch that stays: it is looked at and not put up.
    pub is_there: bool,
    /// Joints inside the part that are welded on the bench before it goes up.
    pub on_the_bench: Vec<String>,
    /// Checks after the step: none for a closing piece, two for a hung part.
    pub checks: Vec<JointCheck>,
    /// How the joint that it makes is held, where that is where the run meets the car and no weld.
    pub held: Option<Fastening>,
    /// For a closing piece: how much longer it is left until the gap is measured.
    pub trim: Option<Trim>,
}

impl FitStep {
    /// What is done to put the part on where it is not hung nor closes: `bolt`, `clamp`, `tack`.
    #[must_use]
    pub fn puts_on(&self) -> &'static str {
        match (self.step.act, self.held) {
            (Act::Bolt | Act::Tack(Way::Downstream), Some(held)) => held.act(),
            _ => "tack",
        }
    }
}

/// The fit sheet.
#[derive(Clone, Debug, PartialEq)]
pub struct FitSheet {
    /// The steps in order.
    pub steps: Vec<FitStep>,
    /// Stretches that nothing can close: run and why.
    pub unclosed: Vec<String>,
}

struct Bench<'a> {
    model: &'a Model,
    around: &'a Surroundings,
    runs: Vec<PlannedRun>,
    joints: Vec<Vec<Joint>>,
    marks: Vec<Mark>,
    solids: Vec<Solid>,
    taping: Taping,
    sway_mm: f64,
}

/// Works the fit sheet out.
#[must_use]
pub fn fit_sheet(
    model: &Model,
    around: &Surroundings,
    runs: &[PlannedRun],
    plan: &StockPlan,
) -> FitSheet {
    let runs = split_at_welds(model, runs, plan);
    let FitOrder { parts, steps } = FitOrder::of(model, &runs, plan);
    let bench = Bench::of(model, around, runs);
    let mut out = Vec::new();
    let mut standing: Vec<TubeElement> = Vec::new();
    // The budget at both ends of every part that stands: upstream, downstream.
    let mut budgets: std::collections::BTreeMap<(usize, usize), [Option<Budget>; 2]> =
        std::collections::BTreeMap::new();
    for step in steps {
        let Some((part, pieces)) = parts
            .get(step.run)
            .and_then(|(fit, groups)| Some((fit.parts.get(step.part)?, groups.get(step.part)?)))
        else {
            continue;
        };
        let own = bench.elements(step.run, pieces);
        standing.extend(own.iter().cloned());
        let at = |index: Option<usize>, end: usize| {
            index
                .and_then(|index| budgets.get(&(step.run, index)))
                .and_then(|ends| ends.get(end).cloned().flatten())
        };
        let mut checks = Vec::new();
        let mut trim = None;
        let mut ends: [Option<Budget>; 2] = [None, None];
        match step.act {
            Act::Hang => {
                let start = bench.hung(step.run, pieces);
                for (end, joint) in [(1, pieces.to), (0, pieces.from)] {
                    let budget = start.carried_to_joint(&bench, step.run, joint);
                    let (check, checked) = bench.check(step.run, joint, &budget, &standing, &own);
                    checks.push(check);
                    if let Some(slot) = ends.get_mut(end) {
                        *slot = Some(checked);
                    }
                }
            }
            Act::Bolt | Act::Tack(Way::Downstream) => {
                let before =
                    at(step.part.checked_sub(1), 1).unwrap_or_else(|| bench.start_of(step.run));
                let budget = bench.tacked(step.run, pieces, &before, part, Way::Downstream);
                let (check, checked) = bench.check(step.run, pieces.to, &budget, &standing, &own);
                checks.push(check);
                ends = [Some(before), Some(checked)];
            }
            Act::Tack(Way::Upstream) => {
                let before = at(Some(step.part + 1), 0).unwrap_or_else(|| bench.end_of(step.run));
                let budget = bench.tacked(step.run, pieces, &before, part, Way::Upstream);
                let (check, checked) = bench.check(step.run, pieces.from, &budget, &standing, &own);
                checks.push(check);
                ends = [Some(checked), Some(before)];
            }
            Act::Close => {
                let upstream =
                    at(step.part.checked_sub(1), 1).unwrap_or_else(|| bench.start_of(step.run));
                let downstream =
                    at(Some(step.part + 1), 0).unwrap_or_else(|| bench.end_of(step.run));
                trim = bench.trim(step.run, pieces, [&upstream, &downstream], (plan, part));
                ends = [Some(upstream), Some(downstream)];
            }
        }
        // A crossover stands for every run that passes it.
        if let Some(name) = &part.crossover {
            for (other, (fit, _)) in parts.iter().enumerate() {
                for (index, other_part) in fit.parts.iter().enumerate() {
                    if other != step.run && other_part.crossover.as_ref() == Some(name) {
                        let carried = bench.crossover_ends(other, index, &parts, &ends);
                        budgets.insert((other, index), carried);
                    }
                }
            }
        }
        budgets.insert((step.run, step.part), ends);
        out.push(FitStep {
            run: bench
                .runs
                .get(step.run)
                .map_or_else(String::new, |run| run.name.clone()),
            marks: part.marks.clone(),
            kind: part.kind,
            is_there: part
                .crossover
                .as_deref()
                .is_some_and(|name| component_kind(model, name) == Some(ComponentKind::Stretch)),
            on_the_bench: part.on_the_bench.clone(),
            held: bench.held(step.run, &step.makes),
            step,
            checks,
            trim,
        });
    }
    FitSheet {
        unclosed: unclosed(&parts, &out),
        steps: out,
    }
}

/// Two things that stand with no tube between them to cut.
fn unclosed(
    parts: &[(tubewright_fit::order::FitRun, Vec<PartPieces>)],
    steps: &[FitStep],
) -> Vec<String> {
    let mut list = Vec::new();
    for (number, (run, _)) in parts.iter().enumerate() {
        let hung = run
            .parts
            .iter()
            .filter(|part| part.kind == PartKind::Hung)
            .count();
        let closed = steps
            .iter()
            .filter(|step| step.step.run == number && step.step.act == Act::Close)
            .count();
        if closed < hung {
            list.push(format!(
                "{}: {hung} hung parts but {closed} closing pieces; between two things that stand there must be tube to cut",
                run.name
            ));
        }
    }
    list
}

/// The marks that are taped from: those on the chassis that have a place.
pub(super) fn marks_of(model: &Model, around: &Surroundings) -> Vec<Mark> {
    let places = &around.measured.places;
    let marks = model.build.marks.iter();
    marks
        .filter(|mark| mark.carrier == CarrierRef::Chassis)
        .filter_map(|mark| {
            let placed = places.points.get(mark.name.as_str())?;
            Some(Mark {
                name: mark.name.to_string(),
                place: placed.point_in_car,
                covariance: placed.covariance,
            })
        })
        .collect()
}

/// What a tape does not go through.
pub(super) fn solids_of(around: &Surroundings) -> Vec<Solid> {
    let placed = around.bodies.placed.iter();
    placed
        // Room kept free by hand is air.
        .filter(|body| body.class != tubewright_build::model::Class::Service)
        .map(|body| body.solid_in_car.clone())
        .collect()
}

/// How the shop tapes.
pub(super) fn taping_of(around: &Surroundings) -> Taping {
    Taping::usual(around.measured.accuracy.tape.mm() / NINETEEN_IN_TWENTY)
}

/// A place where nothing is joined yet.
struct Loose {
    spread: PoseSpread,
}

impl Loose {
    fn carried_to_joint(&self, bench: &Bench<'_>, run: usize, joint: usize) -> Budget {
        let at = bench
            .joint(run, joint)
            .map_or(self.spread.at, |frame| frame.origin);
        Budget::starting(self.spread.carried_to(at))
    }
}

impl<'a> Bench<'a> {
    fn of(model: &'a Model, around: &'a Surroundings, runs: Vec<PlannedRun>) -> Self {
        let sway_mm = model
            .build
            .carriers
            .iter()
            .filter_map(|carrier| match &carrier.kind {
                CarrierKind::Hung { sway } => Some(sway.mm()),
                _ => None,
            })
            .fold(0.0, f64::max);
        Self {
            joints: runs.iter().map(joints_of).collect(),
            taping: taping_of(around),
            model,
            around,
            runs,
            marks: marks_of(model, around),
            solids: solids_of(around),
            sway_mm,
        }
    }

    /// How a joint is held, where the run starts there and is not welded.
    fn held(&self, run: usize, joint: &str) -> Option<Fastening> {
        let run = self.runs.get(run)?;
        let is_first = run.pieces.first()?.joint == joint;
        is_first
            .then(|| Fastening::at_start(self.model, run))
            .flatten()
    }

    fn joint(&self, run: usize, index: usize) -> Option<&Frame> {
        self.joints
            .get(run)
            .and_then(|joints| joints.get(index))
            .map(|joint| &joint.frame)
    }

    /// What a part that closes is left longer by, between budgets of the open ends.
    fn trim(
        &self,
        run: usize,
        pieces: &PartPieces,
        open: [&Budget; 2],
        (plan, part): (&StockPlan, &Part),
    ) -> Option<Trim> {
        let planned = self.runs.get(run)?;
        let first = planned.pieces.get(pieces.from)?;
        let last = planned.pieces.get(pieces.to.checked_sub(1)?)?;
        Some(Trim::of(
            open.map(Budget::total),
            [first.frame_in.travel(), last.frame_out.travel()],
            part_and_room(plan, &part.marks, self.around.practice.kerf),
        ))
    }

    fn elements(&self, run: usize, pieces: &PartPieces) -> Vec<TubeElement> {
        self.runs
            .get(run)
            .into_iter()
            .flat_map(|run| run.pieces.iter().take(pieces.to).skip(pieces.from))
            .flat_map(|piece| piece.elements.iter().cloned())
            .collect()
    }

    fn end_named(&self, run: usize, is_start: bool) -> Option<PlacedEnd> {
        let planned = self.runs.get(run)?;
        let written = self.model.build.run(&planned.name)?;
        let end = if is_start { &written.from } else { &written.to };
        match end {
            tubewright_build::model::RunEnd::End(name) => {
                self.around.measured.places.ends.get(name.as_str()).copied()
            }
            tubewright_build::model::RunEnd::Port { .. } => {
                let frame = match is_start {
                    true => planned.start,
                    false => Frame::upright(planned.end_point, planned.end_direction),
                };
                let accuracy = &self.around.measured.accuracy;
                Some(PlacedEnd::as_built(frame, accuracy))
            }
        }
    }

    fn placed(&self, run: usize, is_start: bool, joint: usize) -> Budget {
        let at = self
            .joint(run, joint)
            .map_or(tubewright_geometry::Point::ORIGIN, |frame| frame.origin);
        Budget::starting(self.end_named(run, is_start).map_or_else(
            || PoseSpread::sure(at),
            |end| PoseSpread::new(end.frame_in_car.origin, &end.covariance).carried_to(at),
        ))
    }

    fn start_of(&self, run: usize) -> Budget {
        self.placed(run, true, 0)
    }

    fn end_of(&self, run: usize) -> Budget {
        let last = self
            .joints
            .get(run)
            .map_or(0, |joints| joints.len().saturating_sub(1));
        self.placed(run, false, last)
    }

    fn hung(&self, run: usize, pieces: &PartPieces) -> Loose {
        let at = self
            .joint(run, pieces.from)
            .map_or(tubewright_geometry::Point::ORIGIN, |frame| frame.origin);
        let spread = [UnitVector::X, UnitVector::Y, UnitVector::Z]
            .into_iter()
            .fold(PoseSpread::sure(at), |spread, axis| {
                spread.with_shift(axis, HUNG_SIGMA_MM).with_turn(
                    axis,
                    HUNG_SIGMA_DEG.to_radians(),
                    at,
                )
            });
        Loose { spread }
    }

    fn tacked(
        &self,
        run: usize,
        pieces: &PartPieces,
        before: &Budget,
        part: &Part,
        way: Way,
    ) -> Budget {
        let Some(planned) = self.runs.get(run) else {
            return before.clone();
        };
        let work = workmanship(&self.around.practice);
        let inside: Vec<_> = planned
            .pieces
            .iter()
            .take(pieces.to)
            .skip(pieces.from)
            .collect();
        let bends = inside
            .iter()
            .filter(|piece| matches!(piece.kind, PlannedKind::Bend { .. }))
            .count();
        let (Some(first), Some(last)) = (inside.first(), inside.last()) else {
            return before.clone();
        };
        // Twelve o'clock at the open end must lie in the plane of the part's bend.
        let bend = inside
            .iter()
            .rev()
            .find(|piece| matches!(piece.kind, PlannedKind::Bend { .. }));
        let twelve = |frame: &Frame| {
            bend.and_then(|bend| {
                let three = bend.frame_in.three().vector();
                three.cross(frame.travel().vector()).direction()
            })
            .map_or(*frame, |twelve| {
                Frame::from_axes(frame.origin, frame.travel(), twelve)
            })
        };
        let (joined, open) = match way {
            Way::Downstream => (first.frame_in, twelve(&last.frame_out)),
            Way::Upstream => (last.frame_out.reversed(), twelve(&first.frame_in)),
        };
        let tacked = Tacked {
            joined,
            open,
            bends: u32::try_from(bends).unwrap_or(u32::MAX),
            is_welded: part.kind != PartKind::Bolted,
        };
        before.tacking(&tacked, &work)
    }

    /// A crossover that another run brought: its ends as sure as that run left them.
    fn crossover_ends(
        &self,
        run: usize,
        part: usize,
        parts: &[(tubewright_fit::order::FitRun, Vec<PartPieces>)],
        ends: &[Option<Budget>; 2],
    ) -> [Option<Budget>; 2] {
        let Some(pieces) = parts.get(run).and_then(|(_, groups)| groups.get(part)) else {
            return [None, None];
        };
        let known = ends
            .get(1)
            .cloned()
            .flatten()
            .or_else(|| ends.first().cloned().flatten());
        [pieces.from, pieces.to].map(|joint| {
            let at = self.joint(run, joint)?.origin;
            Some(Budget::starting(known.as_ref()?.total().carried_to(at)))
        })
    }

    /// Chooses the distances at a joint and says what they keep.
    fn check(
        &self,
        run: usize,
        joint: usize,
        budget: &Budget,
        standing: &[TubeElement],
        own: &[TubeElement],
    ) -> (JointCheck, Budget) {
        let before = budget.total();
        let mark = self
            .joints
            .get(run)
            .and_then(|joints| joints.get(joint))
            .map_or_else(String::new, |joint| joint.mark.clone());
        let radius_mm = self
            .runs
            .get(run)
            .map_or(0.0, |run| 0.5 * run.od_at_joint_mm(joint));
        let in_the_way = InTheWay {
            bodies: &self.solids,
            tubes: standing,
        };
        let frame = self.joint(run, joint);
        let possible = frame.map_or_else(Vec::new, |frame| {
            possible_distances(frame, radius_mm, &self.marks, &in_the_way, &self.taping)
        });
        let near = self.near(own);
        let mut count = LEAST_CHECKS;
        let (chosen, tolerance) = loop {
            let chosen = choose(&before, &possible, count);
            let kept = tolerance(&before, &chosen, &near, LOOSEST_MM);
            let tape_mm = NINETEEN_IN_TWENTY * self.taping.tape_sigma_mm;
            if kept.most_mm >= tape_mm || count >= MOST_CHECKS || chosen.len() < count {
                break (chosen, kept);
            }
            count += 1;
        };
        let checked = budget_checked(budget, &chosen);
        let after = checked.total();
        let loose = LooseWay::of(&after);
        let first = chosen.first().map(|taped| &taped.mark);
        let is_one_mark = chosen.iter().all(|taped| Some(&taped.mark) == first);
        let is_held = loose.is_none() && chosen.len() >= LEAST_CHECKS && !is_one_mark;
        let one_more = frame.filter(|_| !is_held).and_then(|frame| {
            let bodies = &self.around.bodies.placed;
            let (marks, taping) = (&self.marks, &self.taping);
            one_more(frame, radius_mm, &after, marks, bodies, &in_the_way, taping)
        });
        let set_by = tolerance.set_by.and_then(|index| near.get(index));
        let better = set_by
            .filter(|_| tolerance.most_mm < 0.0)
            .map_or_else(Vec::new, |place| {
                let allowed =
                    (place.room_mm / NINETEEN_IN_TWENTY).powi(2) - place.other_sigma_mm.powi(2);
                checked.what_must_be_better(place.place, place.toward, allowed.max(0.0).sqrt())
            });
        (
            JointCheck {
                joint: mark,
                too_few: (chosen.len() < LEAST_CHECKS)
                    .then(|| "too few marks can be seen from here".to_owned()),
                loose,
                one_more,
                distances: chosen,
                tolerance_by: set_by.map(|place| place.near.clone()),
                tolerance,
                plus_minus_before_mm: NINETEEN_IN_TWENTY * before.shift_sigma_bound(),
                plus_minus_after_mm: NINETEEN_IN_TWENTY * after.shift_sigma_bound(),
                better,
            },
            checked,
        )
    }

    /// Places of a part that are near a body, with the room that they have.
    fn near(&self, own: &[TubeElement]) -> Vec<NearPlace> {
        let mut near = Vec::new();
        for body in &self.around.bodies.placed {
            let swept = body.motion.swept(&body.solid_in_car);
            let kept = body.gap_mm + swept.margin_mm + body.allowance_mm + self.sway_mm;
            for element in own {
                let Some(found) =
                    distance::clearance_below(element, &swept.solid, 0.5, kept + NEAR_MM)
                else {
                    continue;
                };
                let Some(toward) = (found.on_body - found.on_centre_line).direction() else {
                    continue;
                };
                near.push(NearPlace {
                    near: body.name.clone(),
                    place: found.on_centre_line,
                    toward,
                    room_mm: found.gap_mm - kept,
                    other_sigma_mm: body.sigma_along(toward.vector()),
                });
            }
        }
        near
    }
}
