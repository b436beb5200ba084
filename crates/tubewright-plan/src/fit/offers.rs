//! How to go on from a joint that is not where the plan has it: offered, never imposed.

use std::collections::BTreeSet;
use std::sync::atomic::AtomicBool;
use tubewright_build::model::{EndGiven, Model, RunEnd};
use tubewright_check::{Finding, Rule};
use tubewright_fit::reclose::{Aim, Loose, May, Steps, WayOn, as_they_are, ways_on};
use tubewright_fit::{NINETEEN_IN_TWENTY, PoseSpread};
use tubewright_geometry::{Frame, Piece, Placement, Vector, math};
use tubewright_stock::{JobProgress, StockPlan};

use super::closing::{Stretch, closing_of};
use super::offer::{Change, Offer, OfferKind, changes_of, part_words};
use super::parts::joined;
use super::pose::JointFound;
use super::steel::Steel;
use super::way::{geometry_of, leaned, relaid};
use crate::checks::{clearance_findings, moving_runs};
use crate::routes::{PlannedKind, PlannedRun, PosedProblem};
use crate::stages::{END_TOLERANCE_DEG, END_TOLERANCE_MM, Surroundings};
use crate::stock::request_of;

/// What the search for offers may do.
#[derive(Clone, Copy, Debug)]
pub struct OfferSettings<'a> {
    /// Work units for routing anew; nothing leaves that out.
    pub route_effort: u64,
    /// Seed.
    pub seed: u64,
    /// Stops routing anew.
    pub cancel: &'a AtomicBool,
}

/// What all offers share.
pub(super) struct Ground<'a> {
    pub(super) model: &'a Model,
    pub(super) around: &'a Surroundings,
    pub(super) posed: &'a PosedProblem,
    pub(super) runs: &'a [PlannedRun],
    pub(super) run: &'a PlannedRun,
    pub(super) found: &'a JointFound,
    /// Where the pieces behind the joint are laid from.
    pub(super) start: Frame,
    /// First piece behind the joint measured before this one, or the first of all.
    pub(super) known: usize,
    /// The pieces that are laid anew: from the joint up to the first that stands.
    pub(super) from: usize,
    pub(super) until: usize,
    pub(super) stretch: Stretch,
    pub(super) aim: Aim,
    pub(super) cut: BTreeSet<String>,
    steel: &'a Steel,
}

/// Ways to go on from a joint where it was found, the least change first. Empty only when no piece is
/// left to tack.
#[must_use]
pub fn offers(
    model: &Model,
    around: &Surroundings,
    posed: &PosedProblem,
    runs: &[PlannedRun],
    steel: &Steel,
    found: &JointFound,
    settings: OfferSettings<'_>,
) -> Vec<Offer> {
    let Some(run) = runs.get(found.run) else {
        return Vec::new();
    };
    let from = found.planned.piece;
    let stretch = Stretch::behind(model, run, from, steel);
    let until = stretch.until;
    if until <= from {
        return Vec::new();
    }
    let (aim_frame, place_mm) = aim_at(model, run, until);
    let ground = Ground {
        model,
        around,
        posed,
        runs,
        run,
        found,
        start: laid_from(run, found),
        known: steel_known(run, from, steel),
        from,
        until,
        stretch,
        aim: Aim {
            point: aim_frame.origin,
            direction: aim_frame.travel(),
            place_mm,
            direction_rad: END_TOLERANCE_DEG.to_radians(),
        },
        cut: steel.cut.keys().cloned().collect(),
        steel,
    };
    let base = ground.price_of(runs).map(|plan| plan.price.minor);
    let mut offers: Vec<Offer> = Vec::new();
    for kind in [
        OfferKind::AsPlanned,
        OfferKind::Closing,
        OfferKind::ClocksAndGap,
        OfferKind::ClocksAndClosing,
        OfferKind::Lengths,
        OfferKind::Angles,
        OfferKind::Trims,
        OfferKind::Slices,
    ] {
        if kind == OfferKind::Closing {
            offers.extend(ground.closed_to_the_gap());
            continue;
        }
        if kind == OfferKind::ClocksAndGap {
            if offers.iter().all(|offer| !offer.is_square()) {
                offers.extend(ground.turned_and_closed_to_the_gap());
            }
            continue;
        }
        let ways = ground.ways(kind);
        // The first that keeps every gap, else the one with the most room.
        let mut best: Option<Offer> = None;
        for way in ways {
            let offer = ground.offer(kind, &way);
            let is_better = best.as_ref().is_none_or(|best| {
                (
                    offer.arrives,
                    offer.least_room_mm().unwrap_or(f64::NEG_INFINITY),
                ) > (
                    best.arrives,
                    best.least_room_mm().unwrap_or(f64::NEG_INFINITY),
                )
            });
            let is_done = offer.arrives && offer.failing().next().is_none();
            if is_better || is_done {
                best = Some(offer);
            }
            if is_done {
                break;
            }
        }
        if let Some(best) = best
            && offers.iter().all(|other| other.changes != best.changes)
        {
            offers.push(best);
        }
        // Each further kind costs more: once one holds, one more is enough to compare with.
        if offers
            .iter()
            .filter(|offer| offer.arrives && offer.failing().next().is_none())
            .count()
            >= 2
        {
            break;
        }
    }
    if settings.route_effort > 0 {
        offers.extend(super::anew::routed_anew(&ground, settings));
    }
    for offer in &mut offers {
        ground.cost(offer, base);
    }
    offers
}

/// First piece behind the last joint before `from` that was measured.
fn steel_known(run: &PlannedRun, from: usize, steel: &Steel) -> usize {
    run.pieces
        .iter()
        .take(from)
        .rposition(|piece| {
            steel.standing.contains(&piece.joint) && steel.readings.contains_key(&piece.joint)
        })
        .unwrap_or(0)
}

/// Why there is no way to choose from, for the person.
#[must_use]
pub fn why_no_offer(runs: &[PlannedRun], found: &JointFound) -> String {
    let run = runs.get(found.run);
    let next = run.and_then(|run| Some((run, run.pieces.get(found.planned.piece)?)));
    if let Some((run, piece)) = next
        && let PlannedKind::Crossover { name, .. } = &piece.kind
    {
        return if run.brings_its_end() {
            format!(
                "Behind it comes {name}, where runs meet: tack it on as it lies and tape {}; what comes behind is \
                 planned again from there.",
                run.last_joint
            )
        } else {
            format!(
                "Behind it comes {name}, which the other run holds where it is planned: pull the joint to it, or \
                 cut the piece before it anew."
            )
        };
    }
    "Nothing is left to tack behind it.".to_owned()
}

/// Where the laid pieces must arrive, and how near, mm.
fn aim_at(model: &Model, run: &PlannedRun, until: usize) -> (Frame, f64) {
    if let Some(piece) = run.pieces.get(until) {
        return (piece.frame_in, END_TOLERANCE_MM);
    }
    let within = model
        .build
        .run(&run.name)
        .and_then(|written| match &written.to {
            RunEnd::End(name) => model.build.end(name),
            RunEnd::Port { .. } => None,
        })
        .and_then(|end| end.given.as_ref())
        .and_then(|given: &EndGiven| given.within.as_ref())
        .map_or(END_TOLERANCE_MM, |within| within.mm());
    (Frame::upright(run.end_point, run.end_direction), within)
}

/// A run with the pieces between the joint measured before (piece `known`) and this one leaning to
/// where it was found.
pub(super) fn lean(run: &PlannedRun, known: usize, found: &JointFound) -> PlannedRun {
    let planned = &found.planned.frame;
    let is = &found.found.frame_in_car;
    leaned(
        run,
        known,
        found.planned.piece,
        is.origin - planned.origin,
        turn_between(planned, is),
    )
}

/// Where the pieces behind a joint are laid from, when it lies where it was found.
pub(super) fn laid_from(run: &PlannedRun, found: &JointFound) -> Frame {
    let planned = match found
        .planned
        .piece
        .checked_sub(1)
        .and_then(|index| run.pieces.get(index))
    {
        Some(piece) => piece.frame_out,
        None => run.start,
    };
    Placement::between(&found.planned.frame, &found.found.frame_in_car).frame(&planned)
}

impl Ground<'_> {
    fn steps(&self) -> Steps {
        let practice = &self.around.practice;
        Steps {
            length_mm: practice.length_step.mm(),
            angle_rad: practice.bend_step.rad(),
            clock_rad: practice.clock_step.rad(),
        }
    }

    fn loose(&self, kind: OfferKind) -> Option<Vec<Loose>> {
        let practice = &self.around.practice;
        let least = practice.least_straight.mm();
        let closing = closing_of(self.run, self.from..self.until, &self.cut);
        self.run
            .pieces
            .iter()
            .enumerate()
            .take(self.until)
            .skip(self.from)
            .map(|(index, planned)| {
                let piece = geometry_of(planned)?;
                let is_cut = self.cut.contains(&planned.mark);
                let mut may = May::default();
                match piece {
                    Piece::Straight { length_mm } => {
                        let changes = match kind {
                            OfferKind::AsPlanned => false,
                            OfferKind::ClocksAndClosing => closing == Some(index),
                            OfferKind::Lengths | OfferKind::Angles => {
                                !is_cut || closing == Some(index)
                            }
                            _ => true,
                        };
                        if changes {
                            // Cut steel only becomes shorter; a straight may not vanish.
                            let low = least.min(length_mm);
                            let high = if is_cut { length_mm } else { f64::INFINITY };
                            may.length_mm = Some((low, high));
                        }
                    }
                    Piece::Bend { bend_rad, .. } => {
                        may.clock = kind != OfferKind::AsPlanned;
                        let changes = match kind {
                            OfferKind::Angles | OfferKind::Trims => !is_cut,
                            OfferKind::Slices => true,
                            _ => false,
                        };
                        if changes {
                            let low = practice.least_bend.rad().min(bend_rad);
                            let high = if is_cut { bend_rad } else { math::FRAC_PI_2 };
                            may.angle_rad = Some((low, high));
                        }
                    }
                    _ => {}
                }
                Some(Loose { piece, may })
            })
            .collect()
    }

    fn ways(&self, kind: OfferKind) -> Vec<WayOn> {
        let Some(loose) = self.loose(kind) else {
            return Vec::new();
        };
        if kind == OfferKind::AsPlanned {
            let pieces = loose.iter().map(|loose| loose.piece).collect();
            return vec![as_they_are(&self.start, pieces, &self.aim)];
        }
        ways_on(&self.start, &loose, &self.aim, &self.steps(), WAYS_JUDGED)
    }

    fn offer(&self, kind: OfferKind, way: &WayOn) -> Offer {
        let mut runs = self.runs.to_vec();
        let laid = relaid(self.run, self.from, &self.start, &way.pieces);
        let laid = self.leaning(&laid);
        let mut changes = Vec::new();
        for (index, (was, is)) in self.run.pieces.iter().zip(&laid.pieces).enumerate() {
            let part = part_words(self.run, index);
            changes.extend(changes_of(&part, was, is, self.cut.contains(&was.mark)));
        }
        if let Some(slot) = runs.get_mut(self.found.run) {
            *slot = laid;
        }
        self.judged(kind, runs, changes, way)
    }

    /// Mark of the first whole piece that stands: of a straight in two halves the second begins at a
    /// weld, and what is behind it is named.
    fn stands(&self) -> Option<String> {
        let pieces = &self.run.pieces;
        (self.until..pieces.len()).find_map(|index| {
            let piece = pieces.get(index)?;
            let before = index.checked_sub(1).and_then(|before| pieces.get(before));
            before
                .is_none_or(|before| before.mark != piece.mark)
                .then(|| piece.mark.clone())
        })
    }

    /// The pieces upstream of the joint where they must lie for it to be where it was found.
    pub(super) fn leaning(&self, run: &PlannedRun) -> PlannedRun {
        lean(run, self.known, self.found)
    }

    pub(super) fn judged(
        &self,
        kind: OfferKind,
        runs: Vec<PlannedRun>,
        changes: Vec<Change>,
        way: &WayOn,
    ) -> Offer {
        let gaps = self.gaps(&runs);
        let lost = changes
            .iter()
            .filter_map(|change| match change {
                Change::Dropped { mark, is_cut: true } => Some(mark.clone()),
                _ => None,
            })
            .collect();
        let mut recut: Vec<String> = changes
            .iter()
            .filter_map(|change| match change {
                Change::Length {
                    mark, is_cut: true, ..
                }
                | Change::Angle {
                    mark, is_cut: true, ..
                } => Some(mark.clone()),
                _ => None,
            })
            .collect();
        recut.dedup();
        Offer {
            kind,
            stands: self.stands(),
            runs,
            changes,
            arrives_off_mm: way.place_error_mm,
            arrives_off_rad: way.direction_error_rad,
            arrives_plus_minus_mm: self.plus_minus_mm(),
            arrives: way.place_error_mm <= self.aim.place_mm
                && way.direction_error_rad <= self.aim.direction_rad,
            gaps,
            lost,
            recut,
            buys: Vec::new(),
            price: None,
            dearer_minor: None,
            missing: Vec::new(),
        }
    }

    /// ± of the place where the pieces arrive, in the worst direction at most, mm.
    fn plus_minus_mm(&self) -> f64 {
        let end = &self.found.found;
        NINETEEN_IN_TWENTY
            * PoseSpread::new(end.frame_in_car.origin, &end.covariance)
                .carried_to(self.aim.point)
                .shift_sigma_bound()
    }

    /// Gaps of the run that changes, to everything.
    fn gaps(&self, runs: &[PlannedRun]) -> Vec<Finding> {
        let moving = moving_runs(self.model, self.around, runs);
        let own = format!("{} to ", self.run.name);
        let other = format!(" to {}", self.run.name);
        clearance_findings(
            &moving,
            &self.around.bodies,
            &self.around.measured.places.joint,
        )
        .into_iter()
        .filter(|finding| {
            finding.subject.starts_with(&own)
                || (finding.rule == Rule::ClearanceToRun && finding.subject.ends_with(&other))
        })
        .collect()
    }

    fn price_of(&self, runs: &[PlannedRun]) -> Option<StockPlan> {
        let whole = joined(runs);
        let request = request_of(self.model, &self.around.practice, &whole, &[]).ok()?;
        JobProgress::of(&request, &self.steel.record).plan().ok()
    }

    fn cost(&self, offer: &mut Offer, base: Option<i64>) {
        let Some(plan) = self.price_of(&offer.runs) else {
            return;
        };
        offer.dearer_minor = base.map(|base| plan.price.minor - base);
        offer.price = Some(plan.price);
        offer.missing = plan
            .missing
            .iter()
            .map(|missing| missing.mark.clone())
            .collect();
        offer.buys = plan.buys;
    }
}

/// Ways of rounding that are judged against the bodies, best arrival first.
const WAYS_JUDGED: usize = 6;

/// The rotation vector from one frame to another.
pub(super) fn turn_between(from: &Frame, to: &Frame) -> Vector {
    // The sum of the axes' cross products is 2 sin(angle) times the axis.
    let sum = from.travel().vector().cross(to.travel().vector())
        + from.twelve().vector().cross(to.twelve().vector())
        + from.three().vector().cross(to.three().vector());
    let sin = 0.5 * sum.norm();
    let cos = 0.5
        * (from.travel().dot(to.travel().vector())
            + from.twelve().dot(to.twelve().vector())
            + from.three().dot(to.three().vector())
            - 1.0);
    sum.direction()
        .map_or(Vector::ZERO, |axis| axis * math::atan2(sin, cos))
}
